package page

import (
	"encoding/binary"
	"testing"
)

// covers reads a font's table of characters (OpenType 1.9, "cmap", format 12) and tells whether it holds a letter.
func covers(t *testing.T, font []byte) func(r rune) bool {
	t.Helper()
	table := tableOf(t, font, "cmap")
	for i := range int(binary.BigEndian.Uint16(table[2:])) {
		at := binary.BigEndian.Uint32(table[4+8*i+4:])
		if binary.BigEndian.Uint16(table[at:]) == 12 {
			return groups(table[at:])
		}
	}
	t.Fatal("the font has no table of format 12")
	return nil
}

func groups(sub []byte) func(r rune) bool {
	n := int(binary.BigEndian.Uint32(sub[12:]))
	return func(r rune) bool {
		for i := range n {
			g := sub[16+12*i:]
			if low, high := binary.BigEndian.Uint32(g), binary.BigEndian.Uint32(g[4:]); uint32(r) >= low && uint32(r) <= high {
				return true
			}
		}
		return false
	}
}

func tableOf(t *testing.T, font []byte, tag string) []byte {
	t.Helper()
	for i := range int(binary.BigEndian.Uint16(font[4:])) {
		entry := font[12+16*i:]
		if string(entry[:4]) == tag {
			return font[binary.BigEndian.Uint32(entry[8:]):]
		}
	}
	t.Fatalf("the font has no table %q", tag)
	return nil
}

// Everything that the program prints or that a European keyboard types: a missing letter would leave an empty box on the paper.
const needed = "ABCXYZabcxyz0123456789 \u00a0.,;:!?()[]{}<>/\\|@#%&*+-=_~^'\"–—−·×÷±≈≠≤≥√Σ∞°′″½¼¾⅛⅜⅝⅞¹²³⁴⁵µΩαβγδεηθλμνπρστφ…‘’“”«»ÄÖÜäöüßÅåØøÆæÉéÈèÊêËëÇçÑñÍíÓóÚúŁłŚśŻżČčŠšŽžŘřŐőŰűȚțĞğİı€£$¥"

func TestFontsHoldEveryLetter(t *testing.T) {
	for name, font := range map[string][]byte{"regular": regular, "semibold": semiBold, "italic": italic} {
		has := covers(t, font)
		for _, r := range needed {
			if !has(r) {
				t.Errorf("%s lacks %q (U+%04X)", name, r, r)
			}
		}
	}
}
