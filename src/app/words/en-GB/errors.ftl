# What went wrong: what was found, what is allowed, what to do.

error-number-empty = Nothing was typed. Type the { $what }, for example { $example }, or leave it for later.
error-number-long = { $count ->
   *[other] { $count } characters are too many for the { $what }; at most { $most } are read. Type the number alone, for example { $example }.
}
error-number-nonsense = “{ $found }” cannot be read as the { $what }. Type a number, for example { $example }.
error-number-several = “{ $found }” holds more than one number. Type one { $what } at a time, for example { $example }.
error-number-negative = { $found } is below nought. Type the { $what } without the minus sign, from { $low } to { $high }.
error-number-range = { $found } was read. For the { $what }, { $low } to { $high } is allowed. Check the figure and its unit, then type it again.
error-number-unit = The unit “{ $unit }” does not fit here. Type the { $what } in { $units }, for example { $example }.
error-number-fraction = “{ $found }” is not a fraction the app can read. Use whole numbers over 2, 4, 8, 16, 32 or 64, for example 1 3/8.
error-number-whole = { $found } was read, but the { $what } is a whole number. Type it without a fraction, for example { $example }.

error-units-length = mm, cm or in
error-units-mass = g, kg, oz or lb
error-units-temperature = °C or °F
error-units-percent = %
error-units-speed = rpm
error-units-count = plain figures
