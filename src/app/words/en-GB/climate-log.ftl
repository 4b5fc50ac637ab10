# The air over time, and a logger's file read into it.
#
# Which ids exist: log-curve- (AirCurve).

## The small charts

log-curve-moisture = Settles
log-curve-humidity = Humidity
log-curve-temperature = Temperature
log-curve-label = { $room }, { $what }: from { $from } to { $to } between { $low } and { $high }, last { $last }

## Which file

log-open = Read a logger's file
log-open-note = A CSV file of time, temperature and humidity
log-title = A logger's file
log-intro = Copy the CSV file out of the logger. It is only read; what you keep of it can be undone in one go.
log-files = Files on this device
log-file-note = { $folder }, { $when }
log-none-found = No CSV file among the downloads.
log-no-files = This device offers no files to read.
log-elsewhere = Somewhere else
log-path = Where the file is
log-path-example = /home/you/shed.csv
log-path-note = The whole path with the folders
log-path-wanted = Nothing was typed. Type where the file is, with its folders.
log-path-read = Read it
log-file-not-there = There is no file { $path }. Look at its name and folders, or copy it into your downloads.
log-file-folder = { $path } is a folder. Type the path of the file in it.
log-file-too-large = { $path } is larger than { $most } MB, more than any log that is read. Choose the CSV file that the logger wrote.
log-file-refused = { $path } cannot be read: { $why }. Copy it into your downloads and try again.

## What was found

log-file = File
log-readings = Readings
log-from = From
log-to = To
log-faulty = Lines that cannot be read
log-another = Another file
log-room = Where the logger stood
log-in-shop = Shop
log-in-house = House
log-order = Which comes first in a date
log-day-first = The day: 31/1
log-month-first = The month: 1/31
log-unit = Its temperatures
log-unit-assumed = The file does not name the unit. Celsius is taken; the figures above tell whether that can be.
log-celsius = Celsius
log-fahrenheit = Fahrenheit
log-per = Keep
log-per-day = A mean a day
log-per-hour = A mean an hour
log-means = { $n ->
    [one] { $n } reading
   *[other] { $n } readings
}
log-left-out = Left out
log-there = { $n ->
    [one] { $n } is there already from an earlier file of this room.
   *[other] { $n } are there already from an earlier file of this room.
}
log-unfinished = { $n ->
    [one] { $n } is of a time that is not over yet, or lies ahead. If that cannot be, look at the logger's clock.
   *[other] { $n } are of a time that is not over yet, or lie ahead. If that cannot be, look at the logger's clock.
}
log-keep = { $n ->
    [one] Keep { $n } reading
   *[other] Keep { $n } readings
}
log-said = { $room }: { $n ->
    [one] { $n } reading of a logger
   *[other] { $n } readings of a logger
}
log-from-to = { $from } to { $to }

## What is wrong

log-faults = Lines that cannot be read
log-faults-note = They are left out; all others are kept.
log-more-faults = { $n ->
    [one] And { $n } more.
   *[other] And { $n } more.
}
log-line = Line { $line }: { $fault }
log-column-temperature = temperature
log-column-humidity = humidity
log-degrees-celsius = { $value } °C
log-degrees-fahrenheit = { $value } °F
log-fault-too-few = found { $found ->
    [one] { $found } column
   *[other] { $found } columns
}, but { $needed ->
   *[other] { $needed }
} are needed. Is a value missing, or the mark between columns another?
log-fault-too-many = found { $found ->
    [one] { $found } column
   *[other] { $found } columns
} under { $headings ->
    [one] { $headings } heading
   *[other] { $headings } headings
}. Does a comma stand both in and between numbers?
log-fault-time = found “{ $found }” for the time. Write it like 2026-01-31 14:00, 31/01/2026 14:00 or 1/31/2026 2:00 PM.
log-fault-number = found “{ $found }” for the { $column }, which must be a number.
log-fault-temperature = found a temperature of { $found }, but { $low } to { $high } are allowed. Is the unit right?
log-fault-humidity = found a humidity of { $found } %, but { $low } to { $high } % are allowed.
log-fault-quote = a quotation mark is not closed. Take it out or close it.
log-error-empty = The file is empty. Choose the CSV file that the logger wrote.
log-error-long = { $lines ->
   *[other] The file has { $lines } lines, but { $most } are the most that are read. Cut it in parts.
}
log-error-columns = No columns of time, temperature and humidity were found; the file begins “{ $found }”. Name them in a heading, or put them in this order.
log-error-order = Line { $line }: “{ $found }” may have the day first or the month first, and no line shows which. Say which it is.
log-error-mixed = Line { $day } can only have the day first and line { $month } only the month. Say which the other lines have, or mend the file.
log-error-fraction = No humidity is above { $most }, but per cent from 0 to 100 are wanted. Multiply the column by 100.
log-error-nothing = { $lines ->
    [one] The { $lines } line could not be read.
   *[other] None of { $lines } lines could be read.
} { $first }
