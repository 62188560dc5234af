package diag_test

import (
	"bytes"
	"encoding/json"
	"os"
	"path/filepath"
	"testing"

	"github.com/google/jsonschema-go/jsonschema"
	"github.com/stretchr/testify/assert"
	"github.com/stretchr/testify/require"

	"newmake/lang/diag"
	"newmake/lang/diag/sarif"
)

// validate holds a log against the schema that OASIS publishes with the standard
// (SARIF 2.1.0, errata 01), kept in testdata as published.
func validate(t *testing.T, log sarif.Log) {
	t.Helper()
	text, err := os.ReadFile(filepath.Join("testdata", "sarif-schema-2.1.0.json"))
	require.NoError(t, err)
	var schema jsonschema.Schema
	require.NoError(t, json.Unmarshal(text, &schema))
	schema.Schema = "http://json-schema.org/draft-07/schema#" // it says draft 4, whose words it uses mean the same there
	published, err := schema.Resolve(nil)
	require.NoError(t, err)
	var out bytes.Buffer
	require.NoError(t, diag.EncodeJSON(&out, "", log))
	var document map[string]any
	require.NoError(t, json.Unmarshal(out.Bytes(), &document))
	require.NoError(t, published.Validate(document))
	document["runs"].([]any)[0].(map[string]any)["results"] = "none"
	require.Error(t, published.Validate(document), "the schema is asked at all")
}

func TestSARIFStandard(t *testing.T) {
	src := diag.NewSource("rye house/ärger.batch", []byte("batch \"Ärger\" {\n  corn 5 lbs\n  rye 1 %\n}\n"))
	unit := src.Span(bytes.Index(src.Text, []byte("lbs")), bytes.Index(src.Text, []byte("lbs"))+3)
	list := diag.List{
		{Code: diag.CodeUnknownUnit, Summary: "there is no unit `lbs`", Help: "write `lb`", Reason: "units are never guessed",
			At: unit, Fix: &diag.Fix{At: unit, Text: "lb", Label: "write `lb`"}, Batches: []string{"Ärger", "Ärger, more rye"},
			Related: []diag.Related{{At: src.Span(0, 5), Text: "in this batch"}, {Text: "without a place"}}},
		{Code: diag.CodeUnknownUnit, Severity: diag.Warning, Summary: "again", At: unit, Fix: &diag.Fix{At: unit, Text: "kg", Label: "perhaps", Guess: true}},
		{Code: diag.CodeNoBatch, Severity: diag.Note, Summary: "nowhere"},
		{Code: diag.CodeUnreadable, Summary: "cannot read it", At: diag.NewSource("gone.batch", nil).Span(0, 0)},
	}
	log := sarif.Of(list, "1.2")
	validate(t, log)
	run := log.Runs[0]
	require.Len(t, run.Results, 3, "what could not be read is no result")
	first := run.Results[0]
	assert.Equal(t, "error", first.Level)
	assert.Equal(t, "there is no unit `lbs`\nhelp: write `lb`\nwhy: units are never guessed", first.Message.Text)
	place := first.Locations[0].PhysicalLocation
	assert.Equal(t, "rye%20house/%C3%A4rger.batch", place.ArtifactLocation.URI)
	assert.Equal(t, []int{2, 10, 2, 13}, []int{place.Region.StartLine, place.Region.StartColumn, place.Region.EndLine, place.Region.EndColumn},
		"characters from 1, the end left out")
	require.Len(t, first.RelatedLocations, 1)
	require.Len(t, first.Fixes, 1)
	assert.Equal(t, "lb", first.Fixes[0].ArtifactChanges[0].Replacements[0].InsertedContent.Text)
	assert.Empty(t, run.Results[1].Fixes, "a guess is nobody's to make unasked")
	assert.Equal(t, []string{"error", "warning", "note"}, []string{first.Level, run.Results[1].Level, run.Results[2].Level})
	require.Len(t, run.Tool.Driver.Rules, 2, "each rule once")
	assert.Equal(t, first.RuleIndex, run.Results[1].RuleIndex)
	assert.False(t, run.Invocations[0].ExecutionSuccessful)
	require.Len(t, run.Invocations[0].Notifications, 1)
}

func TestSARIFNothingFound(t *testing.T) {
	log := sarif.Of(nil, "1.2")
	validate(t, log)
	assert.True(t, log.Runs[0].Invocations[0].ExecutionSuccessful)
}

// TestSARIFAbsolute writes a whole path as an address of a file.
func TestSARIFAbsolute(t *testing.T) {
	name, err := filepath.Abs("a b.batch")
	require.NoError(t, err)
	log := sarif.Of(diag.List{{Code: diag.CodeNoBatch, Summary: "x", At: diag.NewSource(name, []byte("x")).Span(0, 1)}}, "")
	text, err := json.Marshal(log)
	require.NoError(t, err)
	assert.Contains(t, string(text), `"uri":"file:///`)
	assert.Contains(t, string(text), `a%20b.batch"`)
}
