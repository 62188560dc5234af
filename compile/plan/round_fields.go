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

func (x *Addition) round() {
	x.Amount.round()
	if x.At != nil {
		x.At.round()
	}
}

func (x *Bill) round() {
	x.TotalKg = RoundTo(x.TotalKg, 2)
	x.Bushels = RoundTo(x.Bushels, 2)
	x.ExtractKg = RoundTo(x.ExtractKg, 2)
	for i := range x.Lines {
		x.Lines[i].round()
	}
	x.LintnerDeg = RoundTo(x.LintnerDeg, 0)
	for i := range x.Additions {
		x.Additions[i].round()
	}
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

func (x *CardStep) round() {
	x.SharePct = RoundTo(x.SharePct, 1)
	x.AddL = RoundTo(x.AddL, 2)
	x.AddScaleKg = RoundTo(x.AddScaleKg, 2)
	x.WaterL = RoundTo(x.WaterL, 2)
	x.WaterScaleKg = RoundTo(x.WaterScaleKg, 2)
	x.AddGallons = RoundTo(x.AddGallons, 3)
	x.WaterGallons = RoundTo(x.WaterGallons, 3)
	x.Gives.round()
	x.GivesScaleKg = RoundTo(x.GivesScaleKg, 2)
	x.MixedC = RoundTo(x.MixedC, 1)
	for i := range x.Shows {
		x.Shows[i].round()
	}
}

func (x *Cask) round() {
	x.SizeL = RoundTo(x.SizeL, 1)
	x.Entry.round()
	if x.Fill != nil {
		x.Fill.round()
	}
	if x.LastFill != nil {
		x.LastFill.round()
	}
	x.Leftover.round()
	x.LeftoverOf = RoundTo(x.LeftoverOf, 0)
	x.RestMonths = RoundTo(x.RestMonths, 1)
	for i := range x.Forecast {
		x.Forecast[i].round()
	}
	x.BottleL = RoundTo(x.BottleL, 3)
	x.BottleAt.round()
	if x.BottleAsked != nil {
		x.BottleAsked.round()
	}
	x.AngelsPct = RoundTo(x.AngelsPct, 1)
}

func (x *CaskYear) round() {
	x.AgeYears = RoundTo(x.AgeYears, 2)
	x.VolumeL = RoundTo(x.VolumeL, 1)
	x.AbvPct = RoundTo(x.AbvPct, 1)
	x.Proof = RoundTo(x.Proof, 1)
	x.PureL = RoundTo(x.PureL, 1)
	x.ProofGallons = RoundTo(x.ProofGallons, 1)
	x.WineGallons = RoundTo(x.WineGallons, 2)
}

func (x *Congener) round() {
	for i := range x.Fractions {
		x.Fractions[i].round()
	}
	x.LeftPct.round()
	x.Gain.round()
}

func (x *CongenerFraction) round() {
	x.SharePct.round()
	x.Relative.round()
}

func (x *CongenerPoint) round() {
	x.Min = RoundTo(x.Min, 2)
	x.AbvPct = RoundTo(x.AbvPct, 2)
	for i := range x.Relative {
		x.Relative[i] = RoundTo(x.Relative[i], 3)
	}
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

func (x *Cost) round() {
	for i := range x.Lines {
		x.Lines[i].round()
	}
	x.Total = RoundTo(x.Total, 2)
	x.PerLPA = RoundTo(x.PerLPA, 2)
	x.PerPG = RoundTo(x.PerPG, 2)
	x.PerCask = RoundTo(x.PerCask, 2)
}

func (x *CostLine) round() {
	x.Amount.round()
	x.Cost = RoundTo(x.Cost, 2)
}

func (x *Energy) round() {
	for i := range x.Stages {
		x.Stages[i].round()
	}
	x.HeatKWh = RoundTo(x.HeatKWh, 1)
	x.CoolKWh = RoundTo(x.CoolKWh, 1)
	x.WaterL = RoundTo(x.WaterL, 0)
	x.KWhPerLPA = RoundTo(x.KWhPerLPA, 2)
	x.WaterPerLPA = RoundTo(x.WaterPerLPA, 1)
}

func (x *EnzymeWindow) round() {
	x.FromMin = RoundTo(x.FromMin, 1)
	x.LowC = RoundTo(x.LowC, 1)
	x.HighC = RoundTo(x.HighC, 1)
	x.GoneC = RoundTo(x.GoneC, 1)
}

func (x *Estimate) round() {
	x.Value = RoundTo(x.Value, 3)
	x.Low = RoundTo(x.Low, 3)
	x.High = RoundTo(x.High, 3)
}

func (x *Ferment) round() {
	x.PitchKg = RoundTo(x.PitchKg, 3)
	x.PitchGPerL = RoundTo(x.PitchGPerL, 2)
	x.PitchC = RoundTo(x.PitchC, 1)
	x.HoldLowC = RoundTo(x.HoldLowC, 1)
	x.HoldHighC = RoundTo(x.HoldHighC, 1)
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
	x.SugarLeftKg = RoundTo(x.SugarLeftKg, 2)
	x.PH = RoundTo(x.PH, 2)
	x.SourHours = RoundTo(x.SourHours, 1)
	x.PeakC = RoundTo(x.PeakC, 1)
	x.PeakHours = RoundTo(x.PeakHours, 1)
	x.PeakHeatKW = RoundTo(x.PeakHeatKW, 2)
	x.CoolKWh = RoundTo(x.CoolKWh, 1)
	x.CO2Kg = RoundTo(x.CO2Kg, 1)
	x.CO2M3 = RoundTo(x.CO2M3, 1)
	for i := range x.Curve {
		x.Curve[i].round()
	}
	x.Account.round()
}

func (x *FermentPoint) round() {
	x.Hour = RoundTo(x.Hour, 2)
	x.TempC = RoundTo(x.TempC, 2)
	x.SG = RoundTo(x.SG, 4)
	x.AbvPct = RoundTo(x.AbvPct, 2)
	x.PH = RoundTo(x.PH, 2)
	x.YeastGPerL = RoundTo(x.YeastGPerL, 2)
	x.HeatKW = RoundTo(x.HeatKW, 2)
	x.CO2Kg = RoundTo(x.CO2Kg, 2)
	x.CoolingPct = RoundTo(x.CoolingPct, 0)
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
}

func (x *Grain) round() {
	x.MassKg = RoundTo(x.MassKg, 2)
	x.SharePct = RoundTo(x.SharePct, 2)
	x.MoisturePct = RoundTo(x.MoisturePct, 1)
	x.ExtractKg = RoundTo(x.ExtractKg, 2)
	x.TheoryExtractKg = RoundTo(x.TheoryExtractKg, 2)
}

func (x *House) round() {
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
}

func (x *Lot) round() {
	x.VolumeL = RoundTo(x.VolumeL, 2)
	x.AbvPct = RoundTo(x.AbvPct, 2)
	x.PureL = RoundTo(x.PureL, 2)
	x.WineGallons = RoundTo(x.WineGallons, 3)
	x.Proof = RoundTo(x.Proof, 1)
	x.ProofGallons = RoundTo(x.ProofGallons, 2)
	x.MassKg = RoundTo(x.MassKg, 2)
}

func (x *Mash) round() {
	x.OriginalGravitySG = RoundTo(x.OriginalGravitySG, 4)
	x.HydrometerSG = RoundTo(x.HydrometerSG, 4)
	x.Plato = RoundTo(x.Plato, 2)
	x.PH = RoundTo(x.PH, 2)
	x.VolumeL = RoundTo(x.VolumeL, 1)
	x.MostVolumeL = RoundTo(x.MostVolumeL, 1)
	x.LiquorL = RoundTo(x.LiquorL, 1)
	x.BacksetL = RoundTo(x.BacksetL, 1)
	x.BacksetPct = RoundTo(x.BacksetPct, 1)
	x.LiquorGristLPerKg = RoundTo(x.LiquorGristLPerKg, 2)
	x.GelatinizedPct = RoundTo(x.GelatinizedPct, 1)
	x.ConversionPct = RoundTo(x.ConversionPct, 1)
	x.FermentablePct = RoundTo(x.FermentablePct, 1)
	x.ExtractKg = RoundTo(x.ExtractKg, 2)
	x.TheoryExtractKg = RoundTo(x.TheoryExtractKg, 2)
	x.DraffKg = RoundTo(x.DraffKg, 1)
	x.Hours = RoundTo(x.Hours, 2)
	x.BoilC = RoundTo(x.BoilC, 1)
	x.HeatKWh = RoundTo(x.HeatKWh, 1)
	x.CoolKWh = RoundTo(x.CoolKWh, 1)
	x.CoolingWaterL = RoundTo(x.CoolingWaterL, 0)
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

func (x *MashPoint) round() {
	x.Min = RoundTo(x.Min, 2)
	x.TempC = RoundTo(x.TempC, 2)
	x.GelatinizedPct = RoundTo(x.GelatinizedPct, 1)
	x.ConvertedPct = RoundTo(x.ConvertedPct, 1)
	x.AlphaLeftPct = RoundTo(x.AlphaLeftPct, 1)
	x.BetaLeftPct = RoundTo(x.BetaLeftPct, 1)
	x.AddedLeftPct = RoundTo(x.AddedLeftPct, 1)
}

func (x *MashStep) round() {
	x.StartMin = RoundTo(x.StartMin, 1)
	x.Minutes = RoundTo(x.Minutes, 1)
	x.FromC = RoundTo(x.FromC, 1)
	x.ToC = RoundTo(x.ToC, 1)
	x.VolumeL = RoundTo(x.VolumeL, 1)
	x.HeatKWh = RoundTo(x.HeatKWh, 1)
	x.CoolKWh = RoundTo(x.CoolKWh, 1)
	x.GelatinizedPct = RoundTo(x.GelatinizedPct, 1)
	x.ConvertedPct = RoundTo(x.ConvertedPct, 1)
	x.AlphaLeftPct = RoundTo(x.AlphaLeftPct, 1)
	x.BetaLeftPct = RoundTo(x.BetaLeftPct, 1)
	x.AddedLeftPct = RoundTo(x.AddedLeftPct, 1)
}

func (x *Occupancy) round() {
	x.Hours = RoundTo(x.Hours, 1)
}

func (x *Phrase) round() {
	for i := range x.Values {
		x.Values[i].round()
	}
}

func (x *Plan) round() {
	x.Summary.round()
	x.House.round()
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
}

func (x *Promise) round() {
	x.Promised.round()
	x.Tolerance.round()
	x.Found.round()
}

func (x *Quantity) round() {
	x.Value = RoundTo(x.Value, unitPlaces[x.Unit])
	x.Proof = RoundTo(x.Proof, 1)
	x.Gallons = RoundTo(x.Gallons, 3)
	x.Abv60F = RoundTo(x.Abv60F, 2)
}

func (x *Reading) round() {
	x.Expect.round()
	x.Tolerance.round()
}

func (x *Reduction) round() {
	x.From.round()
	x.To.round()
	x.WaterL = RoundTo(x.WaterL, 2)
	x.WaterKg = RoundTo(x.WaterKg, 2)
	x.WaterScaleKg = RoundTo(x.WaterScaleKg, 2)
	x.ContractionL = RoundTo(x.ContractionL, 2)
	x.TempRiseC = RoundTo(x.TempRiseC, 1)
	x.WaterGallons = RoundTo(x.WaterGallons, 3)
	x.ContractionGallons = RoundTo(x.ContractionGallons, 3)
}

func (x *Run) round() {
	x.Charge.round()
	if x.FeintsReturned != nil {
		x.FeintsReturned.round()
	}
	x.ChargeWaterL = RoundTo(x.ChargeWaterL, 2)
	x.HeartsOfLowWinesPct = RoundTo(x.HeartsOfLowWinesPct, 1)
	x.HeatUpMin = RoundTo(x.HeatUpMin, 1)
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

func (x *RunPoint) round() {
	x.Min = RoundTo(x.Min, 2)
	x.PotC = RoundTo(x.PotC, 2)
	x.VapourC = RoundTo(x.VapourC, 2)
	x.AbvPct = RoundTo(x.AbvPct, 2)
	x.Proof = RoundTo(x.Proof, 1)
	x.PotAbvPct = RoundTo(x.PotAbvPct, 2)
	x.OverL = RoundTo(x.OverL, 2)
	x.RateLPerH = RoundTo(x.RateLPerH, 1)
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

func (x *Shown) round() {
	x.TempC = RoundTo(x.TempC, 2)
	x.Proof = RoundTo(x.Proof, 1)
	x.AbvPct = RoundTo(x.AbvPct, 1)
}

func (x *StageEnergy) round() {
	x.HeatKWh = RoundTo(x.HeatKWh, 1)
	x.CoolKWh = RoundTo(x.CoolKWh, 1)
	x.ProcessL = RoundTo(x.ProcessL, 0)
	x.CoolingWaterL = RoundTo(x.CoolingWaterL, 0)
}

func (x *Step) round() {
	x.DurationMin = RoundTo(x.DurationMin, 1)
	x.Do.round()
	for i := range x.Read {
		x.Read[i].round()
	}
	x.WaitMin = RoundTo(x.WaitMin, 1)
	x.OutOfShift = RoundTo(x.OutOfShift, 1)
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

func (x *Strength) round() {
	x.AbvPct = RoundTo(x.AbvPct, 2)
	x.Proof = RoundTo(x.Proof, 1)
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

func (x *Trim) round() {
	x.Over.round()
	x.WaterL = RoundTo(x.WaterL, 2)
	x.WaterScaleKg = RoundTo(x.WaterScaleKg, 2)
	x.WaterGallons = RoundTo(x.WaterGallons, 3)
}

func (x *Vessel) round() {
	x.HoldsL = RoundTo(x.HoldsL, 0)
	x.HeatKW = RoundTo(x.HeatKW, 1)
	x.CoolKW = RoundTo(x.CoolKW, 1)
	x.MostL = RoundTo(x.MostL, 1)
	x.FillPct = RoundTo(x.FillPct, 1)
}

func (x *Yield) round() {
	x.TheoryLPAPerTonne = RoundTo(x.TheoryLPAPerTonne, 1)
	x.WashLPAPerTonne = RoundTo(x.WashLPAPerTonne, 1)
	x.HeartsLPAPerTonne = RoundTo(x.HeartsLPAPerTonne, 1)
	x.OfTheoryPct = RoundTo(x.OfTheoryPct, 1)
	x.WashPGPerBushel = RoundTo(x.WashPGPerBushel, 2)
	x.HeartsPGPerBushel = RoundTo(x.HeartsPGPerBushel, 2)
}
