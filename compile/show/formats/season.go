package formats

import (
	"bytes"

	"newmake/compile/book/season"
	"newmake/compile/show/weeks"
	"newmake/lang/diag"
)

// What a season can be written as, what has to be bought for it, and one week of it.
var (
	OfSeason  = Ways{{"text", ".txt"}, {"html", ".html"}, {"json", ".json"}, {"csv", ".csv"}, {"ics", ".ics"}}
	OfBuyList = Ways{{"text", ".txt"}, {"csv", ".csv"}, {"json", ".json"}}
	OfWeek    = Ways{{"text", ".txt"}, {"html", ".html"}}
)

// SeasonOptions are those of Season.
type SeasonOptions struct {
	weeks.Options
	Week     int // of a week, from 1
	Sequence int // of a calendar: how many commits its sources have had
}

// Season writes a season, its buy list or one of its weeks, as "season", "buy" or "week",
// in one of their formats.
func Season(s *season.Season, as, format string, o SeasonOptions) ([]byte, error) {
	var out bytes.Buffer
	var err error
	switch as + " " + format {
	case "season json", "buy json":
		err = diag.EncodeJSON(&out, "", s)
	case "season csv":
		err = weeks.CSV(&out, s)
	case "season ics":
		err = weeks.ICS(&out, s, o.Sequence)
	case "season html":
		err = weeks.HTML(&out, s)
	case "buy csv":
		err = weeks.BuyCSV(&out, s)
	case "buy text":
		err = weeks.BuyText(&out, s, o.Options)
	case "week html":
		err = weeks.WeekHTML(&out, s, o.Week)
	case "week text":
		err = weeks.WeekText(&out, s, o.Week, o.Options)
	default:
		err = weeks.Text(&out, s, o.Options)
	}
	return out.Bytes(), err
}
