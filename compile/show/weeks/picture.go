package weeks

import (
	"fmt"
	"strings"
	"time"

	"newmake/compile/book/season"
	"newmake/lang/diag"
)

// picture is some weeks as one picture: a row for each vessel, one for the people, one
// for the boiler; time runs from left to right.
type picture struct {
	Title, About  string
	ID            int
	Width, Height float64
	Left          float64 // where the days begin
	Rows          []row
	Days          []tick
	Shades        []box // closed days, over all rows
	Batches       []legend
	Foot          float64
}

// row is one row of it.
type row struct {
	Name      string
	Y, H      float64
	TextY     float64
	Boxes     []box
	Line      string // a path: what is wanted
	Limit     float64
	LimitText string
	LimitY    float64 // of its text
	HasLimit  bool
}

// box is something from one time to another.
type box struct {
	X, Y, W, H float64
	Class      string
	Text       string
	TextX      float64
	TextY      float64
	Title      string
}

type tick struct {
	X     float64
	Week  bool
	Label string
}

type legend struct {
	X, TextX float64
	Class    string
	Name     string
}

// What a picture measures, in its own units; a page is about 1,000 wide.
const (
	picWidth  = 1040.0
	picLeft   = 130.0
	rowHigh   = 22.0
	stepHigh  = 44.0
	headHigh  = 30.0
	mostWeeks = 9 // in one picture: more go into the next, or a day is too narrow to see
)

// pictures draws a season, in as many pictures as it wants.
func (v say) pictures() []picture {
	n := WeeksOf(v.s)
	if n == 0 {
		return nil
	}
	parts := (n + mostWeeks - 1) / mostWeeks
	each := (n + parts - 1) / parts
	var out []picture
	for i := 0; i < parts; i++ {
		first := monday(moment(v.s.From)).AddDate(0, 0, 7*each*i)
		last := first.AddDate(0, 0, 7*each)
		out = append(out, v.picture(i+1, first, last))
	}
	return out
}

// scale brings times to a picture. Days are as wide as one another, also where the clocks
// are put forward or back: a day is looked up by its date, and the clock gives the part.
type scale struct {
	first, last time.Time // midnights, in UTC
	perDay      float64
}

func (s scale) x(at string) float64 {
	t := moment(at)
	d := moment(dateOf(at))
	part := 0.0
	if len(at) > len(time.DateOnly) {
		part = (float64(t.Hour()) + float64(t.Minute())/60) / 24
	}
	x := picLeft + (d.Sub(s.first).Hours()/24+part)*s.perDay
	return min(max(x, picLeft), picWidth)
}

func (v say) picture(id int, first, last time.Time) picture {
	days := int(last.Sub(first).Hours() / 24)
	sc := scale{first, last, (picWidth - picLeft) / float64(days)}
	p := picture{ID: id, Width: picWidth, Left: picLeft, Title: fmt.Sprintf("%s to %s", first.Format("2 January"), last.AddDate(0, 0, -1).Format("2 January 2006"))}
	p.About = "Each row is a vessel; a bar is a run in it, with its number. Below them the people who are wanted and the load of the boiler. The tables tell the same."
	class := map[string]string{}
	_, order := v.letters()
	x := picLeft
	for i, b := range order {
		class[b] = fmt.Sprintf("b%d", i%6)
		p.Batches = append(p.Batches, legend{X: x, TextX: x + 16, Class: class[b], Name: diag.Safe(b)})
		x += 30 + 7.5*float64(len([]rune(diag.Safe(b))))
	}
	clash := map[season.Member]bool{}
	for _, c := range v.s.Conflicts {
		for _, m := range c.Tasks {
			clash[m] = true
		}
	}
	clashing := map[string]bool{} // run and vessel
	for _, r := range v.s.Runs {
		for _, t := range r.Tasks {
			if clash[season.Member{Run: r.Number, Key: t.Key}] {
				clashing[r.Number+"\x00"+t.Vessel+"\x00"+t.Stage] = true
			}
		}
	}
	y := headHigh
	for _, ves := range v.s.Vessels {
		rw := row{Name: diag.Safe(ves.Name), Y: y, H: rowHigh, TextY: y + 15}
		for _, o := range ves.Out {
			rw.Boxes = withBox(rw.Boxes, sc, y, o.From, o.To, box{Class: "out", Title: strings.TrimSuffix("out of use: "+diag.Safe(o.Why), ": ")})
		}
		for _, u := range ves.Uses {
			b := box{Class: "use " + class[u.Batch], Text: diag.Safe(u.Run), Title: fmt.Sprintf("%s, run %s, %s: %s to %s", diag.Safe(u.Batch), diag.Safe(u.Run), stageWord(u.Stage, u.Cleaning), day(u.From)+clock(u.From), day(u.To)+clock(u.To))}
			if u.Cleaning {
				b = box{Class: "clean", Title: "cleaning"}
			}
			if u.Conflict || clashing[u.Run+"\x00"+ves.Name+"\x00"+u.Stage] {
				b.Class += " clash"
				b.Text = "! " + b.Text
				b.Title = "CONFLICT. " + b.Title
			}
			rw.Boxes = withBox(rw.Boxes, sc, y, u.From, u.To, b)
		}
		p.Rows = append(p.Rows, rw)
		y += rowHigh
	}
	y += 8
	most := float64(v.s.CrewThere)
	for _, l := range v.s.Crew {
		most = max(most, l.Amount)
	}
	p.Rows = append(p.Rows, loadRow("people", v.s.Crew, float64(v.s.CrewThere), most, "there", sc, y))
	y += stepHigh + 8
	if len(v.s.Boiler) > 0 {
		most = v.s.BoilerKW
		for _, l := range v.s.Boiler {
			most = max(most, l.Amount)
		}
		p.Rows = append(p.Rows, loadRow("boiler", v.s.Boiler, v.s.BoilerKW, most, "kW", sc, y))
		y += stepHigh + 8
	}
	bottom := y
	for _, d := range v.s.Days {
		at := moment(d.Date)
		if d.Closed && !at.Before(first) && at.Before(last) {
			p.Shades = append(p.Shades, box{X: sc.x(d.Date), Y: headHigh, W: sc.perDay, H: bottom - headHigh, Class: "shut", Title: closed(d.Why)})
		}
	}
	for i := 0; i < days; i++ {
		at := first.AddDate(0, 0, i)
		t := tick{X: picLeft + float64(i)*sc.perDay, Week: at.Weekday() == time.Monday}
		if t.Week {
			t.Label = at.Format("Mon 2 Jan")
		}
		p.Days = append(p.Days, t)
	}
	p.Foot = bottom + 14
	p.Height = bottom + 22
	return p
}

func clock(at string) string {
	if len(at) <= len(time.DateOnly) {
		return ""
	}
	return " " + moment(at).Format("15:04")
}

// withBox puts a box into a row, if any of it is in the picture.
func withBox(all []box, sc scale, y float64, from, to string, b box) []box {
	b.X = sc.x(from)
	b.W = sc.x(to) - b.X
	if len(to) == len(time.DateOnly) { // a whole day
		b.W = min(b.W+sc.perDay, picWidth-b.X)
	}
	if b.W <= 0 {
		return all
	}
	b.W = max(b.W, 1.5)
	b.Y, b.H = y+2, rowHigh-4
	b.TextX, b.TextY = b.X+3, y+15
	if float64(len([]rune(b.Text)))*7+4 > b.W {
		b.Text = ""
	}
	return append(all, b)
}

// loadRow is a row of what is wanted from time to time, under what there is.
func loadRow(name string, loads []season.Load, limit, most float64, unit string, sc scale, y float64) row {
	r := row{Name: name, Y: y, H: stepHigh, TextY: y + 15}
	if most <= 0 {
		most = 1
	}
	high := func(a float64) float64 { return y + stepHigh - a/most*(stepHigh-4) }
	path := fmt.Sprintf("M%.1f %.1f", picLeft, high(0))
	for i, l := range loads {
		from := sc.x(l.At)
		to := from
		if i+1 < len(loads) {
			to = sc.x(loads[i+1].At)
		}
		path += fmt.Sprintf("H%.1f V%.1f", from, high(l.Amount))
		if limit > 0 && l.Amount > limit+1e-9 && to > from {
			r.Boxes = append(r.Boxes, box{X: from, Y: high(l.Amount), W: max(to-from, 1.5), H: high(limit) - high(l.Amount), Class: "clash", Title: "CONFLICT: more is wanted than there is"})
		}
	}
	r.Line = path + fmt.Sprintf("H%.1f V%.1f Z", picWidth, high(0))
	if limit > 0 {
		r.HasLimit, r.Limit, r.LimitY, r.LimitText = true, high(limit), y+29, fmt.Sprintf("of %.0f %s", limit, unit)
	}
	return r
}
