package report

import "io"

// WeighingForm writes a blank weigh-in form of one A4 page in 80 columns. Its error is that of the writer.
func WeighingForm(to io.Writer) error {
	_, err := io.WriteString(to, weighingForm)
	return err
}

const weighingForm = `WEIGH-IN FORM                                Model __________________ Rev. _____
Date ____________  Weighed by __________________  Witness ______________________

BEFORE  [ ] Complete as flown: packs, canopy, ballast, pilot. Tanks drained.
        [ ] Indoors, no draught. Scales warm, on a firm level bench, zeroed.
        [ ] Check mass of _____ kg on each scale: shows ______ / ______ / ______
        [ ] Datum: x = 0 at _____________________ ; x aft, y right, z up, in m.
LEVEL   [ ] Reference line level fore and aft, wings level; packing counts as
            tare. A degree of tilt moves the point by 1.7 % of its height.
READ    [ ] Wheels free to roll (brakes off, on plates), nothing leans or pulls.
        [ ] Read all scales at once, lift the model OFF, set it down, read
            again: three times. Write down every reading, the odd ones too.
PLACES  [ ] x of each support: plumb line to the bench, from the datum, to 1 mm.
            Wheels: under the axle. y from the plane of symmetry, left is minus.

 support        x m      y m   tare kg  reading 1  reading 2  reading 3  +- kg
 nose/tail   _______  _______  ________  _________  _________  _________  _____
 left        _______  _______  ________  _________  _________  _________  _____
 right       _______  _______  ________  _________  _________  _________  _____
 __________  _______  _______  ________  _________  _________  _________  _____

HEIGHT  (when wanted) Raise the nose support by h, 0.2 to 0.5 of the distance L
        of the supports, tanks empty; read all scales again in that attitude.
        h ________ m   L ________ m   angle = asin(h/L) _______ degrees +- _____
        nose/tail _________ kg   left _________ kg   right _________ kg

ITEMS   Weigh what can come off; x of its own balance point. M = can be moved.
 item                      mass kg      x m      y m      z m     M
 ______________________  _________  _______  _______  _______   [ ]
 ______________________  _________  _______  _______  _______   [ ]
 ______________________  _________  _______  _______  _______   [ ]
 ______________________  _________  _______  _______  _______   [ ]
 ______________________  _________  _______  _______  _______   [ ]
 ______________________  _________  _______  _______  _______   [ ]

TANKS   usable litres      x m      y m      z m    burns as no.   filled to
 main     ___________  _______  _______  _______     ____          ______ %
 ______   ___________  _______  _______  _______     ____          ______ %
        Fuel: 1 litre weighs _______ kg (weigh it; do not take it from a table).

BALLAST places:  __________________ x _______ m  holds at most _______ kg
                 __________________ x _______ m  holds at most _______ kg

SUM     scales together - tare = mass ________ kg
        sum of (net x place) / mass = balance point x ________ m   y ________ m

Signed ______________________________   Witness ______________________________
The form supports a decision and does not make it.
`
