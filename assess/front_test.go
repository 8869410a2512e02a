package assess

import (
	"strings"
	"testing"
)

func worriedAbout(kind, id string, worry int) Figure {
	return Figure{Kind: kind, ID: id, Label: id, Worry: worry}
}

// Twelve thin plates are one worry; a gland and an opening stand beside it before a second plate does.
func TestFrontWorriesAreOfDifferentSorts(t *testing.T) {
	p := StandingPage{}
	for _, id := range []string{"p1", "p2", "p3", "p4"} {
		p.Plates = append(p.Plates, PlateRow{Life: worriedAbout("thickness", id, 3)})
	}
	p.Openings = []OpeningRow{{Sound: worriedAbout("opening", "o1", 2)}, {Sound: worriedAbout("opening", "o2", 1)}}
	p.Glands = []GlandRow{{Age: worriedAbout("gland", "g1", 2)}}
	p.worst()
	three := withOthers(worstThree(p.Worst), p.asking)
	var got []string
	for _, f := range three {
		got = append(got, f.ID+":"+f.Note)
	}
	if want := "p1:and 3 more places on her plating o1: g1:"; strings.Join(got, " ") != want {
		t.Errorf("front worries are %q, want %q", strings.Join(got, " "), want)
	}
	if said, want := askingWords(p.asking), "4 places on her plating, 1 opening and 1 gland ask for action today."; said != want {
		t.Errorf("heading says %q, want %q", said, want)
	}
}

func TestFrontFillsUpWithTheSameSort(t *testing.T) {
	three := worstThree([]Figure{worriedAbout("anode", "a1", 2), worriedAbout("anode", "a1", 2), worriedAbout("anode", "a2", 2), worriedAbout("anode", "a3", 1), worriedAbout("anode", "a4", 1)})
	if len(three) != 3 || three[1].ID != "a2" || three[2].ID != "a3" {
		t.Errorf("got %v", three)
	}
}

func TestListWords(t *testing.T) {
	for want, parts := range map[string][]string{"": nil, "a": {"a"}, "a and b": {"a", "b"}, "a, b and c": {"a", "b", "c"}} {
		if got := listWords(parts); got != want {
			t.Errorf("listWords(%v) = %q, want %q", parts, got, want)
		}
	}
}

// The heading counts every part that asks for action, not only the ones that the list has room for.
func TestHeadingCountsPastTheList(t *testing.T) {
	p := StandingPage{}
	for range listedWorries + 12 {
		p.Anodes = append(p.Anodes, AnodeRow{Left: worriedAbout("anode", "a", 2)})
	}
	p.worst()
	if got := askingWords(p.asking); got != "42 anodes ask for action today." || len(p.Worst) != listedWorries {
		t.Errorf("%s, listed %d", got, len(p.Worst))
	}
}
