package dossier

import (
	"cmp"
	"encoding/json"
	"fmt"
	"maps"
	"slices"

	"oakum/survey"
)

// readingKey is what makes two thickness readings the same reading.
type readingKey struct {
	date, frame, strake, side, plate, number, height string
	thickness                                        float64
}

// twice looks for surveys imported twice: the same date, place and figure in two records.
func (c *checker) twice() {
	first := map[readingKey]int{}
	type couple struct{ a, b string }
	same := map[couple][]int{}
	all := All[survey.Thickness](c.d)
	for i := range all {
		b := &all[i].Body
		if b.Thickness == nil || b.Place.Frame == "" && b.Place.Strake == "" && b.Plate == "" {
			continue
		}
		k := readingKey{b.Date.String(), b.Frame + "-" + b.FrameTo, b.Strake, string(b.Side), b.Plate, b.Number, fmt.Sprint(orZero(b.Height), orZero(b.Offset)), *b.Thickness}
		j, seen := first[k]
		if !seen {
			first[k] = i
			continue
		}
		pair := couple{all[j].Body.Survey, b.Survey}
		same[pair] = append(same[pair], i)
	}
	counts := map[string]int{}
	for i := range all {
		counts[all[i].Body.Survey]++
	}
	keys := slices.SortedFunc(maps.Keys(same), func(x, y couple) int { return cmp.Or(cmp.Compare(x.a, y.a), cmp.Compare(x.b, y.b)) })
	for _, pair := range keys {
		rows := same[pair]
		r := RecordOf(all[rows[0]])
		switch n := len(rows); {
		case pair.a != pair.b && n >= 5:
			c.tell(Wrong, r, fmt.Sprintf("%d readings of the survey %q stand in the survey %q too, at the same places with the same figures.", n, name(pair.b), name(pair.a)), "Take back one of the two: it was imported twice.")
		case n >= 5 && n*3 >= counts[pair.a]:
			c.tell(Wrong, r, fmt.Sprintf("%d of the %d readings of the survey %q are there twice.", n, counts[pair.a], name(pair.a)), "Take back one import: the same file was read twice.")
		default:
			c.tell(Doubt, r, fmt.Sprintf("%d readings of the survey %q are the same as others at their place.", n, name(pair.b)), "If they were typed twice, take back one of each.")
		}
	}
	c.sameBodies()
}

func name(survey string) string {
	if survey == "" {
		return "without a name"
	}
	return survey
}

// sameBodies looks for records of the log kinds that are alike to the last letter.
func (c *checker) sameBodies() {
	for _, kind := range []string{"potential", "rectifier", "draft", "sounding", "leak", "receipt", "payment", "water", "depth", "weight", "anode"} {
		seen := map[string]string{}
		n, example := 0, Record{}
		for r := range c.d.Records(kind) {
			raw, err := EncodeBody(kind, r.Body)
			if err != nil || !json.Valid(raw) || len(raw) < 20 {
				continue
			}
			if _, twice := seen[string(raw)]; twice {
				n, example = n+1, r
			}
			seen[string(raw)] = r.ID
		}
		if n == 1 {
			c.tell(Doubt, example, fmt.Sprintf("The %s is there twice, alike in everything.", example.Label()), "If it was entered twice, take one back.")
		}
		if n > 1 {
			c.tell(Doubt, example, fmt.Sprintf("%d %s are there twice, alike in everything.", n, byName[kind].Plural), "If a file was read twice, take one import back.")
		}
	}
}
