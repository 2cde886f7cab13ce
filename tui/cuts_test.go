package tui

import (
	"fmt"
	"os"
	"path/filepath"
	"strings"
	"testing"

	"slotwright/tui/kit"
	"slotwright/tui/session"
	"slotwright/winding/job"

	"github.com/charmbracelet/x/ansi"
	"github.com/stretchr/testify/require"
)

func TestCutsList(t *testing.T) {
	paths, err := filepath.Glob("../testdata/jobs/*.toml")
	require.NoError(t, err)
	extra, _ := filepath.Glob("/tmp/out3/jobs/*.toml")
	seen := map[string]bool{}
	for _, p := range append(paths, extra...) {
		text, err := os.ReadFile(p)
		require.NoError(t, err)
		for _, size := range append(sizes, [2]int{80, 23}) {
			m := opened(session.New(job.Parse(string(text)), "", job.Mark{}), size[0], size[1], "", "")
			for i, name := range m.tabNames() {
				m.bring(i)
				for _, keys := range []string{"", "v"} {
					if keys != "" && (name == "Wound" || name == "Machine" || name == "Drive" || name == "Card" || name == "Shelf" || name == "Layout") {
						continue
					}
					m.press(keys)
					cuts := map[string]string{}
					kit.OnCut = func(whole, left string) {
						cuts[strings.TrimSpace(ansi.Strip(left))] = strings.TrimSpace(ansi.Strip(whole))
					}
					frame := ansi.Strip(m.View())
					kit.OnCut = nil
					for left, whole := range cuts {
						if strings.HasSuffix(left, "…") && strings.Contains(frame, left) && len(left) > 3 {
							k := fmt.Sprintf("%v %s%s: %q <- %q", size, name, keys, left, whole)
							if !seen[k] {
								seen[k] = true
								fmt.Println("CUT", filepath.Base(p), k)
							}
						}
					}
					m.press(keys)
				}
			}
		}
	}
}
