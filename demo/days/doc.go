// Package days enters the twelve days in dock into the steamer's ship file as people would: by phones in the dock and at the desk, each entry on its day, by
// its own hand and in the state it then had. A found report is seen, then priced, then decided, then closed as left; a change order is priced and then
// approved; the window is signed for fourteen days and lengthened on the eleventh. What stands in the end is what the folder of the twelve days holds.
package days
