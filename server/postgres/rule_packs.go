package postgres

import (
	"context"
	"slices"

	"pitgate/server/club"
	"pitgate/server/postgres/pgdb"
)

// The purposes of a word on a rule pack.
const (
	toPublish = "publish"
	toRetire  = "retire"
)

// LockRules keeps other submissions and publications of the club waiting until the transaction ends, so that no assessment is written by rules that
// are being replaced.
func (t *Tx) LockRules(ctx context.Context) error { return t.q.LockClub(ctx, "rules/"+t.clubID) }

// CreateRulePack opens a draft. Uses Pack, Content and Digest of p. Forbidden without the role committee.
func (t *Tx) CreateRulePack(ctx context.Context, by club.Actor, p club.RulePack) (club.RulePack, error) {
	if err := club.PermitRulePack(by); err != nil {
		return club.RulePack{}, err
	}
	id := t.store.id()
	err := t.q.InsertRulePack(ctx, pgdb.InsertRulePackParams{
		ClubID: t.clubID, RulePackID: id, Pack: p.Pack, Content: p.Content, Digest: p.Digest, Now: t.now,
	})
	if err != nil {
		return club.RulePack{}, err
	}
	return t.tellRulePack(ctx, "rule_pack.drafted", by, id)
}

// tellRulePack writes what became of a pack to the ledger and reads the pack again.
func (t *Tx) tellRulePack(ctx context.Context, kind string, by club.Actor, id string) (club.RulePack, error) {
	p, err := t.RulePack(ctx, id)
	if err != nil {
		return club.RulePack{}, err
	}
	_, err = t.record(ctx, kind, by, event{
		"rule_pack": club.RulePacks.Name(t.clubID, id), "pack": p.Pack, "state": string(p.State), "digest": p.Digest,
		"publish_words": len(p.PublisherIDs), "retire_words": len(p.RetirerIDs),
	})
	return p, err
}

// RulePack reads one version of a pack with the words given on it. NotFound when there is none.
func (r *ReadTx) RulePack(ctx context.Context, id string) (club.RulePack, error) {
	row, err := r.q.RulePack(ctx, r.clubID, id)
	if err != nil {
		return club.RulePack{}, found(err, "rule pack", id)
	}
	packs, err := r.withWords(ctx, []club.RulePack{rulePackOf(row)})
	if err != nil {
		return club.RulePack{}, err
	}
	return packs[0], nil
}

// RulePacks lists the club's packs, all versions, newest first, and the token of the next page.
func (r *ReadTx) RulePacks(ctx context.Context, page club.Page) ([]club.RulePack, string, error) {
	after, err := readPlace(page.After, last)
	if err != nil {
		return nil, "", err
	}
	rows, err := r.q.ListRulePacks(ctx, pgdb.ListRulePacksParams{
		ClubID: r.clubID, AfterTime: after.time, AfterID: after.id, Most: page.Limit() + 1,
	})
	if err != nil {
		return nil, "", err
	}
	packs, next := cut(rows, page.Limit(), func(row pgdb.RulePack) (club.RulePack, place) {
		return rulePackOf(row), place{row.CreateTime, row.RulePackID}
	})
	packs, err = r.withWords(ctx, packs)
	return packs, next, err
}

// RulePacksInForce lists the published packs, by the pack's id and their first days, without the words given on them. Of several versions of a pack the
// day of a flight decides which counts. Every assessment of the club is computed by them.
func (r *ReadTx) RulePacksInForce(ctx context.Context) ([]club.RulePack, error) {
	rows, err := r.q.RulePacksInForce(ctx, r.clubID)
	var packs []club.RulePack
	for _, row := range rows {
		packs = append(packs, rulePackOf(row))
	}
	return packs, err
}

func rulePackOf(row pgdb.RulePack) club.RulePack {
	return club.RulePack{
		ID: row.RulePackID, Pack: row.Pack, State: club.RulePackState(row.State), Content: row.Content, Digest: row.Digest, Version: row.Version,
		FirstDay: row.InForceDate, CreateTime: row.CreateTime, UpdateTime: row.UpdateTime, PublishTime: moment(row.PublishTime), RetireTime: moment(row.RetireTime),
	}
}

// withWords adds who gave the word for the packs as they stand, in the order of the words.
func (r *ReadTx) withWords(ctx context.Context, packs []club.RulePack) ([]club.RulePack, error) {
	at := map[string]*club.RulePack{}
	ids := []string{}
	for n := range packs {
		at[packs[n].ID] = &packs[n]
		ids = append(ids, packs[n].ID)
	}
	votes, err := r.q.RulePackVotes(ctx, r.clubID, ids)
	for _, v := range votes {
		p := at[v.RulePackID]
		if v.Purpose == toPublish {
			p.PublisherIDs, p.PublisherDisplayNames = append(p.PublisherIDs, v.PersonID), append(p.PublisherDisplayNames, v.DisplayName)
		} else {
			p.RetirerIDs, p.RetirerDisplayNames = append(p.RetirerIDs, v.PersonID), append(p.RetirerDisplayNames, v.DisplayName)
		}
	}
	if err != nil {
		return packs, err
	}
	return packs, r.withSuccessors(ctx, packs)
}

// withSuccessors adds to published packs the first day of the version that takes their place.
func (r *ReadTx) withSuccessors(ctx context.Context, packs []club.RulePack) error {
	published, err := r.RulePacksInForce(ctx)
	for n := range packs {
		p := &packs[n]
		at := slices.IndexFunc(published, func(o club.RulePack) bool { return o.Pack == p.Pack && o.FirstDay > p.FirstDay })
		if p.State == club.PackPublished && at >= 0 {
			p.ReplacedDay = published[at].FirstDay
		}
	}
	return err
}

// AssessedApprovals lists the open approvals that were computed, oldest first.
func (r *ReadTx) AssessedApprovals(ctx context.Context) ([]club.AssessedApproval, error) {
	rows, err := r.q.AssessedApprovals(ctx, r.clubID, statesThat(club.State.Open))
	var open []club.AssessedApproval
	for _, row := range rows {
		open = append(open, assessedApprovalOf(row))
	}
	return open, err
}

func assessedApprovalOf(row pgdb.AssessedApprovalsRow) club.AssessedApproval {
	return club.AssessedApproval{
		ID: row.ApprovalID, ModelDisplayName: row.ModelDisplayName, OwnerDisplayName: row.OwnerDisplayName, State: club.State(row.State),
		HeldFrom: club.State(text(row.HeldFrom)), Limits: row.Limits, Input: row.Input,
		Report: row.Report, InputDigest: row.InputDigest, CoreVersion: row.CoreVersion,
	}
}
