# The list of pieces, and a new piece.

pieces-title = Pieces
pieces-new = New piece
