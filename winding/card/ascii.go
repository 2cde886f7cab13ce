package card

import "strings"

// plain are the signs of the trade and the letters of names that have a way to be
// written in ASCII.
var plain = strings.NewReplacer(
	"\u03a9", "ohm", "\u2126", "ohm", "²", "2", "³", "3", "°C", "degC", "°F", "degF", "°", " deg", "×", "x", "÷", "/",
	"±", "+/-", "\u00b5", "u", "\u03bc", "u", "√", "sqrt", "·", "*", "−", "-", "–", "-", "—", "-", "…", "...",
	"≤", "<=", "≥", ">=", "≈", "~=", "≠", "!=", "→", "->", "←", "<-", "⌀", "dia. ", "Ø", "O", "ø", "o",
	"“", `"`, "”", `"`, "„", `"`, "‘", "'", "’", "'", "«", `"`, "»", `"`, "½", "1/2", "¼", "1/4", "¾", "3/4",
	"π", "pi", "σ", "sigma", "λ", "lambda", "η", "eta", "Φ", "Phi", "φ", "phi", "∞", "infinity",
	"ä", "ae", "ö", "oe", "ü", "ue", "Ä", "Ae", "Ö", "Oe", "Ü", "Ue", "ß", "ss", "æ", "ae", "Æ", "Ae", "œ", "oe",
	"å", "a", "Å", "A", "à", "a", "á", "a", "â", "a", "ã", "a", "ç", "c", "Ç", "C", "è", "e", "é", "e", "ê", "e",
	"ë", "e", "É", "E", "È", "E", "ì", "i", "í", "i", "î", "i", "ï", "i", "ñ", "n", "Ñ", "N", "ò", "o", "ó", "o",
	"ô", "o", "õ", "o", "ù", "u", "ú", "u", "û", "u", "ý", "y", "ÿ", "y", "č", "c", "š", "s", "ž", "z", "ł", "l",
	"\u00a0", " ", "\u202f", " ", "\u2009", " ",
)

// toASCII writes text in ASCII; what has no other way to be written becomes "?".
func toASCII(s string) string {
	return strings.Map(func(r rune) rune {
		if r >= 0x7f {
			return '?'
		}
		return r
	}, plain.Replace(s))
}
