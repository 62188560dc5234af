package recipe

// Aroma is the words for what one cause puts into a glass.
type Aroma struct {
	Entry
	Cause string
	Taken string // where the words are from
	Words []AromaWord
}

// AromaWord is a word, or a few, as a taster writes them. Its source is that of the entry's
// line of that name.
type AromaWord struct {
	Word string
	Of   string // what in the spirit smells so, "" if that is not known
}
