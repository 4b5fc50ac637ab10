# The list of pieces, and a new piece.

pieces-title = Pieces
pieces-new = New piece

# Where a piece is on the first day of a stage: "Bag, since today".
whereabouts-since-today = { $stage }, since today
