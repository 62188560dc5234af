package logbook

import (
	"fmt"
	"slices"

	"newmake/lang/diag"
	"newmake/lang/record"
	"newmake/lang/tree"
	"newmake/lang/wording"
	"newmake/lang/words"
)

// Names are what a tasting can be of: each sort by its word, and how it is found. One
// that is named without a word is of the first sort that has the name.
type Names []Sort

// Sort is one sort of thing that is tasted.
type Sort struct {
	Kinds []record.SampleKind // the first is meant where none is written
	Say   string              // "cask"
	Has   func(name string) bool
	All   func() []string
}

// Tasting reads one tasting.
func Tasting(n *tree.Node, names Names) (*record.Tasting, diag.List) {
	var diags diag.List
	t := &record.Tasting{On: record.ReadDate(n.Text("date")), At: n.At()}
	if all := samples(n, "name", names, &diags); len(all) > 0 {
		t.Of = all[0]
	}
	t.Nosed = nosed(n)
	scales := map[string]record.Score{}
	for _, l := range n.All("scale") {
		s := record.Score{Low: l.Num("number"), High: l.Num("end"), LowSays: l.Text("low"), HighSays: l.Text("high")}
		if s.Low >= s.High {
			diags.Add(diag.Diagnostic{Code: diag.CodeScore, At: l.At(), Summary: "this scale ends where it begins, or before",
				Help: "write the low end first: `scale nose 0 to 5 \"nothing\" \"very fine\"`"})
			continue
		}
		scales[tree.Key(l.Text("what"))] = s
	}
	by := ""
	for _, l := range n.Lines {
		if l.Bad {
			continue
		}
		who := by
		if c := l.Get("who"); c != nil && l.Field.Name != "by" {
			who = c.Text()
		}
		switch l.Field.Name {
		case "by":
			by = l.Text("who")
		case "note":
			t.Looks = append(t.Looks, record.Look{What: "note", Words: l.Text("remark"), By: who, At: l.At()})
		case "verdict":
			v := record.Verdict{Word: l.Match.Caps[0].Slot, Words: l.Text("remark"), By: who, At: l.At()}
			if c := l.Get("duration"); c != nil {
				v.WaitS = c.SI
			}
			t.Verdicts = append(t.Verdicts, v)
		case "":
			look := record.Look{What: l.Text("name"), Words: l.Text("remark"), By: who, At: l.At()}
			if c := l.Get("number"); c != nil {
				look.Score = score(look.What, c, l.Get("end"), scales, &diags)
			}
			if look.Score == nil && look.Words == "" && l.Get("number") == nil {
				diags.Add(diag.Diagnostic{Code: diag.CodeScore, Severity: diag.Warning, At: l.At(), Summary: fmt.Sprintf("`%s` says nothing yet", look.What),
					Help: "write a score or words: `" + look.What + " 4 of 5 \"oat biscuit\"`"})
			}
			t.Looks = append(t.Looks, look)
		}
	}
	return t, diags
}

// score is a number on its scale; nil where it is beyond its ends.
func score(what string, c, end *tree.Capture, scales map[string]record.Score, diags *diag.List) *record.Score {
	s, said := scales[tree.Key(what)]
	switch {
	case !said:
		s = record.Score{High: end.SI}
	case s.High != end.SI:
		diags.Add(diag.Diagnostic{Code: diag.CodeScore, At: end.At(), Summary: fmt.Sprintf("the scale of `%s` goes to %s here, and this is out of %s", what, wording.Decimal(s.High), wording.Decimal(end.SI)),
			Help: fmt.Sprintf("write it out of %s; a scale with other ends has a word of its own", wording.Decimal(s.High))})
		return nil
	}
	s.Value = c.SI
	if s.Value < s.Low || s.Value > s.High {
		diags.Add(diag.Diagnostic{Code: diag.CodeScore, At: c.At(), Summary: fmt.Sprintf("%s is not on a scale of %s to %s", c.Item.Num, wording.Decimal(s.Low), wording.Decimal(s.High)),
			Help: "look at the number; a scale that does not begin at 0 is written `scale " + what + " 1 to 5`"})
		return nil
	}
	return &s
}

func nosed(n *tree.Node) *record.Value {
	c := n.Line("at").Get("strength")
	if c == nil {
		return nil
	}
	v := valueOf(c)
	return &v
}

// samples reads what is tasted: the names of a slot, each with its word before it.
func samples(n *tree.Node, slot string, names Names, diags *diag.List) []record.Sample {
	var out []record.Sample
	kind := record.SampleKind("")
	for i := range n.Match.Caps {
		c := &n.Match.Caps[i]
		switch c.Slot {
		case "cask", "hearts", "new-make", "bottling":
			kind = record.SampleKind(c.Slot)
		case slot:
			s := record.Sample{Kind: kind, Name: c.Text(), Place: c.At()}
			kind = ""
			names.find(&s, c, diags)
			out = append(out, s)
		}
	}
	return out
}

// find holds a sample against what the house has.
func (names Names) find(s *record.Sample, c *tree.Capture, diags *diag.List) {
	for _, sort := range names {
		if s.Kind != "" && !slices.Contains(sort.Kinds, s.Kind) {
			continue
		}
		switch {
		case sort.Has(s.Name):
			if s.Kind == "" {
				s.Kind = sort.Kinds[0]
			}
			return
		case s.Kind != "":
			diags.Add(tree.UnknownName(sort.Say, c, sort.All))
			return
		}
	}
	s.Kind = names[0].Kinds[0]
	diags.Add(tree.UnknownName("cask, run or bottling", c, func() []string {
		var all []string
		for _, sort := range names {
			all = append(all, sort.All()...)
		}
		return all
	}))
}

// Trial reads one trial.
func Trial(n *tree.Node, names Names) (*record.Trial, diag.List) {
	var diags diag.List
	t := &record.Trial{Name: n.Text("name"), On: record.ReadDate(n.Text("date")), Sets: 1, Nosed: nosed(n), At: n.At()}
	if !n.Bad {
		tree.Missing(&diags, n, "the trial "+t.Name)
	}
	if l := n.Line("compare"); l != nil {
		t.Compare = samples(l, "sample", names, &diags)
	}
	if l := n.Line("method"); l != nil {
		t.Method = l.Match.Caps[0].Slot
		compared(t, n, l, &diags)
	}
	if l := n.Line("tasters"); l != nil {
		for _, c := range l.Match.All("who") {
			if slices.Contains(t.Tasters, c.Text()) {
				diags.Add(diag.Diagnostic{Code: diag.CodeTrial, At: c.At(), Summary: fmt.Sprintf("%q is named twice", c.Text()), Help: "a taster who sits down twice has more `sets`"})
				continue
			}
			t.Tasters = append(t.Tasters, c.Text())
		}
	}
	if c := n.Line("sets").Get("number"); c != nil {
		t.Sets = whole(c, "sets", "write a whole number", &diags)
	}
	expecting(t, n, &diags)
	for _, l := range n.Lines {
		switch {
		case l.Bad:
		case l.Field.Name == "note":
			t.Notes = append(t.Notes, record.Look{What: "note", Words: l.Text("remark"), By: l.Text("who"), At: l.At()})
		case l.Field.Name == "":
			if a, ok := answer(t, l, &diags); ok {
				t.Answers = append(t.Answers, a)
				served(t, n, a, &diags)
			}
		}
	}
	return t, diags
}

// compared holds how many samples there are against the method.
func compared(t *record.Trial, n, l *tree.Node, diags *diag.List) {
	d := diag.Diagnostic{Code: diag.CodeTrial, At: l.At()}
	switch have := len(t.Compare); {
	case n.Line("compare") == nil:
		return
	case t.Method == "ranking" && (have < 3 || have > mostRanked):
		d.Summary = fmt.Sprintf("a ranking is of 3 to %d samples, and %s compared here", mostRanked, words.CountOf(have, "is", "are"))
		d.Help = "two are compared as a pair; a nose tires of more than eight in a sitting"
	case t.Method != "ranking" && have != 2:
		d.Summary = fmt.Sprintf("a %s compares two samples, and %s compared here", t.Method, words.CountOf(have, "is", "are"))
		d.Help = "name two, or write `method ranking`"
	case slices.ContainsFunc(t.Compare[1:], func(s record.Sample) bool {
		return s.Kind == t.Compare[0].Kind && tree.Key(s.Name) == tree.Key(t.Compare[0].Name)
	}):
		d.At, d.Summary, d.Help = n.Line("compare").At(), "the same sample stands twice", "name each sample once"
	default:
		return
	}
	diags.Add(d)
}

// mostRanked is how many samples a ranking takes at most: a nose tires (common
// practice).
const mostRanked = 8

// expecting reads which answer was expected.
func expecting(t *record.Trial, n *tree.Node, diags *diag.List) {
	l := n.Line("expecting")
	if l == nil {
		return
	}
	d := diag.Diagnostic{Code: diag.CodeTrial, At: l.At()}
	for _, c := range l.Match.All("sample") {
		i := slices.IndexFunc(t.Compare, func(s record.Sample) bool { return tree.Key(s.Name) == tree.Key(c.Text()) })
		switch {
		case i < 0:
			diags.Add(tree.UnknownName("sample", c, func() []string {
				var all []string
				for _, s := range t.Compare {
					all = append(all, s.Name)
				}
				return all
			}))
			return
		case slices.Contains(t.Expecting, i):
			d.Summary, d.Help = fmt.Sprintf("%q stands twice", c.Text()), "name each sample once, in the order that was expected"
		}
		t.Expecting = append(t.Expecting, i)
	}
	switch {
	case d.Summary != "":
	case t.Method == "paired" && len(t.Expecting) != 1:
		d.Summary, d.Help = "in a pair one sample is expected to have more", "name one"
	case t.Method == "ranking" && len(t.Expecting) != len(t.Compare):
		d.Summary, d.Help = "an order that is expected names every sample", "name all of them, the one expected first first"
	case t.Method == "triangle" || t.Method == "duo-trio":
		d.Summary, d.Help = "a "+t.Method+" has one right answer, and nothing is expected of it", "leave the line out"
	default:
		return
	}
	t.Expecting = nil
	diags.Add(d)
}

// answer reads what one taster said.
func answer(t *record.Trial, l *tree.Node, diags *diag.List) (record.Answer, bool) {
	a := record.Answer{By: l.Text("name"), Words: l.Text("remark"), At: l.At()}
	d := diag.Diagnostic{Code: diag.CodeTrial, At: l.At()}
	ranked := l.Get("rank") != nil
	switch {
	case t.Method == "" || len(t.Compare) == 0:
		return a, false // that is said already
	case ranked != (t.Method == "ranking"):
		d.Summary = fmt.Sprintf("this is no answer of a %s", t.Method)
		d.Help = "write `\"A\" 3 of 6`; in a ranking `\"A\" ranks 1, 3, 2`"
	case len(t.Tasters) > 0 && !slices.ContainsFunc(t.Tasters, func(w string) bool { return tree.Key(w) == tree.Key(a.By) }):
		d.Summary, d.Help = fmt.Sprintf("%q is not among the tasters", a.By), "write who tasted into `tasters`"
	case ranked:
		for _, c := range l.Match.All("rank") {
			a.Ranks = append(a.Ranks, c.SI)
		}
		if !areRanks(a.Ranks, len(t.Compare)) {
			d.Summary = fmt.Sprintf("these are no ranks of %d samples", len(t.Compare))
			d.Help = "each rank stands once, from 1 on, in the order of `compare`; those that could not be parted share the mean of theirs, `1.5, 1.5, 3`"
		}
	default:
		a.Right, a.N = whole(l.Get("number"), "answers", "write a whole number", diags), whole(l.Get("answers"), "answers", "write a whole number", diags)
		if a.Right > a.N {
			d.Summary, d.Help = fmt.Sprintf("%d of %d is more than there are", a.Right, a.N), "write how many were right, then of how many"
		}
	}
	if d.Summary != "" {
		diags.Add(d)
		return a, false
	}
	return a, true
}

// served doubts that a taster has answered more sets than were written down.
func served(t *record.Trial, n *tree.Node, a record.Answer, diags *diag.List) {
	if n.Line("sets") == nil {
		return
	}
	answered := 0
	for _, o := range t.Answers {
		if tree.Key(o.By) == tree.Key(a.By) {
			answered += max(o.N, 1) // a ranking is one
		}
	}
	if answered > t.Sets {
		diags.Add(diag.Diagnostic{Code: diag.CodeTrial, Severity: diag.Warning, At: a.At, Summary: fmt.Sprintf("%q has answered %s by here, and each taster gets %d", a.By, words.Count(answered, "set"), t.Sets),
			Help: "look at the name and the numbers, or write how many `sets` there were"})
	}
}

// areRanks reports whether numbers are the ranks of n samples, those that tie with the mean of
// their ranks.
func areRanks(ranks []float64, n int) bool {
	if len(ranks) != n {
		return false
	}
	s := slices.Sorted(slices.Values(ranks))
	for i := 0; i < n; {
		j := i
		for j < n && s[j] == s[i] {
			j++
		}
		if s[i] != float64(i+1+j)/2 {
			return false
		}
		i = j
	}
	return true
}
