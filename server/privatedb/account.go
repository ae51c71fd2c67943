//go:build linux

package privatedb

import (
	"errors"
	"fmt"
	"io/fs"
	"os"
	"os/user"
	"path/filepath"
	"strconv"
	"syscall"
)

// account is the user the cluster runs as.
type account struct {
	uid, gid uint32
	// dropped tells that this process is root and must change to the account for every child.
	dropped bool
}

// chooseAccount returns this user, or for root the owner of an existing cluster, else postgres, else nobody.
func chooseAccount(data string) (account, error) {
	self := account{uid: uint32(os.Geteuid()), gid: uint32(os.Getegid())}
	owner, exists, err := ownerOf(data)
	switch {
	case err != nil:
		return account{}, err
	case self.uid != 0 && exists && owner.uid != self.uid:
		return account{}, fmt.Errorf("%s belongs to user %d but this process runs as user %d", data, owner.uid, self.uid)
	case self.uid != 0:
		return self, nil
	case exists && owner.uid != 0:
		return owner, nil
	}
	found, err := lookUp("postgres", "nobody")
	if err == nil && exists {
		err = giveAll(data, found)
	}
	return found, err
}

func ownerOf(path string) (account, bool, error) {
	info, err := os.Lstat(path)
	if errors.Is(err, fs.ErrNotExist) {
		return account{}, false, nil
	}
	if err != nil {
		return account{}, false, err
	}
	stat := info.Sys().(*syscall.Stat_t)
	return account{uid: stat.Uid, gid: stat.Gid, dropped: true}, true, nil
}

func lookUp(names ...string) (account, error) {
	for _, name := range names {
		u, err := user.Lookup(name)
		if err != nil {
			continue
		}
		uid, errUID := strconv.ParseUint(u.Uid, 10, 32)
		gid, errGID := strconv.ParseUint(u.Gid, 10, 32)
		if errUID == nil && errGID == nil && uid != 0 {
			return account{uid: uint32(uid), gid: uint32(gid), dropped: true}, nil
		}
	}
	return account{}, fmt.Errorf("PostgreSQL does not run as root and none of the users %v exists: start pitgate as an ordinary user", names)
}

// giveAll hands a tree over to a; a cluster copied back by root from a backup belongs to root.
func giveAll(root string, a account) error {
	return filepath.WalkDir(root, func(path string, _ fs.DirEntry, err error) error {
		if err != nil {
			return err
		}
		return os.Lchown(path, int(a.uid), int(a.gid))
	})
}

// attributes returns the process attributes that change to the account, with no supplementary groups.
func (a account) attributes() *syscall.SysProcAttr {
	if !a.dropped {
		return &syscall.SysProcAttr{}
	}
	return &syscall.SysProcAttr{Credential: &syscall.Credential{Uid: a.uid, Gid: a.gid}}
}

// canReach returns an error that names the first directory on the way to dir which the account may not pass.
func (a account) canReach(dir string) error {
	for at := dir; ; at = filepath.Dir(at) {
		info, err := os.Stat(at)
		if err != nil {
			return err
		}
		if !a.mayPass(info) {
			return fmt.Errorf("the cluster runs as user %d, who may not pass through %s: set PITGATE_DATA to another directory, or chmod o+x it", a.uid, at)
		}
		if at == filepath.Dir(at) {
			return nil
		}
	}
}

// mayPass reads the search bit that applies to the account. Access lists are not looked at.
func (a account) mayPass(info fs.FileInfo) bool {
	stat := info.Sys().(*syscall.Stat_t)
	switch mode := info.Mode().Perm(); {
	case stat.Uid == a.uid:
		return mode&0o100 != 0
	case stat.Gid == a.gid:
		return mode&0o010 != 0
	default:
		return mode&0o001 != 0
	}
}
