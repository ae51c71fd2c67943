package api

import (
	"context"

	pb "pitgate/proto/pitgate/v1"
	"pitgate/server/club"
	"pitgate/server/postgres"
	"pitgate/server/rulepack"
)

// PublishRulePack is one committee member's word. The second distinct one publishes the pack, retires its former version and, in the same transaction,
// lapses every approval whose verdicts change, each with its own ledger entry, or adds the jobs that do so where they are many.
func (s *rulePacksService) PublishRulePack(ctx context.Context, req *pb.PublishRulePackRequest) (*pb.RulePack, error) {
	return s.giveWord(ctx, req, "published", func(tx *postgres.Tx, c caller, id string) (club.RulePack, error) {
		return tx.VotePublish(ctx, c.person.Actor(), id, req.GetEtag())
	})
}

// RetireRulePack is one committee member's word to take a pack out of force. Of a published one the second distinct word does it and lapses every
// approval whose verdicts change.
func (s *rulePacksService) RetireRulePack(ctx context.Context, req *pb.RetireRulePackRequest) (*pb.RulePack, error) {
	return s.giveWord(ctx, req, "retired", func(tx *postgres.Tx, c caller, id string) (club.RulePack, error) {
		return tx.VoteRetire(ctx, c.person.Actor(), id, req.GetEtag())
	})
}

// wordRequest is a request to publish or to retire.
type wordRequest interface {
	repeatable
	GetName() string
	GetEtag() string
}

// giveWord gives the caller's word and lapses what changes with the rules in force.
func (s *rulePacksService) giveWord(ctx context.Context, req wordRequest, what string,
	give func(*postgres.Tx, caller, string) (club.RulePack, error),
) (*pb.RulePack, error) {
	c, id, err := locate(ctx, club.RulePacks, "name", req.GetName())
	if err != nil {
		return nil, err
	}
	if req.GetEtag() == "" {
		return nil, club.RefuseField("etag", "ETAG_MISSING", "send the etag of the pack as you read it")
	}
	return once(ctx, s.backend, req, &pb.RulePack{}, func(tx *postgres.Tx) (*pb.RulePack, error) {
		if err := tx.LockRules(ctx); err != nil {
			return nil, err
		}
		before, err := readRules(ctx, &tx.ReadTx)
		if err != nil {
			return nil, err
		}
		p, err := give(tx, c, id)
		if err != nil {
			return nil, err
		}
		if err := s.lapseBetween(ctx, tx, c.person.Actor(), before, p, what); err != nil {
			return nil, err
		}
		return s.showRulePack(c.club, p)
	})
}

// lapseBetween lapses what changes from the former rules to those now in force.
func (s *rulePacksService) lapseBetween(ctx context.Context, tx *postgres.Tx, by club.Actor, before rulesInForce, p club.RulePack, what string) error {
	after, err := readRules(ctx, &tx.ReadTx)
	if err != nil {
		return err
	}
	same, err := before.same(after)
	if err != nil || same {
		return err
	}
	pack, err := keptPack(p)
	if err != nil {
		return err
	}
	return s.lapseChanged(ctx, tx, by, "Rule pack "+rulepack.Label(pack)+" was "+what, before, after)
}
