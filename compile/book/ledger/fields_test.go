package ledger

import (
	"os"
	"reflect"
	"strings"
	"testing"

	"github.com/stretchr/testify/assert"
	"github.com/stretchr/testify/require"

	"newmake/lang/testflag"
)

// TestFields: what is said to stand in the ledger has a place in its JSON, what has none says
// where it is written, and the page is fresh.
func TestFields(t *testing.T) {
	for _, f := range fields {
		if f.at == "" {
			assert.NotEmpty(t, f.write, "%s, %s", f.section, f.wants)
			continue
		}
		assert.True(t, holds(reflect.TypeFor[Ledger](), strings.Split(f.at, ".")), "%s, %s: the ledger has no %s", f.section, f.wants, f.at)
	}
	if testflag.Update() {
		require.NoError(t, os.WriteFile("FIELDS.md", []byte(Fields()), 0o644))
	}
	was, err := os.ReadFile("FIELDS.md")
	require.NoError(t, err)
	assert.Equal(t, Fields(), string(was))
}

// holds says that a type has a way of names in its JSON.
func holds(in reflect.Type, way []string) bool {
	for in.Kind() == reflect.Slice || in.Kind() == reflect.Pointer {
		in = in.Elem()
	}
	if len(way) == 0 {
		return true
	}
	if in.Kind() != reflect.Struct {
		return false
	}
	for i := range in.NumField() {
		name, _, _ := strings.Cut(in.Field(i).Tag.Get("json"), ",")
		if name == way[0] {
			return holds(in.Field(i).Type, way[1:])
		}
	}
	return false
}
