package main

import (
	"bytes"
	"strings"
	"testing"

	"github.com/stretchr/testify/assert"
	"github.com/stretchr/testify/require"
)

// TestFormatsAreCompleted: a shell offers the formats that a command has.
func TestFormatsAreCompleted(t *testing.T) {
	for _, name := range []string{"explain", "size", "why", "odds", "fmt", "gauge", "library", "check", "diff", "plan"} {
		var o, e bytes.Buffer
		a := &app{in: strings.NewReader(""), out: &o, err: &e, env: func(string) string { return "" }}
		require.Equal(t, exitOK, run(a, []string{"__complete", name, "--format", ""}), name)
		assert.Contains(t, o.String(), "text\n", name)
		assert.Contains(t, o.String(), "json\n", name)
	}
}
