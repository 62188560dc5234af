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
	"newmake/compile/ask/learn"
	"newmake/compile/ask/odds"
	"newmake/compile/ask/proofing"
	"newmake/compile/ask/today"
	"newmake/compile/ask/why"
	"newmake/compile/book/cellar"
	"newmake/compile/book/identity"
	"newmake/compile/book/ledger"
	"newmake/compile/book/season"
	"newmake/compile/book/taste"
	"newmake/compile/book/trace"
	"newmake/compile/show/reviewed"
	"newmake/compile/show/sized"
	"newmake/lang/diag"
	"newmake/lang/explain"
	"newmake/lang/library"
	"newmake/lang/recipe"
	"newmake/lang/testflag"
	"newmake/lang/typedoc"
)

// published are the documents that have a schema, by command: the format that
// each says it is, and its types; a command may print one or another.
var published = map[string]struct {
	format string
	types  []reflect.Type
}{
	"check": {"newmake.diagnostics", []reflect.Type{reflect.TypeFor[checkReport](), reflect.TypeFor[report]()}},
	"diff":  {compare.Format, []reflect.Type{reflect.TypeFor[compare.Document]()}},
	"today": {today.Format, []reflect.Type{reflect.TypeFor[today.Answer]()}},
	"size":  {"newmake.size", []reflect.Type{reflect.TypeFor[sized.Answer]()}},
	"learn": {learn.Format, []reflect.Type{reflect.TypeFor[learn.Document]()}},
	"why":   {why.Format, []reflect.Type{reflect.TypeFor[why.Answer](), reflect.TypeFor[whyParts]()}},
	"odds":  {odds.Format, []reflect.Type{reflect.TypeFor[odds.Answer]()}},
	"gauge": {proofing.Format, []reflect.Type{reflect.TypeFor[proofing.Answer]()}},

	"review":   {reviewed.Format, []reflect.Type{reflect.TypeFor[reviewed.Document](), reflect.TypeFor[report]()}},
	"cellar":   {cellar.Format, []reflect.Type{reflect.TypeFor[cellar.Cellar]()}},
	"season":   {season.Format, []reflect.Type{reflect.TypeFor[season.Season]()}},
	"ledger":   {ledger.Format, []reflect.Type{reflect.TypeFor[ledger.Ledger]()}},
	"trace":    {trace.Format, []reflect.Type{reflect.TypeFor[identity.Traced]()}},
	"trial":    {taste.Format, []reflect.Type{reflect.TypeFor[taste.Judged]()}},
	"tastings": {taste.FoundFormat, []reflect.Type{reflect.TypeFor[taste.Found]()}},

	"fmt":     {"newmake.fmt", []reflect.Type{reflect.TypeFor[fmtReport]()}},
	"library": {"newmake.library", []reflect.Type{reflect.TypeFor[library.Report]()}},
	"explain": {"newmake.explain", []reflect.Type{reflect.TypeFor[explain.Document]()}},
}

// TestEveryJSONHasASchema: a command that prints JSON publishes what it is made of.
func TestEveryJSONHasASchema(t *testing.T) {
	for _, cmd := range shownCommands(root(terminal())) {
		format := cmd.Flags().Lookup("format")
		if format == nil || !strings.Contains(format.Usage, "json") || cmd.Name() == "plan" { // that is plan.Schema
			continue
		}
		_, ok := published[cmd.Name()]
		assert.True(t, ok, "newmake %s prints JSON: give published a row with its types, run `go test ./cmd/newmake -update` twice, and try it in TestAnswersBySchema", cmd.Name())
	}
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
				if built, err := schemas.ReadFile("schemas/" + name + ".json"); err != nil || !bytes.Equal(built, out.Bytes()) {
					t.Errorf("%s is written, and this program was built without it: run -update once more", file)
				}
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
	describe(t, reports, reflect.TypeFor[[]diag.Report]())
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
		describe(t, s, of)
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
		describe(t, node, reflect.TypeFor[why.Node]())
		root.Defs = map[string]*jsonschema.Schema{"Node": node}
	}
	return root
}

// describe puts the comments of the types into a schema.
func describe(t *testing.T, s *jsonschema.Schema, of reflect.Type) {
	for of.Kind() == reflect.Pointer {
		of = of.Elem()
	}
	switch of.Kind() {
	case reflect.Slice:
		if s.Items != nil {
			describe(t, s.Items, of.Elem())
		}
	case reflect.Map:
		if s.AdditionalProperties != nil {
			describe(t, s.AdditionalProperties, of.Elem())
		}
	case reflect.Struct:
		if len(s.Properties) == 0 {
			return
		}
		docs := comments(t, of.PkgPath())
		if s.Description == "" {
			s.Description = docs.Types[of.Name()]
		}
		for _, f := range reflect.VisibleFields(of) {
			name, _, _ := strings.Cut(f.Tag.Get("json"), ",")
			p := s.Properties[name]
			if p == nil || f.Anonymous {
				continue
			}
			owner := of
			for _, i := range f.Index[:len(f.Index)-1] { // of a type that is laid in
				if owner = owner.Field(i).Type; owner.Kind() == reflect.Pointer {
					owner = owner.Elem()
				}
			}
			describe(t, p, f.Type)
			if doc := comments(t, owner.PkgPath()).Fields[owner.Name()+"."+name].Doc; doc != "" {
				p.Description = doc
			}
		}
	}
}

// comments are those of the types of a package and of their fields.
func comments(t *testing.T, pkg string) *typedoc.Docs {
	if docs, ok := commentsOf[pkg]; ok {
		return docs
	}
	docs := &typedoc.Docs{}
	rest, ours := strings.CutPrefix(pkg, "newmake/")
	switch {
	case pkg == "main", rest == "cmd/newmake":
		rest = "cmd/newmake"
	case !ours:
		commentsOf[pkg] = docs
		return docs
	}
	docs, err := typedoc.Read(filepath.Join("..", "..", filepath.FromSlash(rest)))
	require.NoError(t, err)
	commentsOf[pkg] = docs
	return docs
}

var commentsOf = map[string]*typedoc.Docs{}

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
	top, err := filepath.Abs(filepath.Join("..", ".."))
	require.NoError(t, err)
	slips := filepath.Join(top, "lang", "check", "testdata")
	withRuns := t.TempDir()
	require.NoError(t, os.CopyFS(withRuns, os.DirFS(filepath.Join(top, "examples", "lantern-hollow"))))
	t.Chdir(withRuns)
	tried := map[string]bool{}
	for _, line := range []string{
		"check .",
		"check " + filepath.Join(slips, "mistakes"),
		"check " + slips,
		"diff Ferry~Landing Ferry~Landing,~more~rye",
		"diff ferry-landing.batch toll-road.batch",
		"diff ferry-landing.batch ferry-landing.batch",
		"size ferry-landing.batch --proof-gallons 60",
		"size ferry-landing.batch --cut hearts --proof 140",
		"why ferry-landing.batch hearts --depth 3",
		"why ferry-landing.batch",
		"learn 26-01",
		"review 26-03",
		"odds low-bridge --draws 50 --beside stone-ferry",
		"cellar --on 2026-06-30",
		"tastings clove",
		"tastings",
		"ledger 2026-03",
		"ledger 2026-02 --people",
		"season Spring --effort 1",
		"season --on 2026-04-20 --effort 1 --units si",
		"trace 26C26",
		"trace C-118",
		"trial More~rye?",
		"trial Longer~ferment?",
		"today --on 2026-03-10",
		"today --on 2026-03-15",
		"gauge 38 gal at 134.1 proof at 66 F, reduce to 114 proof",
		"gauge 100 L at 62.5 % abv at 18 C --units si",
		"fmt --check .",
		"fmt --check " + slips,
		"library grain oats",
		"explain backset",
		"explain bakcset",
	} {
		args := strings.Fields(line)
		if tried[args[0]] && testflag.Every(2) != 1 {
			continue // one answer of each command is tried each time
		}
		for i := range args {
			args[i] = strings.ReplaceAll(args[i], "~", " ")
		}
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
		assert.True(t, tried[name], "no answer of newmake %s is held against its schema: give the lines above one", name)
	}
}

// TestRefusalsBySchema: what a command prints as JSON where it has no answer is by
// the schema of check.
func TestRefusalsBySchema(t *testing.T) {
	bad := filepath.Join("..", "..", "testdata", "bad", "missing-unit")
	var s jsonschema.Schema
	text, err := schemas.ReadFile("schemas/check.json")
	require.NoError(t, err)
	require.NoError(t, json.Unmarshal(text, &s))
	r, err := s.Resolve(nil)
	require.NoError(t, err)
	for _, line := range []string{"plan " + bad, "why " + bad + " hearts", "size " + bad + " --casks 1", "gauge 38 gal at 134.1 proof, cut to 80 proof"} {
		var out, said bytes.Buffer
		a := &app{in: strings.NewReader(""), out: &out, err: &said, env: func(string) string { return "" }}
		require.NotZero(t, run(a, append(strings.Fields(line), "--format", "json")), line)
		var v map[string]any
		require.NoError(t, json.Unmarshal(out.Bytes(), &v), "%s: %s %s", line, out.String(), said.String())
		assert.NoError(t, r.Validate(v), line)
	}
}
