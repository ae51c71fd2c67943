package api

import (
	"errors"
	"fmt"
	"log/slog"
	"runtime"
	"time"

	"buf.build/go/protovalidate"
	"google.golang.org/grpc"
	"google.golang.org/grpc/health"
	healthpb "google.golang.org/grpc/health/grpc_health_v1"
	"google.golang.org/grpc/keepalive"
	"google.golang.org/grpc/reflection"

	pb "pitgate/proto/pitgate/v1"
	"pitgate/server/jobs"
	"pitgate/server/postgres"
)

// Config is what a server needs.
type Config struct {
	// Store is the database. Required.
	Store *postgres.Store
	// Log takes one line a call. Nil discards.
	Log *slog.Logger
	// Now is the clock; nil is the machine's.
	Now func() time.Time
	// DemoClub is the id of the club whose people may be chosen without a password; empty outside the demo.
	DemoClub string
	// Reflection lets tools ask what the server offers.
	Reflection bool
}

// Server is the gRPC server with its health service.
type Server struct {
	*grpc.Server
	// Health says whether the server takes calls; Shutdown it first.
	Health *health.Server
	// Assessor does the jobs that compute approvals again.
	Assessor jobs.Assessor
}

// receiveCap is the largest message in bytes that is read at all; a photo needs it.
const receiveCap = 16 << 20

// New builds the server with every service and interceptor. It fails on a broken policy or contract.
func New(config Config) (*Server, error) {
	if config.Store == nil {
		return nil, errors.New("api: store: missing")
	}
	if config.Log == nil {
		config.Log = slog.New(slog.DiscardHandler)
	}
	if config.Now == nil {
		config.Now = time.Now
	}
	policy, err := LoadPolicy()
	if err != nil {
		return nil, fmt.Errorf("api: %w", err)
	}
	validator, err := protovalidate.New()
	if err != nil {
		return nil, fmt.Errorf("api: contract: %w", err)
	}
	doors, err := newDoors(config.Now)
	if err != nil {
		return nil, fmt.Errorf("api: %w", err)
	}
	queue, err := jobs.NewQueue()
	if err != nil {
		return nil, fmt.Errorf("api: %w", err)
	}
	b := &backend{store: config.Store, validator: validator, now: config.Now, log: config.Log, doors: doors, queue: queue, demoClub: config.DemoClub,
		computing: make(chan struct{}, runtime.GOMAXPROCS(0))}
	server := &Server{Server: grpc.NewServer(serverOptions(b, policy)...), Health: health.NewServer(), Assessor: &reassessor{b}}
	register(server, b)
	if config.Reflection {
		reflection.Register(server)
	}
	return server, nil
}

// register adds every service.
func register(s *Server, b *backend) {
	pb.RegisterModelsServiceServer(s, &modelsService{backend: b})
	pb.RegisterFieldsServiceServer(s, &fieldsService{backend: b})
	pb.RegisterApprovalsServiceServer(s, &approvalsService{backend: b})
	pb.RegisterAssessmentsServiceServer(s, &assessmentsService{backend: b})
	pb.RegisterPeopleServiceServer(s, &peopleService{backend: b})
	pb.RegisterIncidentsServiceServer(s, &incidentsService{backend: b})
	pb.RegisterRulePacksServiceServer(s, &rulePacksService{backend: b})
	pb.RegisterLedgerServiceServer(s, &ledgerService{backend: b})
	healthpb.RegisterHealthServer(s, s.Health)
}

// serverOptions sets limits and the chain. Outermost first: the id, so that every line has it; the log, which also maps errors; recovery
// below it, so that a panic is logged like any other fault.
func serverOptions(b *backend, policy Policy) []grpc.ServerOption {
	return []grpc.ServerOption{
		grpc.ChainUnaryInterceptor(
			withRequestID,
			withLog(b.log, b.now),
			withRecovery,
			withDeadline,
			withCaller(b, policy),
			withPermission(policy, b.demoClub != ""),
			withIfMatch,
			withValidation(b.validator),
		),
		grpc.ChainStreamInterceptor(withStreamRecovery, withOpenStreams(policy)),
		grpc.MaxRecvMsgSize(receiveCap),
		grpc.MaxSendMsgSize(receiveCap),
		grpc.MaxConcurrentStreams(256),
		grpc.ConnectionTimeout(20 * time.Second),
		grpc.KeepaliveParams(keepalive.ServerParameters{MaxConnectionAge: 30 * time.Minute, MaxConnectionAgeGrace: time.Minute,
			Time: time.Minute, Timeout: 20 * time.Second}),
		grpc.KeepaliveEnforcementPolicy(keepalive.EnforcementPolicy{MinTime: 30 * time.Second, PermitWithoutStream: true}),
	}
}
