package check

import (
	"cmp"
	"reflect"
	"slices"
	"strings"
	"testing"
	"testing/fstest"

	gocmp "github.com/google/go-cmp/cmp"
	"github.com/google/go-cmp/cmp/cmpopts"
	"github.com/stretchr/testify/assert"
	"github.com/stretchr/testify/require"

	"newmake/lang/diag"
	"newmake/lang/learned"
	"newmake/lang/schema"
)

// TestEveryLineOfARecordIsRead: what a record, a season, what was learned or an entry of
// the books says is other without any one of its lines, each as its example has it.
func TestEveryLineOfARecordIsRead(t *testing.T) {
	cellar := func(h *House) any {
		c, _ := h.Inventory()
		return []any{c.Runs, c.Lives, c.Vats, c.Bottlings, c.Stores}
	}
	sorts := []struct {
		field *schema.Field
		read  func(*House) any
	}{
		{schema.Run, func(h *House) any { r, _ := h.Run("26-03"); return r }},
		{schema.Instrument, func(h *House) any { return h.Instrument("H3") }},
		{schema.OwnCask, cellar},
		{schema.Round, cellar},
		{schema.Vat, cellar},
		{schema.Bottling, cellar},
		{schema.Store, cellar},
		{schema.Tasting, func(h *House) any { all, _ := h.Tastings(); return all }},
		{schema.Trial, func(h *House) any { x, _ := h.Trial("More rye?"); return x }},
		{schema.Season, func(h *House) any { s, _ := h.Season("Spring"); return s }},
		{schema.Learned, func(h *House) any { l, _ := learned.Of(h.House, "Lantern Hollow"); return l }},
		{schema.Standard, func(h *House) any { return h.Library().Standards["one"] }},
		{schema.Country, func(h *House) any { return h.Library().Countries["one"] }},
		{schema.Aroma, func(h *House) any { return h.Library().Aromas["one"] }},
	}
	// Lines that bear on those below them have instruments of three sorts to name, and a cask.
	beside := map[bool]string{true: `
instrument H3 {
reads 0..250 F by 1 F
}
instrument P2 {
reads 0..200 proof by 1 proof
}
instrument "Floor scale" {
reads 0..1,000 lb by 1 lb
}
cask "LH-0011" {
to "Rack house"
}
`}
	tried := 0
	for _, s := range sorts {
		head := s.field.Example
		if slices.Contains(schema.Library, s.field) { // and not over an entry that says the same
			head = s.field.Name + " one"
		}
		read := func(body string) any {
			text := head + " {\n" + body + "}\n"
			h, err := LoadFS(fstest.MapFS{
				"house.batch": &fstest.MapFile{Data: []byte("plant \"Lantern Hollow\" {\nelevation 1,150 ft\nfermenter \"East\" {\nholds 540 gal\n}\n}\n" + beside[s.field != schema.Instrument])},
				"one.batch":   &fstest.MapFile{Data: []byte(text)},
			}, "", Options{})
			require.NoError(t, err)
			return s.read(h)
		}
		var try func(f *schema.Field, within func(string) string)
		try = func(f *schema.Field, within func(string) string) {
			var lines, below []string
			for _, l := range f.Block.Lines() {
				switch {
				case l.Name == "corrected": // it is of another line: package logbook tries it
				case l.Block != nil:
					try(l, func(body string) string { return within(l.Example + " {\n" + body + "}\n") })
					below = append(below, l.Example+" {", cmp.Or(l.Block.Any, l.Block.Fields[0]).Example, "}")
				case l.Name == "by" || l.Name == "with":
					lines = append([]string{l.Example}, lines...)
				case l == f.Block.Bare:
					lines = append(lines, "2026-03-05 10:04 "+l.Example)
				case l.Name == "method":
					lines = append(lines, "method paired") // which has an answer to expect
				default:
					lines = append(lines, l.Example)
				}
			}
			body := func(lines []string) string { return within(strings.Join(append(lines, below...), "\n") + "\n") }
			whole := read(body(lines))
			for i, line := range lines {
				without := read(body(slices.Delete(slices.Clone(lines), i, i+1)))
				same := gocmp.Equal(whole, without, cmpopts.IgnoreTypes(diag.Span{}), gocmp.Exporter(func(reflect.Type) bool { return true }))
				assert.False(t, same, "the line `%s` of %s in %s changes nothing that is read: read it in lang/logbook, lang/learned, or the package of its sort in lang/check/internal", line, cmp.Or(f.Name, "it"), s.field.Name)
				tried++
			}
		}
		try(s.field, func(body string) string { return body })
	}
	assert.Greater(t, tried, 120)
}
