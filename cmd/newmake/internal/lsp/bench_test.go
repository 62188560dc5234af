package lsp

import (
	"fmt"
	"os"
	"path/filepath"
	"strings"
	"testing"
	"time"

	"github.com/stretchr/testify/require"
)

// another is the text of the example's batch under another name.
func another(t testing.TB, path string, i int) string {
	_, batch, _ := strings.Cut(textOf(t, path), "\nbatch ")
	batch, _, _ = strings.Cut("batch "+batch, "\n# A variant")
	return strings.Replace(batch, `"Ferry Landing"`, fmt.Sprintf(`"Ferry Landing %d"`, i), 1)
}

// typing opens a file of 500 lines and more, of eight batches, and gives what types the
// next keystroke into it.
func typing(b *testing.B, capabilities object) (e *editor, uri string, keystroke func() (version int)) {
	path := filepath.Join(houseAt(b, "house"), "ferry-landing.batch")
	text := textOf(b, path)
	for i := 1; strings.Count(text, "\n") < 500; i++ {
		text += "\n" + another(b, path, i)
	}
	uri = uriOf(path)
	e = opened(b, capabilities)
	e.open(uri, text)
	e.until(uri, silent)
	typed := "# the oats go in cold"
	i := 0
	return e, uri, func() int {
		i++
		return e.change(uri, typed[:1+i%(len(typed)-1)]+"\n"+text)
	}
}

// BenchmarkTyping replays typing over the pipe: one keystroke, and the diagnostics of
// the text that it made.
func BenchmarkTyping(b *testing.B) {
	e, uri, keystroke := typing(b, object{})
	for b.Loop() {
		version := keystroke()
		e.until(uri, func(p publishParams) bool { return *p.Version == version })
	}
}

// BenchmarkPredictions: one keystroke, and the predictions beside the lines of all the
// batches of the file.
func BenchmarkPredictions(b *testing.B) {
	e, uri, keystroke := typing(b, object{})
	for b.Loop() {
		keystroke()
		get[[]inlayHint](e, "textDocument/inlayHint", whole(uri))
	}
}

// BenchmarkThousandBatches opens one file of a house that has a thousand batches beside
// it, one of them with a mistake: what is said of the file, then
// of the rest, and of the file again after a keystroke.
func BenchmarkThousandBatches(b *testing.B) {
	root := houseAt(b, "house")
	path := filepath.Join(root, "ferry-landing.batch")
	for i := range 1000 {
		text := strings.Replace(another(b, path, i), "45 min", fmt.Sprintf("%d min", 30+i%30), 1)
		if i == 999 {
			text = strings.Replace(text, "rest     20 min", "rest     20", 1)
		}
		require.NoError(b, os.WriteFile(filepath.Join(root, fmt.Sprintf("more-%03d.batch", i)), []byte(text), 0o644))
	}
	uri, last := uriOf(path), uriOf(filepath.Join(root, "more-999.batch"))
	var own, rest, key time.Duration
	for b.Loop() {
		e := opened(b, object{})
		began := time.Now()
		e.open(uri, textOf(b, path))
		e.until(uri, silent)
		own += time.Since(began)
		e.until(last, says("NM0303"))
		rest += time.Since(began)
		time.Sleep(3 * time.Second) // until the batches are computed
		typed := time.Now()
		version := e.change(uri, textOf(b, path)+"# more\n")
		e.until(uri, func(p publishParams) bool { return *p.Version == version })
		key += time.Since(typed)
		_, err := e.ask("shutdown", nil)
		require.NoError(b, err)
		e.notify("exit", nil)
		<-e.code
	}
	b.ReportMetric(float64(own.Milliseconds())/float64(b.N), "ms/file")
	b.ReportMetric(float64(rest.Milliseconds())/float64(b.N), "ms/rest")
	b.ReportMetric(float64(key.Milliseconds())/float64(b.N), "ms/key")
}
