package precompile

import (
	"testing"

	"github.com/stretchr/testify/assert"
	"github.com/stretchr/testify/require"

	"newmake/compile/show/markup"
	_ "newmake/lang/testflag"
)

type page struct {
	Name  string
	Share float64
	Fits  bool
	Lines []string
	Style markup.CSS
}

func setOf(text string) Set {
	return Set{Package: "precompile", Sources: map[string]string{"page": text}, Roots: map[string]any{"page": &page{}}}
}

// TestMade: a small template, to be read.
func TestMade(t *testing.T) {
	made, err := setOf(`<h1>{{.Name}}</h1>{{range $i, $x := .Lines}}{{if $i}}, {{end}}{{$x}}{{else}}none{{end}}`).Go()
	require.NoError(t, err)
	assert.Equal(t, "// Code generated of the templates beside it by go test -update; DO NOT EDIT.\n\npackage precompile\n\nimport (\n\t\"newmake/compile/show/markup\"\n)\n\n"+`func writePage(w *markup.Page, d *page) {
	w.Raw(`+"`<h1>`"+`)
	w.Text(d.Name)
	w.Raw(`+"`</h1>`"+`)
	{
		v1 := d.Lines
		for v2 := range v1 {
			v3 := v1[v2]
			if v2 != 0 {
				w.Raw(`+"`, `"+`)
			}
			w.Text(v3)
		}
		if len(v1) == 0 {
			w.Raw(`+"`none`"+`)
		}
	}
}
`, string(made))
}

// TestRefused: what it does not know it does not guess at, least of all how a text is made
// harmless.
func TestRefused(t *testing.T) {
	for text, want := range map[string]string{
		`{{.Fits}}`:                            "is a bool",
		`{{.Nothing}}`:                         "no such template",
		`<script>let x = {{.Name}}</script>`:   "is escaped with",
		`<p onclick="{{.Name}}"></p>`:          "is escaped with",
		`<a href="{{.Name}}">x</a>`:            "is escaped with",
		`<p title={{.Name}}></p>`:              "is escaped with",
		`<style>p { {{.Name}} }</style>`:       "",
		`<p>{{.Style}}</p>`:                    "",
		`{{template "other" .}}`:               "no such template",
		`{{if gt .Name .Share}}x{{end}}`:       "beside",
		`{{with $x := .Name}}{{$x}}{{end}}`:    "a variable of a with",
		`{{printf "%s" .Name}}`:                "no function printf",
		`{{range .Name}}x{{end}}`:              "a range over string",
		`{{.Name.Length}}`:                     "Length of string",
		`<p>{{index .Lines 0}} {{len .Lines}}`: "",
	} {
		_, err := setOf(text).Go()
		if want == "" {
			assert.NoError(t, err, text)
		} else if want == "no such template" {
			assert.Error(t, err, text)
		} else {
			assert.ErrorContains(t, err, want, text)
		}
	}
}
