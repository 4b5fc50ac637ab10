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
trueup-oval-how = Turn it in the { -callipers } until you have the most, then the least.
trueup-longest = Longest diameter
trueup-shortest = Shortest diameter
trueup-record = Record
trueup-swapped-title = Were the two swapped?
trueup-swapped-text = The shortest, { $shortest }, is more than the longest, { $longest }.
trueup-swapped-yes = Yes, swap them
trueup-swapped-no = No, type again
trueup-drawing-label = The rim from above: { $longest } one way, { $shortest } the other
trueup-most-left = Most that can be left before cleaning up
trueup-legend-turned = As turned
trueup-legend-dried = Dried
trueup-legend-finish = Round, that fits in
trueup-difference = Oval by { $off }
trueup-no-wall = No wall was read, so what can be left is not known.
trueup-sum = Thinnest wall { $wall }, { $place }, less half the difference, { $half }, leaves { $left }. Common practice, no source.
trueup-finish-wall = Finish wall wanted: { $wall }
trueup-spare = { $by } to spare
trueup-tight = tight, { $by } over
trueup-short = { $by } short

## Spigot

trueup-spigot-label = Round size once trued
trueup-spigot-sheet = Measure the { -spigot }
trueup-spigot-how = Once it is round again.
trueup-fits = Fits the jaws
trueup-too-small = Too small for the jaws
trueup-too-large = Too large for the jaws
trueup-jaws-range = { $name }: { $range }.
trueup-jaws-unlisted = “{ $name }” is not among the jaws of Shop, { $smallest } assumed.
trueup-jaws-assumed = Jaws not said, { $smallest } assumed.

## Decision

trueup-decision = Decision
trueup-decision-label = What I decided
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
