// Package print puts sheets and papers on paper. A paper is a view of a brief: it works nothing out, so that it can't differ from the pages. Package
// page knows the paper, drawing the ship, text the terminal; here is what each paper says.
package print
