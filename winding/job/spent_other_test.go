//go:build !unix

package job

import "time"

var begun = time.Now()

// spent is the time on the clock, where the processor's is not to be had in the same way.
func spent() time.Duration { return time.Since(begun) }
