package main

import (
	"bytes"
	"os"
	"path/filepath"
	"strings"
	"testing"

	"github.com/stretchr/testify/assert"
	"github.com/stretchr/testify/require"
)

// sheetsInto writes a page and a day's text into a folder.
func sheetsInto(folder, plan string) (said string, err error) {
	var e bytes.Buffer
	a := &app{err: &e, env: func(string) string { return "" }}
	err = a.putSheets(folder, []sheetFile{
		{"run-1-x.html", []byte("<!DOCTYPE html>\n<title>" + plan + "</title>\n")},
		{"2026-04-14.txt", []byte("Work of Tue 14 Apr 2026\n" + plan + "\n")},
	})
	return e.String(), err
}

// A folder is written anew where its sheets are as they were written, with the line ends
// of another system too; one that was changed is kept, wherever the change is.
func TestSheetsChangedByHandAreKept(t *testing.T) {
	for _, name := range []string{"run-1-x.html", "2026-04-14.txt"} {
		for what, change := range map[string]func(string) string{
			"nothing":   func(s string) string { return s },
			"line ends": func(s string) string { return strings.ReplaceAll(s, "\n", "\r\n") },
			"first":     func(s string) string { return "sour at 3 pm\n" + s },
			"a figure":  func(s string) string { return strings.Replace(s, "one", "ONE", 1) },
			"last":      func(s string) string { return s + "sour at 3 pm\n" },
		} {
			dir := t.TempDir()
			said, err := sheetsInto(dir, "one")
			require.NoError(t, err)
			require.Empty(t, said)
			at := filepath.Join(dir, name)
			text, err := os.ReadFile(at)
			require.NoError(t, err)
			noted := change(string(text))
			require.NoError(t, os.WriteFile(at, []byte(noted), 0o600))
			said, err = sheetsInto(dir, "two")
			require.NoError(t, err)
			now, err := os.ReadFile(at)
			require.NoError(t, err)
			if what == "nothing" || what == "line ends" {
				assert.Empty(t, said, name, what)
				assert.Contains(t, string(now), "two", name, what)
			} else {
				assert.Contains(t, said, name+" was changed since it was written, and is kept", what)
				assert.Equal(t, noted, string(now), name, what)
			}
		}
	}
}

// A page that begins like any other is not one of ours, nor is a text without the mark;
// and what is called like a sheet and is none is not told to be taken away.
func TestSheetsOfOthersStay(t *testing.T) {
	for name, text := range map[string]string{
		"run-1-x.html":   "<!DOCTYPE html>\n<title>my own</title>\n",
		"2026-04-14.txt": "Work of Tue 14 Apr 2026\nmy own\n",
	} {
		dir := t.TempDir()
		at := filepath.Join(dir, name)
		require.NoError(t, os.WriteFile(at, []byte(text), 0o600))
		_, err := sheetsInto(dir, "one")
		require.ErrorContains(t, err, "is no sheet of a season: nothing was written")
		assert.Len(t, allFiles(t, dir), 1)
		assert.Equal(t, text, allFiles(t, dir)[at])
	}
	dir := t.TempDir()
	require.NoError(t, os.WriteFile(filepath.Join(dir, "2026-01-01.txt"), []byte("new year\n"), 0o600))
	said, err := sheetsInto(dir, "one")
	require.NoError(t, err)
	assert.Empty(t, said)
}

// A pipe would be waited for, and a device may have no end: neither is opened.
func TestSheetsReadPlainFilesOnly(t *testing.T) {
	dir := t.TempDir()
	if makePipe(filepath.Join(dir, "2026-04-14.txt")) != nil {
		t.Skip("this system has no pipes in folders")
	}
	_, err := sheetsInto(dir, "one")
	require.ErrorContains(t, err, "2026-04-14.txt, which would be written over: it is not a plain file; nothing was written")
	assert.NoFileExists(t, filepath.Join(dir, "run-1-x.html"))
}
