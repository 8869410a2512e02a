package assess

import (
	"cmp"
	"math"
	"slices"

	"oakum/dossier"
	"oakum/field"
	"oakum/formula/money"
	"oakum/formula/network"
	"oakum/plan"
	"oakum/quantity"
)

// signingBand is when something can be signed for. A zero date is later than the years looked at.
type signingBand struct {
	known         bool
	p10, p50, p80 quantity.Date
	award         quantity.Date // of the last grant that is counted on and not yet given
	never         quantity.Date // the end of the years looked at
}

// askedWindow is what the money will be on the day by which a yard date must be signed.
type askedWindow struct {
	by   quantity.Date
	then money.OnDay
	told bool // what is hoped for is told by then
}

// scopeAsked is something to sign for.
type scopeAsked struct {
	key, name string
	price     money.ScopePrice
}

// calendarCases are what might be signed for, each with the money that is counted today and with all that is hoped for.
func (c *inquiry) calendarCases(b *Brief, yards []*yardDate) []CalendarCase {
	m := &b.Money
	scopes := []scopeAsked{}
	for _, s := range m.call.Scopes {
		key := "plan"
		if s.Name != m.call.Scopes[0].Name || !m.priced {
			key = "must"
		}
		if key == "must" && len(scopes) > 0 && math.Abs(scopes[0].price.Likely-s.Likely) < 1 {
			continue // every work of the plan is a must
		}
		scopes = append(scopes, scopeAsked{key, s.Name, s})
	}
	if !m.held || len(scopes) == 0 {
		k := newCalendarCase("unknown", "Money not known")
		k.Signing = unknown("signing", "can be signed", "nobody has entered pots and prices")
		return []CalendarCase{k}
	}
	list := []CalendarCase{}
	for _, hoped := range []bool{false, true} {
		for _, s := range scopes {
			if k, ok := c.calendarCase(m, s, hoped, yards); ok {
				list = append(list, k)
			}
		}
	}
	return list
}

func newCalendarCase(key, name string) CalendarCase {
	return CalendarCase{Key: key, Name: name, Lanes: []Lane{}, Windows: []YardCase{}, ask: map[string]askedWindow{}}
}

// calendarCase asks when one scope can be signed, and what there will be on the day by which each yard date must be.
func (c *inquiry) calendarCase(m *MoneyPage, s scopeAsked, hoped bool, yards []*yardDate) (k CalendarCase, ok bool) {
	in, given := m.call, signGiven()
	k = newCalendarCase(s.key, upperFirst(s.name)+", with the money counted today")
	if hoped {
		more := 0.0
		if in, more = c.hopedIn(m, in); more <= 0 {
			return k, false
		}
		k = newCalendarCase(s.key+"-hoped", upperFirst(s.name)+", if all that is hoped for comes")
		given = hopedGiven()
		for _, e := range dossier.All[plan.Grant](c.d) {
			if e.Body.State == "applied" && (k.band.award.IsZero() || k.band.award.Before(e.Body.Award)) {
				k.band.award = e.Body.Award
			}
		}
	}
	in.Scopes = []money.ScopePrice{s.price}
	for _, y := range yards {
		if by := c.signBy(y); !by.IsZero() && len(in.Days) < 100 {
			in.Days = append(in.Days, money.AskedDay{Name: y.e.ID, Date: by})
		}
	}
	given["days"] = how(field.Computed, "the day by which each yard date must be signed: while it is held, and with the notice that is wanted")
	sheet, out, err := work(c.book, money.Sign, "calendar-"+k.Key, k.Name, in, given)
	if err != nil {
		return k, false
	}
	for _, o := range out.OnDay {
		a := askedWindow{by: o.Date, then: o, told: k.band.award.IsZero() || !o.Date.Before(k.band.award)}
		if !a.told {
			a.then.Chance = 0
		}
		k.ask[o.Name] = a
	}
	k.band.never = c.day.AddYears(in.Horizon)
	k.Signing = unknown("signing", "can be signed", "how people give is not known")
	switch f := c.signingDate(sheet, out); {
	case len(out.Enough) > 0 && out.Enough[0].Lacking <= 0:
		k.band.known, k.band.p10, k.band.p50, k.band.p80 = true, c.day, c.day, c.day
		k.Signing = known("signing", "can be signed", 0, "y", field.Computed, "")
		k.Signing.Text, k.Signing.Sheet = "today", sheet.ID
	case f != nil:
		f.Label = "can be signed"
		k.Signing = *f
		k.band.known, k.band.p10, k.band.p50, k.band.p80 = true, firstDay(out.Signing.P10), firstDay(out.Signing.P50), firstDay(out.Signing.P80)
	}
	k.band.notBefore()
	if !k.band.award.IsZero() && k.band.known {
		if told := quantity.DateOf(k.band.award.Last()); k.band.p10 == told {
			k.Signing.Text = told.Words()
			if month, err := quantity.NewDate(k.band.p80.Year(), k.band.p80.Month(), 0); err == nil && told.Before(k.band.p80) {
				k.Signing.Text += " to " + month.Words()
			}
		}
		k.Signing.Note = "not before " + k.band.award.Words() + ", when the last of what is applied for is told; " + k.Signing.Note
	}
	return k, true
}

// notBefore moves the band behind the day on which the last grant is told.
func (s *signingBand) notBefore() {
	if s.award.IsZero() {
		return
	}
	told := quantity.DateOf(s.award.Last())
	for _, d := range []*quantity.Date{&s.p10, &s.p50, &s.p80} {
		if !d.IsZero() && d.Before(told) {
			*d = told
		}
	}
}

func firstDay(d quantity.Date) quantity.Date {
	if d.IsZero() {
		return d
	}
	return quantity.DateOf(d.First())
}

// signBy is the last day to sign a yard date: while it is held, and with the notice that is wanted before she leaves.
func (c *inquiry) signBy(y *yardDate) quantity.Date {
	if y.signed {
		return quantity.Date{}
	}
	_, last := y.span(c.day)
	by := last.AddDays(-int(math.Ceil(y.notice())))
	if held := y.e.Body.HeldTo; !held.IsZero() && held.Before(by) {
		by = quantity.DateOf(held.Last())
	}
	if by.Before(c.day) {
		by = c.day
	}
	return by
}

// notice is the days from signing to leaving: the works before the tow one after the other, or what the tug wants if that is longer.
func (y *yardDate) notice() float64 {
	return max(y.before.days, y.out.lead)
}

// beforeTow is the network of what must be done before the tow.
type beforeTow struct {
	days  float64
	sheet string
	known bool
}

func (c *inquiry) beforeTow() (out beforeTow) {
	in, _ := c.phaseNetwork("before")
	if len(in.Activities) == 0 {
		return out
	}
	sheet, t, err := work(c.book, network.Timetable, "before", "what must be done between signing and the tow", in, networkGiven())
	if err != nil {
		return out
	}
	return beforeTow{days: t.Length / secondsADay, sheet: sheet.ID, known: true}
}

// grantTerms are the dates of the grants that a case counts on.
func (c *inquiry) grantTerms(hoped bool) (list []network.GrantTerms) {
	for _, e := range dossier.All[plan.Grant](c.d) {
		b := e.Body
		if b.State != "awarded" && !(hoped && b.State == "applied") {
			continue
		}
		list = append(list, network.GrantTerms{Name: cmp.Or(b.Name, e.ID), SpendFrom: b.SpendFrom, SpendBy: b.SpendBy})
	}
	slices.SortFunc(list, func(a, b network.GrantTerms) int { return cmp.Compare(a.Name, b.Name) })
	return list
}
