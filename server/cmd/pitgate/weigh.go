package main

import (
	"context"
	"encoding/json"
	"errors"
	"flag"
	"fmt"
	"io"
	"math"
	"os"
	"strings"

	"pitgate/server/document"
	"pitgate/server/physics/assess"
	"pitgate/server/physics/weighing"
	"pitgate/server/report"
)

// weighFlags are the flags of the weigh-in.
type weighFlags struct {
	json, form         bool
	tilted             string
	tilt, tiltedSpread float64 // degrees
	raised, between    float64 // m
}

// angle returns the nose-up angle of the tilted model, as given or from how far its front support was raised, rad.
func (o weighFlags) angle() (float64, error) {
	if o.raised == 0 {
		return o.tilt * math.Pi / 180, nil
	}
	angle, err := weighing.TiltOf(o.raised, o.between)
	if err != nil {
		return 0, fmt.Errorf("raised and between: %w", err)
	}
	return angle, nil
}

// runWeigh works out a weigh-in from a whole document or a model alone, or prints a blank form. Its status is that of assess: 0 when the balance
// point stays in its window for the whole burn, 1 when it does not or that is unknown.
func runWeigh(_ context.Context, args []string, std streams) (int, error) {
	set := flag.NewFlagSet("pitgate weigh", flag.ContinueOnError)
	set.SetOutput(std.err)
	var options weighFlags
	set.BoolVar(&options.json, "json", false, "write the weigh-in as JSON")
	set.BoolVar(&options.form, "form", false, "print a blank weigh-in form instead")
	set.StringVar(&options.tilted, "tilted", "", "second document with the readings of the tilted model, for the height of its balance point")
	set.Float64Var(&options.tilt, "tilt", 0, "nose-up angle of the tilted model, degrees")
	set.Float64Var(&options.tiltedSpread, "tilt-spread", 0.5, "one standard deviation of that angle, degrees")
	set.Float64Var(&options.raised, "raised", 0, "instead of the angle: by how much the front support was raised, metres")
	set.Float64Var(&options.between, "between", 0, "distance of the front and the rear supports, metres, with --raised")
	files, err := filesAndFlags(set, args)
	switch {
	case err != nil:
		return 0, err
	case options.form && len(files) == 0:
		return 0, report.WeighingForm(std.out)
	case len(files) != 1:
		return 0, errors.New("give one document: pitgate weigh FILE [--json], or pitgate weigh --form; - reads standard input")
	}
	done, err := weigh(files[0], options, std.in)
	if err != nil {
		return tellFaults(std.err, err)
	}
	return weighStatus(done), writeWeighing(std.out, done, options.json)
}

// weighStatus is 0 for a weigh-in that holds, a tight one included.
func weighStatus(w report.Weighing) int {
	if w.Verdict == assess.VerdictHolds || w.Verdict == assess.VerdictTight {
		return report.ExitHolds
	}
	return report.ExitDecision
}

func writeWeighing(w io.Writer, done report.Weighing, asJSON bool) error {
	if !asJSON {
		return done.Text(w)
	}
	encoder := json.NewEncoder(w)
	encoder.SetIndent("", "  ")
	return encoder.Encode(done)
}

// weigh reads, computes and works out.
func weigh(name string, options weighFlags, in io.Reader) (report.Weighing, error) {
	input, alone, err := weighInput(name, in)
	if err != nil {
		return report.Weighing{}, err
	}
	computed, err := document.Assess(input)
	if err != nil {
		return report.Weighing{}, err
	}
	tilted, err := options.second()
	if err != nil {
		return report.Weighing{}, err
	}
	done, err := report.NewWeighing(input, computed, tilted)
	return done, inModel(err, alone)
}

// second reads the weighing of the tilted model, when there is one.
func (o weighFlags) second() (*report.Tilted, error) {
	if o.tilted == "" {
		return nil, nil
	}
	input, _, err := weighInput(o.tilted, strings.NewReader(""))
	if err != nil {
		return nil, fmt.Errorf("tilted weighing: %w", err)
	}
	if input.Model == nil || input.Model.Mass == nil {
		return nil, errors.New("tilted weighing: model.mass.scaleReadings is missing")
	}
	angle, err := o.angle()
	if err != nil {
		return nil, err
	}
	return &report.Tilted{Readings: report.Readings(input.Model.Mass), Angle: angle, Spread: o.tiltedSpread * math.Pi / 180}, nil
}

// weighInput reads a whole document, or a model alone, which is one whose members are those of a model.
func weighInput(name string, in io.Reader) (input assess.Input, alone bool, err error) {
	if name != "-" {
		file, err := os.Open(name)
		if err != nil {
			return assess.Input{}, false, err
		}
		defer func() { _ = file.Close() }() // it was only read
		in = file
	}
	text, err := io.ReadAll(io.LimitReader(in, document.MaximumBytes+1))
	if err != nil {
		return assess.Input{}, false, err
	}
	if !modelAlone(text) {
		input, err = document.Decode(text)
		return input, false, err
	}
	model, err := document.DecodeModel(text)
	return assess.Input{Model: &model}, true, err
}

// modelAlone reports whether a document is a model description by itself.
func modelAlone(text []byte) bool {
	var members struct {
		Surfaces, Mass, Bodies json.RawMessage
		Model                  json.RawMessage
	}
	if json.Unmarshal(text, &members) != nil {
		return false
	}
	return members.Model == nil && (members.Surfaces != nil || members.Mass != nil || members.Bodies != nil)
}

// inModel names fields from inside the model when the document was one alone.
func inModel(err error, alone bool) error {
	var field *weighing.FieldError
	if !alone || !errors.As(err, &field) {
		return err
	}
	inner := *field
	inner.List = strings.TrimPrefix(inner.List, "model.")
	return &inner
}

// tellFaults names every fault of a document; any other error is handed on.
func tellFaults(w io.Writer, err error) (int, error) {
	var faults document.Errors
	var field *weighing.FieldError
	switch {
	case errors.As(err, &faults):
		for _, f := range faults {
			tell(w, "%s: %s\n", f.Path, f.Message)
		}
	case errors.As(err, &field):
		tell(w, "%s\n", field.Error())
	default:
		return 0, err
	}
	return exitUsage, nil
}
