# One piece: its page, stages, details, ending; the general cautions at first use; the editor of the checklists.
#
# Which ids exist: piece-act- (BagAct), piece-way- (the ways into other pages), ending-about- (how it ended),
# stages-day- and stages-until- (choices of a day), details-about- (what a detail means, where its label is not enough).

piece-checklist = Checklist
piece-stage-path = Stages
piece-no-mark = no mark
piece-size = { $diameter } × { $height }
piece-size-wide = { $size } wide
piece-size-high = { $size } high
piece-oval = { $longest } and { $shortest }
piece-section-label = Half section, { $read } of { $all } places read
piece-stages-label = Stages: now in { $stage }
piece-checklist-of = { $stage }
piece-done-of = { $done } of { $all } done
piece-common-practice = Common practice, no source.
piece-own-words = Your own words.
piece-ticks-itself = It ticks itself by what was recorded. Correct that in the diary or in the details.
piece-earlier-show = Lines of earlier stages
piece-earlier-hide = Put earlier stages away
piece-ended-on = { $how }, { $day }
piece-lost-part = { $label }: { $value }

## The section

piece-floor-letter = F
piece-heavy-by = { $off } heavy
piece-even = even
piece-thin-by = { $off } thin
piece-legend = Wall wanted { $wall }, dashed
piece-legend-off = Wall wanted { $wall }, dashed; { $heavy } heavy, { $thin } thin
piece-legend-empty = No readings yet. Drawn at the wall wanted, { $wall }
piece-station-n = station { $n }
piece-station-floor = floor
piece-clock = { $n } o'clock

piece-station-read = Station { $n }: { $value } { $verdict }
piece-station-unread = Station { $n }: not read
piece-floor-read = Floor: { $value } { $verdict }
piece-floor-unread = Floor: not read

## The next step

piece-next-depth = Record depth drilled
piece-next-hollow = Hollow it
piece-next-wall = Measure the wall
piece-next-note-flaw = Note a flaw
piece-next-flaws = { $n ->
    [one] Decide { $n } flaw
   *[other] Decide { $n } flaws
}
piece-next-bag = Into the bag
piece-next-feel = Feel the bag
piece-next-look = Look it over
piece-next-weigh = Weigh it
piece-next-cracks = Look for cracks first
piece-next-true = Measure the oval
piece-next-record = Record the finish
piece-next-finished = Finished
piece-next-stage = Next stage: { $stage }

## A look, answered in place

piece-look-bag = Feel the inside of the bag
piece-look-over = Look at rim, floor, pith and knots
piece-look-not-due = due { $day }
piece-look-fine = Looked over
piece-look-mould = { -moulding(case: "start") }
piece-look-crack = Crack
piece-act-turn-and-close = turn it
piece-act-close-again = turn it, close it
piece-act-leave-open = neck open
piece-act-offer-air = neck open
piece-act-brush-and-air = brush it, air it
piece-act-carry-on = carry on
piece-act-still-due = still to feel
piece-act-look-for-it = look for it
piece-act-silent = no reminders
piece-act-open-or-paper = open it, or into paper

## Ways into the other pages

piece-ways = More about it
piece-way-wall = Wall
piece-way-flaws = Flaws
piece-way-photos = Portrait
piece-way-drying = Drying
piece-way-truing = True-up
piece-way-finishing = Finish
piece-way-plan = Plan
piece-way-no-wall = No wall wanted said yet
piece-way-wall-wanted = Wall wanted { $wall }
piece-way-diary = Diary
piece-way-details = Details
piece-way-stages = Stages
piece-way-out = Report, tag, calendar
piece-way-ending = How it ended
piece-way-none = None noted
piece-way-flaws-decided = { $n }, all decided
piece-way-flaws-open = { $n }, { $open } to decide
piece-way-weighed = { $weight }, { $day }
piece-way-never-weighed = Not weighed
piece-way-no-answer = Not looked at for cracks
piece-way-coats = { $n ->
    [0] No coats
    [one] { $n } coat
   *[other] { $n } coats
}
piece-way-entries = { $n ->
    [one] { $n } entry
   *[other] { $n } entries
}
piece-way-known = { $n } filled in
piece-way-wall-spread = { $n } read, thickest less thinnest { $spread }
piece-way-no-readings = No readings yet

piece-half-turn = Half-turned, back tomorrow
piece-resume = Back on it
piece-pause = Pause reminders
piece-unpause = Remind me again
piece-another = Another from the same log
piece-undelete = Bring it back
piece-keep = Keep it
piece-found = Found it
piece-open-details = Open details

## Banners

piece-banner-deleted = Deleted. It can be brought back.
piece-banner-came-back = It was deleted, and something was recorded after that. So it is back.
piece-banner-no-mark = It has no mark yet. Some of its lines may still be on their way from another device.
piece-banner-unknown = { $n ->
    [one] { $n } entry was recorded by a newer version. It is kept; update to read it.
   *[other] { $n } entries were recorded by a newer version. They are kept; update to read them.
}
piece-banner-not-found = Could not be found { $day }.
piece-banner-half-turned = Half-turned on the lathe since { $day }. Wrapped?
piece-banner-paused = No reminders until you say.
piece-banner-paused-until = No reminders until { $day }.

## What was done, for the undo bar

piece-said-ticked = Ticked: { $line }
piece-said-unticked = Not ticked: { $line }
piece-said-moved = { $mark }: { $stage }
piece-said-moved-on = { $mark }: { $stage }, { $day }
piece-said-half-turned = { $mark }: half-turned, wrapped
piece-said-resumed = { $mark }: back on it
piece-said-method = { $mark }: { $method }
piece-said-paused = { $mark }: no reminders
piece-said-paused-until = { $mark }: no reminders until { $day }
piece-said-unpaused = { $mark }: reminders again
piece-said-ended = { $mark }: { $how }
piece-said-put-back = { $mark }: put back
piece-said-deleted = { $mark } deleted
piece-said-undeleted = { $mark } brought back
piece-said-kept = { $mark } kept
piece-said-looked = { $mark }: { $what }, { $act }, { $day }
piece-said-looked-only = { $mark }: { $what }
piece-said-detail = { $what }: { $value }
piece-said-cleared = { $what }: cleared

## Moving to a stage

piece-move-to = Move to { $stage }
piece-undecided-title = { $n ->
    [one] { $n } flaw is not decided
   *[other] { $n } flaws are not decided
}
piece-undecided-text = Turn it away, leave it till dry, glue it: leaving one until dry is a sound decision too.
piece-undecided-see = See the flaws
piece-undecided-go = { $stage } all the same
piece-glued-title = Look at these first
piece-glued-text = Glue fills a gap but does not give the strength back.
piece-glued-line = { $what }: glued { $day }, still a crack.
piece-glued-look = Look for cracks

piece-day-empty = Type a day, for example 14 Mar.
piece-day-nonsense = “{ $found }” cannot be read as a day. Type it like 14 Mar.
piece-day-ahead = { $day } lies ahead. Type today or a day before it.
piece-day-past = { $day } is not ahead. Type a day after today.

## The Stages page

stages-title = Stages
stages-intro = Move it forward, back or past a stage. Nothing is locked.
stages-now = now
stages-skipped = skipped
stages-since = since { $day }
stages-on-day = { $day }
stages-from-to = { $from } to { $to }
stages-when = When did it move?
stages-day-today = Today
stages-day-yesterday = Yesterday
stages-day-two-days-ago = 2 days ago
stages-day-typed = Another day
stages-day-label = Day
stages-day-hint = 14 Mar
stages-waiting = On the lathe
stages-half-turned-since = since { $day }; a nudge in the evening and next morning
stages-on = on
stages-off = off
stages-method = How it dries
stages-pause = Reminders
stages-pause-about = It stays where it is; nothing falls due until then.
stages-paused = Off until you say
stages-paused-until = Off until { $day }
stages-not-paused = On
stages-until = Until when?
stages-until-week = A week
stages-until-four-weeks = 4 weeks
stages-until-until-i-say = Until I say
stages-until-typed = A day
stages-rhythm-bag = Feel it after { $first ->
    [one] { $first } day
   *[other] { $first } days
}, then { $wet } when wet, { $damp } when damp.
stages-rhythm-look = Look { $steps }.
stages-rhythm-weigh = Weigh { $steps }.
stages-rhythm-no-weigh = No weighing.
stages-step-after = { $n ->
    [one] after { $n } day
   *[other] after { $n } days
}
stages-step-every = { $n ->
    [one] daily
   *[other] every { $n } days
}
stages-step-then-after = { $n ->
    [one] { $n } day later
   *[other] { $n } days later
}
stages-step-then-every = { $n ->
    [one] then daily
   *[other] then every { $n }
}

## The Details page

details-intro = Fill in what you like. What is left out is never asked for.
details-group-piece = The piece
details-group-wood = Wood
details-group-size = Size and wall
details-group-lathe = On the lathe
details-group-finished = When finished
details-hint-felled = 14 Mar 2026, March 2026 or 2026
details-hint-wood = ash, beech, Fraxinus
details-own-wood = your own wood
details-about-height-mm = From the rim to the foot line, without the { -spigot }.
details-about-spigot-length-mm = Below the foot line.
details-about-depth-drilled-mm = From the faced rim to the bit's point.
details-about-floor-wanted-mm = Above the foot line.
details-about-bar-reach-mm = The most the bar reached past the rest.
details-about-log = Pieces with the same log stand together.
details-about-mark = Short, as pencilled on the { -spigot } end.
details-about-place = The room or shelf.
piece-mark-taken = { $mark } is the mark of another piece, { $other }. Choose another mark.

## The Ending page

ending-kind = How did it end?
ending-about-finished = Done, signed, out of the shop.
ending-about-lost = Cracked, broken, given up.
ending-about-given-away = Somebody else turns it.
ending-about-left-as-is = It stays a rough-out.
ending-about-cant-find = No longer looked for.
ending-lost-note = Leave out what you do not know.
ending-where = Where
ending-how = How
ending-why = My guess why
ending-why-note = Several may be right.
ending-note = In your own words
ending-record = Record: { $how }
ending-delete = Delete this piece
piece-delete-title = Delete { $mark }?
piece-delete-text = It can be brought back from the list of deleted pieces.
piece-delete-yes = Delete it
piece-delete-no = Keep it

## General cautions

piece-cautions-read = I have read them

## The editor of the checklists

checklist-intro = Changes are for pieces to come. What older pieces recorded stays.
checklist-add = New line
checklist-new = New line
checklist-line = Line
checklist-text-label = The line
checklist-why-label = Why, if you like
checklist-own = Your own line
checklist-changed = Changed
checklist-standing = All through the stage
checklist-hidden = Hidden
checklist-hide = Hide it
checklist-show = Show it again
checklist-reset = Back to the built-in line
checklist-remove = Take this line away
checklist-up = Up
checklist-down = Down
checklist-empty = A line needs words. Type some, or close this.
checklist-too-long = { $count } characters are too many; at most { $most } fit. Make it shorter.
checklist-said-added = Line added
checklist-said-reworded = Line reworded
checklist-said-hidden = Line hidden
checklist-said-shown = Line shown again
checklist-said-moved = Line moved
checklist-said-reset = Built-in line again
checklist-said-gone = Line taken away
checklist-said-changed = Checklist changed
