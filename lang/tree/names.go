package tree

import (
	"fmt"
	"slices"
	"strconv"
	"strings"
	"unicode/utf8"

	"newmake/lang"
	"newmake/lang/composed"
	"newmake/lang/diag"
	"newmake/lang/spelling"
	"newmake/lang/wording"
	"newmake/lang/words"
)

// UnknownName says that nothing is called so, with the nearest name there is.
func UnknownName(sort string, c *Capture, names func() []string) diag.Diagnostic {
	d := diag.Diagnostic{
		Code: diag.CodeUnknownName, Summary: fmt.Sprintf("there is no %s called `%s`", sort, c.Text()), At: c.At(),
	}
	if looks, desc, ok := lang.LookAlike(c.Text()); ok && slices.Contains(names(), looks) {
		return nameAlike(c.Item, looks, desc)
	}
	d.Advise = func(search bool) (string, *diag.Fix) { return knownNames(c, names(), search) }
	return d
}

// mostSearched is among how many names one is looked for that was meant.
const mostSearched = 2000

// knownNames says which names there are, and which of them may have been meant.
func knownNames(c *Capture, known []string, search bool) (string, *diag.Fix) {
	if search && len(known) <= mostSearched {
		if near := spelling.Nearest(c.Text(), known); near != "" {
			return fmt.Sprintf("did you mean `%s`?", near), &diag.Fix{At: c.At(), Text: asWritten(near, c), Label: "write `" + near + "`", Guess: true}
		}
		if other := spelling.Called(c.Text(), known); other != "" {
			return fmt.Sprintf("it is called `%s` here", other), &diag.Fix{At: c.At(), Text: asWritten(other, c), Label: "write `" + other + "`"}
		}
		if like := spelling.Likely(c.Text(), known); like != "" {
			return fmt.Sprintf("did you mean `%s`?", like), &diag.Fix{At: c.At(), Text: asWritten(like, c), Label: "write `" + like + "`", Guess: true}
		}
		if like := spelling.Holding(c.Text(), known); len(like) > 0 && len(like) <= spelling.MostOffered {
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

// alike speaks of a name with letters of two alphabets in one word or with what is not seen,
// of an empty one, or one that is too long.
func (s shaper) alike(n *Node) {
	for i := range n.Match.Caps {
		c := &n.Match.Caps[i]
		if !c.name {
			continue
		}
		if strings.TrimSpace(c.Text()) == "" {
			s.diags.Add(diag.Diagnostic{
				Code: diag.CodeNameLength, Summary: "this name is empty", At: c.At(),
				Help: "write between the quotes what it is called: it is asked for by its name, and the sheet is headed by it",
			})
			n.Bad = n.Field.Block == nil
			return
		}
		if k := utf8.RuneCountInString(c.Text()); k > mostName {
			s.diags.Add(diag.Diagnostic{
				Code: diag.CodeNameLength, Summary: fmt.Sprintf("this name has %d characters, and a name has at most %d", k, mostName), At: c.At(),
				Help: "shorten it, and put the rest into a comment",
			})
			n.Bad = n.Field.Block == nil
			return
		}
		looks, desc, ok := lang.MixedAlphabets(c.Text())
		if !ok {
			looks, desc, ok = lang.Unseen(c.Text())
		}
		if ok {
			s.diags.Add(nameAlike(c.Item, looks, desc))
			n.Bad = n.Field.Block == nil // what has a block has a name, odd as it is
			return
		}
	}
}

// asWritten writes a name as the line did, with quotes if it had them or needs
// them.
func asWritten(name string, c *Capture) string {
	if c.Item.Kind == lang.String || !isPlainWord(name) {
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

// Key is the form in which names are compared: NFC, so that an accent typed
// in two ways is one letter.
func Key(name string) string { return composed.Form(name) }
