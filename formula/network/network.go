// Package network computes calendars: the works in their order with what they need, the dates on which she can go, and the deadlines of the days in
// dock.
//
// Time runs in days from the start of the works, as a number that may be broken; dates come from it by the working calendar. No clock is read.
package network

import "oakum/calc"

// Methods lists the subject's methods.
func Methods() []calc.Method { return []calc.Method{Timetable, Window, Days} }

const day = 86400.0 // s
