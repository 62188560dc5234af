package plan

// Stream is what goes into a stage or comes out of it, by mass: all charges of
// the batch together. What a stage takes it gives, but for the carbon dioxide
// of the ferment and for the steam of a vessel that is heated with live steam. Its name
// is to be looked up by, and says pot ale, spent lees and draff whatever the batch is
// written in; who shows it to people gives it their trade's words.
type Stream struct {
	Name          string  `json:"name"` // one of the names below, the same in every house
	WaterKg       float64 `json:"waterKg" places:"3"`
	EthanolKg     float64 `json:"ethanolKg" places:"3"`
	GlucoseKg     float64 `json:"glucoseKg" places:"3"` // and other simple sugars
	MaltoseKg     float64 `json:"maltoseKg" places:"3"`
	MaltotrioseKg float64 `json:"maltotrioseKg" places:"3"`
	DextrinKg     float64 `json:"dextrinKg" places:"3"`
	RawStarchKg   float64 `json:"rawStarchKg" places:"3"`  // in the granule
	GelStarchKg   float64 `json:"gelStarchKg" places:"3"`  // gelatinized, not converted
	SolublesKg    float64 `json:"solublesKg" places:"3"`   // protein, gums, minerals
	BacksetKg     float64 `json:"backsetKg" places:"3"`    // solids that came with backset
	AcidKg        float64 `json:"acidKg" places:"3"`       // lactic, of the ferment
	ByproductsKg  float64 `json:"byproductsKg" places:"3"` // of the ferment: glycerol, organic acids
	YeastKg       float64 `json:"yeastKg" places:"3"`      // dry
	InsolublesKg  float64 `json:"insolublesKg" places:"3"`
	MassKg        float64 `json:"massKg" places:"3"`
}

// Names of streams, in the order of the work.
const (
	StreamGrain   = "grain"
	StreamWater   = "water"         // liquor of the mash
	StreamBackset = "backset"       // of the mash
	StreamSteam   = "steam"         // condensed into the mash
	StreamKeptIn  = "kept water in" // last water of the mash before
	StreamDraff   = "draff"         // left in the tun
	StreamKept    = "kept water"    // last water, for the next mash
	StreamWort    = "wort"          // to the fermenter, grain in or off it
	StreamWash    = "wash"
	StreamLow     = "low wines"
	StreamPotAle  = "pot ale"
	StreamFeints  = "feints returned"
	StreamCut     = "water to the charge"
	StreamCharge  = "spirit charge"
	StreamFore    = "foreshots"
	StreamHeads   = "heads"
	StreamHearts  = "hearts"
	StreamTails   = "tails"
	StreamLees    = "spent lees"
	StreamEntry   = "at entry strength"
)

// Stream finds a stream by name; one with nothing in it if the plan has none.
func (p *Plan) Stream(name string) Stream {
	for _, s := range p.Streams {
		if s.Name == name {
			return s
		}
	}
	return Stream{Name: name}
}

// SugarKg is what a yeast can take, as it is.
func (s Stream) SugarKg() float64 { return s.GlucoseKg + s.MaltoseKg + s.MaltotrioseKg }

// extractKg is what the grain has given to the liquor.
func (s Stream) extractKg() float64 {
	return s.SugarKg() + s.DextrinKg + s.GelStarchKg + s.SolublesKg
}

// DissolvedKg is all that is in solution besides ethanol.
func (s Stream) DissolvedKg() float64 { return s.extractKg() + s.BacksetKg + s.FermentedKg() }

// FermentedKg is what the ferment has made besides ethanol and left in
// solution.
func (s Stream) FermentedKg() float64 { return s.AcidKg + s.ByproductsKg }

// SuspendedKg is all that a sieve or a settling would take out.
func (s Stream) SuspendedKg() float64 { return s.RawStarchKg + s.YeastKg + s.InsolublesKg }

// LiquidKg is water, ethanol and what is dissolved in them.
func (s Stream) LiquidKg() float64 { return s.WaterKg + s.EthanolKg + s.DissolvedKg() }

// Account is what became of the sugar in the ferment, by mass.
type Account struct {
	SugarTakenKg    float64 `json:"sugarTakenKg" places:"3"`    // by the yeast, as glucose
	SugarLeftKg     float64 `json:"sugarLeftKg" places:"3"`     // as it is
	EthanolYieldPct float64 `json:"ethanolYieldPct" places:"3"` // of what Gay-Lussac gives, vented alcohol counted
	YeastGrownKg    float64 `json:"yeastGrownKg" places:"3"`    // dry
	GlycerolKg      float64 `json:"glycerolKg" places:"3"`
	VentEthanolKg   float64 `json:"ventEthanolKg" places:"3"` // gone with the gas
	VentWaterKg     float64 `json:"ventWaterKg" places:"3"`
	CO2Kg           float64 `json:"co2Kg" places:"3"`
}
