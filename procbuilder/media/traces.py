"""What a recording tells about people and places beside its pictures and sound; none of it is published."""

from av.container import InputContainer

from procbuilder.model.footage import Trace

_TRACES = (
    (Trace.LOCATION, ("location", "gps", "iso6709", "xyz")),
    (Trace.DEVICE, ("make", "model", "device", "android", "software", "serial")),
    (Trace.TIME, ("creation", "date")),
    (Trace.AUTHOR, ("author", "artist", "copyright", "comment", "description", "title")),
)
"""Parts of the names of the values, as phones and cameras write them."""


def traces(container: InputContainer) -> tuple[Trace, ...]:
    """Kinds of values that the file holds and that do not reach what is published; never the values."""
    tables = (container.metadata, *(track.metadata for track in container.streams))
    names = [name.lower() for table in tables for name, value in table.items() if value]
    found = [trace for trace, parts in _TRACES if any(part in name for name in names for part in parts)]
    return (*found, *([Trace.SENSORS] if container.streams.data else []))
