package lsp

import (
	"fmt"
	"path/filepath"
	"strings"
	"testing"
)

// BenchmarkTyping replays typing over the pipe: one keystroke, and the diagnostics of
// the text that it made. The file has 500 lines and more, of eight batches.
func BenchmarkTyping(b *testing.B) {
	path := filepath.Join(houseAt(b, "house"), "ferry-landing.batch")
	text := textOf(b, path)
	for i := 1; strings.Count(text, "\n") < 500; i++ {
		_, batch, _ := strings.Cut(textOf(b, path), "\nbatch ")
		batch, _, _ = strings.Cut("batch "+batch, "\n# A variant")
		text += "\n" + strings.Replace(batch, `"Ferry Landing"`, fmt.Sprintf(`"Ferry Landing %d"`, i), 1)
	}
	uri := uriOf(path)
	e := opened(b, object{})
	e.open(uri, text)
	e.until(uri, silent)
	typed := "# the oats go in cold"
	for i := 0; b.Loop(); i++ {
		version := e.change(uri, typed[:1+i%(len(typed)-1)]+"\n"+text)
		e.until(uri, func(p publishParams) bool { return *p.Version == version })
	}
}
