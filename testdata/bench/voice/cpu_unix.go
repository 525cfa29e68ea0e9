//go:build unix

package main

import (
	"runtime"
	"syscall"
	"time"
)

// childCPU is the processor time of the programs that were run and have ended.
func childCPU() time.Duration {
	var u syscall.Rusage
	if syscall.Getrusage(syscall.RUSAGE_CHILDREN, &u) != nil {
		return 0
	}
	return time.Duration(u.Utime.Nano() + u.Stime.Nano())
}

// peakMemory is the most that this program has had in memory, in bytes.
func peakMemory() int64 {
	var u syscall.Rusage
	if syscall.Getrusage(syscall.RUSAGE_SELF, &u) != nil {
		return 0
	}
	if runtime.GOOS == "darwin" {
		return int64(u.Maxrss)
	}
	return int64(u.Maxrss) << 10
}
