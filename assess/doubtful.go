package assess

import (
	"fmt"
	"slices"
	"strings"

	"oakum/dossier"
	"oakum/formula/gland"
	"oakum/quantity"
	"oakum/ship"
	"oakum/survey"
)

// rolledOver is how much over its nominal thickness a plate may leave the mill, and what a rough or painted one may read more than it is, m: 14 % (Army TB
// 55-1900-201-45, E-11), and half a millimetre of paint, common practice.
const (
	rolledOver = 1.14
	overPaint  = 0.5e-3
)

// heaviest is the thickest plate on record, m; 0 where none is.
func (c *inquiry) heaviest() float64 {
	most := 0.0
	for _, e := range dossier.All[ship.Plate](c.d) {
		most = max(most, orElse(e.Body.Thickness, 0), orElse(e.Body.AsBuilt, 0))
	}
	for _, e := range dossier.All[ship.Strake](c.d) {
		most = max(most, orElse(e.Body.Thickness, 0))
	}
	for _, e := range dossier.All[ship.Doubler](c.d) {
		most = max(most, orElse(e.Body.Thickness, 0))
	}
	return most
}

// setAside takes out the readings that can't be right and those that stand twice, and says of each where it lies and why. They stay in the records.
func (c *inquiry) setAside(p *StandingPage, list []reading) []reading {
	most := c.heaviest()
	seen := make(map[readingKey]string, len(list)) // where the first of each came from
	twice := map[string][]reading{}
	kept := make([]reading, 0, len(list))
	for _, r := range list {
		t := asReading(r, "").Thickness
		if most > 0 && t > rolledOver*most+overPaint {
			p.Doubtful = append(p.Doubtful, Notice{What: fmt.Sprintf("A reading of %s: her heaviest plate is %s. It is set aside.", quantity.Format(t, "mm", -1), quantity.Format(most, "mm", -1)),
				Do: "Look at the sheet of the day: the decimal point, the unit, the echo counted twice.", Kind: "thickness", ID: r.head.ID, Place: r.body.Place.String(), Page: "standing", Worry: 1})
			continue
		}
		key := readingKey{r.body.Date, r.spot.X, orElse(r.body.Height, -1), r.body.Frame, r.body.Strake, r.body.Number, r.body.Side, t}
		if first, again := seen[key]; again && sameReading(first, r.head.From) {
			twice[surveyOf(r.body)] = append(twice[surveyOf(r.body)], r)
			continue
		} else if !again {
			seen[key] = r.head.From
		}
		kept = append(kept, r)
	}
	for _, name := range slices.Sorted(mapKeys(twice)) {
		first := twice[name][0]
		p.Doubtful = append(p.Doubtful, Notice{What: fmt.Sprintf("%s of %s %s entered twice, the first at %s: counted once.", count(len(twice[name]), "reading", "readings"), name, isAre(len(twice[name])), first.body.Place),
			Do: "Take back the import that came second, or withdraw these records.", Kind: "thickness", ID: first.head.ID, Place: first.body.Place.String(), Page: "standing", Worry: 1})
	}
	return kept
}

// readingKey is what two readings share that are one.
type readingKey struct {
	date                  quantity.Date
	x, height             float64
	frame, strake, number string
	side                  ship.Side
	thickness             float64
}

func isAre(n int) string {
	if n == 1 {
		return "is"
	}
	return "are"
}

func surveyOf(b survey.Thickness) string {
	if b.Survey != "" {
		return "the survey " + b.Survey
	}
	return "the survey of " + b.Date.String()
}

// sameReading tells whether two records that agree in day, place, number and thickness are one reading: those of two rows of one file are two readings
// of a careful gauger.
func sameReading(a, b string) bool {
	fileA, rowA := fileAndRow(a)
	fileB, rowB := fileAndRow(b)
	return fileA != fileB || rowA == rowB
}

// fileAndRow parts "list.csv, sheet A, row 5".
func fileAndRow(from string) (file, row string) {
	if i := strings.LastIndex(from, ", "); i >= 0 {
		return from[:i], from[i:]
	}
	return "", from
}

// doubtfulParts says which glands, shaft lines and potentials were entered with what can't be.
func (c *inquiry) doubtfulParts(p *StandingPage) {
	for _, e := range dossier.All[ship.Gland](c.d) {
		if why := packingWrong(e.Body); why != "" {
			p.Doubtful = append(p.Doubtful, Notice{What: e.Body.Name + ": " + why, Do: "Measure box and sleeve again, at several depths.", Kind: "gland", ID: e.ID, Place: e.Body.Place.String(), Page: "standing", Worry: 1})
		}
	}
	for _, s := range p.Shafts {
		for _, k := range s.Cases[:min(1, len(s.Cases))] {
			if k.Why != "" {
				p.Doubtful = append(p.Doubtful, Notice{What: s.Name + ": what its bearings carry can't be worked: " + k.Why + ".", Do: "Mend the lengths and bearings of this line.", Kind: "shaft_line", ID: s.ID, Place: s.Side, Page: "standing", Worry: 1})
			}
		}
	}
	unread := map[string][]dossier.Entry[survey.Potential]{}
	for _, e := range dossier.All[survey.Potential](c.d) {
		if e.Body.Reading != nil && (e.Body.Electrode == "" || e.Body.Electrode == "unknown") {
			unread[e.Body.Date.String()] = append(unread[e.Body.Date.String()], e)
		}
	}
	for _, day := range slices.Sorted(mapKeys(unread)) {
		first := unread[day][0]
		p.Doubtful = append(p.Doubtful, Notice{What: fmt.Sprintf("%s of %s without their electrode: what they say of protection is unknown.", count(len(unread[day]), "potential", "potentials"), day),
			Do: "Ask who read them which cell was used, and enter it.", Kind: "potential", ID: first.ID, Place: first.Body.Place.String(), Page: "standing", Worry: 1})
	}
}

// packingWrong says what of a gland's sizes can't be, or "".
func packingWrong(b ship.Gland) string {
	if b.Bore == nil || b.Shaft == nil {
		return ""
	}
	in := gland.Rings.New()
	in.Bore, in.Shaft, in.BoxDepth = *b.Bore, *b.Shaft, b.BoxDepth
	if b.Rings != nil {
		in.Rings = *b.Rings
	}
	out, err := gland.Rings.Fn(in)
	switch {
	case err != nil:
		return err.Error() + "."
	case b.RingDepth != nil && b.BoxDepth != nil && *b.RingDepth*float64(in.Rings) > *b.BoxDepth:
		return fmt.Sprintf("%d rings of %s are deeper than their box of %s.", in.Rings, quantity.Format(*b.RingDepth, "mm", -1), quantity.Format(*b.BoxDepth, "mm", -1))
	case out.RingsThatFit != nil && *out.RingsThatFit < float64(in.Rings):
		return fmt.Sprintf("%d rings of %s square are entered; its box of %s takes %g.", in.Rings, quantity.Format(out.Section, "mm", -1), quantity.Format(*b.BoxDepth, "mm", -1), *out.RingsThatFit)
	}
	return ""
}
