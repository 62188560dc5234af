// Package zone knows the time zones of the IANA database. They are carried along,
// so that a plan does not hang on what the machine knows of zones.
//
// zones.bin is the archive of the Go distribution, each zone once, in half the room that
// package time/tzdata would take. It is not deflated: zones are alike, so that what packs
// the whole program for a browser packs them twice as well as each alone. `go test
// ./lang/zone -update` makes it anew of the archive of the Go that runs the test.
package zone

import (
	_ "embed"
	"errors"
	"fmt"
	"strconv"
	"strings"
	"time"
)

// zones begins with an empty line and a line for each name, `NAME OFFSET LENGTH`, and an empty line;
// the offset is that of the zone's data after it.
//
//go:embed zones.bin
var zones string

// Load is the zone of a name, such as America/New_York. It fails where there is
// none: names are those of the database, letter for letter, and UTC.
func Load(name string) (*time.Location, error) {
	if name == "UTC" {
		return time.UTC, nil
	}
	unknown := fmt.Errorf("there is no time zone %q", name)
	if name == "" || strings.ContainsAny(name, " \n") {
		return nil, unknown
	}
	index, data, _ := strings.Cut(zones, "\n\n")
	line := "\n" + name + " "
	at := strings.Index(index, line)
	if at < 0 {
		return nil, unknown
	}
	from, rest, _ := strings.Cut(index[at+len(line):], " ")
	long, _, _ := strings.Cut(rest, "\n")
	offset, err := strconv.Atoi(from)
	length, err2 := strconv.Atoi(long)
	if err = errors.Join(err, err2); err != nil {
		return nil, fmt.Errorf("the time zone %q: %w", name, err)
	}
	tzif := []byte(data[offset : offset+length])
	z, err := time.LoadLocationFromTZData(name, tzif)
	if err != nil {
		return nil, err
	}
	return time.LoadLocationFromTZData(name, written(tzif, z))
}
