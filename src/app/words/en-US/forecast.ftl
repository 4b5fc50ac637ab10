# Only what differs from en-GB.

forecast-day = { $month } { $day }
forecast-days = { $month } { $from } to { $to }
forecast-days-months = { $from-month } { $from } to { $to-month } { $to }
