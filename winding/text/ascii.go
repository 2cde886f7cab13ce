package text

import (
	"strings"
	"unicode"
	"unicode/utf8"

	"golang.org/x/text/unicode/norm"
)

// plain are the ASCII spellings of the signs of the trade, of the marks the screen draws with, and of
// letters that are more than a letter with an accent. A degree sign behind a figure is set apart from
// it, so that "30°" reads "30 deg" and "18 °C" "18 degC". A raised dot is the one a unit may be typed
// with ("N.m"); before a root it multiplies.
var plain = strings.NewReplacer(
	"0°", "0 deg", "1°", "1 deg", "2°", "2 deg", "3°", "3 deg", "4°", "4 deg",
	"5°", "5 deg", "6°", "6 deg", "7°", "7 deg", "8°", "8 deg", "9°", "9 deg", "°", "deg",
	"\u03a9", "ohm", "\u2126", "ohm", "\u00b5", "u", "\u03bc", "u", "²", "2", "³", "3",
	"·√", "*sqrt", "·", ".", "√", "sqrt", "×", "x", "÷", "/", "±", "+/-",
	"−", "-", "–", "-", "—", "-", "…", "...", "•", "*",
	"≤", "<=", "≥", ">=", "≈", "~=", "≠", "!=", "∞", "infinity",
	"→", "->", "←", "<-", "↑", "up", "↓", "down", "½", "1/2", "¼", "1/4", "¾", "3/4",
	"“", `"`, "”", `"`, "„", `"`, "‘", "'", "’", "'", "«", `"`, "»", `"`,
	"π", "pi", "σ", "sigma", "λ", "lambda", "η", "eta", "Φ", "Phi", "φ", "phi", "Δ", "delta",
	"⌀", "dia. ", "Ø", "O", "ø", "o", "ä", "ae", "ö", "oe", "ü", "ue", "Ä", "Ae", "Ö", "Oe", "Ü", "Ue",
	"ß", "ss", "æ", "ae", "Æ", "Ae", "œ", "oe", "Œ", "Oe", "ł", "l", "Ł", "L", "đ", "d", "Đ", "D",
	"▲", "+", "▽", "-", "✗", "X", "▸", ">", "●", "*", "○", "o", "◆", "m", "◇", "d",
)

// ASCII writes text in ASCII: Ω as "ohm", µ as "u", ² as "2" and so on, accented letters without their
// accents, and "?" for what has no plain spelling. It may change the width: convert before measuring.
func ASCII(s string) string {
	if isASCII(s) {
		return s
	}
	var b strings.Builder
	for _, r := range plain.Replace(norm.NFC.String(s)) {
		if r < utf8.RuneSelf {
			b.WriteRune(r)
		} else {
			b.WriteString(bare(r))
		}
	}
	return b.String()
}

// bare is a character without accent or ornament, by Unicode's compatibility decomposition: "é" gives
// "e", a thin space a space. An accent by itself gives nothing.
func bare(r rune) string {
	var b strings.Builder
	for _, part := range norm.NFKD.String(string(r)) {
		switch {
		case unicode.Is(unicode.Mn, part):
		case part < utf8.RuneSelf:
			b.WriteRune(part)
		default:
			return "?"
		}
	}
	return b.String()
}

func isASCII(s string) bool {
	for i := range len(s) {
		if s[i] >= utf8.RuneSelf {
			return false
		}
	}
	return true
}
