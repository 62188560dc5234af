package main

import (
	"bytes"
	"encoding/json"
	"flag"
	"fmt"
	"hash/fnv"
	"maps"
	"math"
	"os"
	"path/filepath"
	"reflect"
	"runtime"
	"runtime/debug"
	"slices"
	"strings"
	"sync"
	"sync/atomic"
	"testing"
	"time"
	"unicode"
	"unicode/utf8"

	"github.com/stretchr/testify/require"

	"newmake/cmd/newmake/internal/layout"
	"newmake/compile"
	"newmake/compile/ask/compare"
	"newmake/compile/front"
	"newmake/compile/measure"
	"newmake/compile/plan"
	"newmake/compile/show/csv"
	"newmake/compile/show/diff"
	"newmake/compile/show/formats"
	"newmake/lang"
	"newmake/lang/check"
	"newmake/lang/diag"
	"newmake/lang/recipe"
)

var (
	housesFlag = flag.Int("houses", 20, "how many mutated houses to try")
	firstHouse = flag.Uint64("first", 0, "the number of the first of them: -houses 1 -first 4711 tries one again")
)

// TestMutatedHouses: whatever is done to a house, it is read, checked, planned,
// rendered, laid out, compared with what it was and sized without a fault.
// House n is the same house on every machine.
func TestMutatedHouses(t *testing.T) {
	t.Setenv("TMPDIR", t.TempDir())                   // where reports of faults go
	defer debug.SetGCPercent(debug.SetGCPercent(400)) // much is made, and little kept
	var before runtime.MemStats                       // what other tests have taken
	runtime.ReadMemStats(&before)
	houses := soundHouses(t)
	words := vocabularyOf(houses)
	var next atomic.Uint64
	var read, planned atomic.Int64
	var mu sync.Mutex
	failures := 0
	var all sync.WaitGroup
	for range runtime.GOMAXPROCS(0) {
		b := newBench(t, houses)
		all.Go(func() {
			for i := next.Add(1) - 1; i < uint64(*housesFlag); i = next.Add(1) - 1 {
				seed := *firstHouse + i
				m := breed(houses, words, drawn(seed), func() bool { return true })
				stop := watched(seed, m)
				faults := b.try(seed, m)
				stop()
				if b.read {
					read.Add(1)
				}
				if b.planned {
					planned.Add(1)
				}
				if len(faults) == 0 {
					continue
				}
				mu.Lock()
				if failures++; failures <= mostShown {
					t.Errorf("house %d, bred from %s:\n%s\n%s", seed, m.parent.name, strings.Join(faults, "\n"), m.changes())
				}
				mu.Unlock()
			}
		})
	}
	all.Wait()
	t.Logf("%d houses, %d read without error, %d planned, %d with faults", *housesFlag, read.Load(), planned.Load(), failures)
	var memory runtime.MemStats
	runtime.ReadMemStats(&memory)
	require.Less(t, memory.Sys-before.Sys, uint64(mostMemory), "bytes asked of the system, at most")
	if *housesFlag >= 100 { // or else it is the checker alone that is tried
		require.Greater(t, planned.Load(), int64(*housesFlag/5), "houses that could be planned")
	}
}

// mostMemory is what all houses that are tried side by side may take together:
// several times what they do take.
const mostMemory = 1 << 30

// mostShown is how many faulty houses are shown in full.
const mostShown = 12

// FuzzHouse is TestMutatedHouses with the changes drawn from bytes. What a house
// takes is not worth making shorter: go test ./cmd/newmake -run XXX -fuzz FuzzHouse
// -fuzzminimizetime 1x.
func FuzzHouse(f *testing.F) {
	houses := soundHouses(f)
	words := vocabularyOf(houses)
	for i := range houses { // which house, how many changes, and then where and what
		f.Add([]byte{0, byte(i), 0, 0, 0, 1, 0, 0, 0, 0, 0, 7, 0, 3})
	}
	f.Setenv("TMPDIR", f.TempDir())
	b := newBench(f, houses)
	f.Fuzz(func(t *testing.T, data []byte) {
		d, left := drawnFrom(data)
		m := breed(houses, words, d, func() bool { return left() > 0 })
		turn := fnv.New64a() // which of the questions that are asked by turns
		turn.Write(data)
		if faults := b.try(turn.Sum64(), m); len(faults) > 0 {
			t.Fatalf("bred from %s:\n%s\n%s", m.parent.name, strings.Join(faults, "\n"), m.changes())
		}
	})
}

// longest is far more than any house may take, on the slowest machine: what is
// still at work then would never end.
const longest = time.Minute

// watched ends the tests, with the stacks of all that is at work, if a house does
// not come to an end.
func watched(seed uint64, m mutant) (stop func()) {
	w := time.AfterFunc(longest, func() {
		debug.SetTraceback("all")
		panic(fmt.Sprintf("house %d, bred from %s, is still at work after %s:\n%s", seed, m.parent.name, longest, m.changes()))
	})
	return func() { w.Stop() }
}

// changes shows the files of a mutant that differ from its parent's.
func (m mutant) changes() string {
	var b strings.Builder
	for _, name := range m.changed {
		fmt.Fprint(&b, difference(m.parent.files[name], m.files[name], name))
	}
	return b.String()
}

// bench is where houses are tried, one after the other: a folder for each parent,
// in which only what differs is written, and the parent itself, loaded once.
type bench struct {
	parents map[string]*bred
	memo    *compile.Memo
	tried   int

	read, planned bool     // of the last house
	faults        []string // of it
}

// bred is a parent with the folder of its children.
type bred struct {
	folder string
	files  texts // as they stand there
	sound  *check.House
}

func newBench(t testing.TB, houses []sound) *bench {
	b := &bench{parents: map[string]*bred{}}
	for _, h := range houses {
		p := &bred{folder: t.TempDir(), files: texts{}}
		require.NoError(t, os.Mkdir(filepath.Join(p.folder, "library"), 0o755))
		p.write(h.files)
		var err error
		p.sound, err = check.Load(p.folder, check.Options{})
		require.NoError(t, err, h.name)
		require.False(t, p.sound.Check().HasErrors(), "%s: %v", h.name, p.sound.Check())
		b.parents[h.name] = p
	}
	return b
}

// write brings the folder to some texts.
func (p *bred) write(files texts) {
	for _, name := range files.names() {
		if old, there := p.files[name]; !there || old != files[name] {
			if err := os.WriteFile(filepath.Join(p.folder, filepath.FromSlash(name)), []byte(files[name]), 0o644); err != nil {
				panic(err)
			}
			p.files[name] = files[name]
		}
	}
}

func (b *bench) fault(format string, args ...any) {
	b.faults = append(b.faults, fmt.Sprintf(format, args...))
}

// rarely is how many houses go by before the dearer questions are asked again.
const rarely = 60

// try asks everything of one house and gives what came of it that may not.
func (b *bench) try(seed uint64, m mutant) (faults []string) {
	b.read, b.planned, b.faults = false, false, nil
	defer func() {
		if fault := recover(); fault != nil {
			b.fault("panic: %v\n%s", fault, debug.Stack())
		}
		faults = b.faults
	}()
	if b.tried++; b.tried%64 == 1 {
		b.memo = &compile.Memo{} // which else would keep every house there was
	}
	p := b.parents[m.parent.name]
	p.write(m.files)
	tidy := b.tidy(m)
	h := b.load(p.folder, nil)
	if h == nil {
		return nil
	}
	list := h.Check()
	b.said(list)
	b.read = !list.HasErrors()
	if tidy != nil {
		b.sameMeaning(h, list, b.load(p.folder, tidy))
	}
	path := filepath.Join(p.folder, asked(m, h, p.folder, seed))
	b.planAndCheck(h, p, path, seed)
	if seed%rarely == 0 {
		b.commands(path)
	}
	return nil
}

// asked is the file whose batches are planned: one that was changed, if it has
// any, and else one of the house's by turns.
func asked(m mutant, h *check.House, folder string, seed uint64) string {
	var with []string
	for _, name := range m.files.names() {
		if len(h.BatchesIn(filepath.Join(folder, name))) > 0 {
			with = append(with, name)
		}
	}
	for _, name := range m.changed {
		if slices.Contains(with, name) {
			return name
		}
	}
	if len(with) == 0 {
		return m.files.names()[0]
	}
	return with[int(seed%uint64(len(with)))]
}

// load reads the house, with texts in place of the files if there are any.
func (b *bench) load(folder string, instead texts) *check.House {
	o := check.Options{Overlay: map[string][]byte{}}
	for name, text := range instead {
		o.Overlay[filepath.Join(folder, filepath.FromSlash(name))] = []byte(text)
	}
	h, err := check.Load(folder, o)
	if list, ok := err.(diag.List); ok && list.HasErrors() {
		b.said(list)
		return nil
	}
	if err != nil {
		b.fault("load: %v", err)
		return nil
	}
	return h
}

// tidy lays out what was changed. It gives nil if nothing could be, or all was.
func (b *bench) tidy(m mutant) texts {
	var out texts
	for _, name := range m.changed {
		text := m.files[name]
		laid, list := lang.Format(diag.NewSource(name, []byte(text)))
		if laid == nil {
			if !list.HasErrors() {
				b.fault("fmt %s: refused without an error", name)
			}
			for _, d := range list {
				if d.Code == diag.CodeNotLaidOut {
					b.fault("fmt %s: %s", name, d.Summary)
				}
			}
			continue
		}
		again, _ := lang.Format(diag.NewSource(name, laid))
		if !bytes.Equal(laid, again) {
			b.fault("fmt %s: laid out again it is another text:\n%s", name, difference(string(laid), string(again), name))
		}
		if string(laid) != text {
			if out == nil {
				out = texts{}
			}
			out[name] = string(laid)
		}
	}
	return out
}

// sameMeaning holds that a house says and means the same when it is laid out.
func (b *bench) sameMeaning(h *check.House, list diag.List, tidy *check.House) {
	if tidy == nil {
		b.fault("fmt: the house is not read any more")
		return
	}
	after := tidy.Check()
	said := func(list diag.List) (all []string) {
		for _, d := range list {
			all = append(all, string(d.Code)+" "+strings.ReplaceAll(d.Summary, " ", ""))
		}
		slices.Sort(all)
		return all
	}
	if x, y := said(list), said(after); !slices.Equal(x, y) {
		b.fault("fmt: what is said of the house has changed:\n%s", difference(strings.Join(x, "\n"), strings.Join(y, "\n"), "said"))
	}
	for _, name := range h.Batches() {
		x, _ := h.Batch(name)
		y, _ := tidy.Batch(name)
		if (x == nil) != (y == nil) {
			b.fault("fmt: %q is a recipe only before or after", name)
		}
		if x != nil && y != nil && !sameRecipe(x, y) {
			b.fault("fmt: %q means something else", name)
		}
	}
}

// sameRecipe compares two recipes but for the places they stand at.
func sameRecipe(x, y *recipe.Batch) bool {
	return sameValue(reflect.ValueOf(x), reflect.ValueOf(y))
}

// planAndCheck plans the batches of a file and renders what comes of it, and
// holds that check says of the file what stops a plan.
func (b *bench) planAndCheck(h *check.House, p *bred, path string, seed uint64) {
	work, err := front.NewCheck([]front.Place{{Path: path}})
	if err != nil {
		b.fault("check: %v", err)
		return
	}
	checked := work.Run()
	b.said(checked)
	src := &front.Source{House: h, Path: path, Label: path}
	names := h.BatchesIn(path)
	stopped, tried := map[string]bool{}, names
	if len(names) > 3 {
		tried = names[:3]
	}
	for _, name := range tried {
		made, err := src.Plan(name, nil)
		if err != nil {
			b.fault("plan %s: %v", name, err)
			continue
		}
		pl, list := made.Plan, made.Diags
		b.said(list)
		stopped[name] = list.HasErrors()
		switch {
		case pl == nil && !list.HasErrors():
			b.fault("plan %s: there is none, and no word why", name)
		case list.HasErrors() && !checked.HasErrors():
			b.fault("plan %s stops, and check has nothing against it: %v", name, list)
		case pl != nil && !front.Broken(list):
			b.planned = true
			b.render(pl, seed)
			b.compareWithParent(h, p, name, seed)
		}
		for _, d := range list {
			if d.Severity == diag.Error && !slices.ContainsFunc(checked, func(c diag.Diagnostic) bool { return c.Code == d.Code && samePlace(c.At, d.At) }) {
				b.fault("plan %s says what check does not: %s %s", name, d.Code, d.Summary)
			}
		}
	}
	for _, d := range checked {
		if name := batchAt(h, path, d); d.Severity == diag.Error && slices.Contains(tried, name) && !stopped[name] && !saidOfAnother(h, name, d) {
			b.fault("check has an error in %q, and plan does not stop: %s %s", name, d.Code, d.Summary)
		}
	}
}

// saidOfAnother reports whether a diagnostic is of another batch than the one it stands
// in: of a variant, which has the line from it.
func saidOfAnother(h *check.House, name string, d diag.Diagnostic) bool {
	return slices.ContainsFunc(h.Batches(), func(other string) bool {
		_, list := h.Batch(other)
		return other != name && slices.ContainsFunc(list, func(o diag.Diagnostic) bool { return o.Code == d.Code && samePlace(o.At, d.At) })
	})
}

// samePlace compares places of a house that was loaded twice.
func samePlace(x, y diag.Span) bool {
	return x.Start == y.Start && x.End == y.End && (x.Src == nil) == (y.Src == nil) && (x.Src == nil || x.Src.Name == y.Src.Name)
}

// batchAt is the batch of a file that a diagnostic is of: the one whose name it
// says, or the one in whose text it stands; "" if there is none.
func batchAt(h *check.House, path string, d diag.Diagnostic) string {
	for _, name := range h.Batches() {
		if strings.HasPrefix(d.Summary, name+": ") {
			return name
		}
	}
	for _, name := range h.BatchesIn(path) {
		r, _ := h.Batch(name)
		if r == nil || d.At.Src == nil {
			continue
		}
		for _, f := range h.FilesIn(path) {
			for _, s := range f.Syntax().Stmts {
				head := r.Where[recipe.PathBatch]
				if f.Source == head.Src && f.Source.Name == d.At.Src.Name && s.Block != nil && s.At.Start <= head.Start && head.Start < s.Block.At.End &&
					s.At.Start <= d.At.Start && d.At.Start < s.Block.At.End {
					return name
				}
			}
		}
	}
	return ""
}

// render writes a plan in every format.
func (b *bench) render(p *plan.Plan, seed uint64) {
	if seed%4 == 3 {
		c := *p
		c.Batch.Units = map[string]string{"us": "si", "si": "us"}[p.Batch.Units]
		p = &c
	}
	for _, f := range formats.OfPlan {
		tables := []string{""}
		if f.Name == "csv" {
			tables = csv.Tables[int(seed%uint64(len(csv.Tables))):][:1] // by turns
		}
		for _, table := range tables {
			out, err := formats.Plan(p, f.Name, formats.Options{Table: table})
			if err != nil {
				b.fault("%s %s: %v", f.Name, table, err)
				continue
			}
			b.fit(strings.TrimSpace(f.Name+" "+table), out)
			if f.Name == "json" && !json.Valid(out) {
				b.fault("json: it is none")
			}
		}
	}
}

// compareWithParent compares a batch with the one it was.
func (b *bench) compareWithParent(h *check.House, p *bred, name string, seed uint64) {
	was, listWas := p.sound.Batch(name)
	is, list := h.Batch(name)
	if was == nil || is == nil {
		return
	}
	doc := compare.NewDocument()
	doc.Pairs = append(doc.Pairs, compare.Batches(compare.SideOf("old", was, listWas), compare.SideOf("new", is, list),
		compare.Options{Units: unitsOf(is), NoWhy: seed%8 != 0, Memo: b.memo}))
	for _, w := range formats.OfComparison {
		out, err := formats.Comparison(doc, w.Name, diff.Options{AllWhy: true})
		if err != nil {
			b.fault("diff as %s: %v", w.Name, err)
		}
		b.fit("diff as "+w.Name, out)
	}
}

func unitsOf(b *recipe.Batch) measure.Units {
	if b.Units == recipe.SI {
		return measure.SI
	}
	return measure.US
}

// commands runs the program itself on the house.
func (b *bench) commands(path string) {
	for _, args := range [][]string{
		{"check", filepath.Dir(path), "--format", "json"},
		{"plan", path}, {"plan", path, "--variants"}, {"plan", path, "--try", "bill.rye=14 %"},
		{"size", path, "--casks", "2"}, {"size", path, "--cut", "hearts", "--proof", "140"},
		{"why", path, "hearts"}, {"odds", path, "--draws", "50"}, {"fmt", path, "--diff"},
	} {
		code, out, said := command(args...)
		if code != exitOK && code != exitError && code != exitUsage {
			b.fault("%v ends with %d: %s", args, code, said)
		}
		b.fit(strings.Join(args, " "), []byte(said))
		if args[0] != "fmt" { // which gives the text as it is
			b.fit(strings.Join(args, " "), []byte(out))
		}
	}
}

// said holds that diagnostics can be shown, and say something of a place that is
// there.
func (b *bench) said(list diag.List) {
	for _, d := range list {
		if _, known := diag.Lookup(d.Code); !known || d.Summary == "" {
			b.fault("a diagnostic without a code or words: %q %q", d.Code, d.Summary)
		}
		if at := d.At; at.Src != nil && !(0 <= at.Start && at.Start <= at.End && at.End <= len(at.Src.Text)) {
			b.fault("%s is said of %d..%d, of %d", d.Code, at.Start, at.End, len(at.Src.Text))
		}
	}
	var out bytes.Buffer
	if err := diag.Render(&out, list, diag.Options{}); err != nil {
		b.fault("diagnostics: %v", err)
	}
	words := make([]string, len(list))
	for i, d := range list {
		words[i] = d.Summary + " " + d.Help
	}
	b.fit("diagnostics", out.Bytes())
	b.numbers("diagnostics", strings.Join(words, "\n"))
}

// mostWritten is more than any page of a house of this size may come to.
const mostWritten = 4 << 20

// What no number is written as, and what Go writes where a word is missing.
var (
	noNumbers = []string{"NaN", "nan", "Inf", "inf", "Infinity", "\u221e"}
	foreign   = []string{"%!", "<nil>", "0xc0"}
)

// fit holds that what is written can be read: text, of a size, with numbers in it
// that are numbers.
func (b *bench) fit(what string, out []byte) {
	text := string(out)
	if len(out) > mostWritten {
		b.fault("%s: %d bytes", what, len(out))
	}
	if !utf8.ValidString(text) {
		b.fault("%s: it is not UTF-8", what)
	}
	if i := bytes.IndexFunc(out, control); i >= 0 {
		b.fault("%s: a control character: %q", what, around(text, i))
	}
	for _, f := range foreign {
		if i := strings.Index(text, f); i >= 0 {
			b.fault("%s: %q", what, around(text, i))
		}
	}
	if !strings.HasPrefix(what, "diagnostics") && !strings.Contains(what, "/") { // those show the text as it was written
		b.numbers(what, text)
	}
}

func control(r rune) bool {
	return r < ' ' && r != '\n' && r != '\r' && r != '\t' || r == 0x7f || r == 0x202e
}

// numbers holds that no number of a text is none.
func (b *bench) numbers(what, text string) {
	for _, n := range noNumbers {
		for from := 0; ; from++ {
			i := strings.Index(text[from:], n)
			if i < 0 {
				break
			}
			from += i
			before, _ := utf8.DecodeLastRuneInString(text[:from])
			after, _ := utf8.DecodeRuneInString(text[from+len(n):])
			if !unicode.IsLetter(before) && !unicode.IsLetter(after) && !strings.ContainsRune("`\"'-", before) {
				b.fault("%s: no number: %q", what, around(text, from))
			}
		}
	}
}

func around(text string, at int) string { return text[max(0, at-60):min(len(text), at+60)] }

// sameValue compares two values field by field, but for places in a text and
// what is not a number in either.
func sameValue(x, y reflect.Value) bool {
	if x.IsValid() != y.IsValid() {
		return false
	}
	if !x.IsValid() || x.Type() == reflect.TypeFor[diag.Span]() || x.Type() == reflect.TypeFor[*diag.Source]() {
		return true
	}
	switch x.Kind() {
	case reflect.Pointer, reflect.Interface:
		if x.IsNil() || y.IsNil() {
			return x.IsNil() == y.IsNil()
		}
		return x.Kind() == reflect.Pointer && x.Pointer() == y.Pointer() || sameValue(x.Elem(), y.Elem())
	case reflect.Struct:
		for i := range x.NumField() {
			if !sameValue(x.Field(i), y.Field(i)) {
				return false
			}
		}
		return true
	case reflect.Slice, reflect.Array:
		if x.Len() != y.Len() {
			return false
		}
		for i := range x.Len() {
			if !sameValue(x.Index(i), y.Index(i)) {
				return false
			}
		}
		return true
	case reflect.Map:
		if x.Len() != y.Len() {
			return false
		}
		for k, v := range maps.Collect(x.Seq2()) {
			if w := y.MapIndex(k); !w.IsValid() || !sameValue(v, w) {
				return false
			}
		}
		return true
	case reflect.Float64:
		return x.Float() == y.Float() || math.IsNaN(x.Float()) && math.IsNaN(y.Float())
	case reflect.Func:
		return x.IsNil() == y.IsNil()
	}
	return x.Equal(y)
}

// difference is what one text has other than another.
func difference(before, after, name string) string {
	t := layout.Text{Name: name, Before: []byte(before), After: []byte(after)}
	return t.Diff()
}
