package demo

import (
	"context"
	"errors"
	"fmt"
	"net"

	"google.golang.org/grpc"
	"google.golang.org/grpc/credentials/insecure"
	"google.golang.org/grpc/metadata"
	"google.golang.org/grpc/test/bufconn"

	pb "pitgate/proto/pitgate/v1"
	"pitgate/server/api"
	"pitgate/server/club"
	"pitgate/server/postgres"
)

// Load fills the database with the Larkmoor club. A database that has it already is left alone; a load that was broken off goes on where
// it stopped, since every step carries its own request id.
func Load(ctx context.Context, store *postgres.Store) error {
	if err := loadPeople(ctx, store); err != nil {
		return err
	}
	done, err := loaded(ctx, store)
	if err != nil || done {
		return err
	}
	l, err := newLoader(ctx, store)
	if err != nil {
		return err
	}
	return errors.Join(l.run(), l.close())
}

// loaded tells whether the last step, the lesson, is there.
func loaded(ctx context.Context, store *postgres.Store) (done bool, err error) {
	err = store.Read(ctx, ClubID, func(tx *postgres.ReadTx) error {
		lessons, _, err := tx.Lessons(ctx, club.Page{Size: 1})
		done = len(lessons) > 0
		return err
	})
	return done, err
}

// loader calls the API in memory as the demo's people.
type loader struct {
	ctx    context.Context
	server *api.Server
	conn   *grpc.ClientConn
	tokens map[string]string
	// names of what was made, by the step that made it.
	made map[string]string
}

// newLoader starts the API on a connection in memory and signs everybody in.
func newLoader(ctx context.Context, store *postgres.Store) (*loader, error) {
	server, err := api.New(api.Config{Store: store, DemoClub: ClubID})
	if err != nil {
		return nil, err
	}
	listener := bufconn.Listen(1 << 20)
	go func() { _ = server.Serve(listener) }() // ends with Stop; its error then says only that
	conn, err := grpc.NewClient("passthrough:///demo", grpc.WithTransportCredentials(insecure.NewCredentials()),
		grpc.WithContextDialer(func(ctx context.Context, _ string) (net.Conn, error) { return listener.DialContext(ctx) }))
	if err != nil {
		return nil, err
	}
	l := &loader{ctx: ctx, server: server, conn: conn, tokens: map[string]string{}, made: map[string]string{}}
	for _, p := range people {
		if err := l.signIn(p.ID); err != nil {
			return nil, errors.Join(err, l.close())
		}
	}
	return l, nil
}

// signIn keeps a person's token.
func (l *loader) signIn(person string) error {
	answer, err := pb.NewPeopleServiceClient(l.conn).SignInDemo(l.ctx,
		&pb.SignInDemoRequest{Person: club.People.Name(ClubID, person), ReturnToken: true})
	if err != nil {
		return fmt.Errorf("sign in as %s: %w", person, err)
	}
	l.tokens[person] = answer.GetSessionToken()
	return nil
}

// as is a context in which the person calls.
func (l *loader) as(person string) context.Context {
	return metadata.AppendToOutgoingContext(l.ctx, "authorization", "Bearer "+l.tokens[person])
}

// signOut ends everybody's session.
func (l *loader) signOut() error {
	for person := range l.tokens {
		if _, err := pb.NewPeopleServiceClient(l.conn).SignOut(l.as(person), &pb.SignOutRequest{}); err != nil {
			return fmt.Errorf("sign out: %w", err)
		}
	}
	return nil
}

// close ends the connection and the server.
func (l *loader) close() error {
	err := l.conn.Close()
	l.server.Stop()
	return err
}

// run does every step in order.
func (l *loader) run() error {
	for _, step := range []func() error{l.fields, l.models, l.rules, l.approvals, l.incidents, l.lesson, l.signOut} {
		if err := step(); err != nil {
			return err
		}
	}
	return nil
}
