package precompile

import (
	"bytes"
	"os"
	"path/filepath"
	"strings"
	"testing"

	"github.com/google/go-cmp/cmp"
	"github.com/stretchr/testify/require"

	"newmake/lang/testflag"
)

// Files reads templates, by the names of their files.
func Files(t testing.TB, patterns ...string) map[string]string {
	t.Helper()
	out := map[string]string{}
	for _, pattern := range patterns {
		names, err := filepath.Glob(pattern)
		require.NoError(t, err)
		require.NotEmpty(t, names, pattern)
		for _, name := range names {
			text, err := os.ReadFile(name)
			require.NoError(t, err)
			out[filepath.Base(name)] = string(text)
		}
	}
	return out
}

// Keep holds a file of Go against the templates that it was made of, and makes it anew
// where that is asked for.
func (s Set) Keep(t testing.TB, file string) {
	t.Helper()
	made, err := s.Go()
	require.NoError(t, err, "%s", made)
	for name, text := range s.Sources {
		// A page in a file says itself what it may load, in one way (markup.Look). For one that is
		// served, with its style sheet by a link, the head of the answer says it.
		if strings.Contains(text, "<head>") && !strings.Contains(text, `rel="stylesheet"`) {
			require.Contains(t, text, `<meta http-equiv="Content-Security-Policy" content="{{.Policy}}">`, name)
			require.Contains(t, text, "{{raw .Style}}", name)
			require.NotContains(t, text, " style=", name)
		}
	}
	if testflag.Update() {
		require.NoError(t, os.WriteFile(file, made, 0o666))
		return
	}
	had, err := os.ReadFile(file)
	require.NoError(t, err)
	require.True(t, bytes.Equal(had, made), "%s is not what the templates make now: go test -update writes it anew, and what is built with it is tried the next time", file)
}

// Same holds what the made Go wrote against what html/template makes of the same. A
// template of the set is executed with a value; funcs are the functions for it.
func (s Set) Same(t testing.TB, name string, funcs, of any, wrote string) {
	t.Helper()
	if testflag.Update() {
		return // what was built is the Go that was made before
	}
	parsed, err := s.Parsed(funcs)
	require.NoError(t, err)
	var want bytes.Buffer
	require.NoError(t, parsed.ExecuteTemplate(&want, name, of))
	if diff := cmp.Diff(strings.Split(want.String(), "\n"), strings.Split(wrote, "\n")); diff != "" {
		t.Errorf("html/template makes another page of %s (-html/template +Go):\n%s", name, diff)
	}
}
