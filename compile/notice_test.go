package compile

import (
	"newmake/compile/plan"
	"newmake/lang/diag"
	"newmake/lang/recipe"
	"slices"
	"testing"

	"github.com/stretchr/testify/assert"
	"github.com/stretchr/testify/require"
)

func TestABrokenPromiseIsANotice(t *testing.T) {
	p := planned(t, edited(t, func(b *recipe.Batch) { b.Promises = []recipe.Promise{{What: "casks", Value: 7}} }))
	require.NotEmpty(t, p.Notices)
	i := slices.IndexFunc(p.Notices, func(n plan.Notice) bool { return n.Code == string(diag.CodePromiseBroken) })
	require.GreaterOrEqual(t, i, 0)
	assert.Equal(t, "error", p.Notices[i].Severity)
}

func TestACutIsSpokenOfAsWritten(t *testing.T) {
	_, list := Compile(edited(t, func(b *recipe.Batch) {
		b.Spirit.HeartsFrom = recipe.Cut{By: recipe.ByVapourTemp, TempC: 60}
	}))
	i := slices.IndexFunc(list, func(d diag.Diagnostic) bool { return d.Code == diag.CodeCutUnreached })
	require.GreaterOrEqual(t, i, 0, list.Error())
	assert.Contains(t, list[i].Summary, "the vapour at 140 F, and it is never so cool: it starts at 183 F")
	assert.NotContains(t, list[i].Summary, "strength")

	_, list = Compile(edited(t, func(b *recipe.Batch) { // a third of a degree below where it starts: 182.6 F and 183 F are no two figures
		b.Spirit.HeartsFrom = recipe.Cut{By: recipe.ByVapourTemp, TempC: 83.62}
	}))
	i = slices.IndexFunc(list, func(d diag.Diagnostic) bool { return d.Code == diag.CodeCutUnreached })
	require.GreaterOrEqual(t, i, 0, list.Error())
	assert.Regexp(t, `the vapour at 183 F, and it is never so cool: it starts at 18[23]\.\d F`, list[i].Summary)
}
