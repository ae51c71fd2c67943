//go:build linux

package privatedb

import (
	"fmt"
	"io/fs"
	"log/slog"
	"os"
	"path/filepath"
	"strings"
	"syscall"
	"testing"
	"time"
)

// entry is a directory as the file system would describe it.
type entry struct {
	mode     fs.FileMode
	uid, gid uint32
}

func (e entry) Name() string       { return "entry" }
func (e entry) Size() int64        { return 0 }
func (e entry) Mode() fs.FileMode  { return e.mode }
func (e entry) ModTime() time.Time { return time.Time{} }
func (e entry) IsDir() bool        { return true }
func (e entry) Sys() any           { return &syscall.Stat_t{Uid: e.uid, Gid: e.gid} }

func TestMayPass(t *testing.T) {
	t.Parallel()
	who := account{uid: 100, gid: 200}
	tests := []struct {
		name string
		dir  entry
		want bool
	}{
		{"owner with the bit", entry{0o700, 100, 0}, true},
		{"owner without, others with", entry{0o077, 100, 0}, false},
		{"group with the bit", entry{0o710, 0, 200}, true},
		{"group without, others with", entry{0o701, 0, 200}, false},
		{"others with the bit", entry{0o701, 0, 0}, true},
		{"others without", entry{0o700, 0, 0}, false},
	}
	for _, test := range tests {
		if got := who.mayPass(test.dir); got != test.want {
			t.Errorf("%s: got %v, want %v", test.name, got, test.want)
		}
	}
}

func TestUnreachableDirectoryIsNamed(t *testing.T) {
	t.Parallel()
	closed := filepath.Join(scratch(t), "closed")
	inner := filepath.Join(closed, "inner")
	if err := os.MkdirAll(inner, 0o711); err != nil {
		t.Fatal(err)
	}
	if err := os.Chmod(closed, 0o700); err != nil {
		t.Fatal(err)
	}
	stranger := account{uid: uint32(os.Geteuid()) + 4321, gid: uint32(os.Getegid()) + 4321, dropped: true}
	err := place{dir: inner}.openTo(stranger)
	if err == nil || !strings.Contains(err.Error(), closed+":") || !strings.Contains(err.Error(), "PITGATE_DATA") {
		t.Errorf("got %v, want %s and PITGATE_DATA named", err, closed)
	}
}

func TestForeignSocketDirectoryIsRefused(t *testing.T) {
	t.Parallel()
	dir := scratch(t)
	link := filepath.Join(dir, "run")
	if err := os.Symlink(dir, link); err != nil {
		t.Fatal(err)
	}
	self := account{uid: uint32(os.Geteuid()), gid: uint32(os.Getegid())}
	if err := (place{dir: dir, socketDir: link}).makeSocketDir(self); err == nil {
		t.Error("a symbolic link was taken as the socket directory")
	}
}

func TestProgramsOfAnotherVersion(t *testing.T) {
	t.Parallel()
	if dir := installed("9999"); dir != "" {
		t.Errorf("version 9999 found in %s", dir)
	}
	if dir := installed(""); dir != "" {
		version := filepath.Base(filepath.Dir(dir))
		if got := installed(version); got != dir {
			t.Errorf("version %s: got %q, want %q", version, got, dir)
		}
	}
	if err := noPrograms("14"); !strings.Contains(err.Error(), "PostgreSQL 14") {
		t.Errorf("got %v", err)
	}
}

func TestLineLogSplitsAndRemembers(t *testing.T) {
	t.Parallel()
	var out strings.Builder
	l := &lineLog{log: slog.New(slog.NewTextHandler(&out, nil))}
	for i := range 10 {
		fmt.Fprintf(l, "LOG:  message %d\nFATAL:  rea", i)
		fmt.Fprintf(l, "son %d\n", i)
	}
	want := "LOG:  message 7 | FATAL:  reason 7 | LOG:  message 8 | FATAL:  reason 8 | LOG:  message 9 | FATAL:  reason 9"
	if got := l.tail(); got != want {
		t.Errorf("tail: got %q, want %q", got, want)
	}
	if got := strings.Count(out.String(), "FATAL:"); got != 10 || strings.Contains(out.String(), "LOG:") {
		t.Errorf("passed on: %s", out.String())
	}
}
