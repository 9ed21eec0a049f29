"""procbuilder: from the clips of a repair and a rough list of times to a procedure to work by."""

__version__ = "0.1.0"
