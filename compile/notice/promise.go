package notice

import (
	"fmt"
	"strconv"

	"newmake/compile/promise"
	"newmake/lang/diag"
	"newmake/lang/recipe"
)

// Promises says which of a batch's promises its plan does not keep.
func Promises(b *recipe.Batch, answers []promise.Answer) diag.List {
	w := about(b)
	for i, a := range answers {
		e := b.Promises[i]
		if a.Promise.Times != nil {
			w.add(diag.Diagnostic{
				Code: diag.CodePromiseUntried, At: w.at(recipe.PathPromise.Child(strconv.Itoa(i + 1))),
				Summary: fmt.Sprintf("%s: %s in %d of %d runs is promised, and was not tried", e.What, w.say.Quantity(a.Promised), a.Times.Of, a.Times.In),
				Help:    "`newmake odds` tries it",
			})
			continue
		}
		if a.Kept {
			continue
		}
		way := "less"
		if a.More {
			way = "more"
		}
		w.add(diag.Diagnostic{
			Code: diag.CodePromiseBroken, At: w.at(recipe.PathPromise.Child(strconv.Itoa(i + 1))),
			Summary: fmt.Sprintf("%s: %s is promised, the plan gives %s", e.What, w.say.Quantity(a.Promised), w.say.Quantity(a.Found)),
			Help:    fmt.Sprintf("%s %s than promised: change the batch, or the promise", w.say.Quantity(a.Off), way),
		})
	}
	return w.list
}
