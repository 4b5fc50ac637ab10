# Only what differs from en-GB.

drying-axis-day = { $month } { $day }
weigh-day-hint = Mar 14
