# Words of the page for a new piece.
