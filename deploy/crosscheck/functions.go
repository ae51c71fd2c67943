package main

import (
	"math/rand/v2"

	"pitgate/server/physics/elementary"
	"pitgate/server/physics/weighing"
)

// sampled is one function of the core at some places.
type sampled struct {
	Name   string    `json:"name"`
	Places []float64 `json:"places"`
	Values []float64 `json:"values"`
}

// functions returns the elementary functions at random places of their useful range, and the Student factors.
func functions() []sampled {
	all := []sampled{
		sample("exp", -30, 30, elementary.Exp), sample("log", 1e-6, 100, elementary.Log), sample("log10", 1e-6, 100, elementary.Log10),
		sample("sin", -7, 7, elementary.Sin), sample("cos", -7, 7, elementary.Cos), sample("tan", -1.5, 1.5, elementary.Tan),
		sample("arctan", -20, 20, elementary.Atan), sample("sinh", -9, 9, elementary.Sinh), sample("cosh", -9, 9, elementary.Cosh),
		sample("tanh", -4, 4, elementary.Tanh), sample("arcsinh", -50, 50, elementary.Asinh),
	}
	student := sampled{Name: "student"}
	for v := 1; v <= 40; v++ {
		student.Places = append(student.Places, float64(v))
		student.Values = append(student.Values, weighing.StudentFactor(v))
	}
	return append(all, student)
}

// sample takes a function at places that are the same in every run.
func sample(name string, low, high float64, f func(float64) float64) sampled {
	r := rand.New(rand.NewPCG(11, 13))
	out := sampled{Name: name}
	for range 500 {
		x := low + (high-low)*r.Float64()
		out.Places, out.Values = append(out.Places, x), append(out.Values, f(x))
	}
	return out
}
