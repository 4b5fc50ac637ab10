# What is foreseen of a drying piece: moisture, the two ready ranges, why it is too early, warnings.

forecast-day = { $day } { $month }
forecast-days = { $from } to { $to } { $month }
forecast-days-months = { $from } { $from-month } to { $to } { $to-month }
forecast-days-year = { $range } { $year }
forecast-fault = Looking ahead went wrong for this piece. Its weights are kept.
forecast-no-curve = No drying curve fits these weights. Look for one that was taken with the bag or tray on, or on another scale.
forecast-out-of-range = A size, a weight or a reading of the air lies outside what drying can be reckoned for. Look at its details and its weights.
