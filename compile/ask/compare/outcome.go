package compare

import (
	"math"
	"newmake/compile"
	"newmake/compile/ask/bands"
	"newmake/lang/recipe"
	"reflect"

	"newmake/compile/measure"
	"newmake/compile/plan"
)

// outcome is one number of a plan that is compared. In US units it is what the
// gauger counts, at 60 F; a share of it is no factor of the SI number.
type outcome struct {
	key    string // the name in JSON; those of plan.Summary are the same
	name   string // for people
	stage  string
	si, us scale
}

// scale is an outcome in one system of units.
type scale struct {
	unit   string
	places int
	of     func(p *plan.Plan) float64
}

// same is an outcome that both systems say alike.
func same(unit string, places int, of func(p *plan.Plan) float64) (si, us scale) {
	s := scale{unit, places, of}
	return s, s
}

// both makes an outcome of two scales.
func both(stage, key, name string, si, us scale) outcome { return outcome{key, name, stage, si, us} }

func alike(stage, key, name, unit string, places int, of func(p *plan.Plan) float64) outcome {
	si, us := same(unit, places, of)
	return both(stage, key, name, si, us)
}

// litres is a volume that is not of spirit.
func litres(stage, key, name string, of func(p *plan.Plan) float64) outcome {
	return both(stage, key, name, scale{"L", 1, of},
		scale{"gal", 1, func(p *plan.Plan) float64 { return of(p) / (m3PerGallon * 1000) }})
}

// spiritVolume and spiritStrength are of a lot of spirit.
func spiritVolume(stage, key, name string, of func(p *plan.Plan) plan.Lot) outcome {
	return both(stage, key, name, scale{"L", 1, func(p *plan.Plan) float64 { return of(p).VolumeL }},
		scale{"gal", 2, func(p *plan.Plan) float64 { return of(p).WineGallons }})
}

func spiritStrength(stage, key, name string, of func(p *plan.Plan) plan.Lot) outcome {
	return both(stage, key, name, scale{"% vol", 2, func(p *plan.Plan) float64 { return of(p).AbvPct }},
		scale{"proof", 1, func(p *plan.Plan) float64 { return of(p).Proof }})
}

func fraction(r plan.Run, name string) plan.Lot {
	for _, f := range r.Fractions {
		if f.Name == name {
			return f.Lot
		}
	}
	return plan.Lot{}
}

func hearts(p *plan.Plan) plan.Lot   { return fraction(p.Spirit, "hearts") }
func lowWines(p *plan.Plan) plan.Lot { return fraction(p.Strip, "low wines") }

func feints(p *plan.Plan) plan.Lot {
	if p.Spirit.Feints == nil {
		return plan.Lot{}
	}
	return *p.Spirit.Feints
}

func cost(of func(*plan.Cost) float64) func(p *plan.Plan) float64 {
	return func(p *plan.Plan) float64 {
		if p.Cost == nil {
			return 0
		}
		return of(p.Cost)
	}
}

// outcomes are all that is compared, in the order of the work.
var outcomes = []outcome{
	alike("mash", "originalGravitySG", "original gravity, grain alone", "SG", 4, func(p *plan.Plan) float64 { return p.Mash.OriginalGravitySG }),
	alike("mash", "hydrometerSG", "gravity at the pitch", "SG", 4, func(p *plan.Plan) float64 { return p.Mash.HydrometerSG }),
	alike("mash", "conversionPct", "starch converted", "%", 1, func(p *plan.Plan) float64 { return p.Mash.ConversionPct }),
	alike("mash", "mashHours", "mash", "h", 2, func(p *plan.Plan) float64 { return p.Mash.Hours }),
	alike("ferment", "finalGravitySG", "final gravity", "SG", 4, func(p *plan.Plan) float64 { return p.Ferment.FinalGravitySG }),
	spiritVolume("ferment", "washVolumeL", "wash", func(p *plan.Plan) plan.Lot { return p.Ferment.Wash }),
	both("ferment", "washAbvPct", "wash strength", scale{"% vol", 2, func(p *plan.Plan) float64 { return p.Ferment.AbvPct }},
		scale{"% abv", 2, func(p *plan.Plan) float64 { return p.Ferment.Wash.Proof / 2 }}),
	alike("ferment", "dryHours", "dry after", "h", 1, func(p *plan.Plan) float64 { return p.Ferment.DryHours }),
	alike("ferment", "fermentHours", "ferment", "h", 1, func(p *plan.Plan) float64 { return p.Ferment.Hours }),
	spiritVolume("strip", "lowWinesVolumeL", "low wines", lowWines),
	spiritStrength("strip", "lowWinesAbvPct", "low wines' strength", lowWines),
	alike("strip", "stripHours", "stripping run", "h", 2, func(p *plan.Plan) float64 { return p.Strip.TotalHours }),
	spiritVolume("spirit", "heartsVolumeL", "hearts", hearts),
	spiritStrength("spirit", "heartsAbvPct", "hearts' strength", hearts),
	alike("spirit", "heartsProofGallons", "hearts", "proof gal", 2, func(p *plan.Plan) float64 { return hearts(p).ProofGallons }),
	alike("spirit", "pureAlcoholL", "pure alcohol", "L", 2, func(p *plan.Plan) float64 { return hearts(p).PureL }),
	spiritVolume("spirit", "feintsVolumeL", "feints", feints),
	spiritStrength("spirit", "feintsAbvPct", "feints' strength", feints),
	alike("spirit", "spiritHours", "spirit run", "h", 2, func(p *plan.Plan) float64 { return p.Spirit.TotalHours }),
	both("cask", "caskEntryAbvPct", "entry strength", scale{"% vol", 2, func(p *plan.Plan) float64 { return p.Cask.Entry.AbvPct }},
		scale{"proof", 1, func(p *plan.Plan) float64 { return p.Cask.Entry.Proof }}),
	alike("cask", "casksFilled", "casks filled", "", 0, func(p *plan.Plan) float64 { return float64(p.Cask.Casks) }),
	spiritVolume("cask", "leftoverL", "left over", func(p *plan.Plan) plan.Lot { return p.Cask.Leftover }),
	alike("cask", "bottles", "bottles", "", 0, func(p *plan.Plan) float64 { return float64(p.Cask.Bottles) }),
	alike("whole", "yieldLPAPerTonne", "yield", "LPA/t", 1, func(p *plan.Plan) float64 { return p.Yield.HeartsLPAPerTonne }),
	alike("whole", "heatKWh", "heat", "kWh", 0, func(p *plan.Plan) float64 { return p.Energy.HeatKWh }),
	litres("whole", "waterL", "water", func(p *plan.Plan) float64 { return p.Energy.WaterL }),
	alike("whole", "peopleHours", "work", "h", 1, func(p *plan.Plan) float64 { return p.Schedule.PeopleHours }),
	alike("whole", "elapsedHours", "start to full cask", "h", 1, func(p *plan.Plan) float64 { return p.Schedule.ElapsedHours }),
	alike("whole", "outOfShiftHours", "outside the shift", "h", 2, func(p *plan.Plan) float64 { return p.Schedule.OutOfShiftH }),
	alike("whole", "costTotal", "cost", "money", 2, cost(func(c *plan.Cost) float64 { return c.Total })),
	alike("whole", "costPerProofGallon", "cost a proof gal", "money", 2, cost(func(c *plan.Cost) float64 { return c.PerPG })),
	alike("whole", "costPerLPA", "cost a litre of alcohol", "money", 2, cost(func(c *plan.Cost) float64 { return c.PerLPA })),
	alike("whole", "costPerBottle", "cost a bottle", "money", 2, cost(func(c *plan.Cost) float64 { return c.PerBottle })),
}

// in is the scale of a system of units.
func (o outcome) in(u measure.Units) scale {
	if u == measure.SI {
		return o.si
	}
	return o.us
}

// Outcome is one number of the plan, before and after, rounded to Places.
type Outcome struct {
	Key    string  `json:"key"`
	Name   string  `json:"name"`
	Stage  string  `json:"stage"`
	Unit   string  `json:"unit,omitempty"`
	Places int     `json:"places"`
	Old    float64 `json:"old"`
	New    float64 `json:"new"`
	Change float64 `json:"change"`
	// Within is how far the new value may be off by what the models leave open, 9 times in
	// 10, up or down; 0 where that is not known. A change that is less is no news.
	Within float64 `json:"within,omitempty"`
}

// IsWithin reports whether the change is less than what the models leave open.
func (o Outcome) IsWithin() bool { return math.Abs(o.Change) <= o.Within }

// putWithin puts into the outcomes how sure the new batch's numbers are.
func putWithin(all []Outcome, b *recipe.Batch) {
	p, _ := compile.Compile(b)
	if p == nil {
		return
	}
	bands.Put(p, b)
	if p.Bands == nil {
		return
	}
	for _, n := range p.Bands.Numbers {
		for i := range all {
			of := all[i].Key
			if of == "hydrometerSG" { // the solids of the backset are no less sure
				of = "originalGravitySG"
			}
			if of != n.Key || n.Planned.Value == 0 {
				continue
			}
			half := (n.High.Value - n.Low.Value) / 2 / math.Abs(n.Planned.Value)
			all[i].Within = plan.RoundTo(half*math.Abs(all[i].New), all[i].Places)
		}
	}
}

// Changed reports whether the change can be seen at the outcome's own precision.
func (o Outcome) Changed() bool { return o.Change != 0 }

// outcomesOf holds two plans against one another.
func outcomesOf(old, new *plan.Plan, u measure.Units) []Outcome {
	out := make([]Outcome, len(outcomes))
	for i, o := range outcomes {
		s := o.in(u)
		x := Outcome{Key: o.key, Name: o.name, Stage: o.stage, Unit: unitOf(s, new), Places: s.places,
			Old: plan.RoundTo(s.of(old), s.places), New: plan.RoundTo(s.of(new), s.places)}
		x.Change = plan.RoundTo(x.New-x.Old, s.places)
		out[i] = x
	}
	return out
}

// unitOf is the unit's name; of money, the house's currency.
func unitOf(s scale, p *plan.Plan) string {
	if s.unit != "money" {
		return s.unit
	}
	if p.Cost == nil {
		return ""
	}
	return p.Cost.Currency
}

// vector is every outcome of a plan, unrounded.
func vector(p *plan.Plan, u measure.Units) []float64 {
	out := make([]float64, len(outcomes))
	for i, o := range outcomes {
		if x := o.in(u).of(p); !math.IsNaN(x) && !math.IsInf(x, 0) {
			out[i] = x
		}
	}
	return out
}

// Measured is one number of a plan in one system of units.
type Measured struct {
	Key, Name, Stage, Unit string
	Places                 int
	Of                     func(p *plan.Plan) float64
}

// Summary lists the numbers of a plan's summary, in the order of the work.
func Summary(u measure.Units) []Measured {
	var out []Measured
	for _, o := range outcomes {
		if s := o.in(u); inSummary[o.key] {
			out = append(out, Measured{o.key, o.name, o.stage, s.unit, s.places, s.of})
		}
	}
	return out
}

// inSummary are the names of plan.Summary as JSON.
var inSummary = func() map[string]bool {
	names := map[string]bool{}
	for t, i := reflect.TypeFor[plan.Summary](), 0; i < t.NumField(); i++ {
		names[t.Field(i).Tag.Get("json")] = true
	}
	return names
}()
