package money

import (
	"errors"
	"fmt"
	"math"
	"strings"
	"testing"

	"pgregory.net/rapid"

	"oakum/field"
	"oakum/formula/choice"
)

func purse() SignIn {
	in := Sign.New()
	in.InHand, in.Pledges, in.Committed, in.Reserve = 460e3, 100e3, 35e3, 90e3
	return in
}

// Computed by hand: own money 460 + 100 - 35 - 90 = 435 thousand. A one-to-one grant of at most 500 earns 435: promises allow 870, but paid in arrears
// by one claim the cash allows 435; by four claims three quarters of the grant come back before the last bill, 761.25; a bridge of 100 more.
func TestSignByHand(t *testing.T) {
	in := purse()
	free := func() SignOut {
		t.Helper()
		out, err := Sign.Fn(in)
		if err != nil {
			t.Fatal(err)
		}
		return out
	}
	near(t, "own", free().Free, 435e3, 1e-6)
	in.Grants = []OpenGrant{{Name: "heritage", Cap: 500e3, Match: 1, Arrears: true, Claims: 1}}
	out := free()
	near(t, "promise", out.Promise, 870e3, 1e-6)
	near(t, "in arrears", out.Free, 435e3, 1e-6)
	if !strings.Contains(strings.Join(out.Warnings, " "), "only after the bills") {
		t.Errorf("warnings %v", out.Warnings)
	}
	in.Grants[0].Claims = 4
	near(t, "four claims", free().Free, 435e3+0.75*435e3, 1e-6)
	in.Bridge = 100e3
	near(t, "and a bridge", free().Free, 861.25e3, 1e-6)
	in.Grants[0].Arrears = false
	near(t, "paid at once", free().Free, 870e3, 1e-6)
	// a second grant that asks a quarter for each unit is served first: 25 thousand earn its 100, the other 410 earn 410
	in.Grants = append(in.Grants, OpenGrant{Name: "quick", Cap: 100e3, Match: 0.25, Claims: 1})
	near(t, "two grants", free().Matched, 510e3, 1e-6)
	in.Committed = 600e3
	out = free()
	near(t, "nothing", out.Free, 0, 0)
	if !strings.Contains(strings.Join(out.Warnings, " "), "nothing can be signed") {
		t.Errorf("warnings %v", out.Warnings)
	}
}

// Closed form: the chance that a triangle 300, 400, 600 costs at most 435 is 1 - 165^2/(300 x 200), and its 80 % point 600 - sqrt(0.2 x 300 x 200).
func TestSignChance(t *testing.T) {
	in := purse()
	in.Scopes = []ScopePrice{{Name: "hull", Low: 300e3, Likely: 400e3, High: 600e3, Kind: "triangular"}}
	out, err := Sign.Fn(in)
	if err != nil {
		t.Fatal(err)
	}
	near(t, "chance", out.Enough[0].Chance, 1-165.0*165/60000, 1e-9)
	near(t, "needed", *out.Needed, 600e3-math.Sqrt(0.2*300*200)*1e3, 1e-3)
	near(t, "lacking", out.Enough[0].Lacking, *out.Needed-435e3, 1e-6)
}

// steady is giving of the same sum every month.
func steady(in SignIn, months int, sum float64) SignIn {
	in.AsOf = date(2030, 12, 31)
	for m := range months {
		in.Receipts = append(in.Receipts, Gift{monthDate(monthOf(in.AsOf) - m), sum})
	}
	return in
}

// Closed form: the same 10 000 every month, nothing uncertain: 300 000 more are there after thirty months, with a one-to-one grant after fifteen.
func TestSignDateOfSteadyGiving(t *testing.T) {
	in := steady(purse(), 36, 10e3)
	in.Escalation = 0
	in.Scopes = []ScopePrice{{Name: "hull", Low: 735e3, Likely: 735e3, High: 735e3, Kind: "fixed"}}
	out, err := Sign.Fn(in)
	if err != nil {
		t.Fatal(err)
	}
	if out.Signing.P10 != date(2033, 7, 0) || out.Signing.P80 != date(2033, 7, 0) || out.Signing.Within != 1 {
		t.Errorf("%+v", out.Signing)
	}
	near(t, "level", out.Giving.Level, 10e3, 1e-6)
	near(t, "trend", out.Giving.Trend, 0, 1e-6)
	if !strings.Contains(out.Next[2].Text, "brings its signing 10 months forward") {
		t.Errorf("%q", out.Next[2].Text)
	}
	in.InHand, in.Grants = 160e3, []OpenGrant{{Cap: 1e6, Match: 1, Claims: 1}} // own 135, and as much from the grant: 600 lack, two by two
	if out, err = Sign.Fn(in); err != nil {
		t.Fatal(err)
	}
	near(t, "years", *out.Signing.Years, (735.0/2-135)/10/12, 1.0/12)
}

// Identity: a season that is there is found, lumps are told from months, and a trend is damped.
func TestGivingIsFitted(t *testing.T) {
	var gifts []Gift
	end := date(2030, 12, 31)
	for m := range 72 {
		month := monthOf(end) - 71 + m
		sum := 8e3
		if k := month % 12; k >= 4 && k <= 9 {
			sum = 12e3
		}
		gifts = append(gifts, Gift{monthDate(month), sum})
		if m%24 == 5 {
			gifts = append(gifts, Gift{monthDate(month), 60e3})
		}
	}
	g := fitGiving(gifts, end, nil)
	near(t, "lumps a year", g.Lumps, 3.0/6, 1e-9)
	near(t, "lump", g.Lump, 60e3, 1e-9)
	near(t, "July", g.Season[6], (6*1.2+2)/8, 0.01)
	near(t, "January", g.Season[0], (6*0.8+2)/8, 0.01)
	near(t, "level", g.Level, 10e3, 300)
	if g = fitGiving(gifts[:5], end, nil); g != nil && g.Months < fewest {
		t.Errorf("%d months are too few", g.Months)
	}
	rising := &Giving{Season: season(make([]float64, 12), 0), middle: 10e3, Trend: 1e3}
	for k := range rising.Season {
		rising.Season[k] = 1
	}
	near(t, "after many years", rising.monthly(10e3, 1e3, 12*60), 10e3+1e3/-math.Log(damping), 1)
}

// Identity: what can be signed for never falls with more money, never counts more of a grant than its cap, and a gift never buys less than nothing.
func TestSignLaws(t *testing.T) {
	rapid.Check(t, func(t *rapid.T) {
		in := purse()
		in.InHand = rapid.Float64Range(0, 2e6).Draw(t, "in hand")
		in.Bridge = rapid.Float64Range(0, 2e5).Draw(t, "bridge")
		caps := 0.0
		for range rapid.IntRange(0, 3).Draw(t, "grants") {
			g := OpenGrant{Cap: rapid.Float64Range(0, 6e5).Draw(t, "cap"), Match: rapid.Float64Range(0.2, 3).Draw(t, "match"), Arrears: rapid.Bool().Draw(t, "arrears"), Claims: rapid.IntRange(1, 5).Draw(t, "claims")}
			in.Grants = append(in.Grants, g)
			caps += g.Cap
		}
		out, err := Sign.Fn(in)
		if err != nil {
			t.Fatal(err)
		}
		if out.Matched > caps+1e-6 || out.Free > out.Promise+1e-6 && out.Free > 0 {
			t.Fatalf("%+v", out)
		}
		for _, n := range out.Next {
			if n.Buys < -1e-6 || n.Buys > n.Sum+caps+1e-6 {
				t.Fatalf("%+v", n)
			}
		}
	})
}

// Computed by hand: 435 thousand pay for the first two works; 100 thousand more for the third.
func TestSignBuys(t *testing.T) {
	in := purse()
	in.Works = []choice.Work{{ID: "hull", Value: 50, Cost: new(300e3)}, {ID: "glands", Value: 20, Cost: new(100e3)}, {ID: "deck", Value: 10, Cost: new(120e3)}}
	out, err := Sign.Fn(in)
	if err != nil {
		t.Fatal(err)
	}
	if fmt.Sprint(out.Chosen) != "[hull glands]" || fmt.Sprint(out.Next[2].Adds) != "[deck]" || len(out.Next[0].Adds) != 0 || len(out.Ladder) == 0 {
		t.Errorf("%v, next %+v", out.Chosen, out.Next)
	}
	if out.Next[2].Text != "100 000 more pays for deck" {
		t.Errorf("%q", out.Next[2].Text)
	}
}

func TestSignRefuses(t *testing.T) {
	for want, change := range map[string]func(*SignIn){
		"late pledges":          func(in *SignIn) { in.Late = 2e5 },
		"low <= likely <= high": func(in *SignIn) { in.Scopes = []ScopePrice{{Name: "x", Low: 5, Likely: 3, High: 9}} },
		"as_of is missing":      func(in *SignIn) { in.Receipts = []Gift{{date(2030, 1, 0), 5}} },
		"give the day or":       func(in *SignIn) { in.AsOf, in.Receipts = date(2030, 6, 1), []Gift{{date(2030, 0, 0), 5}} },
		"has no cost":           func(in *SignIn) { in.Works = []choice.Work{{ID: "x"}} },
	} {
		in := purse()
		change(&in)
		_, err := Sign.Fn(in)
		e, ok := errors.AsType[*field.Error](err)
		if !ok || e.Field == "" || !strings.Contains(e.Message, want) {
			t.Errorf("%v, want a refusal with %q", err, want)
		}
	}
}

func ExampleSign() {
	in := Sign.New()
	in.InHand, in.Committed, in.Reserve = 640e3, 40e3, 120e3
	in.Grants = []OpenGrant{{Name: "heritage", Cap: 500e3, Match: 1, Arrears: true, Claims: 4}}
	in.Scopes = []ScopePrice{{Name: "underwater hull", Low: 700e3, Likely: 800e3, High: 1.3e6, Kind: "pert"}}
	out, err := Sign.Fn(in)
	if err != nil {
		fmt.Println(err)
		return
	}
	fmt.Printf("free to sign %.0f; enough for the %s with chance %.2f\n", out.Free, out.Enough[0].Scope, out.Enough[0].Chance)
	// Output: free to sign 840000; enough for the underwater hull with chance 0.46
}

// The warning names what is late: pledges that fall due after the bills are not grants.
func TestLatenessIsNamed(t *testing.T) {
	for want, in := range map[string]SignIn{
		"40 000 of the pledges falls due only after the bills":                                             {InHand: 100000, Pledges: 40000, Late: 40000},
		"50 000 of the grants comes only after the bills":                                                  {InHand: 100000, Grants: []OpenGrant{{Name: "g", Cap: 50000, Match: 1, Arrears: true, Claims: 1}}},
		"90 000, of grants paid in arrears and of pledges that fall due later, comes only after the bills": {InHand: 100000, Pledges: 40000, Late: 40000, Grants: []OpenGrant{{Name: "g", Cap: 50000, Match: 1, Arrears: true, Claims: 1}}},
	} {
		in.Horizon, in.Sure, in.Reserve = 15, 0.8, 1000
		out, err := Sign.Fn(in)
		if err != nil || !strings.Contains(strings.Join(out.Warnings, " "), want) {
			t.Errorf("want %q: %v, %v", want, out.Warnings, err)
		}
	}
}
