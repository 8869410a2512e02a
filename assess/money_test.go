package assess

import (
	"math"
	"testing"

	"oakum/dossier"
	"oakum/plan"
)

func TestAccountOfTheDay(t *testing.T) {
	d := dossier.New()
	put(t, d, "fund", plan.Pot{Name: "Fund", Opening: new(100000.0)})
	put(t, d, "shafts", plan.Pot{Name: "Shafts", Restricted: new(true), Restriction: "shafts only"})
	put(t, d, "r1", plan.Receipt{Pot: "fund", Date: date(t, "2026-01-10"), Amount: new(50000.0), Paper: "statement 1"})
	put(t, d, "r2", plan.Receipt{Pot: "shafts", Date: date(t, "2026-02-10"), Amount: new(180000.0)})
	put(t, d, "r3", plan.Receipt{Date: date(t, "2026-02-11"), Amount: new(7000.0)})
	put(t, d, "r4", plan.Receipt{Pot: "fund", Amount: new(999.0)}) // no date: left out, and said
	put(t, d, "c1", plan.Commitment{What: "study", Pot: "fund", Date: date(t, "2026-03-01"), Amount: new(36000.0), Due: date(t, "2026-12-01")})
	put(t, d, "p1", plan.Payment{Pot: "fund", Date: date(t, "2026-04-01"), Amount: new(10000.0), Commitment: "c1"})
	put(t, d, "g1", plan.Pledge{Giver: "the county", Pot: "fund", Amount: new(40000.0), Due: date(t, "2027-06-30"), Conditional: new(true)})
	put(t, d, "res", plan.Reserve{Name: "way home", Likely: new(72000.0)})
	b := brief(t, d, "2026-05-01")
	a := b.Money.Account
	// In hand 100 000 + 50 000 + 180 000 + 7 000 - 10 000 = 327 000; signed for 36 000 - 10 000 = 26 000; reserve 72 000; free 229 000. For anything:
	// the fund's 140 000 less its 26 000 less the reserve that no pot keeps, 42 000.
	for key, want := range map[string]float64{"in_hand": 327000, "committed": 26000, "reserve": 72000, "free": 229000, "free_for_anything": 42000, "pledges_waiting": 40000, "pledges_counted": 0} {
		if got := number(t, a, key); math.Abs(got-want) > 0.5 {
			t.Errorf("%s = %v, want %v", key, got, want)
		}
	}
	left, loose := false, false
	for _, n := range b.Money.Missing {
		left = left || n.What == "1 receipt is left out of the account: no amount or no date."
		loose = loose || n.What == "1 movement names no pot: the money is held apart, as nobody has said what it may be spent on."
	}
	if !left || !loose {
		t.Errorf("the entries that can't be counted are not named: %+v", b.Money.Missing)
	}
	// No work is entered that the shafts' gift could pay for, and nobody has said what the 7 000 are for: 42 000 can be signed for.
	if b.Front.Money == nil || *b.Front.Money.Value != 42000 || b.Front.Money.Unit != "EUR" {
		t.Errorf("money line %+v", b.Front.Money)
	}
}

// One to one, at most 50 000, against 30 000 of own money in hand after a reserve of 20 000: the grant gives 30 000.
func TestGrantStandsAgainstOwnMoney(t *testing.T) {
	d := dossier.New()
	put(t, d, "fund", plan.Pot{Name: "Fund", Opening: new(50000.0)})
	put(t, d, "res", plan.Reserve{Name: "way home", Likely: new(20000.0)})
	put(t, d, "g", plan.Grant{Name: "Heritage", State: "awarded", Cap: new(50000.0), Match: new(1.0), Pot: "fund"})
	b := brief(t, d, "2026-05-01")
	if got := number(t, b.Money.Account, "grants_matched"); math.Abs(got-30000) > 0.5 {
		t.Errorf("the grant gives %v, not 30 000", got)
	}
}

// Two one-to-one grants, 60 000 in hand and 10 000 spent on the works since the first award: the first takes 50 000 (10 000 spent and 40 000 held),
// the second what is left, 20 000.
func TestOwnMoneyMatchesOnce(t *testing.T) {
	d := dossier.New()
	put(t, d, "fund", plan.Pot{Name: "Fund", Opening: new(70000.0)})
	put(t, d, "pay", plan.Payment{Pot: "fund", Date: date(t, "2026-03-01"), Amount: new(10000.0)})
	put(t, d, "g1", plan.Grant{Name: "one", State: "awarded", Cap: new(50000.0), Match: new(1.0), Pot: "fund", Award: date(t, "2026-02-01")})
	put(t, d, "g2", plan.Grant{Name: "two", State: "awarded", Cap: new(50000.0), Match: new(1.0), Pot: "fund", Award: date(t, "2026-04-01"), Paid: new(5000.0)})
	g := brief(t, d, "2026-05-01").Money.Grants
	if len(g) != 2 || *g[0].Earned.Value != 50000 || *g[1].Earned.Value != 20000 || *g[1].ToCome.Value != 15000 {
		t.Errorf("%+v", g)
	}
}

func TestOneBadPriceDoesNotStopThePage(t *testing.T) {
	d := dossier.New()
	put(t, d, "a", plan.Work{Name: "A", Low: new(5.0), Likely: new(3.0), High: new(9.0)})
	put(t, d, "b", plan.Work{Name: "B", Likely: new(1000.0)})
	m := brief(t, d, "2026-05-01").Money
	if got := number(t, m.Estimate, "likely_sum"); got != 1000 {
		t.Errorf("likely sum %v", got)
	}
	said := false
	for _, n := range m.Missing {
		said = said || n.ID == "a" && n.Worry == 2
	}
	if !said {
		t.Errorf("nobody says that A is left out: %+v", m.Missing)
	}
}

func TestEstimateCountsEveryMatterOnce(t *testing.T) {
	d := dossier.New()
	put(t, d, "m", plan.Matter{Name: "Glands"})
	put(t, d, "a", plan.Course{Matter: "m", Name: "Repack", CostLikely: new(20000.0)})
	put(t, d, "n", plan.Matter{Name: "Anodes"})
	put(t, d, "x", plan.Course{Matter: "n", Name: "Zinc", CostLow: new(30000.0), CostLikely: new(40000.0), CostHigh: new(60000.0)})
	put(t, d, "y", plan.Course{Matter: "n", Name: "Leave", CostLow: new(0.0), CostLikely: new(2000.0), CostHigh: new(5000.0)})
	put(t, d, "w1", plan.Work{Name: "Packing", Course: "a", Likely: new(18000.0)})
	put(t, d, "w2", plan.Work{Name: "Washing", Quantity: new(1500.0), Rate: "wash"})
	put(t, d, "w3", plan.Work{Name: "Rivets"})
	put(t, d, "w4", plan.Work{Name: "Old idea", Likely: new(99999.0), State: "dropped"})
	put(t, d, "wash", plan.Rate{Name: "Washing", Per: "m2", Low: new(20.0), Likely: new(25.0), High: new(40.0)})
	put(t, d, "s", plan.Scheme{Name: "one", Standing: new(true), Courses: []string{"a"}})
	b := brief(t, d, "2026-05-01")
	// Packing 18 000 (the course's work, not its own 20 000), washing 1500 x 25 = 37 500, anodes not settled: the middle of 2 000 and 40 000.
	if got := number(t, b.Money.Estimate, "likely_sum"); math.Abs(got-(18000+37500+21000)) > 0.5 {
		t.Errorf("likely sum %v: %+v", got, b.Money.Lines)
	}
	for _, l := range b.Money.Lines {
		if l.Kind == "matter" && (*l.Low.Value != 0 || *l.High.Value != 60000) {
			t.Errorf("an open matter spans its courses: %+v", l)
		}
	}
}

// Yard A 900 000 + 18/lb + 6 500 x 60 + 1 000 h x 85, yard B 760 000 + 32/lb + 8 000 x 60 + 1 000 h x 110 at 12 000 lb: 1 591 000 and 1 734 000, though
// B's lump sum is the lower.
func TestBidsOnOneFooting(t *testing.T) {
	d := dossier.New()
	hours, day := 1000*3600.0, 86400.0
	put(t, d, "a", plan.Bid{Yard: "yard A", Lump: new(900000.0), DayRate: new(6500.0), Days: new(60 * day), HourRate: new(85.0), GrowthHours: &hours})
	put(t, d, "b", plan.Bid{Yard: "yard B", Lump: new(760000.0), DayRate: new(8000.0), Days: new(60 * day), HourRate: new(110.0)})
	put(t, d, "la", plan.BidLine{Bid: "a", Item: "1", Quantity: new(12000.0), UnitRate: new(18.0)})
	put(t, d, "lb", plan.BidLine{Bid: "b", Item: "1", Quantity: new(12000.0), UnitRate: new(32.0)})
	m := brief(t, d, "2026-05-01").Money
	for i, want := range []struct {
		yard string
		sum  float64
	}{{"yard A", 1591000}, {"yard B", 1734000}} {
		if r := m.Bids[i]; r.Yard != want.yard || math.Abs(*r.Evaluated.P50-want.sum) > 0.5 {
			t.Errorf("%d: %s %v", i, r.Yard, r.Evaluated)
		}
	}
}

// A blank takes the own estimate, a line by the owner too; what is included costs nothing more; a line among the things left out is not counted twice.
func TestBlanksAreNeverNothing(t *testing.T) {
	d := dossier.New()
	put(t, d, "w", plan.Work{Name: "Rivets", Likely: new(52000.0)})
	put(t, d, "b", plan.Bid{Yard: "yard", ExcludedSum: new(9000.0), Excludes: []string{"asbestos"}})
	put(t, d, "l1", plan.BidLine{Bid: "b", Item: "1", Work: "w", Entry: "blank"})
	put(t, d, "l2", plan.BidLine{Bid: "b", Item: "2", Entry: "by owner", Estimate: new(7000.0)})
	put(t, d, "l3", plan.BidLine{Bid: "b", Item: "3", Entry: "included", Estimate: new(31000.0)})
	put(t, d, "l4", plan.BidLine{Bid: "b", Item: "4", Entry: "no bid", Description: "Asbestos in the way", Estimate: new(11000.0)})
	put(t, d, "l5", plan.BidLine{Bid: "b", Item: "5", Entry: "number", Quantity: new(1000.0), UnitRate: new(210.0), Extension: new(2100.0)})
	r := brief(t, d, "2026-05-01").Money.Bids[0]
	if want := 52000.0 + 7000 + 9000 + 210000; math.Abs(*r.Evaluated.P50-want) > 0.5 || r.Filled != 2 {
		t.Errorf("%v, want %v; %d filled", *r.Evaluated.P50, want, r.Filled)
	}
}

func TestBidsAreReadWithTheirFaults(t *testing.T) {
	d := dossier.New()
	put(t, d, "b", plan.Bid{Yard: "yard A", Total: new(900000.0), ValidTo: date(t, "2026-04-01"), Excludes: []string{"rivets"}})
	// The unit rate governs: 1 000 at 210 is 210 000, written as 2 100.
	put(t, d, "l1", plan.BidLine{Bid: "b", Item: "3.01", Quantity: new(1000.0), UnitRate: new(210.0), Extension: new(2100.0)})
	put(t, d, "l2", plan.BidLine{Bid: "b", Item: "3.02", Entry: "blank"})
	put(t, d, "l3", plan.BidLine{Bid: "b", Item: "3.03", Entry: "included"})
	b := brief(t, d, "2026-05-01")
	if r := b.Money.Bids[0]; r.Lines != 3 || r.Blanks != 1 || len(b.Money.BidNotes) != 5 {
		t.Errorf("%+v\n%+v", r, b.Money.BidNotes)
	}
}

// The outside view stands beside the inside view and is not mixed into it: the middle growth of 1.0, 1.5 and 2.0 is 1.5, that of eight in ten 2.0.
func TestOthersStandBesideTheEstimate(t *testing.T) {
	d := dossier.New()
	put(t, d, "w", plan.Work{Name: "Steel", Low: new(80000.0), Likely: new(100000.0), High: new(130000.0)})
	alone := brief(t, d, "2026-05-01").Money
	for id, out := range map[string]float64{"o1": 100, "o2": 150, "o3": 200} {
		put(t, d, id, plan.OtherDocking{Name: "another", Estimate: new(100.0), Outcome: new(out)})
	}
	m := brief(t, d, "2026-05-01").Money
	if m.Outside == nil || len(m.Outside.Rows) != 2 || len(m.Outside.Cases) != 3 {
		t.Fatalf("%+v", m.Outside)
	}
	if even, sure := m.Outside.Rows[0], m.Outside.Rows[1]; math.Abs(*even.Outside.Value-150000) > 1 || math.Abs(*sure.Outside.Value-200000) > 1 || *sure.Inside.Value >= 130000 {
		t.Errorf("even odds %+v, sure %+v", even, sure)
	}
	if got, want := number(t, m.Estimate, "p80"), number(t, alone.Estimate, "p80"); got != want {
		t.Errorf("what happened to others moves the own estimate from %v to %v", want, got)
	}
}

// Yard A 900 000 and 18 a pound, yard B 760 000 and 25 a pound: they cost the same at 140 000/7 = 20 000 lb; below it B is cheaper.
func TestBidsChangePlacesWithTheQuantity(t *testing.T) {
	d := dossier.New()
	put(t, d, "w", plan.Work{Name: "Steel", Quantity: new(15000.0), QuantityLow: new(10000.0), QuantityTop: new(30000.0), Low: new(1.0), Likely: new(2.0), High: new(3.0)})
	put(t, d, "a", plan.Bid{Yard: "yard A", Lump: new(900000.0)})
	put(t, d, "b", plan.Bid{Yard: "yard B", Lump: new(760000.0)})
	put(t, d, "la", plan.BidLine{Bid: "a", Work: "w", Per: "lb", Quantity: new(15000.0), UnitRate: new(18.0)})
	put(t, d, "lb", plan.BidLine{Bid: "b", Work: "w", Per: "lb", Quantity: new(15000.0), UnitRate: new(25.0)})
	m := brief(t, d, "2026-05-01").Money
	if len(m.Turns) != 1 || math.Abs(*m.Turns[0].At.Value-20000) > 1e-6 || m.Turns[0].Below != "yard B" || !m.Turns[0].Within {
		t.Fatalf("%+v", m.Turns)
	}
	// A triangle of 10 000, 15 000, 30 000 lies below 20 000 with the chance 1 - 10 000^2/(20 000 * 15 000) = 2/3.
	for _, b := range m.Bids {
		want := map[string]float64{"yard A": 1.0 / 3, "yard B": 2.0 / 3}[b.Yard]
		if math.Abs(*b.Lowest.Value/100-want) > 2e-3 {
			t.Errorf("%s ends as the lowest in %v, the triangle says %v", b.Yard, *b.Lowest.Value, want)
		}
	}
}

// One life of 12 years, no spread of cost: 0.03 a year on 100 000 over twelve years, 2 % interest: 142 576 x 0.02/(1.02^12 - 1) = 10 630 a year, with the
// life itself as the middle of a triangle from 8.4 to 16.8.
func TestSavingForTheNextDocking(t *testing.T) {
	d := dossier.New()
	put(t, d, "m", plan.Matter{Name: "Coating"})
	put(t, d, "k", plan.Course{Matter: "m", Name: "Full", CostLikely: new(100000.0), LifeAdded: new(12.0)})
	put(t, d, "s", plan.Scheme{Name: "s", Standing: new(true), Courses: []string{"k"}, Date: date(t, "2027-05-01")})
	m := brief(t, d, "2026-05-01").Money
	if m.Next == nil {
		t.Fatalf("%+v", m.Missing)
	}
	due := m.Next.Figures[0]
	if math.Abs(*due.P50-(2027.33+12.3)) > 0.4 || len(m.Next.First) != 1 || math.Abs(*m.Next.First[0].First.Value-100) > 1e-9 {
		t.Errorf("due %+v, first %+v", due, m.Next.First)
	}
	if y := number(t, m.Next.Figures, "yearly_p50"); y < 9000 || y > 12000 {
		t.Errorf("yearly %v", y)
	}
}
