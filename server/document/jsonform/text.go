package jsonform

import "unicode/utf8"

const hex = "0123456789abcdef"

// appendText writes a text in quotes. What a page could take for markup and the two line ends of JavaScript are escaped, so that the text can stand
// anywhere; what is not UTF-8 becomes U+FFFD.
func appendText(out []byte, text string) []byte {
	out = append(out, '"')
	done := 0
	for i := 0; i < len(text); {
		character, width := utf8.DecodeRuneInString(text[i:])
		escape := escapeOf(character, width)
		if escape != "" {
			out = append(append(out, text[done:i]...), escape...)
			done = i + width
		}
		i += width
	}
	return append(append(out, text[done:]...), '"')
}

// escapeOf is how a character is written; empty for one that stands for itself.
func escapeOf(character rune, width int) string {
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
	case '\u2028':
		return `\u2028`
	case '\u2029':
		return `\u2029`
	case '<', '>', '&':
		return byNumber(character)
	case utf8.RuneError:
		if width == 1 {
			return `\ufffd`
		}
	}
	if character < ' ' {
		return byNumber(character)
	}
	return ""
}

func byNumber(character rune) string {
	return `\u00` + string(hex[character>>4]) + string(hex[character&0xf])
}
