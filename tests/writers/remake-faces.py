"""Makes the two faces of the job card anew, for print and for screen: python3 tests/writers/remake-faces.py (needs fonttools and brotli).

From the variable font (npm @fontsource-variable/atkinson-hyperlegible-next, SIL Open Font License 1.1), since the writer of PDF cannot embed a
variable one: weights 400 and 700, figures all of one width, no kerning, no joined letters.
"""

from pathlib import Path

from fontTools.subset import Options, Subsetter
from fontTools.ttLib import TTFont
from fontTools.varLib.instancer import instantiateVariableFont

root = Path(__file__).resolve().parents[2]
source = "node_modules/@fontsource-variable/atkinson-hyperlegible-next/files/atkinson-hyperlegible-next-latin-wght-normal.woff2"
figures = "zero one two three four five six seven eight nine".split()

for name, weight in (("Regular", 400), ("Bold", 700)):
    font = TTFont(root / source, recalcTimestamp=False)
    font = instantiateVariableFont(font, {"wght": weight}, updateFontNames=True)
    for table in font["cmap"].tables:
        for code, glyph in table.cmap.items():
            if glyph in figures:
                table.cmap[code] = glyph + ".tf"
    options = Options(layout_features=[], drop_tables=["GDEF", "GPOS", "GSUB", "STAT", "gasp"], hinting=False, name_IDs=[0, 1, 2, 3, 4, 5, 6, 13, 14], notdef_outline=True)
    subsetter = Subsetter(options)
    subsetter.populate(unicodes=[code for code in font.getBestCmap() if code < 0x300 or code > 0x36F])
    subsetter.subset(font)
    for flavor, ending in ((None, "ttf"), ("woff2", "woff2")):
        font.flavor = flavor
        font.save(root / f"src/writers/faces/AtkinsonHyperlegibleNext-{name}.{ending}")
