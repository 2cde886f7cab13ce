//go:build !windows

package job

import (
	"io/fs"
	"os"

	"github.com/google/renameio/v2"
)

// replaceFile puts data in the place of a file: temporary file in the same folder,
// fsync, rename; the old mode is kept.
func replaceFile(path string, data []byte) error {
	mode := fs.FileMode(0o644)
	if info, err := os.Stat(path); err == nil {
		mode = info.Mode().Perm()
	}
	return renameio.WriteFile(path, data, mode, renameio.WithExistingPermissions())
}
