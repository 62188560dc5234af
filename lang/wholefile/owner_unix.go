//go:build unix

package wholefile

import (
	"io/fs"
	"syscall"
)

// links is how many names (hard links) a file has.
func links(info fs.FileInfo) int {
	if s, ok := info.Sys().(*syscall.Stat_t); ok {
		return int(s.Nlink)
	}
	return 1
}

// keepOwner gives a file the owner and group of another.
func keepOwner(f File, old fs.FileInfo) error {
	s, ok := old.Sys().(*syscall.Stat_t)
	if !ok {
		return nil
	}
	// Some file systems know no owners, and refuse to be told one. There a file that
	// already has the right one is left as it is.
	if now, err := f.Stat(); err == nil {
		if n, ok := now.Sys().(*syscall.Stat_t); ok && n.Uid == s.Uid && n.Gid == s.Gid {
			return nil
		}
	}
	if f.Chown(int(s.Uid), int(s.Gid)) != nil {
		return ErrOwner
	}
	return nil
}
