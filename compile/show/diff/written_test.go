package diff

import (
	"testing"

	"newmake/compile/show/markup"
	"newmake/compile/show/markup/precompile"
)

func templates(t testing.TB) precompile.Set {
	return precompile.Set{Package: "diff", Sources: map[string]string{"page": precompile.Files(t, "page.html")["page.html"]}, Roots: map[string]any{"page": &view{}}}
}

// TestWritten: written.go is what the templates make.
func TestWritten(t *testing.T) { templates(t).Keep(t, "written.go") }

// TestSameAsTemplates: every part of a page, and text that would do harm if it were obeyed.
func TestSameAsTemplates(t *testing.T) {
	const evil = `</title><script>alert("1+1")</script>'&`
	edits := []editView{{evil, evil, evil, []string{evil, ""}}, {}}
	full := pairView{
		evil, evil, evil, evil, evil, evil, evil, []billView{{evil, evil, evil, evil, evil, evil}, {}}, edits, []string{evil}, [][]string{{evil, "", evil, evil}}, edits,
		&whyView{"", []string{evil}, []whyRow{{evil, []cell{{evil, "better"}, {}}, true}, {}}, evil}, []outcomeView{{evil, evil, evil, evil, evil, "worse"}, {}},
	}
	one := full
	one.Why = &whyView{One: evil}
	for _, v := range []*view{{}, {Look: markup.Look{Style: "<style>p{}</style>", Policy: evil}, Title: evil, Pairs: []pairView{full, {}, one}, Loose: []string{evil, ""}}} {
		var page markup.Page
		writePage(&page, v)
		templates(t).Same(t, "page", nil, v, page.String())
	}
}
