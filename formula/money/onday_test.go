package money

import (
	"errors"
	"math"
	"math/rand/v2"
	"testing"

	"oakum/field"
	"oakum/quantity"
)

// Closed form: the same 10 000 every month and nothing uncertain. Own money is 435 000; of 735 000 there lack 300 000 today, 240 000 when six months
// are over, and nothing after thirty.
func TestOnDayOfSteadyGiving(t *testing.T) {
	in := steady(purse(), 36, 10e3) // as of 31 December 2030
	in.Escalation = 0
	in.Scopes = []ScopePrice{{Name: "hull", Low: 735e3, Likely: 735e3, High: 735e3, Kind: "fixed"}}
	in.Days = []AskedDay{{"today", in.AsOf}, {"", date(2031, 7, 14)}, {"", date(2033, 6, 30)}, {"", date(2033, 7, 1)}}
	out, err := Sign.Fn(in)
	if err != nil {
		t.Fatal(err)
	}
	for i, want := range []struct{ short, chance float64 }{{300e3, 0}, {240e3, 0}, {10e3, 0}, {0, 1}} {
		near(t, in.Days[i].Date.String(), out.OnDay[i].Short, want.short, 1e-3)
		near(t, "chance", out.OnDay[i].Chance, want.chance, 0)
	}
	in.Receipts, in.Escalation = nil, 0.1
	if out, err = Sign.Fn(in); err != nil {
		t.Fatal(err)
	}
	years, _ := in.AsOf.YearsUntil(date(2031, 7, 14))
	near(t, "no giving is known, and prices rise", out.OnDay[1].Short, 735e3*math.Pow(1.1, years)-435e3, 1e-3)
	in.Days[1].Date = date(2031, 7, 0)
	var refused *field.Error
	if _, err = Sign.Fn(in); !errors.As(err, &refused) || refused.Field != "days[1].date" {
		t.Errorf("a month is no day: %v", err)
	}
}

// Identity: the chance on a day is one in two and eight in ten where the signing date has its p50 and p80, and it never falls.
func TestOnDayAgreesWithTheSigningDate(t *testing.T) {
	for k := range uint64(5) {
		r := rand.New(rand.NewPCG(k, 1))
		in := steady(purse(), 48, 9e3)
		for i := range in.Receipts {
			in.Receipts[i].Amount *= 0.4 + 1.4*r.Float64()
		}
		in.Escalation = 0
		in.Scopes = []ScopePrice{{Name: "hull", Low: 600e3, Likely: 650e3, High: 800e3, Kind: "triangular"}}
		out, err := Sign.Fn(in)
		if err != nil || out.Signing == nil || out.Signing.P80.IsZero() {
			t.Fatalf("no date within the horizon: %v, %+v", err, out.Signing)
		}
		for _, d := range []quantity.Date{out.Signing.P50, out.Signing.P80} {
			in.Days = append(in.Days, AskedDay{"", date(d.Year(), d.Month(), 28)})
		}
		if out, err = Sign.Fn(in); err != nil {
			t.Fatal(err)
		}
		if a, b := out.OnDay[0], out.OnDay[1]; a.Chance < 0.5 || b.Chance < 0.8 || b.Chance < a.Chance || a.Short > 1e-6 || b.ShortAt > 1e-6 {
			t.Errorf("%+v, %+v", a, b)
		}
	}
}
