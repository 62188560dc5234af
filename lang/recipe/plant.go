package recipe

import (
	"math"
	"time"

	"newmake/lang/diag"
)

// Plant is the distillery: what sets every boiling point, hour and limit.
type Plant struct {
	Name        string
	ElevationM  float64
	WaterC      float64 // mains or well temperature; where it varies, the coldest of the year
	WarmestC    float64 // of the supply, in WarmestIn; where it varies with the year
	WarmestIn   Month   // 0: the same all the year
	HardnessPPM float64 // as CaCO3
	BoilerW     float64 // shared by all that heats; 0: no limit
	Shift       Shift
	Crew        int
	Zone        string // IANA name
	Country     string // under whose law it stands, "" if that is not written: see Under
	AmbientC    float64
	Climate     Climate
	Vessels     []*Vessel
	Tanks       []*Tank
	RackHouses  []*RackHouse
	WortCooler  Cooler // between tun and fermenter; no area: there is none
	Rates       Rates
	Costs       Costs
	At          diag.Span
}

// Rates is how fast work goes that no model computes; 0 where the house does not say.
type Rates struct {
	MillKgS    float64
	GrainInKgS float64
	WaterInM3S float64
	PumpM3S    float64
	DigKgS     float64 // wet draff
}

// Month is one of the year, January 1; 0 is none.
type Month uint8

func (m Month) String() string {
	if m == 0 {
		return "none"
	}
	return time.Month(m).String()
}

// waterOnC is the temperature of the supply on a day: a sine over the year where it
// varies, warmest in the middle of WarmestIn, coldest half a year from then (common
// practice; the mains of a town follow the ground so, Burch and Christensen, Towards
// Development of an Algorithm for Mains Water Temperature, NREL 2007, from memory).
func (p *Plant) waterOnC(s Start) float64 {
	if p.WarmestIn == 0 {
		return p.WaterC
	}
	const month = 365.25 / 12
	days := (float64(s.Month)-float64(p.WarmestIn))*month + float64(s.Day) - month/2
	mean, swing := (p.WarmestC+p.WaterC)/2, (p.WarmestC-p.WaterC)/2
	return mean + swing*math.Cos(2*math.Pi*days/365.25)
}

// SupplyC is the temperature of the plant's water on the day on which the batch
// begins.
func (b *Batch) SupplyC() float64 { return b.Plant.waterOnC(b.Start) }

// Shift is when somebody is there.
type Shift struct {
	FromMinute, ToMinute int     // minutes after midnight
	Days                 [7]bool // Sunday first, as time.Weekday
}

// VesselKind is what a vessel is for.
type VesselKind uint8

const (
	Cooker VesselKind = iota
	Fermenter
	Still
)

func (k VesselKind) String() string {
	return [...]string{Cooker: "cooker", Fermenter: "fermenter", Still: "still"}[k]
}

// Vessel is one vessel of the plant.
type Vessel struct {
	Kind      VesselKind
	Name      string
	HoldsM3   float64 // to the brim
	HeatsW    float64
	HeatedBy  Heating
	Agitator  bool // rakes, a stirrer or a scraper by a drive; in a still they keep what is in it off the heated wall
	Preheater Preheater
	CoolsW    float64 // with cold water enough; 0 where Cooler says more
	Cooler    Cooler
	Condenser Condenser // of a still
	CoveredM3 float64   // volume that just covers its heating surface; 0: not said
	Clean     Cleaning
	Reflux    float64              // share of the vapour condensed in the head and returned, 0..1
	LostFrac  float64              // of a still: share of what comes over that reaches no receiver
	MetalKg   float64              // vessel mass that heats with its contents; 0: by the default rule
	LossW     float64              // heat lost at the boil; 0: by the default rule
	FillMost  float64              // greatest fill as a share of HoldsM3; 0: default for the kind
	Where     map[string]diag.Span // field → its line
	Within    map[string]Within    // field → the range that holds it 9 times in 10, where it is stated
	At        diag.Span
}

// Cleaning is how a vessel is cleaned, in the house's words; zero where it does not say.
type Cleaning struct {
	DurationS float64 // after each batch
	With      string
	Every     int // charges after which it has Deep besides; 0: never
	DeepS     float64
	Deep      string
}

// HasCooling reports whether something cools the vessel.
func (v *Vessel) HasCooling() bool { return v.CoolsW > 0 || v.Cooler.AreaM2 > 0 }

// Cooler is a surface with cooling water behind it.
type Cooler struct {
	Surface  Surface
	AreaM2   float64 // 0: there is none
	WM2K     float64 // coefficient of heat transfer; 0: the model's for this surface
	WaterM3S float64
}

// Surface is what a cooler is.
type Surface uint8

const (
	JacketSurface Surface = iota
	CoilSurface
)

// String is the word that the surface is written by.
func (s Surface) String() string { return [...]string{"jacket", "coil"}[s] }

// Condenser says how a still's condenser is run; 0: by common practice.
type Condenser struct {
	WaterOutC   float64 // at most
	DistillateC float64
}

// Preheater is a surface of a wash still with the wash on its way in on one side and
// the pot ale of the charge before on the other.
type Preheater struct {
	AreaM2  float64 // 0: there is none
	WM2K    float64 // coefficient of heat transfer; 0: the model's
	OverS   float64 // how long a charge takes through it at least; 0: as the pump goes
	PotAleC float64 // of pot ale that is kept hot from batch to batch; 0: none is
	WashC   float64 // the wash is brought to no more; 0: by common practice
}

// Heating says how heat gets in.
type Heating uint8

const (
	Jacket   Heating = iota // through the wall
	Direct                  // live steam: its condensate stays
	Elements                // electric ones, bare in the liquid
)

// String is the word that the heating is written by.
func (h Heating) String() string { return [...]string{"jacket", "live-steam", "elements"}[h] }
