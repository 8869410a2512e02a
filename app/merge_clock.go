package app

import (
	"fmt"
	"reflect"
	"time"

	"oakum/dossier"
	"oakum/quantity"
)

// stampOf writes a moment as it is kept in a record.
func stampOf(t time.Time) string { return t.UTC().Format("2006-01-02T15:04:05Z") }

// clockWords says what is wrong with a phone's clock; nothing where it is right.
func clockWords(phone, now time.Time) string {
	off := now.Sub(phone)
	way := "behind"
	if off < 0 {
		way, off = "ahead of", -off
	}
	if off <= clockTold {
		return ""
	}
	s := fmt.Sprintf("The phone says %s and the program %s: its clock is %s %s the program's.", quantity.DateOf(phone).Words()+phone.UTC().Format(" 15:04"), quantity.DateOf(now).Words()+now.UTC().Format(" 15:04"), spanWords(off), way)
	if off > clockWrong {
		s += " Its entries carry the program's day and hour; what the phone said is kept beside."
	}
	return s
}

func spanWords(d time.Duration) string {
	days := int(d.Hours() / 24)
	switch {
	case days >= 730:
		return fmt.Sprintf("%d years", int(float64(days)/365.25))
	case days >= 2:
		return fmt.Sprintf("%d days", days)
	case d >= 2*time.Hour:
		return fmt.Sprintf("%d hours", int(d.Hours()))
	}
	return fmt.Sprintf("%d minutes", int(d.Minutes()))
}

// dated writes both clocks under an entry. Where the phone's clock is not to be believed, a date and an hour that the phone filled in by it are moved to
// the program's; one that a person chose stays.
func (m *merging) dated(q Queued) dossier.Record {
	r := q.Record
	ours := q.Made.Add(m.behind)
	r.From = fmt.Sprintf("phone %s, made %s by its clock, %s by the program's", m.lot.Device, stampOf(q.Made), stampOf(ours))
	if m.behind.Abs() <= clockWrong || r.Body == nil {
		return r
	}
	k, _ := dossier.KindNamed(r.Kind)
	v := reflect.ValueOf(r.Body).Elem()
	f, ok := k.Field("date")
	if !ok {
		return r
	}
	have, isDate := f.Get(v).Interface().(quantity.Date)
	if !isDate {
		return r
	}
	n, known := have.DaysUntil(quantity.DateOf(q.Made))
	if !known || n < -1 || n > 1 { // a day either way: the phone counts by its own zone
		return r
	}
	// A body is shared with whoever sent it, so that the change is made on a copy.
	fresh := reflect.New(v.Type())
	fresh.Elem().Set(v)
	f.Get(fresh.Elem()).Set(reflect.ValueOf(quantity.DateOf(ours)))
	if t, has := k.Field("time"); has {
		if at := t.Get(fresh.Elem()); at.Kind() == reflect.String && at.String() != "" {
			at.SetString(ours.Format("15:04"))
		}
	}
	r.Body = fresh.Interface()
	return r
}
