package app

import "oakum/dossier"

// Harvest is what a file of rows gives. Every row that holds anything is in exactly one of the three lists, or gave one or more of the records.
type Harvest struct {
	Records []dossier.Record
	Refused []RefusedRow
	Named   []NamedRow
	Rows    int // rows that hold anything
	Gave    int // rows that gave records
}

// RefusedRow is a row that could not land, with the reason.
type RefusedRow struct {
	Sheet  string   `json:"sheet,omitempty"`
	Row    int      `json:"row"`
	Reason string   `json:"reason"`
	Cells  []string `json:"cells"`
}

// NamedRow is a row that holds no record: a title, a heading, a total, a footnote, an example.
type NamedRow struct {
	Sheet string `json:"sheet,omitempty"`
	Row   int    `json:"row"`
	As    string `json:"as"`
	Text  string `json:"text"`
}

// PreviewRow is one row and what would become of it: records, a reason, or the name of what it is.
type PreviewRow struct {
	Sheet   string   `json:"sheet,omitempty"`
	Row     int      `json:"row"`
	Cells   []string `json:"cells"`
	Becomes []string `json:"becomes,omitempty"`
	Refused string   `json:"refused,omitempty"`
	As      string   `json:"as,omitempty"`
}

// Tables reads files of rows as people keep them; package intake is the adapter.
type Tables interface {
	// Open guesses how a file is to be read, with what is known of the ship. A file that can't be read at all is refused in words.
	Open(name string, data []byte, ship *dossier.Dossier) (Table, error)
}

// Table is one file of rows, open.
type Table interface {
	Guess() Guess
	// Correct takes what differs from the guess as said by somebody, and guesses the rest again.
	Correct(Guess) error
	// Meanings lists what a column may mean.
	Meanings() []string
	// Preview shows the first rows.
	Preview(rows int) []PreviewRow
	// Harvest reads every row. It is refused while a needed question is open.
	Harvest() (Harvest, error)
	// Mapping is how it was read, to be proposed for the next file of the same layout: a record of that kind.
	Mapping() dossier.Record
	// Data is the file as it came.
	Data() []byte
}
