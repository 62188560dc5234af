package digest

func sum256(text []byte) [32]byte { return small(text) }
