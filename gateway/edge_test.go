package gateway_test

import (
	"fmt"
	"io"
	"net/http"
	"regexp"
	"strings"
	"testing"

	"pitgate/server/demo"
)

// regexpFind tells what is missing in a text.
func regexpFind(text any, pattern string) (string, error) {
	s, _ := text.(string)
	if found := regexp.MustCompile(pattern).FindString(s); found != "" {
		return found, nil
	}
	return "", fmt.Errorf("%q does not contain %q", s, pattern)
}

// TestCookie pins the whole line, the absent token, and what signing out does.
func TestCookie(t *testing.T) {
	t.Parallel()
	b := open(t).visitor()
	status, header, out := b.call("POST", "/v1/demo:signIn", object{"person": "clubs/larkmoor/people/" + demo.Ada})
	line := header.Get("Set-Cookie")
	form := `^__Host-pitgate=larkmoor\.[A-Za-z0-9_-]{43}; Path=/; Expires=[^;]+; HttpOnly; Secure; SameSite=Strict$`
	if _, err := regexpFind(line, form); status != 200 || err != nil {
		t.Fatalf("status %d: %v", status, err)
	}
	if out["sessionToken"] != nil {
		t.Error("the token is in the body too")
	}
	if got := header.Get("pitgate-session") + header.Get("Grpc-Metadata-Pitgate-Session"); got != "" {
		t.Error("the token is in another header too")
	}
	old := strings.SplitN(line, ";", 2)[0]
	b.want(200, "GET", "/v1/me", nil)
	_, header, _ = b.call("POST", "/v1/me:signOut", object{})
	if _, err := regexpFind(header.Get("Set-Cookie"), `^__Host-pitgate=; Path=/; Max-Age=0; HttpOnly; Secure; SameSite=Strict$`); err != nil {
		t.Error(err)
	}
	b.wantReason(b.want(401, "GET", "/v1/me", nil), "SIGN_IN")
	b.wantReason(b.want(401, "GET", "/v1/me", nil, "Cookie", old), "SIGN_IN")
}

func TestReturnedTokenIsABearer(t *testing.T) {
	t.Parallel()
	e := open(t)
	out := e.visitor().want(200, "POST", "/v1/demo:signIn", object{"person": "clubs/larkmoor/people/" + demo.Ada, "returnToken": true})
	token, _ := out["sessionToken"].(string)
	me := e.visitor().want(200, "GET", "/v1/me", nil, "Authorization", "Bearer "+token)
	if me["displayName"] != "Ada Thorne" {
		t.Errorf("the token is of %v", me["displayName"])
	}
	e.visitor().want(401, "GET", "/v1/me", nil, "Grpc-Metadata-Authorization", "Bearer "+token)
}

func TestWrongPasswordsLookAlike(t *testing.T) {
	t.Parallel()
	b := open(t).visitor()
	var messages []any
	for _, body := range []object{
		{"email": "ada@larkmoor.example", "password": "not the password"},
		{"email": "nobody@larkmoor.example", "password": "not the password"},
	} {
		out := b.want(401, "POST", "/v1/clubs/larkmoor:signIn", body)
		b.wantReason(out, "WRONG_CREDENTIALS")
		messages = append(messages, out["message"])
	}
	out := b.want(401, "POST", "/v1/clubs/nowhere:signIn", object{"email": "ada@larkmoor.example", "password": "not the password"})
	if messages[0] != messages[1] || out["message"] != messages[0] {
		t.Errorf("the answers tell them apart: %v, %v", messages, out["message"])
	}
	for range 8 {
		status, _, out := b.call("POST", "/v1/clubs/larkmoor:signIn", object{"email": "ada@larkmoor.example", "password": "guess"})
		if status == 429 {
			b.wantReason(out, "TOO_MANY_REQUESTS")
			return
		}
	}
	t.Error("nobody stops the guessing")
}

func TestRequestsAreRefused(t *testing.T) {
	t.Parallel()
	b := open(t).visitor()
	b.want(200, "POST", "/v1/demo:signIn", object{"person": "clubs/larkmoor/people/" + demo.Ada})
	before := b.want(200, "GET", "/v1/clubs/larkmoor/ledger:head", nil)
	for _, c := range []struct {
		name, method, path string
		body               any
		headers            []string
		status             int
		reason, field      string
	}{
		{"unknown field", "POST", "/v1/clubs/larkmoor/models", object{"displayNam": "x"}, nil, 400, "UNKNOWN_FIELD", "displayNam"},
		{"wrong kind", "POST", "/v1/clubs/larkmoor/models", object{"displayName": 7}, nil, 400, "MALFORMED_JSON", ""},
		{"fault in the document", "POST", "/v1/clubs/larkmoor/models", object{"displayName": "x", "description": object{"surfaces": []any{
			object{"name": "wing", "stations": []any{object{"chordMeters": -1}}}}}}, nil, 400, "INVALID_DOCUMENT", "model.surfaces[0].stations[0].chordMeters"},
		{"same fault in a preview", "POST", "/v1/clubs/larkmoor/assessments:preview", object{"model": object{"surfaces": []any{
			object{"name": "wing", "stations": []any{object{"chordMeters": -1}}}}}}, nil, 400, "INVALID_DOCUMENT", "model.surfaces[0].stations[0].chordMeters"},
		{"bad request id", "POST", "/v1/clubs/larkmoor/models?requestId=x", object{"displayName": "x"}, nil, 400, "INVALID_FIELDS", "requestId"},
		{"form instead of JSON", "POST", "/v1/me:signOut", object{}, []string{"Content-Type", "text/plain"}, 415, "NOT_JSON", ""},
		{"other origin", "POST", "/v1/me:signOut", object{}, []string{"Origin", "https://elsewhere.example"}, 403, "CROSS_ORIGIN", ""},
		{"cross site", "POST", "/v1/me:signOut", object{}, []string{"Sec-Fetch-Site", "cross-site"}, 403, "CROSS_ORIGIN", ""},
		{"too large", "POST", "/v1/clubs/larkmoor/models", object{"displayName": strings.Repeat("x", 1<<20)}, nil, 413, "BODY_TOO_LARGE", ""},
		{"no such path", "GET", "/v1/nothing", nil, nil, 404, "NO_SUCH_PATH", ""},
		{"no such method", "DELETE", "/v1/me", nil, nil, 405, "NO_SUCH_METHOD", ""},
		{"other club", "GET", "/v1/clubs/eastfen/models", nil, nil, 404, "NOT_FOUND", ""},
		{"bad page token", "GET", "/v1/clubs/larkmoor/ledger/entries?pageToken=zz", nil, nil, 400, "BAD_PAGE_TOKEN", "pageToken"},
		{"negative page size", "GET", "/v1/clubs/larkmoor/models?pageSize=-1", nil, nil, 400, "INVALID_FIELDS", "pageSize"},
	} {
		out := b.want(c.status, c.method, c.path, c.body, c.headers...)
		if out["reason"] != c.reason {
			t.Errorf("%s: reason %v, want %s: %v", c.name, out["reason"], c.reason, out)
		}
		if bad, _ := out["fieldViolations"].([]any); c.field != "" && (len(bad) == 0 || bad[0].(object)["field"] != c.field) {
			t.Errorf("%s: violations %v do not name %s", c.name, bad, c.field)
		}
	}
	b.want(200, "GET", "/v1/me", nil) // none of them signed anybody out
	if after := b.want(200, "GET", "/v1/clubs/larkmoor/ledger:head", nil); after["treeSize"] != before["treeSize"] {
		t.Errorf("refused requests wrote to the ledger: %v entries before, %v after", before["treeSize"], after["treeSize"])
	}
}

func TestPage(t *testing.T) {
	t.Parallel()
	e := open(t)
	for _, c := range []struct{ path, media, cache string }{
		{"/", "text/html; charset=utf-8", "no-cache"},
		{"/approvals/some-id", "text/html; charset=utf-8", "no-cache"},
		{"/assets/main-Ab12Cd34.js", "text/javascript; charset=utf-8", "public, max-age=31536000, immutable"},
		{"/assets/core-Zz99Yy88.wasm", "application/wasm", "public, max-age=31536000, immutable"},
		{"/manifest.webmanifest", "application/manifest+json", "no-cache"},
		{"/sw.js", "text/javascript; charset=utf-8", "no-cache"},
	} {
		status, header, _ := e.visitor().call("GET", c.path, nil)
		if status != 200 || header.Get("Content-Type") != c.media || header.Get("Cache-Control") != c.cache {
			t.Errorf("%s: %d, %q, %q", c.path, status, header.Get("Content-Type"), header.Get("Cache-Control"))
		}
		for _, name := range []string{"Content-Security-Policy", "X-Content-Type-Options", "Referrer-Policy", "Permissions-Policy", "Strict-Transport-Security"} {
			if header.Get(name) == "" {
				t.Errorf("%s lacks %s", c.path, name)
			}
		}
	}
	for path, want := range map[string]int{"/missing.js": 404, "/../secret.txt": 404, "/healthz": 200, "/openapi.json": 200} {
		if status, _, _ := e.visitor().call("GET", path, nil); status != want {
			t.Errorf("%s: %d, want %d", path, status, want)
		}
	}
	tag := header(t, e, "/sw.js").Get("Etag")
	if status, _, _ := e.visitor().call("GET", "/sw.js", nil, "If-None-Match", tag); tag == "" || status != http.StatusNotModified {
		t.Errorf("an unchanged file with tag %s: %d, want 304", tag, status)
	}
	policy := header(t, e, "/").Get("Content-Security-Policy")
	if strings.Contains(policy, "unsafe-inline") || strings.Contains(policy, "'unsafe-eval'") {
		t.Errorf("the policy lets inline code in: %s", policy)
	}
}

// header reads the header of one path.
func header(t *testing.T, e *edge, path string) http.Header {
	t.Helper()
	resp, err := e.web.Client().Get(e.web.URL + path)
	if err != nil {
		t.Fatal(err)
	}
	defer resp.Body.Close()
	_, _ = io.Copy(io.Discard, resp.Body)
	return resp.Header
}
