package report

import (
	"fmt"
	"io"

	"pitgate/server/physics/assess"
)

// Rolling writes rolling tests in 80 columns: each with its friction and spread, then their mean. Its error is that of the writer.
func Rolling(w io.Writer, done assess.Rolled) error {
	p := page{to: w}
	p.line("ROLLING TESTS%*s", Width-len("ROLLING TESTS"), "core "+assess.Version)
	p.rule()
	p.line("%-34s%-24s%11s%11s", "test", "way", "friction", "spread")
	for i, test := range done.Tests {
		name := test.Name
		if name == "" {
			name = fmt.Sprintf("test %d", i+1)
		}
		p.line("%-34s%-24s%11s%11s", cut(name, 33), test.Way, place(test.FrictionRatio, 4), place(test.SpreadRatio, 4))
	}
	p.rule()
	p.line("%-58s%11s%11s", "mean of the tests, in place of the surface table", place(done.FrictionRatio, 4), place(done.SpreadRatio, 4))
	for _, missing := range done.Missing {
		p.paragraph(indent, "missing: "+missing)
	}
	if done.RestsOnEstimate {
		p.paragraph("", "Rests on an estimated value, which is not evidence.")
	}
	p.paragraph("", "Friction is resistance over normal force. The spread is one standard deviation; that of the mean is no less than the scatter of the tests. "+
		"It holds for the surface and the state in which the tests were made.")
	p.rule()
	for _, caution := range done.Cautions {
		p.paragraph("", caution)
	}
	return p.err
}
