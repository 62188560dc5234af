package recipe

import "newmake/lang/diag"

// Plant is the distillery: what sets every boiling point, hour and limit.
type Plant struct {
	Name        string
	ElevationM  float64
	WaterC      float64 // mains or well temperature
	HardnessPPM float64 // as CaCO3
	BoilerW     float64 // shared by all that heats; 0: no limit
	Shift       Shift
	Crew        int
	Zone        string // IANA name
	AmbientC    float64
	Climate     Climate
	Vessels     []*Vessel
	Costs       Costs
	At          diag.Span
}

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
	Kind     VesselKind
	Name     string
	HoldsM3  float64 // to the brim
	HeatsW   float64
	Steam    Steam
	CoolsW   float64
	Reflux   float64              // share of the vapour condensed in the head and returned, 0..1
	MetalKg  float64              // vessel mass that heats with its contents; 0: by the default rule
	LossW    float64              // heat lost at the boil; 0: by the default rule
	FillMost float64              // greatest fill as a share of HoldsM3; 0: default for the kind
	Where    map[string]diag.Span // field → its line
	At       diag.Span
}

// Steam says how heat gets in.
type Steam uint8

const (
	Jacket Steam = iota // through the wall
	Direct              // live steam: its condensate stays
)

// String is the word that the steam is written by.
func (s Steam) String() string { return [...]string{"jacket", "direct"}[s] }
