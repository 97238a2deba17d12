"""The one error of this room.

ValueError
+-- QuantityError    a text or figure that is no such quantity: what, where, how to mend it
"""

_SHOWN = 60  # characters of a text that one line can bear


class QuantityError(ValueError):
    """A quantity that cannot be read or reckoned with; ``str()`` is one line.

    what: the kind of quantity ("weight", "fineness", "money", "date", "figure").
    text: the text or figure as given.
    fault: what is wrong with it.
    remedy: how to mend it.
    place: where in ``text`` the trouble begins, counted from 0; None where it is the whole.
    """

    def __init__(
        self, what: str, text: object, fault: str, remedy: str, place: int | None = None
    ) -> None:
        self.what, self.text, self.fault = what, str(text), fault
        self.remedy, self.place = remedy, place
        super().__init__(what, text, fault, remedy, place)

    def __str__(self) -> str:
        shown = " ".join(self.text.split())
        if len(shown) > _SHOWN:
            shown = shown[: _SHOWN - 3] + "..."
        at = "" if self.place is None else f" (at character {self.place + 1})"
        return f"{self.what} '{shown}'{at}: {self.fault}; {self.remedy}"
