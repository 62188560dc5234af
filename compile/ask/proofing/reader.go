package proofing

import (
	"errors"
	"fmt"
	"slices"
	"strings"

	"newmake/lang"
	"newmake/lang/diag"
	"newmake/lang/quantity"
	"newmake/lang/spelling"
	"newmake/lang/wording"
)

// reader goes over the items of a question once. At the first error it stops:
// what would follow is most often a consequence.
type reader struct {
	items []lang.Item
	end   diag.Span // just after the last item
	last  diag.Span // the item taken last
	diags diag.List
}

func (r *reader) fail(code diag.Code, at diag.Span, summary, help string) {
	r.failWith(diag.Diagnostic{Code: code, At: at, Summary: summary, Help: help})
}

func (r *reader) failWith(d diag.Diagnostic) {
	if len(r.diags) == 0 {
		r.diags.Add(d)
	}
	r.items = nil
}

// at is the place of the next item, or the end.
func (r *reader) at() diag.Span {
	if len(r.items) == 0 {
		return r.end
	}
	return r.items[0].At
}

func (r *reader) take() lang.Item {
	it := r.items[0]
	r.items, r.last = r.items[1:], it.At
	return it
}

func (r *reader) is(kind lang.ItemKind) bool { return len(r.items) > 0 && r.items[0].Kind == kind }

func (r *reader) isWord(words ...string) bool {
	return r.is(lang.Word) && slices.Contains(words, r.items[0].Text)
}

// word takes a word if it comes next.
func (r *reader) word(w string) bool {
	if !r.isWord(w) {
		return false
	}
	r.take()
	return true
}

func (r *reader) comma() {
	if r.is(lang.Comma) {
		r.take()
	}
}

// want takes a word that must come next.
func (r *reader) want(word, example string) {
	if !r.word(word) {
		r.expected("`"+word+"`", example)
	}
}

// expected says what should stand next.
func (r *reader) expected(what, example string) {
	help := "for example: " + wording.Example(r.end, example)
	if len(r.items) == 0 {
		r.fail(diag.CodeShape, r.end, "this ends too soon: "+what+" is wanted", help)
		return
	}
	r.fail(diag.CodeShape, r.at(), fmt.Sprintf("%s stands where %s is wanted", show(r.items[0]), what), help)
}

// lotFirst has, for a step that a question may not begin with, how it reads.
var lotFirst = map[string]string{
	"reduce": "38 gal at 134.1 proof, reduce to 114 proof",
	"blend":  "20 gal at 134 proof, blend with 5 gal at 100 proof",
	"cut":    "38 gal at 134.1 proof, reduce to 114 proof",
	"dilute": "38 gal at 134.1 proof, reduce to 114 proof",
	"proof":  "38 gal at 134.1 proof, reduce to 114 proof",
}

// reduceWords begin what people say of water that goes into a spirit: cut to 80
// proof, down to 80 proof.
var reduceWords = []string{"cut", "down", "to", "dilute", "diluted", "reduced", "bring", "brought", "lower", "proof", "proofed", "water", "watered"}

// joinWords stand where a comma does.
var joinWords = []string{"and", "then", "with", "plus"}

// asWritten is the whole question as it is written, where a step begins with a word
// that people say for it; else "".
func (r *reader) asWritten() string {
	at := r.items[0].At
	before := strings.TrimRight(string(at.Src.Text[:at.Start]), " ,")
	if before == "" {
		return ""
	}
	rest := r.items
	for len(rest) > 1 && rest[0].Kind == lang.Word && slices.Contains(joinWords, rest[0].Text) {
		rest = rest[1:]
	}
	joined := len(rest) < len(r.items)
	tail := strings.TrimSpace(string(at.Src.Text[rest[0].At.Start:]))
	switch word := rest[0]; {
	case joined && word.Kind == lang.Word && slices.Contains(stepWords, word.Text):
		return before + ", " + tail
	case joined && measures(word, quantity.Temperature):
		return before + " at " + tail
	case joined && isAmount(word) && !strings.HasPrefix(before, "fill"):
		return before + ", blend with " + tail
	case word.Kind == lang.Word && slices.Contains(reduceWords, word.Text):
		i := slices.IndexFunc(rest, func(it lang.Item) bool { return it.Kind == lang.Number })
		if i < 0 {
			return ""
		}
		if !measures(rest[i], quantity.Strength) {
			return ""
		}
		return before + ", reduce to " + strings.TrimSpace(string(at.Src.Text[rest[i].At.Start:]))
	}
	return ""
}

func isAmount(it lang.Item) bool {
	return it.Kind == lang.Number && (measures(it, quantity.Volume) || measures(it, quantity.Mass) || measures(it, quantity.ProofGallons) || measures(it, quantity.PureAlcohol))
}

func measures(it lang.Item, k quantity.Kind) bool {
	_, err := quantity.ToSI(it.Value, it.Unit, k)
	return err == nil
}

// stray says that what comes next can't stand there, and which of the words
// that could was perhaps meant.
func (r *reader) stray(words []string) {
	if len(r.items) == 0 {
		r.expected("a step", "reduce to 114 proof")
		return
	}
	it := r.items[0]
	d := diag.Diagnostic{Code: diag.CodeNoSuchWord, At: it.At, Summary: show(it) + " does not belong here",
		Help: "wanted: `" + strings.Join(words, "`, `") + "`\n" + examples(it.At)}
	if near := nearest(it.Text, words); near != "" && it.Kind == lang.Word {
		d.Help = fmt.Sprintf("did you mean `%s`?\n%s", near, d.Help)
		d.Fix = &diag.Fix{At: it.At, Text: near, Label: "write `" + near + "`"}
	}
	if lot := lotFirst[it.Text]; lot != "" && it.At.Start == 0 {
		d.Help, d.Fix = fmt.Sprintf("the lot comes first, and then what is done with it: %s\n%s", wording.Example(it.At, lot), examples(it.At)), nil
	} else if line := r.asWritten(); line != "" {
		d.Help, d.Fix = fmt.Sprintf("write `%s`", line), nil
	}
	r.failWith(d)
}

// value takes a number that measures one of some kinds.
func (r *reader) value(what string, kinds ...quantity.Kind) Value {
	if !r.is(lang.Number) {
		if r.is(lang.Range) {
			r.fail(diag.CodeShape, r.at(), "one value is wanted here, and this is a range", "write the value that was read")
		} else {
			r.expected(what, example(kinds[0]))
		}
		return Value{}
	}
	it := r.take()
	for _, k := range kinds {
		if si, err := quantity.ToSI(it.Value, it.Unit, k); err == nil {
			return Value{Item: it, Kind: k, SI: si}
		}
	}
	r.failWith(wrongUnit(it, what, kinds))
	return Value{}
}

// wrongUnit says why a number's unit does not serve.
func wrongUnit(it lang.Item, what string, kinds []quantity.Kind) diag.Diagnostic {
	d := diag.Diagnostic{Code: diag.CodeNoUnit, At: it.At, Help: allowed(kinds, it.At.Units()),
		Summary: fmt.Sprintf("`%s` needs a unit: %s is wanted", it.Num, what)}
	if it.Unit == "" {
		return d
	}
	d.At = it.UnitAt()
	if slices.Contains(append(stepWords, lotWords...), it.Unit) {
		d.Code, d.Summary = diag.CodeShape, fmt.Sprintf("`%s` stands where a unit is looked for", it.Unit)
		d.Help = fmt.Sprintf("write a comma before it: `%s, %s`", it.Num, it.Unit)
		d.Fix = &diag.Fix{At: it.At.Src.Span(it.At.Start+len(it.Num), it.At.Start+len(it.Num)), Text: ",", Label: "put in a comma"}
		return d
	}
	_, err := quantity.ToSI(it.Value, it.Unit, kinds[0])
	var ue *quantity.UnitError
	if !errors.As(err, &ue) {
		return d
	}
	if ue.Known {
		d.Code, d.Summary = diag.CodeWrongKind, fmt.Sprintf("`%s` is %s, and %s is wanted here", it.Unit, ue.Is, what)
	} else {
		d.Code, d.Summary = diag.CodeUnknownUnit, fmt.Sprintf("`%s` is not a unit", it.Unit)
		if near := nearUnit(it.Unit, kinds); near != "" {
			d.Help = fmt.Sprintf("did you mean `%s`? %s", near, d.Help)
			d.Fix = &diag.Fix{At: it.UnitAt(), Text: near, Label: "write `" + near + "`"}
		}
	}
	if ue.Hint != "" {
		d.Help = wording.Prose(ue.Hint, it.At.Units()) + "\n" + d.Help
	}
	return d
}

// nearUnit is the unit that was perhaps meant, of the first kind that has one.
func nearUnit(unit string, kinds []quantity.Kind) string {
	var own []string
	for _, k := range kinds {
		own = append(own, quantity.Units(k)...)
	}
	for _, near := range quantity.Near(unit) {
		if slices.Contains(own, near) {
			return near
		}
	}
	return nearest(unit, own)
}

// allowed lists the units that would do, for a reader who counts in a system.
func allowed(kinds []quantity.Kind, reader quantity.System) string {
	var parts []string
	for _, k := range kinds {
		if wording.OthersAlone(k, reader) {
			continue
		}
		if units := wording.UnitsOf(k, reader); len(units) > 0 {
			parts = append(parts, fmt.Sprintf("%s is in `%s`", k, strings.Join(units[:min(len(units), 6)], "`, `")))
		} else {
			parts = append(parts, k.String()+" has no unit")
		}
	}
	return strings.Join(parts, "; ")
}

func example(k quantity.Kind) string {
	switch k {
	case quantity.Volume:
		return "53 gal"
	case quantity.Strength:
		return "114 proof"
	case quantity.Temperature:
		return "66 F"
	case quantity.TempDifference:
		return "0.05 F"
	case quantity.Concentration:
		return "5 g/L"
	}
	return "192.8"
}

// nearest gives the word that a misspelt one most likely stood for, or "": one
// slip in a short word, two in a longer one.
func nearest(word string, words []string) string {
	limit := 1
	if len(word) > 5 {
		limit = 2
	}
	best := ""
	for _, w := range words {
		if d := spelling.Distance(strings.ToLower(word), w); d <= limit && d < len(w) {
			best, limit = w, d-1
		}
	}
	return best
}

func show(it lang.Item) string { return "`" + strings.TrimSpace(it.At.Text()) + "`" }
