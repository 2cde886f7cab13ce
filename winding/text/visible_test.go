package text

import (
	"testing"

	"github.com/stretchr/testify/assert"
)

func TestVisible(t *testing.T) {
	for given, want := range map[string]string{
		"plain é 漢 👩‍🔧 ⚡️": "plain é 漢 👩‍🔧 ⚡️", "\x1b]0;x\a": `\u001b]0;x\u0007`, "a\u202eb": `a\u202eb`, "\u009b2J": `\u009b2J`,
		"a\x00\x7f": `a\u0000\u007f`, "a\u2028\U000e0041": `a\u2028\U000e0041`, "bad\xff": `bad\xff`, "n\nt\t": `n\u000at\u0009`,
	} {
		assert.Equal(t, want, Visible(given))
	}
}
