# Records that leave the app and come in: other devices, backup, calendar, report, tables, tags, import.

## Other devices

records-arrived-shop = From another device: the shop's settings changed
records-arrived-one = From another device: { $mark } changed
records-arrived = From another device: { $n } pieces changed
records-arrived-both = From another device: { $n } pieces and the shop's settings changed
records-this-device = this device
records-other-device = another device ({ $id })
records-copied-device = { $name }, a copy of it
records-name-label = What this device is called
records-name-long = A name of { $n } letters is too long; at most { $most } fit. Shorten it.
records-no-device = This shelf was opened for reading only, so this device has no name here.
records-named = Device: { $name }
records-last-wrote = last wrote { $ago }
records-alone = Only this device has written to the shelf so far. Carry the folder to another one with any file-sync service and open it there.

## Backup

records-backed-up = Backup made
records-backup-old = The last backup was made { $ago }.
records-backup-never = There is no backup of this shelf yet.
records-backup-no-folder = Choose a folder for backups first, best on another disk.
records-backup-last = Last backup { $ago }
records-backup-none = No backup yet
records-backup-none-there = There is no backup in this folder yet.
records-backup-done = { $name } is written and was read back: { $n ->
    [one] one file
   *[other] { $n } files
}.
records-restore-title = Restore this backup?
records-restore-text = Made { $ago }: { $pieces ->
    [one] one piece
   *[other] { $pieces } pieces
}, { $photos ->
    [0] no photos
    [one] one photo
   *[other] { $photos } photos
}. What is missing here comes back. Nothing that is here changes.
records-restore-button = Restore
records-restored-nothing = Everything in this backup is here already.
records-restored = { $lines ->
    [one] One entry came
   *[other] { $lines } entries came
} back, with { $pieces ->
    [one] one piece
   *[other] { $pieces } pieces
} that had gone and { $photos ->
    [one] one photo
   *[other] { $photos } photos
}.
records-restored-unreadable = { $n ->
    [one] One line of it cannot be read
   *[other] { $n } lines of it cannot be read
} and stays in the backup.
records-restored-left-out = { $n ->
    [one] One file that is not Evenwall's stays
   *[other] { $n } files that are not Evenwall's stay
} in the backup.

## Files

records-no-place = Say where the file goes first.
records-saved = Written: { $path }

## Calendar

records-calendar-name = Evenwall
records-calendar-no-file = Choose a file for the calendar first, ending in .ics.
records-calendar-foreign = { $path } holds another calendar. Choose a file of its own for Evenwall.
records-event = { $mark }: { $what }
records-event-due = Due { $day }

## What is due

records-due-nothing = Nothing is due today.
records-due-overdue = Overdue
records-due-today = Today
records-due-coming = Coming up

## Report

records-no-piece = This piece is not on the shelf any more.
records-report-name = { $mark }, { $wood }
records-report-finished = { $form }, finished { $day }
records-report-stands = { $form }. { $stands }
records-report-facts = What it is
records-report-wall = Wall
records-report-weight = Weight
records-report-finish = Finish
records-report-signed = Signed
records-report-story = How it was made
records-report-curve = How it dried
records-report-flaws = Knots and cracks
records-report-photos = Photos
records-report-care = How to care for it
records-report-notes = Notes of the shop
records-report-footer = Made with Evenwall, { $day }.
records-section-says = Half section of { $mark }: the left half from outside, the right half cut open, with the wall at each place
records-section-measured = Outside and wall as measured, at one scale.
records-section-outline = Wall as measured; the outside is an outline scaled to the size.
records-section-wanted = No wall was read: drawn with the wall wanted.
records-curve-says = From { $from } on { $first } to { $to } on { $last }.
records-curve-day = { $day } { $month } { $year }
records-story-span = { $first } to { $last }
records-story-since = since { $first }
records-story-walls = { $n ->
    [one] Wall read once: { $range }
   *[other] Wall read { $n } times: { $range }
}
records-story-bag = Bag felt { $n ->
    [one] once
   *[other] { $n } times
}: { $wet } wet, { $damp } damp, { $nothing } with nothing on it
records-story-looked = Looked over { $n ->
    [one] once
   *[other] { $n } times
}
records-story-weights = Weighed { $n } times: { $from } to { $to }
records-story-weight = Weighed: { $mass }
records-story-mould = { -moulding(case: "start") } seen { $day }
records-story-crack = Crack seen { $day }
records-care-usual =
    Keep it out of direct sun and away from radiators and stoves: wood goes on moving with the air of the room.
    Dust it with a dry cloth. It is not made to hold water or food.
    It may still move a little with the seasons, most in its first heated winter.
records-care-long = { $n } letters are too many for the care words; at most { $most } fit. Shorten them.
records-care-changed = Care words changed

## Tables

records-tables-saved = { $n } tables are written to { $folder }.

## Tags

records-tags-title = Tags
records-tag-felled = Felled { $day }
records-tag-turned = Begun { $day }
records-tag-weight = { $mass }, { $day }
records-tag-next = Next look { $day }

## Import

records-import-title = Move in from a spreadsheet
records-import-intro = In the spreadsheet, save the sheet as CSV: the first line holds the names of the columns, each line below it a piece or a weight. Nothing is recorded before you have seen what comes of it.
records-import-no-file = There is no file { $path }.
records-import-left-out = Leave out
records-import-to-stage = Stage
records-import-to-since = In this stage since
records-import-to-method = How it dries
records-import-to-begun = Begun on
records-import-to-end = How it ended
records-import-to-ended = Ended on
records-import-to-weight = Weight
records-import-to-tare = Tare
records-import-to-weighed = Weighed on
records-import-to-note = Note for the diary
records-import-to-weight-on = Weight on { $day }
records-import-which-mark = Say which column holds the mark.
records-import-summary = { $pieces ->
    [one] One new piece
   *[other] { $pieces } new pieces
}, { $weights ->
    [one] one weight
   *[other] { $weights } weights
}{ $out ->
    [0] { "" }
    [one] ; one line is left out
   *[other] ; { $out } lines are left out
}.
records-import-weights = { $n ->
    [one] one weight
   *[other] { $n } weights
}
records-import-existing = On the shelf already: only { $weights }
records-import-fault = Line { $line }, { $column }: { $what }
records-import-fault-row = Line { $line }: { $what }
records-import-no-mark = there is no mark. Write one, or this line is left out.
records-import-disagree = { $mark } stands on line { $line } already and says something else. Make the two agree.
records-import-none-of = "{ $found }" is none of these: { $all }. Write one of them.
records-import-nothing = There is nothing to bring in: no line can be read as a piece or a weight. Look at what is said about the lines.
records-import-run = { $n ->
    [one] Bring in one piece
   *[other] Bring in { $n } pieces
}
records-import-done = { $n ->
    [one] One piece
   *[other] { $n } pieces
} brought in
records-import-first-end = An earlier import was cut off. Go on with it or take it back first.
records-import-none-open = No import was cut off.
records-import-none-kept = This device has made no import that could be taken back.
records-import-taken-back = The import is taken back
records-import-kept = The import is taken back, but for what was worked on since: { $marks }
records-import-cut-off = An import was cut off
records-import-cut-off-text = { $n ->
    [one] One piece was
   *[other] { $n } pieces were
} coming in from a spreadsheet when Evenwall stopped. Some may be here already.
records-import-go-on = Go on with it
records-import-take-back = Take it all back
records-import-later = Later
records-import-said-open = Import begun
records-import-said-done = Import done
records-import-said-back = Import taken back

## Screens
#
# Which ids exist: out-field-<key> and out-about-<key> for every field about this device, out-write-<what> and
# out-write-<what>-note for what can be written about a piece, out-table-<table> for every table.

out-mm = mm
out-done = Done
out-show = Show it
out-not-shown = { $path } is written, but this computer shows it in no program. Open it yourself. { $why }
out-no-folder = Not chosen yet

out-field-name = What this device is called
out-about-name = Other devices show it in the diary. Blank takes the name away.
out-example-name = bench phone
out-field-folder = Folder for documents and backups
out-about-folder = The whole path of a folder that is there, outside the shelf; best on another disk.
out-example-folder = /home/me/Documents
out-field-calendar-file = Calendar file
out-about-calendar-file = The whole path of a file of its own, ending in .ics. Blank keeps none.
out-example-calendar = /home/me/Documents/evenwall.ics
out-field-reminder-time = Rings at
out-about-reminder-time = The local time of day of the alarms, from 0:00 to 23:59.
out-example-time = 9:00
out-field-quiet-from = Quiet from
out-about-quiet-from = Nothing is said from then on.
out-field-quiet-until = Quiet until
out-about-quiet-until = What fell due in between is said then.
out-field-tag-width = Width of a label
out-about-tag-width = As the packet of labels says.
out-field-tag-height = Height of a label
out-about-tag-height = As the packet of labels says.
out-field-care = How to care for it
out-about-care = A paragraph each line. Leave it blank for none.
out-field-import-file = Where the spreadsheet is
out-about-import-file = The whole path of a CSV file.
out-field-restore-file = Where the backup is
out-about-restore-file = The whole path of the zip file.
out-example-backup = /media/stick/evenwall-backup.zip
out-no-time = “{ $found }” is no time of day. Type one from 0:00 to 23:59, like 9:00.
out-no-label = “{ $found }” is no side of a label. Type { $least } to { $most } mm.

shop-group-records = Records in and out
shop-backup = Backup
shop-reminders = Reminders
shop-devices = Devices
shop-tables = Tables
shop-tags = Tags
shop-care = Care words
shop-import = Move in from a spreadsheet

out-backup-intro = One file with everything, read back before it gets its name. Keep it on another disk.
out-back-up = Back up now
out-restore = Restore
out-restore-intro = A restore adds what is missing here and changes nothing that is there.
out-restore-elsewhere = A backup somewhere else
out-every = Ask for a backup
out-every-week = After a week
out-every-month = After 30 days
out-every-quarter = After 90 days
out-every-never = Never

out-reminders-intro = In your own calendar, and on this computer while Evenwall is open.
out-reminders-both = Calendar file, and on this computer
out-reminders-calendar = Calendar file
out-reminders-computer = On this computer while it is open
out-reminders-none = None; Today shows what is due
out-calendar = Calendar
out-calendar-how = Every coming check with an alarm. Import the file into your calendar, or subscribe to it where the calendar can. It is kept up to date while Evenwall is open.
out-calendar-none = None kept yet
out-calendar-save = Save the calendar now
out-calendar-fault = The calendar is not up to date. { $why }
out-calendar-stuck = The calendar is not up to date
out-notify-title = On this computer
out-notify = Say what is due
out-notify-note = One summary, once a day for each thing
out-remind-one = { $mark }: { $what }
out-remind = { $n } to do today{ $late ->
    [0] { "" }
    [one] , one of them overdue
   *[other] , { $late } of them overdue
}
out-remind-more = and { $n } more

out-devices-intro = Every entry in a diary knows which device wrote it. Give this one a name that you will know.
out-devices-others = Others on this shelf
out-devices-alone = Only this one
out-devices-now = { $n ->
    [one] This one and another
   *[other] This one and { $n } others
}
out-no-name = No name yet

out-tables-note = As CSV for a spreadsheet
out-tables-intro = Everything that can be counted, as CSV with units in the names of the columns and dates that every spreadsheet reads.
out-tables-which = What is written
out-tables-write = Write the tables
out-table-pieces = Pieces: details, stage, how each ended
out-table-readings = Wall readings
out-table-weighings = Weighings
out-table-checks = Bag checks
out-table-climate = Climate
out-table-flaws = Flaws, what was done and seen

out-tags-intro = A label for neck or shelf: mark, wood, dates, first weight, next look, and a code that holds the mark as plain text.
out-tags-none = No piece is drying, so there is nothing to label.
out-tags-size = { $width } × { $height } mm
out-tags-write = { $n ->
    [one] Write the tag of one piece
   *[other] Write the tags of { $n } pieces
}
out-label = One label
out-paper = Paper
out-paper-a4 = A4
out-paper-letter = Letter

out-care-intro = They stand at the end of the report of a finished piece.
out-care-now = As they stand
out-care-change = Change them
out-care-usual = Back to the usual words
out-care-own = Your own
out-care-none = None: the report ends without them.

out-import-note = Pieces and weights from a CSV
out-import-last = The last import
out-import-columns = Columns
out-import-columns-note = Touch a column to say what it holds.
out-import-blank = blank on every line
out-import-preview = What comes in
out-import-faults = Left out
out-import-faults-note = Mend these in the spreadsheet, or bring the others in without them.
out-import-holds = It holds
out-import-no-column = No spreadsheet is open. Go back and choose one.

out-report = Report
out-write-report-buyer = For whoever gets it
out-write-report-buyer-note = Portrait, section, story, care; without your notes
out-write-report-shop = For the shop
out-write-report-shop-note = With notes, places and reasons
out-tag = Tag
out-write-tag = Its label, to print
out-write-tag-note = Mark, wood, dates, next look, code
out-write-looks = Its coming checks, once
out-write-looks-note = A calendar file of this piece alone
