# Only what differs from en-GB; the ids are listed there.

stage-stabilise = Stabilize
group-stabilising = Stabilizing
