"""Puts problems and faults into words: facts in, sentences of one language out."""
