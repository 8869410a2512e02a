package quantity

import "math"

// Potentials on a ship lie within about 2.5 V of any reference electrode, and
// readings are written to the millivolt (common practice): a bare number below
// the first limit in a column of millivolts may be volts, one above the second
// in a column of volts may be millivolts.
const (
	leastMillivolts = 5.0
	mostVolts       = 5.0
)

// ParsePotential reads a potential as [Parse] does, column being V or mV, and
// asks about the two things that logs leave out: the sign ("850" for -850 mV)
// and the unit ("-.80" among millivolts). Alternatives start with the text as
// it stands.
func ParsePotential(text, column string) (Reading, error) {
	return Habit{}.ParsePotential(text, column)
}

// ParsePotential reads a potential by the habit of a writer.
func (h Habit) ParsePotential(text, column string) (Reading, error) {
	c, err := h.read(text, column)
	if err != nil {
		return Reading{Text: text}, err
	}
	r := c.Reading
	all := r.Alternatives
	if len(all) == 0 {
		all = []Reading{{Value: r.Value, Unit: r.Unit, Text: r.Text, Flags: r.Flags}}
	}
	if !c.typed {
		all = eachWay(all, otherScale, FlagScale, &r)
	}
	if !c.signed {
		all = eachWay(all, otherSign, FlagSignMissing, &r)
	}
	if len(all) > 1 {
		r.Alternatives = all
	}
	return r, nil
}

// eachWay adds after the readings what other makes of each, and flags r where
// it makes anything.
func eachWay(all []Reading, other func(Reading) (Reading, bool), flag Flag, r *Reading) []Reading {
	grown := all
	for _, a := range all {
		if b, ok := other(a); ok {
			grown = append(grown, b)
		}
	}
	if len(grown) > len(all) {
		r.Flags = append(r.Flags, flag)
	}
	return grown
}

func otherScale(r Reading) (Reading, bool) {
	size := math.Abs(r.Value)
	switch {
	case r.Unit == "mV" && size > 0 && size < leastMillivolts*1e-3:
		r.Value, r.Unit = r.Value*1e3, "V"
		return r, true
	case r.Unit == "V" && size > mostVolts:
		r.Value, r.Unit = r.Value/1e3, "mV"
		return r, true
	}
	return r, false
}

func otherSign(r Reading) (Reading, bool) {
	if r.Value == 0 {
		return r, false
	}
	r.Value = -r.Value
	return r, true
}
