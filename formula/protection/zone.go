package protection

import (
	"fmt"
	"strings"

	"oakum/field"
)

// Coating is how a coat of paint gives way: the share of bare metal is a + b times its age, at most 1.
type Coating struct {
	A   float64 `key:"a" min:"0" max:"1" label:"share of bare metal when new"`
	B   float64 `key:"b" unit:"1/y" min:"0" max:"1" label:"more of it each year"`
	Age float64 `key:"age" unit:"y" default:"0" min:"0" max:"200" label:"age of the coat now"`
}

// Bare is the share of bare metal so many years from now.
func (c Coating) Bare(years float64) float64 { return min(c.A+c.B*(c.Age+years), 1) }

// MeanBare is its mean from now over so many years, exact where it reaches 1 on the way.
func (c Coating) MeanBare(years float64) float64 {
	start := c.A + c.B*c.Age
	if start >= 1 {
		return 1
	}
	if years == 0 || c.B == 0 {
		return start
	}
	full := (1 - start) / c.B // years until all is bare
	if full >= years {
		return start + c.B*years/2
	}
	return 1 - (1-start)*full/years/2
}

// Zone is a wetted surface with one metal and one coating.
type Zone struct {
	Name      string   `key:"name" optional:"yes" label:"zone"`
	Area      float64  `key:"area" unit:"m2" symbol:"A" over:"0" max:"1e6" label:"wetted area"`
	Density   float64  `key:"density" unit:"mA/m2" symbol:"i" over:"0" max:"5000" label:"current density on the bare metal, or over painted metal taken whole with breakdown 1"`
	Initial   *float64 `key:"density_initial" unit:"mA/m2" over:"0" max:"5000" label:"the same at the start" help:"the mean one where left out"`
	Final     *float64 `key:"density_final" unit:"mA/m2" over:"0" max:"5000" label:"the same at the end" help:"the mean one where left out"`
	Breakdown *float64 `key:"breakdown" symbol:"f" min:"0" max:"1" label:"share of bare metal, the same over the whole life" help:"1 for a bare bronze propeller"`
	Coating   *Coating `key:"coating" label:"or a coat that gives way with age"`
	Metal     string   `key:"metal" optional:"yes" label:"metal"`
}

// moments are the start of life, its mean and its end.
type moments struct{ initial, mean, final float64 }

func (z Zone) bare(life float64) moments {
	switch {
	case z.Coating != nil:
		return moments{z.Coating.Bare(0), z.Coating.MeanBare(life), z.Coating.Bare(life)}
	case z.Breakdown != nil:
		return moments{*z.Breakdown, *z.Breakdown, *z.Breakdown}
	}
	return moments{1, 1, 1}
}

func (z Zone) density() moments {
	d := moments{z.Density, z.Density, z.Density}
	if z.Initial != nil {
		d.initial = *z.Initial
	}
	if z.Final != nil {
		d.final = *z.Final
	}
	return d
}

func (z Zone) current(life float64) moments {
	f, d := z.bare(life), z.density()
	return moments{z.Area * d.initial * f.initial, z.Area * d.mean * f.mean, z.Area * d.final * f.final}
}

func checkZones(zones []Zone, life *float64) error {
	if len(zones) == 0 {
		return field.Refuse("zones", "zones is empty: give at least one wetted surface")
	}
	for i, z := range zones {
		switch {
		case z.Breakdown != nil && z.Coating != nil:
			return field.Refuse(fmt.Sprintf("zones[%d].breakdown", i), "zones[%d] gives a breakdown and a coating: give one of them", i)
		case z.Coating != nil && life == nil:
			return field.Refuse("life", "life is missing: zones[%d] has a coating that gives way with age; give life in y", i)
		}
	}
	return nil
}

var noble = []string{"bronze", "brass", "copper", "stainless"}

func (z Zone) isNoble() bool {
	for _, m := range noble {
		if strings.Contains(strings.ToLower(z.Metal), m) {
			return true
		}
	}
	return false
}

func (z Zone) warnings(i int) (w []string) {
	name := z.Name
	if name == "" {
		name = fmt.Sprintf("zones[%d]", i)
	}
	if z.Breakdown == nil && z.Coating == nil {
		w = append(w, name+" gives neither breakdown nor coating and is taken whole (breakdown 1)")
	}
	if z.isNoble() && (z.Coating != nil || z.Breakdown != nil && *z.Breakdown < 1) {
		w = append(w, name+" is of a nobler metal and not counted as bare: a propeller's paint is gone after its first turns")
	}
	if z.Density < 1e-4 {
		w = append(w, name+" has a current density under 0.1 mA/m2: was it typed in A/m2?")
	}
	return w
}
