package club

import (
	"errors"
	"fmt"
	"strings"
	"sync"

	"cel.dev/cel-go/cel"

	pitgatev1 "pitgate/proto/pitgate/v1"
)

// Bounds on a predicate, so that no lesson can keep the server busy: length of its text in code points, depth of its
// nesting, and steps of one evaluation (a model of the largest size allowed needs some thousand).
const (
	longestPredicate = 2000
	deepestPredicate = 40
	costliestTrial   = 200_000
)

// Predicate is a compiled lesson: a question about one model, answered yes where the lesson applies.
type Predicate struct {
	program cel.Program
}

// language is CEL with the one variable `model`. Names of enum values need no package: FINISH_POLISHED is
// Finish.FINISH_POLISHED.
var language = sync.OnceValues(func() (*cel.Env, error) {
	return cel.NewEnv(
		cel.Types(&pitgatev1.ModelDescription{}),
		cel.Container("pitgate.v1"),
		cel.Variable("model", cel.ObjectType("pitgate.v1.ModelDescription")),
		cel.ParserExpressionSizeLimit(longestPredicate),
		cel.ParserRecursionLimit(deepestPredicate),
	)
})

// CompilePredicate reads a lesson's predicate: a CEL expression over `model`, a pitgate.v1.ModelDescription, that gives
// true or false. A part that was not filled in reads as its empty value (false, 0, ""); has(model.fuel_system.air_trap)
// tells whether it was. Invalid, naming the field predicate and the place in the text, when it cannot be understood.
func CompilePredicate(text string) (*Predicate, error) {
	if strings.TrimSpace(text) == "" {
		return nil, RefuseField("predicate", "PREDICATE_MISSING", "say for which models the lesson holds, e.g. !model.fuel_system.air_trap")
	}
	env, err := language()
	if err != nil {
		return nil, fmt.Errorf("predicate language: %w", err)
	}
	tree, issues := env.Compile(text)
	if issues.Err() != nil {
		return nil, badPredicate(issues)
	}
	if tree.OutputType() != cel.BoolType {
		return nil, RefuseField("predicate", "PREDICATE_NOT_A_QUESTION", "must give true or false, but gives %s", tree.OutputType())
	}
	program, err := env.Program(tree, cel.CostLimit(costliestTrial))
	if err != nil {
		return nil, RefuseField("predicate", "PREDICATE_UNCLEAR", "%v", err)
	}
	return &Predicate{program: program}, nil
}

// badPredicate tells what was not understood, line and column first.
func badPredicate(issues *cel.Issues) error {
	var told []string
	for _, e := range issues.Errors() {
		told = append(told, fmt.Sprintf("line %d, column %d: %s", e.Location.Line(), e.Location.Column()+1, e.Message))
	}
	return RefuseField("predicate", "PREDICATE_UNCLEAR", "%s", strings.Join(told, "; "))
}

// Matches tells whether the lesson applies to the model. An error means that the predicate cannot be answered for this
// model (it divides by zero, asks for a list's tenth item) or would take too long.
func (p *Predicate) Matches(model *pitgatev1.ModelDescription) (bool, error) {
	out, _, err := p.program.Eval(map[string]any{"model": model})
	if err != nil {
		return false, RefuseField("predicate", "PREDICATE_FAILED", "cannot be answered for the model %q: %v", model.GetDisplayName(), err)
	}
	yes, ok := out.Value().(bool)
	if !ok {
		return false, errors.New("predicate: gave neither true nor false")
	}
	return yes, nil
}

// PermitVote tells whether the actor may vote to adopt a lesson in the state.
func PermitVote(state LessonState, by Actor) error {
	if !by.Has(Committee) {
		return Refuse(Forbidden, "ROLE_MISSING", "this needs the role %s", Committee.Title())
	}
	if state != Proposed {
		return Refuse(FailedPrecondition, "ADOPTED_ALREADY", "the lesson is adopted already")
	}
	return nil
}
