// Package proto holds the contract as documents: the .proto files and the OpenAPI description made from them.
package proto

import _ "embed"

// OpenAPI is the OpenAPI 3.1 description of the REST interface, as JSON.
//
//go:embed openapi.json
var OpenAPI []byte
