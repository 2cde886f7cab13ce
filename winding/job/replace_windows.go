//go:build windows

package job

import (
	"bytes"

	"github.com/natefinch/atomic"
)

// replaceFile puts data in the place of a file, by MoveFileEx.
func replaceFile(path string, data []byte) error {
	return atomic.WriteFile(path, bytes.NewReader(data))
}
