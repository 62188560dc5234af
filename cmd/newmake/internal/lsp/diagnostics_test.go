package lsp

import (
	"os"
	"path/filepath"
	"strings"
	"testing"

	"github.com/stretchr/testify/assert"
	"github.com/stretchr/testify/require"
)

// TestUnsavedIsTheTruth: what is typed in one file is said of another, with its places,
// and taken back when it is mended; when a file is closed the disk counts again.
func TestUnsavedIsTheTruth(t *testing.T) {
	root := houseAt(t, "house")
	house, batch := filepath.Join(root, "house.batch"), filepath.Join(root, "ferry-landing.batch")
	e := opened(t, object{})
	text := textOf(t, house)
	e.open(uriOf(house), text)
	e.until(uriOf(house), silent)
	version := e.change(uriOf(house), strings.Replace(text, `"Copper kettle"`, `"Iron kettle"`, 1))
	p := e.until(uriOf(batch), says("NM0201"))
	assert.Nil(t, p.Version, "it is not open")
	e.change(uriOf(house), text)
	e.until(uriOf(batch), silent)
	assert.Equal(t, 2, version)

	e.change(uriOf(house), strings.Replace(text, `"Copper kettle"`, `"Iron kettle"`, 1))
	e.until(uriOf(batch), says("NM0201"))
	e.notify("textDocument/didClose", object{"textDocument": object{"uri": uriOf(house)}})
	e.until(uriOf(batch), silent)
}

// TestVersion: what is published of an open text says of which version it is.
func TestVersion(t *testing.T) {
	root := houseAt(t, "house")
	path := filepath.Join(root, "ferry-landing.batch")
	uri, text := uriOf(path), textOf(t, path)
	e := opened(t, object{})
	e.open(uri, text)
	e.until(uri, silent)
	version := e.change(uri, strings.Replace(text, "corn             68 %", "corn             68", 1))
	p := e.until(uri, says("NM0303"))
	require.NotNil(t, p.Version)
	assert.Equal(t, version, *p.Version)
	for _, d := range p.Diagnostics {
		assert.Equal(t, "newmake", d.Source)
		assert.Contains(t, d.Message, "newmake explain "+d.Code)
	}
}

// TestComputed: what only computing shows comes too, and moves with its line while it
// is computed anew.
func TestComputed(t *testing.T) {
	root := houseAt(t, "house")
	path := filepath.Join(root, "ferry-landing.batch")
	uri := uriOf(path)
	text := strings.Replace(textOf(t, path), "promise  hearts 45 gal within 2 gal", "promise  hearts 90 gal within 2 gal", 1)
	e := opened(t, object{})
	e.open(uri, text)
	line := func(p publishParams) int {
		for _, d := range p.Diagnostics {
			if d.Code == "NM1250" {
				return d.Range.Start.Line
			}
		}
		return -1
	}
	first := line(e.until(uri, says("NM1250")))
	e.change(uri, "# one more\n"+text)
	assert.Equal(t, first+1, line(e.until(uri, func(publishParams) bool { return true })), "said at once, at its line")
	e.change(uri, textOf(t, path))
	e.until(uri, silent)
}

func TestRelated(t *testing.T) {
	root := houseAt(t, "house")
	path := filepath.Join(root, "ferry-landing.batch")
	uri := uriOf(path)
	e := opened(t, object{})
	e.open(uri, strings.Replace(textOf(t, path), `batch "Ferry Landing, more rye" from`, `batch "Toll Road" from`, 1))
	p := e.until(uri, func(p publishParams) bool {
		return len(p.Diagnostics) > 0 && len(p.Diagnostics[0].RelatedInformation) > 0
	})
	assert.Contains(t, p.Diagnostics[0].RelatedInformation[0].Location.URI, "toll-road.batch")
}

// TestWithoutHouse: a file that belongs to no house says so, until a house begins.
func TestWithoutHouse(t *testing.T) {
	root := houseAt(t, "house")
	house := textOf(t, filepath.Join(root, "house.batch"))
	require.NoError(t, os.Remove(filepath.Join(root, "house.batch")))
	path := filepath.Join(root, "ferry-landing.batch")
	e := opened(t, object{})
	e.open(uriOf(path), textOf(t, path))
	e.until(uriOf(path), says("NM0501"))
	e.open(uriOf(filepath.Join(root, "house.batch")), house) // not on the disk yet
	e.until(uriOf(path), silent)
}

// TestWatched: a file that another program changes is read again when the editor says so.
func TestWatched(t *testing.T) {
	root := houseAt(t, "house")
	house, batch := filepath.Join(root, "house.batch"), filepath.Join(root, "ferry-landing.batch")
	e := opened(t, object{"workspace": object{"didChangeWatchedFiles": object{"dynamicRegistration": true}}})
	assert.Equal(t, "client/registerCapability", <-e.told)
	e.open(uriOf(batch), textOf(t, batch))
	e.until(uriOf(batch), silent)
	require.NoError(t, os.WriteFile(house, []byte(strings.Replace(textOf(t, house), `"Copper kettle"`, `"Iron kettle"`, 1)), 0o644))
	e.notify("workspace/didChangeWatchedFiles", object{"changes": []object{{"uri": uriOf(house), "type": 2}}})
	e.until(uriOf(batch), says("NM0201"))
}
