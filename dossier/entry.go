package dossier

import (
	"slices"
	"sort"
	"strings"
)

// Entry is a record with its type.
type Entry[T any] struct {
	Head
	Body T
}

// list holds the records of one kind, whose type the holder does not know. Records stand in the order of their IDs.
type list interface {
	len() int
	at(i int) Record
	place(id string) (int, bool)
	set(records []Record)
	drop(id string)
	clone() list
}

type entries[T any] struct {
	kind string
	rows []Entry[T]
}

func (e *entries[T]) len() int { return len(e.rows) }

func (e *entries[T]) at(i int) Record { return Record{e.rows[i].Head, &e.rows[i].Body} }

func (e *entries[T]) place(id string) (int, bool) {
	return sort.Find(len(e.rows), func(i int) int { return strings.Compare(id, e.rows[i].ID) })
}

// set puts records in, each in place of the one with its ID. Few are put in one by one; many are sorted once.
func (e *entries[T]) set(records []Record) {
	if len(records) > 16 && len(records)*8 > len(e.rows) {
		e.merge(records)
		return
	}
	for _, r := range records {
		row := Entry[T]{r.Head, *r.Body.(*T)}
		if i, found := e.place(r.ID); found {
			e.rows[i] = row
		} else {
			e.rows = slices.Insert(e.rows, i, row)
		}
	}
}

func (e *entries[T]) merge(records []Record) {
	e.rows = slices.Grow(e.rows, len(records))
	for _, r := range records {
		e.rows = append(e.rows, Entry[T]{r.Head, *r.Body.(*T)})
	}
	byID := func(a, b Entry[T]) int { return strings.Compare(a.ID, b.ID) }
	if !slices.IsSortedFunc(e.rows, byID) {
		slices.SortStableFunc(e.rows, byID)
	}
	kept := e.rows[:0]
	for i := range e.rows {
		if n := len(kept); n > 0 && kept[n-1].ID == e.rows[i].ID {
			kept[n-1] = e.rows[i]
		} else {
			kept = append(kept, e.rows[i])
		}
	}
	clear(e.rows[len(kept):])
	e.rows = kept
}

func (e *entries[T]) drop(id string) {
	if i, found := e.place(id); found {
		e.rows = slices.Delete(e.rows, i, i+1)
	}
}

func (e *entries[T]) clone() list { return &entries[T]{e.kind, slices.Clone(e.rows)} }
