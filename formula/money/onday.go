package money

import (
	"fmt"
	"math"
	"slices"

	"oakum/field"
	"oakum/quantity"
)

// AskedDay is a day on which something would have to be signed.
type AskedDay struct {
	Name string        `key:"name" optional:"yes" label:"what for"`
	Date quantity.Date `key:"date" label:"day"`
}

// OnDay is what can be signed for on a day, if people give on as they have given.
type OnDay struct {
	Name    string        `key:"name" label:"what for"`
	Date    quantity.Date `key:"date" label:"day"`
	Chance  float64       `key:"chance" label:"chance that the wanted scope can be signed for by then"`
	Free    float64       `key:"free" unit:"money" label:"free to sign then, as likely more as less"`
	Needed  float64       `key:"needed" unit:"money" label:"sum to sign the wanted scope with, at the prices of then"`
	Short   float64       `key:"short" unit:"money" label:"short of it, as likely more as less"`
	ShortAt float64       `key:"short_p80" unit:"money" label:"short of it at most, eight times in ten"`
}

// cent is what sums may be off by and still be equal.
const cent = 0.01

// onDays looks at the futures of giving on the days that were asked for. A month counts when it is over. Where no giving is known none is counted.
func (out *SignOut) onDays(in SignIn) error {
	out.OnDay = []OnDay{}
	if len(in.Days) == 0 || out.Needed == nil {
		return nil
	}
	if in.AsOf.IsZero() {
		return field.Refuse("as_of", "as_of is missing: give the day up to which the account is whole")
	}
	ahead := make([]int, len(in.Days))
	for i, d := range in.Days {
		if d.Date.Day() == 0 {
			return field.Refuse(fmt.Sprintf("days[%d].date", i), "days[%d] needs a day, not %q", i, d.Date)
		}
		ahead[i] = min(max(monthOf(d.Date)-monthOf(in.AsOf)-1, 0), int(12*in.Horizon))
		if out.Giving != nil {
			ahead[i] = min(max(monthOf(d.Date)-out.Giving.next, 0), int(12*in.Horizon))
		}
	}
	given := out.given(ahead)
	for i, d := range in.Days {
		years, _ := in.AsOf.YearsUntil(d.Date)
		o := OnDay{Name: d.Name, Date: d.Date, Needed: *out.Needed * math.Pow(1+in.Escalation, max(years, 0))}
		slices.Sort(given[i])
		n := len(given[i])
		sure := func(p float64) float64 { return in.free(out.Own + given[i][n-int(math.Ceil(p*float64(n)))]) } // at least so much with chance p
		o.Free = sure(0.5)
		o.Short, o.ShortAt = max(o.Needed-o.Free, 0), max(o.Needed-sure(0.8), 0)
		enough := 0
		for _, g := range given[i] {
			if in.free(out.Own+g) >= o.Needed-cent {
				enough++
			}
		}
		o.Chance = float64(enough) / float64(n)
		out.OnDay = append(out.OnDay, o)
	}
	return nil
}

// given is, for each number of months ahead, what was given by then in every future.
func (out *SignOut) given(ahead []int) [][]float64 {
	list := make([][]float64, len(ahead))
	if out.Giving == nil {
		for i := range list {
			list[i] = []float64{0}
		}
		return list
	}
	last := slices.Max(ahead)
	for k := range uint64(futures) {
		month := out.Giving.months(k)
		sums := make([]float64, last+1)
		for m := range last {
			sums[m+1] = sums[m] + month(m)
		}
		for i, a := range ahead {
			list[i] = append(list[i], sums[a])
		}
	}
	return list
}
