package check_test

import (
	"testing"
	"testing/fstest"

	"github.com/stretchr/testify/require"

	"newmake/lang/check"
)

// TestPromisesWithin: what is promised lies between nothing and what can be, to the edge.
func TestPromisesWithin(t *testing.T) {
	for _, c := range []struct{ in, out string }{
		{"yield 0.1 LPA/t", "yield 0 LPA/t"},
		{"yield 719 LPA/t", "yield 721 LPA/t"}, // of pure starch, by stoichiometry
		{"hearts 0.1 gal", "hearts 0 gal"},
		{"hearts 100 % abv", "hearts 100.1 % abv"},
		{"hearts 0.1 LPA", "hearts -0.1 LPA"},
		{"hearts 0.1 proof-gal", "hearts 0 proof-gal"},
		{"wash 0.1 % abv", "wash 0 % abv"},
		{"leftover 0 gal", "leftover -0.1 gal"},
		{"casks 0", "casks -1"},
		{"original-gravity 1.199 SG", "original-gravity 1.201 SG"},
		{"final-gravity 0.901 SG", "final-gravity 0.899 SG"},
		{"mash 1 s", "mash 0 s"},
		{"dry 100 days", "dry 101 days"},
		{"hearts 40 gal within 0 gal", "hearts 40 gal within -1 gal"},
	} {
		said := func(promise string) bool {
			h, err := check.LoadFS(fstest.MapFS{"house.batch": &fstest.MapFile{Data: []byte(
				"newmake 1\n\nbatch \"A\" {\n  promise " + promise + "\n}\n")}}, "", check.Options{})
			require.NoError(t, err)
			for _, d := range h.Check() {
				if d.Code == "NM0407" {
					require.NotEmpty(t, d.Help)
					require.NotEmpty(t, d.Reason)
					return true
				}
			}
			return false
		}
		require.False(t, said(c.in), c.in)
		require.True(t, said(c.out), c.out)
	}
}
