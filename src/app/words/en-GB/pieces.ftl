# The list of pieces, and a new piece.

pieces-title = Pieces
pieces-new = New piece
# done counts the finished ones; lost ones stand apart.
pieces-counts = { $going } on the go, { $done } done
pieces-search = Find a piece
pieces-wood-unknown = Wood not said

## Which are listed

pieces-filter-all = All
pieces-filter-finished = Finished
pieces-filter-lost = Lost
pieces-filter-other-ends = Other ends
pieces-filter-deleted = Deleted

## In which order

pieces-sort-title = Order
pieces-sort-due = Next due first
pieces-sort-mark = By mark
pieces-sort-newest = Newest first
pieces-sort-untouched = Longest untouched
pieces-sort-log = By log, twins together
pieces-no-log = Log not said

## What is due next. $when is "today", "Sun 15" or the next line.

pieces-when-you-like = when you like
pieces-due-check = Check { $when }
pieces-due-look = Look { $when }
pieces-due-weigh = Weigh { $when }
pieces-due-flaw = Flaw { $when }
pieces-due-lathe = Lathe { $when }
pieces-due-offer = Ready for { $stage }
pieces-due-rename = Mark used twice
pieces-due-find = Look for it
pieces-due-came-back = Came back

## Twins: pieces from one log

pieces-twins = twins { $marks }
pieces-twins-more = twins { $marks } and { $n } more

## What the order goes by, on the cards. $ago is "today", "3 weeks ago".

pieces-entered = Entered { $ago }
pieces-last-noted = Last noted { $ago }

## Nothing to show

pieces-empty-title = No pieces yet
pieces-empty-text = New piece starts with its mark.
pieces-no-match = Nothing like “{ $typed }”
pieces-no-match-text = Searched: mark, wood, place, notes, source and log.
pieces-nothing-here = Nothing here now

# Where a piece is on the first day of a stage: "Bag, since today".
whereabouts-since-today = { $stage }, since today
