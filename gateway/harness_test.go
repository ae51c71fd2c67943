package gateway_test

import (
	"bytes"
	"context"
	"encoding/json"
	"io"
	"net"
	"net/http"
	"net/http/cookiejar"
	"net/http/httptest"
	"strings"
	"testing"
	"testing/fstest"

	"google.golang.org/grpc"
	"google.golang.org/grpc/credentials/insecure"
	"google.golang.org/grpc/test/bufconn"

	"pitgate/gateway"
	"pitgate/server/api"
	"pitgate/server/demo"
	"pitgate/server/postgres/pgtest"
)

func TestMain(m *testing.M) { pgtest.Main(m) }

// page is a small page as the build would leave it.
var page = fstest.MapFS{
	"index.html":                {Data: []byte("<!doctype html><title>page</title>")},
	"assets/main-Ab12Cd34.js":   {Data: []byte("export {}")},
	"assets/core-Zz99Yy88.wasm": {Data: []byte("\x00asm")},
	"manifest.webmanifest":      {Data: []byte("{}")},
	"sw.js":                     {Data: []byte("self")},
}

// edge is the whole edge over TLS, since browsers keep its cookie only there, with the demo's club behind it.
type edge struct {
	t   *testing.T
	web *httptest.Server
}

func open(t *testing.T) *edge {
	t.Helper()
	store := pgtest.New(t)
	if err := demo.Load(t.Context(), store); err != nil {
		t.Fatal(err)
	}
	server, err := api.New(api.Config{Store: store, DemoClub: demo.ClubID})
	if err != nil {
		t.Fatal(err)
	}
	listener := bufconn.Listen(1 << 20)
	go func() { _ = server.Serve(listener) }()
	t.Cleanup(server.Stop)
	conn, err := grpc.NewClient("passthrough:///edge", grpc.WithTransportCredentials(insecure.NewCredentials()),
		grpc.WithContextDialer(func(ctx context.Context, _ string) (net.Conn, error) { return listener.DialContext(ctx) }),
		grpc.WithDefaultCallOptions(grpc.MaxCallSendMsgSize(16<<20), grpc.MaxCallRecvMsgSize(16<<20)))
	if err != nil {
		t.Fatal(err)
	}
	t.Cleanup(func() { _ = conn.Close() })
	handler, err := gateway.New(t.Context(), conn, gateway.Options{Page: page, OpenAPI: []byte(`{"openapi":"3.1.0"}`), TLS: true})
	if err != nil {
		t.Fatal(err)
	}
	web := httptest.NewTLSServer(handler)
	t.Cleanup(web.Close)
	return &edge{t, web}
}

// browser is one person with a cookie jar.
type browser struct {
	*edge
	client *http.Client
}

// visitor has not signed in.
func (e *edge) visitor() *browser {
	e.t.Helper()
	jar, err := cookiejar.New(nil)
	if err != nil {
		e.t.Fatal(err)
	}
	client := *e.web.Client()
	client.Jar = jar
	return &browser{e, &client}
}

// as signs a person of the demo in with the password.
func (e *edge) as(person string) *browser {
	e.t.Helper()
	b := e.visitor()
	given, _, _ := strings.Cut(person, "-")
	b.want(200, "POST", "/v1/clubs/larkmoor:signIn", map[string]any{"email": given + "@larkmoor.example", "password": demo.Password})
	return b
}

// object is a JSON object.
type object = map[string]any

// call sends JSON and returns status, header and body.
func (b *browser) call(method, path string, body any, headers ...string) (int, http.Header, object) {
	b.t.Helper()
	var reader io.Reader
	if body != nil {
		text, err := json.Marshal(body)
		if err != nil {
			b.t.Fatal(err)
		}
		reader = bytes.NewReader(text)
	}
	req, err := http.NewRequestWithContext(b.t.Context(), method, b.web.URL+path, reader)
	if err != nil {
		b.t.Fatal(err)
	}
	req.Header.Set("Content-Type", "application/json")
	for i := 0; i+1 < len(headers); i += 2 {
		req.Header.Set(headers[i], headers[i+1])
	}
	resp, err := b.client.Do(req)
	if err != nil {
		b.t.Fatal(err)
	}
	defer resp.Body.Close()
	text, err := io.ReadAll(resp.Body)
	if err != nil {
		b.t.Fatal(err)
	}
	out := object{}
	if strings.HasPrefix(resp.Header.Get("Content-Type"), "application/json") {
		if err := json.Unmarshal(text, &out); err != nil {
			b.t.Fatalf("%s %s: body %q: %v", method, path, text, err)
		}
	}
	return resp.StatusCode, resp.Header, out
}

// want calls and fails on another status.
func (b *browser) want(status int, method, path string, body any, headers ...string) object {
	b.t.Helper()
	got, _, out := b.call(method, path, body, headers...)
	if got != status {
		b.t.Fatalf("%s %s: status %d, want %d: %v", method, path, got, status, out)
	}
	return out
}

// wantReason fails unless the refusal has the reason.
func (b *browser) wantReason(out object, reason string) {
	b.t.Helper()
	if out["reason"] != reason || out["requestId"] == "" {
		b.t.Fatalf("refusal %v, want reason %q and a request id", out, reason)
	}
}
