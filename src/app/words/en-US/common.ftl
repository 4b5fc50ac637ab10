# Only what differs from en-GB.

-spigot = { $case ->
   *[lower] tenon
    [start] Tenon
}
-spigots = { $case ->
   *[lower] tenons
    [start] Tenons
}
-callipers = { $case ->
   *[lower] calipers
    [start] Calipers
}
-moulding = { $case ->
   *[lower] mold
    [start] Mold
}
-mouldy = { $case ->
   *[lower] moldy
    [start] Moldy
}
-colour = { $case ->
   *[lower] color
    [start] Color
}
-centre = { $case ->
   *[lower] center
    [start] Center
}
-meths = { $case ->
   *[lower] denatured alcohol
    [start] Denatured alcohol
}
-dig-in = { $case ->
   *[lower] catch
    [start] Catch
}

date-weekday-day-month = { $weekday }, { $month } { $day }
date-weekday-day-month-year = { $weekday }, { $month } { $day }, { $year }
date-full = { $month } { $day }, { $year }
