package main

import (
	"bytes"
	"testing"

	"github.com/stretchr/testify/assert"
	"github.com/stretchr/testify/require"
)

func TestRejoined(t *testing.T) {
	zeros := func(n int) string { return string(make([]byte, n)) }
	for name, c := range map[string]struct {
		memory string
		pieces byte
	}{
		"nothing":             {"", 0},
		"begins with zeros":   {zeros(9) + "a", 1},
		"zeros that are kept": {"a" + zeros(zerosBetween-1) + "b", 1},
		"zeros that part":     {"a" + zeros(zerosBetween) + "b", 2},
		"far on":              {zeros(200_000) + "a" + zeros(5000) + "bc", 2},
	} {
		data := dataOf([]byte(c.memory))
		assert.Equal(t, c.pieces, data[0], name)
		memory, err := memoryOf(data)
		require.NoError(t, err, name)
		assert.True(t, bytes.Equal([]byte(c.memory), memory), name)
	}

	// Two pieces with a gap, between a section of code and one of no meaning.
	const head, code, custom = "\x00asm\x01\x00\x00\x00", "\x0a\x02\x01\x00", "\x00\x03\x02no"
	module := head + code + "\x0b\x0e\x02\x00\x41\x08\x0b\x01a\x00\x41\xc0\x00\x0b\x01b" + custom
	got, err := rejoined([]byte(module))
	require.NoError(t, err)
	assert.Equal(t, head+code+"\x0b\x3f\x01\x00\x41\x08\x0b\x39a"+zeros(55)+"b"+custom, string(got))
	again, err := rejoined(got)
	require.NoError(t, err)
	assert.Equal(t, got, again)

	memory, err := memoryOf([]byte("\x02\x00\x41\x04\x0b\x01b\x00\x41\x01\x0b\x01a"))
	require.NoError(t, err)
	assert.Equal(t, "\x00a\x00\x00b", string(memory), "in any order")

	for name, bad := range map[string]string{
		"no module":         "abcdefgh",
		"cut short":         module[:len(module)-6],
		"a count of pieces": head + "\x0c\x01\x01",
		"before the memory": head + "\x0b\x07\x01\x00\x41\x7f\x0b\x01a",
		"too far on":        head + "\x0b\x0b\x01\x00\x41\x81\x80\x80\x80\x01\x0b\x01a",
		"no constant":       head + "\x0b\x07\x01\x00\x23\x08\x0b\x01a",
		"something behind":  head + "\x0b\x08\x01\x00\x41\x08\x0b\x01ab",
		"too long a number": head + "\x0b\x0b\x01\x00\x41\xff\xff\xff\xff\xff\xff\x0b\x00",
	} {
		_, err := rejoined([]byte(bad))
		assert.Error(t, err, name)
	}
}

func TestForgetNames(t *testing.T) {
	table := func(from, to byte, names string) []byte {
		m := append([]byte("before\xf1\xff\xff\xff\x00\x00\x01\x08"), make([]byte, 64)...)
		m[6+8+24], m[6+8+32] = from, to
		return append(m, names...)
	}
	const names = "runtime.main\x00newmake/lang.Parse\x00"
	m := table(72, byte(72+len(names)), names+"behind\x00")
	forgetNames(m)
	assert.Equal(t, "runtime.main\x00"+string(make([]byte, 19))+"behind\x00", string(m[6+72:]))
	for _, other := range [][]byte{table(64, 80, names), table(72, 250, names), table(72, 70, names), []byte("\xf1\xff\xff\xff\x00\x00\x01\x08"), nil} {
		was := string(other)
		forgetNames(other)
		assert.Equal(t, was, string(other), "another form")
	}
}

func TestSigned(t *testing.T) {
	for _, v := range []int{0, 1, 63, 64, 127, 128, 8191, 8192, 6_984_160, 1<<31 - 1, -1, -64, -65} {
		r := reader{rest: appendSigned(nil, int64(v))}
		assert.Equal(t, v, r.signed())
		assert.Empty(t, r.rest)
		assert.False(t, r.failed)
	}
}
