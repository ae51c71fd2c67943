package report

import (
	"fmt"
	"io"
	"math"
	"strings"

	"pitgate/server/physics/weighing"
)

// Text writes a weigh-in in 80 columns. Its error is that of the writer.
func (w *Weighing) Text(to io.Writer) error {
	p := page{to: to}
	p.line("WEIGH-IN%*s", Width-len("WEIGH-IN"), "core "+w.CoreVersion)
	if w.InputDigest != "" {
		p.line("input %s", w.InputDigest)
	}
	p.rule()
	word := words[w.Verdict]
	p.line("%-9s%s", word, "Mass and balance")
	for _, reason := range w.Reasons {
		p.paragraph(indent, reason)
	}
	for _, missing := range w.Missing {
		p.paragraph(indent, "missing: "+missing)
	}
	p.scales(w)
	p.states(w)
	p.list(w)
	p.travel(w)
	p.ways(w)
	p.rule()
	for _, caution := range w.Cautions {
		p.paragraph("", caution)
	}
	return p.err
}

func (p *page) rule() { p.line("%s", strings.Repeat("-", Width)) }

func (p *page) heading(text string) {
	p.line("")
	p.line("%s", text)
}

// cut shortens a name to a column.
func cut(name string, width int) string {
	runes := []rune(name)
	if len(runes) <= width {
		return name
	}
	return string(runes[:width-1]) + "."
}

// place writes a coordinate that may be absent.
func place(value *float64, decimals int) string {
	if value == nil {
		return "-"
	}
	return fmt.Sprintf("%.*f", decimals, *value)
}

func (p *page) scales(w *Weighing) {
	if len(w.Supports) == 0 {
		return
	}
	p.heading("SCALES")
	p.line("%-19s%3s%9s%8s%9s%8s%8s%8s%7s", "support", "n", "shows kg", "tare", "net kg", "spread", "x m", "y m", "share")
	for i := range w.Supports {
		s := &w.Supports[i]
		name := s.Name
		if name == "" {
			name = fmt.Sprintf("scale %d", i+1)
		}
		p.line("%-19s%3d%9.3f%8.3f%9.3f%8.3f%8s%8s%6.1f%%", cut(name, 18), s.ReadingCount, s.MeanKg, s.TareKg, s.NetKg.Value, s.NetKg.Spread,
			place(s.XMeters, 3), place(s.YMeters, 3), 100*s.ShareRatio)
	}
	for _, note := range w.Notes {
		p.paragraph("  ", note)
	}
}

// states writes mass and balance point by every way they are known.
func (p *page) states(w *Weighing) {
	rows := []struct {
		name  string
		state *WeighedState
	}{{"from the scales", w.Scales}, {"as stated", w.Stated}, {"from the items", w.Listed}}
	if w.Scales == nil && w.Stated == nil && w.Listed == nil {
		return
	}
	p.heading("MASS AND BALANCE POINT, tanks empty (one standard deviation after +-)")
	p.line("%-17s%18s%21s%21s", "", "mass kg", "x aft of datum m", "y to the right m")
	for _, row := range rows {
		if row.state != nil {
			p.line("%-17s%18s%21s%21s", row.name, spreadText(row.state.MassKg, 3), spreadText(row.state.XMeters, 4), spreadText(row.state.YMeters, 4))
		}
	}
	if w.HeightMeters != nil {
		p.paragraph("", fmt.Sprintf("Height above the supports %s m: a degree nose-up would make it seem to balance %.1f mm further aft.",
			spreadText(w.HeightMeters, 4), 1000*weighing.TiltShift(w.HeightMeters.Value, math.Pi/180)))
	}
	p.lateral(w)
	if w.ScalesAgainstStated != nil {
		p.paragraph("", "Scales against what is stated: "+w.ScalesAgainstStated.Note)
	}
}

// lateral says by how much the model is heavy on one side.
func (p *page) lateral(w *Weighing) {
	if w.Scales == nil || w.Scales.YMeters == nil {
		return
	}
	y := w.Scales.YMeters
	side := "right"
	if y.Value < 0 {
		side = "left"
	}
	if math.Abs(y.Value) <= 2*y.Spread {
		p.paragraph("", "Side to side: level within two spreads.")
		return
	}
	p.paragraph("", fmt.Sprintf("Side to side: heavy on the %s; %.4f kg m on the other side would level it.", side, w.Scales.MassKg.Value*math.Abs(y.Value)))
}

func spreadText(f *Figure, decimals int) string {
	if f == nil {
		return "not known"
	}
	return fmt.Sprintf("%.*f +-%.*f", decimals, f.Value, decimals, f.Spread)
}

func (p *page) list(w *Weighing) {
	if len(w.items) == 0 {
		return
	}
	p.heading("ITEMS")
	p.line("%-34s%10s%9s%9s%9s%9s", "item", "mass kg", "x m", "y m", "z m", "")
	for i := range w.items {
		item := &w.items[i]
		movable := ""
		if item.Movable {
			movable = "movable"
		}
		p.line("%-34s%10.3f%9s%9s%9s%9s", cut(itemLabel(item, i), 33), item.Mass, place(item.X, 3), place(item.Y, 3), place(item.Z, 3), movable)
	}
	c := w.AgainstList
	if c == nil {
		return
	}
	p.paragraph("", "Against the weighed model: "+c.Note)
	if c.Agrees {
		p.paragraph("", "The list agrees within two spreads.")
	}
	for _, explanation := range c.Explanations {
		p.paragraph("  ", explanation)
	}
}

func itemLabel(item *weighing.Item, i int) string {
	if item.Name != "" {
		return item.Name
	}
	return fmt.Sprintf("item %d", i+1)
}

// shownPoints is about how many states of the fuel the table shows.
const shownPoints = 9

func (p *page) travel(w *Weighing) {
	if w.Travel == nil {
		return
	}
	p.heading("TRAVEL WITH FUEL (resting on mass and balance " + map[string]string{
		"stated": "as stated", "scales": "from the scales", "items": "from the items"}[w.Used] + ")")
	p.line("%10s%10s%12s%16s", "fuel kg", "mass kg", "x m", "static margin")
	points := w.Travel.Points
	step := max(1, (len(points)-1+shownPoints-2)/(shownPoints-1))
	for i := range points {
		if i%step != 0 && i != len(points)-1 {
			continue
		}
		margin := "-"
		if points[i].MarginRatio != nil {
			margin = fmt.Sprintf("%.1f %%", 100**points[i].MarginRatio)
		}
		p.line("%10.3f%10.3f%12.4f%16s", points[i].FuelKg, points[i].MassKg, points[i].XMeters, margin)
	}
	p.paragraph("", w.Travel.Note)
	p.drawing(w)
}

// drawing draws the travel inside its window on one line.
func (p *page) drawing(w *Weighing) {
	if w.Window == nil {
		return
	}
	low := math.Min(w.Window.ForwardXMeters, w.Travel.ForwardXMeters)
	high := math.Max(w.Window.NeutralXMeters, w.Travel.AftXMeters)
	margin := 0.04 * (high - low)
	low, high = low-margin, high+margin
	column := func(x float64) int { return int(math.Round((x - low) / (high - low) * (Width - 1))) }
	line := []rune(strings.Repeat(".", Width))
	for k := column(w.Travel.ForwardXMeters); k <= column(w.Travel.AftXMeters); k++ {
		line[k] = '='
	}
	line[column(w.Window.ForwardXMeters)], line[column(w.Window.AftXMeters)], line[column(w.Window.NeutralXMeters)] = '[', ']', 'N'
	last := len(w.Travel.Points) - 1
	line[column(w.Travel.Points[last].XMeters)] = 'e'
	line[column(w.Travel.Points[0].XMeters)] = 'F'
	p.line("")
	p.line("%s", string(line))
	marginAt := func(x float64) float64 { return 100 * (w.Window.NeutralXMeters - x) / w.Window.ChordMeters }
	p.paragraph("", fmt.Sprintf("Nose on the left. [ ] window %.4f to %.4f m (static margin %.1f to %.1f %% of the mean chord of %.3f m); N neutral point %.4f m; F full, = travel, e empty.",
		w.Window.ForwardXMeters, w.Window.AftXMeters, marginAt(w.Window.AftXMeters), marginAt(w.Window.ForwardXMeters), w.Window.ChordMeters,
		w.Window.NeutralXMeters))
}

func (p *page) ways(w *Weighing) {
	if len(w.Ballast)+len(w.Moves) == 0 {
		return
	}
	p.heading("WAYS INTO THE WINDOW, for the whole burn")
	p.wayTable("ballast at", w.Ballast)
	p.wayTable("or move", w.Moves)
}

func (p *page) wayTable(title string, list []Way) {
	if len(list) == 0 {
		return
	}
	p.line("%-30s%10s%10s%10s%9s%10s", title, "mass kg", "at x m", "to x m", "full", "empty")
	for i := range list {
		way := &list[i]
		if !way.Possible {
			p.line("%-30s%10s%10.3f", cut(way.Name, 29), "-", way.XMeters)
		} else {
			p.line("%-30s%10.3f%10.3f%10.3f%7.1f %%%8.1f %%", cut(way.Name, 29), *way.MassKg, way.XMeters, *way.ToXMeters,
				100**way.MarginFullRatio, 100**way.MarginEmptyRatio)
		}
		p.paragraph("    ", way.Note)
	}
}
