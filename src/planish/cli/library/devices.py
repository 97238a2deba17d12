"""``planish library device``: pictures by ordinary words and plain features."""

from collections import defaultdict
from typing import TYPE_CHECKING

import click

from planish.cli.errors import BadInput
from planish.cli.library.common import (
    MOST,
    entry,
    grounds,
    listed,
    more,
    none,
    options,
    print_json,
    record,
    sources,
    years,
)
from planish.cli.terminal import prose, say

if TYPE_CHECKING:
    from planish.library import Library
    from planish.library.rows import Device, Sign


@click.command()
@click.argument("query", nargs=-1)
@click.option(
    "--feature", "features", multiple=True, metavar="WORDS",
    help="What is seen: 'facing left', crowned, sunk, three. May be given again.",
)  # fmt: skip
@click.option("--outline", metavar="SHAPE", help="Shape of the punch around it.")
@options
def device(
    query: tuple[str, ...],
    *,
    features: tuple[str, ...],
    outline: str | None,
    everything: bool,
    as_json: bool,
) -> None:
    """Find a pictorial mark by what it looks like, in any words.

    \b
    planish library device "big cat walking"
    planish library device tent
    planish library device --feature "facing left" --feature crowned --outline oval
    """  # noqa: D301  # click reads the backspace
    from planish.library import load

    shipped = load()
    words = " ".join(query).strip()
    found, head = _found(words, features, outline or "", shipped)
    relations = _relations(shipped)
    if as_json:
        print_json(
            record(d, why=why, **relations[d.id], marks=_marks(d, shipped)) for d, why in found
        )
        return
    shown = found if everything else found[:MOST]
    lines = [line for d, why in shown for line in _page(d, why, relations[d.id], shipped)]
    if head:
        lines = ["", *prose(head, 0, 2), *lines]
    say([
        *lines[1:],
        *more(len(found), everything=everything),
        *sources([d for d, _ in shown]),
    ])  # fmt: skip


def _found(
    words: str, features: tuple[str, ...], outline: str, shipped: "Library"
) -> "tuple[list[tuple[Device, str]], str]":
    """Devices with the reason for each, and what is to be said first."""
    from planish.marks.devicesearch import DeviceSearch, in_use

    index = DeviceSearch(shipped.devices, in_use(shipped.signs))
    head = ""
    found: list[tuple[Device, str]] = [(d, "") for d in shipped.devices]
    if words:
        answer = index.search(words)
        found = [(f.device, f.why) for f in answer.found]
        if not found:
            from planish.cli.lookup import near

            names = near(shipped.devices, ("id", "label", "words"), words)
            raise none("device", words, names, "planish library device")
        if answer.read_as:
            said = ", ".join(f"'{w}' read as '{r}'" for w, r in answer.read_as.items())
            head = f"Perhaps misspelt: {said}."
        elif not any(f.score >= 0.85 for f in answer.found):
            head = f"No device is named '{words}'; the nearest by what it looks like:"
    if not features and not outline:
        return found, head
    return _with_features(found, features, outline, shipped, head)


def _with_features(
    found: "list[tuple[Device, str]]",
    features: tuple[str, ...],
    outline: str,
    shipped: "Library",
    head: str,
) -> "tuple[list[tuple[Device, str]], str]":
    from planish.marks.devicefeatures import UnknownFeatureError, by_features, outlines_of
    from planish.marks.devicesearch import features_of

    try:
        # a feature that no device of the library has is a fault of typing, whatever the words are
        fits = by_features(
            shipped.devices, features, outline, outlines_of(shipped.devices, shipped.signs)
        )
    except UnknownFeatureError as fault:
        keys = sorted({k for d in shipped.devices for k in features_of(d)})
        raise BadInput(
            "recorded of no device", f"feature '{fault.said}'",
            f"features on record are: {', '.join(keys)}",
        ) from None  # fmt: skip
    reasons = {d.id: (place, why) for place, (d, why) in enumerate(found)}
    fits = [f for f in fits if f.device.id in reasons]
    if not fits:
        asked = "; ".join((*features, *([f"outline {outline}"] if outline else [])))
        raise none("device with", asked, [], "planish library device")
    fits.sort(key=lambda f: (-len(f.agrees), reasons[f.device.id][0]))
    if not head and fits[0].unrecorded:
        head = "No device on record has all of these features; the nearest:"
    chosen = []
    for fit in fits:
        told = f"has {', '.join(fit.agrees)}"
        if fit.unrecorded:
            told += f"; not on record: {', '.join(fit.unrecorded)}"
        chosen.append((fit.device, "; ".join(filter(None, (reasons[fit.device.id][1], told)))))
    return chosen, head


def _relations(shipped: "Library") -> "dict[str, dict[str, list[str]]]":
    """By device: ids of wider, narrower and related devices, and of those taken for it when worn."""
    from planish.marks.thesaurus import Thesaurus

    thesaurus = Thesaurus(shipped.devices)
    narrower: dict[str, list[str]] = defaultdict(list)
    taken: dict[str, set[str]] = defaultdict(set)
    for one in shipped.devices:
        narrower[one.broader].append(one.id)
        for word in one.worn_as.split(";"):
            for other, how in thesaurus.named(word).items():
                if how == 1.0 and other != one.id:
                    taken[other].add(one.id)
    return {
        one.id: {
            "wider": list(thesaurus.ancestors(one.id)),
            "narrower": narrower[one.id],
            "related": [i for i in narrower[one.broader] if one.broader and i != one.id],
            "worn_look_like_it": sorted(taken[one.id]),
        }
        for one in shipped.devices
    }


def _marks(row: "Device", shipped: "Library") -> list[dict[str, object]]:
    """Where marks of the library show the device."""
    return [record(s) for s in _signs(row, shipped)]


def _signs(row: "Device", shipped: "Library") -> "list[Sign]":
    return [s for s in shipped.signs if s.kind == "device" and s.value == row.id]


def _page(
    row: "Device", why: str, relations: dict[str, list[str]], shipped: "Library"
) -> list[str]:
    from planish.marks.devicesearch import features_of

    labels = {d.id: d.label for d in shipped.devices}
    offices = {o.id: o.name for o in shipped.offices}
    shown = [
        f"{s.system}{f' {offices.get(s.office, s.office)}' if s.office else ''} {s.role}, "
        f"{years(s.year_from, s.year_to)}"
        for s in _signs(row, shipped)
    ]
    used = "; ".join(shown[:4]) + (f"; {len(shown) - 4} more" if len(shown) > 4 else "")
    features = ", ".join(
        k if v == "yes" else f"not {k}" if v == "no" else f"{k} {v}"
        for k, v in features_of(row).items()
    )
    return entry(
        f"{row.label} [{row.id}]",
        [
            ("found", why),
            ("also called", listed(row.words)),
            ("wider", ", ".join(labels[i] for i in relations["wider"])),
            ("narrower", ", ".join(labels[i] for i in relations["narrower"])),
            ("related", ", ".join(labels[i] for i in relations["related"][:8])),
            ("worn, taken for", ", ".join(labels.get(w.strip(), w.strip())
                                          for w in row.worn_as.split(";") if w.strip())),
            ("taken for it", ", ".join(labels[i] for i in relations["worn_look_like_it"][:8])),
            ("features", features),
            ("shape group", row.group),
            ("in marks", used or "of no system in the library"),
            ("note", row.note),
            ("source", grounds(row)),
        ],
    )  # fmt: skip
