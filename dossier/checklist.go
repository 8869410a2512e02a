package dossier

import (
	"fmt"
	"reflect"
	"strings"
)

// pairs are lists that must have as many entries as one another.
var pairs = map[string][][]string{
	"frame_system":  {{"spacing_from", "spacing"}},
	"strake":        {{"x", "lower", "upper"}},
	"hull_form":     {{"stations", "half_breadths"}, {"stations", "keel_heights"}, {"stations", "deck_heights"}},
	"tank":          {{"table_sounding", "table_volume"}, {"table_sounding", "table_inertia"}},
	"tide":          {{"constituents", "amplitudes", "phases"}},
	"impressed_set": {{"anode_x", "anode_y", "anode_z"}},
	"course":        {{"criteria", "scores"}, {"criteria", "scores_low"}, {"criteria", "scores_high"}},
	"voice":         {{"criteria", "swings"}},
	"activity":      {{"crews", "crew_count"}},
}

// rising are lists whose numbers must rise.
var rising = map[string][]string{
	"frame_system": {"spacing_from"}, "strake": {"x"}, "hull_form": {"stations", "waterlines"}, "tank": {"table_sounding", "table_volume"},
}

// lists looks for lists that should have the same length, or should rise.
func (c *checker) lists() {
	for _, k := range kinds {
		if pairs[k.Name] == nil {
			continue
		}
		for r := range c.d.Records(k.Name) {
			for _, keys := range pairs[k.Name] {
				c.sameLength(r, keys)
			}
			for _, key := range rising[k.Name] {
				c.rises(r, key)
			}
			if k.Name == "hull_form" {
				c.gridShape(r)
			}
		}
	}
}

func (c *checker) sameLength(r Record, keys []string) {
	v := reflect.ValueOf(r.Body).Elem()
	first, _ := byName[r.Kind].Field(keys[0])
	n := first.Get(v).Len()
	for _, key := range keys[1:] {
		f, _ := byName[r.Kind].Field(key)
		m := f.Get(v).Len()
		if m != n && m != 0 && n != 0 {
			c.tell(Wrong, r, fmt.Sprintf("The %s has %d entries for %s and %d for %s.", r.Label(), n, first.Label, m, f.Label), "Give one entry for each.")
		}
	}
}

func (c *checker) rises(r Record, key string) {
	f, _ := byName[r.Kind].Field(key)
	list, _ := f.Get(reflect.ValueOf(r.Body).Elem()).Interface().([]float64)
	for i := 1; i < len(list); i++ {
		if list[i] < list[i-1] {
			c.tell(Wrong, r, fmt.Sprintf("The %s of the %s do not rise: %g comes after %g.", f.Label, r.Label(), f.Declared(list[i]), f.Declared(list[i-1])), "Put the list in order, each entry with its own partner.")
			return
		}
	}
}

func (c *checker) gridShape(r Record) {
	v := reflect.ValueOf(r.Body).Elem()
	grid, _ := byName[r.Kind].Field("half_breadths")
	lines, _ := byName[r.Kind].Field("waterlines")
	n := lines.Get(v).Len()
	for i, row := range grid.Get(v).Interface().([][]float64) {
		if len(row) != n {
			c.tell(Wrong, r, fmt.Sprintf("Station %d of the %s has %d half breadths for %d waterlines.", i+1, r.Label(), len(row), n), "Give one half breadth for each waterline.")
			return
		}
	}
}

// threes are fields that must rise from low over likely to high, and pairs that must rise.
var threes = map[string][][]string{
	"course": {{"cost_low", "cost_likely", "cost_high"}}, "work": {{"low", "likely", "high"}, {"quantity_low", "quantity", "quantity_high"}},
	"rate": {{"low", "likely", "high"}}, "reserve": {{"low", "likely", "high"}}, "activity": {{"low", "likely", "high"}},
	"compartment": {{"x0", "x1"}, {"y0", "y1"}, {"z0", "z1"}}, "tank": {{"x0", "x1"}, {"y0", "y1"}, {"z0", "z1"}}, "segment": {{"x0", "x1"}, {"inner_diameter", "outer_diameter"}},
	"coating_zone": {{"x0", "x1"}, {"z0", "z1"}}, "weight": {{"x0", "lcg", "x1"}}, "shaft_line": {{"x_aft", "x_fwd"}}, "gland": {{"shaft", "bore"}, {"travel_left", "follower_travel"}},
	"berth": {{"salinity_low", "salinity_high"}, {"temperature_low", "temperature_high"}}, "life": {}, "particulars": {{"beam", "beam_extreme"}, {"lbp", "length_overall"}, {"keel_aft", "keel_fwd"}},
	"dock": {{"entrance_width", "floor_width"}}, "impressed_set": {}, "tide": {{"neap_range", "spring_range"}},
}

// ranges looks for figures that should rise and do not.
func (c *checker) ranges() {
	for _, k := range kinds {
		for _, keys := range threes[k.Name] {
			for r := range c.d.Records(k.Name) {
				c.inOrder(r, keys)
			}
		}
	}
}

func (c *checker) inOrder(r Record, keys []string) {
	v := reflect.ValueOf(r.Body).Elem()
	last, lastKey := (*float64)(nil), ""
	for _, key := range keys {
		f, _ := byName[r.Kind].Field(key)
		x, _ := f.Get(v).Interface().(*float64)
		if x == nil {
			continue
		}
		if last != nil && *x < *last-1e-9 {
			before, _ := byName[r.Kind].Field(lastKey)
			c.tell(Wrong, r, fmt.Sprintf("The %s has a %s of %s, less than its %s of %s.", r.Label(), f.Label, shown(f.Declared(*x), f.Unit), before.Label, shown(before.Declared(*last), before.Unit)),
				"Correct the two: they may be swapped.")
			return
		}
		last, lastKey = x, key
	}
}

func shown(x float64, unit string) string {
	return strings.TrimSpace(fmt.Sprintf("%g %s", x, strings.TrimPrefix(unit, "-")))
}
