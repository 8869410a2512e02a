package page

import (
	"bytes"
	"crypto/sha256"
	"fmt"
	"image"
	"image/color"
	"image/jpeg"
	_ "image/png" // the other form of a photograph

	"codeberg.org/go-pdf/fpdf"
)

// Picture is a photograph with its words. Without data a box says that the photograph is not here.
type Picture struct {
	Data    []byte // JPEG or PNG, as kept
	Caption string
}

const (
	pictureHigh = 62.0 // mm
	pictureSide = 1000 // pixels: 80 mm at 300 dots an inch
)

// Pictures lays photographs two beside each other, each as large as its column and its height allow, with its words below.
func (d *Document) Pictures(list []Picture) {
	const gap = 5.0
	w := (d.Width() - gap) / 2
	for i := 0; i < len(list); i += 2 {
		row := list[i:min(i+2, len(list))]
		words := 0
		for _, p := range row {
			d.set(Plain, Small)
			words = max(words, len(d.wrap(p.Caption, w)))
		}
		high := pictureHigh*d.scale + float64(words)*d.lineHeight(Small) + 4
		d.need(high)
		y := d.pdf.GetY() + 1
		for k, p := range row {
			d.picture(p, d.Left()+float64(k)*(w+gap), y, w)
		}
		d.pdf.SetXY(d.Left(), y+high)
	}
}

func (d *Document) picture(p Picture, x, y, w float64) {
	h := pictureHigh * d.scale
	if data, wide, high, err := forPaper(p.Data); err == nil {
		by := min(w/float64(wide), h/float64(high))
		name := fmt.Sprintf("%x", sha256.Sum256(p.Data))
		d.pdf.RegisterImageOptionsReader(name, fpdf.ImageOptions{ImageType: "JPG"}, bytes.NewReader(data))
		h = float64(high) * by
		d.pdf.ImageOptions(name, x, y, float64(wide)*by, h, false, fpdf.ImageOptions{ImageType: "JPG"}, 0, "")
	} else {
		d.pdf.SetLineWidth(hair)
		d.pdf.Rect(x, y, w, h, "D")
		d.set(Plain, Small)
		d.pdf.Text(x+3, y+h/2, d.fit("the photograph is not kept here", w-6))
	}
	d.set(Plain, Small)
	for i, line := range d.wrap(p.Caption, w) {
		d.pdf.Text(x, y+h+float64(i)*d.lineHeight(Small)+d.lineHeight(Small), line)
	}
}

// forPaper makes of any photograph a plain JPEG that a printer can use, whatever its own form is.
func forPaper(data []byte) (out []byte, wide, high int, err error) {
	if len(data) == 0 {
		return nil, 0, 0, fmt.Errorf("there is no photograph")
	}
	from, _, err := image.Decode(bytes.NewReader(data))
	if err != nil {
		return nil, 0, 0, err
	}
	to := smaller(from, pictureSide)
	var b bytes.Buffer
	err = jpeg.Encode(&b, to, &jpeg.Options{Quality: 82})
	return b.Bytes(), to.Bounds().Dx(), to.Bounds().Dy(), err
}

// smaller is a picture of at most so many pixels a side, each the mean of those it stands for, on white paper.
func smaller(from image.Image, side int) *image.RGBA {
	size := from.Bounds()
	by := max(1, float64(max(size.Dx(), size.Dy()))/float64(side))
	to := image.NewRGBA(image.Rect(0, 0, max(1, int(float64(size.Dx())/by)), max(1, int(float64(size.Dy())/by))))
	for y := range to.Rect.Dy() {
		for x := range to.Rect.Dx() {
			to.SetRGBA(x, y, mean(from, image.Rect(int(float64(x)*by), int(float64(y)*by), int(float64(x+1)*by), int(float64(y+1)*by)).Add(size.Min)))
		}
	}
	return to
}

func mean(from image.Image, over image.Rectangle) color.RGBA {
	over = over.Intersect(from.Bounds())
	var r, g, b, n uint64
	for y := over.Min.Y; y < over.Max.Y; y++ {
		for x := over.Min.X; x < over.Max.X; x++ {
			pr, pg, pb, pa := from.At(x, y).RGBA()
			white := 0xffff - uint64(pa)
			r, g, b, n = r+uint64(pr)+white, g+uint64(pg)+white, b+uint64(pb)+white, n+1
		}
	}
	if n == 0 {
		return color.RGBA{0xff, 0xff, 0xff, 0xff}
	}
	return color.RGBA{uint8(r / n >> 8), uint8(g / n >> 8), uint8(b / n >> 8), 0xff} //nolint:gosec // a mean of 16-bit values, shifted to 8
}
