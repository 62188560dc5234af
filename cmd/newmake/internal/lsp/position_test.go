package lsp

import (
	"testing"

	"github.com/stretchr/testify/assert"

	"newmake/lang/diag"
)

func TestPositions(t *testing.T) {
	src := diag.NewSource("a.batch", []byte("ab\r\n°𝛼x\rlast"))
	for _, c := range []struct {
		offset int
		utf16  position
		utf8   position
	}{
		{0, position{0, 0}, position{0, 0}},
		{2, position{0, 2}, position{0, 2}},
		{4, position{1, 0}, position{1, 0}},
		{6, position{1, 1}, position{1, 2}},
		{10, position{1, 3}, position{1, 6}},
		{11, position{1, 4}, position{1, 7}},
		{12, position{2, 0}, position{2, 0}},
		{16, position{2, 4}, position{2, 4}},
	} {
		assert.Equal(t, c.utf16, units{}.position(src, false, c.offset), c.offset)
		assert.Equal(t, c.utf8, units{utf8: true}.position(src, false, c.offset), c.offset)
		assert.Equal(t, c.offset, units{}.offset(src, false, c.utf16))
		assert.Equal(t, c.offset, units{utf8: true}.offset(src, false, c.utf8))
	}
	assert.Equal(t, 2, units{}.offset(src, false, position{0, 99}), "beyond a line is its end")
	assert.Equal(t, 16, units{}.offset(src, false, position{9, 0}), "beyond the text is its end")
	assert.Equal(t, 6, units{}.offset(src, false, position{1, 2}), "inside a character is its beginning")
	assert.Equal(t, 0, units{}.offset(src, false, position{-1, -1}))

	marked := diag.NewSource("a.batch", []byte("\uFEFFab\ncd"))
	assert.Equal(t, position{0, 1}, units{}.position(marked, true, 0))
	assert.Equal(t, position{0, 3}, units{utf8: true}.position(marked, true, 0))
	assert.Equal(t, position{1, 1}, units{}.position(marked, true, 4))
	assert.Equal(t, 1, units{}.offset(marked, true, position{0, 2}))
	assert.Equal(t, 0, units{}.offset(marked, true, position{0, 0}))
}

// FuzzPositions: there and back is the same place wherever a character begins, and no
// place is outside the text.
func FuzzPositions(f *testing.F) {
	f.Add([]byte("ab\r\n°𝛼x\rlast"), 3, 1, 2)
	f.Add([]byte("\uFEFF\xff\xfe\n\r\n"), 0, 0, 1)
	f.Fuzz(func(t *testing.T, text []byte, offset, line, column int) {
		src := diag.NewSource("a.batch", text)
		marked := len(src.Text) < len(text)
		for _, u := range []units{{}, {utf8: true}} {
			at := u.offset(src, marked, position{line, column})
			if at < 0 || at > len(src.Text) {
				t.Fatalf("%d:%d is at %d of %d", line, column, at, len(src.Text))
			}
			if again := u.offset(src, marked, u.position(src, marked, at)); again != at {
				t.Fatalf("%d:%d is at %d, and that at %d", line, column, at, again)
			}
			if p := u.position(src, marked, offset); p.Line < 0 || p.Character < 0 || p.Line >= src.Lines() {
				t.Fatalf("%d is at %v", offset, p)
			}
		}
	})
}

func TestURIs(t *testing.T) {
	for _, c := range []struct {
		uri     string
		windows bool
		path    string
		back    string
	}{
		{"file:///home/still/ferry%20landing.batch", false, "/home/still/ferry landing.batch", ""},
		{"file:///home/50%25%20rye%23/a.batch", false, "/home/50% rye#/a.batch", ""},
		{"file://localhost/home/a.batch", false, "/home/a.batch", "file:///home/a.batch"},
		{"file:///c%3A/still/a.batch", true, `C:\still\a.batch`, "file:///C:/still/a.batch"},
		{"file:///c:/still%20house/a.batch", true, `C:\still house\a.batch`, "file:///C:/still%20house/a.batch"},
		{"file:///D:/a.batch", true, `D:\a.batch`, ""},
		{"file://office/still/a.batch", true, `\\office\still\a.batch`, ""},
		{"untitled:Untitled-1", false, "", ""},
		{"https://example.org/a.batch", false, "", ""},
		{"file://office/still/a.batch", false, "", ""},
		{"file:///%zz", false, "", ""},
		{"", false, "", ""},
	} {
		path, ok := pathIn(c.uri, c.windows)
		assert.Equal(t, c.path, path, c.uri)
		assert.Equal(t, c.path != "", ok)
		if c.back == "" {
			c.back = c.uri
		}
		if ok {
			assert.Equal(t, c.back, uriIn(path, c.windows))
		}
	}
}
