package metar

import (
	"slices"
	"strings"
)

// Sky is a word that stands for the cloud.
type Sky string

// Words for the cloud.
const (
	// NoSignificantCloud is NSC: no cloud of operational significance.
	NoSignificantCloud Sky = "NSC"
	// NoCloudDetected is NCD: an automatic station saw none.
	NoCloudDetected Sky = "NCD"
	// SkyClear is SKC: an observer saw none.
	SkyClear Sky = "SKC"
	// ClearBelow is CLR: an automatic station of North America saw none below 12000 ft (3658 m).
	ClearBelow Sky = "CLR"
)

// Amount is how much of the sky a layer covers.
type Amount string

// Amounts of cloud.
const (
	// Few is 1 to 2 eighths.
	Few Amount = "FEW"
	// Scattered is 3 to 4 eighths.
	Scattered Amount = "SCT"
	// Broken is 5 to 7 eighths.
	Broken Amount = "BKN"
	// Overcast is 8 eighths.
	Overcast Amount = "OVC"
	// Obscured is VV: the sky cannot be seen and the base is the vertical visibility.
	Obscured Amount = "VV"
	// UnknownAmount is given as slashes.
	UnknownAmount Amount = ""
)

// Cloud is one layer.
type Cloud struct {
	Amount     Amount
	Base       Value  // height over the aerodrome, m; for an obscured sky the vertical visibility
	Convective string // CB, TCU or empty
}

// layerAmounts are the amounts a layer can have.
var layerAmounts = []Amount{Few, Scattered, Broken, Overcast}

// Oktas returns the least and greatest number of eighths an amount stands for; both are zero when it is not known.
func (a Amount) Oktas() (least, most int) {
	switch a {
	case Few:
		return 1, 2
	case Scattered:
		return 3, 4
	case Broken:
		return 5, 7
	case Overcast, Obscured:
		return 8, 8
	case UnknownAmount:
	}
	return 0, 0
}

// readCloud takes a layer, a word that stands for the cloud, or slashes.
func readCloud(d *decoder, g group) (bool, error) {
	if slices.Contains([]Sky{NoSignificantCloud, NoCloudDetected, SkyClear, ClearBelow}, Sky(g.text)) {
		d.report.Sky = Sky(g.text)
		return true, nil
	}
	layer, isCloud := parseCloud(g.text)
	switch {
	case !isCloud:
	case layer == Cloud{}:
		d.report.CloudUnknown = true
	default:
		d.report.Clouds = append(d.report.Clouds, layer)
	}
	return isCloud, nil
}

// parseCloud reads amount, height in hundreds of feet and kind of convective cloud.
func parseCloud(text string) (Cloud, bool) {
	var layer Cloud
	rest, obscured := strings.CutPrefix(text, string(Obscured))
	if obscured {
		layer.Amount = Obscured
	} else if rest, obscured = layer.cutAmount(text); !obscured {
		return layer, false
	}
	if len(rest) < 3 {
		return layer, false
	}
	switch height := rest[:3]; {
	case allDigits(height):
		layer.Base = known(float64(number(height)) * metersPerHundredFeet)
	case !slashes(height, 3):
		return layer, false
	}
	layer.Convective = strings.TrimPrefix(rest[3:], "///")
	return layer, slices.Contains([]string{"", "CB", "TCU"}, layer.Convective)
}

// cutAmount takes the amount, or three slashes, off a text.
func (c *Cloud) cutAmount(text string) (rest string, found bool) {
	if len(text) < 3 {
		return "", false
	}
	amount := Amount(text[:3])
	if slices.Contains(layerAmounts, amount) {
		c.Amount = amount
		return text[3:], true
	}
	return text[3:], slashes(text[:3], 3)
}

// Ceiling returns the height, m, of the lowest layer of five eighths or more, or the vertical visibility. It is unknown when there is none,
// and when such a layer has no height.
func (r Report) Ceiling() Value {
	return r.lowest(func(c Cloud) bool { return c.Amount == Broken || c.Amount == Overcast || c.Amount == Obscured })
}

// LowestBase returns the height, m, of the lowest layer of any amount, or the vertical visibility.
func (r Report) LowestBase() Value {
	return r.lowest(func(Cloud) bool { return true })
}

// lowest returns the lowest known base of the layers that count.
func (r Report) lowest(counts func(Cloud) bool) Value {
	var least Value
	for _, layer := range r.Clouds {
		if counts(layer) && layer.Base.Known && (!least.Known || layer.Base.Number < least.Number) {
			least = layer.Base
		}
	}
	return least
}

// Convective reports whether a layer is cumulonimbus or towering cumulus.
func (r Report) Convective() bool {
	return slices.ContainsFunc(r.Clouds, func(c Cloud) bool { return c.Convective != "" })
}
