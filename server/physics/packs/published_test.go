package packs

import (
	"encoding/csv"
	"math"
	"os"
	"path/filepath"
	"strconv"
	"strings"
	"testing"
)

// inputs are the named values of a published row.
type inputs map[string]float64

// method computes what the rows of one kind expect.
type method func(in inputs) float64

// checkPublished compares the rows of a source with the method of their kind, the part of the id before the slash. A row without a method, a
// method without a row and an input no method could read are failures.
func checkPublished(t *testing.T, source string, methods map[string]method) {
	t.Helper()
	used := map[string]bool{}
	for _, record := range readPublished(t, source) {
		kind, _, _ := strings.Cut(record[0], "/")
		compute, known := methods[kind]
		if !known {
			t.Fatalf("%s: no method for row %s", source, record[0])
		}
		used[kind] = true
		t.Run(record[0], func(t *testing.T) {
			t.Parallel()
			compare(t, compute(parseInputs(t, record[1])), parse(t, record[2]), record[3])
		})
	}
	for kind := range methods {
		if !used[kind] {
			t.Errorf("%s: no row of kind %s", source, kind)
		}
	}
}

// readPublished returns the rows of a source without its head.
func readPublished(t *testing.T, source string) [][]string {
	t.Helper()
	file, err := os.Open(filepath.Join("..", "..", "..", "testdata", "published", source, "values.csv"))
	if err != nil {
		t.Fatal(err)
	}
	defer file.Close()
	records, err := csv.NewReader(file).ReadAll()
	if err != nil {
		t.Fatal(err)
	}
	return records[1:]
}

// parseInputs reads "name=value name=value".
func parseInputs(t *testing.T, text string) inputs {
	t.Helper()
	in := inputs{}
	for _, pair := range strings.Fields(text) {
		name, value, _ := strings.Cut(pair, "=")
		in[name] = parse(t, value)
	}
	return in
}

// parse reads a number.
func parse(t *testing.T, text string) float64 {
	t.Helper()
	value, err := strconv.ParseFloat(text, 64)
	if err != nil {
		t.Fatal(err)
	}
	return value
}

// compare fails when got is farther from want than the tolerance, "1e-6 rel" or "0.01 abs".
func compare(t *testing.T, got, want float64, tolerance string) {
	t.Helper()
	size, kind, _ := strings.Cut(tolerance, " ")
	allowed := parse(t, size)
	if kind == "rel" {
		allowed *= math.Abs(want)
	}
	if !(math.Abs(got-want) <= allowed) {
		t.Errorf("got %.9g, published %.9g, tolerance %s", got, want, tolerance)
	}
}

// kelvin is the temperature of a row.
func (in inputs) kelvin() float64 { return Zero + in["celsius"] }

func TestGaugesAgainstPublishedValues(t *testing.T) {
	t.Parallel()
	const foot = 0.3048
	resistance := func(in inputs, length float64) float64 {
		return WireResistance(length, GaugeArea(in["gauge"]), RoomCopper, SolidFactor)
	}
	checkPublished(t, "wire_gauge_tables", map[string]method{
		"resistance":        func(in inputs) float64 { return resistance(in, 1000*foot) },
		"resistance-metric": func(in inputs) float64 { return resistance(in, 1000) },
		"diameter":          func(in inputs) float64 { return GaugeDiameter(in["gauge"]) / 0.0254 },
		"limit": func(in inputs) float64 {
			if current, ok := GaugeLimit(in["gauge"]); ok {
				return current
			}
			return math.NaN()
		},
	})
}

func TestConductorsAgainstPublishedValues(t *testing.T) {
	t.Parallel()
	wire := func(factor float64) method {
		return func(in inputs) float64 { return WireResistance(1000, in["area"]*1e-6, RoomCopper, factor) }
	}
	checkPublished(t, "iec_60228", map[string]method{
		"solid":    wire(SolidFactor),
		"flexible": wire(FlexibleFactor),
		"to-20C": func(in inputs) float64 {
			return WireResistance(1, 1e-6, RoomCopper, SolidFactor) / WireResistance(1, 1e-6, in.kelvin(), SolidFactor)
		},
	})
}

func TestCircuitsAgainstPublishedValues(t *testing.T) {
	t.Parallel()
	solid := func(in inputs) float64 {
		return 2 * WireResistance(in["length"], GaugeArea(in["gauge"]), RoomCopper, SolidFactor)
	}
	checkPublished(t, "direct_current_circuits", map[string]method{
		"drop": func(in inputs) float64 { return solid(in) * in["current"] },
		"chain": func(in inputs) float64 {
			contacts := Lead{Contacts: int(in["contacts"]), Contact: in["contact"]}
			return (solid(in) + contacts.Resistance()) * in["current"]
		},
		"linear-heat": func(in inputs) float64 { return LinearHeat(in["input"], in["output"], in["current"]) },
		"switched-input": func(in inputs) float64 {
			return SwitchedInput(in["volts"], in["current"], in["efficiency"], in["input"])
		},
		"drop-out": func(in inputs) float64 {
			return in["volts"] + DropOutOfSwitch(in["volts"], in["current"], in["duty"], in["ohm"], in["ohm"], in["ohm"])
		},
		"sag": func(in inputs) float64 {
			volts, _ := Regulator{Kind: Direct}.inputUnder(in["rest"], in["ohm"], in["current"])
			return volts
		},
	})
}

func TestCellsAgainstPublishedValues(t *testing.T) {
	t.Parallel()
	checkPublished(t, "polymer_cell_model", map[string]method{
		"rest-polymer": func(in inputs) float64 { return LithiumPolymer.RestVolts(in["charge"]) },
		"low-charge":   func(in inputs) float64 { return LowChargeRatio(in["charge"]) },
	})
	checkPublished(t, "calendar_ageing", map[string]method{
		"calendar": func(in inputs) float64 { return CalendarLoss(in.kelvin(), in["charge"], in["days"]) },
	})
	checkPublished(t, "cell_data_sheets", map[string]method{
		"iron-capacity":    func(in inputs) float64 { return LithiumIronPhosphate.TemperatureFactor(in.kelvin()) },
		"ion-capacity":     func(in inputs) float64 { return LithiumIon.TemperatureFactor(in.kelvin()) },
		"cold-ratio":       func(in inputs) float64 { return coldRatio(in["share"], in.kelvin()) },
		"cold-ratio-iron":  func(in inputs) float64 { return LithiumIronPhosphate.ColdRatio(in.kelvin()) },
		"class-resistance": func(in inputs) float64 { return Chemistry(in["chemistry"]).ClassResistance(1, in["capacity"]) },
		"plateau":          func(in inputs) float64 { return LithiumIronPhosphate.RestVolts(in["charge"]) },
	})
}

func TestServosAgainstPublishedValues(t *testing.T) {
	t.Parallel()
	class := func(in inputs) Class { return Classes()[int(in["class"])] }
	demand := func(in inputs) Demand {
		group := Group{Class{Name: "servo", Idle: in["idle"], Moving: in["moving"], Stall: in["stall"], Volts: 5}, int(in["count"])}
		d, err := DemandOf([]Group{group}, in["duty"], 0)
		if err != nil {
			return Demand{Mean: math.NaN(), Peak: math.NaN()}
		}
		return d
	}
	checkPublished(t, "servo_currents", map[string]method{
		"micro-moving":     func(in inputs) float64 { return class(in).Moving },
		"micro-blocked":    func(in inputs) float64 { return class(in).Stall },
		"standard-moving":  func(in inputs) float64 { return class(in).Moving },
		"standard-blocked": func(in inputs) float64 { return class(in).Stall },
		"mean":             func(in inputs) float64 { return demand(in).Mean },
		"peak":             func(in inputs) float64 { return demand(in).Peak },
		"needed":           func(in inputs) float64 { return NeededCapacity(in["drawn"], in["factors"], in["reserve"]) },
	})
}
