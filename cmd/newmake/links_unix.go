//go:build unix

package main

import (
	"io/fs"
	"syscall"
)

// hardLinks says how many names a file has.
func hardLinks(info fs.FileInfo) int {
	if s, ok := info.Sys().(*syscall.Stat_t); ok {
		return int(s.Nlink)
	}
	return 1
}
