package ship

import (
	"regexp"
	"strconv"
	"strings"
	"unicode"
	"unicode/utf8"

	"oakum/quantity"
)

var (
	frameWord   = regexp.MustCompile(`(?i)^(?:frames?|frs?|spanten|spant|spt|sp|couples?|cuadernas?|ordinat[ae]|f)\.?\s*[:#]?\s*(?:no\.?\s*)?`)
	frameNumber = regexp.MustCompile(`^([+-]?\d{1,4})(?:\s*([½¼¾])|(?:\s+|-)(1/2|1/4|3/4)|[.,](\d{1,6}))?$`)
	frameLetter = regexp.MustCompile(`^(?i)([A-Z]{1,3})(?:\s*([½¼¾])|(?:\s+|-)(1/2|1/4|3/4))?$`)
	frameOffset = regexp.MustCompile(`^(.*?[\dA-Za-z½¼¾])\s*([+-])\s*(\d+(?:[.,]\d+)?(?:\s*\d+/\d+)?)\s*(m|mm|cm|in|ins|inch|inches|ft|feet|["'″′])?\.?$`)
	frameRanges = []*regexp.Regexp{ // words first: "37 1/2 to 39" has a stroke too
		regexp.MustCompile(`^(.+?)\s*(?:to|bis|till|til|tot|à|–|—|\.\.+)\s*(.+)$`),
		regexp.MustCompile(`^(.+?)\s*[-/&]\s*(.+)$`),
	}
)

var halves = map[string]float64{"½": 0.5, "¼": 0.25, "¾": 0.75, "1/2": 0.5, "1/4": 0.25, "3/4": 0.75}

// withoutFrameWord takes "fr.", "Spant", "couple" off the front; said tells whether one stood there. A word that only begins so is left.
func withoutFrameWord(text string) (rest string, said bool) {
	text = strings.TrimSpace(text)
	if plainFrame(text) {
		return text, false
	}
	word := frameWord.FindString(text)
	rest = text[len(word):]
	next, _ := utf8.DecodeRuneInString(rest)
	last, _ := utf8.DecodeLastRuneInString(word)
	switch {
	case word == "", unicode.IsLetter(last) && unicode.IsLetter(next):
		return text, false
	case len(word) < 2 && (next < '0' || next > '9'), rest == "":
		return text, false
	}
	return rest, true
}

// frame is a frame as a number or a letter with a share of the space beyond it.
type frame struct {
	number float64 // where letter is empty
	letter string
	share  float64 // beyond the lettered frame
}

// readFrame reads one frame name without offset: 37, 37½, 37 1/2, 37.5, 37,5, A, A½.
func readFrame(text string) (frame, bool) {
	text = strings.TrimSpace(text)
	if f, ok := quickFrame(text); ok {
		return f, true
	}
	if m := frameNumber.FindStringSubmatch(text); m != nil {
		whole, err := strconv.ParseFloat(m[1], 64)
		if err != nil {
			return frame{}, false
		}
		part := halves[m[2]] + halves[m[3]]
		if m[4] != "" {
			part, _ = strconv.ParseFloat("0."+m[4], 64)
		}
		if strings.HasPrefix(m[1], "-") {
			part = -part
		}
		return frame{number: whole + part}, true
	}
	if m := frameLetter.FindStringSubmatch(text); m != nil && (len(text) < 2 || frameWord.FindString(text) != text) {
		return frame{letter: strings.ToUpper(m[1]), share: halves[m[2]] + halves[m[3]]}, true
	}
	return frame{}, false
}

// String gives the one written form: 37, 37½, 37.2, A.
func (f frame) String() string {
	if f.letter != "" {
		return f.letter + part(f.share)
	}
	whole := float64(int(f.number))
	if fraction := part(f.number - whole); fraction != "" && f.number > 0 {
		if whole == 0 {
			return "0" + fraction
		}
		return strconv.Itoa(int(whole)) + fraction
	}
	return strconv.FormatFloat(f.number, 'f', -1, 64)
}

func part(share float64) string {
	switch share {
	case 0.5:
		return "½"
	case 0.25:
		return "¼"
	case 0.75:
		return "¾"
	}
	return ""
}

// readOffset splits "37+0.2", "96+14in", "37 - 200 mm" into frame and offset in metres. Without a unit ten and more are millimetres, less are
// metres. A whole number after a minus sign is the end of a range, not an offset.
func readOffset(text string) (name string, offset float64, ok bool) {
	m := frameOffset.FindStringSubmatch(text)
	if m == nil {
		return "", 0, false
	}
	if _, isFrame := readFrame(m[1]); !isFrame {
		return "", 0, false
	}
	number, unit := m[3], m[4]
	if m[2] == "-" && unit == "" && !strings.ContainsAny(number, ".,") {
		return "", 0, false
	}
	if unit == "" {
		if unit = "m"; !strings.ContainsAny(number, ".,") && len(number) > 1 {
			unit = "mm"
		}
	}
	r, err := quantity.Parse(number+" "+unit, "m")
	if err != nil || !quantity.SameDimension(r.Unit, "m") {
		return "", 0, false
	}
	if m[2] == "-" {
		return m[1], -r.Value, true
	}
	return m[1], r.Value, true
}

// plainFrame tells quickly whether a text already is the written form: figures with at most one ½ after them, or one capital.
func plainFrame(s string) bool {
	if len(s) == 0 || len(s) > 6 || s[0] == '0' && s != "0" {
		return false
	}
	if len(s) == 1 && s[0] >= 'A' && s[0] <= 'Z' {
		return true
	}
	s = strings.TrimSuffix(s, "½")
	for i := range len(s) {
		if s[i] < '0' || s[i] > '9' {
			return false
		}
	}
	return s != ""
}

// quickFrame reads a frame that stands in its written form.
func quickFrame(s string) (frame, bool) {
	if !plainFrame(s) {
		return frame{}, false
	}
	whole, half := strings.CutSuffix(s, "½")
	if c := whole[0]; c < '0' || c > '9' {
		return frame{letter: whole}, true
	}
	n, err := strconv.Atoi(whole)
	f := frame{number: float64(n)}
	if half {
		f.number += 0.5
	}
	return f, err == nil
}
