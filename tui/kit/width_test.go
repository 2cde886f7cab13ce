package kit

import (
	"math/rand/v2"
	"strings"
	"testing"

	"github.com/charmbracelet/x/ansi"
	"github.com/stretchr/testify/require"
)

// The fast width count equals the library's, for any mixture of what it counts itself and what it
// leaves to the library.
func TestWidthIsTheLibrarys(t *testing.T) {
	parts := []string{"a", " ", "~", "\x1b[1m", "\x1b[38;5;12m", "\x1b[0m", "\x1b[m", "─", "┐", "╭", "╿", "⠀", "⣿", "⡇",
		"Ω", "²", "…", "\u0301", "é", "世", "\u200d", "\x1b[", "\x1b", "\x1b[2K", "█", "▏", "\xe2", "\xa0", "\x9b"}
	r := rand.New(rand.NewPCG(3, 4))
	for range 20000 {
		var s strings.Builder
		for range r.IntN(9) {
			k := len(parts)
			if r.IntN(2) == 0 {
				k = 14 // of what is counted quickly
			}
			s.WriteString(parts[r.IntN(k)])
		}
		require.Equal(t, ansi.StringWidth(s.String()), Width(s.String()), "%q", s.String())
	}
}

// Every sign that is counted fast, alone and before and after others.
func TestWidthOfEverySign(t *testing.T) {
	for r := rune(0xa0); r < 0x2a00; r++ {
		for _, s := range []string{string(r), "a" + string(r) + "b", string(r) + "\ufe0f", string(r) + "\u0301", string(r) + string(r)} {
			require.Equal(t, ansi.StringWidth(s), Width(s), "%U", r)
		}
	}
}
