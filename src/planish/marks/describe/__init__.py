"""Free text -> marks (being written)."""


def describe(text: str, form: str | None = None, library: object | None = None) -> object:
    """Not there yet."""
    raise NotImplementedError
