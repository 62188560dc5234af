package made

import (
	"cmp"
	"fmt"
	"math"
	"slices"
	"strings"
	"time"

	"newmake/compile/constants"
	"newmake/compile/numbers"
	"newmake/compile/stage/still"
	"newmake/lang/quantity"
	"newmake/lang/recipe"
	"newmake/lang/record"
)

// Reading is one reading of a run, brought to what the stages say.
type Reading struct {
	Words string
	What  record.What // "" of a duration
	Said  float64     // see Spot.Says for its unit
	SD    float64     // of reading it, without what the instrument is always off by, and its clocks
	// Clocks are the lines whose clock says when it was read, or how long something took.
	Clocks []Clock
	// Instrument is the key of the instrument's constant, "" of a clock.
	Instrument string
	Spot
	// Outcome says that the house lives by it.
	Outcome bool
	LostM3  float64 // in Said: what was lost of the lot before it was gauged
	Visit   *record.Visit
}

// Clock is the clock time of a line that a reading goes by.
type Clock struct {
	Of   *record.Visit
	Sign float64 // 1 where what is read ends, -1 from where it is counted
}

// ByClock is what one standard deviation of each of its clocks does to a reading: a
// duration is longer by so much; of what changes, it is as much as that does meanwhile.
func (r *Reading) ByClock(n *numbers.Batch) float64 {
	switch {
	case len(r.Clocks) == 0:
		return 0
	case r.What == "":
		return clockSD
	}
	sooner, later := r.Spot, r.Spot
	sooner.AfterS, later.AfterS = max(r.AfterS-clockSD, 0), r.AfterS+clockSD
	a, okA := sooner.Says(n)
	b, okB := later.Says(n)
	if !okA || !okB {
		return 0
	}
	return clockSD * (a - b) / (later.AfterS - sooner.AfterS) // read too late, it is what was earlier
}

// Sure is one standard deviation of a reading, without what the instrument is always off by:
// of reading it and of the clock.
func (r *Reading) Sure(n *numbers.Batch) float64 {
	return math.Hypot(r.SD, math.Sqrt(float64(len(r.Clocks)))*r.ByClock(n))
}

// Of is what numbers have for the reading.
func (r *Reading) Of(n *numbers.Batch) (float64, bool) { return r.Says(n) }

// clockSD is how well the end of a step is told by the clock that somebody wrote down, in s
// (common practice).
const clockSD = 150

// minuteSD is what is lost where times are written to the minute.
var minuteSD = record.ReadingSI(60)

// stoodSD is how well it is known for how long the work stood still, as a share.
const stoodSD = 0.1

type collecting struct {
	b          *recipe.Batch
	r          *record.Run
	instrument func(string) *record.Instrument
	out        []Reading
}

// Readings are those of a run that a model can be held against. b is the recipe as the run
// made it; instrument finds what the house declares, nil if nothing.
func Readings(b *recipe.Batch, r *record.Run, instrument func(name string) *record.Instrument) []Reading {
	c := &collecting{b: b, r: r, instrument: instrument}
	c.mash()
	c.ferment()
	c.still(record.Strip)
	c.still(record.Spirit)
	return c.out
}

// kinds of instruments, by what they read: the names that package constants has.
var kinds = map[quantity.Kind]string{
	quantity.Gravity: "hydrometer", quantity.Strength: "alcoholometer", quantity.Temperature: "thermometer", quantity.Volume: "dip",
}

// put enters a reading of an instrument. more is added to what was read; unsure is what
// is not known besides.
// from is the line from whose clock its moment is counted, nil where that does not go by the clock.
func (c *collecting) put(v *record.Visit, rd *record.Reading, words string, s Spot, said, unsure float64, from *record.Visit) {
	held, ok := rd.Holds()
	if !ok || math.IsNaN(said) {
		return
	}
	i := c.instrument(rd.With)
	a := record.AccuracyOf(rd, i)
	key := kinds[held.Kind]
	if i != nil && key != "" {
		key = recipe.ConstantKey(key, i.Name)
	}
	s.What = rd.What
	out := Reading{Words: words, What: rd.What, Said: said, SD: math.Hypot(a.Of(held.SI), unsure), Instrument: key, Spot: s, Visit: v}
	if from != nil && from != v {
		out.Clocks = since(from, v)
	}
	c.out = append(c.out, out)
}

// since are the clocks of what lies between two lines.
func since(from, to *record.Visit) []Clock { return []Clock{{from, -1}, {to, 1}} }

// lasted enters how long it was from one line to another.
func (c *collecting) lasted(from, v *record.Visit, words string, s Spot, stood float64) {
	c.out = append(c.out, Reading{
		Words: words, Said: v.When.Time.Sub(from.When.Time).Seconds() - stood, SD: math.Hypot(minuteSD, stoodSD*stood),
		Clocks: since(from, v), Spot: s, Visit: v,
	})
}

func (c *collecting) mash() {
	all := steps(c.b, c.r)
	for _, t := range all {
		s := c.b.Mash.Steps[t.step]
		spot := Spot{Stage: record.Mash, Step: t.step}
		name := stepWords(c.b, t.step)
		if (s.Verb == recipe.MashHeat || s.Verb == recipe.MashCool) && t.lastS > 0 {
			how := spot
			how.Kind = HowLong
			c.lasted(t.from, t.visit, "minutes of the "+name, how, t.stood)
		}
		for i := range t.visit.Read {
			rd := &t.visit.Read[i]
			switch {
			case rd.What == record.Temperature && s.Verb == recipe.MashRest:
				v, ok := rd.Holds()
				if ok {
					c.put(t.visit, rd, "temperature at the end of the "+name, spot, v.SI, 0, nil)
				}
			case rd.What == record.Gravity && t.step == len(c.b.Mash.Steps)-1:
				if sg, ok := Gravity(rd, c.instrument(rd.With)); ok {
					c.put(t.visit, rd, "gravity of the mash", spot, sg.SI, sg.Unsure, nil)
				}
			}
		}
	}
}

// stepWords names a step of the mash: "second cool".
func stepWords(b *recipe.Batch, step int) string {
	verb, nth, of := b.Mash.Steps[step].Verb, 0, 0
	for i, s := range b.Mash.Steps {
		if s.Verb == verb {
			of++
			if i <= step {
				nth++
			}
		}
	}
	word := ""
	for w, v := range verbs {
		if v == verb {
			word = w
		}
	}
	if of == 1 {
		return word
	}
	return fmt.Sprintf("%s %d", word, nth)
}

func (c *collecting) ferment() {
	pitch := whenDone(c.r, record.Ferment, pitching...)
	for i := range c.r.Visits {
		v := &c.r.Visits[i]
		if c.r.Stages[v.Stage].Name != record.Ferment {
			continue
		}
		after := math.NaN()
		if pitch != nil && v.When.Known() {
			after = v.When.Time.Sub(pitch.When.Time).Seconds()
		}
		for k := range v.Read {
			rd := &v.Read[k]
			spot := Spot{Stage: record.Ferment, Kind: Within, AfterS: after}
			at := fmt.Sprintf("at %s h", hours(after))
			switch rd.What {
			case record.Volume:
				if m3, ok := Volume(rd, 0, nil); ok && (v.Word == "pump" || v.Word == "pitch") {
					c.put(v, rd, "volume to the fermenter", Spot{Stage: record.Ferment}, m3.SI, m3.Unsure, nil)
				}
			case record.Gravity:
				if sg, ok := Gravity(rd, c.instrument(rd.With)); ok && after >= 0 {
					c.put(v, rd, "gravity "+at, spot, sg.SI, sg.Unsure, pitch)
				}
			case record.Temperature:
				if t, ok := rd.Holds(); ok && after >= 0 && v.Word == "" {
					c.put(v, rd, "temperature "+at, spot, t.SI, 0, pitch)
				}
			}
		}
	}
}

func hours(s float64) string { return fmt.Sprintf("%.0f", s/3600) }

// stoodBetween is for how long the work of a stage stood still between two moments.
func (c *collecting) stoodBetween(stage record.StageName, from, to time.Time) (s float64) {
	for i := range c.r.Visits {
		v := &c.r.Visits[i]
		if c.r.Stages[v.Stage].Name == stage && v.Word == "stopped" && v.When.Known() && !v.When.Time.Before(from) && !v.When.Time.After(to) {
			s += v.LastS
		}
	}
	return s
}

// fractions of the model, by the words of a record.
var fractions = map[string]string{
	"low-wines": still.LowWines, "foreshots": still.Foreshots, "heads": still.Heads, "hearts": still.Hearts, "tails": still.Tails, "feints": feints,
}

// still enters what was read of a run of a still.
func (c *collecting) still(stage record.StageName) {
	run := map[record.StageName]string{record.Strip: "wash run", record.Spirit: "spirit run"}[stage]
	charges := map[record.StageName]int{record.Strip: c.b.Strip.Charges, record.Spirit: c.b.Spirit.Charges}[stage]
	fire, first := whenDone(c.r, stage, "fire"), whenDone(c.r, stage, "first-drop")
	gauged := map[string]bool{}
	parts := map[part][]*record.Visit{}
	for i := range c.r.Visits {
		v := &c.r.Visits[i]
		name := c.r.Stages[v.Stage].Name
		if (name == stage || name == record.Fill && stage == record.Spirit) && fractions[v.Word] != "" && len(v.Read) > 0 {
			gauged[v.Word] = true
			if _, measured := reading(v, record.Volume); measured {
				parts[part{name, v.Word}] = append(parts[part{name, v.Word}], v)
			}
		}
	}
	lost := map[string]float64{} // of a fraction, so far: it had come over
	over := 0.0                  // what came before the fraction that comes, and is not in its receiver
	heads := 0.0
	for i := range c.r.Visits {
		v := &c.r.Visits[i]
		at := c.r.Stages[v.Stage].Name
		of := fractions[v.Word]
		if v.Word == "lost" && (at == stage || at == record.Fill && stage == record.Spirit) {
			what := cmp.Or(v.Of, map[record.StageName]string{record.Strip: "low-wines", record.Spirit: "hearts"}[stage])
			for k := range v.Read {
				if x, ok := v.Read[k].Holds(); ok && x.Kind == quantity.Volume {
					lost[what] += x.SI
				}
			}
			continue
		}
		if at == record.Fill && stage == record.Spirit && v.Word == "hearts" {
			c.lot(stage, v, parts[part{at, v.Word}], lost)
			continue
		}
		if at != stage {
			continue
		}
		switch {
		case v == first && fire != nil && charges <= 1:
			c.lasted(fire, v, run+": minutes to the first drop", Spot{Stage: stage, Kind: FirstDrop}, c.stoodBetween(stage, fire.When.Time, first.When.Time))
		case v.Word == "off" && fire != nil && v.When.Known() && charges <= 1:
			c.lasted(fire, v, run+": minutes from the fire to the end", Spot{Stage: stage, Kind: HowLong}, c.stoodBetween(stage, fire.When.Time, v.When.Time))
		case v.Word == "to":
			m3, ok := held(v, record.Receiver)
			if !ok {
				over = math.NaN()
			} else {
				over += m3.SI
			}
			switch { // the tails run onto the heads, into the feints tank
			case v.Of == "hearts" && ok:
				heads = m3.SI
			case v.Of == "tails":
				over -= heads
			}
			if rd, ok := reading(v, record.Receiver); ok && v.Of == "tails" && !gauged["hearts"] && c.b.Spirit.HeartsTo.By != recipe.ByVolume {
				c.put(v, rd, "volume of the hearts", Spot{Stage: stage, Of: still.Hearts, Kind: AtEnd}, rd.SI+lost["hearts"], 0, nil)
				c.out[len(c.out)-1].Outcome, c.out[len(c.out)-1].LostM3 = true, lost["hearts"]
			}
		case of != "":
			if stage == record.Strip || v.Word != "foreshots" {
				c.lot(stage, v, parts[part{at, v.Word}], lost)
			}
		case v.Word == "" && charges <= 1:
			c.passing(stage, run, v, first, over)
		}
	}
}

// part is what the lines of one word gauge in a stage: lots of one fraction, of two charges or
// in two receivers, which are the fraction together.
type part struct {
	stage record.StageName
	word  string
}

// lot enters what was gauged of a fraction: on a line, or on several that each measured a part
// of it, with the last of them.
func (c *collecting) lot(stage record.StageName, v *record.Visit, parts []*record.Visit, lost map[string]float64) {
	if len(parts) < 2 || !slices.Contains(parts, v) {
		c.gauged(stage, v, lost[v.Word])
		return
	}
	if v != parts[len(parts)-1] {
		return
	}
	before := c.out
	c.out = nil
	var volumes, strengths []Reading
	for _, p := range parts {
		c.gauged(stage, p, 0)
	}
	for _, r := range c.out {
		if r.What == record.Volume {
			volumes = append(volumes, r)
		} else {
			strengths = append(strengths, r)
		}
	}
	c.out = before
	if len(volumes) < len(parts) {
		return // how much there was in all is not known
	}
	whole := together(volumes, nil)
	if len(strengths) == len(parts) {
		c.out = append(c.out, together(strengths, volumes))
	}
	whole.Said, whole.LostM3 = whole.Said+lost[v.Word], lost[v.Word]
	c.out = append(c.out, whole)
}

// together is the sum of readings, or their mean by their volumes.
func together(all, volumes []Reading) Reading {
	out := all[len(all)-1]
	total, said, variance := 0.0, 0.0, 0.0
	for _, v := range volumes {
		total += v.Said
	}
	for i, r := range all {
		share := 1.0
		if volumes != nil {
			share = volumes[i].Said / total
		}
		said, variance = said+share*r.Said, variance+share*share*r.SD*r.SD
	}
	out.Said, out.SD = said, math.Sqrt(variance)
	out.Words = fmt.Sprintf("%s, %d lines", out.Words, len(all))
	return out
}

// gauged enters what was gauged of a fraction on a line, with what was lost of it before.
func (c *collecting) gauged(stage record.StageName, v *record.Visit, lost float64) {
	of, word := fractions[v.Word], v.Word
	var abv Corrected
	var sample *record.Reading
	name := strings.ReplaceAll(word, "-", " ")
	if rd, ok := reading(v, record.Strength); ok {
		sample = rd
		var known bool
		if abv, known = Strength(rd); known {
			c.put(v, rd, "strength of the "+name, Spot{Stage: stage, Of: of}, abv.SI, abv.Unsure, nil)
			c.out[len(c.out)-1].Outcome = word == "hearts"
		}
	}
	if rd, ok := reading(v, record.Volume); ok {
		if m3, ok := Volume(rd, abv.SI, sample); ok {
			c.put(v, rd, "volume of the "+name, Spot{Stage: stage, Of: of}, m3.SI+lost, m3.Unsure, nil)
			c.out[len(c.out)-1].Outcome, c.out[len(c.out)-1].LostM3 = word == "hearts" || word == "low-wines", lost
		}
	}
}

// passing enters what was read at the spout while a run went on: by how much had come over
// where that was read, else by the clock.
func (c *collecting) passing(stage record.StageName, run string, v, first *record.Visit, over float64) {
	spot := Spot{Stage: stage, Kind: Within}
	var from *record.Visit
	m3, ok := held(v, record.Receiver)
	at := ""
	switch {
	case ok && !math.IsNaN(over):
		spot.OverM3 = over + m3.SI
		at = fmt.Sprintf("%.0f L over", 1000*spot.OverM3)
	case first != nil && v.When.Known() && v.When.Time.After(first.When.Time):
		spot.AfterS = v.When.Time.Sub(first.When.Time).Seconds()
		from = first
		at = fmt.Sprintf("%.0f min after the first drop", spot.AfterS/60)
	default:
		return
	}
	if rd, ok := reading(v, record.Spout); ok {
		if abv, ok := Strength(rd); ok {
			c.put(v, rd, run+": spout, "+at, spot, abv.SI, abv.Unsure, from)
		}
	}
}

// Instruments are the constants of the instruments that readings name: what each is always
// off by, by its checks where it has any.
func Instruments(b *recipe.Batch, readings []Reading, instrument func(name string) *record.Instrument) []constants.Constant {
	var out []constants.Constant
	seen := map[string]bool{}
	for _, r := range readings {
		if r.Instrument == "" || seen[r.Instrument] {
			continue
		}
		seen[r.Instrument] = true
		for _, c := range constants.Of(b) {
			if c.Owner != constants.Instrument {
				continue
			}
			if c.Key() == r.Instrument {
				out = append(out, c)
				continue
			}
			for k := range r.Visit.Read {
				name := r.Visit.Read[k].With
				if name == "" || recipe.ConstantKey(c.ID, name) != r.Instrument {
					continue
				}
				c.Of, c.Words = name, c.Words+" "+name
				if i := instrument(name); i != nil {
					checked(&c, i)
				}
				out = append(out, c)
				break
			}
		}
	}
	return out
}

// elsewhereOnScale is how much of what an unchecked instrument may be off is still open at
// other places of the scale than where it was checked (own rule).
const elsewhereOnScale = 0.4

// checked narrows what an instrument is off by to what its last check said.
func checked(c *constants.Constant, i *record.Instrument) {
	for _, k := range slices.Backward(i.Checks) {
		if k.True == nil || k.Said.Kind != i.Scale.Kind || c.Form != constants.Plus {
			continue
		}
		c.Mean = k.Said.SI - k.True.SI
		c.SD = math.Hypot(record.ReadingSI(i.DivisionSI(i.Scale.Low)), elsewhereOnScale*c.SD)
		c.Why = "checked on " + k.On.String()
		return
	}
}
