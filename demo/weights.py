#!/usr/bin/env python3
"""Makes up the weights of most of the demo's pieces (see README.md for the others), so that a long series falls as wood does and ends where it should.

    python3 demo/weights.py          all pieces, one a line
    python3 demo/weights.py j23      one piece: day counted from the day of opening, and grams

Moisture falls along a straight line in the closed bag and towards the room's own after it, with a slow sway for the
weather; the weight is the oven-dry weight times one plus the moisture, rounded to the step of the scale. Figures are
invented. Oven-dry weights are wood volume times basic density of src/wood/tables/woods.csv.
"""

import math
import sys

# The scale had steps of 5 g until this day, then of 1 g: see shop.jsonl.
NEW_SCALE_DAY = -130

# name: oven-dry g, moisture felled, moisture out of the closed bag, room's moisture (per cent),
#       first day, day out of the closed bag, days in which two thirds of the rest go, days of weighings
PIECES = {
    "j02": (540, 47, 29, 12.5, -518, -486, 30, [-518, -486, -455, -420, -371, -315, -259, -196, -140]),
    "j05": (308, 74, 60, 11.0, -453, -450, 9, [-453, -451, -448, -441, -434, -420, -406]),
    "j07": (384, 69, 30, 12.5, -428, -400, 28, [-428, -385, -343, -301, -259, -217]),
    "j09": (460, 101, 70, 11.5, -398, -392, 12, [-398, -391, -384, -377, -363, -336, -280, -224, -168]),
    "j17": (300, 70, 30, 12.4, -328, -302, 24, [-328, -294, -266, -224, -182, -147, -119, -91, -63, -35]),
    "j18": (510, 82, 33, 12.6, -318, -282, 32, [-318, -280, -245, -203, -161, -119, -91, -63]),
    "j21": (412, 84, 31, 12.5, -290, -258, 26, [-290, -252, -217, -182, -154, -140, -119, -105, -91, -63, -35, -14, -10]),
    "j23": (450, 48, 29, 12.4, -262, -232, 24, [-262, -231, -224, -217, -210, -196, -182, -168, -154, -140, -126, -112,
                                               -98, -84, -70, -42, -14]),
    "j24": (655, 95, 36, 12.8, -200, -156, 52, [-200, -154, -147, -140, -133, -126, -119, -112, -98, -84, -70, -56,
                                               -42, -28, -14]),
    "j27": (175, 72, 29, 12.5, -150, -120, 20, [-119, -112, -105, -98, -87, -77, -63, -49, -35, -21]),
    "j31": (330, 76, 76, 13.0, -60, -60, 55, [-60, -30, -4]),
    "j36": (375, 98, 40, 13.0, -46, -16, 34, [-46, -14, -7]),
    "j38": (325, 60, 60, 13.5, -34, -34, 26, [-34, -20]),
    "j41": (320, 66, 66, 13.0, -30, -30, 22, [-30, -14, -2]),
    "k01": (282, 100, 33, 13.0, -25, 0, 30, [-25, -11, -4]),
    "k03": (540, 84, 36, 13.0, -14, 12, 30, [-14]),
    "k07": (372, 47, 30, 13.0, -7, 24, 30, [-7]),
}


def moisture(name, day):
    """Moisture of a piece on a day, per cent of the oven-dry weight."""
    _, felled, out, room, first, opened, slow, _ = PIECES[name]
    if day < opened:
        return felled + (out - felled) * (day - first) / (opened - first)
    sway = 0.1 * math.sin(2 * math.pi * day / 90 + len(name) + ord(name[-1]))
    return room + sway + (out - room) * math.exp(-(day - opened) / slow)


def weights(name):
    """The weighings of a piece as (day, grams)."""
    dry, days = PIECES[name][0], PIECES[name][-1]
    series = []
    for day in days:
        step = 5 if day < NEW_SCALE_DAY else 1
        grams = dry * (1 + moisture(name, day) / 100)
        series.append((day, step * round(grams / step)))
    return series


if __name__ == "__main__":
    for piece in sys.argv[1:] or PIECES:
        print(piece, " ".join(f"{day}:{grams}" for day, grams in weights(piece)))
