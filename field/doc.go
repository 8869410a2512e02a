// Package field reads a struct's fields as data: key, label, unit, default, bounds and help stand once, in the struct's tags, and every
// form, column, HTTP description and printed sheet is made from them. It also holds the one codec between loose input (JSON, CSV cells,
// form text) and a struct, in both directions.
//
// Tags:
//
//	key      name in JSON, CSV and the catalogue (lower case, words joined by _); "-" hides the field
//	unit     declared unit of a bare number, a key of package quantity; none means dimensionless. Inside the struct the value is in base units
//	symbol   the letter used in printed formulas
//	label    a few words for people
//	help     a sentence more, where one is needed
//	default  value taken when the input is absent, in the declared unit
//	min max  inclusive bounds in the declared unit; over, under are the exclusive ones
//	enum     the words allowed, joined by |
//	optional "yes" where a list, text or table may be absent; a pointer is always optional
//	most     the greatest length of a list
//	expr     on a result: the expression over symbols, in base units, that gave it
//	of       on a record: the kind this text refers to
//
// An anonymous struct field is flattened into its parent.
package field
