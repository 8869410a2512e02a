package app_test

import (
	"context"
	"math"
	"strings"
	"testing"

	"oakum/app"
	"oakum/assess"
	"oakum/dossier"
	"oakum/quantity"
	"oakum/ship"
)

// shell is a ship of one strake of 12.5 mm plate, frames half a metre apart from aft, 0 to 100.
func shell(t *testing.T, a *app.App) {
	t.Helper()
	built, err := quantity.ParseDate("1950")
	if err != nil {
		t.Fatal(err)
	}
	for id, body := range map[string]any{
		"ship":    &ship.Particulars{Name: "Testing", LBP: new(50.0), Built: built},
		"frames":  &ship.FrameSystem{Name: "frames", Origin: "after perpendicular", OriginX: new(0.0), First: new(0.0), Direction: "forward", Last: new(100.0), SpacingFrom: []float64{0}, Spacing: []float64{0.5}},
		"strakec": &ship.Strake{Name: "C", X: []float64{0, 50}, Lower: []float64{2, 2}, Upper: []float64{4, 4}, Thickness: new(0.0125)},
	} {
		kind := map[string]string{"ship": "particulars", "frames": "frame_system", "strakec": "strake"}[id]
		if _, err := a.Put(context.Background(), keeper, "made up", dossier.Record{Head: dossier.Head{ID: id, Kind: kind}, Body: body}); err != nil {
			t.Fatal(err)
		}
	}
}

func bring(t *testing.T, a *app.App, name, text string, answers map[string]string) {
	t.Helper()
	tb := table(t, a, name, text)
	g := tb.Guess().Usual()
	for i := range g.Questions {
		if w, ok := answers[g.Questions[i].Key]; ok {
			g.Questions[i].Answer = w
		}
	}
	if err := tb.Correct(g); err != nil {
		t.Fatal(err)
	}
	if _, err := a.Import(context.Background(), keeper, tb, false); err != nil {
		t.Fatal(err)
	}
}

// Two firms count the frames from opposite ends, one in millimetres, one in inches: their readings meet by place. Identity: the second firm's frame n is
// the ship's 101 - n, and 12.0 mm in 2010 and 11.5 mm (0.4528 in) in 2020 is 0.05 mm a year.
func TestTwoFirmsFromOppositeEndsMeetByPlace(t *testing.T) {
	a := opened(t)
	shell(t, a)
	bring(t, a, "one.csv", "Firm: survey firm A\nDate: 2010-05-01\nFrames from A.P.\nFr;Strake;Side;Gauged mm\n20;C;P;12.0\n40;C;P;12.1\n60;C;S;12.2\n", map[string]string{"frames": "same"})
	bring(t, a, "two.csv", "Firm: survey firm B\nDate: 2020-05-01\nFrames from the bow, frame 1 is the ship's frame 100\nFr;Strake;Side;Gauged in\n81;C;P;0.4528\n61;C;P;0.4567\n41;C;S;0.4606\n", map[string]string{"frames": "reverse:101"})
	d, _ := a.Dossier()
	day, _ := quantity.ParseDate("2026-05-01")
	s := assess.Assess(d, assess.PlanInForce(d), day).Standing
	if len(s.Plates) != 3 || len(s.Doubtful) != 0 {
		t.Fatalf("%d places, %d doubts, want three places read twice: %+v", len(s.Plates), len(s.Doubtful), s.Plates)
	}
	for _, p := range s.Plates {
		if p.Readings != 2 || p.Rate.P50 == nil || math.Abs(*p.Rate.P50-0.05) > 0.002 {
			t.Errorf("%s: %d readings, %s", p.Place, p.Readings, p.Rate.Text)
		}
	}
}

// A share of a whole that nobody stated is no thickness: the row is refused with its number, its cells and the reason, and the file is kept.
func TestPercentOfAnUnstatedWholeIsRefused(t *testing.T) {
	ctx, a := context.Background(), opened(t)
	l, err := a.Import(ctx, keeper, table(t, a, "list.csv", "Firm: survey firm A\nFr;Strake;Side;Gauged mm;Loss %\n37;C;P;;12\n38;C;P;11,8;\n"), false)
	if err != nil {
		t.Fatal(err)
	}
	if l.Records != 1 || len(l.Refused) != 1 || l.Refused[0].Row != 3 || !strings.Contains(l.Refused[0].Reason, "12 per cent") || !strings.Contains(l.Refused[0].Reason, "the thickness that it is of") || len(l.Refused[0].Cells) == 0 {
		t.Errorf("%+v", l)
	}
	if files, _ := a.Files(ctx); len(files) != 1 {
		t.Errorf("%d files are kept", len(files))
	}
	// Where no column holds a thickness nothing lands before somebody says which.
	if _, err := a.Import(ctx, keeper, table(t, a, "shares.csv", "Fr;Strake;Side;Loss %\n37;C;P;12\n"), false); err == nil || !strings.Contains(err.Error(), "reading") {
		t.Errorf("shares alone landed: %v", err)
	}
}
