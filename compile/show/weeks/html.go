package weeks

import (
	_ "embed"
	"fmt"
	"io"

	"newmake/compile/ask/weeks"
	"newmake/compile/book/season"
	"newmake/compile/measure"
	"newmake/compile/show/markup"
	"newmake/compile/show/text"
	"newmake/lang/diag"
)

//go:embed season.css
var css string

// view is a season in words and pictures.
type view struct {
	markup.Look
	Name, Plant, Span, Outcome, Verdict string
	Conflicts                           []string
	Asked                               []asked
	Pictures                            []picture
	Limits, Weekdays, Changes           []string
	Runs                                []runRow
	Days                                [][]string
	Tanks                               [][]string
	Safety                              string
}

type asked struct {
	What, Comes string
	Met         bool
}

type runRow struct {
	Number, Batch, Mash, Fermenter, Strip, Spirit, Filled, Casks, Flow string
}

// HTML writes a season as one page that needs nothing else: the verdict, what is asked
// for, the picture, and each run and each day.
func HTML(w io.Writer, s *season.Season) error {
	var made markup.Page
	writeSeason(&made, viewOf(s))
	_, err := io.WriteString(w, made.String())
	return err
}

func viewOf(s *season.Season) *view {
	v := of(s)
	out := &view{Look: markup.LookOf(css), Name: diag.Safe(s.Name), Plant: diag.Safe(s.Plant), Span: v.span(), Outcome: v.outcome(), Verdict: v.verdict(), Pictures: v.pictures(), Safety: text.SafetyLine}
	out.Conflicts = v.inTheWay()
	for _, d := range s.Demands {
		out.Asked = append(out.Asked, asked{v.wanted(d), v.comes(d), d.Met})
	}
	if b := v.bottleneck(); b != "" {
		out.Limits = append(out.Limits, b)
	}
	for _, r := range s.Bottlenecks {
		out.Limits = append(out.Limits, v.relief(r))
	}
	for _, d := range s.Weekdays {
		out.Weekdays = append(out.Weekdays, mashable(d))
	}
	for _, c := range s.Changes {
		out.Changes = append(out.Changes, changeSaid(c))
	}
	p := &page{say: v}
	for _, r := range s.Runs {
		at := map[string]string{}
		for _, st := range weeks.Stages(r) {
			if at[st.Name] == "" && !st.Cleaning {
				at[st.Name] = measure.DayAndClock(st.From)
			}
		}
		row := runRow{Number: diag.Safe(r.Number), Batch: diag.Safe(r.Batch), Mash: measure.DayAndClock(r.Mash), Fermenter: diag.Safe(r.Fermenter), Strip: at["strip"], Spirit: at["spirit"], Casks: fmt.Sprint(r.Casks), Flow: p.flows(r)}
		if r.Filled != "" {
			row.Filled = day(r.Filled)
		}
		if r.Done {
			row.Number += " (begun)"
		}
		out.Runs = append(out.Runs, row)
	}
	for _, d := range s.Days {
		if len(d.Runs) == 0 && !d.Closed {
			continue
		}
		hours := ""
		switch {
		case d.Closed:
			hours = closed(d.Why)
		case d.Open != "":
			hours = measure.Clock(d.Open) + " to " + measure.Clock(d.Close)
		}
		out.Days = append(out.Days, []string{day(d.Date), hours, fmt.Sprintf("%d of %d", d.Wanted, d.People), v.u.Power(d.MostKW), joinBy(p.doneOn(d.Date))})
	}
	for _, t := range s.Tanks {
		most := v.u.Litres(t.MostL)
		if t.Over {
			most = "! " + most + ", more than it holds"
		}
		out.Tanks = append(out.Tanks, []string{diag.Safe(t.Tank), diag.Safe(t.Holds), v.u.Litres(t.OfL), most})
	}
	return out
}

func joinBy(all []string) string {
	out := ""
	for i, s := range all {
		if i > 0 {
			out += "; "
		}
		out += s
	}
	return out
}

// WeekHTML writes one week to hang on the wall, counted from 1.
func WeekHTML(w io.Writer, s *season.Season, n int) error {
	var made markup.Page
	writeWeek(&made, weekOf(s, n))
	_, err := io.WriteString(w, made.String())
	return err
}

func weekOf(s *season.Season, n int) *weekView {
	return &weekView{markup.LookOf(css), diag.Safe(s.Name), diag.Safe(s.Plant), of(s).week(n), text.SafetyLine}
}

// weekView is one week in words.
type weekView struct {
	markup.Look
	Name, Plant string
	wall
	Safety string
}
