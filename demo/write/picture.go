package main

import (
	"bytes"
	"crypto/sha256"
	"encoding/hex"
	"image"
	"image/color"
	"image/png"
	"math"
	"os"
	"path/filepath"
	"strings"

	"oakum/dossier"
	"oakum/survey"
)

// The invented ships were never photographed. In place of each photograph stands a drawing that says so, with what the photograph would show, its place and
// a scale, so that everything that handles photographs has something to handle.
const wide, high = 640, 440

// The inks, lightest first.
const (
	paper = uint8(iota)
	pale
	grey
	dark
	ink
)

var inks = color.Palette{color.Gray{0xFF}, color.Gray{0xE4}, color.Gray{0xA8}, color.Gray{0x58}, color.Gray{0x00}}

// pictured draws the picture of every photograph, writes it into a folder of files and puts its name and fingerprint into the record.
func pictured(dir string, records []dossier.Record) error {
	for _, r := range records {
		p, ok := r.Body.(*survey.Photo)
		if !ok {
			continue
		}
		var b bytes.Buffer
		if err := (&png.Encoder{CompressionLevel: png.BestCompression}).Encode(&b, picture(p)); err != nil {
			return err
		}
		sum := sha256.Sum256(b.Bytes())
		p.File, p.SHA256 = r.ID+".png", hex.EncodeToString(sum[:])
		if err := os.MkdirAll(filepath.Join(dir, "files"), 0o755); err != nil {
			return err
		}
		if err := os.WriteFile(filepath.Join(dir, "files", p.File), b.Bytes(), 0o644); err != nil {
			return err
		}
	}
	return nil
}

func picture(p *survey.Photo) *image.Paletted {
	to := image.NewPaletted(image.Rect(0, 0, wide, high), inks)
	block(to, 0, 0, wide, high, paper)
	subject(to, p)
	block(to, 0, 0, wide, 34, ink)
	letter(to, 12, 10, 2, "Demonstration picture: a drawing, not a photograph", paper)
	block(to, 0, 322, wide, high-322, paper)
	block(to, 0, 320, wide, 2, ink)
	y := 332
	for _, l := range lines(p.Title, 34) {
		letter(to, 12, y, 3, l, ink)
		y += 28
	}
	letter(to, 12, y, 2, strings.Trim(p.Place.String()+", looking "+p.Direction, ", "), dark)
	letter(to, 12, y+20, 2, strings.Trim(p.Date.String()+", "+p.Moment, ", "), dark)
	scale(to, p.Scale)
	for _, edge := range [][4]int{{0, 0, wide, 3}, {0, high - 3, wide, 3}, {0, 0, 3, high}, {wide - 3, 0, 3, high}} {
		block(to, edge[0], edge[1], edge[2], edge[3], ink)
	}
	return to
}

// scale draws a bar of what in the picture gives the size; where nothing does, it says so.
func scale(to *image.Paletted, by string) {
	const x, y = 424, 276
	block(to, x, y, 204, 40, paper)
	long, ruled := map[string]string{"300 mm rule": "300 mm", "diver's rule": "300 mm", "1 m rule": "1 m"}[by]
	if !ruled {
		if by == "" {
			by = "none in it"
		}
		letter(to, x+8, y+14, 2, "size: "+by, ink)
		return
	}
	letter(to, x+8, y+6, 2, "0", ink)
	letter(to, x+116, y+6, 2, long, ink)
	for i := range 3 {
		block(to, x+10+i*60, y+24, 60, 8, ink)
		if i == 1 {
			block(to, x+10+i*60, y+26, 60, 4, paper)
		}
	}
}

// subject draws in a few lines what the record is about.
func subject(to *image.Paletted, p *survey.Photo) {
	title := strings.ToLower(p.Title)
	has := func(words ...string) bool {
		for _, w := range words {
			if strings.Contains(title, w) {
				return true
			}
		}
		return false
	}
	switch {
	case has("propeller", "blade"):
		screw(to, p.Moment)
	case has("gland", "bush", "plug", "stud"):
		ring(to)
	case has("bell", "telegraph"):
		piece(to)
	case has("quay"):
		profile(to)
	default:
		plating(to, has("crack", "hole") || p.Moment == "as found", p.Moment == "as left")
	}
}

// plating is a riveted shell, wasted in a band where it is as found, and with an insert where it is as left.
func plating(to *image.Paletted, wasted, mended bool) {
	block(to, 0, 34, wide, 288, pale)
	for _, y := range []int{110, 240} {
		block(to, 0, y, wide, 2, dark)
		for x := 14; x < wide; x += 22 {
			disc(to, x, y-9, 4, dark)
			disc(to, x, y+11, 4, dark)
		}
	}
	if mended {
		block(to, 180, 128, 280, 96, paper)
		for _, e := range [][4]int{{180, 128, 280, 3}, {180, 221, 280, 3}, {180, 128, 3, 96}, {457, 128, 3, 96}} {
			block(to, e[0], e[1], e[2], e[3], ink)
		}
		return
	}
	if wasted {
		for x := 120; x < 520; x++ {
			y := 190 + int(8*math.Sin(float64(x)/17)+4*math.Sin(float64(x)/5))
			block(to, x, y, 1, 16+x%7, grey)
			block(to, x, y+6, 1, 3, ink)
		}
	}
}

func screw(to *image.Paletted, moment string) {
	block(to, 0, 34, wide, 288, pale)
	for blade := range 4 {
		a := float64(blade)*math.Pi/2 + math.Pi/4
		for s := 24.0; s < 130; s++ {
			half := 34 * math.Sin(math.Pi*(s-10)/128)
			for w := -half; w <= half; w++ {
				block(to, 320+int(s*math.Cos(a)-w*math.Sin(a)), 178+int(s*math.Sin(a)+w*math.Cos(a)), 1, 2, grey)
			}
		}
	}
	disc(to, 320, 178, 34, dark)
	disc(to, 320, 178, 14, paper)
	if moment == "as found" {
		for s := range 46 {
			block(to, 330+s, 168-s/3+s%3, 3, 3, ink)
		}
	}
}

func ring(to *image.Paletted) {
	block(to, 0, 34, wide, 288, pale)
	disc(to, 320, 178, 120, grey)
	disc(to, 320, 178, 84, paper)
	disc(to, 320, 178, 70, dark)
	for i := range 8 {
		a := float64(i) * math.Pi / 4
		disc(to, 320+int(102*math.Cos(a)), 178+int(102*math.Sin(a)), 9, ink)
	}
}

func piece(to *image.Paletted) {
	for y := 70; y < 280; y++ {
		half := 40 + (y-70)*(y-70)/520
		block(to, 320-half, y, 2*half, 1, grey)
	}
	block(to, 220, 280, 200, 10, dark)
	disc(to, 320, 62, 16, dark)
}

func profile(to *image.Paletted) {
	block(to, 0, 250, wide, 72, pale)
	for y := 190; y < 262; y++ {
		block(to, 70+(y-190)/3, y, 500-(y-190)/2, 1, grey)
	}
	block(to, 180, 150, 260, 40, pale)
	block(to, 300, 90, 34, 60, dark)
	for x := 90; x < 560; x += 12 {
		block(to, x, 70+(x-320)*(x-320)/1200, 4, 8, ink)
	}
}

func disc(to *image.Paletted, x, y, r int, of uint8) {
	for j := -r; j <= r; j++ {
		for i := -r; i <= r; i++ {
			if i*i+j*j <= r*r {
				block(to, x+i, y+j, 1, 1, of)
			}
		}
	}
}
