"""``planish stones``: what stones weigh, what they are, what law says of them."""

from planish.cli.stones.group import stones

__all__ = ["stones"]
