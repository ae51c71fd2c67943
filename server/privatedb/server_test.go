//go:build linux

package privatedb

import (
	"context"
	"errors"
	"fmt"
	"os"
	"path/filepath"
	"strconv"
	"strings"
	"syscall"
	"testing"

	"github.com/jackc/pgx/v5"
)

// helperVariable makes a re-executed test binary play another process; its value is the directory to hold.
const helperVariable = "PITGATE_PRIVATEDB_TEST_HOLD"

func TestMain(m *testing.M) {
	if dir := os.Getenv(helperVariable); dir != "" {
		holdForever(dir)
	}
	os.Exit(runTests(m))
}

// holder is the path of the copy of this test program that plays another process.
var holder string

func runTests(m *testing.M) int {
	dir, err := os.MkdirTemp("", "pitgate-db-program-")
	if err != nil {
		panic(err)
	}
	defer os.RemoveAll(dir)
	if holder, err = copyProgram(dir); err != nil {
		panic(err)
	}
	return m.Run()
}

// holdForever starts the database, says how it can be reached and waits to be killed.
func holdForever(dir string) {
	s, err := Start(context.Background(), dir, nil)
	if err != nil {
		fmt.Println("error", err)
		os.Exit(1)
	}
	fmt.Println("ready", os.Geteuid(), s.PID(), s.URL())
	select {}
}

func TestStartKeepsDataOverStop(t *testing.T) {
	t.Parallel()
	dir := scratch(t)
	s := start(t, dir)
	run(t, s.URL(), `CREATE TABLE kept (n int)`, `INSERT INTO kept VALUES (7)`)
	stop(t, s)
	if err := s.Stop(); err != nil {
		t.Errorf("second Stop: %v", err)
	}
	if s.PID() != 0 || s.Err() != nil {
		t.Errorf("after Stop: pid %d, err %v", s.PID(), s.Err())
	}
	again := start(t, dir)
	if got := number(t, again.URL(), `SELECT n FROM kept`); got != 7 {
		t.Errorf("kept row: got %d, want 7", got)
	}
}

func TestCommitsAreFlushedAndNoPortIsOpen(t *testing.T) {
	t.Parallel()
	dir := scratch(t)
	stop(t, start(t, dir))
	careless := "fsync = off\nsynchronous_commit = off\nfull_page_writes = off\nlisten_addresses = '*'\n"
	appendTo(t, filepath.Join(dir, "data", "postgresql.conf"), careless)
	s := start(t, dir)
	want := map[string]string{"fsync": "on", "synchronous_commit": "on", "full_page_writes": "on", "listen_addresses": "", "data_checksums": "on"}
	for name, value := range want {
		if got := text(t, s.URL(), `SELECT current_setting('`+name+`')`); got != value {
			t.Errorf("%s = %q, want %q", name, got, value)
		}
	}
}

func TestWrongPasswordIsRefused(t *testing.T) {
	t.Parallel()
	s := start(t, scratch(t))
	wrong := strings.Replace(s.URL(), s.secret, "guessed", 1)
	if _, err := pgx.Connect(context.Background(), wrong); err == nil || !strings.Contains(err.Error(), "28P01") {
		t.Errorf("wrong password: got %v, want SQLSTATE 28P01", err)
	}
}

func TestPermissions(t *testing.T) {
	t.Parallel()
	dir := scratch(t)
	start(t, dir)
	for name, want := range map[string]os.FileMode{"data": 0o700, "run": 0o700, "password": 0o600, "lock": 0o600} {
		info, err := os.Stat(filepath.Join(dir, name))
		if err != nil {
			t.Fatal(err)
		}
		if got := info.Mode().Perm(); got != want {
			t.Errorf("%s: mode %o, want %o", name, got, want)
		}
	}
}

func TestSecondStartIsRefused(t *testing.T) {
	t.Parallel()
	dir := scratch(t)
	s := start(t, dir)
	_, err := Start(context.Background(), dir, nil)
	if err == nil || !strings.Contains(err.Error(), "in use by process "+strconv.Itoa(os.Getpid())) {
		t.Fatalf("second Start: got %v, want the holder named", err)
	}
	if got := number(t, s.URL(), `SELECT 1`); got != 1 {
		t.Error("the first one was disturbed")
	}
}

func TestKilledPostmasterIsStartedAgain(t *testing.T) {
	t.Parallel()
	s := start(t, scratch(t))
	run(t, s.URL(), `CREATE TABLE kept (n int)`, `INSERT INTO kept VALUES (11)`)
	old := s.PID()
	if err := syscall.Kill(old, syscall.SIGKILL); err != nil {
		t.Fatal(err)
	}
	eventually(t, func() error {
		if pid := s.PID(); pid == 0 || pid == old {
			return fmt.Errorf("postmaster %d", pid)
		}
		return tryRun(s.URL(), `SELECT n FROM kept`)
	})
	if got := number(t, s.URL(), `SELECT n FROM kept`); got != 11 {
		t.Errorf("kept row: got %d, want 11", got)
	}
}

func TestKilledParentAndPostmasterRecover(t *testing.T) {
	t.Parallel()
	dir := scratch(t)
	child, said := hold(t, dir, nil)
	run(t, said.url, `CREATE TABLE kept (n int)`, `INSERT INTO kept VALUES (13)`)
	kill(t, child, said.postmaster)
	s := start(t, dir)
	if got := number(t, s.URL(), `SELECT n FROM kept`); got != 13 {
		t.Errorf("kept row: got %d, want 13", got)
	}
}

func TestClusterEndsWithItsParent(t *testing.T) {
	t.Parallel()
	dir := scratch(t)
	child, said := hold(t, dir, nil)
	kill(t, child, 0)
	eventually(t, func() error {
		if isPostgres(said.postmaster) {
			return errors.New("the postmaster outlives its parent")
		}
		return nil
	})
}

// An orphan is made by starting the very command line without the parent-death signal and giving the lock free.
// This process never waits for it, so that it also ends as a zombie, which must not count as running.
func TestOrphanIsStoppedAndItsZombieIgnored(t *testing.T) {
	t.Parallel()
	dir := scratch(t)
	s := start(t, dir)
	run(t, s.URL(), `CREATE TABLE kept (n int)`, `INSERT INTO kept VALUES (17)`)
	stop(t, s)
	orphan := s.command()
	orphan.SysProcAttr.Pdeathsig = 0
	if err := orphan.Start(); err != nil {
		t.Fatal(err)
	}
	t.Cleanup(func() { _ = orphan.Wait() })
	eventually(t, func() error { return tryRun(s.URL(), `SELECT 1`) })
	again := start(t, dir)
	if isPostgres(orphan.Process.Pid) {
		t.Error("the orphan is still running")
	}
	if got := number(t, again.URL(), `SELECT n FROM kept`); got != 17 {
		t.Errorf("kept row: got %d, want 17", got)
	}
}

// PostgreSQL itself refuses to start while postmaster.pid names a process that exists.
func TestStalePidFileOfAnotherProcess(t *testing.T) {
	t.Parallel()
	dir := scratch(t)
	stop(t, start(t, dir))
	pidFile := filepath.Join(dir, "data", "postmaster.pid")
	if err := os.WriteFile(pidFile, []byte("1\n"+filepath.Join(dir, "data")+"\n"), 0o644); err != nil {
		t.Fatal(err)
	}
	start(t, dir)
}

func TestUnfinishedClusterIsMadeAgain(t *testing.T) {
	t.Parallel()
	dir := scratch(t)
	draft := filepath.Join(dir, "data.new")
	if err := os.MkdirAll(draft, 0o700); err != nil {
		t.Fatal(err)
	}
	appendTo(t, filepath.Join(draft, "PG_VERSION"), "15\n")
	start(t, dir)
	if _, err := os.Stat(draft); !errors.Is(err, os.ErrNotExist) {
		t.Errorf("the unfinished cluster is still there: %v", err)
	}
}

func TestClusterWithoutPasswordIsRefused(t *testing.T) {
	t.Parallel()
	dir := scratch(t)
	stop(t, start(t, dir))
	if err := os.Remove(filepath.Join(dir, "password")); err != nil {
		t.Fatal(err)
	}
	if _, err := Start(context.Background(), dir, nil); err == nil || !strings.Contains(err.Error(), "restore it from the backup") {
		t.Errorf("got %v, want the missing password named", err)
	}
}

func TestLongPathGetsShortSocket(t *testing.T) {
	t.Parallel()
	dir := filepath.Join(scratch(t), strings.Repeat("longacre", 12))
	if err := os.Mkdir(dir, 0o755); err != nil {
		t.Fatal(err)
	}
	s := start(t, dir)
	t.Cleanup(func() { _ = os.RemoveAll(s.place.socketDir) })
	if len(s.place.socket()) > socketPathLimit || strings.HasPrefix(s.place.socket(), dir) {
		t.Errorf("socket %s", s.place.socket())
	}
}

func TestClusterThatCannotRunIsGivenUp(t *testing.T) {
	t.Parallel()
	dir := scratch(t)
	stop(t, start(t, dir))
	appendTo(t, filepath.Join(dir, "data", "postgresql.conf"), "max_connections = 'many'\n")
	_, err := Start(context.Background(), dir, nil)
	if err == nil || !strings.Contains(err.Error(), "max_connections") {
		t.Fatalf("got %v, want PostgreSQL's own words", err)
	}
	lock, err := takeLock(filepath.Join(dir, "lock"))
	if err != nil {
		t.Fatalf("the lock is not given free: %v", err)
	}
	_ = lock.Close()
}

func TestStartObeysItsContext(t *testing.T) {
	t.Parallel()
	ctx, cancel := context.WithCancel(context.Background())
	cancel()
	if _, err := Start(ctx, scratch(t), nil); !errors.Is(err, context.Canceled) {
		t.Errorf("got %v, want context.Canceled", err)
	}
}

// TestAsOrdinaryUser runs everything in another process, as user nobody when this one is root.
func TestAsOrdinaryUser(t *testing.T) {
	t.Parallel()
	dir := scratch(t)
	var who *syscall.Credential
	want := os.Geteuid()
	if want == 0 {
		nobody, err := lookUp("nobody")
		if err != nil {
			t.Fatal(err)
		}
		who, want = &syscall.Credential{Uid: nobody.uid, Gid: nobody.gid}, int(nobody.uid)
		if err := os.Chown(dir, want, int(nobody.gid)); err != nil {
			t.Fatal(err)
		}
	}
	_, said := hold(t, dir, who)
	if said.uid != want || processOwner(t, said.postmaster) != want {
		t.Errorf("ran as user %d with the cluster as %d, want %d", said.uid, processOwner(t, said.postmaster), want)
	}
	if got := number(t, said.url, `SELECT 3`); got != 3 {
		t.Errorf("got %d", got)
	}
}

// TestRootIsDropped looks at the cluster's account; run by an ordinary user it is that user.
func TestRootIsDropped(t *testing.T) {
	t.Parallel()
	s := start(t, scratch(t))
	owner := processOwner(t, s.PID())
	if owner == 0 || owner != int(s.account.uid) {
		t.Errorf("the cluster runs as user %d, want %d", owner, s.account.uid)
	}
	if euid := os.Geteuid(); euid != 0 && owner != euid {
		t.Errorf("the cluster runs as user %d, want %d", owner, euid)
	}
}
