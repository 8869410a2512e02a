package assess

import (
	"cmp"
	"fmt"
	"slices"

	"oakum/dossier"
	"oakum/plan"
)

// ChoicesPage answers what to do about each matter: its courses side by side, who weighs what, what was agreed for the day the hull is seen.
type ChoicesPage struct {
	Heading     []string        `json:"heading"`   // the answer in a sentence or two
	Matters     []MatterRow     `json:"matters"`   // open ones first, by the day they fall due
	Courses     []CourseRow     `json:"courses"`   // of the first matter, then the second
	Conflicts   []Notice        `json:"conflicts"` // courses of the plan that can't stand together
	Gates       []Notice        `json:"gates"`     // what may not be given away yet, and why
	Scores      []ScoreRow      `json:"scores"`    // the performance table
	Weighed     []WeighedRow    `json:"weighed"`   // the same, by swing weights
	Close       []Notice        `json:"close_calls"`
	Switches    []SwitchRow     `json:"switches"` // the swing at which the lead changes
	Voices      []VoiceRow      `json:"voices"`
	VoiceValues []VoiceValueRow `json:"voice_values"`
	Polls       []PollRow       `json:"polls"` // the voices counted, in more than one way
	Looks       []LookRow       `json:"looks"` // what could be looked at before deciding
	Triggers    []TriggerRow    `json:"triggers"`
	Decisions   []DecisionRow   `json:"decisions"`
	Missing     []Notice        `json:"missing"` // what to enter so that the page can say more
}

// MatterRow is one question that must be settled.
type MatterRow struct {
	ID       string `json:"id"`
	Name     string `json:"name"`
	Question string `json:"question"`
	State    string `json:"state"`
	Due      string `json:"due"`
	Who      string `json:"who"`
	Courses  int    `json:"courses"`
	Taken    string `json:"taken"` // the course of the plan in force, "not yet" where there is none
	Cost     Figure `json:"cost"`  // of the course taken, or from the cheapest to the dearest
	Why      string `json:"why"`

	due string
}

func (c *inquiry) choicesPage() ChoicesPage {
	p := ChoicesPage{
		Heading: []string{}, Matters: []MatterRow{}, Courses: []CourseRow{}, Conflicts: []Notice{}, Gates: []Notice{}, Scores: []ScoreRow{},
		Weighed: []WeighedRow{}, Close: []Notice{}, Switches: []SwitchRow{}, Voices: []VoiceRow{}, VoiceValues: []VoiceValueRow{}, Polls: []PollRow{}, Looks: []LookRow{}, Triggers: []TriggerRow{}, Decisions: []DecisionRow{}, Missing: []Notice{},
	}
	c.matters(&p)
	c.conflicts(&p)
	c.gates(&p)
	c.scores(&p)
	c.weighings(&p)
	c.voices(&p)
	c.polls(&p)
	c.looks(&p)
	c.triggers(&p)
	c.decisions(&p)
	c.heavyParts(&p)
	p.head()
	if n := len(p.Close); n > 0 {
		p.Heading = append(p.Heading, count(n, "call is", "calls are")+" close or refused by a voice: the weights alone don't decide.")
	}
	c.inCurrency(&p)
	return p
}

func (c *inquiry) matters(p *ChoicesPage) {
	for _, e := range dossier.All[plan.Matter](c.d) {
		p.Matters = append(p.Matters, c.matterRow(e))
	}
	slices.SortStableFunc(p.Matters, func(a, b MatterRow) int {
		return cmp.Or(cmp.Compare(stateOrder(a.State), stateOrder(b.State)), cmp.Compare(a.due, b.due), cmp.Compare(a.Name, b.Name))
	})
	if len(p.Matters) == 0 {
		p.Missing = append(p.Missing, Notice{What: "No matter is entered yet.", Kind: "matter", Page: "choices",
			Do: "Enter the questions that must be settled: propellers and shafts, glands, openings, coating, anodes or impressed current, which dock, now or wait."})
	}
	for i := range p.Matters {
		c.coursesOf(p, &p.Matters[i])
	}
}

// stateOrder puts what is open first.
func stateOrder(state string) int {
	return max(slices.Index([]string{"open", "settled", "dropped"}, state), 0)
}

func (c *inquiry) matterRow(e dossier.Entry[plan.Matter]) MatterRow {
	b := e.Body
	r := MatterRow{ID: e.ID, Name: b.Name, Question: b.Question, State: b.State, Due: b.Due.String(), Who: b.Decider, Why: b.Why, Taken: notYet, due: b.Due.String()}
	if r.State == "" {
		r.State = "open"
	}
	if r.due == "" {
		r.due = "9999"
	}
	return r
}

func (c *inquiry) coursesOf(p *ChoicesPage, m *MatterRow) {
	var own []CourseRow
	for _, e := range dossier.All[plan.Course](c.d) {
		if e.Body.Matter == m.ID {
			own = append(own, c.courseRow(e, m))
		}
	}
	m.Courses = len(own)
	m.Cost = matterCost(own)
	for _, r := range own {
		if r.Taken {
			m.Taken, m.Cost = r.Name, r.Cost
		}
	}
	p.Courses = append(p.Courses, own...)
	switch {
	case m.State == "dropped":
	case len(own) == 0:
		p.Missing = append(p.Missing, Notice{What: m.Name + ": no course is entered.", Do: "Enter the possible answers, leaving things as they are among them.", Kind: "matter", ID: m.ID, Page: "choices"})
	case len(own) == 1:
		p.Missing = append(p.Missing, Notice{What: m.Name + ": there is only one course, so nothing to choose between.", Do: "Enter what else could be done; leaving things as they are is always one.", Kind: "matter", ID: m.ID, Page: "choices"})
	}
}

func (p *ChoicesPage) head() {
	open, ready := 0, 0
	next := ""
	for _, m := range p.Matters {
		if m.State != "open" {
			continue
		}
		open++
		if m.Taken != notYet {
			ready++
		}
		if next == "" {
			next = m.Name
			if m.Due != "" {
				next += ", by " + m.Due
			}
		}
	}
	switch {
	case len(p.Matters) == 0:
		p.Heading = append(p.Heading, "No question has been put yet.")
	case open == 0:
		p.Heading = append(p.Heading, "Every matter is settled.")
	default:
		p.Heading = append(p.Heading, fmt.Sprintf("%s; next: %s.", count(open, "matter is open", "matters are open"), next))
	}
	if ready > 0 {
		p.Heading = append(p.Heading, fmt.Sprintf("The plan in force takes a course for %s still open.", count(ready, "matter", "matters")))
	}
	if n := len(p.Conflicts); n > 0 {
		p.Heading = append(p.Heading, fmt.Sprintf("%s of the plan can't stand together.", count(n, "pair of courses", "pairs of courses")))
	}
	if n := len(p.Gates); n > 0 {
		p.Heading = append(p.Heading, fmt.Sprintf("%s off without knowing who owns it or who consents.", count(n, "course takes something", "courses take something")))
	}
}
