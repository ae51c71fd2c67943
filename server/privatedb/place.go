//go:build linux

package privatedb

import (
	"crypto/sha256"
	"encoding/hex"
	"errors"
	"fmt"
	"os"
	"path/filepath"
	"strings"
	"syscall"
)

const (
	// socketPort only names the socket file; no port is opened.
	socketPort = "5432"
	// socketPathLimit is the longest path a Unix socket may have on Linux, in bytes.
	socketPathLimit = 107
)

// place is where one cluster lives. All paths are absolute and free of symbolic links.
type place struct {
	dir       string
	socketDir string
}

func (p place) data() string         { return filepath.Join(p.dir, "data") }
func (p place) lockFile() string     { return filepath.Join(p.dir, "lock") }
func (p place) passwordFile() string { return filepath.Join(p.dir, "password") }
func (p place) socket() string       { return socketIn(p.socketDir) }

func socketIn(dir string) string { return filepath.Join(dir, ".s.PGSQL."+socketPort) }

// locate makes dir if needed and derives the other paths.
func locate(dir string) (place, error) {
	if dir == "" {
		return place{}, errors.New("dir: must name a directory")
	}
	if err := os.MkdirAll(dir, 0o700); err != nil {
		return place{}, fmt.Errorf("dir: %w", err)
	}
	abs, err := filepath.Abs(dir)
	if err != nil {
		return place{}, fmt.Errorf("dir: %w", err)
	}
	if abs, err = filepath.EvalSymlinks(abs); err != nil {
		return place{}, fmt.Errorf("dir: %w", err)
	}
	return place{dir: abs, socketDir: chooseSocketDir(abs)}, nil
}

// chooseSocketDir returns dir/run, or a short directory under the system's temporary one, named by a hash of
// dir, when the socket's path would be longer than the kernel allows.
func chooseSocketDir(dir string) string {
	run := filepath.Join(dir, "run")
	if len(socketIn(run)) <= socketPathLimit {
		return run
	}
	sum := sha256.Sum256([]byte(dir))
	return filepath.Join(os.TempDir(), "pitgate-"+hex.EncodeToString(sum[:8]))
}

// openTo lets the cluster's account pass through dir, and refuses a dir whose parents it cannot pass.
func (p place) openTo(a account) error {
	if !a.dropped {
		return nil
	}
	info, err := os.Stat(p.dir)
	if err != nil {
		return fmt.Errorf("dir: %w", err)
	}
	if err := os.Chmod(p.dir, info.Mode().Perm()|0o011); err != nil {
		return fmt.Errorf("dir: %w", err)
	}
	return a.canReach(p.dir)
}

// makeSocketDir makes the socket's directory and refuses one that somebody else put there first.
func (p place) makeSocketDir(a account) error {
	if len(p.socket()) > socketPathLimit {
		return fmt.Errorf("socket path %s is longer than %d bytes: set TMPDIR to a shorter directory", p.socket(), socketPathLimit)
	}
	if a.dropped {
		if err := a.canReach(filepath.Dir(p.socketDir)); err != nil {
			return err
		}
	}
	if err := refuseForeign(p.socketDir, a); err != nil {
		return err
	}
	return makePrivateDir(p.socketDir, a)
}

// refuseForeign returns an error when path exists but is not a directory of ours or of the cluster's account.
func refuseForeign(path string, a account) error {
	info, err := os.Lstat(path)
	if errors.Is(err, os.ErrNotExist) {
		return nil
	}
	if err != nil {
		return err
	}
	owner := info.Sys().(*syscall.Stat_t).Uid
	if !info.IsDir() || (owner != a.uid && owner != uint32(os.Geteuid())) {
		return fmt.Errorf("%s belongs to another user: remove it", path)
	}
	return nil
}

// makePrivateDir makes path, or takes it over, as a directory that only a may enter.
func makePrivateDir(path string, a account) error {
	if err := os.Mkdir(path, 0o700); err != nil && !errors.Is(err, os.ErrExist) {
		return err
	}
	if a.dropped {
		if err := os.Lchown(path, int(a.uid), int(a.gid)); err != nil {
			return err
		}
	}
	return os.Chmod(path, 0o700)
}

// writeOwned writes a 0600 file that the cluster's account may read.
func writeOwned(path, content string, a account) error {
	if err := os.Remove(path); err != nil && !errors.Is(err, os.ErrNotExist) {
		return err
	}
	if err := os.WriteFile(path, []byte(content), 0o600); err != nil || !a.dropped {
		return err
	}
	return os.Lchown(path, int(a.uid), int(a.gid))
}

// writeWhole writes a 0600 file so that it is there with all its content or not at all.
func writeWhole(path, content string) error {
	draft, err := os.CreateTemp(filepath.Dir(path), "."+filepath.Base(path)+"-*")
	if err != nil {
		return err
	}
	_, err = draft.WriteString(content)
	if err = errors.Join(err, draft.Sync(), draft.Close()); err != nil {
		return errors.Join(err, os.Remove(draft.Name()))
	}
	if err := os.Rename(draft.Name(), path); err != nil {
		return err
	}
	return syncDir(filepath.Dir(path))
}

func syncDir(path string) error {
	d, err := os.Open(path)
	if err != nil {
		return err
	}
	return errors.Join(d.Sync(), d.Close())
}

// takeLock holds path for this process until the file is closed or the process ends, however it ends.
func takeLock(path string) (*os.File, error) {
	f, err := os.OpenFile(path, os.O_RDWR|os.O_CREATE, 0o600)
	if err != nil {
		return nil, fmt.Errorf("lock: %w", err)
	}
	if err := syscall.Flock(int(f.Fd()), syscall.LOCK_EX|syscall.LOCK_NB); err != nil {
		holder, _ := os.ReadFile(path) // only for the message
		_ = f.Close()
		return nil, fmt.Errorf("lock: %s is in use by process %s", filepath.Dir(path), strings.TrimSpace(string(holder)))
	}
	_ = f.Truncate(0) // the number inside only helps the message above
	_, _ = fmt.Fprintf(f, "%d\n", os.Getpid())
	return f, nil
}
