package assess

import (
	"fmt"
	"slices"
	"strconv"
	"strings"

	"oakum/dossier"
	"oakum/plan"
	"oakum/quantity"
	"oakum/survey"
)

// DraftRow is an update as the dossier would have it, for somebody to edit. It is made of what its audience may see and of nothing else.
type DraftRow struct {
	Audience string      `json:"audience"`
	Rhythm   string      `json:"rhythm"` // daily or weekly
	Title    string      `json:"title"`
	From     string      `json:"from"`  // the first day it tells of
	Since    string      `json:"since"` // when this audience was last told, "" for never
	Snapshot string      `json:"snapshot"`
	Text     string      `json:"text"`
	Photos   []PhotoRow  `json:"photos"` // one that goes with it; others that might
	Holds    []DraftMark `json:"holds"`  // what would make it say more
}

// DraftMark is something that a draft is silent about, and why.
type DraftMark struct {
	What string `json:"what"`
	Why  string `json:"why"`
}

// PhotoRow is a photograph that may be shown.
type PhotoRow struct {
	ID     string `json:"id"`
	Title  string `json:"title"`
	SHA256 string `json:"sha256"`
	Date   string `json:"date"`
	Moment string `json:"moment"`
}

// told is a draft in the making: to whom, over which days.
type told struct {
	audience string
	sees     dossier.Mark
	from, to quantity.Date
	holds    []DraftMark
}

// in tells whether a day falls into the days told of.
func (t *told) in(d quantity.Date) bool {
	return !d.IsZero() && d.Compare(t.from) >= 0 && d.Compare(t.to) <= 0
}

// section is a heading with its paragraphs, nothing where there are none.
func section(heading string, lines []string) []string {
	if len(lines) == 0 {
		return nil
	}
	return append([]string{"### " + heading}, lines...)
}

// bullets makes one paragraph of a list.
func bullets(lines []string) []string {
	if len(lines) == 0 {
		return nil
	}
	return []string{"- " + strings.Join(lines, "\n- ")}
}

// audiences are those who are told, with the most that each may see. Donors see no record that the public may not see: they are told more, not shown more.
var audiences = []struct {
	name string
	sees dossier.Mark
}{{"public", dossier.Public}, {"donors", dossier.Public}, {"board", dossier.Board}}

// drafts writes the next update of each audience, by the week and by the day.
func (c *inquiry) drafts(b *Brief) []DraftRow {
	rows := []DraftRow{}
	for _, a := range audiences {
		for rhythm, days := range []int{7, 1} {
			t := &told{audience: a.name, sees: a.sees, from: c.day.AddDays(1 - days), to: c.day}
			d := DraftRow{Audience: a.name, Rhythm: []string{"weekly", "daily"}[rhythm], Title: c.draftTitle(t, days), From: t.from.String(), Since: c.lastTold(a.name).String(), Snapshot: b.Snapshot,
				Photos: []PhotoRow{}}
			var lines []string
			switch a.name {
			case "public":
				lines = c.publicDraft(t, b)
			case "donors":
				lines = c.donorDraft(t, b)
			default:
				lines = c.boardDraft(t, b)
			}
			kept := c.cleared(lines, a.sees)
			if n := len(lines) - len(kept); n > 0 {
				t.holds = append(t.holds, DraftMark{count(n, "paragraph was", "paragraphs were") + " left out.", "Words of a private record stand in them."})
			}
			d.Text = strings.Join(kept, "\n\n")
			d.Photos = append(d.Photos, c.photosFor(t)...)
			if len(d.Photos) == 0 {
				t.holds = append(t.holds, DraftMark{"No photograph.", "None is kept whose mark lets this audience see it."})
			}
			d.Holds = append([]DraftMark{}, t.holds...)
			rows = append(rows, d)
		}
	}
	return rows
}

func (c *inquiry) draftTitle(t *told, days int) string {
	if s := c.stay(); s.in && days == 1 {
		return fmt.Sprintf("%s: day %d in dock", c.name(), s.day)
	}
	if days == 1 {
		return c.name() + ", " + t.to.Words()
	}
	return c.name() + ", " + spanWords(t.from, t.to)
}

// spanWords says two days as one span: 24 to 30 November 2026.
func spanWords(from, to quantity.Date) string {
	a, b := from.Words(), to.Words()
	if from.Year() == to.Year() && from.Month() == to.Month() {
		return strconv.Itoa(from.Day()) + " to " + b
	}
	return strings.TrimSuffix(a, " "+strconv.Itoa(to.Year())) + " to " + b
}

// photosFor are the photographs that an audience may see, those of the days told of first, then the newest; a picture in which somebody does not want to be
// seen is none.
func (c *inquiry) photosFor(t *told) []PhotoRow {
	list := []dossier.Entry[survey.Photo]{}
	for _, e := range dossier.All[survey.Photo](c.d) {
		if e.Shown(t.sees) && e.Body.SHA256 != "" && e.Body.Consent != "no" && e.Body.Date.Compare(c.day) <= 0 {
			list = append(list, e)
		}
	}
	slices.SortStableFunc(list, func(a, b dossier.Entry[survey.Photo]) int { return b.Body.Date.Compare(a.Body.Date) })
	var rows []PhotoRow
	for _, e := range list[:min(len(list), mostPhotos)] {
		rows = append(rows, photoRow(e))
	}
	return rows
}

// mostPhotos is how many are offered beside a draft.
const mostPhotos = 6

func photoRow(e dossier.Entry[survey.Photo]) PhotoRow {
	b := e.Body
	sum := b.SHA256
	if b.Small != "" {
		sum = b.Small
	}
	return PhotoRow{ID: e.ID, Title: b.Title, SHA256: sum, Date: b.Date.String(), Moment: b.Moment}
}

// cleared leaves out every paragraph that holds words of a record that the reader may not see. The drafts are made of open records only; this is the second
// lock on the same door, for figures and headings that are worked from all of them.
func (c *inquiry) cleared(lines []string, to dossier.Mark) []string {
	secret := c.secrets(to)
	return slices.DeleteFunc(slices.Clone(lines), func(line string) bool {
		return slices.ContainsFunc(secret, func(s string) bool { return strings.Contains(line, s) })
	})
}

// Hides tells whether a text holds words of a record that a reader may not see, for papers that print more than the drafts do.
func (b *Brief) Hides(text string, from dossier.Mark) bool {
	return len(b.ask.cleared([]string{text}, from)) == 0 // the drafts have gathered the words already
}

// lockedFrom is from how many letters on a text is told apart from a word that anybody might use.
const lockedFrom = 8

// secrets are the texts of the records that a reader may not see, unless they stand in a record that he may see too. The public is told of nothing that is
// worked from closed records but sums, so only the board needs the lock.
func (c *inquiry) secrets(to dossier.Mark) []string {
	if to != dossier.Board {
		return nil
	}
	if c.secret != nil {
		return *c.secret
	}
	closed := map[string]bool{}
	for r := range c.d.Records("") {
		if !r.Shown(to) {
			for _, text := range textsOf(r) {
				if len(text) >= lockedFrom {
					closed[text] = true
				}
			}
		}
	}
	if len(closed) > 0 {
		for r := range c.d.Records("") {
			if r.Shown(to) {
				for _, text := range textsOf(r) {
					delete(closed, text)
				}
			}
		}
	}
	list := slices.Sorted(mapKeys(closed))
	c.secret = &list
	return list
}

// answersFor are the questions answered in the days told of, each group once.
func (c *inquiry) answersFor(t *told) []string {
	var lines []string
	for _, r := range c.questionRows() {
		e, ok := dossier.Find[plan.Question](c.d, r.ID)
		if !ok || !e.Shown(t.sees) || e.Body.Answer == "" || !t.in(e.Body.Answered) || !hears(t.audience, e.Body.Audience) {
			continue
		}
		times := 1
		for _, w := range r.Ways {
			if way, ok := dossier.Find[plan.Question](c.d, w.ID); ok && way.Shown(t.sees) {
				times++
			}
		}
		lines = append(lines, "**"+e.Body.Question+"**"+askedWords(times)+"\n"+e.Body.Answer)
	}
	return lines
}

// hears tells whether an audience is told what is for another: donors and the board are told what the public is told.
func hears(audience, of string) bool {
	switch of {
	case "", "public":
		return true
	case "donors":
		return audience != "public"
	}
	return of == audience
}
