"""Operations told without a verb of their own: "washer off", "then the rear pins", "new gasket"."""

from procbuilder.infer.dictionary.nouns import Thing
from procbuilder.infer.hearing.listening import Line, Talk
from procbuilder.infer.hearing.naming import Naming
from procbuilder.infer.hearing.reports import Reports
from procbuilder.infer.hearing.same import Same
from procbuilder.infer.hearing.sharing import Sharing


class Verbless:
    """Takes the things of one sentence that no verb took."""

    def __init__(self, talk: Talk, line: Line, same: Same) -> None:
        self.line, self.clauses, self.same = line, line.clauses, same
        self.reports, self.sharing, self.naming = (
            Reports(talk, line, same),
            Sharing(talk, line, same),
            Naming(talk, line),
        )

    def take(self, thing: Thing, at: int) -> int:
        """The subject of what follows, or told with what became of it; gives back where to go on."""
        if (end := self.reports.take(thing, at)) is not None:
            return end
        if not self.sharing.take(thing, at):
            self.sharing.note(thing, at)
            self.naming.remember(thing, at)
        return thing.end
