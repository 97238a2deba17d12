"""The command line."""

from planish.cli.main import main

__all__ = ["main"]
