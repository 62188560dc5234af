package tree

import (
	"strings"
	"testing"

	"github.com/stretchr/testify/assert"
	"github.com/stretchr/testify/require"

	"newmake/lang"
	"newmake/lang/diag"
	"newmake/lang/quantity"
	"newmake/lang/schema"
)

// items parses the items of one line.
func items(t *testing.T, line string) []lang.Item {
	t.Helper()
	f, list := lang.Parse(diag.NewSource("line", []byte(line)))
	require.Empty(t, list, line)
	require.Len(t, f.Stmts, 1, line)
	return f.Stmts[0].Items
}

// matchLine holds one line against a shape.
func matchLine(s *schema.Shape, items []lang.Item) (Match, bool) {
	m := new(matcher).line(s, items)
	return m, m.fits()
}

func TestMatchLine(t *testing.T) {
	for _, c := range []struct {
		Shape, line string
		fits        bool
		caps        string // slots in order
	}{
		{"VOLUME", "330 gal", true, "volume"},
		{"VOLUME", "330 lb", false, ""},
		{"VOLUME", "330", false, ""},
		{`VOLUME ["at" TEMP]`, "330 gal", true, "volume"},
		{`VOLUME ["at" TEMP]`, "330 gal at 58 F", true, "volume at temp"},
		{`VOLUME ["at" TEMP]`, "330 gal at", false, ""},
		{`VOLUME ["at" TEMP]`, "330 gal 58 F", false, ""},
		{`NAME ("," NAME)*`, `North, "South", East`, true, "name , name , name"},
		{`NAME ("," NAME)*`, "North South", false, ""},
		{"MASS|SHARE", "12 %", true, "share"},
		{"MASS|SHARE", "12 lb", true, "mass"},
		{"MASS|SHARE", "12 gal", false, ""},
		{`"from" a:TEMP "to" b:TEMP`, "from 1 C to 2 C", true, "from a to b"},
		{`"new"|"used"`, "used", true, "used"},
		{`"new"|"used"`, "old", false, ""},
		{"TEMP..TEMP", "78..88 F", true, "temp"},
		{"TEMP..TEMP", "78 F", false, ""},
		{"TEMP", "78..88 F", false, ""},
		{`("x" NUMBER [","])*`, "x 1, x 2", true, "x number , x number"},
		{`("x" NUMBER [","])*`, "x 1, x", false, ""},
		{"STRENGTH", "114 proof", true, "strength"},
		{"STRENGTH", "57 % abv", true, "strength"},
		{"STRENGTH", "57 %", false, ""},
		{"DATE [CLOCK]", "2026-03-03 07:00", true, "date clock"},
		{"QUANTITY", "34.6 kJ/mol", true, "quantity"},
		{"QUANTITY", "3", true, "quantity"},
	} {
		s := schema.MustCompile(c.Shape)
		m, ok := matchLine(s, items(t, c.line))
		assert.Equal(t, c.fits, ok, "%s against %s", c.line, c.Shape)
		if !ok || !c.fits {
			continue
		}
		var caps []string
		for _, k := range m.Caps {
			caps = append(caps, k.Slot)
		}
		assert.Equal(t, c.caps, strings.Join(caps, " "), "%s against %s", c.line, c.Shape)
	}
}

func TestMatchLineFurthest(t *testing.T) {
	for _, c := range []struct {
		Shape, line string
		far         int
		want        string
	}{
		{`VOLUME ["at" TEMP]`, "330 gal at 12 lb", 2, "a temperature"},
		{`VOLUME ["at" TEMP]`, "330 gal to", 1, "`at`"},
		{`MASS|SHARE|"rest"`, "warm", 0, "a weight, a share or `rest`"},
		{"VOLUME", "330 gal 12", 1, "the end of the line"},
		{`"from" TEMP "to" TEMP`, "from 1 C", 2, "`to`"},
	} {
		m, ok := matchLine(schema.MustCompile(c.Shape), items(t, c.line))
		require.False(t, ok)
		assert.Equal(t, c.far, m.miss.far, c.line)
		assert.Equal(t, c.want, wanted(m.miss.want, quantity.Both), c.line)
	}
}

// TestTable holds the table of the language to what it promises its readers.
func TestTable(t *testing.T) {
	var walk func(b *schema.Block, path string)
	one := func(f *schema.Field, path string) {
		path += " " + f.Name
		assert.NotEmpty(t, f.Doc, path)
		assert.True(t, strings.HasSuffix(f.Doc, "."), "%s: a doc is a sentence", path)
		require.NotEmpty(t, f.Example, path)
		line := items(t, f.Example)
		if f.Name != "" {
			assert.Equal(t, f.Name, line[0].Text, path)
			line = line[1:]
		}
		m, ok := matchLine(f.Pattern(), line)
		assert.True(t, ok, "%s: the example %q does not have the shape %s", path, f.Example, f.Shape)
		var said diag.List
		shaper{diags: &said}.limits(&Node{Field: f, Match: m})
		assert.Empty(t, said, "%s: the example %q breaks a limit", path, f.Example)
		for _, l := range f.Limits {
			assert.NotEmpty(t, l.Reason, path)
			assert.Less(t, l.Low, l.High, path)
		}
		assert.False(t, f.Key != "" && !f.Repeat, "%s: a key needs Repeat", path)
	}
	walk = func(b *schema.Block, path string) {
		for _, f := range b.Lines() {
			one(f, path)
			if f.Block != nil {
				walk(f.Block, path+" "+f.Name)
			}
		}
	}
	walk(schema.Language, "")
	for _, s := range schema.SlotTypes {
		_, ok := matchLine(schema.MustCompile(s.Name), items(t, "x "+s.Example)[1:])
		assert.True(t, ok, "%s: the example %q does not fit", s.Name, s.Example)
	}
}
