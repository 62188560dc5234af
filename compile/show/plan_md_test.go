package show_test

import (
	"bytes"
	"newmake/compile/measure"
	"newmake/compile/plan"
	"newmake/compile/show/internal/plantest"
	"newmake/compile/show/md"
	"strings"
	"testing"

	"github.com/stretchr/testify/assert"
	"github.com/stretchr/testify/require"
	"github.com/yuin/goldmark"
	"github.com/yuin/goldmark/extension"
)

func markdownOf(t *testing.T, p *plan.Plan) string {
	t.Helper()
	var b bytes.Buffer
	require.NoError(t, md.Write(&b, p, measure.US))
	return b.String()
}

// Read back by a parser of CommonMark with GitHub's tables and links.
func TestMarkdown(t *testing.T) {
	p := plantest.Plan(t, plantest.Lantern, "Ferry Landing")
	p.Batch.Name = "a|b <script>alert(1)</script> @someone #1 \x1b[2J `x` https://x.example www.x.example"
	p.Law.Title, p.Plant.Name = "<img src=x>", "![x](http://x.example/y)"
	p.Notices = append(p.Notices, plan.Notice{Code: "NM0000", Severity: "warning", Summary: "[x](javascript:1)", Line: 3})
	text := markdownOf(t, p)
	var html bytes.Buffer
	require.NoError(t, goldmark.New(goldmark.WithExtensions(extension.GFM)).Convert([]byte(text), &html))
	page := html.String()
	for _, bad := range []string{"<script", "<img", "<a ", "\x1b", "@someone", "{}"} {
		assert.False(t, strings.Contains(page, bad), "%q is in the page", bad)
	}
	assert.Contains(t, page, "a|b &lt;script&gt;alert(1)&lt;/script&gt;")
	assert.Equal(t, 4, strings.Count(page, "<table>"))
	assert.Equal(t, len(p.Bill.Lines)+len(p.Law.Conditions)+len(p.Schedule.Steps)+numbers(text),
		strings.Count(page, "<tr>")-4)
	assert.Contains(t, page, "<td>Heat to 190 F.</td>")
}

// numbers counts the rows of the first table.
func numbers(text string) int {
	_, rest, _ := strings.Cut(text, "|---|---:|\n")
	table, _, _ := strings.Cut(rest, "\n\n")
	return strings.Count(table, "\n") + 1
}
