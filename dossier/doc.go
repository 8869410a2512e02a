// Package dossier is the whole of one ship: every record of every kind, what each kind is made of, how a record is read and written, whether
// the records agree, and the folder form that opens with no program.
//
// [Kinds] lists the kinds. A [Record] is a [Head] and a body, which is a pointer to the struct of its kind. [All] gives the records of one kind
// with their type. [ReadFolder] and [WriteFolder] are the folder form: one CSV file a kind, one text file for the ship. [Check] says what is
// missing, inconsistent or past its date, and what to do about it.
package dossier
