package assess

import (
	"context"
	"math"
	"strings"
	"testing"
)

// Identity: where nothing is renewed, none has failed by a time with the product of the chances that each has not. The futures of a ship left as she lies
// must give that; the median of n lies within four standard errors of a share of a half.
func TestFirstWaterIsThatOfPartsFailingIndependently(t *testing.T) {
	b := wholeBrief(t)
	const n = 4096
	part, err := b.Futures(context.Background(), n, nil, planMust, planInForce)
	if err != nil {
		t.Fatal(err)
	}
	failed := 1.0
	median := *part.Plans[0].FirstWater.P50 - b.ask.day.DecimalYear()
	for _, p := range b.Outlook.parts {
		if p.flow > 0 {
			failed *= 1 - p.failedBy(median)
		}
	}
	if failed = 1 - failed; math.Abs(failed-0.5) > 4*0.5/math.Sqrt(n)+1e-3 { // the date is rounded to a thousandth of a year
		t.Errorf("by the median of the futures, %.3f years, water has come in with a chance of %.3f", median, failed)
	}
}

// What the page says first, what its table of the plan in force says, and what the first page says are one.
func TestFirstWaterIsToldOnce(t *testing.T) {
	b := wholeBrief(t)
	p := b.Outlook.Futures.Plans[0]
	if !strings.Contains(b.Outlook.Heading[0], "most often by "+p.First[0].named()) || !strings.Contains(b.Outlook.Heading[0], p.Name) {
		t.Errorf("%q; the table of %s begins with %s", b.Outlook.Heading[0], p.Name, p.First[0].named())
	}
	if *b.Outlook.First.P50 != *p.FirstWater.P50 || *b.Front.When.P50 != *p.FirstWater.P50 || b.Front.When.Label != p.FirstWater.Label {
		t.Errorf("first water is %s, %s and %s", b.Outlook.First.Text, b.Front.When.Text, p.FirstWater.Text)
	}
	if named := strings.Contains(strings.Join(b.Outlook.Heading, " "), "no work of that plan renews "+lowerFirst(p.First[0].What)); named == p.First[0].Renewed {
		t.Errorf("renewed %v, and the page says %q", p.First[0].Renewed, b.Outlook.Heading)
	}
}

// Multinomial shares a and b of n differ by a standard error of sqrt((a + b - (a-b)^2)/n): 0.03 for 0.5 and 0.4 of 1000, by hand.
func TestWhatCantBeToldApartIsSaidSo(t *testing.T) {
	row := func(what string, share float64) FirstRow { return FirstRow{What: what, Share: share} }
	rows := []FirstRow{row("a", 0.5), row("b", 0.4)}
	if got := mostOften(rows, 1000); got != "a (50 % of futures)" {
		t.Error(got)
	}
	if got := mostOften(rows, 100); got != "a (50 % of futures), which can't be told apart from b" {
		t.Error(got)
	}
	if got := mostOften([]FirstRow{row("a", 0.1), row("b", 0.1), row("c", 0.1), row("d", 0.09)}, 1000); got != "a (10 % of futures), which can't be told apart from 3 others" {
		t.Error(got)
	}
}
