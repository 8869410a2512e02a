package dossier

import (
	"fmt"
	"reflect"

	"oakum/quantity"
	"oakum/ship"
)

// Severity says how much a finding matters.
type Severity string

// The severities.
const (
	Wrong   Severity = "wrong"   // can't be so: a figure or a reference is false
	Doubt   Severity = "doubt"   // may be so, and should be looked at
	Missing Severity = "missing" // a sum can't be done without it
	Overdue Severity = "overdue" // its day has passed
)

// Finding is one thing that is missing, inconsistent or past its date.
type Finding struct {
	Rule     string   `json:"rule"`
	Severity Severity `json:"severity"`
	Kind     string   `json:"kind,omitempty"`
	ID       string   `json:"id,omitempty"`
	Place    string   `json:"place,omitempty"`
	What     string   `json:"what"` // a sentence
	Do       string   `json:"do"`   // what to do about it, a sentence
}

// most is how many findings of one rule and severity are told one by one; the rest are counted.
const most = 25

// rules in the order in which people should meet them.
var rules = []struct {
	name string
	look func(*checker)
}{
	{"ship", (*checker).ship},
	{"reference", (*checker).references},
	{"place", (*checker).places},
	{"future", (*checker).futureDates},
	{"currency", (*checker).currencies},
	{"lists", (*checker).lists},
	{"range", (*checker).ranges},
	{"plating", (*checker).plating},
	{"twice", (*checker).twice},
	{"temporary", (*checker).temporary},
	{"gland", (*checker).glands},
	{"shaft", (*checker).shafts},
	{"opening", (*checker).openings},
	{"spaces", (*checker).spaces},
	{"soundings", (*checker).soundings},
	{"drafts", (*checker).drafts},
	{"water-aboard", (*checker).waterAboard},
	{"protection", (*checker).protection},
	{"weights", (*checker).weights},
	{"money", (*checker).money},
	{"bids", (*checker).bids},
	{"choices", (*checker).choices},
	{"docking", (*checker).docking},
	{"calendar", (*checker).calendar},
	{"parts", (*checker).parts},
	{"overdue", (*checker).overdue},
}

// Check says what is missing, inconsistent or past its date on a day, and what to do about it. The same dossier and day give the same findings.
func Check(d *Dossier, day quantity.Date) []Finding {
	c := &checker{d: d, day: day, at: Locator(d), now: day}
	if p, ok := One[ship.Particulars](d); ok {
		c.particulars = p.Body
	}
	for _, r := range rules {
		c.rule, c.told = r.name, map[Severity]int{}
		r.look(c)
		for _, s := range []Severity{Wrong, Doubt, Missing, Overdue} {
			if more := c.told[s] - most; more > 0 {
				c.found = append(c.found, Finding{Rule: r.name, Severity: s, What: fmt.Sprintf("%d more findings of this sort are not listed.", more), Do: "Deal with those listed and check again."})
			}
		}
	}
	return c.found
}

type checker struct {
	d           *Dossier
	day         quantity.Date
	now         quantity.Date
	at          ship.Locator
	particulars ship.Particulars
	found       []Finding

	rule string
	told map[Severity]int // of this rule
}

// tell adds a finding about a record.
func (c *checker) tell(s Severity, r Record, what, do string) {
	f := Finding{Rule: c.rule, Severity: s, Kind: r.Kind, ID: r.ID, What: what, Do: do}
	if r.Body != nil {
		if p, ok := r.Place(); ok {
			f.Place = p.String()
		}
	}
	c.add(f)
}

// say adds a finding about the ship as a whole, or about a kind.
func (c *checker) say(s Severity, kind, what, do string) {
	c.add(Finding{Rule: c.rule, Severity: s, Kind: kind, What: what, Do: do})
}

func (c *checker) add(f Finding) {
	if c.told[f.Severity]++; c.told[f.Severity] <= most {
		c.found = append(c.found, f)
	}
}

// past tells whether a date has gone by.
func (c *checker) past(d quantity.Date) bool { return d.Before(c.now) }

// years since a date, 0 where there is none.
func (c *checker) years(since quantity.Date) float64 {
	if since.IsZero() {
		return 0
	}
	years, _ := since.YearsUntil(c.now)
	return years
}

// dates gives the dates of a record by key.
func dates(r Record, yield func(key, label string, d quantity.Date)) {
	v := reflect.ValueOf(r.Body).Elem()
	for _, i := range dateFields[r.Kind] {
		f := byName[r.Kind].Fields[i]
		if d, ok := f.Get(v).Interface().(quantity.Date); ok && !d.IsZero() {
			yield(f.Key, f.Label, d)
		}
	}
	if !r.BasisDate.IsZero() {
		yield("basis_date", "date of the evidence", r.BasisDate)
	}
}

var dateFields = map[string][]int{}

func init() {
	for _, k := range kinds {
		for i, f := range k.Fields {
			if f.Type == "date" {
				dateFields[k.Name] = append(dateFields[k.Name], i)
			}
		}
	}
}
