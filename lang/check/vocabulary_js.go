package check

import (
	"newmake/lang/check/internal/entries"
	"newmake/lang/vocabulary"
)

// wordsOf are none in a browser, whose page is for recipes.
func wordsOf(*entries.Library) *vocabulary.Words { return nil }
