# Looking over, measuring the oval, and truing.

trueup-title = True-up
trueup-any-crack = Any crack?
