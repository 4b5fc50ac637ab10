# Only what differs from en-GB.

today-date = { $weekday }, { $month } { $day }
away-day-hint = Mar 20
