package identity

import (
	"fmt"
	"math"
	"slices"
	"strings"
	"time"

	"newmake/compile/book/trace"
	"newmake/compile/law"
	"newmake/compile/made"
	"newmake/compile/matter/fluid"
	"newmake/compile/plan"
	"newmake/lang/diag"
	"newmake/lang/quantity"
	"newmake/lang/recipe"
	"newmake/lang/record"
)

// Age is how long spirit was in wood, by the calendar.
type Age struct {
	Years  int      `json:"years"`
	Months int      `json:"months"`
	Days   int      `json:"days"`
	Words  string   `json:"words"`
	Run    string   `json:"run"`
	Casks  []string `json:"casks"`

	restS float64 // as a condition counts it: twelve months are a year, and no month has 31 days more
}

// spirit gathers what the records tell of a spirit.
func (j *judging) spirit(s trace.Spirit) spirit {
	x := spirit{Spirit: s, age: ageOf(s)}
	if s.Run == nil {
		return x
	}
	b := j.Batch(s.Run.Batch)
	if b == nil || b.Plant == nil {
		return x
	}
	x.batch = made.Recipe(b, s.Run)
	x.off = offStill(s.Run)
	x.days, x.loose = distilled(s.Run)
	none := recipe.Cask{BottleM3: b.Cask.BottleM3}
	for _, t := range s.Stays {
		x.stays = append(x.stays, j.stay(s.Run, t, none, x.age.restS))
	}
	if len(x.stays) == 0 {
		x.stays = []recipe.Cask{none}
	}
	return x
}

// stay is a cask in which a spirit was, as a recipe would have it.
func (j *judging) stay(r *record.Run, t trace.Stay, c recipe.Cask, restS float64) recipe.Cask {
	c.RestS = restS
	if len(t.Life.Fills) > 0 {
		if b := j.Batch(t.Life.Fills[0].Run.Batch); b != nil {
			c.Kind, c.SizeM3, c.New = b.Cask.Kind, b.Cask.SizeM3, b.Cask.New
		}
	}
	if k := t.Life.Cask; k != nil {
		if k.Wood != "" {
			c.Kind, c.New = j.Wood(k.Wood), !k.Used
		}
		if k.SizeM3 > 0 {
			c.SizeM3 = k.SizeM3
		}
		c.New = c.New && k.Before == ""
	}
	c.New = c.New && j.Texts.LivesOf(t.Life.Serial)[0] == t.Life // filled again, it is used
	c.Entry = recipe.Strength{}
	for _, f := range t.Life.Fills {
		if f.Run == r && f.On() == t.From {
			c.Entry = entry(r, f.Visit)
		}
	}
	for i := range t.Life.Events {
		if v := &t.Life.Events[i]; v.Word == "topped" && v.When.Date == t.From && c.Entry.Value == 0 {
			c.Entry = read(v)
		}
	}
	return c
}

// entry is the strength at which a line of a fill filled a cask: its own, or the last that was
// read before it; zero where a reduction stands between, or nothing was read.
func entry(r *record.Run, into *record.Visit) recipe.Strength {
	var last recipe.Strength
	for i := range r.Visits {
		v := &r.Visits[i]
		if r.Stages[v.Stage].Name != record.Fill {
			continue
		}
		if v.Word == "reduce" {
			last = recipe.Strength{}
		}
		if s := read(v); s.Value > 0 {
			last = s
		}
		if v == into {
			break
		}
	}
	return last
}

// read is the strength that was read on a line, as the gauger counts it: true proof, to a
// tenth. It is zero where none was.
func read(v *record.Visit) recipe.Strength {
	for i := range v.Read {
		if v.Read[i].What != record.Strength {
			continue
		}
		if c, ok := made.Strength(&v.Read[i]); ok && c.SI > 0 {
			return proofOf(c.SI)
		}
	}
	return recipe.Strength{}
}

func proofOf(abv float64) recipe.Strength {
	w, err := fluid.MassFracFromABV(abv)
	if err != nil {
		return recipe.Strength{}
	}
	return recipe.Strength{Value: math.Round(10*fluid.ProofFromMassFrac(w)) / 2000, Basis: recipe.Proof}
}

// offStill is the strength at which the hearts of a run came off the still, zero where nobody
// gauged them: of several receivers, that of all together.
func offStill(r *record.Run) plan.Lot {
	_, lines := made.Hearts(r)
	var pure, all float64
	for _, v := range lines {
		var strength *record.Reading
		abv, m3 := 0.0, 0.0
		for i := range v.Read {
			switch rd := &v.Read[i]; rd.What {
			case record.Strength:
				if c, ok := made.Strength(rd); ok {
					strength, abv = rd, c.SI
				}
			}
		}
		for i := range v.Read {
			if rd := &v.Read[i]; rd.What == record.Volume || rd.What == record.Receiver {
				if c, ok := made.Volume(rd, abv, strength); ok {
					m3 = c.SI
				}
			}
		}
		if abv == 0 {
			return plan.Lot{}
		}
		if m3 == 0 && len(lines) == 1 {
			m3 = 1
		}
		pure, all = pure+abv*m3, all+m3
	}
	if all == 0 {
		return plan.Lot{}
	}
	s := proofOf(pure / all)
	return plan.Lot{AbvPct: math.Round(1e4*pure/all) / 100, Proof: 200 * s.Value}
}

// distilled are the days on which a run was in the stills. loose says that they only lie
// between the day of its mash and that of its fill: no still is written of.
func distilled(r *record.Run) (d law.Days, loose bool) {
	see := func(on record.Date) {
		t := time.Date(on.Year, on.Month, on.Day, 12, 0, 0, 0, time.UTC)
		if d.From.IsZero() || t.Before(d.From) {
			d.From = t
		}
		if t.After(d.To) {
			d.To = t
		}
	}
	days := func(of func(record.StageName) bool) {
		for i := range r.Visits {
			if v := &r.Visits[i]; of(r.Stages[v.Stage].Name) && !v.When.Date.IsZero() {
				see(v.When.Date)
			}
		}
	}
	days(func(s record.StageName) bool { return s == record.Strip || s == record.Spirit })
	if !d.From.IsZero() {
		return d, false
	}
	see(r.Date)
	days(func(s record.StageName) bool { return s == record.Fill })
	return d, true
}

// ageOf is the age of a spirit when it left wood for good.
func ageOf(s trace.Spirit) Age {
	a := Age{Casks: []string{}}
	if s.Run != nil {
		a.Run = s.Run.Number
	}
	for _, t := range s.Stays {
		a.Casks = append(a.Casks, t.Life.Serial)
	}
	from, to := s.Since(), s.Until()
	if from.IsZero() || to.IsZero() || to.Compare(from) < 0 {
		a.Words = "not in wood"
		return a
	}
	months := 12*(to.Year-from.Year) + int(to.Month) - int(from.Month)
	if from.Months(months).Compare(to) > 0 {
		months--
	}
	a.Years, a.Months, a.Days = months/12, months%12, from.Months(months).DaysTo(to)
	a.restS = (float64(months) + float64(a.Days)/32) * quantity.YearS / 12
	a.Words = a.words()
	return a
}

func (a Age) words() string {
	var out []string
	for _, p := range []struct {
		n    int
		unit string
	}{{a.Years, "year"}, {a.Months, "month"}, {a.Days, "day"}} {
		switch {
		case p.n == 1:
			out = append(out, "1 "+p.unit)
		case p.n > 1:
			out = append(out, fmt.Sprintf("%d %ss", p.n, p.unit))
		}
	}
	if len(out) == 0 {
		return "0 days"
	}
	return strings.Join(out, " ")
}

// youngest is the age of the youngest, nil where nothing tells of one of them.
func youngest(in []spirit) *Age {
	var y *Age
	for i := range in {
		if in[i].Run == nil {
			return nil
		}
		if y == nil || in[i].age.restS < y.restS {
			y = &in[i].age
		}
	}
	return y
}

// bottleOf is the weakest strength on the labels of a bottling, or the last that was read of a
// vat.
func bottleOf(b trace.Blend) bottle {
	if b.Vat != nil {
		o := bottle{vat: true}
		for i := range b.Vat.Visits {
			v := &b.Vat.Visits[i]
			if s := read(v); v.Word != "from" && s.Value > 0 {
				o.at = s
			} else if v.Word == "reduce" {
				o.at = recipe.Strength{}
			}
		}
		return o
	}
	var o bottle
	for i := range b.Bottling.Bottles {
		w := &b.Bottling.Bottles[i]
		if w.Word != "bottles" || w.Label == nil {
			continue
		}
		at := recipe.Strength{Value: w.Label.SI}
		if w.Label.Unit == "proof" {
			at.Basis = recipe.Proof
		}
		if o.at.Value == 0 || at.Weaker(o.at) {
			o.at = at
		}
	}
	return o
}

func (x spirit) part(shares bool) Part {
	p := Part{Casks: slices.Clone(x.age.Casks), Age: x.age.Words}
	if x.Run == nil {
		p.Age = ""
		return p
	}
	p.Run, p.Batch = x.Run.Number, x.Run.Batch
	if x.batch != nil && x.batch.Standard != nil {
		p.Standard = x.batch.Standard.Title
	}
	if shares {
		p.SharePct = math.Round(1e4*x.Share) / 100
	}
	return p
}

// name is a spirit as a reader finds it.
func (x spirit) name() string {
	if len(x.age.Casks) == 0 {
		return "run " + x.Run.Number
	}
	return "run " + x.Run.Number + ", cask " + strings.Join(x.age.Casks, ", ")
}

func place(at diag.Span) (file string, line int) {
	if at.IsZero() {
		return "", 0
	}
	line, _ = at.Position()
	return at.Src.Name, line
}
