package assess

// OutlookPage is the page Outlook of a brief.
type OutlookPage struct {
	Heading []string `json:"heading"` // the answer in a sentence or two
	Missing []Notice `json:"missing"` // what to enter so that the page can say more
}

func (c *inquiry) outlookPage(standing StandingPage) OutlookPage {
	return OutlookPage{Heading: []string{}, Missing: []Notice{}}
}
