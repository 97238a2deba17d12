"""What can go wrong when a report is written, each with one line for its reader.

ReportError
    PhotographError     a picture that cannot be used
    GlyphError          a text with a sign that no font here has
    OutError            the file cannot be written there
    TypesetError        the typesetter stopped for another reason
"""


class ReportError(ValueError):
    """No report was written; an existing one is untouched."""


class PhotographError(ReportError):
    """A picture that cannot be used."""

    def __init__(self, name: str, what: str, mend: str) -> None:
        self.name, self.what, self.mend = name, what, mend
        super().__init__(f"photograph '{name}': {what}; {mend}")


class GlyphError(ReportError):
    """A text with a sign that no font here has."""

    def __init__(self, signs: str, where: str, text: str) -> None:
        self.signs, self.where, self.text = signs, where, text
        named = ", ".join(f"{s} (U+{ord(s):04X})" for s in signs)
        super().__init__(
            f"{where or 'the report'}: no font here has {named}"
            + (f", in '{_short(text)}'" if text else "")
            + "; write it in other letters, or give a folder with a font that has it"
        )


class OutError(ReportError):
    """The file cannot be written there."""

    def __init__(self, path: str, what: str, mend: str) -> None:
        self.path, self.what, self.mend = path, what, mend
        super().__init__(f"report '{path}': {what}; {mend}")


class TypesetError(ReportError):
    """The typesetter stopped for another reason."""

    def __init__(self, what: str, details: str = "") -> None:
        self.what, self.details = what, details
        super().__init__(f"the report could not be set: {what}")


def _short(text: str) -> str:
    return text if len(text) <= 60 else f"{text[:57]}..."
