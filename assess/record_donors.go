package assess

import (
	"cmp"
	"fmt"
	"slices"
	"strings"

	"oakum/dossier"
	"oakum/plan"
	"oakum/quantity"
)

// donorDraft begins with the things that people gave for, each with its state and thanks, and goes on with what the public is told.
func (c *inquiry) donorDraft(t *told, b *Brief) []string {
	lines := c.standsWhere()
	lines = append(lines, section("What you gave for", c.givenFor(t))...)
	lines = append(lines, section("What happened", c.happened(t))...)
	lines = append(lines, section("Progress", c.progressFor(t))...)
	lines = append(lines, section("Money", c.neededNext(t, b))...)
	lines = append(lines, section("Asked and answered", c.answersFor(t))...)
	return append(lines, "Thank you.")
}

// givenFor tells of each thing that somebody gave for: how it is, and who is thanked. Only gifts marked public are told, and of a giver only the name that
// he wants to be thanked by.
func (c *inquiry) givenFor(t *told) (lines []string) {
	names := map[string][]string{}
	silent := map[string]int{}
	for _, e := range dossier.All[plan.Receipt](c.d) {
		b := e.Body
		thing, ok := c.d.Get(b.For)
		if !ok || !e.Shown(t.sees) || !thing.Shown(t.sees) || b.Date.Compare(c.day) > 0 {
			continue
		}
		if b.Thanks == "" {
			silent[b.For]++
		} else if !slices.Contains(names[b.For], b.Thanks) {
			names[b.For] = append(names[b.For], b.Thanks)
		}
	}
	things := map[string]bool{}
	for id := range names {
		things[id] = true
	}
	for id := range silent {
		things[id] = true
	}
	for _, id := range slices.Sorted(mapKeys(things)) {
		lines = append(lines, "**"+capital(c.nameOf(id))+"**: "+c.stateFor(t, id)+" "+thanks(names[id], silent[id]))
	}
	if len(lines) == 0 {
		t.holds = append(t.holds, DraftMark{"No named thing.", "No gift that says what it was given for is marked public, with a thing that is public too."})
	}
	return lines
}

func thanks(names []string, silent int) string {
	list := slices.Clone(names)
	if silent > 0 {
		list = append(list, count(silent, "giver who is not named", "givers who are not named"))
	}
	if len(list) > 1 {
		list = []string{strings.Join(list[:len(list)-1], ", ") + " and " + list[len(list)-1]}
	}
	return "Given by " + list[0] + ": thank you."
}

// stateFor says how a thing is that people gave for, from the works that treat it and what was found of it, as far as the reader may see them.
func (c *inquiry) stateFor(t *told, id string) string {
	var said []string
	for _, e := range dossier.All[plan.Work](c.d) {
		b := e.Body
		if e.Shown(t.sees) && (e.ID == id || slices.Contains(b.Treats, id)) {
			state, done := c.workNow(e)
			said = append(said, workState(cmp.Or(b.Plain, b.Name), state, done))
		}
	}
	for _, e := range dossier.All[plan.Found](c.d) {
		if b := e.Body; e.Shown(t.sees) && b.Part == id && b.Condition != "" && b.Date.Compare(c.day) <= 0 {
			said = append(said, "found in dock: "+strings.TrimSuffix(cmp.Or(b.AsLeft, b.Condition), "."))
		}
	}
	if e, ok := dossier.Find[plan.Part](c.d, id); ok && e.Shown(t.sees) {
		said = append(said, cmp.Or(e.Body.Fate, "taken off"))
	}
	if len(said) == 0 {
		return "nothing new is written down of it."
	}
	return strings.Join(slices.Compact(said), "; ") + "."
}

func workState(name, state string, done quantity.Date) string {
	what := strings.TrimSuffix(lowerFirst(name), ".")
	switch state {
	case "done":
		if !done.IsZero() {
			return fmt.Sprintf("%s, done on %s", what, done.Words())
		}
		return what + ", done"
	case "started":
		return what + ", under way"
	case "deferred":
		return what + ", left for a later docking"
	case "dropped":
		return what + ", will not be done"
	}
	return what + ", not begun yet"
}
