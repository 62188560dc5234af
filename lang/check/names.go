package check

import (
	"fmt"
	"slices"
	"strconv"
	"strings"
	"unicode/utf8"

	"golang.org/x/text/unicode/norm"

	"newmake/lang"
	"newmake/lang/diag"
	"newmake/lang/schema"
	"newmake/lang/spelling"
	"newmake/lang/wording"
	"newmake/lang/words"
)

// index is the declarations of one sort by name, in the order they stand.
type index struct {
	sort  string
	byKey map[string]*node
	order []string
}

func newIndex(sort string) *index { return &index{sort: sort, byKey: map[string]*node{}} }

// add enters a declaration, and says if its name is taken. A declaration that is
// not right still takes its name, so that nobody misses it.
func (x *index) add(n *node, diags *diag.List) bool {
	c := n.get("name")
	if c == nil {
		return false
	}
	if before := x.byKey[nameKey(c.text())]; before != nil {
		diags.Add(duplicate(x.sort, c.text(), c.at(), before.get("name").at()))
		return false
	}
	x.byKey[nameKey(c.text())] = n
	x.order = append(x.order, c.text())
	return true
}

func (x *index) find(name string) *node { return x.byKey[nameKey(name)] }

// unknownName says that nothing is called so, with the nearest name there is.
func unknownName(sort string, c *capture, names func() []string) diag.Diagnostic {
	d := diag.Diagnostic{
		Code: diag.CodeUnknownName, Summary: fmt.Sprintf("there is no %s called `%s`", sort, c.text()), At: c.at(),
	}
	if looks, desc, ok := lang.LookAlike(c.text()); ok && slices.Contains(names(), looks) {
		return nameAlike(c.item, looks, desc)
	}
	d.Advise = func(search bool) (string, *diag.Fix) { return knownNames(c, names(), search) }
	return d
}

// mostSearched is among how many names one is looked for that was meant.
const mostSearched = 2000

// knownNames says which names there are, and which of them may have been meant.
func knownNames(c *capture, known []string, search bool) (string, *diag.Fix) {
	if search && len(known) <= mostSearched {
		if near := spelling.Nearest(c.text(), known); near != "" {
			return fmt.Sprintf("did you mean `%s`?", near), &diag.Fix{At: c.at(), Text: asWritten(near, c), Label: "write `" + near + "`"}
		}
		if other := spelling.Called(c.text(), known); other != "" {
			return fmt.Sprintf("it is called `%s` here", other), &diag.Fix{At: c.at(), Text: asWritten(other, c), Label: "write `" + other + "`"}
		}
		if like := spelling.Holding(c.text(), known); len(like) > 0 && len(like) <= spelling.MostOffered {
			return "did you mean " + wording.OrList(like) + "?", nil
		}
	}
	const most = 24
	switch {
	case len(known) == 0:
		return "none is declared yet", nil
	case len(known) > most:
		return fmt.Sprintf("known are %s and %d more", words.And(wording.Quoted(known[:most])), len(known)-most), nil
	}
	return "known: " + wording.OrList(known), nil
}

// nameAlike says that a name looks like another and is not.
func nameAlike(it *lang.Item, looks, desc string) diag.Diagnostic {
	d := diag.Diagnostic{
		Code: diag.CodeNameAlike, Summary: fmt.Sprintf("%s looks like `%s` and is not: %s", wording.Item(it), looks, desc), At: it.At,
		Help: "type it again", Reason: "two names that look the same would be two things",
	}
	text := looks
	if it.Kind == lang.String {
		text = strconv.Quote(looks)
	}
	d.Fix = &diag.Fix{At: it.At, Text: text, Label: "write `" + looks + "`"}
	return d
}

// mostName is how many characters a name may have.
const mostName = 64

// alike speaks of a name with letters of two alphabets in one word, an empty one,
// or one that is too long.
func (s shaper) alike(n *node) {
	for i := range n.m.caps {
		c := &n.m.caps[i]
		if !c.name {
			continue
		}
		if strings.TrimSpace(c.text()) == "" {
			s.diags.Add(diag.Diagnostic{
				Code: diag.CodeNameLength, Summary: "this name is empty", At: c.at(),
				Help: "write between the quotes what it is called: it is asked for by its name, and the sheet is headed by it",
			})
			n.bad = n.field.Block == nil
			return
		}
		if k := utf8.RuneCountInString(c.text()); k > mostName {
			s.diags.Add(diag.Diagnostic{
				Code: diag.CodeNameLength, Summary: fmt.Sprintf("this name has %d characters, and a name has at most %d", k, mostName), At: c.at(),
				Help: "shorten it, and put the rest into a comment",
			})
			n.bad = n.field.Block == nil
			return
		}
		if looks, desc, ok := lang.MixedAlphabets(c.text()); ok {
			s.diags.Add(nameAlike(c.item, looks, desc))
			n.bad = n.field.Block == nil // what has a block has a name, odd as it is
			return
		}
	}
}

// unknown says that nothing is called so, if that is sure.
func (b *builder) unknown(f *schema.Field, sort string, c *capture, names func() []string) {
	if !b.house.lost(f, c.text()) {
		b.add(unknownName(sort, c, names))
	}
}

// asWritten writes a name as the line did, with quotes if it had them or needs
// them.
func asWritten(name string, c *capture) string {
	if c.item.Kind == lang.String || !isPlainWord(name) {
		return fmt.Sprintf("%q", name)
	}
	return name
}

func isPlainWord(name string) bool {
	for i, r := range name {
		letter := r >= 'a' && r <= 'z' || r >= 'A' && r <= 'Z'
		if !letter && (i == 0 || r != '-' && (r < '0' || r > '9')) {
			return false
		}
	}
	return name != ""
}

// nameKey is the form in which names are compared: NFC, so that an accent typed
// in two ways is one letter.
func nameKey(name string) string { return norm.NFC.String(name) }
