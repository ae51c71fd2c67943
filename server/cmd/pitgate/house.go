package main

import (
	"context"
	"crypto/tls"
	"errors"
	"fmt"
	"log/slog"
	"net"
	"net/http"
	"time"

	"google.golang.org/grpc"
	"google.golang.org/grpc/credentials/insecure"
	"google.golang.org/grpc/test/bufconn"

	"pitgate/gateway"
	"pitgate/proto"
	"pitgate/pwa"
	"pitgate/server/api"
	"pitgate/server/demo"
	"pitgate/server/jobs"
	"pitgate/server/physics/assess"
	"pitgate/server/postgres"
)

const (
	// memoryBuffer is the size in bytes of the connection between edge and server.
	memoryBuffer = 1 << 20
	// messageCap is the largest answer in bytes that the edge takes.
	messageCap = 16 << 20
	// stopPatience is how long running calls may take to end.
	stopPatience = 15 * time.Second
)

// house is the running server with its doors: HTTP, and native gRPC when asked for.
type house struct {
	settings settings
	log      *slog.Logger
	grpc     *api.Server
	http     *http.Server
	memory   *bufconn.Listener
	conn     *grpc.ClientConn
	web      net.Listener
	native   net.Listener
	// workers is nil when jobs are left to others.
	workers *jobs.Workers
	// failed gets the error of a listener that ended by itself.
	failed chan error
}

// openHouse builds everything and binds the addresses, so that a taken port is told before anything serves.
func openHouse(ctx context.Context, s settings, store *postgres.Store, log *slog.Logger) (*house, error) {
	h := &house{settings: s, log: log, memory: bufconn.Listen(memoryBuffer), failed: make(chan error, 3)}
	config := api.Config{Store: store, Log: log, Reflection: s.reflection}
	if s.demo {
		config.DemoClub = demo.ClubID
	}
	var err error
	if h.grpc, err = api.New(config); err != nil {
		return nil, err
	}
	if h.conn, err = grpc.NewClient("passthrough:///pitgate", grpc.WithTransportCredentials(insecure.NewCredentials()),
		grpc.WithContextDialer(func(ctx context.Context, _ string) (net.Conn, error) { return h.memory.DialContext(ctx) }),
		grpc.WithDefaultCallOptions(grpc.MaxCallRecvMsgSize(messageCap), grpc.MaxCallSendMsgSize(messageCap))); err != nil {
		return nil, fmt.Errorf("edge: %w", err)
	}
	handler, err := gateway.New(ctx, h.conn, gateway.Options{Page: pwa.FS(), OpenAPI: proto.OpenAPI, TLS: s.tlsCert != "",
		TrustForwarded: s.trustForwarded, ThisMachineOnly: s.demo})
	if err != nil {
		return nil, err
	}
	h.http = &http.Server{Handler: handler, ReadHeaderTimeout: 10 * time.Second, ReadTimeout: time.Minute, WriteTimeout: time.Minute,
		IdleTimeout: 2 * time.Minute, MaxHeaderBytes: 32 << 10, ErrorLog: slog.NewLogLogger(log.Handler(), slog.LevelWarn)}
	return h, h.bind(ctx)
}

// bind takes the addresses.
func (h *house) bind(ctx context.Context) (err error) {
	var listen net.ListenConfig
	if h.web, err = listen.Listen(ctx, "tcp", h.settings.addr); err != nil {
		return fmt.Errorf("addr: %w", err)
	}
	if h.settings.tlsCert != "" {
		pair, err := tls.LoadX509KeyPair(h.settings.tlsCert, h.settings.tlsKey)
		if err != nil {
			return errors.Join(fmt.Errorf("tls: %w", err), h.web.Close())
		}
		h.web = tls.NewListener(h.web, &tls.Config{Certificates: []tls.Certificate{pair}, MinVersion: tls.VersionTLS12,
			NextProtos: []string{"h2", "http/1.1"}})
	}
	if h.settings.grpcAddr == "" {
		return nil
	}
	if h.native, err = listen.Listen(ctx, "tcp", h.settings.grpcAddr); err != nil {
		return errors.Join(fmt.Errorf("grpc-addr: %w", err), h.web.Close())
	}
	return nil
}

// start serves on every listener.
func (h *house) start() {
	serve := func(name string, run func() error) {
		go func() {
			if err := run(); err != nil && !errors.Is(err, http.ErrServerClosed) && !errors.Is(err, grpc.ErrServerStopped) {
				h.failed <- fmt.Errorf("%s: %w", name, err)
			}
		}()
	}
	serve("edge", func() error { return h.grpc.Serve(h.memory) })
	serve("http", func() error { return h.http.Serve(h.web) })
	if h.native != nil {
		serve("grpc", func() error { return h.grpc.Serve(h.native) })
		h.log.Info("native gRPC", "addr", h.native.Addr().String())
	}
}

// work follows up a new core and begins to work on jobs.
func (h *house) work(ctx context.Context, store *postgres.Store) error {
	queue, err := jobs.NewQueue()
	if err != nil {
		return err
	}
	begun, err := queue.BeginForCore(ctx, store, assess.Version)
	if err != nil {
		return fmt.Errorf("computing again by the core %s: %w", assess.Version, err)
	}
	if begun > 0 {
		h.log.Info("approvals are computed again", "core", assess.Version, "clubs", begun)
	}
	if h.settings.workers == 0 {
		return nil
	}
	h.workers, err = jobs.Start(ctx, jobs.Config{Store: store, Assessor: h.grpc.Assessor, Log: h.log, Count: h.settings.workers})
	return err
}

// url is where a browser finds the page.
func (h *house) url() string {
	scheme := "http"
	if h.settings.tlsCert != "" {
		scheme = "https"
	}
	host, _, _ := net.SplitHostPort(h.settings.addr)
	_, port, _ := net.SplitHostPort(h.web.Addr().String())
	if host == "" {
		host = "localhost"
	}
	return scheme + "://" + net.JoinHostPort(host, port)
}

// stop ends in order: tell that we are going, let HTTP calls end, fetch no more jobs and let the present ones end, let gRPC calls end, close the inner
// connection. The caller closes the database last.
func (h *house) stop(ctx context.Context) error {
	h.grpc.Health.Shutdown()
	ctx, cancel := context.WithTimeout(ctx, stopPatience)
	defer cancel()
	err := h.http.Shutdown(ctx)
	if h.workers != nil {
		err = errors.Join(err, h.workers.Stop(ctx))
	}
	ended := make(chan struct{})
	go func() { h.grpc.GracefulStop(); close(ended) }()
	select {
	case <-ended:
	case <-ctx.Done():
		h.grpc.Stop()
	}
	return errors.Join(err, h.conn.Close())
}
