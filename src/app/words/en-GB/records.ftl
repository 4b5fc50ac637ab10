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
