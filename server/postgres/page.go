package postgres

import (
	"encoding/base64"
	"strings"
	"time"

	"pitgate/server/club"
)

// place is the last row of a page: its creation time and id.
type place struct {
	time time.Time
	id   string
}

var (
	// first stands before every row of a list that is oldest first, last of one that is newest first.
	first = place{time: time.Date(1, 1, 1, 0, 0, 0, 0, time.UTC)}
	last  = place{time: time.Date(9999, 1, 1, 0, 0, 0, 0, time.UTC)}
)

func (p place) token() string {
	return base64.RawURLEncoding.EncodeToString([]byte(p.time.UTC().Format(time.RFC3339Nano) + " " + p.id))
}

// readPlace reads a page token; an empty one is the given start.
func readPlace(token string, start place) (place, error) {
	if token == "" {
		return start, nil
	}
	raw, errText := base64.RawURLEncoding.DecodeString(token)
	stamp, id, _ := strings.Cut(string(raw), " ")
	at, errTime := time.Parse(time.RFC3339Nano, stamp)
	if errText != nil || errTime != nil || !club.ValidID(id) {
		return place{}, badToken()
	}
	return place{time: at, id: id}, nil
}

func badToken() error {
	return club.RefuseField("page_token", "BAD_PAGE_TOKEN", "not a token of this list: begin without one")
}

// cut takes the one row too many off a page, and tells the place to go on from when there was one. Each converts a row
// and tells its place.
func cut[Row, Record any](rows []Row, limit int32, each func(Row) (Record, place)) (records []Record, next string) {
	var at place
	for i, row := range rows {
		if int32(i) == limit {
			return records, at.token()
		}
		var record Record
		record, at = each(row)
		records = append(records, record)
	}
	return records, ""
}

// text is the value of an optional column, or empty.
func text(column *string) string {
	if column == nil {
		return ""
	}
	return *column
}

// optional is a column that is absent when the text is empty.
func optional(text string) *string {
	if text == "" {
		return nil
	}
	return &text
}

// moment is the value of an optional column, or the zero time.
func moment(column *time.Time) time.Time {
	if column == nil {
		return time.Time{}
	}
	return *column
}

// list is never nil, since the database tells an absent list from an empty one.
func list(items []string) []string {
	return append([]string{}, items...)
}
