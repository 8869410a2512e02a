package intake

import (
	"fmt"
	"reflect"
	"regexp"
	"strings"

	"oakum/dossier"
)

var clockIn = regexp.MustCompile(`\b\d{1,2}:\d{2}\b`)

// nameKeys are the fields by which people call a record.
var nameKeys = []string{"name", "title", "number", "yard", "what", "giver", "item"}

// reference finds the record that a cell calls by its name or its ID. One that is not there goes into words where the kind has room for them.
func (r *reader) reference(d *draft, s slot, cell string) error {
	if s.f.Of == "photo" || s.f.Of == "document" {
		d.notes = append(d.notes, s.f.Label+": "+cell)
		return nil
	}
	if id, ok := r.namesOf(s.f.Of)[plainName(cell)]; ok && id != "" {
		err := r.text(d, s.f.Key, id)
		if id != cell {
			d.keep(s.f.Key, cell)
		}
		return err
	}
	if s.f.Of == "tank" && r.codec.Index("space") >= 0 {
		return r.text(d, "space", cell)
	}
	if id, ok := r.namesOf(s.f.Of)[plainName(cell)]; ok && id == "" {
		return fmt.Errorf("more than one %s is called %q", words(s.f.Of), cell)
	}
	return fmt.Errorf("no %s is called %q: enter it first, or correct the name", words(s.f.Of), cell)
}

func words(of string) string {
	names := strings.Split(of, "|")
	for i, n := range names {
		if k, ok := dossier.KindNamed(n); ok {
			names[i] = k.Title
		}
	}
	return strings.Join(names, " or ")
}

func plainName(s string) string { return plainHead(s) }

// namesOf lists the records of some kinds by ID and by name; a name that two records have gives "".
func (r *reader) namesOf(of string) map[string]string {
	if have, ok := r.refs[of]; ok {
		return have
	}
	names := map[string]string{}
	add := func(name, id string) {
		name = plainName(name)
		if other, taken := names[name]; name == "" || taken && other == id {
			return
		} else if taken {
			id = ""
		}
		names[name] = id
	}
	for kind := range strings.SplitSeq(of, "|") {
		k, ok := dossier.KindNamed(kind)
		if !ok {
			continue
		}
		for rec := range r.t.ship.Records(kind) {
			add(rec.ID, rec.ID)
			for _, key := range nameKeys {
				if f, ok := k.Field(key); ok {
					if text, _ := f.Plain(reflect.ValueOf(rec.Body).Elem()); text != nil {
						add(fmt.Sprint(text), rec.ID)
						break
					}
				}
			}
		}
	}
	r.refs[of] = names
	return names
}
