package book

import (
	"fmt"
	"io"
	"strings"
	"time"
)

// readMe is the plain account, for somebody who has never heard of this program.
func (w *writer) readMe() error {
	return w.put(readMe, func(f io.Writer) error {
		_, err := io.WriteString(f, strings.NewReplacer("{ship}", w.brief.Name, "{day}", w.brief.Day.Words(), "{written}", w.at.UTC().Format(time.DateOnly),
			"{snapshot}", w.brief.Snapshot, "{records}", fmt.Sprint(w.made.Records), "{files}", w.countFiles(), "{papers}", strings.Join(w.listed, "\n")).Replace(account))
		return err
	})
}

func (w *writer) countFiles() string {
	switch w.made.Files {
	case 0:
		return "There are none in this book."
	case 1:
		return "There is one."
	}
	return fmt.Sprintf("There are %d.", w.made.Files)
}

const account = `THE BOOK OF {ship}

Written on {written}, from her records as on {day}.

You need no special program for anything in this folder: a text editor, a spreadsheet and a PDF reader will do.
Keep the folder whole. Make copies. Change nothing in it: work on a copy.


WHAT LIES WHERE (all of it in the folder data)

  BRIEF.txt             What is known of her and what it means, in words. Begin here.
  papers/               The papers, as PDF. They are listed below.
  records/              Everything on record, {records} records: ship.txt for the ship herself, and one table (CSV) for
                        each kind of thing. They open in any spreadsheet or text editor.
  DATA-DICTIONARY.txt   What each column of those tables means, its unit and its limits.
  sheets/               The calculations. index.csv lists them; every-sheet.jsonl holds each with its inputs, its steps
                        and its results, one a line; those that the board reads or somebody signed are printed as PDF.
  files/                Photographs and papers as they were given, each named by its SHA-256 (a number that belongs to
                        those bytes and no others). index.csv gives their own names. {files}
  ship.oakum            The same again as one SQLite 3 database, with every earlier version of every record and who
                        wrote it when. The table readme in it says how it is laid out.

The papers:
{papers}


HOW TO READ THE TABLES

The first line of a table names its columns. A number has its unit in the name of its column: thickness_mm is in
millimetres. An empty cell means that nobody knew. It never means nought.
The column basis says how a thing is known: measured, documented, assumed, computed or unknown.
An id in one table is the same id in another: the part "x" in custody.csv is the part of that id in parts.csv.
A text that would begin with = + - or @ has an apostrophe before it, so that no spreadsheet runs it. It is not part of the text.
Distances along the ship run forward from the after perpendicular, heights from the baseline, offsets to port from the centre line.


HOW TO OPEN THE DATABASE

Any SQLite 3 reader opens ship.oakum. With the one called sqlite3:

  sqlite3 data/ship.oakum "SELECT text FROM readme ORDER BY line"
  sqlite3 data/ship.oakum "SELECT id, body FROM record WHERE kind = 'part' AND standing"


IS IT STILL WHOLE?

The folder is a BagIt bag (RFC 8493). manifest-sha512.txt holds the SHA-512 of every file in data, and
tagmanifest-sha512.txt that of the files beside it. On most machines this says whether a byte has changed:

  sha512sum -c manifest-sha512.txt
  sha512sum -c tagmanifest-sha512.txt

With the program it was written by:   oakum check THIS-FOLDER
To go on working with the records:    oakum import NEW-FILE.oakum THIS-FOLDER


WHAT THIS BOOK DOES NOT CLAIM

Each PDF file was looked through as it was written: it carries the letters it is set in, is not locked, runs nothing and
fetches nothing. It was not held against the archival standard PDF/A (ISO 19005) by a validator, and the files do not
claim to follow it. What is in them stands in the text and the tables too. The bytes of every file were read back once more after the folder was written.
A calculation is no permit. Docking, lifting, hot work, confined spaces, asbestos, lead and diving are for licensed
people and the rules of the place.
Records marked private are in this book, so that nothing is lost: give it to those who may see them.

The records that this book was made from are named by the number
{snapshot}
Papers and public pages that carry the same number were made from the same records.
`
