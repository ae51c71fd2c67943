package report

import (
	"strconv"
	"strings"
	"unicode/utf8"

	"pitgate/server/physics/assess"
)

// wrap breaks a text into lines of at most width columns; a word longer than that is cut.
func wrap(text string, width int) []string {
	var lines []string
	line := ""
	for _, word := range strings.Fields(text) {
		for utf8.RuneCountInString(word) > width {
			if line != "" {
				lines, line = append(lines, line), ""
			}
			runes := []rune(word)
			lines, word = append(lines, string(runes[:width])), string(runes[width:])
		}
		switch {
		case line == "":
			line = word
		case utf8.RuneCountInString(line)+1+utf8.RuneCountInString(word) <= width:
			line += " " + word
		default:
			lines, line = append(lines, line), word
		}
	}
	if line != "" {
		lines = append(lines, line)
	}
	return lines
}

// quantities writes every intermediate, its number right of its name.
func (p *page) quantities(list []assess.ReportQuantity) {
	p.line("%s", strings.Repeat("-", Width))
	for _, q := range list {
		value := q.Text
		if q.Value != nil {
			value = strconv.FormatFloat(*q.Value, 'g', 6, 64)
			if q.Unit != "1" {
				value += " " + q.Unit
			}
		}
		name := q.ID
		if room := Width - len(name) - 2; utf8.RuneCountInString(value) > room {
			p.line("%s", name)
			p.paragraph(indent, value)
			continue
		}
		p.line("%s%*s", name, Width-utf8.RuneCountInString(name), value)
	}
}
