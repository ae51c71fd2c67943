package api

import (
	"log/slog"
	"time"

	"buf.build/go/protovalidate"

	pb "pitgate/proto/pitgate/v1"
	"pitgate/server/jobs"
	"pitgate/server/postgres"
)

// backend is what every service shares.
type backend struct {
	store     *postgres.Store
	validator protovalidate.Validator
	now       func() time.Time
	log       *slog.Logger
	doors     *doors
	queue     *jobs.Queue
	// computing has a place for each processor.
	computing chan struct{}
	// demoClub is the club whose people may be chosen without a password; empty outside the demo.
	demoClub string
}

// The services, one type each, so that a method cannot land in the wrong one.
type (
	modelsService struct {
		pb.UnimplementedModelsServiceServer
		*backend
	}
	fieldsService struct {
		pb.UnimplementedFieldsServiceServer
		*backend
	}
	approvalsService struct {
		pb.UnimplementedApprovalsServiceServer
		*backend
	}
	assessmentsService struct {
		pb.UnimplementedAssessmentsServiceServer
		*backend
	}
	peopleService struct {
		pb.UnimplementedPeopleServiceServer
		*backend
	}
	incidentsService struct {
		pb.UnimplementedIncidentsServiceServer
		*backend
	}
	rulePacksService struct {
		pb.UnimplementedRulePacksServiceServer
		*backend
	}
	ledgerService struct {
		pb.UnimplementedLedgerServiceServer
		*backend
	}
)
