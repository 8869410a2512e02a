package dossier

import (
	"fmt"
	"testing"
	"testing/fstest"

	"oakum/quantity"
	"oakum/ship"
	"oakum/survey"
)

// manyReadings makes the thickness readings of a large ship.
func manyReadings(n int) *Dossier {
	records := make([]Record, n)
	for i := range n {
		day, _ := quantity.NewDate(1996+i%28, 1+i%12, 1+i%28)
		body := &survey.Thickness{
			Seen:      survey.Seen{Date: day, Who: "yard"},
			Place:     ship.Place{Frame: fmt.Sprint(i % 400), Strake: string(rune('A' + i%10)), Side: []ship.Side{ship.Port, ship.Starboard}[i%2]},
			Survey:    fmt.Sprintf("survey %d", i%5),
			Thickness: new(float64(80+i%60) / 1e4), SD: new(0.0001), Original: new(0.0127), Result: "read", Paint: "no", Firm: "a gauging firm",
		}
		records[i] = Record{Head{ID: fmt.Sprintf("t%06d", i), Kind: "thickness", Version: 1, Basis: "measured"}, body}
	}
	d := New()
	if err := d.Put(records...); err != nil {
		panic(err)
	}
	return d
}

const large = 120_000

func BenchmarkDecodeBodies(b *testing.B) {
	var raws [][]byte
	for r := range manyReadings(large).Records("thickness") {
		raw, err := EncodeBody(r.Kind, r.Body)
		if err != nil {
			b.Fatal(err)
		}
		raws = append(raws, raw)
	}
	b.ReportAllocs()
	for b.Loop() {
		records := make([]Record, len(raws))
		for i, raw := range raws {
			body, typed, err := DecodeBody("thickness", raw)
			if err != nil {
				b.Fatal(err)
			}
			records[i] = Record{Head{ID: fmt.Sprintf("t%06d", i), Kind: "thickness", Typed: typed}, body}
		}
		if err := New().Put(records...); err != nil {
			b.Fatal(err)
		}
	}
}

func BenchmarkReadFolder(b *testing.B) {
	fsys := fstest.MapFS{}
	for name, data := range Files(manyReadings(large)) {
		fsys[name] = &fstest.MapFile{Data: data}
	}
	b.ReportAllocs()
	for b.Loop() {
		r, err := ReadFolder(fsys)
		if err != nil || len(r.Refused) > 0 {
			b.Fatal(err, r.Refused)
		}
	}
}

func BenchmarkWriteFiles(b *testing.B) {
	d := manyReadings(large)
	for b.Loop() {
		for range Files(d) {
		}
	}
}

func BenchmarkCheck(b *testing.B) {
	d := manyReadings(large)
	records := []Record{
		{Head{ID: "s", Kind: "particulars"}, &ship.Particulars{Name: "Large", LBP: new(270.0), Beam: new(32.0), Depth: new(15.0)}},
		{Head{ID: "f", Kind: "frame_system"}, &ship.FrameSystem{Origin: "bow", Spacing: []float64{1.2}}},
	}
	for i := range 10 {
		records = append(records, Record{Head{ID: fmt.Sprintf("k%d", i), Kind: "strake"}, &ship.Strake{Name: string(rune('A' + i))}})
	}
	if err := d.Put(records...); err != nil {
		b.Fatal(err)
	}
	today, _ := quantity.NewDate(2026, 6, 1)
	for b.Loop() {
		Check(d, today)
	}
}
