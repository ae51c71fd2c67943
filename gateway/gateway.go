package gateway

import (
	"context"
	"errors"
	"fmt"
	"io/fs"
	"net/http"

	"github.com/grpc-ecosystem/grpc-gateway/v2/runtime"
	"google.golang.org/grpc"

	pb "pitgate/proto/pitgate/v1"
)

// Options says what the edge serves beside the API.
type Options struct {
	// Page holds index.html and the page's assets. Required.
	Page fs.FS
	// OpenAPI is the description of the REST API, served as /openapi.json; without it that path answers 404.
	OpenAPI []byte
	// TLS tells that the listener speaks TLS, so that browsers may be told to insist on it.
	TLS bool
	// TrustForwarded tells that a reverse proxy in front sets X-Forwarded-For. Otherwise the header is dropped.
	TrustForwarded bool
	// ThisMachineOnly refuses requests whose Host is not localhost or a loopback address.
	ThisMachineOnly bool
	// TrustedOrigins may send requests with cookies from another origin, e.g. "https://club.example".
	TrustedOrigins []string
}

// New returns the handler of everything HTTP: /v1, /healthz, /openapi.json and the page. The connection must lead to a server whose
// interceptors run; ctx is for building only. It fails when the page is missing or an origin is malformed.
func New(ctx context.Context, conn grpc.ClientConnInterface, opts Options) (http.Handler, error) {
	if opts.Page == nil {
		return nil, errors.New("gateway: page: missing")
	}
	api, err := newAPI(ctx, conn)
	if err != nil {
		return nil, err
	}
	guard, err := crossOrigin(opts.TrustedOrigins)
	if err != nil {
		return nil, err
	}
	root := http.NewServeMux()
	root.Handle("/v1/", noStore(guard.Handler(limitBodies(api))))
	root.Handle("GET /healthz", noStore(healthHandler(conn)))
	root.Handle("GET /openapi.json", openAPIHandler(opts.OpenAPI))
	root.Handle("/", pageHandler(opts.Page))
	return securityHeaders(opts.TLS, requestIDs(thisMachineOnly(opts.ThisMachineOnly, forwarded(opts.TrustForwarded, root)))), nil
}

// newAPI registers every service's REST routes on one mux.
func newAPI(ctx context.Context, conn grpc.ClientConnInterface) (*runtime.ServeMux, error) {
	mux := runtime.NewServeMux(muxOptions()...)
	err := errors.Join(
		pb.RegisterModelsServiceHandlerClient(ctx, mux, pb.NewModelsServiceClient(conn)),
		pb.RegisterFieldsServiceHandlerClient(ctx, mux, pb.NewFieldsServiceClient(conn)),
		pb.RegisterApprovalsServiceHandlerClient(ctx, mux, pb.NewApprovalsServiceClient(conn)),
		pb.RegisterAssessmentsServiceHandlerClient(ctx, mux, pb.NewAssessmentsServiceClient(conn)),
		pb.RegisterPeopleServiceHandlerClient(ctx, mux, pb.NewPeopleServiceClient(conn)),
		pb.RegisterIncidentsServiceHandlerClient(ctx, mux, pb.NewIncidentsServiceClient(conn)),
		pb.RegisterRulePacksServiceHandlerClient(ctx, mux, pb.NewRulePacksServiceClient(conn)),
		pb.RegisterLedgerServiceHandlerClient(ctx, mux, pb.NewLedgerServiceClient(conn)),
	)
	if err != nil {
		return nil, fmt.Errorf("gateway: routes: %w", err)
	}
	return mux, nil
}

// crossOrigin refuses unsafe requests that a browser sends from another origin.
func crossOrigin(trusted []string) (*http.CrossOriginProtection, error) {
	guard := http.NewCrossOriginProtection()
	for _, origin := range trusted {
		if err := guard.AddTrustedOrigin(origin); err != nil {
			return nil, fmt.Errorf("gateway: trusted origin %q: %w", origin, err)
		}
	}
	guard.SetDenyHandler(http.HandlerFunc(func(w http.ResponseWriter, r *http.Request) {
		writeError(w, http.StatusForbidden, Error{Code: "PERMISSION_DENIED", Reason: "CROSS_ORIGIN",
			Message: "the request came from another origin", RequestID: r.Header.Get(requestIDHeader)})
	}))
	return guard, nil
}
