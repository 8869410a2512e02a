package choice

import (
	"slices"
	"testing"
)

// order gives a ballot by its courses from best to worst, as letters: "BAC".
func order(count int, courses string) Ballot {
	b := Ballot{Level: make([]int, len(courses)), Count: count}
	for i, c := range courses {
		b.Level[c-'A'] = len(courses) - i
	}
	return b
}

// Published: A. Small, "Borda different than Condorcet?", election-methods list, 24 February 2003: 66 say A B C, 34 say B C A; A beats each other, B has 134
// points, A 132, C 34.
func TestPollPublishedBordaDiffers(t *testing.T) {
	got := Count(3, []Ballot{order(66, "ABC"), order(34, "BCA")})
	if !slices.Equal(got.Borda, []float64{132, 134, 34}) || got.Winner != 0 {
		t.Errorf("%+v", got)
	}
}

// Condorcet's own case of 81 voters (Essai, 1785), from memory, counted again by hand: A beats B by 41 to 40 and C by 60 to 21; the points are 101, 109, 33.
func TestPollOfEightyOne(t *testing.T) {
	got := Count(3, []Ballot{order(30, "ABC"), order(1, "ACB"), order(10, "CAB"), order(29, "BAC"), order(10, "BCA"), order(1, "CBA")})
	if !slices.Equal(got.Borda, []float64{101, 109, 33}) || got.Winner != 0 || got.Over[0][1] != 41 || got.Over[1][0] != 40 || got.Over[0][2] != 60 || got.Over[1][2] != 69 {
		t.Errorf("%+v", got)
	}
}

// Three who go round: each course beats one, none beats all.
func TestPollRound(t *testing.T) {
	got := Count(3, []Ballot{order(1, "ABC"), order(1, "BCA"), order(1, "CAB")})
	if got.Winner != -1 || !slices.Equal(got.Beats, []int{1, 1, 1}) || !slices.Equal(got.Borda, []float64{3, 3, 3}) {
		t.Errorf("%+v", got)
	}
}

// Identities: points sum to ballots times n(n-1)/2; above, below and equal sum to the ballots.
func TestPollSums(t *testing.T) {
	ballots := []Ballot{{[]int{3, 2, 2, 1}, 5}, {[]int{0, 0, 0, 0}, 2}, {[]int{1, 4, 2, 3}, 7}, {[]int{1, 2}, 9}, {[]int{1, 2, 3, 4}, 0}}
	got := Count(4, ballots)
	sum := 0.0
	for _, p := range got.Borda {
		sum += p
	}
	if sum != 14*6 {
		t.Errorf("points sum to %v, want %v", sum, 14*6)
	}
	if above, below := got.Over[0][1], got.Over[1][0]; above != 5 || below != 7 {
		t.Errorf("%d above, %d below, want 5 and 7 with 2 equal", above, below)
	}
}
