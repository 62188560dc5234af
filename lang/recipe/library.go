package recipe

import (
	"fmt"
	"slices"

	"newmake/lang/diag"
)

// Entry is what every library entry carries.
type Entry struct {
	Name   string
	Doc    string               // the comment above the declaration
	House  bool                 // declared or overridden by the house
	Source map[string]string    // field → source, from the comment on its line
	Where  map[string]diag.Span // field → its line
	Within map[string]Within    // field → the range that holds it 9 times in 10, where it is stated
	At     diag.Span
}

// Grain is a cereal, raw or malted. Shares are of dry matter unless they say
// otherwise.
type Grain struct {
	Entry
	Cereal       string // corn, wheat, rye, oats, barley, sorghum, triticale, rice
	Malted       bool
	Roasted      bool
	TestWeightKg float64 // per trade bushel
	Moisture     float64 // share of the weight as is
	Starch       float64
	Sugars       float64 // preformed fermentable sugars
	Extract      float64 // fine-grind, dry basis; 0: taken as Starch*1.11+Sugars+Solubles
	Solubles     float64 // other matter that dissolves (protein, gums, minerals)
	GelLowC      float64 // gelatinization range
	GelHighC     float64
	LintnerPower float64 // diastatic power, as is
	AlphaDU      float64 // alpha-amylase
	LimitShare   float64 // limit dextrinase for that, a lager malt's being 1
	Viscous      bool    // pentosans or beta-glucans make a thick mash
	MostC        float64 // add at or below this temperature; 0: none
}

// Yeast is a strain and the constants of its kinetics.
type Yeast struct {
	Entry
	Dry                                                              bool
	GrowthPerS                                                       float64 // greatest specific growth rate at RefC
	RefC                                                             float64
	HalfKgM3                                                         float64 // half-saturation on sugar
	EthanolMostKgM3                                                  float64 // growth stops
	InhibitionPower                                                  float64
	YieldBiomass                                                     float64 // kg/kg sugar, at no ethanol
	YieldBiomassEthanolKgM3                                          float64 // the ethanol at which that falls to nothing
	YieldBiomassPerEthanol                                           float64 // kg biomass per kg ethanol: Yx/p
	ActivationGrowthJMol, ActivationEthanolJMol, ActivationDeathJMol float64
	LowC, HighC                                                      float64 // pitch and hold window
	MostC                                                            float64 // dies quickly above
	PitchLowKgM3, PitchHighKgM3                                      float64
	Maltotriose                                                      float64 // share of maltotriose that it takes, 0..1
	EthanolYield                                                     float64 // of Gay-Lussac, of the sugar fermented; growth and its glycerol are apart
	Solids                                                           float64 // dry matter, share of the weight as bought
	Viable                                                           float64 // share of the cells that wake
	LagS                                                             float64 // before it sets to work
	DeathPerS                                                        float64 // rate of dying at RefC without ethanol
}

// EnzymeKind is what an enzyme does.
type EnzymeKind string

const (
	Liquefying    EnzymeKind = "liquefying"    // endo: starch to dextrins
	Saccharifying EnzymeKind = "saccharifying" // exo: dextrins to glucose
	Viscosity     EnzymeKind = "viscosity"     // beta-glucanase, xylanase
)

// Enzyme is an added enzyme preparation.
type Enzyme struct {
	Entry
	Does              EnzymeKind
	ActivityPerKg     float64 // model units per kg of preparation, see the library
	OptimumC          float64
	LowC, HighC       float64 // works within
	MostC             float64 // gone quickly above
	HalfLifeS         float64 // at HalfLifeC
	HalfLifeC         float64
	DeathJMol         float64 // activation energy of deactivation
	PHLow, PHHigh     float64
	DoseLow, DoseHigh float64 // share of the grain by weight
}

// CaskWood is a kind of wood, not a size.
type CaskWood struct {
	Entry
	Tree     string // oak, other
	Charred  bool
	Toasted  bool
	SizesM3  []float64 // sizes the trade fills; others are allowed with a note
	TareKg   float64   // of an empty cask of 200 L
	SoakFrac float64   // share of the fill taken up by the wood of a 200 L cask
}

// Condition is one thing the law asks that a program can test.
type Condition struct {
	Test     Test
	Grains   []string // of a grain: names or cereals it speaks of, "any" for all
	Malted   bool     // of a grain: the malted ones of those alone
	Unmalted bool     // of a grain: the raw ones of those alone
	Share    float64
	Strength Strength
	Woods    []Wood  // WoodIs: any one of these will do
	SizeM3   float64 // WoodIs: greatest cask, 0 for no limit
	AgeS     float64
	Other    *Standard // IsNot: the one that it must not meet
	Others   []string  // PartsLeast: names of the standards that a part may meet
	Text     string    // MadeIn: the place; StillIs: pot or column; LabelUnder, LabelUsed: what the label says
	Law      string    // section, from the line
	Of       string    // title of the standard that asks it: a batch may name several
	OfLaw    string    // and the law that makes that one
	At       diag.Span
}

// Test is what a Condition tests.
type Test string

const (
	GrainLeast    Test = "grain-least"     // these grains make at least Share of the bill
	GrainMost     Test = "grain-most"      // these grains make at most Share of the bill
	GrainSome     Test = "grain-some"      // some of these is in the bill
	EnzymesOwn    Test = "enzymes-own"     // no enzymes but those of the grain
	OffStillUnder Test = "off-still-under" // the run before reduction is under Strength
	OffStillMost  Test = "off-still-most"
	OffStillOver  Test = "off-still-over"
	EntryMost     Test = "entry-most"
	WoodIs        Test = "wood"
	AgeLeast      Test = "age-least"
	BottledLeast  Test = "bottled-least"
	BottledAt     Test = "bottled-at"  // this strength and no other
	StillIs       Test = "still"       // pot or column
	LabelUnder    Test = "label-under" // younger than AgeS, the label says Text
	LabelUsed     Test = "label-used"  // out of used wood, the label says Text
	OneSeason     Test = "one-season"  // all of it is distilled in January to June, or in July to December
	IsNot         Test = "not"         // another standard is not met
	PartsLeast    Test = "parts-least" // of a mixture: so much of its alcohol meets one of Others by itself
	MadeIn        Test = "made-in"     // stated, not tested
)

// Wood is one kind of cask that a standard allows. An empty word allows either.
type Wood struct {
	Use  string // new, used
	Char string // charred, uncharred
	Of   string // oak; "" is any wood
	None bool   // no wood at all
}

// Standard is a standard of identity.
type Standard struct {
	Entry
	Title      string
	Law        string
	Country    string   // name of the country whose law that is, "" of more than one
	Parts      []string // names of the standards that this one is made of, if it is: see Both
	Conditions []Condition
	Notes      []string // what the law says that no program can test
}

// Both is what a batch is held against that names several standards: all that
// each of them asks, each condition once. Nil of none.
func Both(all ...*Standard) *Standard {
	switch len(all) {
	case 0:
		return nil
	case 1:
		return all[0]
	}
	out := *all[0]
	out.Conditions, out.Notes = nil, nil
	for _, s := range all {
		out.Parts = append(out.Parts, s.Name)
	}
	asked, said := map[string]bool{}, map[string]bool{}
	for i, s := range all {
		if i > 0 {
			out.Name += ", " + s.Name
			out.Title += "; " + s.Title
			out.Law += "; " + s.Law
			if s.Country != out.Country {
				out.Country = ""
			}
		}
		for _, c := range s.Conditions {
			alone := c
			alone.Law, alone.Of, alone.OfLaw, alone.At = "", "", "", diag.Span{}
			key := fmt.Sprintf("%+v", alone)
			if !asked[key] {
				out.Conditions = append(out.Conditions, c)
			}
			asked[key] = true
		}
		for _, n := range s.Notes {
			if !said[n] {
				out.Notes = append(out.Notes, n)
			}
			said[n] = true
		}
	}
	return &out
}

// BottledAt is the bottling strength that a standard asks for if a batch names none:
// the one that it fixes, or the greatest of its least ones. Zero if it says none.
func (s *Standard) BottledAt() Strength {
	var least Strength
	if s == nil {
		return least
	}
	for _, c := range s.Conditions {
		switch {
		case c.Test == BottledAt:
			return c.Strength
		case c.Test == BottledLeast && c.Strength.Value > least.Value:
			least = c.Strength
		}
	}
	return least
}

// Counts reports whether a grain is one of those a condition speaks of: by its name, or
// by its cereal.
func (c *Condition) Counts(g *Grain) bool {
	if c.Malted && !g.Malted || c.Unmalted && g.Malted {
		return false
	}
	return slices.ContainsFunc(c.Grains, func(name string) bool { return name == "any" || name == g.Name || name == g.Cereal })
}

// Library is every entry known to a house, its own laid over the built-in ones.
type Library struct {
	Grains    map[string]*Grain
	Yeasts    map[string]*Yeast
	Enzymes   map[string]*Enzyme
	Woods     map[string]*CaskWood
	Standards map[string]*Standard
	Models    map[string]*Model
	Countries map[string]*Country
	Aromas    map[string]*Aroma
}
