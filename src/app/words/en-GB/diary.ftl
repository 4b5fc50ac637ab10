# The diary of a piece.

diary-title = Diary
diary-subtitle = { $wood }, { $n ->
    [one] { $n } entry
   *[other] { $n } entries
}
diary-nothing = Nothing of this kind is recorded yet.
diary-noted = written down { $day }

diary-filter-all = All
diary-filter-wall = Wall
diary-filter-looks = Bag and looks
diary-filter-weights = Weights
diary-filter-flaws = Flaws
diary-filter-stages = Stages
diary-filter-finish = True and finish
diary-filter-notes = Notes
diary-filter-details = Details
diary-filter-ticks = Ticks
diary-filter-forecasts = Forecasts
diary-filter-taken-back = Taken back

## What happened

diary-created = Entered
diary-cleared = cleared
diary-detail = { $what }: { $value }
diary-stage = Moved to { $stage }
diary-method = Drying: { $method }
diary-half-turned = Left half-turned, wrapped
diary-resumed = Taken up again
diary-paused = Reminders paused
diary-paused-until = Reminders paused until { $day }
diary-unpaused = Reminders on again
diary-unticked = tick taken off
diary-stations = { $n } stations laid out
diary-station = Station { $n }
diary-reading = { $station }: { $value }
diary-no-number = no reading
diary-taken-at = { $taken }, { $hour } o’clock
diary-outside = Outside at station { $n }: { $value }
diary-from-shape = from the shape
diary-flaw-at = { $kind } at { $station }
diary-flaw-hour = { $kind }, { $hour } o’clock
diary-flaw-at-both = { $kind } at { $station }, { $hour } o’clock
diary-some-flaw = A flaw
diary-through = through the wall
diary-treated = { $flaw }: { $what }
diary-goes = { $n ->
    [one] { $n } go
   *[other] { $n } goes
}
diary-look-again = look again { $day }
diary-flaw-looked = { $flaw }: { $change }
diary-bag = Bag felt: { $feel }
diary-looked-over = Looked over
diary-mould = { -moulding } seen
diary-crack = crack seen
diary-not-found = Could not be found
diary-weighed = Weighed { $mass }
diary-tare = { $tare } of tray or bag taken off
diary-mass-changed = weights before and after are not compared
diary-cracks = Looked for cracks: { $answer }
diary-oval = Longest { $longest }, shortest { $shortest }
diary-round = { $station }: { $how ->
    [from-centre] { $n } distances from the { -centre } mark
   *[diameters] { $n } diameters round
}
diary-several = { $found } numbers were found, and { $wanted } are wanted. Part them with semicolons.
diary-several-swapped = The shortest is more than the longest. Type the longest first.
diary-spigot = { -spigot(case: "start") } cut round: { $size }
diary-grits = Grits: { $text }
diary-coat = Coat: { $text }
diary-signed = Signed: { $text }
diary-put-back = Put back among the living
diary-deleted = Deleted
diary-undeleted = Brought back
diary-newer = Recorded by a newer version
diary-corrected = Corrected

## Correcting

diary-value = What it should say
diary-day = Day
diary-save = Save correction
diary-take-back = Take back
diary-bring-back = Bring back
diary-was = was: { $what }
diary-day-whole = “{ $found }” is no whole day. Write it like 14 Mar 2026.
diary-text-empty = There is no text. Write some, or take the entry back.
diary-created-stays = This entry made the piece. To be rid of the piece, delete it from its page; it can be brought back.
diary-said-corrected = Entry corrected
diary-said-taken-back = Entry taken back
diary-said-brought-back = Entry brought back

## A new note

diary-note-label = New note
diary-note-add = Add note
diary-note-empty = There is no text yet. Write the note first.
diary-note-long = The note has { $found } characters; { $most } fit. Shorten it or make two.
diary-said-note = Note added

## Forecasts

diary-forecast = Forecast: { $what }
diary-forecast-house = into the house { $range }
diary-forecast-finish = to finish-turn { $range }
diary-forecast-none = no date
diary-forecast-from = { $n ->
    [one] From { $n } weight.
   *[other] From { $n } weights.
}
