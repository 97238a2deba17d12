"""Rules of thumb for silver in filled and joined pieces.

They are estimates of the trade, never evidence: a piece emptied and weighed overrules them. Only
two figures rest on a publication, and each of these is one author's; the rest is common practice.
"""

from decimal import Decimal

import msgspec

from planish.library.rows import Confidence
from planish.quantity import Mass, QuantityError


class Allowance(msgspec.Struct, frozen=True, kw_only=True):
    """Silver alloy to expect in one piece: a share of its gross weight, or so many grams.

    share_low, share_high: limits of the share of the gross weight [0 to 1]; or
    grams_low, grams_high: limits of the silver alloy in one piece [g].
    """

    id: str
    label: str
    share_low: Decimal | None = None
    share_high: Decimal | None = None
    grams_low: Decimal | None = None
    grams_high: Decimal | None = None
    confidence: Confidence
    source: str

    def silver(self, gross: Mass, count: int = 1) -> tuple[Mass, Mass]:
        """Limits of the silver alloy in ``count`` pieces that weigh ``gross`` together.

        Raises:
            QuantityError: the count is below one, or the rule expects more silver than was weighed.
        """
        if count < 1:
            raise QuantityError("count", count, "there is at least one piece", "count again")
        if self.share_low is not None and self.share_high is not None:
            return gross * self.share_low, gross * self.share_high
        low = Mass.of((self.grams_low or 0) * count)
        high = Mass.of((self.grams_high or 0) * count)
        if high > gross:
            fault = f"the rule of thumb for {count} x {self.label} expects up to {high}"
            remedy = "check count and weight, or weigh the silver apart"
            raise QuantityError("weight", gross, fault, remedy)
        return low, high


_PRACTICE = "common practice"
_COLUMN = "antiques column on weighted silver: 6.4 of 64 oz in a two-arm candelabrum"
_OPENED = "photographed dissection: 1.005 of 9.672 oz in a 3 1/2 in candlestick"


def _share(key: str, label: str, low: str, high: str, source: str = _PRACTICE) -> Allowance:
    sure = Confidence.PRACTICE if source == _PRACTICE else Confidence.SOURCED
    limits = {"share_low": Decimal(low), "share_high": Decimal(high)}
    return Allowance(id=key, label=label, confidence=sure, source=source, **limits)


def _grams(key: str, label: str, low: str, high: str) -> Allowance:
    limits = {"grams_low": Decimal(low), "grams_high": Decimal(high)}
    return Allowance(
        id=key, label=label, confidence=Confidence.PRACTICE, source=_PRACTICE, **limits
    )


ALLOWANCES: tuple[Allowance, ...] = (
    _share("candlestick-low", "low weighted candlestick", "0.08", "0.15",
           f"common practice; within it {_OPENED}"),
    _share("candlestick-tall", "tall weighted candlestick", "0.08", "0.20"),
    _share("candelabrum", "weighted candelabrum", "0.08", "0.20",
           f"common practice; within it {_COLUMN}"),
    _share("compote", "compote on a weighted foot", "0.20", "0.50"),
    # 1 to 1.5 ozt the pair
    _grams("shaker", "salt or pepper on a weighted base", "15.5", "23.3"),
    _grams("knife", "hollow-handled table knife", "12", "25"),
    _grams("spreader", "hollow-handled butter spreader", "8", "12"),
    _grams("carving", "handle of a carving set", "20", "40"),
    _grams("server", "hollow-handled server with steel bowl or blade", "12", "25"),
    _grams("dresser", "brush, mirror or comb of a dresser set", "15", "60"),
)  # fmt: skip

_BY_ID = {a.id: a for a in ALLOWANCES}


def allowance(key: str) -> Allowance:
    """The rule of thumb of that id.

    Raises:
        QuantityError: there is none.
    """
    if key not in _BY_ID:
        remedy = f"choose one of: {', '.join(_BY_ID)}"
        raise QuantityError("rule of thumb", key, "none goes by that name", remedy)
    return _BY_ID[key]
