"""``planish stones weigh``: weight from measurements."""

from typing import TYPE_CHECKING

import click
import msgspec

from planish.cli.library.common import cited, titles
from planish.cli.stones.common import law_lines, plain_flag, print_json, told
from planish.cli.terminal import heading, prose, say, table, tint
from planish.cli.wording import CONFIDENCE

if TYPE_CHECKING:
    from planish.quantity import Measured
    from planish.stones import Flag, StoneWeight

_GIRDLES = ("usual", "thick", "very-thick")


@click.command(short_help="Weight from measurements.")
@click.argument("cut")
@click.argument("sizes", nargs=-1, required=True, metavar="SIZES...")
@click.option("--material", metavar="NAME", help="What the stone is.")
@click.option("--gravity", metavar="FIGURE", help="Specific gravity instead: 2.65 or 2.65±0.02.")
@click.option("--count", type=int, default=1, metavar="N", help="So many like stones.")
@click.option("--closed-back", is_flag=True, help="The setting hides the back.")
@click.option("--girdle", type=click.Choice(_GIRDLES), default="usual", help="Girdle or bulge.")
@click.option("--poor", is_flag=True, help="Poorly cut.")
@click.option("--hole", type=float, default=0.0, metavar="MM", help="Drill hole through a bead.")
@click.option("--plus-minus", type=float, metavar="MM", help="Standard uncertainty of a size.")
@click.option("--factor", metavar="ID", help="One author's constant; the page lists the rivals.")
@click.option("--json", "as_json", is_flag=True, help="Print everything as JSON.")
def weigh(
    cut: str,
    sizes: tuple[str, ...],
    *,
    material: str | None,
    gravity: str | None,
    count: int,
    closed_back: bool,
    girdle: str,
    poor: bool,
    hole: float,
    plus_minus: float | None,
    factor: str | None,
    as_json: bool,
) -> None:
    """Weigh a stone by its measurements: carats and grams, 19 times of 20.

    CUT is the cut or solid in words. SIZES are length x width x depth, or
    diameter x depth; ? is a depth that cannot be measured, 2-3 one that lies
    between limits.

    \b
    planish stones weigh "round brilliant" 6.5x6.4x3.9mm --material diamond
    planish stones weigh cabochon "14 x 10 x ? mm" --material turquoise
    planish stones weigh sphere 8mm --material pearl --count 12 --hole 0.8
    planish stones weigh pear 9x6x4mm --gravity 3.72±0.05
    """  # noqa: D301  # click reads the backspace
    from planish.stones import Girdle, restricted
    from planish.stones import weigh as weighed

    with told():
        found = weighed(
            cut,
            " ".join(sizes),
            material=material,
            gravity=_gravity(gravity),
            count=count,
            closed_back=closed_back,
            girdle=Girdle(girdle.replace("-", " ")),
            poor=poor,
            hole=hole,
            plus_minus=plus_minus,
            factor=factor,
        )
        flags = restricted(found.material) if found.material else ()
    if as_json:
        print_json(_plain(found, flags))
    else:
        say(_page(found, flags))


def _gravity(text: str | None) -> "Measured | None":
    """A specific gravity with its standard uncertainty, none where none is written."""
    from planish.quantity import Measured, QuantityError

    if text is None:
        return None
    figure, _, u = text.replace("+/-", "±").replace("+-", "±").partition("±")
    try:
        return Measured.of(float(figure), gravity=float(u or 0.0))
    except (ValueError, OverflowError) as fault:
        if isinstance(fault, QuantityError):
            raise
        says = "this is no figure"
        raise QuantityError("specific gravity", text, says, "write 2.65 or 2.65±0.02") from None


def _plain(found: "StoneWeight", flags: "tuple[Flag, ...]") -> dict[str, object]:
    said: dict[str, object] = msgspec.to_builtins(found)
    return {
        **said,
        "rivals": [{"factor": key, "carats": ct} for key, ct in found.rivals],
        "grams": float(found.mass.grams),
        "grams_low": float(found.low_mass.grams),
        "grams_high": float(found.high_mass.grams),
        "law": [plain_flag(f) for f in flags],
        "sources": cited(found.sources),
    }


def _carats(figure: float) -> str:
    return f"{figure:.2f}" if figure >= 1 else f"{figure:.3f}"


def _page(found: "StoneWeight", flags: "tuple[Flag, ...]") -> list[str]:
    what = found.material_name or f"stone of specific gravity {found.gravity:g}"
    number = f"{found.count} stones together, " if found.count > 1 else ""
    title = f"{_carats(found.carats)} ct ({found.mass.written(places=3)})"
    lines = [tint(line, "head") for line in prose(f"{title}: {number}{found.cut_name}, {what}", 0)]
    between = f"{found.low_mass.written(places=3)} to {found.high_mass.written(places=3)}"
    lines += prose(f"19 times of 20 between {_carats(found.low)} and {_carats(found.high)} ct,")
    lines += prose(f"that is {between}. Estimated from measurements, not weighed.")
    each = f", {found.count} times" if found.count > 1 else ""
    lines += [*heading("Reckoned"), *prose(f"{found.formula}{each}")]
    rows = [(f"± {p.half_width:.1%}", p.name, p.because) for p in found.parts]
    if found.ranged:
        rows.insert(0, ("limits", "depth", "known by limits only; the interval covers both"))
    lines += [*heading("Why the interval is so wide"), *table(rows, right=(0,))]
    if found.rivals:
        lines += heading("Other authors")
        lines += table([(key, f"{_carats(ct)} ct") for key, ct in found.rivals])
    remarks = [f"- {note}" for note in (*found.notes, *found.cautions)]
    if remarks:
        lines += [*heading("Mind"), *(line for r in remarks for line in prose(r, 2, 2))]
    lines += law_lines(flags)
    lines += ["", *prose(f"Constant: {CONFIDENCE[found.confidence]}.", 0)]
    return [*lines, *titles(found.sources)]
