package sqlite

import (
	"context"
	"crypto/sha256"
	"database/sql"
	"encoding/hex"
	"errors"
	"fmt"
	"strings"

	"oakum/dossier"
	"oakum/field"
)

var readme = []string{
	"This file holds all that is known of one ship. It was written by the program Oakum and is an ordinary SQLite 3 database.",
	"You need no program but sqlite3 to read it: SELECT text FROM readme; then look at the views, one for each kind of record.",
	"Each view has the records that stand, with the unit at the end of a column's name: bore_mm is in millimetres, date is year-month-day.",
	"The table record keeps every version of every record. Nothing is overwritten: a correction is a new version, and standing = 1 marks the newest.",
	"The table journal says who wrote what and when (UTC). record.revision points to it.",
	"basis says how a value is known: measured, documented, assumed, computed or unknown; basis_note says by what instrument, paper or rule.",
	"typed keeps the text as somebody typed it, by field. source names the file and row that a record was read from.",
	"mark says who may see a record: private, board or public. Respect it.",
	"Files (photographs, reports, original spreadsheets) stand in file and file_part under the SHA-256 of their bytes; join the parts in order.",
	"What is absent is unknown. It is not zero, and it is not sound.",
}

// explain writes the readme and the views, where they are not already those of this program.
func (s *Store) explain(ctx context.Context) error {
	var script strings.Builder
	script.WriteString("DELETE FROM readme;\n")
	for i, line := range readme {
		fmt.Fprintf(&script, "INSERT INTO readme VALUES (%d, %s);\n", i+1, quoted(line))
	}
	for _, k := range dossier.Kinds() {
		script.WriteString(view(k))
	}
	sum := sha256.Sum256([]byte(script.String()))
	mine := hex.EncodeToString(sum[:])
	var held string
	err := s.db.QueryRowContext(ctx, "SELECT value FROM setting WHERE name = 'explained'").Scan(&held)
	if err != nil && !errors.Is(err, sql.ErrNoRows) {
		return err
	}
	if held == mine {
		return nil
	}
	tx, err := s.db.BeginTx(ctx, nil)
	if err != nil {
		return err
	}
	defer tx.Rollback()
	if _, err := tx.ExecContext(ctx, script.String()); err != nil {
		return err
	}
	if _, err := tx.ExecContext(ctx, "INSERT OR REPLACE INTO setting VALUES ('explained', ?)", mine); err != nil {
		return err
	}
	return tx.Commit()
}

func view(k dossier.Kind) string {
	cols := []string{"id", "version"}
	for _, f := range k.Fields {
		cols = append(cols, fmt.Sprintf("json_extract(body, %s) AS %s", quoted("$."+f.Key), name(column(f))))
	}
	cols = append(cols, "basis", "basis_note", "basis_date", "mark", "source")
	return fmt.Sprintf("DROP VIEW IF EXISTS %[1]s;\nCREATE VIEW %[1]s AS SELECT %[2]s FROM record WHERE kind = %[3]s AND standing = 1 AND withdrawn = 0;\n",
		name("ship_"+k.Name), strings.Join(cols, ", "), quoted(k.Name))
}

// column is the key with the unit behind it.
func column(f field.Field) string {
	if f.Unit == "" || f.Unit == "-" {
		return f.Key
	}
	return f.Key + "_" + strings.NewReplacer("/", "_per_", ".", "_", "%", "percent").Replace(f.Unit)
}

func quoted(text string) string { return "'" + strings.ReplaceAll(text, "'", "''") + "'" }
func name(text string) string   { return `"` + strings.ReplaceAll(text, `"`, `""`) + `"` }
