# Numbers, units, and the names of what is entered.

## Units, as shown small after a number

unit-mm = mm
unit-cm = cm
unit-in = in
unit-g = g
unit-kg = kg
unit-oz = oz
unit-lb = lb
unit-celsius = °C
unit-fahrenheit = °F
unit-percent = %
unit-rpm = rpm

## Numbers

number-range = { $low } to { $high }
# Shown where there is no number.
number-unknown = –
number-pounds-ounces = { $pounds } lb { $ounces }

## Settings

length-unit-millimetre = mm
length-unit-inch-decimal = inches, decimal
length-unit-inch-fraction = inches, fractions
mass-unit-gram = grams
mass-unit-ounce-pound = ounces and pounds
temperature-unit-celsius = °C
temperature-unit-fahrenheit = °F

## Which reading is meant

ask-one = { $first }?
ask-two = { $first } or { $second }?
ask-three = { $first }, { $second } or { $third }?
ask-separator = “{ $typed }” can be read in two ways.
ask-missing-point = { $typed } is outside the usual for the { $what }. No point is put in for you.
ask-unit = { $typed } does not fit the unit that is set.

## What is entered, as it reads inside a sentence

quantity-outside-diameter = outside diameter
quantity-from-centre = distance from the { -centre } mark
quantity-log-diameter = log diameter
quantity-height = height from rim to foot line
quantity-mouth = mouth
quantity-wall-reading = wall
quantity-wall-wanted = wall wanted
quantity-wall-finish = finish wall
quantity-floor-reading = floor
quantity-floor-wanted = floor wanted
quantity-spigot-diameter = { -spigot }
quantity-spigot-length = { -spigot } length
quantity-depth-drilled = depth drilled
quantity-rod-depth = depth of the rod
quantity-bar-diameter = bar
quantity-bar-reach = reach
quantity-pith-distance = distance of the pith
quantity-station-depth = station depth
quantity-flaw-size = length of the flaw
quantity-tolerance = tolerance
quantity-jaw-circle = jaw circle
quantity-weight = weight
quantity-tare = tare
quantity-scale-step = scale step
quantity-humidity = humidity
quantity-moisture-meter = moisture reading
quantity-settled-moisture = moisture it settles at
quantity-temperature = temperature
quantity-speed = speed
quantity-allowance = wood kept in hand
quantity-shrinkage = shrinkage
quantity-green-moisture = moisture when green
quantity-basic-density = basic density in kg/m³
quantity-wet-bulb = wet bulb
quantity-bag-days = number of days
quantity-steady-days = number of days
quantity-days = number of days
quantity-pieces = number of pieces
