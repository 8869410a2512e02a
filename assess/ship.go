package assess

// ShipPage is the page Ship of a brief.
type ShipPage struct {
	Heading []string `json:"heading"` // the answer in a sentence or two
	Missing []Notice `json:"missing"` // what to enter so that the page can say more
}

func (c *inquiry) shipPage() ShipPage {
	return ShipPage{Heading: []string{}, Missing: []Notice{}}
}
