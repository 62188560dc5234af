package report

import "newmake/compile/plan"

// Summary gathers a plan's twenty numbers.
func Summary(p *plan.Plan, lowWines, hearts plan.Lot) plan.Summary {
	s := plan.Summary{
		OriginalGravitySG: p.Mash.OriginalGravitySG, FinalGravitySG: p.Ferment.FinalGravitySG,
		WashVolumeL: p.Ferment.WashVolumeL, WashAbvPct: p.Ferment.AbvPct,
		LowWinesVolumeL: lowWines.VolumeL, LowWinesAbvPct: lowWines.AbvPct,
		HeartsVolumeL: hearts.VolumeL, HeartsAbvPct: hearts.AbvPct,
		HeartsProofGal: hearts.ProofGallons, PureAlcoholL: hearts.PureL,
		CaskEntryAbvPct: p.Cask.Entry.AbvPct, CasksFilled: p.Cask.Casks, LeftoverL: p.Cask.Leftover.VolumeL,
		MashHours: p.Mash.Hours, FermentHours: p.Ferment.Hours,
		StripHours: p.Strip.TotalHours, SpiritHours: p.Spirit.TotalHours,
		YieldLPAPerTonne: p.Yield.HeartsLPAPerTonne,
	}
	if f := p.Spirit.Feints; f != nil {
		s.FeintsVolumeL, s.FeintsAbvPct = f.VolumeL, f.AbvPct
	}
	return s
}
