// Command protodeps writes the .proto files that ours import from google/api and buf/validate into a folder, re-printed from the descriptors that
// the Go modules link in. Nothing is vendored and the versions are those of go.mod.
package main

import (
	"fmt"
	"os"

	_ "buf.build/gen/go/bufbuild/protovalidate/protocolbuffers/go/buf/validate"
	"github.com/jhump/protoreflect/v2/protoprint"
	_ "google.golang.org/genproto/googleapis/api/annotations"
	"google.golang.org/protobuf/reflect/protoreflect"
	"google.golang.org/protobuf/reflect/protoregistry"
)

var imported = []string{
	"buf/validate/validate.proto",
	"google/api/annotations.proto",
	"google/api/field_behavior.proto",
	"google/api/http.proto",
}

func main() {
	if len(os.Args) != 2 {
		fmt.Fprintln(os.Stderr, "usage: protodeps FOLDER")
		os.Exit(2)
	}
	if err := write(os.Args[1]); err != nil {
		fmt.Fprintln(os.Stderr, "protodeps:", err)
		os.Exit(1)
	}
}

func write(folder string) error {
	var files []protoreflect.FileDescriptor
	for _, path := range imported {
		file, err := protoregistry.GlobalFiles.FindFileByPath(path)
		if err != nil {
			return fmt.Errorf("find %s: %w", path, err)
		}
		files = append(files, file)
	}
	return (&protoprint.Printer{}).PrintProtosToFileSystem(files, folder)
}
