package main

import (
	"bytes"
	"fmt"
	"math"
	"os"
	"path/filepath"
	"strings"
)

// rawFiles are the survey and bid files as they came in, mess and all, for the importer.
func rawFiles() (map[string][]byte, error) {
	v, err := afresh(corranLines())
	if err != nil {
		return nil, err
	}
	for _, part := range []func(*vessel) error{corranShip, corranShell} {
		if err := part(v); err != nil {
			return nil, err
		}
	}
	out := map[string][]byte{
		"surveys/README.txt":             []byte(rawReadme),
		"surveys/1996-in-dock.csv":       rawSemicolons(survey1996(v)),
		"surveys/2011-afloat-inches.csv": rawInches(survey2011(v)),
		"bids/README.txt":                []byte(rawBidReadme),
		"bids/yard-s-schedule.csv":       rawBidSchedule(corranOffers()[0]),
		"bids/yard-v-offer.txt":          rawBidLetter(corranOffers()[1]),
	}
	if out["surveys/2023-ultrasonic.xlsx"], err = rawMerged(survey2023(v)); err != nil {
		return nil, err
	}
	out["bids/orrin-haven-quotation.xlsx"], err = rawBidSheet(corranOffers()[2])
	return out, err
}

const rawReadme = `Three thickness surveys of the invented steamer TSS Corran Vey, made up for trying the importer. Each is laid out as another firm would have
laid it out: semicolons and decimal commas (1996); inches, fractions and ditto marks (2011); merged two-level heads with port and starboard columns,
plates named from forward and frames counted from the bow (2023: the firm's frame 1 is the ship's frame 151).
`

const rawBidReadme = `Three bids for docking the invented steamer TSS Corran Vey, made up for trying the importer: a schedule with semicolons, a letter with tabs,
and a workbook. Sums that do not foot, lines without a price and lines "by owner" are meant to be there.
`

func writeRaw(dir string) error {
	files, err := rawFiles()
	if err != nil {
		return err
	}
	for name, data := range files {
		path := filepath.Join(dir, name)
		if err := os.MkdirAll(filepath.Dir(path), 0o755); err != nil {
			return err
		}
		if err := os.WriteFile(path, data, 0o644); err != nil {
			return err
		}
	}
	return nil
}

// comma writes a number with one decimal and a comma.
func comma(x float64) string {
	return strings.Replace(fmt.Sprintf("%.1f", x), ".", ",", 1)
}

// rawSemicolons is the survey of 1996: a heading, semicolons, decimal commas, German and English words mixed, sums as rows, old encoding.
func rawSemicolons(s campaign) []byte {
	var b bytes.Buffer
	line := func(cells ...string) { b.WriteString(strings.Join(cells, ";") + "\r\n") }
	line("Bericht / Report", "S-96-118", "", "", "", "", "", "", "", "")
	line("Schiff / Ship", "TSS CORRAN VEY", "", "Datum", "10.1996", "", "Gerät", "single echo 5 MHz", "", "")
	line("Werft", "in Dock", "", "v =", "5.920 m/s", "", "", "", "", "")
	line()
	line("Nr", "Spant", "Gang", "Seite", "Platte", "Orig. mm", "gem. mm", "Diff. mm", "%", "Bemerkung")
	strake := ""
	sum, n := 0.0, 0
	for i, g := range s.readings {
		if g.strake != strake && n > 0 && i%40 == 0 {
			line("", "", "", "", "", "", "", "Mittel", comma(sum/float64(n)), "")
			sum, n = 0, 0
		}
		strake = g.strake
		side := map[string]string{"port": "BB", "starboard": "StB", "centre": "Mitte"}[string(g.side)]
		orig, note := comma(g.plate.nominal), ""
		switch g.remark {
		case "pit":
			note = "Lochfraß " + comma(g.pit) + " mm"
		case "scale":
			note = "Rost, Zunder"
		case "doubler":
			note = "Doppelung"
		}
		if i%29 == 7 {
			orig = ""
		}
		frame := frameName(g.frame)
		if i%17 == 3 {
			frame = "Sp. " + frame
		}
		if g.result != "read" {
			line(s.number(i), frame, g.strake, side, g.plate.name, orig, "k.E.", "", "", "kein Echo")
			continue
		}
		value, diff := s.show(g.value), g.plate.nominal-s.show(g.value)
		share := comma(100 * diff / g.plate.nominal)
		cell := comma(value)
		if g.second > 0 {
			cell += " / " + comma(s.show(g.second))
		}
		line(s.number(i), frame, g.strake, side, g.plate.name, orig, cell, comma(diff), share, note)
		sum, n = sum+100*diff/g.plate.nominal, n+1
	}
	line("Summe", "", "", "", "", "", fmt.Sprint(len(s.readings)), "", "", "Messungen")
	line("k.E. = kein Echo / no echo. Negative Differenz: Platte dicker als Zeichnung.")
	return latin1(b.String())
}

// latin1 writes a text in the encoding of its time.
func latin1(s string) []byte {
	var b []byte
	for _, r := range s {
		if r < 256 {
			b = append(b, byte(r))
		} else {
			b = append(b, '?')
		}
	}
	return b
}

// rawInches is the survey of 2011: inches as decimals and fractions, plate weights, ditto marks, page totals, N/E, two readings in a cell.
func rawInches(s campaign) []byte {
	var b bytes.Buffer
	b.WriteString("Ship,TSS Corran Vey,,Report 11/207,,,,,\nTaken afloat from inside,,,June 2011,,,,,\n\nRdg,Fr,Strake,Side,Orig,Gauged,Loss,%,Rem\n")
	last := [3]string{}
	page, lost := 0, 0.0
	for i, g := range s.readings {
		side := map[string]string{"port": "P", "starboard": "S"}[string(g.side)]
		if i%23 == 4 {
			side = map[string]string{"P": "p", "S": "STBD"}[side]
		}
		cells := [3]string{oldFrame(g.frame, i), g.strake, side}
		shown := cells
		for k := range cells {
			if i%31 != 0 && cells[k] == last[k] && k < 2 {
				shown[k] = `"`
			}
		}
		last = cells
		for k := range shown {
			if strings.ContainsAny(shown[k], `",`) {
				shown[k] = `"` + strings.ReplaceAll(shown[k], `"`, `""`) + `"`
			}
		}
		orig := oldNominal(g.plate.nominal, i)
		if g.result != "read" {
			fmt.Fprintf(&b, "%s,%s,%s,%s,%s,N/E,,,\"no echo, wet behind\"\n", s.number(i), shown[0], shown[1], shown[2], orig)
			continue
		}
		inches := math.Round(g.value/25.4*1000) / 1000
		gauged := strings.TrimPrefix(fmt.Sprintf("%.3f", inches), "0")
		if g.second > 0 {
			gauged += "/" + strings.TrimPrefix(fmt.Sprintf("%.3f", g.second/25.4), "0")
		}
		loss := g.plate.nominal/25.4 - inches
		remark := map[string]string{"pit": fmt.Sprintf("pit %s", fraction(g.pit/25.4)), "scale": "scale", "doubler": "dbl", "": ""}[g.remark]
		if g.second > 0 {
			remark = "2 rdgs"
		}
		if loss < -0.01 && remark == "" && i%3 == 0 {
			remark = "thicker than orig?"
		}
		fmt.Fprintf(&b, "%s,%s,%s,%s,%s,%s,%s,%.0f,%s\n", s.number(i), shown[0], shown[1], shown[2], orig, gauged, strings.Replace(fmt.Sprintf("%.3f", loss), "0.", ".", 1), 100*loss/(g.plate.nominal/25.4), remark)
		page, lost = page+1, lost+100*loss/(g.plate.nominal/25.4)
		if page == 40 {
			fmt.Fprintf(&b, "Page total,,,,,%d rdgs,,%.1f,avg loss\n", page, lost/float64(page))
			page, lost = 0, 0
			last = [3]string{}
		}
	}
	b.WriteString(",,,,,,,,\nN/E = no echo. Fractions are nearest 32nd. Original taken from plan where not marked.,,,,,,,,\n")
	return b.Bytes()
}

// oldFrame writes a frame with some of the ways of a tired hand.
func oldFrame(f float64, i int) string {
	switch {
	case i%37 == 5:
		return fmt.Sprintf("Fr. %s", frameName(f))
	case i%41 == 9:
		return fmt.Sprintf(`"%s"`, frameName(f))
	case f != math.Trunc(f):
		return fmt.Sprintf("%.0f 1/2", math.Trunc(f))
	}
	return frameName(f)
}

// oldNominal writes the original thickness as fraction, decimal or plate weight: 1 inch is 40.8 lb/ft2.
func oldNominal(mm float64, i int) string {
	switch i % 5 {
	case 0:
		return fmt.Sprintf("%.1f#", mm/25.4*40.8)
	case 1:
		return fraction(mm / 25.4)
	case 2:
		return ""
	}
	return strings.TrimPrefix(fmt.Sprintf("%.3f", mm/25.4), "0")
}

// fraction is the nearest 32nd of an inch in its lowest terms.
func fraction(inches float64) string {
	n, d := int(math.Round(inches*32)), 32
	for n%2 == 0 && d > 1 && n > 0 {
		n, d = n/2, d/2
	}
	if d == 1 {
		return fmt.Sprint(n)
	}
	return fmt.Sprintf("%d/%d", n, d)
}
