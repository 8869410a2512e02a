package assess

import (
	"fmt"
	"math"
	"strings"
	"testing"

	"oakum/dossier"
	"oakum/plan"
)

// giver gives 1 000 a month for four years up to April 2026, has 30 000 in hand, a reserve of 10 000, and wants a scope of 44 000.
func giver(t *testing.T) *dossier.Dossier {
	d := dossier.New()
	put(t, d, "fund", plan.Pot{Name: "Fund"})
	for m := range 48 {
		put(t, d, fmt.Sprintf("r-%02d", m), plan.Receipt{Pot: "fund", Date: date(t, fmt.Sprintf("%d-%02d-15", 2022+(m+4)/12, (m+4)%12+1)), Amount: new(1000.0), Kind: "giving"})
	}
	put(t, d, "spent", plan.Payment{Pot: "fund", Date: date(t, "2026-04-20"), Amount: new(18000.0)})
	put(t, d, "res", plan.Reserve{Name: "home", Likely: new(10000.0)})
	put(t, d, "w", plan.Work{Name: "Dock", Likely: new(44000.0)})
	return d
}

// Steady giving of 1 000 a month and 24 000 lacking: two years, and a little more as prices rise by 3 % a year (44 000 becomes 46 700: some 27 months).
func TestSigningDateOfSteadyGiving(t *testing.T) {
	m := brief(t, giver(t), "2026-05-01").Money
	if got := number(t, m.Sign, "free_to_sign"); math.Abs(got-20000) > 0.5 {
		t.Errorf("can sign %v, not 20 000", got)
	}
	if len(m.Enough) != 1 || *m.Enough[0].Chance.Value != 0 || math.Abs(*m.Enough[0].Lacking.Value-24000) > 1 {
		t.Errorf("%+v", m.Enough)
	}
	if m.Signing == nil || *m.Signing.P50 < 2 || *m.Signing.P50 > 2.6 {
		t.Fatalf("signing %+v", m.Signing)
	}
	if m.SigningIf != nil {
		t.Errorf("nothing is hoped for: %+v", m.SigningIf)
	}
}

// A one-to-one grant of 25 000 that is applied for counts as nothing today, and brings the date forward where it is hoped for.
func TestHopedForMoneyStandsBeside(t *testing.T) {
	d := giver(t)
	put(t, d, "g", plan.Grant{Name: "Heritage", State: "applied", Cap: new(25000.0), Match: new(1.0), Arrears: new(false), Pot: "fund"})
	m := brief(t, d, "2026-05-01").Money
	if got := number(t, m.Sign, "free_to_sign"); math.Abs(got-20000) > 0.5 {
		t.Errorf("a grant applied for is counted: %v", got)
	}
	if m.SigningIf == nil || *m.SigningIf.P50 >= *m.Signing.P50-1 {
		t.Errorf("%+v beside %+v", m.SigningIf, m.Signing)
	}
	if !strings.HasPrefix(m.Heading[len(m.Heading)-1], "If what is applied for is granted") {
		t.Errorf("%q", m.Heading)
	}
}
