"""``planish density``: density by weighing in water, and what it does not exclude."""

from typing import TYPE_CHECKING

import click
import msgspec

from planish.cli.errors import Asked, BadInput
from planish.cli.terminal import heading, prose, say, table, tint

if TYPE_CHECKING:
    from planish.metal import Conclusion, Density, Fit

_SHOWN = 12


@click.command(short_help="Density by weighing in water, and what fits it.")
@click.option("--air", multiple=True, required=True, metavar="MASS", help="Reading in air.")
@click.option("--water", multiple=True, metavar="MASS", help="Reading hanging in water.")
@click.option("--rise", multiple=True, metavar="MASS", help="Rise with the beaker on the balance.")
@click.option("--temperature", required=True, metavar="°C", help="Of the water: '20' or '20 +- 1'.")
@click.option("--step", metavar="MASS", help="Step of the balance.")
@click.option("--repeatability", metavar="MASS", help="Standard deviation of one reading.")
@click.option("--harness-air", metavar="MASS", help="Wire alone in air, where it was not tared.")
@click.option("--harness-water", metavar="MASS", help="Wire alone in water, dipped as deep.")
@click.option("--wire", type=click.FloatRange(0, 5), default=0.2, show_default=True,
              metavar="MM", help="Thickness of the wire or thread.")  # fmt: skip
@click.option("--bubbles", type=click.FloatRange(0, 10_000), default=0.0, metavar="MM3",
              help="Most air that may have stayed on the piece.")  # fmt: skip
@click.option("--tap", is_flag=True, help="Water of the tap, not distilled.")
@click.option("--pressure", type=float, metavar="HPA", help="Air pressure where you stand.")
@click.option("--humidity", type=float, default=50.0, show_default=True, metavar="PERCENT",
              help="Relative humidity of the air.")  # fmt: skip
@click.option("--piece", default="", help="What it is: hollow, filled or set pieces are refused.")
@click.option("--rest", "rests", multiple=True, metavar="WHAT=MASS",
              help="What is not that metal, as 'turquoise=2.4g at 2.6..2.9'.")  # fmt: skip
@click.option("--fail-on", type=click.Choice(["not-silver"]), help="Exit 1 if silver does not fit.")
@click.option("--json", "as_json", is_flag=True, help="Print everything as JSON.")
def density(  # noqa: PLR0917  # click passes them by name
    air: tuple[str, ...],
    water: tuple[str, ...],
    rise: tuple[str, ...],
    temperature: str,
    step: str | None,
    repeatability: str | None,
    harness_air: str | None,
    harness_water: str | None,
    wire: float,
    bubbles: float,
    tap: bool,  # noqa: FBT001  # as above
    pressure: float | None,
    humidity: float,
    piece: str,
    rests: tuple[str, ...],
    fail_on: str | None,
    as_json: bool,  # noqa: FBT001  # as above
) -> None:
    """State the density of a piece, and the materials that it does not exclude.

    Weigh it in air, then hanging in water on a thin wire; or put a beaker of
    water on the balance, set it to nought, hang the piece in without touching
    and read the rise. Give --air, --water or --rise again for repeats.

    A density may refuse a base metal and support silver. It never confirms a
    fineness mark. Hollow, filled and stone-set pieces are refused.

    \b
    planish density --air 12.50g --water 11.30g --temperature 20 --step 0.01g
    planish density --air 12.50g --rise 1.43g --temperature 20 --step 0.01g
    planish density --air 18.4g --water 16g --temperature 20 --rest "gem=2g at 3"
    """  # noqa: D301  # click reads the backspace
    from planish.library import load
    from planish.metal import Arrangement, Immersion, Verdict, conclude
    from planish.metal import density as weighed
    from planish.metal.entry import read_degrees, read_rest
    from planish.quantity import Mass, QuantityError

    if bool(water) == bool(rise):
        mend = "give --water for a hanging piece, --rise for the beaker on the balance"
        raise BadInput("one of two ways to weigh is needed", "after 'planish density'", mend)

    def grams(text: str | None) -> float:
        return float(Mass.parse(text).grams) if text else 0.0

    try:
        celsius, unsure = read_degrees(temperature)
        given = Immersion(
            air=tuple(map(grams, air)),
            water=tuple(map(grams, water or rise)),
            celsius=celsius,
            celsius_plus_minus=unsure,
            arrangement=Arrangement.HANGING if water else Arrangement.BEAKER,
            harness_air=grams(harness_air),
            harness_water=grams(harness_water),
            step=grams(step),
            repeatability=grams(repeatability) if repeatability else None,
            wire=wire,
            bubbles=bubbles,
            tap=tap,
            hectopascal=pressure,
            humidity=humidity,
        )
        found = weighed(given, words=piece, rest=read_rest(rests))
    except QuantityError as fault:
        raise BadInput(str(fault)) from None
    read = conclude(found, load().metals)
    if as_json:
        from planish.cli.weighing_plain import finite

        told = finite(_plain(found, read))
        say(msgspec.json.format(msgspec.json.encode(told), indent=2).decode())
    else:
        say(_page(found, read))
    if fail_on and read.verdict is Verdict.NOT_SILVER:
        raise Asked("the density does not fit solid silver")


def _page(found: "Density", read: "Conclusion") -> list[str]:
    from planish.cli.weighing_page import sure

    stated = found.stated
    size = f"{stated.value:.3f} g/cm³, 95 %: {stated.low:.3f} to {stated.high:.3f}"
    lines = [tint(f"Density {size}: {read.verdict.value}", "head"), *prose(read.says, 0)]
    if read.fineness:
        low, high = read.fineness
        lines += prose(
            f"If it were silver and copper alone, worked and with pores: {low} to {high} ‰."
            " No fineness mark is confirmed or refuted by that.",
            0,
        )
    lines += [*heading("Not excluded"), *_fits(read.fits.fits)]
    if read.fits.wide:
        names = ", ".join(f.name for f in read.fits.wide)
        lines += prose(f"Too wide a name to be excluded: {names}.", 2, 2)
    if read.fits.excluded:
        lines += prose(f"Excluded: {', '.join(read.fits.excluded)}.", 2, 2)
    lines += heading("How it was worked out")
    for line in found.lines:
        figure = (
            f"{line.figure:.7f}" if line.label.startswith("density of") else f"{line.figure:.4f}"
        )
        lines += prose(f"{line.label} {figure} {line.unit}", 2, 4)
        words = "; ".join(w for w in (f"= {line.formula}" if line.formula else "", line.note) if w)
        lines += prose(words, 4, 2) if words else []
    lines += [*heading("How sure"), *sure(stated, "g/cm³", 3)]
    lines += [*heading("Mind")]
    for words in found.cautions:
        lines += prose(f"- {words}", 2, 2)
    lines += [*heading("What it cannot tell")]
    for words in read.cannot:
        lines += prose(f"- {words}", 2, 2)
    cited = sorted({key for f in read.fits.fits for key in f.sources})
    lines += [*heading("Sources"), *prose(", ".join(cited) or "none")]
    lines += prose("'planish library source KEY' tells each. Uncertainty: JCGM 100 and 101.")
    return lines


def _fits(fits: "tuple[Fit, ...]") -> list[str]:
    if not fits:
        return prose("nothing in the library's table")
    rows = [
        (f"{f.density:.2f}", f"{f.low:.2f} to {f.high:.2f}", f"{f.name} ({f.confidence})")
        for f in fits[:_SHOWN]
    ]
    rows = [("g/cm³", "worked pieces", "material (how sure its figures are)"), *rows]
    more = len(fits) - _SHOWN
    return [*table(rows), *(prose(f"and {more} more, with --json") if more > 0 else [])]


def _plain(found: "Density", read: "Conclusion") -> dict[str, object]:
    from planish.cli.weighing_plain import lines, stated

    given = found.given
    return {
        "verdict": read.verdict.value,
        "says": read.says,
        "density": stated(found.stated, "g/cm3"),
        "fineness_if_silver_and_copper": read.fineness and list(read.fineness),
        "not_excluded": [msgspec.to_builtins(f) for f in read.fits.fits],
        "too_wide_to_exclude": [msgspec.to_builtins(f) for f in read.fits.wide],
        "excluded": list(read.fits.excluded),
        "readings": msgspec.to_builtins(given),
        "rest": msgspec.to_builtins(found.rest),
        "lines": lines(found.lines),
        "cautions": list(found.cautions),
        "cannot": list(read.cannot),
    }
