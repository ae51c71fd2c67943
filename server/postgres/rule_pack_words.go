package postgres

import (
	"context"
	"slices"
	"time"

	"pitgate/server/club"
	"pitgate/server/postgres/pgdb"
)

// lockRulePack locks one version of a pack once the club's rules are locked, and judges role, state and etag in this order.
func (t *Tx) lockRulePack(ctx context.Context, id, etag string, permit func(club.RulePackState) error) (club.RulePack, error) {
	if err := t.LockRules(ctx); err != nil {
		return club.RulePack{}, err
	}
	row, err := t.q.LockRulePack(ctx, t.clubID, id)
	if err != nil {
		return club.RulePack{}, found(err, "rule pack", id)
	}
	if err := permit(club.RulePackState(row.State)); err != nil {
		return club.RulePack{}, err
	}
	if err := club.MatchEtag(etag, row.Version); err != nil {
		return club.RulePack{}, err
	}
	return t.RulePack(ctx, id)
}

// keepRulePack writes a pack back.
func (t *Tx) keepRulePack(ctx context.Context, p club.RulePack) error {
	return t.q.UpdateRulePack(ctx, pgdb.UpdateRulePackParams{
		ClubID: t.clubID, RulePackID: p.ID, Pack: p.Pack, State: string(p.State), Content: p.Content, Digest: p.Digest, Now: t.now,
		PublishTime: optionalTime(p.PublishTime), RetireTime: optionalTime(p.RetireTime),
	})
}

func optionalTime(at time.Time) *time.Time {
	if at.IsZero() {
		return nil
	}
	return &at
}

// UpdateRulePack replaces the content of a draft or of a proposal. Words given for another content no longer count. Uses ID, Pack, Content and Digest
// of p. Forbidden without the role committee, Stale when the etag is another, FailedPrecondition when it was published.
func (t *Tx) UpdateRulePack(ctx context.Context, by club.Actor, p club.RulePack, etag string) (club.RulePack, error) {
	permit := func(s club.RulePackState) error { return club.PermitPackChange(s, by) }
	before, err := t.lockRulePack(ctx, p.ID, etag, permit)
	if err != nil {
		return club.RulePack{}, err
	}
	if before.Digest == p.Digest {
		return before, nil
	}
	p.State = club.PackDraft
	if err := t.keepRulePack(ctx, p); err != nil {
		return club.RulePack{}, err
	}
	after, err := t.RulePack(ctx, p.ID)
	if err != nil {
		return club.RulePack{}, err
	}
	if len(after.PublisherIDs) > 0 { // the content is again one that somebody gave the word for
		after.State = club.PackProposed
		if err := t.keepRulePack(ctx, after); err != nil {
			return club.RulePack{}, err
		}
	}
	return t.tellRulePack(ctx, "rule_pack.changed", by, p.ID)
}

// VotePublish adds by's word to publish the pack as it stands. It comes back published when this word was the deciding one; former versions that begin
// with it or after it are retired then, those that begin before it count until its first day, and the caller lapses what changes, in the same transaction. Forbidden without the role committee, Stale when the etag is another,
// Conflict when by has given the word already, FailedPrecondition when it was published.
func (t *Tx) VotePublish(ctx context.Context, by club.Actor, id, etag string) (club.RulePack, error) {
	permit := func(s club.RulePackState) error { return club.PermitPackChange(s, by) }
	p, err := t.voted(ctx, by, id, etag, toPublish, permit)
	if err != nil {
		return club.RulePack{}, err
	}
	p.State = club.PackProposed
	if len(p.PublisherIDs) >= club.PublishersNeeded {
		former, err := t.q.RetireFormerRulePacks(ctx, pgdb.RetireFormerRulePacksParams{Now: t.now, ClubID: t.clubID, Pack: p.Pack, RulePackID: p.ID, FirstDay: p.FirstDay})
		if err != nil {
			return club.RulePack{}, err
		}
		if err := t.tellReplaced(ctx, by, former); err != nil {
			return club.RulePack{}, err
		}
		p.State, p.PublishTime = club.PackPublished, t.now
	}
	if err := t.keepRulePack(ctx, p); err != nil {
		return club.RulePack{}, err
	}
	return t.tellRulePack(ctx, "rule_pack.publish", by, id)
}

// tellReplaced tells the ledger of versions that went with another's publication or retirement.
func (t *Tx) tellReplaced(ctx context.Context, by club.Actor, former []string) error {
	for _, id := range slices.Sorted(slices.Values(former)) {
		if _, err := t.tellRulePack(ctx, "rule_pack.replaced", by, id); err != nil {
			return err
		}
	}
	return nil
}

// VoteRetire adds by's word to take the pack out of force. A published one goes at the second word, a draft at the first. With one that counts by today
// those go whose place it had taken, so that none of them comes back; one that is still to come goes alone. Refusals as VotePublish.
func (t *Tx) VoteRetire(ctx context.Context, by club.Actor, id, etag string) (club.RulePack, error) {
	permit := func(s club.RulePackState) error { return club.PermitPackRetirement(s, by) }
	p, err := t.voted(ctx, by, id, etag, toRetire, permit)
	if err != nil {
		return club.RulePack{}, err
	}
	if p.State == club.PackPublished && len(p.RetirerIDs) >= club.PublishersNeeded && p.FirstDay <= t.now.Format(time.DateOnly) {
		former, err := t.q.RetireReplacedRulePacks(ctx, pgdb.RetireReplacedRulePacksParams{Now: t.now, ClubID: t.clubID, Pack: p.Pack, RulePackID: p.ID, FirstDay: p.FirstDay})
		if err != nil {
			return club.RulePack{}, err
		}
		if err := t.tellReplaced(ctx, by, former); err != nil {
			return club.RulePack{}, err
		}
	}
	if p.State != club.PackPublished || len(p.RetirerIDs) >= club.PublishersNeeded {
		p.State, p.RetireTime = club.PackRetired, t.now
	}
	if err := t.keepRulePack(ctx, p); err != nil {
		return club.RulePack{}, err
	}
	return t.tellRulePack(ctx, "rule_pack.retire", by, id)
}

// voted adds a word and returns the pack with it.
func (t *Tx) voted(ctx context.Context, by club.Actor, id, etag, purpose string, permit func(club.RulePackState) error) (club.RulePack, error) {
	p, err := t.lockRulePack(ctx, id, etag, permit)
	if err != nil {
		return club.RulePack{}, err
	}
	err = t.q.InsertRulePackVote(ctx, pgdb.InsertRulePackVoteParams{
		ClubID: t.clubID, RulePackID: id, Purpose: purpose, Digest: p.Digest, PersonID: by.PersonID, Now: t.now,
	})
	if err != nil {
		return club.RulePack{}, err
	}
	return t.RulePack(ctx, id)
}
