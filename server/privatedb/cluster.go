//go:build linux

package privatedb

import (
	"context"
	"crypto/rand"
	"encoding/base64"
	"errors"
	"fmt"
	"io/fs"
	"os"
	"os/exec"
	"path/filepath"
	"runtime"
	"strconv"
	"strings"
	"syscall"
)

// oldestVersion of PostgreSQL that the schema runs on.
const oldestVersion = 15

// makeCluster runs initdb beside the final place and renames the result, so that a cluster is there whole or not
// at all, whenever the power fails.
func (s *Server) makeCluster(ctx context.Context) error {
	if version, err := clusterVersion(s.place.data()); err != nil || version != "" {
		return err
	}
	draft := s.place.data() + ".new"
	if err := os.RemoveAll(draft); err != nil {
		return fmt.Errorf("remove an unfinished cluster: %w", err)
	}
	if err := makePrivateDir(draft, s.account); err != nil {
		return err
	}
	if err := s.initdb(ctx, draft); err != nil {
		return err
	}
	if err := os.Rename(draft, s.place.data()); err != nil {
		return fmt.Errorf("put the new cluster in place: %w", err)
	}
	return syncDir(s.place.dir)
}

// initdb fills the directory data. The password goes by a file, never by the command line.
func (s *Server) initdb(ctx context.Context, data string) error {
	passwordFile := filepath.Join(s.place.socketDir, "initdb-password")
	if err := writeOwned(passwordFile, s.secret+"\n", s.account); err != nil {
		return err
	}
	defer os.Remove(passwordFile)
	cmd := exec.CommandContext(ctx, s.bin+"/initdb", "-D", data, "-U", roleName, "--pwfile="+passwordFile,
		"--auth-local=scram-sha-256", "--auth-host=reject", "--encoding=UTF8", "--locale=C", "--data-checksums")
	cmd.Dir = data
	cmd.Env = childEnvironment()
	cmd.SysProcAttr = s.account.attributes()
	runtime.LockOSThread() // the parent-death signal follows this thread
	defer runtime.UnlockOSThread()
	cmd.SysProcAttr.Pdeathsig = syscall.SIGKILL // or the next start would find it still writing
	if out, err := cmd.CombinedOutput(); err != nil {
		return fmt.Errorf("initdb: %w: %s", err, strings.TrimSpace(string(out)))
	}
	return nil
}

// clusterVersion returns the major version of the cluster in data, or "" when there is no cluster.
func clusterVersion(data string) (string, error) {
	raw, err := os.ReadFile(filepath.Join(data, "PG_VERSION"))
	if errors.Is(err, fs.ErrNotExist) {
		return "", nil
	}
	if err != nil {
		return "", fmt.Errorf("read the cluster's version: %w", err)
	}
	return strings.TrimSpace(string(raw)), nil
}

// programs returns the directory of the PostgreSQL programs that fit the cluster in data. PG_BINDIR decides when
// set; else the newest installed version, but the cluster's own version once a cluster exists; else PATH.
func programs(data string) (string, error) {
	if dir := os.Getenv("PG_BINDIR"); dir != "" {
		if !hasPrograms(dir) {
			return "", fmt.Errorf("PG_BINDIR: %s holds no postgres and initdb", dir)
		}
		return dir, nil
	}
	want, err := clusterVersion(data)
	if err != nil {
		return "", err
	}
	if dir := installed(want); dir != "" {
		return dir, nil
	}
	if dir := onPath(); dir != "" {
		return dir, nil
	}
	return "", noPrograms(want)
}

func noPrograms(want string) error {
	if want != "" {
		return fmt.Errorf("the cluster was made by PostgreSQL %s, which is not installed: install it or set PG_BINDIR", want)
	}
	return fmt.Errorf("no PostgreSQL %d or newer found: install it, set PG_BINDIR, or set DATABASE_URL", oldestVersion)
}

// installed returns the program directory of version want, or of the newest version when want is empty.
func installed(want string) string {
	dirs, _ := filepath.Glob("/usr/lib/postgresql/*/bin") // the pattern is well formed
	best, newest := "", oldestVersion-1
	for _, dir := range dirs {
		name := filepath.Base(filepath.Dir(dir))
		version, err := strconv.Atoi(name)
		if err != nil || !hasPrograms(dir) || (want != "" && name != want) {
			continue
		}
		if version > newest {
			best, newest = dir, version
		}
	}
	return best
}

func onPath() string {
	program, err := exec.LookPath("postgres")
	if err != nil {
		return ""
	}
	if target, err := filepath.EvalSymlinks(program); err == nil {
		program = target
	}
	if dir := filepath.Dir(program); hasPrograms(dir) {
		return dir
	}
	return ""
}

func hasPrograms(dir string) bool {
	for _, name := range []string{"postgres", "initdb"} {
		if info, err := os.Stat(filepath.Join(dir, name)); err != nil || info.IsDir() {
			return false
		}
	}
	return true
}

// password returns the owner's password, making one of 256 random bits before the first cluster exists.
func (p place) password() (string, error) {
	raw, err := os.ReadFile(p.passwordFile())
	if err == nil && len(raw) > 0 {
		return strings.TrimSpace(string(raw)), nil
	}
	if err != nil && !errors.Is(err, fs.ErrNotExist) {
		return "", fmt.Errorf("read the cluster's password: %w", err)
	}
	if version, err := clusterVersion(p.data()); err != nil || version != "" {
		return "", errors.Join(fmt.Errorf("%s is missing but the cluster exists: restore it from the backup", p.passwordFile()), err)
	}
	var random [32]byte
	rand.Read(random[:])
	secret := base64.RawURLEncoding.EncodeToString(random[:])
	return secret, writeWhole(p.passwordFile(), secret+"\n")
}
