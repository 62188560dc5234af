// Package watch tells when a text of a house was saved.
package watch

import (
	"context"
	"errors"
	"fmt"
	"hash/fnv"
	"io/fs"
	"path/filepath"
	"strings"
	"time"

	"github.com/fsnotify/fsnotify"
)

const (
	settle   = 100 * time.Millisecond // a save is several events
	lookEach = 2 * time.Second        // for drives that tell of no changes

	// goneAfter is how many looks a folder may be missing: it may be on its way from
	// one place to another.
	goneAfter = 2
)

// House tells when a text of a house has changed. It watches folders, not
// files, because an editor saves by putting another file in a file's place; and
// it looks for itself every few seconds, because a network drive tells nothing.
// When the house's folder is gone, and stays so, there are no more changes: the
// channel is closed.
func House(ctx context.Context, root string, say func(string, ...any)) (<-chan struct{}, error) {
	if abs, err := filepath.Abs(root); err == nil {
		root = abs // the folder that one stands in seems to be there when it is gone
	}
	seen, err := look(root)
	if err != nil {
		return nil, err
	}
	told := make(chan fsnotify.Event)
	watcher, err := fsnotify.NewWatcher()
	if err == nil {
		err = addFolders(watcher, root)
	}
	if err != nil {
		say("the system tells of no changes here (%v): looking every %s", err, lookEach)
	} else {
		go forward(ctx, watcher, told)
	}
	changes := make(chan struct{}, 1)
	go func() {
		if watcher != nil {
			defer watcher.Close()
		}
		each := time.NewTicker(lookEach)
		defer each.Stop()
		quiet := time.NewTimer(settle)
		quiet.Stop()
		missed := 0
		for {
			again := 0
			select {
			case <-ctx.Done():
				return
			case <-told:
				quiet.Reset(settle)
				continue
			case <-quiet.C:
			case <-each.C:
				again = 1
			}
			now, err := look(root)
			switch {
			case errors.Is(err, fs.ErrNotExist):
				if missed += again; missed == goneAfter {
					close(changes)
					return
				}
				now = 0 // to be said
			case err != nil:
				continue
			default:
				missed = 0
			}
			if now == seen {
				continue
			}
			seen = now
			if watcher != nil {
				addFolders(watcher, root) // there may be new ones
			}
			select {
			case changes <- struct{}{}:
			default: // it has not come to the last one yet
			}
		}
	}()
	return changes, nil
}

// forward passes on the events that may concern a text or a folder.
func forward(ctx context.Context, watcher *fsnotify.Watcher, told chan<- fsnotify.Event) {
	for {
		select {
		case <-ctx.Done():
			return
		case e, ok := <-watcher.Events:
			if !ok {
				return
			}
			if ext := filepath.Ext(e.Name); ext != ".batch" && ext != "" {
				continue
			}
			select {
			case told <- e:
			case <-ctx.Done():
				return
			}
		case _, ok := <-watcher.Errors: // events were lost: the next look finds what they told
			if !ok {
				return
			}
		}
	}
}

// addFolders adds every folder of the house.
func addFolders(watcher *fsnotify.Watcher, root string) error {
	return filepath.WalkDir(root, func(path string, d fs.DirEntry, err error) error {
		if err != nil || !d.IsDir() {
			return nil // gone again: the next look will tell
		}
		if path != root && strings.HasPrefix(d.Name(), ".") {
			return fs.SkipDir
		}
		return watcher.Add(path)
	})
}

// look gives a mark of the texts of a house as they stand: their names, sizes
// and times. A text that is gone for the moment is part of the mark.
func look(root string) (uint64, error) {
	h := fnv.New64a()
	err := filepath.WalkDir(root, func(path string, d fs.DirEntry, err error) error {
		switch {
		case err != nil && path == root:
			return err
		case err != nil:
			return nil
		case d.IsDir() && path != root && strings.HasPrefix(d.Name(), "."):
			return fs.SkipDir
		case d.IsDir() || filepath.Ext(path) != ".batch":
			return nil
		}
		if info, err := d.Info(); err == nil {
			fmt.Fprintf(h, "%s\x00%d\x00%d\x00", path, info.Size(), info.ModTime().UnixNano())
		}
		return nil
	})
	return h.Sum64(), err
}
