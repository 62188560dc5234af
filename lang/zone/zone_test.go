package zone

import (
	"archive/zip"
	"bytes"
	"fmt"
	"io"
	"maps"
	"os"
	"os/exec"
	"path/filepath"
	"slices"
	"strings"
	"testing"
	"time"

	"github.com/stretchr/testify/assert"
	"github.com/stretchr/testify/require"

	"newmake/lang/testflag"
)

// archive is the zones of the Go distribution, by name.
func archive(t testing.TB) map[string][]byte {
	t.Helper()
	z, err := zip.OpenReader(filepath.Join(goroot(t), "lib", "time", "zoneinfo.zip"))
	require.NoError(t, err)
	defer z.Close()
	all := map[string][]byte{}
	for _, f := range z.File {
		if strings.HasSuffix(f.Name, "/") {
			continue
		}
		r, err := f.Open()
		require.NoError(t, err)
		all[f.Name], err = io.ReadAll(r)
		require.NoError(t, err)
		require.NoError(t, r.Close())
	}
	return all
}

// goroot is where the Go that runs the test lies.
func goroot(t testing.TB) string {
	t.Helper()
	out, err := exec.Command("go", "env", "GOROOT").Output()
	require.NoError(t, err)
	return strings.TrimSpace(string(out))
}

// packed is zones.bin.
func packed(t testing.TB, all map[string][]byte) []byte {
	t.Helper()
	names := slices.Sorted(maps.Keys(all))
	var index, data bytes.Buffer
	index.WriteString("\n")
	at := map[string]string{} // offset and length, by what a zone holds
	for _, name := range names {
		tzif := string(all[name])
		if at[tzif] == "" {
			from := data.Len()
			data.WriteString(tzif)
			at[tzif] = fmt.Sprintf("%d %d", from, data.Len()-from)
		}
		fmt.Fprintf(&index, "%s %s\n", name, at[tzif])
	}
	return append(append(index.Bytes(), '\n'), data.Bytes()...)
}

// Every zone of Go's archive is known by each of its names, and what is carried
// along is whole.
func TestEveryZone(t *testing.T) {
	all := archive(t)
	if testflag.Update() {
		require.NoError(t, os.WriteFile("zones.bin", packed(t, all), 0o644))
		t.Skip("zones.bin is written; what is built with it is tried the next time")
	}
	for name := range all {
		_, err := Load(name)
		assert.NoError(t, err, "%s; go test ./lang/zone -update takes in what is new", name)
	}
	index, _, _ := strings.Cut(zones, "\n\n")
	names := strings.Split(index, "\n")[1:]
	assert.Greater(t, len(names), 500)
	for _, line := range names {
		name, _, _ := strings.Cut(line, " ")
		_, err := Load(name)
		assert.NoError(t, err, name)
	}
}

// Written out, every zone is what it was, hour by hour about each of its changes and
// through a leap year's last days.
func TestWrittenOut(t *testing.T) {
	all := archive(t)
	names := slices.Sorted(maps.Keys(all))
	tried, more := 0, 0
	for i, name := range names {
		if i%testflag.Every(29) != 0 && name != "America/New_York" && name != "Europe/Dublin" && name != "Africa/Casablanca" {
			continue
		}
		tried++
		tzif := all[name]
		want, err := time.LoadLocationFromTZData(name, tzif)
		require.NoError(t, err)
		long := written(tzif, want)
		if len(long) > len(tzif) {
			more++
		}
		got, err := time.LoadLocationFromTZData(name, long)
		require.NoError(t, err)
		same := func(at time.Time) bool {
			a, x := at.In(want).Zone()
			b, y := at.In(got).Zone()
			return a == b && x == y && at.In(want).IsDST() == at.In(got).IsDST()
		}
		for at := time.Date(1950, 1, 1, 0, 30, 0, 0, time.UTC); at.Year() < 2064; at = at.Add(31 * time.Hour) {
			require.True(t, same(at), "%s at %s", name, at)
		}
		for at := time.Date(2026, 1, 1, 0, 0, 0, 0, time.UTC); at.Year() < 2063; {
			_, next := at.In(got).ZoneBounds()
			if next.IsZero() || !next.After(at) {
				break
			}
			for _, by := range []time.Duration{-time.Second, 0, time.Second} {
				require.True(t, same(next.Add(by)), "%s at %s", name, next.Add(by))
			}
			at = next
		}
	}
	assert.Greater(t, more, tried/10)
}

// Offsets that everybody knows, on both sides of a change of clocks.
func TestOffsets(t *testing.T) {
	for _, c := range []struct {
		name, at string
		hours    float64
	}{
		{"UTC", "2026-07-01T00:00:00Z", 0},
		{"America/New_York", "2026-03-08T06:59:59Z", -5},
		{"America/New_York", "2026-03-08T07:00:00Z", -4},
		{"Europe/London", "2026-10-25T00:59:59Z", 1},
		{"Europe/London", "2026-10-25T01:00:00Z", 0},
		{"Asia/Kolkata", "2026-01-01T00:00:00Z", 5.5},
		{"Australia/Hobart", "2040-01-01T00:00:00Z", 11},
	} {
		at, err := time.Parse(time.RFC3339, c.at)
		require.NoError(t, err)
		z, err := Load(c.name)
		require.NoError(t, err)
		_, s := at.In(z).Zone()
		assert.Equal(t, c.hours, float64(s)/3600, "%s at %s", c.name, c.at)
		assert.Equal(t, c.name, z.String())
	}
}

func TestNoZone(t *testing.T) {
	for _, name := range []string{"", "Local", "America", "america/new_york", "America/New_York 0", "America/New_York\n", "../UTC", "New York", "\n"} {
		_, err := Load(name)
		assert.Error(t, err, "%q", name)
	}
}

func BenchmarkLoad(b *testing.B) {
	b.ReportAllocs()
	for b.Loop() {
		if _, err := Load("America/New_York"); err != nil {
			b.Fatal(err)
		}
	}
}
