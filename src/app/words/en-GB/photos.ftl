# Photos: taken in, shown, measured on, tidied away.

photos-added = { $n ->
    [one] Photo added
   *[other] { $n } photos added
}
photos-removed = Photo removed
photos-brought-back = Photo brought back
photos-marked = Drawn on the photo
photos-importing = Photo { $n } of { $of }
photos-stop = Stop
photos-refused-title = Not every picture was added
photos-refused = { $name }: { $why }.
photos-again = { $name } is here already and was not added again.
photos-nowhere = Photos cannot be kept here.
photos-not-here = Photo not here yet

photos-failed = The program failed at these pictures; nothing was added. Try them one at a time.
photos-drop-where = Open a flaw, a piece or a page of photos first, then drop the pictures there.
photos-damaged = This photo is damaged

## The photos of one thing

photos-title = Photos
photos-none = No photo yet
photos-count = { $n ->
    [one] { $n } photo
   *[other] { $n } photos
}
photos-empty = No photo yet.
photos-empty-flaw = No photo yet. Take one with the phone, then add it here: in some weeks it shows whether it grew.
photos-newest = Take from newest pictures
photos-choose-file = Choose a file
photos-all = All { $n } photos
photos-drawn-all = The photos of this demo are drawn by the program, not photographed.
photos-drawn = Drawn by the program for this demo, not photographed.
photos-on-portrait = Portrait
photos-on-bag-check = A look at the bag
photos-on-finished = The finished piece
photos-on-entry = An entry of the diary
photos-open = Open the photo
photos-of-entry = Photos of this entry
photos-of-bag-check = Photo of this bag

## The newest pictures

photos-newest-title = Newest pictures
photos-newest-hint = Touch a picture to add it to { $mark }: { $of }.
photos-newest-several-hint = Touch those to add to { $mark }: { $of }.
photos-newest-looking = Looking for pictures.
photos-newest-none = No pictures in { $folders }. Take one, or say in Shop, Photos which folder to look in. New ones show here by themselves.
photos-no-folders = the usual folders, as this device names none
photos-several = Several
photos-add-picked = { $n ->
    [0] Touch some pictures
    [one] Add { $n } photo
   *[other] Add { $n } photos
}

## One photo

photos-previous = Photo before
photos-next = Photo after
photos-larger = Larger
photos-smaller = Smaller
photos-mark = Mark and measure
photos-save-out = Save as a file
photos-went = The photo is now a file of its own: { $file }
photos-remove = Remove photo
photos-bring-back = Bring back
photos-is-removed = This photo is removed. It can be brought back for { $days } days, and longer until you tidy.
photos-tool-spot = Spot
photos-tool-scale = Known length
photos-tool-crack = Crack
photos-known = Known length
photos-measured = Crack { $length }
photos-save-marks = Save what is drawn

## Two photos

photos-compare = Compare two
photos-compare-title = Side by side
photos-compare-none = Two photos of this flaw are needed. Add one more on the page of the flaw.
photos-first = first
photos-second = second
photos-older = Older photo, { $which }
photos-newer = Newer photo, { $which }
photos-same-day = Both of one day.
photos-apart = { $days } apart.
photos-longer = { $before }, then { $after }: { $by } longer.
photos-shorter = { $before }, then { $after }: { $by } shorter, which is the error of measuring on a photo.
photos-no-longer = { $before } on both.
photos-measure-both = Measure the crack on both to compare its length.

photos-just-taken = Taken in the last ten minutes
photos-before = Before that

photos-hint-spot = Tap the spot that matters.
photos-hint-scale = Tap both ends of something whose length you know: a rule, a coin, the { -spigot }.
photos-hint-known = Now say how long that is.
photos-hint-scale-first = Set the scale first: tap both ends of a length you know.
photos-hint-crack = Tap both ends of the crack.
photos-hint-too-short = The known length is too short on the photo: choose a longer one.
photos-hint-done = It is true where the known length and the crack lie in one plane, square to the camera.

photos-tidy-title = Tidy photos
photos-tidy-nothing = No photo was deleted { $days } days ago or longer.
photos-tidy-text = { $n ->
    [one] One photo was deleted { $days } days ago or longer. Removing its file frees { $size } MB.
   *[other] { $n } photos were deleted { $days } days ago or longer. Removing their files frees { $size } MB.
} It cannot be brought back afterwards.
photos-tidy-do = Remove for good
photos-tidied = { $size } MB freed.

## The diary

diary-photo-added = Photo: { $of }
diary-photo-removed = Photo removed: { $of }
diary-photo-back = Photo brought back: { $of }
diary-photo-marked = Drawn on a photo: { $of }
diary-photo-of-some = of this piece
diary-photo-of-piece = the piece
diary-photo-of-look = a look at the bag
diary-photo-of-finished = finished
diary-photo-taken = taken { $day }, { $time }
diary-photo-length = crack { $length }
