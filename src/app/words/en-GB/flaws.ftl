# Knots, bark, pith, cracks: where they are and what was done.

flaws-title = Flaws
