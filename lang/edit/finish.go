package edit

import (
	"fmt"
	"path/filepath"
	"slices"
	"strings"

	"newmake/lang/check"
	"newmake/lang/diag"
	"newmake/lang/recipe"
	"newmake/lang/schema"
	"newmake/lang/sorting"
	"newmake/lang/spelling"
	"newmake/lang/words"
)

// finish puts the replacements into the texts.
func (e *editor) finish() (*Result, error) {
	r := e.result
	r.Texts = map[string][]byte{}
	sorting.Stable(e.edits, func(a, b replacement) int {
		if c := strings.Compare(a.at.Src.Name, b.at.Src.Name); c != 0 {
			return c
		}
		return a.at.Start - b.at.Start
	})
	for i := 1; i < len(e.edits); i++ {
		if a, b := e.edits[i-1], e.edits[i]; a.at.Src == b.at.Src && b.at.Start < a.at.End {
			line, _ := b.at.Position()
			return nil, fault(diag.CodeChangeValue, fmt.Sprintf("two of the changes are of one value, on line %d of %s", line, b.at.Src.Name), "give each value once")
		}
	}
	for i := 0; i < len(e.edits); {
		src := e.edits[i].at.Src
		end := i
		for end < len(e.edits) && e.edits[end].at.Src == src {
			end++
		}
		r.Texts[src.Name] = []byte(patched(string(src.Text), 0, e.edits[i:end]))
		r.lines(src, e.edits[i:end])
		i = end
	}
	if e.extra.Len() > 0 {
		r.Texts[filepath.Join(e.house.Root, extraFile)] = []byte(e.extra.String())
		for _, l := range strings.Split(strings.TrimSpace(e.extra.String()), "\n") {
			r.Lines = append(r.Lines, Line{File: "the library", New: l})
		}
	}
	return r, nil
}

// patched is a text that begins at an offset, with replacements in order.
func patched(text string, offset int, edits []replacement) string {
	var b strings.Builder
	at := 0
	for _, e := range edits {
		b.WriteString(text[at : e.at.Start-offset])
		b.WriteString(e.text)
		at = e.at.End - offset
	}
	b.WriteString(text[at:])
	return b.String()
}

// lines notes the lines that change.
func (r *Result) lines(src *diag.Source, edits []replacement) {
	for i := 0; i < len(edits); {
		number, _ := edits[i].at.Position()
		end := i
		for end < len(edits) {
			if n, _ := edits[end].at.Position(); n != number {
				break
			}
			end++
		}
		span := src.LineSpan(number)
		old := strings.TrimRight(span.Text(), "\r\n")
		for n, l := range strings.Split(patched(old, span.Start, edits[i:end]), "\n") {
			if l = strings.TrimRight(l, " "); n == 0 && l != strings.TrimRight(old, " ") {
				r.Lines = append(r.Lines, Line{File: src.Name, Number: number, Old: strings.TrimSpace(old), New: strings.TrimSpace(l)})
			} else if n > 0 && strings.TrimSpace(l) != "" && !strings.HasPrefix(strings.TrimSpace(l), "#") {
				r.Lines = append(r.Lines, Line{File: src.Name, Number: number, New: strings.TrimSpace(l)})
			}
		}
		i = end
	}
}

// unknown says that there is no such value, and which is near.
func (e *editor) unknown(c Change) error {
	d := diag.Diagnostic{Code: diag.CodeChangePath, Severity: diag.Error, Summary: fmt.Sprintf("the batch %q has no value %q", e.batch.Name, c.Path)}
	if d.Help = e.within(c.Path); d.Help != "" {
		return diag.List{d}
	}
	known := e.known()
	write := func(paths []string) string {
		for i, path := range paths {
			paths[i] = "`" + path + "=" + c.Value + "`"
		}
		return "a value is named by its block and its line: write " + words.Or(paths)
	}
	parts := c.Path.Parts()
	if whole := e.ending(parts, known); len(whole) > 0 {
		d.Help = write(whole)
	} else if near := nearest(c.Path.String(), known); near != "" {
		d.Help = "did you mean `" + near + "`?"
	} else if whole := e.ending(parts[len(parts)-1:], known); len(whole) > 0 {
		d.Help = write(whole)
	} else {
		d.Help = byItsLine
	}
	return diag.List{d}
}

// known is the name of every place and value of the batch, sorted.
func (e *editor) known() []string {
	var known []string
	for p := range e.batch.Where {
		known = append(known, p.String())
	}
	for _, v := range e.batch.Values() {
		known = append(known, v.Path.String())
	}
	slices.Sort(known)
	return slices.Compact(known)
}

// ending lists the values that a path may be the end of, or the middle where it is
// the end of none: rye is bill.rye, rest is mash.rest.1 or mash.rest.2.
// A grain that the bill lacks may be put into it.
func (e *editor) ending(want, known []string) []string {
	same := func(a, b string) bool { return strings.EqualFold(a, b) }
	var ends, middles []string
	for _, name := range known {
		p := recipe.ParsePath(name)
		parts := p.Parts()
		if _, ok := e.where(p); !ok || len(parts) > 1 && parts[0] == "mash" && parts[1] == "step" {
			continue // a whole block, or a step by its number among all
		}
		switch n := len(parts) - len(want); {
		case n < 1:
		case slices.EqualFunc(parts[n:], want, same):
			ends = append(ends, name)
		case n > 1 && slices.EqualFunc(parts[n-1:len(parts)-1], want, same):
			middles = append(middles, name)
		}
	}
	if len(want) == 1 && !slices.Contains(ends, recipe.PathMash.Child(want[0]).String()) {
		for i := range e.steps(want[0]) {
			ends = append(ends, fmt.Sprintf("mash.%s.%d", want[0], i+1))
		}
	}
	if len(ends) == 0 {
		ends = middles
	}
	if len(ends) == 0 && len(want) == 1 && e.house.Declares(schema.Grain, want[0]) {
		ends = []string{recipe.PathBill.Child(want[0]).String()}
	}
	return ends[:min(len(ends), 4)]
}

// within says how to name one value of what has several: the steps of a mash that
// do one thing, a block. It is "" if the path is of nothing that is there.
func (e *editor) within(path recipe.Path) string {
	if parts := path.Parts(); len(parts) > 1 && parts[0] == "mash" {
		var each []string
		named := false
		for i, s := range e.steps(parts[1]) {
			step := fmt.Sprintf("mash.%s.%d", parts[1], i+1)
			each = append(each, "`"+step+"`")
			named = named || len(parts) > 2 && (parts[2] == fmt.Sprint(i+1) || s.Enzyme != nil && s.Enzyme.Name == parts[2])
		}
		if len(each) > 1 && !named {
			return fmt.Sprintf("there are %d of it: %s", len(each), strings.Join(each, ", "))
		}
	}
	if path == recipe.PathBatch {
		return "this is the whole batch; " + byItsLine
	}
	if _, block := e.batch.Where[path]; block {
		return "this is a whole block; " + byItsLine
	}
	return ""
}

const byItsLine = "a value is named by its block and its line: bill.rye, mash.water, mash.rest.2, ferment.for, spirit.hearts.to, cask.entry, plant.water"

// nearest is the name that is spelt most nearly so, "" if none is near.
func nearest(name string, known []string) string {
	best, far := "", 4
	for _, k := range known {
		if d := spelling.Distance(name, k); d < far {
			best, far = k, d
		}
	}
	return best
}

// House loads the house again with the changed texts laid over its files. keep
// holds texts that stood for files before.
func (r *Result) House(at string, keep map[string][]byte) (*check.House, error) {
	o := check.Options{Overlay: map[string][]byte{}}
	for name, text := range keep {
		o.Overlay[name] = text
	}
	for name, text := range r.Texts {
		o.Overlay[name] = text
	}
	return check.Load(at, o)
}
