# Checklist lines with their whys, and the cautions. Common practice, no source.
#
# Which ids exist:
#   line-<id>, line-<id>-why       for every built-in line of the piece crate's checklist, in the order of its table
#   line-when-<condition>          for the pieces to which a line belongs: always, end-grain, side-grain, closed, weighed
#   line-counts-<what>             beside a line that ticks itself by what was recorded, where no number says it
#   caution-<stage>                the caution of a stage
#   caution-general-1..6           shown once at first use: lathe, dust, superglue, solvents, fire, whose rules come first
# A line has about 60 characters, so that it stays on two lines of a narrow screen; what it lacks is in its why.
# No line says that a piece or a speed is harmless. Ids never change and are never used again for another line.

checklists-title = Checklist

line-when-always = All pieces
line-when-end-grain = End grain only
line-when-side-grain = Side grain only
line-when-closed = Vessels and hollow forms only
line-when-weighed = If you weigh

line-counts-said = recorded
line-counts-n-of-m = { $n } of { $m } recorded

## Shape

line-shape-cut-back = Cut both ends back to sound wood
line-shape-cut-back-why = End checks run further in than they show.
line-shape-place-pith = Mark pith, knots and bark; choose where the pith goes
line-shape-place-pith-why = In the bore or right outside the piece it can work; in the wall it most often splits.
line-shape-mount = Mount firmly, tailstock up, rest locked; spin by hand
line-shape-mount-why = A green log is heavy and out of balance, and whatever fouls will foul now.
line-shape-speed = Start at the lowest speed; more only while it runs quietly
line-shape-speed-why = Shaking is the wood telling you it is too fast.
line-shape-outside = Turn the outside oversize; round off sharp edges
line-shape-outside-why = It will go oval, and a sharp edge dries first and starts the crack.
line-shape-spigot = Cut the { -spigot } over jaw size, sound wood, square shoulder
line-shape-spigot-why = It must still fit when re-cut round, and the jaws should bear on the shoulder and not bottom.
line-shape-centre-mark = Leave the { -centre } mark in the { -spigot } end
line-shape-centre-mark-why = Nothing else will show the old { -centre } once it is oval.
line-shape-depth = Face the rim; rim to foot line, less floor; write it down
line-shape-depth-why = Facing the rim afterwards, or measuring to the { -spigot } end, makes a funnel.
line-shape-drill = Flag the bit from its point; drill slowly; check with a rod
line-shape-drill-why = The point goes deeper than the rim of the bit. Wind back often: packed shavings bind it or pull the drill chuck out of its taper.

## Hollow

line-hollow-rest = Rest close to the mouth, cutter at { -centre }, handle a touch up
line-hollow-rest-why = Less overhang, and a trailing tip is less apt to dig in.
line-hollow-roll = Go in with the cutter rolled away; find the wood, then roll
line-hollow-roll-why = Presented square it grabs before you have hold of it. Roll it away again before you stop.
line-hollow-mouth = Open the mouth and the middle to working size
line-hollow-mouth-why = The bar needs room to swing and the shavings a way out.
line-hollow-shoulder = Bring the shoulder to thickness before going deeper
line-hollow-shoulder-why = While the wood below is solid it backs up the cut; afterwards it sings.
line-hollow-sections-end = Go down in short sections, from the hole outward
line-hollow-sections-end-why = Cut so that the fibres behind hold up the ones you cut.
line-hollow-sections-side = Go down in short sections, from the wall inward
line-hollow-sections-side-why = Cut so that the fibres behind hold up the ones you cut.
line-hollow-stop = Stop; when it is still, hook shavings out and measure
line-hollow-stop-why = Packed shavings take hold of the bar and hide the wall.
line-hollow-callipers = { -callipers(case: "start") } square across the wall; can't reach, say so
line-hollow-callipers-why = A slanted reading is always too thick, and a guess put down as a reading is worse than none.
line-hollow-reach = Watch the reach past the rest; first chatter, change bars
line-hollow-reach-why = Twice the reach bends about eight times as much.
line-hollow-floor = End at the drilled hole, floor about as thick as the wall
line-hollow-floor-why = The cut goes quiet over the hole, and a thick floor splits.
line-hollow-wrap = Wrap the piece whenever you leave it
line-hollow-wrap-why = A bare rough-out checks over supper.

## Stabilise

line-stabilise-look = Lathe off, wipe the wet off, look all round by a low lamp
line-stabilise-look-why = Wet shine hides hair cracks.
line-stabilise-decide = Decide each: turn away, leave till dry, glue, or scrap
line-stabilise-decide-why = Not every knot wants glue, and a glued spot cannot shrink with its neighbours.
line-stabilise-place = Note the station and how far round from the pencil line
line-stabilise-place-why = You will want to find the same spot in four months.
line-stabilise-dry-spot = Mop and dab the spot dry before gluing
line-stabilise-dry-spot-why = On streaming wet wood the glue skins over and does not hold.
line-stabilise-grade = Thin to soak in; medium to bridge, or if thin runs through
line-stabilise-grade-why = Thin goes deepest and stains deepest, and only the wood still to come off that face takes the stain with it.
line-stabilise-both-faces = Where it goes through, treat both faces
line-stabilise-both-faces-why = The face you forget is the one that opens.
line-stabilise-keep-off = Keep glue off jaws, spindle, { -spigot } shoulder; paper under
line-stabilise-keep-off-why = One lump and the piece never sits true again.
line-stabilise-gone-off = Let it go off fully and air it before lathe or bag
line-stabilise-gone-off-why = Wet glue flies, and its vapour whitens the wood in a closed bag.
line-stabilise-write-down = Write down what you did and a day to look again
line-stabilise-write-down-why = Glued or left alone, you only learn if you look.

## Bag

line-bag-pencil = Pencil the mark and full date on the { -spigot } end
line-bag-pencil-why = Felt pen runs in wet wood, and the { -spigot } stays on longest.
line-bag-tag = Same mark on a tag at the neck, not on the bag
line-bag-tag-why = What you write on a bag is inside it after the first turning.
line-bag-clear = Clear out shavings and loose water
line-bag-clear-why = { -moulding(case: "start") } starts in the wet shavings.
line-bag-weigh = Weigh it bare before it goes in
line-bag-weigh-why = Every later weight is judged by the first.
line-bag-stand = Neck gathered, tucked under; cool, no sun, no draught
line-bag-stand-why = Warmth breeds { -moulding } while it is closed and cracks once it is open.
line-bag-feel = Take it out, feel in the bag: next day, then every 2 or 3
line-bag-feel-why = Water on the film shows how fast the wood is giving it off.
line-bag-turn = Wet or damp: bag inside out, piece back in, close it
line-bag-turn-why = The water leaves with the bag and the wood never feels a draught.
line-bag-open = Nothing on the bag: leave the neck open, look once more
line-bag-open-why = A dry bag on a warm day can be wet again on a cold one.
line-bag-look-over = Look at rim, floor, pith and knots; sniff for { -moulding }
line-bag-look-over-why = A bloom caught on day 3 wipes off; on day 10 it is in the wood.

## Air

line-air-stand = Stand it in the bag with the neck open
line-air-stand-why = The bag keeps the draught off, the open neck lets the damp go.
line-air-off-heat = Keep it from sun, stove, radiator and the door
line-air-off-heat-why = One warm side dries first and splits.
line-air-mouth-clear = Leave the mouth clear, nothing inside
line-air-mouth-clear-why = The bore has to dry as fast as the outside.
line-air-look = Look after two or three days, then once a week
line-air-look-why = Most new cracks show just after a change.
line-air-slow-down = Crack starting, or hot and dry: close the neck a few days
line-air-slow-down-why = Slowing down is the one thing that still helps.
line-air-damp-again = Damp on the bag again: back to turning it
line-air-damp-again-why = It was opened too soon; seen in time, only days are lost.
line-air-weigh = Weigh once a week: bare, same scale, set to zero
line-air-weigh-why = Bag and tray weigh more than a week's drying.
line-air-month = About a month; longer in a cold shop or with a thick floor
line-air-month-why = The floor is always last.

## Settle

line-settle-shelf = Out of the bag, on the shelf, air all round it
line-settle-shelf-why = Now it may follow the shop.
line-settle-weigh = Weigh every two weeks: bare, same scale, set to zero
line-settle-weigh-why = The trend tells, a single weight does not.
line-settle-check-scale = Check the scale with the same odd lump of metal
line-settle-check-scale-why = A tired battery looks just like a drying piece.
line-settle-weather = Note wet or dry weather, or read the hygrometer
line-settle-weather-why = A piece that gains in a wet week is following the air, not going wrong.
line-settle-look = Look it over whenever it is in your hand
line-settle-look-why = A crack seen growing tells you more than one found.
line-settle-mass-change = Note glue, wax, bark lost or a re-cut at once
line-settle-mass-change-why = After that the old weights no longer compare.
line-settle-steady = Wait through a flat month to a steady two
line-settle-steady-why = Weights have stood still for a month and fallen again.
line-settle-small = Give small pieces longer on a coarse scale
line-settle-small-why = One step of a 5 g scale is a lot of water in 150 g of wood.

## Indoors

line-indoors-when = Bring it in only when its weight stands still in the shop
line-indoors-when-why = The house would make up for lost time all at once.
line-indoors-room = In the room it will live in, in the coolest corner
line-indoors-room-why = Dry for one room is not dry for another.
line-indoors-off-heat = Off the radiator, stove, sill and mantelpiece
line-indoors-off-heat-why = That is where rough-outs open overnight.
line-indoors-step = From a cold shed: first days in an open or paper bag
line-indoors-step-why = It softens the step.
line-indoors-weigh = Weigh the day it comes in, then after one week and two
line-indoors-weigh-why = Those three say whether it has caught up.
line-indoors-look = Look after a day or two: rim, floor, pith, knots
line-indoors-look-why = What was going to open opens now.
line-indoors-two-weeks = Two weeks, and then only if the weight stands still
line-indoors-two-weeks-why = Two weeks is for a thin bare wall; a thick floor wants more.
line-indoors-no-heat = Do not hurry it with heat
line-indoors-no-heat-why = You would lose in an evening what took you five months.

## True

line-true-look = Dry, under a low lamp: look, tap it, list every crack
line-true-look-why = A dull or buzzing note is a crack you have not found yet.
line-true-stop = Rim crack into the wall, floor crack, loose knot: stop here
line-true-stop-why = Glue fills a gap but does not give the strength back, and this piece is about to spin out of balance.
line-true-oval = Measure longest and shortest diameter; do the sum
line-true-oval-why = Wall less half the difference is the most you can have left.
line-true-copy-mark = Copy mark and pencil line to wood that stays
line-true-copy-mark-why = The { -spigot } end is about to be cut.
line-true-drive = Padded flat or plug at the mouth, tail in old { -centre } mark
line-true-drive-why = Jaws cannot grip an oval { -spigot }, and a wedge driven into the mouth splits it.
line-true-share-wobble = Turn by hand; shift the mouth end until wobble is shared
line-true-share-wobble-why = You lose least wall that way, and the foot end keeps its { -centre }.
line-true-spigot = Lowest speed, light cuts: { -spigot } round, shoulder square
line-true-spigot-why = It is out of balance and held by friction only.
line-true-reverse = Into the jaws, tail still up; check the run-out by hand
line-true-reverse-why = What is off now is off all through. Keep the tail support while it can stay.
line-true-outside = True the outside, measure the wall, then true the inside
line-true-outside-why = The wall you had is gone once the outside is round.

## Finish

line-finish-outside = Finish the outside first, then go in
line-finish-outside-why = You want the thick wall behind you while shaping and sanding.
line-finish-sections = Final wall: mouth, shoulder, middle, floor; never back up
line-finish-sections-why = Thin wood above the cut chatters and rings.
line-finish-measure = Stop and measure each section before its last cut
line-finish-measure-why = The last millimetre is the one that goes through.
line-finish-floor = Before reversing: floor by depth rod, less the foot's loss
line-finish-floor-why = Hollowing the foot comes off the same wood.
line-finish-sand = Rest off, extraction and mask on, low speed; every grit
line-finish-sand-why = Heat opens hair cracks, and a skipped grit shows under the oil.
line-finish-sand-inside = Sand inside with a stick, or by hand with the lathe off
line-finish-sand-inside-why = A finger does not come out of a turning mouth.
line-finish-reverse = Padded jam, tail support; pare the last nub off by hand
line-finish-reverse-why = Without the tail { -centre } only friction holds it.
line-finish-coats = Finish on dry, dusted wood; write down coats and days
line-finish-coats-why = On damp wood it blooms or stays soft.
line-finish-sign = Sign it: wood, year, mark; note size, weight, a photo
line-finish-sign-why = The number on the { -spigot } went in the shavings.

## Cautions of the stages

caution-shape = Full-face shield on; no gloves, rings or loose cuffs at the lathe. Stand out of the line of the wood when you switch on. If a crack shows, stop and judge it before the next cut.
caution-hollow = Full-face shield on, body to the side and upright, never bent over the mouth. Lathe stopped and still before you hook out shavings, reach in or measure. No fingers in a turning mouth. No air line: it throws chips and lifts the fine dust.
caution-stabilise = Eyes covered, fresh air. Nitrile gloves for glue only with the lathe off; take them off before it starts. No cotton, wool or sawdust soaked in superglue: it can heat, smoke and burn. Never solvent or debonder near an eye. A glued crack is still a crack.
caution-bag = A dry bag is not a dry piece. { -moulding(case: "start") }: take it outside, mask on, brush it, air it, then a paper bag or a shorter round. Never mix bleach with anything. Keep plastic bags away from small children.
caution-air = Too fast splits, too slow goes { -mouldy }: change one thing at a time. Treat any new crack as a reason not to spin it until you have judged it dry and in good light.
caution-settle = A steady weight says it has settled with this air, no more. Steady in an unheated shed is not dry enough for a heated house.
caution-indoors = Nothing warm to speed it up. Write every new crack down now; it decides whether the piece goes back on the lathe at all.
caution-true = Oval, dry and perhaps cracked: full-face shield, lowest speed, tailstock up, stand out of its line. “It ran last time” counts for nothing. If you are in doubt about a crack, do not spin it.
caution-finish = Fine dust does the lasting harm: extraction at the work and a proper mask, also when clearing up. Paper, never cloth, against turning wood. Oily rags spread flat outdoors to dry or under water, never balled. No fingers inside a turning vessel.

## General cautions

caution-general-title = Before you start
caution-general-1 = Lathe: full-face shield; no gloves, rings, loose cuffs or loose hair. Lowest speed first, out of the line of the wood when you switch on. Lathe stopped and still before a hand goes near the work. Green wood can open or fly at any speed.
caution-general-2 = Dust: fine dust harms lungs for good, and some woods do worse. Extraction at the work and a proper mask, also when clearing up. No air line.
caution-general-3 = Superglue: eyes covered, fresh air, lathe off. Kept off cotton, wool and heaps of sawdust: it can heat, smoke and burn. In an eye or a mouth: medical help at once. Never solvent or debonder near an eye.
caution-general-4 = Solvents, alcohol and finishes: their vapour burns and harms, and an alcohol flame can hardly be seen. Fresh air, no flame, heater or grinding spark near, lids on, out of reach of children.
caution-general-5 = Fire: oily rags heat up by themselves. Spread flat outdoors to dry, or under water, never balled. Sweep shavings and dust away from heaters, sparks and drying cupboards.
caution-general-6 = Local codes, and the makers' instructions for lathe, chuck, glue and finish, come before anything here. Wiring, extraction and fire protection are for licensed people. Evenwall helps you remember; it never clears a piece or a speed. That judgement is yours.
