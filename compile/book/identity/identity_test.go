package identity_test

import (
	"fmt"
	"os"
	"path/filepath"
	"strings"
	"testing"
	"testing/fstest"

	"github.com/stretchr/testify/assert"
	"github.com/stretchr/testify/require"

	"newmake/compile/book/identity"
	"newmake/compile/book/ledger"
	"newmake/compile/book/trace"
	"newmake/compile/law"
	"newmake/lang/check"
	"newmake/lang/diag"
)

// house is the example's plant and batches, with records of its own.
func house(t *testing.T, records string) identity.House {
	t.Helper()
	files := fstest.MapFS{"records.batch": {Data: []byte(records)}}
	at := filepath.Join("..", "..", "..", "examples", "lantern-hollow")
	for _, name := range []string{"house", "ferry-landing", "toll-road"} {
		text, err := os.ReadFile(filepath.Join(at, name+".batch"))
		require.NoError(t, err)
		files[name+".batch"] = &fstest.MapFile{Data: text}
	}
	h, err := check.LoadFS(files, "", check.Options{})
	require.NoError(t, err)
	texts, said := h.Inventory()
	require.False(t, said.HasErrors(), "%v", said)
	return identity.HouseOf(h, texts, ledger.Amounts(h, texts))
}

func all(*trace.Blend) bool { return true }

// of is what the last of a house's vats and bottlings is.
func of(t *testing.T, records string) identity.Identity {
	t.Helper()
	is := identity.Of(house(t, records), all)
	require.NotEmpty(t, is)
	return is[len(is)-1]
}

// run fills one cask with new make of a batch: hearts at 140 proof, filled at 120.
func run(number, batch, mashed, filled, serial string) string {
	return fill(number, batch, mashed, filled, serial, "140.0", "120.0")
}

func fill(number, batch, mashed, filled, serial, off, entry string) string {
	return fmt.Sprintf(`
run %q of %q on %s {
  fill {
    %s 14:00 hearts 46 gal, %s proof at 60 F
    14:20 reduce 8 gal
    15:40 gauge 53.2 gal, %s proof at 60 F
    into %q 53 gal, tare 108 lb, gross 511 lb
  }
}
`, number, batch, mashed, filled, off, entry, serial)
}

// vat puts casks together, each of 400 lb of spirit.
func vat(name, on string, casks ...string) string {
	s := fmt.Sprintf("\nvat %q on %s {\n", name, on)
	for _, c := range casks {
		s += fmt.Sprintf("  from %q gross 450 lb, tare 112 lb, 121.0 proof at 60 F\n", c)
	}
	return s + "}\n"
}

func bottled(of, on, standard, label string) string {
	s := fmt.Sprintf("\nbottling %q of %q on %s {\n", "lot", of, on)
	if standard != "" {
		s += "  standard " + standard + "\n"
	}
	return s + "  bottles 200 of 750 mL at " + label + "\n}\n"
}

const bourbon, rye = "Ferry Landing", "Toll Road"

// TestAgeToTheDay: 27 CFR 5.143(c), table 1 (5), two years for a straight, and 5.88(a)(3), four
// for what is bottled in bond, by the calendar.
func TestAgeToTheDay(t *testing.T) {
	for _, c := range []struct{ filled, dumped, standard, met, age, enough string }{
		{"2022-03-16", "2024-03-15", "straight-bourbon", law.NotMet, "1 year 11 months 28 days", "2024-03-16"},
		{"2022-03-16", "2024-03-16", "straight-bourbon", law.Met, "2 years", "2024-03-16"},
		{"2022-03-16", "2024-03-17", "straight-bourbon", law.Met, "2 years 1 day", "2024-03-16"},
		{"2022-03-16", "2026-03-15", "bottled-in-bond", law.NotMet, "3 years 11 months 27 days", "2026-03-16"},
		{"2022-03-16", "2026-03-16", "bottled-in-bond", law.Met, "4 years", "2026-03-16"},
		// Over a leap day, and from one: a year that has none is over with its February.
		{"2023-03-01", "2025-02-28", "straight-bourbon", law.NotMet, "1 year 11 months 27 days", "2025-03-01"},
		{"2024-02-29", "2026-02-27", "straight-bourbon", law.NotMet, "1 year 11 months 29 days", "2026-02-28"},
		{"2024-02-29", "2026-02-28", "straight-bourbon", law.Met, "2 years", "2026-02-28"},
		{"2024-02-29", "2028-02-28", "bottled-in-bond", law.NotMet, "3 years 11 months 30 days", "2028-02-29"},
		{"2024-02-29", "2028-02-29", "bottled-in-bond", law.Met, "4 years", "2028-02-29"},
	} {
		is := of(t, run("1", bourbon, c.filled, c.filled, "A")+vat("V", c.dumped, "A")+bottled("V", "2029-01-10", c.standard, "100 proof"))
		require.Len(t, is.Claims, 1)
		assert.Equal(t, c.met, is.Claims[0].Met, "%+v %+v", c, is.Claims[0].Missing)
		assert.Equal(t, c.age, is.Youngest.Words, "%+v", c)
		assert.Equal(t, c.enough, is.Claims[0].OldEnough, "%+v", c)
	}
}

// TestYoungest: the youngest counts, however little of it there is, and a second cask goes on
// where the first ended; what lies in a tank or a vat grows no older.
func TestYoungest(t *testing.T) {
	two := run("1", bourbon, "2022-03-01", "2022-03-16", "A") + run("2", bourbon, "2022-09-01", "2022-09-16", "B")
	is := of(t, two+vat("V", "2024-09-15", "A", "B")+bottled("V", "2026-01-10", "straight-bourbon", "94 proof"))
	assert.Equal(t, "1 year 11 months 30 days", is.Youngest.Words)
	assert.Equal(t, []string{"B"}, is.Youngest.Casks)
	require.Len(t, is.Claims[0].Missing, 1)
	assert.Equal(t, "1 year 11 months 30 days (run 2, cask B)", is.Claims[0].Missing[0].Found)
	assert.Equal(t, "2024-09-16", is.Claims[0].OldEnough)
	assert.InDelta(t, 50, is.Spirits[0].SharePct, 0.01)

	topped := run("1", bourbon, "2022-03-01", "2022-03-16", "A") + run("2", bourbon, "2023-03-01", "2023-03-16", "B") +
		"cask \"A\" {\n  2023-04-01 topped 3 gal, 120 proof at 60 F from run \"2\"\n}\n"
	is = of(t, topped+vat("V", "2024-09-15", "A"))
	assert.Equal(t, "1 year 5 months 14 days", is.Youngest.Words, "it was topped with new make")

	// 2022-03-16 to 2023-03-16, 365 days, and a tank, and again from 2023-06-01.
	again := run("1", bourbon, "2022-03-01", "2022-03-16", "A") +
		"cask \"A\" {\n  2023-03-16 emptied 50 gal, 120 proof at 60 F to \"Spirit vat\"\n}\n" +
		"vat \"V\" on 2023-06-01 {\n  from tank \"Spirit vat\" 50 gal, 120 proof at 60 F\n}\n"
	is = of(t, again)
	assert.Equal(t, "1 year", is.Youngest.Words, "in the tank it grows no older")
}

// TestFilledAfter: what goes into a cask after a part of it was drawn is not in that part; what
// goes in on the day is.
func TestFilledAfter(t *testing.T) {
	drawn := func(again string) identity.Identity {
		return of(t, run("1", bourbon, "2022-03-01", "2022-03-16", "A")+run("2", bourbon, "2023-03-01", "2023-03-16", "B")+
			"cask \"A\" {\n  "+again+" topped 20 gal, 120 proof at 60 F from run \"2\"\n}\n"+
			"vat \"V\" on 2024-05-01 {\n  from \"A\" part 25 gal, 120 proof at 60 F\n}\n")
	}
	after := drawn("2024-05-02")
	assert.Equal(t, "2 years 1 month 15 days", after.Youngest.Words)
	require.Len(t, after.Spirits, 1)
	assert.InDelta(t, 100, after.Spirits[0].SharePct, 0.01)
	on := drawn("2024-05-01")
	assert.Len(t, on.Spirits, 2)
	assert.NotEqual(t, after.Youngest.Words, on.Youngest.Words)
}

// TestBottle: 80 proof (27 CFR 5.143(a)), and 100 and no other for bottled in bond (5.88(a)(6)).
func TestBottle(t *testing.T) {
	for _, c := range []struct{ standard, label, met string }{
		{"straight-bourbon", "79.9 proof", law.NotMet}, {"straight-bourbon", "80 proof", law.Met},
		{"straight-bourbon", "39.9 % abv", law.NotMet}, {"straight-bourbon", "40 % abv", law.Met},
		{"bottled-in-bond", "99.9 proof", law.NotMet}, {"bottled-in-bond", "100 proof", law.Met}, {"bottled-in-bond", "100.1 proof", law.NotMet}, {"bottled-in-bond", "50 % abv", law.Met},
	} {
		is := of(t, run("1", bourbon, "2020-03-01", "2020-03-16", "A")+vat("V", "2026-03-16", "A")+bottled("V", "2026-03-20", c.standard, c.label))
		assert.Equal(t, c.met, is.Claims[0].Met, "%+v %+v", c, is.Claims[0].Missing)
	}
	weak := strings.Replace(vat("V", "2026-03-16", "A"), "\n}", "\n  2026-03-17 gauge 60 gal, 94.0 proof at 60 F\n}", 1)
	is := of(t, run("1", bourbon, "2020-03-01", "2020-03-16", "A")+weak)
	assert.Equal(t, []string{"Bourbon whisky", "Whisky"}, is.Also)
	require.Len(t, is.Near, 1)
	assert.Equal(t, "Bottled in bond", is.Near[0].Title, "it was reduced too far")
}

// TestSeason: bottled in bond is of one season (27 CFR 5.88(a)(2)): January to June, or July to
// December.
func TestSeason(t *testing.T) {
	still := func(number, day, serial string) string {
		return strings.Replace(run(number, bourbon, day, day, serial), "  fill {", "  spirit in \"Spirit still\" {\n    "+day+" 08:00 fire\n  }\n  fill {", 1)
	}
	for _, c := range []struct{ first, second, met string }{
		{"2020-01-02", "2020-06-30", law.Met},
		{"2020-06-30", "2020-07-01", law.NotMet},
		{"2020-07-01", "2020-12-31", law.Met},
		{"2020-12-31", "2021-01-02", law.NotMet},
		{"2020-03-01", "2021-03-01", law.NotMet},
	} {
		is := of(t, still("1", c.first, "A")+still("2", c.second, "B")+vat("V", "2026-03-16", "A", "B")+bottled("V", "2026-03-20", "bottled-in-bond, straight-bourbon", "100 proof"))
		assert.Equal(t, c.met, is.Claims[0].Met, "%+v %+v", c, is.Claims[0].Missing)
		assert.Equal(t, law.Met, is.Claims[1].Met, "%+v", c)
	}
	// It is of one kind, too (5.88(a)(1)): a bourbon and a rye of one season are two.
	for second, met := range map[string]string{bourbon: law.Met, "Ferry Landing, more rye": law.Met, rye: law.NotMet} {
		two := strings.Replace(still("2", "2020-02-02", "B"), bourbon, second, 1)
		is := of(t, still("1", "2020-01-02", "A")+two+vat("V", "2026-03-16", "A", "B")+bottled("V", "2026-03-20", "bottled-in-bond", "100 proof"))
		assert.Equal(t, met, is.Claims[0].Met, "%s %+v", second, is.Claims[0].Missing)
	}
	// The records of a run that say nothing of its stills bound the days by its mash and its fill.
	is := of(t, run("1", bourbon, "2020-06-25", "2020-07-05", "A")+vat("V", "2026-03-16", "A")+bottled("V", "2026-03-20", "bottled-in-bond", "100 proof"))
	assert.Equal(t, law.Met, is.Claims[0].Met)
	assert.Len(t, is.Claims[0].NotTold, 1)
}

// TestStrengths: 160 proof off the still, 125 into wood (27 CFR 5.143(c), table 1 (5)).
func TestStrengths(t *testing.T) {
	for _, c := range []struct{ off, entry, met string }{
		{"160.0", "125.0", law.Met}, {"160.1", "125.0", law.NotMet}, {"160.0", "125.1", law.NotMet},
	} {
		is := of(t, fill("1", bourbon, "2020-03-01", "2020-03-16", "A", c.off, c.entry)+vat("V", "2026-03-16", "A")+bottled("V", "2026-03-20", "straight-bourbon", "94 proof"))
		assert.Equal(t, c.met, is.Claims[0].Met, "%+v %+v", c, is.Claims[0].Missing)
	}
}

// TestUsedWood: a cask that was filled before is used, whatever its recipe fills.
func TestUsedWood(t *testing.T) {
	is := of(t, run("1", bourbon, "2018-03-01", "2018-03-16", "A")+vat("V", "2020-03-16", "A")+run("2", bourbon, "2020-03-15", "2020-03-20", "A")+vat("W", "2024-03-16", "A")+bottled("W", "2024-03-20", "straight-bourbon", "94 proof"))
	assert.Equal(t, law.NotMet, is.Claims[0].Met)
	assert.Contains(t, is.Claims[0].Missing[0].Found, "used charred-oak")
	assert.Contains(t, is.Also, "Whisky")
	assert.Contains(t, is.Also, "Whisky distilled from bourbon mash")
	assert.NotContains(t, is.Also, "Bourbon whisky")
}

// TestUsedWoodOfUnknownStrength: light whisky is over 160 proof off the still, whisky distilled
// from bourbon mash at most that: where nobody wrote it, it is not said to be both.
func TestUsedWoodOfUnknownStrength(t *testing.T) {
	used := func(off string) identity.Identity {
		fills := strings.Replace(fill("1", bourbon, "2018-03-01", "2018-03-16", "A", off, "120.0"), "    2018-03-16 14:00 hearts 46 gal, "+off+" proof at 60 F\n    14:20 reduce", "    2018-03-16 14:20 reduce", map[bool]int{true: 1}[off == "140.0"])
		return of(t, "cask \"A\" {\n  wood 53 gal used charred-oak\n}\n"+fills+vat("V", "2020-03-16", "A")+bottled("V", "2020-03-20", "", "140 proof"))
	}
	unwritten := used("140.0")
	assert.Contains(t, unwritten.Also, "Whisky distilled from bourbon mash")
	assert.NotContains(t, unwritten.Also, "Light whisky")
	assert.Contains(t, used("161.0").Also, "Light whisky")
	assert.NotContains(t, used("161.0").Also, "Whisky distilled from bourbon mash")
	assert.NotContains(t, used("160.0").Also, "Light whisky")
}

// TestMixed: 27 CFR 5.143(c), table 1 (5), (10), (11), (12). Of one type the mixture is the
// straight; of two a blend of straights; with what is too young a blended whisky, by its share.
func TestMixed(t *testing.T) {
	old := run("1", bourbon, "2020-03-01", "2020-03-16", "A") + run("2", rye, "2020-03-01", "2020-03-16", "B")
	is := of(t, old+vat("V", "2026-03-16", "A", "B"))
	assert.Empty(t, is.Claims, "the batches do not agree")
	assert.Contains(t, is.Also, "Blend of straight whiskies")
	assert.NotContains(t, is.Also, "Straight bourbon whisky")
	assert.Contains(t, is.Also, "Blended whisky")
	assert.NotContains(t, is.Also, "Blended bourbon whisky", "half of it is none")

	one := run("1", bourbon, "2020-03-01", "2020-03-16", "A") + run("2", "Ferry Landing, more rye", "2020-03-01", "2020-03-16", "B")
	is = of(t, one+vat("V", "2026-03-16", "A", "B"))
	require.Len(t, is.Claims, 1)
	assert.Equal(t, "Straight bourbon whisky", is.Claims[0].Title)
	assert.NotContains(t, is.Also, "Blend of straight whiskies", "of one type it is that straight")

	// A bourbon of 2 years and a rye of one: net 338 lb each, or part of it.
	for _, c := range []struct {
		netA, netB float64
		has        []string
		not        []string
	}{
		{200, 192, []string{"Blended whisky", "Blended bourbon whisky"}, []string{"Blend of straight whiskies"}}, // 51.02 %
		{200, 193, []string{"Blended whisky"}, []string{"Blended bourbon whisky"}},                               // 50.89 %
		{80, 320, []string{"Blended whisky"}, []string{"Blended bourbon whisky"}},                                // 20.0 %
		{79, 320, []string{"Whisky"}, []string{"Blended whisky"}},                                                // 19.8 %
	} {
		young := run("1", bourbon, "2020-03-01", "2020-03-16", "A") + run("2", rye, "2021-03-01", "2021-03-16", "B")
		v := fmt.Sprintf("vat \"V\" on 2022-03-16 {\n  from \"A\" gross %v lb, tare 100 lb, 120.0 proof at 60 F\n  from \"B\" gross %v lb, tare 100 lb, 120.0 proof at 60 F\n}\n", 100+c.netA, 100+c.netB)
		is := of(t, young+v)
		for _, s := range c.has {
			assert.Contains(t, is.Also, s, "%+v", c)
		}
		for _, s := range c.not {
			assert.NotContains(t, is.Also, s, "%+v", c)
		}
	}
}

// TestNotTold: what is not written is not made up.
func TestNotTold(t *testing.T) {
	is := of(t, run("1", bourbon, "2020-03-01", "2020-03-16", "A")+"cask \"B\" {\n  2021-01-01 gross 400 lb\n}\n"+vat("V", "2026-03-16", "A", "B")+bottled("V", "2026-03-20", "straight-bourbon", "94 proof"))
	assert.Nil(t, is.Youngest)
	assert.Equal(t, []string{"no run says that it filled it"}, is.Unwritten)
	assert.Equal(t, law.Stated, is.Claims[0].Met)
	assert.Empty(t, is.Also)
}

// TestSaid: a bottling that is not what it is sold as is an error at its line; by its batches
// alone, a warning.
func TestSaid(t *testing.T) {
	young := run("1", bourbon, "2022-03-01", "2022-03-16", "A") + vat("V", "2024-03-15", "A")
	said := identity.Said(house(t, young+bottled("V", "2026-01-10", "straight-bourbon", "94 proof")), all)
	require.Len(t, said, 1)
	assert.Equal(t, diag.CodeSoldAs, said[0].Code)
	assert.Equal(t, "bottling lot is sold as Straight bourbon whisky, and is not: in wood at least 2 years: 1 year 11 months 28 days, would have been on 2024-03-16", said[0].Summary)
	assert.Contains(t, said[0].At.Text(), "standard straight-bourbon")
	assert.Contains(t, said[0].Help, "`standard bourbon` or `standard whisky`")

	said = identity.Said(house(t, young+bottled("V", "2026-01-10", "", "94 proof")), all)
	require.Len(t, said, 1)
	assert.Equal(t, diag.Warning, said[0].Severity)

	assert.Empty(t, identity.Said(house(t, young+bottled("V", "2026-01-10", "bourbon", "94 proof")), all))
}
