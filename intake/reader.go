package intake

import (
	"reflect"
	"strconv"
	"strings"

	"oakum/app"
	"oakum/dossier"
	"oakum/field"
	"oakum/quantity"
	"oakum/ship"
)

// slot is one column that is read, with the field it fills.
type slot struct {
	col   int
	name  string // the column's letter
	head  string
	mean  meaning
	field int // in the codec; -1 for a meaning that is no field
	f     field.Field
	unit  string
}

// facet is one record that a row gives: a side, an end of the plate, or simply the row.
type facet struct{ side, end, of string }

// reader reads rows into records by a settled guess.
type reader struct {
	t        *Table
	kind     dossier.Kind
	profile  profile
	codec    *field.Codec
	mains    []int // columns of the reading
	days     map[string]dayRead
	figures  map[figureCell]figure // readings of potentials: a log has the same ones many times
	made     []dossier.Record      // of the row in hand
	typ      reflect.Type
	words    []word // headings of the kind
	names    func(string) bool
	shared   []slot
	losses   []int // columns of losses in per cent
	own      map[facet][]slot
	facets   []facet
	proto    reflect.Value
	given    []bool
	typed    map[string]string // of the facts
	habit    quantity.Habit
	point    quantity.Habit // for cells of a workbook with a point
	answers  map[string]string
	frames   float64 // sum for frames from the other end; 0 where they are the ship's
	strakes  []string
	zeroth   int // index of the strake that is number 1
	refs     map[string]map[string]string
	skip     map[string]bool            // fields that have a column
	bids     map[string]*dossier.Record // the bids that a price list is of, by the heading that names them, where they are made with it
	byNumber *slot                      // strakes by number, and by letter, where both have a column
	byLetter *slot

	from    string   // file and sheet, before the row
	above   []string // cells of the data row above, ditto marks resolved
	context map[string]string
}

// facets lists the records a row gives, in the order of their columns.
func (t *Table) facets() []facet {
	k, _ := dossier.KindNamed(t.guess.Kind)
	main := profileOf(k.Name).main
	var list []facet
	seen := map[facet]bool{}
	for _, c := range t.guess.Columns {
		m, ok := parseMeaning(c.Meaning, k)
		f := facetOn(m, c.Heading)
		if !ok || m.field != main || seen[f] {
			continue
		}
		seen[f] = true
		list = append(list, f)
	}
	if len(list) == 0 {
		list = []facet{{}}
	}
	return list
}

func (t *Table) reader() (*reader, error) {
	g := t.guess
	k, ok := dossier.KindNamed(g.Kind)
	if !ok {
		return nil, field.Refuse("kind", "say what the rows are")
	}
	body := k.New()
	r := &reader{t: t, kind: k, profile: t.profile(), typ: reflect.TypeOf(body).Elem(), own: map[facet][]slot{}, facets: t.facets(), answers: map[string]string{}, days: map[string]dayRead{}, figures: map[figureCell]figure{}, skip: map[string]bool{}, refs: map[string]map[string]string{}}
	r.codec = field.CodecOf(r.typ)
	r.words, r.names = r.profile.vocabulary(), t.named(r.profile)
	for _, q := range g.Questions {
		r.answers[q.Key] = q.Answer
	}
	if err := r.settle(g); err != nil {
		return nil, err
	}
	for _, c := range g.Columns {
		r.slot(c)
	}
	if err := r.facts(body); err != nil {
		return nil, err
	}
	return r, r.ofBid()
}

// settle turns the answers into habits.
func (r *reader) settle(g app.Guess) error {
	currency := "EUR" // as the folder form takes it where the ship says none
	if p, ok := dossier.One[ship.Particulars](r.t.ship); ok && p.Body.Currency != "" {
		currency = p.Body.Currency
	}
	r.habit = quantity.Habit{Currency: currency, Decimal: quantity.Decimal(g.Decimal), Dates: quantity.DateOrder(g.Dates)}
	if a := r.answers["decimal"]; a != "" && g.Decimal == "" {
		r.habit.Decimal = quantity.Decimal(a)
		if r.t.ev.marks.comma > 0 && r.t.ev.marks.point > 0 {
			r.habit.Decimal = "" // both are used: the answer goes for the open cells only
		}
	}
	if a := r.answers["dates"]; a != "" && g.Dates == "" {
		r.habit.Dates = quantity.DateOrder(a)
	}
	for key := range unitQuestions {
		if a := r.answers[strings.ReplaceAll(key, " ", "_")]; a != "" {
			r.habit.Units = append(r.habit.Units, a)
		}
	}
	r.point = r.habit
	r.point.Decimal = quantity.DecimalPoint
	switch a := r.answers["frames"]; {
	case a == "" || a == "same":
	case strings.HasPrefix(a, "reverse:"):
		sum, err := strconv.ParseFloat(strings.TrimPrefix(a, "reverse:"), 64)
		if err != nil || sum <= 0 || sum > 10000 {
			return field.Refuse("frames", "frames from the other end are answered as reverse:N, where N is the sum of the file's frame and the ship's, not %q", a)
		}
		r.frames = sum
	default:
		return field.Refuse("frames", "frames must be answered same or reverse:N, not %q", a)
	}
	if a := r.answers["strakes"]; a != "" && a != "names" {
		r.strakes = strakeNames(r.t.ship)
		r.zeroth = -1
		for i, n := range r.strakes {
			if n == a {
				r.zeroth = i
			}
		}
		if r.zeroth < 0 {
			return field.Refuse("strakes", "strake number 1 can't be %q: the ship's strakes are %s", a, strings.Join(r.strakes, ", "))
		}
	}
	return nil
}

// slot compiles one column.
func (r *reader) slot(c app.GuessedColumn) {
	m, ok := parseMeaning(c.Meaning, r.kind)
	if ok && m.field == meansLossShare {
		r.losses = append(r.losses, c.Index)
	}
	if !ok || derived[m.field] != "" {
		return
	}
	s := slot{col: c.Index, name: columnName(c.Index), head: c.Heading, mean: m, field: r.codec.Index(m.field), unit: c.Unit}
	if s.field >= 0 {
		s.f = r.codec.Field(s.field)
	}
	if s.unit == "" {
		s.unit = unitOf(s.f)
	}
	if s.unit == "lb_plate" && r.answers["plate"] != "" {
		s.unit = r.answers["plate"]
	}
	r.skip[m.field] = true
	if m.field == r.profile.main {
		r.mains = append(r.mains, s.col)
	}
	switch m.field {
	case meansStrakeNumber:
		r.byNumber = &s
	case "strake":
		r.byLetter = &s
	}
	if m.side == "" && m.end == "" && !m.each && !(m.field == r.profile.main && len(r.facets) > 1) {
		r.shared = append(r.shared, s)
		return
	}
	f := facetOn(m, c.Heading)
	for _, have := range r.facets {
		if have == f || f.of == "" && (have.side == f.side && f.end == "" || have.end == f.end && f.side == "") {
			r.own[have] = append(r.own[have], s)
		}
	}
}

// facts fills the prototype that every record starts from.
func (r *reader) facts(body any) error {
	r.proto = reflect.ValueOf(body).Elem()
	r.given = make([]bool, r.codec.Len())
	for i := range r.given {
		r.given[i] = r.codec.Field(i).Default != ""
	}
	d := draft{body: r.proto, given: r.given}
	for _, f := range r.t.guess.Facts {
		i := r.codec.Index(f.Field)
		if i < 0 || r.skip[f.Field] && f.Field != "date" || f.Text == "" {
			continue
		}
		s := slot{name: "", mean: meaning{field: f.Field}, field: i, f: r.codec.Field(i)}
		s.unit = unitOf(s.f)
		if err := r.plain(&d, s, f.Text); err != nil {
			return field.Refuse(f.Field, "what goes for every row, %s: %s", s.f.Label, reasonOf(err))
		}
	}
	r.typed = d.typed
	return nil
}
