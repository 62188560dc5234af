package law_test

import (
	"fmt"
	"maps"
	"os"
	"path/filepath"
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

// spirit is a batch as far as the law looks at it.
type spirit struct {
	recipe.Batch
	hearts plan.Lot
	days   law.Days
}

// held says how a spirit stands against one condition.
func (s spirit) held(t *testing.T, k recipe.Condition) plan.Condition {
	t.Helper()
	s.Standard = &recipe.Standard{Title: "Test", Law: "test", Conditions: []recipe.Condition{k}}
	l := law.Held(&s.Batch, s.hearts, s.days, plan.Cask{})
	require.Len(t, l.Conditions, 1)
	return l.Conditions[0]
}

// tried is a spirit, and whether a condition is to be met by it.
type tried struct {
	what string
	met  string
	make func(*spirit)
}

const (
	least   = 1e-3 // of a share or a strength: a tenth of a per cent
	dayS    = 86400.0
	litreM3 = 1e-3
)

func met(what string, f func(*spirit)) tried    { return tried{what, "met", f} }
func notMet(what string, f func(*spirit)) tried { return tried{what, "NOT met", f} }

// bill has a share of a grain of which the condition speaks; the rest is of
// another, which is none.
func bill(k recipe.Condition, share float64) func(*spirit) {
	return func(s *spirit) {
		g := &recipe.Grain{Cereal: k.Grains[0], Malted: !k.Unmalted}
		g.Name = "counted"
		other := &recipe.Grain{Cereal: "other", Malted: k.Unmalted}
		other.Name = "not counted"
		s.Bill.Lines = []recipe.BillLine{{Grain: g, Share: share}}
		if k.Grains[0] != "any" {
			s.Bill.Lines = append(s.Bill.Lines, recipe.BillLine{Grain: other, Share: 1 - share})
		}
	}
}

// wrongForm is all of the right cereal, malted where raw counts, or raw where malted does.
func wrongForm(k recipe.Condition) func(*spirit) {
	return func(s *spirit) {
		s.Bill.Lines = []recipe.BillLine{{Grain: &recipe.Grain{Cereal: k.Grains[0], Malted: k.Unmalted}, Share: 1}}
	}
}

func offStill(limit recipe.Strength, by float64) func(*spirit) {
	return func(s *spirit) {
		at := lot.Strength(limit)
		s.hearts = plan.Lot{AbvPct: at.AbvPct + 100*by, Proof: at.Proof + 200*by}
	}
}

func in(use, char, of string, sizeM3 float64) func(*spirit) {
	return func(s *spirit) {
		s.Cask.Kind = &recipe.CaskWood{Tree: of, Charred: char == "charred"}
		s.Cask.New, s.Cask.SizeM3 = use == "new", sizeM3
	}
}

// both sides of the threshold of a condition.
func both(k recipe.Condition) []tried {
	at := func(set func(*spirit, recipe.Strength), by float64) func(*spirit) {
		return func(s *spirit) {
			in("new", "charred", "oak", 200*litreM3)(s)
			set(s, recipe.Strength{Value: k.Strength.Value + by, Basis: k.Strength.Basis})
		}
	}
	entry := func(s *spirit, v recipe.Strength) { s.Cask.Entry = v }
	bottled := func(s *spirit, v recipe.Strength) { s.Cask.BottleAt = v }
	rested := func(by float64) func(*spirit) {
		return func(s *spirit) {
			in("new", "charred", "oak", 200*litreM3)(s)
			s.Cask.RestS = k.AgeS + by
		}
	}
	switch k.Test {
	case recipe.GrainLeast:
		out := []tried{met("the least", bill(k, k.Share)), notMet("less", bill(k, k.Share-least))}
		if k.Malted || k.Unmalted {
			out = append(out, notMet("malted or not", wrongForm(k)))
		}
		return out
	case recipe.GrainMost:
		return []tried{met("the most", bill(k, k.Share)), notMet("more", bill(k, k.Share+least))}
	case recipe.GrainSome:
		return []tried{met("a little", bill(k, least)), notMet("none", bill(k, 0)), notMet("malted or not", wrongForm(k))}
	case recipe.EnzymesOwn:
		z := &recipe.Enzyme{}
		return []tried{
			met("none", func(*spirit) {}),
			notMet("in the mash", func(s *spirit) { s.Mash.Steps = []recipe.MashStep{{Verb: recipe.MashDose, Enzyme: z}} }),
			notMet("in the fermenter", func(s *spirit) { s.Ferm.Doses = []recipe.Dose{{Enzyme: z}} }),
		}
	case recipe.OffStillUnder:
		return []tried{met("under", offStill(k.Strength, -least)), notMet("at", offStill(k.Strength, 0))}
	case recipe.OffStillMost:
		return []tried{met("at", offStill(k.Strength, 0)), notMet("over", offStill(k.Strength, least))}
	case recipe.OffStillOver:
		return []tried{met("over", offStill(k.Strength, least)), notMet("at", offStill(k.Strength, 0))}
	case recipe.EntryMost:
		return []tried{met("at", at(entry, 0)), notMet("over", at(entry, least)), met("not in wood", func(*spirit) {})}
	case recipe.WoodIs:
		return woods(k)
	case recipe.AgeLeast:
		return []tried{met("the least", rested(0)), notMet("two days less", rested(-2*dayS)), notMet("not in wood", func(*spirit) {})}
	case recipe.BottledLeast:
		return []tried{met("at", at(bottled, 0)), notMet("under", at(bottled, -least)), met("over", at(bottled, 0.1)), {"not said", "not tested", at(bottled, -k.Strength.Value)}}
	case recipe.BottledAt:
		return []tried{met("at", at(bottled, 0)), notMet("under", at(bottled, -least)), notMet("over", at(bottled, least)), {"not said", "not tested", at(bottled, -k.Strength.Value)}}
	case recipe.StillIs:
		if k.Text == "pot" {
			return []tried{met("the stills that are planned", func(*spirit) {})}
		}
		return []tried{notMet("the stills that are planned", func(*spirit) {})}
	case recipe.LabelUnder:
		return []tried{met("old enough", rested(0)), {"younger", "not tested", rested(-2 * dayS)}, {"not in wood", "not tested", func(*spirit) {}}}
	case recipe.LabelUsed:
		size := 200 * litreM3
		return []tried{met("new", in("new", "charred", "oak", size)), {"used", "not tested", in("used", "charred", "oak", size)}, met("not in wood", func(*spirit) {})}
	case recipe.OneSeason:
		from := func(month time.Month, day, days int) func(*spirit) {
			return func(s *spirit) {
				s.days.From = time.Date(2026, month, day, 7, 0, 0, 0, time.UTC)
				s.days.To = s.days.From.AddDate(0, 0, days)
			}
		}
		return []tried{
			met("to the end of June", from(6, 28, 2)), notMet("into July", from(6, 29, 2)), met("from July on", from(7, 1, 3)),
			met("to the end of the year", from(12, 29, 2)), notMet("into the next", from(12, 30, 2)), notMet("a year later to the day", from(3, 1, 365)),
			{"days are not known", "not tested", func(*spirit) {}},
		}
	case recipe.IsNot:
		meets := func(s *spirit) {
			for _, o := range k.Other.Conditions {
				sides := both(o)
				if i := slices.IndexFunc(sides, func(t tried) bool { return t.met == "met" && t.what != "not in wood" && t.what != "no wood" }); i >= 0 {
					sides[i].make(s)
				}
			}
			for _, o := range k.Other.Conditions { // what another condition has set anew
				if o.Test == recipe.AgeLeast {
					s.Cask.RestS = o.AgeS
				}
			}
		}
		return []tried{
			notMet("all that the other asks", meets),
			met("another cereal", func(s *spirit) { meets(s); s.Bill.Lines = nil }),
		}
	case recipe.PartsLeast: // held against the records of what is mixed: compile/book/identity
		return []tried{{"one batch", "not tested", func(*spirit) {}}}
	case recipe.MadeIn:
		return []tried{{"a place", "not tested", func(*spirit) {}}}
	}
	return nil
}

// woods is every sort of cask, and none.
func woods(k recipe.Condition) []tried {
	size := k.SizeM3
	if size == 0 {
		size = 200 * litreM3
	}
	fits := func(use, char, of string) bool {
		return slices.ContainsFunc(k.Woods, func(w recipe.Wood) bool {
			return !w.None && strings.Contains(use, w.Use) && (w.Char == "" || w.Char == char) && strings.Contains(of, w.Of)
		})
	}
	none := notMet("no wood", func(*spirit) {})
	if slices.ContainsFunc(k.Woods, func(w recipe.Wood) bool { return w.None }) {
		none.met = "met"
	}
	out := []tried{none}
	for _, use := range []string{"new", "used"} {
		for _, char := range []string{"charred", "uncharred"} {
			for _, of := range []string{"oak", "chestnut"} {
				what := use + " " + char + " " + of
				if !fits(use, char, of) {
					out = append(out, notMet(what, in(use, char, of, size)))
					continue
				}
				out = append(out, met(what, in(use, char, of, size)))
				if k.SizeM3 > 0 {
					out = append(out, notMet(what+", a litre more", in(use, char, of, size+litreM3)))
				}
			}
		}
	}
	return out
}

// TestBothSidesOfEveryCondition: whatever a standard of the library asks is met
// at its limit and missed beside it.
func TestBothSidesOfEveryCondition(t *testing.T) {
	all := check.Builtin().Library.Standards
	tests := map[recipe.Test]bool{}
	for _, name := range slices.Sorted(maps.Keys(all)) {
		for _, k := range all[name].Conditions {
			tests[k.Test] = true
			sides := both(k)
			require.NotEmpty(t, sides, "%s: %s", name, k.Test)
			for _, side := range sides {
				var s spirit
				side.make(&s)
				got := s.held(t, k)
				assert.Equal(t, side.met, got.Met, "%s, %s: %s: %s: found %s", name, k.Law, got.Asks, side.what, got.Found)
			}
		}
	}
	assert.Len(t, tests, 19, "every test is asked by some standard")
}

// TestTheFiguresOfTheStandards: what the sections say, apart from how it is tested.
func TestTheFiguresOfTheStandards(t *testing.T) {
	all := check.Builtin().Library.Standards
	for name, want := range map[string][]string{
		"bottled-in-bond":      {"distilled in one season, January to June or July to December", "bottled at exactly 100 proof (50 % abv)", "in wood at least 4 years"},
		"eu-whisky":            {"some malted grain", "off the still under 94.8 % abv", "in wood at least 3 years", "bottled at least 40 % abv"},
		"eu-single-malt":       {"malted barley at least 100 %"},
		"uk-whisky":            {"some malted grain", "off the still under 94.8 % abv"},
		"irish-pot-still":      {"malted barley at least 30 %", "unmalted barley at least 30 %", "corn, oats, rice, rye, sorghum, triticale or wheat at most 5 %", "pot still"},
		"irish-malt":           {"malted barley at least 100 %", "pot still"},
		"irish-grain":          {"malted barley at most 30 %", "column still"},
		"australian":           {"bottled at least 37 % abv", "in wood at least 2 years"},
		"oat-whisky":           {"oats at least 51 %", "off the still at most 160 proof (80 % abv)", "into wood at most 125 proof (62.5 % abv)"},
		"tennessee":            {"corn at least 51 %", "made in Tennessee"},
		"straight-bourbon":     {"in wood at least 2 years", "label, if under 4 years in wood: state the age of the youngest whisky", "made in United States"},
		"american-single-malt": {"malted barley at least 100 %", "off the still at most 160 proof (80 % abv)"},
	} {
		require.Contains(t, all, name)
		var b recipe.Batch
		b.Standard = all[name]
		var asks []string
		for _, k := range law.Held(&b, plan.Lot{}, law.Days{}, plan.Cask{}).Conditions {
			asks = append(asks, k.Asks)
		}
		for _, w := range want {
			assert.Contains(t, asks, w, name)
		}
	}
	for _, name := range []string{"rye-whisky", "straight-rye", "corn-whisky", "malt-whisky"} {
		assert.False(t, slices.ContainsFunc(all[name].Conditions, func(k recipe.Condition) bool { return k.Test == recipe.MadeIn }), "%s may be made abroad", name)
	}
}

// TestTwoStandards: a batch is held against all that either asks, each once.
func TestTwoStandards(t *testing.T) {
	all := check.Builtin().Library.Standards
	bond, rye := all["bottled-in-bond"], all["straight-rye"]
	s := recipe.Both(bond, rye)
	assert.Equal(t, "bottled-in-bond, straight-rye", s.Name)
	assert.Equal(t, "Bottled in bond; Straight rye whisky", s.Title)
	assert.Equal(t, recipe.Strength{Value: 0.5, Basis: recipe.Proof}, s.BottledAt())
	assert.Equal(t, s.BottledAt(), recipe.Both(rye, bond).BottledAt(), "in either order")
	grains := 0
	for _, k := range s.Conditions {
		of := rye
		if k.Of != rye.Title {
			of = bond
		}
		assert.Equal(t, of.Title, k.Of, "each says which of them asks it")
		assert.Equal(t, of.Law, k.OfLaw)
		if k.Test == recipe.GrainLeast {
			grains++
		}
	}
	assert.Equal(t, 2, grains, "grain at least 100 % is asked once, and rye at least 51 %")
	assert.Nil(t, recipe.Both())
	assert.Same(t, rye, recipe.Both(rye))
	assert.Zero(t, (*recipe.Standard)(nil).BottledAt().Value)
}

// TestEachIsNotTheOther: two standards may each say that they are not the other,
// and neither waits for the other to be read.
func TestEachIsNotTheOther(t *testing.T) {
	dir := t.TempDir()
	text := "newmake 1\n"
	for _, names := range [][2]string{{"plain", "malted"}, {"malted", "plain"}} {
		text += fmt.Sprintf("standard %s {\n  title \"%s\"\n  law \"the house's own\"\n  grain any at least 100 %%\n  not %s\n}\n", names[0], names[0], names[1])
	}
	require.NoError(t, os.WriteFile(filepath.Join(dir, "house.batch"), []byte(text), 0o600))
	h, err := check.Load(dir, check.Options{})
	require.NoError(t, err)
	require.Empty(t, h.Check())
	plain := h.Library().Standards["plain"]
	require.Len(t, plain.Conditions, 2)
	other := plain.Conditions[1].Other
	require.NotNil(t, other)
	assert.Equal(t, "malted", other.Title)
	assert.Len(t, other.Conditions, 1, "what it is not itself does not count")
}

// Where the cask ends weaker than the batch asks for, it is held as it ends, counted as
// the standard counts.
func TestBottledAsTheCaskEnds(t *testing.T) {
	for _, c := range []struct {
		limit recipe.Strength
		ends  plan.Strength
		met   string
	}{
		{recipe.Strength{Value: 0.40, Basis: recipe.ABV}, plan.Strength{AbvPct: 40, Proof: 70}, law.Met},
		{recipe.Strength{Value: 0.40, Basis: recipe.ABV}, plan.Strength{AbvPct: 39.9, Proof: 90}, law.NotMet},
		{recipe.Strength{Value: 0.40, Basis: recipe.Proof}, plan.Strength{AbvPct: 30, Proof: 80}, law.Met},
		{recipe.Strength{Value: 0.40, Basis: recipe.Proof}, plan.Strength{AbvPct: 50, Proof: 79.9}, law.NotMet},
	} {
		k := recipe.Condition{Test: recipe.BottledLeast, Strength: c.limit}
		b := recipe.Batch{Standard: &recipe.Standard{Title: "Test", Law: "test", Conditions: []recipe.Condition{k}}, Cask: recipe.Cask{BottleAt: recipe.Strength{Value: 0.46, Basis: recipe.ABV}}}
		l := law.Held(&b, plan.Lot{}, law.Days{}, plan.Cask{BottleAt: c.ends, BottleAsked: &plan.Strength{AbvPct: 46}})
		require.Len(t, l.Conditions, 1)
		assert.Equal(t, c.met, l.Conditions[0].Met, "%v", c)
	}
}
