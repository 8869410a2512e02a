package assess

import (
	"testing"

	"oakum/futures"
)

// The rule of three (Hanley and Lippman-Hand, JAMA 249, 1983): none in n leaves up to 3/n with 95 % confidence; exactly it is 1 - 0.05^(1/n),
// 0.29 % for 1024. An answer from so many futures never reads as never or as always.
func TestChanceOfNoneAndAllIsNeverCertain(t *testing.T) {
	for _, c := range []struct {
		p    float64
		text string
		note string
	}{{0, "under 0.3 %", "in none of 1024 futures"}, {1, "over 99.7 %", "in each of 1024 futures"}} {
		f := chanceFigure("water", "chance of water", futures.Chance{P: c.p}, 1024)
		if spaced(f.Text) != c.text || f.Note != c.note || *f.P10 > *f.P50 || *f.P50 > *f.P90 || *f.P10 == *f.P90 {
			t.Errorf("%v reads %q, %q, %v to %v", c.p, f.Text, f.Note, *f.P10, *f.P90)
		}
	}
	if f := chanceFigure("water", "chance of water", futures.Chance{P: 0.5, SE: 0.01}, 1024); spaced(f.Text) != "50.0 %" {
		t.Errorf("a half reads %q", f.Text)
	}
}
