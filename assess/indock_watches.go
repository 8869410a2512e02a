package assess

import (
	"cmp"
	"slices"
	"strings"

	"oakum/dossier"
	"oakum/plan"
	"oakum/ship"
)

// watches says who watches what in dock; a watch that has run out is a space nobody watches.
func (c *inquiry) watches(p *InDockPage) {
	for _, e := range dossier.All[plan.Watch](c.d) {
		b := e.Body
		if b.Occasion != "in dock" && b.Occasion != "flooding" && b.Occasion != "" {
			continue
		}
		n := Notice{What: b.Space, Do: b.Look, Who: cmp.Or(b.Who, "nobody"), Due: b.Ends.String(), Kind: "watch", ID: e.ID, Page: "indock"}
		if b.Hours != "" {
			n.What += ", " + b.Hours
		}
		if b.Reach != "" {
			n.Do = "Reached by " + b.Reach + ". " + n.Do
		}
		if b.Who == "" || c.past(b.Ends) {
			n.Worry = 2
		}
		p.Watches = append(p.Watches, n)
	}
	if names := c.unwatched(); len(p.Watches) > 0 && names != "" {
		p.Watches = append(p.Watches, Notice{What: "In no watch by name: " + names, Do: "Say who looks into each by night, or say that one watch covers all.", Kind: "watch", Page: "indock", Worry: 1})
	}
}

// unwatched names the spaces that no watch in dock names.
func (c *inquiry) unwatched() string {
	var names []string
	for _, e := range dossier.All[ship.Compartment](c.d) {
		named := slices.ContainsFunc(dossier.All[plan.Watch](c.d), func(w dossier.Entry[plan.Watch]) bool {
			return (w.Body.Occasion == "in dock" || w.Body.Occasion == "") && !c.past(w.Body.Ends) && strings.Contains(strings.ToLower(w.Body.Space), strings.ToLower(e.Body.Name))
		})
		if !named && e.Body.Name != "" {
			names = append(names, e.Body.Name)
		}
	}
	return strings.Join(names, ", ")
}
