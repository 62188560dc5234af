package main

import (
	"bytes"
	"strings"
	"testing"

	"github.com/stretchr/testify/assert"
	"github.com/stretchr/testify/require"
)

// TestGaugeExamples runs every example of the command's help: each is answered,
// and says nothing but the answer.
func TestGaugeExamples(t *testing.T) {
	examples := strings.Split(gaugeCommand(&app{}).Example, "\n")
	require.Greater(t, len(examples), 5)
	for _, line := range examples {
		args, ok := ours(strings.TrimSpace(line))
		require.True(t, ok, line)
		var out, said bytes.Buffer
		a := &app{in: strings.NewReader(""), out: &out, err: &said, env: func(string) string { return "" }}
		assert.Equal(t, exitOK, run(a, args), "%s: %s", line, said.String())
		assert.Empty(t, said.String(), line)
		assert.Contains(t, out.String(), "\n1. ", line)
	}
}
