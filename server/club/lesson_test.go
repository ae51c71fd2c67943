package club

import (
	"strings"
	"testing"

	"google.golang.org/protobuf/proto"

	pitgatev1 "pitgate/proto/pitgate/v1"
)

func quantity(value float64, basis pitgatev1.Basis) *pitgatev1.Quantity {
	return &pitgatev1.Quantity{Value: proto.Float64(value), Basis: basis}
}

// redshank has no air trap, one pack of two cells and a wing of polished skin.
func redshank() *pitgatev1.ModelDescription {
	return &pitgatev1.ModelDescription{
		DisplayName: "Redshank",
		Surfaces:    []*pitgatev1.LiftingSurface{{Name: "wing"}, {Name: "canard"}},
		Mass:        &pitgatev1.MassProperties{},
		FuelSystem:  &pitgatev1.FuelSystem{Fuel: "kerosene", AirTrap: proto.Bool(false), PumpHeightMeters: quantity(0.1, pitgatev1.Basis_BASIS_MEASURED)},
		Packs:       []*pitgatev1.Pack{{Name: "receiver", SeriesCellCount: proto.Int32(2), CapacityAmpereHours: quantity(2.4, pitgatev1.Basis_BASIS_ESTIMATED)}},
		Finish:      pitgatev1.Finish_FINISH_POLISHED,
	}
}

func TestPredicateMatches(t *testing.T) {
	t.Parallel()
	for predicate, want := range map[string]bool{
		"true":                        true,
		"!model.fuel_system.air_trap": true,
		"has(model.fuel_system.air_trap) && !model.fuel_system.air_trap":                           true,
		"has(model.fuel_system.shut_off_valve)":                                                    false,
		"has(model.radio)":                                                                         false,
		"model.radio.receiver_count < 2":                                                           true,
		"model.fuel_system.pump_height_meters.value > 0.05":                                        true,
		"model.packs.exists(p, p.series_cell_count < 2)":                                           false,
		"model.packs.exists(p, p.capacity_ampere_hours.basis == pitgate.v1.Basis.BASIS_ESTIMATED)": true,
		"model.packs.all(p, p.capacity_ampere_hours.basis == Basis.BASIS_MEASURED)":                false,
		"model.finish == Finish.FINISH_POLISHED":                                                   true,
		"model.surfaces.filter(s, s.name == 'canard').size() == 1":                                 true,
		"model.display_name.startsWith('Dab')":                                                     false,
	} {
		p, err := CompilePredicate(predicate)
		if err != nil {
			t.Errorf("%s: %v", predicate, err)
			continue
		}
		got, err := p.Matches(redshank())
		if err != nil || got != want {
			t.Errorf("%s: got %v, %v; want %v", predicate, got, err, want)
		}
	}
}

func TestPredicateRefused(t *testing.T) {
	t.Parallel()
	for predicate, told := range map[string]string{
		"":                                       "say for which models",
		"  ":                                     "say for which models",
		"model.fuel_system.air_trapp":            "line 1, column",
		"model.fuel_system.air_trap &&":          "line 1, column",
		"model.display_name":                     "must give true or false",
		"model.mass > 3":                         "line 1, column",
		"plane.mass":                             "undeclared reference",
		"model.display_name == 3":                "no matching overload",
		strings.Repeat("true || ", 400) + "true": "size exceeds limit",
		strings.Repeat("(", 60) + "true" + strings.Repeat(")", 60): "recursion",
	} {
		_, err := CompilePredicate(predicate)
		if CodeOf(err) != Invalid || !strings.HasPrefix(err.Error(), "predicate: ") || !strings.Contains(err.Error(), told) {
			t.Errorf("%.40q: got %v, want something with %q", predicate, err, told)
		}
	}
}

func TestPredicateThatCannotBeAnswered(t *testing.T) {
	t.Parallel()
	long := redshank()
	for range 400 {
		long.Packs = append(long.Packs, long.Packs[0])
	}
	for predicate, model := range map[string]*pitgatev1.ModelDescription{
		"model.surfaces[9].name == 'wing'":                                                                 redshank(),
		"1 / model.packs[0].series_cell_count - 2 / (model.packs.size() - 1) > 0":                          redshank(),
		"model.packs.all(a, model.packs.all(b, model.packs.all(c, a.name == b.name && b.name == c.name)))": long,
	} {
		p, err := CompilePredicate(predicate)
		if err != nil {
			t.Errorf("%s: %v", predicate, err)
			continue
		}
		if yes, err := p.Matches(model); CodeOf(err) != Invalid {
			t.Errorf("%s: got %v, %v; want invalid", predicate, yes, err)
		}
	}
}

func TestVoteIsForTheCommittee(t *testing.T) {
	t.Parallel()
	for _, tt := range []struct {
		state LessonState
		by    Actor
		want  Code
	}{{Proposed, mei, ""}, {Proposed, ines, Forbidden}, {Proposed, ada, Forbidden}, {Adopted, mei, FailedPrecondition}} {
		if got := CodeOf(PermitVote(tt.state, tt.by)); got != tt.want {
			t.Errorf("%s by %s: got %q, want %q", tt.state, tt.by.PersonID, got, tt.want)
		}
	}
}
