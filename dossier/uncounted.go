package dossier

import "iter"

// Uncounted leaves out the version of records that were never corrected: a folder read in and written out again is then the same to the byte.
func Uncounted(d *Dossier) (*Dossier, error) {
	var once []Record
	for _, records := range []iter.Seq[Record]{d.Records(""), d.Withdrawn("")} {
		for r := range records {
			if r.Version == 1 {
				r.Version = 0
				once = append(once, r)
			}
		}
	}
	out := d.Clone()
	return out, out.Put(once...)
}
