package assess

// InDockPage is the page InDock of a brief.
type InDockPage struct {
	Heading []string `json:"heading"` // the answer in a sentence or two
	Missing []Notice `json:"missing"` // what to enter so that the page can say more
}

func (c *inquiry) inDockPage() InDockPage {
	return InDockPage{Heading: []string{}, Missing: []Notice{}}
}
