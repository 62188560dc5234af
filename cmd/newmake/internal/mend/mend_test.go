package mend

import (
	"os"
	"path/filepath"
	"testing"

	"github.com/stretchr/testify/assert"
	"github.com/stretchr/testify/require"

	"newmake/compile/front"
)

// house is a folder with the example house, and one text more.
func house(t *testing.T, text string) (file string) {
	dir := t.TempDir()
	require.NoError(t, os.CopyFS(dir, os.DirFS("../../../../examples/lantern-hollow")))
	file = filepath.Join(dir, "slips.batch")
	require.NoError(t, os.WriteFile(file, []byte(text), 0o644))
	return file
}

// A byte order mark and line ends of CR LF stay, also where a fix adds a line.
func TestMarksOfAFileStay(t *testing.T) {
	file := house(t, "\xef\xbb\xbfbatch \"Slips\" from \"Toll Road\" {\r\n  mash {\r\n    replace rest 1 {\r\n      heat to 190 F for 20 min\r\n    }\r\n  }\r\n}\r\n")
	texts, err := Texts([]front.Place{{Path: file}})
	require.NoError(t, err)
	require.Len(t, texts, 1)
	assert.Equal(t, "\xef\xbb\xbfbatch \"Slips\" from \"Toll Road\" {\r\n  mash {\r\n    replace rest 1 {\r\n      heat to 190 F\r\n      rest 20 min\r\n    }\r\n  }\r\n}\r\n", string(texts[0].After))
	on, err := os.ReadFile(file)
	require.NoError(t, err)
	assert.Equal(t, string(on), string(texts[0].Before), "nothing was written")
}

// What one fix uncovers is mended too: the sign hides what the line says.
func TestWhatAFixUncovers(t *testing.T) {
	file := house(t, "batch \"Slips\" from \"Toll Road\" {\n  mash {\n    replace rest 1 { add 20 gal water @ 58 F }\n  }\n}\n")
	texts, err := Texts([]front.Place{{Path: file}, {Path: filepath.Dir(file)}})
	require.NoError(t, err)
	require.Len(t, texts, 1)
	assert.Len(t, texts[0].Changes, 2)
	assert.Equal(t, "batch \"Slips\" from \"Toll Road\" {\n  mash {\n    replace rest 1 { water 20 gal at 58 F }\n  }\n}\n", string(texts[0].After))
}

// A change is told in whole words.
func TestChangeInWords(t *testing.T) {
	for want, c := range map[string]Change{
		"a.batch:3: `76-87` is now `76..87`":                   {File: "a.batch", Line: 3, Was: "76-87", Now: "76..87"},
		"a.batch:3: put in `at`":                               {File: "a.batch", Line: 3, Now: "at"},
		"a.batch:3: took out `,`":                              {File: "a.batch", Line: 3, Was: ","},
		"a.batch:3: `x` is now `heat to 190 F`, `rest 20 min`": {File: "a.batch", Line: 3, Was: "x", Now: "heat to 190 F\n      rest 20 min"},
	} {
		assert.Equal(t, want, c.String())
	}
}
