package tell

import (
	"cmp"
	"html/template"
	"time"

	"oakum/dossier"
	"oakum/plan"
	"oakum/survey"
)

// story is one update as it is shown.
type story struct {
	ID, Title, Date, Day, Audience, Author string
	Withdrawn                              bool
	HTML                                   template.HTML
	Text                                   string
	Why                                    string // what was corrected, and why
	Snapshot                               string
	Pictures                               []picture
	Corrections                            []correction
	when                                   time.Time
}

// picture is a photograph that may be shown, under the name it has in the folder.
type picture struct{ File, Says, sha256 string }

// correction is what an update said before, and until when.
type correction struct {
	Until string
	Title string
	HTML  template.HTML
}

func (s *Site) stories() []story {
	var list []story
	for _, e := range s.For.updates(s.Brief.Dossier()) {
		list = append(list, s.story(e))
	}
	return list
}

func (s *Site) story(e dossier.Entry[plan.Update]) story {
	b := e.Body
	t := story{ID: e.ID, Title: b.Title, Date: b.Date.Words(), Day: b.Date.String(), Audience: cmp.Or(b.Audience, "public"), Author: b.Author, Snapshot: b.Snapshot,
		Withdrawn: b.State == "withdrawn", when: e.At}
	if day, err := time.Parse(time.DateOnly, t.Day); err == nil && (t.when.IsZero() || t.when.Before(day)) {
		t.when = day
	}
	if t.Withdrawn {
		return t
	}
	t.HTML, t.Text, t.Why = html(b.Text), plain(b.Text), b.Why
	for _, id := range b.Photos {
		if p, ok := s.picture(id); ok {
			t.Pictures = append(t.Pictures, p)
		}
	}
	t.Corrections = s.corrections(e)
	return t
}

// picture shows a photograph only where its own record may be seen, its file is kept, and nobody in it said no.
func (s *Site) picture(id string) (picture, bool) {
	e, ok := dossier.Find[survey.Photo](s.Brief.Dossier(), id)
	if !ok || !e.Shown(s.For.Sees) || e.Body.Consent == "no" || e.Body.SHA256 == "" {
		return picture{}, false
	}
	return picture{"pictures/" + e.Body.SHA256[:min(16, len(e.Body.SHA256))], e.Body.Title, e.Body.SHA256}, true
}

// corrections are the versions that this audience could read before, and that said something else.
func (s *Site) corrections(e dossier.Entry[plan.Update]) []correction {
	if s.Versions == nil || e.Version < 2 {
		return nil
	}
	var list []correction
	versions := s.Versions(e.ID)
	for i, v := range versions {
		old, ok := v.Body.(*plan.Update)
		if !ok || v.Version >= e.Version || i+1 >= len(versions) || old.State != "published" || !s.For.reads(v.Head, *old) {
			continue
		}
		next, _ := versions[i+1].Body.(*plan.Update)
		if next != nil && next.Text == old.Text && next.Title == old.Title {
			continue
		}
		list = append(list, correction{versions[i+1].At.Format(time.DateOnly), old.Title, html(old.Text)})
	}
	return list
}
