// Package intake reads spreadsheets and CSV as people really keep them. Opening a file gives a guess: sheets, heading rows, delimiter, decimal mark,
// encoding, unit and meaning of every column, each with its evidence in words. What the file leaves open is asked, never guessed silently. Reading it
// puts every row in exactly one place: records, the refused list with its reason, or the list of rows that are no readings (titles, headings, totals,
// footnotes). Nothing is written here; package app lands a harvest whole or not at all.
package intake
