package page

import (
	_ "embed"

	"codeberg.org/go-pdf/fpdf"
)

// Source Sans 3 by Adobe, under the SIL Open Font License 1.1 (font/OFL.txt): its figures are of one width, so that columns of numbers line up.
var (
	//go:embed font/SourceSans3-Regular.ttf
	regular []byte
	//go:embed font/SourceSans3-SemiBold.ttf
	semiBold []byte
	//go:embed font/SourceSans3-Italic.ttf
	italic []byte
)

const family = "text"

// Face is one of the three cuts in use.
type Face string

// The cuts.
const (
	Plain  Face = ""
	Bold   Face = "B"
	Italic Face = "I"
)

// Sizes of type, points. Nothing that must be read is smaller than Small.
const (
	TitleSize = 19.0
	HeadSize  = 13.0
	BodySize  = 11.0
	CellSize  = 10.0
	Small     = 9.0
	labelSize = 8.0 // what stands above a cell of the title block
	leading   = 1.25
)

// mm is a point in millimetres.
const mm = 25.4 / 72

func fonts(pdf *fpdf.Fpdf) {
	pdf.AddUTF8FontFromBytes(family, string(Plain), regular)
	pdf.AddUTF8FontFromBytes(family, string(Bold), semiBold)
	pdf.AddUTF8FontFromBytes(family, string(Italic), italic)
}

// lineHeight is the distance of two lines of type, mm.
func (d *Document) lineHeight(size float64) float64 { return size * d.scale * mm * leading }
