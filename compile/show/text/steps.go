package text

import (
	"strings"

	"newmake/compile/measure"
	"newmake/compile/plan"
	"newmake/compile/show/columns"
	"newmake/lang/diag"
)

// The columns of the run sheet.
const (
	doCol     = 27 // what to do
	expectCol = 46 // what the instrument should say
	blankCol  = 72 // room to write what it says
)

// longCols is room for how long a step takes, and what parts it from the clock.
const longCols = len(" 12 h 30 min")

const blank = "________"

// offWords is what to do about a reading that is off.
func offWords(p *plan.Plan) string {
	if p.Bands == nil {
		return "how far off it may be, plan --full says, and the sheet to print. "
	}
	return "when it is further off than +/-, find out why before going on. "
}

func (t *text) sheet(steps []plan.Step) {
	t.Heading("RUN SHEET")
	t.Para(2, 2, "stay: somebody is there all along (stay 2: two people). start: somebody starts it and may go. "+
		"alone: it needs nobody. What the instrument should say stands beside the line for what it says; "+
		offWords(t.p)+
		"Gravity is read at "+t.Temp(20)+". Wash and spirit, their volume and their strength, are what they would be at "+gaugeTemp(t.Units)+".")
	for i, s := range steps {
		newDay := i == 0 || !measure.SameDay(steps[i-1].Start, s.Start)
		if s.WaitMin > 0 {
			t.Gap()
			t.Para(2, 4, "~ stands "+measure.Duration(s.WaitMin)+": "+diag.Safe(s.WaitWhy))
		}
		if newDay {
			t.Heading(measure.LongDate(s.Start))
		}
		if newDay || steps[i-1].Stage != s.Stage {
			t.Gap()
			t.Para(2, 4, t.stageWords(s.Stage))
		}
		t.step(s)
	}
}

func (t *text) stageWords(stage string) string {
	words := strings.ToUpper(stage)
	if v := t.p.VesselOf(stage); v.Name != "" {
		words += ": " + diag.Safe(v.Name)
	}
	return words
}

func (t *text) step(s plan.Step) {
	who := s.Attend
	if s.People > 1 {
		who += " " + measure.Number(float64(s.People), 0)
	}
	long := columns.Right(measure.Duration(s.DurationMin), longCols)
	if s.DurationMin == 0 {
		long = columns.Right("at once", longCols)
	}
	head, do := "  "+measure.Clock(s.Start)+long+" "+who, t.Phrase(safePhrase(s.Do))
	if dangers := t.dangers(s); dangers != "" { // before anybody begins
		t.Item(head, doCol, dangers)
		t.Para(doCol, doCol, do)
	} else {
		t.Item(head, doCol, do)
	}
	for _, r := range s.Read {
		t.reading(r)
	}
	if s.OutOfShift > 0 {
		t.Para(doCol, doCol+2, "! "+measure.Duration(s.OutOfShift)+" of this lies outside the shift")
	}
}

// dangers are those of a step, by their titles.
func (t *text) dangers(s plan.Step) string {
	var all []string
	for _, key := range s.Cautions {
		if c, ok := caution(t.p, key); ok {
			all = append(all, c.Title)
		}
	}
	if len(all) == 0 {
		return ""
	}
	return t.Words("! " + strings.Join(all, "; "))
}

func (t *text) reading(r plan.Reading) {
	what := diag.Safe(r.What)
	if r.At != "" {
		what = measure.Clock(r.At) + " " + what
	}
	should := strings.TrimPrefix(read(t.Units, r.Should), r.What+" ") // pH is said once
	if r.Tolerance.Unit != "" {
		should += off(t.Units, r)
	}
	line := strings.Repeat(" ", doCol)
	if columns.Width(what) >= expectCol-doCol {
		t.Para(doCol, doCol+2, what)
		line = columns.Fill(line, expectCol)
	} else {
		line = columns.Fill(line+what, expectCol)
	}
	t.Line(columns.Cut(columns.Fill(line+should, blankCol), blankCol) + blank)
}

// off is what a reading may be off by: so much either way, or from a low to a high where
// it may be much farther off on one side.
func off(u measure.Units, r plan.Reading) string {
	if !r.Lopsided() {
		return " " + u.Tolerance(r.Tolerance)
	}
	bare := func(q plan.Quantity) string { // the unit stands before
		n, _, _ := strings.Cut(strings.TrimPrefix(read(u, q), r.What+" "), " ")
		return n
	}
	return ", " + bare(*r.Low) + " to " + bare(*r.High)
}

// read is a quantity as its instrument shows it: a spirit's strength in proof
// alone where proof is spoken.
func read(u measure.Units, q plan.Quantity) string {
	if q.Unit == plan.AbvPct && q.Proof != 0 && u == measure.US {
		return measure.Number(q.Proof, 1) + " proof"
	}
	return u.Quantity(q)
}

func caution(p *plan.Plan, key string) (plan.Caution, bool) {
	for _, c := range p.Cautions {
		if c.Key == key {
			return c, true
		}
	}
	return plan.Caution{}, false
}

func safePhrase(p plan.Phrase) plan.Phrase {
	return plan.Phrase{Text: diag.Safe(p.Text), Values: p.Values}
}

// gaugeTemp is the temperature at which the reader's gauge counts spirit.
func gaugeTemp(u measure.Units) string {
	if u == measure.US {
		return "60 F"
	}
	return "20 C"
}
