package main

import (
	"bytes"
	"os"
	"path/filepath"
	"runtime"
	"slices"
	"strings"
	"testing"
	"unicode"

	"github.com/stretchr/testify/assert"
	"github.com/stretchr/testify/require"

	"newmake/compile/show/formats"
	"newmake/lang/testflag"
)

// raw finds what a terminal would obey in an output: anything but line breaks and
// tabs.
func raw(text string) int {
	return strings.IndexFunc(text, func(r rune) bool {
		return r != '\n' && r != '\t' && (unicode.IsControl(r) || unicode.Is(unicode.Bidi_Control, r))
	})
}

// TestHostileNames: whatever a file, a folder or an argument is called, no command
// writes it to a terminal, a pipe or a message as anything but text, and none lets
// it pass for a line of newmake's own.
func TestHostileNames(t *testing.T) {
	if runtime.GOOS == "windows" {
		t.Skip("no file may have such a name there")
	}
	const evil = "a\x1b]0;owned\a\x1b[2J\u202e\nnewmake: all is well\n"
	house := filepath.Join(t.TempDir(), "house"+evil)
	require.NoError(t, os.CopyFS(house, os.DirFS(hollow)))
	good, err := os.ReadFile(filepath.Join(house, "toll-road.batch"))
	require.NoError(t, err)
	loose := filepath.Join(house, evil+".batch")
	text := bytes.ReplaceAll(good, []byte("Toll Road"), []byte("Evil Road"))
	require.NoError(t, os.WriteFile(loose, append([]byte("\n\n"), text...), 0o644))
	bad := filepath.Join(house, evil+"bad.batch")
	require.NoError(t, os.WriteFile(bad, []byte("batch \"B\" {\n  frobnicate 1\n}\nbatch \"C\" { style x\x1b[2J }\n"), 0o644))
	locked := filepath.Join(t.TempDir(), evil+".txt")
	require.NoError(t, os.WriteFile(locked, nil, 0o444))
	lines := [][]string{
		{"check", house}, {"check", loose}, {"check", bad}, {"check", house, "--format", "json"}, {"check", evil}, {"check", evil + ".batch"},
		{"plan", loose},
		{"plan", loose, "-o", filepath.Join(house, evil+".txt")}, {"plan", loose, "-o", filepath.Join(house, evil+".txt")}, {"plan", loose, "-o", loose},
		{"plan", loose, "-o", locked}, {"plan", loose, "-o", house + evil + "/x.txt"}, {"plan", loose, "-o", evil}, {"plan", loose, "-o", evil + ".txt" + evil},
		{"plan", loose, "--batch", evil}, {"plan", loose, "--try", evil}, {"plan", loose, "--try", "bill." + evil + "=" + evil}, {"plan", loose, "--units", evil},
		{"plan", loose, "--format", evil}, {"plan", loose, "--table", evil, "--format", "csv"}, {"plan", loose, "--variants"}, {"plan", bad}, {"plan", evil}, {evil}, {"--" + evil}, {"plan", "--" + evil},
		{"fmt", loose, "--diff"}, {"fmt", loose, "--check"}, {"fmt", house, "--format", "json", "--check"}, {"fmt", bad}, {"fmt", evil}, {"fmt", loose},
		{"why", loose}, {"why", loose, "hearts"}, {"why", loose, evil}, {"why", loose, "hearts", "--format", "json"},
		{"odds", loose, "--draws", "50"}, {"odds", loose, "--draws", "50", "--format", "json"}, {"odds", loose, "--draws", "50", "--format", "md"}, {"odds", loose, "--draws", "50", "--format", "csv"}, {"odds", loose, "--beside", evil}, {"odds", evil},
		{"size", loose, "--wash", "350 gal"}, {"size", loose, "--wash", evil}, {"size", loose, "--wash", "350 gal", "--format", "json"}, {"size", loose, "--wash", "350 gal", "--name", evil},
		{"size", loose, "--wash", "350 gal", "-w=" + evil}, {"size", loose, "--wash", "350 gal", "-w=" + filepath.Join(house, evil+"w.batch")}, {"size", loose, "--wash", "350 gal", "-w"},
		{"diff", loose, filepath.Join(house, "low-bridge.batch")}, {"diff", loose, evil}, {"diff", loose, filepath.Join(house, "low-bridge.batch"), "--format", "json"}, {"diff", evil, "--", loose},
		{"library", evil}, {"library", "grain", evil}, {"explain", evil}, {"explain", evil, "--format", "json"}, {"gauge", evil}, {"gauge", evil, "--format", "json"},
		{"git-setup", house}, {"git-setup", evil}, {"init", filepath.Join(house, evil)}, {"init", locked}, {"init", filepath.Join(t.TempDir(), evil)}, {"init", "x", "--units", evil},
	}
	for _, format := range formats.OfPlan.Names() {
		lines = append(lines, []string{"plan", loose, "--format", format})
	}
	for i, args := range lines {
		for k, terminal := range []bool{true, false} {
			if (i+k)%testflag.Every(8) != 0 {
				continue
			}
			var o, e bytes.Buffer
			a := &app{in: strings.NewReader(""), out: &o, err: &e, outTerminal: terminal, errTerminal: terminal, color: "never", env: func(k string) string {
				if k == "NO_COLOR" {
					return "1"
				}
				return ""
			}}
			code := run(a, append(args, "--color", "never"))
			assert.NotEqual(t, exitFault, code, "%q", args)
			for name, out := range map[string]string{"out": o.String(), "err": e.String()} {
				if slices.Contains(args, "csv") || slices.Contains(args, "ics") {
					out = strings.ReplaceAll(out, "\r\n", "\n")
				}
				if at := raw(out); at >= 0 {
					t.Errorf("%q, terminal %v: %s has %q", args, terminal, name, out[max(0, at-60):min(len(out), at+20)])
				}
				assert.False(t, strings.HasPrefix(out, "newmake: all is well") || strings.Contains(out, "\nnewmake: all is well"), "%q: %s: %q", args, name, out[:min(len(out), 300)])
			}
		}
	}
}
