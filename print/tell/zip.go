package tell

import (
	"archive/zip"
	"io"
	"os"
)

// Zip writes the folder that Publish makes as one archive.
func (s *Site) Zip(w io.Writer) (Made, error) {
	dir, err := os.MkdirTemp("", "oakum-news-*")
	if err != nil {
		return Made{}, err
	}
	defer os.RemoveAll(dir)
	m, err := s.Publish(dir)
	if err != nil {
		return m, err
	}
	z := zip.NewWriter(w)
	if err := z.AddFS(os.DirFS(dir)); err != nil {
		return m, err
	}
	return m, z.Close()
}

// Preview is a text as the pages show it, and as it would be pasted.
func Preview(text string) (page, paste string) { return string(html(text)), plain(text) }
