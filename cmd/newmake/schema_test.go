package main

import (
	"bytes"
	"encoding/json"
	"os"
	"path/filepath"
	"reflect"
	"slices"
	"strings"
	"testing"

	"github.com/google/jsonschema-go/jsonschema"
	"github.com/stretchr/testify/assert"
	"github.com/stretchr/testify/require"

	"newmake/compile/ask/compare"
	"newmake/compile/ask/odds"
	"newmake/compile/ask/proofing"
	"newmake/compile/ask/why"
	"newmake/compile/show/sized"
	"newmake/lang/diag"
	"newmake/lang/recipe"
	"newmake/lang/testflag"
)

// published are the documents that have a schema, by command: the format that
// each says it is, and its types; a command may print one or another.
var published = map[string]struct {
	format string
	types  []reflect.Type
}{
	"check": {"newmake.diagnostics", []reflect.Type{reflect.TypeFor[checkReport]()}},
	"diff":  {compare.Format, []reflect.Type{reflect.TypeFor[compare.Document]()}},
	"size":  {"newmake.size", []reflect.Type{reflect.TypeFor[sized.Answer]()}},
	"why":   {why.Format, []reflect.Type{reflect.TypeFor[why.Answer](), reflect.TypeFor[whyParts]()}},
	"odds":  {odds.Format, []reflect.Type{reflect.TypeFor[odds.Answer]()}},
	"gauge": {proofing.Format, []reflect.Type{reflect.TypeFor[proofing.Answer]()}},
}

// TestSchemas keeps the published schemas those of the types.
func TestSchemas(t *testing.T) {
	for name, p := range published {
		t.Run(name, func(t *testing.T) {
			var out bytes.Buffer
			e := json.NewEncoder(&out)
			e.SetEscapeHTML(false)
			e.SetIndent("", "  ")
			require.NoError(t, e.Encode(schemaOf(t, name, p.format, p.types)))
			file := filepath.Join("schemas", name+".json")
			if testflag.Update() {
				require.NoError(t, os.WriteFile(file, out.Bytes(), 0o644))
				return
			}
			was, err := os.ReadFile(file)
			require.NoError(t, err)
			assert.Equal(t, out.String(), string(was), "the types have changed: go test ./cmd/newmake -update writes the schema anew")
		})
	}
}

func schemaOf(t *testing.T, name, format string, types []reflect.Type) *jsonschema.Schema {
	reports, err := jsonschema.For[[]diag.Report](nil)
	require.NoError(t, err)
	known := map[reflect.Type]*jsonschema.Schema{
		reflect.TypeFor[diag.List]():   reports,
		reflect.TypeFor[recipe.Path](): {Type: "string"}, // as a batch says it: bill.rye
		reflect.TypeFor[[]why.Node]():  {Types: []string{"null", "array"}, Items: &jsonschema.Schema{Ref: "#/$defs/Node"}},
	}
	options := &jsonschema.ForOptions{TypeSchemas: known}
	var all []*jsonschema.Schema
	for _, of := range types {
		s, err := jsonschema.ForType(of, options)
		require.NoError(t, err)
		open(s)
		var is any = format
		s.Properties["format"].Const = &is
		all = append(all, s)
	}
	root := all[0]
	if len(all) > 1 {
		root = &jsonschema.Schema{AnyOf: all}
	}
	root.Schema = "https://json-schema.org/draft/2020-12/schema"
	root.Title = "newmake " + name
	if name == "why" {
		node, err := jsonschema.For[why.Node](options)
		require.NoError(t, err)
		open(node)
		root.Defs = map[string]*jsonschema.Schema{"Node": node}
	}
	return root
}

// open lets objects have names that the schema does not know.
func open(s *jsonschema.Schema) {
	if s == nil {
		return
	}
	if s.Properties != nil {
		s.AdditionalProperties = nil
	}
	for _, p := range s.Properties {
		open(p)
	}
	open(s.Items)
	open(s.AdditionalProperties)
}

// TestAnswersBySchema holds what the commands print against what they publish.
func TestAnswersBySchema(t *testing.T) {
	t.Chdir(filepath.Join("..", "..", "examples", "lantern-hollow"))
	slips := filepath.Join("..", "..", "lang", "check", "testdata")
	tried := map[string]bool{}
	for _, line := range []string{
		"check .",
		"check " + filepath.Join(slips, "mistakes"),
		"check " + slips,
		"diff ferry-landing.batch toll-road.batch",
		"diff ferry-landing.batch ferry-landing.batch",
		"size ferry-landing.batch --proof-gallons 60",
		"size ferry-landing.batch --cut hearts --proof 140",
		"why ferry-landing.batch hearts --depth 3",
		"why ferry-landing.batch",
		"odds ferry-landing.batch --draws 60 --beside stone-ferry",
		"gauge 38 gal at 134.1 proof at 66 F, reduce to 114 proof",
		"gauge 100 L at 62.5 % abv at 18 C --units si",
	} {
		args := strings.Fields(line)
		var schema, out, said bytes.Buffer
		a := &app{in: strings.NewReader(""), out: &schema, err: &said, env: func(string) string { return "" }}
		require.Zero(t, run(a, []string{args[0], "--schema"}), said.String())
		var s jsonschema.Schema
		require.NoError(t, json.Unmarshal(schema.Bytes(), &s))
		r, err := s.Resolve(nil)
		require.NoError(t, err)
		a = &app{in: strings.NewReader(""), out: &out, err: &said, env: func(string) string { return "" }}
		run(a, append(slices.Clone(args), "--format", "json"))
		var v map[string]any
		require.NoError(t, json.Unmarshal(out.Bytes(), &v), "%s: %s", line, said.String())
		require.NoError(t, r.Validate(v), line)
		for _, spoiled := range []func(map[string]any){
			func(v map[string]any) { v["format"] = "other" },
			func(v map[string]any) { delete(v, "version") },
			func(v map[string]any) { v["version"] = 1.0 },
		} {
			var bad map[string]any
			require.NoError(t, json.Unmarshal(out.Bytes(), &bad))
			spoiled(bad)
			assert.Error(t, r.Validate(bad), line)
		}
		v["new"] = 1
		assert.NoError(t, r.Validate(v), "a later minor version may add names")
		tried[args[0]] = true
	}
	for name := range published {
		assert.True(t, tried[name], name)
	}
}
