//go:build !js

package digest

import "crypto/sha256"

func sum256(text []byte) [32]byte { return sha256.Sum256(text) }
