package assess

import (
	"slices"
	"strings"

	"oakum/dossier"
	"oakum/plan"
	"oakum/ship"
)

// Before anything that came off her is lent, given or sold, somebody must know who holds title and whether they agree. The gate stays shut while
// that is unknown.
const gateOpen = "open"

// gateOf says whether what a course takes off may leave her keeper's hands; "" where it takes nothing off.
func (c *inquiry) gateOf(e dossier.Entry[plan.Course]) string {
	if !c.takesOff(e) {
		return ""
	}
	return c.gateWords(e.Body.Consent, c.particulars.TitleOwner)
}

func (c *inquiry) gateWords(consent, owner string) string {
	holder := owner
	if holder == "" {
		holder = "the holder of title"
	}
	switch consent {
	case "given", "not needed":
		return gateOpen
	case "refused":
		return "shut: " + holder + " refused consent"
	case "asked":
		return "shut: " + holder + " was asked and has not answered"
	case "needed":
		return "shut: consent of " + holder + " is needed and was not asked for"
	}
	switch {
	case owner == "":
		return "shut: nobody has written down who holds title"
	case c.particulars.Keeper != "" && strings.EqualFold(owner, c.particulars.Keeper):
		return "shut: title is the keeper's own; say that no other consent is needed"
	}
	return "shut: title rests with " + owner + "; whether consent is needed is not known"
}

// takesOff tells whether a course takes something off her: by its weights, or by saying who looks after it.
func (c *inquiry) takesOff(e dossier.Entry[plan.Course]) bool {
	if comesOff(e.Body) {
		return true
	}
	if e.Body.Custody != "" || e.Body.MassOff != nil && *e.Body.MassOff > 0 {
		return true
	}
	return slices.ContainsFunc(dossier.All[plan.Work](c.d), func(w dossier.Entry[plan.Work]) bool {
		return w.Body.Course == e.ID && w.Body.State != "dropped" && w.Body.MassOff != nil && *w.Body.MassOff > 0
	})
}

func (c *inquiry) gates(p *ChoicesPage) {
	for _, r := range p.Courses {
		if r.Gate == "" || r.Gate == gateOpen {
			continue
		}
		n := Notice{What: r.Matter + ", " + r.Name + ": " + r.Gate + ".", Do: "Settle title and consent, on paper, before anything is promised.", Kind: "course", ID: r.ID, Page: "choices", Worry: 1}
		if r.Taken {
			n.Worry = 2
		}
		p.Gates = append(p.Gates, n)
	}
}

// conflicts lists what of the plan can't stand together: two courses of one matter, one that rules out another, one that lacks what it needs.
func (c *inquiry) conflicts(p *ChoicesPage) {
	taken := map[string]string{}
	all := append(slices.Clone(c.plan.Courses), c.plan.Works...)
	for _, id := range all {
		e, ok := dossier.Find[plan.Course](c.d, id)
		if !ok {
			c.conflictsOf(p, id)
			continue
		}
		if other, twice := taken[e.Body.Matter]; twice {
			p.Conflicts = append(p.Conflicts, Notice{What: c.nameOf(e.Body.Matter) + ": the plan takes both " + c.nameOf(other) + " and " + e.Body.Name + ".", Do: "Keep one course.", Kind: "course", ID: id, Page: "choices", Worry: 2})
		}
		taken[e.Body.Matter] = id
		c.conflictsOf(p, id)
	}
	c.circles(p)
}

// circles names works and courses that wait for each other.
func (c *inquiry) circles(p *ChoicesPage) {
	state := map[string]int{} // 1 on the way, 2 done
	var path []string
	var walk func(id string)
	walk = func(id string) {
		state[id] = 1
		path = append(path, id)
		needs, _, kind := c.bondsOf(id)
		for _, next := range needs {
			switch state[next] {
			case 0:
				walk(next)
			case 1:
				ring := path[slices.Index(path, next):]
				p.Conflicts = append(p.Conflicts, Notice{What: c.namesOf(ring) + ": each waits for the other.", Do: "Take one of the needs out.", Kind: kind, ID: id, Page: "choices", Worry: 2})
			}
		}
		path = path[:len(path)-1]
		state[id] = 2
	}
	for _, e := range dossier.All[plan.Course](c.d) {
		if state[e.ID] == 0 {
			walk(e.ID)
		}
	}
	for _, e := range dossier.All[plan.Work](c.d) {
		if state[e.ID] == 0 {
			walk(e.ID)
		}
	}
}

func (c *inquiry) conflictsOf(p *ChoicesPage, id string) {
	needs, excludes, kind := c.bondsOf(id)
	for _, x := range excludes {
		if c.takes(x) {
			p.Conflicts = append(p.Conflicts, Notice{What: c.nameOf(id) + " rules out " + c.nameOf(x) + ", and the plan takes both.", Do: "Drop one of them.", Kind: kind, ID: id, Page: "choices", Worry: 2})
		}
	}
	for _, x := range needs {
		if !c.takes(x) && !c.done(x) {
			p.Conflicts = append(p.Conflicts, Notice{What: c.nameOf(id) + " needs " + c.nameOf(x) + ", which the plan does not take.", Do: "Take it as well, or drop the first.", Kind: kind, ID: id, Page: "choices", Worry: 2})
		}
	}
}

func (c *inquiry) bondsOf(id string) (needs, excludes []string, kind string) {
	if e, ok := dossier.Find[plan.Course](c.d, id); ok {
		return e.Body.Needs, e.Body.Excludes, "course"
	}
	if e, ok := dossier.Find[plan.Work](c.d, id); ok {
		return e.Body.Needs, e.Body.Excludes, "work"
	}
	return nil, nil, ""
}

func (c *inquiry) done(id string) bool {
	e, ok := dossier.Find[plan.Work](c.d, id)
	return ok && e.Body.State == "done"
}

// heavyParts asks for the courses that every heavy underwater part deserves, where a propeller has no matter or too few.
func (c *inquiry) heavyParts(p *ChoicesPage) {
	screws := dossier.All[ship.Propeller](c.d)
	if len(screws) == 0 {
		return
	}
	by := map[string]int{}
	of := map[string]int{}
	for _, e := range dossier.All[plan.Course](c.d) {
		of[e.Body.Matter]++
		for _, id := range e.Body.Treats {
			by[id]++
		}
	}
	for _, m := range p.Matters {
		if words := strings.ToLower(m.Name + " " + m.Question); of[m.ID] >= 5 && strings.Contains(words, "propeller") {
			return
		}
	}
	const all = "Offer at least: leave in place; leave, seal and blank the shaft; take off and show at the ship; take off and place elsewhere; take off with the tail length and blank over the tube."
	for _, s := range screws {
		if strings.HasPrefix(s.Body.State, "off") || s.Body.State == "gone" {
			continue
		}
		if n := by[s.ID]; n < 5 {
			p.Missing = append(p.Missing, Notice{What: propellerWords(s) + ": " + count(n, "course treats it", "courses treat it") + ".", Do: all, Kind: "course", Page: "choices"})
		}
	}
}

func propellerWords(e dossier.Entry[ship.Propeller]) string {
	return dossier.RecordOf(e).Label()
}
