package work

import (
	"fmt"
	"math"
	"slices"
	"strconv"
	"strings"

	"newmake/compile/lot"
	"newmake/compile/numbers"
	"newmake/compile/plan"
	"newmake/compile/stage/cask"
	"newmake/compile/stage/schedule"
	"newmake/lang/recipe"
	"newmake/lang/record"
)

// leastLeftL is what is left over from which on it is worth a word.
const leastLeftL = 0.05

// fillJobs gauges and reduces the hearts, lets them settle, and fills the wood, or
// whatever takes the spirit of a batch that goes into none.
func fillJobs(n *numbers.Batch, k plan.Cask, reduction *plan.Reduction) []Job {
	switch {
	case n.Filled.Done:
		jobs := append([]Job{gaugeHearts(n)}, reduce(reduction, recipe.PathEntry)...)
		if k.Casks == 0 {
			return append(jobs, keepForNext(k))
		}
		return append(soaked(jobs, k), fillCasks(n, k), rest(n))
	case numbers.InWood(n.Batch) || n.Distilled.Hearts.MassKg() <= 0:
		return nil
	case reduction != nil:
		jobs := append([]Job{gaugeHearts(n)}, reduce(reduction, recipe.PathBottleAt)...)
		return append(jobs, bottle(n, k, reduction.To))
	case n.Cask.BottleAt.Value > 0:
		return nil // it comes too weak for that
	}
	return []Job{gaugeHearts(n), keepInTank(n)}
}

func gaugeHearts(n *numbers.Batch) Job {
	return Job{
		Task: schedule.Task{Key: "fill.gauge", Stage: "fill", Attend: schedule.Throughout, MayWait: true, Chain: "reduce", DurationS: gaugeS},
		Do:   plan.Say("Gauge the hearts: volume, temperature and hydrometer; true strength by the official tables" + cite(n.Batch, "27 CFR 19.289") + "."),
		Read: heartsReadings(n), Cautions: []string{"spirit"}, Path: recipe.PathCask,
	}
}

// reduce brings the hearts to strength. Path is where that is written.
func reduce(r *plan.Reduction, path recipe.Path) []Job {
	t := schedule.Task{Key: "fill.reduce", Stage: "fill", Attend: schedule.Throughout, MayWait: true, Chain: "reduce", DurationS: reduceS}
	return []Job{{
		Task: t,
		Do: plan.Say("Reduce with {} of water by the proofing card: in steps, stirring and gauging between. It warms by some {}.",
			r.Water(), plan.Of(r.TempRiseC, plan.CelsiusDiff)),
		Read: setReadings(r.To), Path: path,
		Measured: []plan.Addition{{Name: "water to reduce", Amount: r.Water(), Step: t.Key}},
	}, {
		Task: schedule.Task{Key: "fill.settle", Stage: "fill", DurationS: settleS, Elastic: true},
		Do:   plan.Say("Let it settle and come to the temperature of the room."), Path: recipe.PathCask,
	}}
}

func fillCasks(n *numbers.Batch, k plan.Cask) Job {
	people, alone := 1, ""
	switch heavy := n.Cask.SizeM3 >= heavyCaskM3; {
	case heavy && n.Plant.Crew == 1: // what one cannot do alone is moving it full
		alone = " where it is to lie, chocked, for nobody moves a full one alone"
	case heavy:
		people = 2
	}
	what, of, in := "one cask", "it", "cask"
	if k.Casks > 1 {
		what, of, in = strconv.Itoa(k.Casks)+" casks", "each", "each cask"
	}
	holds := plan.Of(k.SizeL, plan.Litre)
	filled := holds
	if k.Casks == 1 && k.LastFill != nil { // it is filled a little short
		filled = k.LastFill.Volume()
	}
	text, values := mingled(k, "Gauge again, fill ")
	text += what + " of {}" + alone + ", bung, weigh, mark and record " + of + cite(n.Batch, "27 CFR 19.283, 19.485, 19.618") + "."
	values = append(values, holds)
	reads := setReadings(*k.Fill)
	reads[0].What = in
	weight := func(what record.What, kg, besidesKg float64) Reading {
		return Reading{plan.Reading{What: string(what), Kind: what, Should: plan.Of(kg, plan.Kilogram), Besides: besidesKg}, -1}
	}
	net := Net.At(k.NetKg)
	tare := Tare.At(k.TareKg)
	if k.TareSaid { // it was weighed
		tare = Tare.Instrument(k.TareKg)
	}
	reads = append(reads, weight(record.Net, k.NetKg, net), weight(record.Gross, k.GrossKg, math.Hypot(net, tare)))
	switch {
	case k.LastFill == nil || !lot.SeenShort(n.Batch, *k.LastFill):
	case k.Casks == 1:
		text, values = text+" It takes {}, and is not quite full.", append(values, filled)
	default:
		text, values = text+" The last one takes {}.", append(values, k.LastFill.Volume())
	}
	if k.Leftover.VolumeL > leastLeftL {
		text, values = text+" {} is left: into a closed tank, labelled, for the next cask.", append(values, k.Leftover.Volume())
	}
	return Job{
		Mark: mark("{} at {}", filled, k.Fill.Strength().At()),
		Task: schedule.Task{Key: "fill.cask", Stage: "fill", Attend: schedule.Throughout, MayWait: true, People: people,
			DurationS: fillSetupS + fillS*float64(k.Casks)},
		Do: plan.Say(text, values...), Read: reads, Cautions: []string{"spirit", "lift"}, Path: recipe.PathFill,
	}
}

const soakKey = "fill.soak"

// soaked puts the soaking of the casks before they are filled, while the spirit settles.
func soaked(jobs []Job, k plan.Cask) []Job {
	hot := plan.Of(soakL(k), plan.Litre)
	what, into := "the cask that is to be filled", "it"
	if k.Casks > 1 {
		what, into = fmt.Sprintf("the %d casks that are to be filled", k.Casks), "each"
	}
	t := schedule.Task{Key: soakKey, Stage: "fill", Attend: schedule.Throughout, MayWait: true, Meanwhile: true, DurationS: fillSetupS + soakS*float64(k.Casks)}
	return append(jobs, Job{
		Task: t, Path: recipe.PathFill, Cautions: []string{"soak", "roll"},
		Do:       plan.Say("Soak and try "+what+": {} of hot water into "+into+", bung it, turn it from head to head and roll it. Look for leaks at heads, joints and bung, drain it, and weigh it empty. No chlorine. One that is not filled within a day is kept bunged and damp, or soaked again.", hot),
		Measured: []plan.Addition{{Name: "hot water to soak casks", Amount: plan.Of(soakL(k)*float64(k.Casks), plan.Litre), Step: t.Key}},
	})
}

// soakKeepsS is how long a cask that was soaked may stand until it is filled.
const soakKeepsS = 24 * lot.SecondsPerHour

// soakedLate is the work with the casks soaked when the spirit has settled, just before
// they are filled, where they would stand too long before it, over a Sunday or a night
// more; else nil.
func soakedLate(jobs []Job, line []schedule.Slot) []Job {
	slot := func(key string) int {
		return slices.IndexFunc(line, func(s schedule.Slot) bool { return s.Key == key })
	}
	soak, fill := slot(soakKey), slot("fill.cask")
	if soak < 0 || fill < 0 || line[fill].Start.Sub(line[soak].End).Seconds() <= soakKeepsS {
		return nil
	}
	out := slices.Clone(jobs)
	out[slices.IndexFunc(out, func(j Job) bool { return j.Key == soakKey })].Meanwhile = false
	return out
}

// soakShare is the hot water that swells a cask, of what it holds: 5 gal to 53 (common
// practice of coopers).
const soakShare = 0.1

// soakL is the hot water that goes into each cask.
func soakL(k plan.Cask) float64 { return soakShare * k.SizeL }

// restKey is the years in wood.
const restKey = "cask.rest"

// samples are the days on which a cask is sampled.
func samples(rest schedule.Slot) []string {
	var out []string
	for _, s := range cask.Samplings(record.DateOf(rest.Start), rest.End.Sub(rest.Start).Seconds()) {
		out = append(out, s.On.String())
	}
	return out
}

func rest(n *numbers.Batch) Job {
	return Job{
		Task: schedule.Task{Key: restKey, Stage: "cask", DurationS: n.Cask.RestS},
		Do:   plan.Say("Rests in wood. Draw a sample twice a year, and hold it against the forecast."), Path: recipe.PathRest,
	}
}

// keepTask puts spirit away.
func keepTask() schedule.Task {
	return schedule.Task{Key: "fill.keep", Stage: "fill", Attend: schedule.Throughout, MayWait: true, DurationS: fillSetupS}
}

// mingled begins the words of a fill into which goes what a run before it left over.
func mingled(k plan.Cask, then string) (text string, values []plan.Quantity) {
	if k.Before == nil {
		return then, nil
	}
	of := "a run before it"
	if k.BeforeOf != "" {
		of = "run " + strings.NewReplacer("{", "(", "}", ")").Replace(k.BeforeOf)
	}
	return "Mingle it with the {} that " + of + " left. " + then, []plan.Quantity{k.Before.Volume()}
}

func keepForNext(k plan.Cask) Job {
	text, values := mingled(k, "Too little for a cask of {}: put {} into a closed tank, bonded and labelled, and fill with the next batch.")
	return Job{
		Task: keepTask(),
		Do:   plan.Say(text, append(values, plan.Of(k.SizeL, plan.Litre), k.Leftover.Volume())...),
		Read: setReadings(k.Leftover), Cautions: []string{"spirit"}, Path: recipe.PathFill,
	}
}

func keepInTank(n *numbers.Batch) Job {
	return Job{
		Task: keepTask(),
		Do:   plan.Say("Put the spirit into a closed tank, bonded and labelled, and record it" + cite(n.Batch, "27 CFR 19.289, 19.306, 19.585") + "."),
		Read: heartsReadings(n), Cautions: []string{"spirit"}, Path: recipe.PathBatch,
	}
}

// labelled is how near the bottle has to be to its label.
func labelled(n *numbers.Batch) string {
	if !underUS(n.Batch) {
		return ""
	}
	return " It is within 0.3 % abv of its label (27 CFR 19.356(c))."
}

func bottle(n *numbers.Batch, k plan.Cask, spirit plan.Lot) Job {
	t := keepTask()
	t.Key, t.DurationS = "fill.bottle", fillSetupS+bottleS*float64(k.Bottles)
	return Job{
		Task: t, Do: plan.Say(fmt.Sprintf("Gauge again, and bottle: about %d of %.0f mL.%s", k.Bottles, k.BottleL*1000, labelled(n))),
		Read: setReadings(spirit), Cautions: []string{"spirit"}, Path: recipe.PathBottle,
	}
}

// heartsReadings are the volume and true strength of all hearts.
func heartsReadings(n *numbers.Batch) []Reading {
	return lotReadings(lot.Of(n.Distilled.Hearts), HeartsVolume, HeartsStrength)
}
