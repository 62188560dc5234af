package plan

import (
	"bytes"
	"encoding/json"
	"os"
	"reflect"
	"slices"
	"strings"
	"testing"

	"github.com/google/jsonschema-go/jsonschema"
	"github.com/stretchr/testify/assert"
	"github.com/stretchr/testify/require"

	"newmake/lang/testflag"
	"newmake/lang/typedoc"
)

// TestSchema keeps the published schema the one of the types.
func TestSchema(t *testing.T) {
	docs, err := typedoc.Read(".")
	require.NoError(t, err)
	g := generator{docs: docs, defs: map[string]*jsonschema.Schema{}}
	root := g.object(reflect.TypeFor[Plan]())
	root.Schema = "https://json-schema.org/draft/2020-12/schema"
	root.Title = "newmake plan"
	root.Defs = g.defs
	var format, version any = Format, Version
	root.Properties["format"].Const = &format
	root.Properties["version"].Const = &version
	var out bytes.Buffer
	e := json.NewEncoder(&out)
	e.SetEscapeHTML(false)
	e.SetIndent("", "  ")
	require.NoError(t, e.Encode(root))
	if testflag.Update() {
		require.NoError(t, os.WriteFile("schema.json", out.Bytes(), 0o644))
		return
	}
	assert.Equal(t, out.String(), string(Schema), "the types have changed: go test ./compile/plan -update writes the schema anew")
}

// Every field says in words what it is, or has a name that says all.
func TestSchemaIsDescribed(t *testing.T) {
	var s jsonschema.Schema
	require.NoError(t, json.Unmarshal(Schema, &s))
	for name, d := range s.Defs {
		assert.NotEmpty(t, d.Description, name)
	}
	_, err := s.Resolve(nil)
	require.NoError(t, err)
}

// The schema refuses what is no plan.
func TestSchemaRefuses(t *testing.T) {
	var s jsonschema.Schema
	require.NoError(t, json.Unmarshal(Schema, &s))
	r, err := s.Resolve(nil)
	require.NoError(t, err)
	whole := func() map[string]any {
		b, err := json.Marshal(&Plan{Format: Format, Version: Version, Batch: Batch{Units: "us"}})
		require.NoError(t, err)
		var v map[string]any
		require.NoError(t, json.Unmarshal(b, &v))
		return v
	}
	require.NoError(t, r.Validate(whole()))
	for name, spoil := range map[string]func(map[string]any){
		"another format":    func(v map[string]any) { v["format"] = "other" },
		"no summary":        func(v map[string]any) { delete(v, "summary") },
		"a number as text":  func(v map[string]any) { v["summary"].(map[string]any)["finalGravitySG"] = "1.000" },
		"units of no kind":  func(v map[string]any) { v["batch"].(map[string]any)["units"] = "imperial" },
		"casks by the half": func(v map[string]any) { v["cask"].(map[string]any)["casks"] = 1.5 },
	} {
		v := whole()
		spoil(v)
		assert.Error(t, r.Validate(v), name)
	}
	v := whole()
	v["new"] = 1
	assert.NoError(t, r.Validate(v), "a later minor version may add names")
}

// generator turns the types of a plan into a schema.
type generator struct {
	docs *typedoc.Docs
	defs map[string]*jsonschema.Schema
}

// times are those that a plan always has, in RFC 3339.
var times = []string{"Batch.start", "Schedule.start", "Schedule.end", "Step.start", "Step.end", "Occupancy.from", "Occupancy.to"}

var enums = map[string][]any{
	"Batch.units": {"us", "si"}, "Notice.severity": {"error", "warning", "note"}, "Step.attend": {Stay, Start, Alone},
	"Condition.met": {"met", "NOT met", "not tested"},
}

func (g *generator) object(t reflect.Type) *jsonschema.Schema {
	s := &jsonschema.Schema{Type: "object", Description: g.docs.Types[t.Name()], Properties: map[string]*jsonschema.Schema{}}
	for _, f := range reflect.VisibleFields(t) {
		tag := f.Tag.Get("json")
		if f.Anonymous || tag == "" {
			continue
		}
		name, options, _ := strings.Cut(tag, ",")
		owner := t.Name()
		if len(f.Index) > 1 { // of a type that is laid in
			owner = t.Field(f.Index[0]).Type.Name()
		}
		p := g.value(f.Type)
		key := owner + "." + name
		doc := g.docs.Fields[key].Doc
		if places := f.Tag.Get("places"); places != "" && places != "unit" {
			doc = strings.TrimSpace(doc + " (to " + places + " places)")
		}
		if slices.Contains(times, key) {
			p.Format = "date-time"
		}
		if e, ok := enums[key]; ok {
			p.Enum = e
		}
		p.Description = doc
		s.Properties[name] = p
		s.PropertyOrder = append(s.PropertyOrder, name)
		if options == "" {
			s.Required = append(s.Required, name)
		}
	}
	return s
}

func (g *generator) value(t reflect.Type) *jsonschema.Schema {
	switch t.Kind() {
	case reflect.Pointer:
		return g.value(t.Elem())
	case reflect.Slice:
		return &jsonschema.Schema{Types: []string{"null", "array"}, Items: g.value(t.Elem())}
	case reflect.Struct:
		if _, ok := g.defs[t.Name()]; !ok {
			g.defs[t.Name()] = nil // a type may hold itself
			g.defs[t.Name()] = g.object(t)
		}
		return &jsonschema.Schema{Ref: "#/$defs/" + t.Name()}
	case reflect.Float64:
		return &jsonschema.Schema{Type: "number"}
	case reflect.Int:
		return &jsonschema.Schema{Type: "integer"}
	case reflect.Bool:
		return &jsonschema.Schema{Type: "boolean"}
	}
	s := &jsonschema.Schema{Type: "string"}
	if t == reflect.TypeFor[Unit]() {
		for u := range unitPlaces {
			s.Enum = append(s.Enum, string(u))
		}
		s.Enum = append(s.Enum, "") // no tolerance
		slices.SortFunc(s.Enum, func(a, b any) int { return strings.Compare(a.(string), b.(string)) })
	}
	return s
}
