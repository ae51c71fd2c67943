package main

import (
	"bufio"
	"context"
	"errors"
	"fmt"
	"io"
	"net"
	"net/http"
	"os"
	"os/exec"
	"strings"
	"syscall"

	"google.golang.org/grpc"
	"google.golang.org/grpc/credentials/insecure"
	"google.golang.org/grpc/metadata"
	"google.golang.org/protobuf/encoding/protojson"

	pb "pitgate/proto/pitgate/v1"
)

// system is a demo server under measurement.
type system struct {
	process *exec.Cmd
	dir     string
	conn    *grpc.ClientConn
	http    *http.Client
	base    string
	token   string
	model   string
	club    string
	input   *pb.AssessmentInput
}

// startDemo runs the binary on free loopback ports with fresh data and signs in.
func startDemo(ctx context.Context, binary string) (*system, error) {
	dir, err := os.MkdirTemp("", "pitgate-bench")
	if err != nil {
		return nil, err
	}
	if err := os.Chmod(dir, 0o755); err != nil {
		return nil, err
	}
	web, native, err := twoPorts(ctx)
	if err != nil {
		return nil, err
	}
	s := &system{dir: dir, base: "http://" + web, http: &http.Client{Transport: &http.Transport{MaxIdleConnsPerHost: 64}}}
	s.process = exec.CommandContext(ctx, binary, "demo", "--addr", web, "--grpc-addr", native, "--data", dir+"/data")
	s.process.Stderr = io.Discard
	s.process.Cancel = func() error { return s.process.Process.Signal(syscall.SIGINT) }
	out, err := s.process.StdoutPipe()
	if err != nil {
		return nil, err
	}
	if err := s.process.Start(); err != nil {
		return nil, err
	}
	if err := waitReady(out); err != nil {
		return nil, errors.Join(err, s.stop())
	}
	s.conn, err = grpc.NewClient(native, grpc.WithTransportCredentials(insecure.NewCredentials()))
	if err != nil {
		return nil, errors.Join(err, s.stop())
	}
	if err := s.signIn(ctx); err != nil {
		return nil, errors.Join(err, s.stop())
	}
	return s, nil
}

func waitReady(out io.Reader) error {
	lines := bufio.NewScanner(out)
	for lines.Scan() {
		if strings.HasPrefix(lines.Text(), "pitgate ready") {
			go func() { _, _ = io.Copy(io.Discard, out) }()
			return nil
		}
	}
	return errors.New("the server ended before it was ready")
}

// signIn takes the first safety officer of the demo, one model, and one whole document to compute.
func (s *system) signIn(ctx context.Context) error {
	people := pb.NewPeopleServiceClient(s.conn)
	list, err := people.ListDemoPeople(ctx, &pb.ListDemoPeopleRequest{})
	if err != nil {
		return err
	}
	officer := ""
	for _, person := range list.GetPeople() {
		for _, role := range person.GetRoles() {
			if role == pb.Role_ROLE_SAFETY_OFFICER {
				officer = person.GetName()
			}
		}
	}
	reply, err := people.SignInDemo(ctx, &pb.SignInDemoRequest{Person: officer, ReturnToken: true})
	if err != nil {
		return err
	}
	s.token = reply.GetSessionToken()
	s.club = strings.Join(strings.Split(officer, "/")[:2], "/")
	models, err := pb.NewModelsServiceClient(s.conn).ListModels(s.with(ctx), &pb.ListModelsRequest{Parent: s.club})
	if err != nil {
		return err
	}
	if len(models.GetModels()) == 0 {
		return errors.New("the demo has no models")
	}
	s.model = models.GetModels()[0].GetName()
	document, err := os.ReadFile("testdata/demo/redshank_quarry_top.json")
	if err != nil {
		return err
	}
	s.input = &pb.AssessmentInput{}
	return protojson.Unmarshal(document, s.input)
}

func (s *system) with(ctx context.Context) context.Context {
	return metadata.AppendToOutgoingContext(ctx, "authorization", "Bearer "+s.token)
}

func (s *system) getModelGRPC(ctx context.Context) error {
	_, err := pb.NewModelsServiceClient(s.conn).GetModel(s.with(ctx), &pb.GetModelRequest{Name: s.model})
	return err
}

func (s *system) preview(ctx context.Context) error {
	_, err := pb.NewAssessmentsServiceClient(s.conn).PreviewAssessment(s.with(ctx), &pb.PreviewAssessmentRequest{Parent: s.club, Input: s.input})
	return err
}

func (s *system) getModelREST(ctx context.Context) error {
	request, err := http.NewRequestWithContext(ctx, http.MethodGet, s.base+"/v1/"+s.model, nil)
	if err != nil {
		return err
	}
	request.Header.Set("Authorization", "Bearer "+s.token)
	reply, err := s.http.Do(request)
	if err != nil {
		return err
	}
	defer func() { _ = reply.Body.Close() }()
	if _, err := io.Copy(io.Discard, reply.Body); err != nil {
		return err
	}
	if reply.StatusCode != http.StatusOK {
		return fmt.Errorf("status %s", reply.Status)
	}
	return nil
}

func (s *system) stop() error {
	if s.conn != nil {
		_ = s.conn.Close()
	}
	_ = s.process.Process.Signal(syscall.SIGINT)
	_ = s.process.Wait()
	return os.RemoveAll(s.dir)
}

func twoPorts(ctx context.Context) (web, native string, err error) {
	listen := new(net.ListenConfig)
	first, err := listen.Listen(ctx, "tcp", "localhost:0")
	if err != nil {
		return "", "", err
	}
	defer func() { _ = first.Close() }()
	second, err := listen.Listen(ctx, "tcp", "localhost:0")
	if err != nil {
		return "", "", err
	}
	defer func() { _ = second.Close() }()
	return first.Addr().String(), second.Addr().String(), nil
}
