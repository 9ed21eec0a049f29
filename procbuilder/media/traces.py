"""What a recording tells about people and places beside its pictures and sound; none of it is published."""

from av.container import InputContainer

_TRACES = (
    ("location", ("location", "gps", "iso6709", "xyz")),
    ("device", ("make", "model", "device", "android", "software", "serial")),
    ("time of filming", ("creation", "date")),
    ("author", ("author", "artist", "copyright", "comment", "description", "title")),
)
"""Words, and parts of the names of the values that they stand for, as phones and cameras write them."""


def traces(container: InputContainer) -> tuple[str, ...]:
    """Kinds of values that the file holds and that do not reach what is published; never the values."""
    tables = (container.metadata, *(track.metadata for track in container.streams))
    names = [name.lower() for table in tables for name, value in table.items() if value]
    found = [word for word, parts in _TRACES if any(part in name for name in names for part in parts)]
    return (*found, *(["sensor data"] if container.streams.data else []))
