// Package tasted shows trials and tastings: what a trial can find and what it found, the
// sheets from which cups are served, and what was written of casks and runs. It computes
// nothing.
package tasted

import (
	"fmt"
	"io"
	"strings"

	"newmake/compile/book/taste"
	"newmake/compile/show/columns"
	"newmake/lang/diag"
	"newmake/lang/words"
)

// Options of a rendering.
type Options struct {
	Bold bool
	Arg  string // the trial as it was named, for the command that comes next
}

// tellers are words for a share of tasters, as one speaks: 3 in 10.
func tellers(share float64) string { return fmt.Sprintf("%.0f in 100", share*100) }

// Trial writes a trial as text: the verdict, then what it rests on.
func Trial(w io.Writer, j *taste.Judged, o Options) error {
	t := columns.Writer{Bold: o.Bold}
	t.Strong(diag.Safe(j.Trial) + " · " + string(j.Method) + " · " + j.On)
	t.Para(0, 0, diag.Safe(words.And(j.Samples)))
	t.Gap()
	t.Para(0, 0, diag.Safe(verdict(j)))
	if b := j.Beforehand; b != nil {
		if j.Counted == nil {
			t.Heading("BEFORE IT IS POURED")
		} else {
			t.Heading("WHAT IT COULD FIND")
		}
		for _, s := range beforehand(b, j) {
			t.Para(2, 2, s)
		}
	}
	if c := j.Counted; c != nil {
		t.Heading("ANSWERS")
		for _, a := range j.Answers {
			line := fmt.Sprintf("%d of %d", a.Right, a.N)
			if a.Words != "" {
				line += ": " + a.Words
			}
			t.Item("  "+diag.Safe(a.By), 12, diag.Safe(line))
		}
		t.Item("  all", 12, fmt.Sprintf("%d of %d; guessing gives as many or more %s", c.Right, c.N, chance(c.P)))
		if c.Several {
			t.Para(2, 2, several)
		}
	}
	if r := j.Ranked; r != nil {
		ranks(&t, j, r)
	}
	if len(j.Serving) > 0 && len(j.Answers) == 0 {
		t.Heading("SERVING")
		per := len(j.Serving) / len(j.Tasters)
		t.Para(2, 2, diag.Safe(fmt.Sprintf("%s for each of %s: %s in all. The sheets, one a taster, and the key for the one who pours and does not taste: newmake trial %s -o trial.html",
			words.Count(per, "set"), words.And(j.Tasters), words.Count(len(j.Serving), "set"), o.Arg)))
	}
	t.Heading("CAREFUL")
	if j.Sitting != nil {
		t.Para(2, 4, "! "+sittings(j.Sitting))
	}
	for _, s := range tastingCautions {
		t.Para(2, 4, s)
	}
	_, err := io.WriteString(w, t.String())
	return err
}

// tastingCautions stand on every page that people taste from (common practice).
var tastingCautions = []string{
	"Cut the spirit with water to 20 to 25 % of alcohol by volume, pour no more than 15 mL (half a US fluid ounce), and spit. Six to eight cups in a sitting are as many as a nose takes.",
	"Nobody who has tasted drives, or works at a still, a cooker or a lift truck that day.",
	"Taste nothing of foreshots. Who is pregnant, unwell or takes medicine noses only.",
}

// sittings says that a trial has more cups than a sitting bears, and how to part it.
func sittings(s *taste.Sitting) string {
	out := fmt.Sprintf("%d cups for each taster are more than a nose takes at one sitting: %d at most (common practice).", s.Cups, s.Most)
	if s.Sittings < 2 {
		return out + " Compare fewer samples."
	}
	return out + fmt.Sprintf(" Pour them at %d sittings, %s at each, half a day apart or more.", s.Sittings, words.Count(s.Sets, "set"))
}

// several is said where somebody answered more than once.
const several = "Somebody answered more than once. Such answers are less worth than those of as many people: a nose that finds it once finds it again. So the difference may be one that these people alone can tell."

// verdict is what a trial comes to, in a sentence or two.
func verdict(j *taste.Judged) string {
	switch {
	case j.Counted != nil && j.Expecting == nil && j.Method == taste.Paired:
		c := j.Counted
		if !c.Differ {
			return fmt.Sprintf("No difference was shown: %d of %d took %s, and guessing goes as far from half %s.", c.Right, c.N, j.Samples[0], chance(c.P))
		}
		first, n := j.Samples[0], c.Right
		if 2*c.Right < c.N {
			first, n = j.Samples[1], c.N-c.Right
		}
		return fmt.Sprintf("They took %s: %d of %d, and guessing goes as far from half %s.", first, n, c.N, chance(c.P))
	case j.Counted != nil:
		c := j.Counted
		head := "They can be told apart"
		if j.Method == taste.Paired {
			head = j.Expecting[0] + " has more of it"
		}
		if !c.Differ {
			head = "No difference was shown"
		}
		return fmt.Sprintf("%s: %d of %d right, and guessing gives as many or more %s. Between %s and %s of the answers came from telling them apart, 9 times in 10.",
			head, c.Right, c.N, chance(c.P), tellers(c.TellApart.Low), tellers(c.TellApart.High))
	case j.Ranked != nil:
		r := j.Ranked
		if r.Differ {
			return fmt.Sprintf("They rank differently (Friedman %.2f; chance gives as much %s).", r.Friedman, chance(r.P))
		}
		return fmt.Sprintf("No difference of rank was shown (Friedman %.2f; chance gives as much %s).", r.Friedman, chance(r.P))
	case len(j.Answers) > 0:
		return "One taster alone has ranked them: nothing can be concluded."
	}
	return "Nothing has been tasted yet."
}

// chance is how often, as one speaks.
func chance(p float64) string {
	times := func(x float64, of string) string {
		if n := number(x); n != "1" {
			return n + " times in " + of
		}
		return "once in " + of
	}
	switch {
	case p >= .095:
		return fmt.Sprintf("%.0f times in 100", p*100)
	case p >= .0095:
		return times(p*100, "100")
	case p >= .00095:
		return times(p*1000, "1,000")
	}
	return "less than once in 1,000"
}

func beforehand(b *taste.Beforehand, j *taste.Judged) []string {
	var out []string
	right := "right"
	if j.Method == taste.Paired && j.Expecting == nil {
		right = "for one of the two"
	}
	if b.Least > b.Answers {
		out = append(out, fmt.Sprintf("With %s nothing can be shown: even if all are right, guessing does that more than %s.", words.Count(b.Answers, "answer"), chance(j.Level)))
	} else {
		out = append(out, fmt.Sprintf("%d of %d %s, or more, show a difference: guessing gives that at most %s.", b.Least, b.Answers, right, chance(j.Level)))
	}
	switch {
	case b.Findable != nil && *b.Findable <= 1:
		out = append(out, fmt.Sprintf("It finds, 8 times in 10, a difference that %s can tell. A smaller one is more likely missed than found.", tellers(*b.Findable)))
	case b.Least <= b.Answers:
		out = append(out, "It finds a difference 8 times in 10 only if everybody can tell it.")
	}
	var needed []string
	for _, n := range b.Needed {
		if n.Answers > 0 {
			needed = append(needed, fmt.Sprintf("%d answers for one that %s can tell", n.Answers, tellers(n.Share)))
		}
	}
	return append(out, "To find it 8 times in 10 it takes "+strings.Join(needed, ", ")+".")
}

// ranks shows a ranking.
func ranks(t *columns.Writer, j *taste.Judged, r *taste.Ranked) {
	t.Heading("RANKS")
	for i, s := range j.Samples {
		t.Item("  "+diag.Safe(s), 28, fmt.Sprintf("rank sum %s, mean %.2f", number(r.Sums[i]), r.Sums[i]/float64(len(j.Answers))))
	}
	how := "counted over all rankings"
	if !r.Exact {
		how = "by the chi-squared distribution"
	}
	t.Para(2, 2, fmt.Sprintf("Friedman's statistic is %.2f; chance gives as much %s, %s. The tasters agree by %.2f, where 0 is by lot and 1 all alike (Kendall's W).", r.Friedman, chance(r.P), how, r.Agreement))
	if r.Differ {
		t.Para(2, 2, fmt.Sprintf("Two samples differ if their rank sums are %.1f apart.", r.Least))
		for _, p := range r.Pairs {
			t.Para(4, 6, diag.Safe(p.First+" ranks before "+p.Second))
		}
	} else {
		t.Para(2, 2, "So no pair of them is compared.")
	}
	if p := r.Page; p != nil {
		verb := "is shown"
		if !p.Shown {
			verb = "is not shown"
		}
		t.Para(2, 2, diag.Safe(fmt.Sprintf("The order that was expected, %s, %s: chance gives as much %s (Page's L %s).", strings.Join(j.Expecting, " before "), verb, chance(p.P), number(p.L))))
	}
	if r.Several {
		t.Para(2, 2, several)
	}
	t.Heading("ANSWERS")
	for _, a := range j.Answers {
		var all []string
		for _, x := range a.Ranks {
			all = append(all, number(x))
		}
		line := strings.Join(all, ", ")
		if a.Words != "" {
			line += ": " + a.Words
		}
		t.Item("  "+diag.Safe(a.By), 12, diag.Safe(line))
	}
}

// number writes a rank or a sum of ranks.
func number(x float64) string { return strings.TrimSuffix(fmt.Sprintf("%.1f", x), ".0") }
