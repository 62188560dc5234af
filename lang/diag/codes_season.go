package diag

// The codes of seasons, and of runs that claim one vessel.
const (
	CodeSeasonDays    Code = "NM1701"
	CodeSeasonEmpty   Code = "NM1702"
	CodeSeasonOverlap Code = "NM1703"
	CodeSeasonPlants  Code = "NM1704"
	CodeSeasonNobody  Code = "NM1705"
	CodeClaim         Code = "NM1706"
)

// seasonTable lists them in order.
var seasonTable = []Info{
	{CodeSeasonDays, "season-days", Error, "a season, or a day in it, that cannot be"},
	{CodeSeasonEmpty, "season-empty", Warning, "a season that asks for nothing, or has no day left to work on"},
	{CodeSeasonOverlap, "season-overlap", Warning, "days of a season that are closed, or without one vessel or person, twice"},
	{CodeSeasonPlants, "season-plants", Error, "batches of two plants in one season"},
	{CodeSeasonNobody, "season-nobody", Warning, "a mash on a day of the week on which nobody is there"},
	{CodeClaim, "vessel-claimed", Error, "two runs in one vessel at one time"},
}
