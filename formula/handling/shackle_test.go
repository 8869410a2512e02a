package handling

import (
	"testing"

	"pgregory.net/rapid"
)

// Published: NAVEDTRA 14251, chapter 6: 5/8 in, 1.1719 short tons, 2343.8 lb.
func TestShacklePublished(t *testing.T) {
	out, err := Shackle.Fn(ShackleIn{Body: 0.625 * inch})
	if err != nil {
		t.Fatal(err)
	}
	near(t, "short tons", out.WLL/(2000*pound), 1.1719, 0.00005)
	near(t, "pounds", out.WLL/pound, 2343.8, 0.05+1e-9) // 2343.75, rounded up
}

// Identity: it goes with the square of the diameter.
func TestShackleGrowsWithTheSquare(t *testing.T) {
	rapid.Check(t, func(t *rapid.T) {
		d := rapid.Float64Range(0.005, 0.1).Draw(t, "body")
		one, _ := Shackle.Fn(ShackleIn{Body: d})
		two, _ := Shackle.Fn(ShackleIn{Body: 2 * d})
		if r := two.WLL / one.WLL; r < 4-1e-12 || r > 4+1e-12 {
			t.Fatalf("twice the diameter carries %g times", r)
		}
	})
}
