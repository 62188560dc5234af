package main

import (
	"bytes"
	"context"
	"crypto/sha256"
	"encoding/hex"
	"errors"
	"fmt"
	"net/netip"
	"path/filepath"
	"strings"
	"sync"
	"time"

	"newmake/cmd/newmake/internal/serve"
	"newmake/compile/ask/compare"
	"newmake/compile/ask/recording"
	"newmake/compile/ask/review"
	"newmake/compile/ask/size"
	"newmake/compile/front"
	"newmake/compile/measure"
	"newmake/compile/show/formats"
	workpage "newmake/compile/show/page"
	"newmake/compile/show/sheet"
	"newmake/lang/diag"
)

// opened is what `plan --open` serves: the last good plan of a batch, and the run of
// its day. The page is made anew by whoever watches; readings come in from browsers.
type opened struct {
	app   *app
	watch *watching
	lan   netip.Addr // not valid: this machine alone
	root  string     // of the house
	key   string     // names what is served
	again chan struct{}

	mu    sync.Mutex
	view  workpage.View
	good  *front.Plan // that is shown
	shown serve.Shown
	next  chan struct{} // closed when there is another page

	writing sync.Mutex // a record is written by one at a time
}

func newOpened(a *app, w *watching, root string) (*opened, error) {
	o := &opened{app: a, watch: w, root: root, again: make(chan struct{}, 1), next: make(chan struct{})}
	if abs, err := filepath.Abs(root); err == nil {
		root = abs
	}
	o.key = root + "\x00" + w.flags.batch + "\x00" + w.flags.on
	if w.flags.lan == "" {
		return o, nil
	}
	var err error
	o.lan, err = serve.Private(w.flags.lan)
	return o, err
}

// serve shows the page to browsers until the context ends, and says where.
func (o *opened) serve(ctx context.Context) error {
	at, err := serve.Serve(ctx, o, serve.Options{LAN: o.lan, Key: o.key, Say: o.app.tell})
	if err != nil {
		return err
	}
	if at.Code == "" {
		o.app.say("the page is at %s for you alone, in a browser of this machine; Ctrl-C ends it", at.URL)
	} else {
		o.app.tell("the page is at %s for browsers of this network that are let in; Ctrl-C ends it", at.URL)
		o.app.tell("the code %s lets one browser in, within an hour", at.Code)
		o.app.tell("Who is in sees this batch, its plan and its run, and can open and fill in the run; nothing else\n" +
			"of the house can be read or written. It goes over the network unencrypted: who listens there\n" +
			"can read it, and do what a browser that was let in can do.")
	}
	if o.app.errTerminal {
		serve.Browse(at.Once)
	}
	return nil
}

// problems says on the page what is wrong with the text; the last good plan stays.
func (o *opened) problems(text string) {
	o.mu.Lock()
	defer o.mu.Unlock()
	o.view.Problems = strings.ReplaceAll(text, o.root+string(filepath.Separator), "") // where it lies on this machine is nobody's concern
	o.render()
}

// show puts a good plan on the page, with the run of its day as it stands.
func (o *opened) show(src *front.Source, made *front.Plan) {
	o.mu.Lock()
	defer o.mu.Unlock()
	u := formats.UnitsOf(made.Plan)
	v := workpage.View{Plan: made.Plan, Units: u, Exposed: o.lan.IsValid(), Saved: o.view.Saved}
	if was := o.good; was != nil {
		c := compare.Batches(compare.SideOf("before", was.Recipe, was.Batch.Diags), compare.SideOf("now", made.Recipe, made.Batch.Diags), compare.Options{Units: u, NoWhy: true})
		if !c.Same || len(c.Notes) > 0 {
			v.Saved = &workpage.Saved{At: time.Now(), What: c}
		}
	}
	v.Record, v.NoRecord = o.record(src, made, u)
	if v.Record != nil {
		v.Ahead = ahead(src, made, v.Record.Number, u)
	}
	slide, err := size.NewSlide(made.Recipe, u)
	if v.Slide = slide; err != nil {
		v.NoSlide = err.Error()
	}
	o.view, o.good = v, made
	o.render()
}

// render makes the page that is shown; o.mu is held.
func (o *opened) render() {
	var first, out, paper bytes.Buffer
	o.view.Version = ""
	err := workpage.HTML(&first, o.view)
	sum := sha256.Sum256(first.Bytes()) // the same content is the same version, also after a restart
	o.view.Version = hex.EncodeToString(sum[:8])
	if err = errors.Join(err, workpage.HTML(&out, o.view)); err != nil {
		out.Reset()
		fmt.Fprintln(&out, "the page cannot be made")
	}
	if p := o.view.Plan; p != nil {
		if err := sheet.HTML(&paper, p, sheet.Options{Units: o.view.Units, Stale: o.view.Problems != ""}); err != nil {
			paper.Reset()
		}
	}
	close(o.next)
	o.next = make(chan struct{})
	o.shown = serve.Shown{Page: out.Bytes(), Sheet: paper.Bytes(), Version: o.view.Version, Changed: o.next}
}

// Shown is the page as it is.
func (o *opened) Shown() serve.Shown {
	o.mu.Lock()
	defer o.mu.Unlock()
	return o.shown
}

// File is the page's style and its script.
func (o *opened) File(name string) (string, []byte, bool) { return workpage.Files(name) }

// record is the run of the plan's day, to be typed into; or why nothing can be.
func (o *opened) record(src *front.Source, made *front.Plan, u measure.Units) (*workpage.Record, string) {
	number := src.Opened(made.Batch)
	if number == "" {
		return nil, ""
	}
	p, err := o.read(src, number, u)
	if err != nil {
		return nil, "The record of run " + number + " can't be typed into: " + inWords(err)
	}
	return &workpage.Record{Number: number, File: inHouse(src, p.Name), Seen: mark(p.Text), Shown: p.Shown()}, ""
}

// read reads the run's text without a word in the terminal.
func (o *opened) read(src *front.Source, number string, u measure.Units) (*recording.Page, error) {
	quiet := *o.app
	quiet.quiet = true
	p, err := recordFlags{}.page(&quiet, src, number, &u)
	if err == nil && p.Diags.HasErrors() {
		return nil, p.Diags
	}
	return p, err
}

// ahead is the rest of a run, reckoned from what was read; nil where nothing tells of
// it.
func ahead(src *front.Source, made *front.Plan, number string, u measure.Units) *review.Ahead {
	run, _ := src.House.Run(number)
	if run == nil {
		return nil
	}
	a, err := review.Of(review.Question{Batch: made.Recipe, Run: run, Instrument: src.House.Instrument, Units: u})
	if err != nil {
		return nil
	}
	return a.Ahead
}

// mark tells a text from others.
func mark(text []byte) string {
	sum := sha256.Sum256(text)
	return hex.EncodeToString(sum[:12])
}

// inHouse is a file as it is called in its house.
func inHouse(src *front.Source, name string) string {
	if rel, err := filepath.Rel(src.House.Root, name); err == nil {
		return filepath.ToSlash(rel)
	}
	return filepath.Base(name)
}

// inWords is an error as one sentence for a screen.
func inWords(err error) string {
	if list, ok := err.(diag.List); ok {
		for _, d := range list {
			if d.Severity == diag.Error {
				return d.Summary
			}
		}
		return list.Counted()
	}
	return err.Error()
}

// fresh loads the house as it is now, with the plan that is shown and its run.
func (o *opened) fresh() (*front.Source, *front.Plan, measure.Units, error) {
	o.mu.Lock()
	made, u := o.good, o.view.Units
	o.mu.Unlock()
	if made == nil {
		return nil, nil, u, diag.Refuse("there is no plan yet")
	}
	src, err := o.app.load(o.watch.arg, "")
	return src, made, u, err
}

// anew has the page made again: it need not wait until the folder is looked at.
func (o *opened) anew() {
	select {
	case o.again <- struct{}{}:
	default:
	}
}

var _ serve.Site = (*opened)(nil)
