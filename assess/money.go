package assess

// MoneyPage is the page Money of a brief.
type MoneyPage struct {
	Heading []string `json:"heading"` // the answer in a sentence or two
	Missing []Notice `json:"missing"` // what to enter so that the page can say more
}

func (c *inquiry) moneyPage() MoneyPage {
	return MoneyPage{Heading: []string{}, Missing: []Notice{}}
}
