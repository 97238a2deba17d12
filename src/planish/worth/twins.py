"""Records that are one sale, or one object offered again: found, grouped, counted once.

Five grounds join records, and chains of them make a group:

    copy      same venue, sale or day, and lot; same price; same words or weight
    split     as copy, but other words: one lot of several pieces, written as several rows, each
              with the price of the whole
    bases     same venue, sale or day, and lot; prices of two bases (hammer and with premium)
    clash     same venue, sale or day, and lot; two prices of one basis: one of them is wrong
    text      same words, price and day, whatever the venue is called
    again     the same object: one word in ``piece``, or same words and weight on another day

Of a group one record counts: sold before unsold, then the latest, the fullest, the first by id.
"""

import re
import unicodedata
from collections import defaultdict, deque
from collections.abc import Callable, Iterable, Mapping, Sequence
from enum import StrEnum
from functools import lru_cache

import msgspec

from planish.quantity import Mass
from planish.worth.comparables import Basis, Comparable
from planish.worth.sales import Sale
from planish.worth.traits import Traits

#: so many records of one sale are told aloud (judgment: two catalogues and a dealer's list)
MANY = 4
#: fewer words than this name no single object
FEW_WORDS = 4


class Ground(StrEnum):
    """Why two records are joined."""

    COPY = "copy"
    SPLIT = "split"
    BASES = "bases"
    CLASH = "clash"
    TEXT = "text"
    AGAIN = "again"


_WORDS = {
    Ground.COPY: "the same lot with the same price, recorded again",
    Ground.SPLIT: "pieces of one lot, each with the price of the whole",
    Ground.BASES: "the same lot with prices of two bases",
    Ground.CLASH: "the same lot with another price: one of them is wrong, or it is a share",
    Ground.TEXT: "the same words, price and day",
    Ground.AGAIN: "the same object offered again",
}
_DOUBTFUL = {Ground.CLASH}


class Joined(msgspec.Struct, frozen=True, kw_only=True):
    """A record that is not counted, the one it is joined to, and why."""

    id: str
    to: str
    ground: Ground

    def __str__(self) -> str:
        return f"{self.id} is not counted beside {self.to}: {_WORDS[self.ground]}"


class Group(msgspec.Struct, frozen=True, kw_only=True):
    """Records that count once. kept: the id that counts; members: all, kept first.

    flags: what the person should look at.
    """

    kept: str
    members: tuple[str, ...]
    joined: tuple[Joined, ...]
    flags: tuple[str, ...] = ()


class Counted(msgspec.Struct, frozen=True, kw_only=True):
    """Sales each counted once, in order of id, and the groups that were made of the others.

    A lot split into rows comes back as one sale of all its pieces.
    """

    sales: tuple[Sale, ...]
    groups: tuple[Group, ...]


class _Facts(msgspec.Struct, frozen=True, kw_only=True):
    """What of a record tells it from others, folded."""

    id: str
    day: str
    venue: str
    sale: str
    lot: str
    title: str
    price: str
    basis: Basis
    piece: str
    weight: Mass | None
    known: int


_Key = Callable[[_Facts], tuple[str, ...] | None]


def counted(sales: Iterable[Sale]) -> Counted:
    """Sales counted once each; the order in which they come is of no account."""
    by_id = {sale.id: sale for sale in sorted(sales, key=lambda s: s.id)}
    found = groups(by_id.values())
    out = dict(by_id)
    for group in found:
        for other in group.members[1:]:
            del out[other]
        parts = [group.kept, *(j.id for j in group.joined if j.ground is Ground.SPLIT)]
        if len(parts) > 1:
            out[group.kept] = _whole([by_id[i] for i in parts])
    return Counted(sales=tuple(out.values()), groups=found)


def once(comparables: Iterable[Comparable]) -> tuple[tuple[Comparable, ...], tuple[Group, ...]]:
    """Comparables counted once each, for a grid, and the groups."""
    ordered = sorted(comparables, key=lambda c: c.id)
    found = groups(ordered)
    out = {i for group in found for i in group.members[1:]}
    return tuple(c for c in ordered if c.id not in out), found


def groups(records: Iterable[Sale | Comparable]) -> tuple[Group, ...]:
    """Groups of two and more, in order of the ids that count."""
    facts = {f.id: f for f in sorted(map(_facts, records), key=lambda f: f.id)}
    near: dict[str, dict[str, Ground]] = defaultdict(dict)
    for one, other, ground in _pairs(list(facts.values())):
        near[one].setdefault(other, ground)
        near[other].setdefault(one, ground)
    found = []
    left = set(near)
    for start in facts:
        if start in left:
            reached = _reached(start, near)
            left -= set(reached)
            found.append(_group([facts[i] for i in reached], near))
    return tuple(sorted(found, key=lambda g: g.kept))


def _reached(start: str, near: Mapping[str, Mapping[str, Ground]]) -> dict[str, tuple[str, Ground]]:
    """Every record joined to one, near ones first: which one it hangs on, and why."""
    found: dict[str, tuple[str, Ground]] = {start: (start, Ground.COPY)}
    todo = deque([start])
    while todo:
        here = todo.popleft()
        for other in sorted(near[here]):
            if other not in found:
                found[other] = (here, near[here][other])
                todo.append(other)
    return found


def _facts(record: Sale | Comparable) -> _Facts:
    own = record if isinstance(record, Sale) else None
    traits = own.traits if own else Traits()
    return _Facts(
        id=record.id,
        day=record.date.edtf,
        venue=_folded(record.venue),
        sale=_folded(own.sale) if own else "",
        lot=_folded(record.lot).removeprefix("lot ").removeprefix("no "),
        title=_folded(record.title),
        price=f"{record.price.amount.normalize():f} {record.price.currency}",
        basis=record.basis,
        piece=_folded(own.piece) if own else "",
        weight=traits.net or traits.gross,
        known=traits.known if own else len(record.attributes),  # type: ignore[union-attr]  # a comparable
    )


@lru_cache(maxsize=50_000)  # few venues, and a lot's words are asked for once a record
def _folded(text: str) -> str:
    """Without case, accents, punctuation and doubled space."""
    plain = text.casefold()
    if not plain.isascii():
        parted = unicodedata.normalize("NFKD", plain)
        plain = "".join(c for c in parted if not unicodedata.combining(c))
    return " ".join(re.sub(r"[^\w]+|_", " ", plain).split())


def _pairs(facts: Sequence[_Facts]) -> list[tuple[str, str, Ground]]:
    """Records joined to one before them, the surest ground of each first."""
    found: list[tuple[str, str, Ground]] = []
    for key in (_by_lot, _by_sale):
        for same in _alike(facts, key):
            best = min(same, key=_rank)
            found += [(best.id, f.id, _of_lot(best, f)) for f in same if f is not best]
    found += _joined(facts, _by_text, Ground.TEXT)
    found += _joined(facts, _by_piece, Ground.AGAIN)
    found += _joined(facts, _by_words, Ground.AGAIN)
    return found


def _joined(facts: Sequence[_Facts], key: _Key, ground: Ground) -> list[tuple[str, str, Ground]]:
    """Each record of one key to the first before it that may be the same."""
    found = []
    for same in _alike(facts, key):
        ordered = sorted(same, key=_rank)
        for at, f in enumerate(ordered):
            one = next((g for g in ordered[:at] if not _two_lots(g, f)), None)
            if one is not None:
                found.append((one.id, f.id, ground))
    return found


def _two_lots(one: _Facts, other: _Facts) -> bool:
    """Whether they are two lots of one sale, which may be alike to the word, weight and price."""
    if not (one.lot and other.lot and one.lot != other.lot and one.venue == other.venue):
        return False
    return one.day == other.day or bool(one.sale and one.sale == other.sale)


def _alike(facts: Iterable[_Facts], key: _Key) -> list[list[_Facts]]:
    by_key: dict[tuple[str, ...], list[_Facts]] = defaultdict(list)
    for f in facts:
        if (k := key(f)) is not None:
            by_key[k].append(f)
    return [same for same in by_key.values() if len(same) > 1]


def _by_lot(f: _Facts) -> tuple[str, ...] | None:
    return (f.venue, f.day, f.lot) if f.lot and f.venue else None


def _by_sale(f: _Facts) -> tuple[str, ...] | None:
    return (f.venue, f.sale, f.lot) if f.sale and f.lot and f.venue else None


def _by_text(f: _Facts) -> tuple[str, ...] | None:
    if len(f.title.split()) >= FEW_WORDS:
        return (f.title, f.price, f.day)
    return (f.title, f.price, f.day, f.venue) if f.title else None


def _by_piece(f: _Facts) -> tuple[str, ...] | None:
    return (f.piece,) if f.piece else None


def _by_words(f: _Facts) -> tuple[str, ...] | None:
    """Words and weight that together name one object; alone neither does."""
    if f.weight is None or len(f.title.split()) < FEW_WORDS:
        return None
    return (f.title, f.weight.written(places=1))


def _of_lot(one: _Facts, other: _Facts) -> Ground:
    if one.basis is not other.basis:
        return Ground.BASES
    if one.price != other.price:
        return Ground.CLASH
    if one.title == other.title or not other.title or not one.title:
        weights = one.weight, other.weight
        return Ground.SPLIT if None not in weights and weights[0] != weights[1] else Ground.COPY
    return Ground.SPLIT


def _rank(f: _Facts) -> tuple[bool, int, int, bool, str]:
    """Which record of a group counts: the smallest."""
    day = re.sub(r"\D", "", f.day.split("/")[-1].replace("X", "0")).ljust(8, "0") or "0"
    return (f.basis is Basis.UNSOLD, -int(day[:8]), -f.known, not f.title, f.id)


def _group(members: list[_Facts], near: Mapping[str, Mapping[str, Ground]]) -> Group:
    ordered = sorted(members, key=_rank)
    kept = ordered[0].id
    reached = _reached(kept, near)
    joined = [Joined(id=f.id, to=reached[f.id][0], ground=reached[f.id][1]) for f in ordered[1:]]
    flags = []
    copies = sum(j.ground in (Ground.COPY, Ground.TEXT) for j in joined) + 1
    if copies >= MANY:
        flags.append(f"one sale stands {copies} times; {kept} counts, once")
    flags += [
        f"{j.id} and {j.to}: {_WORDS[j.ground]}; mend the row"
        for j in joined
        if j.ground in _DOUBTFUL
    ]
    return Group(
        kept=kept,
        members=tuple(f.id for f in ordered),
        joined=tuple(joined),
        flags=tuple(flags),
    )


def _whole(parts: Sequence[Sale]) -> Sale:
    """One lot out of the rows of its pieces: what they share, weights and counts added up."""
    kept = parts[0]
    traits = [p.traits for p in parts]
    shared = {
        name: getattr(traits[0], name)
        for name in Traits.__struct_fields__
        if name not in ("gross", "net", "pieces", "grouping", "faults")
        and all(getattr(t, name) == getattr(traits[0], name) for t in traits)
    }
    for name in ("gross", "net"):
        masses = [getattr(t, name) for t in traits]
        shared[name] = Mass.total(masses) if all(masses) else None
    shared["pieces"] = sum(t.pieces or 1 for t in traits)
    found = {fault for t in traits for fault in t.faults}
    shared["faults"] = tuple(f for f in sorted(found))
    titles = dict.fromkeys(p.title for p in parts if p.title)
    return msgspec.structs.replace(kept, title="; ".join(titles), traits=Traits(**shared))
