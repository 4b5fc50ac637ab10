# What is foreseen of a drying piece: moisture, the two ready ranges, why it is too early, warnings.

forecast-one-day = on { $day } { $month }
forecast-days = { $from } to { $to } { $month }
forecast-days-months = { $from } { $from-month } to { $to } { $to-month }
forecast-days-year = { $range } { $year }
forecast-fault = Looking ahead went wrong for this piece. Its weights are kept.
forecast-no-curve = No drying curve fits these weights. Look for one that was taken with the bag or tray on, or on another scale.
forecast-out-of-range = A size, a weight or a reading of the air lies outside what drying can be reckoned for. Look at its details and its weights.

## Ready

forecast-house = Into the house
forecast-finish = To finish-turn
forecast-as-it-is = If the room stays as it is.
forecast-by-now = Probably by now
forecast-by-now-note = Weigh it to be sure of it.
forecast-never = Not as things are
forecast-never-note = Within two years it does not come near the moisture at which wood settles there.
forecast-wide = Not to be said yet
forecast-ready-word = Ready
forecast-settles-line = Settles here at { $weight }, { $moisture }
forecast-house-line = In the house at { $weight }, { $moisture }
forecast-reckoning = Looking ahead from the last change.

## Moisture now

forecast-moisture = Moisture now
forecast-moisture-old = Moisture, last weighed { $ago }
forecast-about = about { $moisture }
forecast-between = { $low } to { $high }
forecast-about-note = Wood settles at about { $settles } where it stands.
forecast-settled-note = As dry as the room makes it: about { $settles }.
forecast-between-note = Until weights pin it. Wood settles at about { $settles } where it stands.

## Too early

forecast-early = Too early to say when
forecast-early-few = { $n ->
    [one] { $n } weight so far; { $of } are needed.
   *[other] { $n } weights so far; { $of } are needed.
}
forecast-early-little = Less than a quarter of the water that has to go has gone.
forecast-early-straight = In the bag the weight still falls in a straight line: its end cannot be seen from there.
forecast-early-straight-until = In the bag the weight still falls in a straight line. It should bend { $range }; then more can be said.
forecast-early-moved = It was moved { $day }: weigh it once more where it stands now.
forecast-early-wide = The weights so far leave a range too wide to be of use.
forecast-early-never = As things are it does not settle within two years.
forecast-early-old = The last weight is more than six weeks old: weigh it again.
forecast-odd-slow = These weights fall far slower than its walls should let them. Is there wax or oil on it, or a bag that was not noted?
forecast-odd-rough = These weights do not fall as those of drying wood. Look for one that was taken with the bag or tray on, or of another piece.
forecast-odd-fast = These weights fall far faster than its walls should let them. Are the walls as they were read?
forecast-road = The whole road
forecast-weeks = { $low } to { $high } weeks
forecast-weeks-open = more than { $low ->
    [one] { $low } week
   *[other] { $low } weeks
}
forecast-road-note = From the first day of drying until it has settled, by its walls and its wood alone. Weights narrow it down.
forecast-road-note-finish = From the first day of drying until it has settled, by its walls and its wood alone; { $weeks } until it has settled in the house after that. Weights narrow it down.

## What had to be assumed

forecast-assumed-shop = The air of the shop was never read: { $temperature } and { $humidity } are taken.
forecast-assumed-house = The air of the house was never read: { $temperature } and { $humidity } are taken.
forecast-assumed-walls = No wall was read: the wall wanted is taken.
forecast-assumed-outline = The outline picked stands in for diameters measured.
forecast-assumed-size = Height and diameter were not said: its dry weight is guessed from the first weight.
