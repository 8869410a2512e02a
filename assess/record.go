package assess

import "fmt"

// RecordPage answers what to tell people and what to leave behind.
type RecordPage struct {
	Heading   []string      `json:"heading"` // the answer in a sentence or two
	Board     BoardPaper    `json:"board"`
	Overdue   []Notice      `json:"overdue"` // parts ashore and things left undone that wait for an answer
	Parts     []PartRow     `json:"parts"`
	Deferred  []DeferredRow `json:"deferred"`
	Carried   []CarriedRow  `json:"carried"` // what one docking hands to the next, with its day
	Saving    []Figure      `json:"saving"`  // what to put by each year for the next docking: the figures of the page Money
	Questions []QuestionRow `json:"questions"`
	Updates   []UpdateRow   `json:"updates"`
	Drafts    []DraftRow    `json:"drafts"` // the next update, for somebody to edit
	Hazards   []HazardRow   `json:"hazards"`
	Reviews   []ReviewRow   `json:"reviews"`
	Polls     []PollRow     `json:"polls"`      // what the voices say, counted in several ways
	PollWords []PollWords   `json:"poll_words"` // how the ways come out
	Missing   []Notice      `json:"missing"`    // what to enter so that the page can say more
}

// recordPage takes the pages made so far, as the board paper is a view of them.
func (c *inquiry) recordPage(b *Brief) RecordPage {
	p := RecordPage{Heading: []string{}, Missing: []Notice{}, Reviews: []ReviewRow{}, Overdue: []Notice{},
		Parts: c.partRows(), Deferred: c.deferredRows(), Carried: c.carried(), Questions: c.questionRows(), Updates: c.updateRows(b.Snapshot), Drafts: c.drafts(b), Hazards: c.hazardRows()}
	p.Overdue = append(append(p.Overdue, c.overdueParts()...), c.overdueDeferred()...)
	p.Overdue = append(append(p.Overdue, c.overdueRepairs()...), c.overdueGuarantees()...)
	c.reviewRows(&p)
	p.Saving = []Figure{}
	if n := b.Money.Next; n != nil {
		p.Saving = append(p.Saving, n.Figures...)
	}
	p.Polls, p.PollWords = append([]PollRow{}, b.Choices.Polls...), pollWords(b.Choices.Polls)
	p.Board = c.boardPaper(b, c.lastTold("board"))
	for _, r := range p.Parts {
		if r.Lacks != "" {
			p.Missing = append(p.Missing, Notice{What: r.Name + ": its description lacks " + r.Lacks + ".", Do: "Fill it in while those who took it off are still here.", Kind: "part", ID: r.ID, Page: "record"})
		}
	}
	p.head()
	c.inCurrency(&p)
	return p
}

func (p *RecordPage) head() {
	open := 0
	for _, q := range p.Questions {
		if q.Answer == notYet {
			open++
		}
	}
	waiting := 0
	for _, d := range p.Deferred {
		if settled(d.State) == 0 {
			waiting++
		}
	}
	switch {
	case len(p.Parts)+len(p.Deferred)+len(p.Questions)+len(p.Updates)+len(p.Hazards) == 0:
		p.Heading = append(p.Heading, "Nothing is on record yet: no part taken off, nothing left undone, nothing told.")
	case len(p.Overdue) > 0:
		p.Heading = append(p.Heading, fmt.Sprintf("%s for an answer.", count(len(p.Overdue), "thing waits", "things wait")))
	default:
		p.Heading = append(p.Heading, "Nothing on record is overdue.")
	}
	if n := len(p.Parts); n > 0 {
		p.Heading = append(p.Heading, count(n, "part is", "parts are")+" off the ship.")
	}
	if waiting > 0 {
		p.Heading = append(p.Heading, count(waiting, "thing was", "things were")+" left undone on purpose.")
	}
	if open > 0 {
		p.Heading = append(p.Heading, count(open, "question has", "questions have")+" no answer yet.")
	}
}
