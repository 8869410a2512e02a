package intake

import (
	"fmt"
	"strings"
	"testing"
)

// plainList makes a list of readings without mess.
func plainList(rows int) []byte {
	var s strings.Builder
	s.WriteString("Frames from A.P.\nRdg;Fr;Strake;Side;Orig mm;Gauged mm;Rem\n")
	for i := range rows {
		fmt.Fprintf(&s, "%d;%d;%c;%c;12,5;%d,%d;\n", i+1, i%150, "KABCDEFGHJ"[i%10], "PS"[i%2], 9+i%4, i%10)
	}
	return []byte(s.String())
}

func BenchmarkPlainReadings(b *testing.B) {
	const rows = 50_000
	d, data := vessel(b), plainList(rows)
	b.ResetTimer()
	for range b.N {
		tb, err := Open("list.csv", data, d)
		if err != nil {
			b.Fatal(err)
		}
		if h, err := tb.Harvest(); err != nil || len(h.Records) != rows {
			b.Fatal(err, len(h.Records))
		}
	}
	b.ReportMetric(float64(b.Elapsed().Nanoseconds())/float64(b.N)/rows, "ns/row")
}
