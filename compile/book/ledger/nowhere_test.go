package ledger_test

import (
	"strings"
	"testing"

	"github.com/stretchr/testify/assert"
)

// whats are the failed checks of a month, and the fields that it misses, behind a "?".
func whats(t *testing.T, text string, year int, m int) string {
	t.Helper()
	l := of(t, text, year, m)
	var out []string
	for _, c := range failed(l) {
		out = append(out, c.What)
	}
	for _, w := range l.Missing {
		out = append(out, "? "+w.What)
	}
	return strings.Join(out, "\n")
}

// TestFromNowhere: spirit that is drawn from what nothing was put into fails a check, from a
// tank, as what a cask is topped with, and as what is bottled.
func TestFromNowhere(t *testing.T) {
	whole := loft + filled("24-01", "2024-02-01", "K", 50)
	vat := func(from string) string {
		return whole + "vat \"V\" on 2024-02-20 {\n  from tank \"" + from + "\" 2 gal, 120 proof at 60 F\n}\n"
	}
	kept := strings.Replace(whole, "    into \"K\"", "    left 2 gal, 120 proof at 60 F to \"Small tank\"\n    into \"K\"", 1)
	assert.Contains(t, whats(t, vat("Nowhere"), 2024, 2), "all spirit comes from somewhere")
	assert.Contains(t, whats(t, vat("Nowhere"), 2024, 2), "a vat loses no less than nothing")
	assert.NotContains(t, whats(t, strings.Replace(vat("Small tank"), whole, kept, 1), 2024, 2), "nothing")

	top := func(from string) string {
		return whole + "cask \"K\" {\n  2024-02-12 topped 1 gal, 120 proof at 60 F" + from + "\n}\n"
	}
	assert.Contains(t, whats(t, top(""), 2024, 2), "all spirit comes from somewhere")
	assert.NotContains(t, whats(t, top(` from "24-01"`), 2024, 2), "all spirit comes from somewhere")
}

// TestVatFinds: the gauges of a vat may find 2 % of what went in, and no more, however many
// steps it took.
func TestVatFinds(t *testing.T) {
	vat := func(first, second string) string {
		return whats(t, loft+filled("24-01", "2024-02-01", "K", 50)+"vat \"V\" on 2024-02-20 {\n  from \"K\" 45 gal, 120 proof at 60 F\n  2024-02-21 gauge "+first+" gal, 120 proof at 60 F\n  2024-02-22 gauge "+second+" gal, 120 proof at 60 F\n}\n", 2024, 2)
	}
	assert.Empty(t, vat("45.4", "45.89"))
	assert.Equal(t, "a vat loses no less than nothing", vat("45.4", "45.91"))
}

// TestFeintsBeforeHearts: a run without low wines whose feints are gauged days before its hearts
// gives no more than it holds, at the end of no day and of no month.
func TestFeintsBeforeHearts(t *testing.T) {
	text := loft + "run \"24-01\" of \"B\" on 2024-02-01 {\n  used {\n    corn 600 lb lot \"C\"\n  }\n  spirit {\n    2024-02-28 12:00 off\n    feints 40 gal, 70 proof at 60 F\n  }\n  fill {\n    2024-03-02 10:00 hearts 50 gal, 120 proof at 60 F\n    into \"K\" 50 gal, tare 100 lb\n  }\n}\n"
	assert.Empty(t, whats(t, text, 2024, 2))
	assert.Empty(t, whats(t, text, 2024, 3))
	feb, mar := of(t, text, 2024, 2), of(t, text, 2024, 3)
	assert.InDelta(t, 28, feb.Accounts[0].Closing.ProofGallons, 0.01)
	assert.InDelta(t, 28, mar.Accounts[0].Closing.ProofGallons, 0.01)
	assert.InDelta(t, 60, mar.Accounts[0].In.ProofGallons, 0.01)
}

// TestUnwrittenFeints: what a charge holds more than its hearts is feints that are asked for, no
// loss, on both sides of what a still keeps. A later charge says how much they were.
func TestUnwrittenFeints(t *testing.T) {
	run := func(lowWines string) string {
		return loft + "run \"24-01\" of \"B\" on 2024-02-01 {\n  used {\n    corn 600 lb lot \"C\"\n  }\n  strip {\n    2024-02-05 10:00 low-wines " + lowWines + " gal, 50 proof at 60 F\n  }\n  spirit {\n    2024-02-06 12:00 off\n  }\n  fill {\n    2024-02-07 10:00 hearts 50 gal, 120 proof at 60 F\n    into \"K\" 50 gal, tare 100 lb\n  }\n}\n"
	}
	assert.Empty(t, whats(t, run("129.0"), 2024, 2)) // 64.5 PG, of which 7.0 % are not in the hearts
	assert.Contains(t, whats(t, run("129.1"), 2024, 2), "? how much feints run 24-01 left")
	l := of(t, run("180"), 2024, 2)
	assert.InDelta(t, 30, l.Accounts[0].Closing.ProofGallons, 0.01, "they stand as on hand")
	assert.InDelta(t, 0, l.Accounts[0].Lost.ProofGallons, 0.01)

	l = of(t, run("180")+"run \"24-02\" of \"B\" on 2024-03-01 {\n  spirit {\n    2024-03-06 08:00 charge feints 40 gal, 70 proof at 60 F from \"24-01\"\n  }\n}\n", 2024, 3)
	assert.InDelta(t, 28, l.Accounts[0].Closing.ProofGallons, 0.01, "they are in the still")
	assert.InDelta(t, 2, l.Accounts[0].Lost.ProofGallons, 0.01, "and the rest was never there")
}

// TestBottledTwice: of a vat that is bottled in parts the rest is asked for when nothing more is
// made of it, and not where what is left was gauged.
func TestBottledTwice(t *testing.T) {
	vat := loft + filled("24-01", "2024-02-01", "K", 50) + "vat \"V\" on 2024-02-20 {\n  from \"K\" 50 gal, 120 proof at 60 F\n}\n"
	bottling := func(lot, day, more string) string {
		return "bottling \"" + lot + "\" of \"V\" on " + day + " {\n  bottles 126 of 750 mL at 120 proof\n  test 750 mL, 120 proof at 60 F\n" + more + "}\n"
	}
	one, two := bottling("24B21", "2024-02-21", ""), bottling("24B22", "2024-02-22", "")
	assert.Contains(t, whats(t, vat+one, 2024, 2), "? where the other 50.")
	assert.Empty(t, whats(t, vat+one+two, 2024, 2))
	assert.Empty(t, whats(t, vat+bottling("24B21", "2024-02-21", "")+bottling("24B21A", "2024-02-21", ""), 2024, 2))
	assert.Empty(t, whats(t, vat+bottling("24B21", "2024-02-21", "  left 25 gal, 120 proof at 60 F\n"), 2024, 2))
	assert.Contains(t, whats(t, vat+bottling("24B21", "2024-02-21", "  left 22 gal, 120 proof at 60 F\n"), 2024, 2), "a gauge finds what the books say")
	assert.NotContains(t, whats(t, vat+one+"vat \"W\" on 2024-02-23 {\n  from vat \"V\" 25 gal, 120 proof at 60 F\n}\n", 2024, 2), "where the other")
}

// TestFeintsFromNowhere: feints that were gauged as they were charged, and of which nothing says
// from where, are found by the books; it does not balance then.
func TestFeintsFromNowhere(t *testing.T) {
	run := func(charge string) string {
		return loft + "run \"24-01\" of \"B\" on 2024-02-01 {\n  used {\n    corn 600 lb lot \"C\"\n  }\n  strip {\n    2024-02-04 10:00 low-wines 100 gal, 50 proof at 60 F\n  }\n  spirit {\n    2024-02-05 09:00 charge low-wines\n" + charge + "    11:00 feints 40 gal, 60 proof at 60 F\n  }\n  fill {\n    2024-02-06 10:00 hearts 50 gal, 120 proof at 60 F\n    into \"K\" 50 gal, tare 100 lb\n  }\n}\n"
	}
	assert.Contains(t, whats(t, run("    charge feints 60 gal, 60 proof at 60 F\n"), 2024, 2), "all spirit comes from somewhere\n? from where the feints of run 24-01 came")
	before := "run \"24-00\" of \"B\" on 2024-01-01 {\n  spirit {\n    2024-01-05 11:00 feints 60 gal, 60 proof at 60 F\n  }\n}\n"
	assert.NotContains(t, whats(t, before+run("    charge feints 60 gal, 60 proof at 60 F from \"24-00\"\n"), 2024, 2), "somewhere")
}
