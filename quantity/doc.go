// Package quantity is the one parser and the one formatter of units.
//
// Inside the program every value stands in the base unit of its dimension:
// the SI unit, except that years stay years, degrees Celsius stay degrees
// Celsius and each currency is a dimension of its own. [Unit] rows say how a
// written value becomes a base value: base = v*Scale + Offset.
//
// [Parse] reads what people type ("17'-6 1/2\"", "20.4#", "12,7", "<.100")
// and keeps the text. Where the text has more than one meaning it returns
// them all and never picks one silently. [Format] prints a base value in a
// unit with no more digits than it deserves.
package quantity
