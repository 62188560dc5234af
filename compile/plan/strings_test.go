package plan_test

import (
	"strings"
	"testing"

	"github.com/stretchr/testify/assert"

	"newmake/compile/plan"
)

func TestStrings(t *testing.T) {
	p := &plan.Plan{
		Batch:    plan.Batch{Name: "a", Chain: []string{"b"}},
		Law:      &plan.Law{Conditions: []plan.Condition{{Asks: "c"}}},
		Schedule: plan.Schedule{Steps: []plan.Step{{Do: plan.Say("d {}", plan.Of(1, plan.Litre))}}},
	}
	q := p.Strings(strings.ToUpper)
	assert.Equal(t, "A", q.Batch.Name)
	assert.Equal(t, []string{"B"}, q.Batch.Chain)
	assert.Equal(t, "C", q.Law.Conditions[0].Asks)
	assert.Equal(t, "D {}", q.Schedule.Steps[0].Do.Text)
	assert.Nil(t, q.Cost)
	assert.Nil(t, q.Notices)
	assert.Equal(t, "a", p.Batch.Name, "the plan itself stays")
	assert.Equal(t, "b", p.Batch.Chain[0])
	assert.Equal(t, "c", p.Law.Conditions[0].Asks)
	assert.Equal(t, "d {}", p.Schedule.Steps[0].Do.Text)
}
