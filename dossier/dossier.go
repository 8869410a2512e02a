package dossier

import (
	"fmt"
	"iter"
	"maps"
	"reflect"
)

// Dossier is every record of one ship. Reading it from several goroutines is safe; a change is made on a Clone while others read.
type Dossier struct {
	lists     map[string]list // by kind, the records that stand
	withdrawn map[string]list // by kind, the records taken back
	own       map[list]bool   // the lists that no clone shares
	kindOf    map[string]string
}

// New returns an empty dossier.
func New() *Dossier {
	return &Dossier{lists: map[string]list{}, withdrawn: map[string]list{}, own: map[list]bool{}, kindOf: map[string]string{}}
}

// All returns the records of one kind in the order of their IDs, without those withdrawn. The slice is the dossier's own: read it only.
func All[T any](d *Dossier) []Entry[T] {
	if l, ok := d.lists[KindOf[T]()].(*entries[T]); ok {
		return l.rows
	}
	return nil
}

// One returns the first record of a kind: for kinds of which a ship has one.
func One[T any](d *Dossier) (Entry[T], bool) {
	if all := All[T](d); len(all) > 0 {
		return all[0], true
	}
	return Entry[T]{}, false
}

// Find returns a record of one kind by its ID.
func Find[T any](d *Dossier, id string) (Entry[T], bool) {
	l, ok := d.lists[KindOf[T]()].(*entries[T])
	if !ok {
		return Entry[T]{}, false
	}
	i, found := l.place(id)
	if !found {
		return Entry[T]{}, false
	}
	return l.rows[i], true
}

// Get returns a record by its ID, one withdrawn too.
func (d *Dossier) Get(id string) (Record, bool) {
	kind, ok := d.kindOf[id]
	if !ok {
		return Record{}, false
	}
	for _, lists := range []map[string]list{d.lists, d.withdrawn} {
		if l := lists[kind]; l != nil {
			if i, found := l.place(id); found {
				return l.at(i), true
			}
		}
	}
	return Record{}, false
}

// Len counts the records that stand.
func (d *Dossier) Len() int {
	n := 0
	for _, l := range d.lists {
		n += l.len()
	}
	return n
}

// Count counts the records of one kind that stand.
func (d *Dossier) Count(kind string) int {
	if l := d.lists[kind]; l != nil {
		return l.len()
	}
	return 0
}

// Records gives the records of one kind that stand, in the order of their IDs; every kind where kind is empty.
func (d *Dossier) Records(kind string) iter.Seq[Record] { return d.walk(d.lists, kind) }

// Withdrawn gives the records taken back, in the same way.
func (d *Dossier) Withdrawn(kind string) iter.Seq[Record] { return d.walk(d.withdrawn, kind) }

func (d *Dossier) walk(lists map[string]list, kind string) iter.Seq[Record] {
	return func(yield func(Record) bool) {
		for _, k := range kinds {
			l := lists[k.Name]
			if l == nil || kind != "" && kind != k.Name {
				continue
			}
			for i := range l.len() {
				if !yield(l.at(i)) {
					return
				}
			}
		}
	}
}

// Put adds records, each in place of the one with its ID. A record of no known kind, with a bad ID, or with an ID that another kind has is
// refused, and then none is put in.
func (d *Dossier) Put(records ...Record) error {
	many := map[string]int{}
	for i := range records {
		many[records[i].Kind]++
	}
	byKind := map[string][]Record{}
	for kind, n := range many {
		byKind[kind] = make([]Record, 0, n)
	}
	if len(d.kindOf) == 0 {
		d.kindOf = make(map[string]string, len(records))
	}
	seen := make(map[string]string, len(records))
	for _, r := range records {
		if err := fits(r); err != nil {
			return err
		}
		other, taken := d.kindOf[r.ID]
		if !taken {
			other, taken = seen[r.ID]
		}
		if taken && other != r.Kind {
			return fmt.Errorf("the id %s already names a %s: give the %s another", r.ID, byName[other].Title, byName[r.Kind].Title)
		}
		seen[r.ID] = r.Kind
		byKind[r.Kind] = append(byKind[r.Kind], r)
		if byName[r.Kind].Single && d.another(r) {
			return fmt.Errorf("%s: the ship has its %s already: change that record instead", r.ID, byName[r.Kind].Title)
		}
	}
	for kind, some := range byKind {
		d.put(kind, some)
	}
	return nil
}

// another tells whether the kind has a record under another ID.
func (d *Dossier) another(r Record) bool {
	for _, have := range everyOf(d, r.Kind) {
		if have.ID != r.ID {
			return true
		}
	}
	return false
}

func fits(r Record) error {
	k, ok := byName[r.Kind]
	if !ok {
		return fmt.Errorf("%q is not a kind of record", r.Kind)
	}
	if err := CheckID(r.ID); err != nil {
		return err
	}
	if t := reflect.TypeOf(r.Body); t == nil || t.Kind() != reflect.Pointer || t.Elem() != k.body || reflect.ValueOf(r.Body).IsNil() {
		return fmt.Errorf("%s: the body of a %s must be a *%s, not a %T", r.ID, k.Name, k.body, r.Body)
	}
	return nil
}

func (d *Dossier) put(kind string, records []Record) {
	stand, back := make([]Record, 0, len(records)), []Record(nil)
	for _, r := range records {
		if d.kindOf[r.ID] != "" {
			d.take(kind, r.ID, !r.Withdrawn)
		}
		d.kindOf[r.ID] = kind
		if r.Withdrawn {
			back = append(back, r)
		} else {
			stand = append(stand, r)
		}
	}
	if len(stand) > 0 {
		d.mine(d.lists, kind).set(stand)
	}
	if len(back) > 0 {
		d.mine(d.withdrawn, kind).set(back)
	}
}

// take drops an ID from the withdrawn records, or else from those that stand.
func (d *Dossier) take(kind, id string, fromWithdrawn bool) {
	lists := d.lists
	if fromWithdrawn {
		lists = d.withdrawn
	}
	if l := lists[kind]; l != nil {
		if _, found := l.place(id); found {
			d.mine(lists, kind).drop(id)
		}
	}
}

// Remove forgets a record altogether, as an undo of its first entry does. To take back a record that stood, put it with Withdrawn set.
func (d *Dossier) Remove(id string) {
	kind := d.kindOf[id]
	d.take(kind, id, true)
	d.take(kind, id, false)
	delete(d.kindOf, id)
}

// mine returns the list of a kind, copied first where a clone shares it.
func (d *Dossier) mine(lists map[string]list, kind string) list {
	l := lists[kind]
	switch {
	case l == nil:
		l = byName[kind].list()
	case !d.own[l]:
		l = l.clone()
	default:
		return l
	}
	lists[kind], d.own[l] = l, true
	return l
}

// Clone returns a dossier that can be changed while this one is read. Lists are copied when first changed. Do not change the original afterwards.
func (d *Dossier) Clone() *Dossier {
	return &Dossier{lists: maps.Clone(d.lists), withdrawn: maps.Clone(d.withdrawn), own: map[list]bool{}, kindOf: maps.Clone(d.kindOf)}
}
