"""Sentences about the front matter."""

from procbuilder.publish.wording.patterns import Patterns

_PLAIN = "write the value out as plain text"

PATTERNS: Patterns = {
    "front-matter": {
        "no-end": ("the front matter has no end", "put a line --- below its last line"),
        "too-long": ("the front matter is longer than 64 kB", "keep only the keys of the format in it"),
        "nested": ("a list within lists within lists is not read in front matter", _PLAIN),
        "alias": ("the alias *{name} is not read in front matter", _PLAIN),
        "anchor": ("the anchor &{name} is not read in front matter", _PLAIN),
        "tag": ("the tag {name} is not read in front matter", _PLAIN),
        "half-character": ("an escape in this line is no character", "type the character itself"),
        "characters": ("the front matter holds characters that YAML does not allow", "type it anew"),
        "too-many": (
            "the front matter has more than {count} lines that cannot be read",
            "mend those first that are named here",
        ),
        "colon": ("a colon inside a value needs quotes", "write: {line}"),
        "unreadable": ("cannot be read: {typed}", "write one key and one value, such as: number: P-014"),
        "unreadable-part": ("cannot be read: this line", "write one key and one value, such as: number: P-014"),
        "no-pairs": ("the front matter is no list of keys and values", "write lines such as: number: P-014"),
        "list": ("{key} takes one value, not a list", "write: {key}: text"),
        "twice": ("{key} stands twice, first in line {first}", "keep one of the two lines"),
        "near-key": ("{key} is no key of the front matter", "did you mean {near}?"),
        "key": ("{key} is no key of the front matter", "the keys are {keys:,}"),
        "format": ("format {format} is not known", "this procbuilder reads format: 1"),
        "status": ("{status} is no status that can be typed", "write draft, review or withdrawn"),
        "approved": (
            "{status} is no status that can be typed",
            "write draft, review or withdrawn; approval is given with: procbuilder approve",
        ),
        "one-path": ("{name} takes one path", "write: {key}: {{{name}: folder/file.mp4}}"),
        "paths": ("{key} takes paths", "write: {key}: [one.mp4, two.mp4]"),
        "name": ("{name} cannot name a recording", "write small letters, digits, - or _: {good}"),
    },
}
