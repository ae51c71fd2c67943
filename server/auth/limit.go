package auth

import (
	"crypto/rand"
	"crypto/sha256"
	"encoding/binary"
	"strings"
	"sync"
	"time"

	"golang.org/x/time/rate"
)

// tableSize is the number of budgets in each table. Keys are scattered over them by a hash with a secret, so
// memory is bounded whatever is tried, nothing needs forgetting, and two keys rarely share a budget.
const tableSize = 4096

// Budgets of sign-in attempts: so many at once, then one each interval.
var (
	// perTry bounds one address trying one account.
	perTry = budget{burst: 6, every: 20 * time.Second}
	// perAccount bounds everybody together trying one account; wide, so that strangers cannot lock the owner out soon.
	perAccount = budget{burst: 40, every: 5 * time.Second}
	// perPeer bounds one address trying any accounts; wide, since a whole club may share one.
	perPeer = budget{burst: 60, every: time.Second}
)

// SignInLimit bounds sign-in attempts. It is safe for concurrent use.
type SignInLimit struct {
	secret             [32]byte
	try, account, peer *table
}

// NewSignInLimit returns a limit with full budgets. Memory is about 1 MB and does not grow.
func NewSignInLimit() *SignInLimit {
	var secret [32]byte
	rand.Read(secret[:])
	return newSignInLimit(secret)
}

func newSignInLimit(secret [32]byte) *SignInLimit {
	return &SignInLimit{secret: secret, try: newTable(perTry), account: newTable(perAccount), peer: newTable(perPeer)}
}

// Allow takes one attempt by peer (an address without its port) on an account at time now. When it is too soon,
// it returns false and how long to wait.
func (l *SignInLimit) Allow(clubID, email, peer string, now time.Time) (ok bool, wait time.Duration) {
	account := clubID + "\x00" + strings.ToLower(strings.TrimSpace(email))
	for _, step := range []struct {
		table *table
		key   string
	}{{l.peer, peer}, {l.try, account + "\x00" + peer}, {l.account, account}} {
		if ok, wait := step.table.take(l.scatter(step.key), now); !ok {
			return false, wait
		}
	}
	return true, 0
}

// scatter maps a key to the number of its budget. Nobody who lacks the secret can choose keys that share one.
func (l *SignInLimit) scatter(key string) uint64 {
	sum := sha256.Sum256(append(append([]byte(nil), l.secret[:]...), key...))
	return binary.BigEndian.Uint64(sum[:8])
}

// budget is a token bucket: burst attempts at once, then one each interval.
type budget struct {
	burst int
	every time.Duration
}

// table is a fixed number of budgets, made when first used.
type table struct {
	budget budget
	mu     sync.Mutex
	slots  [tableSize]*rate.Limiter
}

func newTable(b budget) *table { return &table{budget: b} }

func (t *table) take(hash uint64, now time.Time) (ok bool, wait time.Duration) {
	limiter := t.slot(hash % tableSize)
	reservation := limiter.ReserveN(now, 1)
	if wait := reservation.DelayFrom(now); wait > 0 {
		reservation.CancelAt(now)
		return false, wait
	}
	return true, 0
}

func (t *table) slot(at uint64) *rate.Limiter {
	t.mu.Lock()
	defer t.mu.Unlock()
	if t.slots[at] == nil {
		t.slots[at] = rate.NewLimiter(rate.Every(t.budget.every), t.budget.burst)
	}
	return t.slots[at]
}
