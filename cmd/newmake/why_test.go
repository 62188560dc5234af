package main

import (
	"os"
	"path/filepath"
	"strings"
	"testing"

	"github.com/stretchr/testify/require"
)

// Every example of why's help stands in its script, where it is run.
func TestWhyExamplesAreRun(t *testing.T) {
	script, err := os.ReadFile(filepath.Join("..", "..", "testdata", "script", "why.txtar"))
	require.NoError(t, err)
	for _, line := range strings.Split(whyCommand(&app{}).Example, "\n") {
		require.Contains(t, string(script), "exec "+strings.ReplaceAll(strings.TrimSpace(line), `"`, "'")+"\n")
	}
}
