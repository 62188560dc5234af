package check

import (
	"fmt"
	"os"
	"path/filepath"
	"regexp"
	"slices"
	"strings"
	"testing"
	"testing/fstest"

	"github.com/stretchr/testify/require"

	"newmake/lang/diag"
	"newmake/lang/house"
)

// A fixture in testdata/mistakes says on the offending line what is to be said of
// it: # want NM0201 "did you mean". Each code may have a text that the
// diagnostic has to hold; several codes may stand on a line. What is said and not
// wanted fails, as does what is wanted and not said.
var wantMark = regexp.MustCompile(`(NM\d{4})(?: "([^"]*)")?`)

type want struct {
	code diag.Code
	text string
}

func wants(t *testing.T, text string) map[int][]want {
	out := map[int][]want{}
	for i, line := range strings.Split(text, "\n") {
		_, mark, ok := strings.Cut(line, "# want ")
		if !ok {
			continue
		}
		all := wantMark.FindAllStringSubmatch(mark, -1)
		require.NotEmpty(t, all, "line %d: a want that wants nothing", i+1)
		for _, m := range all {
			out[i+1] = append(out[i+1], want{diag.Code(m[1]), m[2]})
		}
	}
	return out
}

// bench is the house of the fixtures with more files in it.
func bench(t testing.TB, files map[string]string) fstest.MapFS {
	fsys := fstest.MapFS{}
	for _, name := range []string{"house.batch", "base.batch"} {
		data, err := os.ReadFile(filepath.Join("testdata", name))
		require.NoError(t, err)
		fsys[name] = &fstest.MapFile{Data: data}
	}
	for name, text := range files {
		fsys[name] = &fstest.MapFile{Data: []byte(text)}
	}
	return fsys
}

func TestMistakes(t *testing.T) {
	paths, err := filepath.Glob("testdata/mistakes/*.batch")
	require.NoError(t, err)
	require.NotEmpty(t, paths)
	count := 0
	for _, path := range paths {
		t.Run(strings.TrimSuffix(filepath.Base(path), ".batch"), func(t *testing.T) {
			data, err := os.ReadFile(path)
			require.NoError(t, err)
			name := "fixture.batch"
			if filepath.Base(path) == house.FileName {
				name = house.FileName
			}
			h, err := LoadFS(bench(t, map[string]string{name: string(data)}), "", Options{})
			require.NoError(t, err)
			expected := wants(t, string(data))
			for _, w := range expected {
				count += len(w)
			}
			for _, problem := range compare(h.Check(), name, expected) {
				t.Error(problem)
			}
		})
	}
	require.GreaterOrEqual(t, count, 60, "mistakes that are tried")
}

func compare(got diag.List, file string, expected map[int][]want) []string {
	var problems []string
	for _, d := range got {
		line, _ := d.At.Position()
		all := d.Summary + "\n" + d.Help + "\n" + d.Reason
		i := -1
		if d.At.Src != nil && d.At.Src.Name == file {
			i = slices.IndexFunc(expected[line], func(w want) bool { return w.code == d.Code && strings.Contains(all, w.text) })
		}
		if i < 0 {
			problems = append(problems, fmt.Sprintf("not wanted: %s\n%s\n%s", d.Header(), d.Help, d.Reason))
			continue
		}
		expected[line] = slices.Delete(expected[line], i, i+1)
	}
	for line, ws := range expected {
		for _, w := range ws {
			problems = append(problems, fmt.Sprintf("%s:%d: not said: %s %q", file, line, w.code, w.text))
		}
	}
	return problems
}
