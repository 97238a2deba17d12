"""A probability as it is printed, and from where on a reading is called settled."""

#: below this the likeliest hypothesis is printed as "not settled"; at it, at most one in five such
#: statements is wrong where the probabilities are calibrated (judgment; see docs/honesty.md)
SETTLED = 0.8


def percent(probability: float) -> str:
    """A probability [0 to 1] in percent; never 0 % or 100 %, for nothing is certain.

    >>> percent(0.9996), percent(0.123), percent(0.0004)
    ('>99 %', '12 %', '<1 %')
    """
    if probability >= 0.995:
        return ">99 %"
    if probability < 0.005:
        return "<1 %"
    return f"{100 * probability:.0f} %"
