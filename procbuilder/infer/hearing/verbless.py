"""Operations told without a verb of their own: "washer off", "then the rear pins", "new gasket"."""

from procbuilder.infer.hearing.listening import Line, Talk
from procbuilder.infer.hearing.naming import Naming
from procbuilder.infer.hearing.nouns import Thing
from procbuilder.infer.hearing.reports import Reports
from procbuilder.infer.hearing.same import Same
from procbuilder.infer.hearing.sharing import Sharing
from procbuilder.infer.hearing.unknown import mover


class Verbless:
    """Takes the things of one sentence that no verb took."""

    def __init__(self, talk: Talk, line: Line, same: Same) -> None:
        self.line, self.clauses, self.same = line, line.clauses, same
        self.reports, self.sharing, self.naming = (
            Reports(talk, line, same),
            Sharing(talk, line, same),
            Naming(talk, line),
        )

    def take_person(self, at: int) -> int | None:
        """ "There, he's out", "they came with it"; None when the token tells no such thing."""
        end = self.reports.take_person(at)
        return self.sharing.take_they(at) if end is None else end

    def take(self, thing: Thing, at: int) -> int:
        """The subject of what follows, or told with what became of it; gives back where to go on."""
        if (end := self.reports.take(thing, at)) is not None:
            return end
        if not self.sharing.take(thing, at):
            self.sharing.note(thing, at)
            self.naming.remember(thing, at)
        return thing.end
