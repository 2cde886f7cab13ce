//go:build !unix

package job

import "time"

var begun = time.Now()

// spent is elapsed time, where the processor's is not available in the same way.
func spent() time.Duration { return time.Since(begun) }
