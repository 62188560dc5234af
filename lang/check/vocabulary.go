//go:build !js

package check

import (
	"newmake/lang/check/internal/entries"
	"newmake/lang/recipe"
	"newmake/lang/schema"
	"newmake/lang/vocabulary"
)

// wordsOf are the words for what is tasted that a library holds.
func wordsOf(lib *entries.Library) *vocabulary.Words {
	return vocabulary.Of(entries.Mapped[recipe.Aroma](lib, schema.Aroma))
}
