// Package app is what the program can do with one ship: open her, enter and correct records, take a step back, keep files, make the brief. It holds the
// rules and the permissions; it knows no database and no transport. What it needs of a store is [Store], which stands here because it is this
// package that needs it.
package app
