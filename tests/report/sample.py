"""An invented report and invented photographs, for tests of the page."""

import random
from pathlib import Path

from PIL import Image, ImageDraw, ImageFilter

from planish.marks.observation import Case, Legibility, Mark, Style, Technique
from planish.report.rows import mark_row
from planish.report.view import (
    Against,
    Compared,
    Cover,
    Dot,
    Evidence,
    LedgerView,
    Line,
    Look,
    Missing,
    OpinionView,
    Picture,
    PieceView,
    ReadingView,
    ReportView,
    Rival,
    Scheduled,
    Section,
    Source,
    Step,
    Strip,
    Summary,
    Tested,
    Weighed,
    Worth,
)

RAISED = Technique.RAISED

TEAPOT_MARKS = (
    Mark(device="lion passant", outline="rectangle", technique=RAISED, place="under the base"),
    Mark(device="leopard's head crowned", outline="shield", technique=RAISED,
         legibility=Legibility.WORN, place="under the base"),
    Mark(text="k", style=Style.BLACK_LETTER, case=Case.SMALL, outline="shield",
         technique=RAISED, place="under the base"),
    Mark(text="[T]·W", style=Style.SCRIPT, outline="oval", technique=RAISED,
         legibility=Legibility.WORN, place="under the base, and inside the lid"),
    Mark(text="19-5", technique=Technique.SCRATCHED, place="under the base"),
    Mark(text="ST[.]RL[--]", style=Style.SANS, technique=Technique.INCUSE, place="foot rim",
         legibility=Legibility.OBSCURE),
)  # fmt: skip


def paint(path: Path, seed: int, size: tuple[int, int] = (1600, 1200)) -> Path:
    """A picture that no camera took: a bright vessel on a dark cloth."""
    rng = random.Random(seed)  # noqa: S311  # pictures, not secrets
    w, h = size
    picture = Image.linear_gradient("L").resize(size).convert("RGB")
    picture = Image.blend(picture, Image.new("RGB", size, (52, 50, 46)), 0.82)
    draw = ImageDraw.Draw(picture)
    x, y, r = w * rng.uniform(0.45, 0.55), h * 0.55, h * rng.uniform(0.22, 0.3)
    for k in range(60):
        f = k / 60
        tone = int(90 + 150 * f * (1 - f) * 4 * (0.6 + 0.4 * rng.random()))
        left, right = x - r * 1.25 * (1 - f), x + r * 1.25 * (1 - f * 0.9)
        draw.ellipse((left, y - r * (1 - f), right, y + r * (1 - f * 0.8)), fill=(tone,) * 3)
    draw.rectangle((x - r * 0.8, y + r * 0.98, x + r * 0.8, y + r * 1.12), fill=(150, 150, 148))
    draw.line((w * 0.1, h * 0.94, w * 0.5, h * 0.94), fill=(230, 230, 225), width=8)
    picture.filter(ImageFilter.GaussianBlur(2)).save(path, quality=90)
    return path


def photographs(folder: Path, count: int = 3) -> dict[str, Path]:
    return {f"p{n}.jpg": paint(folder / f"p{n}.jpg", n, (1600, 1200) if n % 3 else (1200, 1500))
            for n in range(count)}  # fmt: skip


def teapot(files: tuple[str, ...] = ("p0.jpg", "p1.jpg", "p2.jpg"), number: str = "1") -> PieceView:
    reads = (
        ("standard mark, sterling", "very likely"), ("town mark, London", "likely"),
        ("date letter, 1765", "likely"), ("sponsor's mark", "likely"),
        ("scratch weight, 19 ozt 5 dwt", ""), ("explained by no role of this reading", ""),
    )  # fmt: skip
    return PieceView(
        number=number,
        title="Teapot, bullet shape, with later wooden handle",
        subtitle="London, 1765 or 1766, sterling; sponsor T·W, not settled",
        anchor=f"piece-{number}",
        pictures=tuple(
            Picture(file=f, number=f"{number}.{n}", caption=c, alt=c, whole=n == 1)
            for n, (f, c) in enumerate(
                zip(
                    files,
                    (
                        "Whole piece from the left, scale of 10 cm.",
                        "Marks under the base, light from the left.",
                        "Repair at the lower handle socket.",
                    ),
                    strict=False,
                ),
                1,
            )
        ),
        description="Of bullet form, raised from sheet, on a cast and applied foot rim. Straight"
        " tapering spout. Flush hinged lid with turned finial. Engraved round the lid with a band"
        " of shells and strapwork; a crest, a stag's head erased, on the right side.",
        identification=(
            Line(label="Form", value="teapot"),
            Line(label="Materials", value="silver; handle of a dark fruitwood"),
            Line(label="Dimensions", value="height 12.4 cm; length over handle 22.8 cm"),
            Line(label="Inscriptions", value="crest, a stag's head erased"),
            Line(
                label="Distinguishing features",
                value="lead-free solder repair at lower socket, 14 mm; small dent below the spout",
            ),
            Line(label="Owner's number", value="A-17"),
        ),
        marks=tuple(
            mark_row(str(n), mark, read_as=what, sure=sure)
            for n, (mark, (what, sure)) in enumerate(zip(TEAPOT_MARKS, reads, strict=True), 1)
        ),
        searched=(
            Line(label="Under the base", value="found: marks 1 to 5"),
            Line(label="Inside the lid", value="found: mark 4 again, and the lion"),
            Line(label="Finial, hinge", value="searched, nothing found"),
        ),
        reading=ReadingView(
            confirmed="London, 1765, sterling standard (925 parts per thousand).",
            reason="Letter and cycle agree with the form and with the scratch weight. The sponsor"
            " is left open: two smiths used such a mark in these years.",
            sentence="London, 1765 or 1766, sterling; solid silver.",
            chance="Probability of this reading: 83 % (likely)",
            rivals=(
                Rival(
                    sentence="London, 1785 or 1786, sterling",
                    words="unlikely",
                    percent="9 %",
                    share=0.09,
                ),
                Rival(
                    sentence="later or spurious marks in the style of London",
                    words="very unlikely",
                    percent="4 %",
                    share=0.04,
                ),
                Rival(
                    sentence="marks of no system in the library, or none at all",
                    words="very unlikely",
                    percent="2 %",
                    share=0.02,
                ),
            ),
            makers=(
                Rival(
                    sentence="Thomas Whipham (register, London, 1757 to 1775)",
                    words="more likely than not",
                    percent="58 %",
                    share=0.58,
                ),
                Rival(
                    sentence="a sponsor not in the register",
                    words="about as likely as not",
                    percent="42 %",
                    share=0.42,
                ),
            ),
            contradictions=(
                Against(
                    between="Incuse word on the foot rim, and London before 1900",
                    says="A word of this kind has no place in this reading. It may have been struck"
                    " later by a retailer; the rim should be looked at for a seam.",
                    source="[3]",
                ),
            ),
            looks=(
                Look(
                    look_for="Date letter: the shape of its outline, under the loupe",
                    where="Under the base, left of the lion; light from the right, low.",
                    settles=(
                        Line(label="base of the shield pointed", value="1765 or 1766 (92 %)"),
                        Line(label="base of the shield flat", value="1785 or 1786 (88 %)"),
                    ),
                ),
            ),
        ),
        tests=(
            Tested(kind="magnet", spot="body, spout, foot rim", reading="no attraction"),
            Tested(
                kind="X-ray fluorescence",
                spot="under the base, filed spot",
                reading="Ag 921 ± 6, Cu 71",
                says="921 parts per thousand; agrees with sterling",
            ),
        ),
        weight=(
            Weighed(
                kind="gross",
                what="Teapot with handle",
                how="balance K-3, step 0.1 g, checked with a 500 g weight",
                grams="612.4",
                plus_minus="0.1",
                ozt="19.69",
                dwt="393.8",
            ),
            Weighed(
                kind="off",
                what="Wooden handle and pins",
                how="estimated from like pieces, 24 to 34 g",
                grams="29.0",
                plus_minus="2.9",
                ozt="0.93",
                dwt="18.6",
            ),
            Weighed(
                kind="net",
                what="Silver alloy",
                grams="583.4",
                plus_minus="2.9",
                ozt="18.76",
                dwt="375.1",
            ),
            Weighed(
                kind="fine",
                what="At 925 ± 3 parts per thousand",
                how="mark and fluorescence",
                grams="539.6",
                plus_minus="3.2",
                ozt="17.35",
                dwt="347.0",
            ),
        ),
        weight_notes=("Dropped since the scratch weight of 19 ozt 5 dwt: 0.2 per cent.",),
        metal=(
            Step(sign="", what="Fine silver", figure="17.35 ozt"),
            Step(
                sign="×",
                what="price of one troy ounce, 14 May 2026",
                figure="USD 31.20",
                note="London silver price, midday, as entered by the appraiser",
            ),
            Step(sign="=", what="Metal, gross", figure="USD 541.32", kind="result"),
            Step(sign="×", what="share that a buyer of scrap would pay", figure="0.90"),
            Step(sign="=", what="Metal, payable", figure="USD 487.19", kind="result"),
        ),
        metal_notes=("A floor, not the value of the piece. Gross figure ± USD 3.20.",),
        worth=Worth(
            compared=(
                Compared(
                    number="1",
                    title="Teapot, London 1764",
                    details="14 Mar 2025, auction, lot 212; with premium",
                    sold="USD 1,900",
                    adjustments=(
                        Line(label="metal since the sale", value="+ USD 61"),
                        Line(label="handle replaced (judgment)", value="× 0.93"),
                        Line(label="weight (file)", value="× 1.04"),
                    ),
                    adjusted="USD 1,897",
                    weight="0.42",
                ),
                Compared(
                    number="2",
                    title="Teapot, London 1771, crest",
                    details="2 Oct 2024, auction, lot 88; hammer, premium 0.25 added",
                    sold="USD 1,625",
                    adjustments=(
                        Line(label="metal since the sale", value="+ USD 74"),
                        Line(label="date", value="× 1.03"),
                    ),
                    adjusted="USD 1,750",
                    weight="0.35",
                ),
                Compared(
                    number="3",
                    title="Teapot, Newcastle 1768",
                    details="19 Jun 2023, dealer",
                    sold="USD 2,600",
                    adjustments=(
                        Line(label="level of trade", value="× 0.68"),
                        Line(label="assay office (practice)", value="× 0.95"),
                    ),
                    adjusted="USD 1,680",
                    weight="0.23",
                ),
            ),
            strip=Strip(
                dots=(
                    Dot(number="1", sold=0.55, adjusted=0.549, size=1.0),
                    Dot(number="2", sold=0.42, adjusted=0.48, size=0.83),
                    Dot(number="3", sold=0.9, adjusted=0.44, size=0.55),
                ),
                ticks=(
                    ("0", 0.0),
                    ("500", 0.17),
                    ("1,000", 0.34),
                    ("1,500", 0.51),
                    ("2,000", 0.68),
                    ("2,500", 0.85),
                ),
                alt="Three comparables on an axis of USD: as sold 1,900, 1,625 and 2,600; as adjusted"
                " 1,897, 1,750 and 1,680; metal 541; range 1,600 to 2,050; opinion 1,800.",
                unit="USD",
                floor=0.18,
                low=0.44,
                high=0.6,
                value=0.51,
            ),
            sums=(
                Step(
                    sign="",
                    what="Weighted geometric mean of the adjusted prices",
                    figure="USD 1,794",
                    note="1,897 ^ 0.42 × 1,750 ^ 0.35 × 1,680 ^ 0.23",
                ),
                Step(sign="≈", what="Rounded to two figures", figure="USD 1,800", kind="result"),
            ),
        ),
        opinion=OpinionView(
            figure="USD 1,800",
            range="USD 1,600 to 2,050",
            basis="Fair market value at 14 May 2026, auction level, buyer's premium included",
            lines=(Line(label="Approach", value="sales comparison"),),
            reasons=(
                "Three sales of like form and decade within three years, adjusted line by line.",
                "The replaced handle and the repair keep it below the sale of March 2025.",
            ),
        ),
        condition=(
            Line(
                label="Body",
                value="good colour; dent of 4 mm below the spout; repair at lower"
                " handle socket, sound",
            ),
            Line(label="Handle", value="replaced, twentieth century"),
        ),
        provenance=(
            Line(
                label="Documented", value="Bill of a London dealer, 3 May 1961 (copy in workfile)"
            ),
            Line(label="Family tradition", value="given at a wedding of 1802"),
        ),
    )


def spoons(number: str = "2") -> PieceView:
    return PieceView(
        number=number,
        title="Six tablespoons",
        subtitle="plated: electroplate of nickel silver",
        anchor=f"piece-{number}",
        description="Fiddle pattern, engraved with the initial B.",
        identification=(
            Line(label="Form", value="tablespoon"),
            Line(label="Counted as", value="a set of six"),
        ),
        marks=(
            mark_row(
                "1",
                Mark(text="E", style=Style.BLACK_LETTER, outline="shield", technique=RAISED),
                read_as="plate quality, imitating a hallmark",
            ),
            mark_row(
                "2",
                Mark(text="P", style=Style.BLACK_LETTER, outline="shield", technique=RAISED),
                read_as="plate quality, imitating a hallmark",
            ),
            mark_row(
                "3",
                Mark(text="[---]&CO", outline="square with cut corners", technique=RAISED),
                read_as="maker",
            ),
        ),
        reading=ReadingView(
            sentence="Electroplate, Sheffield or Birmingham, after 1840.",
            chance="Probability of this reading: 97 % (extremely likely)",
        ),
        weight=(
            Weighed(
                kind="gross", what="All six", grams="402", plus_minus="1", ozt="12.92", dwt="258.5"
            ),
        ),
        metal_notes=("No metal value: plated.",),
        opinion=OpinionView(
            figure="USD 40",
            range="USD 25 to 60",
            basis="Fair market value at 14 May 2026, auction level",
            reasons=("Sold in mixed lots only.",),
        ),
        condition=(Line(label="All", value="plate worn through on bowls and stems"),),
    )


def report(pieces: tuple[PieceView, ...] | None = None, *, draft: bool = True) -> ReportView:
    pieces = (teapot(), spoons()) if pieces is None else pieces
    return ReportView(
        number="2026-014",
        title="Silver of the late Mrs A. Example",
        author="J. Appraiser",
        date=(2026, 5, 20),
        draft=draft,
        notice="For the use of the client and the insurer named in it only.",
        cover=Cover(
            kind="Appraisal report",
            title="Silver of the late Mrs A. Example",
            lines=(
                Line(label="Case", value="2026-014"),
                Line(label="Client", value="Estate of A. Example, by its executor"),
                Line(label="Type of value", value="Fair market value"),
                Line(label="Effective date", value="14 May 2026"),
                Line(label="Report date", value="20 May 2026"),
                Line(label="Appraiser", value="J. Appraiser\n12 Harbour Lane, Anytown"),
            ),
            notices=(
                (
                    "Extraordinary assumption: the handle of piece 1 holds no metal pin larger than"
                    " 3 mm. If this is false, the value may change."
                ),
            ),
        ),
        summary=Summary(
            paragraphs=(
                (
                    "At your request I have examined the pieces listed below and give my opinion of their"
                    " fair market value at 14 May 2026, for the settlement of the estate."
                ),
                (
                    "The report that follows says for each piece what was seen, what it is read as and how"
                    " surely, what it weighs, what its metal comes to, and how the value was found."
                ),
            ),
            schedule=tuple(
                Scheduled(
                    number=p.number,
                    title=p.title,
                    reading=p.subtitle,
                    weight="583.4" if p.number == "1" else "",
                    anchor=p.anchor,
                    value=p.opinion.figure if p.opinion else "",
                    range=p.opinion.range if p.opinion else "",
                )
                for p in pieces
            ),
            total="USD 1,840",
            total_note="The sum of the single opinions; not the value of the pieces sold together.",
            value_heading="Fair market value",
        ),
        assignment=(
            Section(
                title="Intended use",
                paragraphs=("Settlement of the estate and the federal estate tax return.",),
            ),
            Section(title="Intended users", items=("the executor", "the estate's tax adviser")),
            Section(
                title="Value",
                lines=(
                    Line(label="Type", value="Fair market value"),
                    Line(
                        label="Definition",
                        value="The price at which the property would change hands"
                        " between a willing buyer and a willing seller, neither being under any compulsion"
                        " to buy or to sell and both having reasonable knowledge of relevant facts.",
                    ),
                    Line(label="Source", value="26 CFR 20.2031-1(b)"),
                ),
            ),
            Section(
                title="Inspection",
                lines=(
                    Line(label="Date", value="12 May 2026"),
                    Line(
                        label="Extent",
                        value="Handled, weighed and photographed by daylight; no piece was"
                        " opened or filed without consent.",
                    ),
                ),
            ),
            Section(
                title="Metal price",
                lines=(
                    Line(
                        label="Price", value="USD 31.20 per troy ounce of fine silver, 14 May 2026"
                    ),
                    Line(
                        label="Source",
                        value="London silver price, midday, as entered by the appraiser",
                    ),
                ),
            ),
        ),
        pieces=pieces,
        ledgers=(
            LedgerView(
                title="Piece 1",
                hypothesis="London, 1765 or 1766, sterling",
                against="all rival readings together",
                before="−6.0",
                after="+6.9",
                lines=(
                    Evidence(
                        observed="lion passant (in rectangle)",
                        because="as standard mark",
                        sources="[1]",
                        decibans="+11.2",
                        word="strong",
                        share=0.56,
                    ),
                    Evidence(
                        observed="leopard's head crowned (in shield, worn)",
                        because="as town mark",
                        sources="[1] [2]",
                        decibans="+7.4",
                        word="some",
                        share=0.37,
                    ),
                    Evidence(
                        observed='"k" (black-letter, small, in shield)',
                        because="as date letter",
                        sources="[2]",
                        decibans="+3.1",
                        word="slight",
                        share=0.155,
                    ),
                    Evidence(
                        observed='"ST?RL?" (sans, obscure)',
                        because="explained by no role of the first reading",
                        sources="practice",
                        decibans="−8.8",
                        word="some",
                        share=-0.44,
                    ),
                ),
            ),
        ),
        sources=(
            Source(mark="[1]", title="An invented handbook of marks, 3rd ed. (1999)"),
            Source(
                mark="[2]",
                title="An invented table of date letters (1911)",
                note="cycles of London",
            ),
            Source(mark="[3]", title="An invented guide to retailers' stamps (1975)"),
        ),
        source_notes=(
            (
                "“memory” marks a fact given from memory, “practice” the common practice of the"
                " trade; neither has a printed source here."
            ),
        ),
        cautions=(
            Line(
                label="Acids",
                value="Testing acids burn skin, eyes and lungs. They are for trained"
                " hands, with goggles, gloves and ventilation.",
            ),
            Line(label="Solder", value="Old and foreign solder may hold cadmium or lead."),
        ),
        conditions=(Section(title="Assumptions", items=("The pieces are free of liens.",)),),
        certification=Section(
            title="Certification",
            items=(
                "The statements of fact in this report are true and correct.",
                "I have no present or future interest in the pieces.",
            ),
        ),
        signature=(
            Line(label="Signature", value=""),
            Line(label="Place and date", value="Anytown, 20 May 2026"),
        ),
        appraiser=Section(title="Qualifications", items=("Thirty years in the trade.",)),
        lacks=2 if draft else 0,
        missing=(
            (
                Missing(
                    where="Piece 1",
                    what="a photograph with a scale is missing",
                    remedy="lay a ruler beside the piece and write scale = true",
                    clause="ICOM Object ID",
                ),
                Missing(
                    where="Assignment",
                    what="the exposure time is missing",
                    remedy="say how long the pieces would stand on the market",
                    clause="USPAP SR 7-2(c)",
                ),
            )
            if draft
            else ()
        ),
        glossary=(
            Line(label="deciban", value="ten times the common logarithm of a likelihood ratio"),
            Line(label="outline", value="the shape of the punch around a mark"),
        ),
    )
