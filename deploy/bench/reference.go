package main

import (
	"context"
	"errors"
	"log/slog"
	"net"
	"os"

	"github.com/jackc/pgx/v5/pgxpool"
	"google.golang.org/grpc"
	"google.golang.org/grpc/credentials/insecure"
	"google.golang.org/grpc/health"
	healthpb "google.golang.org/grpc/health/grpc_health_v1"

	"pitgate/server/privatedb"
)

// bareGRPC is a server with nothing but the health service, on loopback.
func bareGRPC(ctx context.Context) (call func(context.Context) error, stop func(), err error) {
	listener, err := new(net.ListenConfig).Listen(ctx, "tcp", "127.0.0.1:0")
	if err != nil {
		return nil, nil, err
	}
	server := grpc.NewServer()
	healthpb.RegisterHealthServer(server, health.NewServer())
	go func() { _ = server.Serve(listener) }()
	conn, err := grpc.NewClient(listener.Addr().String(), grpc.WithTransportCredentials(insecure.NewCredentials()))
	if err != nil {
		return nil, nil, err
	}
	client := healthpb.NewHealthClient(conn)
	call = func(ctx context.Context) error {
		_, err := client.Check(ctx, &healthpb.HealthCheckRequest{})
		return err
	}
	return call, func() { _ = conn.Close(); server.Stop() }, nil
}

// bareSelect reads one row of 4 kB by key from a private Postgres of its own.
func bareSelect(ctx context.Context) (call func(context.Context) error, stop func(), err error) {
	dir, err := os.MkdirTemp("", "pitgate-bench")
	if err != nil {
		return nil, nil, err
	}
	if err := os.Chmod(dir, 0o755); err != nil { // the database runs as another user when this runs as root
		return nil, nil, err
	}
	server, err := privatedb.Start(ctx, dir+"/db", slog.New(slog.DiscardHandler))
	if err != nil {
		return nil, nil, err
	}
	pool, err := pgxpool.New(ctx, server.URL())
	if err != nil {
		return nil, nil, errors.Join(err, server.Stop())
	}
	stop = func() { pool.Close(); _ = server.Stop(); _ = os.RemoveAll(dir) }
	_, err = pool.Exec(ctx, `CREATE TABLE echo AS SELECT i AS id, repeat('x', 4000) AS body FROM generate_series(1, 1000) i; ALTER TABLE echo ADD PRIMARY KEY (id)`)
	if err != nil {
		stop()
		return nil, nil, err
	}
	call = func(ctx context.Context) error {
		var body string
		return pool.QueryRow(ctx, "SELECT body FROM echo WHERE id = $1", 500).Scan(&body)
	}
	return call, stop, nil
}
