package main

import (
	"bufio"
	"bytes"
	"encoding/base64"
	"encoding/json"
	"fmt"
	"io"
	"net/http"
	"net/url"
	"os"
	"os/exec"
	"path/filepath"
	"strings"
	"sync"
	"sync/atomic"
	"syscall"
	"testing"
	"time"

	"github.com/google/uuid"

	"pitgate/server/ledger"
)

// submissions are sent at once, and the server is killed amid them.
const submissions = 200

// killAfter is the number of acknowledged submissions at which the server is killed.
const killAfter = 60

// server is a running binary.
type server struct {
	t       *testing.T
	binary  string
	data    string
	process *exec.Cmd
	url     string
	token   string
}

// TestKillAmidSubmissions kills the server with kill -9 amid 200 concurrent submissions, starts it again and sends what was not
// acknowledged once more. Every acknowledged submission must be there once, none twice, and the ledger must verify.
func TestKillAmidSubmissions(t *testing.T) {
	s := build(t)
	s.start()
	s.signIn()
	model, field := s.prepare()
	sent := make([]*submission, submissions)
	for i := range sent {
		sent[i] = &submission{id: uuid.NewString(), model: model, field: field}
	}
	if acknowledged := s.killAmid(sent); acknowledged == submissions {
		t.Fatal("everything was acknowledged before the kill: nothing was proved")
	}
	s.start()
	s.sendAll(sent, nil)
	s.checkOnce(sent)
	s.checkLedger()
}

// submission is one request and the name it was acknowledged with.
type submission struct {
	id, model, field string
	first            string
	last             string
}

// build compiles the binary and makes a data directory that the database's account can reach.
func build(t *testing.T) *server {
	t.Helper()
	dir, err := os.MkdirTemp("", "pitgate-crash-")
	if err != nil {
		t.Fatal(err)
	}
	if err := os.Chmod(dir, 0o711); err != nil {
		t.Fatal(err)
	}
	s := &server{t: t, binary: filepath.Join(dir, "pitgate"), data: filepath.Join(dir, "data")}
	t.Cleanup(func() {
		if s.process != nil {
			_ = s.process.Process.Signal(syscall.SIGTERM)
			_ = s.process.Wait()
		}
		if err := os.RemoveAll(dir); err != nil {
			t.Error(err)
		}
	})
	if out, err := exec.Command("go", "build", "-o", s.binary, ".").CombinedOutput(); err != nil {
		t.Fatalf("build: %v\n%s", err, out)
	}
	return s
}

// start runs the demo on a free port and waits for its ready line.
func (s *server) start() {
	s.t.Helper()
	s.process = exec.Command(s.binary, "demo", "--addr", "localhost:0", "--data", s.data)
	s.process.Env = append(os.Environ(), "DATABASE_URL=")
	var log bytes.Buffer
	s.process.Stderr = &log
	out, err := s.process.StdoutPipe()
	if err != nil {
		s.t.Fatal(err)
	}
	if err := s.process.Start(); err != nil {
		s.t.Fatal(err)
	}
	line, err := bufio.NewReader(out).ReadString('\n')
	at, ready := strings.CutPrefix(strings.TrimSpace(line), "pitgate ready: ")
	if err != nil || !ready {
		_ = s.process.Wait()
		s.t.Fatalf("not ready: %q, %v\n%s", line, err, log.String())
	}
	s.url = at
}

// signIn keeps a bearer token of Ada Thorne; her session outlives the kill.
func (s *server) signIn() {
	s.t.Helper()
	out := s.must("POST", "/v1/demo:signIn", map[string]any{"person": "clubs/larkmoor/people/ada-thorne", "returnToken": true})
	s.token, _ = out["sessionToken"].(string)
}

// prepare registers a bare model, quick to compute, and finds a field.
func (s *server) prepare() (model, field string) {
	s.t.Helper()
	m := s.must("POST", "/v1/clubs/larkmoor/models", map[string]any{"displayName": "Dabchick two", "description": map[string]any{}})
	fields, _ := s.must("GET", "/v1/clubs/larkmoor/fields", nil)["fields"].([]any)
	if len(fields) == 0 {
		s.t.Fatal("the demo has no field")
	}
	return m["name"].(string), fields[0].(map[string]any)["name"].(string)
}

// killAmid sends everything at once and kills the server when enough is acknowledged. It tells how many were.
func (s *server) killAmid(sent []*submission) int {
	s.t.Helper()
	var acknowledged atomic.Int64
	var once sync.Once
	s.sendAll(sent, func() bool {
		if acknowledged.Add(1) >= killAfter {
			once.Do(func() { _ = s.process.Process.Kill() })
		}
		return true
	})
	_ = s.process.Wait()
	count := 0
	for _, one := range sent {
		if one.first != "" {
			count++
		}
	}
	s.t.Logf("%d of %d acknowledged before the kill", count, len(sent))
	return count
}

// sendAll sends every submission concurrently. With a callback it sends once and lets failures pass; without, it repeats until all are
// acknowledged.
func (s *server) sendAll(sent []*submission, acknowledged func() bool) {
	s.t.Helper()
	var group sync.WaitGroup
	for _, one := range sent {
		group.Go(func() {
			for range 40 {
				if s.send(one, acknowledged == nil) && (acknowledged == nil || acknowledged()) || acknowledged != nil {
					return
				}
				time.Sleep(100 * time.Millisecond)
			}
			s.t.Errorf("request %s was never acknowledged", one.id)
		})
	}
	group.Wait()
}

// send submits one and notes the name in the answer.
func (s *server) send(one *submission, again bool) bool {
	status, out, err := s.call("POST", "/v1/clubs/larkmoor/approvals?submit=true&requestId="+one.id,
		map[string]any{"model": one.model, "field": one.field, "launchPlan": map[string]any{}, "day": map[string]any{}})
	name, _ := out["name"].(string)
	if err != nil || status != http.StatusOK || name == "" {
		return false
	}
	if again {
		one.last = name
	} else {
		one.first = name
	}
	return true
}

// checkOnce compares what was acknowledged with what is there.
func (s *server) checkOnce(sent []*submission) {
	s.t.Helper()
	stored := map[string]int{}
	token := ""
	for {
		page := s.must("GET", "/v1/clubs/larkmoor/approvals?mine=true&pageSize=100&pageToken="+url.QueryEscape(token), nil)
		for _, entry := range page["approvals"].([]any) {
			if a := entry.(map[string]any); a["model"] == sent[0].model {
				stored[a["name"].(string)]++
				if a["state"] != "APPROVAL_STATE_SUBMITTED" || a["assessment"] == nil {
					s.t.Errorf("%v is half done: %v, assessment %v", a["name"], a["state"], a["assessment"])
				}
			}
		}
		if token, _ = page["nextPageToken"].(string); token == "" {
			break
		}
	}
	if len(stored) != submissions {
		s.t.Errorf("%d approvals are stored, want %d", len(stored), submissions)
	}
	for _, one := range sent {
		if stored[one.last] != 1 {
			s.t.Errorf("request %s: %q is stored %d times", one.id, one.last, stored[one.last])
		}
		if one.first != "" && one.first != one.last {
			s.t.Errorf("request %s was acknowledged as %s and again as %s", one.id, one.first, one.last)
		}
	}
}

// checkLedger exports the ledger through the API and verifies it as an outsider would.
func (s *server) checkLedger() {
	s.t.Helper()
	head := s.must("GET", "/v1/clubs/larkmoor/ledger:head", nil)
	export := map[string]any{"format": ledger.ExportFormat, "club_id": "larkmoor", "public_key": head["publicKey"]}
	var entries []json.RawMessage
	for token := ""; ; {
		page := s.must("GET", "/v1/clubs/larkmoor/ledger/entries?pageSize=500&pageToken="+url.QueryEscape(token), nil)
		for _, e := range page["entries"].([]any) {
			entries = append(entries, json.RawMessage(e.(map[string]any)["entry"].(string)))
		}
		if token, _ = page["nextPageToken"].(string); token == "" {
			break
		}
	}
	export["entries"] = entries
	export["heads"] = []any{signedHead(s.t, head)}
	text, err := json.Marshal(export)
	if err != nil {
		s.t.Fatal(err)
	}
	file := filepath.Join(s.t.TempDir(), "export.json")
	if err := os.WriteFile(file, text, 0o600); err != nil {
		s.t.Fatal(err)
	}
	out, err := exec.Command(s.binary, "verify", file).CombinedOutput()
	if err != nil || !strings.Contains(string(out), fmt.Sprintf("%d entries", len(entries))) {
		s.t.Errorf("verify: %v\n%s", err, out)
	}
}

// signedHead writes a head as an export has it.
func signedHead(t *testing.T, head map[string]any) ledger.SignedHead {
	t.Helper()
	out := ledger.SignedHead{}
	var err error
	if out.RootHash, err = base64.StdEncoding.DecodeString(head["rootHash"].(string)); err != nil {
		t.Fatal(err)
	}
	if out.Signature, err = base64.StdEncoding.DecodeString(head["signature"].(string)); err != nil {
		t.Fatal(err)
	}
	if _, err := fmt.Sscan(head["treeSize"].(string), &out.TreeSize); err != nil {
		t.Fatal(err)
	}
	if out.Time, err = time.Parse(time.RFC3339Nano, head["time"].(string)); err != nil {
		t.Fatal(err)
	}
	return out
}

// client gives up on a server that was killed.
var client = &http.Client{Timeout: 20 * time.Second, Transport: &http.Transport{MaxIdleConnsPerHost: submissions}}

// call sends one request.
func (s *server) call(method, path string, body any) (int, map[string]any, error) {
	text, err := json.Marshal(body)
	if err != nil {
		return 0, nil, err
	}
	req, err := http.NewRequest(method, s.url+path, bytes.NewReader(text))
	if err != nil {
		return 0, nil, err
	}
	req.Header.Set("Content-Type", "application/json")
	if s.token != "" {
		req.Header.Set("Authorization", "Bearer "+s.token)
	}
	resp, err := client.Do(req)
	if err != nil {
		return 0, nil, err
	}
	defer resp.Body.Close()
	answer, err := io.ReadAll(resp.Body)
	if err != nil {
		return 0, nil, err
	}
	out := map[string]any{}
	return resp.StatusCode, out, json.Unmarshal(answer, &out)
}

// must calls and fails unless the answer is 200.
func (s *server) must(method, path string, body any) map[string]any {
	s.t.Helper()
	status, out, err := s.call(method, path, body)
	if err != nil || status != http.StatusOK {
		s.t.Fatalf("%s %s: %d %v %v", method, path, status, out, err)
	}
	return out
}
