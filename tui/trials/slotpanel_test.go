package trials

import (
	"strings"
	"testing"

	"slotwright/tui/kit"
	"slotwright/tui/session"

	"github.com/stretchr/testify/assert"
	"github.com/stretchr/testify/require"
)

// The wall of a parallel slot is straight from its mouth to its bottom: the ends of the wedge, which
// lie on the liner, do not make it look thicker.
func TestTheWallOfAParallelSlotIsStraight(t *testing.T) {
	s := session.NewExample()
	pack, why := s.Bench().Picture(0)
	require.Empty(t, why)
	require.NotEmpty(t, pack.Wedge)
	for _, size := range [][2]int{{17, 18}, {19, 20}, {30, 30}, {52, 40}} {
		for _, row := range drawSlot(kit.Theme{}, pack, kit.Series(0), size[0], size[1]) {
			runes := []rune(strings.TrimSpace(row))
			if len(runes) > 6 {
				for _, doubled := range []string{"⣿", "⢸⡇"} {
					assert.NotContains(t, string(runes[:2])+" "+string(runes[len(runes)-2:]), doubled, row)
				}
			}
		}
	}
}
