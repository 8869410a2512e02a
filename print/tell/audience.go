package tell

import (
	"cmp"
	"slices"

	"oakum/dossier"
	"oakum/field"
	"oakum/plan"
)

// Audience is somebody told: what they may see, and which updates are theirs.
type Audience struct {
	Name  string
	Sees  dossier.Mark
	Title string
	hears []string
}

// Audiences are those who are told, the most open first. Donors see no record that the public may not see: they are told more, not shown more.
var Audiences = []Audience{
	{"public", dossier.Public, "News of", []string{"public"}},
	{"donors", dossier.Public, "For those who give to", []string{"public", "donors"}},
	{"board", dossier.Board, "For the board of", []string{"public", "donors", "board"}},
}

// AudienceNamed finds an audience.
func AudienceNamed(name string) (Audience, error) {
	for _, a := range Audiences {
		if a.Name == name {
			return a, nil
		}
	}
	return Audience{}, field.Refuse("for", "nobody is called %q; there are public, donors and board", name)
}

// updates are those published or withdrawn that the audience may read, newest first.
func (a Audience) updates(d *dossier.Dossier) []dossier.Entry[plan.Update] {
	var list []dossier.Entry[plan.Update]
	for _, e := range dossier.All[plan.Update](d) {
		if a.reads(e.Head, e.Body) {
			list = append(list, e)
		}
	}
	slices.SortStableFunc(list, func(x, y dossier.Entry[plan.Update]) int { return y.Body.Date.Compare(x.Body.Date) })
	return list
}

func (a Audience) reads(h dossier.Head, u plan.Update) bool {
	return h.Shown(a.Sees) && slices.Contains(a.hears, cmp.Or(u.Audience, "public")) && (u.State == "published" || u.State == "withdrawn")
}

// questions are the answered ones, newest answer first.
func (a Audience) questions(d *dossier.Dossier) []dossier.Entry[plan.Question] {
	var list []dossier.Entry[plan.Question]
	for _, e := range dossier.All[plan.Question](d) {
		if e.Shown(a.Sees) && e.Body.Answer != "" && slices.Contains(a.hears, cmp.Or(e.Body.Audience, "public")) {
			list = append(list, e)
		}
	}
	slices.SortStableFunc(list, func(x, y dossier.Entry[plan.Question]) int { return y.Body.Answered.Compare(x.Body.Answered) })
	return list
}
