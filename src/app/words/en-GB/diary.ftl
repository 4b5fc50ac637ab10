# The diary of a piece.

diary-title = Diary
