package phone

import (
	"context"
	"net"
	"slices"
	"strings"
	"time"
)

// Name is the name under which the local network finds this computer by
// multicast DNS (RFC 6762), which stays when its address changes; empty where
// nothing answers to it with one of the addresses. Whether a phone asks in this
// way is for the phone to say.
func Name(ctx context.Context, host string, addresses []net.IP) string {
	host, _, _ = strings.Cut(host, ".")
	if host == "" {
		return ""
	}
	name := strings.ToLower(host) + ".local"
	ctx, cancel := context.WithTimeout(ctx, time.Second)
	defer cancel()
	found, err := net.DefaultResolver.LookupIP(ctx, "ip4", name)
	if err != nil || !slices.ContainsFunc(found, func(ip net.IP) bool {
		return slices.ContainsFunc(addresses, ip.Equal)
	}) {
		return ""
	}
	return name
}
