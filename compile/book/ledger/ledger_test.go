package ledger_test

import (
	"fmt"
	"maps"
	"os"
	"path/filepath"
	"regexp"
	"slices"
	"strings"
	"testing"
	"testing/fstest"
	"time"

	"github.com/stretchr/testify/assert"
	"github.com/stretchr/testify/require"

	"newmake/compile/book/ledger"
	"newmake/compile/show/ledgered"
	"newmake/lang/check"
	"newmake/lang/record"
	"newmake/lang/testflag"
)

const loft = "store \"Loft\" {\n  2023-01-01 corn 9,000 lb lot \"C\" from \"Seller\"\n}\n"

// filled is a run that filled a cask by volume, at 120 proof.
func filled(number, day, serial string, gal float64) string {
	return fmt.Sprintf("run %q of \"B\" on %s {\n  used {\n    corn 600 lb lot \"C\"\n  }\n  fill {\n    %s 10:00 gauge %.1f gal, 120 proof at 60 F\n    into %q %.1f gal, tare 100 lb\n  }\n}\n", number, day, day, gal, serial, gal)
}

func month(y, m int) record.Date { return record.Date{Year: y, Month: time.Month(m), Day: 1} }

func of(t *testing.T, text string, y, m int) *ledger.Ledger {
	t.Helper()
	h, c, said := read(t, text)
	require.False(t, said.HasErrors(), "%v", said)
	return booksOf(h, c, month(y, m))
}

func account(l *ledger.Ledger, a ledger.Account) ledger.Balance {
	for _, b := range l.Accounts {
		if b.Account == a {
			return b
		}
	}
	return ledger.Balance{}
}

func kinds(l *ledger.Ledger) []string {
	var out []string
	for _, x := range l.Lines {
		out = append(out, fmt.Sprintf("%s %s %.2f", x.On, x.Kind, x.Amount.ProofGallons))
	}
	return out
}

// TestGaugeByWeight is 27 CFR 30.61's example: 403.1 lb net of 120 proof are 53 wine
// gallons, 63.6 proof gallons (Table 4).
func TestGaugeByWeight(t *testing.T) {
	l := of(t, loft+"run \"24-01\" of \"B\" on 2024-02-01 {\n  used {\n    corn 600 lb lot \"C\"\n  }\n  fill {\n    2024-02-09 10:00 gauge 53.0 gal, 120 proof at 60 F\n    into \"K\" tare 98 lb, gross 501.1 lb\n  }\n}\n", 2024, 2)
	require.Empty(t, failed(l))
	g := l.Gauges[1]
	assert.Equal(t, "weight", g.By)
	assert.InDelta(t, 53.0, g.WineGal, 0.02)
	assert.InDelta(t, 63.6, g.Amount.ProofGallons, 0.02)
	assert.Equal(t, "2024-2", g.Serial)
	assert.Equal(t, "27 CFR 19.618, 19.619", g.Section)
}

// TestLeapDay keeps what happened on the 29th of February in its month.
func TestLeapDay(t *testing.T) {
	text := loft + filled("24-01", "2024-02-29", "K", 50)
	feb, mar := of(t, text, 2024, 2), of(t, text, 2024, 3)
	assert.Equal(t, 60.0, account(feb, ledger.Wood).Closing.ProofGallons)
	assert.Equal(t, account(feb, ledger.Wood).Closing, account(mar, ledger.Wood).Opening)
	assert.Empty(t, mar.Lines)
}

// TestTwoOfOneSerial keeps the lives of a cask apart: it was emptied and filled again on
// one day.
func TestTwoOfOneSerial(t *testing.T) {
	text := loft + filled("20-01", "2020-02-01", "K", 50) + filled("24-01", "2024-02-29", "K", 40) +
		"vat \"V\" on 2024-02-29 {\n  from \"K\" 45 gal, 118 proof at 60 F\n}\n"
	l := of(t, text, 2024, 2)
	require.Empty(t, failed(l))
	w := account(l, ledger.Wood)
	assert.Equal(t, 60.0, w.Opening.ProofGallons)
	assert.Equal(t, 48.0, w.Closing.ProofGallons)
	assert.InDelta(t, 60-45*1.18, w.Lost.ProofGallons, 0.01)
	assert.Contains(t, fmt.Sprint(l.OnHand), "cask K, filled 2024-02-29")

	// One serial filled twice over what it holds, and one emptied twice, are errors of the
	// text: there are no books of it.
	_, _, said := read(t, loft+filled("20-01", "2020-02-01", "K", 50)+"vat \"V\" on 2024-02-01 {\n  from \"K\" 45 gal, 118 proof at 60 F\n}\nvat \"W\" on 2024-02-02 {\n  from \"K\" 45 gal, 118 proof at 60 F\n}\n")
	assert.True(t, said.HasErrors())
}

// TestTooStrong asks again for a strength that no still makes: 95.6 % by mass, 194.3 proof.
func TestTooStrong(t *testing.T) {
	at := func(proof string) *ledger.Ledger {
		return of(t, loft+"run \"24-01\" of \"B\" on 2024-02-01 {\n  used {\n    corn 600 lb lot \"C\"\n  }\n  fill {\n    2024-02-09 10:00 hearts 50 gal, "+proof+" proof at 60 F\n  }\n}\n", 2024, 2)
	}
	ok := at("194.0")
	assert.Empty(t, ok.Missing)
	assert.Equal(t, 97.0, account(ok, ledger.Tanks).Closing.ProofGallons)
	for _, proof := range []string{"195.0", "206"} {
		l := at(proof)
		require.NotEmpty(t, l.Missing, proof)
		assert.True(t, l.Missing[0].Wrong)
		assert.Positive(t, l.Missing[0].Line)
		assert.Zero(t, account(l, ledger.Tanks).Closing.ProofGallons)
	}
}

// TestCorrectionIsANewLine leaves a month as it was closed: what was put right later is a
// line of the month in which it was.
func TestCorrectionIsANewLine(t *testing.T) {
	wrong := "run \"24-01\" of \"B\" on 2024-01-02 {\n  used {\n    corn 600 lb lot \"C\"\n  }\n  fill {\n    2024-01-09 10:00 hearts 50 gal, 120 proof at 60 F\n"
	text := func(more string) string { return loft + wrong + more + "  }\n}\n" }
	for _, more := range []string{"", "    corrected 10:00 hearts 50 gal to 40 gal on 2024-03-05 by \"A\" \"misread\"\n"} {
		assert.Equal(t, 60.0, account(of(t, text(more), 2024, 1), ledger.Tanks).Closing.ProofGallons, "as it was reported")
		assert.Equal(t, 60.0, account(of(t, text(more), 2024, 2), ledger.Tanks).Closing.ProofGallons)
	}
	twice := "    corrected 10:00 hearts 50 gal to 40 gal on 2024-03-05 by \"A\"\n    corrected 10:00 hearts 40 gal to 45 gal on 2024-05-05 by \"A\"\n"
	march := of(t, text(twice), 2024, 3)
	require.Empty(t, failed(march))
	assert.Contains(t, kinds(march), "2024-03-05 produced -12.00")
	assert.Equal(t, "2024-01-09", march.Lines[0].Corrects)
	assert.Equal(t, 10, march.Lines[0].Line, "the line of the correction")
	assert.Equal(t, 48.0, account(march, ledger.Tanks).Closing.ProofGallons)
	assert.Empty(t, of(t, text(twice), 2024, 4).Lines)
	may := of(t, text(twice), 2024, 5)
	assert.Contains(t, kinds(may), "2024-05-05 produced 6.00")
	assert.Equal(t, 54.0, account(may, ledger.Tanks).Closing.ProofGallons)
}

// TestRemainderOfACorrection: what was left over in the receiver, and changes with the fill that was
// put right, is of that day too, and not of the first of the month.
func TestRemainderOfACorrection(t *testing.T) {
	text := strings.Replace(loft+filled("24-01", "2024-01-09", "K", 50), "tare 100 lb\n", "tare 100 lb\n    corrected into \"K\" 50 gal to 49.5 gal on 2024-03-05 by \"A\"\n", 1)
	march := of(t, text, 2024, 3)
	require.Empty(t, failed(march))
	assert.Equal(t, []string{"2024-03-05 filled -0.60", "2024-03-05 lost from tanks 0.60"}, kinds(march))
	for _, l := range march.Lines {
		assert.Equal(t, "2024-01-09", l.Corrects)
	}
}

// TestLateEntry books a line that was written later in the month in which it was.
func TestLateEntry(t *testing.T) {
	text := loft + filled("24-01", "2024-01-09", "K", 50) + "cask \"K\" {\n  2024-01-20 leaked 2 gal, 120 proof at 60 F, written 2024-02-02\n}\n"
	assert.Equal(t, 60.0, account(of(t, text, 2024, 1), ledger.Wood).Closing.ProofGallons)
	feb := of(t, text, 2024, 2)
	require.Empty(t, failed(feb))
	assert.Equal(t, []string{"2024-02-02 lost from wood 2.40"}, kinds(feb))
	assert.Equal(t, 57.6, account(feb, ledger.Wood).Closing.ProofGallons)
}

// TestRename loses nothing: a run, a cask and a vat under other names give the same sums.
func TestRename(t *testing.T) {
	text := loft + filled("24-01", "2024-02-01", "K", 50) + "vat \"V\" on 2024-02-20 {\n  from \"K\" 45 gal, 118 proof at 60 F\n}\n"
	was := of(t, text, 2024, 2)
	is := of(t, strings.NewReplacer("24-01", "24-99", `"K"`, `"LH-1"`, `"V"`, `"Spring"`).Replace(text), 2024, 2)
	assert.Equal(t, was.Accounts, is.Accounts)
	assert.Equal(t, kinds(was), kinds(is))
}

// waiting is so many runs whose feints nobody charged.
func waiting(n int) string {
	text := loft
	for i := 1; i <= n; i++ {
		text += fmt.Sprintf("run \"24-0%d\" of \"B\" on 2024-02-0%d {\n  used {\n    corn 600 lb lot \"C\"\n  }\n  strip {\n    2024-02-1%d 09:00 low-wines 300 gal, 50 proof at 60 F\n  }\n  spirit {\n    2024-02-1%d 10:00 charge low-wines\n    11:00 off\n    feints 45 gal, 60 proof at 60 F\n  }\n  fill {\n    2024-02-2%d 10:00 hearts 100 gal, 120 proof at 60 F\n    into \"K%d\" 100 gal, tare 100 lb\n  }\n}\n", i, i, i, i, i, i)
	}
	return text
}

// TestMends proposes what can have been: feints of a run before that are on hand, a lot that
// had come, in the units of the house.
func TestMends(t *testing.T) {
	run := func(number, day, charge string) string {
		return fmt.Sprintf("run %q of \"B\" on %s {\n  used {\n    corn 600 lb\n  }\n  strip {\n    %s 09:00 low-wines 100 gal, 50 proof at 60 F\n  }\n  spirit {\n    %s 09:30 charge low-wines\n%s    11:00 off\n    tails 40 gal at 62 F, 70 proof at 60 F\n  }\n  fill {\n    %s 12:00 hearts 45 gal, 140 proof at 60 F\n  }\n}\n", number, day, day, day, charge, day)
	}
	text := "store \"Loft\" {\n  2024-02-05 corn 9,000 lb lot \"C\" from \"Seller\"\n}\n" + run("24-01", "2024-02-01", "") + run("24-02", "2024-02-08", "") + run("24-03", "2024-02-15", "    charge feints 40 gal, 70 proof at 60 F\n")
	mends := func(us bool) (out []string) {
		h, c, said := read(t, text)
		require.False(t, said.HasErrors(), "%v", said)
		o := ledger.HouseOf(h, c, "us", false)
		o.US, o.Declared = us, nil
		for _, m := range ledger.Of(o, 2024, 2).Missing {
			out = append(out, m.Mend+m.In)
		}
		return out
	}
	assert.Equal(t, []string{
		`charge feints __ gal, __ proof at __ F from "N"` + "in its `spirit`, and a run \"N\" before 2024-02-01 that says what it left: `spirit { feints __ gal, __ proof at __ F }`",
		`charge feints 40 gal at 62 F, 70 proof at 60 F from "24-01"` + "in its `spirit`",
		`charge feints 40 gal, 70 proof at 60 F from "24-02"`,
		`corn 600 lb lot "as the sack says"`,
		`corn 600 lb lot "C"`,
		`corn 600 lb lot "C"`,
	}, mends(true))
	for _, m := range mends(false) {
		assert.NotRegexp(t, ` (gal|lb|proof|F)\b`, m)
	}
}

// TestHeartsThatNobodyGauged: of an opened run whose hearts are blank the whole line is
// asked for at once; of one that says how much, how strong, and the other way round.
func TestHeartsThatNobodyGauged(t *testing.T) {
	for hearts, want := range map[string][2]string{
		"volume, strength":          {"how much the hearts of run 24-01 are, and how strong", "2024-02-09 10:00 hearts __ gal, __ proof at __ F"},
		"45 gal":                    {"the strength of the hearts of run 24-01", "2024-02-09 10:00 hearts 45 gal, __ proof at __ F"},
		"143 proof at 66 F":         {"how much the hearts of run 24-01 are", "2024-02-09 10:00 hearts 143 proof at 66 F, __ gal"},
		"45 gal, 143 proof at 66 F": {},
	} {
		l := of(t, loft+"run \"24-01\" of \"B\" on 2024-02-01 {\n  used {\n    corn 600 lb lot \"C\"\n  }\n  fill {\n    2024-02-09 10:00 hearts "+hearts+"\n  }\n}\n", 2024, 2)
		var said [2]string
		for _, m := range l.Missing {
			if strings.Contains(m.What, "hearts of") {
				said = [2]string{m.What, m.Mend}
			}
		}
		assert.Equal(t, want, said, hearts)
	}
}

// TestThresholds tries each number that decides what is said on both sides.
func TestThresholds(t *testing.T) {
	run := func(hearts, gauge, into, more string) string {
		return loft + "run \"24-01\" of \"B\" on 2024-02-01 {\n  used {\n    corn 600 lb lot \"C\"\n  }\n" + more + "  fill {\n    2024-02-09 10:00 hearts " + hearts + ", 120 proof at 60 F\n    11:00 gauge " + gauge + ", 120 proof at 60 F\n    into \"K\" " + into + "\n  }\n}\n"
	}
	vat := func(from, gauge, bottles string) string {
		return run("100 gal", "100 gal", "100 gal, tare 100 lb", "") + "vat \"V\" on 2024-02-20 {\n  from \"K\" " + from + " gal, 120 proof at 60 F\n  2024-02-21 gauge " + gauge + " gal, 90 proof at 60 F\n}\nbottling \"24B21\" of \"V\" on 2024-02-21 {\n  bottles " + bottles + " of 1 L at 90 proof\n  test 1 L, 90 proof at 60 F\n}\n"
	}
	spirit := func(low, feints string) string {
		return run("100 gal", "100 gal", "100 gal, tare 100 lb", "  strip {\n    2024-02-05 09:00 low-wines "+low+" gal, 50 proof at 60 F\n  }\n  spirit {\n    2024-02-06 09:00 charge low-wines\n    10:00 off\n    feints "+feints+" gal, 60 proof at 60 F\n  }\n")
	}
	unstripped := func(charge string) string { // of 150 proof gallons: the hearts are 120 of them
		return run("100 gal", "100 gal", "100 gal, tare 100 lb", "  spirit {\n    2024-02-09 07:00 charge low-wines "+charge+" gal, 50 proof at 60 F\n    09:00 off\n    feints 50 gal, 60 proof at 60 F\n  }\n")
	}
	for _, c := range []struct{ name, text, what string }{
		{"reduced 1.9 % less", run("100 gal", "98.1 gal", "98.1 gal, tare 100 lb", ""), ""},
		{"reduced 2.1 % less", run("100 gal", "97.9 gal", "97.9 gal, tare 100 lb", ""), "a gauge finds what the books say"},
		{"reduced 2.1 % more", run("100 gal", "102.1 gal", "102.1 gal, tare 100 lb", ""), "a gauge finds what the books say"},
		{"filled 1.9 % less", run("100 gal", "100 gal", "98.1 gal, tare 100 lb", ""), ""},
		{"filled 2.1 % less", run("100 gal", "100 gal", "97.9 gal, tare 100 lb", ""), "what was filled is what there was"},
		{"4.9 % is lost", run("100 gal", "100 gal", "95.1 gal, tare 100 lb", ""), "what was filled is what there was"},
		{"5.1 % is still there", run("100 gal", "100 gal", "94.9 gal, tare 100 lb", ""), "? where the other 5.1 %"},
		{"4.9 % was left, nobody wrote where", run("100 gal", "100 gal", "95.1 gal, tare 100 lb\n    left 4.9 gal, 120 proof at 60 F", ""), "what was filled is what there was"},
		{"5.1 % was left, nobody wrote where", run("100 gal", "100 gal", "94.9 gal, tare 100 lb\n    left 5.1 gal, 120 proof at 60 F", ""), "? to which tank went what was left"},
		{"something was left, nobody wrote how much", run("100 gal", "100 gal", "90 gal, tare 100 lb\n    left to \"Tank\"", ""), "? how much was left"},
		{"something was left, nobody wrote how much, or where", run("100 gal", "100 gal", "90 gal, tare 100 lb\n    left volume, strength", ""), "? how much was left"},
		{"a dip 1.9 % over the weight", run("100 gal", "100 gal", "101.9 gal, tare 100 lb, gross 860.5 lb", ""), ""},
		{"a dip 2.1 % over the weight", run("100 gal", "100 gal", "102.1 gal, tare 100 lb, gross 860.5 lb", ""), "weight and volume agree"},
		{"a cask gives 0.9 % more", vat("100.9", "134.5", "507"), ""},
		{"a cask gives 1.1 % more", vat("101.1", "134.8", "508"), "a cask gives no more than went in"},
		{"a count 1.9 % off", loft + "store \"S\" {\n  2024-02-01 count corn 8,829 lb lot \"C\"\n}\n", ""},
		{"a count 2.1 % off", loft + "store \"S\" {\n  2024-02-01 count corn 8,811 lb lot \"C\"\n}\n", "a count finds what the books say"},
		{"6.9 % left in the still", spirit("300", "32.75"), ""},
		{"7.1 % left in the still", spirit("300", "32.25"), "a run gives what was charged"},
		{"1.9 % more than charged", spirit("300", "54.75"), ""},
		{"2.1 % more than charged", spirit("300", "55.25"), "? how much of which feints run 24-01 charged"},
		{"twice its low wines, less a little", spirit("150", "49"), "? how much of which feints run 24-01 charged"},
		{"twice its low wines, and more", spirit("150", "51"), "a run gives no more than was charged"},
		{"no low wines, and 1.9 % more than the charge", unstripped("294.5"), ""},
		{"no low wines, and 2.1 % more than the charge", unstripped("293.8"), "a run gives no more than was charged"},
		{"no low wines, and a charge that has no gauge", strings.Replace(unstripped("200"), "    09:00 off", "    charge feints\n    09:00 off", 1), ""},
		{"the feints of two runs wait", waiting(2), ""},
		{"the feints of three runs wait", waiting(3), "feints are charged again"},
		{"the feints of three runs, in a tank", strings.ReplaceAll(waiting(3), "at 60 F\n  }\n  fill", "at 60 F to \"Feints tank\"\n  }\n  fill"), ""},
		{"bottled 1.97 % less", vat("100", "133.4", "495"), ""},
		{"bottled 2.2 % less", vat("100", "133.4", "494"), "what was bottled is what there was"},
		{"bottled 2.2 % less, which was left", strings.Replace(vat("100", "133.4", "494"), "  test", "  left 2.9 gal, 90 proof at 60 F\n  test", 1), ""},
	} {
		l := of(t, c.text, 2024, 2)
		var said []string
		for _, x := range failed(l) {
			said = append(said, x.What)
		}
		for _, m := range l.Missing {
			said = append(said, "? "+m.What)
		}
		if c.what == "" {
			assert.Empty(t, said, c.name)
			continue
		}
		require.Len(t, said, 1, "%s: %v", c.name, said)
		assert.Contains(t, said[0], c.what, c.name)
	}
}

// TestStraightFromACask holds what was bottled straight from a cask against what went into
// it, on both sides of what it may find, and of what the wood may take in its time.
func TestStraightFromACask(t *testing.T) {
	for _, c := range []struct {
		name, day, lot, bottles string
		year                    int
		what                    string
	}{
		{"0.8 % more", "2024-02-21", "24B21", "509", 2024, ""},
		{"1.04 % more", "2024-02-21", "24B21", "510", 2024, "a cask gives no more than went in"},
		{"5.3 % less in 12 days", "2024-02-21", "24B21", "478", 2024, ""},
		{"5.5 % less in 12 days", "2024-02-21", "24B21", "477", 2024, "? where the other 5.5 % of cask K are"},
		{"30.6 % less in 3 years", "2027-02-09", "27B09", "350", 2027, ""},
		{"30.9 % less in 3 years", "2027-02-09", "27B09", "349", 2027, "? where the other 30.9 % of cask K are"},
	} {
		l := of(t, loft+"run \"24-01\" of \"B\" on 2024-02-01 {\n  used {\n    corn 600 lb lot \"C\"\n  }\n  fill {\n    2024-02-09 10:00 hearts 100 gal, 120 proof at 60 F\n    11:00 gauge 100 gal, 120 proof at 60 F\n    into \"K\" 100 gal, tare 100 lb\n  }\n}\nbottling \""+c.lot+"\" of \"K\" on "+c.day+" {\n  bottles "+c.bottles+" of 1 L at 90 proof\n  test 1 L, 90 proof at 60 F\n}\n", c.year, 2)
		var said []string
		for _, x := range failed(l) {
			said = append(said, x.What)
		}
		for _, m := range l.Missing {
			said = append(said, "? "+m.What)
		}
		if c.what == "" {
			assert.Empty(t, said, c.name)
			continue
		}
		require.Len(t, said, 1, "%s: %v", c.name, said)
		assert.Contains(t, said[0], c.what, c.name)
	}
}

// TestMissing leaves out what the books want, one thing at a time, and is told the line.
func TestMissing(t *testing.T) {
	whole := loft + filled("24-01", "2024-02-01", "K", 50) + "cask \"K\" {\n  2024-02-03 leaked 1 gal, 120 proof at 60 F\n}\nvat \"V\" on 2024-02-20 {\n  from \"K\" 45 gal, 118 proof at 60 F\n  2024-02-21 gauge 59 gal, 90 proof at 60 F\n}\nbottling \"24B21\" of \"V\" on 2024-02-21 {\n  test 750 mL, 90 proof at 60 F\n  bottles 295 of 750 mL at 90 proof\n}\n"
	require.Empty(t, of(t, whole, 2024, 2).Missing)
	for _, c := range []struct{ old, is, what, section string }{
		{", tare 100 lb", "", "the tare of cask K", "27 CFR 19.619"},
		{"into \"K\" 50.0 gal, tare 100 lb", "into \"K\"", "how much went into cask K", "27 CFR 19.585, 19.618"},
		{"50.0 gal, 120 proof at 60 F", "50.0 gal", "at which strength cask K was filled", "27 CFR 19.585, 19.618"},
		{"leaked 1 gal, 120 proof at 60 F", "leaked", "how much leaked from cask K", "27 CFR 19.590"},
		{"from \"K\" 45 gal, 118 proof at 60 F", "from \"K\"", "what cask K held when it was emptied", "27 CFR 19.618"},
		{"gauge 59 gal, 90 proof at 60 F", "gauge", "how much is in vat V", "27 CFR 19.598"},
		{" at 90 proof\n}", "\n}", "", ""},
		{"  test 750 mL, 90 proof at 60 F\n", "", "the fill and the strength that were found in a bottle of 24B21", "27 CFR 19.600"},
		{"corn 600 lb lot \"C\"", "corn 600 lb", "of which lot the corn of run 24-01 was", "27 CFR 19.584"},
		{"corn 600 lb lot \"C\"", "corn 600 lb lot \"D\"", "when lot D of corn came", "27 CFR 19.584"},
	} {
		text := strings.Replace(whole, c.old, c.is, 1)
		require.NotEqual(t, whole, text, c.old)
		l := of(t, text, 2024, 2)
		if c.what == "" {
			assert.Empty(t, l.Missing, c.old)
			continue
		}
		require.NotEmpty(t, l.Missing, c.old)
		found := false
		for _, m := range l.Missing {
			if strings.Contains(m.What, c.what) {
				found = true
				assert.Equal(t, c.section, m.Section)
				assert.NotEmpty(t, m.Mend)
				assert.Positive(t, m.Line)
			}
		}
		assert.True(t, found, "%s: %v", c.what, l.Missing)
	}
}

// TestDestroyed: how, and who saw it, is wanted in the remark (27 CFR 19.617).
func TestDestroyed(t *testing.T) {
	for remark, n := range map[string]int{"": 1, ` "fire in rack 2, J was there"`: 0} {
		l := of(t, loft+filled("24-01", "2024-02-01", "K", 50)+"cask \"K\" {\n  2024-02-03 destroyed 50 gal, 120 proof at 60 F"+remark+"\n}\n", 2024, 2)
		require.Len(t, l.Missing, n, remark)
		for _, m := range l.Missing {
			assert.Equal(t, "27 CFR 19.617", m.Section)
			assert.Equal(t, "how cask K was destroyed, and who saw it", m.What)
		}
	}
}

// TestFirstInFirstOut takes the oldest lot where a run names none.
func TestFirstInFirstOut(t *testing.T) {
	text := "store \"Loft\" {\n  2024-01-01 corn 500 lb lot \"A\"\n  2024-01-02 corn 500 lb lot \"B\"\n}\nrun \"24-01\" of \"X\" on 2024-02-01 {\n  used {\n    corn 700 lb\n  }\n}\n"
	l := of(t, text, 2024, 2)
	require.Len(t, l.Uses, 2)
	assert.Equal(t, "A", l.Uses[0].Lot)
	assert.True(t, l.Uses[0].Guess)
	assert.InDelta(t, 500*453.59237, l.Uses[0].Used, 1)
	assert.InDelta(t, 200*453.59237, l.Uses[1].Used, 1)
}

// TestPeople shows initials where they are asked for, and nowhere else.
func TestPeople(t *testing.T) {
	h, c, _ := read(t, strings.Replace(loft+filled("24-01", "2024-02-01", "K", 50), "  fill {\n", "  fill {\n    by \"MQX\"\n", 1))
	for _, people := range []bool{false, true} {
		l := ledger.Of(ledger.HouseOf(h, c, "us", people), 2024, 2)
		shown := fmt.Sprintf("%+v", l.Lines) + fmt.Sprintf("%+v", l.Gauges)
		assert.Equal(t, people, strings.Contains(shown, "MQX"))
	}
}

// TestLaws counts as each country does, and cites no section but where they are known.
func TestLaws(t *testing.T) {
	h, c, _ := read(t, loft+filled("24-01", "2024-02-01", "K", 50))
	for _, name := range slices.Sorted(maps.Keys(check.Builtin().Library.Countries)) {
		l := ledger.Of(ledger.HouseOf(h, c, name, false), 2024, 2)
		assert.Equal(t, name == "us", l.Lines[0].Section != "", name)
		assert.Equal(t, name == "us", len(l.Reports) > 0, name)
		var b strings.Builder
		require.NoError(t, ledgered.Text(&b, l, ledgered.Options{Full: true}))
		assert.Contains(t, b.String(), "Not an official form, not legal advice")
		assert.Contains(t, b.String(), l.Law.Country)
	}
	// 60 PG are 113.6 litres of pure alcohol (27 CFR 19.1; a gallon is 3.785 L, and ethanol
	// grows by half a per cent from 60 F to 20 C).
	l := ledger.Of(ledger.HouseOf(h, c, "uk", false), 2024, 2)
	assert.InDelta(t, 30*3.785411784, account(l, ledger.Wood).Closing.PureL, 0.7)
}

// TestMonth is the golden ledger of the example: it balances, and nothing is missing.
func TestMonth(t *testing.T) {
	h, err := check.Load(filepath.Join("..", "..", "..", "examples", "lantern-hollow"), check.Options{})
	require.NoError(t, err)
	c, said := h.Inventory()
	require.False(t, said.HasErrors())
	l := ledger.Of(ledger.HouseOf(h, c, "", false), 2026, 3)
	assert.Empty(t, failed(l))
	assert.Empty(t, l.Missing)
	var b strings.Builder
	require.NoError(t, ledgered.Text(&b, l, ledgered.Options{Full: true}))
	out := strings.ReplaceAll(b.String(), filepath.ToSlash(filepath.Join("..", "..", ".."))+"/", "")
	file := filepath.Join("testdata", "lantern-hollow.txt")
	if testflag.Update() {
		require.NoError(t, os.MkdirAll("testdata", 0o755))
		require.NoError(t, os.WriteFile(file, []byte(out), 0o644))
	}
	was, err := os.ReadFile(file)
	require.NoError(t, err)
	assert.Equal(t, string(was), out)
}

// TestMonths: the books of the example's 2026 balance in every month; and where a run gives more
// than went into it, the run is named, and all else balances. (Of the casks of the years before
// the records have no lots of grain, and the books say so.)
func TestMonths(t *testing.T) {
	dir := filepath.Join("..", "..", "..", "examples", "lantern-hollow")
	path := filepath.Join(dir, "runs", "2026.batch")
	text, err := os.ReadFile(path)
	require.NoError(t, err)
	off := func(text string, month time.Month) []ledger.Check {
		h, err := check.Load(dir, check.Options{Overlay: map[string][]byte{path: []byte(text)}})
		require.NoError(t, err)
		c, said := h.Inventory()
		require.False(t, said.HasErrors())
		return failed(ledger.Of(ledger.HouseOf(h, c, "", false), 2026, month))
	}
	for month := time.January; month <= time.June; month++ {
		assert.Empty(t, off(string(text), month), month)
	}
	at := strings.Index(string(text), `run "26-04"`)
	require.Positive(t, at)
	hearts := regexp.MustCompile(`hearts +\d\d\.\d gal at`)
	more := string(text[:at]) + strings.Replace(string(text[at:]), hearts.FindString(string(text[at:])), "hearts  50.0 gal at", 1)
	assert.Empty(t, off(more, time.January))
	found := off(more, time.February)
	require.Len(t, found, 1)
	assert.Contains(t, fmt.Sprint(found[0]), "`newmake review 26-04 --full`")
}

// BenchmarkLedger keeps a month of a house with 5,000 casks.
func BenchmarkLedger(b *testing.B) {
	files := fstest.MapFS{"house.batch": {Data: []byte(loft)}}
	for part := range 10 {
		var w strings.Builder
		for i := range 500 {
			i += 500 * part
			on := record.Date{Year: 2020, Month: 1, Day: 6}.After(i / 3)
			fmt.Fprint(&w, filled(fmt.Sprintf("N-%d", i), on.String(), fmt.Sprintf("K-%d", i), 50))
			if i%5 == 0 {
				fmt.Fprintf(&w, "cask \"K-%d\" {\n  %s sample 100 mL, 120 proof at 60 F\n}\n", i, on.After(200))
			}
		}
		files[fmt.Sprintf("runs-%d.batch", part)] = &fstest.MapFile{Data: []byte(w.String())}
	}
	h, err := check.LoadFS(files, "", check.Options{})
	require.NoError(b, err)
	c, _ := h.Inventory()
	require.Len(b, c.Lives, 5000)
	b.ResetTimer()
	for range b.N {
		booksOf(h, c, month(2024, 2))
	}
}
