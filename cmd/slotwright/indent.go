package main

import (
	"bytes"
	"encoding/json"
	"math"
	"strconv"
)

const (
	// jsonDigits is the number of significant figures written: more than any input has.
	jsonDigits = 6
	// dust is the size of rounding residues where the result should be zero; no unit in use makes a
	// real value so small.
	dust = 1e-12
	// perLevel is the indentation of each level of JSON.
	perLevel = "  "
)

// indented formats JSON without spaces for a person: a value a line, every number rounded, some
// characters escaped in strings. It is a single pass, as a report has 150 kB.
func indented(b []byte, which func(rune) bool) []byte {
	out, level := make([]byte, 0, 2*len(b)), 0
	line := func() {
		out = append(out, '\n')
		for range level {
			out = append(out, perLevel...)
		}
	}
	for i := 0; i < len(b); {
		n := 1
		switch c := b[i]; {
		case c == '"':
			n = stringLength(b[i:])
			out = appendEscaped(out, b[i:i+n], which)
		case c == '-' || c >= '0' && c <= '9':
			n = numberLength(b[i:])
			out = appendNumber(out, b[i:i+n])
		case bytes.HasPrefix(b[i:], []byte("{}")) || bytes.HasPrefix(b[i:], []byte("[]")):
			n = 2
			out = append(out, b[i:i+n]...)
		case c == '{' || c == '[':
			out = append(out, c)
			level++
			line()
		case c == '}' || c == ']':
			level--
			line()
			out = append(out, c)
		case c == ',':
			out = append(out, c)
			line()
		case c == ':':
			out = append(out, ':', ' ')
		default:
			out = append(out, c)
		}
		i += n
	}
	return out
}

// stringLength is how long the string at the start is, with its quotes.
func stringLength(b []byte) int {
	for i := 1; i < len(b); i++ {
		switch b[i] {
		case '\\':
			i++
		case '"':
			return i + 1
		}
	}
	return len(b)
}

// numberLength is how long the number at the start is.
func numberLength(b []byte) int {
	for n, c := range b {
		if c > '9' && c != 'e' && c != 'E' || c < '0' && c != '-' && c != '+' && c != '.' {
			return n
		}
	}
	return len(b)
}

// appendNumber appends a number rounded to [jsonDigits]; dust and a negative zero become 0.
func appendNumber(out, number []byte) []byte {
	v, err := strconv.ParseFloat(string(number), 64)
	if err != nil {
		return append(out, number...)
	}
	var room [32]byte
	rounded := strconv.AppendFloat(room[:0], v, 'e', jsonDigits-1, 64)
	switch size := math.Abs(v); {
	case size < dust:
		return append(out, '0')
	case size >= 1e-6 && size < 1e20: // between these JSON has no exponent
		return appendPlain(out, rounded)
	}
	v, _ = strconv.ParseFloat(string(rounded), 64)
	b, _ := json.Marshal(v)
	return append(out, b...)
}

// appendPlain appends a number of the form -1.23456e+01 without its exponent and trailing zeros; it
// overwrites number.
func appendPlain(out, number []byte) []byte {
	if number[0] == '-' {
		out, number = append(out, '-'), number[1:]
	}
	at := bytes.IndexByte(number, 'e')
	power, _ := strconv.Atoi(string(number[at+1:]))
	copy(number[1:], number[2:at])
	digits := bytes.TrimRight(number[:at-1], "0")
	if power < 0 {
		out = appendNoughts(append(out, '0', '.'), -power-1)
		return append(out, digits...)
	}
	whole := min(power+1, len(digits))
	out = appendNoughts(append(out, digits[:whole]...), power+1-whole)
	if whole == len(digits) {
		return out
	}
	return append(append(out, '.'), digits[whole:]...)
}

func appendNoughts(out []byte, n int) []byte {
	for range n {
		out = append(out, '0')
	}
	return out
}
