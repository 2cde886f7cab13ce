package tui

import (
	"fmt"
	"os"
	"path/filepath"
	"strings"
	"testing"

	"slotwright/tui/kit"
	"slotwright/tui/session"
	"slotwright/tui/tuitest"

	"github.com/stretchr/testify/require"
)

// hung maps each kind of ground to the looks shown on it.
var hung = []struct {
	look   string
	ground tuitest.Ground
}{
	{"any", tuitest.Black}, {"any", tuitest.White}, {"dark", tuitest.Black}, {"light", tuitest.White},
	{"contrast", tuitest.Black}, {"contrast", tuitest.White}, {"none", tuitest.Black}, {"none", tuitest.White},
}

// TestGallery: GALLERY=folder go test -run Gallery ./tui writes every screen, at every size and in
// every look on its grounds, as pages of pictures for side-by-side comparison; .ci/gallery does that.
func TestGallery(t *testing.T) {
	dir := os.Getenv("GALLERY")
	if dir == "" {
		t.Skip("GALLERY names no folder")
	}
	for _, size := range sizes {
		pages := map[string]*strings.Builder{}
		for i, h := range hung {
			look := func(s *session.Session) { s.Theme, _ = kit.Theme{Fixed: true}.WithLook(h.look) }
			frames := framesOf(look, size)
			s := session.NewExample()
			look(s)
			frames["shelf"] = opened(s, size[0], size[1], "Shelf", onShelf).View()
			for name, frame := range frames {
				page := fmt.Sprintf("%s-%dx%d-%d", name, size[0], size[1], i/onPage(size))
				if pages[page] == nil {
					pages[page] = &strings.Builder{}
				}
				fmt.Fprintf(pages[page], "<figure style=\"display:inline-block;margin:4px\">%s</figure>", h.ground.SVG(frame, size[0], size[1]))
			}
		}
		for page, html := range pages {
			require.NoError(t, os.WriteFile(filepath.Join(dir, page+".html"), []byte("<meta charset=\"utf-8\"><style>text{white-space:pre}</style><body style=\"background:#888;margin:0\">"+html.String()), 0o600))
		}
	}
}

// onPage is the number of pictures of a size per page: two side by side and, if they are low, two rows,
// so that letters stay legible.
func onPage(size [2]int) int {
	switch {
	case size[0] > 120:
		return 1
	case size[0] > 80:
		return 2
	}
	return 4
}
