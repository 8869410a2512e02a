package ship

import (
	"fmt"
	"math"
	"slices"
	"strings"
)

// Frames is a frame system made ready for use: it knows the x of every frame.
type Frames struct {
	origin  float64 // x of the first frame
	first   float64 // its number
	rise    float64 // +1 where numbers rise forward, -1 where they rise aft
	halves  bool
	from    []float64 // frame where each spacing begins
	spacing []float64
	letters []string
	letter  float64 // spacing of the lettered frames
	last    *float64
}

// NewFrames makes a frame system ready. lbp, the length between perpendiculars, is needed where frames are counted from the bow and the x of
// the first is not given.
func NewFrames(s FrameSystem, lbp *float64) (Frames, error) {
	f := Frames{first: 0, rise: 1, halves: s.HalfFrames != nil && *s.HalfFrames, letters: s.Lettered, last: s.Last}
	if s.First != nil {
		f.first = *s.First
	}
	bow := s.Origin == "bow"
	if s.Direction == "aft" || s.Direction == "" && bow {
		f.rise = -1
	}
	switch {
	case s.OriginX != nil:
		f.origin = *s.OriginX
	case bow && lbp == nil:
		return Frames{}, fmt.Errorf("frames are counted from the bow: give the length between perpendiculars, or the place of the first frame")
	case bow:
		f.origin = *lbp
	}
	f.from, f.spacing = s.SpacingFrom, s.Spacing
	if len(f.spacing) == 0 {
		return Frames{}, fmt.Errorf("the frame spacing is missing")
	}
	if len(f.from) == 0 && len(f.spacing) == 1 {
		f.from = []float64{f.first}
	}
	if len(f.from) != len(f.spacing) {
		return Frames{}, fmt.Errorf("%d frame spacings begin at %d frames: give one frame for each", len(f.spacing), len(f.from))
	}
	for i, s := range f.spacing {
		if !(s > 0) || i > 0 && !(f.from[i] > f.from[i-1]) {
			return Frames{}, fmt.Errorf("frame spacings must be more than nothing and begin at rising frames")
		}
	}
	f.letter = f.spacing[0]
	if s.LetterSpacing != nil {
		f.letter = *s.LetterSpacing
	}
	return f, nil
}

// X gives the x of a frame as it is written, plus an offset in the direction in which the numbers rise.
func (f Frames) X(name string, offset *float64) (float64, error) {
	n, err := f.Number(name)
	if err != nil {
		return 0, err
	}
	s := f.along(n)
	if offset != nil {
		s += *offset
	}
	return f.origin + f.rise*s, nil
}

// Number gives a frame as a number. Lettered frames go down from the first: A is one less, B two less.
func (f Frames) Number(name string) (float64, error) {
	bare, _ := withoutFrameWord(name)
	read, ok := readFrame(bare)
	if !ok {
		return 0, fmt.Errorf("%q is no frame", name)
	}
	if read.letter == "" {
		return read.number, nil
	}
	i := slices.Index(f.letters, read.letter)
	if i < 0 {
		if len(f.letters) == 0 {
			return 0, fmt.Errorf("frame %s: the ship has no lettered frames", name)
		}
		return 0, fmt.Errorf("frame %s is not one of the lettered frames %s", name, strings.Join(f.letters, ", "))
	}
	return f.first - float64(i+1) - read.share, nil
}

// along is the distance from the first frame to frame n, in the direction in which the numbers rise.
func (f Frames) along(n float64) float64 {
	if n < f.first {
		return (n - f.first) * f.letter
	}
	s, at := 0.0, f.first
	for i, space := range f.spacing {
		end := math.Inf(1)
		if i+1 < len(f.from) {
			end = f.from[i+1]
		}
		if end <= at {
			continue
		}
		if n <= end {
			return s + (n-at)*space
		}
		s += (end - at) * space
		at = end
	}
	return s
}

// At gives the nearest frame to x as it is written, with what lies between them in the direction in which the numbers rise.
func (f Frames) At(x float64) (name string, offset float64) {
	s := (x - f.origin) * f.rise
	n := f.number(s)
	step := 1.0
	if f.halves {
		step = 0.5
	}
	n = math.Round(n/step) * step
	if n < f.first {
		return f.lettered(n, s)
	}
	return frame{number: n}.String(), s - f.along(n)
}

func (f Frames) lettered(n, s float64) (string, float64) {
	n = math.Round(n)
	i := int(f.first-n) - 1
	if i < 0 {
		return frame{number: f.first}.String(), s - f.along(f.first)
	}
	if len(f.letters) == 0 {
		return frame{number: n}.String(), s - f.along(n)
	}
	i = min(i, len(f.letters)-1)
	return f.letters[i], s - f.along(f.first-float64(i+1))
}

// number is the frame number, with its fraction, at a distance from the first frame.
func (f Frames) number(s float64) float64 {
	if s < 0 {
		return f.first + s/f.letter
	}
	at, done := f.first, 0.0
	for i, space := range f.spacing {
		end := math.Inf(1)
		if i+1 < len(f.from) {
			end = f.from[i+1]
		}
		if end <= at {
			continue
		}
		if width := (end - at) * space; s > done+width {
			done += width
			at = end
			continue
		}
		return at + (s-done)/space
	}
	return at
}

// Has tells whether the ship has a frame of this name.
func (f Frames) Has(name string) error {
	n, err := f.Number(name)
	if err != nil {
		return err
	}
	switch {
	case f.last != nil && n > *f.last:
		return fmt.Errorf("frame %s is beyond the last, %s", name, frame{number: *f.last})
	case n < f.first-float64(len(f.letters)) && len(f.letters) > 0, n < f.first && len(f.letters) == 0:
		return fmt.Errorf("frame %s is before the first, %s", name, frame{number: f.first})
	}
	return nil
}
