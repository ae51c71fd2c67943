package api_test

import (
	"context"
	"net"
	"os"
	"path/filepath"
	"testing"

	"google.golang.org/genproto/googleapis/rpc/errdetails"
	"google.golang.org/grpc"
	"google.golang.org/grpc/codes"
	"google.golang.org/grpc/credentials/insecure"
	"google.golang.org/grpc/metadata"
	"google.golang.org/grpc/status"
	"google.golang.org/grpc/test/bufconn"
	"google.golang.org/protobuf/encoding/protojson"
	"google.golang.org/protobuf/proto"

	pb "pitgate/proto/pitgate/v1"
	"pitgate/server/api"
	"pitgate/server/auth"
	"pitgate/server/club"
	"pitgate/server/postgres"
	"pitgate/server/postgres/pgtest"
)

func TestMain(m *testing.M) { pgtest.Main(m) }

// The people of the tests, one or more for every role, in two clubs.
const (
	home  = "larkmoor"
	other = "eastfen"

	ada   = "ada-thorne"    // member, owns the models
	bram  = "bram-okafor"   // another member
	ines  = "ines-valdez"   // safety officer
	tomas = "tomas-lind"    // safety officer and committee
	mei   = "mei-castellan" // committee
	kit   = "keeper"        // field keeper
	root  = "administrator" // administrator
	pal   = "pal"           // every role, in the other club
)

const password = "twelve larks over the moor"

var cast = map[string]map[string][]club.Role{
	home: {
		ada: {club.Member}, bram: {club.Member}, ines: {club.Member, club.SafetyOfficer},
		tomas: {club.Member, club.SafetyOfficer, club.Committee}, mei: {club.Committee},
		kit: {club.FieldKeeper}, root: {club.Administrator},
	},
	other: {pal: club.Roles()},
}

// house is a server on a database of its own with everybody signed in.
type house struct {
	t      *testing.T
	store  *postgres.Store
	conn   *grpc.ClientConn
	server *api.Server
	tokens map[string]string
}

// open starts a house; demoClub makes it a demo.
func open(t *testing.T, demoClub string) *house {
	t.Helper()
	h := &house{t: t, store: pgtest.New(t), tokens: map[string]string{}}
	h.populate()
	server, err := api.New(api.Config{Store: h.store, DemoClub: demoClub})
	if err != nil {
		t.Fatal(err)
	}
	h.server = server
	listener := bufconn.Listen(1 << 20)
	go func() { _ = server.Serve(listener) }()
	t.Cleanup(server.Stop)
	h.conn, err = grpc.NewClient("passthrough:///test", grpc.WithTransportCredentials(insecure.NewCredentials()),
		grpc.WithContextDialer(func(ctx context.Context, _ string) (net.Conn, error) { return listener.DialContext(ctx) }))
	if err != nil {
		t.Fatal(err)
	}
	t.Cleanup(func() { _ = h.conn.Close() })
	return h
}

// populate creates clubs and people with one shared hash, and a session each without the cost of signing in.
func (h *house) populate() {
	passwords, err := auth.NewPasswords(0)
	h.must(err)
	hash, err := passwords.Hash(h.t.Context(), password)
	h.must(err)
	for clubID, people := range cast {
		h.must(h.store.InTx(h.t.Context(), clubID, func(tx *postgres.Tx) error {
			if _, err := tx.CreateClub(h.t.Context(), clubID); err != nil {
				return err
			}
			for id, roles := range people {
				if err := h.enrol(tx, id, hash, roles); err != nil {
					return err
				}
			}
			return nil
		}))
	}
}

// enrol keeps one person and a session.
func (h *house) enrol(tx *postgres.Tx, id, hash string, roles []club.Role) error {
	_, err := tx.CreatePerson(h.t.Context(), club.Actor{}, club.Person{ID: id, DisplayName: "Person " + id, Email: id + "@" + tx.ClubID() + ".example",
		PasswordHash: hash, Roles: roles, Demo: id == ada})
	if err != nil {
		return err
	}
	token, tokenHash, err := auth.NewToken(tx.ClubID())
	if err != nil {
		return err
	}
	h.tokens[id] = token
	return tx.CreateSession(h.t.Context(), club.Session{ClubID: tx.ClubID(), PersonID: id, TokenHash: tokenHash, ExpireTime: tx.Now().Add(1 << 40)})
}

// as is a context in which the person calls; "" is nobody.
func (h *house) as(person string) context.Context {
	if person == "" {
		return h.t.Context()
	}
	return metadata.AppendToOutgoingContext(h.t.Context(), "authorization", "Bearer "+h.tokens[person])
}

func (h *house) must(err error) {
	h.t.Helper()
	if err != nil {
		h.t.Fatal(err)
	}
}

func (h *house) models() pb.ModelsServiceClient       { return pb.NewModelsServiceClient(h.conn) }
func (h *house) fields() pb.FieldsServiceClient       { return pb.NewFieldsServiceClient(h.conn) }
func (h *house) approvals() pb.ApprovalsServiceClient { return pb.NewApprovalsServiceClient(h.conn) }
func (h *house) incidents() pb.IncidentsServiceClient { return pb.NewIncidentsServiceClient(h.conn) }
func (h *house) packs() pb.RulePacksServiceClient     { return pb.NewRulePacksServiceClient(h.conn) }
func (h *house) ledger() pb.LedgerServiceClient       { return pb.NewLedgerServiceClient(h.conn) }
func (h *house) assessments() pb.AssessmentsServiceClient {
	return pb.NewAssessmentsServiceClient(h.conn)
}

// file reads one of the demo's documents.
func file[M proto.Message](t *testing.T, name string, into M) M {
	t.Helper()
	text, err := os.ReadFile(filepath.Join("..", "..", "testdata", "demo", name+".json"))
	if err != nil {
		t.Fatal(err)
	}
	if err := protojson.Unmarshal(text, into); err != nil {
		t.Fatal(err)
	}
	return into
}

// newModel registers the Dabchick for its owner.
func (h *house) newModel(owner string) *pb.Model {
	h.t.Helper()
	m, err := h.models().CreateModel(h.as(owner), &pb.CreateModelRequest{Parent: "clubs/" + home,
		Model: &pb.Model{DisplayName: "Dabchick", Description: file(h.t, "dabchick", &pb.ModelDescription{})}})
	h.must(err)
	return m
}

// bareModel registers a model of which nothing is told: its answers are soon computed.
func (h *house) bareModel(owner string) *pb.Model {
	h.t.Helper()
	m, err := h.models().CreateModel(h.as(owner), &pb.CreateModelRequest{Parent: "clubs/" + home,
		Model: &pb.Model{DisplayName: "Dabchick two", Description: &pb.ModelDescription{}}})
	h.must(err)
	return m
}

// newField keeps Long Acre.
func (h *house) newField() *pb.Field {
	h.t.Helper()
	f, err := h.fields().CreateField(h.as(kit), &pb.CreateFieldRequest{Parent: "clubs/" + home,
		Field: &pb.Field{DisplayName: "Long Acre", Description: file(h.t, "long_acre", &pb.FieldDescription{})}})
	h.must(err)
	return f
}

// draft opens an approval of the model at the field, with the owner's words on rules.
func (h *house) draft(m *pb.Model, f *pb.Field, words ...*pb.RuleConfirmation) *pb.Approval {
	h.t.Helper()
	owner := m.GetOwner()[len("clubs/"+home+"/people/"):]
	a, err := h.approvals().CreateApproval(h.as(owner), &pb.CreateApprovalRequest{Parent: "clubs/" + home, Approval: &pb.Approval{
		Model: m.GetName(), Field: f.GetName(), LaunchPlan: file(h.t, "plan_dabchick_long_acre", &pb.LaunchPlan{}),
		Day: file(h.t, "day_long_acre_dry", &pb.DayConditions{}), Confirmations: words}})
	h.must(err)
	return a
}

// wantRefusal fails unless err has the code and the reason.
func wantRefusal(t *testing.T, err error, code codes.Code, reason string) {
	t.Helper()
	if status.Code(err) != code || reasonOf(err) != reason {
		t.Fatalf("got %v with reason %q, want %v with reason %q", err, reasonOf(err), code, reason)
	}
}

// reasonOf reads the ErrorInfo of a status.
func reasonOf(err error) string {
	for _, d := range status.Convert(err).Details() {
		if info, ok := d.(*errdetails.ErrorInfo); ok {
			return info.GetReason()
		}
	}
	return ""
}

// violated lists the bad fields of a status.
func violated(err error) []string {
	var out []string
	for _, d := range status.Convert(err).Details() {
		if bad, ok := d.(*errdetails.BadRequest); ok {
			for _, v := range bad.GetFieldViolations() {
				out = append(out, v.GetField())
			}
		}
	}
	return out
}
