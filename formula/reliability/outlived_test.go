package reliability

import (
	"fmt"
	"math"
	"strings"
	"testing"

	"pgregory.net/rapid"
)

// Computed: closed form, shape 3, design life 20 y, age 30, 5 y ahead.
func TestOutlivedByStrength(t *testing.T) {
	for a, want := range map[float64]float64{1: 0.3120, 2: 0.4454, 4: 0.5619} {
		in := OutlivedPart.New()
		in.DesignLife, in.Strength, in.Age, in.Ahead = 20, a, 30, 5
		out, err := OutlivedPart.Fn(in)
		if err != nil {
			t.Fatal(err)
		}
		near(t, "chance ahead", out.Probability, want, 5e-5)
		near(t, "plug-in", out.PlugIn, 1-math.Pow(2, (27000-42875)/8000.0), 1e-12)
	}
}

// Identity: the mixed law is the Weibull law averaged over its gamma law of rates, worked here by Simpson's rule over the gamma density.
func TestOutlivedIsTheAverageOverTheGammaLaw(t *testing.T) {
	const shape, strength, design, age, ahead = 3.0, 2.0, 20.0, 30.0, 5.0
	m := MixedWithMedian(shape, strength, design)
	alive, later := 0.0, 0.0
	const n = 20000
	top := 60 / m.B
	for i := range n + 1 {
		x := top * float64(i) / n
		weight := map[bool]float64{true: 4, false: 2}[i%2 == 1]
		if i == 0 || i == n {
			weight = 1
		}
		density := weight * math.Pow(x, strength-1) * math.Exp(-m.B*x)
		alive += density * math.Exp(-x*math.Pow(age, shape))
		later += density * math.Exp(-x*math.Pow(age+ahead, shape))
	}
	near(t, "chance ahead", Ahead(m, age, ahead), 1-later/alive, 1e-9)
}

// Identity: a very strong prior is the plug-in, and learning step by step is learning at once.
func TestOutlivedLimits(t *testing.T) {
	rapid.Check(t, func(t *rapid.T) {
		shape := rapid.Float64Range(0.6, 5).Draw(t, "shape")
		design := rapid.Float64Range(5, 60).Draw(t, "design")
		age := rapid.Float64Range(0, 80).Draw(t, "age")
		strong := MixedWithMedian(shape, 1e9, design)
		if a, b := Ahead(strong, age, 5), Ahead(WithMedian(shape, design), age, 5); math.Abs(a-b) > 1e-5 {
			t.Fatalf("strong prior %g, plug-in %g", a, b)
		}
		m := MixedWithMedian(shape, 2, design)
		if got := Survival(m, design); math.Abs(got-0.5) > 1e-12 {
			t.Fatalf("half must reach the design life, not %g", got)
		}
		once := m.Lived(age)
		// a share (B/(B+x))^a of parts whose lambda follows the learnt law survives the further hazard x
		further := math.Pow(age+5, shape) - math.Pow(age, shape)
		if a, b := 1-math.Pow(once.B/(once.B+further), 2), Ahead(m, age, 5); math.Abs(a-b) > 1e-9 {
			t.Fatalf("learnt law %g, conditional law %g", a, b)
		}
	})
}

func TestOutlivedSaysItInWords(t *testing.T) {
	in := OutlivedPart.New()
	in.DesignLife, in.Age = 20, 22
	out, _ := OutlivedPart.Fn(in)
	if !strings.Contains(out.Says, "evidence of a better part") || !strings.Contains(out.Says, "still rises") {
		t.Errorf("says %q", out.Says)
	}
	in.Age = 40
	out, _ = OutlivedPart.Fn(in)
	if len(out.Warnings) == 0 || !strings.Contains(out.Warnings[0], "still afloat") {
		t.Errorf("warnings %q", out.Warnings)
	}
	if m := MixedWithMedian(3, 2, 20); !(m.Hazard(m.Peak()) > m.Hazard(m.Peak()*1.1) && m.Hazard(m.Peak()) > m.Hazard(m.Peak()*0.9)) {
		t.Error("the hazard does not peak where Peak says")
	}
}

func ExampleOutlivedPart() {
	in := OutlivedPart.New()
	in.DesignLife, in.Age, in.Ahead = 20, 30, 5
	out, err := OutlivedPart.Fn(in)
	if err != nil {
		fmt.Println(err)
		return
	}
	fmt.Printf("fails within five years with chance %.2f, not %.2f\n", out.Probability, out.PlugIn)
	// Output: fails within five years with chance 0.45, not 0.75
}
