package work

import (
	"slices"
	"strings"

	"newmake/lang/recipe"
)

// The zones of the United States and its territories, in the IANA time zone
// database (zone1970.tab and backward): by name, or by what their names begin
// with.
var (
	zonesUS = []string{
		"America/Adak", "America/Anchorage", "America/Boise", "America/Chicago", "America/Denver", "America/Detroit",
		"America/Fort_Wayne", "America/Indianapolis", "America/Juneau", "America/Los_Angeles", "America/Louisville", "America/Menominee",
		"America/Metlakatla", "America/New_York", "America/Nome", "America/Phoenix", "America/Puerto_Rico", "America/Shiprock",
		"America/Sitka", "America/St_Thomas", "America/Yakutat", "Pacific/Guam", "Pacific/Honolulu",
	}
	zoneGroupsUS = []string{"US/", "America/Indiana/", "America/Kentucky/", "America/North_Dakota/"}
)

// underUS says if the plant stands in the United States, whose law is then the
// one to cite: 27 CFR part 19 and 29 CFR part 1910 bind the plants there, and
// whisky of a type of theirs may be made abroad (27 CFR 5.143(b)).
func underUS(b *recipe.Batch) bool {
	zone := b.Plant.Zone
	return slices.Contains(zonesUS, zone) ||
		slices.ContainsFunc(zoneGroupsUS, func(g string) bool { return strings.HasPrefix(zone, g) })
}

// cite names a section of the law of the United States, in brackets, where that
// law is the one to cite.
func cite(b *recipe.Batch, section string) string {
	if section == "" || !underUS(b) {
		return ""
	}
	return " (" + section + ")"
}
