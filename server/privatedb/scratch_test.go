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
	"syscall"
	"testing"
	"time"

	"github.com/jackc/pgx/v5"
)

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
	cmd := exec.Command(holder)
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

// copyProgram copies this test program into dir, where any user may run it. It runs before any test forks: a child
// that inherits the open copy would make running it fail as busy.
func copyProgram(dir string) (string, error) {
	if err := os.Chmod(dir, 0o755); err != nil {
		return "", err
	}
	from, err := os.Open("/proc/self/exe")
	if err != nil {
		return "", err
	}
	defer from.Close()
	path := filepath.Join(dir, "holder")
	to, err := os.OpenFile(path, os.O_CREATE|os.O_WRONLY, 0o755)
	if err != nil {
		return "", err
	}
	_, err = io.Copy(to, from)
	return path, errors.Join(err, to.Close())
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
