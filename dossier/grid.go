package dossier

import (
	"fmt"
	"reflect"
	"strconv"
	"strings"

	"oakum/field"
	"oakum/quantity"
)

// gridFile names the file that holds a grid: the kind's file, the record, the field and its unit.
func gridFile(k Kind, id string, f field.Field) string {
	return strings.TrimSuffix(k.File, ".csv") + "." + id + "." + headOf(f, "") + ".csv"
}

// writeGrid writes a list of lists of numbers, in the declared unit, one row a line.
func writeGrid(f field.Field, v reflect.Value) []byte {
	var out []byte
	for i := range v.Len() {
		r := v.Index(i)
		cells := make([]string, r.Len())
		for j := range cells {
			if x := r.Index(j); x.CanInt() {
				cells[j] = strconv.FormatInt(x.Int(), 10)
			} else {
				cells[j] = strconv.FormatFloat(f.Declared(x.Float()), 'f', -1, 64)
			}
		}
		out = appendRow(out, cells)
	}
	return out
}

// readGrid reads what writeGrid writes into the field.
func readGrid(f field.Field, data []byte, v reflect.Value) error {
	grid := reflect.MakeSlice(v.Type(), 0, 0)
	t := newTable(data)
	for r, ok := t.next(); ok; r, ok = t.next() {
		line := reflect.MakeSlice(v.Type().Elem(), 0, len(r.cells))
		for j, c := range r.cells {
			if len(r.cells) == 1 && c == "" {
				break
			}
			x, err := gridNumber(f, strings.TrimSpace(c), v.Type().Elem().Elem())
			if err != nil {
				return fmt.Errorf("line %d, column %d: %w", r.line, j+1, err)
			}
			line = reflect.Append(line, x)
		}
		grid = reflect.Append(grid, line)
	}
	if grid.Len() > 0 {
		v.Set(grid)
	}
	return nil
}

func gridNumber(f field.Field, cell string, t reflect.Type) (reflect.Value, error) {
	if t.Kind() == reflect.Int {
		n, err := strconv.Atoi(cell)
		if err != nil {
			return reflect.Value{}, fmt.Errorf("%q is no whole number", cell)
		}
		return reflect.ValueOf(n), nil
	}
	x, err := strconv.ParseFloat(cell, 64)
	if err != nil || x != x || x-x != 0 {
		return reflect.Value{}, fmt.Errorf("%q is no number", cell)
	}
	if f.Unit != "" {
		if x, err = quantity.ToBase(x, f.Unit); err != nil {
			return reflect.Value{}, err
		}
	}
	return reflect.ValueOf(x), nil
}
