package serve

import (
	"testing"

	"github.com/stretchr/testify/assert"
	"github.com/stretchr/testify/require"
)

// Just inside and just outside of each range that is private (RFC 1918, RFC 4193).
func TestPrivate(t *testing.T) {
	for _, in := range []string{"10.0.0.0", "10.255.255.255", "172.16.0.0", "172.31.255.255", "192.168.0.0", "192.168.255.255",
		"fc00::", "fdff:ffff:ffff:ffff:ffff:ffff:ffff:ffff", "::ffff:192.168.1.2"} {
		a, err := Private(in)
		require.NoError(t, err, in)
		assert.True(t, a.IsPrivate())
		assert.False(t, a.Is4In6(), "it is bound as what it is")
	}
	for out, why := range map[string]string{
		"9.255.255.255": "from outside", "11.0.0.0": "from outside", "172.15.255.255": "from outside", "172.32.0.0": "from outside",
		"192.167.255.255": "from outside", "192.169.0.0": "from outside", "100.64.0.1": "from outside", "8.8.8.8": "from outside",
		"fbff::1": "from outside", "2001:db8::1": "from outside", "::ffff:8.8.8.8": "from outside",
		"0.0.0.0": "every address", "::": "every address", "::ffff:0.0.0.0": "every address",
		"127.0.0.1": "this machine alone", "127.8.8.8": "this machine alone", "::1": "this machine alone",
		"169.254.1.1": "gave itself", "fe80::1": "gave itself", "fe80::1%eth0": "interface", "fd00::1%eth0": "interface",
		"224.0.0.1": "of many", "ff02::1": "of many", "255.255.255.255": "from outside",
		"": "no address", "still-house": "no address", "localhost": "no address", "192.168.1.2:80": "no address", "192.168.1": "no address",
		"0xc0a80102": "no address", "192.168.001.002": "no address", " 192.168.1.2": "no address",
	} {
		_, err := Private(out)
		require.Error(t, err, out)
		assert.Contains(t, err.Error(), why, out)
	}
}
