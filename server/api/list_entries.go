package api

import (
	"context"
	"encoding/base64"
	"strconv"

	pb "pitgate/proto/pitgate/v1"
	"pitgate/server/club"
	"pitgate/server/postgres"
)

// ListEntries lists the ledger from its beginning.
func (s *ledgerService) ListEntries(ctx context.Context, req *pb.ListEntriesRequest) (*pb.ListEntriesResponse, error) {
	c, err := enter(ctx, req.GetParent())
	if err != nil {
		return nil, err
	}
	first, err := entryIndex(req.GetPageToken())
	if err != nil {
		return nil, err
	}
	out, limit := &pb.ListEntriesResponse{}, pageOf(req).Limit()
	return out, s.store.Read(ctx, c.club, func(tx *postgres.ReadTx) error {
		list, err := tx.LedgerEntries(ctx, first, limit+1)
		if err != nil {
			return err
		}
		if len(list) > int(limit) {
			list = list[:limit]
			out.NextPageToken = entryToken(first + int64(limit))
		}
		for _, e := range list {
			out.Entries = append(out.Entries, &pb.LedgerEntry{Index: e.Index, Entry: e.Entry, LeafHash: e.LeafHash})
		}
		return nil
	})
}

// entryToken names the entry at which the next page begins.
func entryToken(index int64) string {
	return base64.RawURLEncoding.EncodeToString([]byte("e" + strconv.FormatInt(index, 10)))
}

// entryIndex reads such a token; an empty one is the beginning.
func entryIndex(token string) (int64, error) {
	if token == "" {
		return 0, nil
	}
	text, err := base64.RawURLEncoding.DecodeString(token)
	if err == nil && len(text) > 1 && text[0] == 'e' {
		if index, err := strconv.ParseInt(string(text[1:]), 10, 64); err == nil && index >= 0 {
			return index, nil
		}
	}
	return 0, club.RefuseField("pageToken", "BAD_PAGE_TOKEN", "is not one that this list gave out")
}
