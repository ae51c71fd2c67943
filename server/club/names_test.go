package club

import (
	"errors"
	"testing"
)

func TestNamesReadBack(t *testing.T) {
	t.Parallel()
	for _, c := range []Collection{People, Models, Fields, Approvals, Assessments, Incidents, Lessons} {
		club, id, err := c.Parse("name", c.Name("larkmoor", "x4k2"))
		if err != nil || club != "larkmoor" || id != "x4k2" {
			t.Errorf("%s: got %q, %q, %v", c, club, id, err)
		}
	}
	club, model, number, err := ParseRevision("name", RevisionName("larkmoor", "x4k2", 3))
	if err != nil || club != "larkmoor" || model != "x4k2" || number != 3 {
		t.Errorf("revision: got %q, %q, %d, %v", club, model, number, err)
	}
	club, incident, photo, err := ParsePhoto("name", PhotoName("larkmoor", "i1", "p1"))
	if err != nil || club != "larkmoor" || incident != "i1" || photo != "p1" {
		t.Errorf("photo: got %q, %q, %q, %v", club, incident, photo, err)
	}
	if club, err := ParseClub("parent", ClubName("larkmoor")); err != nil || club != "larkmoor" {
		t.Errorf("club: got %q, %v", club, err)
	}
	if got := Models.Name("larkmoor", ""); got != "" {
		t.Errorf("the name of nothing is %q", got)
	}
}

func TestNamesRefused(t *testing.T) {
	t.Parallel()
	for _, name := range []string{
		"", "clubs", "clubs/larkmoor", "clubs/larkmoor/models", "clubs/larkmoor/models/", "clubs//models/x",
		"clubs/larkmoor/fields/x", "clubs/larkmoor/models/x/", "clubs/larkmoor/models/X", "clubs/lark moor/models/x",
		"/clubs/larkmoor/models/x", "clubs/-larkmoor/models/x", "clubs/larkmoor/models/x\x00", "clubs/larkmoor/models/x\n",
	} {
		_, _, err := Models.Parse("model", name)
		var e *Error
		if !errors.As(err, &e) || e.Code != Invalid || e.Field != "model" {
			t.Errorf("%q: got %v, want invalid on model", name, err)
		}
	}
	for _, name := range []string{"clubs/l/models/m/revisions/0", "clubs/l/models/m/revisions/x", "clubs/l/models/m/revisions/99999999999"} {
		if _, _, _, err := ParseRevision("name", name); CodeOf(err) != Invalid {
			t.Errorf("%q: got %v, want invalid", name, err)
		}
	}
}

func TestEtag(t *testing.T) {
	t.Parallel()
	for _, tt := range []struct {
		etag string
		want Code
	}{{"", ""}, {"v7", ""}, {`"v7"`, ""}, {"v6", Stale}, {"7", Stale}, {"v70", Stale}} {
		if got := CodeOf(MatchEtag(tt.etag, 7)); got != tt.want {
			t.Errorf("%q: got %q, want %q", tt.etag, got, tt.want)
		}
	}
}

func TestPageLimit(t *testing.T) {
	t.Parallel()
	for size, want := range map[int32]int32{-1: 50, 0: 50, 1: 1, 1000: 1000, 1001: 1000} {
		if got := (Page{Size: size}).Limit(); got != want {
			t.Errorf("%d: got %d, want %d", size, got, want)
		}
	}
}

func TestErrorTellsItsField(t *testing.T) {
	t.Parallel()
	if got := RefuseField("model.mass_kg", "OUT_OF_RANGE", "must be above %d", 0).Error(); got != "model.mass_kg: must be above 0" {
		t.Errorf("got %q", got)
	}
	if got := CodeOf(errors.New("anything")); got != "" {
		t.Errorf("a stranger's code is %q", got)
	}
}
