package plan

// Bill is the grain.
type Bill struct {
	TotalKg    float64 `json:"totalKg" places:"3"`
	Bushels    float64 `json:"distillersBushels" places:"2"` // 56 lb of any grain
	ExtractKg  float64 `json:"extractKg" places:"3"`         // expected of all lines
	Lines      []Grain `json:"lines"`
	LintnerDeg float64 `json:"lintnerDeg" places:"0"` // diastatic power of the grist
	// Additions is all else to weigh or measure out, in the order of use.
	Additions []Addition `json:"additions"`
}

// Addition is water, backset, an enzyme or yeast.
type Addition struct {
	Name   string    `json:"name"`
	Amount Quantity  `json:"amount"`
	At     *Quantity `json:"at,omitempty"` // its temperature
	Step   string    `json:"step"`         // the step that uses it
}

// Grain is one line of the bill.
type Grain struct {
	Name            string  `json:"name"`
	MassKg          float64 `json:"massKg" places:"3"`
	SharePct        float64 `json:"sharePct" places:"2"`
	MoisturePct     float64 `json:"moisturePct" places:"1"`
	ExtractKg       float64 `json:"extractKg" places:"3"`       // expected to dissolve
	TheoryExtractKg float64 `json:"theoryExtractKg" places:"3"` // if all its starch dissolved
	AddedIn         string  `json:"addedIn,omitempty"`          // the step that adds it
	HouseOwn        bool    `json:"houseOwn,omitempty"`         // declared by the house
	// Lots are those of the stores that it is of: the one that the bill names, or those that are
	// next, first in, first out, which may come to less than it takes; none where the stores of
	// the house have none.
	Lots []GrainLot `json:"lots,omitempty"`
	// NoLotKg is what of it no store has, where some have a part.
	NoLotKg float64 `json:"noLotKg,omitempty" places:"3"`
}

// GrainLot is a lot of a grain, and how much of it goes in.
type GrainLot struct {
	Lot    string  `json:"lot"` // "" of what came without a code
	MassKg float64 `json:"massKg" places:"3"`
	// Named says that the bill names it: the batch is planned by its certificate. One that is next
	// changes no number of the plan.
	Named       bool    `json:"named"`
	MoisturePct float64 `json:"moisturePct,omitempty" places:"1"` // of its certificate, 0 where none is written
	StarchPct   float64 `json:"starchPct,omitempty" places:"1"`   // likewise, of what is dry
	// StarchKg is how much more starch is in it by its certificate than is planned with.
	StarchKg float64 `json:"starchMoreKg,omitempty" places:"3"`
}

// Mash is what the cooker gives.
type Mash struct {
	OriginalGravitySG float64     `json:"originalGravitySG" places:"4"` // from the grain alone
	HydrometerSG      float64     `json:"hydrometerSG" places:"4"`      // with the backset's solids
	Plato             float64     `json:"plato" places:"2"`             // of the hydrometer's reading
	PH                float64     `json:"pH" places:"2"`
	VolumeL           float64     `json:"volumeL" places:"1"` // at the end
	MostVolumeL       float64     `json:"mostVolumeL" places:"1"`
	LiquorL           float64     `json:"liquorL" places:"1"`           // water and backset
	KeptInL           float64     `json:"keptInL,omitempty" places:"1"` // of that, kept of the mash before
	KeptL             float64     `json:"keptL,omitempty" places:"1"`   // for the next mash, as it runs
	KeptSG            float64     `json:"keptSG,omitempty" places:"4"`
	BacksetL          float64     `json:"backsetL" places:"1"`
	BacksetPct        float64     `json:"backsetPct" places:"1"` // of the liquor
	LiquorGristLPerKg float64     `json:"liquorGristLPerKg" places:"3"`
	GelatinizedPct    float64     `json:"gelatinizedPct" places:"1"`
	ConversionPct     float64     `json:"conversionPct" places:"1"`
	FermentablePct    float64     `json:"fermentablePct" places:"1"` // of the extract
	ExtractKg         float64     `json:"extractKg" places:"3"`
	TheoryExtractKg   float64     `json:"theoryExtractKg" places:"3"`
	Lautered          bool        `json:"lautered"`
	DraffKg           float64     `json:"draffKg" places:"3"`
	Hours             float64     `json:"hours" places:"2"` // in the cooker
	BoilC             float64     `json:"boilC" places:"1"`
	HeatKWh           float64     `json:"heatKWh" places:"1"`
	CoolKWh           float64     `json:"coolKWh" places:"1"`
	CoolingWaterL     float64     `json:"coolingWaterL" places:"0"`
	AcidKg            float64     `json:"acidKg,omitempty" places:"3"`
	AcidMEq           float64     `json:"acidMEq,omitempty" places:"0"`  // hydrogen ions that it gives off in the mash
	SaltsMEq          float64     `json:"saltsMEq,omitempty" places:"0"` // of lime, less those that gypsum sets free
	SteamCondensateL  float64     `json:"steamCondensateL" places:"1"`
	Steps             []MashStep  `json:"steps"`
	Curve             []MashPoint `json:"curve"`
	// Windows are those of the enzymes in it.
	Windows []EnzymeWindow `json:"windows"`
}

// MashStep is one line of the mash, computed.
type MashStep struct {
	ID             string   `json:"id"` // mash.4
	Verb           string   `json:"verb"`
	Adds           []string `json:"adds,omitempty"`      // what goes in, by name
	StartMin       float64  `json:"startMin" places:"1"` // from the first step
	Minutes        float64  `json:"minutes" places:"1"`
	FromC          float64  `json:"fromC" places:"1"`
	ToC            float64  `json:"toC" places:"1"`
	VolumeL        float64  `json:"volumeL" places:"1"` // after it
	HeatKWh        float64  `json:"heatKWh" places:"1"`
	CoolKWh        float64  `json:"coolKWh" places:"1"`
	Limit          string   `json:"limit,omitempty"`      // what set its duration
	GravitySG      float64  `json:"gravitySG" places:"4"` // of the liquid after it, with the backset's solids
	GelatinizedPct float64  `json:"gelatinizedPct" places:"1"`
	ConvertedPct   float64  `json:"convertedPct" places:"1"`
	AlphaLeftPct   float64  `json:"alphaLeftPct" places:"1"`
	BetaLeftPct    float64  `json:"betaLeftPct" places:"1"`
	AddedLeftPct   float64  `json:"addedLeftPct" places:"1"`
}

// MashPoint is the mash at one moment.
type MashPoint struct {
	Min            float64 `json:"min" places:"2"`
	TempC          float64 `json:"tempC" places:"2"`
	GelatinizedPct float64 `json:"gelatinizedPct" places:"1"`
	ConvertedPct   float64 `json:"convertedPct" places:"1"`
	AlphaLeftPct   float64 `json:"alphaLeftPct" places:"1"`
	BetaLeftPct    float64 `json:"betaLeftPct" places:"1"`
	AddedLeftPct   float64 `json:"addedLeftPct" places:"1"`
}

// Ferment is what the fermenter gives.
type Ferment struct {
	Yeast          string         `json:"yeast"`
	PitchKg        float64        `json:"pitchKg" places:"3"`
	NutrientKg     float64        `json:"nutrientKg,omitempty" places:"3"`   // diammonium phosphate
	NutrientNMgL   float64        `json:"nutrientNMgL,omitempty" places:"0"` // the nitrogen that it brings, which yeast takes whole
	PitchGPerL     float64        `json:"pitchGPerL" places:"2"`
	PitchC         float64        `json:"pitchC" places:"1"`
	HoldLowC       float64        `json:"holdLowC" places:"1"`
	HoldHighC      float64        `json:"holdHighC" places:"1"`
	LeavesHoldH    float64        `json:"leavesHoldHours,omitempty" places:"1"` // when it is first more than 1 C outside its hold; 0 if never
	LeavesHoldC    float64        `json:"leavesHoldC,omitempty" places:"1"`     // how far it goes on that side
	Hours          float64        `json:"hours" places:"1"`                     // in the fermenter, until the still is charged
	AskedHours     float64        `json:"askedHours" places:"1"`                // as the batch asks; it goes on while it stands
	DryHours       float64        `json:"dryHours" places:"1"`                  // sugar 98 % gone; 0 if never
	AsItFills      bool           `json:"asItFills,omitempty"`                  // pitched while the worts ran in: all hours count from the full fermenter
	FinalGravitySG float64        `json:"finalGravitySG" places:"4"`
	FinalGrainSG   float64        `json:"finalGravityFromGrainSG" places:"4"` // without the backset's solids
	AbvPct         float64        `json:"abvPct" places:"2"`                  // of the whole, grain and yeast in it: times washVolumeL it is pureL
	WashVolumeL    float64        `json:"washVolumeL" places:"1"`
	PureL          float64        `json:"pureL" places:"2"` // litres of pure alcohol in the wash
	ProofGallons   float64        `json:"proofGallons" places:"2"`
	Wash           Lot            `json:"wash"`                      // the whole
	Liquid         Strength       `json:"liquid"`                    // strength of what runs through a sieve
	AttenuationPct float64        `json:"attenuationPct" places:"1"` // apparent, of the extract from the grain alone
	SugarLeftKg    float64        `json:"sugarLeftKg" places:"3"`
	PH             float64        `json:"pH" places:"2"`
	SourHours      float64        `json:"sourHours" places:"1"` // when souring sets in; 0 if not
	PeakC          float64        `json:"peakC" places:"1"`
	PeakHours      float64        `json:"peakHours" places:"1"` // when it is at its warmest
	PeakHeatKW     float64        `json:"peakHeatKW" places:"2"`
	CoolKWh        float64        `json:"coolKWh" places:"1"`
	CoolingWaterL  float64        `json:"coolingWaterL,omitempty" places:"0"` // where the flow through jacket or coil is known
	CO2Kg          float64        `json:"co2Kg" places:"3"`
	CO2M3          float64        `json:"co2M3" places:"1"` // as gas at 20 C and 101.325 kPa
	Curve          []FermentPoint `json:"curve"`
	Account        Account        `json:"account"` // what became of the sugar
}

// FermentPoint is the ferment at one hour.
type FermentPoint struct {
	Hour       float64 `json:"hour" places:"2"`
	TempC      float64 `json:"tempC" places:"2"`
	SG         float64 `json:"sg" places:"4"`
	AbvPct     float64 `json:"abvPct" places:"2"` // of what runs through a sieve, as Ferment.Liquid
	PH         float64 `json:"pH" places:"2"`
	YeastGPerL float64 `json:"yeastGPerL" places:"2"`
	HeatKW     float64 `json:"heatKW" places:"2"`
	CO2Kg      float64 `json:"co2Kg" places:"3"`
	CoolingPct float64 `json:"coolingPct" places:"0"` // of the vessel's cooling in use
}

// Run is the work of one still: all its charges together, and one charge in
// detail. The charges of a batch are equal.
type Run struct {
	Still          string     `json:"still"`
	Charges        int        `json:"charges"`
	Charge         Lot        `json:"charge"` // one charge
	FeintsReturned *Lot       `json:"feintsReturned,omitempty"`
	FeintsFrom     FeintsFrom `json:"feintsFrom,omitempty"`
	ChargeWater    *Lot       `json:"chargeWater,omitempty"`     // of that charge, to bring it to its strength
	SteadyTried    int        `json:"steadyRunsTried,omitempty"` // runs computed to find the one that repeats itself
	// HeartsOfLowWinesPct is the share of the low wines' alcohol that comes out as
	// hearts once the house runs steadily, its feints returned.
	HeartsOfLowWinesPct float64    `json:"heartsOfLowWinesPct,omitempty" places:"1"`
	HeatUpMin           float64    `json:"heatUpMin" places:"1"`
	Preheat             *Preheat   `json:"preheat,omitempty"`     // of the wash, by the pot ale of the charge before
	Hours               float64    `json:"hours" places:"2"`      // one charge, fire to stop
	TotalHours          float64    `json:"totalHours" places:"2"` // all charges, fire to stop
	MostFillPct         float64    `json:"mostFillPct" places:"1"`
	StopAbvPct          float64    `json:"stopAbvPct" places:"2"`
	Fractions           []Fraction `json:"fractions"` // all charges together
	Feints              *Lot       `json:"feints,omitempty"`
	Residue             Lot        `json:"residue"` // left in the pot: pot ale, spent lees
	LossL               float64    `json:"alcoholLeftL" places:"3"`
	HeatKWh             float64    `json:"heatKWh" places:"1"`
	CoolKWh             float64    `json:"coolKWh" places:"1"`
	CoolingWaterL       float64    `json:"coolingWaterL" places:"0"`
	Curve               []RunPoint `json:"curve"`
}

// Preheat is wash that the pot ale of the charge before has warmed on its way into the
// still.
type Preheat struct {
	Charges  int     `json:"charges"` // that are warmed so; where it is one less than all, the first is not
	FromC    float64 `json:"fromC" places:"1"`
	ToC      float64 `json:"toC" places:"1"`
	PotAleC  float64 `json:"potAleC" places:"1"`
	LeavesC  float64 `json:"potAleLeavesC" places:"1"`
	SavedKWh float64 `json:"savedKWh" places:"1"` // of all of them
	SavedMin float64 `json:"savedMin" places:"1"` // of each
}

// FeintsFrom says whose feints a charge takes; empty where it takes none.
type FeintsFrom string

const (
	FeintsSteady FeintsFrom = "steady"  // of a house at work: those that the run leaves
	FeintsOnHand FeintsFrom = "on hand" // those that the house says it has today
	FeintsNone   FeintsFrom = "none"    // it has none yet
)

// Fraction is what came over between two cuts. Lot is of all charges, the
// minutes are of each.
type Fraction struct {
	Name string `json:"name"`
	Lot
	StartMin   float64  `json:"startMin" places:"1"` // from the fire
	EndMin     float64  `json:"endMin" places:"1"`
	StartOverL float64  `json:"startOverL" places:"2"` // distillate of one charge before it
	EndOverL   float64  `json:"endOverL" places:"2"`
	Begins     Strength `json:"begins"` // at the spout
	Ends       Strength `json:"ends"`
	PureShare  float64  `json:"purePct" places:"1"` // of the alcohol in the charge
	VapourC    float64  `json:"vapourC" places:"1"` // leaving the head at its end
}

// Fraction finds a fraction by name; an empty one if the run has none.
func (r Run) Fraction(name string) Fraction {
	for _, f := range r.Fractions {
		if f.Name == name {
			return f
		}
	}
	return Fraction{Name: name}
}

// Over is a volume of distillate of one charge, litres at 20 C, as a Quantity
// with its gallons at 60 F: those of the full receivers, and of the one that
// fills by its own share, as the readings of the steps count it.
func (r Run) Over(litres float64) Quantity {
	q := Quantity{Value: litres, Unit: Litre}
	for _, f := range r.Fractions {
		if f.EndOverL <= f.StartOverL || litres <= f.StartOverL {
			continue
		}
		share := min((litres-f.StartOverL)/(f.EndOverL-f.StartOverL), 1)
		q.Gallons += share * f.WineGallons / float64(max(r.Charges, 1))
	}
	return q
}

// RunPoint is a run at one moment.
type RunPoint struct {
	Min       float64 `json:"min" places:"2"`
	PotC      float64 `json:"potC" places:"2"`
	VapourC   float64 `json:"vapourC" places:"1"`
	AbvPct    float64 `json:"abvPct" places:"2"`
	Proof     float64 `json:"proof" places:"1"`
	PotAbvPct float64 `json:"potAbvPct" places:"2"`
	OverL     float64 `json:"overL" places:"2"`
	RateLPerH float64 `json:"rateLPerH" places:"1"`
	Fraction  string  `json:"fraction"`
}

// Reduction is hearts brought to entry strength with water.
type Reduction struct {
	From         Lot     `json:"from"`
	To           Lot     `json:"to"`
	WaterL       float64 `json:"waterL" places:"2"`
	WaterKg      float64 `json:"waterKg" places:"3"`
	WaterScaleKg float64 `json:"waterScaleKg" places:"3"` // what a scale in air shows
	ContractionL float64 `json:"contractionL" places:"2"`
	TempRiseC    float64 `json:"tempRiseC" places:"1"`
	// In US gallons at 60 F, where hearts and water less the contraction come to
	// the whole as they do in litres at 20 C.
	WaterGallons       float64 `json:"waterGallons" places:"3"`
	ContractionGallons float64 `json:"contractionGallons" places:"3"`
}

// Water is what goes in as a Quantity.
func (r Reduction) Water() Quantity {
	return Quantity{Value: r.WaterL, Unit: Litre, Gallons: r.WaterGallons}
}

// Contraction is what is lost by mixing as a Quantity.
func (r Reduction) Contraction() Quantity {
	return Quantity{Value: r.ContractionL, Unit: Litre, Gallons: r.ContractionGallons}
}

// Cask is the filling and what the wood is expected to do. A batch that goes
// into no wood has a size of 0: it is bottled, if it has bottles, or kept.
type Cask struct {
	Kind       string     `json:"kind"`
	New        bool       `json:"new"`
	Char       int        `json:"char"`
	SizeL      float64    `json:"sizeL" places:"2"`
	Entry      Strength   `json:"entry"`
	Casks      int        `json:"casks"`
	Fill       *Lot       `json:"fill,omitempty"`               // one cask
	NetKg      float64    `json:"netKg,omitempty" places:"3"`   // of the spirit in one, as a scale in air shows it
	TareKg     float64    `json:"tareKg,omitempty" places:"3"`  // of the empty cask
	TareSaid   bool       `json:"tareSaid,omitempty"`           // the batch says what it weighs; else it is that of its wood and size
	GrossKg    float64    `json:"grossKg,omitempty" places:"3"` // both
	LastFill   *Lot       `json:"lastFill,omitempty"`           // the last one, if it is filled a little short
	Before     *Lot       `json:"before,omitempty"`             // what a run before it left over, at entry strength: it goes in with this one's
	BeforeOf   string     `json:"beforeOf,omitempty"`           // the number of that run
	Leftover   Lot        `json:"leftover"`                     // at entry strength
	LeftoverOf float64    `json:"leftoverPct" places:"0"`       // of a cask
	RestMonths float64    `json:"restMonths" places:"1"`
	Climate    string     `json:"climate"`
	Forecast   []CaskYear `json:"forecast"`
	// ByMonth is the forecast month by month, of a rest beyond 20 years each half year: what a
	// sample is held against.
	ByMonth  []CaskYear `json:"byMonth,omitempty"`
	BottleL  float64    `json:"bottleL" places:"3"`
	BottleAt Strength   `json:"bottleAt"`
	// BottleAsked is the strength that the batch asks for, where the cask ends
	// weaker; BottleAssumed says that the batch asks for none.
	BottleAsked   *Strength `json:"bottleAsked,omitempty"`
	BottleAssumed bool      `json:"bottleAssumed,omitempty"`
	Bottles       int       `json:"bottles"`
	CaskLossPct   float64   `json:"caskLossPct" places:"1"` // of the filled volume, at the end of the rest
}

// CaskYear is one cask at an age.
type CaskYear struct {
	AgeYears     float64 `json:"ageYears" places:"3"`
	VolumeL      float64 `json:"volumeL" places:"2"`
	AbvPct       float64 `json:"abvPct" places:"2"`
	Proof        float64 `json:"proof" places:"2"`
	PureL        float64 `json:"pureL" places:"2"`
	ProofGallons float64 `json:"proofGallons" places:"2"`
	WineGallons  float64 `json:"wineGallons" places:"3"` // US gal at 60 F
}

// Volume is what is in it as a Quantity.
func (y CaskYear) Volume() Quantity {
	return Quantity{Value: y.VolumeL, Unit: Litre, Gallons: y.WineGallons}
}

// Yield is what the grain gave. A tonne is of grain as is.
type Yield struct {
	TheoryLPAPerTonne float64 `json:"theoryLPAPerTonne" places:"1"` // all starch and sugar to ethanol
	WashLPAPerTonne   float64 `json:"washLPAPerTonne" places:"1"`
	HeartsLPAPerTonne float64 `json:"heartsLPAPerTonne" places:"1"`
	OfTheoryPct       float64 `json:"washOfTheoryPct" places:"1"`
	// A distiller's bushel is 56 lb of any grain.
	WashPGPerBushel   float64 `json:"washProofGallonsPerDistillersBushel" places:"2"`
	HeartsPGPerBushel float64 `json:"heartsProofGallonsPerDistillersBushel" places:"2"`
}

// Energy is heat and water, stage by stage and in all.
type Energy struct {
	Stages      []StageEnergy `json:"stages"`
	HeatKWh     float64       `json:"heatKWh" places:"1"`
	CoolKWh     float64       `json:"coolKWh" places:"1"`
	WaterL      float64       `json:"waterL" places:"2"` // process and cooling, to the places at which the cost counts it
	KWhPerLPA   float64       `json:"heatKWhPerLPA" places:"2"`
	WaterPerLPA float64       `json:"waterLPerLPA" places:"1"`
}

// StageEnergy is one stage's part.
type StageEnergy struct {
	Stage         string  `json:"stage"`
	HeatKWh       float64 `json:"heatKWh" places:"1"`
	CoolKWh       float64 `json:"coolKWh" places:"1"`
	ProcessL      float64 `json:"processWaterL" places:"0"`
	CoolingWaterL float64 `json:"coolingWaterL" places:"0"`
}

// Cost is what the batch costs by the house's own prices.
type Cost struct {
	Currency string     `json:"currency"`
	Lines    []CostLine `json:"lines"`
	Total    float64    `json:"total" places:"2"`
	PerLPA   float64    `json:"perLPA" places:"2"`
	PerPG    float64    `json:"perProofGallon" places:"2"`
	PerCask  float64    `json:"perCask" places:"2"`
	// The same without the casks that are filled, as a run is counted in the books; 0 where
	// none are paid for.
	SpiritPerLPA float64 `json:"spiritPerLPA,omitempty" places:"2"`
	SpiritPerPG  float64 `json:"spiritPerProofGallon,omitempty" places:"2"`
	// PerBottle is what one bottle costs of those at the end of the rest, Carrying and
	// EmptyBottle with it; 0 where none is filled. Excise is not in it.
	PerBottle float64 `json:"perBottle,omitempty" places:"2"`
	// Carrying is what the money costs that lies in the casks until then, simple, by the
	// house's rate. It is no part of Total.
	Carrying float64 `json:"carrying,omitempty" places:"2"`
	// EmptyBottle is what one costs with its closure and its label, 0 where nobody says. It
	// is no part of Total.
	EmptyBottle float64  `json:"emptyBottle,omitempty" places:"2"`
	Unpriced    []string `json:"unpriced,omitempty"` // used, with no price stated
}

// CostLine is one thing paid for.
type CostLine struct {
	What   string   `json:"what"`
	Amount Quantity `json:"amount"`
	Cost   float64  `json:"cost" places:"2"`
}
