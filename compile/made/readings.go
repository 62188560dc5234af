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
	pitch := whenDone(c.r, record.Ferment, anyCharge, pitching...)
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

// runs are the runs of the stills, in words.
var runs = map[record.StageName]string{record.Strip: "wash run", record.Spirit: "spirit run"}

// still enters what was read of the charges of a still.
func (c *collecting) still(stage record.StageName) {
	charges := max(map[record.StageName]int{record.Strip: c.b.Strip.Charges, record.Spirit: c.b.Spirit.Charges}[stage], 1)
	lots := lotsOf(c.r, stage, charges)
	lost := map[string]float64{} // of a fraction, since it was gauged: it had come over
	now := &running{collecting: c, stage: stage}
	for i := range c.r.Visits {
		v := &c.r.Visits[i]
		at := c.r.Stages[v.Stage].Name
		if at != stage && !(at == record.Fill && stage == record.Spirit) {
			continue
		}
		if v.Word == "lost" {
			what := cmp.Or(v.Of, map[record.StageName]string{record.Strip: "low-wines", record.Spirit: "hearts"}[stage])
			for k := range v.Read {
				if x, ok := v.Read[k].Holds(); ok && x.Kind == quantity.Volume {
					lost[what] += x.SI
				}
			}
			continue
		}
		if l := lots[v]; l != nil {
			c.lot(stage, l, lost[l.word])
			if at == stage && !regauged(c.r, l.word) {
				lost[l.word] = 0
			}
			continue
		}
		if at != stage || fractions[v.Word] != "" {
			continue
		}
		if charge := max(v.Charge, 1); charge != now.charge {
			*now = running{collecting: c, stage: stage, charge: charge, charges: charges}
			now.fire, now.first = now.done("fire"), now.done("first-drop")
		}
		if !now.line(v) || c.b.Spirit.HeartsTo.By == recipe.ByVolume {
			continue
		}
		if rd, ok := reading(v, record.Receiver); ok && !inLot(lots, "hearts", now.charge) {
			c.put(v, rd, "volume of the hearts"+now.which(), now.spot(Spot{Of: still.Hearts, Kind: AtEnd}), rd.SI+lost["hearts"], 0, nil)
			c.out[len(c.out)-1].Outcome, c.out[len(c.out)-1].LostM3 = true, lost["hearts"]
			lost["hearts"] = 0
		}
	}
}

// regauged reports whether a fraction is gauged again at the fill, where all that was lost of it is
// missing.
func regauged(r *record.Run, word string) bool {
	stage, _ := Hearts(r)
	return word == "hearts" && stage == record.Fill
}

// gauging is what was gauged of a fraction: of one charge, or of some together.
type gauging struct {
	word     string
	from, to int             // charges
	of       int             // charges there were
	lines    []*record.Visit // each a part of it
}

// lotsOf are the lots of a stage that were gauged, each by its last line. A lot is of all the
// charges since the last one; lines that no charge lies between are its parts. What is gauged at
// the fill is of all charges.
func lotsOf(r *record.Run, stage record.StageName, charges int) map[*record.Visit]*gauging {
	out := map[*record.Visit]*gauging{}
	last := map[string]*gauging{}
	for i := range r.Visits {
		v := &r.Visits[i]
		if fractions[v.Word] == "" || stage == record.Spirit && v.Word == "foreshots" {
			continue
		}
		key, now := v.Word, gauging{word: v.Word, of: charges, to: max(v.Charge, 1)}
		switch at := r.Stages[v.Stage].Name; {
		case at == stage:
		case at == record.Fill && stage == record.Spirit && v.Word == "hearts":
			key, now.to = "fill", charges
		default:
			continue
		}
		l := last[key]
		if l == nil || l.to != now.to {
			if now.from = 1; l != nil {
				now.from = l.to + 1
			}
			l = &now
			last[key] = l
		} else if k := len(l.lines) - 1; k >= 0 {
			delete(out, l.lines[k])
		}
		if len(v.Read) > 0 {
			l.lines = append(l.lines, v)
		}
		if k := len(l.lines) - 1; k >= 0 {
			out[l.lines[k]] = l
		}
	}
	return out
}

// inLot reports whether a charge's own fraction is in a lot that was gauged.
func inLot(lots map[*record.Visit]*gauging, word string, charge int) bool {
	for _, l := range lots {
		if l.word == word && l.from <= charge && charge <= l.to {
			return true
		}
	}
	return false
}

// spot is where a lot is read.
func (l *gauging) spot(stage record.StageName) Spot {
	s := Spot{Stage: stage, Of: fractions[l.word]}
	if l.from > 1 || l.to < l.of {
		s.From, s.To = l.from, l.to
	}
	return s
}

// which are its charges in words; "" of all.
func (l *gauging) which() string {
	switch {
	case l.from <= 1 && l.to >= l.of:
		return ""
	case l.from == l.to:
		return fmt.Sprintf(", charge %d", l.to)
	}
	return fmt.Sprintf(", charges %d to %d", l.from, l.to)
}

// lot enters what was gauged of a fraction: on a line, or on several that each measured a part
// of it.
func (c *collecting) lot(stage record.StageName, l *gauging, lost float64) {
	begin := len(c.out)
	parts := 0
	for _, v := range l.lines {
		if _, ok := reading(v, record.Volume); ok {
			parts++
		}
	}
	for _, v := range l.lines {
		if _, ok := reading(v, record.Volume); ok || parts < 2 {
			c.gauged(l, v, l.spot(stage))
		}
	}
	if parts > 1 {
		var volumes, strengths []Reading
		for _, r := range c.out[begin:] {
			if r.What == record.Volume {
				volumes = append(volumes, r)
			} else {
				strengths = append(strengths, r)
			}
		}
		c.out = c.out[:begin]
		if len(volumes) < parts {
			return // how much there was in all is not known
		}
		if len(strengths) == parts {
			c.out = append(c.out, together(strengths, volumes))
		}
		c.out = append(c.out, together(volumes, nil))
	}
	for i := range c.out[begin:] {
		if r := &c.out[begin+i]; r.What == record.Volume {
			r.Said, r.LostM3 = r.Said+lost, lost
		}
	}
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

// gauged enters what was gauged of a lot on a line.
func (c *collecting) gauged(l *gauging, v *record.Visit, at Spot) {
	var abv Corrected
	var sample *record.Reading
	name := strings.ReplaceAll(l.word, "-", " ") + l.which()
	if rd, ok := reading(v, record.Strength); ok {
		sample = rd
		var known bool
		if abv, known = Strength(rd); known {
			c.put(v, rd, "strength of the "+name, at, abv.SI, abv.Unsure, nil)
			c.out[len(c.out)-1].Outcome = l.word == "hearts"
		}
	}
	if rd, ok := reading(v, record.Volume); ok {
		if m3, ok := Volume(rd, abv.SI, sample); ok {
			c.put(v, rd, "volume of the "+name, at, m3.SI, m3.Unsure, nil)
			c.out[len(c.out)-1].Outcome = l.word == "hearts" || l.word == "low-wines"
		}
	}
}

// running is the charge at hand.
type running struct {
	*collecting
	stage       record.StageName
	charge      int // from 1
	charges     int
	fire, first *record.Visit
	over        float64 // what came before the fraction that comes, and is not in its receiver
	heads       float64
}

// done is the line with the clock at which something of the charge was done.
func (r *running) done(word string) *record.Visit {
	charge := r.charge
	if r.charges == 1 {
		charge = anyCharge
	}
	return whenDone(r.r, r.stage, charge, word)
}

// spot is a place in the charge.
func (r *running) spot(s Spot) Spot {
	s.Stage = r.stage
	if r.charges > 1 {
		s.From, s.To = r.charge, r.charge
	}
	return s
}

// which is the charge in words, "" where there is but one.
func (r *running) which() string {
	if r.charges == 1 {
		return ""
	}
	return fmt.Sprintf(", charge %d", r.charge)
}

// line enters what was read as a charge ran. It says if the line ends the hearts.
func (r *running) line(v *record.Visit) bool {
	run := runs[r.stage] + r.which()
	switch {
	case v == r.first && r.fire != nil:
		r.lasted(r.fire, v, run+": minutes to the first drop", r.spot(Spot{Kind: FirstDrop}), r.stoodBetween(r.stage, r.fire.When.Time, r.first.When.Time))
	case v.Word == "off" && r.fire != nil && v.When.Known():
		r.lasted(r.fire, v, run+": minutes from the fire to the end", r.spot(Spot{Kind: HowLong}), r.stoodBetween(r.stage, r.fire.When.Time, v.When.Time))
	case v.Word == "to":
		m3, ok := held(v, record.Receiver)
		if !ok {
			r.over = math.NaN()
		} else {
			r.over += m3.SI
		}
		switch { // the tails run onto the heads, into the feints tank
		case v.Of == "hearts" && ok:
			r.heads = m3.SI
		case v.Of == "tails":
			r.over -= r.heads
			if r.charges > 1 { // and onto what other charges left there
				r.over = math.NaN()
			}
			return true
		}
	case v.Word == "":
		r.passing(run, v)
	}
	return false
}

// passing enters what was read at the spout while a run went on: by how much had come over
// where that was read, else by the clock.
func (r *running) passing(run string, v *record.Visit) {
	spot := r.spot(Spot{Kind: Within})
	var from *record.Visit
	m3, ok := held(v, record.Receiver)
	at := ""
	switch {
	case ok && !math.IsNaN(r.over):
		spot.OverM3 = r.over + m3.SI
		at = fmt.Sprintf("%.0f L over", 1000*spot.OverM3)
	case r.first != nil && v.When.Known() && v.When.Time.After(r.first.When.Time):
		spot.AfterS = v.When.Time.Sub(r.first.When.Time).Seconds()
		from = r.first
		at = fmt.Sprintf("%.0f min after the first drop", spot.AfterS/60)
	default:
		return
	}
	if rd, ok := reading(v, record.Spout); ok {
		if abv, ok := Strength(rd); ok {
			r.put(v, rd, run+": spout, "+at, spot, abv.SI, abv.Unsure, from)
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
