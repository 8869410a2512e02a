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

// set puts records in, each in place of the one with its ID. One or two are put in where they belong; more are sorted and laid between the others in one
// pass, as every insertion moves all that stand behind it.
func (e *entries[T]) set(records []Record) {
	if len(records) > 2 {
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
	add := make([]Entry[T], len(records))
	for i, r := range records {
		add[i] = Entry[T]{r.Head, *r.Body.(*T)}
	}
	byID := func(a, b Entry[T]) int { return strings.Compare(a.ID, b.ID) }
	if !slices.IsSortedFunc(add, byID) {
		slices.SortStableFunc(add, byID)
	}
	old := e.rows
	e.rows = make([]Entry[T], 0, len(old)+len(add))
	for k := range add {
		if k+1 < len(add) && add[k+1].ID == add[k].ID {
			continue // the later one stands
		}
		i, found := slices.BinarySearchFunc(old, add[k].ID, func(row Entry[T], id string) int { return strings.Compare(row.ID, id) })
		e.rows = append(append(e.rows, old[:i]...), add[k])
		if found {
			i++
		}
		old = old[i:]
	}
	e.rows = append(e.rows, old...)
}

func (e *entries[T]) drop(id string) {
	if i, found := e.place(id); found {
		e.rows = slices.Delete(e.rows, i, i+1)
	}
}

func (e *entries[T]) clone() list { return &entries[T]{e.kind, slices.Clone(e.rows)} }
