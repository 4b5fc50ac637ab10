# Only what differs from en-GB.

forecast-one-day = { $month } { $day }
forecast-days = { $month } { $from } through { $to }
forecast-days-months = { $from-month } { $from } through { $to-month } { $to }
