// Package demo holds the two invented ships: a twin-screw coastal steamer and a steam tug. Nothing about them is real.
package demo

import (
	"embed"
	"fmt"
	"io/fs"

	"oakum/dossier"
)

//go:embed all:corran-vey all:pell all:corran-vey-in-dock
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

// Pictures are the files that the records of an invented ship name: drawings that say what a photograph would show.
func Pictures(name string, inDock bool) []fs.FS {
	var list []fs.FS
	for _, folder := range []string{name, name + "-in-dock"} {
		dir, err := fs.Sub(folders, folder+"/files")
		if _, there := fs.Stat(folders, folder+"/files"); err != nil || there != nil || folder != name && !inDock {
			continue
		}
		list = append(list, dir)
	}
	return list
}

// InDock is the steamer on the twelfth day of her docking: her records with those of the twelve days on top.
func InDock() (*dossier.Dossier, error) {
	d, err := Ship("corran-vey")
	if err != nil {
		return nil, err
	}
	days, err := Ship("corran-vey-in-dock")
	if err != nil {
		return nil, err
	}
	for r := range days.Records("") {
		if err := d.Put(r); err != nil {
			return nil, err
		}
	}
	return d, nil
}

// TwelfthDay is the day on which the twelve days in dock end, as YYYY-MM-DD.
const TwelfthDay = "2027-04-19"
