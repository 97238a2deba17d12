"""The reading engine: from observed marks to ranked readings with their ledger."""

import math
from collections import defaultdict
from collections.abc import Sequence

import msgspec

from planish.evidence import Finding, Hypothesis, Ledger
from planish.library.loader import Library, load
from planish.library.rows import Maker
from planish.marks.bounds import check_observed
from planish.marks.cells import Scorer
from planish.marks.contradictions import claims_against, unexplained
from planish.marks.explain import ledger, shown
from planish.marks.forms import FormBook, with_places
from planish.marks.likelihood import Likelihood
from planish.marks.makercurves import place_fit
from planish.marks.nextlook import next_looks
from planish.marks.observation import Observed
from planish.marks.parts import apart, groups
from planish.marks.placement import placed
from planish.marks.plan import OPEN_END, Plan
from planish.marks.reading import (
    Assigned,
    MakerGuess,
    NextLook,
    PartReading,
    Reading,
    ReadingFinding,
)
from planish.marks.register import Candidate, Register, activity
from planish.marks.seen import Seen, digest, is_ownership, joined, pieces
from planish.marks.spans import Posterior, Span, posterior, spans
from planish.marks.where import where_to_look

_SHOWN = 12
_LEDGER_FOR = 4
_MOST_MARKS = 14
_PRINTABLE = 0.005


class Reader:
    """The engine with its tables laid out; build once, read many."""

    def __init__(self, library: Library | None = None, more_makers: Sequence[Maker] = ()) -> None:
        self.library = library or load()
        self.plan = Plan(self.library)
        self.forms = FormBook(self.library.forms)
        self.register = Register((*self.library.makers, *more_makers))

    def read(
        self, observed: Observed, form: str | None = None, *, explain: bool = True
    ) -> ReadingFinding:
        """Read the marks of one piece.

        observed: marks and places searched. form: what the piece is, for the next look. explain:
        also make the ledger and the next looks.

        Raises:
            ObservedError: the observation is far larger than anything that a piece bears.
        """
        check_observed(observed, form)
        kept, dropped = self._digested(observed)
        if not kept:
            return _silent(observed, dropped)
        marks = Likelihood(kept, self.plan, self.register)
        where = placed(observed.marks, form, self.library.placements)
        curve = with_places(self.forms.curve(form), where)
        scorer = Scorer(marks, observed.complete, curve)
        post = posterior(scorer.all_runs(self.plan.segments), curve)
        found = spans(post)
        top = [s for s in found[:_SHOWN] if s.probability >= _PRINTABLE] or found[:1]
        readings = [self._reading(scorer, s) for s in top]
        if post.unknown > 0.02:
            readings.append(_unknown(post.unknown))
            readings.sort(key=lambda r: -r.probability)
        best = next((r for r in readings if r.kind != "unknown"), None)
        hypotheses: tuple[Hypothesis, ...] = ()
        lines = Ledger()
        if explain:
            told = _unlike(found)
            labels = [self._reading(scorer, s).label for s in told]
            hypotheses, lines = ledger(scorer, told, labels, post.unknown)
        parts = self._parts(observed, form) if explain else ()
        contradictions = (
            (
                *apart(parts),
                *(unexplained(marks, best, self.plan) if best is readings[0] else ()),
                *claims_against(observed.claims, post, best),
            )
            if best
            else ()
        )
        return ReadingFinding(
            observed=observed,
            readings=tuple(readings),
            finding=Finding(
                about="reading of the marks",
                hypotheses=hypotheses,
                ledger=lines,
                contradictions=tuple(contradictions),
            ),
            contradictions=tuple(contradictions),
            next_look=self._looks(post, best, form) if explain else (),
            parts=parts,
            not_used=tuple(dropped),
            consulted=tuple(
                sorted({f"{s.system.label} ({s.system.id})" for sp in top for s in sp.segments})
            ),
        )

    def _parts(self, observed: Observed, form: str | None) -> tuple[PartReading, ...]:
        """Each part alone, where more than one bears marks."""
        found = []
        for name, marks in groups(observed).items():
            readings = self.read(marks, form, explain=False).readings
            best = readings[0]
            place = math.fsum(
                r.probability
                for r in readings
                if (r.kind, r.country, r.office) == (best.kind, best.country, best.office)
            )
            found.append(PartReading(part=name, reading=best, place=place))
        return tuple(found)

    def _digested(self, observed: Observed) -> tuple[tuple[Seen, ...], list[str]]:
        """Marks by content, once each; and what is left out, with the reason."""
        by_key: dict[str, Seen] = {}
        dropped: list[str] = []
        known = self.plan.any_words
        for mark in (p for m in joined(observed.marks, known) for p in pieces(m, known)):
            seen = digest(mark, self.plan.thesaurus, self.plan.known_words)
            if is_ownership(mark):
                dropped.append(f"{shown(seen)}: engraved or an owner's, no part of the marking")
            else:
                by_key.setdefault(seen.key, seen)
        kept = sorted(by_key.values(), key=lambda s: s.key)
        if len(kept) > _MOST_MARKS:
            order = {"device": 0, "word": 1, "letter": 2, "initials": 3, "name": 4}
            kept.sort(key=lambda s: (order.get(s.form, 9), s.key))
            dropped += [f"{shown(s)}: more than {_MOST_MARKS} marks" for s in kept[_MOST_MARKS:]]
            kept = kept[:_MOST_MARKS]
        return tuple(kept), dropped

    def _reading(self, scorer: Scorer, span: Span) -> Reading:
        segment = next(s for s in span.segments if s.year_from <= span.best_year <= s.year_to)
        assigned, fineness, sources = self._assigned(scorer, span)
        makers = self._makers(scorer, span, assigned)
        office = segment.office.name if segment.office else None
        if span.year_to >= OPEN_END:
            years = f"{span.year_from} or later"
        elif span.year_from == span.year_to:
            years = str(span.year_from)
        else:
            years = f"{span.year_from}-{span.year_to}"
        systems = {s.system.id for s in span.segments}
        name = segment.system.label if len(systems) == 1 else segment.system.label.split(",")[0]
        where = f"{office or name}, {years}"
        label = where + (f", {fineness:g} fine" if fineness else "")
        return Reading(
            key=span.key,
            kind=segment.system.kind,
            country=segment.system.country or None,
            system=segment.system.id,
            system_label=segment.system.label,
            office=office,
            year_from=span.year_from,
            year_to=span.year_to,
            fineness=fineness,
            makers=makers,
            probability=min(1.0, span.probability),
            label=label,
            assigned=assigned,
            sources=sources,
        )

    @staticmethod
    def _assigned(
        scorer: Scorer, span: Span
    ) -> tuple[tuple[Assigned, ...], float | None, tuple[str, ...]]:
        """Greedy best one-to-one assignment in the likeliest year, for display."""
        marks, year = scorer.marks, span.best_year
        segment = next(s for s in span.segments if s.year_from <= year <= s.year_to)
        ratios = sorted(
            (
                (marks.role(i, e, segment, year) * e.presence, i, r)
                for i in range(len(marks.seen))
                for r, e in enumerate(segment.expected)
            ),
            reverse=True,
        )
        role_of: dict[int, tuple[int, float]] = {}
        used: set[int] = set()
        for ratio, i, r in ratios:
            if i not in role_of and r not in used and ratio > marks.stray(i):
                role_of[i] = (r, ratio)
                used.add(r)
        out: list[Assigned] = []
        fineness = segment.system.fineness
        sources: dict[str, None] = {}
        for i, seen in enumerate(marks.seen):
            alone = marks.stray(i)
            if i in role_of:
                r, ratio = role_of[i]
                expected = segment.expected[r]
                out.append(
                    Assigned(mark=i, shown=shown(seen), role=expected.role,
                             probability=ratio / (ratio + alone))
                )  # fmt: skip
                ways = sorted(
                    expected.ways, key=lambda w: -w.share * marks.way(i, w, segment, year)
                )
                if ways:
                    sources.update(dict.fromkeys(ways[0].sources))
                    if ways[0].fineness is not None:
                        fineness = ways[0].fineness
            else:
                out.append(Assigned(mark=i, shown=shown(seen), role="stray", probability=1.0))
        return tuple(out), fineness, tuple(sources) or segment.system.sources

    def _makers(
        self, scorer: Scorer, span: Span, assigned: tuple[Assigned, ...]
    ) -> tuple[MakerGuess, ...]:
        marks = scorer.marks
        segment = next(s for s in span.segments if s.year_from <= span.best_year <= s.year_to)
        country = segment.system.country
        mine = {
            a.mark
            for a in assigned
            if a.role in ("sponsor", "maker", "stray", "retailer", "quality")
        }
        role_of = {a.mark: a.role for a in assigned}
        town = segment.town
        weights: dict[str, float] = defaultdict(float)
        best: dict[str, Candidate] = {}
        for i in mine:
            share = 1.0 if role_of[i] in ("sponsor", "maker") else 0.3
            pools = [country] if country else list(marks.makers.candidates[i])
            for candidate in (
                c for pool in pools for c in marks.makers.candidates[i].get(pool, ())
            ):
                when = activity(candidate.maker, span.year_from, span.year_to)
                w = share * candidate.fit * max(when, 0.01) * place_fit(candidate.maker, town)
                if w > weights[candidate.maker.name]:
                    weights[candidate.maker.name] = w
                    best[candidate.maker.name] = candidate
        guesses = []
        unknown = 0.25
        named: list[tuple[str, float]] = []
        for i in sorted(mine):
            seen = marks.seen[i]
            place = seen.plain in self.plan.place_words
            if seen.form == "name" and seen.mark.text and not seen.lost and not place:
                role = 1.0 if role_of[i] in ("sponsor", "maker") else 0.4
                named.append((as_name(seen.mark.text), 0.6 * role))
        total = math.fsum(weights.values()) + unknown + math.fsum(w for _, w in named)
        for name, w in weights.items():
            maker = best[name].maker
            years = f"{maker.year_from or ''}-{maker.year_to or ''}".strip("-")
            guesses.append(
                MakerGuess(name=name, probability=w / total, why=best[name].why,
                           place=maker.place, years=years, sources=maker.sources)
            )  # fmt: skip
        guesses += [
            MakerGuess(name=name, probability=w / total, why="the name as struck")
            for name, w in named
        ]
        if segment.system.maker:
            guesses = [
                msgspec.structs.replace(g, probability=0.05 * g.probability) for g in guesses
            ]
            guesses.append(self._firm(segment.system.maker))
        guesses.sort(key=lambda g: (-g.probability, g.name))
        return tuple(guesses[:8])

    def _firm(self, maker_id: str) -> MakerGuess:
        """The firm whose own marks make up a system."""
        maker = next(m for m in self.library.makers if m.id == maker_id)
        return MakerGuess(
            name=maker.name,
            probability=0.95,
            why="the set of punches is the firm's own",
            place=maker.place,
            sources=maker.sources,
        )

    def _looks(
        self, post: Posterior, best: Reading | None, form: str | None
    ) -> tuple[NextLook, ...]:
        roles = frozenset(a.role for a in best.assigned) if best else frozenset()
        looks = next_looks(post, self.plan, roles)
        spots = where_to_look(form, self.library) if form else ()
        where = tuple(f"{s.place}" + (f" ({s.how})" if s.how else "") for s in spots[:3])
        return tuple(msgspec.structs.replace(n, where=where) for n in looks)


def _unlike(found: Sequence[Span]) -> list[Span]:
    """Spans for the ledger: the likeliest two, then the likeliest of other systems and offices."""
    kept = list(found[:2])
    for span in found[2:40]:
        if len(kept) >= _LEDGER_FOR:
            break
        if all(span.segments[0].key != k.segments[0].key for k in kept):
            kept.append(span)
    return kept


def as_name(text: str) -> str:
    """A struck name as a name: separators to spaces, capitals to title case."""
    plain = " ".join(
        text.replace("·", " ").replace("•", " ").replace("∙", " ").replace(".", " ").split()
    )
    return plain.title() if plain.isupper() else plain


def _unknown(p: float, label: str = "marks of no system in the library, or none at all") -> Reading:
    return Reading(
        key="unknown", kind="unknown", country=None, system="", system_label="no system known here",
        office=None, year_from=None, year_to=None, fineness=None, makers=(), probability=p,
        label=label,
    )  # fmt: skip


def _silent(observed: Observed, dropped: list[str]) -> ReadingFinding:
    return ReadingFinding(
        observed=observed,
        readings=(_unknown(1.0, "no mark to read"),),
        finding=Finding(about="reading of the marks", hypotheses=()),
        not_used=tuple(dropped),
    )
