package chances

import (
	"fmt"
	"strings"

	"newmake/compile/ask/odds"
	"newmake/compile/measure"
	"newmake/lang/diag"
)

// verdict is the answer in one sentence.
func verdict(a *odds.Answer) string {
	how := fmt.Sprintf("(%d draws, +- %d in 100)", a.Draws, a.Margin)
	if len(a.Casks) == 0 {
		for _, n := range a.Numbers {
			if n.Key == mainNumber {
				return fmt.Sprintf("It goes into no wood. %s: %s to %s, 9 times in 10 (%d draws).", capital(n.Name), number(n.Low, n.Places), withUnit(n, n.High), a.Draws)
			}
		}
		return "No draw gave a batch."
	}
	n := max(1, a.Planned)
	says := fmt.Sprintf("Fills %s: %s %s.", casks(n), a.Casks[n-1].Odds.Words, how)
	if a.Planned == 0 {
		says += " The plan fills none."
	}
	return says
}

// headline reports whether a promise is of the casks that the verdict is of.
func headline(a *odds.Answer, p odds.Promise) bool {
	return p.What == "casks" && len(a.Casks) > 0 && p.Promised.Value == float64(max(1, a.Planned)) && p.Odds == a.Casks[max(1, a.Planned)-1].Odds
}

// foreign reports whether a number is counted in what is not the reader's. A reader of gallons
// keeps the litres of pure alcohol, for it is their spread that is taken apart.
func foreign(key string, u measure.Units) bool { return u == measure.SI && !u.Counts(key) }

// mainNumber is the number whose spread is taken apart for people.
const mainNumber = "pureAlcoholL"

var counts = [...]string{"no cask", "one cask", "two casks", "three casks", "four casks"}

func casks(n int) string {
	if n < len(counts) {
		return counts[n]
	}
	return fmt.Sprintf("%d casks", n)
}

func number(x float64, places int) string { return measure.Number(x, places) }

func withUnit(n odds.Number, x float64) string {
	return strings.TrimSpace(number(x, n.Places) + " " + n.Unit)
}

func capital(s string) string { return strings.ToUpper(s[:1]) + s[1:] }

// percent is a share in whole hundredths.
func percent(x float64) string { return measure.Number(100*x, 0) + " %" }

// promise is a promise and how it stands.
func promise(p odds.Promise, u measure.Units) (stands, says string) {
	says = diag.Safe(p.What) + " " + u.Quantity(p.Promised)
	if p.Within.Value != 0 {
		says += " within " + u.Quantity(p.Within)
	}
	if p.Asked == nil {
		return "", says + ": " + p.Odds.Words
	}
	return p.Verdict, fmt.Sprintf("%s in %d of %d: %s", says, p.Asked.Of, p.Asked.In, p.Odds.Words)
}

// change says what fills the casks 9 times in 10. cmd is the command that writes it;
// "" leaves it out.
func change(a *odds.Answer, u measure.Units, arg string) (says, cmd string) {
	c := a.Change
	if c.Why != "" {
		return fmt.Sprintf("No size of the batch fills %s 9 times in 10: %s.", casks(c.Casks), diag.Safe(c.Why)), ""
	}
	often := c.Odds.Words
	for _, now := range a.Casks {
		if now.Least == c.Casks && now.Odds.Words == often { // a hair more is the same in tenths
			often = fmt.Sprintf("in %.0f of 100 draws, where it now does in %.0f", 100*c.Odds.Share, 100*now.Odds.Share)
		}
	}
	says = fmt.Sprintf("%s times the batch, %s of grain in all: it then fills %s %s.", number(c.Factor, 3), u.Mass(c.BillKg), casks(c.Casks), often)
	if arg == "" || c.Grain == "" {
		return says, ""
	}
	weight := u.Mass(c.MassKg)
	return says, fmt.Sprintf("newmake size %s --grain %q", arg, diag.Safe(c.Grain)+" "+strings.ReplaceAll(weight, ",", ""))
}

// mainShares are those of the number that is taken apart for people; nil if it does not
// vary, or there are too few draws.
func mainShares(a *odds.Answer) *odds.Shares {
	for i := range a.Shares {
		if a.Shares[i].Key == mainNumber {
			return &a.Shares[i]
		}
	}
	return nil
}

// told is what the shares say together.
func told(s *odds.Shares) string {
	return fmt.Sprintf("Each by itself, they make %s of the spread; the rest comes of several together.", percent(s.R2))
}
