package club

import (
	"encoding/json"
	"testing"
)

func dabchick() Approval {
	return Approval{
		ID: "ap1", ModelID: "dabchick", ModelRevision: 2, FieldID: "long-acre", FieldVersion: 1,
		LaunchPlan: json.RawMessage(`{"strip":"06/24","method":"LAUNCH_METHOD_WHEELS"}`), Day: json.RawMessage(`{"time":"2026-11-25T10:00:00Z"}`),
		Conditions: []string{"wind below 6 m/s"}, AssessmentID: "as1", AssessmentDigest: "00ff",
	}
}

func TestSigningTextIsCanonical(t *testing.T) {
	t.Parallel()
	got, err := SigningText("larkmoor", dabchick())
	want := `{"approval":"clubs/larkmoor/approvals/ap1","assessment":"clubs/larkmoor/assessments/as1","assessment_digest":"00ff",` +
		`"conditions":["wind below 6 m/s"],"day":{"time":"2026-11-25T10:00:00Z"},"field":"clubs/larkmoor/fields/long-acre",` +
		`"field_version":1,"launch_plan":{"method":"LAUNCH_METHOD_WHEELS","strip":"06/24"},"limits":null,` +
		`"meaning":"go for first flight","model_revision":"clubs/larkmoor/models/dabchick/revisions/2"}`
	if err != nil || string(got) != want {
		t.Errorf("got  %s, %v\nwant %s", got, err, want)
	}
}

func TestSigningDigestChangesWithEveryPart(t *testing.T) {
	t.Parallel()
	changes := map[string]func(*Approval){
		"approval":   func(a *Approval) { a.ID = "ap2" },
		"model":      func(a *Approval) { a.ModelID = "redshank" },
		"revision":   func(a *Approval) { a.ModelRevision++ },
		"field":      func(a *Approval) { a.FieldID = "quarry-top" },
		"version":    func(a *Approval) { a.FieldVersion++ },
		"plan":       func(a *Approval) { a.LaunchPlan = json.RawMessage(`{}`) },
		"day":        func(a *Approval) { a.Day = json.RawMessage(`{}`) },
		"limits":     func(a *Approval) { a.Limits = json.RawMessage(`{}`) },
		"conditions": func(a *Approval) { a.Conditions = nil },
		"assessment": func(a *Approval) { a.AssessmentID = "as2" },
		"digest":     func(a *Approval) { a.AssessmentDigest = "00fe" },
	}
	before, err := SigningDigest("larkmoor", dabchick())
	if err != nil {
		t.Fatal(err)
	}
	for part, change := range changes {
		a := dabchick()
		change(&a)
		after, err := SigningDigest("larkmoor", a)
		if err != nil || after == before {
			t.Errorf("a changed %s leaves the digest as it was (%v)", part, err)
		}
	}
}

func TestSigningDigestIgnoresSpacing(t *testing.T) {
	t.Parallel()
	a := dabchick()
	a.LaunchPlan = json.RawMessage(`{ "method": "LAUNCH_METHOD_WHEELS", "strip": "06/24" }`)
	one, errOne := SigningDigest("larkmoor", dabchick())
	other, errOther := SigningDigest("larkmoor", a)
	if one != other || errOne != nil || errOther != nil {
		t.Errorf("%s and %s (%v, %v)", one, other, errOne, errOther)
	}
}

func TestRoles(t *testing.T) {
	t.Parallel()
	for _, role := range Roles() {
		if !role.Known() || role.Title() == "" {
			t.Errorf("%q is not known", role)
		}
	}
	if Role("pilot").Known() {
		t.Error("a stranger's role is known")
	}
	if SafetyOfficer.Title() != "safety officer" {
		t.Errorf("got %q", SafetyOfficer.Title())
	}
}
