# What dried well: own pieces counted, the curve of the losses, twins from one log.
#
# Which ids exist: dried-well-by- (Kind), dried-well-count- and dried-well-fate- ($days) (Fate).

dried-well-title = What dried well
dried-well-counts = { $kept } kept, { $lost } lost in drying
dried-well-none-decided = None kept or lost yet
dried-well-intro = Your own pieces, counted. It tells what was, not what the next one will do.
dried-well-all-years = All years
dried-well-empty-title = Nothing has dried yet
dried-well-empty-text = Once pieces have gone into the bag, this page counts which came through and which did not, by wood, wall and pith.

## How many

dried-well-count-kept = Kept: trued or finished
dried-well-count-lost = Lost in drying
dried-well-count-drying = Still drying
dried-well-count-trueing = Dry, being trued
dried-well-count-lost-otherwise = Lost otherwise
dried-well-count-gone = Given away, left as it is, or not found
dried-well-counting = Lost in drying is cracked drying, too oval or too thin to true, { -moulding }, worm or rot. What the lathe took, or a fall, is no fault of the drying and stands apart.

## Kept, by kind

dried-well-by = Kept, by
dried-well-by-wood = Wood
dried-well-by-wall = Wall
dried-well-by-evenness = Evenness
dried-well-by-pith = Pith
dried-well-by-method = Method
dried-well-not-said = Not said
dried-well-not-read = Not read
dried-well-under = under { $to }
dried-well-over = { $from } and over
dried-well-kept-of = { $kept } of { $all } kept
dried-well-too-few = Too few to say more
dried-well-in-ten = With so few, anything from { $low } to { $high } in ten would fit
dried-well-per-cent = { $share }; with this many, { $range } would fit as well
dried-well-band-kept = { $band } ({ $kept } of { $all })
dried-well-differ = { $one } and { $other } are further apart than luck often makes them. What else differed between them counts too.
dried-well-no-difference = None of these are plainly apart. Luck alone could do it.
dried-well-none-to-compare = Too few of a kind to compare them. Five or more of two kinds are needed.
dried-well-undecided = Nothing is trued, finished or lost in drying yet, so there is nothing to compare.

## The curve

dried-well-curve = Still whole, by days of drying
dried-well-curve-note = Of { $n } pieces. Those still drying, and those that went, count for as long as they were seen. The band is how wide the truth may lie.
dried-well-no-curve = Too few pieces for a curve.
dried-well-none-lost = { $n ->
    [one] The { $n } piece was not lost in drying so far.
   *[other] None of { $n } pieces was lost in drying so far.
}
dried-well-all = all
dried-well-half = half
dried-well-none = none
dried-well-tick-day = day { $day }
dried-well-curve-label = Curve of the pieces still whole, from all on day 0: { $lost } of { $n } lost in drying within { $days }. Day by day below.
dried-well-steps = Lost, day by day
dried-well-steps-note = Of so many that were still drying then
dried-well-after = Day { $day }
dried-well-lost-then = { $lost } of { $risk }
dried-well-whole-then = { $lost }, { $whole } whole

## Losses

dried-well-where = Lost in drying: where
dried-well-how = Lost in drying: how
dried-well-why = Lost in drying: my guess why
dried-well-why-note = Your guesses as you noted them; several may stand for one piece.
dried-well-others = Lost otherwise
dried-well-others-note = Not counted as losses of drying.

## Twins

dried-well-twins = Out of one log, side by side
dried-well-twin = { $mark }: { $fate }
dried-well-between = {" · "}
dried-well-twin-wall = wall { $wall }
dried-well-twin-spread = wall { $wall }, thickest less thinnest { $spread }
dried-well-twin-pith = pith: { $place }
dried-well-fate-kept = kept, { $days } drying
dried-well-fate-lost = lost after { $days }
dried-well-fate-lost-otherwise = lost otherwise, { $days } drying
dried-well-fate-drying = drying, { $days } so far
dried-well-fate-trueing = being trued, { $days } drying
dried-well-fate-gone = went after { $days }

## Forecast against outcome

dried-well-forecasts = Forecast and outcome
dried-well-forecasts-note = A range is meant to hold four times of five. One forecast a weighing, so a piece counts as often as it was foreseen.
dried-well-forecasts-held = It came within the range
dried-well-forecasts-of = { $held } of { $all }
dried-well-forecasts-error = Half of them were off by less than
dried-well-forecasts-few = Too few to say whether they lean early or late.
dried-well-forecasts-early = They leaned early: your pieces took longer than foreseen.
dried-well-forecasts-late = They leaned late: your pieces were quicker than foreseen.
dried-well-forecasts-neither = They leaned neither early nor late.
