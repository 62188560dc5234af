package recipe

import (
	"strconv"
	"strings"
)

// Path names a value of a recipe by the blocks and the line that it is written
// in: mash.backset-pH, plant."Wash still".reflux, library.grain.corn.starch.
// It is a comparable value and the key of Batch.Where.
type Path struct{ text string }

// PathOf joins parts to a path. Each part is one word or one name, as it is
// written: a name with spaces or dots, or that
// begins with a capital, comes in quotes by itself.
func PathOf(parts ...string) Path { return Path{}.Child(parts...) }

// ParsePath reads a path as a person writes it. Every text is a path; whether a
// recipe has it is another question.
func ParsePath(s string) Path {
	var parts []string
	var part strings.Builder
	quoted := false
	for _, r := range s {
		switch {
		case r == '"':
			quoted = !quoted
		case r == '.' && !quoted:
			parts = append(parts, part.String())
			part.Reset()
		default:
			part.WriteRune(r)
		}
	}
	return PathOf(append(parts, part.String())...)
}

// Child is the path of something within p.
func (p Path) Child(parts ...string) Path {
	for _, part := range parts {
		if !plainPart(part) {
			part = `"` + strings.ReplaceAll(part, `"`, "") + `"`
		}
		p = p.join(Path{part})
	}
	return p
}

// plainPart reports whether a part needs no quotes.
func plainPart(s string) bool {
	odd := func(r rune) bool {
		return r != '-' && (r < 'a' || r > 'z') && (r < 'A' || r > 'Z') && (r < '0' || r > '9')
	}
	return (s == "" || s[0] < 'A' || s[0] > 'Z') && !strings.ContainsFunc(s, odd)
}

// Step is the path of a step of the mash, counted from 1.
func Step(n int) Path { return PathMash.Child("step", strconv.Itoa(n)) }

// Parts are the words of a path, without quotes.
func (p Path) Parts() []string {
	var out []string
	for !p.IsZero() {
		var first string
		first, p = p.Cut()
		out = append(out, first)
	}
	return out
}

// Cut is the first word of a path, and the path below it.
func (p Path) Cut() (first string, rest Path) {
	quoted := false
	for i := range len(p.text) {
		switch c := p.text[i]; {
		case c == '"':
			quoted = !quoted
		case c == '.' && !quoted:
			return strings.Trim(p.text[:i], `"`), Path{p.text[i+1:]}
		}
	}
	return strings.Trim(p.text, `"`), Path{}
}

// Below is the path below another that it stands in.
func (p Path) Below(other Path) Path {
	return Path{strings.TrimPrefix(strings.TrimPrefix(p.text, other.text), ".")}
}

// Parent is the path of what p stands in; empty for a path of one part.
func (p Path) Parent() Path {
	return Path{p.text[:max(0, p.lastDot())]}
}

// lastDot is where the last part begins, at the dot before it; -1 if there is but
// one part.
func (p Path) lastDot() int {
	quoted := false
	for i := len(p.text) - 1; i >= 0; i-- {
		switch c := p.text[i]; {
		case c == '"':
			quoted = !quoted
		case c == '.' && !quoted:
			return i
		}
	}
	return -1
}

// join is the path q below p.
func (p Path) join(q Path) Path {
	switch {
	case p.IsZero():
		return q
	case q.IsZero():
		return p
	}
	return Path{p.text + "." + q.text}
}

// Last is the last word of a path.
func (p Path) Last() string {
	return strings.Trim(p.text[p.lastDot()+1:], `"`)
}

// Within reports whether p is other or stands in it.
func (p Path) Within(other Path) bool {
	rest, ok := strings.CutPrefix(p.text, other.text)
	return ok && (rest == "" || rest[0] == '.' || other.IsZero())
}

// IsZero reports whether a path names nothing.
func (p Path) IsZero() bool { return p.text == "" }

// String is the path as a person writes it.
func (p Path) String() string { return p.text }

// MarshalText writes the path as a person does.
func (p Path) MarshalText() ([]byte, error) { return []byte(p.text), nil }

// UnmarshalText reads the path as a person writes it.
func (p *Path) UnmarshalText(text []byte) error {
	*p = ParsePath(string(text))
	return nil
}

// Paths of the blocks, and of the values that are spoken of by name.
var (
	PathBatch  = PathOf("batch")
	PathPlant  = PathOf("plant")
	PathBill   = PathOf("bill")
	PathMash   = PathOf("mash")
	PathFerm   = PathOf("ferment")
	PathStrip  = PathOf("strip")
	PathSpirit = PathOf("spirit")
	PathCask   = PathOf("cask")
	PathCosts  = PathPlant.Child("costs")
	PathRates  = PathPlant.Child("rates")

	PathWortCooler = PathPlant.Child("wort-cooler")
	PathLibrary    = PathOf("library")
	PathPromise    = PathOf("promise")

	PathAt        = PathOf("at")
	PathStandard  = PathOf("standard")
	PathStart     = PathOf("start")
	PathFeints    = PathOf("feints")
	PathNoBackset = PathOf("backset")
	PathNoKept    = PathOf("kept")
	PathNoPotAle  = PathOf("pot-ale")
	PathUnits     = PathOf("units")

	PathMashWater     = PathMash.Child("water") // the first of its sort
	PathBackset       = PathMash.Child("backset")
	PathBacksetPH     = PathMash.Child("backset-pH")
	PathBacksetSolids = PathMash.Child("backset-solids")
	PathAcid          = PathMash.Child("acid")
	PathGypsum        = PathMash.Child("gypsum")
	PathLime          = PathMash.Child("lime")
	PathNutrient      = PathFerm.Child("nutrient")
	PathAntifoam      = PathFerm.Child("antifoam")
	PathRehydrate     = PathFerm.Child("rehydrate")
	PathPitch         = PathFerm.Child("pitch")
	PathHold          = PathFerm.Child("hold")
	PathFermentFor    = PathFerm.Child("for")
	PathDose          = PathFerm.Child("dose")
	PathStripStop     = PathStrip.Child("stop")
	PathStripPace     = PathStrip.Child("pace")
	PathHeatUp        = PathStrip.Child("heat-up")
	PathStripCharges  = PathStrip.Child("charges")
	PathCharge        = PathSpirit.Child("charge")
	PathSpiritCharges = PathSpirit.Child("charges")
	PathForeshots     = PathSpirit.Child("foreshots")
	PathHearts        = PathSpirit.Child("hearts")
	PathHeartsFrom    = PathHearts.Child("from")
	PathHeartsTo      = PathHearts.Child("to")
	PathPace          = PathSpirit.Child("pace")
	PathPaceForeshots = PathPace.Child("foreshots")
	PathPaceHeads     = PathPace.Child("heads")
	PathPaceHearts    = PathPace.Child("hearts")
	PathPaceTails     = PathPace.Child("tails")
	PathSpiritStop    = PathSpirit.Child("stop")
	PathEntry         = PathCask.Child("entry")
	PathFill          = PathCask.Child("fill")
	PathTare          = PathCask.Child("tare")
	PathRest          = PathCask.Child("rest")
	PathBottle        = PathCask.Child("bottle")
	PathBottleAt      = PathBottle.Child("at")
	PathClimate       = PathCask.Child("climate")

	PathElevation    = PathPlant.Child("elevation")
	PathWater        = PathPlant.Child("water")
	PathAmbient      = PathPlant.Child("ambient")
	PathBoiler       = PathPlant.Child("boiler")
	PathShift        = PathPlant.Child("shift")
	PathCrew         = PathPlant.Child("crew")
	PathZone         = PathPlant.Child("zone")
	PathCountry      = PathPlant.Child("country")
	PathPlantClimate = PathPlant.Child("climate")
	PathLossFirst    = PathPlant.Child("loss-first-year")
	PathLoss         = PathPlant.Child("loss")
)
