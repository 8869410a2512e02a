// Package beam solves a straight Euler beam: spans of any stiffness on rigid supports, springs and a Winkler bed, supports that can only push
// (they let go and come back), and supports that give way at a yield. Shaft lines and rows of keel blocks are such beams.
//
// Everything is in SI units. x runs along the beam; y, forces and settlements count downward; reactions count upward; a moment load counts
// clockwise with x drawn to the right (it turns dy/dx up); a bending moment counts sagging. Shear deflection is left out: it matters where a span
// is shorter than about five depths.
//
// The unknowns are deflection, slope, moment and shear at every node, tied by the exact solution of EI y"" + k y = w between nodes and by
// balance at them: one banded system. That holds from a rigid span (EI infinite) to a limp one and for spans of any length, where a stiffness
// matrix in deflections alone loses its digits to 12 EI/h^3. Sources: M. Hetenyi, Beams on Elastic Foundation (the four functions of a beam on a
// bed); the order in which supports let go is the block pivoting of J. Judice and F. Pires (1994), with K. Murty's single pivot where it would
// cycle.
package beam
