"""What can go wrong when a report is written, each with one line for its reader.

ReportFault
    PhotographFault     a picture that cannot be used
    GlyphFault          a text with a sign that no font here has
    OutFault            the file cannot be written there
    TypesetFault        the typesetter stopped for another reason
"""


class ReportFault(ValueError):
    """No report was written; an existing one is untouched."""


class PhotographFault(ReportFault):
    """A picture that cannot be used."""

    def __init__(self, name: str, what: str, mend: str) -> None:
        self.name, self.what, self.mend = name, what, mend
        super().__init__(f"photograph '{name}': {what}; {mend}")


class GlyphFault(ReportFault):
    """A text with a sign that no font here has."""

    def __init__(self, signs: str, where: str, text: str) -> None:
        self.signs, self.where, self.text = signs, where, text
        named = ", ".join(f"{s} (U+{ord(s):04X})" for s in signs)
        super().__init__(
            f"{where or 'the report'}: no font here has {named}"
            + (f", in '{_short(text)}'" if text else "")
            + "; write it in other letters, or give a folder with a font that has it"
        )


class OutFault(ReportFault):
    """The file cannot be written there."""

    def __init__(self, path: str, what: str, mend: str) -> None:
        self.path, self.what, self.mend = path, what, mend
        super().__init__(f"report '{path}': {what}; {mend}")


class TypesetFault(ReportFault):
    """The typesetter stopped for another reason."""

    def __init__(self, what: str, details: str = "") -> None:
        self.what, self.details = what, details
        super().__init__(f"the report could not be set: {what}")


def _short(text: str) -> str:
    return text if len(text) <= 60 else f"{text[:57]}..."
