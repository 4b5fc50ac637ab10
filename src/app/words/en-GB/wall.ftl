# Wall readings, their summary, the outline.

## Measuring

wall-title = Wall
wall-measure = Measure this section
wall-wanted-is = Wall wanted { $wall }
wall-wanted-short = Wanted
wall-finish = Finish
wall-drawing = The cut half, with its stations
wall-whole-round = Whole round

wall-station = Station { $n }
wall-the-station = station { $n }
wall-the-floor = the floor
wall-stations = Stations { $which }
wall-station-of = Station { $n } of { $count }
wall-station-at = { $station } at { $hour } o'clock
wall-at-line = 12 o'clock, the pencil line
wall-at-hour = { $hour } o'clock, seen from the mouth
wall-round-progress = Whole round, { $n } of { $count }
wall-depth = { $depth } down
wall-depth-source = { $depth } down, { $source }
wall-name-depth = { $name }, { $depth } down
wall-floor-note = above the foot line
wall-floor-short = F
wall-floor-lower = floor

wall-name-rim = rim
wall-name-under-rim = under the rim
wall-name-shoulder = shoulder
wall-name-upper-middle = upper middle
wall-name-middle = middle
wall-name-lower-middle = lower middle
wall-name-lower = lower wall
wall-name-above-corner = above the corner
wall-name-corner = corner

wall-even = even
wall-heavy-by = heavy by { $off }
wall-thin-by = thin by { $off }
wall-felt-heavy = heavy by feel
wall-felt-even = even by feel
wall-felt-thin = thin by feel
wall-when-how = { $when }, { $how }
wall-before = Before
wall-came-off = Came off

wall-keys-wall = Wall, square across
wall-keys-floor = Floor, above the foot line
wall-keys-rod = Rod, from rim to floor
wall-rod-meaning = The floor is { $height } less the rod.
wall-rod-impossible = A rod { $depth } deep leaves no floor in a piece { $height } high, or one past all sense. Check the depth, and the height under Details.
wall-floor-by-depth = Depth of rod
wall-floor-itself = Floor itself

wall-fewer = Keys
wall-whole = whole
wall-cant-reach = Can't reach
wall-status-none = One tap records and moves on.
wall-status-number = { $station }: { $number }, { $verdict }
wall-status = { $station }: { $verdict }
wall-said = { $station }: { $what }

wall-thicker-title = Thicker than before?
wall-thicker-text = { $now } now, { $before } before. Wood does not grow: hold the { -callipers } square and look again, or keep it.
wall-thick-title = { $now }: is that right?
wall-thick-text = That is more than three times the { $wanted } wanted here.
wall-keep = Keep
wall-again = Again

## Sheets

wall-section-title = Section in work
wall-section-label = Section in work: { $which }
wall-section-text = One to three stations. Each reading moves on to the next of them, then round again.
wall-taken-title = Measured how
wall-tool-callipers = { -callipers(case: "start") }
wall-tool-fingers = Fingers
wall-tool-wire-gauge = Wire gauge
wall-tool-light = Light
wall-tool-depth-rod = Depth rod
wall-tool-note-callipers = square across the wall
wall-tool-note-fingers = down to where they reach
wall-tool-note-wire-gauge = a bent wire with a known gap
wall-tool-note-light = through the wet wall
wall-places-title = Places round
wall-places-text = Seen from the mouth; 12 o'clock is the pencil line.
wall-places-1 = One place
wall-places-2 = Two places
wall-places-4 = Four places
wall-places-note-1 = at the pencil line
wall-places-note-2 = 12 and 6 o'clock
wall-places-note-4 = 12, 3, 6 and 9 o'clock
wall-places-hint-knot = A knot is here: read two or four places round.
wall-places-hint-dried = It has dried and moved: read two or four places round.
wall-round-hint = Every station is read. A whole round shows it as it is now.

## Summary

wall-thickest-less-thinnest = Thickest less thinnest
wall-read-of = { $n } of { $count } read
wall-bar-label = wanted { $wall }
wall-not-read = not read
wall-passed = passed, leave alone
wall-read-before = from before, measure again
wall-take-off = Take off
wall-take-off-order = from the mouth down
wall-take-about = about { $off }, then measure
wall-take-half = half of it, about { $off }, then measure
wall-take-a-little = a little, then measure
wall-nothing-off = Nothing comes off what was read.
wall-nothing-read = No readings yet. Measure a section: one tap a station.
wall-alone-thin = Leave { $station } alone, { $off } thin
wall-alone-passed = Leave { $station } alone: the wood below it is gone
wall-will-not-finish = { $station } will not finish at { $finish }
wall-will-not-finish-text = With what truing up takes, the wall there is too thin for that.
wall-short-title = { $n ->
    [one] Station { $which } is below the wall wanted
   *[other] Stations { $which } are below the wall wanted
}
wall-short-text = No cut puts wood back. An even wall all the way down keeps it whole better than a thick one with a thin place.
wall-take-best = Make { $wall } the wall wanted
wall-leave = Leave it
wall-said-wanted = Wall wanted { $wall }
wall-even-on-to = Even. On to { $stage }
wall-even-all = Even.
wall-even-finished = Even, at its final wall.
wall-on-to = On to { $stage }
wall-outline-link = Outline and stations

## Outline

wall-outline-title = Outline
wall-said-outline = Outline: { $shape }
wall-outline-size = { $diameter } across, { $height } from rim to foot line
wall-outline-size-usual = Drawn { $diameter } across, { $height } high until both are entered
wall-outline-pick = Shape
wall-diameters = Outside diameters
wall-diameters-text = Optional. Until one is measured it comes from the shape.
wall-measured = measured
wall-from-shape = from the shape
wall-back-to-shape = Back to the shape
wall-diameter-at = Diameter at station { $n }
wall-said-diameter = Station { $n }: { $what }
wall-stations-title = Stations
wall-stations-at = { $n } stations, { $depths } { $unit } below the rim
wall-stations-usual = { $n } stations. Their depths follow once the height is entered.
wall-lay-out-text = The height is now { $height }: that makes { $n } stations at new depths. Readings so far stay in the diary under their station numbers.
wall-lay-out = Lay out the stations again
wall-said-laid-out = Stations laid out again
