# Weight, moisture, and how far a piece has dried; weighing.
#
# Which ids exist: drying-break- (MassChange, new-scale), drying-why-after- (BagFeel), drying-span- (how much of the
# time is shown), drying-measured- (Measured), weigh-when- (when it was weighed).

drying-weigh-now = Weigh now
drying-today = Today

## The last weight

drying-last-label = Weighed { $ago }
drying-last-note = { $difference } since { $day }
drying-last-only = The first weight. Weigh it again in a fortnight.
drying-last-first-of-run = The first weight since the change below; the ones before are not compared.
drying-last-before-change = From before the change below; the next weight starts a new curve.
drying-empty-title = Not weighed yet
drying-empty-early = Weigh it now if you can: the first weight tells the most later on. Bare, without bag or tray.
drying-empty-late = Weigh it twice, a fortnight apart: that tells whether it still loses water. Bare, without bag or tray.
drying-ahead-title = Every weight is dated ahead
drying-ahead-text = All weights are dated after today. Look at this device's clock, or correct their days in the diary.

## The chart

drying-span-all = All
drying-span-90-days = 90 days
drying-span-30-days = 30 days
drying-measured-weight = Weight
drying-measured-moisture = Moisture
drying-none-in-span = Not weighed in the days shown.
drying-axis-day = { $day } { $month }
drying-axis-month = { $month } { $year }
drying-chart-label = { $n ->
    [one] Chart of { $n } weight: { $last } on { $last-day }
   *[other] Chart of { $n } weights, from { $first } on { $first-day } to { $last } on { $last-day }
}
drying-picked-day = { $day }, { $ago }
drying-picked-note = Since the one before, { $length } earlier: { $difference }.
drying-picked-first = The first of its curve.
drying-picked-tare = Less { $tare } tare.
drying-picked-moisture = About { $moisture } moist.
drying-picked-question = More than drying does.
drying-correct = Correct
drying-before = Earlier weight
drying-after = Later weight
drying-break-note = { $day }: { $what }. Weights before and after are not compared.
drying-new-scale = A new scale
drying-break-new-scale = new scale
drying-break-glue = glue
drying-break-wax = wax
drying-break-recut = re-cut
drying-break-bark-lost = bark lost
drying-break-other = changed

## Figures

drying-lost = Lost
drying-gained = Gained
drying-lost-note = { $share } since { $day }
drying-a-week = A week now
drying-a-week-gained = Gains a week
drying-a-week-note = { $share } of its weight
drying-staying = Staying put { $n } of { $of } days
drying-since = since { $day }
drying-reason-once = One weight says nothing yet. Weigh it again in a fortnight.
drying-reason-falling = Still falling over the last { $n } weeks. The count starts when the fall stops.
drying-reason-rose = It got heavier and has held since. { $n ->
    [one] { $n } day more at this weight.
   *[other] { $n } days more at this weight.
}
drying-reason-not-yet = Within { $band } since then. { $n ->
    [one] { $n } day more at that.
   *[other] { $n } days more at that.
}
drying-reason-few = Long enough, but on { $n ->
    [one] { $n } weight
   *[other] { $n } weights
}. { $of } are wanted to be sure of it.
drying-reason-steady = It has settled with the air it stands in, no more. In drier air it will move again.
drying-coarse = Weighed once a fortnight, a scale in steps of { $step } needs { $time } or more to show that { $weight } stays put. Steps of { $finer } show it within six weeks.
drying-coarse-hopeless = A scale in steps of { $step } is too coarse to show that { $weight } stays put. Use a finer one.

## The bag

drying-bag-title = Bag checks
drying-bag-felt = felt { $ago }
drying-bag-open = neck open, { $day }
drying-bag-not-felt = not felt yet
drying-bag-label = Bag checks: { $answers }
drying-bag-last-of = The last { $n } of { $of }.
drying-bag-mould = { -moulding(case: "start") } seen { $day }.
drying-bag-crack = Crack seen { $day }.

## What comes next

drying-next = No reminders until
drying-next-feel = Feel the bag
drying-next-look = Look it over
drying-next-weighing = Weigh it
drying-next-find = Look for it
drying-why-paused = Reminders are paused.
drying-why-first-look = The first look after it went in.
drying-why-after-wet = It was wet last time.
drying-why-after-damp = It was damp last time.
drying-why-after-nothing = Nothing on the bag last time.
drying-why-after-mould = { -moulding(case: "start") } was seen last time.
drying-why-rhythm = { $n ->
    [one] Every day at this stage.
   *[other] Every { $n } days at this stage.
}
drying-why-two-steps = By then it will have lost two steps of the scale. Sooner would show little.
drying-why-decide = One more weight by then may tell whether it stays put.
drying-why-telling = A weight taken { $day } would make the range about { $part } narrower.
drying-why-start = At the start of this stage.
drying-why-never-weighed = Twice, a fortnight apart, shows whether it still loses.
drying-why-dated-ahead = What is recorded is dated ahead of today.
drying-why-not-found = It could not be found { $day }.
drying-air-shop = Wood settles at about { $moisture } in this shop ({ $temperature }, { $humidity }).
drying-air-house = In the house at about { $moisture } ({ $temperature }, { $humidity }).
drying-air-old = Read { $ago }.
drying-stages = Stages and method
drying-stages-note = Neck open, Settle, Indoors, another way of drying
drying-diary = Every weight in the diary

## Something changed the weight

drying-changed-title = Something changed the weight
drying-changed-text = Weights before and after are not compared.
drying-said-changed = { $mark }: { $what }. A new curve begins.

## Weighing

weigh-title = Weigh
weigh-what = On the scale
weigh-what-tare = Tare: tray or box alone
weigh-record = Record
weigh-set-tare = Set tare
weigh-never = Not weighed yet.
weigh-last = Last { $weight }, { $ago }.
weigh-not-compared = Not compared: { $what } since.
weigh-less = { $weight } less
weigh-more = { $weight } more
weigh-same = no different
weigh-net = { $weight } of wood
weigh-bare = Weighed bare
weigh-tare = Less { $weight } tare
weigh-tare-bare = Bare
weigh-tare-last = { $weight } again
weigh-tare-other = Other tare
weigh-tare-heavy = A tare of { $tare } leaves too little of { $weight }: at least { $least } of wood is needed. Check both.
weigh-tare-label = Tare
weigh-when-now = Now
weigh-when-yesterday = Yesterday
weigh-when-typed = Another day
weigh-day = Day
weigh-day-hint = 14 Mar
weigh-delete = Delete the last digit
weigh-point = Point
weigh-again = Weigh again
weigh-correct-it = Correct it
weigh-is-right = It is right
weigh-bag-was-on = Bag was on: weigh again
weigh-something-changed = Something changed: glue, wax, re-cut, bark
weigh-heavier-title = { $weight }: { $difference }?
weigh-heavier-text = It was { $last } last time. Wood that dries does not gain that much. Is the bag still on, or the tray?
weigh-lighter-title = { $weight }: { $difference }?
weigh-lighter-text = It was { $last } last time. That is more than drying takes at once. A digit short, or was the bag on last time?
weigh-changed-title = What changed it?
weigh-said = { $mark }: { $weight }, { $difference }
weigh-said-first = { $mark }: { $weight }
weigh-said-changed = { $mark }: { $weight } after { $what }. A new curve begins.

## Staying put, with the room taken out

drying-verdict-stable = With the room taken out it stays put
drying-verdict-losing = With the room taken out it still loses
drying-verdict-gaining = With the room taken out it gains
drying-verdict-undecided = With the room taken out the weights cannot tell yet
drying-verdict-rate = About { $share } of its weight a week.
drying-verdict-within = Less than 0.1 % of its weight a week, whatever the room does.
drying-verdict-few = Fewer than three weights lie in air that is known.
drying-verdict-short = They cover fewer than three weeks, or are fewer than five.
drying-verdict-near = The loss is close to 0.1 % a week: a little more or less would tip it.
drying-verdict-differ = The last three weeks say something else than the weeks before.
drying-verdict-wide = They scatter too much for the time they cover.
drying-verdict-more = Weighed on like this, { $time } more may decide it.
drying-verdict-finer = A scale in steps of { $step } would have told.
drying-verdict-left-out = { $n ->
    [one] { $n } weight is left out: the air around it is not known.
   *[other] { $n } weights are left out: the air around them is not known.
}

## Warnings

drying-points = { $n ->
    [one] { $n } point
   *[other] { $n } points
}
drying-warn-fast = Dries fast for its wall
drying-warn-fast-note = Its faces are about { $points } drier than the middle of the wall. In a bag that is turned, 1 to 3.
drying-warn-stuck = Hardly loses water in the bag
drying-warn-stuck-note = Almost the same weight for { $time }, and still wet. Turn the bag inside out, or leave the neck open.
drying-warn-above = Stays put, but wetter than the room
drying-warn-above-note = Wax or oil on it, another scale, or air that was read somewhere else?
drying-warn-drift = The room drifts
drying-warn-drift-drier = The air gets drier and takes weight with it; the piece itself stays put.
drying-warn-drift-damper = The air gets damper and gives it weight; the piece itself stays put.
drying-warn-mould = Watch for { -moulding }
drying-warn-mould-note = Wet { $n } times running. Turn it sooner, or put it in paper.
drying-warn-mould-easily = Wet { $n } times running, and this wood takes { -moulding } easily. Turn it sooner, or put it in paper.

## Thick against thin

drying-uneven-title = Thick against thin
drying-uneven-station = { $station } ({ $wall })
drying-uneven-spigot = Floor with { -spigot }
drying-uneven-apart = { $wettest } is about { $points } wetter than { $driest }.
drying-uneven-together = All its walls are within a point of each other.
drying-uneven-all-wet = All its walls are still too wet to shrink.
drying-uneven-compared = At worst such walls come about { $shelf } apart on an open shelf, and { $bag } in a bag.
drying-uneven-more = Show the numbers
drying-uneven-numbers = { $wettest } about { $wet }, { $driest } about { $dry }. Faces against the middle of a wall: { $faces }.
drying-uneven-meaning = Below about { $wet } each point shrinks the wall round by about a quarter of a per cent. Where one part has shrunk and the next has not, they pull on each other. On a shelf the thin parts run ahead; in a bag the air keeps them together. It does not say whether a piece cracks: knots, pith and the wood itself decide that too.
drying-uneven-source = Own drying model of walls, stations coupled by the air around them; not a measurement.
