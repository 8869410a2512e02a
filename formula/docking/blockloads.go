package docking

import (
	"fmt"
	"math"
	"slices"

	"oakum/calc"
	"oakum/field"
	"oakum/formula/beam"
)

func blocks(in BlocksIn) (out BlocksOut, err error) {
	w, warnings, err := in.weight()
	if err != nil {
		return out, err
	}
	if err = even(append(slices.Clone(in.Blocks), in.Side...)); err != nil {
		return out, err
	}
	l, err := in.line()
	if err != nil {
		return out, err
	}
	absent, err := in.absent()
	if err != nil {
		return out, err
	}
	out.Mass, out.LCG = w.mass, w.lcg
	out.Line, out.Offset = l.fwd-l.aft, w.lcg-(l.aft+l.fwd)/2
	out.Trapezoid = trapezoid(out.Mass, out.Line, out.Offset)
	for _, gone := range absent {
		if !gone {
			out.Count++
		}
	}
	out.Mean = w.mass * calc.Gravity / float64(out.Count)
	s, places, held, err := in.solve(w, absent)
	if err != nil {
		return out, err
	}
	if held {
		out.read(in, s, places, absent, l)
	}
	if held && len(in.LeaveOut) > 0 {
		if err = out.before(in, w); err != nil {
			return out, err
		}
	}
	out.overhangs(in, w, absent)
	out.knuckle(in, absent)
	out.Warnings = append(append(out.Warnings, warnings...), doubtful(append(slices.Clone(in.Blocks), in.Side...))...)
	out.judge(in, held)
	return out, nil
}

// absent marks the blocks left out.
func (in BlocksIn) absent() ([]bool, error) {
	gone := make([]bool, len(in.Blocks))
	for i, n := range in.LeaveOut {
		if n < 1 || n > len(in.Blocks) {
			return nil, field.Refuse(fmt.Sprintf("leave_out[%d]", i), "block %d is to be left out; there are %d, counted from 1", n, len(in.Blocks))
		}
		gone[n-1] = true
	}
	if left := len(gone) - countTrue(gone); left < 2 {
		return nil, field.Refuse("leave_out", "with these left out %d keel blocks remain; she needs at least two", left)
	}
	return gone, nil
}

func countTrue(list []bool) (n int) {
	for _, b := range list {
		if b {
			n++
		}
	}
	return n
}

// read turns the beam's answer into loads.
func (out *BlocksOut) read(in BlocksIn, s beam.Solution, places []int, absent []bool, l line) {
	peak, peakX, pressure, lineLoad, used := 0.0, 0.0, 0.0, 0.0, math.Inf(-1)
	for i, b := range in.Blocks {
		row := BlockLoad{Number: i + 1, Name: b.Name, X: b.X, State: "left out"}
		if !absent[i] {
			row = row.of(b, s.Reactions[slices.Index(places, i)], l.share[i])
			used = max(used, in.used(b, row))
			lineLoad = max(lineLoad, row.Line)
		}
		out.Loads = append(out.Loads, row)
	}
	for i, b := range in.Side {
		row := BlockLoad{Number: i + 1, Name: b.Name, X: b.X, Side: true}
		row = row.of(b, s.Reactions[slices.Index(places, len(in.Blocks)+i)], math.Inf(1))
		used = max(used, in.used(b, row))
		out.Loads = append(out.Loads, row)
	}
	for _, r := range out.Loads {
		if r.State == "lifted" {
			out.Lifted = append(out.Lifted, r.X)
		}
		if r.Force > peak {
			peak, peakX = r.Force, r.X
		}
		pressure = max(pressure, r.Pressure)
	}
	out.Peak, out.PeakX, out.Pressure, out.LineLoad = &peak, &peakX, &pressure, &lineLoad
	if !math.IsInf(used, -1) {
		out.Used = &used
	}
	if len(in.Weights) > 0 {
		out.hull(s)
	}
}

func (row BlockLoad) of(b Block, r beam.Reaction, share float64) BlockLoad {
	row.Force, row.State = max(r.Force, 0), "carries"
	row.Pressure, row.Line = row.Force/b.area(), row.Force/share
	switch {
	case r.Open || r.Force <= 0:
		row.State = "lifted"
	case r.Plastic:
		row.State = "crushed"
	}
	if len(b.Layers) > 0 {
		row.Squeeze = new(max(r.Deflection-b.Low, 0))
	}
	return row
}

// used is the largest part of a limit that a block uses; minus infinity where no limit is known.
func (in BlocksIn) used(b Block, row BlockLoad) float64 {
	u := math.Inf(-1)
	if in.BlockLimit != nil {
		u = max(u, row.Force / *in.BlockLimit)
	}
	if in.FloorLimit != nil && !row.Side {
		u = max(u, row.Line / *in.FloorLimit)
	}
	if y := b.yield(); y > 0 {
		u = max(u, row.Force/y)
	}
	return u
}

// hull lists bending moment and shear at the ends, blocks and steps of the weight curve. A ship given as one mass in one place has none of her own:
// all of it at her centre of gravity would bend her as no ship is bent.
func (out *BlocksOut) hull(s beam.Solution) {
	sag, hog := 0.0, 0.0
	for _, p := range s.Places {
		m := p.Moment()
		sag, hog = max(sag, m), min(hog, m)
		out.HullMoment = append(out.HullMoment, Moment{p.X, m})
		out.HullShear = append(out.HullShear, Shear{p.X, p.ShearLeft, p.ShearRight})
	}
	out.Sagging, out.Hogging = &sag, new(-hog)
}

func (out *BlocksOut) before(in BlocksIn, w weight) error {
	s, _, held, err := in.solve(w, make([]bool, len(in.Blocks)))
	if err != nil || !held {
		return err
	}
	out.PeakBefore = new(0.0)
	for _, r := range s.Reactions {
		*out.PeakBefore = max(*out.PeakBefore, r.Force)
	}
	return nil
}

func (out *BlocksOut) overhangs(in BlocksIn, w weight, absent []bool) {
	if len(in.Weights) == 0 {
		return
	}
	aft, fwd := math.Inf(1), math.Inf(-1)
	for i, b := range in.Blocks {
		if !absent[i] {
			aft, fwd = min(aft, b.X), max(fwd, b.X)
		}
	}
	out.OverAft, out.OverFwd = new(max(aft-w.x0, 0)), new(max(w.x1-fwd, 0))
}

// knuckle puts the upthrust of the first touch on the first one, two and three blocks.
func (out *BlocksOut) knuckle(in BlocksIn, absent []bool) {
	if in.Knuckle == nil {
		return
	}
	var first []Block
	for i, b := range in.Blocks {
		if !absent[i] {
			first = append(first, b)
		}
	}
	slices.SortFunc(first, func(a, b Block) int {
		if (a.X < b.X) == (in.KnuckleEnd != "fwd") {
			return -1
		}
		return 1
	})
	for n := 1; n <= min(3, len(first)); n++ {
		k := KnuckleLoad{Blocks: n, Force: *in.Knuckle * calc.Gravity / float64(n)}
		least := math.Inf(1)
		for _, b := range first[:n] {
			least = min(least, b.area())
			if y := b.yield(); y > 0 && (k.Used == nil || k.Force/y > *k.Used) {
				k.Used = new(k.Force / y)
			}
		}
		if in.BlockLimit != nil {
			if u := k.Force / *in.BlockLimit; k.Used == nil || u > *k.Used {
				k.Used = &u
			}
		}
		k.Pressure = k.Force / least
		out.Knuckles = append(out.Knuckles, k)
	}
}

func (out *BlocksOut) judge(in BlocksIn, held bool) {
	crushed := 0
	for _, r := range out.Loads {
		if r.State == "crushed" {
			crushed++
		}
	}
	const ways = "more or larger blocks where the peak is, softer caps at the ends, weight shifted towards the middle of the line, blocks under the overhang"
	switch {
	case !held:
		out.Verdict, out.Reason = Unsafe, fmt.Sprintf("UNSAFE: these blocks do not hold her: she tips or crushes them all (centre of gravity %.2f m from the middle of a line of %.2f m)", out.Offset, out.Line)
		out.Change = "What would change it: blocks on either side of her centre of gravity with enough bearing area; " + ways + "."
	case out.Used != nil && *out.Used > 1 || crushed > 0:
		out.Verdict = Unsafe
		out.Reason = fmt.Sprintf("UNSAFE: a limit is overstepped: %.0f kN on a block at %.2f m, %.0f kN/m on the line, %.2f MPa", *out.Peak/1e3, *out.PeakX, *out.LineLoad/1e3, *out.Pressure/1e6)
		if crushed > 0 {
			out.Reason += fmt.Sprintf("; blocks crushed: %d", crushed)
		}
		out.Change = "What would change it: " + ways + "."
	case out.Used == nil:
		out.Verdict, out.Reason = Marginal, fmt.Sprintf("NOT SHOWN SAFE: the largest load is %.0f kN, and nothing is known of what blocks or floor may carry", *out.Peak/1e3)
		out.Change = "What would change it: what a block, the dock floor or the timber of the caps may carry, asked of the dock and entered."
	case *out.Used > 0.9 || len(out.Lifted) > 0:
		out.Verdict, out.Reason = Marginal, fmt.Sprintf("MARGINAL: %.0f %% of a limit used, blocks that carry nothing: %d", *out.Used*100, len(out.Lifted))
		out.Change = "What would change it: " + ways + "."
	default:
		out.Verdict, out.Reason = Safe, fmt.Sprintf("Safe by these figures: %.0f %% of the nearest limit used", *out.Used*100)
		out.Change = "A block a few millimetres high, or one left out beside the peak, would bring it nearer."
	}
	for _, k := range out.Knuckles {
		if k.Blocks == 1 && k.Used != nil && *k.Used > 1 {
			out.Warnings = append(out.Warnings, fmt.Sprintf("at first touch one block alone would carry %.0f kN, %.0f %% of what it may", k.Force/1e3, *k.Used*100))
		}
	}
	if out.Verdict != Safe {
		out.Warnings = append([]string{out.Reason}, out.Warnings...)
	}
	if len(in.Blocks) > 0 && len(in.Blocks[0].Layers) == 0 {
		out.Warnings = append(out.Warnings, "the make of the blocks is not given: all are taken as equally soft for their area, and their squeeze is not known")
	}
}
