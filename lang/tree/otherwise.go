package tree

import (
	"regexp"
	"strconv"
	"strings"
	"sync"

	"newmake/lang"
	"newmake/lang/diag"
	"newmake/lang/quantity"
	"newmake/lang/spelling"
	"newmake/lang/wording"
)

// otherwise is a way of saying something that the trade has and the language has
// not, with the line that says it.
type otherwise struct {
	in    string                // the block in which it is said; "" for any
	said  func() *regexp.Regexp // in capitals or not; made when a text is first tried
	why   string                // what is wrong with it, one sentence
	write string                // what says it; $1 and so on are from said
	sure  bool                  // it says the same, so that it is offered as a fix

	reckon func(said []string) string // what stands for = in write; "" if it does not say that
	reader quantity.System            // who is told so; Both is everybody
}

const (
	number      = `[0-9][0-9.,]*`
	temperature = number + ` ?(?:°|deg |degrees )?[FC]`
	volume      = number + ` ?(?:gal|gallons?|qt|quarts?|L|litres?|liters?|hL)`
	strength    = number + ` ?(?:proof|% ?(?:abv|vol))`
	duration    = number + ` ?(?:min|minutes?|h|hours?|hrs?|days?)`
	aBag        = `^([a-z-]+) (` + number + `) ([A-Z]{3}) (?:per|a|for a|each) (?:bag|sack)$`
)

func says(in, pattern, why, write string, sure bool) otherwise {
	return otherwise{in, sync.OnceValue(func() *regexp.Regexp { return regexp.MustCompile("(?i)" + pattern) }), why, write, sure, nil, quantity.Both}
}

// to says it to those alone who count in a system.
func (o otherwise) to(reader quantity.System) otherwise {
	o.reader = reader
	return o
}

// with adds how a number of the line is worked out from what was written.
func (o otherwise) with(reckon func(said []string) string) otherwise {
	o.reckon = reckon
	return o
}

// bags is what so many bags of some size come to.
func bags(each string) func([]string) string {
	return func(said []string) string {
		n, _ := strconv.ParseFloat(said[1], 64)
		size, _ := strconv.ParseFloat(each, 64)
		return strconv.FormatFloat(n*size, 'g', 6, 64)
	}
}

// quotient divides one part of what is said by another.
func quotient(of, by int) func([]string) string {
	return func(said []string) string {
		a, _ := strconv.ParseFloat(plain(said[of]), 64)
		b, _ := strconv.ParseFloat(plain(said[by]), 64)
		if b == 0 {
			return "0"
		}
		return strconv.FormatFloat(a/b, 'g', 6, 64)
	}
}

func pad2(digits string) string { return ("0" + digits)[len(digits)-1:] }

func plain(number string) string {
	return strings.TrimSuffix(strings.ReplaceAll(number, ",", ""), ".")
}

// halfGallon is what foreshots of half a gallon are in the unit of the heads.
var halfGallon = map[string]float64{"gal": 0.5, "qt": 2, "quart": 2, "quarts": 2, "pt": 4, "L": 2, "mL": 2000}

// afterHeads is where the hearts begin, after half a gallon of foreshots and so much
// of heads.
func afterHeads(said []string) string {
	heads, _ := strconv.ParseFloat(plain(said[1]), 64)
	unit := strings.TrimRight(said[2], "s")
	if unit == "quart" {
		unit = "qt"
	}
	return strconv.FormatFloat(heads+halfGallon[said[2]], 'g', 6, 64) + " " + unit
}

// othersSay is looked through from the top when a line does not have its shape,
// or begins with a word that its block does not know. A line is a row: whoever
// finds another way in which people say a thing adds it here.
var othersSay = []otherwise{
	says("mash", `^(heat|cool) to (`+temperature+`),? (?:for|(?:(?:and|then) )?(?:rest|hold)(?: for)?) (`+duration+`)$`, "`$1` reaches a temperature, and the time there is a rest", "$1 to $2\nrest $3", true),
	says("mash", `^(heat|cool) to (`+temperature+`) over (`+duration+`)$`, "how long it takes comes after `in`", "$1 to $2 in $3", true),
	says("mash", `^(?:heat|bring|raise)(?: it| up)? to (?:a |the )?boil(?:ing)?\b`, "a boil has a line of its own, with how long it boils", "boil 30 min", false),
	says("mash", `^(?:raise|ramp|warm|bring)(?: it| up)? to (`+temperature+`)$`, "it is called `heat` here", "heat to $1", true),
	says("mash", `^chill (?:it )?(?:down )?to (`+temperature+`)$`, "it is called `cool` here", "cool to $1", true),
	says("mash", `^rest (`+duration+`) at (`+temperature+`)$`, "a rest keeps the temperature that it finds", "heat to $2\nrest $1", false),
	says("mash", `^(?:cook|simmer)(?: for)? (`+duration+`)$`, "a cook is brought to a temperature and rests there", "heat to 190 F\nrest $1", false),
	says("mash", `^mash[ -]?out(?: at)? (`+temperature+`)$`, "a mash is brought to a temperature and rests there", "heat to $1\nrest 10 min", false),
	says("mash", `^(?:lauter|run ?off|drain off)\b`, "what runs off the grain is a line `drain`", "drain", false),
	says("mash", `^vorlauf (`+duration+`)$`, "it is called `recirculate` here", "recirculate $1", true),
	says("mash", `^hold (?:at )?(`+temperature+`) for (`+duration+`)$`, "a mash is brought to a temperature and rests there", "heat to $1\nrest $2", false),
	says("mash", `^add (`+volume+`) (?:of )?water(?: at (`+temperature+`))?$`, "`add` is for grain", "water $1 at $2", true),
	says("mash", `^(?:strike|mash-in)(?: with)? (`+volume+`)(?: (?:of )?water)? at (`+temperature+`)$`, "strike water is the first `water`", "water $1 at $2", true),
	says("mash", `^sparge with (`+volume+`)(?: (?:of )?water)? at (`+temperature+`)$`, "it is `sparge`, how much, and how warm", "sparge $1 at $2", true),
	says("mash", `^(water|sparge) at (`+temperature+`),? (`+volume+`)$`, "how much comes before how warm", "$1 $3 at $2", true),
	says("mash", `^strike\b`, "strike water is the first `water`", "water 270 gal at 163 F", false),
	says("mash", `^wait (`+duration+`)$`, "it is called `rest` here", "rest $1", true),
	says("mash", `^(?:stir|mix)\b`, "every `add` is stirred in; what takes time is a rest", "rest 5 min", false),
	says("mash", `^(?:sour-mash|sourmash|stillage) (`+number+` ?%)$`, "it is called `backset` here", "backset $1", true),
	says("mash", `^(?:rest|hold) over ?night$`, "a rest has a length, and nobody knows when your morning begins", "rest 12 h", false),
	says("batch", `^bill ([0-9]+) (?:sacks?|bags?)\b`, "what a bag holds is not known here: of 25 kg it is", "bill = kg", false).to(quantity.SI).with(bags("25")),
	says("batch", `^bill ([0-9]+) (?:sacks?|bags?)\b`, "what a bag holds is not known here: of 50 lb it is", "bill = lb", false).with(bags("50")),
	says("batch", `^(?:stripping|wash)(?: run)?\b(.*)$`, "the first run is called `strip`", "strip$1", true),
	says("batch", `^spirit run\b(.*)$`, "the second run is called `spirit`", "spirit$1", true),
	says("batch", `^expect og (.*)$`, "what a plan has to keep is a `promise`", "promise original-gravity $1", true),
	says("batch", `^expect fg (.*)$`, "what a plan has to keep is a `promise`", "promise final-gravity $1", true),
	says("batch", `^expect (.*)$`, "what a plan has to keep is a `promise`", "promise $1", true),
	says("batch", `^(?:grains?|grist|(?:grain|mash)[ -]?bill)\b(.*)$`, "it is called `bill` here", "bill$1", true),
	says("batch", `^fermentation\b(.*)$`, "it is called `ferment` here", "ferment$1", true),
	says("batch", `^start ([0-9]{4}-[0-9]{2}-[0-9]{2}),? (?:at )?(`+anyClock+`)$`, "a time is by the 24-hour clock", "start =", true).with(started),
	says("batch", `^start `+anyDay+`,? ([0-9]{4}-[0-9]{2}-[0-9]{2})(?:,? (?:at )?(`+anyClock+`))?$`, "a date says which day of the week it is", "start =", true).with(started),
	says("batch", `^start (?:`+anyDay+`,? )?(`+anyMonth+`) ([0-9]{1,2})(?:st|nd|rd|th)?,? ([0-9]{4})(?:,? (?:at )?(`+anyClock+`))?$`, "a date is written year-month-day", "start =", true).with(dated(3, 1, 2, 4)),
	says("batch", `^start (?:`+anyDay+`,? )?([0-9]{1,2})\.? (`+anyMonth+`),? ([0-9]{4})(?:,? (?:at )?(`+anyClock+`))?$`, "a date is written year-month-day", "start =", true).with(dated(3, 2, 1, 4)),
	says("batch", `^start ([0-9]{1,2})[/.]([0-9]{1,2})[/.]([0-9]{4})\b(.*)$`, "a date is written year-month-day", "start $3-=$4", false).with(func(said []string) string {
		return pad2(said[1]) + "-" + pad2(said[2])
	}),
	says("ferment", `^(?:for )?until dry$`, "a ferment has a length; the plan says when it is dry", "for 96 h", false),
	says("spirit", `^heads (`+number+`) ?(?-i:(qt|quarts?|gal|pt|L|mL))$`, "heads have no line of their own: the hearts begin after foreshots and heads together, and with 0.5 gal of foreshots that is", "hearts from = to 62 % abv", false).with(afterHeads),
	says("spirit", `^heads\b`, "heads have no line of their own: the hearts begin after foreshots and heads together", "hearts from 4 gal to 62 % abv", false),
	says("spirit", `^fore[ -]shots (`+volume+`)$`, "it is one word", "foreshots $1", true),
	says("spirit", `^hearts (?:down )?to (`+strength+`)$`, "where the hearts begin stands before where they end", "hearts from 4 gal to $1", false),
	says("spirit", `^hearts (?:down )?to (`+number+`)(?: ?%)?$`, "where the hearts begin stands before where they end, and a strength has its unit", "hearts from 4 gal to $1 % abv", false),
	says("spirit", `^tails (?:down )?to (`+strength+`)$`, "tails have no line of their own: they end where the run stops", "stop at $1", false),
	says("spirit", `^tails from (`+duration+`)$`, "tails have no line of their own: they begin where the hearts end", "hearts from 20 min to $1", false),
	says("spirit", `^tails\b`, "tails have no line of their own: they end where the run stops", "stop at 4 % abv", false),
	says("cask", `^(?:age|aged|ageing|aging|mature)(?: for)? (`+number+` ?(?:years?|yrs?|months?))$`, "it is called `rest` here", "rest $1", true),
	says("cask", `^fill [0-9]+ (`+volume+`)\b`, "one line fills as many casks as the hearts do", "fill $1 new charred-oak char 3", false),
	says("cask", `^fill `+number+` ?x `, "one line fills as many casks as the hearts do", "fill 53 gal new charred-oak char 3", false),
	says("cask", `^fill (`+volume+`) new american oak\b(.*)$`, "a wood is named by how it was fired", "fill $1 new charred-oak$2", false),
	says("cask", `^fill (`+volume+`) (ex-[a-z-]+)$`, "is the cask new or used? The law and the soak go by it", "fill $1 used $2", true),
	says("cask", `^fill (`+volume+`) ([a-z-]*(?:oak|bourbon|wine)[a-z-]*(?: char [0-9])?)$`, "is the cask new or used? The law and the soak go by it", "fill $1 new $2", false),
	says("cask", `^(?:proof|entry proof|(?:enter|barrel|fill) (?:at|proof)) (`+number+`)(?: proof)?$`, "the strength that goes into the wood is `entry`", "entry $1 proof", true),
	says("cask", `^fill (`+volume+`) (new|used) charred (?:(?:american|white) )+oak\b(.*)$`, "a wood is named by how it was fired", "fill $1 $2 charred-oak$3", true),
	says("cask", `^bottle(?: at)? (`+strength+`)$`, "a bottle has its size first", "bottle 750 mL at $1", false),
	says("cask", `^barrel\b`, "a cask is filled, and its char follows the wood", "fill 53 gal new charred-oak char 3", false),
	says("costs", aBag, "what a bag holds is not known here: divide by it, and of 25 kg it is", "$1 = $3/kg", false).to(quantity.SI).with(func(said []string) string {
		return quotient(0, 1)([]string{said[2], "25"})
	}),
	says("costs", aBag, "what a bag holds is not known here: divide by it, and of 50 lb it is", "$1 = $3/lb", false).with(func(said []string) string {
		return quotient(0, 1)([]string{said[2], "50"})
	}),
	says("costs", `^([a-z-]+) (`+number+`) (?:\$ ?)?(?:per |a |an |/ ?|\$/)([a-z]+)$`, "a price has its currency, three capitals", "$1 $2 USD/$3", false),
	says("costs", `^([a-z-]+) (`+number+` [A-Z]{3}) (?:per|a|an|each) ([a-z]+)$`, "a price has a slash before what it buys", "$1 $2/$3", true),
	says("costs", `^([a-z-]+) (`+number+`) ([A-Z]{3}) (?:for|per) (?:1 )?(lb|kg|ton|tonne|bushel)$`, "a price has a slash before what it buys", "$1 $2 $3/$4", true),
	says("plant", `^zone ([a-z][a-z ]*)$`, "a zone is named by a city, in quotes: letters do not say when the clocks change", `zone "$1"`, true),
	says("plant", `^shift (`+anyClock+`)(?: to | until | till | ?- ?)(`+anyClock+`)(?:,? (?:on )?(every day|daily|all week|weekdays|`+anyDays+`(?:(?:, and|,| and| &) ?`+anyDays+`)*))?$`, "a shift is two times by the 24-hour clock, and days in three letters, from one `to` another", "shift =", true).with(shift),
	says("plant", `^mash[ -]?tuns?\b(.*)$`, "it is called `cooker` here", "cooker$1", true),
	says("plant", `^crew ([0-9]+) (?:people|persons?|men|women|hands|workers|of us)$`, "a crew is a bare number", "crew $1", true),
	says("", `^(.*\d) ?% ?(?-i:ABV|Abv)\b(.*)$`, "a strength is in small letters", "$1 % abv$2", true),
	says("mash", `^(heat|cool) (?:up|down) to (.*)$`, "`$1` says which way it goes", "$1 to $2", true),
	says("mash", `^add ([a-z-]+) and ([a-z-]+)$`, "a list is parted by commas, not by `and`", "add $1, $2", true),
	says("bill", `^(`+number+` ?(?:lbs?|kg|%|bushels?)) (?:of )?([a-z-]+)$`, "the grain comes first", "$2 $1", true),
	says("mash", `^dose (`+number+` ?(?:oz|lbs?|g|kg)) (?:of )?([a-z-]+)$`, "the enzyme comes first", "dose $2 $1", true),
	says("ferment", `^dose (`+number+` ?(?:oz|lbs?|g|kg)) (?:of )?([a-z-]+)$`, "the enzyme comes first", "dose $2 $1", true),
	says("ferment", `^pitch (`+number+` ?(?:oz|lbs?|g|kg|g/L)) (?:of )?([a-z-]+)$`, "the yeast comes first", "pitch $2 $1", true),
	says("mash", `^(`+volume+`) (?:of )?water at (`+temperature+`)$`, "the word comes first", "water $1 at $2", true),
	says("bill", `^(?:corn meal|(?:cracked|ground|milled|yellow|white|blue|red|dent|field)(?: (?:dent|field))? corn)(.*)$`, "the library has it as `corn`", "corn$1", true),
	says("bill", `^(?:(?:soft|hard|red|white|winter|spring) )+wheat(.*)$`, "the library has it as `wheat`", "wheat$1", true),
	says("bill", `^(?:unmalted|raw) (rye|wheat|barley|oats)(.*)$`, "what is not malted has no more than its name", "$1$2", true),
	says("bill", `^(two|six) row malt(.*)$`, "a name of several words has hyphens", "$1-row-malt$2", true),
	says("bill", `^(?:malted barley|barley malt|pale malt)(.*)$`, "a malt has its own name: of barley `two-row-malt`, `six-row-malt` or `distillers-malt`", "two-row-malt$1", false),
	says("bill", `^malted (rye|wheat)(.*)$`, "a malt has its own name", "$1-malt$2", true),
	says("bill", `^malted oats?(.*)$`, "a malt has its own name", "oat-malt$1", true),
	says("bill", `^(?:flaked|rolled) (oats|corn|barley|rye|wheat)(.*)$`, "the library has grain as it is harvested: of flakes, say in a `grain` of your own what their sheet says", "$1$2", false),
	says("costs", `^([a-z-]+) (`+number+`) ([A-Z]{3})(?: (?:for|per) |/)(?:a |one )?(`+number+`)[ -]?(lb|kg)(?: (?:bag|sack))?$`, "a price is for one unit: divide by the $4 $5", "$1 = $3/$5", true).with(quotient(2, 4)),
	says("costs", `^([a-z-]+) (`+number+`) ?(lb|kg) (?:for|at) (`+number+`) ?([A-Z]{3})$`, "a price is for one unit: divide by the $2 $3", "$1 = $5/$3", true).with(quotient(4, 2)),
	says("", `^(.* [0-9]+) ?h(?:ours?|rs?)? ?([0-5]?[0-9])$`, "after the hours come minutes, with their unit", "$1 h $2 min", true),
	says("", `^(.*\d) ?deg(?:rees)? ?([FC])\b(.*)$`, "a temperature is in `F` or `C`", "$1 $2$3", true),
}

// indentOf is what stands before a place on its line, and whether that is blank.
func indentOf(at diag.Span) (indent string, blank bool) {
	before := string(at.Src.Text[:at.Start])
	before = before[strings.LastIndex(before, "\n")+1:]
	return before, strings.TrimSpace(before) == ""
}

func last(parts []string) string { return parts[len(parts)-1] }

// asOthersSay finds the line that says what a line says otherwise, and speaks of
// it. It says if it found one.
func asOthersSay(st *lang.Stmt, block string, d *diag.Diagnostic) bool {
	switch block {
	case "replace", "before", "after": // of steps
		block = "mash"
	}
	text := st.At.Text()
	if !strings.ContainsRune(text, '"') { // the columns of a line say nothing
		text = strings.Join(strings.Fields(text), " ")
	}
	for _, o := range othersSay {
		if o.in != "" && o.in != block || o.reader != quantity.Both && o.reader != st.At.Units() || len(text) > 200 {
			continue
		}
		m := o.said().FindStringSubmatchIndex(text)
		if m == nil {
			continue
		}
		if !o.sure {
			o.write = wording.Restated(o.write, st.At.Units())
		}
		if strings.HasPrefix(o.write, "zone ") {
			if city := spelling.Zone(last(o.said().FindStringSubmatch(text))); city != "" {
				o.write = `zone "` + city + `"`
			} else {
				o.sure = false
				o.write = `zone "America/New_York"`
			}
		}
		if o.reckon != nil {
			reckoned := o.reckon(o.said().FindStringSubmatch(text))
			if reckoned == "" {
				continue
			}
			o.write = strings.Replace(o.write, "=", reckoned, 1)
		}
		write := strings.TrimSuffix(strings.TrimSpace(string(o.said().ExpandString(nil, o.write, text, m))), " at")
		d.At = st.At
		d.Summary = string(o.said().ExpandString(nil, wording.Prose(o.why, st.At.Units()), text, m))
		lines := strings.Split(write, "\n")
		d.Help = "write `" + strings.Join(lines, "`, and below it `") + "`\n" + d.Help
		indent, alone := indentOf(st.At)
		switch {
		case !o.sure:
			d.Help = strings.Replace(d.Help, "write `", "write, for example, `", 1)
			d.Fix = nil
		case alone || len(lines) == 1:
			d.Fix = &diag.Fix{At: st.At, Text: strings.Join(lines, "\n"+indent), Label: "write `" + strings.Join(lines, "`, `") + "`"}
		}
		return true
	}
	return false
}
