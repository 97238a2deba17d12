"""What a piece is made of: rival compositions, what each test says of them, and what disagrees."""

import math
from collections import defaultdict
from collections.abc import Iterable, Mapping, Sequence
from functools import cache

import msgspec

from planish.evidence import Contradiction, Finding, Hypothesis, Ledger, LedgerLine, decibans
from planish.library import Library, load
from planish.library.rows import Composition, MetalTest
from planish.metal.composition_conflict import Told, conflicts
from planish.metal.composition_histories import COUNT, History, histories
from planish.metal.composition_likelihood import Responses
from planish.metal.composition_prior import Claim, priors
from planish.metal.testlog import Entry, LogNote, log_notes
from planish.quantity import QuantityError

#: kinds in the order in which they are told
KINDS = {"solid": "solid silver", "plated": "plated", "filled": "silver skin over a filling",
         "base": "base metal, no silver"}  # fmt: skip


class FinenessRange(msgspec.Struct, frozen=True):
    """Fineness of the silver if the piece is solid (or of the skin if filled): middle and 90 % [‰]."""

    middle: float
    low: float
    high: float


class CompositionFinding(msgspec.Struct, frozen=True, kw_only=True):
    """The finding. kinds: probability of solid, plated, filled, base; the likeliest first.

    fineness: None where silver is unlikely. claims: what the marks said, as given. weighed: entries
    that gave weight, in the order of the ledger; unweighed: the others. log: consent and cautions.
    """

    finding: Finding
    kinds: tuple[tuple[str, float], ...]
    fineness: FinenessRange | None
    claims: tuple[Claim, ...]
    weighed: tuple[Entry, ...]
    unweighed: tuple[Entry, ...]
    log: tuple[LogNote, ...]
    #: probability of each history, in the bench's order: what the next test is reckoned from
    weights: tuple[float, ...]

    @property
    def best(self) -> Hypothesis:
        """The likeliest composition."""
        return self.finding.hypotheses[0]

    @property
    def contradictions(self) -> tuple[Contradiction, ...]:
        """What no single piece explains, or hardly."""
        return self.finding.contradictions

    def kind(self, name: str) -> float:
        """Probability of a kind."""
        return dict(self.kinds).get(name, 0.0)


class CompositionBench:
    """The tests, compositions and histories of one library, laid out once."""

    def __init__(self, library: Library) -> None:
        self.library = library
        self.compositions: tuple[Composition, ...] = library.compositions
        self.tests: dict[str, MetalTest] = {test.id: test for test in library.tests}
        self.histories: tuple[History, ...] = histories(library)
        tables = {(r.test, r.met): r.table for r in library.responses}
        self.responses = Responses(self.histories, tables)

    def start(self, claims: Iterable[Claim] = ()) -> tuple[dict[str, float], list[float]]:
        """Prior of each composition, and weight of each history."""
        prior = priors(self.library, claims)
        weights = [prior[row.id] / COUNT for row in self.compositions for _ in range(COUNT)]
        return prior, weights

    def sums(self, weights: Sequence[float]) -> list[float]:
        """Weights of the histories summed to those of the compositions."""
        return [sum(weights[at : at + COUNT]) for at in range(0, len(weights), COUNT)]

    def likelihoods(self, entry: Entry, before: Sequence[Entry]) -> list[float]:
        """Likelihood of an entry on each history, given the entries before it.

        Raises:
            QuantityError: no such test, or a reading that the test does not have.
        """
        test = self.tests.get(entry.test)
        if test is None:
            known = ", ".join(self.tests)
            raise QuantityError("test", entry.test, "no such test", f"one of {known}")
        wrong = [r for r in entry.readings if r not in test.choices]
        if wrong or (entry.value is None and not entry.readings):
            remedy = f"one of {', '.join(test.choices) or 'a figure in ' + test.unit}"
            shown = ", ".join(wrong) or "nothing"
            raise QuantityError(f"reading of {test.label}", shown, "no such reading", remedy)
        return self.responses.of(entry, before, test)

    def weigh(
        self,
        entries: Iterable[Entry],
        claims: Iterable[Claim] = (),
        *,
        about: str = "what the piece is made of",
    ) -> CompositionFinding:
        """The finding of these tests.

        claims: what the marks say; without them, the shares of unmarked pieces hold.

        Raises:
            QuantityError: an entry or a claim cannot be used.
        """
        entries, claims = tuple(entries), tuple(claims)
        prior, weights = self.start(claims)
        given = self.start()[1]
        done: list[Entry] = []
        unweighed: list[Entry] = []
        told: list[Told] = []
        for entry in entries:
            test = self.tests.get(entry.test)
            if test is not None and test.meets == "unweighed":
                unweighed.append(entry)
                continue
            found = self.likelihoods(entry, done)
            # what the entry says to one who knows nothing but the shares of unmarked pieces
            alone = self._by_composition(self.likelihoods(entry, ()), given)
            line = self._line(entry, self._by_composition(found, weights), len(done) + 1)
            weights = [w * p for w, p in zip(weights, found, strict=True)]
            done.append(entry)
            told.append((entry, line, alone))
        total = sum(weights)
        scaled = [w / total for w in weights]
        masses = self.sums(scaled)
        return CompositionFinding(
            finding=Finding(
                about=about,
                hypotheses=self._hypotheses(prior, masses),
                ledger=Ledger(tuple(line for _, line, _ in told)),
                contradictions=conflicts(self.compositions, claims, told, self.tests),
            ),
            kinds=self._kinds(masses),
            fineness=self._fineness(scaled, masses),
            claims=claims,
            weighed=tuple(done),
            unweighed=tuple(unweighed),
            log=log_notes(entries, self.library.tests),
            weights=tuple(scaled),
        )

    def _hypotheses(
        self, prior: Mapping[str, float], masses: Sequence[float]
    ) -> tuple[Hypothesis, ...]:
        found = (
            Hypothesis(key=row.id, label=row.label, probability=p, prior=prior[row.id])
            for row, p in zip(self.compositions, masses, strict=True)
        )
        return tuple(sorted(found, key=lambda h: -h.probability))

    def _kinds(self, masses: Sequence[float]) -> tuple[tuple[str, float], ...]:
        kinds: dict[str, float] = defaultdict(float)
        for row, p in zip(self.compositions, masses, strict=True):
            kinds[row.kind] += p
        return tuple(sorted(kinds.items(), key=lambda item: -item[1]))

    def _by_composition(
        self, likelihoods: Sequence[float], weights: Sequence[float]
    ) -> list[float]:
        """Mean likelihood within each composition, by the weights that its histories have."""
        found = []
        for at in range(0, len(weights), COUNT):
            inside = weights[at : at + COUNT]
            whole = sum(inside)
            both = zip(inside, likelihoods[at : at + COUNT], strict=True)
            found.append(sum(w * p for w, p in both) / whole if whole > 0.0 else 1e-30)
        return found

    def _line(self, entry: Entry, found: Sequence[float], n: int) -> LedgerLine:
        test = self.tests[entry.test]
        top = max(found)
        keys = [row.id for row in self.compositions]
        because = f"shows {test.detects}"
        if test.fooled_by:
            because += f"; misled by {test.fooled_by}"
        return LedgerLine(
            key=f"{n}:{entry.test}",
            observed=described(entry, test),
            because=because,
            likelihood_db={
                k: decibans(math.log(max(p / top, 1e-30))) for k, p in zip(keys, found, strict=True)
            },
            sources=test.sources,
        )

    def _fineness(self, weights: Sequence[float], masses: Sequence[float]) -> FinenessRange | None:
        kinds = [row.kind for row in self.compositions]
        silver = sum(p for p, k in zip(masses, kinds, strict=True) if k in ("solid", "filled"))
        if silver < 0.2:
            return None
        points = sorted(
            (h.fine, w)
            for h, w in zip(self.histories, weights, strict=True)
            if kinds[h.hypothesis] in ("solid", "filled")
        )
        low, middle, high = (_quantile(points, silver * q) for q in (0.05, 0.5, 0.95))
        return FinenessRange(round(middle), math.floor(low), math.ceil(high))


def _quantile(points: Sequence[tuple[float, float]], wanted: float) -> float:
    """Where the weights of the points, summed in their order, reach what is wanted."""
    at = 0.0
    for value, weight in points:
        at += weight
        if at >= wanted:
            return value
    return points[-1][0]


def described(entry: Entry, test: MetalTest) -> str:
    """An entry in words."""
    if entry.value is not None:
        unit = test.unit if test.unit != "% silver" else "% silver"
        shown = f"{entry.value:g} ± {entry.plus_minus:g} {unit}"
    else:
        words = [r.replace("-", " ") for r in entry.readings]
        shown = " or ".join(words)
    if not entry.sure:
        shown += " (unsure)"
    at = f" at {entry.spot}" if entry.spot else ""
    if entry.where != "surface" and entry.where not in entry.spot:
        at += {"worn": " (worn place)", "cut": " (filed)"}[entry.where]
    return f"{test.label}{at}: {shown}"


@cache
def shipped_composition_bench() -> CompositionBench:
    """The bench over the shipped library, laid out once."""
    return CompositionBench(load())
