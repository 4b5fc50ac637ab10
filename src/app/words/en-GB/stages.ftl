# Stages, groups, ends, and the closed lists the trade thinks in.
#
# Which ids exist: a prefix and the stable key of each value (the `key()` of the enum in the piece crate).
#   stage-, stage-about-, stage-leave-, stage-in-words- ($day)   Stage
#   group-                                                       Group
#   method-, method-in-words- ($day)                             Method
#   rhythm-                                                      RhythmOf
#   form-  grain-  pith-  outline-                               Form, Grain, Pith, Outline
#   feel-                                                        BagFeel and WallFeel
#   taken-                                                       Taken (small letter: it follows a number)
#   flaw-kind-  treatment-  face-  flaw-change-                  FlawKind, Treatment, Face, FlawChange
#   crack-answer-  true-decision-                                CrackAnswer, TrueDecision
#   mass-change-  room-                                          MassChange, Room
#   lost-where-  lost-how-  lost-why-                            LostWhere, LostHow, LostWhy
#   end-                                                         End: finished, lost, given-away, left-as-is, cant-find
#   detail-                                                      DetailField, its key with - for _
# state-: what else a piece can be (paused, not found, deleted...). half-turned stands beside it.
# All but taken- begin with a capital, for buttons and lists; inside a sentence lower the first letter: none is a name.

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

## Where a piece is, in words. $day is the day of the stage.

stage-in-words-shape = Being shaped, day { $day }
stage-in-words-hollow = Being hollowed, day { $day }
stage-in-words-stabilise = Flaws being treated, day { $day }
stage-in-words-bag = In the bag, day { $day }
stage-in-words-air = Neck open, day { $day }
stage-in-words-settle = Settling in the shop, day { $day }
stage-in-words-indoors = In the house, day { $day }
stage-in-words-true = Being trued, day { $day }
stage-in-words-finish = Being finished, day { $day }

# Instead of the stage in words while it dries by this method.
method-in-words-bag = In the bag, day { $day }
method-in-words-paper = In paper, day { $day }
method-in-words-shavings = In shavings, day { $day }
method-in-words-wax = Waxed, on the shelf, day { $day }
method-in-words-cupboard = In the drying cupboard, day { $day }
method-in-words-alcohol = Soaked in alcohol, wrapped, day { $day }
method-in-words-once-thin = Turned thin, left to move, day { $day }

half-turned = Half-turned on the lathe
half-turned-wrapped = Wrapped, back tomorrow
state-paused = Paused
state-paused-until = Paused until { $day }
state-not-found = Could not be found
state-deleted = Deleted
state-came-back = Back again: something was recorded after it was deleted

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

## Forms, grain, pith, outlines

form-vessel = Vessel
form-hollow-form = Hollow form
form-bowl = Bowl
grain-end = End grain
grain-side = Side grain
pith-bore = In the bore
pith-wall = In the wall
pith-outside = Outside the piece
pith-unknown = Don't know
outline-ball = Ball
outline-egg = Egg
outline-pear = Pear
outline-high-shoulder = High shoulder
outline-tall = Tall

## Drying methods, and what has a rhythm of its own

method-bag = Bag, turned
method-paper = Paper
method-shavings = Shavings
method-wax = Wax, shelf
method-cupboard = Cupboard
method-alcohol = Alcohol, wrapped
method-once-thin = Turned once, thin

rhythm-bag = Bag, turned
rhythm-air = Neck open
rhythm-settle = Settle
rhythm-indoors = Indoors
rhythm-paper = Paper
rhythm-shavings = Shavings
rhythm-wax = Wax, shelf
rhythm-cupboard = Cupboard
rhythm-alcohol = Alcohol, wrapped
rhythm-once-thin = Turned once, thin

## Answers and readings

feel-wet = Wet
feel-damp = Damp
feel-nothing = Nothing
feel-heavy = Heavy
feel-even = Even
feel-thin = Thin
taken-callipers = { -callipers }
taken-fingers = fingers
taken-wire-gauge = wire gauge
taken-light = light
taken-depth-rod = depth rod
taken-cant-reach = can't reach

## Flaws

flaw-kind-knot = Knot
flaw-kind-bark-inclusion = Bark inclusion
flaw-kind-pith = Pith
flaw-kind-check = Check
flaw-kind-ring-shake = Ring shake
flaw-kind-punky = Punky wood
treatment-left = Left until dry
treatment-turn-away = Turned away later
treatment-thin = Superglue thin
treatment-medium = Superglue medium
treatment-thick = Superglue thick
treatment-wax = Wax
face-outside = Outside
face-inside = Inside
face-both = Both faces
flaw-change-same = Same as before
flaw-change-longer = Longer
flaw-change-gone = Cut away
crack-answer-none = None found
crack-answer-hairline = Hairline
crack-answer-rim-or-floor = Rim or floor
true-decision-go = Carry on
true-decision-fill = Fill it first
true-decision-scrap = Scrap it

## Weights

mass-change-glue = Glue went on
mass-change-wax = Wax went on
mass-change-recut = Re-cut
mass-change-bark-lost = Bark came off
mass-change-other = Something else

## Rooms

room-shop = Shop
room-house = House

## Ends

end-finished = Finished
end-lost = Lost
end-given-away = Given away or sold unturned
end-left-as-is = Left as it is
end-cant-find = Can't find it

lost-where-rim = Rim
lost-where-shoulder = Shoulder
lost-where-wall = Along the wall
lost-where-floor = Floor or pith
lost-where-knot = Beside a knot
lost-where-bark-inclusion = Bark inclusion
lost-where-spigot = Round the { -spigot } or foot
lost-where-through-side = Through the side
lost-where-through-floor = Through the floor
lost-where-unknown = Don't know

lost-how-cracked-drying = Cracked drying
lost-how-cracked-lathe = Cracked on the lathe
lost-how-dig-in = { -dig-in(case: "start") }
lost-how-spigot-broke = { -spigot(case: "start") } broke or pulled out
lost-how-broke-remounting = Broke in remounting
lost-how-too-oval = Too oval or too thin to true
lost-how-spigot-small = { -spigot(case: "start") } too small
lost-how-mould = { -moulding(case: "start") } or stain too deep
lost-how-worm = Worm
lost-how-rot = Rot
lost-how-dropped = Dropped
lost-how-spoiled = Spoiled by glue or finish
lost-how-given-up = Given up
lost-how-unknown = Don't know

lost-why-wall-uneven = Wall uneven
lost-why-floor-thick = Floor thick
lost-why-pith = Pith
lost-why-too-fast = Dried too fast
lost-why-shut-too-long = Shut up too long
lost-why-log-checked = Log already checked
lost-why-moved-to-heat = Moved to heat
lost-why-forgotten = Forgotten
lost-why-wood-itself = The wood itself
lost-why-unknown = Don't know

## Details, as labels of a form

detail-mark = Mark
detail-form = Form
detail-wood = Wood
detail-grain = Grain
detail-pith = Pith
detail-pith-distance-mm = Pith to axis
detail-felled = Felled
detail-source = Where it came from
detail-log = Log
detail-log-diameter-mm = Log diameter
detail-diameter-mm = Outside diameter
detail-height-mm = Rim to foot line
detail-spigot-length-mm = { -spigot(case: "start") } length
detail-spigot-diameter-mm = { -spigot(case: "start") } diameter
detail-mouth-mm = Mouth
detail-wall-wanted-mm = Wall wanted now
detail-wall-finish-mm = Wall wanted at the finish
detail-floor-wanted-mm = Floor wanted
detail-depth-drilled-mm = Depth drilled
detail-bar-diameter-mm = Bar diameter
detail-bar-reach-mm = Reach past the rest
detail-outline = Outline
detail-place = Where it stands
detail-notes = Notes
detail-finished-size = Size when finished
detail-jaws = Jaws
