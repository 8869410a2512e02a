package app

import (
	"context"
	"errors"
	"fmt"
	"math"
	"slices"
	"time"

	"oakum/dossier"
	"oakum/field"
	"oakum/quantity"
	"oakum/survey"
)

// Lot is what a phone hands over at once: entries made without a network, each under a key of its own, with the phone's clock as it was then and as it
// is now.
type Lot struct {
	Device string
	Sent   time.Time // now, by the phone's clock
	Items  []Queued
}

// Queued is one entry of a lot. The record has the ID it got on the phone; its Version is the one an edit was made on, 0 for a new record.
type Queued struct {
	Key    string
	Made   time.Time // by the phone's clock
	Record dossier.Record
	Err    error // why it can't be read; it is refused and stays on the phone
}

// What became of an entry.
const (
	Landed  = "landed"  // it is a record now
	Already = "already" // it had landed before
	Beside  = "beside"  // somebody else had changed the record: both edits are kept, the record stands as it was
	Refused = "refused" // it stays on the phone, with the reason
)

// Outcome is what became of one entry.
type Outcome struct {
	Key     string `json:"key"`
	State   string `json:"state" enum:"landed,already,beside,refused"`
	Kind    string `json:"kind,omitempty"`
	ID      string `json:"id,omitempty"`
	Version int    `json:"version,omitempty"`
	Clash   string `json:"clash,omitempty"` // the record that keeps the second edit
	Field   string `json:"field,omitempty"`
	Reason  string `json:"reason,omitempty"`
}

// Merged is what became of a lot.
type Merged struct {
	Items    []Outcome `json:"items"`
	Now      time.Time `json:"now"`    // by the program's clock
	Behind   float64   `json:"behind"` // s that the phone's clock is behind; negative where it is ahead
	Clock    string    `json:"clock"`  // what to say of the phone's clock; empty where it is right
	Revision int64     `json:"revision"`
}

const (
	clockTold  = 2 * time.Minute  // a clock further off than this is said
	clockWrong = 30 * time.Minute // further off than this the phone's days are not believed
	mostItems  = 5000             // entries a lot may hold
)

// Merge lands a lot in one step of the journal. What was handed over before is left alone, an edit on a version that has changed in the meantime is kept
// beside the record, and what can't be a record is refused with the reason; none of that hinders the rest.
func (a *App) Merge(ctx context.Context, who Who, lot Lot) (Merged, error) {
	if err := lot.check(); err != nil {
		return Merged{}, err
	}
	a.writing.Lock()
	defer a.writing.Unlock()
	d, revision := a.Dossier()
	now := a.now().UTC()
	m := merging{d: d, who: who, lot: lot, now: now, behind: now.Sub(lot.Sent), had: keysOf(d), mine: map[string]dossier.Record{}}
	out := Merged{Items: make([]Outcome, len(lot.Items)), Now: now, Behind: math.Round(m.behind.Seconds()), Clock: clockWords(lot.Sent, now), Revision: revision}
	for i, q := range lot.Items {
		out.Items[i] = m.take(q)
	}
	if len(m.keys) == 0 {
		return out, nil
	}
	records := slices.Concat(m.records, []dossier.Record{m.delivery(out.Clock)})
	w, err := a.writeHeld(ctx, Batch{By: who.Name, What: m.words(), Records: records})
	if err != nil {
		return Merged{}, err
	}
	out.Revision = w.Revision
	return out, nil
}

func (l Lot) check() error {
	switch {
	case l.Device == "":
		return field.Refuse("device", "a lot must say which phone it is from")
	case l.Sent.IsZero():
		return field.Refuse("sent_at", "a lot must say what time the phone has")
	case len(l.Items) > mostItems:
		return field.Refuse("items", "a lot may hold %d entries, not %d; hand them over in parts", mostItems, len(l.Items))
	}
	return nil
}

// keysOf gathers the keys of everything that phones handed over.
func keysOf(d *dossier.Dossier) map[string]bool {
	had := map[string]bool{}
	for _, e := range dossier.All[survey.Delivery](d) {
		for _, k := range e.Body.Keys {
			had[k] = true
		}
	}
	return had
}

// merging is a lot under way.
type merging struct {
	d       *dossier.Dossier
	who     Who
	lot     Lot
	now     time.Time
	behind  time.Duration
	had     map[string]bool
	mine    map[string]dossier.Record // what this lot makes of each record, as it will stand
	records []dossier.Record
	keys    []string
	landed  int
	beside  int
}

func (m *merging) take(q Queued) Outcome {
	o := Outcome{Key: q.Key, Kind: q.Record.Kind, ID: q.Record.ID}
	if q.Key != "" && m.had[q.Key] {
		o.State = Already
		return o
	}
	if err := m.readable(q); err != nil {
		return o.refuse(err)
	}
	r := m.dated(q)
	standing, exists := m.standing(r.ID)
	switch {
	case exists && standing.Kind != r.Kind:
		return o.refuse(field.Refuse("id", "%s is a %s, not a %s", r.ID, standing.Kind, r.Kind))
	case exists && sameBody(standing, r):
		o.State, o.Version = Already, standing.Version
	case !exists && r.Version > 0, exists && r.Version > standing.Version:
		return o.refuse(field.Refuse("version", "version %d of %s is not known here; was it made for another ship file?", r.Version, r.ID))
	case exists && r.Version < standing.Version:
		c, err := m.clash(q, r, standing)
		if err != nil {
			return o.refuse(err)
		}
		m.records = append(m.records, c)
		m.beside++
		o.State, o.Clash, o.Version = Beside, c.ID, standing.Version
		o.Reason = fmt.Sprintf("%s had changed it in the meantime: both are kept", someone(standing.By))
	default:
		if exists {
			r.Head = headOf(r.Head, standing.Head)
		}
		m.records = append(m.records, r)
		m.landed++
		o.State, o.Version = Landed, r.Version+1
		r.Version, r.By = o.Version, m.who.Name
		m.mine[r.ID] = r
	}
	m.keys = append(m.keys, q.Key)
	m.had[q.Key] = true
	return o
}

// readable tells whether an entry can be a record at all.
func (m *merging) readable(q Queued) error {
	if q.Err != nil {
		return q.Err
	}
	k, ok := dossier.KindNamed(q.Record.Kind)
	if !ok {
		return field.Refuse("kind", "%q is not a kind of record", q.Record.Kind)
	}
	if err := m.who.MayWrite(k); err != nil {
		return err
	}
	if err := dossier.CheckID(q.Record.ID); err != nil {
		return field.Refuse("id", "%v", err)
	}
	if q.Key == "" || len(q.Key) > 200 {
		return field.Refuse("key", "an entry needs a key of its own, of at most 200 letters")
	}
	return nil
}

func (m *merging) standing(id string) (dossier.Record, bool) {
	if r, ok := m.mine[id]; ok {
		return r, true
	}
	return m.d.Get(id)
}

// clash keeps an edit beside the record it was meant for.
func (m *merging) clash(q Queued, r, standing dossier.Record) (dossier.Record, error) {
	edit, err := dossier.EncodeBody(r.Kind, r.Body)
	if err != nil {
		return r, err
	}
	c := &survey.Clash{Of: r.ID, Kind: r.Kind, Key: q.Key, Who: m.who.Name, Date: quantity.DateOf(m.now), Made: stampOf(q.Made), Base: &r.Version, Standing: &standing.Version, Edit: string(edit)}
	return dossier.Record{Head: dossier.Head{ID: dossier.NewID(), Kind: "clash", Basis: field.Documented, Mark: r.Mark, From: r.From}, Body: c}, nil
}

// delivery is the record of the lot itself.
func (m *merging) delivery(clock string) dossier.Record {
	b := &survey.Delivery{Device: m.lot.Device, Who: m.who.Name, Date: quantity.DateOf(m.now), Sent: stampOf(m.lot.Sent), Received: stampOf(m.now),
		Behind: new(math.Round(m.behind.Seconds())), Keys: m.keys, Landed: &m.landed, Clashes: &m.beside, Notes: clock}
	return dossier.Record{Head: dossier.Head{ID: dossier.NewID(), Kind: "delivery", Basis: field.Documented}, Body: b}
}

func (m *merging) words() string {
	s := fmt.Sprintf("took over %d entries from the phone %s", m.landed, m.lot.Device)
	if m.beside > 0 {
		s += fmt.Sprintf("; %d second edits kept beside", m.beside)
	}
	return s
}

func (o Outcome) refuse(err error) Outcome {
	o.State, o.Reason = Refused, err.Error()
	var refused *field.Error
	if errors.As(err, &refused) {
		o.Field = refused.Field
	}
	return o
}

func sameBody(a, b dossier.Record) bool {
	x, err := dossier.EncodeBody(a.Kind, a.Body)
	if err != nil {
		return false
	}
	y, err := dossier.EncodeBody(b.Kind, b.Body)
	return err == nil && string(x) == string(y) && !a.Withdrawn
}

// headOf keeps what an edit by a phone says nothing about: who may see the record, and how it is known.
func headOf(edit, standing dossier.Head) dossier.Head {
	if edit.Mark == "" {
		edit.Mark = standing.Mark
	}
	if edit.Basis == "" {
		edit.Basis, edit.BasisNote, edit.BasisDate = standing.Basis, standing.BasisNote, standing.BasisDate
	}
	return edit
}
