package assess

// DockingPage is the page Docking of a brief.
type DockingPage struct {
	Heading []string `json:"heading"` // the answer in a sentence or two
	Missing []Notice `json:"missing"` // what to enter so that the page can say more
}

func (c *inquiry) dockingPage() DockingPage {
	return DockingPage{Heading: []string{}, Missing: []Notice{}}
}
