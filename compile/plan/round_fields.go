// Written by go test ./compile/plan -update from the tags. DO NOT EDIT.
//
// Where a field is gone this does not compile: take its line out, then run that.

package plan

func (x *Account) round() {
	x.SugarTakenKg = RoundTo(x.SugarTakenKg, 3)
	x.SugarLeftKg = RoundTo(x.SugarLeftKg, 3)
	x.EthanolYieldPct = RoundTo(x.EthanolYieldPct, 3)
	x.YeastGrownKg = RoundTo(x.YeastGrownKg, 3)
	x.GlycerolKg = RoundTo(x.GlycerolKg, 3)
	x.VentEthanolKg = RoundTo(x.VentEthanolKg, 3)
	x.VentWaterKg = RoundTo(x.VentWaterKg, 3)
	x.CO2Kg = RoundTo(x.CO2Kg, 3)
}

func (x *Account) noNumber() string {
	if !isNumber(x.SugarTakenKg) {
		return "SugarTakenKg"
	}
	if !isNumber(x.SugarLeftKg) {
		return "SugarLeftKg"
	}
	if !isNumber(x.EthanolYieldPct) {
		return "EthanolYieldPct"
	}
	if !isNumber(x.YeastGrownKg) {
		return "YeastGrownKg"
	}
	if !isNumber(x.GlycerolKg) {
		return "GlycerolKg"
	}
	if !isNumber(x.VentEthanolKg) {
		return "VentEthanolKg"
	}
	if !isNumber(x.VentWaterKg) {
		return "VentWaterKg"
	}
	if !isNumber(x.CO2Kg) {
		return "CO2Kg"
	}
	return ""
}

func (x *Addition) round() {
	x.Amount.round()
	if x.At != nil {
		x.At.round()
	}
}

func (x *Addition) noNumber() string {
	if what := x.Amount.noNumber(); what != "" {
		return what
	}
	if x.At != nil {
		if what := x.At.noNumber(); what != "" {
			return what
		}
	}
	return ""
}

func (x *Bands) round() {
	for i := range x.Numbers {
		x.Numbers[i].round()
	}
	for i := range x.Mash {
		x.Mash[i].round()
	}
	for i := range x.Ferment {
		x.Ferment[i].round()
	}
	x.Strip.round()
	x.Spirit.round()
	for i := range x.Cask {
		x.Cask[i].round()
	}
}

func (x *Bands) noNumber() string {
	for i := range x.Numbers {
		if what := x.Numbers[i].noNumber(); what != "" {
			return what
		}
	}
	for i := range x.Mash {
		if what := x.Mash[i].noNumber(); what != "" {
			return what
		}
	}
	for i := range x.Ferment {
		if what := x.Ferment[i].noNumber(); what != "" {
			return what
		}
	}
	if what := x.Strip.noNumber(); what != "" {
		return what
	}
	if what := x.Spirit.noNumber(); what != "" {
		return what
	}
	for i := range x.Cask {
		if what := x.Cask[i].noNumber(); what != "" {
			return what
		}
	}
	return ""
}

func (x *Bill) round() {
	x.TotalKg = RoundTo(x.TotalKg, 3)
	x.Bushels = RoundTo(x.Bushels, 2)
	x.ExtractKg = RoundTo(x.ExtractKg, 3)
	for i := range x.Lines {
		x.Lines[i].round()
	}
	x.LintnerDeg = RoundTo(x.LintnerDeg, 0)
	for i := range x.Additions {
		x.Additions[i].round()
	}
}

func (x *Bill) noNumber() string {
	if !isNumber(x.TotalKg) {
		return "TotalKg"
	}
	if !isNumber(x.Bushels) {
		return "Bushels"
	}
	if !isNumber(x.ExtractKg) {
		return "ExtractKg"
	}
	for i := range x.Lines {
		if what := x.Lines[i].noNumber(); what != "" {
			return what
		}
	}
	if !isNumber(x.LintnerDeg) {
		return "LintnerDeg"
	}
	for i := range x.Additions {
		if what := x.Additions[i].noNumber(); what != "" {
			return what
		}
	}
	return ""
}

func (x *Card) round() {
	x.Target.round()
	x.RoomC = RoundTo(x.RoomC, 1)
	for i := range x.Steps {
		x.Steps[i].round()
	}
	for i := range x.Trims {
		x.Trims[i].round()
	}
}

func (x *Card) noNumber() string {
	if what := x.Target.noNumber(); what != "" {
		return what
	}
	if !isNumber(x.RoomC) {
		return "RoomC"
	}
	for i := range x.Steps {
		if what := x.Steps[i].noNumber(); what != "" {
			return what
		}
	}
	for i := range x.Trims {
		if what := x.Trims[i].noNumber(); what != "" {
			return what
		}
	}
	return ""
}

func (x *CardStep) round() {
	x.SharePct = RoundTo(x.SharePct, 1)
	x.AddL = RoundTo(x.AddL, 2)
	x.AddScaleKg = RoundTo(x.AddScaleKg, 3)
	x.WaterL = RoundTo(x.WaterL, 2)
	x.WaterScaleKg = RoundTo(x.WaterScaleKg, 3)
	x.AddGallons = RoundTo(x.AddGallons, 3)
	x.WaterGallons = RoundTo(x.WaterGallons, 3)
	x.Gives.round()
	x.GivesScaleKg = RoundTo(x.GivesScaleKg, 3)
	x.MixedC = RoundTo(x.MixedC, 1)
	for i := range x.Shows {
		x.Shows[i].round()
	}
}

func (x *CardStep) noNumber() string {
	if !isNumber(x.SharePct) {
		return "SharePct"
	}
	if !isNumber(x.AddL) {
		return "AddL"
	}
	if !isNumber(x.AddScaleKg) {
		return "AddScaleKg"
	}
	if !isNumber(x.WaterL) {
		return "WaterL"
	}
	if !isNumber(x.WaterScaleKg) {
		return "WaterScaleKg"
	}
	if !isNumber(x.AddGallons) {
		return "AddGallons"
	}
	if !isNumber(x.WaterGallons) {
		return "WaterGallons"
	}
	if what := x.Gives.noNumber(); what != "" {
		return what
	}
	if !isNumber(x.GivesScaleKg) {
		return "GivesScaleKg"
	}
	if !isNumber(x.MixedC) {
		return "MixedC"
	}
	for i := range x.Shows {
		if what := x.Shows[i].noNumber(); what != "" {
			return what
		}
	}
	return ""
}

func (x *Cask) round() {
	x.SizeL = RoundTo(x.SizeL, 2)
	x.Entry.round()
	if x.Fill != nil {
		x.Fill.round()
	}
	x.NetKg = RoundTo(x.NetKg, 3)
	x.TareKg = RoundTo(x.TareKg, 3)
	x.GrossKg = RoundTo(x.GrossKg, 3)
	if x.LastFill != nil {
		x.LastFill.round()
	}
	if x.Before != nil {
		x.Before.round()
	}
	x.Leftover.round()
	x.LeftoverOf = RoundTo(x.LeftoverOf, 0)
	x.RestMonths = RoundTo(x.RestMonths, 1)
	for i := range x.Forecast {
		x.Forecast[i].round()
	}
	for i := range x.ByMonth {
		x.ByMonth[i].round()
	}
	x.BottleL = RoundTo(x.BottleL, 3)
	x.BottleAt.round()
	if x.BottleAsked != nil {
		x.BottleAsked.round()
	}
	x.CaskLossPct = RoundTo(x.CaskLossPct, 1)
}

func (x *Cask) noNumber() string {
	if !isNumber(x.SizeL) {
		return "SizeL"
	}
	if what := x.Entry.noNumber(); what != "" {
		return what
	}
	if x.Fill != nil {
		if what := x.Fill.noNumber(); what != "" {
			return what
		}
	}
	if !isNumber(x.NetKg) {
		return "NetKg"
	}
	if !isNumber(x.TareKg) {
		return "TareKg"
	}
	if !isNumber(x.GrossKg) {
		return "GrossKg"
	}
	if x.LastFill != nil {
		if what := x.LastFill.noNumber(); what != "" {
			return what
		}
	}
	if x.Before != nil {
		if what := x.Before.noNumber(); what != "" {
			return what
		}
	}
	if what := x.Leftover.noNumber(); what != "" {
		return what
	}
	if !isNumber(x.LeftoverOf) {
		return "LeftoverOf"
	}
	if !isNumber(x.RestMonths) {
		return "RestMonths"
	}
	for i := range x.Forecast {
		if what := x.Forecast[i].noNumber(); what != "" {
			return what
		}
	}
	for i := range x.ByMonth {
		if what := x.ByMonth[i].noNumber(); what != "" {
			return what
		}
	}
	if !isNumber(x.BottleL) {
		return "BottleL"
	}
	if what := x.BottleAt.noNumber(); what != "" {
		return what
	}
	if x.BottleAsked != nil {
		if what := x.BottleAsked.noNumber(); what != "" {
			return what
		}
	}
	if !isNumber(x.CaskLossPct) {
		return "CaskLossPct"
	}
	return ""
}

func (x *CaskBand) round() {
	x.AgeYears = RoundTo(x.AgeYears, 3)
	x.LowVolumeL = RoundTo(x.LowVolumeL, 2)
	x.HighVolumeL = RoundTo(x.HighVolumeL, 2)
	x.LowWineGallons = RoundTo(x.LowWineGallons, 2)
	x.HighWineGallons = RoundTo(x.HighWineGallons, 2)
	x.LowAbvPct = RoundTo(x.LowAbvPct, 2)
	x.HighAbvPct = RoundTo(x.HighAbvPct, 2)
	x.LowProof = RoundTo(x.LowProof, 2)
	x.HighProof = RoundTo(x.HighProof, 2)
}

func (x *CaskBand) noNumber() string {
	if !isNumber(x.AgeYears) {
		return "AgeYears"
	}
	if !isNumber(x.LowVolumeL) {
		return "LowVolumeL"
	}
	if !isNumber(x.HighVolumeL) {
		return "HighVolumeL"
	}
	if !isNumber(x.LowWineGallons) {
		return "LowWineGallons"
	}
	if !isNumber(x.HighWineGallons) {
		return "HighWineGallons"
	}
	if !isNumber(x.LowAbvPct) {
		return "LowAbvPct"
	}
	if !isNumber(x.HighAbvPct) {
		return "HighAbvPct"
	}
	if !isNumber(x.LowProof) {
		return "LowProof"
	}
	if !isNumber(x.HighProof) {
		return "HighProof"
	}
	return ""
}

func (x *CaskYear) round() {
	x.AgeYears = RoundTo(x.AgeYears, 3)
	x.VolumeL = RoundTo(x.VolumeL, 2)
	x.AbvPct = RoundTo(x.AbvPct, 2)
	x.Proof = RoundTo(x.Proof, 2)
	x.PureL = RoundTo(x.PureL, 2)
	x.ProofGallons = RoundTo(x.ProofGallons, 2)
	x.WineGallons = RoundTo(x.WineGallons, 3)
}

func (x *CaskYear) noNumber() string {
	if !isNumber(x.AgeYears) {
		return "AgeYears"
	}
	if !isNumber(x.VolumeL) {
		return "VolumeL"
	}
	if !isNumber(x.AbvPct) {
		return "AbvPct"
	}
	if !isNumber(x.Proof) {
		return "Proof"
	}
	if !isNumber(x.PureL) {
		return "PureL"
	}
	if !isNumber(x.ProofGallons) {
		return "ProofGallons"
	}
	if !isNumber(x.WineGallons) {
		return "WineGallons"
	}
	return ""
}

func (x *Congener) round() {
	for i := range x.Fractions {
		x.Fractions[i].round()
	}
	x.LeftPct.round()
	x.Gain.round()
}

func (x *Congener) noNumber() string {
	for i := range x.Fractions {
		if what := x.Fractions[i].noNumber(); what != "" {
			return what
		}
	}
	if what := x.LeftPct.noNumber(); what != "" {
		return what
	}
	if what := x.Gain.noNumber(); what != "" {
		return what
	}
	return ""
}

func (x *CongenerFraction) round() {
	x.SharePct.round()
	x.Relative.round()
}

func (x *CongenerFraction) noNumber() string {
	if what := x.SharePct.noNumber(); what != "" {
		return what
	}
	if what := x.Relative.noNumber(); what != "" {
		return what
	}
	return ""
}

func (x *CongenerPoint) round() {
	x.Min = RoundTo(x.Min, 2)
	x.AbvPct = RoundTo(x.AbvPct, 2)
	for i := range x.Relative {
		x.Relative[i] = RoundTo(x.Relative[i], 3)
	}
}

func (x *CongenerPoint) noNumber() string {
	if !isNumber(x.Min) {
		return "Min"
	}
	if !isNumber(x.AbvPct) {
		return "AbvPct"
	}
	for _, v := range x.Relative {
		if !isNumber(v) {
			return "Relative"
		}
	}
	return ""
}

func (x *Congeners) round() {
	x.UncertaintyPct = RoundTo(x.UncertaintyPct, 0)
	for i := range x.Each {
		x.Each[i].round()
	}
	for i := range x.Curve {
		x.Curve[i].round()
	}
}

func (x *Congeners) noNumber() string {
	if !isNumber(x.UncertaintyPct) {
		return "UncertaintyPct"
	}
	for i := range x.Each {
		if what := x.Each[i].noNumber(); what != "" {
			return what
		}
	}
	for i := range x.Curve {
		if what := x.Curve[i].noNumber(); what != "" {
			return what
		}
	}
	return ""
}

func (x *Cost) round() {
	for i := range x.Lines {
		x.Lines[i].round()
	}
	x.Total = RoundTo(x.Total, 2)
	x.PerLPA = RoundTo(x.PerLPA, 2)
	x.PerPG = RoundTo(x.PerPG, 2)
	x.PerCask = RoundTo(x.PerCask, 2)
	x.SpiritPerLPA = RoundTo(x.SpiritPerLPA, 2)
	x.SpiritPerPG = RoundTo(x.SpiritPerPG, 2)
	x.PerBottle = RoundTo(x.PerBottle, 2)
	x.Carrying = RoundTo(x.Carrying, 2)
	x.EmptyBottle = RoundTo(x.EmptyBottle, 2)
}

func (x *Cost) noNumber() string {
	for i := range x.Lines {
		if what := x.Lines[i].noNumber(); what != "" {
			return what
		}
	}
	if !isNumber(x.Total) {
		return "Total"
	}
	if !isNumber(x.PerLPA) {
		return "PerLPA"
	}
	if !isNumber(x.PerPG) {
		return "PerPG"
	}
	if !isNumber(x.PerCask) {
		return "PerCask"
	}
	if !isNumber(x.SpiritPerLPA) {
		return "SpiritPerLPA"
	}
	if !isNumber(x.SpiritPerPG) {
		return "SpiritPerPG"
	}
	if !isNumber(x.PerBottle) {
		return "PerBottle"
	}
	if !isNumber(x.Carrying) {
		return "Carrying"
	}
	if !isNumber(x.EmptyBottle) {
		return "EmptyBottle"
	}
	return ""
}

func (x *CostLine) round() {
	x.Amount.round()
	x.Cost = RoundTo(x.Cost, 2)
}

func (x *CostLine) noNumber() string {
	if what := x.Amount.noNumber(); what != "" {
		return what
	}
	if !isNumber(x.Cost) {
		return "Cost"
	}
	return ""
}

func (x *Energy) round() {
	for i := range x.Stages {
		x.Stages[i].round()
	}
	x.HeatKWh = RoundTo(x.HeatKWh, 1)
	x.CoolKWh = RoundTo(x.CoolKWh, 1)
	x.WaterL = RoundTo(x.WaterL, 2)
	x.KWhPerLPA = RoundTo(x.KWhPerLPA, 2)
	x.WaterPerLPA = RoundTo(x.WaterPerLPA, 1)
}

func (x *Energy) noNumber() string {
	for i := range x.Stages {
		if what := x.Stages[i].noNumber(); what != "" {
			return what
		}
	}
	if !isNumber(x.HeatKWh) {
		return "HeatKWh"
	}
	if !isNumber(x.CoolKWh) {
		return "CoolKWh"
	}
	if !isNumber(x.WaterL) {
		return "WaterL"
	}
	if !isNumber(x.KWhPerLPA) {
		return "KWhPerLPA"
	}
	if !isNumber(x.WaterPerLPA) {
		return "WaterPerLPA"
	}
	return ""
}

func (x *EnzymeWindow) round() {
	x.FromMin = RoundTo(x.FromMin, 1)
	x.LowC = RoundTo(x.LowC, 1)
	x.HighC = RoundTo(x.HighC, 1)
	x.GoneC = RoundTo(x.GoneC, 1)
}

func (x *EnzymeWindow) noNumber() string {
	if !isNumber(x.FromMin) {
		return "FromMin"
	}
	if !isNumber(x.LowC) {
		return "LowC"
	}
	if !isNumber(x.HighC) {
		return "HighC"
	}
	if !isNumber(x.GoneC) {
		return "GoneC"
	}
	return ""
}

func (x *Estimate) round() {
	x.Value = RoundTo(x.Value, 3)
	x.Low = RoundTo(x.Low, 3)
	x.High = RoundTo(x.High, 3)
}

func (x *Estimate) noNumber() string {
	if !isNumber(x.Value) {
		return "Value"
	}
	if !isNumber(x.Low) {
		return "Low"
	}
	if !isNumber(x.High) {
		return "High"
	}
	return ""
}

func (x *Ferment) round() {
	x.PitchKg = RoundTo(x.PitchKg, 3)
	x.NutrientKg = RoundTo(x.NutrientKg, 3)
	x.NutrientNMgL = RoundTo(x.NutrientNMgL, 0)
	x.PitchGPerL = RoundTo(x.PitchGPerL, 2)
	x.PitchC = RoundTo(x.PitchC, 1)
	x.HoldLowC = RoundTo(x.HoldLowC, 1)
	x.HoldHighC = RoundTo(x.HoldHighC, 1)
	x.LeavesHoldH = RoundTo(x.LeavesHoldH, 1)
	x.LeavesHoldC = RoundTo(x.LeavesHoldC, 1)
	x.Hours = RoundTo(x.Hours, 1)
	x.AskedHours = RoundTo(x.AskedHours, 1)
	x.DryHours = RoundTo(x.DryHours, 1)
	x.FinalGravitySG = RoundTo(x.FinalGravitySG, 4)
	x.FinalGrainSG = RoundTo(x.FinalGrainSG, 4)
	x.AbvPct = RoundTo(x.AbvPct, 2)
	x.WashVolumeL = RoundTo(x.WashVolumeL, 1)
	x.PureL = RoundTo(x.PureL, 2)
	x.ProofGallons = RoundTo(x.ProofGallons, 2)
	x.Wash.round()
	x.Liquid.round()
	x.AttenuationPct = RoundTo(x.AttenuationPct, 1)
	x.SugarLeftKg = RoundTo(x.SugarLeftKg, 3)
	x.PH = RoundTo(x.PH, 2)
	x.SourHours = RoundTo(x.SourHours, 1)
	x.PeakC = RoundTo(x.PeakC, 1)
	x.PeakHours = RoundTo(x.PeakHours, 1)
	x.PeakHeatKW = RoundTo(x.PeakHeatKW, 2)
	x.CoolKWh = RoundTo(x.CoolKWh, 1)
	x.CoolingWaterL = RoundTo(x.CoolingWaterL, 0)
	x.CO2Kg = RoundTo(x.CO2Kg, 3)
	x.CO2M3 = RoundTo(x.CO2M3, 1)
	for i := range x.Curve {
		x.Curve[i].round()
	}
	x.Account.round()
}

func (x *Ferment) noNumber() string {
	if !isNumber(x.PitchKg) {
		return "PitchKg"
	}
	if !isNumber(x.NutrientKg) {
		return "NutrientKg"
	}
	if !isNumber(x.NutrientNMgL) {
		return "NutrientNMgL"
	}
	if !isNumber(x.PitchGPerL) {
		return "PitchGPerL"
	}
	if !isNumber(x.PitchC) {
		return "PitchC"
	}
	if !isNumber(x.HoldLowC) {
		return "HoldLowC"
	}
	if !isNumber(x.HoldHighC) {
		return "HoldHighC"
	}
	if !isNumber(x.LeavesHoldH) {
		return "LeavesHoldH"
	}
	if !isNumber(x.LeavesHoldC) {
		return "LeavesHoldC"
	}
	if !isNumber(x.Hours) {
		return "Hours"
	}
	if !isNumber(x.AskedHours) {
		return "AskedHours"
	}
	if !isNumber(x.DryHours) {
		return "DryHours"
	}
	if !isNumber(x.FinalGravitySG) {
		return "FinalGravitySG"
	}
	if !isNumber(x.FinalGrainSG) {
		return "FinalGrainSG"
	}
	if !isNumber(x.AbvPct) {
		return "AbvPct"
	}
	if !isNumber(x.WashVolumeL) {
		return "WashVolumeL"
	}
	if !isNumber(x.PureL) {
		return "PureL"
	}
	if !isNumber(x.ProofGallons) {
		return "ProofGallons"
	}
	if what := x.Wash.noNumber(); what != "" {
		return what
	}
	if what := x.Liquid.noNumber(); what != "" {
		return what
	}
	if !isNumber(x.AttenuationPct) {
		return "AttenuationPct"
	}
	if !isNumber(x.SugarLeftKg) {
		return "SugarLeftKg"
	}
	if !isNumber(x.PH) {
		return "PH"
	}
	if !isNumber(x.SourHours) {
		return "SourHours"
	}
	if !isNumber(x.PeakC) {
		return "PeakC"
	}
	if !isNumber(x.PeakHours) {
		return "PeakHours"
	}
	if !isNumber(x.PeakHeatKW) {
		return "PeakHeatKW"
	}
	if !isNumber(x.CoolKWh) {
		return "CoolKWh"
	}
	if !isNumber(x.CoolingWaterL) {
		return "CoolingWaterL"
	}
	if !isNumber(x.CO2Kg) {
		return "CO2Kg"
	}
	if !isNumber(x.CO2M3) {
		return "CO2M3"
	}
	for i := range x.Curve {
		if what := x.Curve[i].noNumber(); what != "" {
			return what
		}
	}
	if what := x.Account.noNumber(); what != "" {
		return what
	}
	return ""
}

func (x *FermentBand) round() {
	x.Hour = RoundTo(x.Hour, 2)
	x.LowC = RoundTo(x.LowC, 2)
	x.HighC = RoundTo(x.HighC, 2)
	x.LowSG = RoundTo(x.LowSG, 4)
	x.HighSG = RoundTo(x.HighSG, 4)
	x.LowAbvPct = RoundTo(x.LowAbvPct, 2)
	x.HighAbvPct = RoundTo(x.HighAbvPct, 2)
}

func (x *FermentBand) noNumber() string {
	if !isNumber(x.Hour) {
		return "Hour"
	}
	if !isNumber(x.LowC) {
		return "LowC"
	}
	if !isNumber(x.HighC) {
		return "HighC"
	}
	if !isNumber(x.LowSG) {
		return "LowSG"
	}
	if !isNumber(x.HighSG) {
		return "HighSG"
	}
	if !isNumber(x.LowAbvPct) {
		return "LowAbvPct"
	}
	if !isNumber(x.HighAbvPct) {
		return "HighAbvPct"
	}
	return ""
}

func (x *FermentPoint) round() {
	x.Hour = RoundTo(x.Hour, 2)
	x.TempC = RoundTo(x.TempC, 2)
	x.SG = RoundTo(x.SG, 4)
	x.AbvPct = RoundTo(x.AbvPct, 2)
	x.PH = RoundTo(x.PH, 2)
	x.YeastGPerL = RoundTo(x.YeastGPerL, 2)
	x.HeatKW = RoundTo(x.HeatKW, 2)
	x.CO2Kg = RoundTo(x.CO2Kg, 3)
	x.CoolingPct = RoundTo(x.CoolingPct, 0)
}

func (x *FermentPoint) noNumber() string {
	if !isNumber(x.Hour) {
		return "Hour"
	}
	if !isNumber(x.TempC) {
		return "TempC"
	}
	if !isNumber(x.SG) {
		return "SG"
	}
	if !isNumber(x.AbvPct) {
		return "AbvPct"
	}
	if !isNumber(x.PH) {
		return "PH"
	}
	if !isNumber(x.YeastGPerL) {
		return "YeastGPerL"
	}
	if !isNumber(x.HeatKW) {
		return "HeatKW"
	}
	if !isNumber(x.CO2Kg) {
		return "CO2Kg"
	}
	if !isNumber(x.CoolingPct) {
		return "CoolingPct"
	}
	return ""
}

func (x *Fraction) round() {
	x.Lot.round()
	x.StartMin = RoundTo(x.StartMin, 1)
	x.EndMin = RoundTo(x.EndMin, 1)
	x.StartOverL = RoundTo(x.StartOverL, 2)
	x.EndOverL = RoundTo(x.EndOverL, 2)
	x.Begins.round()
	x.Ends.round()
	x.PureShare = RoundTo(x.PureShare, 1)
	x.VapourC = RoundTo(x.VapourC, 1)
}

func (x *Fraction) noNumber() string {
	if what := x.Lot.noNumber(); what != "" {
		return what
	}
	if !isNumber(x.StartMin) {
		return "StartMin"
	}
	if !isNumber(x.EndMin) {
		return "EndMin"
	}
	if !isNumber(x.StartOverL) {
		return "StartOverL"
	}
	if !isNumber(x.EndOverL) {
		return "EndOverL"
	}
	if what := x.Begins.noNumber(); what != "" {
		return what
	}
	if what := x.Ends.noNumber(); what != "" {
		return what
	}
	if !isNumber(x.PureShare) {
		return "PureShare"
	}
	if !isNumber(x.VapourC) {
		return "VapourC"
	}
	return ""
}

func (x *Grain) round() {
	x.MassKg = RoundTo(x.MassKg, 3)
	x.SharePct = RoundTo(x.SharePct, 2)
	x.MoisturePct = RoundTo(x.MoisturePct, 1)
	x.ExtractKg = RoundTo(x.ExtractKg, 3)
	x.TheoryExtractKg = RoundTo(x.TheoryExtractKg, 3)
	for i := range x.Lots {
		x.Lots[i].round()
	}
	x.NoLotKg = RoundTo(x.NoLotKg, 3)
}

func (x *Grain) noNumber() string {
	if !isNumber(x.MassKg) {
		return "MassKg"
	}
	if !isNumber(x.SharePct) {
		return "SharePct"
	}
	if !isNumber(x.MoisturePct) {
		return "MoisturePct"
	}
	if !isNumber(x.ExtractKg) {
		return "ExtractKg"
	}
	if !isNumber(x.TheoryExtractKg) {
		return "TheoryExtractKg"
	}
	for i := range x.Lots {
		if what := x.Lots[i].noNumber(); what != "" {
			return what
		}
	}
	if !isNumber(x.NoLotKg) {
		return "NoLotKg"
	}
	return ""
}

func (x *GrainLot) round() {
	x.MassKg = RoundTo(x.MassKg, 3)
	x.MoisturePct = RoundTo(x.MoisturePct, 1)
	x.StarchPct = RoundTo(x.StarchPct, 1)
	x.StarchKg = RoundTo(x.StarchKg, 3)
}

func (x *GrainLot) noNumber() string {
	if !isNumber(x.MassKg) {
		return "MassKg"
	}
	if !isNumber(x.MoisturePct) {
		return "MoisturePct"
	}
	if !isNumber(x.StarchPct) {
		return "StarchPct"
	}
	if !isNumber(x.StarchKg) {
		return "StarchKg"
	}
	return ""
}

func (x *Lot) round() {
	x.VolumeL = RoundTo(x.VolumeL, 2)
	x.AbvPct = RoundTo(x.AbvPct, 2)
	x.PureL = RoundTo(x.PureL, 2)
	x.WineGallons = RoundTo(x.WineGallons, 3)
	x.Proof = RoundTo(x.Proof, 1)
	x.ProofGallons = RoundTo(x.ProofGallons, 2)
	x.MassKg = RoundTo(x.MassKg, 3)
}

func (x *Lot) noNumber() string {
	if !isNumber(x.VolumeL) {
		return "VolumeL"
	}
	if !isNumber(x.AbvPct) {
		return "AbvPct"
	}
	if !isNumber(x.PureL) {
		return "PureL"
	}
	if !isNumber(x.WineGallons) {
		return "WineGallons"
	}
	if !isNumber(x.Proof) {
		return "Proof"
	}
	if !isNumber(x.ProofGallons) {
		return "ProofGallons"
	}
	if !isNumber(x.MassKg) {
		return "MassKg"
	}
	return ""
}

func (x *Mash) round() {
	x.OriginalGravitySG = RoundTo(x.OriginalGravitySG, 4)
	x.HydrometerSG = RoundTo(x.HydrometerSG, 4)
	x.Plato = RoundTo(x.Plato, 2)
	x.PH = RoundTo(x.PH, 2)
	x.VolumeL = RoundTo(x.VolumeL, 1)
	x.MostVolumeL = RoundTo(x.MostVolumeL, 1)
	x.LiquorL = RoundTo(x.LiquorL, 1)
	x.KeptInL = RoundTo(x.KeptInL, 1)
	x.KeptL = RoundTo(x.KeptL, 1)
	x.KeptSG = RoundTo(x.KeptSG, 4)
	x.BacksetL = RoundTo(x.BacksetL, 1)
	x.BacksetPct = RoundTo(x.BacksetPct, 1)
	x.LiquorGristLPerKg = RoundTo(x.LiquorGristLPerKg, 3)
	x.GelatinizedPct = RoundTo(x.GelatinizedPct, 1)
	x.ConversionPct = RoundTo(x.ConversionPct, 1)
	x.FermentablePct = RoundTo(x.FermentablePct, 1)
	x.ExtractKg = RoundTo(x.ExtractKg, 3)
	x.TheoryExtractKg = RoundTo(x.TheoryExtractKg, 3)
	x.DraffKg = RoundTo(x.DraffKg, 3)
	x.Hours = RoundTo(x.Hours, 2)
	x.BoilC = RoundTo(x.BoilC, 1)
	x.HeatKWh = RoundTo(x.HeatKWh, 1)
	x.CoolKWh = RoundTo(x.CoolKWh, 1)
	x.CoolingWaterL = RoundTo(x.CoolingWaterL, 0)
	x.AcidKg = RoundTo(x.AcidKg, 3)
	x.AcidMEq = RoundTo(x.AcidMEq, 0)
	x.SaltsMEq = RoundTo(x.SaltsMEq, 0)
	x.SteamCondensateL = RoundTo(x.SteamCondensateL, 1)
	for i := range x.Steps {
		x.Steps[i].round()
	}
	for i := range x.Curve {
		x.Curve[i].round()
	}
	for i := range x.Windows {
		x.Windows[i].round()
	}
}

func (x *Mash) noNumber() string {
	if !isNumber(x.OriginalGravitySG) {
		return "OriginalGravitySG"
	}
	if !isNumber(x.HydrometerSG) {
		return "HydrometerSG"
	}
	if !isNumber(x.Plato) {
		return "Plato"
	}
	if !isNumber(x.PH) {
		return "PH"
	}
	if !isNumber(x.VolumeL) {
		return "VolumeL"
	}
	if !isNumber(x.MostVolumeL) {
		return "MostVolumeL"
	}
	if !isNumber(x.LiquorL) {
		return "LiquorL"
	}
	if !isNumber(x.KeptInL) {
		return "KeptInL"
	}
	if !isNumber(x.KeptL) {
		return "KeptL"
	}
	if !isNumber(x.KeptSG) {
		return "KeptSG"
	}
	if !isNumber(x.BacksetL) {
		return "BacksetL"
	}
	if !isNumber(x.BacksetPct) {
		return "BacksetPct"
	}
	if !isNumber(x.LiquorGristLPerKg) {
		return "LiquorGristLPerKg"
	}
	if !isNumber(x.GelatinizedPct) {
		return "GelatinizedPct"
	}
	if !isNumber(x.ConversionPct) {
		return "ConversionPct"
	}
	if !isNumber(x.FermentablePct) {
		return "FermentablePct"
	}
	if !isNumber(x.ExtractKg) {
		return "ExtractKg"
	}
	if !isNumber(x.TheoryExtractKg) {
		return "TheoryExtractKg"
	}
	if !isNumber(x.DraffKg) {
		return "DraffKg"
	}
	if !isNumber(x.Hours) {
		return "Hours"
	}
	if !isNumber(x.BoilC) {
		return "BoilC"
	}
	if !isNumber(x.HeatKWh) {
		return "HeatKWh"
	}
	if !isNumber(x.CoolKWh) {
		return "CoolKWh"
	}
	if !isNumber(x.CoolingWaterL) {
		return "CoolingWaterL"
	}
	if !isNumber(x.AcidKg) {
		return "AcidKg"
	}
	if !isNumber(x.AcidMEq) {
		return "AcidMEq"
	}
	if !isNumber(x.SaltsMEq) {
		return "SaltsMEq"
	}
	if !isNumber(x.SteamCondensateL) {
		return "SteamCondensateL"
	}
	for i := range x.Steps {
		if what := x.Steps[i].noNumber(); what != "" {
			return what
		}
	}
	for i := range x.Curve {
		if what := x.Curve[i].noNumber(); what != "" {
			return what
		}
	}
	for i := range x.Windows {
		if what := x.Windows[i].noNumber(); what != "" {
			return what
		}
	}
	return ""
}

func (x *MashBand) round() {
	x.Min = RoundTo(x.Min, 2)
	x.LowC = RoundTo(x.LowC, 2)
	x.HighC = RoundTo(x.HighC, 2)
}

func (x *MashBand) noNumber() string {
	if !isNumber(x.Min) {
		return "Min"
	}
	if !isNumber(x.LowC) {
		return "LowC"
	}
	if !isNumber(x.HighC) {
		return "HighC"
	}
	return ""
}

func (x *MashPoint) round() {
	x.Min = RoundTo(x.Min, 2)
	x.TempC = RoundTo(x.TempC, 2)
	x.GelatinizedPct = RoundTo(x.GelatinizedPct, 1)
	x.ConvertedPct = RoundTo(x.ConvertedPct, 1)
	x.AlphaLeftPct = RoundTo(x.AlphaLeftPct, 1)
	x.BetaLeftPct = RoundTo(x.BetaLeftPct, 1)
	x.AddedLeftPct = RoundTo(x.AddedLeftPct, 1)
}

func (x *MashPoint) noNumber() string {
	if !isNumber(x.Min) {
		return "Min"
	}
	if !isNumber(x.TempC) {
		return "TempC"
	}
	if !isNumber(x.GelatinizedPct) {
		return "GelatinizedPct"
	}
	if !isNumber(x.ConvertedPct) {
		return "ConvertedPct"
	}
	if !isNumber(x.AlphaLeftPct) {
		return "AlphaLeftPct"
	}
	if !isNumber(x.BetaLeftPct) {
		return "BetaLeftPct"
	}
	if !isNumber(x.AddedLeftPct) {
		return "AddedLeftPct"
	}
	return ""
}

func (x *MashStep) round() {
	x.StartMin = RoundTo(x.StartMin, 1)
	x.Minutes = RoundTo(x.Minutes, 1)
	x.FromC = RoundTo(x.FromC, 1)
	x.ToC = RoundTo(x.ToC, 1)
	x.VolumeL = RoundTo(x.VolumeL, 1)
	x.HeatKWh = RoundTo(x.HeatKWh, 1)
	x.CoolKWh = RoundTo(x.CoolKWh, 1)
	x.GravitySG = RoundTo(x.GravitySG, 4)
	x.GelatinizedPct = RoundTo(x.GelatinizedPct, 1)
	x.ConvertedPct = RoundTo(x.ConvertedPct, 1)
	x.AlphaLeftPct = RoundTo(x.AlphaLeftPct, 1)
	x.BetaLeftPct = RoundTo(x.BetaLeftPct, 1)
	x.AddedLeftPct = RoundTo(x.AddedLeftPct, 1)
}

func (x *MashStep) noNumber() string {
	if !isNumber(x.StartMin) {
		return "StartMin"
	}
	if !isNumber(x.Minutes) {
		return "Minutes"
	}
	if !isNumber(x.FromC) {
		return "FromC"
	}
	if !isNumber(x.ToC) {
		return "ToC"
	}
	if !isNumber(x.VolumeL) {
		return "VolumeL"
	}
	if !isNumber(x.HeatKWh) {
		return "HeatKWh"
	}
	if !isNumber(x.CoolKWh) {
		return "CoolKWh"
	}
	if !isNumber(x.GravitySG) {
		return "GravitySG"
	}
	if !isNumber(x.GelatinizedPct) {
		return "GelatinizedPct"
	}
	if !isNumber(x.ConvertedPct) {
		return "ConvertedPct"
	}
	if !isNumber(x.AlphaLeftPct) {
		return "AlphaLeftPct"
	}
	if !isNumber(x.BetaLeftPct) {
		return "BetaLeftPct"
	}
	if !isNumber(x.AddedLeftPct) {
		return "AddedLeftPct"
	}
	return ""
}

func (x *NumberBand) round() {
	x.Planned.round()
	x.Low.round()
	x.High.round()
	for i := range x.Of {
		x.Of[i].round()
	}
}

func (x *NumberBand) noNumber() string {
	if what := x.Planned.noNumber(); what != "" {
		return what
	}
	if what := x.Low.noNumber(); what != "" {
		return what
	}
	if what := x.High.noNumber(); what != "" {
		return what
	}
	for i := range x.Of {
		if what := x.Of[i].noNumber(); what != "" {
			return what
		}
	}
	return ""
}

func (x *Occupancy) round() {
	x.Hours = RoundTo(x.Hours, 1)
}

func (x *Occupancy) noNumber() string {
	if !isNumber(x.Hours) {
		return "Hours"
	}
	return ""
}

func (x *Phrase) round() {
	for i := range x.Values {
		x.Values[i].round()
	}
}

func (x *Phrase) noNumber() string {
	for i := range x.Values {
		if what := x.Values[i].noNumber(); what != "" {
			return what
		}
	}
	return ""
}

func (x *Plan) round() {
	x.Summary.round()
	x.Plant.round()
	x.Bill.round()
	x.Mash.round()
	x.Ferment.round()
	x.Strip.round()
	x.Spirit.round()
	if x.Congeners != nil {
		x.Congeners.round()
	}
	if x.Reduction != nil {
		x.Reduction.round()
	}
	if x.Card != nil {
		x.Card.round()
	}
	x.Cask.round()
	for i := range x.Streams {
		x.Streams[i].round()
	}
	x.Yield.round()
	x.Energy.round()
	if x.Cost != nil {
		x.Cost.round()
	}
	for i := range x.Promises {
		x.Promises[i].round()
	}
	x.Schedule.round()
	if x.Bands != nil {
		x.Bands.round()
	}
}

func (x *Plan) noNumber() string {
	if what := x.Summary.noNumber(); what != "" {
		return what
	}
	if what := x.Plant.noNumber(); what != "" {
		return what
	}
	if what := x.Bill.noNumber(); what != "" {
		return what
	}
	if what := x.Mash.noNumber(); what != "" {
		return what
	}
	if what := x.Ferment.noNumber(); what != "" {
		return what
	}
	if what := x.Strip.noNumber(); what != "" {
		return what
	}
	if what := x.Spirit.noNumber(); what != "" {
		return what
	}
	if x.Congeners != nil {
		if what := x.Congeners.noNumber(); what != "" {
			return what
		}
	}
	if x.Reduction != nil {
		if what := x.Reduction.noNumber(); what != "" {
			return what
		}
	}
	if x.Card != nil {
		if what := x.Card.noNumber(); what != "" {
			return what
		}
	}
	if what := x.Cask.noNumber(); what != "" {
		return what
	}
	for i := range x.Streams {
		if what := x.Streams[i].noNumber(); what != "" {
			return what
		}
	}
	if what := x.Yield.noNumber(); what != "" {
		return what
	}
	if what := x.Energy.noNumber(); what != "" {
		return what
	}
	if x.Cost != nil {
		if what := x.Cost.noNumber(); what != "" {
			return what
		}
	}
	for i := range x.Promises {
		if what := x.Promises[i].noNumber(); what != "" {
			return what
		}
	}
	if what := x.Schedule.noNumber(); what != "" {
		return what
	}
	if x.Bands != nil {
		if what := x.Bands.noNumber(); what != "" {
			return what
		}
	}
	return ""
}

func (x *Plant) round() {
	x.ElevationM = RoundTo(x.ElevationM, 1)
	x.PressureKPa = RoundTo(x.PressureKPa, 2)
	x.WaterBoilsC = RoundTo(x.WaterBoilsC, 1)
	x.WaterC = RoundTo(x.WaterC, 1)
	x.HardnessPPM = RoundTo(x.HardnessPPM, 0)
	x.AmbientC = RoundTo(x.AmbientC, 1)
	x.BoilerKW = RoundTo(x.BoilerKW, 0)
	for i := range x.Vessels {
		x.Vessels[i].round()
	}
	for i := range x.Tanks {
		x.Tanks[i].round()
	}
}

func (x *Plant) noNumber() string {
	if !isNumber(x.ElevationM) {
		return "ElevationM"
	}
	if !isNumber(x.PressureKPa) {
		return "PressureKPa"
	}
	if !isNumber(x.WaterBoilsC) {
		return "WaterBoilsC"
	}
	if !isNumber(x.WaterC) {
		return "WaterC"
	}
	if !isNumber(x.HardnessPPM) {
		return "HardnessPPM"
	}
	if !isNumber(x.AmbientC) {
		return "AmbientC"
	}
	if !isNumber(x.BoilerKW) {
		return "BoilerKW"
	}
	for i := range x.Vessels {
		if what := x.Vessels[i].noNumber(); what != "" {
			return what
		}
	}
	for i := range x.Tanks {
		if what := x.Tanks[i].noNumber(); what != "" {
			return what
		}
	}
	return ""
}

func (x *Preheat) round() {
	x.FromC = RoundTo(x.FromC, 1)
	x.ToC = RoundTo(x.ToC, 1)
	x.PotAleC = RoundTo(x.PotAleC, 1)
	x.LeavesC = RoundTo(x.LeavesC, 1)
	x.SavedKWh = RoundTo(x.SavedKWh, 1)
	x.SavedMin = RoundTo(x.SavedMin, 1)
}

func (x *Preheat) noNumber() string {
	if !isNumber(x.FromC) {
		return "FromC"
	}
	if !isNumber(x.ToC) {
		return "ToC"
	}
	if !isNumber(x.PotAleC) {
		return "PotAleC"
	}
	if !isNumber(x.LeavesC) {
		return "LeavesC"
	}
	if !isNumber(x.SavedKWh) {
		return "SavedKWh"
	}
	if !isNumber(x.SavedMin) {
		return "SavedMin"
	}
	return ""
}

func (x *Promise) round() {
	x.Promised.round()
	x.Tolerance.round()
	x.Found.round()
	if x.Tried != nil {
		x.Tried.round()
	}
}

func (x *Promise) noNumber() string {
	if what := x.Promised.noNumber(); what != "" {
		return what
	}
	if what := x.Tolerance.noNumber(); what != "" {
		return what
	}
	if what := x.Found.noNumber(); what != "" {
		return what
	}
	if x.Tried != nil {
		if what := x.Tried.noNumber(); what != "" {
			return what
		}
	}
	return ""
}

func (x *Quantity) round() {
	x.Value = RoundTo(x.Value, unitPlaces[x.Unit])
	x.Proof = RoundTo(x.Proof, 1)
	x.Gallons = RoundTo(x.Gallons, 3)
	x.Abv60F = RoundTo(x.Abv60F, 2)
}

func (x *Quantity) noNumber() string {
	if !isNumber(x.Value) {
		return "Value"
	}
	if !isNumber(x.Proof) {
		return "Proof"
	}
	if !isNumber(x.Gallons) {
		return "Gallons"
	}
	if !isNumber(x.Abv60F) {
		return "Abv60F"
	}
	return ""
}

func (x *Reading) round() {
	x.Should.round()
	if x.Low != nil {
		x.Low.round()
	}
	if x.High != nil {
		x.High.round()
	}
	x.Tolerance.round()
	x.Besides = RoundTo(x.Besides, 4)
}

func (x *Reading) noNumber() string {
	if what := x.Should.noNumber(); what != "" {
		return what
	}
	if x.Low != nil {
		if what := x.Low.noNumber(); what != "" {
			return what
		}
	}
	if x.High != nil {
		if what := x.High.noNumber(); what != "" {
			return what
		}
	}
	if what := x.Tolerance.noNumber(); what != "" {
		return what
	}
	if !isNumber(x.Besides) {
		return "Besides"
	}
	return ""
}

func (x *Reduction) round() {
	x.From.round()
	x.To.round()
	x.WaterL = RoundTo(x.WaterL, 2)
	x.WaterKg = RoundTo(x.WaterKg, 3)
	x.WaterScaleKg = RoundTo(x.WaterScaleKg, 3)
	x.ContractionL = RoundTo(x.ContractionL, 2)
	x.TempRiseC = RoundTo(x.TempRiseC, 1)
	x.WaterGallons = RoundTo(x.WaterGallons, 3)
	x.ContractionGallons = RoundTo(x.ContractionGallons, 3)
}

func (x *Reduction) noNumber() string {
	if what := x.From.noNumber(); what != "" {
		return what
	}
	if what := x.To.noNumber(); what != "" {
		return what
	}
	if !isNumber(x.WaterL) {
		return "WaterL"
	}
	if !isNumber(x.WaterKg) {
		return "WaterKg"
	}
	if !isNumber(x.WaterScaleKg) {
		return "WaterScaleKg"
	}
	if !isNumber(x.ContractionL) {
		return "ContractionL"
	}
	if !isNumber(x.TempRiseC) {
		return "TempRiseC"
	}
	if !isNumber(x.WaterGallons) {
		return "WaterGallons"
	}
	if !isNumber(x.ContractionGallons) {
		return "ContractionGallons"
	}
	return ""
}

func (x *Run) round() {
	x.Charge.round()
	if x.FeintsReturned != nil {
		x.FeintsReturned.round()
	}
	if x.ChargeWater != nil {
		x.ChargeWater.round()
	}
	x.HeartsOfLowWinesPct = RoundTo(x.HeartsOfLowWinesPct, 1)
	x.HeatUpMin = RoundTo(x.HeatUpMin, 1)
	if x.Preheat != nil {
		x.Preheat.round()
	}
	x.Hours = RoundTo(x.Hours, 2)
	x.TotalHours = RoundTo(x.TotalHours, 2)
	x.MostFillPct = RoundTo(x.MostFillPct, 1)
	x.StopAbvPct = RoundTo(x.StopAbvPct, 2)
	for i := range x.Fractions {
		x.Fractions[i].round()
	}
	if x.Feints != nil {
		x.Feints.round()
	}
	x.Residue.round()
	x.LossL = RoundTo(x.LossL, 3)
	x.HeatKWh = RoundTo(x.HeatKWh, 1)
	x.CoolKWh = RoundTo(x.CoolKWh, 1)
	x.CoolingWaterL = RoundTo(x.CoolingWaterL, 0)
	for i := range x.Curve {
		x.Curve[i].round()
	}
}

func (x *Run) noNumber() string {
	if what := x.Charge.noNumber(); what != "" {
		return what
	}
	if x.FeintsReturned != nil {
		if what := x.FeintsReturned.noNumber(); what != "" {
			return what
		}
	}
	if x.ChargeWater != nil {
		if what := x.ChargeWater.noNumber(); what != "" {
			return what
		}
	}
	if !isNumber(x.HeartsOfLowWinesPct) {
		return "HeartsOfLowWinesPct"
	}
	if !isNumber(x.HeatUpMin) {
		return "HeatUpMin"
	}
	if x.Preheat != nil {
		if what := x.Preheat.noNumber(); what != "" {
			return what
		}
	}
	if !isNumber(x.Hours) {
		return "Hours"
	}
	if !isNumber(x.TotalHours) {
		return "TotalHours"
	}
	if !isNumber(x.MostFillPct) {
		return "MostFillPct"
	}
	if !isNumber(x.StopAbvPct) {
		return "StopAbvPct"
	}
	for i := range x.Fractions {
		if what := x.Fractions[i].noNumber(); what != "" {
			return what
		}
	}
	if x.Feints != nil {
		if what := x.Feints.noNumber(); what != "" {
			return what
		}
	}
	if what := x.Residue.noNumber(); what != "" {
		return what
	}
	if !isNumber(x.LossL) {
		return "LossL"
	}
	if !isNumber(x.HeatKWh) {
		return "HeatKWh"
	}
	if !isNumber(x.CoolKWh) {
		return "CoolKWh"
	}
	if !isNumber(x.CoolingWaterL) {
		return "CoolingWaterL"
	}
	for i := range x.Curve {
		if what := x.Curve[i].noNumber(); what != "" {
			return what
		}
	}
	return ""
}

func (x *RunBand) round() {
	x.Min = RoundTo(x.Min, 2)
	x.OverL = RoundTo(x.OverL, 2)
	x.LowOverL = RoundTo(x.LowOverL, 2)
	x.HighOverL = RoundTo(x.HighOverL, 2)
	x.LowAbvPct = RoundTo(x.LowAbvPct, 2)
	x.HighAbvPct = RoundTo(x.HighAbvPct, 2)
	x.LowVapourC = RoundTo(x.LowVapourC, 2)
	x.HighVapourC = RoundTo(x.HighVapourC, 2)
	x.LowRateLPerH = RoundTo(x.LowRateLPerH, 1)
	x.HighRateLPerH = RoundTo(x.HighRateLPerH, 1)
}

func (x *RunBand) noNumber() string {
	if !isNumber(x.Min) {
		return "Min"
	}
	if !isNumber(x.OverL) {
		return "OverL"
	}
	if !isNumber(x.LowOverL) {
		return "LowOverL"
	}
	if !isNumber(x.HighOverL) {
		return "HighOverL"
	}
	if !isNumber(x.LowAbvPct) {
		return "LowAbvPct"
	}
	if !isNumber(x.HighAbvPct) {
		return "HighAbvPct"
	}
	if !isNumber(x.LowVapourC) {
		return "LowVapourC"
	}
	if !isNumber(x.HighVapourC) {
		return "HighVapourC"
	}
	if !isNumber(x.LowRateLPerH) {
		return "LowRateLPerH"
	}
	if !isNumber(x.HighRateLPerH) {
		return "HighRateLPerH"
	}
	return ""
}

func (x *RunBands) round() {
	for i := range x.ByVolume {
		x.ByVolume[i].round()
	}
	for i := range x.ByClock {
		x.ByClock[i].round()
	}
}

func (x *RunBands) noNumber() string {
	for i := range x.ByVolume {
		if what := x.ByVolume[i].noNumber(); what != "" {
			return what
		}
	}
	for i := range x.ByClock {
		if what := x.ByClock[i].noNumber(); what != "" {
			return what
		}
	}
	return ""
}

func (x *RunPoint) round() {
	x.Min = RoundTo(x.Min, 2)
	x.PotC = RoundTo(x.PotC, 2)
	x.VapourC = RoundTo(x.VapourC, 1)
	x.AbvPct = RoundTo(x.AbvPct, 2)
	x.Proof = RoundTo(x.Proof, 1)
	x.PotAbvPct = RoundTo(x.PotAbvPct, 2)
	x.OverL = RoundTo(x.OverL, 2)
	x.RateLPerH = RoundTo(x.RateLPerH, 1)
}

func (x *RunPoint) noNumber() string {
	if !isNumber(x.Min) {
		return "Min"
	}
	if !isNumber(x.PotC) {
		return "PotC"
	}
	if !isNumber(x.VapourC) {
		return "VapourC"
	}
	if !isNumber(x.AbvPct) {
		return "AbvPct"
	}
	if !isNumber(x.Proof) {
		return "Proof"
	}
	if !isNumber(x.PotAbvPct) {
		return "PotAbvPct"
	}
	if !isNumber(x.OverL) {
		return "OverL"
	}
	if !isNumber(x.RateLPerH) {
		return "RateLPerH"
	}
	return ""
}

func (x *Schedule) round() {
	for i := range x.Steps {
		x.Steps[i].round()
	}
	for i := range x.Vessels {
		x.Vessels[i].round()
	}
	x.PeopleHours = RoundTo(x.PeopleHours, 1)
	x.OutOfShiftH = RoundTo(x.OutOfShiftH, 2)
	x.ElapsedHours = RoundTo(x.ElapsedHours, 1)
}

func (x *Schedule) noNumber() string {
	for i := range x.Steps {
		if what := x.Steps[i].noNumber(); what != "" {
			return what
		}
	}
	for i := range x.Vessels {
		if what := x.Vessels[i].noNumber(); what != "" {
			return what
		}
	}
	if !isNumber(x.PeopleHours) {
		return "PeopleHours"
	}
	if !isNumber(x.OutOfShiftH) {
		return "OutOfShiftH"
	}
	if !isNumber(x.ElapsedHours) {
		return "ElapsedHours"
	}
	return ""
}

func (x *Share) round() {
	x.SharePct = RoundTo(x.SharePct, 0)
}

func (x *Share) noNumber() string {
	if !isNumber(x.SharePct) {
		return "SharePct"
	}
	return ""
}

func (x *Shown) round() {
	x.TempC = RoundTo(x.TempC, 2)
	x.Proof = RoundTo(x.Proof, 1)
	x.AbvPct = RoundTo(x.AbvPct, 1)
}

func (x *Shown) noNumber() string {
	if !isNumber(x.TempC) {
		return "TempC"
	}
	if !isNumber(x.Proof) {
		return "Proof"
	}
	if !isNumber(x.AbvPct) {
		return "AbvPct"
	}
	return ""
}

func (x *StageEnergy) round() {
	x.HeatKWh = RoundTo(x.HeatKWh, 1)
	x.CoolKWh = RoundTo(x.CoolKWh, 1)
	x.ProcessL = RoundTo(x.ProcessL, 0)
	x.CoolingWaterL = RoundTo(x.CoolingWaterL, 0)
}

func (x *StageEnergy) noNumber() string {
	if !isNumber(x.HeatKWh) {
		return "HeatKWh"
	}
	if !isNumber(x.CoolKWh) {
		return "CoolKWh"
	}
	if !isNumber(x.ProcessL) {
		return "ProcessL"
	}
	if !isNumber(x.CoolingWaterL) {
		return "CoolingWaterL"
	}
	return ""
}

func (x *Step) round() {
	x.Title.round()
	if x.Mark != nil {
		x.Mark.round()
	}
	x.DurationMin = RoundTo(x.DurationMin, 1)
	if x.When != nil {
		x.When.round()
	}
	x.Do.round()
	for i := range x.Read {
		x.Read[i].round()
	}
	x.WaitMin = RoundTo(x.WaitMin, 1)
	x.OutOfShift = RoundTo(x.OutOfShift, 1)
}

func (x *Step) noNumber() string {
	if what := x.Title.noNumber(); what != "" {
		return what
	}
	if x.Mark != nil {
		if what := x.Mark.noNumber(); what != "" {
			return what
		}
	}
	if !isNumber(x.DurationMin) {
		return "DurationMin"
	}
	if x.When != nil {
		if what := x.When.noNumber(); what != "" {
			return what
		}
	}
	if what := x.Do.noNumber(); what != "" {
		return what
	}
	for i := range x.Read {
		if what := x.Read[i].noNumber(); what != "" {
			return what
		}
	}
	if !isNumber(x.WaitMin) {
		return "WaitMin"
	}
	if !isNumber(x.OutOfShift) {
		return "OutOfShift"
	}
	return ""
}

func (x *Stream) round() {
	x.WaterKg = RoundTo(x.WaterKg, 3)
	x.EthanolKg = RoundTo(x.EthanolKg, 3)
	x.GlucoseKg = RoundTo(x.GlucoseKg, 3)
	x.MaltoseKg = RoundTo(x.MaltoseKg, 3)
	x.MaltotrioseKg = RoundTo(x.MaltotrioseKg, 3)
	x.DextrinKg = RoundTo(x.DextrinKg, 3)
	x.RawStarchKg = RoundTo(x.RawStarchKg, 3)
	x.GelStarchKg = RoundTo(x.GelStarchKg, 3)
	x.SolublesKg = RoundTo(x.SolublesKg, 3)
	x.BacksetKg = RoundTo(x.BacksetKg, 3)
	x.AcidKg = RoundTo(x.AcidKg, 3)
	x.ByproductsKg = RoundTo(x.ByproductsKg, 3)
	x.YeastKg = RoundTo(x.YeastKg, 3)
	x.InsolublesKg = RoundTo(x.InsolublesKg, 3)
	x.MassKg = RoundTo(x.MassKg, 3)
}

func (x *Stream) noNumber() string {
	if !isNumber(x.WaterKg) {
		return "WaterKg"
	}
	if !isNumber(x.EthanolKg) {
		return "EthanolKg"
	}
	if !isNumber(x.GlucoseKg) {
		return "GlucoseKg"
	}
	if !isNumber(x.MaltoseKg) {
		return "MaltoseKg"
	}
	if !isNumber(x.MaltotrioseKg) {
		return "MaltotrioseKg"
	}
	if !isNumber(x.DextrinKg) {
		return "DextrinKg"
	}
	if !isNumber(x.RawStarchKg) {
		return "RawStarchKg"
	}
	if !isNumber(x.GelStarchKg) {
		return "GelStarchKg"
	}
	if !isNumber(x.SolublesKg) {
		return "SolublesKg"
	}
	if !isNumber(x.BacksetKg) {
		return "BacksetKg"
	}
	if !isNumber(x.AcidKg) {
		return "AcidKg"
	}
	if !isNumber(x.ByproductsKg) {
		return "ByproductsKg"
	}
	if !isNumber(x.YeastKg) {
		return "YeastKg"
	}
	if !isNumber(x.InsolublesKg) {
		return "InsolublesKg"
	}
	if !isNumber(x.MassKg) {
		return "MassKg"
	}
	return ""
}

func (x *Strength) round() {
	x.AbvPct = RoundTo(x.AbvPct, 2)
	x.Proof = RoundTo(x.Proof, 1)
}

func (x *Strength) noNumber() string {
	if !isNumber(x.AbvPct) {
		return "AbvPct"
	}
	if !isNumber(x.Proof) {
		return "Proof"
	}
	return ""
}

func (x *Summary) round() {
	x.OriginalGravitySG = RoundTo(x.OriginalGravitySG, 4)
	x.FinalGravitySG = RoundTo(x.FinalGravitySG, 4)
	x.WashVolumeL = RoundTo(x.WashVolumeL, 1)
	x.WashAbvPct = RoundTo(x.WashAbvPct, 2)
	x.LowWinesVolumeL = RoundTo(x.LowWinesVolumeL, 1)
	x.LowWinesAbvPct = RoundTo(x.LowWinesAbvPct, 2)
	x.HeartsVolumeL = RoundTo(x.HeartsVolumeL, 1)
	x.HeartsAbvPct = RoundTo(x.HeartsAbvPct, 2)
	x.HeartsProofGal = RoundTo(x.HeartsProofGal, 2)
	x.PureAlcoholL = RoundTo(x.PureAlcoholL, 2)
	x.FeintsVolumeL = RoundTo(x.FeintsVolumeL, 1)
	x.FeintsAbvPct = RoundTo(x.FeintsAbvPct, 2)
	x.CaskEntryAbvPct = RoundTo(x.CaskEntryAbvPct, 2)
	x.LeftoverL = RoundTo(x.LeftoverL, 1)
	x.MashHours = RoundTo(x.MashHours, 2)
	x.FermentHours = RoundTo(x.FermentHours, 2)
	x.StripHours = RoundTo(x.StripHours, 2)
	x.SpiritHours = RoundTo(x.SpiritHours, 2)
	x.YieldLPAPerTonne = RoundTo(x.YieldLPAPerTonne, 1)
}

func (x *Summary) noNumber() string {
	if !isNumber(x.OriginalGravitySG) {
		return "OriginalGravitySG"
	}
	if !isNumber(x.FinalGravitySG) {
		return "FinalGravitySG"
	}
	if !isNumber(x.WashVolumeL) {
		return "WashVolumeL"
	}
	if !isNumber(x.WashAbvPct) {
		return "WashAbvPct"
	}
	if !isNumber(x.LowWinesVolumeL) {
		return "LowWinesVolumeL"
	}
	if !isNumber(x.LowWinesAbvPct) {
		return "LowWinesAbvPct"
	}
	if !isNumber(x.HeartsVolumeL) {
		return "HeartsVolumeL"
	}
	if !isNumber(x.HeartsAbvPct) {
		return "HeartsAbvPct"
	}
	if !isNumber(x.HeartsProofGal) {
		return "HeartsProofGal"
	}
	if !isNumber(x.PureAlcoholL) {
		return "PureAlcoholL"
	}
	if !isNumber(x.FeintsVolumeL) {
		return "FeintsVolumeL"
	}
	if !isNumber(x.FeintsAbvPct) {
		return "FeintsAbvPct"
	}
	if !isNumber(x.CaskEntryAbvPct) {
		return "CaskEntryAbvPct"
	}
	if !isNumber(x.LeftoverL) {
		return "LeftoverL"
	}
	if !isNumber(x.MashHours) {
		return "MashHours"
	}
	if !isNumber(x.FermentHours) {
		return "FermentHours"
	}
	if !isNumber(x.StripHours) {
		return "StripHours"
	}
	if !isNumber(x.SpiritHours) {
		return "SpiritHours"
	}
	if !isNumber(x.YieldLPAPerTonne) {
		return "YieldLPAPerTonne"
	}
	return ""
}

func (x *TankUse) round() {
	x.HoldsL = RoundTo(x.HoldsL, 2)
	x.MostL = RoundTo(x.MostL, 1)
	x.FillPct = RoundTo(x.FillPct, 1)
	x.LeftL = RoundTo(x.LeftL, 1)
	x.MostGallons = RoundTo(x.MostGallons, 2)
	x.LeftGallons = RoundTo(x.LeftGallons, 2)
}

func (x *TankUse) noNumber() string {
	if !isNumber(x.HoldsL) {
		return "HoldsL"
	}
	if !isNumber(x.MostL) {
		return "MostL"
	}
	if !isNumber(x.FillPct) {
		return "FillPct"
	}
	if !isNumber(x.LeftL) {
		return "LeftL"
	}
	if !isNumber(x.MostGallons) {
		return "MostGallons"
	}
	if !isNumber(x.LeftGallons) {
		return "LeftGallons"
	}
	return ""
}

func (x *Tried) round() {
	x.Share = RoundTo(x.Share, 3)
}

func (x *Tried) noNumber() string {
	if !isNumber(x.Share) {
		return "Share"
	}
	return ""
}

func (x *Trim) round() {
	x.Over.round()
	x.WaterL = RoundTo(x.WaterL, 2)
	x.WaterScaleKg = RoundTo(x.WaterScaleKg, 3)
	x.WaterGallons = RoundTo(x.WaterGallons, 3)
}

func (x *Trim) noNumber() string {
	if what := x.Over.noNumber(); what != "" {
		return what
	}
	if !isNumber(x.WaterL) {
		return "WaterL"
	}
	if !isNumber(x.WaterScaleKg) {
		return "WaterScaleKg"
	}
	if !isNumber(x.WaterGallons) {
		return "WaterGallons"
	}
	return ""
}

func (x *Vessel) round() {
	x.HoldsL = RoundTo(x.HoldsL, 2)
	x.HeatKW = RoundTo(x.HeatKW, 1)
	x.CoolKW = RoundTo(x.CoolKW, 1)
	x.MostL = RoundTo(x.MostL, 1)
	x.FillPct = RoundTo(x.FillPct, 1)
}

func (x *Vessel) noNumber() string {
	if !isNumber(x.HoldsL) {
		return "HoldsL"
	}
	if !isNumber(x.HeatKW) {
		return "HeatKW"
	}
	if !isNumber(x.CoolKW) {
		return "CoolKW"
	}
	if !isNumber(x.MostL) {
		return "MostL"
	}
	if !isNumber(x.FillPct) {
		return "FillPct"
	}
	return ""
}

func (x *Yield) round() {
	x.TheoryLPAPerTonne = RoundTo(x.TheoryLPAPerTonne, 1)
	x.WashLPAPerTonne = RoundTo(x.WashLPAPerTonne, 1)
	x.HeartsLPAPerTonne = RoundTo(x.HeartsLPAPerTonne, 1)
	x.OfTheoryPct = RoundTo(x.OfTheoryPct, 1)
	x.WashPGPerBushel = RoundTo(x.WashPGPerBushel, 2)
	x.HeartsPGPerBushel = RoundTo(x.HeartsPGPerBushel, 2)
}

func (x *Yield) noNumber() string {
	if !isNumber(x.TheoryLPAPerTonne) {
		return "TheoryLPAPerTonne"
	}
	if !isNumber(x.WashLPAPerTonne) {
		return "WashLPAPerTonne"
	}
	if !isNumber(x.HeartsLPAPerTonne) {
		return "HeartsLPAPerTonne"
	}
	if !isNumber(x.OfTheoryPct) {
		return "OfTheoryPct"
	}
	if !isNumber(x.WashPGPerBushel) {
		return "WashPGPerBushel"
	}
	if !isNumber(x.HeartsPGPerBushel) {
		return "HeartsPGPerBushel"
	}
	return ""
}
