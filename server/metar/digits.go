package metar

import "strings"

// isDigit reports whether a byte is a decimal digit.
func isDigit(b byte) bool { return b >= '0' && b <= '9' }

// isCapital reports whether a byte is a capital letter.
func isCapital(b byte) bool { return b >= 'A' && b <= 'Z' }

// allDigits reports whether a text is made of decimal digits, and of at least one.
func allDigits(text string) bool {
	return text != "" && leadingDigits(text) == len(text)
}

// leadingDigits counts the decimal digits a text begins with.
func leadingDigits(text string) int {
	n := 0
	for n < len(text) && isDigit(text[n]) {
		n++
	}
	return n
}

// number returns the value of a text of decimal digits, of which there are few.
func number(text string) int {
	value := 0
	for i := range len(text) {
		value = 10*value + int(text[i]-'0')
	}
	return value
}

// slashes reports whether a text is made of that many slashes.
func slashes(text string, count int) bool {
	return len(text) == count && strings.Trim(text, "/") == ""
}
