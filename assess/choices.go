package assess

// ChoicesPage is the page Choices of a brief.
type ChoicesPage struct {
	Heading []string `json:"heading"` // the answer in a sentence or two
	Missing []Notice `json:"missing"` // what to enter so that the page can say more
}

func (c *inquiry) choicesPage() ChoicesPage {
	return ChoicesPage{Heading: []string{}, Missing: []Notice{}}
}
