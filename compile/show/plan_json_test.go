package show_test

import (
	"bytes"
	"encoding/json"
	"newmake/compile/plan"
	"newmake/compile/show/internal/plantest"
	show "newmake/compile/show/json"
	"strings"
	"testing"

	"github.com/google/go-cmp/cmp"
	"github.com/google/jsonschema-go/jsonschema"
	"github.com/stretchr/testify/assert"
	"github.com/stretchr/testify/require"
)

// asJSON is a plan as JSON.
func asJSON(t testing.TB, p *plan.Plan) string {
	t.Helper()
	var b bytes.Buffer
	require.NoError(t, show.Write(&b, p))
	return b.String()
}

func TestJSONGolden(t *testing.T) {
	plantest.Golden(t, "ferry-landing.json", asJSON(t, plantest.Plain(t, plantest.Lantern, "Ferry Landing")))
}

// What a recipe says keeps its bytes, and none that a terminal would obey stands.
func TestJSONHostileNames(t *testing.T) {
	text := asJSON(t, plantest.Hostile(t))
	plantest.Harmless(t, text)
	var back plan.Plan
	require.NoError(t, json.Unmarshal([]byte(text), &back))
	assert.Equal(t, plantest.Evil, back.Batch.Name)
}

func TestJSONRoundTrip(t *testing.T) {
	p := plantest.Plan(t, plantest.Lantern, "Ferry Landing")
	var b bytes.Buffer
	require.NoError(t, show.Write(&b, p))
	assert.True(t, strings.HasPrefix(b.String(), "{\n  \"format\": \"newmake.plan\",\n  \"version\": \"1.0\",\n  \"summary\": {\n    \"originalGravitySG\":"))
	assert.True(t, strings.HasSuffix(b.String(), "}\n"))
	var back plan.Plan
	d := json.NewDecoder(&b)
	d.DisallowUnknownFields()
	require.NoError(t, d.Decode(&back))
	assert.Empty(t, cmp.Diff(p, &back))
}

func BenchmarkJSON(b *testing.B) {
	p := plantest.Plan(b, plantest.Lantern, "Ferry Landing")
	b.ReportAllocs()
	for b.Loop() {
		var out bytes.Buffer
		if err := show.Write(&out, p); err != nil {
			b.Fatal(err)
		}
	}
}

// Every example as JSON is what the published schema says.
func TestBySchema(t *testing.T) {
	var s jsonschema.Schema
	require.NoError(t, json.Unmarshal(plan.Schema, &s))
	r, err := s.Resolve(nil)
	require.NoError(t, err)
	for _, e := range plantest.Examples {
		p := plantest.Plan(t, plantest.Lantern, e.Batch)
		p.Source = &plan.Source{File: "a.batch", Hash: "00"}
		var b bytes.Buffer
		require.NoError(t, show.Write(&b, p))
		var v any
		require.NoError(t, json.Unmarshal(b.Bytes(), &v))
		assert.NoError(t, r.Validate(v), e.Batch)
	}
}
