package phone

import (
	"net"
	"net/http"
)

// strict adds to each answer what keeps the page apart from all others (HTML
// Standard, cross-origin isolation; Fetch Standard, cross-origin resource policy)
// and, for a name, what keeps it on TLS (RFC 6797). Browsers ignore the latter
// for an address, and for localhost it would take the name away from every other
// program of this computer that serves without TLS.
func strict(next http.Handler) http.Handler {
	return http.HandlerFunc(func(w http.ResponseWriter, r *http.Request) {
		h := w.Header()
		h.Set("Cross-Origin-Opener-Policy", "same-origin")
		h.Set("Cross-Origin-Embedder-Policy", "require-corp")
		h.Set("Cross-Origin-Resource-Policy", "same-origin")
		h.Set("Origin-Agent-Cluster", "?1")
		h.Set("X-Frame-Options", "DENY")
		if host, _, err := net.SplitHostPort(r.Host); err == nil && host != "localhost" && net.ParseIP(host) == nil {
			h.Set("Strict-Transport-Security", "max-age=2592000")
		}
		next.ServeHTTP(w, r)
	})
}
