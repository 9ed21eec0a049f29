"""Hostile words that stand here and there in the sample, and must stay words."""

SCRIPT = "<script>alert(1)</script>"
IMPORT = '#import "x"'
MATHS = "$a$"
