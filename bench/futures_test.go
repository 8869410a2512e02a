package bench

import (
	"context"
	"testing"

	"oakum/assess"
	"oakum/demo"
	"oakum/quantity"
)

// BenchmarkHundredThousandFutures runs the plans of the demonstration ship through 100 000 futures each.
func BenchmarkHundredThousandFutures(b *testing.B) {
	d, err := demo.Ship("corran-vey")
	if err != nil {
		b.Fatal(err)
	}
	brief := assess.Assess(d, assess.PlanInForce(d), quantity.DateOf(now()))
	for b.Loop() {
		part, err := brief.Futures(context.Background(), 100_000, nil)
		if err != nil {
			b.Fatal(err)
		}
		b.ReportMetric(float64(len(part.Plans)), "plans")
	}
}
