package diag_test

import (
	"strings"
	"testing"

	"github.com/stretchr/testify/assert"
	"github.com/stretchr/testify/require"

	"newmake/lang/diag"
	"newmake/lang/diag/annotation"
)

func TestAnnotations(t *testing.T) {
	src := diag.NewSource("a,b:c.batch", []byte("corn 5 lbs\n}\n"))
	var out strings.Builder
	require.NoError(t, annotation.Write(&out, diag.List{
		{Code: diag.CodeUnknownUnit, Summary: "5 % of \x1b[31mit", Help: "one\ntwo", At: src.Span(7, 10), Batches: []string{"A, B"}},
		{Code: diag.CodeExtraBrace, Severity: diag.Warning, Summary: "two lines", At: src.Span(5, 12)},
		{Code: diag.CodeNoBatch, Severity: diag.Note, Summary: "nowhere"},
		{Code: diag.CodeUnreadable, Summary: "unread", At: diag.NewSource("gone.batch", nil).Span(0, 0)},
	}))
	assert.Equal(t, strings.Join([]string{
		"::error file=a%2Cb%3Ac.batch,line=1,endLine=1,col=8,endColumn=11,title=newmake NM0301%3A A%2C B::5 %25 of ␛[31mit%0Aone%0Atwo",
		"::warning file=a%2Cb%3Ac.batch,line=1,endLine=2,title=newmake NM0117::two lines",
		"::notice title=newmake NM0250::nowhere",
		"::error file=gone.batch,title=newmake NM0504::unread", "",
	}, "\n"), out.String())
}
