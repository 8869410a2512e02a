package bench

import (
	"fmt"
	"math/rand/v2"
	"strings"
	"testing"
	"time"

	"oakum/demo"
	"oakum/dossier"
	"oakum/formula/protection"
	"oakum/intake"
	"oakum/survey"
)

// hourly is the log of a rectifier over twenty years, as its maker's program writes it, with three trips of weeks and a cell that goes dead.
func hourly() string {
	r := rand.New(rand.NewPCG(20, 175))
	var s strings.Builder
	s.WriteString("Date;Time;Voltage V;Current A;Ref cell mV;Temp C\n")
	at := time.Date(2006, 1, 1, 0, 0, 0, 0, time.UTC)
	for h := range 20 * 8766 {
		volts, amps, cell := 4+r.Float64(), 11+2*r.Float64()+float64(h)/1e5, -835+25*r.Float64()
		if k := h % 60_000; k > 30_000 && k < 31_500 {
			volts, amps, cell = 0, 0, -640+20*r.Float64()
		}
		if h > 120_000 && h < 120_200 {
			cell = -820
		}
		t := at.Add(time.Duration(h) * time.Hour)
		fmt.Fprintf(&s, "%s;%s;%.2f;%.2f;%.0f;%.1f\n", t.Format("2006-01-02"), t.Format("15:04"), volts, amps, cell, 11+7*r.Float64())
	}
	return s.String()
}

// BenchmarkRectifierLog reads the log of twenty years, hour by hour, from the text of a file to records, and from records to findings.
func BenchmarkRectifierLog(b *testing.B) {
	text := hourly()
	d, err := demo.Ship("corran-vey")
	if err != nil {
		b.Fatal(err)
	}
	var records []dossier.Record
	read := best(3, func() {
		t, err := intake.Open("rectifier log.csv", []byte(text), d)
		if err != nil {
			b.Fatal(err)
		}
		h, err := t.Harvest()
		if err != nil {
			b.Fatal(err)
		}
		records = h.Records
	})
	in := protection.Log.New()
	in.Rated = new(40.0)
	for _, r := range records {
		if x, ok := r.Body.(*survey.Rectifier); ok {
			in.Rows = append(in.Rows, protection.LogRow{Date: x.Date, Time: x.Time, Current: x.Amps, Voltage: x.Volts, Potential: x.Cell, Temperature: x.Temperature})
		}
	}
	if len(in.Rows) != 20*8766 {
		b.Fatalf("%d of %d lines became records", len(in.Rows), 20*8766)
	}
	var out protection.LogOut
	found := best(3, func() {
		if out, err = protection.Log.Fn(in); err != nil {
			b.Fatal(err)
		}
	})
	alone(b, "the log of the next line, records to findings (gaps, trips, saturation, dead cells, drift)", found, "")
	what := "log of 20 years, hourly: 175 320 lines of text to checked records"
	t, ok := ask[struct{ Days, Protected, Without float64 }](b, "rectifier.py", map[string]any{"text": text, "rated": *in.Rated, "repeat": 3}, "numpy")
	if !ok {
		alone(b, what, read, "")
		return
	}
	const day = 86400
	agree(b, "days", out.Days/day, t.Answers.Days, 1e-6)
	agree(b, "days protected", out.Protected/day, t.Answers.Protected, 1e-6)
	agree(b, "days without", out.Without/day, t.Answers.Without, 1e-6)
	compare(b, what, read, t.Tool, t.spent(), "the csv module and NumPy read the same text into arrays and count the days protected; no records, no questions, no findings. Days agree to 1e-6")
}
