package api

import (
	_ "embed"
	"fmt"
	"slices"

	"go.yaml.in/yaml/v3"

	"pitgate/server/club"
)

//go:embed policy.yaml
var policyYAML []byte

// anyone in the policy means that no session is needed.
const anyone = "anyone"

// Rule is one line of the policy.
type Rule struct {
	// Roles that may call; "anyone" needs no session.
	Roles []string `yaml:"roles"`
	// DemoOnly refuses the RPC unless the server runs as a demo.
	DemoOnly bool `yaml:"demo_only"`
}

// Open tells whether the RPC needs no session.
func (r Rule) Open() bool { return slices.Contains(r.Roles, anyone) }

// Permits tells whether one of the roles is in the rule.
func (r Rule) Permits(roles []club.Role) bool {
	return r.Open() || slices.ContainsFunc(roles, func(role club.Role) bool { return slices.Contains(r.Roles, string(role)) })
}

// Policy maps a full method ("/pitgate.v1.ModelsService/GetModel") to its rule. A method that is missing may not be called.
type Policy map[string]Rule

// LoadPolicy reads the built-in table. It fails on an unknown role or key.
func LoadPolicy() (Policy, error) {
	var file struct {
		Everybody []string `yaml:"everybody"`
		Methods   Policy   `yaml:"methods"`
	}
	if err := yaml.Unmarshal(policyYAML, &file); err != nil {
		return nil, fmt.Errorf("policy: %w", err)
	}
	for method, rule := range file.Methods {
		if err := rule.check(); err != nil {
			return nil, fmt.Errorf("policy: %s: %w", method, err)
		}
	}
	return file.Methods, nil
}

// check refuses a rule nobody could meet and roles that do not exist.
func (r Rule) check() error {
	if len(r.Roles) == 0 {
		return fmt.Errorf("roles: missing")
	}
	for _, role := range r.Roles {
		if role != anyone && !club.Role(role).Known() {
			return fmt.Errorf("roles: unknown role %q", role)
		}
	}
	return nil
}
