"""The file that ``planish new`` writes: every table that a first case needs, explained in place."""

from importlib.resources import files

from planish.case.faults import quoted


def starting_file(title: str = "New case", number: str = "1") -> str:
    """A commented case file that loads as a draft.

    Raises:
        ValueError: title or number is empty or has characters that no line of text holds.
    """
    text = (files("planish.case") / "starting.toml").read_text(encoding="utf-8")
    text = text.replace('number = "1"', f"number = {_literal('number', number)}", 1)
    return text.replace('title = "New case"', f"title = {_literal('title', title)}", 1)


def _literal(what: str, text: str) -> str:
    """A TOML basic string (TOML 1.0.0, section String)."""
    if not text.strip():
        raise ValueError(f"the {what} is empty; give it a few words")
    if not text.isprintable() or len(text) > 500:
        raise ValueError(f"the {what} {quoted(text)} is no single line of text; shorten it")
    escaped = text.replace("\\", "\\\\").replace('"', '\\"')
    return f'"{escaped}"'
