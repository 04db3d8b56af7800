package phone

import (
	"bytes"
	"cmp"
	"net"
	"slices"
)

// Addresses lists the addresses under which a phone on the local network may
// reach this computer, the likeliest first.
func Addresses() ([]net.IP, error) {
	all, err := net.InterfaceAddrs()
	if err != nil {
		return nil, err
	}
	return local(all, outward()), nil
}

// local keeps the private addresses of version 4 (RFC 1918, RFC 3927) of a
// list; likeliest goes first.
func local(all []net.Addr, likeliest net.IP) (ips []net.IP) {
	for _, a := range all {
		n, ok := a.(*net.IPNet)
		if !ok {
			continue
		}
		if ip := n.IP.To4(); ip != nil && (ip.IsPrivate() || ip.IsLinkLocalUnicast()) {
			ips = append(ips, ip)
		}
	}
	slices.SortFunc(ips, func(a, b net.IP) int {
		return cmp.Or(cmp.Compare(rank(a, likeliest), rank(b, likeliest)), bytes.Compare(a, b))
	})
	return ips
}

func rank(ip, likeliest net.IP) int {
	switch {
	case ip.Equal(likeliest):
		return 0
	case ip.IsLinkLocalUnicast():
		return 2
	}
	return 1
}

// outward is the address from which this computer would reach the world: that
// of the network it shares with the phone, as a rule. Nothing is sent; the
// address asked about is one that belongs to nobody (RFC 5737).
func outward() net.IP {
	c, err := net.Dial("udp4", "192.0.2.1:9")
	if err != nil {
		return nil
	}
	defer c.Close()
	return c.LocalAddr().(*net.UDPAddr).IP
}
