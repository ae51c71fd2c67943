package demo

import (
	"crypto/sha256"
	"fmt"

	"github.com/google/uuid"
	"google.golang.org/protobuf/encoding/protojson"
	"google.golang.org/protobuf/proto"

	files "pitgate/testdata/demo"
)

// read fills a message from one of the demo's files.
func read[M proto.Message](name string, into M) (M, error) {
	text, err := files.Files.ReadFile(name + ".json")
	if err != nil {
		return into, fmt.Errorf("demo file: %w", err)
	}
	if err := protojson.Unmarshal(text, into); err != nil {
		return into, fmt.Errorf("demo file %s: %w", name, err)
	}
	return into, nil
}

// requestID is the same for the same step, so that a load that was broken off can go on.
func requestID(step string) string {
	sum := sha256.Sum256([]byte("pitgate demo " + step))
	id, err := uuid.FromBytes(sum[:16])
	if err != nil {
		// FromBytes fails only for a wrong length.
		panic(err)
	}
	id[6], id[8] = id[6]&0x0f|0x80, id[8]&0x3f|0x80
	return id.String()
}
