package app

// Guess is how a file of rows would be read, each part with its evidence in words. Somebody may correct any of it and send it back.
type Guess struct {
	File      string          `json:"file"`
	SHA256    string          `json:"sha256"`
	Kind      string          `json:"kind" doc:"the kind of record its rows become"`
	Layout    string          `json:"layout" doc:"in words"`
	Encoding  string          `json:"encoding" doc:"how its letters are written; empty in a workbook"`
	Delimiter string          `json:"delimiter" doc:"what parts the columns; empty in a workbook"`
	Decimal   string          `json:"decimal" doc:"the mark before decimals; empty where it is open"`
	Dates     string          `json:"dates" doc:"the order of day, month and year: dmy, mdy, ymd; empty where it is open"`
	Unit      string          `json:"unit" doc:"of a reading that has none"`
	Sheets    []GuessedSheet  `json:"sheets"`
	Columns   []GuessedColumn `json:"columns"`
	Facts     []GuessedFact   `json:"facts" doc:"what goes for every row"`
	Questions []Question      `json:"questions" doc:"what the file leaves open"`
	Why       []Evidence      `json:"why"`
	Known     string          `json:"known,omitempty" doc:"the mapping it was read by before"`
	Landed    string          `json:"landed,omitempty" doc:"that this very file was brought in already, and when"`
}

// GuessedSheet is one sheet with its heading rows, counted from 1.
type GuessedSheet struct {
	Name  string `json:"name"`
	Rows  int    `json:"rows"`
	First int    `json:"first" doc:"the first heading row; 0 where there is none"`
	Heads int    `json:"heads" doc:"how many heading rows"`
	Read  bool   `json:"read"`
	Why   string `json:"why"`
}

// GuessedColumn is one column with what it means. An empty meaning leaves it out.
type GuessedColumn struct {
	Index   int    `json:"index"`
	Heading string `json:"heading"`
	Meaning string `json:"meaning"`
	Unit    string `json:"unit"`
	Why     string `json:"why"`
}

// GuessedFact is a field that has one value for every row.
type GuessedFact struct {
	Field string `json:"field"`
	Text  string `json:"text"`
	Why   string `json:"why"`
}

// Evidence says why a part of the file is read as it is.
type Evidence struct {
	What string `json:"what"`
	Why  string `json:"why"`
}

// Question is something the file leaves open. While Answer is empty and Needed is true nothing lands.
type Question struct {
	Key     string   `json:"key"`
	Ask     string   `json:"ask"`
	Why     string   `json:"why"`
	Options []Option `json:"options"`
	Other   string   `json:"other,omitempty" doc:"how an answer that is none of the options is written"`
	Usual   string   `json:"usual" doc:"the value that would be taken by somebody who does not look"`
	Answer  string   `json:"answer"`
	Needed  bool     `json:"needed"`
}

// Option is one answer.
type Option struct {
	Value string `json:"value"`
	Text  string `json:"text"`
}

// Open lists the questions that must be answered first.
func (g Guess) Open() []Question {
	var open []Question
	for _, q := range g.Questions {
		if q.Needed && q.Answer == "" {
			open = append(open, q)
		}
	}
	return open
}

// Usual returns the guess with every open question answered as somebody would who does not look.
func (g Guess) Usual() Guess {
	g.Questions = append([]Question{}, g.Questions...)
	for i, q := range g.Questions {
		if q.Answer == "" {
			g.Questions[i].Answer = q.Usual
		}
	}
	return g
}
