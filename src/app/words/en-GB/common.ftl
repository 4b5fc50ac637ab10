# Words used on several pages.
#
# How to write this catalogue
# - One file per page; an id starts with its page: today-title, wall-heavy. Ids are unique over all files.
# - No exclamation marks. Sentence case. Plain trade words: wall wanted, heavy, even, thin, gone off, goes.
# - Words that differ in US shops are terms: { -spigot }, { -callipers }; begin a sentence with
#   { -spigot(case: "start") }. Where a term does not fit, put the whole message into en-US as well.
# - A number with decimals or a unit comes in as finished text; $n is a whole count and chooses the plural.

## Terms that differ between UK and US

-spigot = { $case ->
   *[lower] spigot
    [start] Spigot
}
-spigots = { $case ->
   *[lower] spigots
    [start] Spigots
}
-callipers = { $case ->
   *[lower] callipers
    [start] Callipers
}
-moulding = { $case ->
   *[lower] mould
    [start] Mould
}
-mouldy = { $case ->
   *[lower] mouldy
    [start] Mouldy
}
-colour = { $case ->
   *[lower] colour
    [start] Colour
}
-centre = { $case ->
   *[lower] centre
    [start] Centre
}
-meths = { $case ->
   *[lower] meths
    [start] Meths
}
-dig-in = { $case ->
   *[lower] dig-in
    [start] Dig-in
}

## The app

app-name = Evenwall

## Tabs

tab-today = Today
tab-pieces = Pieces
tab-plan = Plan
tab-shop = Shop

## Buttons and answers

action-back = Back
action-cancel = Cancel
action-close = Close
action-done = Done
action-save = Save
action-next = Next
action-skip = Skip
action-undo = Undo
action-redo = Redo
action-delete = Delete
action-put-back = Put back
action-edit = Edit
action-add = Add
action-other = Other
action-why = Why
action-more = More
action-clear = Clear
answer-yes = Yes
answer-no = No
answer-unknown = Don't know

## Counts

count-pieces = { $n ->
    [one] { $n } piece
   *[other] { $n } pieces
}
count-bags = { $n ->
    [one] { $n } bag
   *[other] { $n } bags
}
count-n-of-m = { $n } of { $m }

## Parts of a piece

part-spigot = { -spigot(case: "start") }
part-mouth = Mouth
part-rim = Rim
part-shoulder = Shoulder
part-wall = Wall
part-floor = Floor
part-foot = Foot
part-foot-line = Foot line
part-pencil-line = Pencil line

## Days

date-today = today
date-tomorrow = tomorrow
date-yesterday = yesterday
date-weekday-day = { $weekday } { $day }
date-weekday-day-month = { $weekday } { $day } { $month }
date-weekday-day-month-year = { $weekday } { $day } { $month } { $year }
date-full = { $day } { $month } { $year }
date-month-year = { $month } { $year }
date-days = { $n ->
    [one] { $n } day
   *[other] { $n } days
}
date-weeks = { $n ->
    [one] { $n } week
   *[other] { $n } weeks
}
date-months = { $n ->
    [one] { $n } month
   *[other] { $n } months
}
date-years = { $n ->
    [one] { $n } year
   *[other] { $n } years
}
date-days-ago = { $n ->
    [one] { $n } day ago
   *[other] { $n } days ago
}
date-weeks-ago = { $n ->
    [one] { $n } week ago
   *[other] { $n } weeks ago
}
date-months-ago = { $n ->
    [one] { $n } month ago
   *[other] { $n } months ago
}
date-years-ago = { $n ->
    [one] { $n } year ago
   *[other] { $n } years ago
}
date-in-days = { $n ->
    [one] in { $n } day
   *[other] in { $n } days
}
date-in-weeks = { $n ->
    [one] in { $n } week
   *[other] in { $n } weeks
}
date-in-months = { $n ->
    [one] in { $n } month
   *[other] in { $n } months
}
date-in-years = { $n ->
    [one] in { $n } year
   *[other] in { $n } years
}
date-days-late = { $n ->
    [one] { $n } day late
   *[other] { $n } days late
}
date-weeks-late = { $n ->
    [one] { $n } week late
   *[other] { $n } weeks late
}
date-months-late = { $n ->
    [one] { $n } month late
   *[other] { $n } months late
}
date-years-late = { $n ->
    [one] { $n } year late
   *[other] { $n } years late
}
date-dated-ahead = { $n ->
    [one] dated { $n } day ahead
   *[other] dated { $n } days ahead
}

weekday-mon = Monday
weekday-tue = Tuesday
weekday-wed = Wednesday
weekday-thu = Thursday
weekday-fri = Friday
weekday-sat = Saturday
weekday-sun = Sunday
weekday-mon-short = Mon
weekday-tue-short = Tue
weekday-wed-short = Wed
weekday-thu-short = Thu
weekday-fri-short = Fri
weekday-sat-short = Sat
weekday-sun-short = Sun

month-1 = January
month-2 = February
month-3 = March
month-4 = April
month-5 = May
month-6 = June
month-7 = July
month-8 = August
month-9 = September
month-10 = October
month-11 = November
month-12 = December
month-1-short = Jan
month-2-short = Feb
month-3-short = Mar
month-4-short = Apr
month-5-short = May
month-6-short = Jun
month-7-short = Jul
month-8-short = Aug
month-9-short = Sep
month-10-short = Oct
month-11-short = Nov
month-12-short = Dec
