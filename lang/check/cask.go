package check

import (
	"math"
	"strconv"

	"newmake/lang/diag"
)

// bottleLimits are those of a bottle, wherever it is filled from.
var bottleLimits = []Limit{mustBe(1e-5, 0.01, "from a miniature to the largest bottles").of("volume"), strength100}

// bottleField is the bottle of a batch that goes into no wood; of others it
// stands in the cask.
var bottleField = &Field{
	Name: "bottle", Shape: `VOLUME ["at" STRENGTH]`, Example: "bottle 750 mL at 100 proof", Default: "none: the spirit is kept as it comes",
	Doc: "Of a batch without a `cask`: its bottle and bottling strength.", Limits: bottleLimits,
}

var caskField = &Field{
	Name: "cask", Example: "cask", Default: "none: the spirit goes into no wood",
	Doc: "Reduction, filling, and the years in wood. A batch without it is not aged: it is bottled as its `bottle` line says, or kept.",
	Block: &Block{Fields: []*Field{
		{
			Name: "entry", Shape: "STRENGTH", Need: true, Example: "entry 114 proof", Doc: "Strength at which it goes into the cask.",
			Limits: []Limit{
				strength100,
				mustBe(0.2, 1, "weaker than this it is no spirit").of("strength"),
				usually(0.45, 0.72, "casks are filled between about 100 and 140 proof (common practice)").of("strength"),
			},
		},
		{
			Name: "fill", Shape: `VOLUME ["new"|"used"] CASK ["char" NUMBER]`, Need: true, Example: "fill 53 gal new charred-oak char 3", Default: "used",
			Doc: "Size and kind of the cask, whether it is new, and its char.",
			Limits: []Limit{
				mustBe(1e-3, 100, "from a litre to a vat").of("volume"),
				mustBe(0, 4, "chars are numbered 1 to 4, and 0 is none").of("number"),
			},
		},
		{
			Name: "rest", Shape: "DURATION", Need: true, Example: "rest 30 months", Doc: "How long it stays in wood.",
			Limits: []Limit{mustBe(0, 100*yearS, "nobody waits that long"), usually(0, 40*yearS, "few casks hold anything after that")},
		},
		{
			Name: "bottle", Shape: `VOLUME ["at" STRENGTH]`, Default: "750 mL (700 mL in SI) at the style's least, or 40 % abv", Example: "bottle 750 mL at 94 proof",
			Doc: "Bottle and bottling strength, for the count of bottles.", Limits: bottleLimits,
		},
		climateField, removeField,
	}},
}

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
			Related: []diag.Related{{At: b.batch.At("cask"), Text: "the cask is here"}},
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
	b.where("cask.bottle", l.at())
	c.BottleM3 = l.num("volume")
	if s := l.get("strength"); s != nil {
		c.BottleAt = s.strength()
		b.where("cask.bottle.at", s.at())
	}
}

// cask reads filling and rest.
func (b *builder) cask(n *node) (whole bool) {
	if n == nil {
		return false
	}
	c := &b.batch.Cask
	c.At = n.at()
	b.where("cask", n.at())
	for _, word := range []string{"entry", "fill", "rest", "climate"} {
		b.place("cask."+word, n.line(word))
	}
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
		b.unknown(caskKindField, "cask", name, sortedKeys(b.house.Stock.Casks))
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
