# Plan: what wall to leave before the tool touches wood, and what goes with it.
#
# Which ids exist: plan-result- (a result by its key: wall floor oval spigot depth speed road tenth tension rim bars).

plan-title = Plan

## Results

plan-result-wall = Leave this wall
plan-result-floor = Floor to leave
plan-result-oval = Oval by about
plan-result-spigot = { -spigot(case: "start") } to cut
plan-result-depth = Depth to drill
plan-result-speed = Not above about
plan-result-road = The whole road
plan-result-tenth = A tenth of the diameter
plan-result-tension = Which side is left in tension
plan-result-rim = The rim when dry
plan-result-bars = Reach of the bar

plan-larger = The larger of the two below, rounded up
plan-none-wall = No wall can be reckoned until the figures below are possible.
plan-none-spigot = These jaws do not open so far
plan-floor-note = Above the foot line
plan-up-to = up to { $high }
plan-oval-split = Expect a split
plan-oval-rounder = The pith in the bore keeps it rounder
plan-oval-unsaid = Where the pith lies is not said
plan-oval-side = Longer along the grain
plan-jaws-named = For { $jaws }
plan-jaws-said = For a circle of { $circle }
plan-jaws-assumed = Jaws not said: { $circle } assumed
plan-depth-note = From the faced rim, to the bit’s point
plan-speed-note = Start at the lowest
plan-speed-unsaid = The log’s diameter is not said
plan-speed-log-small = The log cannot be smaller than the piece
plan-speed-true = In True no figure is given: an oval and dried piece is judged by eye and ear
plan-speed-flawed = No figure: { $flaw } noted
plan-weeks = weeks
plan-weeks-range = { $low } to { $high } weeks
plan-road-note = A guess; the scale will tell

## Results in words

plan-lines = Also
plan-tenth-thin = { $tenth } is too thin here: the sum asks for { $sum }.
plan-tenth-right = { $tenth } is about right here: the sum asks for { $sum }.
plan-tenth-thick = { $tenth } is thicker than needed here: the sum asks for { $sum }.
plan-tension-none = Neither: with the pith outside the wood moves freely as it dries.
plan-tension-side = Neither: side grain moves freely as it dries.
plan-tension-outside = The outside; the bore is pressed together. Floor and { -spigot } hold the pith and are what cracks first.
plan-tension-bore = The bore; the outside is pressed together.
plan-tension-wall = Not to be said with the pith in the wall.
plan-tension-unsaid = Not to be said until it is known where the pith lies.
plan-rim = About { $along } along the grain and { $across } across. Its sides leave the plane by about { $rise }, with the pith at the foot.
plan-bar-of = { $bar } bar
plan-bar-usual = { $bar }: about { $times } times, usual
plan-bar-long = { $bar }: about { $times } times, light cuts
plan-bar-change = { $bar }: about { $times } times, change it

## What would change

plan-others = What would change
plan-other = { $what }: leave { $leave } (the sum { $sum }); { $oval }.
plan-other-bore = With the pith in the bore
plan-other-outside = With the pith outside
plan-other-size = At { $diameter } across
plan-other-about = oval by about { $oval }
plan-other-up-to = oval by up to { $oval }

## Sums

plan-wall-sum = { $finish } to finish + { $oval } for the oval + { $hand } in hand + { $shrinks } shrinks away = { $total }
plan-part-finish = To finish
plan-part-oval = For the oval
plan-part-hand = In hand
plan-part-shrinks = Shrinks away
plan-part-sum = The sum
plan-part-practice = Practice
plan-part-leave = Leave, rounded up
plan-part-cut = Cut, rounded up
plan-wall-why = The larger of the two is advised. Knots, spiral grain and an uneven wall are extra.
plan-hand-why = In hand: { $margin } for bumps and cleaning up, { $remount } for remounting. Both are set in Shop.
plan-wall-split = The pith is in the wall: expect a split. There is no figure for its shape; the wall is the most that any place of the pith asks for.
plan-dried-to = Dried to { $moisture }.
plan-wall-source = The sum: geometry of a ring that shrinks, with published shrinkage. The practice: common practice, no source.
plan-shrinkage-source = Geometry of rings that shrink, with published shrinkage of the wood.
plan-practice-source = Common practice, no source.
plan-floor-sum = Wall { $wall } + { $more } = { $floor }
plan-floor-why = Above the foot line; the { -spigot } comes on top. A thicker floor dries long after the wall.
plan-percent = { $value } %
plan-oval-across = Shrinks across the rings
plan-oval-along = Shrinks along the rings
plan-oval-why = Wood shrinks more along its rings than across them: the round goes oval, longest towards the pith.
plan-oval-why-side = It shrinks hardly at all along the grain and most across it: the round goes oval, longest along the grain.
plan-oval-why-unsaid = With the pith far outside it goes this oval; with the pith in the bore it stays rounder.
plan-oval-why-rounder = A ring round its pith cannot go oval freely. In the middle it stays round; the further off the pith, the more oval.
plan-oval-why-split = With the pith in the wall there is no smooth shape, and no figure.
plan-oval-honest = A piece can move a fifth more or less than this says.
plan-spigot-sum = { $jaws } for the jaws + { $taken } for remounting and re-cutting + { $shrinks } shrinks away = { $total }
plan-spigot-why = The larger of the two is advised. It says what size still reaches the jaws when dry and re-cut, never how well it holds.
plan-depth-sum = Rim to foot line { $height }, less floor { $floor } = { $depth }
plan-depth-why = Face the rim first. Measure from the faced rim to the bit’s point, not to its shoulder.
plan-speed-sum = Not above about { $speed } for a log { $log } across. Start at the lowest.
plan-speed-why = The trade’s rule for wet wood out of balance: 6000 over the diameter in inches, from the log and not from the piece. It is an upper bound and no advice to go there.
plan-speed-defer = Lathe, chuck and tool makers’ limits come first. It says nothing about this log: look it over, and stand out of the line of the wood.
plan-road-sum = About { $weeks } from the bag to the heated room
plan-road-why = From the days set in Shop and the usual weeks in the bag. Wood, wall and weather move it far: it ends when the weight stays put, not on a day.
plan-bars-reach = { $reach } from the faced rim to the floor
plan-bar-bends = bends { $bend }
plan-bars-why = With the rest at the rim; every bit further back counts. Up to 7 times its diameter is usual, to 10 asks for light cuts, above that a thicker bar. Bending is for a steady cut of 100 newtons on a round steel bar; a catch is several times that.
plan-tenth-why = The rule is one for bowls. What is needed grows more slowly than the diameter: the rule is too thin for small pieces and too thick for large end-grain ones.
plan-tension-why = What drying leaves behind when all of it is dry. While it dries the outside is drier than the core, which comes on top.
plan-tension-source = Elastic ring round its pith; no crack is foretold or ruled out.
plan-rim-why = Sawn flat, as bowl blanks are. With the rim towards the bark its sides stand high, towards the pith low.

## Inputs

plan-what = What it is
plan-size = Size
plan-lathe = Lathe and house
plan-finish-wall = Finish wall
plan-jaws-circle = Jaws, smallest circle
plan-jaws-none = No jaws listed in Shop yet
plan-bars = Bars
plan-bars-none = No bars listed in Shop yet
plan-moisture = Settles at
plan-place = Where it will live
plan-place-house = House, { $moisture }
plan-place-shop = Shop, { $moisture }
plan-place-own = Own figure
plan-moisture-usual = The house as usual
plan-moisture-house = The house as last read
plan-moisture-shop = The shop as last read
plan-not-said = Not said
plan-assumed = Assumed
plan-as-usual = As usual
plan-set = Set
plan-usual = Back to the usual
plan-key-back = Delete the last digit
plan-key-whole = whole

## What is impossible

plan-fault-hollow = A wall of { $wall } in a radius of { $radius } leaves no hollow. Make the finish wall thinner or the piece wider.
plan-fault-depth = A floor of { $floor } takes the whole height. Make the piece higher.
plan-fault-pith-outside = Outside, the pith lies more than { $by } from the axis. Change the distance or where it lies.
plan-fault-pith-bore = In the bore, the pith lies less than { $by } from the axis. Change the distance or where it lies.
plan-fault-pith-wall = In the wall, the pith lies between { $from } and { $to } from the axis. Change the distance or where it lies.
plan-fault-jaws = The { -spigot } would be larger than these jaws open: { $open }. Take larger jaws or a glue block.
plan-fault-log = The log cannot be smaller than the piece, { $diameter } across. Check both.

## Drawing

plan-from-above = From above
plan-legend-rough = Rough
plan-legend-dried = Dried
plan-drawn = Half section: { $diameter } across, { $height } high, wall { $wall }, floor { $floor }.
plan-drawn-dried = Dried, it is drawn in dashes inside it.
plan-drawn-no-dried = How it dries is not drawn: the pith is in the wall.
plan-drawn-nothing = Nothing is drawn until the figures are possible.
plan-drawn-ring = Seen from above: rough { $diameter } across, dried { $longest } by { $shortest }.

## What it becomes

plan-cautions = Read all cautions
plan-start = Start this piece
plan-started = { $mark } started
plan-use = Use for this piece
plan-written = Plan written to { $mark }
plan-writes = What is written
plan-writes-none = The piece says all of this already.
plan-afresh = Start afresh
plan-afresh-said = Plan started afresh
