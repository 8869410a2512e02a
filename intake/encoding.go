package intake

import (
	"encoding/binary"
	"strings"
	"unicode/utf16"
	"unicode/utf8"
)

// Names of encodings, as the guess gives them.
const (
	utf8Name    = "UTF-8"
	utf16Little = "UTF-16, low byte first"
	utf16Big    = "UTF-16, high byte first"
	windowsName = "Windows-1252"
)

// upper is the part of Windows-1252 that differs from the first 256 code points of Unicode; 0 where no letter stands (WHATWG Encoding Standard,
// index windows-1252).
var upper = [32]rune{
	'€', 0, '‚', 'ƒ', '„', '…', '†', '‡', 'ˆ', '‰', 'Š', '‹', 'Œ', 0, 'Ž', 0,
	0, '‘', '’', '“', '”', '•', '–', '—', '˜', '™', 'š', '›', 'œ', 0, 'ž', 'Ÿ',
}

// letters finds the encoding of a text file and gives the text.
func letters(data []byte, said string) (text, name, why string) {
	if said == "" {
		said, why = encodingOf(data)
	} else {
		why = "said so"
	}
	switch said {
	case utf16Little:
		return fromUTF16(data, binary.LittleEndian), said, why
	case utf16Big:
		return fromUTF16(data, binary.BigEndian), said, why
	case windowsName:
		return fromWindows(data), said, why
	}
	return strings.ToValidUTF8(strings.TrimPrefix(string(data), "\ufeff"), "�"), utf8Name, why
}

func encodingOf(data []byte) (name, why string) {
	switch {
	case strings.HasPrefix(string(data[:min(3, len(data))]), "\ufeff"):
		return utf8Name, "it opens with the mark of UTF-8"
	case len(data) >= 2 && data[0] == 0xff && data[1] == 0xfe:
		return utf16Little, "it opens with the mark of UTF-16"
	case len(data) >= 2 && data[0] == 0xfe && data[1] == 0xff:
		return utf16Big, "it opens with the mark of UTF-16"
	}
	even, odd := zeros(data[:min(4096, len(data))])
	switch n := min(4096, len(data)) / 2; {
	case n > 1 && odd > n/2 && even < n/8:
		return utf16Little, "every other byte is nought"
	case n > 1 && even > n/2 && odd < n/8:
		return utf16Big, "every other byte is nought"
	case utf8.Valid(data):
		return utf8Name, "all of it is sound UTF-8"
	}
	return windowsName, "it is not UTF-8, and older office programs wrote Windows-1252"
}

func zeros(data []byte) (even, odd int) {
	for i, b := range data {
		switch {
		case b != 0:
		case i%2 == 0:
			even++
		default:
			odd++
		}
	}
	return even, odd
}

func fromUTF16(data []byte, order binary.ByteOrder) string {
	units := make([]uint16, 0, len(data)/2)
	for i := 0; i+1 < len(data); i += 2 {
		units = append(units, order.Uint16(data[i:]))
	}
	return strings.TrimPrefix(string(utf16.Decode(units)), "\ufeff")
}

func fromWindows(data []byte) string {
	var b strings.Builder
	b.Grow(len(data) + len(data)/8)
	for _, c := range data {
		r := rune(c)
		if c >= 0x80 && c < 0xa0 {
			if r = upper[c-0x80]; r == 0 {
				r = '�'
			}
		}
		b.WriteRune(r)
	}
	return b.String()
}
