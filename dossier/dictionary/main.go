// Command dictionary writes the data dictionary of the folder form, made from the kinds of record, to the file it is given.
package main

import (
	"fmt"
	"os"

	"oakum/dossier"
)

func main() {
	if len(os.Args) != 2 {
		fmt.Fprintln(os.Stderr, "usage: dictionary FILE")
		os.Exit(2)
	}
	if err := os.WriteFile(os.Args[1], dossier.Dictionary(), 0o644); err != nil {
		fmt.Fprintln(os.Stderr, err)
		os.Exit(1)
	}
}
