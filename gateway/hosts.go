package gateway

import (
	"net"
	"net/http"
	"strings"
)

// thisMachineOnly refuses requests for another host name, so that a foreign page whose name is made to point at this machine cannot use a
// server that asks for no password.
func thisMachineOnly(demand bool, next http.Handler) http.Handler {
	if !demand {
		return next
	}
	return http.HandlerFunc(func(w http.ResponseWriter, r *http.Request) {
		if !isLoopback(r.Host) {
			writeError(w, http.StatusMisdirectedRequest, Error{Code: "PERMISSION_DENIED", Reason: "OTHER_HOST",
				Message: "this server answers for this machine only: use localhost", RequestID: r.Header.Get(requestIDHeader)})
			return
		}
		next.ServeHTTP(w, r)
	})
}

// isLoopback tells whether a Host header, with or without a port, names this machine.
func isLoopback(host string) bool {
	if name, _, err := net.SplitHostPort(host); err == nil {
		host = name
	}
	ip := net.ParseIP(strings.Trim(host, "[]"))
	return strings.EqualFold(host, "localhost") || ip != nil && ip.IsLoopback()
}
