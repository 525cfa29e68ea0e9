//go:build unix

package index_test

import (
	"os/signal"
	"syscall"
)

const canLimitFileSize = true

// limitFileSize has every write beyond so many bytes of a file fail, as it
// does on a full disk.
func limitFileSize(bytes uint64) {
	signal.Ignore(syscall.SIGXFSZ)
	var limit syscall.Rlimit
	limit.Cur, limit.Max = bytes, bytes
	if err := syscall.Setrlimit(syscall.RLIMIT_FSIZE, &limit); err != nil {
		panic(err)
	}
}
