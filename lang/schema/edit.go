package schema

// stepShape says of which step of a mash an edit speaks: by what it does, and,
// where several do that, by what goes in, how hot, how long, or by its number
// among them.
const stepShape = `"add" what:NAME|"dose" what:NAME|` +
	`("water"|"backset"|"add"|"dose"|"heat"|"rest"|"cool"|"boil"|"drain") ["to" TEMP|DURATION|NUMBER]`

const stepDoc = " STEP is what the step does, and where several do that, which: `add corn`, `dose alpha-amylase`, `heat`, `cool to 148 F`, `rest 45 min`, or `rest 2` for the second rest; steps are counted as they stand in the mash that is varied."

// The edits of a variant's mash. A variant that writes steps outside an edit
// gives the whole of its mash anew.
var (
	Replace = &Field{
		Name: "replace", Shape: stepShape, Repeat: true, Edit: true, Limits: []Limit{mashTemp, restTime, mustBe(1, 1000, "steps are counted from 1, and no mash has a thousand").of("number")}, Example: "replace rest 1 { rest 60 min }",
		Doc:   "In a variant: puts one or more steps in the place of a step." + stepDoc,
		Block: &Block{Fields: MashSteps},
	}
	Before = &Field{
		Name: "before", Shape: stepShape, Repeat: true, Edit: true, Limits: []Limit{mashTemp, restTime, mustBe(1, 1000, "steps are counted from 1, and no mash has a thousand").of("number")}, Example: "before cool 2 { rest 10 min }",
		Doc:   "In a variant: puts one or more steps before a step." + stepDoc,
		Block: &Block{Fields: MashSteps},
	}
	After = &Field{
		Name: "after", Shape: stepShape, Repeat: true, Edit: true, Limits: []Limit{mashTemp, restTime, mustBe(1, 1000, "steps are counted from 1, and no mash has a thousand").of("number")}, Example: "after add corn { rest 10 min }",
		Doc:   "In a variant: puts one or more steps after a step." + stepDoc,
		Block: &Block{Fields: MashSteps},
	}
	RemoveStep = &Field{
		Name: "remove", Shape: `"backset-pH"|"backset-solids"|` + stepShape, Repeat: true, Edit: true, Limits: []Limit{mashTemp, restTime, mustBe(1, 1000, "steps are counted from 1, and no mash has a thousand").of("number")}, Example: "remove rest 2",
		Doc: "In a variant: takes away a step, or a line, of the mash it varies." + stepDoc,
	}
)

// Remove is the line by which a variant takes away a line.
var Remove = &Field{
	Name: "remove", Shape: "what:NAME [of:NAME]", Repeat: true, Edit: true, Example: "remove oats",
	Doc: "In a variant: takes away a line of the batch it varies, by its first word, or a grain by its name.",
}
