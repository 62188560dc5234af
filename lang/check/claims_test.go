package check

import (
	"testing"

	"github.com/stretchr/testify/assert"
	"github.com/stretchr/testify/require"

	"newmake/lang/diag"
)

// TestClaimInEitherFile: two runs that claim one vessel are told of whichever of their
// files is looked at, there; and of neither where another file is.
func TestClaimInEitherFile(t *testing.T) {
	run := func(number, from, to string) string {
		return "run \"" + number + "\" of \"Base\" on 2026-03-03 {\n  ferment in \"North\" {\n    tue " + from + " pump\n    " + to + " 1.000 SG\n  }\n}\n"
	}
	const other = "batch \"Small\" from \"Base\" {\n  units us\n}\n"
	at := func(to, looked string) diag.List {
		dir := onDisk(t, map[string]string{"first.batch": run("1", "12:00", to), "second.batch": run("2", "13:00", "14:00"), "other.batch": other})
		h, err := Load(dir, Options{})
		require.NoError(t, err)
		if looked == "" {
			return h.Check()
		}
		return h.CheckIn(dir + "/" + looked)
	}
	for file, number := range map[string]string{"first.batch": "2", "second.batch": "1"} {
		list := at("13:01", file)
		require.Len(t, list, 1, file)
		assert.Equal(t, diag.CodeClaim, list[0].Code)
		assert.Equal(t, "runs 1 and 2 are both in \"North\" from 2026-03-03 13:00 to 2026-03-03 13:01", list[0].Summary)
		assert.Contains(t, list[0].At.Src.Name, file)
		assert.Contains(t, list[0].Related[0].Text, "run "+number+" is in it")
		assert.NotContains(t, list[0].Related[0].At.Src.Name, file)
		assert.Empty(t, at("13:00", file), "one ends as the other begins")
	}
	assert.Empty(t, at("13:01", "other.batch"))
	assert.Len(t, at("13:01", ""), 1, "of the whole house once")
}
