package gateway_test

import (
	"net/http"
	"testing"

	"github.com/google/uuid"

	"pitgate/server/demo"
)

// approvalOf finds the approval of a model by its name.
func (b *browser) approvalOf(model string) object {
	b.t.Helper()
	list, _ := b.want(200, "GET", "/v1/clubs/larkmoor/approvals?pageSize=100", nil)["approvals"].([]any)
	for _, entry := range list {
		if a, ok := entry.(object); ok && a["modelDisplayName"] == model {
			return b.want(200, "GET", "/v1/"+a["name"].(string), nil)
		}
	}
	b.t.Fatalf("no approval of %s among %d", model, len(list))
	return nil
}

// verb does one verb with the approval's etag.
func (b *browser) verb(status int, a object, verb string, more object) object {
	b.t.Helper()
	body := object{"etag": a["etag"]}
	for k, v := range more {
		body[k] = v
	}
	return b.want(status, "POST", "/v1/"+a["name"].(string)+":"+verb, body)
}

// TestApprovalStory leads the Redshank's approval through its life over REST.
func TestApprovalStory(t *testing.T) {
	t.Parallel()
	e := open(t)
	ada, ines := e.as(demo.Ada), e.as(demo.Ines)
	a := ines.approvalOf("Redshank")
	a = ines.verb(200, a, "beginReview", nil)
	ines.wantReason(ines.verb(400, a, "return", nil), "REASON_MISSING")
	a = ines.verb(200, a, "return", object{"reason": "Lengthen the ramp."})

	model := ada.want(200, "GET", "/v1/"+a["model"].(string), nil)
	description := model["description"].(object)
	description["builderNotes"] = "The ramp is four metres longer now."
	changed := ada.want(200, "PATCH", "/v1/"+a["model"].(string)+"?updateMask=description", object{"description": description, "etag": model["etag"]})
	if changed["latestRevision"] != 2.0 {
		t.Fatalf("revision %v after a change, want 2", changed["latestRevision"])
	}
	a = ada.verb(200, a, "submit", object{"ownerNote": "Done."})
	for _, verb := range []string{"beginReview", "passDesk", "passBench"} {
		a = ines.verb(200, a, verb, object{"requestId": uuid.NewString()})
	}
	ada.wantReason(ada.verb(403, a, "sign", object{"password": demo.Password, "signingDigest": a["signingDigest"]}), "ROLE_MISSING")
	ines.wantReason(ines.verb(403, a, "sign", object{"password": "a wrong password", "signingDigest": a["signingDigest"]}), "WRONG_PASSWORD")
	ines.wantReason(ines.verb(400, a, "sign", object{"password": demo.Password, "signingDigest": "00"}), "NOT_WHAT_WAS_SHOWN")
	a = ines.verb(200, a, "sign", object{"password": demo.Password, "signingDigest": a["signingDigest"]})
	if a["state"] != "APPROVAL_STATE_SIGNED" || a["modelRevision"] != 2.0 {
		t.Fatalf("state %v on revision %v, want signed on 2", a["state"], a["modelRevision"])
	}
	a = ines.verb(200, a, "recordFlight", nil)
	if got := len(a["transitions"].([]any)); got != 10 {
		t.Errorf("%d transitions, want 10", got)
	}
}

// TestOwnerWhoIsAnOfficerMayNotDecide: the Nightjar is an officer's own.
func TestOwnerWhoIsAnOfficerMayNotDecide(t *testing.T) {
	t.Parallel()
	e := open(t)
	tomas := e.as(demo.Tomas)
	a := tomas.approvalOf("Nightjar")
	a = tomas.verb(200, a, "submit", nil)
	tomas.wantReason(tomas.verb(403, a, "beginReview", nil), "OWN_APPROVAL")
}

func TestStaleEtag(t *testing.T) {
	t.Parallel()
	e := open(t)
	ines, tomas := e.as(demo.Ines), e.as(demo.Tomas)
	read := ines.approvalOf("Redshank")
	ines.verb(200, read, "beginReview", nil)
	tomas.wantReason(tomas.verb(409, read, "return", object{"reason": "x"}), "ETAG_MISMATCH")
	out := tomas.want(http.StatusPreconditionFailed, "POST", "/v1/"+read["name"].(string)+":return", object{"reason": "x"},
		"If-Match", `"`+read["etag"].(string)+`"`)
	tomas.wantReason(out, "ETAG_MISMATCH")
	if _, err := regexpFind(out["message"], "Ines Valdez"); err != nil {
		t.Error(err)
	}
}

func TestRequestIDIsAnsweredOnce(t *testing.T) {
	t.Parallel()
	e := open(t)
	ines := e.as(demo.Ines)
	a, id := ines.approvalOf("Redshank"), uuid.NewString()
	first := ines.verb(200, a, "beginReview", object{"requestId": id})
	second := ines.verb(200, a, "beginReview", object{"requestId": id})
	if first["etag"] != second["etag"] {
		t.Errorf("etags %v and %v of one request", first["etag"], second["etag"])
	}
	ines.wantReason(ines.verb(409, a, "return", object{"requestId": id, "reason": "x"}), "REQUEST_ID_REUSED")
}

func TestLessonHoldsOverREST(t *testing.T) {
	t.Parallel()
	e := open(t)
	mei, tomas := e.as(demo.Mei), e.as(demo.Tomas)
	lesson := mei.want(200, "GET", "/v1/clubs/larkmoor/lessons", nil)["lessons"].([]any)[0].(object)
	tried := mei.want(200, "POST", "/v1/clubs/larkmoor/lessons:try", object{"predicate": lesson["predicate"]})
	matching, _ := tried["matchingApprovals"].([]any)
	if len(matching) == 0 {
		t.Fatal("the demo's lesson matches no open approval")
	}
	lesson = mei.want(200, "POST", "/v1/"+lesson["name"].(string)+":adopt", object{"etag": lesson["etag"]})
	lesson = tomas.want(200, "POST", "/v1/"+lesson["name"].(string)+":adopt", object{"etag": lesson["etag"]})
	if lesson["state"] != "LESSON_STATE_ADOPTED" || lesson["holdCount"] != float64(len(matching)) {
		t.Fatalf("lesson %v, want adopted with %d holds", lesson, len(matching))
	}
	for _, name := range matching {
		if a := tomas.want(200, "GET", "/v1/"+name.(string), nil); a["state"] != "APPROVAL_STATE_HELD" {
			t.Errorf("%v is %v, want held", name, a["state"])
		}
	}
}
