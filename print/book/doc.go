// Package book writes what is handed to those who dock her next: one folder that opens with no program, packed as a BagIt bag and read through again
// after writing. It holds the records as CSV with their dictionary, the papers as PDF, the brief as text, the kept files, and the ship file itself.
package book
