package main

import (
	"errors"
	"flag"
	"fmt"
	"io"
	"net"
	"os"
	"path/filepath"
	"strings"
)

// settings are the flags of serve and demo; each has an environment variable behind it.
type settings struct {
	addr, grpcAddr   string
	data, database   string
	signingKey       string
	tlsCert, tlsKey  string
	trustForwarded   bool
	reflection, json bool
	demo             bool
	// workers is how many jobs this process works on at a time; 0 leaves them to others.
	workers int
}

// mostWorkers is more than any machine has use for.
const mostWorkers = 256

// readSettings reads flags, then the environment, then defaults.
func readSettings(name string, args []string, w io.Writer) (settings, error) {
	var s settings
	set := flag.NewFlagSet("pitgate "+name, flag.ContinueOnError)
	set.SetOutput(w)
	set.StringVar(&s.addr, "addr", env("PITGATE_ADDR", "localhost:8080"), "address of the page and the REST API (PITGATE_ADDR)")
	set.StringVar(&s.grpcAddr, "grpc-addr", env("PITGATE_GRPC_ADDR", ""), "address of native gRPC; empty: none (PITGATE_GRPC_ADDR)")
	set.BoolVar(&s.reflection, "grpc-reflection", false, "let tools ask the native gRPC server what it offers")
	set.StringVar(&s.tlsCert, "tls-cert", env("PITGATE_TLS_CERT", ""), "certificate file in PEM; empty: no TLS (PITGATE_TLS_CERT)")
	set.StringVar(&s.tlsKey, "tls-key", env("PITGATE_TLS_KEY", ""), "key file of the certificate (PITGATE_TLS_KEY)")
	set.BoolVar(&s.trustForwarded, "trust-forwarded", false, "a reverse proxy in front sets X-Forwarded-For")
	set.IntVar(&s.workers, "workers", 1, "how many background jobs to work on at a time; 0: leave them to other processes on the same database")
	set.BoolVar(&s.json, "log-json", false, "write the log as JSON")
	databaseFlags(set, &s)
	if err := set.Parse(args); err != nil {
		return s, err
	}
	if set.NArg() > 0 {
		return s, fmt.Errorf("unexpected argument %q", set.Arg(0))
	}
	return s, s.check()
}

// databaseFlags are shared by every command that needs the database.
func databaseFlags(set *flag.FlagSet, s *settings) {
	set.StringVar(&s.data, "data", env("PITGATE_DATA", defaultData()), "directory of the private database and the signing key (PITGATE_DATA)")
	set.StringVar(&s.signingKey, "signing-key", env("PITGATE_SIGNING_KEY", ""), "file of the ledger's signing key; empty: in the data directory (PITGATE_SIGNING_KEY)")
	// The address of the database may hold a password, so that it is no flag: flags show in the process list.
	s.database = os.Getenv("DATABASE_URL")
}

// check refuses what does not go together.
func (s settings) check() error {
	if (s.tlsCert == "") != (s.tlsKey == "") {
		return errors.New("tls-cert and tls-key: give both or neither")
	}
	if s.workers < 0 || s.workers > mostWorkers {
		return fmt.Errorf("workers: %d is not between 0 and %d", s.workers, mostWorkers)
	}
	if _, _, err := net.SplitHostPort(s.addr); err != nil {
		return fmt.Errorf("addr: %w", err)
	}
	return nil
}

// keyFile is where the signing key is kept.
func (s settings) keyFile() string {
	if s.signingKey != "" {
		return s.signingKey
	}
	return filepath.Join(s.data, "ledger-key.pem")
}

// env reads a variable with a default.
func env(name, fallback string) string {
	if v := os.Getenv(name); v != "" {
		return v
	}
	return fallback
}

// defaultData is XDG's place when that is set, and ./.data otherwise.
func defaultData() string {
	if dir := os.Getenv("XDG_DATA_HOME"); dir != "" {
		return filepath.Join(dir, "pitgate")
	}
	return ".data"
}

// loopback tells whether an address can be reached from this machine only.
func loopback(addr string) bool {
	host, _, err := net.SplitHostPort(addr)
	if err != nil {
		return false
	}
	if strings.EqualFold(host, "localhost") {
		return true
	}
	ip := net.ParseIP(host)
	return ip != nil && ip.IsLoopback()
}
