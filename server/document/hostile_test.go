package document

import (
	"encoding/json"
	"errors"
	"os"
	"path/filepath"
	"strconv"
	"strings"
	"testing"
	"time"

	"pitgate/server/physics/assess"
)

// put sets one place of a document, e.g. "model.engines.0.name", to a value written in JSON; a list is made longer by the index behind its end.
func put(t *testing.T, document any, path, value string) any {
	t.Helper()
	if path == "" {
		var decoded any
		if err := json.Unmarshal([]byte(value), &decoded); err != nil {
			t.Fatalf("%s: %v", value, err)
		}
		return decoded
	}
	key, rest, _ := strings.Cut(path, ".")
	if i, err := strconv.Atoi(key); err == nil {
		list, _ := document.([]any)
		if i == len(list) {
			list = append(list, nil)
		}
		list[i] = put(t, list[i], rest, value)
		return list
	}
	object, ok := document.(map[string]any)
	if !ok {
		object = map[string]any{}
	}
	object[key] = put(t, object[key], rest, value)
	return object
}

// edited is the demonstration's heavy jet with edits, each "path=JSON".
func edited(t *testing.T, edits ...string) []byte {
	t.Helper()
	data, err := os.ReadFile(filepath.Join(demoFolder, "sandmartin_long_acre.json"))
	if err != nil {
		t.Fatal(err)
	}
	var document any
	if err := json.Unmarshal(data, &document); err != nil {
		t.Fatal(err)
	}
	for _, edit := range edits {
		path, value, _ := strings.Cut(edit, "=")
		document = put(t, document, path, value)
	}
	text, err := json.Marshal(document)
	if err != nil {
		t.Fatal(err)
	}
	return text
}

const (
	bowTie  = `{"corners":[{"xMeters":0,"yMeters":0},{"xMeters":10,"yMeters":10},{"xMeters":10,"yMeters":0},{"xMeters":0,"yMeters":10}]}`
	twoEnds = `{"corners":[{"xMeters":0,"yMeters":0},{"xMeters":10,"yMeters":10}]}`
	oneLine = `{"corners":[{"xMeters":0,"yMeters":0},{"xMeters":10,"yMeters":0},{"xMeters":20,"yMeters":0}]}`
	meadow  = `{"name":"meadow","area":{"corners":[{"xMeters":0,"yMeters":0},{"xMeters":9,"yMeters":0},{"xMeters":0,"yMeters":9}]}}`
	tube    = `{"shape":"SPAR_SHAPE_TUBE","outerDiameterMeters":{"value":0.01},"wallThicknessMeters":{"value":0.006}}`
)

// hostileDocuments are documents that somebody types by mistake or sends on purpose: edits, the place that the refusal names, its words.
var hostileDocuments = []struct {
	name          string
	edits         []string
	path, message string
}{
	{"huge mass", []string{`model.mass.emptyMassKg.value=1e308`}, "model.mass.emptyMassKg.value", "must be at most 200"},
	{"mass in grams", []string{`model.mass.emptyMassKg.value=4500`}, "model.mass.emptyMassKg.value", "in g? That is 4.5 kg"},
	{"mass of nothing", []string{`model.mass.emptyMassKg.value=1e-300`}, "model.mass.emptyMassKg.value", "must be at least 0.01"},
	{"thrust of nothing", []string{`model.engines.0.staticThrustNewtons.value=1e-300`}, "model.engines[0].staticThrustNewtons.value", "must be at least 0.01"},
	{"vent of nothing", []string{`model.fuelSystem.ventBoreMeters={"value":1e-300}`}, "model.fuelSystem.ventBoreMeters.value", "must be at least 0.0001"},
	{"number as text", []string{`model.mass.emptyMassKg.value="16"`}, "model.mass.emptyMassKg.value", "must be a number, got a text"},
	{"not a number", []string{`day.qnhPascals.value="NaN"`}, "day.qnhPascals.value", "must be a number, got a text"},
	{"no finite number", []string{`day.qnhPascals.value="-Infinity"`}, "day.qnhPascals.value", "must be a number, got a text"},
	{"spread wider than the range", []string{`model.mass.emptyMassKg.spread=500`}, "model.mass.emptyMassKg.spread", "must be at most 199.99"},
	{"empty name", []string{`model.surfaces.0.name=""`}, "model.surfaces[0].name", "must have at least 1 characters"},
	{"blank name", []string{`model.surfaces.0.name="  "`}, "model.surfaces[0].name", "must not be blank"},
	{"name in another case", []string{`model.DisplayName="x"`}, "model.DisplayName", "is not a field of this document"},
	{"unknown choice", []string{`launchPlan.method="LAUNCH_METHOD_ROCKET"`}, "launchPlan.method", "must be one of"},
	{"choice in small letters", []string{`launchPlan.method="launch_method_wheels"`}, "launchPlan.method", "must be one of"},
	{"choice by number", []string{`launchPlan.method=2`}, "launchPlan.method", "must be a text, got a number"},
	{"nothing in a list", []string{`model.radio.antennas=[null]`}, "model.radio.antennas[0]", "must be an object, got null"},
	{"no receiver", []string{`model.radio.receiverCount=0`}, "model.radio.receiverCount", "must be at least 1"},
	{"half a receiver", []string{`model.radio.receiverCount=1.5`}, "model.radio.receiverCount", "must be a whole number"},
	{"day long ago", []string{`day.time="1800-01-01T10:00:00Z"`}, "day.time", "must lie in the years 1900 to 2200"},
	{"day far ahead", []string{`day.time="2300-01-01T10:00:00Z"`}, "day.time", "must lie in the years 1900 to 2200"},
	{"day that is none", []string{`day.time="2026-02-30T10:00:00Z"`}, "day.time", "must be a time"},
	{"winds out of order", []string{`day.windChanges=[{"time":"2026-05-16T12:00:00Z"},{"time":"2026-05-16T13:30:00+02:00"}]`}, "day.windChanges[1].time", "must lie after the time before"},
	{"dew above the air", []string{`day.dewPointCelsius={"value":25}`, `day.temperatureCelsius.value=5`}, "day.dewPointCelsius.value", "must not be greater than temperatureCelsius, 5, got 25"},
	{"latitude for longitude", []string{`field.datumLatitudeDegrees=120`}, "field.datumLatitudeDegrees", "must be at most 90"},
	{"survey on no day", []string{`field.survey={"date":"2026-13-45"}`}, "field.survey.date", "must be a date"},
	{"survey long ago", []string{`field.survey={"date":"1700-01-01"}`}, "field.survey.date", "must lie in the years"},
	{"permission on no day", []string{`field.permission={"validFromDate":"2026-99-99"}`}, "field.permission.validFromDate", "must be a date"},
	{"permission ends before it begins", []string{`field.permission={"validFromDate":"2026-06-01","validToDate":"2026-05-01"}`}, "field.permission.validToDate", "must not lie before validFromDate 2026-06-01"},
	{"quiet at no hour", []string{`field.permission={"quietFrom":"99:99","quietTo":"07:00"}`}, "field.permission.quietFrom", "must be an hour of the day"},
	{"quiet past the hour", []string{`field.permission={"quietFrom":"20:00","quietTo":"06:75"}`}, "field.permission.quietTo", "must be an hour of the day"},
	{"quiet without end", []string{`field.permission={"quietFrom":"20:00"}`}, "field.permission.quietTo", "must be given with quietFrom"},
	{"parking crosses itself", []string{`field.parking=[{"name":"p","area":` + bowTie + `}]`}, "field.parking[0].area", "crosses itself"},
	{"keep-out of two corners", []string{`field.keepOuts=[{"name":"k","area":` + twoEnds + `}]`}, "field.keepOuts[0].area", "must have at least 3 corners, got 2"},
	{"area on a line", []string{`field.flyingArea=` + oneLine}, "field.flyingArea", "encloses no area"},
	{"line of one point", []string{`field.peopleLines=[{"name":"x","points":[{"xMeters":1,"yMeters":2}]}]`}, "field.peopleLines[0].points", "must have at least 2 points"},
	{"two landing areas of one name", []string{`field.landingAreas=[` + meadow + `,` + meadow + `]`}, "field.landingAreas[1].name", "is the same as of"},
	{"obstacle under the ground", []string{`field.obstacles.0.heightMeters.value=-3`}, "field.obstacles[0].heightMeters.value", "must not be negative, got -3"},
	{"wire through the ground", []string{`field.obstacles.0.sagMeters={"value":90}`}, "field.obstacles[0].sagMeters.value", "must not be greater than heightMeters"},
	{"fuel above the tank", []string{`model.mass.tanks.0.fillRatio=2`}, "model.mass.tanks[0].fillRatio", "must be at most 1"},
	{"more unusable than held", []string{`model.fuelSystem.unusableLiters={"value":50}`}, "model.fuelSystem.unusableLiters.value", "must not be greater than all tanks hold"},
	{"spar longer than the wing", []string{`model.structure.wingSpar.0.spanRatio=1.2`}, "model.structure.wingSpar[0].spanRatio", "must be at most 1"},
	{"spar from tip to root", []string{`model.structure.wingSpar=[{"spanRatio":0.8},{"spanRatio":0.2}]`}, "model.structure.wingSpar[1].spanRatio", "must be greater than at the point before, 0.8"},
	{"wall thicker than the tube", []string{`model.structure.boom=[` + tube + `]`}, "model.structure.boom[0].wallThicknessMeters.value", "must not be greater than half the outer diameter, 0.005"},
	{"more thrust at idle", []string{`model.engines.0.idleThrustNewtons.value=500`}, "model.engines[0].idleThrustNewtons.value", "must not be greater than staticThrustNewtons"},
	{"more fuel at idle", []string{`model.engines.0.idleFuelFlowGramsPerMinute.value=5000`}, "model.engines[0].idleFuelFlowGramsPerMinute.value", "must not be greater than fullFuelFlowGramsPerMinute"},
	{"hub as large as the disc", []string{`model.engines.0.discDiameterMeters=0.1`, `model.engines.0.hubDiameterMeters=0.1`}, "model.engines[0].hubDiameterMeters", "must be less than discDiameterMeters"},
	{"mean above peak", []string{`model.packs.0.meanCurrentAmperes.value=900`}, "model.packs[0].meanCurrentAmperes.value", "must not be greater than peakCurrentAmperes"},
	{"one quantity measured twice", []string{`model.measuredResults=[{"quantityId":"lift.maximum_coefficient"},{"quantityId":"lift.maximum_coefficient"}]`}, "model.measuredResults[1].quantityId", "stands twice"},
	{"stroke runs back", []string{`launchPlan.catapult=[{"travelMeters":5},{"travelMeters":1}]`}, "launchPlan.catapult[1].travelMeters", "must be greater than at the point before"},
	{"rails run back", []string{`launchPlan.ramp.railProfile=[{"distanceMeters":5},{"distanceMeters":1}]`}, "launchPlan.ramp.railProfile[1].distanceMeters", "must be greater than the point before"},
	{"temperatures reversed", []string{`limits.minimumTemperatureCelsius=30`, `limits.maximumTemperatureCelsius=0`}, "limits.minimumTemperatureCelsius", "must not be greater than maximumTemperatureCelsius"},
	{"one rule confirmed twice", []string{`confirmations=[{"rule":"a.b","confirmed":true},{"rule":"a.b"}]`}, "confirmations[1].rule", "stands twice"},
}

// TestHostileDocuments wants one refusal for each that names the place.
func TestHostileDocuments(t *testing.T) {
	t.Parallel()
	for _, row := range hostileDocuments {
		t.Run(row.name, func(t *testing.T) {
			t.Parallel()
			_, err := Decode(edited(t, row.edits...))
			wantOneFault(t, err, row.path, row.message)
		})
	}
}

func wantOneFault(t *testing.T, err error, path, message string) {
	t.Helper()
	var found Errors
	if !errors.As(err, &found) {
		t.Fatalf("got %v, want a fault at %s", err, path)
	}
	if len(found) != 1 || found[0].Path != path || !strings.Contains(found[0].Message, message) {
		t.Errorf("got %v, want only %s: ...%s...", found, path, message)
	}
}

// TestHostileTexts wants what is no such document to be refused at once, however long or deep it is.
func TestHostileTexts(t *testing.T) {
	t.Parallel()
	rows := []struct{ name, text, path, message string }{
		{"ten megabytes", `{"model":{"displayName":"` + strings.Repeat("x", 10_000_000) + `"}}`, "document", "must be at most 1048576 bytes"},
		{"deep objects", strings.Repeat(`{"model":`, 2000) + `1` + strings.Repeat(`}`, 2000), "document", "must not be nested deeper than 32"},
		{"deep lists", strings.Repeat(`[`, 100_000), "document", "must not be nested deeper than 32"},
		{"no UTF-8", "{\"model\":{\"displayName\":\"\xe9\"}}", "document", "is not valid UTF-8"},
		{"nothing", "", "document", "ends too early"},
		{"mark before it", "\ufeff{}", "document", "is not JSON near byte 0"},
		{"number of base 16", `{"day":{"windHeightMeters":0x10}}`, "document", "is not JSON"},
		{"number of many digits", `{"day":{"windHeightMeters":` + strings.Repeat("1", 100_000) + `}}`, "day.windHeightMeters", "must be a finite number"},
	}
	for _, row := range rows {
		t.Run(row.name, func(t *testing.T) {
			t.Parallel()
			start := time.Now()
			_, err := Decode([]byte(row.text))
			if took := time.Since(start); took > 2*time.Second {
				t.Errorf("took %v", took)
			}
			wantOneFault(t, err, row.path, row.message)
		})
	}
}

// TestEndsOfRangesAreComputed puts numbers that size a model to the ends of their ranges and wants a report without a number that is none.
func TestEndsOfRangesAreComputed(t *testing.T) {
	t.Parallel()
	places := []string{
		"model.mass.emptyMassKg.value", "model.engines.0.staticThrustNewtons.value", "model.fuelSystem.ventBoreMeters.value",
		"model.mass.tanks.0.capacityLiters.value", "day.windSpeedMetersPerSecond.value", "launchPlan.circuit.airspeedMetersPerSecond.value",
	}
	met := 0
	for _, f := range allNumbers() {
		place := strings.NewReplacer("[", ".", "]", "").Replace(f.path) + ".value"
		for _, wanted := range places {
			if place == wanted {
				met++
				t.Run(f.path, func(t *testing.T) { t.Parallel(); wantEndsComputed(t, f, place) })
			}
		}
	}
	if met != len(places) {
		t.Errorf("met %d places of %d", met, len(places))
	}
}

func wantEndsComputed(t *testing.T, f numberField, place string) {
	t.Helper()
	_, inside := edges(f)
	computed := 0
	for _, value := range inside {
		in, err := Decode(edited(t, place+"="+plain(value)))
		var refused Errors
		if errors.As(err, &refused) {
			continue // against another number of this model
		}
		report, err := Assess(in)
		if err != nil {
			continue // an error that says why
		}
		computed++
		wantFinite(t, place+"="+plain(value), report)
	}
	if computed == 0 {
		t.Errorf("%s: no end was computed", place)
	}
}

// wantFinite looks through the sentences of a report.
func wantFinite(t *testing.T, at string, report assess.Report) {
	t.Helper()
	for _, finding := range report.Findings {
		text, err := json.Marshal(finding)
		if err != nil {
			t.Fatalf("%s: %v", at, err)
		}
		for _, word := range []string{"NaN", "+Inf", "-Inf"} {
			if strings.Contains(string(text), word) {
				t.Errorf("%s: %s tells %s: %s", at, finding.ID, word, text)
			}
		}
	}
}
