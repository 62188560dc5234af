package sides

import (
	"errors"
	"slices"
	"strings"

	"newmake/compile/ask/compare"
	"newmake/compile/front"
	"newmake/compile/measure"
	"newmake/lang/diag"
	"newmake/lang/recipe"
)

// Options of a comparison.
type Options struct {
	Batch string         // the only one to compare, if there are several
	Units *recipe.System // to speak in; nil is that of each new batch
	NoWhy bool           // do not say which edit does how much
}

// neither says that no side has the batch that was asked for.
type neither struct{ error }

func (neither) Is(target error) bool { return target == errNeither }

var errNeither = errors.New("neither side has the batch")

// compared compares every batch that both sides have. What is said of those with
// errors comes too.
func compared(old, new *Side, o Options) (*compare.Document, diag.List, error) {
	doc := compare.NewDocument()
	pairs, removed, added := match(old, new)
	if o.Batch != "" {
		other := func(n string) bool {
			return n == "" || !strings.EqualFold(n, o.Batch) && front.FileName(n) != front.FileName(o.Batch)
		}
		pairs = slices.DeleteFunc(pairs, func(p [2]string) bool { return other(p[0]) && other(p[1]) })
		removed = slices.DeleteFunc(removed, other)
		added = slices.DeleteFunc(added, other)
		if len(pairs)+len(removed)+len(added) == 0 {
			return nil, nil, neither{diag.Refuse("neither side has a batch called %q", o.Batch)}
		}
	}
	var said diag.List
	for _, p := range pairs {
		x, listX := old.batch(p[0])
		y, listY := new.batch(p[1])
		if x != nil && y != nil {
			doc.Pairs = append(doc.Pairs, compare.Batches(
				compare.SideOf(old.labelOf(p[0]), x, listX), compare.SideOf(new.labelOf(p[1]), y, listY),
				compare.Options{Units: o.unitsFor(y), NoWhy: o.NoWhy}))
			continue
		}
		for _, side := range []struct {
			s    *Side
			b    *recipe.Batch
			name string
			list diag.List
		}{{old, x, p[0], listX}, {new, y, p[1], listY}} {
			if side.b == nil {
				doc.Broken = append(doc.Broken, compare.Broken{Label: side.s.label, Batch: side.name, Why: firstError(side.list)})
				said = append(said, side.list...)
			}
		}
	}
	doc.Removed, doc.Added = removed, added
	return doc, said.Dedup(), nil
}

func (o Options) unitsFor(b *recipe.Batch) measure.Units {
	system := b.Units
	if o.Units != nil {
		system = *o.Units
	}
	if system == recipe.SI {
		return measure.SI
	}
	return measure.US
}

func firstError(list diag.List) string {
	for _, d := range list {
		if d.Severity == diag.Error {
			return d.Summary
		}
	}
	return "it has errors"
}
