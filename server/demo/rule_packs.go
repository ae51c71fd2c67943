package demo

import (
	"fmt"

	pb "pitgate/proto/pitgate/v1"
	"pitgate/server/club"
)

// packs of the demo in force: two authorities' and the club's own.
var packs = []string{"eu-open-a3", "uk-association", "larkmoor-club"}

// rules drafts the packs and publishes each by two of the committee.
func (l *loader) rules() error {
	client := pb.NewRulePacksServiceClient(l.conn)
	all, err := client.ListSuppliedRulePacks(l.as(Mei), &pb.ListSuppliedRulePacksRequest{Parent: club.ClubName(ClubID)})
	if err != nil {
		return fmt.Errorf("rule packs: %w", err)
	}
	supplied := map[string]*pb.RulePackContent{}
	for _, content := range all.GetPacks() {
		supplied[content.GetId()] = content
	}
	for _, id := range packs {
		draft, err := client.CreateRulePack(l.as(Mei), &pb.CreateRulePackRequest{Parent: club.ClubName(ClubID), RequestId: requestID("pack " + id),
			RulePack: &pb.RulePack{Content: supplied[id]}})
		if err != nil {
			return fmt.Errorf("rule pack %s: %w", id, err)
		}
		if err := l.publish(client, id, draft); err != nil {
			return err
		}
	}
	return nil
}

// publish gives the words of two committee members.
func (l *loader) publish(client pb.RulePacksServiceClient, id string, p *pb.RulePack) error {
	for _, who := range []string{Mei, Tomas} {
		next, err := client.PublishRulePack(l.as(who), &pb.PublishRulePackRequest{Name: p.GetName(), Etag: p.GetEtag(), RequestId: requestID("publish " + id + who)})
		if err != nil {
			return fmt.Errorf("publish %s as %s: %w", id, who, err)
		}
		p = next
	}
	return nil
}
