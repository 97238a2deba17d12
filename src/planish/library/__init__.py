"""The facts, and their typed loader."""

from planish.library.loader import Library, LibraryError, load

__all__ = ["Library", "LibraryError", "load"]
