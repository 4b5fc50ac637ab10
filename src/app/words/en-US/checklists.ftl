# Only what differs from en-GB; the ids are listed there.

line-hollow-sections-end-why = Cut so that the fibers behind hold up the ones you cut.
line-hollow-sections-side-why = Cut so that the fibers behind hold up the ones you cut.
line-hollow-rest-why = Less overhang, and a trailing tip is less apt to catch.
line-stabilise-decide-why = Not every knot wants glue, and a glued spot cannot shrink with its neighbors.
line-stabilise-gone-off-why = Wet glue flies, and its vapor whitens the wood in a closed bag.
line-bag-stand = Neck gathered, tucked under; cool, no sun, no draft
line-bag-turn-why = The water leaves with the bag and the wood never feels a draft.
line-air-stand-why = The bag keeps the draft off, the open neck lets the damp go.
line-indoors-off-heat = Off the radiator, stove, sill and mantel
line-finish-measure-why = The last sixteenth is the one that goes through.
caution-general-4 = Solvents, alcohol and finishes: their vapor burns and harms, and an alcohol flame can hardly be seen. Fresh air, no flame, heater or grinding spark near, lids on, out of reach of children.
caution-general-6 = Local codes, and the makers' instructions for lathe, chuck, glue and finish, come before anything here. Wiring, dust collection and fire protection are for licensed people. Evenwall helps you remember; it never clears a piece or a speed. That judgment is yours.
