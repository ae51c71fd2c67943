package postgres

import (
	"context"
	"crypto/ed25519"
	"crypto/rand"
	"encoding/base32"
	"errors"
	"fmt"
	"maps"
	"strings"
	"time"

	"github.com/jackc/pgx/v5"
	"github.com/jackc/pgx/v5/pgtype"
	"github.com/jackc/pgx/v5/pgxpool"
)

// Store is the database of all clubs. It may be used by many goroutines.
type Store struct {
	pool *pgxpool.Pool
	url  string
	now  func() time.Time
	id   func() string
	key  ed25519.PrivateKey
	most int32
}

// Option changes a Store being opened.
type Option func(*Store)

// WithClock replaces the clock.
func WithClock(now func() time.Time) Option { return func(s *Store) { s.now = now } }

// WithIDs replaces the source of record ids; each must be new and satisfy club.ValidID.
func WithIDs(next func() string) Option { return func(s *Store) { s.id = next } }

// WithSigningKey sets the key that signs ledger heads. It is required.
func WithSigningKey(key ed25519.PrivateKey) Option { return func(s *Store) { s.key = key } }

// WithMaxConnections limits the pool.
func WithMaxConnections(most int32) Option { return func(s *Store) { s.most = most } }

// Open connects to a migrated database. It refuses a server that is too old or may lose an acknowledged commit.
func Open(ctx context.Context, url string, options ...Option) (*Store, error) {
	s := &Store{url: url, now: time.Now, id: randomID}
	for _, option := range options {
		option(s)
	}
	if len(s.key) != ed25519.PrivateKeySize {
		return nil, errors.New("signing key: missing")
	}
	pool, err := openPool(ctx, url, s.most, nil)
	if err != nil {
		return nil, err
	}
	s.pool = pool
	if err := checkServer(ctx, pool); err != nil {
		pool.Close()
		return nil, err
	}
	return s, nil
}

// openPool connects with limits on how long a statement may run and wait, and further settings, and reads times in UTC.
func openPool(ctx context.Context, url string, most int32, settings map[string]string) (*pgxpool.Pool, error) {
	config, err := pgxpool.ParseConfig(url)
	if err != nil {
		return nil, errors.New("database url: not understood") // the driver's text may hold the password
	}
	if most > 0 {
		config.MaxConns = most
	}
	for name, value := range map[string]string{
		"application_name": "pitgate", "statement_timeout": "15s", "lock_timeout": "10s",
		"idle_in_transaction_session_timeout": "30s",
	} {
		config.ConnConfig.RuntimeParams[name] = value
	}
	maps.Copy(config.ConnConfig.RuntimeParams, settings)
	config.AfterConnect = readTimesInUTC
	pool, err := pgxpool.NewWithConfig(ctx, config)
	if err != nil {
		return nil, fmt.Errorf("open the database: %w", err)
	}
	return pool, nil
}

func readTimesInUTC(_ context.Context, conn *pgx.Conn) error {
	conn.TypeMap().RegisterType(&pgtype.Type{
		Name: "timestamptz", OID: pgtype.TimestamptzOID, Codec: &pgtype.TimestamptzCodec{ScanLocation: time.UTC},
	})
	return nil
}

// soonDead has the database find out within a quarter of a minute that a machine at the other end is gone.
var soonDead = map[string]string{"tcp_keepalives_idle": "5", "tcp_keepalives_interval": "3", "tcp_keepalives_count": "3"}

// QueuePool opens connections of its own for the keeping of the queue of jobs, which is no club's: nothing else goes over them. The caller closes it.
func (s *Store) QueuePool(ctx context.Context, most int32) (*pgxpool.Pool, error) {
	return openPool(ctx, s.url, most, soonDead)
}

// Close ends all connections.
func (s *Store) Close() { s.pool.Close() }

// Ping tells whether the database answers.
func (s *Store) Ping(ctx context.Context) error { return answer(s.pool.Ping(ctx)) }

// PublicKey verifies the ledger heads of this store.
func (s *Store) PublicKey() ed25519.PublicKey { return s.key.Public().(ed25519.PublicKey) }

// randomID is 80 random bits in lower-case base32: 16 characters.
func randomID() string {
	var raw [10]byte
	rand.Read(raw[:])
	return strings.ToLower(base32.StdEncoding.EncodeToString(raw[:]))
}
