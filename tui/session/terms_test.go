package session

import (
	"testing"

	"github.com/stretchr/testify/assert"
)

// A text's terms are explained in order of occurrence, each once, matched as whole words; every
// sentence fits a line of the smallest screen that has room for it.
func TestTermsAreExplained(t *testing.T) {
	said := Explained("Brake: all leads joined. It furls; the GALE, the gales. A dump\nload. Leads to the bridgehead")
	assert.Equal(t, []string{
		"brake: all leads joined: current in the winding then holds the shaft.",
		"furls: turns out of the wind by itself, so as not to be overloaded.",
		"gale: wind in which a battery might come off while nothing furls.",
		"dump load: a resistor that takes what a full battery does not.",
	}, said)
	assert.Empty(t, Explained("nothing to explain"))
	for _, term := range terms {
		says := Explained("the " + term.word + ".")
		assert.Len(t, says, 1, term.word)
		assert.LessOrEqual(t, len([]rune(says[0])), 80, says)
	}
}
