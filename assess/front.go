package assess

import (
	"cmp"
	"fmt"
	"slices"
	"strings"
)

// front gathers from the pages what a keeper wants to know before anything else.
func (c *inquiry) front(b *Brief) Front {
	f := Front{Empty: !c.particularsKnown, Worst: []Figure{}, Overdue: c.overdue(), Missing: []Notice{}}
	f.Worst = withOthers(worstThree(b.Standing.Worst), b.Standing.asking)
	f.When = frontWhen(b)
	f.Money = c.joined(moneyLine(b.Money), b.Money.Signing)
	f.Decision = nextDecision(b.Choices)
	f.Missing = c.firstMissing(b)
	f.Sentence = c.frontSentence(b, f)
	return f
}

// joined says beside the money what it means for the plan, where the plan docks before all of it can be signed.
func (c *inquiry) joined(money, signing *Figure) *Figure {
	docks, s := c.dockIn(), c.plan.Scheme
	if s.Date.IsZero() && s.Earliest.IsZero() && s.Window == "" {
		return money // nobody has said when she docks
	}
	if money == nil || signing == nil || money.Note == "" || docks < 0 || signing.P10 != nil && *signing.P10 <= docks {
		return money
	}
	money.Note += fmt.Sprintf(". “%s” comes before that, with as many of its works as the money then pays for.", c.inForceName())
	return money
}

// worstThree are the three worst figures, each of another sort where there are so many: twelve thin plates are one worry, said with how many
// more there are like the worst; then each about another record, as one bad gland is one worry however many figures it has.
func worstThree(all []Figure) []Figure {
	three := []Figure{}
	at := map[string]int{} // place in three of a sort and of a record
	for _, f := range all {
		if _, seen := at[f.Kind]; !seen && len(three) < 3 {
			at[f.Kind] = len(three)
			at[cmp.Or(f.ID, f.Label)] = len(three)
			three = append(three, f)
		}
	}
	for _, f := range all {
		key := cmp.Or(f.ID, f.Label)
		if _, seen := at[key]; !seen && len(three) < 3 {
			at[key] = len(three)
			three = append(three, f)
		}
	}
	return three
}

// withOthers says beside each figure how many more of its sort ask for action.
func withOthers(three []Figure, all []asking) []Figure {
	shown := map[string]int{}
	for _, f := range three {
		shown[f.Kind]++
	}
	for i, f := range three {
		for _, a := range all {
			if more := a.n - shown[f.Kind]; a.kind == f.Kind && more > 0 {
				three[i].Note = strings.Join(append(present(f.Note), "and "+count(more, "more "+a.one, "more "+a.many)), "; ")
			}
		}
	}
	return three
}

// present is the text as a list of one, or of none where there is none.
func present(text string) []string {
	if text == "" {
		return nil
	}
	return []string{text}
}

// nextDecision is the open matter that falls due first and has no course in the plan; failing that, the next open one.
func nextDecision(p ChoicesPage) *Notice {
	var next *MatterRow
	for i, m := range p.Matters {
		if m.State != "open" {
			continue
		}
		if next == nil || next.Taken != notYet && m.Taken == notYet {
			next = &p.Matters[i]
		}
	}
	if next == nil {
		return nil
	}
	n := Notice{What: next.Name, Do: next.Question, Due: next.Due, Who: next.Who, Kind: "matter", ID: next.ID, Page: "choices"}
	if next.Taken != notYet {
		n.Do = "The plan takes: " + next.Taken + ". It is not yet decided."
	}
	return &n
}

func (c *inquiry) frontSentence(b *Brief, f Front) string {
	if f.Empty && c.d.Len() == 0 {
		return "Nothing is known of her yet. Begin with what she is; every page fills as you go."
	}
	var parts []string
	if len(b.Standing.Heading) > 0 {
		parts = append(parts, b.Standing.Heading[0])
	}
	if n := len(f.Overdue); n > 0 {
		parts = append(parts, count(n, "thing is", "things are")+" overdue.")
	}
	if len(parts) == 0 {
		return c.name()
	}
	return c.name() + ": " + lowerFirst(strings.Join(parts, " "))
}

func lowerFirst(s string) string {
	if s == "" {
		return s
	}
	return strings.ToLower(s[:1]) + s[1:]
}

// step is something worth entering, with what it opens.
type step struct{ kind, what, do string }

// steps is the order in which a keeper gets most from least: who she is, what is under water, what keeps the water out, then money and questions.
var steps = []step{
	{"particulars", "Who she is.", "Enter her name, length, beam, depth and draft."},
	{"frame_system", "How her frames are numbered.", "Say where frame 0 stands, which way they run and how far apart: every place on her is told by frames."},
	{"gland", "No gland is entered.", "Enter each stern gland and rudder gland with its size and the year it was packed: the first question is always which one leaks next."},
	{"opening", "No opening is entered.", "Enter every hole through the hull with what keeps the water out of it: a hole with one barrier is worth knowing today."},
	{"thickness", "No thickness reading is entered.", "Import the surveys as they are, old ones too: two surveys give a rate."},
	{"hull_form", "No hull form is entered.", "Give the offsets or a mesh: drafts then become tonnes, and a dock can be checked."},
	{"compartment", "No space is entered.", "Enter the spaces between the bulkheads: what floods, how fast, and when it reaches the next one."},
	{"pump", "No pump is entered.", "Enter the pumps and what drives them: whether they win is worked from this."},
	{"draft", "No round of the marks is entered.", "Enter the draft log: a slow gain of weight is a slow leak."},
	{"anode", "No anode is entered.", "Enter the anodes with mass and date."},
	{"matter", "No matter is entered.", "Enter the questions that must be settled before the dock."},
	{"work", "No work is entered.", "Enter the works with low, likely and high cost."},
	{"pot", "No pot of money is entered.", "Enter what is in hand and what it may be spent on."},
	{"dock", "No dock is entered.", "Enter the docks that might take her, with their depth over the sill."},
}

// firstMissing is what to enter next: the kinds nobody has entered, most useful first, then what the pages ask for most urgently. A ship with
// nothing gets the first six steps; more would be a wall.
func (c *inquiry) firstMissing(b *Brief) []Notice {
	list := []Notice{}
	for _, s := range steps {
		if c.d.Count(s.kind) == 0 {
			list = append(list, Notice{What: s.what, Do: s.do, Kind: s.kind, Page: "ship"})
		}
	}
	var asked []Notice
	for _, page := range [][]Notice{b.Standing.Missing, b.Outlook.Missing, b.Choices.Missing, b.Money.Missing, b.Docking.Missing, b.InDock.Missing, b.Record.Missing} {
		for _, n := range page {
			if c.d.Count(n.Kind) > 0 {
				asked = append(asked, n)
			}
		}
	}
	slices.SortStableFunc(asked, func(a, b Notice) int { return b.Worry - a.Worry })
	list = append(list, asked...)
	return list[:min(len(list), 6)]
}

// frontWhen is the date band of what fails first.
func frontWhen(b *Brief) *Figure {
	if b.Outlook.First == nil {
		return nil
	}
	f := *b.Outlook.First
	return &f
}
