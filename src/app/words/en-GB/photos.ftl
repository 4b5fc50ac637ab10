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
