package assess

import (
	"fmt"
	"math"
	"strings"

	"oakum/formula/network"
	"oakum/quantity"
)

// lackWords says in words what a yard date lacks, and by how much.
type lackWords struct {
	c  *inquiry
	k  *CalendarCase
	y  *yardDate
	in network.WindowIn
}

// lackOf is one thing that is lacking on some days of a yard date, with the least and the most of it.
type lackOf struct {
	what        string
	days, alone int
	low, high   float64
	water       bool
	measured    bool
}

func (l *lackOf) add(s network.Shortfall, alone bool) {
	l.days++
	if alone {
		l.alone++
	}
	x := s.Days
	if s.Water != nil {
		x, l.water = s.Water, true
	}
	if x == nil {
		return
	}
	if !l.measured {
		l.low, l.high, l.measured = *x, *x, true
	}
	l.low, l.high = min(l.low, *x), max(l.high, *x)
}

// gathered is "tide to enter the dock 0.1 to 0.7 m too low on 6 of 12 days".
func (w lackWords) gathered(l *lackOf, of int) string {
	on := fmt.Sprintf(" on %d of %s", l.days, count(of, "day", "days"))
	if l.days == of {
		on = ""
	}
	if l.what == "money" {
		return w.money(l.high)
	}
	return w.said(l.what, l.low, l.high, l.water, l.measured) + on
}

// day is the same for one day.
func (w lackWords) day(s network.Shortfall) string {
	switch {
	case s.What == "money":
		return w.money(*s.Days)
	case s.Water != nil:
		return w.said(s.What, *s.Water, *s.Water, true, true)
	case s.Days != nil:
		return w.said(s.What, *s.Days, *s.Days, false, true)
	}
	return w.said(s.What, 0, 0, false, false)
}

func (w lackWords) said(what string, low, high float64, water, measured bool) string {
	if !measured {
		return what
	}
	if water {
		return what + " " + quantity.Range(math.Ceil(low*100)/100, math.Ceil(high*100)/100, "m") + " too low"
	}
	days := daysBetween(low, high)
	switch {
	case what == "dock free":
		return "her stay of " + count(w.y.stay, "day", "days") + " is " + days + " longer than the dock is free"
	case strings.HasPrefix(what, "tow season"):
		way := strings.TrimPrefix(what, "tow season ")
		t := w.y.out
		if way == "home" {
			t = w.y.home
		}
		return "the tow " + way + " has " + days + " outside " + monthsOfTow(t.months)
	case what == "signed while the dock is held":
		return "it is held until " + w.in.Yards[0].SignBy.Words() + " and can be signed " + w.when()
	case strings.HasSuffix(what, ": done too late"):
		return strings.TrimSuffix(what, ": done too late") + ": done " + days + " after its last day"
	case strings.HasSuffix(what, ": too early"):
		return strings.TrimSuffix(what, ": too early") + ": begun " + days + " before its first day"
	case strings.HasPrefix(what, "at home for"):
		return days + " on which she should be " + what
	}
	return what + ": " + days
}

// asLikely names the chance that a date of the money stands for.
func (w lackWords) asLikely() string {
	if w.k.band.p10 == w.k.band.p80 {
		return ""
	}
	return ", as likely as not"
}

// when says on what day or month the money is there.
func (w lackWords) when() string {
	band := w.k.band
	switch {
	case band.p50.IsZero():
		return "not before " + band.never.Words() + w.asLikely()
	case band.p50 == band.award:
		return "on " + band.p50.Words() + " at the soonest, when the grant is told"
	}
	month, err := quantity.NewDate(band.p50.Year(), band.p50.Month(), 0)
	if err != nil || band.p50 == w.c.day {
		return "on " + band.p50.Words()
	}
	return "in " + month.Words() + w.asLikely()
}

// money says what is short when it must be signed, or that it comes too late where nothing is short but the notice is.
func (w lackWords) money(late float64) string {
	ask, asked := w.k.ask[w.y.e.ID]
	if asked && ask.then.Short >= 1 && (ask.told || ask.then.Short > 0.01*ask.then.Needed) {
		return fmt.Sprintf("%s short as likely as not on %s, when it must be signed", w.c.money(roughly(ask.then.Short)), ask.by.Words())
	}
	s := "the money is there " + w.when()
	if lead := w.in.Lead; lead > 0 {
		s += ", and " + daysBetween(lead, lead) + " lie between signing and leaving"
	}
	return s + ": " + longTime(late) + " too late"
}

// longTime is a time in days, from four months on in months, from two years on in years.
func longTime(seconds float64) string {
	switch days := seconds / secondsADay; {
	case days > 730:
		return "about " + count(int(math.Round(days/quantity.DaysPerYear)), "year", "years")
	case days > 120:
		return "about " + count(int(math.Round(days*12/quantity.DaysPerYear)), "month", "months")
	}
	return daysBetween(seconds, seconds)
}

// roughly rounds a sum of money to two figures: a forecast has no more.
func roughly(x float64) float64 {
	if x <= 0 {
		return x
	}
	step := math.Pow(10, math.Floor(math.Log10(x))-1)
	return math.Round(x/step) * step
}

func daysBetween(low, high float64) string {
	a, b := int(math.Round(low/secondsADay)), int(math.Round(high/secondsADay))
	if a == b {
		return count(a, "day", "days")
	}
	return fmt.Sprintf("%d to %d days", a, b)
}

// monthsOfTow is "March to October" for "3 to 10".
func monthsOfTow(months string) string {
	list := monthSeason(months)
	if list == nil {
		return "its months (" + months + ")"
	}
	a, _ := list[0].From.MarshalText()
	b, _ := list[0].To.MarshalText()
	return monthName(string(a[:2])) + " to " + monthName(string(b[:2]))
}

func monthName(two string) string {
	d, err := quantity.ParseDate("2027-" + two)
	if err != nil {
		return two
	}
	name, _, _ := strings.Cut(d.Words(), " ")
	return name
}

// daysWords is "7 to 10 April 2027 and 3 May 2027": runs of days in order.
func daysWords(days []quantity.Date) string {
	var runs []string
	for i := 0; i < len(days); {
		k := i
		for k+1 < len(days) && days[k].AddDays(1) == days[k+1] {
			k++
		}
		runs = append(runs, runWords(days[i], days[k]))
		i = k + 1
	}
	if len(runs) > 1 {
		return strings.Join(runs[:len(runs)-1], ", ") + " and " + runs[len(runs)-1]
	}
	return strings.Join(runs, "")
}

// runWords is one day, or the two ends of a run of days.
func runWords(a, b quantity.Date) string {
	if a == b {
		return a.Words()
	}
	return spanWords(a, b)
}

func upperFirst(s string) string {
	if s == "" {
		return s
	}
	return strings.ToUpper(s[:1]) + s[1:]
}
