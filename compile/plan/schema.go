package plan

import _ "embed"

// Schema is the published JSON Schema (draft 2020-12) of a plan as JSON. A test
// makes it from the types of this package, with their comments as descriptions,
// and holds every example against it. Names that it does not know are to be
// ignored by a reader: a minor version adds some.
//
//go:embed schema.json
var Schema []byte
