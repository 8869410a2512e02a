package intake

import (
	"regexp"
	"strconv"
	"strings"

	"github.com/xuri/excelize/v2"
)

// numberForm is what a cell's format makes of its number.
type numberForm int

const (
	formDate numberForm = iota + 1
	formMoment
	formTime
	formPercent
)

var (
	quotedPart = regexp.MustCompile(`"[^"]*"|\\.|\[[^\]]*\]|_.|\*.`)
	dateCode   = regexp.MustCompile(`(?i)[dy]|m{3,}`)
	timeCode   = regexp.MustCompile(`(?i)[hs]`)
)

// styles lists the cell styles of a workbook whose numbers are dates, times or per cent (ECMA-376 part 1, 18.8.30 for the built-in formats).
func styles(f *excelize.File) map[int]numberForm {
	found := map[int]numberForm{}
	if f.Styles == nil || f.Styles.CellXfs == nil {
		return found
	}
	for i := range f.Styles.CellXfs.Xf {
		s, err := f.GetStyle(i)
		if err != nil {
			continue
		}
		code := ""
		if s.CustomNumFmt != nil {
			code = *s.CustomNumFmt
		}
		if form := formOf(s.NumFmt, code); form != 0 {
			found[i] = form
		}
	}
	return found
}

func formOf(number int, code string) numberForm {
	if code == "" {
		switch {
		case number >= 14 && number <= 17, number >= 27 && number <= 31, number == 36, number >= 50 && number <= 58:
			return formDate
		case number == 22:
			return formMoment
		case number >= 18 && number <= 21, number >= 32 && number <= 35, number >= 45 && number <= 47:
			return formTime
		case number == 9, number == 10:
			return formPercent
		}
		return 0
	}
	code = quotedPart.ReplaceAllString(code, "")
	date, clock := dateCode.MatchString(code), timeCode.MatchString(code)
	switch {
	case date && clock:
		return formMoment
	case date:
		return formDate
	case clock && !strings.ContainsAny(code, "0#?"):
		return formTime
	case strings.Contains(code, "%"):
		return formPercent
	}
	return 0
}

// shownAs writes a number as its format means it: a day as 2011-06-14, a time as 14:30, a share as 7%.
func shownAs(f *excelize.File, sheet string, col, line int, number string, styles map[int]numberForm) string {
	cell, err := excelize.CoordinatesToCellName(col+1, line+1)
	if err != nil {
		return number
	}
	id, err := f.GetCellStyle(sheet, cell)
	if err != nil || styles[id] == 0 {
		return number
	}
	v, err := strconv.ParseFloat(number, 64)
	if err != nil {
		return number
	}
	if styles[id] == formPercent {
		return short(strconv.FormatFloat(v*100, 'g', 15, 64)) + "%"
	}
	props, _ := f.GetWorkbookProps()
	t, err := excelize.ExcelDateToTime(v, props.Date1904 != nil && *props.Date1904)
	switch {
	case err != nil:
		return number
	case styles[id] == formTime && v < 1, v < 1:
		return t.Format("15:04")
	case styles[id] == formMoment && (t.Hour() != 0 || t.Minute() != 0):
		return t.Format("2006-01-02 15:04")
	}
	return t.Format("2006-01-02")
}
