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

// asking is one question with its answer, and the other ways in which it was put, as far as the audience may read them.
type asking struct {
	dossier.Entry[plan.Question]
	ways []string
}

// questions are the answered ones, each group once, newest answer first. Where the question that leads a group is closed to the audience, one of its group
// that is open stands for itself, with its own answer or not at all.
func (a Audience) questions(d *dossier.Dossier) []asking {
	var list []asking
	lead := map[string]int{}
	all := dossier.All[plan.Question](d)
	for _, e := range all {
		if first, open := dossier.Find[plan.Question](d, e.Body.Same); a.may(e) && e.Body.Answer != "" && !(open && a.may(first) && first.Body.Answer != "") {
			lead[e.ID] = len(list)
			list = append(list, asking{Entry: e})
		}
	}
	for _, e := range all {
		if at, grouped := lead[e.Body.Same]; grouped && a.may(e) && e.ID != e.Body.Same {
			if _, leads := lead[e.ID]; !leads {
				list[at].ways = append(list[at].ways, e.Body.Question)
			}
		}
	}
	slices.SortStableFunc(list, func(x, y asking) int { return y.Body.Answered.Compare(x.Body.Answered) })
	return list
}

func (a Audience) may(e dossier.Entry[plan.Question]) bool {
	return e.Shown(a.Sees) && slices.Contains(a.hears, cmp.Or(e.Body.Audience, "public"))
}
