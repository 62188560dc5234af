package schema

import (
	"fmt"
	"os"
	"strings"
	"testing"

	"github.com/stretchr/testify/assert"
	"github.com/stretchr/testify/require"

	"newmake/lang/testflag"
)

// Every limit of the language, to its last digit: the reference rounds them, and leaves
// those of promises out. One that is moved is seen here.
func TestLimitsAreHeld(t *testing.T) {
	var out strings.Builder
	write := func(path string, l Limit) {
		fmt.Fprintf(&out, "%s: %s", path, l.Severity)
		if l.Slot != "" {
			fmt.Fprintf(&out, " %s", l.Slot)
		}
		if l.Kind != 0 {
			fmt.Fprintf(&out, " (%s)", l.Kind)
		}
		fmt.Fprintf(&out, " %v to %v\n", l.Low, l.High)
	}
	seen := map[*Field]bool{}
	var walk func(b *Block, in string)
	walk = func(b *Block, in string) {
		for _, f := range b.Lines() {
			if seen[f] {
				continue
			}
			seen[f] = true
			path := strings.TrimSpace(in + " " + f.Name)
			for _, l := range f.Limits {
				write(path, l)
			}
			if f.Block != nil {
				walk(f.Block, path)
			}
		}
	}
	walk(Language, "")
	for _, p := range Promises {
		for _, k := range p.Kinds {
			write("promise "+p.What, p.Within(k))
		}
	}
	const golden = "testdata/limits.txt"
	if testflag.Update() {
		require.NoError(t, os.WriteFile(golden, []byte(out.String()), 0o666))
	}
	want, err := os.ReadFile(golden)
	require.NoError(t, err)
	assert.Equal(t, string(want), out.String())
}
