"""What problems are about, in a few words, and how many of those that are not shown."""

from collections.abc import Iterable

from procbuilder.model.questions import Topic
from procbuilder.publish.language import ENGLISH, Language

TOPICS = {
    Topic.DANGER: "dangers not stated (DANGER)",
    Topic.WARNING: "dangers not stated (WARNING)",
    Topic.CAUTION: "dangers not stated (CAUTION)",
    Topic.NOTICE: "dangers not stated (NOTICE)",
    Topic.DANGERS: "dangers",
    Topic.FAILURE: "what could fail later",
    Topic.RIGHTS: "somebody's rights",
    Topic.READER: "what a reader needs",
    Topic.TIME: "time",
    Topic.STYLE: "style",
    Topic.HOLDS: "hold points",
    Topic.RESERVED: "steps reserved by law",
    Topic.ORDER: "the order of the steps",
    Topic.BALANCE: "what comes off and goes on",
    Topic.NEW_PARTS: "new parts",
    Topic.TORQUES: "torques",
    Topic.SIZES: "sizes",
    Topic.LISTS: "the lists before the start",
    Topic.IDENTITY: "number and revision",
    Topic.RECORDINGS: "recordings",
}
COUNTED = "{count} about {topic}"
MORE_COUNTED = "{count} more about {topic}"
AND = "and {topics}"


def topics(counts: Iterable[tuple[Topic, int]], language: Language = ENGLISH, pattern: str = COUNTED) -> str:
    """``7 about sizes, 2 about torques``; empty for none."""
    told = (language.text(pattern, count=count, topic=language.text(TOPICS[topic])) for topic, count in counts)
    return ", ".join(told)


def more(counts: Iterable[tuple[Topic, int]], language: Language = ENGLISH) -> str:
    """``and 7 more about sizes, 2 more about torques``; empty for none."""
    said = topics(counts, language, MORE_COUNTED)
    return language.text(AND, topics=said) if said else ""
