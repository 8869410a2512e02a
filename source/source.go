// Package source is the bibliography: every work that a formula, a constant or a check leans on, by key.
package source

import "slices"

// Work is one source.
type Work struct {
	Key    string
	Author string
	Title  string
	Where  string // publisher, journal, number, year
	// Memory marks what was written from memory and must be confirmed against the document.
	Memory bool
}

// Ref points into a work: page, equation, table.
type Ref struct {
	Key string
	At  string
}

// works is the bibliography in order, and byKey where each work stands in it.
var works, byKey = func() ([]Work, map[string]int) {
	all := slices.Concat(general, afloat, docking, flooding, gland, plating, protection, coating, water, outlook, choice, money, handling, berth, calendar, record)
	slices.SortFunc(all, func(a, b Work) int {
		if a.Key < b.Key {
			return -1
		}
		return 1
	})
	at := map[string]int{}
	for i := len(all) - 1; i >= 0; i-- {
		at[all[i].Key] = i
	}
	return all, at
}()

// Works lists every work, sorted by key.
func Works() []Work { return slices.Clone(works) }

// Find returns the work with that key.
func Find(key string) (Work, bool) {
	if i, ok := byKey[key]; ok {
		return works[i], true
	}
	return Work{}, false
}

// String prints the reference as it stands on a sheet.
func (r Ref) String() string {
	w, ok := Find(r.Key)
	if !ok {
		return r.Key + " (not in the bibliography)"
	}
	s := w.String()
	if r.At != "" {
		s += "; " + r.At
	}
	if w.Memory {
		s += " (from memory: confirm against the document)"
	}
	return s
}

// String prints the work.
func (w Work) String() string {
	s := w.Title
	if w.Author != "" {
		s = w.Author + ": " + s
	}
	if w.Where != "" {
		s += ", " + w.Where
	}
	return s
}
