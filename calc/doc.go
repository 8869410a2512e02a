// Package calc binds a formula (an ordinary function from a struct to a struct) to its sheet: the inputs with how each is known, the steps
// with the formula printed, the results, the limits overstepped, the sources and the cautions. A formula is declared once; the sheet, the
// command line, the HTTP route, the form and the manual come from that declaration.
package calc
