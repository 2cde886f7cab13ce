package quantity

import (
	"testing"

	"github.com/stretchr/testify/assert"
)

// Exact factors: inch 25.4 mm, pound 0.45359237 kg, foot 0.3048 m, mile 1609.344 m (international yard
// and pound agreement, 1959); °F = 1.8 °C + 32 by its definition.
func TestSentencesAreTurned(t *testing.T) {
	us := Choice{Inch: true, Fahrenheit: true}
	for was, want := range map[string]string{
		"passes the mouth with 1.64 mm to spare":         "passes the mouth with 0.0646 in to spare",
		"below 0 °C, and slowly to 25 °C":                "below 32 °F, and slowly to 77 °F",
		"at 25 to 50 °C, 0.5 A":                          "at 77 to 122 °F, 0.5 A",
		"-40 °C":                                         "-40 °F",
		"magnets taken as 3 mm thick":                    "magnets taken as 0.118 in thick",
		"0.45 K/W and 4.5 kg of 120 m":                   "0.810 °F/W and 9.92 lb of 394 ft",
		"64.516 mm² of it":                               "0.1000 in² of it",
		"86 turns of IEC 0.95 mm fit, 1.8 mm over":       "86 turns of IEC 0.95 mm fit, 1.8 mm over",
		"turns in up to 8.37 m/s":                        "turns in up to 18.7 mph",
		"type 8 x 9 mm":                                  "type 0.315 x 0.354 in",
		"18 AWG, 0.71 mm bare":                           "18 AWG, 0.71 mm bare",
		"Water: 5 × litres per second × metres of fall.": "Water: 1.5 × litres per second × feet of fall.",
		"4.8 A/mm², 0.017 Ω·mm²/m, 12 mohm":              "4.8 A/mm², 0.017 Ω·mm²/m, 12 mohm",
	} {
		assert.Equal(t, want, us.Words(was))
		assert.Equal(t, was, Choice{}.Words(was))
	}
	assert.Equal(t, "0.0646 in at 20 °C", Choice{Inch: true}.Words("1.64 mm at 20 °C"))
	assert.Equal(t, "1.64 mm at 68 °F", Choice{Fahrenheit: true}.Words("1.64 mm at 20 °C"))
	assert.Equal(t, "below 32 °F (0 °C), 3 mV less for each kelvin (1.8 °F)", us.WordsOfRule("below 0 °C, 3 mV less for each kelvin"))
}
