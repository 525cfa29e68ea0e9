package parse

import (
	"testing"
	"unsafe"
)

// One more field of a byte makes an item reach into a third line of the cache, which
// only the count of instructions would tell.
func TestItemFillsTwoLines(t *testing.T) {
	if unsafe.Sizeof(uintptr(0)) != 8 {
		t.Skip("pointers are shorter here")
	}
	if size := unsafe.Sizeof(item{}); size > 128 {
		t.Errorf("an item takes %d bytes, more than 128", size)
	}
}
