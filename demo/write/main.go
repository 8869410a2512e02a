// Command write makes the invented ships of the demonstration and writes them as folders of CSV, with the survey and bid files that came in.
// The same program writes the same bytes each time. Run it at the root of the repository: go run ./demo/write
package main

import (
	"fmt"
	"os"
	"path/filepath"

	"oakum/dossier"
)

// A tale is one invented ship and the folder she is written to.
type tale struct {
	folder  string
	records func() ([]dossier.Record, error)
}

var tales = []tale{{"corran-vey", corran}, {"pell", pell}, {"corran-vey-in-dock", inDock}}

func main() {
	dir := "demo"
	if len(os.Args) > 1 {
		dir = os.Args[1]
	}
	if err := write(dir); err != nil {
		fmt.Fprintln(os.Stderr, err)
		os.Exit(1)
	}
}

func write(dir string) error {
	for _, t := range tales {
		records, err := t.records()
		if err != nil {
			return fmt.Errorf("%s: %w", t.folder, err)
		}
		if err := pictured(filepath.Join(dir, t.folder), records); err != nil {
			return fmt.Errorf("%s: %w", t.folder, err)
		}
		d := dossier.New()
		if err := d.Put(records...); err != nil {
			return fmt.Errorf("%s: %w", t.folder, err)
		}
		if err := dossier.WriteFolder(filepath.Join(dir, t.folder), d); err != nil {
			return err
		}
	}
	return writeRaw(dir)
}
