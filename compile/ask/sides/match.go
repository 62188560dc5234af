package sides

import (
	"strings"

	"newmake/compile/ask/compare"
	"newmake/compile/measure"
)

// match pairs the batches of two selections: by name, wherever in the house they
// stand; then those that are the same but for their name; and what is left, when
// each side has one. The order is that of the new side.
func match(old, new *Side) (pairs [][2]string, removed, added []string) {
	if len(old.names) == 1 && len(new.names) == 1 && !old.moves {
		return [][2]string{{old.names[0], new.names[0]}}, nil, nil
	}
	taken := map[string]bool{}
	pair := func(o, n string) { pairs, taken[o] = append(pairs, [2]string{o, n}), true }
	var left []string
	for _, n := range new.names {
		if o, ok := same(old, n); ok {
			pair(o, n)
		} else {
			left = append(left, n)
		}
	}
	for _, o := range old.names {
		if n, ok := same(new, o); ok && !taken[o] {
			pair(o, n) // it stands in another file now
		}
	}
	if len(left) == 1 && len(old.names) == 1 && len(pairs) == 0 { // one of each, by another name
		if _, still := same(new, old.names[0]); !still {
			pair(old.names[0], left[0])
			left = nil
		}
	}
	for _, n := range left {
		if o := alikeBatch(old, new, n, taken); o != "" {
			pair(o, n)
		} else {
			added = append(added, n)
		}
	}
	for _, o := range old.names {
		if !taken[o] {
			removed = append(removed, o)
		}
	}
	if len(pairs) == 0 && len(removed) > 0 && len(added) > 0 { // two files with nothing in common
		pair(removed[0], added[0])
		removed, added = removed[1:], added[1:]
	}
	return pairs, removed, added
}

func same(in *Side, name string) (string, bool) {
	known := in.names
	if in.moves {
		known = in.all
	}
	for _, n := range known {
		if strings.EqualFold(n, name) {
			return n, true
		}
	}
	return "", false
}

// alikeBatch finds a batch of the old side that is the new one under another name.
func alikeBatch(old, new *Side, name string, taken map[string]bool) string {
	b, _ := new.batch(name)
	if b == nil {
		return ""
	}
	for _, o := range old.names {
		if _, still := same(new, o); taken[o] || still {
			continue
		}
		if a, _ := old.batch(o); a != nil && compare.Find(a, b, measure.US).Same() {
			return o
		}
	}
	return ""
}
