# Looking over, measuring the oval, truing; and finishing.
#
# Which ids exist: trueup-answer- (CrackAnswer), trueup-about- (TrueDecision), trueup-next- (the button below).
# Nothing here clears a piece to spin, and filling never does. No speed is shown.

trueup-title = True-up
trueup-any-crack = Any crack?
trueup-crack-how = Dry, under a low lamp. Tap it: a dull or buzzing note is a crack you have not found yet.
trueup-undecided = Not decided
trueup-answer-none = None that I can see or hear.
trueup-answer-hairline = Fine, on the surface, not at the rim.
trueup-answer-rim-or-floor = From the rim into the wall, or across the floor.
trueup-answered = Answered { $day }
trueup-note-crack = Note the crack
trueup-do-not-spin = Do not spin it. A crack at the rim or across the floor can open all at once.
trueup-do-not-spin-through = Do not spin it. A crack goes through the wall.
trueup-do-not-spin-floor = Do not spin it. There is a crack in the floor.
trueup-filling = Glue or filling does not give the strength back.
trueup-hairline = If you are in doubt about a crack, do not spin it.

## The oval

trueup-oval = The oval
trueup-oval-sheet = Measure the oval
trueup-oval-sheet-at = Measure station { $n }
trueup-oval-how = Turn it in the { -callipers } until you have the most, then the least.
trueup-longest = Longest diameter
trueup-shortest = Shortest diameter
trueup-more = Another station, or more readings
trueup-record = Record
trueup-swapped-title = Were the two swapped?
trueup-swapped-text = The shortest, { $shortest }, is more than the longest, { $longest }.
trueup-swapped-yes = Yes, swap them
trueup-swapped-no = No, type again
trueup-by = { $longest } by { $shortest }
trueup-about = about { $by }
trueup-place-widest = Station { $n }, the widest
trueup-drawing-label = { $station }, seen from the mouth.
trueup-drawing-turned = As turned { $size }.
trueup-drawing-expected = Expected about { $by }.
trueup-drawing-dried = Dried { $by }.
trueup-drawing-left = Wall that can be trued { $wall }.
trueup-most-left = Largest even wall that can be trued
trueup-most-expected = Even wall to be expected, about
trueup-legend-turned = As turned
trueup-legend-reckoned = Expected
trueup-legend-dried = Dried
trueup-legend-finish = Round, that fits in
trueup-difference = { $station }: { $by }, oval by { $off }
trueup-difference-about = { $station }: about { $by }, oval by { $off }
trueup-expected-sum = Not measured yet: this is what the figures of the wood leave.
trueup-no-wall = No wall was read here, so what can be trued is not known.
trueup-not-measured-here = Not measured here.
trueup-basis-two = From longest and shortest diameter.
trueup-basis-diameters = From { $n } diameters.
trueup-basis-centre = From { $n } distances from the { -centre } mark.
trueup-basis-own = Not measured here: taken to have shrunk as the station that was.
trueup-basis-widest = Not measured here: taken to be as oval as the widest place.
trueup-wall-green = { $n ->
    [one] Wall { $wall } as read green, shrunk with the wood.
   *[other] Thinnest wall of { $n } readings { $wall } as read green, shrunk with the wood.
}
trueup-wall-dry = { $n ->
    [one] Wall { $wall }, read dry.
   *[other] Thinnest wall of { $n } readings { $wall }, read dry.
}
trueup-fault-few = These readings are too few, or too close together, for an outline. Measure more places, evenly round.
trueup-fault-figures = Diameters and wall do not go together here. Check what was recorded.
trueup-finish-wall = Finish wall wanted: { $wall }
trueup-spare = { $by } to spare
trueup-tight = tight, { $by } over
trueup-short = { $by } short
trueup-places = Station by station
trueup-row = { $size }. Leaves { $wall }.
trueup-row-no-wall = { $size }. No wall read.
trueup-row-pith = pith in the wall
trueup-row-fault = readings make no outline

## What the sums rest on

trueup-expected-basis = Expected at about { $moisture }, where wood settles in the house. { $whose }
trueup-pith-unknown = Where the pith lies is not said: taken as far outside, which is the most oval.
trueup-pith-outside = Pith outside: taken as far away, which is the most oval.
trueup-pith-outside-said = Pith outside, at the distance you gave.
trueup-pith-bore = Pith in the bore: a closed ring stays rounder than this. How much rounder takes its distance from the axis.
trueup-pith-bore-said = Where the pith lies in the bore the wall is a closed ring and stays rounder; its outside is in tension.
trueup-pith-in-wall = The pith is in the wall: expect a split there. No outline can be told beforehand.
trueup-side-grain = Side grain: longest along the grain, shortest across it.
trueup-rim = The rim also leaves its plane, by about { $by } at the two cross-grain sides.
trueup-moved-as = Station { $n } moved about as the table says: oval by { $off }, about { $expected } expected.
trueup-moved-more = Station { $n } moved far more than the table: oval by { $off }, about { $expected } expected.
trueup-moved-less = Station { $n } moved far less than the table: oval by { $off }, about { $expected } expected. The pith may lie in the bore.
trueup-own = This piece shrank { $radial } and { $tangential }, table { $tableradial } and { $tabletangential }: across and along the rings, to bone dry, if it is at about { $moisture } now.
trueup-doubt = Up to { $by } is taken off: with the pith near, { -callipers } see too little of the oval. Distances from the { -centre } mark would tell.
trueup-axis = One axis for all stations. Keep the old { -centre } mark: 1 mm off it can cost 1.7 mm of wall.
trueup-axis-off = The best axis lies { $off } from the { -centre } mark, towards { $towards } on the clock. It counts for all stations.
trueup-not-counted = Not counted: bumps at knots, spiral grain, a tilted remount.
trueup-lacks-wall = No wall was read
trueup-lacks-wall-note = Read it round at the stations and this page tells what can be trued.
trueup-lacks-size = The size as turned is not recorded
trueup-lacks-size-note = Without it nothing can be expected, and how far it moved is not known. What you measure now counts all the same.

## More readings

trueup-where-sheet = What do you measure?
trueup-where-station = Which station?
trueup-where-go = Go on
trueup-way-two = Longest and shortest
trueup-way-two-note = Two readings; quick.
trueup-way-diameters-4 = 4 diameters
trueup-way-diameters-4-note = Tells where the longest lies.
trueup-way-diameters-8 = 8 diameters
trueup-way-diameters-8-note = The same, finer.
trueup-way-centre-8 = 8 from the { -centre } mark
trueup-way-centre-8-note = On the lathe, with a pointer: also sees an egg shape.
trueup-way-centre-16 = 16 from the { -centre } mark
trueup-way-centre-16-note = The same, finer; for a knot or a flat.
trueup-round-sheet = Station { $n }, { $how ->
    [from-centre] from the { -centre } mark
   *[diameters] diameters
}
trueup-round-how = { $how ->
    [from-centre] Place on the clock, seen from the mouth; 12:00 is the pencil line.
   *[diameters] Across from this place on the clock, seen from the mouth; 12:00 is the pencil line.
}
trueup-round-label = At { $place }, reading { $i } of { $count }
trueup-round-so-far = Readings so far
trueup-round-chip = { $place } · { $value }
trueup-round-next = Next reading
trueup-said-round = station { $n }, { $count } readings

## Spigot

trueup-spigot-label = Round size once trued
trueup-spigot-sheet = Measure the { -spigot }
trueup-spigot-how = Once it is round again.
trueup-spigot-expected = Cut { $cut }: about { $longest } by { $shortest } now, about { $round } once round: { $fits }.
trueup-spigot-unknown = What size it was cut is not recorded, so what it is now is not known. Measure it once it is round.
trueup-spigot-pith = The pith runs through it: it stays rounder, but is likely to check.
trueup-fits = Fits the jaws
trueup-too-small = Too small for the jaws
trueup-too-large = Too large for the jaws
trueup-jaws-range = { $name }: { $range }.
trueup-jaws-unlisted = “{ $name }” is not among the jaws of Shop, { $smallest } assumed.
trueup-jaws-assumed = Jaws not said, { $smallest } assumed.

## Decision

trueup-decision = Decision
trueup-decision-label = What I decided
trueup-advice-none = No round wall is left at station { $n }. Leave it oval, or scrap it.
trueup-advice-short = Station { $n } is { $stands }. Finish at { $wall } there, leave the rim oval, or scrap it.
trueup-advice-tight = Station { $n } is { $stands }. Mount it on the old { -centre } mark and measure after every cut.
trueup-advice-spare = The tightest is station { $n }: { $stands }. The sums see the oval and nothing else.
trueup-advice-unknown = Measured, but no wall was read: what can be trued is not known.
trueup-advice-pith = The pith is in the wall: look for a split there first.
trueup-decision-sheet = Go, fill or scrap?
trueup-not-decided = Not decided
trueup-about-go = True it and finish it.
trueup-about-fill = Fill it, then decide again. Filling does not clear it.
trueup-about-scrap = Say next how it was lost.
trueup-reason = Why
trueup-day-reason = { $day }: { $reason }
trueup-next-oval = Measure the oval
trueup-next-decide = Decide
trueup-next-fill = See the flaws
trueup-next-scrap = How it ended
trueup-next-finish = Next stage: Finish

trueup-said-cracks = { $mark }: cracks. { $answer }
trueup-said-oval = { $mark }: oval { $what }
trueup-said-spigot = { $mark }: { -spigot } { $what }
trueup-said-decided = { $mark }: { $what }

## Finish

finish-title = Finish
finish-intro = Fill in what you like.
finish-walls = Final wall
finish-read = { $n } of { $all } read
finish-not-recorded = Not recorded
finish-weight = Weight when finished
finish-signed = Signed
finish-photos = Photos of it finished
finish-signed-sheet = How is it signed?
finish-signed-how = Wood, year, mark: the number on the { -spigot } went in the shavings.
finish-signed-label = Signed with
finish-signed-wanted = Nothing was typed. Type what stands on it, or close this.
finish-grits = Grits
finish-grits-add = Add grits
finish-grits-sheet = Sanded with
finish-grits-own = Other, or in your own words
finish-coats = Coats
finish-coats-add = Add a coat
finish-coat-sheet = A coat
finish-coat-label = What went on
finish-coat-hint = oil, first coat
finish-coat-when = When?
finish-coat-wanted = Nothing was typed. Type what went on, for example oil, or close this.
finish-finished = Finished
finish-ask-title = Is { $mark } finished?
finish-ask-text = Not recorded: { $missing }. That is fine; it can be added later too.
finish-ask-yes = Finished
finish-ask-no = Go on recording
finish-lacks-walls = final wall
finish-lacks-grits = grits
finish-lacks-coats = coats
finish-lacks-size = size
finish-lacks-weight = weight
finish-lacks-signed = signature

finish-said-grits = { $mark }: sanded, { $what }
finish-said-coat = { $mark }: coat, { $what }
finish-said-signed = { $mark }: signed, { $what }
