package assess

// RecordPage is the page Record of a brief.
type RecordPage struct {
	Heading []string `json:"heading"` // the answer in a sentence or two
	Missing []Notice `json:"missing"` // what to enter so that the page can say more
}

func (c *inquiry) recordPage() RecordPage {
	return RecordPage{Heading: []string{}, Missing: []Notice{}}
}
