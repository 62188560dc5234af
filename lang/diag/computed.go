package diag

// The codes of what only the computed plan can show. They stand from 50 up in
// each family, so that the checker's and these can grow side by side.
const (
	CodeNoBatch Code = "NM0250"

	CodeCookerFull    Code = "NM0550"
	CodeFermenterFull Code = "NM0551"
	CodeStillFull     Code = "NM0552"
	CodeBoilerSmall   Code = "NM0553"
	CodeTankFull      Code = "NM0554"

	CodeAboveBoil    Code = "NM0650"
	CodeNoHeat       Code = "NM0651"
	CodeCannotCool   Code = "NM0652"
	CodeSlowStep     Code = "NM0653"
	CodeAlreadyThere Code = "NM0654"
	CodeNothingDrawn Code = "NM0655"
	CodeNotCooked    Code = "NM0656"
	CodeEnzymesDead  Code = "NM0657"
	CodeUnconverted  Code = "NM0658"
	CodeMashPH       Code = "NM0659"
	CodeMashFailed   Code = "NM0660"
	CodeEmptyStep    Code = "NM0661"
	CodeNoAcidWanted Code = "NM0662"
	CodeCooledOnBed  Code = "NM0663"
	CodeKeptShort    Code = "NM0664"

	CodePitchHot      Code = "NM0750"
	CodePitchCold     Code = "NM0751"
	CodeNotDry        Code = "NM0752"
	CodeFermentHot    Code = "NM0753"
	CodeYeastKilled   Code = "NM0754"
	CodeFermentFailed Code = "NM0755"
	CodeHoldCold      Code = "NM0756"
	CodeHoldLeft      Code = "NM0757"

	CodeStillFailed    Code = "NM0850"
	CodeNoDistillate   Code = "NM0851"
	CodeStopUnreached  Code = "NM0852"
	CodeCutUnreached   Code = "NM0853"
	CodeCutsCrossed    Code = "NM0854"
	CodeNotSteady      Code = "NM0855"
	CodeChargeStrong   Code = "NM0856"
	CodeEarlyStop      Code = "NM0857"
	CodeInForeshots    Code = "NM0858"
	CodeNoWaterWanted  Code = "NM0859"
	CodeDistillateWarm Code = "NM0860"
	CodeBareSurface    Code = "NM0861"
	CodePaceBeyond     Code = "NM0862"
	CodeScorches       Code = "NM0863"
	CodeNoPotAle       Code = "NM0864"
	CodePreheatShort   Code = "NM0865"
	CodeOddPace        Code = "NM0866"

	CodeBelowEntry    Code = "NM0950"
	CodeCaskNotFilled Code = "NM0951"
	CodeLeftover      Code = "NM0952"
	CodeBelowBottling Code = "NM0953"
	CodeCaskFailed    Code = "NM0954"

	CodeOffStill   Code = "NM1050"
	CodeTwoSeasons Code = "NM1051"
	CodeSoldAs     Code = "NM1052"

	CodeNoSuchStart Code = "NM1150"
	CodeStartWaits  Code = "NM1151"
	CodeOutOfShift  Code = "NM1152"
	CodeCrewShort   Code = "NM1153"
	CodeUnknownZone Code = "NM1156"
	CodeStandsLong  Code = "NM1157"
	CodeRunsAway    Code = "NM1158"
	CodeOtherStart  Code = "NM1159"
	CodeStandsDirty Code = "NM1160"

	CodePromiseBroken  Code = "NM1250"
	CodePromiseUntried Code = "NM1252"
)

// Computed is the part of the table that belongs to the codes above.
var Computed = []Info{
	{CodeNoBatch, "no-batch", Error, "a file without a batch"},

	{CodeCookerFull, "cooker-too-full", Error, "the mash does not fit the cooker"},
	{CodeFermenterFull, "fermenter-too-full", Error, "the wash does not fit the fermenter"},
	{CodeStillFull, "still-too-full", Error, "the charge does not fit the still"},
	{CodeBoilerSmall, "boiler-too-small", Warning, "a vessel wants more heat than the boiler gives"},
	{CodeTankFull, "tank-too-full", Error, "a tank does not hold what waits in it"},

	{CodeAboveBoil, "above-the-boil", Error, "a mash hotter than water boils at the plant's elevation"},
	{CodeNoHeat, "no-heat", Error, "a mash that cannot be heated as written"},
	{CodeCannotCool, "cannot-cool", Error, "a mash that cannot be cooled as written"},
	{CodeSlowStep, "slower-than-written", Warning, "a step takes longer than its time"},
	{CodeAlreadyThere, "already-there", Warning, "a step that has nothing to do"},
	{CodeNothingDrawn, "nothing-drawn", Error, "nothing runs off the grain"},
	{CodeNotCooked, "not-cooked", Warning, "starch that never gelatinized"},
	{CodeEnzymesDead, "enzymes-dead", Warning, "malt enzymes that died before their work"},
	{CodeUnconverted, "not-converted", Warning, "gelatinized starch that was not converted"},
	{CodeMashPH, "mash-ph", Warning, "a mash pH outside the enzymes' window"},
	{CodeMashFailed, "mash-not-computed", Error, "a mash that cannot be computed"},
	{CodeEmptyStep, "nothing-in-the-cooker", Error, "a step that works on an empty cooker"},
	{CodeNoAcidWanted, "no-acid-wanted", Note, "acid to a pH that the mash is below already"},
	{CodeCooledOnBed, "cooled-on-the-draff", Warning, "worts that are cooled in the tun, on the draff"},
	{CodeKeptShort, "kept-short", Warning, "a mash that takes more kept water than it leaves"},

	{CodePitchHot, "pitch-too-hot", Warning, "yeast pitched into a wort too hot for it"},
	{CodePitchCold, "pitch-too-cold", Warning, "yeast pitched into a wort too cold for it"},
	{CodeNotDry, "not-dry", Warning, "a ferment that is not dry in its time"},
	{CodeFermentHot, "ferment-too-hot", Warning, "a ferment warmer than the yeast likes"},
	{CodeYeastKilled, "yeast-killed", Error, "a ferment hot enough to kill its yeast"},
	{CodeFermentFailed, "ferment-not-computed", Error, "a ferment that cannot be computed"},
	{CodeHoldCold, "hold-below-the-water", Warning, "a ferment to be held colder than its cooling water can"},
	{CodeHoldLeft, "hold-left", Note, "a ferment that leaves the temperatures at which it is held"},

	{CodeStillFailed, "run-not-computed", Error, "a still run that cannot be computed"},
	{CodeNoDistillate, "no-distillate", Error, "a run that stops before it begins"},
	{CodeStopUnreached, "stop-not-reached", Error, "a stop strength that is never reached"},
	{CodeCutUnreached, "cut-not-reached", Error, "a cut that is never reached"},
	{CodeCutsCrossed, "cuts-cross", Error, "hearts that end before they begin"},
	{CodeNotSteady, "never-steady", Error, "feints that grow from batch to batch"},
	{CodeChargeStrong, "charge-too-strong", Warning, "a spirit charge that is too strong"},
	{CodeEarlyStop, "alcohol-left", Note, "alcohol left in the pot"},
	{CodeInForeshots, "hearts-in-foreshots", Warning, "hearts that begin within the foreshots"},
	{CodeNoWaterWanted, "no-water-wanted", Note, "water for a charge that is weak enough"},
	{CodeDistillateWarm, "distillate-warm", Warning, "a distillate warmer than asked for"},
	{CodeBareSurface, "heating-surface-bare", Error, "a run that leaves the heating surface bare"},
	{CodePaceBeyond, "pace-beyond-heat", Warning, "a pace that the still's heat does not give"},
	{CodeScorches, "grain-scorches", Warning, "a wash with grain in it, and nothing that keeps the grain off the heat"},
	{CodeNoPotAle, "no-hot-pot-ale", Note, "a preheater that has no hot pot ale"},
	{CodePreheatShort, "preheat-short", Warning, "a wash that its preheater does not warm as far as is asked"},
	{CodeOddPace, "odd-pace", Note, "hearts that run far slower or faster than is usual for the still"},

	{CodeBelowEntry, "below-entry", Error, "hearts weaker than the cask's entry strength"},
	{CodeCaskNotFilled, "cask-not-filled", Warning, "not enough spirit for one cask"},
	{CodeLeftover, "spirit-left-over", Note, "spirit left over after filling"},
	{CodeBelowBottling, "below-bottling", Warning, "a cask weaker than the bottling strength"},
	{CodeCaskFailed, "cask-not-computed", Error, "a filling that cannot be computed"},

	{CodeOffStill, "off-still-strength", Error, "hearts too strong or too weak for the standard"},
	{CodeTwoSeasons, "two-seasons", Error, "a batch distilled in two seasons, where the standard asks for one"},
	{CodeSoldAs, "sold-as", Error, "a bottling that by its records is not what it is sold as"},

	{CodeNoSuchStart, "no-such-start", Error, "a start at a time that does not exist, or comes twice"},
	{CodeStartWaits, "start-off-shift", Warning, "a start at which nobody is there"},
	{CodeOutOfShift, "past-the-shift", Warning, "attended work outside the shift"},
	{CodeCrewShort, "crew-too-small", Warning, "work that wants more people than there are"},
	{CodeUnknownZone, "unknown-zone", Error, "a time zone that is not known"},
	{CodeStandsLong, "stands-long", Warning, "a wash that stands long before it is run"},
	{CodeOtherStart, "another-start", Note, "a wash that waits over a weekend, and a start by which it does not"},
	{CodeStandsDirty, "stands-dirty", Note, "a fermenter that is cleaned long after it is emptied"},
	{CodeRunsAway, "runs-away", Error, "numbers of a batch that run away"},

	{CodePromiseBroken, "promise-broken", Error, "a promise that the plan does not keep"},
	{CodePromiseUntried, "promise-not-tried", Note, "a promise of so many runs, which a plan does not try"},
}
