package document

import "strings"

// hasForm tells whether a text has the form of a pattern tag: ^(...)?$ around characters that stand for themselves and [0-9]{n} for n digits, n below
// ten. So little is asked of patterns that the page's core does without a whole engine for them; a test holds every tag to one.
func hasForm(pattern, text string) bool {
	if text == "" {
		return true
	}
	rest := strings.TrimSuffix(strings.TrimPrefix(pattern, "^("), ")?$")
	for rest != "" {
		count, after, digits := digitsOf(rest)
		if !digits {
			count, after = 1, rest[1:]
		}
		if len(text) < count || (digits && !allDigits(text[:count])) || (!digits && text[0] != rest[0]) {
			return false
		}
		rest, text = after, text[count:]
	}
	return text == ""
}

// digitsOf reads [0-9]{n} at the beginning of a pattern.
func digitsOf(pattern string) (count int, after string, ok bool) {
	after, ok = strings.CutPrefix(pattern, "[0-9]{")
	if !ok || len(after) < 2 || after[1] != '}' {
		return 0, "", false
	}
	return int(after[0] - '0'), after[2:], true
}

func allDigits(text string) bool { return strings.Trim(text, "0123456789") == "" }
