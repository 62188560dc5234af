package ferment

import (
	"newmake/compile/matter/starch"
	"newmake/compile/matter/stream"
	"newmake/lang/recipe"
)

// Input is all that the ferment depends on.
type Input struct {
	Wort                stream.Stream // cooled, as it enters the fermenter
	PH                  float64
	Enzymes             starch.Enzymes
	Doses               []recipe.Dose
	Yeast               *recipe.Yeast
	PitchKg             float64 // yeast as bought
	Vessel              recipe.Vessel
	CoolW               float64 // what the vessel can take out, with cold water enough
	WaterC              float64 // cooling water in
	AmbientC            float64
	PressurePa          float64 // local air pressure; 0: 101325
	HoldLowC, HoldHighC float64 // HoldHighC 0: neither cooled nor warmed
	DurationS           float64
	Mash                *recipe.Model // constants of starch hydrolysis
	Model               *recipe.Model // constants of the ferment that are not the yeast's
}

// Result is what the ferment gives.
type Result struct {
	Wash           stream.Stream
	Enzymes        starch.Enzymes // left at the end
	Curve          []Point        // every hour, first at 0, last at the end
	FinalSG        float64        // hydrometer, alcohol and backset included
	ABV            float64        // 20 C
	DryS           float64        // when fermentable sugar is 98 % gone; 0 if it never is
	PeakHeatW      float64        // heat of fermentation at its greatest
	PeakTempC      float64        // the warmest it is
	PeakTempS      float64        // when that is: hours after its greatest heat, where nothing cools it
	CO2Kg          float64
	CoolMostW      float64 // what the cooling takes out at the hold's upper end, or is rated at
	ColdestC       float64 // that the cooling could hold; 0 without any
	CoolingWaterM3 float64 // through a jacket or coil whose flow is known; else 0
	PH             float64
	SourS          float64 // when the sour phase sets in; 0 if not within the time
	Attenuation    float64 // apparent, of the extract from the grain alone
	SugarLeftKg    float64 // that this yeast could have taken

	EthanolYield float64 // of the sugar taken, as a share of Gay-Lussac's; vented ethanol counts
	SugarTakenKg float64 // as glucose
	GrownKg      float64 // dry yeast grown
	ViableShare  float64 // of all yeast, at the end
	GlycerolKg   float64 // counted among the wash's solubles, as are the next
	OtherKg      float64 // other by-products
	SouredKg     float64 // of the wort's solubles, eaten by bacteria
	VentEthanol  float64 // kg that left with the carbon dioxide
	VentWater    float64 // kg

	// Heat. HeatJ + WarmJ - CoolJ - LossJ - VentJ is HeatCapacityJK times the
	// rise of temperature.
	HeatJ, WarmJ, CoolJ, LossJ, VentJ float64
	HeatCapacityJK                    float64 // of wort and vessel
}

// Point is the ferment at one moment.
type Point struct {
	TimeS, TempC, SG, ABV, PH, YeastKgM3, HeatW, CO2Kg float64 // YeastKgM3: alive, dry

	Cooling     float64 // share of the vessel's cooling in use
	SugarKgM3   float64 // that this yeast can take
	AcidKgM3    float64 // lactic, made by bacteria
	ViableShare float64
}
