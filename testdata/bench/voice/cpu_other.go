//go:build !unix

package main

import "time"

// childCPU is not known here.
func childCPU() time.Duration { return 0 }

// peakMemory is not known here.
func peakMemory() int64 { return 0 }
