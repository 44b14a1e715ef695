//go:build !unix

package layout

import "time"

var started = time.Now()

// cpuTime is the time since the start, for want of a better figure.
func cpuTime() time.Duration { return time.Since(started) }
