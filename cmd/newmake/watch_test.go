package main

import (
	"bytes"
	"context"
	"errors"
	"io"
	"net/http"
	"os"
	"path/filepath"
	"regexp"
	"strings"
	"sync"
	"testing"
	"time"

	"github.com/stretchr/testify/assert"
	"github.com/stretchr/testify/require"
)

// heard is what a command has said, read while it goes on.
type heard struct {
	mu sync.Mutex
	b  bytes.Buffer
}

func (h *heard) Write(p []byte) (int, error) {
	h.mu.Lock()
	defer h.mu.Unlock()
	return h.b.Write(p)
}

func (h *heard) String() string {
	h.mu.Lock()
	defer h.mu.Unlock()
	return h.b.String()
}

// soon waits for what a save brings about: well past settling, and past a slow
// machine.
func soon(t *testing.T, what string, is func() bool) {
	t.Helper()
	require.Eventually(t, is, 20*time.Second, 50*time.Millisecond, what)
}

func houseCopy(t *testing.T) string {
	t.Helper()
	dir := filepath.Join(t.TempDir(), "house")
	require.NoError(t, os.CopyFS(dir, os.DirFS("../../examples/lantern-hollow")))
	return dir
}

func quietApp(said *heard) *app {
	return &app{in: strings.NewReader(""), out: said, err: said, color: "never", env: func(string) string { return "" }}
}

// A recipe is edited while its sheet is watched and served: broken, mended by
// an editor that renames, deleted and written again, and read from a new file.
func TestWatch(t *testing.T) {
	house := houseCopy(t)
	text := filepath.Join(house, "toll-road.batch")
	good, err := os.ReadFile(text)
	require.NoError(t, err)
	out := filepath.Join(t.TempDir(), "sheet.html")

	said := &heard{}
	ctx, stop := context.WithCancel(context.Background())
	defer stop()
	ended := make(chan error, 1)
	go func() {
		ended <- watch(ctx, quietApp(said), text, planFlags{answerFlags: answerFlags{output: out}, open: true})
	}()

	served := regexp.MustCompile(`http://127\.0\.0\.1:\d+/[A-Z2-7]{26}/`)
	soon(t, "it says where it serves", func() bool { return served.MatchString(said.String()) })
	url := served.FindString(said.String())
	page := func() string {
		r, err := http.Get(url)
		require.NoError(t, err)
		defer r.Body.Close()
		b, err := io.ReadAll(r.Body)
		require.NoError(t, err)
		return string(b)
	}
	assert.True(t, strings.Contains(page(), "Toll Road"))
	first, err := os.ReadFile(out)
	require.NoError(t, err)
	assert.False(t, bytes.Contains(first, []byte("<script")), "the file has no script")
	assert.True(t, strings.Contains(page(), "<script src=\"page.js\""), "the served page has one")

	// Broken: the last good plan stays, on disk and served, with what is wrong.
	require.NoError(t, os.WriteFile(text, bytes.Replace(good, []byte("corn "), []byte("cron "), 1), 0o644))
	soon(t, "the trouble is shown", func() bool { return strings.Contains(page(), "last good plan") })
	assert.True(t, strings.Contains(page(), "cron"))
	assert.True(t, strings.Contains(page(), "Weigh out"))
	assert.Contains(t, said.String(), "the last good plan stays")
	still, err := os.ReadFile(out)
	require.NoError(t, err)
	assert.True(t, bytes.Equal(first, still))

	// Mended by putting another file in its place.
	side := text + "~"
	require.NoError(t, os.WriteFile(side, good, 0o644))
	require.NoError(t, os.Rename(side, text))
	soon(t, "the trouble is gone", func() bool { return !strings.Contains(page(), "last good plan") })

	// Deleted, then written again.
	require.NoError(t, os.Remove(text))
	soon(t, "the loss is said", func() bool { return strings.Contains(page(), "there is no such file") })
	changed := bytes.Replace(good, []byte("114 proof"), []byte("108 proof"), 1)
	changed = bytes.Replace(changed, []byte("110 proof"), []byte("108 proof"), 1)
	require.False(t, bytes.Equal(good, changed), "the example has an entry strength to change")
	require.NoError(t, os.WriteFile(text, changed, 0o644))
	soon(t, "the new strength is there", func() bool { return strings.Contains(page(), "108.0 proof") })
	soon(t, "and in the file", func() bool { b, _ := os.ReadFile(out); return bytes.Contains(b, []byte("108.0 proof")) })

	// Library of the house's own, in a folder that was not there before.
	require.NoError(t, os.Mkdir(filepath.Join(house, "trials"), 0o755))
	require.NoError(t, os.WriteFile(filepath.Join(house, "trials", "again.batch"), []byte("grain rye {\n  starch  blue\n}\n"), 0o644))
	soon(t, "the trouble is shown", func() bool { return strings.Contains(page(), "last good plan") })
	require.NoError(t, os.WriteFile(filepath.Join(house, "trials", "again.batch"), nil, 0o644))
	soon(t, "and gone", func() bool { return !strings.Contains(page(), "last good plan") })

	stop()
	var e *exit
	require.True(t, errors.As(<-ended, &e))
	assert.Equal(t, exitInterrupt, e.code)
}

// Standard input is read once, and can't be watched.
func TestWatchStandardInput(t *testing.T) {
	err := watch(t.Context(), quietApp(&heard{}), standardInput, planFlags{watch: true})
	assert.ErrorContains(t, err, "cannot be watched")
}
