"""``planish library``: look up the shipped facts, each with its source and how sure it is."""

from planish.cli.library.group import library

__all__ = ["library"]
