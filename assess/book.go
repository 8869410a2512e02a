package assess

import (
	"reflect"
	"sync"

	"oakum/calc"
	"oakum/field"
)

// Book holds the sheets of a brief by ID. A sheet is made when it is asked for: a ship with a hundred thousand readings has as many sheets,
// and nobody opens more than a few.
type Book struct {
	mu     sync.Mutex
	ids    []string
	makers map[string]func() (calc.Sheet, error)
	memo   *Memo // what has been worked before
}

func newBook() *Book { return &Book{makers: map[string]func() (calc.Sheet, error){}} }

// IDs lists the sheets in the order they were entered.
func (b *Book) IDs() []string {
	b.mu.Lock()
	defer b.mu.Unlock()
	return append([]string{}, b.ids...)
}

// Sheet makes the sheet with that ID.
func (b *Book) Sheet(id string) (calc.Sheet, bool) {
	b.mu.Lock()
	mk, ok := b.makers[id]
	b.mu.Unlock()
	if !ok {
		return calc.Sheet{}, false
	}
	s, err := mk()
	return s, err == nil
}

// enter puts a call of a formula into the book under method@subject and returns the sheet's ID; words says in plain words what it is about.
func enter[In, Out any](b *Book, f calc.Formula[In, Out], subject, words string, in In, given map[string]field.Given) string {
	id := f.ID + "@" + subject
	b.mu.Lock()
	defer b.mu.Unlock()
	if _, twice := b.makers[id]; !twice {
		b.ids = append(b.ids, id)
	}
	b.makers[id] = func() (calc.Sheet, error) {
		s, _, err := f.Sheet(in, given)
		s.ID, s.Subject = id, words
		return s, err
	}
	return id
}

// enterLater is enter for an input that is itself heavy to make: it is made when the sheet is asked for.
func enterLater[In, Out any](b *Book, f calc.Formula[In, Out], subject, words string, build func() (In, map[string]field.Given, error)) string {
	id := f.ID + "@" + subject
	b.mu.Lock()
	defer b.mu.Unlock()
	if _, twice := b.makers[id]; !twice {
		b.ids = append(b.ids, id)
	}
	b.makers[id] = func() (calc.Sheet, error) {
		in, given, err := build()
		if err != nil {
			return calc.Sheet{}, err
		}
		s, _, err := f.Sheet(in, given)
		s.ID, s.Subject = id, words
		return s, err
	}
	return id
}

// worked is what a formula gave.
type worked[Out any] struct {
	sheet calc.Sheet
	out   Out
}

// work runs a formula, enters its sheet, and returns the sheet with its results. What a slow formula gives is kept in the memo.
func work[In, Out any](b *Book, f calc.Formula[In, Out], subject, words string, in In, given map[string]field.Given) (calc.Sheet, Out, error) {
	run := func() (w worked[Out], err error) {
		w.sheet, w.out, err = f.Sheet(in, given)
		return w, err
	}
	w, err := worked[Out]{}, error(nil)
	if f.Samples == 0 {
		w, err = run()
	} else {
		w, err = recall(b.memo, f.ID, run, uint64(reflect.ValueOf(f.Fn).Pointer()), in, given)
	}
	s, out := w.sheet, w.out
	if err != nil {
		return s, out, err
	}
	s.ID, s.Subject = enter(b, f, subject, words, in, given), words
	return s, out, nil
}

// how says how an input is known, for the given map of a sheet.
func how(basis field.Basis, note string) field.Given { return field.Given{Basis: basis, Note: note} }
