package schema

// These are what the house really has on the day, in a
// batch, where that is not what a house at work would have.
var (
	feintsToday = &Field{
		Name: "feints", Shape: `"none" "yet" | VOLUME "at" STRENGTH`, Default: "those that each batch takes and leaves alike", Example: "feints 20 gal at 70 proof",
		Doc: "The feints that the house has today, for a charge that takes feints: none in a first batch, or so much of such a strength, shared by the charges. Without this line the plan is of a house at work, whose batches take the feints that they leave.",
		Limits: []Limit{
			mustBe(0, 2000, "no still holds more").of("volume"),
			strength100,
		},
	}
	keptToday = &Field{
		Name: "kept", Shape: `"none" "yet"`, Default: "the last water of the mash before", Example: "kept none yet",
		Doc: "The house has kept no last water of a mash yet: plain water goes into this one in its place.",
	}
	potAleToday = &Field{
		Name: "pot-ale", Shape: `"none" "yet"`, Default: "what the preheater of the wash still says", Example: "pot-ale none yet",
		Doc: "The house has no hot pot ale of a batch before: the first charge of the wash still goes in as it stands.",
	}
	backsetToday = &Field{
		Name: "backset", Shape: `"none" "yet"`, Default: "that of the last stripping run", Example: "backset none yet",
		Doc: "The house has no backset yet: water goes into the mash in its place, from the supply unless the step says how warm.",
	}
)
