//go:build linux

package privatedb

import (
	"bufio"
	"context"
	"errors"
	"fmt"
	"io"
	"log/slog"
	"os"
	"os/exec"
	"path/filepath"
	"strconv"
	"strings"
	"syscall"
	"testing"
	"time"

	"github.com/jackc/pgx/v5"
)

// helperVariable makes a re-executed test binary play another process; its value is the directory to hold.
const helperVariable = "PITGATE_PRIVATEDB_TEST_HOLD"

func TestMain(m *testing.M) {
	if dir := os.Getenv(helperVariable); dir != "" {
		holdForever(dir)
	}
	os.Exit(m.Run())
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

func scratch(t *testing.T) string {
	t.Helper()
	dir, err := os.MkdirTemp("", "pitgate-db-")
	if err != nil {
		t.Fatal(err)
	}
	if err := os.Chmod(dir, 0o711); err != nil {
		t.Fatal(err)
	}
	t.Cleanup(func() { _ = os.RemoveAll(dir) })
	return dir
}

func start(t *testing.T, dir string) *Server {
	t.Helper()
	ctx, cancel := context.WithTimeout(context.Background(), 2*time.Minute)
	defer cancel()
	s, err := Start(ctx, dir, slog.New(slog.NewTextHandler(t.Output(), nil)))
	if err != nil {
		t.Fatal(err)
	}
	t.Cleanup(func() { stop(t, s) })
	return s
}

func stop(t *testing.T, s *Server) {
	t.Helper()
	if err := s.Stop(); err != nil {
		t.Fatalf("stop: %v", err)
	}
}

// answer is what a helper process says once its database is up.
type answer struct {
	uid, postmaster int
	url             string
}

// hold starts a second process that holds dir, as who when that is not nil.
func hold(t *testing.T, dir string, who *syscall.Credential) (*exec.Cmd, answer) {
	t.Helper()
	cmd := exec.Command(programCopy(t))
	cmd.Dir = "/"
	cmd.Env = append(os.Environ(), helperVariable+"="+dir)
	cmd.SysProcAttr = &syscall.SysProcAttr{Credential: who}
	out, err := cmd.StdoutPipe()
	if err != nil {
		t.Fatal(err)
	}
	if err := cmd.Start(); err != nil {
		t.Fatal(err)
	}
	t.Cleanup(func() { endHolder(cmd, dir) })
	line, err := bufio.NewReader(out).ReadString('\n')
	if err != nil {
		t.Fatal(err)
	}
	var said answer
	if _, err := fmt.Sscanf(line, "ready %d %d %s", &said.uid, &said.postmaster, &said.url); err != nil {
		t.Fatalf("the other process said %q", line)
	}
	return cmd, said
}

// endHolder kills the helper and waits until its cluster is gone, so that the directory can be removed.
func endHolder(cmd *exec.Cmd, dir string) {
	_ = cmd.Process.Kill()
	_ = cmd.Wait()
	for range 500 {
		if len(livingProcesses(filepath.Join(dir, "data"))) == 0 {
			return
		}
		time.Sleep(20 * time.Millisecond)
	}
}

// programCopy copies this test program to where any user may run it.
func programCopy(t *testing.T) string {
	t.Helper()
	from, err := os.Open("/proc/self/exe")
	if err != nil {
		t.Fatal(err)
	}
	defer from.Close()
	dir := scratch(t)
	if err := os.Chmod(dir, 0o755); err != nil {
		t.Fatal(err)
	}
	path := filepath.Join(dir, "holder")
	to, err := os.OpenFile(path, os.O_CREATE|os.O_WRONLY, 0o755)
	if err != nil {
		t.Fatal(err)
	}
	_, err = io.Copy(to, from)
	if err := errors.Join(err, to.Close()); err != nil {
		t.Fatal(err)
	}
	return path
}

// kill ends the helper, and first its postmaster when one is named, both without warning.
func kill(t *testing.T, helper *exec.Cmd, postmaster int) {
	t.Helper()
	if postmaster != 0 {
		if err := syscall.Kill(helper.Process.Pid, syscall.SIGSTOP); err != nil { // it must not start another
			t.Fatal(err)
		}
		if err := syscall.Kill(postmaster, syscall.SIGKILL); err != nil {
			t.Fatal(err)
		}
	}
	if err := helper.Process.Kill(); err != nil {
		t.Fatal(err)
	}
	_ = helper.Wait()
}

func processOwner(t *testing.T, pid int) int {
	t.Helper()
	info, err := os.Stat(fmt.Sprintf("/proc/%d", pid))
	if err != nil {
		t.Fatal(err)
	}
	return int(info.Sys().(*syscall.Stat_t).Uid)
}

func eventually(t *testing.T, check func() error) {
	t.Helper()
	var err error
	for deadline := time.Now().Add(30 * time.Second); time.Now().Before(deadline); time.Sleep(50 * time.Millisecond) {
		if err = check(); err == nil {
			return
		}
	}
	t.Fatal(err)
}

func appendTo(t *testing.T, path, content string) {
	t.Helper()
	f, err := os.OpenFile(path, os.O_APPEND|os.O_CREATE|os.O_WRONLY, 0o600)
	if err != nil {
		t.Fatal(err)
	}
	_, err = f.WriteString(content)
	if err := errors.Join(err, f.Close()); err != nil {
		t.Fatal(err)
	}
}

func tryRun(url string, statements ...string) error {
	ctx := context.Background()
	conn, err := pgx.Connect(ctx, url)
	if err != nil {
		return err
	}
	defer conn.Close(ctx)
	for _, statement := range statements {
		if _, err := conn.Exec(ctx, statement); err != nil {
			return err
		}
	}
	return nil
}

func run(t *testing.T, url string, statements ...string) {
	t.Helper()
	if err := tryRun(url, statements...); err != nil {
		t.Fatal(err)
	}
}

func number(t *testing.T, url, query string) (n int) {
	t.Helper()
	scan(t, url, query, &n)
	return n
}

func text(t *testing.T, url, query string) (s string) {
	t.Helper()
	scan(t, url, query, &s)
	return s
}

func scan(t *testing.T, url, query string, into any) {
	t.Helper()
	ctx := context.Background()
	conn, err := pgx.Connect(ctx, url)
	if err != nil {
		t.Fatal(err)
	}
	defer conn.Close(ctx)
	if err := conn.QueryRow(ctx, query).Scan(into); err != nil {
		t.Fatal(err)
	}
}
