# Words of the page for a new piece.

## Details in a form, there and on the page of a piece

details-usual = Usual: { $value }
details-drawn-with = Drawn with { $value } until it is said
details-too-long = { $what }: { $count } characters are too many, at most { $most } fit. Make it shorter.
details-no-such-choice = “{ $found }” is not one of the choices for { $what }. Choose one of: { $choices }.
details-not-a-day = “{ $found }” cannot be read as a day. Type 14 Mar 2026, March 2026 or 2026, or leave it blank.
details-no-such-day = There is no day “{ $found }”. Check day and month.
details-day-ahead = “{ $found }” lies ahead. Type a day up to today.
details-day-early = “{ $found }” is before 1900. Check the year.
