package formats

import (
	"io"

	"newmake/compile/book/season"
	"newmake/compile/show/weeks"
	"newmake/lang/diag"
)

// SeasonOptions are those of Season.
type SeasonOptions struct {
	weeks.Options
	Week     int // of a week, from 1
	Sequence int // of a calendar: how many commits its sources have had
}

var (
	seasonForms = []form[*season.Season, SeasonOptions]{
		{"text", ".txt", func(w io.Writer, s *season.Season, o SeasonOptions) error { return weeks.Text(w, s, o.Options) }},
		{"html", ".html", func(w io.Writer, s *season.Season, _ SeasonOptions) error { return weeks.HTML(w, s) }},
		{"json", ".json", seasonJSON},
		{"csv", ".csv", func(w io.Writer, s *season.Season, _ SeasonOptions) error { return weeks.CSV(w, s) }},
		{"ics", ".ics", func(w io.Writer, s *season.Season, o SeasonOptions) error { return weeks.ICS(w, s, o.Sequence) }},
	}
	buyForms = []form[*season.Season, SeasonOptions]{
		{"text", ".txt", func(w io.Writer, s *season.Season, o SeasonOptions) error { return weeks.BuyText(w, s, o.Options) }},
		{"csv", ".csv", func(w io.Writer, s *season.Season, _ SeasonOptions) error { return weeks.BuyCSV(w, s) }},
		{"json", ".json", seasonJSON},
	}
	weekForms = []form[*season.Season, SeasonOptions]{
		{"text", ".txt", func(w io.Writer, s *season.Season, o SeasonOptions) error {
			return weeks.WeekText(w, s, o.Week, o.Options)
		}},
		{"html", ".html", func(w io.Writer, s *season.Season, o SeasonOptions) error { return weeks.WeekHTML(w, s, o.Week) }},
	}
)

// The formats of a season, of what has to be bought for it, and of one week of it.
var (
	OfSeason  = ways(seasonForms)
	OfBuyList = ways(buyForms)
	OfWeek    = ways(weekForms)
)

func seasonJSON(w io.Writer, s *season.Season, _ SeasonOptions) error {
	return diag.EncodeJSON(w, "", s)
}

// Season writes a season in a format of OfSeason.
func Season(s *season.Season, format string, o SeasonOptions) ([]byte, error) {
	return written(seasonForms, format, s, o)
}

// BuyList writes what has to be bought for a season in a format of OfBuyList.
func BuyList(s *season.Season, format string, o SeasonOptions) ([]byte, error) {
	return written(buyForms, format, s, o)
}

// Week writes the week of a season that the options name in a format of OfWeek.
func Week(s *season.Season, format string, o SeasonOptions) ([]byte, error) {
	return written(weekForms, format, s, o)
}
