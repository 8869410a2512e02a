package assess

// StandingPage is the page Standing of a brief.
type StandingPage struct {
	Heading []string `json:"heading"` // the answer in a sentence or two
	Missing []Notice `json:"missing"` // what to enter so that the page can say more
}

func (c *inquiry) standingPage() StandingPage {
	return StandingPage{Heading: []string{}, Missing: []Notice{}}
}
