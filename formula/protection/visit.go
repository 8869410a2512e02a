package protection

import (
	"cmp"
	"fmt"
	"slices"
	"strconv"
	"strings"

	"oakum/formula/potential"
	"oakum/quantity"
)

// state is what one visit found.
type state int

const (
	unknown   state = iota // current, but no potential read
	protected              // potential at the target or beyond
	over                   // beyond -1100 mV
	short                  // current below its rating, potential short
	saturated              // current at its rating, potential short
	tripped                // no current, potential free or not read
)

func (s state) bad() bool { return s == short || s == saturated || s == tripped }

// visit is the rows of one date and time.
type visit struct {
	at          float64 // days
	date        quantity.Date
	first, last int // rows, from 0, in the log's order
	current     *float64
	temperature *float64
	conduct     *float64
	worst, best *float64 // most positive and most negative potential
	state       state
}

// visits puts rows in order of time and joins those of one moment.
func (in LogIn) visits() []visit {
	order := make([]int, len(in.Rows))
	for i := range order {
		order[i] = i
	}
	slices.SortStableFunc(order, func(a, b int) int {
		x, y := in.Rows[a], in.Rows[b]
		return cmp.Or(x.Date.First().Compare(y.Date.First()), strings.Compare(clock(x.Time), clock(y.Time)))
	})
	var out []visit
	for _, i := range order {
		r := in.Rows[i]
		at := r.at()
		if n := len(out); n == 0 || out[n-1].at != at {
			out = append(out, visit{at: at, date: r.Date, first: i, last: i})
		}
		out[len(out)-1].join(i, r)
	}
	for i := range out {
		out[i].state = in.state(out[i])
	}
	return out
}

func (v *visit) join(i int, r LogRow) {
	v.first, v.last = min(v.first, i), max(v.last, i)
	for _, p := range []struct {
		from *float64
		to   **float64
	}{{r.Current, &v.current}, {r.Temperature, &v.temperature}, {r.Conductivity, &v.conduct}} {
		if *p.to == nil {
			*p.to = p.from
		}
	}
	if r.Potential != nil {
		if v.worst == nil || *r.Potential > *v.worst {
			v.worst = r.Potential
		}
		if v.best == nil || *r.Potential < *v.best {
			v.best = r.Potential
		}
	}
}

// clock writes 7:05 as 07:05, so that times sort as text.
func clock(t string) string {
	if len(t) > 1 && t[1] == ':' {
		return "0" + t
	}
	return t
}

// at is the moment of a row in days: the first day of its date, and its time of day where that is written.
func (r LogRow) at() float64 {
	days := float64(r.Date.First().Unix()) / day
	if h, m, ok := hourMinute(r.Time); ok && h < 24 && m < 60 {
		days += (float64(h) + float64(m)/60) / 24
	}
	return days
}

// hourMinute reads 14:30, and whatever else begins with an hour and a minute.
func hourMinute(t string) (h, m int, ok bool) {
	if len(t) == 5 && t[2] == ':' {
		hour, wrong := strconv.Atoi(t[:2])
		minute, wrongToo := strconv.Atoi(t[3:])
		if wrong == nil && wrongToo == nil {
			return hour, minute, true
		}
	}
	n, _ := fmt.Sscanf(t, "%d:%d", &h, &m)
	return h, m, n == 2
}

// no current is less than a hundredth of the rating, or a twentieth of an ampere.
func (in LogIn) none(current float64) bool {
	if in.Rated != nil {
		return current <= 0.01**in.Rated
	}
	return current <= 0.05
}

func (in LogIn) state(v visit) state {
	off := v.current != nil && in.none(*v.current)
	switch {
	case v.worst == nil && off:
		return tripped
	case v.worst == nil:
		return unknown
	case off && *v.worst >= in.Free:
		return tripped
	case *v.worst <= in.Target+1e-9 && *v.best < potential.OverProtected-1e-9:
		return over
	case *v.worst <= in.Target+1e-9:
		return protected
	case in.Rated != nil && v.current != nil && *v.current >= 0.98**in.Rated:
		return saturated
	}
	return short
}
