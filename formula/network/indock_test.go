package network

import (
	"errors"
	"fmt"
	"strings"
	"testing"

	"pgregory.net/rapid"

	"oakum/field"
)

func moment(text string) Moment {
	m, err := NewMoment(text)
	if err != nil {
		panic(err)
	}
	return m
}

func stay() DaysIn {
	in := Days.New()
	in.Docked, in.Undock = moment("2031-05-12T07:30:00+01:00"), moment("2031-06-21T16:30:00+01:00")
	in.Now = moment("2031-05-19")
	in.DayRate, in.LostIncome = 6500, 2300
	return in
}

// Computed by hand: 40 days and 9 hours in dock; a fifth of them, 8 days 1 h 48 min, ends on 20 May at 09:18. 19 May is day 8; 33 days are left.
// Published: NAVSEA Standard Item 009-01 for the fifth, and for final readings 72 and 24 hours before flooding.
func TestDaysByHand(t *testing.T) {
	out, err := Days.Fn(stay())
	if err != nil {
		t.Fatal(err)
	}
	if out.Day != 8 || out.Planned != 41 || out.Left != 33 || out.Over != 0 {
		t.Errorf("%+v", out)
	}
	if got := out.Inspection.String(); got != "2031-05-20T09:18:00+01:00" {
		t.Errorf("inspections due %s", got)
	}
	last := out.Deadlines[len(out.Deadlines)-1]
	if last.What != "final readings of the last 24 hours" || last.Opens.String() != "2031-06-20T16:30:00+01:00" || last.Due.String() != "2031-06-21T16:30:00+01:00" {
		t.Errorf("%+v", last)
	}
	near(t, "spent", out.Spent, 8*8800, 1e-9)
	near(t, "to come", out.ToCome, 33*8800, 1e-9)
	if len(out.Warnings) != 0 {
		t.Errorf("warnings %v", out.Warnings)
	}
}

// Computed by hand: five days after the plan, with three that the yard would add, and a decision two hours late.
func TestDaysLate(t *testing.T) {
	in := stay()
	in.Now, in.FreeDays = moment("2031-06-26T10:00:00+01:00"), 3*day
	in.Decisions = []Pending{{Name: "boss cracked", Found: moment("2031-06-24T08:00:00+01:00"), Hours: 48 * 3600, Who: "superintendent"}, {Name: "strake C", Found: moment("2031-06-01"), Hours: 3600, Done: moment("2031-06-01")}}
	out, err := Days.Fn(in)
	if err != nil {
		t.Fatal(err)
	}
	if out.Over != 5 || out.Left != -5 || out.Gone != 1 {
		t.Errorf("%+v", out)
	}
	all := strings.Join(out.Warnings, "; ")
	for _, want := range []string{"5 days over", "more than the yard would add", "overdue by 2 hours: decide: boss cracked", "inspections reported"} {
		if !strings.Contains(all, want) {
			t.Errorf("no %q in %s", want, all)
		}
	}
	if strings.Contains(all, "strake C") {
		t.Error("a decision taken is not overdue")
	}
}

// Identity: days gone and days left make the plan, whatever day it is.
func TestDaysAddUp(t *testing.T) {
	rapid.Check(t, func(t *rapid.T) {
		in := Days.New()
		in.Docked = moment("2031-02-26T22:00:00-05:00")
		in.Undock = in.Docked.add(rapid.Float64Range(0, 400).Draw(t, "stay"))
		in.Now = in.Docked.add(rapid.Float64Range(-20, 420).Draw(t, "now"))
		out, err := Days.Fn(in)
		if err != nil {
			t.Fatal(err)
		}
		if out.Day+out.Left != out.Planned {
			t.Fatalf("day %d and %d left make %d", out.Day, out.Left, out.Planned)
		}
		if s := in.Docked.until(out.Inspection) / max(in.Docked.until(in.Undock), 1e-3); s > 0.2+1e-3 {
			t.Fatalf("inspections are due at %g of the docking", s)
		}
	})
}

func TestDaysRefuses(t *testing.T) {
	for want, change := range map[string]func(*DaysIn){
		"docked is missing":   func(in *DaysIn) { in.Docked = Moment{} },
		"undock (2031-05-01)": func(in *DaysIn) { in.Undock = moment("2031-05-01") },
		"flood (2031-05-01)":  func(in *DaysIn) { in.Flood = moment("2031-05-01") },
		"not said when":       func(in *DaysIn) { in.Decisions = []Pending{{Name: "x"}} },
	} {
		in := stay()
		change(&in)
		_, err := Days.Fn(in)
		e, ok := errors.AsType[*field.Error](err)
		if !ok || e.Field == "" || !strings.Contains(e.Message, want) {
			t.Errorf("%v, want a refusal with %q", err, want)
		}
	}
	if _, err := Days.Run(map[string]any{"docked": "12/05/31", "undock": "2031-06-21", "now": "2031-05-19"}); err == nil || !strings.Contains(err.Error(), "is no moment") {
		t.Errorf("got %v", err)
	}
}

func ExampleDays() {
	in := Days.New()
	in.Docked, _ = NewMoment("2031-05-12")
	in.Undock, _ = NewMoment("2031-06-21")
	in.Now, _ = NewMoment("2031-05-19")
	in.DayRate = 6500
	out, err := Days.Fn(in)
	if err != nil {
		fmt.Println(err)
		return
	}
	fmt.Printf("day %d of %d, %d left; inspections by %s; %.0f so far\n", out.Day, out.Planned, out.Left, out.Inspection.Date(), out.Spent)
	// Output: day 8 of 41, 33 left; inspections by 2031-05-20; 52000 so far
}
