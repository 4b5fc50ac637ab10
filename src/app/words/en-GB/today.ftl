# Today, the bag round, the weigh round, going away, and catching up after a silence.
#
# Which ids exist: today-act- and today-done- (BagAct: what an answer will do, what was done), today-kind- (what a task is
# called), today-offer- (a stage offered), today-button- and today-other- (buttons), today-day- (BackDay),
# bag-round-do- (BagAct: what is to be done after the round), away-act- (BeforeLeaving), away-back- (BackChoice).

today-title = Today
today-overdue = Overdue
today-due = Today
today-coming = Coming up
today-longest-unlooked = Longest without a look
today-probably-ready = Probably ready
today-bag-round = Bag round
today-weigh-round = Weigh round
today-date = { $weekday } { $day } { $month }
today-bag-round-n = Bag round ({ $n })
today-weigh-round-n = Weigh round ({ $n })
today-away = Going away
today-show-all = Show all { $n }
today-nothing-due = Nothing due.
today-nothing-due-next = Nothing due. Next: { $mark }, { $what }, { $day }.

today-first-title = Nothing on the lathe yet
today-first-text = Each piece begins with the mark you pencil on its { -spigot } end.
    From then on this page says which one wants a hand, and when.
today-first-action = New piece

## The shop's air

today-climate = { $temperature }, { $humidity } RH
today-settles = settles at { $moisture }
today-climate-old = Climate { $n } d old
today-climate-label = Shop climate: { $reading }, { $settles }

## Notices

today-away-until = Away until { $day }
today-away-until-note = What falls due till then waits for you.
today-away-open = Open
today-back = You are back
today-back-note = { $n ->
    [0] Nothing waits for you.
    [one] { $n } piece waits for you.
   *[other] { $n } pieces wait for you.
}
today-back-open = See the list
today-catch-up = Pick up where you left off
today-catch-up-note = { $n ->
    [one] { $n } piece to look at, in one list.
   *[other] { $n } pieces to look at, in one list.
}
today-catch-up-open = See the list

## Rows

today-row-label = { $mark } { $wood }
today-coming-label = { $mark }: { $what }, { $day }
today-unseen-label = { $mark }: { $days } without a look
today-stands-at = { $stands }, { $place }
today-when-you-like = when you like
today-dated-ahead = An entry is dated { $day }, ahead of today. It does not count yet.
today-weighed-last = Last { $weight }, { $ago }
today-never-weighed = Not weighed yet
today-flaw-again = { $flaw }: look again
today-half-turned = Half-turned, left { $ago }
today-same-mark = Another piece has the same mark
today-same-mark-as = Same mark as another piece, { $wood }
today-not-found = Could not be found, { $ago }

today-kind-look = Bag check
today-kind-look-over = Look over
today-kind-weigh = Weigh
today-kind-flaw = Flaw, look again
today-kind-lathe = Half-turned
today-kind-rename = Same mark twice
today-kind-find = Look for it
today-kind-came-back = Back again

today-button-label = { $button }: { $mark }
today-button-looked = Looked over
today-button-weigh = Weigh
today-button-resume = Back on it
today-button-move = Move
today-button-rename = Rename
today-button-found = Found it
today-button-keep = Keep it
today-button-delete = Delete it again

today-offer-bag = Close the bag again
today-offer-air = Open the neck for good
today-offer-settle = Go on to Settle
today-offer-indoors = Bring it into the house
today-offer-true = Go on to True
today-offer-other = Go on to { $stage }
today-why-nothing-twice = Nothing on the bag twice running
today-why-damp-again = Damp on the bag again
today-why-days = { $n ->
    [one] { $n } day has run
   *[other] { $n } days have run
}
today-why-days-thick = { $n ->
    [one] { $n } day has run, floor is thick
   *[other] { $n } days have run, floor is thick
}
today-why-days-steady = { $n ->
    [one] { $n } day has run, weight is steady
   *[other] { $n } days have run, weight is steady
}
today-why-foretold = Probably settled, by { $n } weights and the room's air
today-why-stuck = Still wet, and hardly lighter in { $n } days
today-why-stayed-put = { $n ->
    [one] Weight stayed put for { $n } day
   *[other] Weight stayed put for { $n } days
}

## The open row

today-question-bag = Inside of the bag feels
today-question-over = Look at rim, floor, pith and knots
today-looked-over = Looked over
today-damp-again = Damp again
today-mould = { -moulding(case: "start") }
today-crack = Crack
today-less = Less
today-when = When was it?
today-day-today = Today
today-day-yesterday = Yesterday
today-day-two-days-ago = 2 days ago
today-other-weigh = Weigh it
today-other-cant-find = Can't find it
today-other-open = Open the piece
today-leads = { $act } · { $day }
today-act-turn-and-close = turn it
today-act-close-again = turn it, close it
today-act-leave-open = neck open
today-act-offer-air = neck open
today-act-brush-and-air = brush it, air it
today-act-carry-on = next
today-act-still-due = still to feel
today-act-look-for-it = look for it
today-act-silent = no reminders
today-act-open-or-paper = open it, or into paper

## What was done

today-done-next = { $done } · next { $day }
today-done-turn-and-close = Turned inside out
today-done-close-again = Turned, closed again
today-done-leave-open = Neck left open
today-done-offer-air = Neck left open, ready for Air
today-done-brush-and-air = Brushed and aired
today-done-carry-on = Left as it is
today-done-still-due = Still to feel
today-done-look-for-it = To look for
today-done-silent = No reminders
today-done-open-or-paper = Opened, or in paper
today-said-looked = { $mark }: { $what }. { $act }
today-said-found = { $mark }: found
today-said-not-found = { $mark }: not found

today-crack-title = { $mark }: note the crack?
today-crack-text = With its place and a word on what you did, it comes back when it matters.
today-crack-now = Note it now
today-crack-later = Later

## Bag round

bag-round-stands-last = { $stands }. Last { $feel }, { $ago }
bag-round-skip = Not looked at
bag-round-all-damp = All damp ({ $n })
bag-round-all-title = { $n ->
    [one] { $n } bag damp?
   *[other] { $n } bags damp?
}
bag-round-all-text = Each is turned inside out and closed. One undo takes them all back.
bag-round-all-yes = All damp
bag-round-said-all = { $n ->
    [one] { $n } bag: damp
   *[other] { $n } bags: damp
}
bag-round-said-skipped = { $mark }: not looked at
bag-round-ended = Round done
bag-round-none = No bag is due
bag-round-skipped = Not looked at, still due
bag-round-again = Look at those now
bag-round-to-do = Now
bag-round-do-turn-and-close = Turn inside out, close
bag-round-do-close-again = Turn, close again
bag-round-do-leave-open = Open these necks
bag-round-do-offer-air = Neck open, ready for Air
bag-round-do-brush-and-air = Take out, brush, air
bag-round-do-look-for-it = Look for these
bag-round-do-crack = Note the crack

## Weigh round

weigh-round-row-label = Weigh { $mark }
weigh-round-last = { $weight }, { $ago }
weigh-round-next = Next
weigh-round-back-key = Delete the last digit
weigh-round-point = .
weigh-round-tare = less { $tare } tare
weigh-round-skipped = skipped
weigh-round-said = { $mark }: { $weight }
weigh-round-said-skipped = { $mark }: skipped
weigh-round-none = Nothing is to be weighed
weigh-round-ended = { $n ->
    [0] Nothing weighed
    [one] { $n } piece weighed
   *[other] { $n } pieces weighed
}
weigh-round-under-tare = { $mass } is no more than the { $tare } that stood on the scale with it. Type what the scale says, or weigh it bare.
weigh-round-heavier = { $mark } is heavier than last time
weigh-round-heavier-text = { $new } now, { $last } last time: { $part } more. Is the bag still on? Is it the same scale?
weigh-round-lighter = { $mark } is much lighter than last time
weigh-round-lighter-text = { $new } now, { $last } last time: { $part } less. Was the bag on last time? Is a figure left out?
weigh-round-keep = Record { $weight }
weigh-round-again = Type it again

## Away

away-title = Going away
away-intro = While you are away nothing falls due. This says what to do before.
away-when = Back when?
away-back-three = 3 days
away-back-week = A week
away-back-fortnight = 2 weeks
away-back-typed = A day
away-day = Back on
away-day-hint = 20 Mar
away-day-too-far = { $day } is more than { $most } days ahead. Type a day up to { $last }.
away-leave = Away until { $day }
away-leave-typed = Away until then
away-am-back = I am back
away-was-until = Away until { $day }
away-act-title = Before you leave
away-act = { $mark }: { $act }
away-act-note = { $wood } · { $stands }
away-act-open-neck = open the neck
away-act-put-in-paper = put it in paper
away-act-finish-or-bag = half-turned, finish or bag it
away-nothing = Nothing needs doing before you leave.
away-wait-title = May wait till you are back
away-fine-title = Fine as they are
away-return = Since you left
away-said-leave = Away until { $day }
away-said-back = Back
away-said-open-neck = { $mark }: neck open
away-said-put-in-paper = { $mark }: in paper

## Catching up

catch-up-title = Catch up
catch-up-intro = { $n ->
    [one] { $n } piece to look at. In any order, at any time.
   *[other] { $n } pieces to look at. In any order, at any time.
}
catch-up-all-done = All looked at.
