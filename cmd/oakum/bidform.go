package main

import (
	"bytes"
	"io"
	"os"

	"oakum/assess"
	printing "oakum/print"
)

// BidForm writes the form of bid that the specification asks for.
func (papers) BidForm(w io.Writer, b *assess.Brief) error { return printing.BidForm(w, b) }

// bidForm is the name by which the command line asks for the form of bid, which is a workbook and no PDF.
const bidForm = "bid-form"

func writeBidForm(path string, b *assess.Brief) error {
	var form bytes.Buffer
	if err := printing.BidForm(&form, b); err != nil {
		return err
	}
	return os.WriteFile(path, form.Bytes(), 0o644)
}
