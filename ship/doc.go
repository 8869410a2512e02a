// Package ship holds what she is: her particulars, frames, strakes and hull form, her compartments, weights, plates, shaft lines, openings and
// protection, and the one language for where on her a thing is ([Place]). Records only: no formula stands here.
//
// Axes: x forward from the after perpendicular, y to port, z up from the baseline, in metres. Masses are in kilograms inside and tonnes in the
// tables. An optional number is a pointer: nil is "not known", never zero.
package ship
