# Knots, bark, pith, cracks: where they are and what was done.
#
# Which ids exist: flaws-group- (how it stands), flaws-about- (FlawKind), flaws-on-, flaws-treat- and flaws-face- (Face),
# flaws-look- and flaws-found- (FlawChange), flaws-again- (when to look again), flaws-why- (the reason of a suggestion).
# A glued crack stays a crack. There is no clock for glue: "an hour or more, then try it with a point".

flaws-title = Flaws
flaws-new-title = Note a flaw
flaws-add = Note a flaw
flaws-found-open = { $n } found, { $open } to decide
flaws-found-decided = { $n } found, all decided
flaws-empty-title = No flaws noted
flaws-empty-text = Turn it once by hand and look for knots, bark, cracks.
flaws-group-open = To decide
flaws-group-due = Look again
flaws-group-decided = Decided
flaws-legend = Filled: still to decide.
flaws-legend-unplaced = Without a place: { $letters }.
flaws-outside-label = Outside from the side, with the letters of the flaws
flaws-clock-label = Seen from the mouth, 12 at the pencil line

## What and where

flaws-kind-size = { $kind }, { $size }
flaws-place = { $station }, { $clock }
flaws-station = Station { $n }
flaws-depth = { $depth } below the rim
flaws-clock = { $n } o'clock
flaws-no-place = Place not noted

## What was done, and how it stands

flaws-told-gone = Cut away, { $day }
flaws-told-left = Left until dry
flaws-told-left-again = Left until dry, look again { $day }
flaws-told-left-due = Left until dry, a look was due { $day }
flaws-told-turn-away = To be turned away later
flaws-told-waxed = Waxed { $day }
flaws-told-glued = Glued { $day }
flaws-told-glued-crack = Glued { $day }, still a crack
flaws-told-looked = Looked { $day }: { $found }
flaws-on-outside = outside
flaws-on-inside = inside
flaws-on-both = both faces
flaws-goes = { $n ->
    [one] { $n } go
   *[other] { $n } goes
}
flaws-treat-both = treat both faces
flaws-treat-outside = treat the outside too
flaws-treat-inside = treat the inside too

## The suggestion

flaws-suggested = { $grade }: { $why }
flaws-suggested-why = Suggested: { $why }
flaws-why-through = it goes through the wall, and thin would run through.
flaws-why-thin-wall = the wall is { $wall } there, and thin would run through.
flaws-why-gap = bark leaves gaps, and medium bridges them.
flaws-why-hairline = nothing thicker gets into a hairline.
flaws-why-soaks = it soaks deepest, and about { $off } still comes off { $face } and takes the stain with it.
flaws-why-little = only about { $off } still comes off { $face }, so a stain of thin would stay.
flaws-why-nothing = nothing more comes off { $face }, so a stain of thin would stay.
flaws-stain-stays = Its stain will stay.
flaws-face-outside = the outside
flaws-face-inside = the inside
flaws-face-both = either face
flaws-left-sound = A sound decision too.
flaws-left-sound-line = Leaving it until dry is a sound decision too.
flaws-wait = Leave it an hour or more, then try it with a point.
flaws-both-faces = It goes through: treat both faces. The face you forget is the one that opens.
flaws-caution = Fresh air, eyes covered. Nitrile gloves only with the lathe off.
flaws-caution-more = No cotton or wool soaked in it: it can heat, smoke and burn. Debonder within reach, never near an eye.

## Noting one

flaws-what = What is it?
flaws-about-knot = a branch
flaws-about-bark-inclusion = bark grown in
flaws-about-pith = the heart
flaws-about-check = a drying crack
flaws-about-ring-shake = along a ring
flaws-about-punky = soft, dozy
flaws-where = Where is it?
flaws-where-note = Leave out what you do not know.
flaws-section-label = Touch the station nearest to it
flaws-touch-station = Touch a station
flaws-touch-clock = Touch the clock
flaws-clock-what = How far round
flaws-clock-less = an hour back
flaws-clock-more = an hour on
flaws-clock-clear = Clear the hour
flaws-did = What I did
flaws-unfold = Size, through the wall, face, look again
flaws-unfold-treated = Face, goes, look again
flaws-fold = Fold this away
flaws-size = Length
flaws-through = Through the wall
flaws-through-note = It shows on both faces.
flaws-face = Face
flaws-goes-label = Goes
flaws-again = Look again
flaws-again-text = This look is recorded. Left again until when?
flaws-again-not-said = Not said
flaws-again-three-days = In 3 days
flaws-again-week = In a week
flaws-again-two-weeks = In 2 weeks
flaws-again-typed = A day
flaws-again-day = Day to look again
flaws-note = In your own words
flaws-save = Save
flaws-save-kind = First say what it is
flaws-save-treated = Record it
flaws-save-treatment = First say what you did
flaws-save-corrected = Save the correction
flaws-kind-wanted = Nothing was chosen. Choose what it is: a knot, a check, one of the six.
flaws-treatment-wanted = Nothing was chosen. Choose what you did; leaving it until dry is a decision too.

## One that was noted

flaws-look-title = Looked at it: what is it now?
flaws-look-same = Same
flaws-look-longer = Longer
flaws-look-gone = Gone
flaws-found-same = same
flaws-found-longer = longer
flaws-found-gone = gone
flaws-longer-title = How long is it now?
flaws-longer-size = Length now
flaws-longer-save = Record: longer
flaws-longer-now = longer, { $size }
flaws-lengths = Length: { $all }
flaws-lengths-then = then
flaws-history = What happened
flaws-history-found = Found in { $stage }
flaws-history-looked = Looked: { $found }
flaws-history-again = look again { $day }
flaws-decide = Decide it
flaws-treat-again = Treat it again
flaws-correct = Correct what was noted
flaws-take-back = Take it back
flaws-take-back-title = Take back { $what }?
flaws-take-back-text = What was recorded about it goes out of sight with it. The diary keeps it, struck through.
flaws-keep = Keep it
flaws-gone-title = This flaw was taken back
flaws-gone-text = The diary of the piece keeps it, struck through.

## What was done, for the undo bar

flaws-said-noted = { $mark }: { $kind } noted
flaws-said-treated = { $mark }: { $kind }. { $done }
flaws-said-corrected = { $mark }: { $kind } corrected
flaws-said-looked = { $mark }: { $kind }. { $found }
flaws-said-taken-back = { $what }: taken back
