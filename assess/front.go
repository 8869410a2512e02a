package assess

func (c *inquiry) front(b *Brief) Front {
	return Front{Empty: !c.particularsKnown, Worst: []Figure{}, Overdue: []Notice{}, Missing: []Notice{}}
}
