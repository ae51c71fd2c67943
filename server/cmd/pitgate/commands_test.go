package main

import (
	"bytes"
	"context"
	"encoding/json"
	"os"
	"path/filepath"
	"strings"
	"testing"

	files "pitgate/testdata/demo"
)

// try runs a command with the given standard input.
func try(t *testing.T, stdin string, args ...string) (status int, out, errors string) {
	t.Helper()
	var stdout, stderr bytes.Buffer
	status = run(t.Context(), args, streams{strings.NewReader(stdin), &stdout, &stderr})
	return status, stdout.String(), stderr.String()
}

// wholeDocument is one of the demo's whole documents.
func wholeDocument(t *testing.T, name string) string {
	t.Helper()
	text, err := files.Files.ReadFile(name)
	if err != nil {
		t.Fatal(err)
	}
	return string(text)
}

func TestAssess(t *testing.T) {
	t.Parallel()
	dabchick := wholeDocument(t, "dabchick_long_acre.json")
	for _, c := range []struct {
		name, stdin string
		args        []string
		status      int
		out, err    string
	}{
		{"holds", dabchick, []string{"assess", "-"}, 0, "Stall speed", ""},
		{"fails", wholeDocument(t, "redshank_quarry_top.json"), []string{"assess", "-"}, 1, "FAILS", ""},
		{"everything unknown", "{}", []string{"assess", "-"}, 1, "UNKNOWN", ""},
		{"as JSON, flag last", dabchick, []string{"assess", "-", "--json"}, 0, `"coreVersion"`, ""},
		{"bad number", strings.Replace(dabchick, `"chordMeters": `, `"chordMeters": -`, 1), []string{"assess", "-"}, 2, "", "model.surfaces[0].stations[0].chordMeters: must be greater than 0"},
		{"unknown field", `{"wing": {}}`, []string{"assess", "-"}, 2, "", "wing: "},
		{"not JSON", "hello", []string{"assess", "-"}, 2, "", "document: "},
		{"no file", "", []string{"assess", filepath.Join(t.TempDir(), "none.json")}, 2, "", "none.json"},
		{"no argument", "", []string{"assess"}, 2, "", "give one document"},
	} {
		t.Run(c.name, func(t *testing.T) {
			t.Parallel()
			status, out, errors := try(t, c.stdin, c.args...)
			if status != c.status || !strings.Contains(out, c.out) || !strings.Contains(errors, c.err) {
				t.Errorf("status %d, out %q, errors %q; want %d, %q, %q", status, out, errors, c.status, c.out, c.err)
			}
		})
	}
}

func TestAssessedJSONCarriesCautions(t *testing.T) {
	t.Parallel()
	_, out, _ := try(t, wholeDocument(t, "dabchick_long_acre.json"), "assess", "-", "--json")
	var report struct {
		Cautions []string
		Findings []json.RawMessage
	}
	if err := json.Unmarshal([]byte(out), &report); err != nil || len(report.Cautions) == 0 || len(report.Findings) == 0 {
		t.Errorf("cautions %v, %d findings, %v", report.Cautions, len(report.Findings), err)
	}
}

func TestVerifyRefusesWhatIsNoExport(t *testing.T) {
	t.Parallel()
	name := filepath.Join(t.TempDir(), "export.json")
	if err := os.WriteFile(name, []byte(`{"format":"something else"}`), 0o600); err != nil {
		t.Fatal(err)
	}
	status, _, errors := try(t, "", "verify", name)
	if status != exitUnverified || !strings.Contains(errors, "not verified") {
		t.Errorf("status %d, errors %q", status, errors)
	}
}

func TestDemoServesThisMachineOnly(t *testing.T) {
	t.Parallel()
	for _, addr := range []string{":8080", "0.0.0.0:8080", "192.0.2.7:8080", "[::]:8080", "club.example:8080"} {
		var out, errors bytes.Buffer
		status := run(context.Background(), []string{"demo", "--addr", addr, "--data", t.TempDir()}, streams{nil, &out, &errors})
		if status != exitUsage || !strings.Contains(errors.String(), "localhost") {
			t.Errorf("%s: status %d, %q", addr, status, errors.String())
		}
	}
	for _, addr := range []string{"localhost:8080", "127.0.0.1:1", "[::1]:8080"} {
		if !loopback(addr) {
			t.Errorf("%s is this machine", addr)
		}
	}
}

func TestUnknownCommandsAndFlags(t *testing.T) {
	t.Parallel()
	for _, c := range []struct {
		args   []string
		status int
	}{
		{nil, 2}, {[]string{"fly"}, 2}, {[]string{"serve", "--no-such-flag"}, 2}, {[]string{"serve", "extra"}, 2},
		{[]string{"serve", "--tls-cert", "x"}, 2}, {[]string{"serve", "--addr", "nonsense"}, 2},
		{[]string{"help"}, 0}, {[]string{"serve", "--help"}, 0}, {[]string{"verify", "--help"}, 0}, {[]string{"verify"}, 2},
	} {
		if status, _, _ := try(t, "", c.args...); status != c.status {
			t.Errorf("%v: status %d, want %d", c.args, status, c.status)
		}
	}
}
