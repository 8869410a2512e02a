// Package demo holds the two invented ships: a twin-screw coastal steamer and a steam tug. Nothing about them is real.
package demo

import (
	"embed"
	"fmt"
	"io/fs"

	"oakum/dossier"
)

//go:embed all:corran-vey all:pell
var folders embed.FS

// Ship reads one of the invented ships, "corran-vey" or "pell".
func Ship(name string) (*dossier.Dossier, error) {
	dir, err := fs.Sub(folders, name)
	if err != nil {
		return nil, err
	}
	r, err := dossier.ReadFolder(dir)
	if err != nil {
		return nil, fmt.Errorf("there is no invented ship %q: %w", name, err)
	}
	return r.Whole()
}
