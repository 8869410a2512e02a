package choice

import (
	"errors"
	"fmt"
	"math"
	"slices"
	"strings"
	"testing"

	"pgregory.net/rapid"

	"oakum/field"
)

// propellers is worked by hand: weights 100, 80, 40, 20 of 240; the first is worth (100x100 + 80x60 + 0 + 20x100)/240 = 70.
func propellers() WeighIn {
	in := Weigh.New()
	for i, s := range []float64{100, 80, 40, 20} {
		in.Criteria = append(in.Criteria, Criterion{Name: fmt.Sprint("c", i), Worst: 0, Best: 100, Swing: new(s)})
	}
	in.Courses = []Contender{{"leave", []float64{100, 60, 0, 100}}, {"seal", []float64{60, 100, 70, 40}}, {"take off", []float64{0, 30, 100, 0}}}
	return in
}

// Computed by hand.
func TestWeighByHand(t *testing.T) {
	out, err := Weigh.Fn(propellers())
	if err != nil {
		t.Fatal(err)
	}
	for i, want := range []float64{73.333, 70.000, 26.667} {
		near(t, out.Value[i].Course, out.Value[i].Value, want, 5e-4)
	}
	if !slices.Equal(out.Rank, []string{"seal", "leave", "take off"}) || len(out.Close) != 1 {
		t.Errorf("rank %v, close %+v", out.Rank, out.Close)
	}
	i := slices.IndexFunc(out.Switch, func(s Switch) bool { return s.Criterion == "c0" && s.At > s.Now })
	if i < 0 {
		t.Fatalf("no switch: %+v", out.Switch)
	}
	near(t, "first swing at the tie", out.Switch[i].At, 120, 1e-9)
	near(t, "its weight then", out.Switch[i].Weight, 120.0/260, 1e-9)
	if out.Switch[i].To != "leave" {
		t.Errorf("to %q", out.Switch[i].To)
	}
	in := propellers()
	in.Criteria[0].Swing = new(120.0)
	if out, _ = Weigh.Fn(in); math.Abs(out.Lead) > 1e-9 {
		t.Errorf("at 120 they tie, not %g apart", out.Lead)
	}
}

// Published: rank order centroid weights of four criteria, .5208 .2708 .1458 .0625 (Barron and Barrett, Management Science 42, 1996); of three, .6111
// .2778 .1111.
func TestWeighPublishedCentroids(t *testing.T) {
	for n, want := range map[int][]float64{4: {0.5208, 0.2708, 0.1458, 0.0625}, 3: {0.6111, 0.2778, 0.1111}} {
		in := propellers()
		in.Criteria = in.Criteria[:n]
		for i := range in.Criteria {
			in.Criteria[i].Swing, in.Criteria[i].Rank = nil, new(i+1)
		}
		for i := range in.Courses {
			in.Courses[i].Scores = in.Courses[i].Scores[:n]
		}
		out, err := Weigh.Fn(in)
		if err != nil {
			t.Fatal(err)
		}
		for i := range want {
			near(t, "weight", out.Weights[i].Weight, want[i], 5e-5)
		}
	}
}

// Closed form: on two criteria one course leads while its weight on the first is above a threshold, so its share of all weightings is one less that;
// on three criteria with scores (1,0,0), (0,1,0), (0,0,1) each comes first in a third.
func TestWeighWinShares(t *testing.T) {
	in := Weigh.New()
	in.Criteria = []Criterion{{Name: "a", Best: 1, Swing: new(1.0)}, {Name: "b", Best: 1, Swing: new(1.0)}}
	in.Courses = []Contender{{"x", []float64{1, 0.2}}, {"y", []float64{0.4, 0.6}}} // x leads where 0.6 w > 0.4 (1-w)
	out, err := Weigh.Fn(in)
	if err != nil {
		t.Fatal(err)
	}
	near(t, "x", out.WinShare[0].All, 0.6, 0.001)
	in.Criteria = append(in.Criteria, Criterion{Name: "c", Best: 1, Swing: new(1.0)})
	in.Courses = []Contender{{"x", []float64{1, 0, 0}}, {"y", []float64{0, 1, 0}}, {"z", []float64{0, 0, 1}}}
	in.Voices = []Voice{{"v", []float64{2, 1, 0}}, {"w", []float64{1, 2, 0}}}
	if out, err = Weigh.Fn(in); err != nil {
		t.Fatal(err)
	}
	for _, w := range out.WinShare {
		near(t, w.Course, w.All, 1.0/3, 0.001)
	}
	near(t, "between the voices x", *out.WinShare[0].Voices, 0.5, 0.001)
	near(t, "between the voices z", *out.WinShare[2].Voices, 0, 0)
	if *out.WinShare[0].Heard != 1 {
		t.Errorf("%+v", out.WinShare)
	}
}

// Closed form: the volume of the simplex on which (0.5, 0.5, 0.5) beats the three corners: all weights below one half, a quarter of it.
func TestWeighWinShareOfTheMiddle(t *testing.T) {
	in := Weigh.New()
	for _, n := range []string{"a", "b", "c"} {
		in.Criteria = append(in.Criteria, Criterion{Name: n, Best: 1, Swing: new(1.0)})
	}
	in.Courses = []Contender{{"x", []float64{1, 0, 0}}, {"y", []float64{0, 1, 0}}, {"z", []float64{0, 0, 1}}, {"m", []float64{0.5, 0.5, 0.5}}}
	out, err := Weigh.Fn(in)
	if err != nil {
		t.Fatal(err)
	}
	near(t, "the middle", out.WinShare[3].All, 0.25, 0.002)
}

// Identity: units don't matter, shares add up to one, a dominated course never leads, and at each switch the two courses tie.
func TestWeighLaws(t *testing.T) {
	rapid.Check(t, func(t *rapid.T) {
		n := rapid.IntRange(1, 5).Draw(t, "criteria")
		in := Weigh.New()
		for i := range n {
			in.Criteria = append(in.Criteria, Criterion{Name: fmt.Sprint(i), Worst: 0, Best: 100, Swing: new(rapid.Float64Range(1, 100).Draw(t, "swing"))})
		}
		for i := range rapid.IntRange(1, 4).Draw(t, "courses") {
			c := Contender{Name: fmt.Sprint(i)}
			for range n {
				c.Scores = append(c.Scores, float64(rapid.IntRange(0, 100).Draw(t, "score")))
			}
			in.Courses = append(in.Courses, c)
		}
		out, err := Weigh.Fn(in)
		if err != nil {
			t.Fatal(err)
		}
		sum := 0.0
		for _, w := range out.WinShare {
			sum += w.All
		}
		if math.Abs(sum-1) > 1e-9 {
			t.Fatalf("shares add up to %g", sum)
		}
		if slices.Contains(out.Beaten, out.Best) && out.Lead > 0 {
			t.Fatalf("%q is dominated and leads", out.Best)
		}
		turned := in
		turned.Criteria = slices.Clone(in.Criteria)
		turned.Courses = slices.Clone(in.Courses)
		turned.Criteria[0].Worst, turned.Criteria[0].Best = 7, 5 // smaller is better, another unit
		for i, c := range turned.Courses {
			s := slices.Clone(c.Scores)
			s[0] = 7 - 2*s[0]/100
			turned.Courses[i].Scores = s
		}
		again, err := Weigh.Fn(turned)
		if err != nil || math.Abs(again.Value[0].Value-out.Value[0].Value) > 1e-9 {
			t.Fatalf("in another unit %g, was %g (%v)", again.Value[0].Value, out.Value[0].Value, err)
		}
		for _, s := range out.Switch {
			moved := in
			moved.Criteria = slices.Clone(in.Criteria)
			for i := range moved.Criteria {
				if moved.Criteria[i].Name == s.Criterion {
					moved.Criteria[i].Swing = new(s.At)
				}
			}
			if slices.ContainsFunc(moved.Criteria, func(c Criterion) bool { return *c.Swing > 0 }) {
				tie, _ := Weigh.Fn(moved)
				if tie.Lead > 1e-6 {
					t.Fatalf("at the switch %+v they stand %g apart", s, tie.Lead)
				}
			}
		}
	})
}

// Two voices that disagree make a close call whatever the mean says, and their mean stands where no swing is given.
func TestWeighVoices(t *testing.T) {
	in := propellers()
	for i := range in.Criteria {
		in.Criteria[i].Swing = nil
	}
	in.Voices = []Voice{{"curator", []float64{100, 10, 10, 60}}, {"treasurer", []float64{10, 60, 100, 10}}}
	out, err := Weigh.Fn(in)
	if err != nil {
		t.Fatal(err)
	}
	near(t, "weight", out.Weights[0].Weight, (100.0/180+10.0/180)/2, 1e-12)
	if len(out.Close) == 0 || !strings.Contains(out.Close[0].Why, "voices differ") {
		t.Errorf("close %+v", out.Close)
	}
	in.Courses = append(in.Courses, Contender{"patch", []float64{50, 50, 60, 30}})
	if out, _ = Weigh.Fn(in); !slices.Equal(out.Beaten, []string{"patch"}) {
		t.Errorf("dominated %v", out.Beaten)
	}
}

func TestWeighRefuses(t *testing.T) {
	for want, change := range map[string]func(*WeighIn){
		"worst and best are both":  func(in *WeighIn) { in.Criteria[1].Best = 0 },
		"3 scores for 4":           func(in *WeighIn) { in.Courses[1].Scores = in.Courses[1].Scores[:3] },
		"give every criterion one": func(in *WeighIn) { in.Criteria[2].Swing = nil },
		"give one of them":         func(in *WeighIn) { in.Criteria[2].Weight = new(2.0) },
		"2 swings for 4":           func(in *WeighIn) { in.Voices = []Voice{{"x", []float64{1, 2}}} },
		"no criterion any swing":   func(in *WeighIn) { in.Voices = []Voice{{"x", []float64{0, 0, 0, 0}}} },
		"criteria is empty":        func(in *WeighIn) { in.Criteria = nil },
		"stands twice":             func(in *WeighIn) { in.Courses[1].Name = "leave" },
		"rank 2 stands twice or lies": func(in *WeighIn) {
			for i := range in.Criteria {
				in.Criteria[i].Swing, in.Criteria[i].Rank = nil, new(2)
			}
		},
		"the criteria have no swings": func(in *WeighIn) {
			for i := range in.Criteria {
				in.Criteria[i].Swing = nil
			}
		},
	} {
		in := propellers()
		change(&in)
		_, err := Weigh.Fn(in)
		e, ok := errors.AsType[*field.Error](err)
		if !ok || e.Field == "" || !strings.Contains(e.Message, want) {
			t.Errorf("%v, want a refusal with %q", err, want)
		}
	}
	in := propellers()
	in.Courses[0].Scores[0] = 140
	out, err := Weigh.Fn(in)
	if err != nil || len(out.Warnings) != 1 || !strings.Contains(out.Warnings[0], "outside 0 to 100") {
		t.Errorf("%v %v", out.Warnings, err)
	}
}

func ExampleWeigh() {
	in := Weigh.New()
	in.Criteria = []Criterion{{Name: "money", Worst: 120e3, Best: 0, Swing: new(60.0)}, {Name: "old fabric kept", Worst: 0, Best: 10, Swing: new(100.0)}}
	in.Courses = []Contender{{"leave and seal", []float64{30e3, 10}}, {"take off and show", []float64{90e3, 4}}}
	out, err := Weigh.Fn(in)
	if err != nil {
		fmt.Println(err)
		return
	}
	for _, v := range out.Value {
		fmt.Printf("%s %.0f\n", v.Course, v.Value)
	}
	// Output:
	// leave and seal 91
	// take off and show 34
}
