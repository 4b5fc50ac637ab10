# Weight, moisture, and how far a piece has dried.

drying-title = Drying
