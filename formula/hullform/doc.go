// Package hullform is the geometry of a hull and what still water does to it: one closed surface, made from offsets or from a mesh, cut by any
// plane.
//
// Axes: x forward from the after perpendicular, y to port, z up from the baseline, right-handed, metres. Trim is positive by the stern, heel
// positive to port, angles in radians, masses in kilograms, densities in kg/m3.
//
// A [Hull] is made once ([New], [FromOffsets]) and never changed afterwards: every method may be called from several goroutines at a time.
// Everything below a plane is had from integrals over the wet skin alone (the divergence theorem with heights measured from that plane, so that
// the plane itself adds nothing). The skin is held in a tree of boxes with their integrals ready, so that a cut visits only the facets that the
// plane passes through.
package hullform
