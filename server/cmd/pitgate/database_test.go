package main

import (
	"os"
	"path/filepath"
	"strings"
	"testing"
)

// TestClubExportVerify opens a club on a private database, exports its ledger and verifies the file; a changed file does not verify.
func TestClubExportVerify(t *testing.T) {
	dir, err := os.MkdirTemp("", "pitgate-club-")
	if err != nil {
		t.Fatal(err)
	}
	t.Cleanup(func() { _ = os.RemoveAll(dir) })
	if err := os.Chmod(dir, 0o711); err != nil { // the database's account must pass when root runs the tests
		t.Fatal(err)
	}
	t.Setenv("DATABASE_URL", "")
	data := filepath.Join(dir, "data")
	found := []string{"club", "--data", data, "--id", "larkmoor", "--name", "Larkmoor Model Flying Club", "--admin-name", "Mei Castellan",
		"--admin-email", "mei@larkmoor.example"}
	if status, _, errors := try(t, "short\n", found...); status != exitUsage || !strings.Contains(errors, "at least") {
		t.Fatalf("a short password: status %d, %s", status, errors)
	}
	if status, out, errors := try(t, "four words on heath\n", found...); status != 0 || !strings.Contains(out, "larkmoor is open") {
		t.Fatalf("club: status %d, %s%s", status, out, errors)
	}
	if status, _, _ := try(t, "four words on heath\n", found...); status != exitUsage {
		t.Errorf("the same club again: status %d", status)
	}
	status, export, errors := try(t, "", "export", "larkmoor", "--data", data)
	if status != 0 {
		t.Fatalf("export: status %d, %s", status, errors)
	}
	if status, out, errors := verified(t, dir, export); status != 0 || !strings.Contains(out, "2 entries") {
		t.Errorf("verify: status %d, %s%s", status, out, errors)
	}
	if status, _, _ := verified(t, dir, strings.Replace(export, "person.created", "person.removed", 1)); status != exitUnverified {
		t.Errorf("a changed export: status %d", status)
	}
}

// verified runs verify on a text.
func verified(t *testing.T, dir, text string) (int, string, string) {
	t.Helper()
	name := filepath.Join(dir, "export.json")
	if err := os.WriteFile(name, []byte(text), 0o600); err != nil {
		t.Fatal(err)
	}
	return try(t, "", "verify", name)
}
