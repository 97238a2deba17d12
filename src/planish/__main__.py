"""``python -m planish``: the command, where its script is not installed."""

import sys

from planish.cli import main

if __name__ == "__main__":
    sys.exit(main())
