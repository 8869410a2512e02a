package intake

import (
	"fmt"
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
	for _, c := range t.guess.Columns {
		if c.Meaning == "bid" || strings.HasSuffix(c.Meaning, "_each") {
			return
		}
	}
	q := app.Question{Key: "bid", Ask: "Whose bid is it?", Why: "the file does not say which of the bids on record it belongs to", Other: "new: and the yard, for a bid that is not on record yet"}
	for _, e := range dossier.All[plan.Bid](t.ship) {
		q.Options = append(q.Options, app.Option{Value: e.ID, Text: "the bid of " + e.Body.Yard})
	}
	title := strings.TrimSuffix(t.name, ".csv")
	if len(t.ev.notes) > 0 {
		title = cut(t.ev.notes[0])
	}
	q.Options = append(q.Options, app.Option{Value: newBid + title, Text: "a new one: " + title})
	q.Usual = newBid + title
	t.put(q)
}

// ofBid makes the bid that a list of prices is of, where it is new.
func (r *reader) ofBid() error {
	a, isNew := strings.CutPrefix(r.answers["bid"], newBid)
	switch {
	case r.kind.Name != "bid_line" || r.answers["bid"] == "":
		return nil
	case !isNew:
		if _, ok := dossier.Find[plan.Bid](r.t.ship, r.answers["bid"]); !ok {
			return field.Refuse("bid", "there is no bid %q", r.answers["bid"])
		}
		return nil
	case strings.TrimSpace(a) == "":
		return field.Refuse("bid", "a new bid needs its yard: answer new:YARD")
	}
	b := plan.Bid{Yard: strings.TrimSpace(a), State: "received"}
	for _, line := range r.t.ev.notes {
		if d, ok := dayIn(line); ok && b.Date.IsZero() {
			if reading, err := quantity.ReadDate(d); err == nil {
				b.Date = reading.Date
			}
		}
	}
	r.bid = &dossier.Record{Head: dossier.Head{ID: dossier.NewID(), Kind: "bid", Basis: field.Documented, From: r.t.name + " (sha256 " + r.t.sum[:12] + ")"}, Body: &b}
	return nil
}

// total keeps the total that the bidder wrote.
func (r *reader) total(x seen) {
	if r.bid == nil || x.as != rowTotal {
		return
	}
	b := r.bid.Body.(*plan.Bid)
	for _, s := range r.shared {
		if s.mean.field != "extension" || x.row.at(s.col) == "" {
			continue
		}
		reading, err := r.habitFor(x.row.at(s.col)).Parse(x.row.at(s.col), "money")
		if err == nil && !reading.Ambiguous() && b.Total == nil {
			b.Total = &reading.Value
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
