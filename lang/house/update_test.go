package house

import "flag"

var _ = flag.Bool("update", false, "these tests have no golden files; for go test ./lang/... -update")
