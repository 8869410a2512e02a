package intake

import (
	"fmt"
	"path/filepath"
	"slices"
	"strings"

	"oakum/app"
	"oakum/dossier"
	"oakum/field"
	"oakum/plan"
	"oakum/quantity"
)

func init() {
	specials["bid_line.extension"] = (*reader).price
	specials["bid_line.unit_rate"] = (*reader).price
}

const newBid = "new:"

// askBid asks whose prices a list holds, unless a column says so.
func (t *Table) askBid() {
	var each []string
	for _, c := range t.guess.Columns {
		switch {
		case c.Meaning == "bid":
			return
		case strings.HasSuffix(c.Meaning, "_each"):
			if of := facetOn(meaning{each: true}, c.Heading).of; !slices.Contains(each, of) {
				each = append(each, of)
			}
		}
	}
	if len(each) > 0 {
		t.put(app.Question{Key: "bid", Ask: fmt.Sprintf("Are %s new bids?", strings.Join(each, ", ")), Why: "the upper headings name the bidders", Usual: newBid + "each",
			Options: []app.Option{{Value: newBid + "each", Text: "yes, make a bid of each"}, {Value: "known", Text: "no, they are on record under these names"}}})
		return
	}
	q := app.Question{Key: "bid", Ask: "Whose bid is it?", Why: "the file does not say which of the bids on record it belongs to", Other: "new: and the yard, for a bid that is not on record yet"}
	for _, e := range dossier.All[plan.Bid](t.ship) {
		q.Options = append(q.Options, app.Option{Value: e.ID, Text: "the bid of " + e.Body.Yard})
	}
	title := strings.TrimSuffix(t.name, filepath.Ext(t.name))
	if len(t.ev.notes) > 0 {
		title = cut(t.ev.notes[0])
	}
	q.Options = append(q.Options, app.Option{Value: newBid + title, Text: "a new one: " + title})
	q.Usual = newBid + title
	t.put(q)
}

// ofBid makes the bids that a list of prices is of, where they are new.
func (r *reader) ofBid() error {
	a, isNew := strings.CutPrefix(r.answers["bid"], newBid)
	each := len(r.facets) > 0 && r.facets[0].of != ""
	switch {
	case r.kind.Name != "bid_line" || r.answers["bid"] == "" || each && !isNew:
		return nil
	case !isNew:
		if _, ok := dossier.Find[plan.Bid](r.t.ship, r.answers["bid"]); !ok {
			return field.Refuse("bid", "there is no bid %q", r.answers["bid"])
		}
		return nil
	case strings.TrimSpace(a) == "":
		return field.Refuse("bid", "a new bid needs its yard: answer new:YARD")
	}
	r.bids = map[string]*dossier.Record{}
	for _, f := range r.facets {
		name := f.of
		if !each {
			name = strings.TrimSpace(a)
		}
		r.bids[f.of] = r.newBid(name)
	}
	return nil
}

func (r *reader) newBid(yard string) *dossier.Record {
	b := plan.Bid{Yard: yard, State: "received"}
	for _, line := range r.t.ev.notes {
		if d, ok := dayIn(line); ok && b.Date.IsZero() {
			if reading, err := quantity.ReadDate(d); err == nil {
				b.Date = reading.Date
			}
		}
	}
	return &dossier.Record{Head: dossier.Head{ID: dossier.NewID(), Kind: "bid", Basis: field.Documented, From: r.t.name + " (sha256 " + r.t.sum[:12] + ")"}, Body: &b}
}

// total keeps the totals that the bidders wrote.
func (r *reader) total(x seen) {
	if x.as != rowTotal {
		return
	}
	for of, made := range r.bids {
		b := made.Body.(*plan.Bid)
		for _, s := range append(slices.Clone(r.shared), r.own[facet{of: of}]...) {
			cell := x.row.at(s.col)
			if s.mean.field != "extension" || cell == "" {
				continue
			}
			reading, err := r.habitFor(cell).Parse(cell, "money")
			if err == nil && !reading.Ambiguous() && b.Total == nil {
				b.Total = &reading.Value
			}
		}
	}
}

// price reads a cell of a price: a figure, or a word that is an answer too. A blank is a blank.
func (r *reader) price(d *draft, s slot, cell string) error {
	if w, ok := enumWord(entryField(r), cell); ok {
		return r.text(d, "entry", w)
	}
	if isWord, meaning := wordOf(cell); isWord && meaning != quantity.SameAsAbove {
		return r.text(d, "entry", "no bid")
	}
	return r.number(d, s, cell)
}

func entryField(r *reader) field.Field {
	f, _ := r.kind.Field("entry")
	return f
}

// groupTitle tells whether a row of a price list is the title of a group: capitals, and no quantity, unit or price.
func (r *reader) groupTitle(x row) bool {
	if r.kind.Name != "bid_line" {
		return false
	}
	text := ""
	for _, s := range r.shared {
		cell := x.at(s.col)
		switch {
		case cell == "" || s.mean.field == "item":
		case s.mean.field == "description":
			text = cell
		default:
			return false
		}
	}
	return text != "" && text == strings.ToUpper(text) && hasLetters(text)
}

// blankPrice says of a line without a price what stands in its remark, or that it is blank, which is neither nothing to pay nor no bid.
func (r *reader) blankPrice(n int, d *draft, cells []string) (dossier.Record, error) {
	entry := "blank"
	for _, s := range r.shared {
		if s.mean.field == "notes" && s.col < len(cells) {
			if w, ok := enumWord(entryField(r), cells[s.col]); ok {
				entry = w
			}
		}
	}
	if err := r.text(d, "entry", entry); err != nil {
		return dossier.Record{}, err
	}
	rec, err := r.finish(d, facet{})
	rec.From = fmt.Sprintf("%srow %d", r.from, n)
	return rec, err
}
