package check

import (
	"math"
	"strconv"

	"newmake/lang/diag"
	"newmake/lang/recipe"
	"newmake/lang/schema"
)

// unaged reads a batch that goes into no wood. It says whether this is one.
func (b *builder) unaged() bool {
	l := b.node.line("bottle")
	switch {
	case b.node.gaps || b.node.present("cask") && l == nil:
		return false
	case b.node.present("cask"):
		b.add(diag.Diagnostic{
			Code: diag.CodeUnknownField, Summary: "this batch goes into a cask, and its bottle is filled from there", At: l.at(),
			Help:    "put the line into the `cask` block, or `remove cask`; in a variant, `remove bottle`",
			Related: []diag.Related{{At: b.batch.At(recipe.PathCask), Text: "the cask is here"}},
		})
		return false
	case l != nil:
		b.bottle(l)
	}
	return true
}

// bottle reads the bottle and its strength.
func (b *builder) bottle(l *node) {
	c := &b.batch.Cask
	b.where(recipe.PathBottle, l.at())
	c.BottleM3 = l.num("volume")
	if s := l.get("strength"); s != nil {
		c.BottleAt = s.strength()
		b.where(recipe.PathBottleAt, s.at())
	}
}

// cask reads filling and rest.
func (b *builder) cask(n *node) (whole bool) {
	if n == nil {
		return false
	}
	c := &b.batch.Cask
	c.At = n.at()
	b.places(recipe.PathCask, n)
	whole = n.sound() && missing(b.diags, n, "the `cask` block")
	c.Entry = n.strength("entry")
	c.RestS = n.si("rest")
	if p := b.batch.Plant; p != nil {
		c.Climate = p.Climate
	}
	if l := n.line("climate"); l != nil {
		c.Climate = climate(n.word("climate"))
	}
	if l := n.line("bottle"); l != nil {
		b.bottle(l)
	}
	l := n.line("fill")
	if l == nil {
		return whole
	}
	c.SizeM3, c.New = l.num("volume"), l.has("new")
	name := l.get("cask")
	if c.Kind = b.house.Stock.Casks[name.text()]; c.Kind == nil {
		b.unknown(schema.CaskKind, "cask", name, b.house.known.casks)
		return false
	}
	if char := l.get("number"); char != nil {
		c.Char = int(char.si)
		if char.si != math.Trunc(char.si) {
			b.add(diag.Diagnostic{
				Code: diag.CodeWholeNumber, Summary: "chars are numbered, and " + strconv.FormatFloat(char.si, 'g', -1, 64) + " is none of the numbers", At: char.at(),
				Help: "write `char 1` to `char 4`",
			})
		}
	}
	return whole
}
