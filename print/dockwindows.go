package print

import (
	"fmt"
	"strings"

	"oakum/assess"
)

// tried tells the sheet of a trial on the page, which is no part of a paper.
func tried(id string) bool { return strings.Contains(id, "@tried") }

// shownWindows is how many times of high water a paper lists where the dock has named none of its own.
const shownWindows = 40

// windowsToPrint are those in the time that the dock offers, or else the first of the year.
func windowsToPrint(all []assess.WindowRow) (list []assess.WindowRow, title string) {
	for _, w := range all {
		if w.Yard {
			list = append(list, w)
		}
	}
	if len(list) > 0 {
		return list, "When the water is high enough in the time the dock offers, Universal Time"
	}
	if len(all) > shownWindows {
		return all[:shownWindows], fmt.Sprintf("When the water is high enough, Universal Time: the first %d of %d times in the coming year", shownWindows, len(all))
	}
	return all, "When the water is high enough in the coming year, Universal Time"
}
