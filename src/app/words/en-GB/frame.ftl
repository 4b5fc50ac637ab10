# Words round the pages: undo bar, save errors, the demo's notice.

recorded = Recorded
undo-taken-back = Taken back: { $what }
undo-further = Undo also: { $what }
refused-title = That cannot be recorded
action-try-again = Try again
not-saved = Not saved. { $why }
nothing-open-title = No piece open
nothing-open-text = Pick one from the list.
demo-banner = Demo: invented and drawn, nothing is kept

notice-see = See
notice-problems = { $n ->
    [one] One thing on the shelf could not be read. It is kept as it is.
   *[other] { $n } things on the shelf could not be read. They are kept as they are.
}
