// Package gateway is the HTTP edge of pitgate: it turns REST calls into gRPC calls on the real server, the session cookie into a bearer
// token, statuses into plain JSON errors, and serves the page. It decides nothing: every permission and every rule lives behind the connection.
package gateway
