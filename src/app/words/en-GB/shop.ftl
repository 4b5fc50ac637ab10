# The workshop: climate, units, rules, jaws, bars, scale, woods, cautions, the data and about.
#
# Which ids exist: shop-<page> for the name of every page of Shop.

shop-title = Shop
shop-group-tools = In the workshop
shop-group-rules = Rules
shop-group-device = This device
shop-group-read = To read

## Names of the pages

shop-climate = Climate
shop-jaws = Jaws
shop-bars = Bars
shop-scale = Scale
shop-woods = Own woods
shop-walls = Walls
shop-bag = Bag rules
shop-days = Bag days and weigh day
shop-rhythms = Rhythms
shop-checklists = Checklists
shop-units = Units
shop-words = Words
shop-look = Look
shop-photos = Photos
shop-cautions = Cautions
shop-history = What was changed
shop-data = Data
shop-about = About
shop-away = Going away

## Used on several pages

shop-on = on
shop-off = off
shop-own = your own
shop-own-list = Your own: { $list }
shop-as-usual = as usual
shop-usual = Usual: { $value }
shop-blank-usual = Blank: the usual { $value }
shop-any-day = any day
shop-days-unit = days
shop-name = Name
shop-name-long = A name has up to { $most } characters; { $count ->
   *[other] { $count } were typed.
} Shorten it.
shop-day-time = { $day }, { $time }
shop-take-back = Take back: { $what }
shop-since = Since { $when }
shop-older = Show { $n } older
shop-when = When
shop-when-now = Now
shop-when-yesterday = Yesterday
shop-when-day = Earlier
shop-day = Day
shop-day-example = 14 Mar
shop-day-wanted = A month or a year is too little here. Write the day too, for example 14 Mar.
shop-away-none = You are here. Before you leave: which necks to open
shop-away-until = Back on { $day }

## Climate

shop-climate-intro = A cheap hygrometer will do. Read it now and then, at the shelf where the pieces stand.
shop-climate-new = New reading
shop-climate-now = { $air }; wood settles at about { $settles }
shop-air = { $temp }, { $rh }
shop-air-unread = Not read yet
shop-temperature = Temperature
shop-humidity = Humidity
shop-settles = Wood settles at about
shop-settles-at = wood settles at about { $value }
shop-settles-follows = Wood settles at about { $value } here.
shop-humidity-follows = That is about { $value } humidity.
shop-read-at = Read { $when }
shop-house-assumed = Not read: this is taken for a heated house
shop-readings = Last readings
shop-room = Where
shop-way = Read with
shop-way-humidity = Hygrometer
shop-way-bulbs = Two bulbs
shop-dry-bulb = Dry bulb
shop-wet-bulb = Wet bulb
shop-bulb-note = Keep air moving over the wet wick until both stand still. In still air it reads too high.
shop-bulbs-swapped = The wet bulb reads { $wet } and the dry one { $dry }. The wet one is never the warmer: swap them, or read again.
shop-bulbs-apart = The wet bulb reads { $wet } and the dry one { $dry }: further apart than even dry air allows. Wait until both stand still and read again.

## Jaws

shop-jaws-intro = The round { -spigots } your jaws close on. The { -spigot } to cut and the one that still fits go by this.
shop-jaws-none = Not said: 50 mm assumed
shop-jaws-new = New jaws
shop-jaws-change = Jaws
shop-jaws-note = Measure the circle with the jaws shut to their true circle, and again as far open as you trust them.
shop-jaws-example = 50 mm jaws
shop-smallest = Smallest circle
shop-largest = Largest circle
shop-jaws-swapped = The smallest circle is { $smallest } and the largest { $largest }. The largest has to be the larger: swap them, or measure again.
shop-jaws-remove = Take these jaws off the list

## Bars

shop-bars-intro = Your hollowing bars, for how far they may reach past the rest.
shop-bars-none = None yet
shop-bar-new = New bar
shop-bar-change = Bar
shop-bar-example = The long one
shop-bar-unnamed = Bar of { $diameter }
shop-diameter = Diameter
shop-bar-remove = Take this bar off the list

## Scale

shop-weighs = I weigh my pieces
shop-weighs-note = Off hides the checklist lines about weighing.
shop-weighs-not = You do not weigh
shop-scale-one = The scale
shop-scale-intro = A weight is steady only as finely as the scale can tell.
shop-scale-step = Smallest step
shop-scale-step-note = Corrects the step of the scale you use. For another scale take New scale.
shop-scale-steps = Steps of { $step }
shop-scale-new = New scale
shop-scale-new-note = Weights before and after are not compared.
shop-scales = Scales so far

## Own woods

shop-woods-intro = Woods that are not in the list of { $n }, or your own figures for one that is: give it the same name.
shop-woods-none = None; the built-in list holds
shop-wood-new = New wood
shop-wood-change = Own wood
shop-wood-example = Churchyard lime
shop-wood-note = All but the name may stay blank. A figure is a mean; your log is one log.
shop-radial = Radial shrinkage
shop-radial-note = Along the rays, green to oven-dry
shop-tangential = Tangential shrinkage
shop-tangential-note = Along the rings, green to oven-dry; the larger of the two
shop-density = Basic density
shop-density-unit = kg/m³
shop-density-note = Oven-dry weight over green volume; a specific gravity such as 0.56 is read too
shop-green = Moisture when green
shop-green-note = Water over oven-dry weight, freshly felled
shop-moulds = { -moulding(case: "start") }s easily
shop-moulds-note = A wet bag is looked at sooner.
shop-wood-unnamed = A wood needs a name. Type one, for example churchyard lime.
shop-wood-taken = There is an own wood called { $name } already. Change that one, or choose another name.
shop-wood-swapped = The radial shrinkage is the smaller of the two in every wood. Swap them, or look the figures up again.
shop-wood-radial = radial { $value }
shop-wood-tangential = tangential { $value }
shop-wood-density = { $value } kg/m³
shop-wood-green = { $value } when green
shop-wood-moulds = { -moulding }s easily
shop-wood-bare = No figures yet
shop-wood-remove = Take this wood off the list

## Walls

shop-walls-now = Even within { $rough } rough, { $finish } at the finish
shop-tolerances = Even within
shop-tolerances-note = Either way of the wall wanted. Common practice, no source.
shop-rough-tolerance = Rough wall
shop-finish-tolerance = Finish wall
shop-allowances = Wood kept in hand
shop-allowances-note = Part of the wall to leave for truing. Common practice, no source.
shop-margin = For cleaning up
shop-remount = For remounting off { -centre }

## Bag

shop-bag-now = Felt again: wet { $wet }, damp { $damp }, nothing { $nothing }
shop-bag-intro = After how many days a bag is felt again. Common practice, no source. Nothing on the bag twice running offers the open neck.
shop-bag-felt-again = Felt again
shop-bag-first = After it was bagged
shop-bag-wet = After wet
shop-bag-damp = After damp
shop-bag-nothing = After nothing
shop-bag-mouldy = Where it goes { -mouldy }
shop-bag-mouldy-note = Woods that do it easily, { -moulding } seen before, or a shop that is warm.
shop-bag-wet-short = After wet, if { -moulding } threatens
shop-bag-mould = After { -moulding } was seen

## Bag days and weigh day

shop-bag-days = Bag days
shop-bag-days-note = A round takes every bag due within a day of it. None ticked: any day.
shop-weigh-day = Weigh day
shop-weigh-day-note = Weighings wait for this day.
shop-weigh-any = Any day
shop-weigh-on = On { $day }
shop-days-now = Bags: { $bag }. Weighing: { $weigh }

## Rhythms

shop-rhythms-intro = After how many days a look and a weighing fall due. Common practice, no source.
shop-rhythm-intro = Days count from the day the piece went there.
shop-rhythm-bag-intro = When a bag is felt again stands in Bag rules. Here: how often it is weighed; a weighing is offered at each look anyway.
shop-rhythm-bag = Looks by the bag rules, weighed when you like
shop-rhythm-none = No looks and no weighings
shop-rhythm-look = Look { $steps }
shop-rhythm-weigh = Weigh { $steps }
shop-rhythm-offer = Next stage offered at day { $day }
shop-looks = Looks
shop-weighings = Weighings
shop-step-first = First after { $n ->
    [one] { $n } day
   *[other] { $n } days
}
shop-step-every = { $n ->
    [one] Every day
   *[other] Every { $n } days
}
shop-step-then = { $n ->
    [one] Then every day
   *[other] Then every { $n } days
}
shop-step-until = { $n ->
    [one] Every day until day { $day }
   *[other] Every { $n } days until day { $day }
}
shop-step-add-look = Add to the looks
shop-step-add-weighing = Add to the weighings
shop-step-remove = Take this step away
shop-every = Every
shop-until = Until day
shop-until-note = Counted from the day it went there. The last step goes on from then.
shop-until-taken = There is a step until day { $day } already. Change that one, or type another day.
shop-offer-title = Next stage
shop-offer = Offered after
shop-offer-day = day { $day }
shop-offer-never = not by days
shop-offer-note = Blank: not offered by days
shop-rhythm-usual = Back to the usual
shop-steady-title = When a weight is steady
shop-steady-note = How long it has to stay put.
shop-steady = Steady for

## Units

shop-units-intro = How this device shows numbers. You may always type the other: 3/8, 9.5 mm, 1 lb 4.
shop-lengths = Lengths
shop-weights = Weights
shop-temperatures = Temperature
shop-unit-example = Shown as { $value }

## Words

shop-words-intro = The words of the workshop on this device.
shop-words-en-GB = UK
shop-words-en-US = US
shop-words-example = { -spigot(case: "start") }, { -callipers }, { -moulding }

## Look

shop-look-intro = On this device only.
shop-theme = Light or dark
shop-theme-system = As the device says
shop-theme-light = Light
shop-theme-dark = Dark
shop-text-size = Size of the text
shop-text-normal = Normal text
shop-text-large = Large text
shop-text-huge = Very large text
shop-hand = Hand and motion
shop-left-handed = Left-handed
shop-left-handed-note = Keys and thumb buttons on the left
shop-reduced-motion = Nothing moves
shop-reduced-motion-note = Pages and switches change at once

## Cautions

shop-cautions-note = All of them, to read again
shop-cautions-intro = Local codes, makers' instructions and licensed people come before anything here.
shop-cautions-general = At all times

## History

shop-history-intro = Everything changed in Shop, newest first. How this device looks is not part of it.
shop-history-none = Nothing was changed yet
shop-history-now = { $n ->
    [0] Nothing yet
    [one] { $n } change
   *[other] { $n } changes
}
shop-and-more = { $first }; { $n ->
    [one] { $n } more
   *[other] { $n } more
}
shop-said = { $label }: { $value }
shop-said-cautions = General cautions read
shop-said-jaws = Jaws: { $name }
shop-said-jaws-removed = Jaws taken off the list: { $name }
shop-said-bar = Bar: { $name }
shop-said-bar-removed = Bar taken off the list: { $name }
shop-said-wood = Own wood: { $name }
shop-said-wood-removed = Own wood taken off the list: { $name }
shop-said-line-worded = Checklist line worded
shop-said-line-hidden = Checklist line hidden
shop-said-line-shown = Checklist line shown again
shop-said-line-moved = Checklist line moved
shop-said-line-reset = Checklist line as built in
shop-said-scale = New scale, steps of { $step }
shop-said-away = Away, back on { $day }
shop-said-back = Back from away
shop-said-unknown = Something that a newer version recorded

shop-checklists-built-in = As built in
shop-checklists-changed = { $n ->
    [one] { $n } change of your own
   *[other] { $n } changes of your own
}

## Data

shop-data-intro = Everything is kept as plain files in one folder, on this device. Nothing leaves it.
shop-data-place = Where it is
shop-data-pieces = What is in it
shop-data-on-shelf = On the shelf
shop-data-deleted = Deleted, can be brought back
shop-data-unread = What could not be read
shop-data-all-read = All of it was read
shop-data-newer = { $n ->
    [one] { $n } entry was recorded by a newer version of Evenwall. It is kept; bring this one up to date to see it.
   *[other] { $n } entries were recorded by a newer version of Evenwall. They are kept; bring this one up to date to see them.
}
shop-data-problems = { $n ->
    [one] { $n } thing could not be read
   *[other] { $n } things could not be read
}
shop-data-sync = On several devices
shop-data-sync-how = Let any file-sync service carry the whole folder to your other devices and point Evenwall at it there. Two devices that both recorded offline come together by themselves: nothing is lost and there is nothing to sort out.

## About

shop-version = Version { $version }
shop-about-what = What it is
shop-about-job = A bench companion for a turner of green hollow vessels: even walls, slow drying, nothing forgotten on the way from the log to the finished piece.
shop-about-never = It never clears a piece or a speed, and it never says that a crack will not come. That judgement is yours.
shop-about-sources = Where the figures come from
shop-about-figures = Woods: Wood Handbook of the Forest Products Laboratory, Miles and Smith 2009, DIN 68100 as reprinted, trade sheets; some from memory. A table is a mean of many logs.
shop-about-air = Settling moisture: Wood Handbook, equation 4-5. Humidity from two bulbs: Sonntag 1990 and WMO No. 8.
shop-about-rules = Walls, rhythms, bag rules and checklists: common practice, no source.
shop-about-licence = Licences
shop-about-ours = Evenwall is free software under the MIT licence.
shop-about-font = Evenwall Text is Atkinson Hyperlegible Next with equal-width figures, under the SIL Open Font License 1.1.
shop-about-offline = No account, no network, nothing is reported to anyone.
shop-about-made-with = Made with
shop-about-toolkit = The screens are made with Slint, used under its royalty-free licence.

## Photos

shop-photos-intro = Photos are copied into the shelf, smaller, upright and without the place where they were taken. The picture itself is never touched.
shop-picture-folder-title = Newest pictures
shop-picture-folder = Look in this folder
shop-picture-folder-note = The whole name of the folder. Blank: the usual picture folders of this device.
shop-picture-folder-usual = The usual picture folders of this device
shop-photos-kept = Kept photos
shop-photos-kept-text = A photo that is removed can be brought back, from its entry in the diary. Its file stays until you tidy.
shop-photos-tidy-note = Says what it would free first. Touches only what was removed { $days } days ago or longer.
