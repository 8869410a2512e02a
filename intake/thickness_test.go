package intake

import (
	"slices"
	"strings"
	"testing"
)

// The list carries, made up, what gauging lists carry: pounds of plate, fractions, decimal comma and point, millimetres among inches, a quoted frame, ditto
// marks, several readings in a cell, a hole, a total, a footnote. Common practice: a pound of plate is 1/40.8 of an inch.
func TestSurveyorsListOfMixedUnits(t *testing.T) {
	tb := openedFile(t, "testdata/surveyor-list.csv")
	g := tb.Guess()
	if g.Kind != "thickness" || g.Delimiter != ";" || g.Unit != "in" {
		t.Fatalf("guessed %s, cut at %q, in %s", g.Kind, g.Delimiter, g.Unit)
	}
	for _, key := range []string{"plate", "fraction", "odd_unit", "bare_pounds"} {
		if _, ok := question(g, key); key != "fraction" && !ok {
			t.Errorf("%s is not asked", key)
		}
	}
	if _, err := tb.Harvest(); err == nil {
		t.Error("it landed while questions were open")
	}
	h := harvested(t, answered(t, tb, nil))
	got := thicknesses(t, h)
	for place, want := range map[string][2]float64{ // reading and original, mm
		"fr 37½, strake C, port":      {11.811, 12.7}, // .465 in; 20.4 lb = 1/2 in
		"fr 37½, strake C, starboard": {11.938, 12.7}, // 0.47 in; 1/2 in
		"fr 38, strake C, starboard":  {11.9, 12.7},   // 11,9 and 12,7 mm
		"fr 38, strake D, port":       {9.881, 9.525}, // .389 in; 15.3 lb = 3/8 in
		"fr 38 to 39, strake D, port": {-1, 9.525},    // N/E; 3/8 in
		"fr 40, strake E, starboard":  {4.75, 6.35},   // .187/.201 in, the least; 10.2 lb = 1/4 in
		"fr 40, strake E, port":       {2.54, 6.35},   // under ditto marks, <.100 in
		"fr 41, strake E, port":       {-1, 6.35},     // hole
	} {
		b := got[place]
		if b == nil {
			t.Errorf("nothing at %s", place)
			continue
		}
		if mm(b.Thickness) != want[0] || mm(b.Original) != want[1] {
			t.Errorf("%s: %v of %v mm, want %v", place, mm(b.Thickness), mm(b.Original), want)
		}
		if b.Date.String() != "1996-10" || b.Firm != "survey firm B" || b.InDock == nil || !*b.InDock {
			t.Errorf("%s: the lines above the table were not taken: %v, %q", place, b.Date, b.Firm)
		}
	}
	if b := got["fr 38 to 39, strake D, port"]; b.Result != "no echo" {
		t.Errorf("N/E is %q", b.Result)
	}
	if b := got["fr 41, strake E, port"]; b.Result != "through" {
		t.Errorf("a hole is %q", b.Result)
	}
	if b := got["fr 40, strake E, port"]; b.Below == nil || !*b.Below {
		t.Error("<.100 is not marked as less")
	}
	if b := got["fr 38, strake C, starboard"]; b.Remark != "pit" || mm(b.PitDepth) != 3 {
		t.Errorf("pit 3 mm is %q, %v", b.Remark, mm(b.PitDepth))
	}
	if b := got["fr 40, strake E, starboard"]; len(b.Readings) != 2 {
		t.Errorf("two readings in a cell gave %d", len(b.Readings))
	}
	if len(h.Refused) != 1 || !strings.Contains(h.Refused[0].Reason, `"Q" is no side`) || h.Refused[0].Row != 15 {
		t.Errorf("refused: %+v", h.Refused)
	}
	var named []string
	for _, n := range h.Named {
		named = append(named, n.As)
	}
	if want := []string{"title", "title", "title", "title", "heading", "total", "footnote"}; !slices.Equal(named, want) {
		t.Errorf("named %v, want %v", named, want)
	}
	for _, r := range h.Records {
		if r.Typed["original"] == "20.4#" && r.Typed["thickness"] == ".465 in" && strings.HasSuffix(r.From, "row 7") {
			return
		}
	}
	t.Error("the text as typed was not kept")
}

// Merged heads of two levels, frames from the bow, strakes by number, four readings a row.
func TestClassFormWithMergedHeads(t *testing.T) {
	tb := opened(t, "shell.xlsx", string(classForm(t)))
	g := tb.Guess()
	for heading, want := range map[string]string{
		"FORWARD READING / Gauged P": "thickness_forward_port [mm]", "AFT READING / Gauged S": "thickness_aft_starboard [mm]", "FORWARD READING / Dim. P %": "loss_percent_forward_port",
		"Org. thk mm": "original [mm]", "Strake": "strake", "Remarks": "notes",
	} {
		if got := guessed(g, heading); got != want {
			t.Errorf("%s is read as %s, want %s", heading, got, want)
		}
	}
	q, ok := question(g, "frames")
	if !ok || q.Answer != "reverse:152" {
		t.Errorf("frames from the bow, with frame 1 the ship's 151, gave %+v", q)
	}
	if q, ok := question(g, "strakes"); !ok || q.Usual != "K" {
		t.Errorf("which strake is number 1 is not asked: %+v", q)
	}
	h := harvested(t, answered(t, tb, map[string]string{"strakes": "K"}))
	got := thicknesses(t, h)
	for place, want := range map[string]float64{
		`fr 130, strake C, port, "forward end of the plate"`: 11.25, `fr 130, strake C, starboard, "forward end of the plate"`: 11.3, `fr 130, strake C, port, "after end of the plate"`: 10.9,
		`fr 121½, strake D, starboard, "forward end of the plate"`: 10.8, `fr 121½, strake D, starboard, "after end of the plate"`: 10.7,
	} {
		if b := got[place]; b == nil || mm(b.Thickness) != want {
			t.Errorf("%s: %+v, want %v", place, b, want)
		}
	}
	if b := got[`fr 130, strake C, starboard, "after end of the plate"`]; b == nil || b.Result != "no echo" {
		t.Errorf("N/E in a column of its own: %+v", b)
	}
	if b := got["fr 114, strake C"]; b == nil || b.Result != "not reached" {
		t.Errorf("a row with no access and no reading: %+v", b)
	}
	if len(h.Refused) != 0 {
		t.Errorf("refused %+v", h.Refused)
	}
	for _, r := range h.Records {
		if strings.HasSuffix(r.From, "sheet Shell, cell I7") && r.Typed["frame"] == "22" {
			return
		}
	}
	t.Error("no record names cell I7 and its frame as the file has it")
}

// Inches with fractions, ditto marks in words and signs, month before day, a group title among the rows, a reading in mils.
func TestInchesWithDittos(t *testing.T) {
	tb := openedFile(t, "testdata/inches.txt")
	g := tb.Guess()
	if g.Delimiter != "\t" || g.Unit != "in" || g.Dates != "mdy" {
		t.Fatalf("cut at %q, in %s, dates %s", g.Delimiter, g.Unit, g.Dates)
	}
	if _, asked := question(g, "fraction"); asked {
		t.Error("a fraction in a sheet of inches was asked about")
	}
	h := harvested(t, answered(t, tb, nil))
	got := thicknesses(t, h)
	for place, want := range map[string]float64{
		"fr 14, strake C, port": 11.1, "fr 14, strake C, starboard": 11.113, "fr 18, strake D, port": 10.109, "fr 22, strake D, port": 10.465, "fr 22½, strake E, port": 10.319, "fr 26, strake E, starboard": 10.211,
	} {
		if b := got[place]; b == nil || mm(b.Thickness) != want {
			t.Errorf("%s: %+v, want %v", place, b, want)
		}
	}
	if b := got["fr 14, strake C, starboard"]; b != nil && b.Date.String() != "2011-06-14" {
		t.Errorf("the ditto mark under a date gave %v", b.Date)
	}
	if b := got["fr 22, strake D, port"]; b != nil && (b.Result != "doubtful" || b.Date.String() != "2011-06") {
		t.Errorf("0.412? without a date is %q of %v", b.Result, b.Date)
	}
	if len(h.Refused) != 1 || !strings.Contains(h.Refused[0].Reason, ".4O2") {
		t.Errorf("a letter O in a figure: %+v", h.Refused)
	}
}

func TestOpenQuestions(t *testing.T) {
	head := "Fr;Strake;Side;Date;Orig;Gauged\n"
	for name, c := range map[string]struct {
		rows, key string
		answers   map[string]float64 // by answer: the original in mm
	}{
		"a comma before three digits":  {"37;C;P;14.6.2011;1,234;11\n", "decimal", nil},
		"a date in two orders":         {"37;C;P;03/04/21;12.7;11.1\n", "dates", nil},
		"pounds of plate":              {"37;C;P;14.6.2011;20 lb;11.1\n", "plate", map[string]float64{"lb_plate": 12.451, "lb_plate_40": 12.7}},
		"a fraction among millimetres": {"37;C;P;14.6.2011;12 1/2;11.1\n", "fraction", map[string]float64{"in": 317.5, "mm": 12.5}},
		"an inch among millimetres":    {"37;C;P;14.6.2011;12.7;11.1\n38;C;P;14.6.2011;12.7;.465\n", "odd_unit", nil},
		"a blank frame":                {"37;C;P;14.6.2011;12.7;11.1\n;C;S;14.6.2011;12.7;11.2\n", "blank_place", nil},
	} {
		t.Run(name, func(t *testing.T) {
			tb := opened(t, "list.csv", head+c.rows)
			q, ok := question(tb.Guess(), c.key)
			if !ok || !q.Needed || q.Usual == "" || len(q.Options) < 2 || q.Why == "" {
				t.Fatalf("%s is not asked: %+v", c.key, tb.Guess().Questions)
			}
			g := tb.Guess().Usual()
			for i := range g.Questions {
				if g.Questions[i].Key == c.key {
					g.Questions[i].Answer = ""
				}
			}
			if err := tb.Correct(g); err != nil {
				t.Fatal(err)
			}
			if _, err := tb.Harvest(); err == nil {
				t.Error("it landed while the question was open")
			}
			for answer, want := range c.answers {
				h := harvested(t, answered(t, opened(t, "list.csv", head+c.rows), map[string]string{c.key: answer}))
				if b := thicknesses(t, h)["fr 37, strake C, port"]; b == nil || mm(b.Original) != want {
					t.Errorf("%s: %+v, want %v mm", answer, b, want)
				}
			}
		})
	}
}

// Where the frames' end is not said it is asked; a survey that goes back to frames gauged before says it by itself.
func TestFramesGaugedBefore(t *testing.T) {
	d := vessel(t)
	old, err := Open("old.csv", []byte("Frames from A.P.\nFr;Strake;Side;Gauged mm\n14;C;P;11,1\n22;C;P;11,2\n30½;C;P;11,3\n46;C;P;11,1\n58;C;P;11,2\n81;C;P;11,3\n"), d)
	if err != nil {
		t.Fatal(err)
	}
	if err := d.Put(harvested(t, answered(t, old, nil)).Records...); err != nil {
		t.Fatal(err)
	}
	again, err := Open("new.csv", []byte("Fr;Strake;Side;Gauged mm\n138;C;P;10,1\n130;C;P;10,2\n121½;C;P;10,3\n106;C;P;10,1\n94;C;P;10,2\n71;C;P;10,3\n"), d)
	if err != nil {
		t.Fatal(err)
	}
	q, ok := question(again.Guess(), "frames")
	if !ok || q.Answer != "" || q.Usual != "reverse:152" || !strings.Contains(q.Why, "were gauged before") {
		t.Errorf("frames: %+v", q)
	}
}
