package main

import (
	"os"
	"os/exec"
	"regexp"
	"strings"
	"testing"

	"github.com/stretchr/testify/assert"
	"github.com/stretchr/testify/require"
)

// own are the files of the site that are written here, and not built from elsewhere.
func own(t *testing.T) map[string]string {
	t.Helper()
	listed, err := site.ReadDir("site")
	require.NoError(t, err)
	out := map[string]string{}
	for _, e := range listed {
		text, err := site.ReadFile("site/" + e.Name())
		require.NoError(t, err)
		if !strings.HasPrefix(e.Name(), "codemirror") {
			out[e.Name()] = string(text)
		}
	}
	return out
}

// TestSite: the page is made of its own files, and no text becomes a part of it.
func TestSite(t *testing.T) {
	for name, text := range own(t) {
		text = strings.ReplaceAll(text, `xmlns="http://www.w3.org/2000/svg"`, "")
		for _, word := range []string{"http://", "https://", "@import", "eval(", "innerHTML", "outerHTML", "insertAdjacentHTML", "document.write", "new Function"} {
			assert.NotContains(t, text, word, name)
		}
	}
	page := own(t)["index.html"]
	policy := regexp.MustCompile(`http-equiv="Content-Security-Policy" content="([^"]*)"`).FindStringSubmatch(page)
	require.NotNil(t, policy)
	assert.Contains(t, policy[1], "default-src 'none'")
	assert.NotContains(t, policy[1], "unsafe-inline")
	assert.NotContains(t, policy[1], "'unsafe-eval'")
	assert.NotRegexp(t, `<style|\sstyle=|\son[a-z]+=|<script(?: type="module" src="page.js")?>[^<]`, page)
}

// TestListForWorker: the worker keeps every file, and a change in any is a new version.
func TestListForWorker(t *testing.T) {
	made := func(a string) (string, error) {
		files := map[string][]byte{"a.js": []byte(a), "b.js": []byte("b"), "service-worker.js": []byte(own(t)["service-worker.js"])}
		err := listForWorker(files)
		return string(files["service-worker.js"]), err
	}
	first, err := made("a")
	require.NoError(t, err)
	assert.Contains(t, first, `"files":["./","a.js","b.js"]`)
	again, _ := made("a")
	assert.Equal(t, first, again)
	other, _ := made("A")
	assert.NotEqual(t, first, other)
	assert.Error(t, listForWorker(map[string][]byte{"service-worker.js": []byte("x")}))
}

// TestPack: the same bytes each time, with no clock in them.
func TestPack(t *testing.T) {
	a, err := pack([]byte("text"))
	require.NoError(t, err)
	b, _ := pack([]byte("text"))
	assert.Equal(t, a, b)
	assert.Equal(t, []byte{0, 0, 0, 0}, a[4:8], "the time")
}

// TestExamples: the page brings the example houses whole.
func TestExamples(t *testing.T) {
	root, err := moduleRoot()
	require.NoError(t, err)
	text, err := examples(root)
	require.NoError(t, err)
	for _, want := range []string{`"lantern-hollow":{`, `"herring-stair":{`, `"house.batch":`, `"runs/`} {
		assert.Contains(t, string(text), want)
	}
}

// TestEngineIsSmall: what would make it large is not linked. A look-up of methods by name,
// as html/template does it, keeps every method of every type.
func TestEngineIsSmall(t *testing.T) {
	cmd := exec.Command("go", "list", "-deps", "./wasm")
	cmd.Env = append(os.Environ(), "GOOS=js", "GOARCH=wasm")
	out, err := cmd.Output()
	require.NoError(t, err)
	linked := strings.Fields(string(out))
	require.Contains(t, linked, "newmake/editors/page/engine")
	for _, large := range []string{"html/template", "text/template", "net/http", "crypto/rand", "math/big", "github.com/spf13/cobra", "gonum.org/v1/gonum/mat"} {
		assert.NotContains(t, linked, large)
	}
}
