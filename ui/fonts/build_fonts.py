"""Builds the four Evenwall Text faces and coverage.txt in this folder.

    npm pack @expo-google-fonts/atkinson-hyperlegible-next@0.4.1 && tar xzf *.tgz
    pip install fonttools==4.68.0
    python build_fonts.py package

Source: Atkinson Hyperlegible Next 2.001, SIL Open Font License 1.1 (LICENSE-next.txt).
What is changed, and why:
  - the family is called "Evenwall Text", because the outlines are no longer the published ones;
  - equal-width figures are the default, so a number does not jump while it is stepped or typed;
  - the Latin Extended-A letters the face lacks are put together from its own letters and accents;
  - eighths, prime marks, plain arrows, a tick and a box are added;
  - a missing letter is drawn as a box that can be seen.
coverage.txt lists the code points the faces can draw, one range a line, for the program: what is
not in it is shown as the box.
"""

import sys
from pathlib import Path

from fontTools.misc.transform import Transform
from fontTools.pens.transformPen import TransformPen
from fontTools.pens.ttGlyphPen import TTGlyphPen
from fontTools.ttLib import TTFont

FACES = [
    (400, "400Regular", 78),
    (600, "600SemiBold", 104),
    (700, "700Bold", 118),
    (800, "800ExtraBold", 136),
]

# letter, base, accent. The accent goes over the middle of the base.
TOP = [
    *[(c, b, "uni0302") for c, b in zip("ĈĉĜĝĤĥŜŝ", "CcGgHhSs")],
    ("Ĵ", "J", "uni0302"),
    ("ĵ", "uni0237", "uni0302"),
    *[(c, b, "uni0306") for c, b in zip("ĔĕŎŏŬŭ", "EeOoUu")],
    ("Ĭ", "I", "uni0306"),
    ("ĭ", "dotlessi", "uni0306"),
    *[(c, b, "uni0304") for c, b in zip("Ōō", "Oo")],
    ("Ĩ", "I", "tildecomb"),
    ("ĩ", "dotlessi", "tildecomb"),
    ("Ũ", "U", "tildecomb"),
    ("ũ", "u", "tildecomb"),
]
CAP_LIFT = {"uni0302": 172, "uni0306": 172, "uni0304": 161, "tildecomb": 172}
SAME = {"µ": "μ", "‑": "-", "\u202f": "\u00a0", "\u2007": "\u00a0", "ⁿ": None, "☐": "□"}


def box_of(font, name):
    glyph = font["glyf"][name]
    glyph.recalcBounds(font["glyf"])
    return glyph.xMin, glyph.yMin, glyph.xMax, glyph.yMax


def add(font, name, codes, pen, advance):
    glyph = pen.glyph()
    font["glyf"][name] = glyph
    glyph.recalcBounds(font["glyf"])
    font["hmtx"][name] = (advance, getattr(glyph, "xMin", 0))
    if name not in font.getGlyphOrder():
        font.setGlyphOrder([*font.getGlyphOrder(), name])
    for code in codes:
        for table in font["cmap"].tables:
            if table.isUnicode():
                table.cmap[ord(code)] = name


def polygon(pen, points):
    pen.moveTo(points[0])
    for point in points[1:]:
        pen.lineTo(point)
    pen.closePath()


def stroke(pen, a, b, width):
    """One straight stroke from a to b with square ends, wound clockwise."""
    dx, dy = b[0] - a[0], b[1] - a[1]
    length = (dx * dx + dy * dy) ** 0.5
    ux, uy = dx / length * width / 2, dy / length * width / 2
    polygon(
        pen,
        [
            (round(a[0] - ux - uy), round(a[1] - uy + ux)),
            (round(b[0] + ux - uy), round(b[1] + uy + ux)),
            (round(b[0] + ux + uy), round(b[1] + uy - ux)),
            (round(a[0] - ux + uy), round(a[1] - uy - ux)),
        ],
    )


def accented(font):
    cmap = font.getBestCmap()
    for letter, base, accent in TOP:
        b, a = box_of(font, base), box_of(font, accent)
        lift = CAP_LIFT[accent] if letter.isupper() or base == "h" else 0
        pen = TTGlyphPen(font.getGlyphSet())
        pen.addComponent(base, (1, 0, 0, 1, 0, 0))
        shift = round((b[0] + b[2]) / 2 - (a[0] + a[2]) / 2)
        pen.addComponent(accent, (1, 0, 0, 1, shift, lift))
        add(font, f"uni{ord(letter):04X}", letter, pen, font["hmtx"][base][0])
    for letter, base in (("Ŗ", "R"), ("ŗ", "r")):
        b, a = box_of(font, base), box_of(font, "uni0326")
        pen = TTGlyphPen(font.getGlyphSet())
        pen.addComponent(base, (1, 0, 0, 1, 0, 0))
        shift = round((b[0] + b[2]) / 2 - (a[0] + a[2]) / 2)
        pen.addComponent("uni0326", (1, 0, 0, 1, shift, 0))
        add(font, f"uni{ord(letter):04X}", letter, pen, font["hmtx"][base][0])
    for letter, base in (("Ŀ", "L"), ("ŀ", "l")):
        dot = cmap[0xB7]
        b, d = box_of(font, base), box_of(font, dot)
        pen = TTGlyphPen(font.getGlyphSet())
        pen.addComponent(base, (1, 0, 0, 1, 0, 0))
        x = b[2] + 25 - d[0] - (250 if base == "L" else 0)
        pen.addComponent(dot, (1, 0, 0, 1, x, 40))
        advance = font["hmtx"][base][0] + (0 if base == "L" else d[2] - d[0] + 50)
        add(font, f"uni{ord(letter):04X}", letter, pen, advance)
    for letter, base, y in (("Ŧ", "T", 60), ("ŧ", "t", -30)):
        b, h = box_of(font, base), box_of(font, "hyphen")
        pen = TTGlyphPen(font.getGlyphSet())
        pen.addComponent(base, (1, 0, 0, 1, 0, 0))
        pen.addComponent("hyphen", (1, 0, 0, 1, round((b[0] + b[2]) / 2 - (h[0] + h[2]) / 2), y))
        add(font, f"uni{ord(letter):04X}", letter, pen, font["hmtx"][base][0])


def signs(font, heavier, weight):
    cmap = font.getBestCmap()
    # Eighths: figures of the next heavier face at six tenths, so that the strokes match.
    source = heavier.getGlyphSet()
    bar = box_of(font, "fraction")
    for letter, top in zip("⅛⅜⅝⅞", ("one", "three", "five", "seven")):
        pen = TTGlyphPen(font.getGlyphSet())
        a, d = box_of(heavier, top), box_of(heavier, "eight")
        width = round((a[2] - a[0]) * 0.6)
        source[top].draw(TransformPen(pen, Transform(0.6, 0, 0, 0.6, 40 - a[0] * 0.6, 262)))
        x = 40 + width - 150
        font.getGlyphSet()["fraction"].draw(TransformPen(pen, Transform(1, 0, 0, 1, x, 0)))
        under = x + bar[2] - 190
        source["eight"].draw(TransformPen(pen, Transform(0.6, 0, 0, 0.6, under - d[0] * 0.6, 0)))
        right = under + round((d[2] - d[0]) * 0.6)
        add(font, f"uni{ord(letter):04X}", letter, pen, right + 40)
    for letter, count in (("′", 1), ("″", 2)):
        pen = TTGlyphPen(font.getGlyphSet())
        for i in range(count):
            x = 40 + i * (weight + 80)
            polygon(pen, [(x, 447), (x + 70, 668), (x + 70 + weight, 668), (x + weight * 2 // 3, 447)])
        add(font, f"uni{ord(letter):04X}", letter, pen, 40 + count * (weight + 80) + 50)
    s = weight
    arrows = {
        "→": [((60, 334), (690, 334)), ((470, 554), (690, 334)), ((470, 114), (690, 334))],
        "←": [((690, 334), (60, 334)), ((280, 554), (60, 334)), ((280, 114), (60, 334))],
        "↑": [((375, 0), (375, 640)), ((155, 420), (375, 640)), ((595, 420), (375, 640))],
        "↓": [((375, 668), (375, 28)), ((155, 248), (375, 28)), ((595, 248), (375, 28))],
        "✓": [((110, 320), (300, 110)), ((300, 110), (660, 570))],
    }
    for letter, strokes in arrows.items():
        pen = TTGlyphPen(font.getGlyphSet())
        for a, b in strokes:
            stroke(pen, a, b, s)
        add(font, f"uni{ord(letter):04X}", letter + ("✔" if letter == "✓" else ""), pen, 750)
    # The box, both as a sign and as the picture of a letter that is not there.
    for name, codes in ((".notdef", ""), ("uni25A1", "□")):
        pen = TTGlyphPen(font.getGlyphSet())
        t = round(s * 0.7)
        polygon(pen, [(70, 0), (70, 668), (590, 668), (590, 0)])
        polygon(pen, [(70 + t, t), (590 - t, t), (590 - t, 668 - t), (70 + t, 668 - t)])
        add(font, name, codes, pen, 660)
    for code, like in SAME.items():
        target = font.getBestCmap().get(ord(like)) if like else None
        if target and ord(code) not in cmap:
            for table in font["cmap"].tables:
                if table.isUnicode():
                    table.cmap[ord(code)] = target
    # A soft hyphen and joiners take no room.
    pen = TTGlyphPen(font.getGlyphSet())
    add(font, "zerowidth", "\u00ad\u200b\u200c\u200d\u2060\ufe0e\ufe0f", pen, 0)


def rename(font, weight):
    names = font["name"]
    for record in list(names.names):
        if record.platformID != 3 or record.nameID in (16, 17, 18, 21, 22, 25) or record.nameID > 255:
            names.removeNames(record.nameID, record.platformID, record.platEncID, record.langID)
    for ident, text in (
        (1, "Evenwall Text"),
        (2, "Regular"),
        (3, f"2.001;EvenwallText-{weight}"),
        (4, f"Evenwall Text {weight}"),
        (6, f"EvenwallText-{weight}"),
    ):
        names.setName(text, ident, 3, 1, 0x409)
    font["OS/2"].usWeightClass = weight
    font["OS/2"].fsSelection = (font["OS/2"].fsSelection & ~0b100001) | 0b1000000
    font["head"].macStyle = 0
    for table in ("STAT", "DSIG"):
        if table in font:
            del font[table]


def build(package, out):
    paths = {w: package / d / f"AtkinsonHyperlegibleNext_{d}.ttf" for w, d, _ in FACES}
    covered = None
    for weight, _, thick in FACES:
        font = TTFont(paths[weight])
        heavier = TTFont(paths[{400: 600, 600: 700, 700: 800, 800: 800}[weight]])
        accented(font)
        signs(font, heavier, thick)
        for table in font["cmap"].tables:
            if table.isUnicode():
                for code, name in list(table.cmap.items()):
                    if 0x30 <= code <= 0x39 and f"{name}.tf" in font["glyf"].glyphs:
                        table.cmap[code] = f"{name}.tf"
        rename(font, weight)
        font.recalcTimestamp = False
        font.save(out / f"EvenwallText-{weight}.ttf")
        codes = set(font.getBestCmap())
        covered = codes if covered is None else covered & codes
        advances = {font["hmtx"][font.getBestCmap()[c]][0] for c in range(0x30, 0x3A)}
        if len(advances) != 1:
            raise SystemExit(f"figures of {weight} are not equally wide: {advances}")
    ranges = []
    for code in sorted(covered):
        if ranges and ranges[-1][1] == code - 1:
            ranges[-1][1] = code
        else:
            ranges.append([code, code])
    lines = "".join(f"{a:04X}-{b:04X}\n" for a, b in ranges)
    (out / "coverage.txt").write_text(lines, encoding="ascii")


if __name__ == "__main__":
    if len(sys.argv) != 2:
        raise SystemExit(__doc__)
    build(Path(sys.argv[1]), Path(__file__).resolve().parent)
