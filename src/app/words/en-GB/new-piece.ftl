# Words of the page for a new piece.

new-piece-title = New piece
new-piece-like = From the same log as { $mark }
new-piece-like-gone = That piece is no longer there. Start with New piece.
# The name given to a log that has none, when a second piece is cut from it.
new-piece-log-of = Log of { $mark }

new-piece-mark-note = The next free mark. Write it on the { -spigot } end.
new-piece-wood-hint = Type a few letters
new-piece-wood-own = Not in the list: kept as you typed it
new-piece-count = How many
new-piece-more = More about it
new-piece-less = Less
new-piece-more-note = Stage, log, sizes, walls, place, notes: all may wait
new-piece-save = Save { $mark }
new-piece-save-several = { $n ->
    [one] Save { $n } piece
   *[other] Save { $n } pieces
}
new-piece-saved = { $mark } entered
new-piece-saved-several = { $n ->
    [one] { $n } piece entered: { $first } to { $last }
   *[other] { $n } pieces entered: { $first } to { $last }
}

new-piece-now-title = Where it is now
new-piece-stage = Stage
new-piece-method = How it dries
new-piece-since = Since when
new-piece-since-note = Blank: from now
new-piece-since-taken = Taken as { $day }
new-piece-felled-hint = 14 Mar 2026
new-piece-felled-note = Day, month or year alone
new-piece-log-title = Wood and log
new-piece-size-title = Size
new-piece-sizes = Often made: diameter × height
new-piece-size = { $diameter } × { $height }
new-piece-wall-title = Wall and floor
new-piece-place-title = Place and notes

new-piece-leave-title = Leave without saving?
new-piece-leave-text = What you typed has not been saved.
new-piece-keep-editing = Keep editing
new-piece-leave = Leave
new-piece-no-marks = { $n } marks cannot be counted on from “{ $mark }”. Begin with a letter and two figures, for example K08, or enter fewer pieces.
new-piece-at-fault = { $field }: { $error }

## Details in a form, there and on the page of a piece

details-usual = Usual: { $value }
details-drawn-with = Drawn with { $value } until it is said
details-too-long = { $what }: { $count } characters are too many, at most { $most } fit. Make it shorter.
details-no-such-choice = “{ $found }” is not one of the choices for { $what }. Choose one of: { $choices }.
details-not-a-day = “{ $found }” cannot be read as a day. Type 14 Mar 2026, March 2026 or 2026, or leave it blank.
details-no-such-day = There is no day “{ $found }”. Check day and month.
details-day-ahead = “{ $found }” lies ahead. Type a day up to today.
details-day-early = “{ $found }” is before 1900. Check the year.
details-mark-blank = A mark is needed: write one, for example K08.
details-mark-long = { $count } characters are too many for a mark; at most { $most } fit. Make it shorter.
details-mark-in-use = { $mark } is in use: { $wood }, { $stage }. Choose another mark.
details-mark-upside-down = On a round foot it reads upside down as { $reads }. Underline it, or choose another.
