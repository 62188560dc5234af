package check

import (
	"cmp"
	"fmt"
	"slices"
	"strings"
	"testing"
	"testing/fstest"

	gocmp "github.com/google/go-cmp/cmp"
	"github.com/google/go-cmp/cmp/cmpopts"
	"github.com/stretchr/testify/assert"
	"github.com/stretchr/testify/require"

	"newmake/lang/diag"
	"newmake/lang/schema"
)

// TestEveryLineIsRead: what a plant, a vessel, a tank or an entry of the library says is
// other without any one of its lines, each as its example has it.
func TestEveryLineIsRead(t *testing.T) {
	const entry, plant, vessel = "%s one {\n%s}\n", "%s \"One\" {\n%s}\n", "plant \"One\" {\n%s \"Two\" {\n%s}\n}\n"
	type sort struct {
		field *schema.Field
		text  string
		read  func(*House) any
	}
	thePlant := func(h *House) any { return h.plant(h.Plants[0]).Plant }
	sorts := []sort{
		{schema.Plant, plant, thePlant},
		{schema.Grain, entry, func(h *House) any { return h.Library().Grains["one"] }},
		{schema.Yeast, entry, func(h *House) any { return h.Library().Yeasts["one"] }},
		{schema.Enzyme, entry, func(h *House) any { return h.Library().Enzymes["one"] }},
		{schema.CaskWood, entry, func(h *House) any { return h.Library().Woods["one"] }},
	}
	for _, f := range schema.Plant.Block.Fields {
		if f.Repeat && f.Block != nil {
			sorts = append(sorts, sort{f, vessel, thePlant})
		}
	}
	// Of what the example says and holds without it, another.
	unusual := map[string]string{
		"climate temperate": "climate hot", "form dry": "form pressed", "viable 80 %": "viable 70 %", "growth-at 30 C": "growth-at 29 C",
		"ethanol-yield 98 %": "ethanol-yield 97 %", "soak 4 %": "soak 5 %",
	}
	tried := 0
	for _, s := range sorts {
		var lines []string
		for _, l := range s.field.Block.Fields {
			if !l.Repeat && l.Block == nil {
				lines = append(lines, cmp.Or(unusual[l.Example], l.Example))
			}
		}
		read := func(lines []string) any {
			text := fmt.Sprintf(s.text, s.field.Name, strings.Join(lines, "\n")+"\n")
			h, err := LoadFS(fstest.MapFS{"house.batch": &fstest.MapFile{Data: []byte(text)}}, "", Options{})
			require.NoError(t, err)
			return s.read(h)
		}
		whole := read(lines)
		for i, line := range lines {
			without := read(slices.Delete(slices.Clone(lines), i, i+1))
			same := gocmp.Equal(whole, without, cmpopts.IgnoreTypes(diag.Span{}, map[string]diag.Span{}, map[string]string{}))
			assert.False(t, same, "the line `%s` of %s changes nothing that is read: give it a row in lang/recipe/values_*.go, or read it in lang/check/internal/plants or entries", line, s.field.Name)
			tried++
		}
	}
	assert.Greater(t, tried, 80)
}
