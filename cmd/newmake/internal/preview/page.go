// Package preview serves a sheet to the browsers of this machine, for the person
// who asked for it alone, and shows it anew whenever it changes.
package preview

import (
	"bytes"
	"crypto/sha256"
	"encoding/hex"
	"sync"

	"newmake/compile/plan"
	"newmake/compile/show/formats"
	"newmake/compile/show/sheet"
)

// Page is the sheet as it is served: the last good plan, and what is wrong with
// the text since.
type Page struct {
	mu      sync.Mutex
	plan    *plan.Plan
	trouble string
	html    []byte
	version string
	changed chan struct{} // closed when there is another version
}

// New makes a page with nothing on it yet.
func New() *Page { return &Page{changed: make(chan struct{})} }

// Show puts a good plan on the page.
func (p *Page) Show(good *plan.Plan) { p.set(func() { p.plan, p.trouble = good, "" }) }

// Problems says on the page what is wrong with the text; the last good plan stays.
func (p *Page) Problems(text string) { p.set(func() { p.trouble = text }) }

func (p *Page) set(change func()) {
	p.mu.Lock()
	defer p.mu.Unlock()
	change()
	p.version = ""
	sum := sha256.Sum256(p.make()) // the same content is the same version, also after a restart
	p.version = hex.EncodeToString(sum[:8])
	p.html = p.make()
	close(p.changed)
	p.changed = make(chan struct{})
}

func (p *Page) make() []byte {
	var out bytes.Buffer
	live := sheet.Live{Version: p.version, Problems: p.trouble}
	var err error
	if p.plan == nil {
		err = sheet.Broken(&out, live)
	} else {
		err = sheet.HTML(&out, p.plan, sheet.Options{Units: formats.UnitsOf(p.plan), Live: &live})
	}
	if err != nil {
		return []byte(err.Error())
	}
	return out.Bytes()
}

// state is what is shown now, and what will tell of the next.
func (p *Page) state() (html []byte, version string, changed <-chan struct{}) {
	p.mu.Lock()
	defer p.mu.Unlock()
	return p.html, p.version, p.changed
}
