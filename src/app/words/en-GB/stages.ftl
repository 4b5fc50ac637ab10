# Stages, groups, ends, and the closed lists the trade thinks in. An id ends with the key of the list.

## Stages

stage-shape = Shape
stage-hollow = Hollow
stage-stabilise = Stabilise
stage-bag = Bag
stage-air = Air
stage-settle = Settle
stage-indoors = Indoors
stage-true = True
stage-finish = Finish

group-roughing = Roughing
group-stabilising = Stabilising
group-drying = Drying
group-finishing = Finishing

## What happens in a stage

stage-about-shape = Outside turned oversize, { -spigot } cut, { -centre } mark left, hole drilled to depth
stage-about-hollow = Mouth, shoulder, middle, floor, in short sections; an even wall
stage-about-stabilise = Knots, bark inclusions, pith and checks decided and treated
stage-about-bag = Closed bag, felt every two or three days, turned inside out when wet
stage-about-air = Neck open, about a month
stage-about-settle = Weighed until the weight stays put for about two months
stage-about-indoors = About two weeks in the heated room where it will live
stage-about-true = Looked over for cracks, { -spigot } re-cut, oval measured, trued
stage-about-finish = Final wall, sanded, reversed, finished, signed

## When a stage may be left: advice, never a lock

stage-leave-shape = Leave it when the hole is drilled and checked
stage-leave-hollow = Leave it when every section is at the wall wanted
stage-leave-stabilise = Leave it when every flaw is decided
stage-leave-bag = Leave it when there was nothing on the bag twice running
stage-leave-air = Leave it when the days have run
stage-leave-settle = Leave it when the weight is steady
stage-leave-indoors = Leave it when the days have run and the weight is steady
stage-leave-true = Leave it when it is trued
stage-leave-finish = Leave it when it is recorded

## Half-turned

half-turned = Half-turned on the lathe
half-turned-wrapped = Wrapped, back tomorrow

## Forms, grain, pith, outlines

form-vessel = vessel
form-hollow-form = hollow form
form-bowl = bowl
grain-end = end grain
grain-side = side grain
pith-bore = in the bore
pith-wall = in the wall
pith-outside = outside the piece
pith-unknown = don't know
outline-ball = Ball
outline-egg = Egg
outline-pear = Pear
outline-high-shoulder = High shoulder
outline-tall = Tall

## Drying methods

method-bag = Bag, turned
method-paper = Paper
method-shavings = Shavings
method-wax = Wax, shelf
method-cupboard = Cupboard
method-alcohol = Alcohol, wrapped
method-once-thin = Turned once, thin

## Answers and readings

bag-feel-wet = Wet
bag-feel-damp = Damp
bag-feel-nothing = Nothing
wall-feel-heavy = heavy
wall-feel-even = even
wall-feel-thin = thin
taken-callipers = { -callipers }
taken-fingers = fingers
taken-wire-gauge = wire gauge
taken-light = light
taken-depth-rod = depth rod
taken-cant-reach = can't reach

## Flaws

flaw-knot = knot
flaw-bark-inclusion = bark inclusion
flaw-pith = pith
flaw-check = check
flaw-ring-shake = ring shake
flaw-punky = punky
treatment-left = left
treatment-turn-away = turned away later
treatment-thin = superglue, thin
treatment-medium = superglue, medium
treatment-thick = superglue, thick
treatment-wax = wax
face-outside = outside
face-inside = inside
face-both = both faces
flaw-change-same = same
flaw-change-longer = longer
flaw-change-gone = gone
crack-none = None
crack-hairline = Hairline
crack-rim-or-floor = Rim or floor
true-go = Carry on
true-fill = Fill it first
true-scrap = Scrap it

## Weights

mass-change-glue = glue
mass-change-wax = wax
mass-change-recut = re-cut
mass-change-bark-lost = bark lost
mass-change-other = something else

## Rooms

room-shop = Shop
room-house = House

## Ends

end-finished = Finished
end-lost = Lost
end-given = Given away or sold unturned
end-left = Left as it is
end-cant-find = Can't find it

lost-where-rim = rim
lost-where-shoulder = shoulder
lost-where-wall = along the wall
lost-where-floor = floor or pith
lost-where-knot = beside a knot
lost-where-bark-inclusion = bark inclusion
lost-where-spigot = round the { -spigot } or foot
lost-where-through-side = through the side
lost-where-through-floor = through the floor
lost-where-unknown = don't know

lost-how-cracked-drying = cracked drying
lost-how-cracked-lathe = cracked on the lathe
lost-how-dig-in = { -dig-in }
lost-how-spigot-broke = { -spigot } broke or pulled out
lost-how-broke-remounting = broke in remounting
lost-how-too-oval = too oval or too thin to true
lost-how-spigot-small = { -spigot } too small
lost-how-mould = { -moulding } or stain too deep
lost-how-worm = worm
lost-how-rot = rot
lost-how-dropped = dropped
lost-how-spoiled = spoiled by glue or finish
lost-how-given-up = given up
lost-how-unknown = don't know

lost-why-wall-uneven = wall uneven
lost-why-floor-thick = floor thick
lost-why-pith = pith
lost-why-too-fast = dried too fast
lost-why-shut-too-long = shut up too long
lost-why-log-checked = log already checked
lost-why-moved-to-heat = moved to heat
lost-why-forgotten = forgotten
lost-why-wood-itself = the wood itself
lost-why-unknown = don't know
