package survey

import (
	"bytes"
	"encoding/csv"
	"errors"
	"fmt"
	"io"
	"strings"

	"pitgate/server/physics/field"
)

// columns are the columns of a table of coordinates; the last three may be missing.
var columns = []string{"kind", "name", "latitude", "longitude", "ground", "height", "accuracy"}

// needed is the number of columns that may not be missing.
const needed = 4

// tableRow is one row of a table.
type tableRow struct {
	line       int
	cells      map[string]string
	kind, name string
}

// ReadCSV reads a table of coordinates. Its first row names the columns kind, name, latitude and longitude (degrees), and perhaps ground (height of the
// ground, m), height (top over the ground, m) and accuracy (m), in any order; commas or semicolons separate them. Rows of one kind and name in a row are
// the places of one feature: an area where its kind is one or its last place is its first again, a line where there are several, else one place.
//
// Errors are of type *Error and name the feature, and the row of the file and its column.
func ReadCSV(data []byte) ([]Feature, error) {
	if err := bounded(data); err != nil {
		return nil, &Error{Err: err}
	}
	rows, err := tableRows(data)
	if err != nil {
		return nil, err
	}
	var features []Feature
	for from := 0; from < len(rows); {
		to := from + 1
		for to < len(rows) && rows[to].kind == rows[from].kind && rows[to].name == rows[from].name {
			to++
		}
		f, err := readRows(rows[from:to])
		if err != nil {
			return nil, inFeature(err, len(features)+1, f.Name)
		}
		if features = append(features, f); len(features) > MostFeatures {
			return nil, &Error{Err: errTooLarge}
		}
		from = to
	}
	return features, nil
}

// tableRows splits a table.
func tableRows(data []byte) ([]tableRow, error) {
	data = bytes.TrimPrefix(data, []byte("\ufeff"))
	reader := csv.NewReader(bytes.NewReader(data))
	head, _, _ := bytes.Cut(data, []byte("\n"))
	if bytes.Count(head, []byte(";")) > bytes.Count(head, []byte(",")) {
		reader.Comma = ';'
	}
	reader.TrimLeadingSpace = true
	names, err := reader.Read()
	if err != nil {
		return nil, &Error{Err: fmt.Errorf("not a table: %w", err)}
	}
	if err := checkHead(names); err != nil {
		return nil, err
	}
	var rows []tableRow
	for {
		record, err := reader.Read()
		if errors.Is(err, io.EOF) {
			return rows, nil
		}
		if err != nil {
			return nil, &Error{Err: fmt.Errorf("not a table: %w", err)}
		}
		if len(rows) >= MostPlaces {
			return nil, &Error{Err: errTooLarge}
		}
		line, _ := reader.FieldPos(0)
		row := tableRow{line: line, cells: map[string]string{}}
		for i, name := range names {
			row.cells[columnName(name)] = strings.TrimSpace(record[i])
		}
		row.kind, row.name = row.cells["kind"], row.cells["name"]
		rows = append(rows, row)
	}
}

// columnName returns the name of a column as it is known.
func columnName(text string) string { return strings.ToLower(strings.TrimSpace(text)) }

// checkHead returns an error when a column is missing, twice there or not known.
func checkHead(names []string) error {
	seen := map[string]bool{}
	for _, name := range names {
		name = columnName(name)
		known := false
		for _, column := range columns {
			known = known || column == name
		}
		if !known || seen[name] {
			return wrong("first row", "column %q is not known or there twice; known are %s", clip(name), strings.Join(columns, ", "))
		}
		seen[name] = true
	}
	for _, column := range columns[:needed] {
		if !seen[column] {
			return wrong("first row", "column %q is missing", column)
		}
	}
	return nil
}

// readRows turns the rows of one feature into it.
func readRows(rows []tableRow) (Feature, error) {
	f := Feature{Kind: Kind(rows[0].kind), Name: rows[0].name, Shape: Line}
	for i := range rows {
		if err := f.readRow(&rows[i]); err != nil {
			return f, err
		}
	}
	switch {
	case f.Kind.area():
		f.Shape = Area
		f.open()
	case len(f.Places) == 1:
		f.Shape = Spot
	case len(f.Places) > 3 && f.Kind != Strip && f.open():
		f.Shape = Area
		f.closeIfAllowed()
	}
	return f, f.check(fmt.Sprintf("row %d", rows[0].line))
}

// readRow adds the place of a row.
func (f *Feature) readRow(row *tableRow) error {
	var values [7]float64
	for i, column := range columns[2:] {
		text := row.cells[column]
		if text == "" && i+2 >= needed {
			continue
		}
		value, err := number(row.member(column), text)
		if err != nil {
			return err
		}
		values[i+2] = value
	}
	if accuracy := values[6]; !(accuracy >= 0 && accuracy <= 1000) {
		return wrong(row.member("accuracy"), "%g m is outside 0 to 1000", accuracy)
	}
	if row.cells["height"] != "" {
		if f.Height != nil && *f.Height != values[5] {
			return wrong(row.member("height"), "%g m differs from the %g m of the rows before", values[5], *f.Height)
		}
		height := values[5]
		f.Height = &height
	}
	p, err := position(values[2], values[3], values[4])
	if err != nil {
		return &Error{Member: row.member("latitude"), Err: err}
	}
	f.add(p, row.cells["ground"] != "", values[6])
	return nil
}

// member names a cell.
func (r *tableRow) member(column string) string { return fmt.Sprintf("row %d %s", r.line, column) }

// WriteCSV writes a plan as a table that ReadCSV reads: positions with 9 decimals (0.1 mm), areas closed. Errors name what is impossible.
func WriteCSV(plan Plan) ([]byte, error) {
	datum, err := field.NewDatum(plan.Datum)
	if err != nil {
		return nil, &Error{Member: "datum", Err: err}
	}
	var out bytes.Buffer
	writer := csv.NewWriter(&out)
	if err := writer.Write(columns); err != nil {
		return nil, err
	}
	for i := range plan.Parts {
		part := &plan.Parts[i]
		if err := part.writable(); err != nil {
			return nil, inFeature(err, i+1, part.Name)
		}
		if err := writer.WriteAll(plan.rows(datum, part)); err != nil {
			return nil, err
		}
	}
	return out.Bytes(), nil
}

// rows returns the rows of a part.
func (p *Plan) rows(datum field.Datum, part *Part) [][]string {
	points := part.Points
	if part.Shape == Area {
		points = append(points[:len(points):len(points)], points[0])
	}
	height, accuracy := "", ""
	if part.Height != nil {
		height = decimal{*part.Height, 6}.String()
	}
	if part.Spread > 0 {
		accuracy = decimal{part.Spread, 3}.String()
	}
	var rows [][]string
	for _, l := range points {
		at := p.at(datum, l)
		ground := ""
		if part.Grounded {
			ground = decimal{at.Height, 4}.String()
		}
		rows = append(rows, []string{
			string(part.Kind), part.Name, decimal{degrees(at.Latitude), 9}.String(), decimal{degrees(at.Longitude), 9}.String(), ground, height, accuracy,
		})
	}
	return rows
}
