package main

import (
	"bytes"
	"fmt"
	"math"
	"strings"
	"time"

	"github.com/xuri/excelize/v2"

	"oakum/demo/invent"
)

// book is a workbook being filled; the first error is kept.
type book struct {
	file *excelize.File
	err  error
}

func newBook(sheet string) *book {
	f := excelize.NewFile()
	b := &book{file: f}
	b.keep(f.SetSheetName("Sheet1", sheet))
	return b
}

func (b *book) keep(err error) {
	if b.err == nil {
		b.err = err
	}
}

func (b *book) put(sheet string, row, col int, value any) {
	cell, err := excelize.CoordinatesToCellName(col, row)
	b.keep(err)
	b.keep(b.file.SetCellValue(sheet, cell, value))
}

// texts writes cells in the order of their names: the order of the shared texts in the file follows it.
func (b *book) texts(sheet string, cells map[string]string) {
	for _, cell := range invent.Sorted(cells) {
		b.keep(b.file.SetCellValue(sheet, cell, cells[cell]))
	}
}

func (b *book) merge(sheet, from, to string) { b.keep(b.file.MergeCell(sheet, from, to)) }

// bytes is the file, with a made-up date inside so that it is the same each time.
func (b *book) bytes(created time.Time) ([]byte, error) {
	stamp := created.Format(time.RFC3339)
	b.keep(b.file.SetDocProps(&excelize.DocProperties{Created: stamp, Modified: stamp, Creator: "invented"}))
	if b.err != nil {
		return nil, b.err
	}
	var out bytes.Buffer
	if err := b.file.Write(&out); err != nil {
		return nil, err
	}
	return out.Bytes(), b.file.Close()
}

// pair is what one line of the 2023 workbook holds: a place with its readings to port and starboard.
type pair struct {
	strake     int
	letter     string
	number     int // plate, counted from forward
	frame      float64
	nominal    float64
	port, star *gauging
	from       string
	rp, rs     int
}

// rawMerged is the survey of 2023: a sheet for the inside and one for the divers, two-level merged heads, port and starboard side by side.
func rawMerged(s campaign) ([]byte, error) {
	b := newBook("inside")
	_, err := b.file.NewSheet("divers")
	b.keep(err)
	for _, sheet := range []string{"inside", "divers"} {
		b.heading(sheet)
		row := 9
		for _, p := range pairs(s, sheet == "divers") {
			b.pair(sheet, row, p)
			row++
			if row%26 == 0 {
				b.put(sheet, row, 1, "carried forward")
				b.put(sheet, row, 5, fmt.Sprintf("%d lines", row-9))
				row++
			}
		}
		b.put(sheet, row+1, 1, "X = not reached; no echo left blank with a note. Frames counted from the bow, frame 1 at the stem.")
	}
	return b.bytes(time.Date(2023, 5, 26, 12, 0, 0, 0, time.UTC))
}

func (b *book) heading(sheet string) {
	b.put(sheet, 1, 1, "Ultrasonic thickness measurement")
	b.merge(sheet, "A1", "N1")
	b.put(sheet, 2, 1, "Ship")
	b.put(sheet, 2, 3, "CORRAN VEY")
	b.put(sheet, 2, 8, "Report")
	b.put(sheet, 2, 10, "T23-041")
	b.put(sheet, 3, 1, "Gauge")
	b.put(sheet, 3, 3, "multiple echo, 2.25 MHz")
	b.put(sheet, 3, 8, "Velocity")
	b.put(sheet, 3, 10, "5930 m/s")
	b.put(sheet, 4, 1, "Date")
	b.put(sheet, 4, 3, "15-19 May 2023")
	b.texts(sheet, map[string]string{"A6": "Plate position", "D6": "Frame", "E6": "Orig. thk. mm", "F6": "Gauged", "H6": "Diminution P", "J6": "Diminution S", "L6": "Max. allow. mm", "M6": "Remarks"})
	for _, m := range [][2]string{{"A6", "C6"}, {"F6", "G6"}, {"H6", "I6"}, {"J6", "K6"}, {"D6", "D7"}, {"E6", "E7"}, {"L6", "L7"}, {"M6", "N6"}} {
		b.merge(sheet, m[0], m[1])
	}
	b.texts(sheet, map[string]string{"A7": "strake no.", "B7": "letter", "C7": "plate from fwd", "F7": "P", "G7": "S", "H7": "mm", "I7": "%", "J7": "mm", "K7": "%", "M7": "P", "N7": "S"})
}

// pairs puts the readings of a place to port and starboard together, in the order in which they were taken.
func pairs(s campaign, divers bool) []pair {
	var out []pair
	at := map[string]int{}
	for i := range s.readings {
		g := &s.readings[i]
		if (g.from == "diver") != divers {
			continue
		}
		name := firmPlate(g.plate)
		key := fmt.Sprintf("%s %.1f", name[1:], g.frame)
		k, ok := at[key]
		if !ok {
			k = len(out)
			at[key] = k
			out = append(out, pair{strake: g.plate.row, letter: g.strake, number: plateFromForward(g.plate), frame: firmFrame(g.frame), nominal: g.plate.nominal, from: g.from})
		}
		if g.side == "port" {
			out[k].port, out[k].rp = g, i
		} else {
			out[k].star, out[k].rs = g, i
		}
	}
	return out
}

func (b *book) pair(sheet string, row int, p pair) {
	b.put(sheet, row, 1, p.strake)
	if row%4 != 3 { // the letter is left out now and then
		b.put(sheet, row, 2, p.letter)
	}
	b.put(sheet, row, 3, p.number)
	b.put(sheet, row, 4, p.frame)
	b.put(sheet, row, 5, p.nominal)
	b.put(sheet, row, 12, math.Round(p.nominal*25)/100)
	b.side(sheet, row, 6, 8, 13, p.nominal, p.port)
	b.side(sheet, row, 7, 10, 14, p.nominal, p.star)
}

func (b *book) side(sheet string, row, gauged, loss, note int, nominal float64, g *gauging) {
	switch {
	case g == nil:
		b.put(sheet, row, gauged, "X")
	case g.result != "read":
		b.put(sheet, row, note, "no echo")
	default:
		value := math.Round(g.value*100) / 100
		if g.second > 0 {
			b.put(sheet, row, gauged, fmt.Sprintf("%.2f; %.2f", g.value, g.second))
			value = math.Round(min(g.value, g.second)*100) / 100
		} else {
			b.put(sheet, row, gauged, value)
		}
		b.put(sheet, row, loss, math.Round((nominal-value)*100)/100)
		b.put(sheet, row, loss+1, math.Round((nominal-value)/nominal*1000)/10)
		switch g.remark {
		case "pit":
			b.put(sheet, row, note, fmt.Sprintf("pit %.1f", g.pit))
		case "doubler":
			b.put(sheet, row, note, "doubler")
		case "scale":
			b.put(sheet, row, note, "rough")
		}
	}
}

// written is what stands in the price column of a bid.
func (c bidCell) written() string {
	switch c.entry {
	case "included", "by owner":
		return c.entry
	case "no bid":
		return "NB"
	case "blank":
		return ""
	}
	return fmt.Sprintf("%.0f", c.sum)
}

// rawBidSchedule fills the asked form: semicolons, decimal comma, thousands with points.
func rawBidSchedule(o offer) []byte {
	var b strings.Builder
	b.WriteString("Yard S at Skellby;Schedule of prices;;;4 September 2026;\r\n\r\nItem;Description;Qty;Unit;Rate EUR;Amount EUR\r\n")
	group := ""
	for _, c := range o.cells {
		if head := c.item.number[:1]; head != group {
			group = head
			fmt.Fprintf(&b, "%s;%s;;;;\r\n", head, strings.ToUpper(c.item.group))
		}
		rate, quantity := "", ""
		if c.entry == "number" {
			rate, quantity = points(c.unit, 2), points(c.quantity, 0)
		}
		sum := c.written()
		if c.entry == "number" {
			sum = points(c.sum, 2)
		}
		fmt.Fprintf(&b, "%s;%s;%s;%s;%s;%s\r\n", c.item.number, c.item.name, quantity, c.item.per, rate, sum)
	}
	fmt.Fprintf(&b, ";Bond and insurance;;;;%s\r\n;TOTAL;;;;%s\r\n\r\nExtra dock day;;;day;5.200,00;\r\nGrowth work, 800 h nominal;;;h;68,00;\r\nNot included: %s\r\n", points(12000, 2), points(o.total(), 2), strings.Join(o.values["exclusions"].([]string), "; "))
	return []byte(b.String())
}

// points writes a number as 1.234,50.
func points(x float64, decimals int) string {
	whole, rest, _ := strings.Cut(fmt.Sprintf("%.*f", decimals, x), ".")
	for i := len(whole) - 3; i > 0; i -= 3 {
		whole = whole[:i] + "." + whole[i:]
	}
	if rest != "" {
		return whole + "," + rest
	}
	return whole
}

// rawBidLetter is a letter with a list: lump sums only, tabs, the total of another number.
func rawBidLetter(o offer) []byte {
	var b strings.Builder
	b.WriteString("Offer of yard V, 10 September 2026\n\nWe offer the works below at Skellby, fourteen days, dock days in our price.\n\nItem\tWork\tPrice (EUR)\n")
	for _, c := range o.cells {
		sum := c.written()
		if c.entry == "number" {
			sum = strings.ReplaceAll(points(c.sum, 0), ".", " ")
		}
		fmt.Fprintf(&b, "%s\t%s\t%s\n", c.item.number, c.item.name, sum)
	}
	fmt.Fprintf(&b, "\tTow there and back\t%s\n\tTotal\t%s\n\nExtra day 6 900. Growth 400 h at 81. We leave out rivets and the weather. Valid to 31 January 2027.\n",
		strings.ReplaceAll(points(58000, 0), ".", " "), strings.ReplaceAll(points(o.total(), 0), ".", " "))
	return []byte(b.String())
}

// rawBidSheet is a workbook with its own numbering, sums as formulas' results and options below.
func rawBidSheet(o offer) ([]byte, error) {
	const sheet = "Quotation"
	b := newBook(sheet)
	b.put(sheet, 1, 1, "Orrin Haven yard: quotation Q-2614 of 28 August 2026")
	b.merge(sheet, "A1", "H1")
	for i, text := range []string{"Pos.", "Your item", "Scope", "Unit", "Quantity", "EUR/unit", "EUR", "Note"} {
		b.put(sheet, 3, i+1, text)
	}
	row := 4
	for i, c := range o.cells {
		b.put(sheet, row, 1, fmt.Sprintf("P%03d", 10*(i+1)))
		b.put(sheet, row, 2, c.item.number)
		b.put(sheet, row, 3, c.item.name)
		b.put(sheet, row, 4, c.item.per)
		if c.entry == "number" {
			b.put(sheet, row, 5, c.quantity)
			b.put(sheet, row, 6, c.unit)
			b.put(sheet, row, 7, c.sum)
		} else {
			b.put(sheet, row, 8, c.written())
		}
		row++
	}
	for _, extra := range []struct {
		text string
		sum  float64
	}{{"Sea tow there and back", 192000}, {"Bond", 20000}, {"Total", o.total()}} {
		b.put(sheet, row, 3, extra.text)
		b.put(sheet, row, 7, extra.sum)
		row++
	}
	b.put(sheet, row+1, 3, "Option: 1 500 h growth at 74")
	b.put(sheet, row+1, 7, 111000)
	b.put(sheet, row+2, 3, "Extra day beyond 45")
	b.put(sheet, row+2, 7, 8700)
	return b.bytes(time.Date(2026, 8, 28, 12, 0, 0, 0, time.UTC))
}
