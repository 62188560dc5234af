package batches

import (
	"math"
	"strconv"

	"newmake/lang/check/internal/fields"
	"newmake/lang/diag"
	"newmake/lang/pattern"
	"newmake/lang/recipe"
	"newmake/lang/schema"
	"newmake/lang/tree"
)

// readUnaged reads a batch that goes into no wood. It says whether this is one.
func readUnaged(b *reader) bool {
	l := b.node.Line("bottle")
	switch {
	case b.node.Gaps || b.node.Present("cask") && l == nil:
		return false
	case b.node.Present("cask"):
		b.add(diag.Diagnostic{
			Code: diag.CodeUnknownField, Summary: "this batch goes into a cask, and its bottle is filled from there", At: l.At(),
			Help:    "put the line into the `cask` block, or `remove cask`; in a variant, `remove bottle`",
			Related: []diag.Related{{At: b.batch.At(recipe.PathCask), Text: "the cask is here"}},
		})
		return false
	case l != nil:
		readBottle(b, l, &b.batch.Cask)
	}
	return true
}

// readBottle reads the bottle and its strength.
func readBottle(b *reader, l *tree.Node, c *recipe.Cask) {
	b.where(recipe.PathBottle, l.At())
	c.BottleM3 = l.Num("volume")
	if s := l.Get("strength"); s != nil {
		c.BottleAt = fields.Strength(s)
		b.where(recipe.PathBottleAt, s.At())
	}
}

// charRemark is a char as the trade writes it, #3 char, which the language takes for
// a remark.
var charRemark = pattern.Of(`^#([0-9])(?: ?char)?$`)

// readCask reads filling and rest.
func readCask(b *reader, n *tree.Node) (c recipe.Cask, whole bool) {
	if n == nil {
		return c, false
	}
	c.At = n.At()
	b.places(recipe.PathCask, n)
	whole = n.Sound() && tree.Missing(b.diags, n, "the `cask` block")
	c.Entry = fields.StrengthOn(n, "entry")
	if p := b.batch.Plant; p != nil {
		c.Climate, c.Air = p.Climate, p.Air()
	}
	if l := n.Line("climate"); l != nil {
		c.Climate, c.Air = recipe.Climate{Named: n.Word("climate")}, recipe.YearOfAir{}
	}
	if l := n.Line("bottle"); l != nil {
		readBottle(b, l, &c)
	}
	l := n.Line("fill")
	if l == nil {
		return c, whole
	}
	c.New = l.Has("new")
	name := l.Get("wood")
	if c.Kind = named[recipe.CaskWood](b, schema.CaskWood, name.Text()); c.Kind == nil {
		b.unknown(schema.CaskWood, "wood", name, b.entries(schema.CaskWood))
		return c, false
	}
	if lost := l.Stmt.Trail; lost != nil && l.Get("number") == nil {
		if m := charRemark().FindStringSubmatch(lost.Text); m != nil {
			write := "char " + m[1]
			b.add(diag.Diagnostic{
				Code: diag.CodeShape, Summary: "`#` begins a remark here, and the char after it is lost", At: lost.At,
				Help: "write `" + write + "`", Fix: &diag.Fix{At: lost.At, Text: write, Label: "write `" + write + "`"},
			})
		}
	}
	if char := l.Get("number"); char != nil {
		c.Char = int(char.SI)
		if char.SI != math.Trunc(char.SI) {
			b.add(diag.Diagnostic{
				Code: diag.CodeWholeNumber, Summary: "chars are numbered, and " + strconv.FormatFloat(char.SI, 'g', -1, 64) + " is none of the numbers", At: char.At(),
				Help: "write `char 1` to `char 4`",
			})
		}
	}
	return c, whole
}
