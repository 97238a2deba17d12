"""planish: an appraiser's bench and casebook for antique and vintage silver."""

__version__ = "0.1.0"
