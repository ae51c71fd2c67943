package jsonform

import "unicode/utf8"

const hex = "0123456789abcdef"

// appendText writes a text in quotes. What a page could take for markup and the two line ends of JavaScript are escaped, so that the text can stand
// anywhere, unless the form is canonical; what is not UTF-8 becomes U+FFFD.
func (s style) appendText(out []byte, text string) []byte {
	out = append(out, '"')
	done := 0
	for i := 0; i < len(text); {
		character, width := utf8.DecodeRuneInString(text[i:])
		escape := s.escapeOf(character, width)
		if escape != "" {
			out = append(append(out, text[done:i]...), escape...)
			done = i + width
		}
		i += width
	}
	return append(append(out, text[done:]...), '"')
}

// escapeOf is how a character is written; empty for one that stands for itself.
func (s style) escapeOf(character rune, width int) string {
	switch character {
	case '"', '\\':
		return `\` + string(character)
	case '\b':
		return `\b`
	case '\f':
		return `\f`
	case '\n':
		return `\n`
	case '\r':
		return `\r`
	case '\t':
		return `\t`
	case utf8.RuneError:
		return s.replaced(width)
	}
	if character < ' ' {
		return byNumber(character)
	}
	if s.canonical {
		return ""
	}
	return forPage(character)
}

// replaced is what stands for bytes that are no character; empty for the character U+FFFD itself.
func (s style) replaced(width int) string {
	switch {
	case width != 1:
		return ""
	case s.canonical:
		return "\ufffd"
	}
	return `\ufffd`
}

// forPage is how a character is written that would mean something in the middle of a page; empty for others.
func forPage(character rune) string {
	switch character {
	case '\u2028':
		return `\u2028`
	case '\u2029':
		return `\u2029`
	case '<', '>', '&':
		return byNumber(character)
	}
	return ""
}

func byNumber(character rune) string {
	return `\u00` + string(hex[character>>4]) + string(hex[character&0xf])
}
