package survey

// Mapping is how files of one layout are read. It is proposed again for the next file with the same column heads.
type Mapping struct {
	Name        string   `key:"name" label:"name" help:"the firm or the log it goes for"`
	OfKind      string   `key:"rows_become" label:"its rows become"`
	Fingerprint string   `key:"fingerprint" label:"fingerprint of the column heads" optional:"yes"`
	Headings    []string `key:"headings" label:"column heads" help:"one for each column" optional:"yes"`
	Meanings    []string `key:"meanings" label:"read as" help:"column head = meaning = unit" optional:"yes"`
	Delimiter   string   `key:"delimiter" label:"between columns" optional:"yes"`
	Decimal     string   `key:"decimal" label:"decimal sign" optional:"yes"`
	Dates       string   `key:"dates" label:"order of dates" enum:"dmy|mdy|ymd" optional:"yes"`
	Unit        string   `key:"unit_where_none" label:"unit where none is written" optional:"yes"`
	Answers     []string `key:"answers" label:"what was asked and answered" help:"question = answer" optional:"yes"`
	Facts       []string `key:"facts" label:"what goes for every row" help:"field = text" optional:"yes"`
	Notes       string   `key:"notes" label:"notes" optional:"yes"`
}
