package api

import (
	"context"
	"encoding/json"
	"fmt"
	"slices"

	"google.golang.org/protobuf/encoding/protojson"

	pb "pitgate/proto/pitgate/v1"
	"pitgate/server/club"
	"pitgate/server/physics/assess"
	"pitgate/server/postgres"
	"pitgate/server/rulepack"
)

// rulesInForce are the published packs by which the club's assessments are computed; of several versions of one the day of the flight decides.
type rulesInForce []rulepack.Pack

// readRules reads the packs in force.
func readRules(ctx context.Context, tx *postgres.ReadTx) (rulesInForce, error) {
	kept, err := tx.RulePacksInForce(ctx)
	if err != nil {
		return nil, err
	}
	var rules rulesInForce
	for _, p := range kept {
		pack, err := keptPack(p)
		if err != nil {
			return nil, err
		}
		rules = append(rules, pack)
	}
	return rules, nil
}

// keptPack decodes a kept pack.
func keptPack(p club.RulePack) (rulepack.Pack, error) {
	pack, err := rulepack.Decode(p.Content)
	if err != nil {
		return pack, fmt.Errorf("kept rule pack %s: %w", p.ID, err)
	}
	return pack, nil
}

// with returns the packs with one more in place of those of its versions that begin with it or after it.
func (r rulesInForce) with(pack rulepack.Pack) rulesInForce {
	return append(r.but(func(p rulepack.Pack) bool { return p.ID == pack.ID && p.InForceDate >= pack.InForceDate }), pack)
}

// without returns the packs without one and, when its first day has come, without the versions whose place it had taken.
func (r rulesInForce) without(pack rulepack.Pack, today string) rulesInForce {
	return r.but(func(p rulepack.Pack) bool {
		return p.ID == pack.ID && (p.InForceDate == pack.InForceDate || p.InForceDate < pack.InForceDate && pack.InForceDate <= today)
	})
}

// but returns the packs that are not gone.
func (r rulesInForce) but(gone func(rulepack.Pack) bool) rulesInForce {
	return slices.DeleteFunc(slices.Clone(r), gone)
}

// same tells whether both are the same packs with the same content.
func (r rulesInForce) same(other rulesInForce) (bool, error) {
	mine, err := json.Marshal(r)
	if err != nil {
		return false, fmt.Errorf("rules in force: %w", err)
	}
	theirs, err := json.Marshal(other)
	if err != nil {
		return false, fmt.Errorf("rules in force: %w", err)
	}
	return string(mine) == string(theirs), nil
}

// put makes the strictest of the packs and the document's own limits into the limits of the document. Without packs a document that carries no rule of
// a pack stays as it is.
func (r rulesInForce) put(in *assess.Input) error {
	if len(r) == 0 && !carriesRules(in.Limits) {
		return nil
	}
	made, err := rulepack.Compose(r, *in)
	if err != nil {
		return prefixed("limits", err)
	}
	in.Limits = &made.Limits
	return nil
}

// carriesRules tells whether limits hold a rule of a pack.
func carriesRules(l *assess.Limits) bool {
	if l == nil {
		return false
	}
	for i := range l.Rules {
		if l.Rules[i].ID != "" {
			return true
		}
	}
	return false
}

// clubRules reads the packs in force of the caller's club.
func (b *backend) clubRules(ctx context.Context, clubID string) (rules rulesInForce, err error) {
	err = b.store.Read(ctx, clubID, func(tx *postgres.ReadTx) error {
		rules, err = readRules(ctx, tx)
		return err
	})
	return rules, err
}

// packDocument checks the content of a pack and returns it as it is kept; paths start with "rulePack.content.".
func packDocument(content *pb.RulePackContent) (club.RulePack, error) {
	text, err := protojson.Marshal(orEmpty(content, &pb.RulePackContent{}))
	if err != nil {
		return club.RulePack{}, &invalidError{[]violation{{"rulePack.content", "cannot be written as JSON: " + err.Error()}}}
	}
	pack, err := rulepack.Decode(text)
	if err != nil {
		return club.RulePack{}, prefixed("rulePack.content", err)
	}
	form, err := rulepack.Canonical(pack)
	if err != nil {
		return club.RulePack{}, err
	}
	digest, err := rulepack.Digest(pack)
	return club.RulePack{Pack: pack.ID, Content: form, Digest: digest}, err
}

// showRulePack writes a version of a pack.
func (b *backend) showRulePack(clubID string, p club.RulePack) (*pb.RulePack, error) {
	pack, err := keptPack(p)
	if err != nil {
		return nil, err
	}
	content := &pb.RulePackContent{}
	if err := readDocument(p.Content, content); err != nil {
		return nil, err
	}
	return &pb.RulePack{
		Name: club.RulePacks.Name(clubID, p.ID), State: p.State.Proto(), Content: content, Digest: p.Digest,
		PublisherDisplayNames: p.PublisherDisplayNames, RetirerDisplayNames: p.RetirerDisplayNames, Etag: club.Etag(p.Version),
		CreateTime: showTime(p.CreateTime), UpdateTime: showTime(p.UpdateTime), PublishTime: showTime(p.PublishTime), RetireTime: showTime(p.RetireTime),
		ReplacedDate: p.ReplacedDay, Remarks: rulepack.Remarks(pack, b.now().UTC().Format("2006-01-02")),
	}, nil
}
