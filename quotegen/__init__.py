"""quotegen: one job file in, the paper that explains a flatwork quote out."""

__version__ = "0.1.0"
