"""Best 20 of a million and of ten million sales, exact, beside DuckDB on the same rows.

    python benchmarks/nearest.py [--rows 1000000 10000000] [--subjects 20]

Nine terms: five numbers and four words, forms and makers as unevenly spread as in catalogues
(invented rows; seed fixed). Every answer of the grouped search is compared with a plain scan in
numpy and with DuckDB. Times are of one thread, in milliseconds.
"""

import argparse
import statistics
import time
from typing import Any

import numpy as np

from planish.worth.nearest import Columns, Wanted

NUMBERS = ("ln_net_g", "condition", "made", "ln_pieces", "engraved")
WORDS = ("form", "maker", "place", "metal")
WEIGHTS = {"ln_net_g": 1.0, "condition": 0.4, "made": 0.5, "ln_pieces": 0.8, "engraved": 0.2,
           "form": 4.0, "maker": 0.6, "place": 0.3, "metal": 2.0}  # fmt: skip


def rows(count: int, seed: int = 6) -> tuple[dict[str, Any], dict[str, Any]]:
    """Columns of invented sales."""
    chance = np.random.default_rng(seed)

    def uneven(kinds: int, power: float) -> Any:
        share = 1 / np.arange(1, kinds + 1) ** power
        return chance.choice(kinds, count, p=share / share.sum()).astype(np.int32)

    form = uneven(60, 0.8)
    middle = chance.normal(5.5, 1.2, 60)
    numbers = {
        "ln_net_g": middle[form] + chance.normal(0, 0.6, count),
        "condition": chance.integers(0, 5, count),
        "made": chance.normal(18.3, 0.8, count),
        "ln_pieces": np.log(chance.choice([1, 2, 4, 6, 12], count, p=[0.6, 0.2, 0.1, 0.06, 0.04])),
        "engraved": chance.integers(0, 2, count),
    }
    words = {
        "form": form, "maker": uneven(8000, 1.0), "place": uneven(40, 1.2), "metal": uneven(5, 2.0),
    }  # fmt: skip
    return {n: c.astype(np.float32) for n, c in numbers.items()}, words


def scan(numbers: dict[str, Any], words: dict[str, Any], at: int, count: int) -> Any:
    """The same by a plain scan."""
    squares = np.zeros(len(words["form"]))
    for name, column in numbers.items():
        apart = column.astype(np.float64) - float(column[at])
        apart *= apart
        apart *= WEIGHTS[name]
        squares += apart
    for name, column in words.items():
        squares += (column != column[at]) * WEIGHTS[name]
    bound = np.partition(squares, count - 1)[count - 1]
    near = np.flatnonzero(squares <= bound)
    return near[np.lexsort((near, squares[near]))][:count]


def table(numbers: dict[str, Any], words: dict[str, Any]) -> Any:
    """The rows in DuckDB, in memory, ordered by form and weight as ours are."""
    import duckdb  # noqa: PLC0415  # the peer of this benchmark alone

    base = duckdb.connect(config={"threads": 1})
    given = {"id": np.arange(len(words["form"])), **numbers, **words}
    base.register("given", given)
    base.execute("create table sales as select * from given order by form, ln_net_g")
    base.unregister("given")
    return base


def sql(numbers: dict[str, Any], words: dict[str, Any], at: int, *, one_form: bool) -> str:
    """The query: the whole file, or one form only (exact where no other form can win)."""
    terms = [
        f"{WEIGHTS[n]} * ({n}::double - {float(c[at])!r}) * ({n}::double - {float(c[at])!r})"
        for n, c in numbers.items()
    ]
    terms += [f"{WEIGHTS[n]} * ({n} <> {int(c[at])})::int" for n, c in words.items()]
    where = f"where form = {int(words['form'][at])}" if one_form else ""
    return f"select id, {' + '.join(terms)} as d from sales {where} order by d, id limit 20"  # noqa: S608  # numbers only


def timed(work: Any) -> tuple[float, Any]:
    """Milliseconds and result."""
    start = time.perf_counter()
    result = work()
    return 1000 * (time.perf_counter() - start), result


def run(count: int, subjects: int) -> None:
    """One size."""
    numbers, words = rows(count)
    built, columns = timed(lambda: Columns.of(numbers, words))
    loaded, base = timed(lambda: table(numbers, words))
    size = sum(c.nbytes for c in (*columns.numbers.values(), *columns.words.values(), columns.rows))
    at_random = np.random.default_rng(1).integers(0, count, subjects)
    times: dict[str, list[float]] = {
        "grouped": [],
        "scan": [],
        "duckdb": [],
        "duckdb, one form": [],
    }
    seen, same, agree = [], 0, 0
    for at in map(int, at_random):
        wanted = Wanted(
            numbers={n: float(c[at]) for n, c in numbers.items()},
            words={n: int(c[at]) for n, c in words.items()},
            weights=WEIGHTS,
        )
        columns.nearest(wanted)
        took, found = timed(lambda w=wanted: columns.nearest(w))  # type: ignore[misc]  # bound now
        times["grouped"].append(took)
        seen.append(found.seen)
        took, plain = timed(lambda a=at: scan(numbers, words, a, 20))  # type: ignore[misc]  # as above
        times["scan"].append(took)
        same += bool(np.array_equal(plain, found.rows))
        for name, one in (("duckdb", False), ("duckdb, one form", True)):
            query = sql(numbers, words, at, one_form=one)
            took, answer = timed(lambda q=query: base.execute(q).fetchall())  # type: ignore[misc]  # as above
            times[name].append(took)
            if not one:
                far = np.sqrt([d for _, d in answer])
                agree += bool(np.allclose(far, found.distance, atol=1e-5))
    print(f"\n{count:,} rows; columns {size / 1e6:.0f} MB, made in {built / 1000:.1f} s;"
          f" DuckDB loaded in {loaded / 1000:.1f} s")  # fmt: skip
    print(f"exact against the plain scan {same} of {subjects}; distances as DuckDB's {agree} of {subjects};"
          f" rows looked at, median {statistics.median(seen):,.0f}")  # fmt: skip
    for name, took in times.items():
        print(f"{name:18} median {statistics.median(took):8.2f}  worst {max(took):8.2f} ms")


def main() -> None:
    """Every size asked for."""
    parser = argparse.ArgumentParser(description=__doc__)
    parser.add_argument("--rows", type=int, nargs="+", default=[1_000_000, 10_000_000])
    parser.add_argument("--subjects", type=int, default=20)
    given = parser.parse_args()
    for count in given.rows:
        run(count, given.subjects)


if __name__ == "__main__":
    main()
