package logbook

import (
	"fmt"

	"newmake/lang/record"
	"newmake/lang/wording"
)

// believed is between what values a quantity is read, in the unit of its kind, and
// what lies there (common practice).
type believed struct {
	low, high float64
	reason    string
}

// range of what is read in a stage; a stage of "" is any.
var believable = map[record.What]map[record.StageName]believed{
	record.Gravity: {
		record.Mash: {0.995, 1.13, "worts of the trade lie between 1.03 and 1.12"}, record.Ferment: {0.975, 1.13, "a wash lies between a wort of 1.12 and a dry 0.985"},
		"": {0.97, 1.13, "a wash lies between 0.985 and 1.12"},
	},
	record.PH:          {"": {2.5, 7.5, "mashes and washes lie between 3 and 6.5"}},
	record.Temperature: {record.Mash: {0, 106, "a mash lies between ice and the boil"}, record.Ferment: {0, 45, "yeast dies at such a warmth, or sleeps"}, "": {-5, 100, "a lot of spirit lies between frost and the boil"}},
	record.Vapour:      {"": {60, 103, "vapour in a still lies between the boil of spirit and of water"}},
	record.Spout:       {"": {0, 0.965, "no still of the trade gives more"}},
	record.Strength:    {"": {0, 0.965, "no still of the trade gives more"}},
}

// strengths are those that are gauged of what goes into a still and comes of it, and of what is
// filled, as shares of the volume: wide about what is common practice.
var strengths = map[string]believed{
	"wash":      {.01, .25, "a wash lies between 4 and 20 % abv"},
	"low-wines": {.05, .75, "low wines lie between 10 and 70 % abv"},
	"heads":     {.05, 1, "heads are spirit"},
	"hearts":    {.40, 1, "hearts lie between 50 and 95 % abv"},
	"tails":     {.005, 1, "tails have alcohol in them"},
	"feints":    {.02, 1, "feints have alcohol in them"},
	"spirit":    {.20, 1, "what is filled lies between 40 and 80 % abv"},
}

// gaugedAs is what a line gauges, by the names of strengths; "" if it is none of them.
func gaugedAs(stage record.StageName, v *record.Visit) string {
	switch {
	case stage == record.Strip && v.Word == "charge":
		return "wash"
	case stage == record.Spirit && v.Word == "charge":
		return v.Of
	case stage == record.Fill && (v.Word == "gauge" || v.Word == "into"):
		return "spirit"
	}
	return v.Word
}

// mostGrown is by how much more may come out of a still than went in, as it is gauged: two
// dipsticks, warm and cold.
const mostGrown = 1.05

// gaugeDoubt says why a volume or a strength of a lot is hard to believe.
func gaugeDoubt(run *record.Run, visit int, what record.What, now record.Value) string {
	v := &run.Visits[visit]
	stage := run.Stages[v.Stage].Name
	switch what {
	case record.Strength:
		if b, ok := strengths[gaugedAs(stage, v)]; ok && now.SI < b.low || ok && now.SI > b.high {
			return b.reason + meant(now, b)
		}
	case record.Volume:
		switch m3, unit := charged(run, visit); {
		case now.SI == 0 && stage != record.InCask:
			return "there is something to gauge; `none` says that it was not read"
		case v.Word != "charge" && m3 > 0 && now.SI > mostGrown*m3:
			return fmt.Sprintf("no more comes out of a still than goes in, and %s were charged", wording.In(m3, unit, now.Kind))
		}
	}
	return ""
}

// charged is what went into the still before a line, and in which unit it was last gauged; nothing
// where a part of it was not gauged.
func charged(run *record.Run, visit int) (m3 float64, unit string) {
	stage := run.Visits[visit].Stage
	if name := run.Stages[stage].Name; name != record.Strip && name != record.Spirit {
		return 0, ""
	}
	for i := range run.Visits[:visit] {
		v := &run.Visits[i]
		if v.Stage != stage || v.Word != "charge" {
			continue
		}
		before := m3
		for j := range v.Read {
			if read, ok := v.Read[j].Holds(); ok && v.Read[j].What == record.Volume && read.SI > 0 {
				m3, unit = before+read.SI, read.Unit
			}
		}
		if m3 == before {
			return 0, ""
		}
	}
	return m3, unit
}
