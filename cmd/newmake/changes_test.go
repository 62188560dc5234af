package main

import (
	"strings"
	"testing"

	"github.com/stretchr/testify/assert"
)

// TestChanges: what changed is told in the columns of a terminal, and every command
// is told of since it has been there.
func TestChanges(t *testing.T) {
	for _, line := range strings.Split(changes, "\n") {
		assert.LessOrEqual(t, len([]rune(line)), 80, line)
		assert.Equal(t, strings.TrimRight(line, " \t"), line)
	}
	for _, cmd := range root(terminal()).Commands() {
		if name := cmd.Name(); name != "version" {
			told := strings.Contains(changes, "\n  "+name+" ")
			assert.True(t, told, "changes.txt does not tell of the command %s: a line that begins with its name", name)
		}
	}
}
