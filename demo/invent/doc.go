// Package invent helps to make up ships: records from tables of loose values in their declared units, hulls from a few curves, and chance that
// is the same each time.
package invent
