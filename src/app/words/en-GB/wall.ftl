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
wall-short-within = { $n ->
    [one] Station { $which } is
   *[other] Stations { $which } are
} below the wall wanted, within what counts as even. { $wall } is the most that an even wall can still be all the way down.
wall-floor-left = floor left above the foot line, { $wanted } wanted
wall-floor-left-rod = floor left above the foot line, { $wanted } wanted, rod { $rod }

## Volume and weight

wall-measures = Volume and weight
wall-wood-volume = Wood, { -spigot } not counted
wall-holds = Holds to the rim
wall-centre = Centre of mass
wall-volume-cm3 = { $n } cm³
wall-volume-ml = { $n } ml
wall-volume-cubic-inches = { $n } cu in
wall-weight-now = Expected weight, green
wall-weight-was = Expected weight when green
wall-weight-whose-both = Basic density and green moisture: { $both }.
wall-weight-whose = Basic density: { $density }. Green moisture: { $moisture }.
wall-whose-mean = mean of { $wood }
wall-whose-own = your own figure
wall-whose-stand-in = { $wood } standing in
wall-whose-hardwood = middle of all hardwoods
wall-whose-softwood = middle of all softwoods
wall-weight-title = Expected weight, green
wall-weight-sum = { $volume } of wood at { $density } kg of dry wood to the m³, and { $moisture } of that again in water, come to about { $weight }.
wall-weight-source = A piece lies up to about a tenth either side of its wood's mean density (from memory): hence the range. A weight on the scale says more.
wall-measures-dried = By the diameters and walls as they were measured. It has dried: only the scale tells its weight now.
wall-lacks-height = Volume and weight need the height from rim to foot line.
wall-lacks-details = Enter the height
wall-lacks-diameters = { $n ->
    [0] Volume and weight need outside diameters at three stations; none is measured. The shape picked is only a picture.
   *[other] Volume and weight need outside diameters at three stations; { $n } of them measured. The shape picked is only a picture.
}
wall-lacks-walls = { $n ->
    [0] Volume and weight need the wall at two stations; none is read as a number.
   *[other] Volume and weight need the wall at two stations; { $n } is read as a number.
}
wall-lacks-floor = Volume and weight need the floor: the depth rod tells what is left of it.
wall-lacks-floor-way = Measure the floor
wall-shape-tight = The wall at { $station } is thicker than the curve of the outside allows there, so no volume or weight can be told. Read that wall again, or measure more diameters there.
wall-shape-no-bore = The wall at { $station } is as thick as the piece's radius there and leaves no hollow. Check that wall and the diameter.
wall-shape-through = By these figures the hollow comes through the outside near { $station }. Check the walls and the diameters there.
wall-shape-steep = The outside turns too nearly square to the axis at { $station } for these sums. Leave that diameter out.
wall-shape-below-foot = By the height entered { $station } lies below the foot line. Check the height, or lay the stations out again.
wall-shape-closes = By these diameters the outside would close above the foot line. Measure one nearer the foot.
wall-shape-no-floor = By these figures the hollow goes through the foot line. Measure the depth again, and check the height.
wall-shape-range = Height, diameters or walls are past what these sums cover. Check them.

## What it means while it dries

wall-dry-title = What it means for drying
wall-dry-bag-little = In the bag { $spread } between thick and thin makes no great difference: it dries slowly enough for the thin places to wait for the thick ones.
wall-dry-bag-much = Even in the bag, with { $spread } between thick and thin, the thin places shrink well ahead of the thick ones. Take the heaviest down where you still can.
wall-dry-shelf-little = On an open shelf { $spread } between thick and thin adds little to what the drying surface pulls anyway.
wall-dry-shelf-much = On an open shelf { $spread } between thick and thin counts: thin places shrink first and pull against the thick ones. A bag is gentler.
wall-dry-cupboard-little = A drying cupboard pulls at least as hard as an open shelf; { $spread } between thick and thin adds little to that.
wall-dry-cupboard-much = A drying cupboard pulls at least as hard as an open shelf, and there { $spread } between thick and thin counts. A bag is gentler.
wall-dry-between-little = { $spread } between thick and thin counts for little, even on an open shelf.
wall-dry-between-much = { $method ->
    [paper] Paper lets
    [shavings] Shavings let
   *[wax] Wax on one side lets
} it dry more slowly than an open shelf and faster than a closed bag: { $spread } between thick and thin counts for something between the two.
wall-dry-alcohol = What uneven walls mean after soaking in alcohol has not been worked out. An even wall is never wrong.
wall-dry-past = The wettest part is over. Thick places still dry last: go by the weight.
wall-dry-sum-walls = Walls of { $thin } and { $thick }, reckoned as ash drying from green:
wall-dry-sum-bag = In a closed bag that loses 8 g a day they come up to { $points } points of moisture apart, { $strain } % of difference in shrinking. The surface shrinks { $face } % ahead of the middle.
wall-dry-sum-shelf = On an open shelf: { $points } points, { $strain } %. The surface shrinks { $face } % ahead of the middle.
wall-dry-sum-beyond = Walls as far apart as these are more than the drying model was asked about: it ends where the thickest is a little over twice the thinnest.
wall-dry-sum-both = Across the grain ash gives at about 0.7 % (from memory), wet wood that has time somewhat later. So both sayings hold: uneven walls crack, said of an open shelf; two millimetres either way make no great difference, said of a bag.
wall-dry-sum-source = From a drying model with usual figures, not from this piece; upper bounds. Nobody can tell from them whether a piece will crack.

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
wall-lay-out-text = The height is now { $height }: that makes { $n } stations at new depths. Readings so far stay in the diary under their station numbers. Diameters and flaws keep the depth at which they were noted; a diameter noted without one no longer counts.
wall-diameters-kept = Measured before the stations moved, and still counted: { $each }. Take one back in the diary.
wall-diameter-kept = { $diameter } at { $depth } down
wall-lay-out = Lay out the stations again
wall-said-laid-out = Stations laid out again
