"""Makes the fonts and letter outlines that the report ships: run by hand when a font changes.

    python scripts/report_fonts.py FOLDER

FOLDER holds the fonts as their makers publish them (names below). Needs fonttools, which planish
itself does not. Writes src/planish/report/fonts/*.otf, *.ttf and letters.json; the licences beside
them (all SIL Open Font Licence 1.1) are kept by hand.

Fonts whose licence reserves their name are copied whole; the others may be cut down to the
characters below under the same licence.
"""

import json
import shutil
import sys
from pathlib import Path

from fontTools import subset
from fontTools.pens.boundsPen import BoundsPen
from fontTools.pens.svgPathPen import SVGPathPen
from fontTools.pens.transformPen import TransformPen
from fontTools.ttLib import TTFont

TO = Path(__file__).resolve().parents[1] / "src" / "planish" / "report" / "fonts"

WHOLE = ("SourceSans3-Regular.otf", "SourceSans3-Semibold.otf", "SourceSans3-It.otf")
PLAIN = (
    "NotoSerifHebrew-Regular.ttf",
    "NotoSerifArmenian-Regular.ttf",
    "NotoSerifGeorgian-Regular.ttf",
    "NotoSerifThai-Regular.ttf",
    "NotoNaskhArabic-Regular.ttf",
    "NotoSerifDevanagari-Regular.ttf",
)
CJK = "NotoSansCJK-Regular.ttc"

#: height of a capital in the outlines [units]
CAP = 400

_BASIC = "".join(chr(c) for c in range(0x21, 0x7F)) + "·ÄÅÆÇÉÖØÜßäåæçéöøü£"
_LATIN = _BASIC + "".join(chr(c) for c in range(0xA1, 0x180))
_GREEK = "".join(chr(c) for c in (*range(0x391, 0x3AA), *range(0x3B1, 0x3CA)))
_CYRILLIC = "".join(
    chr(c) for c in (*range(0x401, 0x40D), *range(0x410, 0x450), 0x462, 0x463, 0x472, 0x473)
)
# characters met on silver of China, Japan and Korea: fineness, towns, makers' names
_EAST = "純銀纯银足紋纹白銅铜鍍镀銀製制東东京大日本上海広廣广州香港天津北京九江漢汉口橫横浜戸神江福金千宝寳寶号號記记永昌和興兴隆利合盛祥順顺成新発發物老鳳凤天賞赏堂三四五六七八十百萬万文武美生仁義义春泰裕安平吉慶庆龍龙造作玉光明立高中国國民造幣局検定호은순"

#: style of the thesaurus, its font, and the characters taken
LETTERS = (
    ("roman", "JunicodeTwoBeta-Bold.otf", _LATIN + _GREEK + "∙•"),
    ("italic", "JunicodeTwoBeta-SemiboldItalic.otf", _BASIC),
    ("black-letter", "ManufacturingConsent-Regular.ttf", _BASIC),
    ("lombardic", "UncialAntiqua-Regular.ttf", _BASIC),
    ("court-hand", "Joscelyn-Regular.otf", _BASIC),
    ("script", "PetitFormalScript-Regular.ttf", _BASIC),
    ("sans", "SourceSans3-Semibold.otf", _LATIN + _GREEK + _CYRILLIC),
    ("eastern", CJK, _EAST),
)


def outlines(font: TTFont, characters: str) -> dict[str, list[object]]:
    """Per character: advance and path [units, y down, baseline at 0, capitals CAP high]."""
    names, glyphs = font.getBestCmap(), font.getGlyphSet()
    bounds = BoundsPen(glyphs)
    glyphs[names[ord("H")]].draw(bounds)
    scale = CAP / bounds.bounds[3]
    found: dict[str, list[object]] = {}
    for char in sorted(set(characters)):
        if ord(char) not in names:
            continue
        glyph = glyphs[names[ord(char)]]
        pen = SVGPathPen(glyphs, ntos=lambda v: str(round(v)))
        glyph.draw(TransformPen(pen, (scale, 0, 0, -scale, 0, 0)))
        found[char] = [round(glyph.width * scale), pen.getCommands()]
    return found


def common_east() -> str:
    """Kana, and the characters that the first levels of three national sets share."""

    def level(codec: str, rows: range) -> set[str]:
        cells = (bytes((r, c)) for r in rows for c in range(0xA1, 0xFF))
        return {s for b in cells if len(s := b.decode(codec, "ignore")) == 1}

    japan, china = level("euc_jp", range(0xB0, 0xD0)), level("gb2312", range(0xB0, 0xD8))
    taiwan = {
        s
        for r in range(0xA4, 0xC7)
        for c in (*range(0x40, 0x7F), *range(0xA1, 0xFF))
        if len(s := bytes((r, c)).decode("big5", "ignore")) == 1
    }
    kana = {chr(c) for c in (*range(0x3001, 0x3020), *range(0x3041, 0x3100))}
    return "".join(sorted(kana | (japan & china & taiwan) | set(_EAST)))


def cut(font: TTFont, characters: set[int], features: list[str]) -> TTFont:
    """The font with these characters only and without hints, which print does not use."""
    options = subset.Options(
        layout_features=features, name_IDs=["*"], notdef_outline=True, hinting=False
    )
    cutter = subset.Subsetter(options)
    cutter.populate(unicodes=characters)
    cutter.subset(font)
    return font


def main(folder: Path) -> None:
    """Write all files."""
    for name in WHOLE:
        shutil.copyfile(folder / name, TO / name)
    for name in PLAIN:
        font = TTFont(folder / name)
        cut(font, set(font.getBestCmap()), ["*"]).save(TO / name)
    font = TTFont(folder / CJK, fontNumber=0)
    cut(font, {ord(c) for c in common_east()}, ["kern", "locl"]).save(TO / "NotoSansCJK-cut.otf")
    letters = {
        style: outlines(TTFont(folder / name, fontNumber=0), characters)
        for style, name, characters in LETTERS
    }
    (TO / "letters.json").write_text(
        json.dumps({"cap": CAP, "styles": letters}, ensure_ascii=False, separators=(",", ":"))
        + "\n",
        encoding="utf-8",
    )
    for file in sorted(TO.iterdir()):
        print(f"{file.stat().st_size:>9,}  {file.name}")


if __name__ == "__main__":
    main(Path(sys.argv[1]))
