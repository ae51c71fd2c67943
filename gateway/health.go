package gateway

import (
	"context"
	"net/http"
	"time"

	"google.golang.org/grpc"
	healthpb "google.golang.org/grpc/health/grpc_health_v1"
)

// healthPatience is how long /healthz waits for the server.
const healthPatience = 2 * time.Second

// healthHandler answers 200 while the server behind the connection serves, 503 otherwise.
func healthHandler(conn grpc.ClientConnInterface) http.Handler {
	client := healthpb.NewHealthClient(conn)
	return http.HandlerFunc(func(w http.ResponseWriter, r *http.Request) {
		ctx, cancel := context.WithTimeout(r.Context(), healthPatience)
		defer cancel()
		w.Header().Set("Content-Type", "application/json; charset=utf-8")
		answer, err := client.Check(ctx, &healthpb.HealthCheckRequest{})
		if err != nil || answer.GetStatus() != healthpb.HealthCheckResponse_SERVING {
			w.WriteHeader(http.StatusServiceUnavailable)
			_, _ = w.Write([]byte(`{"status":"not serving"}` + "\n"))
			return
		}
		_, _ = w.Write([]byte(`{"status":"serving"}` + "\n"))
	})
}

// openAPIHandler serves the description of the REST API.
func openAPIHandler(document []byte) http.Handler {
	return http.HandlerFunc(func(w http.ResponseWriter, r *http.Request) {
		if len(document) == 0 {
			http.NotFound(w, r)
			return
		}
		w.Header().Set("Content-Type", "application/json")
		w.Header().Set("Cache-Control", "no-cache")
		_, _ = w.Write(document)
	})
}
