package main

import (
	"bufio"
	"context"
	"errors"
	"flag"
	"io"
	"strings"

	"pitgate/server/auth"
	"pitgate/server/club"
	"pitgate/server/postgres"
)

// founding is what a new club starts with.
type founding struct{ id, name, adminName, adminEmail string }

// runClub opens a club with its first administrator, whose password it reads from standard input.
func runClub(ctx context.Context, args []string, std streams) (status int, err error) {
	var s settings
	var f founding
	set := flag.NewFlagSet("pitgate club", flag.ContinueOnError)
	set.SetOutput(std.err)
	databaseFlags(set, &s)
	set.StringVar(&f.id, "id", "", "short name in addresses: lower-case letters, digits, hyphens")
	set.StringVar(&f.name, "name", "", "name of the club")
	set.StringVar(&f.adminName, "admin-name", "", "name of its first administrator")
	set.StringVar(&f.adminEmail, "admin-email", "", "mail address of the administrator")
	if err := set.Parse(args); err != nil {
		return 0, err
	}
	if err := f.check(); err != nil {
		return 0, err
	}
	hash, err := readPassword(ctx, std)
	if err != nil {
		return 0, err
	}
	base, err := openDatabase(ctx, s, newLog(std.err, false))
	if err != nil {
		return 0, err
	}
	defer func() { err = errors.Join(err, base.close()) }()
	if err := f.found(ctx, base.store, hash); err != nil {
		return 0, err
	}
	tell(std.out, "club %s is open; sign in as %s\n", f.id, f.adminEmail)
	return 0, nil
}

// check names the first flag that is missing or wrong.
func (f founding) check() error {
	switch {
	case !club.ValidID(f.id):
		return errors.New("id: give lower-case letters, digits and hyphens, e.g. larkmoor")
	case strings.TrimSpace(f.name) == "":
		return errors.New("name: missing")
	case strings.TrimSpace(f.adminName) == "":
		return errors.New("admin-name: missing")
	case !strings.Contains(f.adminEmail, "@"):
		return errors.New("admin-email: must be a mail address")
	}
	return nil
}

// readPassword reads one line and hashes it.
func readPassword(ctx context.Context, std streams) (string, error) {
	tell(std.err, "password of the administrator, then enter:\n")
	line, err := bufio.NewReader(io.LimitReader(std.in, 4096)).ReadString('\n')
	if err != nil && !errors.Is(err, io.EOF) {
		return "", err
	}
	passwords, err := auth.NewPasswords(1)
	if err != nil {
		return "", err
	}
	return passwords.Hash(ctx, strings.TrimRight(line, "\r\n"))
}

// found keeps club and administrator in one transaction.
func (f founding) found(ctx context.Context, store *postgres.Store, hash string) error {
	return store.InTx(ctx, f.id, func(tx *postgres.Tx) error {
		if _, err := tx.CreateClub(ctx, strings.TrimSpace(f.name)); err != nil {
			return err
		}
		_, err := tx.CreatePerson(ctx, club.Actor{}, club.Person{DisplayName: strings.TrimSpace(f.adminName), Email: f.adminEmail,
			PasswordHash: hash, Roles: []club.Role{club.Member, club.Administrator}})
		return err
	})
}
