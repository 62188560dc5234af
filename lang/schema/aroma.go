package schema

// Aroma is the declaration of words for what is smelt and tasted, by what causes it.
var Aroma = &Field{
	Name: "aroma", Shape: libraryName, Repeat: true, Key: "name", Example: "aroma wood",
	Doc: "Words for what one cause puts into a glass. Tastings are in free words all the same: `tastings` counts by these, and `check` notes a word that is nearly one of them.",
	Block: &Block{
		Fields: []*Field{
			{Name: "cause", Shape: "TEXT", Need: true, Example: `cause "the cask: its oak, its char and its years"`, Doc: "What in a run or a cask these words point to."},
			{Name: "source", Shape: "TEXT", Need: true, Example: `source "agreed at our table on 2026-03-20"`, Doc: "Where the words are taken from. What a single word points to has its source in the comment of its line."},
		},
		Any: &Field{
			Shape: `NAME ["of" compound:NAME]`, Repeat: true, Key: "name", Example: `"green oak"`, Default: "of nothing that is known",
			Doc: "A word, or a few, as a taster writes them, and what in the spirit smells so.",
		},
	},
}
