package footprint_test

import (
	"fmt"

	"pitgate/server/physics/field"
	"pitgate/server/physics/footprint"
	"pitgate/server/physics/weather"
)

// A square circuit at 50 m, the engine cut and the surfaces centred a second after the loss: the outline, the energy and a people line.
func ExamplePlan_Sample() {
	wind := footprint.Wind{Speed: 5, From: 4.2, Profile: weather.NewProfile(weather.OpenGrass, 10)}
	var corners []footprint.Waypoint
	for _, p := range []field.Point{{X: 0, Y: 0}, {X: 200, Y: 0}, {X: 200, Y: 200}, {X: 0, Y: 200}, {X: 0, Y: 0}} {
		corners = append(corners, footprint.Waypoint{Place: p, Height: 50, Speed: 32})
	}
	path, err := footprint.Along(corners, wind, 0.8)
	if err != nil {
		fmt.Println(err)
		return
	}
	plan := footprint.Plan{
		Loss: footprint.Loss{
			Action: footprint.CutNeutral, Delay: 1, Density: 1.2, Wind: wind,
			Model: footprint.Model{
				Mass: 12, Area: 0.65, Width: 2, CD0: 0.035, StoppedDrag: 0.01, InducedFactor: 0.069, CLMax: 1.1, LevelTime: 5, RunDown: 2,
			},
		},
		Path:   path,
		Spread: footprint.Spread{Speed: 3, Height: 5, Bank: 0.1, Delay: 0.3, WindSpeed: 1, WindFrom: 0.2, Drag: 0.1, GlideRatio: 0.1, Lift: 0.05},
	}
	cloud, err := plan.Sample()
	if err != nil {
		fmt.Println(err)
		return
	}
	outline, err := cloud.Outline(0.95)
	if err != nil {
		fmt.Println(err)
		return
	}
	ground := footprint.AnnexF()
	people := field.Line{{X: -60, Y: -150}, {X: 260, Y: -150}}
	hit, err := cloud.LineHit(people, 2, ground)
	if err != nil {
		fmt.Println(err)
		return
	}
	fmt.Printf("%d impacts, 95 %% of them in %.0f hectares at up to %.0f kJ\n", len(cloud.Impacts), outline.Area()/1e4, cloud.EnergyAt(0.95)/1000)
	fmt.Printf("people line: %.0f m of it inside, met by %.1f %%\n",
		footprint.LinesInside(outline, []field.Line{people})[0].Length, 100*hit.Share)
	// Output:
	// 1024 impacts, 95 % of them in 50 hectares at up to 9 kJ
	// people line: 320 m of it inside, met by 4.9 %
}
