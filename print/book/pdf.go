package book

import (
	"bytes"
	"fmt"
)

// reaching are the things in a PDF file that reach outside it, lock it, or run.
var reaching = []string{"/Encrypt", "/JavaScript", "/JS ", "/Launch", "/URI", "/GoToR", "/Type /EmbeddedFile ", "/RichMedia", "/OpenAction << /S"}

// standsAlone says why a PDF file of ours would need something that is not in it: a typeface, a password, a network, a program. It reads the plain parts of
// the file, in which our writer puts all of these; it is no validator of PDF/A.
func standsAlone(file []byte) error {
	if !bytes.HasPrefix(file, []byte("%PDF-")) || !bytes.Contains(file[max(0, len(file)-64):], []byte("%%EOF")) {
		return fmt.Errorf("it does not begin and end as a PDF file")
	}
	for _, what := range reaching {
		if bytes.Contains(file, []byte(what)) {
			return fmt.Errorf("it holds %s, which needs something outside the file", what)
		}
	}
	described, held := bytes.Count(file, []byte("/Type /FontDescriptor")), bytes.Count(file, []byte("/FontFile2"))
	if described == 0 || held < described {
		return fmt.Errorf("it names %d typefaces and holds the letters of %d", described, held)
	}
	if bytes.Contains(file, []byte("/Subtype /Type1")) {
		return fmt.Errorf("it takes a typeface from the machine it is opened on")
	}
	return nil
}
