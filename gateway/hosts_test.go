package gateway

import (
	"net/http"
	"net/http/httptest"
	"testing"
)

func TestThisMachineOnly(t *testing.T) {
	t.Parallel()
	ok := http.HandlerFunc(func(w http.ResponseWriter, _ *http.Request) { w.WriteHeader(http.StatusNoContent) })
	for _, c := range []struct {
		host   string
		demand bool
		want   int
	}{
		{"localhost:8080", true, 204}, {"LOCALHOST", true, 204}, {"127.0.0.1:8080", true, 204}, {"[::1]:8080", true, 204}, {"[::1]", true, 204},
		{"club.example", true, 421}, {"club.example:8080", true, 421}, {"192.0.2.7:8080", true, 421}, {"localhost.club.example", true, 421},
		{"", true, 421}, {"club.example", false, 204},
	} {
		r := httptest.NewRequest(http.MethodGet, "/v1/demo:people", nil)
		r.Host = c.host
		w := httptest.NewRecorder()
		thisMachineOnly(c.demand, ok).ServeHTTP(w, r)
		if w.Code != c.want {
			t.Errorf("%q, demanded %v: %d, want %d", c.host, c.demand, w.Code, c.want)
		}
	}
}
