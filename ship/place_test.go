package ship

import (
	"math"
	"strings"
	"testing"

	"pgregory.net/rapid"
)

// The table of spellings is common practice as found in reports of several countries; the readings are ours.
func TestSettleReadsTheMess(t *testing.T) {
	m := func(x float64) *float64 { return &x }
	for typed, want := range map[string]Place{
		"37":              {Frame: "37"},
		"37 1/2":          {Frame: "37½"},
		"37-1/2":          {Frame: "37½"},
		"37½":             {Frame: "37½"},
		"37.5":            {Frame: "37½"},
		"37,5":            {Frame: "37½"},
		"37.25":           {Frame: "37¼"},
		"37.3":            {Frame: "37.3"},
		"037":             {Frame: "37"},
		"\"38\"":          {Frame: "38"},
		"fr 37":           {Frame: "37"},
		"Fr.37":           {Frame: "37"},
		"FR 37+0.2":       {Frame: "37", Offset: m(0.2)},
		"fr.96+14in":      {Frame: "96", Offset: m(14 * 0.0254)},
		"96 + 200":        {Frame: "96", Offset: m(0.2)},
		"96 - 200 mm":     {Frame: "96", Offset: m(-0.2)},
		"37½+0,15 m":      {Frame: "37½", Offset: m(0.15)},
		"38-39":           {Frame: "38", FrameTo: "39"},
		"Fr 72–148":       {Frame: "72", FrameTo: "148"},
		"frames 72 - 75":  {Frame: "72", FrameTo: "75"},
		"37 1/2 to 39":    {Frame: "37½", FrameTo: "39"},
		"Spant 12 bis 14": {Frame: "12", FrameTo: "14"},
		"Spt. 12":         {Frame: "12"},
		"couple 8":        {Frame: "8"},
		"A":               {Frame: "A"},
		"fr. b":           {Frame: "B"},
		"a ½":             {Frame: "A½"},
		"-2":              {Frame: "-2"},
		"37 (P)":          {Frame: "37", Side: Port},
		"37 1/2 stbd":     {Frame: "37½", Side: Starboard},
		"37(s)":           {Frame: "37", Side: Starboard},
		"abreast boiler":  {Frame: "abreast boiler"},
	} {
		p := Place{Frame: typed}
		p.Settle()
		if !same(p, want) {
			t.Errorf("%q gives %+v, want %+v", typed, show(p), show(want))
		}
	}
}

func TestParseSideReadsTheMess(t *testing.T) {
	for want, spellings := range map[Side]string{
		Port:      "P|p|PS|port|PORT|(p)|BB|Bb|Bb.|babord|bâbord|L|Backbord|bakboord|p.",
		Starboard: "S|s|SB|STBD|stbd|Stb|StB|Stb.|(s)|tribord|TRIBORD|R|Steuerbord|styrbord|starboard side",
		Centre:    "C|CL|C/L|centre|center|centreline",
		Both:      "both|P&S|P/S|p + s|PS/SB|BB/StB|(p)(s)|port and starboard",
		"":        "| |?",
	} {
		for s := range strings.SplitSeq(spellings, "|") {
			got, err := ParseSide(s)
			if err != nil || got != want {
				t.Errorf("%q gives %q (%v), want %q", s, got, err, want)
			}
		}
	}
	for _, s := range []string{"x", "port or starboard", "17", "psb"} {
		if got, err := ParseSide(s); err == nil {
			t.Errorf("%q was read as %q", s, got)
		}
	}
}

func TestParsePlaceReadsLooseText(t *testing.T) {
	for text, want := range map[string]string{
		"Fr. 37 1/2 C P":                   "fr 37½, strake C, port",
		"fr 37½, strake C, port":           "fr 37½, strake C, port",
		"frame 72-148, stbd":               "fr 72 to 148, starboard",
		"37½ C S":                          "fr 37½, strake C, starboard",
		"38-39, D, P":                      "",
		"fr 12 P":                          "fr 12, port",
		"fr 12, strake C to E, both":       "fr 12, strake C to E, both",
		"fr.96+14in, sb":                   "fr 96+0.3556 m, starboard",
		"fr 12, height 4'6\"":              "fr 12, height 1.3716 m",
		"in No 4 DB (S)":                   "in No 4 DB (S)",
		"port, in Fore peak":               "port, in Fore peak",
		`fr 3, "6 in below the waterline"`: `fr 3, "6 in below the waterline"`,
		"":                                 "",
	} {
		p, err := ParsePlace(text)
		if want == "" && text != "" {
			if err == nil {
				t.Errorf("%q was read as %s", text, p)
			}
			continue
		}
		if err != nil || p.String() != want {
			t.Errorf("%q gives %q (%v), want %q", text, p, err, want)
		}
	}
}

// placeGen draws places in their settled form.
func placeGen(t *rapid.T) Place {
	optional := func(g *rapid.Generator[string], label string) string {
		if !rapid.Bool().Draw(t, label+" said") {
			return ""
		}
		return strings.TrimSpace(g.Draw(t, label))
	}
	length := func(label string, lo, hi float64) *float64 {
		if !rapid.Bool().Draw(t, label+" said") {
			return nil
		}
		x := math.Round(rapid.Float64Range(lo, hi).Draw(t, label)*1000) / 1000
		return &x
	}
	frames := rapid.OneOf(rapid.StringMatching(`[1-9][0-9]{0,2}(½|¼|¾)?`), rapid.StringMatching(`[A-H]½?`), rapid.String())
	p := Place{
		Frame: optional(frames, "frame"), FrameTo: optional(frames, "frame to"), Offset: length("offset", -5, 5),
		Strake: optional(rapid.OneOf(rapid.StringMatching(`[A-Z]{1,2}[0-9]?`), rapid.String()), "strake"), StrakeTo: optional(rapid.StringMatching(`[A-Z]{1,2}`), "strake to"),
		Height: length("height", -1, 20), Side: rapid.SampledFrom([]Side{"", Port, Starboard, Centre, Both}).Draw(t, "side"),
		Space: optional(rapid.String(), "space"), Where: optional(rapid.String(), "where"),
	}
	p.Settle()
	return p
}

func TestPlaceTextRoundTrip(t *testing.T) {
	rapid.Check(t, func(t *rapid.T) {
		p := placeGen(t)
		q := p
		q.Settle()
		if !same(p, q) {
			t.Fatalf("settling twice changes %s into %s", show(p), show(q))
		}
		back, err := ParsePlace(p.String())
		if err != nil {
			t.Fatalf("%q can't be read back: %v", p, err)
		}
		if !same(p, back) {
			t.Fatalf("%q comes back as %q:\n%s\n%s", p, back, show(p), show(back))
		}
	})
}

func FuzzParsePlace(f *testing.F) {
	for _, s := range []string{"fr 37½, strake C, port", "Fr. 37 1/2 C P", `in "a, b", "c \" d"`, "fr 96+14in, offset 2 m", "to fr 3", "½", `fr "`} {
		f.Add(s)
	}
	f.Fuzz(func(t *testing.T, s string) {
		p, err := ParsePlace(s)
		if err != nil {
			return
		}
		text := p.String()
		q, err := ParsePlace(text)
		if err != nil {
			t.Fatalf("%q gives %q, which can't be read: %v", s, text, err)
		}
		if q.String() != text {
			t.Fatalf("%q gives %q and then %q", s, text, q)
		}
	})
}

func same(a, b Place) bool {
	near := func(x, y *float64) bool {
		return x == nil && y == nil || x != nil && y != nil && math.Abs(*x-*y) < 1e-9
	}
	ok := near(a.Offset, b.Offset) && near(a.Height, b.Height)
	a.Offset, b.Offset, a.Height, b.Height = nil, nil, nil, nil
	return ok && a == b
}

func show(p Place) string {
	var b strings.Builder
	for _, s := range []string{p.Frame, p.FrameTo, p.Strake, p.StrakeTo, string(p.Side), p.Space, p.Where} {
		b.WriteString("[" + s + "]")
	}
	return b.String() + " " + p.String()
}
