// Package fmt stands in for the standard library's in the page's core, which would bring files, processes and clocks along that a page has none of. It
// formats what the core's notes and refusals ask for, in the same bytes: %s %q %v %w of texts, errors and what names itself, %d %x of whole numbers,
// %f %e %g of others with a precision; a width, a plus and zeros in front. The build puts it in place with -overlay; a test holds every format of the core to it.
package fmt

import (
	"reflect"
	"strconv"
	"unicode/utf8"
)

// Stringer names itself.
type Stringer interface{ String() string }

// Sprintf formats by a format.
func Sprintf(format string, given ...any) string {
	p := printer{given: given}
	p.format(format)
	return string(p.out)
}

// Sprint writes values one after the other, with a space between two that are no texts.
func Sprint(given ...any) string {
	var p printer
	for i, value := range given {
		if i > 0 && !isText(value) && !isText(given[i-1]) {
			p.out = append(p.out, ' ')
		}
		p.value(directive{verb: 'v', precision: -1}, value)
	}
	return string(p.out)
}

func isText(value any) bool { return value != nil && reflect.TypeOf(value).Kind() == reflect.String }

// directive is one place of a format where a value goes.
type directive struct {
	plus, zero       bool
	width, precision int // precision is -1 where none is given
	verb             rune
}

// printer writes values by a format.
type printer struct {
	out     []byte
	given   []any
	next    int
	wrapped []error
}

func (p *printer) format(format string) {
	for i := 0; i < len(format); {
		if format[i] != '%' {
			p.out = append(p.out, format[i])
			i++
			continue
		}
		d, width := readDirective(format[i+1:])
		i += 1 + width
		switch {
		case d.verb == '%':
			p.out = append(p.out, '%')
		case p.next >= len(p.given):
			p.out = append(utf8.AppendRune(append(p.out, "%!"...), d.verb), "(MISSING)"...)
		default:
			p.next++
			p.value(d, p.given[p.next-1])
		}
	}
}

// readDirective reads what stands behind a percent sign and tells how long it is.
func readDirective(text string) (directive, int) {
	d := directive{precision: -1}
	at := 0
	for ; at < len(text) && (text[at] == '0' || text[at] == '+'); at++ {
		d.zero, d.plus = d.zero || text[at] == '0', d.plus || text[at] == '+'
	}
	d.width, at = readNumber(text, at)
	if at < len(text) && text[at] == '.' {
		d.precision, at = readNumber(text, at+1)
	}
	verb, width := utf8.DecodeRuneInString(text[at:])
	d.verb = verb
	return d, at + width
}

func readNumber(text string, at int) (number, after int) {
	for at < len(text) && text[at] >= '0' && text[at] <= '9' {
		number = 10*number + int(text[at]-'0')
		at++
	}
	return number, at
}

// value writes one value.
func (p *printer) value(d directive, value any) {
	if err, ok := value.(error); ok && d.verb == 'w' {
		p.wrapped = append(p.wrapped, err)
		d.verb = 'v'
	}
	switch named := value.(type) {
	case error:
		value = textOr(d, named.Error(), value)
	case Stringer:
		value = textOr(d, named.String(), value)
	case nil:
		p.odd(d, "<nil>")
		return
	}
	v := reflect.ValueOf(value)
	switch {
	case v.Kind() == reflect.String:
		p.text(d, v.String())
	case v.Kind() == reflect.Bool:
		p.pad(directive{width: d.width}, strconv.FormatBool(v.Bool()))
	case v.CanInt():
		p.whole(d, v.Int() < 0, magnitude(v.Int()))
	case v.CanUint():
		p.whole(d, false, v.Uint())
	case v.CanFloat():
		p.number(d, v.Float(), v.Type().Bits())
	default:
		p.odd(d, v.Type().String())
	}
}

// textOr is the text of a value that names itself, unless a number is asked for.
func textOr(d directive, text string, value any) any {
	if d.verb == 's' || d.verb == 'q' || d.verb == 'v' {
		return text
	}
	return value
}

func (p *printer) text(d directive, text string) {
	switch d.verb {
	case 'q':
		text = strconv.Quote(text)
	case 's', 'v':
	default:
		p.odd(d, text)
		return
	}
	p.pad(d, text)
}

func magnitude(number int64) uint64 {
	if number < 0 {
		return -uint64(number)
	}
	return uint64(number)
}

func (p *printer) whole(d directive, negative bool, size uint64) {
	base := 10
	switch d.verb {
	case 'x':
		base = 16
	case 'd', 'v':
	default:
		p.odd(d, strconv.FormatUint(size, 10))
		return
	}
	digits := strconv.FormatUint(size, base)
	if negative {
		digits = "-" + digits
	}
	p.pad(d, d.signed(digits))
}

func (p *printer) number(d directive, number float64, bits int) {
	switch d.verb {
	case 'v':
		d.verb = 'g'
	case 'f', 'e':
		if d.precision < 0 {
			d.precision = 6
		}
	case 'g':
	default:
		p.odd(d, strconv.FormatFloat(number, 'g', -1, 64))
		return
	}
	p.pad(d, d.signed(strconv.FormatFloat(number, byte(d.verb), d.precision, bits)))
}

// signed puts a plus before a number that has no sign, where one is asked for.
func (d directive) signed(digits string) string {
	if d.plus && digits[0] != '-' && digits[0] != '+' {
		return "+" + digits
	}
	return digits
}

// pad fills up to the width in front: with zeros behind the sign of a number where they are asked for, with spaces otherwise.
func (p *printer) pad(d directive, text string) {
	fill := byte(' ')
	if d.zero {
		fill = '0'
		if text != "" && (text[0] == '-' || text[0] == '+') {
			p.out = append(p.out, text[0])
			d.width, text = d.width-1, text[1:]
		}
	}
	for n := utf8.RuneCountInString(text); n < d.width; n++ {
		p.out = append(p.out, fill)
	}
	p.out = append(p.out, text...)
}

// odd writes what a format does not fit.
func (p *printer) odd(d directive, text string) {
	if d.verb == 'v' {
		p.pad(d, text)
		return
	}
	p.out = append(utf8.AppendRune(append(p.out, "%!"...), d.verb), '(')
	p.out = append(append(p.out, text...), ')')
}
