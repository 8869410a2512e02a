// Package sqlite keeps a ship in one SQLite file beside the program. The file opens with the plain sqlite3 tool and explains itself: a readme table, and
// a view for each kind of record with the units in its column names.
package sqlite
