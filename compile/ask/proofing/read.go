package proofing

import (
	"newmake/lang"
	"newmake/lang/diag"
	"newmake/lang/quantity"
	"newmake/lang/wording"
)

// examples are two questions, for whoever counts as a question does.
func examples(at diag.Span) string {
	return "for example: " + wording.Example(at, "38 gal at 134.1 proof at 66 F, reduce to 114 proof") + ", or " + wording.Example(at, "reading 192.8 proof at 72.1 F")
}

// Read reads a question. The list says what was not understood, and what would
// be, in the units of the question, or of whoever asks where it has none; the Question is of
// use only if the list has no errors.
func Read(text string, counts quantity.System) (Question, diag.List) {
	src := diag.NewSource("question", []byte(text))
	q := Question{Source: src}
	file, list := lang.Parse(src)
	src.Units = func() quantity.System { return asked(file, counts) }
	if list.HasErrors() {
		return q, list
	}
	r := &reader{end: src.Span(len(src.Text), len(src.Text))}
	switch stmts := file.Stmts; {
	case len(stmts) == 0:
		r.fail(diag.CodeMissing, r.end, "there is nothing to gauge", examples(r.end))
	case len(stmts) > 1:
		r.fail(diag.CodeShape, stmts[1].At, "one question at a time", "put it on one line")
	case stmts[0].Block != nil:
		r.fail(diag.CodeBlockHere, stmts[0].Block.At, "no block stands in a question", examples(r.end))
	default:
		r.items = stmts[0].Items
		r.end = src.Span(stmts[0].At.End, stmts[0].At.End)
		q.Lot, q.Steps = r.question()
	}
	if !r.diags.HasErrors() {
		r.diags = q.check()
	}
	return q, append(list, r.diags...)
}

// asked is the system in which most of a question is.
func asked(file *lang.File, otherwise quantity.System) quantity.System {
	us, si := 0, 0
	for _, st := range file.Stmts {
		for _, it := range st.Items {
			u, known := quantity.Lookup(it.Unit)
			switch {
			case known && u.System == quantity.US:
				us++
			case known && u.System == quantity.SI:
				si++
			}
		}
	}
	switch {
	case us > si:
		return quantity.US
	case si > us:
		return quantity.SI
	}
	return otherwise
}

// question reads all of it.
func (r *reader) question() (Lot, []Step) {
	var steps []Step
	if r.word("fill") {
		steps = append(steps, r.fill())
		r.want("from", "fill 53 gal at 60 % abv from 70 % abv")
	}
	lot := r.lot()
	for len(r.items) > 0 {
		r.comma()
		steps = append(steps, r.step())
	}
	return lot, steps
}

func (r *reader) step() Step {
	at := r.at()
	switch {
	case r.word("reduce"):
		r.want("to", "reduce to 114 proof")
		s := reduce{To: r.value("the strength to reduce to", quantity.Strength)}
		if r.word("with") {
			r.want("water", "reduce to 114 proof with water at 58 F")
			r.want("at", "reduce to 114 proof with water at 58 F")
			w := r.value("the temperature of the water", quantity.Temperature)
			s.Water = &w
		}
		return s
	case r.word("fill"):
		return r.fill()
	case r.word("blend"):
		r.want("with", "blend with 5 gal at 100 proof")
		return blend{With: r.lot(), At: at}
	}
	r.stray(stepWords)
	return reduce{}
}

var (
	stepWords = []string{"reduce", "fill", "blend"}
	lotWords  = []string{"at", "reading", "hydrometer", "thermometer", "solids"}
)

func (r *reader) fill() fill {
	f := fill{Volume: r.value("the volume of the cask", quantity.Volume)}
	if !r.word("to") {
		r.want("at", "fill 53 gal at 60 % abv")
	}
	f.To = r.value("the strength in the cask", quantity.Strength)
	return f
}

// lot reads the amount, strength, temperature and corrections of one lot, as
// far as the words go.
func (r *reader) lot() Lot {
	l := Lot{At: r.at()}
	switch {
	case len(r.items) == 0:
		r.expected("a lot of spirit", "38 gal at 134.1 proof")
		return l
	case r.is(lang.Number), r.is(lang.Range):
		r.put(&l, r.value("an amount or a strength", quantity.Volume, quantity.Mass, quantity.ProofGallons, quantity.PureAlcohol, quantity.Strength))
	case !r.isWord("reading"):
		r.stray([]string{"reading", "fill"})
	}
	for len(r.items) > 0 {
		before := r.items
		r.comma()
		switch {
		case r.word("at"), r.word("of"):
			r.put(&l, r.value("a strength or a temperature", quantity.Strength, quantity.Temperature))
		case r.is(lang.Number):
			r.put(&l, r.value("a strength or a temperature", quantity.Strength, quantity.Temperature))
		case r.word("reading"):
			r.set(&l.Reading, r.value("the hydrometer's reading", quantity.Number, quantity.Strength))
		case r.word("hydrometer"):
			r.set(&l.Hydrometer, r.value("the hydrometer's correction", quantity.Number, quantity.Strength))
		case r.word("thermometer"):
			r.set(&l.Thermometer, r.value("the thermometer's correction", quantity.TempDifference))
		case r.word("solids"):
			r.set(&l.Solids, r.value("the solids", quantity.Concentration))
		case r.isWord(stepWords...):
			r.items = before
			return l
		default:
			r.stray(append(lotWords, stepWords...))
		}
	}
	l.At = l.At.To(r.last)
	return l
}

// put puts a value where its kind belongs.
func (r *reader) put(l *Lot, v Value) {
	switch v.Kind {
	case quantity.Strength:
		r.set(&l.Strength, v)
	case quantity.Temperature:
		r.set(&l.Temp, v)
	default:
		r.set(&l.Amount, v)
	}
}

func (r *reader) set(to **Value, v Value) {
	if *to == nil {
		*to = &v
		return
	}
	r.failWith(diag.Diagnostic{Code: diag.CodeTwice, At: v.Item.At,
		Summary: "a lot has " + v.Kind.String() + " once, and this is the second",
		Related: []diag.Related{{At: (*to).Item.At, Text: "the first stands here"}},
		Help:    "for a second lot write `blend with` before it"})
}
