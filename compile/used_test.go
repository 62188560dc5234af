package compile

import (
	"io/fs"
	"os"
	"path/filepath"
	"reflect"
	"regexp"
	"slices"
	"strings"
	"testing"

	"github.com/stretchr/testify/assert"
	"github.com/stretchr/testify/require"

	"newmake/lang/recipe"
	"newmake/lang/record"
	"newmake/lang/season"
)

// usedElsewhere are the fields of a recipe that neither compile nor lang/trade reads, and
// what does.
var usedElsewhere = map[string]string{
	"Entry.Doc":              "the library as it is shown",
	"Condition.Unmalted":     "Condition.GrainsDo",
	"Grain.Cereal":           "Condition.GrainsDo",
	"Grain.TestWeightKg":     "a bill in bushels, as lang/check reads it",
	"Correction.OldClock":    "lang/logbook, which puts the line right",
	"Correction.NewDate":     "the same",
	"Scale.Division":         "record.Instrument, for how far it reads",
	"Instrument.ToleranceSI": "the same",
	"Check.Against":          "lang/logbook, for what the other said",
	"Verdict.WaitS":          "Verdict.Says",
	"CaskWood.Toasted":       "Condition.WoodDoes",
	"RackHouse.Tiers":        "the check of a place in a rack house",
}

// TestEveryFieldOfARecipeIsUsed: what is read of a text, a source outside of lang/recipe
// and lang/check looks at: its name stands there after a dot. Names that several types
// share may hide one that nobody uses.
func TestEveryFieldOfARecipeIsUsed(t *testing.T) {
	used := map[string]bool{}
	selected := regexp.MustCompile(`\.([A-Z][A-Za-z0-9]*)`)
	for _, top := range []string{".", "../lang/trade"} {
		err := filepath.WalkDir(top, func(path string, d fs.DirEntry, err error) error {
			if err != nil || d.IsDir() || !strings.HasSuffix(path, ".go") || strings.HasSuffix(path, "_test.go") {
				return err
			}
			text, err := os.ReadFile(path)
			for _, m := range selected.FindAllSubmatch(text, -1) {
				used[string(m[1])] = true
			}
			return err
		})
		require.NoError(t, err)
	}
	seen := map[reflect.Type]bool{}
	fields := map[string]bool{}
	var walk func(reflect.Type)
	walk = func(typ reflect.Type) {
		switch typ.Kind() {
		case reflect.Pointer, reflect.Slice, reflect.Map, reflect.Array:
			walk(typ.Elem())
		case reflect.Struct:
			if seen[typ] || !slices.Contains([]string{reflect.TypeFor[recipe.Batch]().PkgPath(), reflect.TypeFor[record.Run]().PkgPath(), reflect.TypeFor[season.Season]().PkgPath()}, typ.PkgPath()) {
				return
			}
			seen[typ] = true
			for i := range typ.NumField() {
				f := typ.Field(i)
				if !f.IsExported() {
					continue
				}
				name := typ.Name() + "." + f.Name
				fields[name] = true
				if usedElsewhere[name] == "" {
					assert.True(t, used[f.Name], "%s is read of the text, and nothing is computed or said with it: use it in compile, or say in usedElsewhere what does", name)
				} else {
					assert.False(t, used[f.Name], "%s is used here, and usedElsewhere says otherwise", name)
				}
				walk(f.Type)
			}
		}
	}
	walk(reflect.TypeFor[recipe.Batch]())
	for _, record := range []reflect.Type{reflect.TypeFor[record.Run](), reflect.TypeFor[record.Instrument](), reflect.TypeFor[record.Life](), reflect.TypeFor[record.Vat](), reflect.TypeFor[record.Bottling](), reflect.TypeFor[record.Store](), reflect.TypeFor[record.Tasting](), reflect.TypeFor[record.Trial](), reflect.TypeFor[season.Season]()} {
		walk(record)
	}
	require.Greater(t, len(fields), 150)
	for name := range usedElsewhere {
		assert.True(t, fields[name], "there is no field %s", name)
	}
}
