# What a sum rests on. Shared by Plan, True and the result of the wall.

sums-mean = Mean figures of { $wood }. A piece can lie 15 to 20 % either side.
sums-own-figures = Your own figures for { $wood }.
sums-stand-in = No figures for { $wood }: those of { $other } stand in. A piece can lie far from them.
sums-general = No figures for { $wood }: the middle of all { $kind ->
    [soft] softwoods
   *[hard] hardwoods
} stands in. A piece can lie far from it.
sums-wood-unsaid = The wood is not said: the middle of all hardwoods stands in. A piece can lie far from it.
