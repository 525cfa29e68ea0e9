//go:build unix

package main

import (
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
