# SPDX-FileCopyrightText: The Tinwright authors
# SPDX-License-Identifier: MIT
#
# Cuts the page's fonts down to the letters it can need: Inter regular and semi-bold, and for the few signs that Inter
# does not hold (two thirds, for one) the same signs from DejaVu Sans. Every file gets the same measures, one em from
# ascent to descent, so that a size means the same to the browser and to Dear ImGui. Usage: fonts.py FOLDER
import sys

from fontTools import subset
from fontTools.ttLib import TTFont

INTER = "/usr/share/fonts/opentype/inter/"
DEJAVU = "/usr/share/fonts/truetype/dejavu/"
LETTERS = [*range(0x20, 0x7F), *range(0xA0, 0x180)]  # Latin-1 and Latin Extended-A
SIGNS = [ord(c) for c in "½¼¾⅓⅔⅛⅜⅝⅞⁄×→←↑↓−≈≤≥′″✓·–—‘’‚“”„…•°"]


ASCENT = 16 / 18  # [em] capitals near the middle; whole pixels at 18 px, for not every program rounds alike


def measure(font):
    """One em high, and letters at the same place in it whichever table a program reads."""
    em = font["head"].unitsPerEm
    up, down = round(ASCENT * em), em - round(ASCENT * em)
    font["hhea"].ascent, font["hhea"].descent, font["hhea"].lineGap = up, -down, 0
    os2 = font["OS/2"]
    os2.sTypoAscender, os2.sTypoDescender, os2.sTypoLineGap = up, -down, 0
    os2.usWinAscent, os2.usWinDescent = up, down


def cut(source, codepoints, target):
    options = subset.Options()
    options.layout_features = []
    options.hinting = False
    options.desubroutinize = True
    options.drop_tables += ["FFTM", "GDEF", "GPOS", "GSUB", "kern", "gasp"]
    options.notdef_outline = True
    options.name_IDs = [0, 13]  # the notice and licence stay inside the file
    font = subset.load_font(source, options)
    subsetter = subset.Subsetter(options)
    subsetter.populate(unicodes=codepoints)
    subsetter.subset(font)
    measure(font)
    subset.save_font(font, target, options)


def main(folder):
    wanted = set(LETTERS + SIGNS)
    wanted.discard(0xAD)  # the soft hyphen draws nothing
    inter = set(TTFont(INTER + "Inter-Regular.otf").getBestCmap())
    inter &= set(TTFont(INTER + "Inter-SemiBold.otf").getBestCmap())
    signs = wanted - inter
    lacking = signs - set(TTFont(DEJAVU + "DejaVuSans.ttf").getBestCmap())
    if lacking:
        sys.exit("no font holds " + " ".join(chr(c) for c in sorted(lacking)))
    cut(INTER + "Inter-Regular.otf", wanted & inter, folder + "/regular.otf")
    cut(INTER + "Inter-SemiBold.otf", wanted & inter, folder + "/strong.otf")
    cut(DEJAVU + "DejaVuSans.ttf", signs | {0x20}, folder + "/signs.ttf")
    print("setup: from DejaVu Sans:", " ".join(chr(c) for c in sorted(signs)) or "nothing")


main(sys.argv[1])
