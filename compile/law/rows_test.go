package law_test

import (
	"maps"
	"slices"
	"strings"
	"testing"
	"time"

	"github.com/stretchr/testify/assert"
	"github.com/stretchr/testify/require"

	"newmake/compile/law"
	"newmake/compile/lot"
	"newmake/compile/plan"
	"newmake/lang/check"
	"newmake/lang/recipe"
)

// The standards row by row: the figures stand here a second time, as the sections
// give them, and nothing is taken from the library but the names. Each standard is
// given a whisky that stands at every limit, and one step outside of each.

// A whisky is as much of a batch as the law looks at.
type whisky struct {
	bill      []share
	enzyme    bool
	offStill  recipe.Strength
	into      recipe.Strength
	wood      wood
	days      float64 // in the wood
	bottled   recipe.Strength
	distilled law.Days
}

type share struct {
	of     string
	malted bool
	pct    float64
}

type wood struct {
	new, charred bool
	of           string
	litres       float64 // none if 0
}

const year = 365.25

func proof(p float64) recipe.Strength { return recipe.Strength{Value: p / 200, Basis: recipe.Proof} }
func abv(pct float64) recipe.Strength { return recipe.Strength{Value: pct / 100} }

func day(year int, month time.Month, day int) time.Time {
	return time.Date(year, month, day, 0, 0, 0, 0, time.UTC)
}

// held gives how the whisky stands against each condition of a standard, as
// "section: what is asked", and the notes.
func (w whisky) held(s *recipe.Standard) (stands map[string]string, notes string) {
	b := recipe.Batch{Standard: s}
	for _, g := range w.bill {
		b.Bill.Lines = append(b.Bill.Lines, recipe.BillLine{Grain: &recipe.Grain{Cereal: g.of, Malted: g.malted}, Share: g.pct / 100})
	}
	if w.enzyme {
		b.Mash.Steps = []recipe.MashStep{{Verb: recipe.MashDose, Enzyme: &recipe.Enzyme{}}}
	}
	b.Cask.Entry, b.Cask.BottleAt, b.Cask.RestS = w.into, w.bottled, w.days*dayS
	if w.wood.litres > 0 {
		b.Cask.Kind = &recipe.CaskWood{Tree: w.wood.of, Charred: w.wood.charred}
		b.Cask.New, b.Cask.SizeM3 = w.wood.new, w.wood.litres*litreM3
	}
	stands = map[string]string{}
	off := lot.Strength(w.offStill)
	var said []string
	for _, c := range law.Held(&b, plan.Lot{AbvPct: off.AbvPct, Proof: off.Proof}, w.distilled, plan.Cask{}).Conditions {
		if c.Section == "" {
			said = append(said, c.Asks)
			continue
		}
		// What stands after a colon says what the section says; only the section counts.
		section, _, _ := strings.Cut(c.Section, ": ")
		stands[section+": "+c.Asks] = c.Met
	}
	return stands, strings.Join(said, "\n")
}

// A step changes a whisky, and with it how it stands against the conditions named
// and no others.
type step struct {
	to  func(*whisky)
	now map[string]string
}

// out is a step outside of the conditions.
func out(to func(*whisky), asks ...string) step { return becomes("NOT met", to, asks...) }

// say is a step that makes the label say something.
func say(to func(*whisky), asks ...string) step { return becomes("not tested", to, asks...) }

func becomes(stands string, to func(*whisky), asks ...string) step {
	s := step{to, map[string]string{}}
	for _, a := range asks {
		s.now[a] = stands
	}
	return s
}

type row struct {
	inside whisky
	steps  []step
	open   []string // conditions that nothing here tests, and how they stand
	notes  []string // words of what the standard only says
}

func (w *whisky) mash(bill ...share) { w.bill = bill }

// us is what class and type share in the United States: 27 CFR 5.143(a) and Table 1
// to (c), read in copies; the rows of the table in a translation.
const (
	class   = "5.143(a): grain at least 100 %"
	eighty  = "5.143(a): bottled at least 80 proof (40 % abv)"
	ageSaid = "27 CFR 5.74: label, if under 4 years in wood: state the age of the youngest whisky"
	reused  = "5.74, read in the TTB manual, ch. 8, in a copy: label, if it rests in used wood: stored ... years in reused cooperage"
	madeUS  = "5.143(b): made in United States"
	abroad  = "made abroad it is allowed"
	nothing = "nothing added but water"
	filters = "more than 15 % of the acids, esters and other congeners or more than 25 % of the colour"
)

func table1(row string) string { return "5.143(c), table 1 (" + row + "): " }

func underStrength(w *whisky) { w.bottled = proof(79.9) }

var (
	charredOak = wood{true, true, "oak", 200}
	plainOak   = wood{true, false, "oak", 200}
	usedOak    = wood{false, true, "oak", 200}
)

// noGrain has a tenth of a per cent of something that is no grain.
func noGrain(w *whisky) {
	w.bill = slices.Clone(w.bill)
	w.bill[len(w.bill)-1].pct -= 0.1
}

// typed is a type of rows 2, 3, 5, 6 and 7: a share of one grain, 160 proof off the
// still.
func typed(number, grain, said string, malted bool, pct float64) row {
	asks := table1(number) + said + " at least 51 %"
	if pct == 80 {
		asks = table1(number) + said + " at least 80 %"
	}
	steps := []step{
		out(func(w *whisky) { w.mash(share{grain, malted, pct - 0.1}, share{"other", true, 100.1 - pct}) }, asks),
		out(noGrain, class),
		out(func(w *whisky) { w.offStill = proof(160.1) }, table1(number)+"off the still at most 160 proof (80 % abv)"),
		out(underStrength, eighty),
	}
	if malted {
		steps = append(steps, out(func(w *whisky) { w.mash(share{grain, false, 100}) }, asks))
	}
	return row{
		inside: whisky{
			bill: []share{{grain, malted, pct}, {"other", true, 100 - pct}}, offStill: proof(160), into: proof(125),
			wood: charredOak, days: 4 * year, bottled: proof(80),
		},
		steps: steps,
	}
}

func (r row) entry(number string) row {
	entry := table1(number) + "into wood at most 125 proof (62.5 % abv)"
	return r.with(out(func(w *whisky) { w.into = proof(125.1) }, entry),
		step{func(w *whisky) { w.into = recipe.Strength{} }, map[string]string{entry: "not tested"}})
}

func (r row) with(s ...step) row        { r.steps = append(slices.Clone(r.steps), s...); return r }
func (r row) opened(asks ...string) row { r.open = append(slices.Clone(r.open), asks...); return r }
func (r row) noted(words ...string) row { r.notes = append(slices.Clone(r.notes), words...); return r }
func (r row) in(w wood) row             { r.inside.wood = w; return r }
func to(w wood) func(*whisky)           { return func(s *whisky) { s.wood = w } }
func rested(days float64) func(*whisky) { return func(s *whisky) { s.days = days } }
func litres(of wood, l float64) wood    { of.litres = l; return of }
func chestnut(of wood) wood             { of.of = "chestnut"; return of }

// newOak is the wood of rows 2 and 5: charred new oak, and no other.
func (r row) newOak(number string) row {
	asks := table1(number) + "wood: new charred oak"
	return r.with(out(to(plainOak), asks), out(to(usedOak), asks), out(to(chestnut(charredOak)), asks)).young()
}

// young is a label that states the age.
func (r row) young() row { return r.with(say(rested(4*year-2), ageSaid)) }

// straight is two years in wood: what is younger than four says its age.
func (r row) straight(number string) row {
	s := out(rested(2*year-2), table1(number)+"in wood at least 2 years")
	s.now[ageSaid] = "not tested"
	return r.with(s, say(rested(2*year), ageSaid)).noted(nothing, filters)
}

// usedOnly is the wood of row 7.
func (r row) usedOnly(number string) row {
	asks := table1(number) + "wood: used oak"
	r = r.in(usedOak)
	r.steps = append(slices.Clone(r.steps), step{to(charredOak), map[string]string{asks: "NOT met", reused: "met"}},
		step{to(plainOak), map[string]string{asks: "NOT met", reused: "met"}}, out(to(chestnut(usedOak)), asks))
	return r.opened(reused, madeUS)
}

// european is what Regulation (EU) 2019/787, annex I, category 2, and the laws like
// it ask: under 94.8 %, casks of at most 700 L, three years, 40 %.
func european(bill []share, offStill, wooden, age, bottled string) row {
	w := litres(usedOak, 700)
	return row{
		inside: whisky{bill: bill, offStill: abv(94.7), into: abv(63.5), wood: w, days: 3 * year, bottled: abv(40)},
		steps: []step{
			out(func(w *whisky) { w.offStill = abv(94.8) }, offStill),
			out(to(litres(w, 701)), wooden),
			out(rested(3*year-2), age),
			out(func(w *whisky) { w.bottled = abv(39.9) }, bottled),
		},
	}
}

// annex takes what is asked of the grain besides, and missed with it.
func annex(bill []share, besides ...string) row {
	return european(bill, "annex I, cat. 2(a)(ii): off the still under 94.8 % abv", "annex I, cat. 2(a)(iii): wood: wood of at most 700 L (185 gal)",
		"annex I, cat. 2(a)(iii): in wood at least 3 years", "annex I, cat. 2(b): bottled at least 40 % abv").
		with(out(noGrain, append(besides, annexAny)...)).noted("saccharified by the diastase of the malt, with or without other natural enzymes; unmalted cereals are whole grains")
}

const (
	annexAny  = "annex I, cat. 2(a)(i): grain at least 100 %"
	annexMalt = "annex I, cat. 2(a)(i): some malted grain"
	scotAny   = "reg. 3(1)(a): grain at least 100 %"
	scotMalt  = "reg. 3(1)(a): some malted barley"
	actAny    = "s. 1(3)(a): grain at least 100 %"
	actMalt   = "s. 1(3)(a)(i): some malted grain"
)

// rawAndMalt is mostly raw grain, and as little malted barley as there can be.
func rawAndMalt() []share { return []share{{"barley", true, 0.1}, {"wheat", false, 99.9}} }

func allMalt() []share { return []share{{"barley", true, 50}, {"barley", true, 50}} }

func noMalt(w *whisky) { w.mash(share{"barley", false, 50}, share{"wheat", false, 50}) }

func scotch(bill []share) row {
	oak := "reg. 3(1)(c): wood: new oak or used oak of at most 700 L (185 gal)"
	return european(bill, "reg. 3(1)(b): off the still under 94.8 % abv", oak, "reg. 3(1)(e): in wood at least 3 years", "reg. 3(1)(i): bottled at least 40 % abv").
		with(out(to(chestnut(usedOak)), oak), out(func(w *whisky) { w.enzyme = true }, "reg. 3(1)(a)(ii): no enzymes but the grain's own")).
		opened("reg. 3(1)(a) and (d): made in Scotland").
		noted("nothing added but water and plain caramel", "reg. 3(1)(h)", "by yeast alone", "excise warehouse", "reg. 5(2)")
}

func irish(bill []share, besides ...string) row {
	return european(bill, "s. 1(3)(a)(iii): off the still under 94.8 % abv", "s. 1(3)(b): wood: wood of at most 700 L (185 gal)", "s. 1(3)(b): in wood at least 3 years",
		"Regulation (EU) 2019/787, annex I, cat. 2(b), read in a copy: bottled at least 40 % abv").
		with(out(noGrain, append(besides, actAny)...)).opened("s. 1(3)(a) and (b): made in Ireland or Northern Ireland").
		noted("with or without other natural diastases", "nothing added but water and plain caramel")
}

func singleMalt(number string) row {
	only := table1(number) + "malted barley at least 100 %"
	oak := table1(number) + "wood: new oak or used oak of at most 700 L (185 gal)"
	return row{
		inside: whisky{bill: allMalt(), offStill: proof(160), into: proof(140), wood: litres(charredOak, 700), days: 4 * year, bottled: proof(80)},
		steps: []step{
			out(func(w *whisky) { w.mash(share{"barley", true, 99.9}, share{"wheat", true, 0.1}) }, only),
			out(func(w *whisky) { w.mash(share{"barley", true, 99.9}, share{"barley", false, 0.1}) }, only),
			out(func(w *whisky) { w.offStill = proof(160.1) }, table1(number)+"off the still at most 160 proof (80 % abv)"),
			out(to(litres(plainOak, 701)), oak), out(to(chestnut(usedOak)), oak),
			step{to(litres(plainOak, 700)), nil}, step{to(litres(usedOak, 700)), nil}, // these will do
			out(underStrength, table1(number)+"bottled at least 80 proof (40 % abv)"),
		},
	}.young().opened(table1(number)+"made in United States").noted("one distillery; caramel colouring only, and disclosed", "19 January 2030")
}

func theStandards() map[string]row {
	spring := law.Days{From: day(2026, 3, 3), To: day(2026, 3, 7)}
	rows := map[string]row{
		"whisky": {
			inside: whisky{bill: rawAndMalt(), offStill: proof(189.9), into: proof(150), wood: charredOak, days: 4 * year, bottled: proof(80)},
			steps: []step{
				out(noGrain, class),
				out(func(w *whisky) { w.offStill = proof(190) }, "5.143(a): off the still under 190 proof (95 % abv)"),
				out(to(chestnut(charredOak)), "5.143(a): wood: new oak or used oak"),
				out(underStrength, eighty),
				say(to(usedOak), reused),
				say(rested(4*year-2), ageSaid),
				{func(w *whisky) { w.into = proof(190) }, nil}, // no limit
			},
		},
		"corn-whisky": typed("3", "corn", "corn", false, 80).entry("3").in(usedOak).with(
			out(to(charredOak), table1("3")+"wood: used oak or new uncharred oak or none"),
			step{to(plainOak), nil}, step{func(w *whisky) { w.wood, w.into = wood{}, proof(160) }, nil}, // it need not be stored
		).noted("must be designated corn whisky", abroad),
		"straight-corn": typed("6", "corn", "corn", false, 80).entry("6").in(usedOak).with(
			out(to(charredOak), table1("6")+"wood: used oak or new uncharred oak"), step{to(plainOak), nil},
		).straight("6").young().noted(abroad),
		"light-whisky": {
			inside: whisky{bill: rawAndMalt(), offStill: proof(160.1), into: proof(150), wood: usedOak, days: year, bottled: proof(80)},
			steps: []step{
				out(noGrain, class),
				out(func(w *whisky) { w.offStill = proof(160) }, table1("8")+"off the still over 160 proof (80 % abv)"),
				out(func(w *whisky) { w.offStill = proof(190) }, table1("8")+"off the still under 190 proof (95 % abv)"),
				out(to(charredOak), table1("8")+"wood: used oak or new uncharred oak"),
				out(underStrength, eighty),
				{to(plainOak), nil},
			},
			open: []string{madeUS},
		},
		"american-single-malt": singleMalt("15"),
		"straight-american-single-malt": func() row {
			r := singleMalt("16")
			s := out(rested(2*year-2), table1("16")+"in wood at least 2 years")
			s.now[ageSaid] = "not tested"
			return r.with(s, say(rested(2*year), ageSaid))
		}(),
		"tennessee": {
			inside: whisky{bill: []share{{"corn", false, 51}, {"other", true, 49}}, offStill: proof(160), into: proof(125), wood: charredOak, days: 4 * year, bottled: proof(80)},
			steps: []step{
				out(noGrain, "57-2-106: grain at least 100 %"),
				out(func(w *whisky) { w.mash(share{"corn", false, 50.9}, share{"other", true, 49.1}) }, "57-2-106: corn at least 51 %"),
				out(func(w *whisky) { w.offStill = proof(160.1) }, "57-2-106: off the still at most 160 proof (80 % abv)"),
				out(func(w *whisky) { w.into = proof(125.1) }, "57-2-106: into wood at most 125 proof (62.5 % abv)"),
				out(to(usedOak), "57-2-106: wood: new charred oak"), out(to(plainOak), "57-2-106: wood: new charred oak"),
				out(underStrength, "57-2-106: bottled at least 80 proof (40 % abv)"),
				say(rested(4*year-2), ageSaid),
			},
			open:  []string{"57-2-106: made in Tennessee"},
			notes: []string{"maple charcoal"},
		},
		"bottled-in-bond": {
			inside: whisky{bill: rawAndMalt(), offStill: proof(189.9), into: proof(150), wood: usedOak, days: 4 * year, bottled: proof(100), distilled: spring},
			steps: []step{
				out(noGrain, class),
				out(func(w *whisky) { w.offStill = proof(190) }, "5.143(a): off the still under 190 proof (95 % abv)"),
				out(to(chestnut(charredOak)), "5.88(a)(3): wood: new oak or used oak"),
				out(rested(4*year-2), "5.88(a)(3): in wood at least 4 years"),
				out(func(w *whisky) { w.bottled = proof(99.9) }, "5.88(a)(6): bottled at exactly 100 proof (50 % abv)"),
				out(func(w *whisky) { w.bottled = proof(100.1) }, "5.88(a)(6): bottled at exactly 100 proof (50 % abv)"),
				out(func(w *whisky) { w.distilled.To = day(2026, 7, 1) }, "5.88(a)(2); which months they are: distilled in one season, January to June or July to December"),
				{func(w *whisky) { w.distilled.To = day(2026, 6, 30) }, nil},
			},
			notes: []string{"a type stands beside it", "one kind, one distiller, one distillery (5.88(a)(1)-(2))", "pure water alone (5.88(a)(4)-(5))", "0.3 % abv"},
		},

		"scotch": scotch(rawAndMalt()).with(out(noGrain, scotAny),
			out(func(w *whisky) { w.mash(share{"rye", true, 50}, share{"wheat", false, 50}) }, scotMalt)),
		"scotch-single-malt": scotch(allMalt()).with(
			out(func(w *whisky) { w.mash(share{"barley", true, 99.9}, share{"wheat", true, 0.1}) }, "reg. 3(2), single malt: malted barley at least 100 %"),
			out(func(w *whisky) { w.mash(share{"barley", true, 99.9}, share{"barley", false, 0.1}) }, "reg. 3(2), single malt: malted barley at least 100 %"),
		).opened("reg. 3(2): pot still").noted("no other cereal (reg. 3(2)); bottled in Scotland since 23 November 2012 (reg. 7(3))"),
		"scotch-grain": scotch(rawAndMalt()).with(out(noGrain, scotAny),
			out(func(w *whisky) { w.mash(share{"rye", true, 50}, share{"wheat", false, 50}) }, scotMalt),
			out(func(w *whisky) { w.mash(allMalt()...) }, "reg. 3(2): not Single malt Scotch whisky"),
		).noted("one distillery (reg. 3(2))"),

		"irish": irish(rawAndMalt()).with(out(noMalt, actMalt)),
		"irish-pot-still": irish([]share{{"barley", true, 30}, {"barley", false, 65}, {"oats", false, 5}}).with(
			out(func(w *whisky) { w.mash(share{"barley", true, 29.9}, share{"barley", false, 70.1}) }, "technical file, 4.2.1: malted barley at least 30 %"),
			out(func(w *whisky) { w.mash(share{"barley", true, 70.1}, share{"barley", false, 29.9}) }, "technical file, 4.2.1: unmalted barley at least 30 %"),
			out(func(w *whisky) {
				w.mash(share{"barley", true, 40}, share{"barley", false, 54.9}, share{"oats", false, 5.1})
			},
				"technical file, 4.2.1: corn, oats, rice, rye, sorghum, triticale or wheat at most 5 %"),
			out(noMalt, actMalt, "technical file, 4.2.1: malted barley at least 30 %", "technical file, 4.2.1: corn, oats, rice, rye, sorghum, triticale or wheat at most 5 %"),
			step{func(w *whisky) { w.mash(share{"barley", true, 70}, share{"barley", false, 30}) }, nil},
		).opened("technical file, 4.2.1: pot still").noted("(technical file, 10)"),
		"irish-malt": irish(allMalt(), "technical file, 4.2.2: malted barley at least 100 %").with(
			out(func(w *whisky) { w.mash(share{"barley", true, 99.9}, share{"wheat", true, 0.1}) }, "technical file, 4.2.2: malted barley at least 100 %"),
			out(noMalt, actMalt, "technical file, 4.2.2: malted barley at least 100 %"),
		).opened("technical file, 4.2.2: pot still").noted("(technical file, 10)"),
		"irish-grain": irish([]share{{"barley", true, 30}, {"wheat", false, 70}}).with(
			out(func(w *whisky) { w.mash(share{"barley", true, 30.1}, share{"wheat", false, 69.9}) }, "technical file, 4.2.3: malted barley at most 30 %"),
			out(noMalt, actMalt),
		).opened("technical file, 4.2.3: column still").noted("(technical file, 10)"),

		"eu-whisky":      annex(rawAndMalt()).with(out(noMalt, annexMalt)).noted("even for rounding off the taste, no flavouring", "(annex I, cat. 2(c)-(d))"),
		"eu-single-malt": annex(allMalt(), "annex I, cat. 2(e): malted barley at least 100 %").with(out(func(w *whisky) { w.mash(share{"barley", true, 99.9}, share{"wheat", true, 0.1}) }, "annex I, cat. 2(e): malted barley at least 100 %")).noted("one distillery (annex I, cat. 2(e))", "no flavouring"),
		"uk-whisky":      annex(rawAndMalt()).with(out(noMalt, annexMalt)).noted("110/2008", "SI 2008/3206"),

		"canadian": {
			inside: whisky{bill: rawAndMalt(), wood: litres(usedOak, 700), days: 3 * year, bottled: abv(40)},
			steps: []step{
				out(noGrain, "B.02.020(1)(a)(i): grain at least 100 %"),
				out(to(litres(usedOak, 701)), "B.02.020(1)(a)(ii): wood: wood of at most 700 L (185 gal)"),
				out(rested(3*year-2), "B.02.020(1)(a)(ii): in wood at least 3 years"),
				out(func(w *whisky) { w.bottled = abv(39.9) }, "B.02.020(1)(a)(vi): bottled at least 40 % abv"),
				{func(w *whisky) { w.enzyme = true }, nil},
			},
			open:  []string{"B.02.020(1)(a)(v): made in Canada"},
			notes: []string{"caramel and flavouring", "B.02.020(2)-(3)"},
		},
		"japanese": func() row {
			r := european(rawAndMalt(), "art. 5, production: off the still under 95 % abv", "art. 5, aging: wood: wood of at most 700 L (185 gal)", "art. 5, aging: in wood at least 3 years", "art. 5, bottling: bottled at least 40 % abv")
			r.inside.offStill = abv(94.9)
			r.steps[0].to = func(w *whisky) { w.offStill = abv(95) }
			return r.with(out(noGrain, "art. 5, raw ingredients: grain at least 100 %"), out(noMalt, "art. 5: some malted grain")).
				opened("art. 5: made in Japan").noted("caramel", "the water is extracted in Japan (art. 5)")
		}(),
		"australian": {
			inside: whisky{bill: rawAndMalt(), wood: litres(chestnut(usedOak), 1000), days: 2 * year, bottled: abv(37)},
			steps: []step{
				out(noGrain, "s. 77FI(2): grain at least 100 %"),
				out(rested(2*year-2), "s. 77FI(1): in wood at least 2 years"),
				out(func(w *whisky) { w.wood = wood{} }, "s. 77FI(1): wood: wood", "s. 77FI(1): in wood at least 2 years"),
				out(func(w *whisky) { w.bottled = abv(36.9) }, "Standard 2.7.5, read in an older text: bottled at least 37 % abv"),
			},
			open: []string{"s. 77FI(1): made in Australia"},
		},
	}
	// Rows 2, 5 and 7, a grain at a time.
	for _, g := range []struct {
		kind, grain, said string
		malted            bool
		straight, mash    string
	}{
		{"bourbon", "corn", "corn", false, "straight-bourbon", "distilled-from-bourbon-mash"},
		{"rye-whisky", "rye", "rye", false, "straight-rye", "distilled-from-rye-mash"},
		{"wheat-whisky", "wheat", "wheat", false, "straight-wheat", "distilled-from-wheat-mash"},
		{"malt-whisky", "barley", "malted barley", true, "straight-malt", "distilled-from-malt-mash"},
		{"rye-malt-whisky", "rye", "malted rye", true, "straight-rye-malt", "distilled-from-rye-malt-mash"},
		{"oat-whisky", "oats", "oats", false, "", "distilled-from-oat-mash"},
		{"triticale-whisky", "triticale", "triticale", false, "", "distilled-from-triticale-mash"},
	} {
		kind := typed("2", g.grain, g.said, g.malted, 51).entry("2").newOak("2")
		straight := typed("5", g.grain, g.said, g.malted, 51).entry("5").newOak("5").straight("5")
		switch g.kind {
		case "bourbon":
			kind, straight = kind.opened(madeUS).noted(nothing), straight.opened(madeUS)
		case "oat-whisky", "triticale-whisky":
		default:
			kind, straight = kind.noted(abroad), straight.noted(abroad)
		}
		rows[g.kind] = kind
		if g.straight != "" {
			rows[g.straight] = straight
		}
		rows[g.mash] = typed("7", g.grain, g.said, g.malted, 51).usedOnly("7").with(step{func(w *whisky) { w.into = proof(160) }, nil}) // no limit at entry
	}
	every := "straight-bourbon, straight-rye, straight-wheat, straight-malt, straight-rye-malt or straight-corn"
	rows["blended-whisky"] = mixture("10", "20", every, "corn", false).noted("neutral spirits")
	rows["blend-of-straights"] = mixture("12", "100", every, "rye", true).noted("that straight whisky")
	for _, m := range []struct {
		of, grain string
		malted    bool
	}{{"bourbon", "corn", false}, {"rye", "rye", false}, {"wheat", "wheat", false}, {"malt", "barley", true}, {"rye-malt", "rye", true}} {
		rows["blended-"+m.of] = mixture("11", "51", "straight-"+m.of, m.grain, m.malted).noted("neutral spirits")
	}
	rows["blended-corn"] = mixture("11", "51", "straight-corn", "corn", false).noted("neutral spirits")
	return rows
}

// mixture is of rows 10 to 12: so much of it is a straight whisky, which the records of what is
// mixed tell (compile/book/identity), and no batch.
func mixture(number, pct, of, grain string, malted bool) row {
	asks := table1(number) + "at least " + pct + " % of the alcohol " + of
	return row{
		inside: whisky{bill: []share{{grain, malted, 100}}, offStill: proof(160), into: proof(125), wood: charredOak, days: 4 * year, bottled: proof(80)},
		steps:  []step{say(rested(4*year-2), ageSaid), out(underStrength, eighty)},
		open:   []string{asks},
	}
}

// TestTheStandardsRowByRow: every condition of every standard has a whisky inside and
// one outside, and the library asks no more and no less than stands here.
func TestTheStandardsRowByRow(t *testing.T) {
	all := check.Builtin().Library.Standards
	rows := theStandards()
	assert.ElementsMatch(t, slices.Collect(maps.Keys(all)), slices.Collect(maps.Keys(rows)))
	for _, name := range slices.Sorted(maps.Keys(rows)) {
		t.Run(name, func(t *testing.T) {
			s, r := all[name], rows[name]
			require.NotNil(t, s)
			base, notes := r.inside.held(s)
			tried := map[string]bool{}
			for _, asks := range r.open {
				assert.Contains(t, base, asks)
				tried[asks] = true
			}
			for asks, stands := range base {
				if !tried[asks] {
					assert.Equal(t, "met", stands, "inside: %s", asks)
				}
			}
			for i, step := range r.steps {
				w := r.inside
				step.to(&w)
				stands, _ := w.held(s)
				for asks, now := range step.now {
					assert.Contains(t, stands, asks, "step %d", i)
					if stands[asks] == "NOT met" || stands[asks] == "not tested" {
						tried[asks] = true
					}
					assert.Equal(t, now, stands[asks], "step %d: %s", i, asks)
				}
				for asks, was := range base {
					if _, meant := step.now[asks]; !meant {
						assert.Equal(t, was, stands[asks], "step %d changes more than it should: %s", i, asks)
					}
				}
			}
			for asks := range base {
				assert.True(t, tried[asks], "nothing steps outside of: %s", asks)
			}
			for _, words := range r.notes {
				assert.Contains(t, notes, words)
			}
		})
	}
}
