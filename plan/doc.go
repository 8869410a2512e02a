// Package plan holds what is intended, promised, decided and done: matters and their courses, works and money, the dock and the days in it, and
// what is handed on. Records only. Money is in the ship's currency.
package plan
