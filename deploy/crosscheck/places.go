package main

import (
	"fmt"
	"math"
	"math/rand/v2"

	"pitgate/server/physics/field"
	"pitgate/server/physics/sun"
)

// placed is a field's plane at a datum with a place near it, and a place far away, with what the core makes of them.
type placed struct {
	Datum    field.Position `json:"datum"`
	Near     field.Position `json:"near"`
	Local    field.Local    `json:"local"`
	Back     field.Position `json:"back"`
	Far      field.Position `json:"far"`
	Short    field.Geodesic `json:"short"`
	Long     field.Geodesic `json:"long"`
	Azimuth  float64        `json:"azimuthRadians"`
	Distance float64        `json:"distanceMeters"`
	Along    field.Position `json:"along"`
}

// places returns 200 fields all over the earth: every fourth on the 180th meridian, every other fourth within two degrees of a pole.
func places() ([]placed, error) {
	r := rand.New(rand.NewPCG(17, 19))
	all := make([]placed, 200)
	for i := range all {
		p := &all[i]
		p.Datum = field.Position{Latitude: math.Asin(2*r.Float64() - 1), Longitude: math.Pi * (2*r.Float64() - 1), Height: 1500 * r.Float64()}
		switch i % 4 {
		case 1:
			p.Datum.Longitude = math.Copysign(math.Pi-1e-4*r.Float64(), p.Datum.Longitude)
		case 3:
			p.Datum.Latitude = math.Copysign(radians(88+2*r.Float64()), p.Datum.Latitude)
		}
		p.Azimuth, p.Distance = 2*math.Pi*r.Float64(), 2000*math.Sqrt(r.Float64())
		p.Far = field.Position{Latitude: math.Asin(2*r.Float64() - 1), Longitude: p.Datum.Longitude + radians(150*(2*r.Float64()-1))}
		p.Far.Longitude = math.Remainder(p.Far.Longitude, 2*math.Pi)
		if err := p.solve(); err != nil {
			return nil, fmt.Errorf("place %d: %w", i, err)
		}
	}
	return all, nil
}

// solve lets the core lay a place into the plane and take it back, and run geodesics to the near and the far place.
func (p *placed) solve() error {
	datum, err := field.NewDatum(p.Datum)
	if err != nil {
		return err
	}
	p.Near, _ = p.Datum.Along(p.Azimuth, p.Distance)
	p.Along, _ = p.Datum.Along(p.Azimuth, 1000*p.Distance)
	p.Local = datum.Local(p.Near)
	p.Back = datum.Position(p.Local)
	if p.Short, err = field.Between(p.Datum, p.Near); err != nil {
		return err
	}
	p.Long, err = field.Between(p.Datum, p.Far)
	return err
}

// shining is where the sun stands at a moment, and the day it belongs to.
type shining struct {
	Moment   float64      `json:"moment"`
	Place    sun.Place    `json:"place"`
	Position sun.Position `json:"position"`
	Day      sun.Daylight `json:"day"`
}

// suns returns 50 moments between 1960 and 2045 at places below 65 degrees of latitude.
func suns() ([]shining, error) {
	r := rand.New(rand.NewPCG(23, 29))
	all := make([]shining, 50)
	for i := range all {
		s := &all[i]
		s.Moment = math.Floor(-315619200 + 2682374400*r.Float64())
		s.Place = sun.Place{
			Latitude: radians(65 * (2*r.Float64() - 1)), Longitude: math.Pi * (2*r.Float64() - 1),
			Pressure: 95000 + 8000*r.Float64(), Temperature: 265 + 40*r.Float64(),
		}
		var err error
		if s.Position, err = sun.At(s.Moment, s.Place); err != nil {
			return nil, err
		}
		if s.Day, err = sun.Day(s.Moment, s.Place); err != nil {
			return nil, err
		}
	}
	return all, nil
}
