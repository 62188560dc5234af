package serve

import (
	"fmt"
	"net"
	"net/netip"
	"strings"

	"newmake/lang/diag"
)

// Private reads the address of this machine on a network of the house's own. It is
// written in digits, for a name can come to lead elsewhere. Private addresses are those
// of RFC 1918 (10/8, 172.16/12, 192.168/16) and of RFC 4193 (fc00::/7): no router
// passes them on, so that what is served there stays in the house.
func Private(text string) (netip.Addr, error) {
	a, err := netip.ParseAddr(text)
	if err != nil {
		return a, diag.Refuse("--lan %q is no address: write that of this machine in digits%s", text, yours())
	}
	why := ""
	switch a = a.Unmap(); {
	case a.Zone() != "":
		why = "names an interface; write an address alone"
	case a.IsUnspecified():
		why = "is every address of this machine, on every network it is in; name the one"
	case a.IsLoopback():
		why = "is this machine alone: --open serves there without --lan"
	case a.IsMulticast():
		why = "is an address of many"
	case a.IsLinkLocalUnicast():
		why = "is an address that this machine gave itself, for want of a network"
	case !a.IsPrivate():
		why = "can be reached from outside of the house"
	default:
		return a, nil
	}
	return a, diag.Refuse("--lan %s %s. The page is served on a private address only%s", text, why, yours())
}

// yours are the private addresses that this machine has, as words to go on with.
func yours() string {
	all, err := net.InterfaceAddrs()
	if err != nil {
		return ""
	}
	var mine []string
	for _, one := range all {
		if p, err := netip.ParsePrefix(one.String()); err == nil && p.Addr().IsPrivate() {
			mine = append(mine, p.Addr().String())
		}
	}
	if len(mine) == 0 {
		return "; this machine has none"
	}
	return fmt.Sprintf("; this machine has %s", strings.Join(mine, " and "))
}
