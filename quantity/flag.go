package quantity

// Flag marks what a reader of the value must know beside the number.
type Flag string

const (
	FlagBelow       Flag = "below"        // "<.100": the true value is less
	FlagAbove       Flag = "above"        // ">500": the true value is more
	FlagAbout       Flag = "about"        // "abt 12": rounded by the writer
	FlagDoubtful    Flag = "doubtful"     // "12?": the writer doubts it
	FlagSignMissing Flag = "sign-missing" // a potential without + or -
	FlagScale       Flag = "scale"        // volts in a column of millivolts, or the other way
	FlagComma       Flag = "comma"        // "1,234": decimal comma or thousands
	FlagUnit        Flag = "unit"         // "tons", "gal": more than one unit has the name
	FlagPlate       Flag = "plate"        // "20.4#": 40.8 or 40 lb/ft2 an inch
	FlagFraction    Flag = "fraction"     // "3/8" in a column of millimetres
	FlagCompound    Flag = "compound"     // "17 ft 6 in": better shown the same way
	FlagDateOrder   Flag = "date-order"   // "03/04/2021": which is the month
	FlagCentury     Flag = "century"      // a year of two digits
)

var flagWords = map[Flag]string{
	FlagBelow:       "less than this",
	FlagAbove:       "more than this",
	FlagAbout:       "about",
	FlagDoubtful:    "doubted by whoever wrote it",
	FlagSignMissing: "plus or minus was left out",
	FlagScale:       "volts or millivolts?",
	FlagComma:       "decimal comma or thousands?",
	FlagUnit:        "the unit's name has more than one meaning",
	FlagPlate:       "plate reckoned at 40.8 or at 40 lb/ft² an inch?",
	FlagFraction:    "a fraction of an inch or of a millimetre?",
	FlagCompound:    "in two or more units",
	FlagDateOrder:   "which is the day and which the month?",
	FlagCentury:     "the century was left out",
}

// Words gives the flag as people say it.
func (f Flag) Words() string { return flagWords[f] }
