package main

import (
	"os"
	"path/filepath"
	"testing"

	"github.com/stretchr/testify/assert"
	"github.com/stretchr/testify/require"
)

// Without --trial the card is of the named reference and says so, in the units that most of the job is
// typed in; a flag overrides that.
func TestCardOfWhichTrialInWhichUnits(t *testing.T) {
	path := filepath.Join(t.TempDir(), "wheel.toml")
	require.NoError(t, os.WriteFile(path, []byte("[machine]\nslots = 18\npoles = 12\nbore_in = 4.5\nstack_in = 1.25\n[target]\nreference = \"B\"\n[[trial]]\nname = \"A\"\n[[trial]]\nname = \"B\"\n"), 0o600))
	code, out, errs := command("card", path)
	require.Equal(t, 0, code, errs)
	assert.Contains(t, out, "WINDING CARD, TRIAL B")
	assert.Contains(t, out, "bore 4.5 in")
	assert.Contains(t, errs, "trial B: it is the reference; --trial takes another")
	_, out, errs = command("card", path, "--trial", "A", "--inch=false")
	assert.Contains(t, out, "WINDING CARD, TRIAL A")
	assert.Contains(t, out, "bore 114.3 mm")
	assert.Empty(t, errs)
}
