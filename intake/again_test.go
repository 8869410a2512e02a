package intake

import (
	"fmt"
	"math"
	"strings"
	"testing"
	"time"

	"oakum/survey"
)

// Identity: a date and a potential that stand in the file again are read as they were the first time, however many others stood between, and each
// column keeps to its own unit.
func TestCellsReadAgain(t *testing.T) {
	const days = mostDays + 400
	start := time.Date(2001, 1, 1, 0, 0, 0, 0, time.UTC)
	var s strings.Builder
	s.WriteString("Date;Voltage V;Current A;Ref cell mV;Setpoint V\n")
	row := func(i int) (day string, cell int, set string) {
		return start.AddDate(0, 0, i%days).Format("2006-01-02"), -(100 + i%(mostFigures+300)), fmt.Sprintf("-0.%03d", 100+i%900)
	}
	for i := range 2 * days {
		day, cell, set := row(i)
		fmt.Fprintf(&s, "%s;4.50;12;%d;%s\n", day, cell, set)
	}
	tb := opened(t, "rectifier log.csv", s.String())
	h := harvested(t, tb)
	refused := 0
	at := 0
	for i := range 2 * days {
		day, cell, set := row(i)
		if at >= len(h.Records) || !strings.HasSuffix(h.Records[at].From, fmt.Sprintf("row %d", i+2)) {
			refused++
			continue
		}
		r := h.Records[at]
		at++
		b := r.Body.(*survey.Rectifier)
		if b.Date.String() != day || math.Abs(*b.Cell-float64(cell)/1000) > 1e-12 || fmt.Sprintf("%.3f", *b.SetPoint) != set {
			t.Fatalf("row %d: %s, %g V, %g V of %s, %d mV, %s V", i+2, b.Date, *b.Cell, *b.SetPoint, day, cell, set)
		}
		if r.Typed["voltage"] != "4.50" || r.Typed["set_point"] == "" {
			t.Fatalf("row %d: typed %v", i+2, r.Typed)
		}
	}
	if at != len(h.Records) || refused != len(h.Refused) {
		t.Errorf("%d records of %d are right; %d rows are missing, %d refused", at, len(h.Records), refused, len(h.Refused))
	}
	if refused > days {
		t.Errorf("most rows are refused: %+v", h.Refused[0])
	}
}
