//go:build !unix

package index_test

const canLimitFileSize = false

func limitFileSize(uint64) {}
