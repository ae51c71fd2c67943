package api_test

import (
	"testing"

	"google.golang.org/grpc/codes"
	"google.golang.org/grpc/status"

	"pitgate/server/api"
	"pitgate/server/club"
	"pitgate/server/postgres/pgtest"
)

// TestEveryMethodStandsInThePolicy walks the registered methods, streams too, and the table the other way.
func TestEveryMethodStandsInThePolicy(t *testing.T) {
	t.Parallel()
	policy, err := api.LoadPolicy()
	if err != nil {
		t.Fatal(err)
	}
	server, err := api.New(api.Config{Store: pgtest.New(t), Reflection: true})
	if err != nil {
		t.Fatal(err)
	}
	registered := map[string]bool{}
	for service, info := range server.GetServiceInfo() {
		for _, m := range info.Methods {
			name := "/" + service + "/" + m.Name
			registered[name] = true
			if _, ok := policy[name]; !ok {
				t.Errorf("%s is missing in policy.yaml", name)
			}
		}
	}
	for name := range policy {
		if !registered[name] {
			t.Errorf("policy.yaml names %s, which no service has", name)
		}
	}
	if len(registered) < 50 {
		t.Errorf("only %d methods are registered", len(registered))
	}
}

// TestOpenMethods pins which methods need no session at all.
func TestOpenMethods(t *testing.T) {
	t.Parallel()
	policy, err := api.LoadPolicy()
	if err != nil {
		t.Fatal(err)
	}
	for name, rule := range policy {
		switch name {
		case "/pitgate.v1.PeopleService/SignIn", "/grpc.health.v1.Health/Check", "/grpc.health.v1.Health/List", "/grpc.health.v1.Health/Watch",
			"/grpc.reflection.v1.ServerReflection/ServerReflectionInfo", "/grpc.reflection.v1alpha.ServerReflection/ServerReflectionInfo":
			continue
		}
		if rule.Open() && !rule.DemoOnly {
			t.Errorf("%s needs no session", name)
		}
		if rule.Permits(nil) != rule.Open() {
			t.Errorf("%s lets somebody without a role in", name)
		}
		if !rule.Open() && !rule.Permits(club.Roles()) {
			t.Errorf("%s lets nobody in", name)
		}
	}
}

// TestMatrix calls every RPC as everybody: on their own records, on another member's, and on another club's.
func TestMatrix(t *testing.T) {
	t.Parallel()
	h := open(t, "")
	r := h.records()
	tried := map[string]bool{}
	for _, row := range matrix(t, r) {
		tried[row.method] = true
		for i, person := range askers {
			got := outcome(h, person, row)
			if want := row.want[i]; got != want {
				t.Errorf("%s as %q: %c, want %c", row.method, person, got, want)
			}
		}
		if row.record {
			row.req = moved(row.req)
			if got := outcome(h, pal, row); got != 'N' {
				t.Errorf("%s on a foreign id under the own club: %c, want N", row.method, got)
			}
		}
	}
	policy, err := api.LoadPolicy()
	if err != nil {
		t.Fatal(err)
	}
	for name := range policy {
		if !tried[name] && !streams[name] {
			t.Errorf("the matrix does not try %s", name)
		}
	}
}

// streams are open to everybody and carry nothing of a club.
var streams = map[string]bool{
	"/grpc.health.v1.Health/Watch":                                   true,
	"/grpc.reflection.v1.ServerReflection/ServerReflectionInfo":      true,
	"/grpc.reflection.v1alpha.ServerReflection/ServerReflectionInfo": true,
}

// outcome calls and sorts the answer: U sign in first, D denied, N not found, Y anything that came after those checks.
func outcome(h *house, person string, row row) byte {
	resp := row.answer.ProtoReflect().New().Interface()
	err := h.conn.Invoke(h.as(person), row.method, row.req, resp)
	switch status.Code(err) {
	case codes.Unauthenticated:
		return 'U'
	case codes.PermissionDenied:
		return 'D'
	case codes.NotFound:
		return 'N'
	case codes.Internal, codes.Unknown, codes.DeadlineExceeded, codes.Unavailable:
		h.t.Errorf("%s as %q: %v", row.method, person, err)
		return '!'
	default:
		return 'Y'
	}
}
