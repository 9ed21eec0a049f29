"""The languages in which an edition can speak for itself."""

SOURCE = "en"
"""That of the words in the code."""

WRITTEN = (SOURCE, "de")
"""Those with a catalogue of words, ``publish/locale/de.po`` for instance."""
