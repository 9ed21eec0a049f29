"""German words: commands in which each wrong order must be found, and near misses that must be silent.

All sentences are common practice, as it is written and spoken in Germany, Austria and Switzerland.
"""

import pytest

from procbuilder.infer.lexicon import load
from procbuilder.infer.order import disorders
from procbuilder.infer.proposed import noticed
from procbuilder.infer.signs import danger_signs
from procbuilder.model.phrases import Phrases, mentioned
from procbuilder.model.procedure import Procedure
from tests.infer.written import written

WORDS, ENGLISH = load("de"), load("en")
HEAD = "---\nformat: 1\nlanguage: de-DE\n---\n# Probe\n\n"

WRONG = [
    ("nuts-before-jacking", ["Fahrzeug anheben", "Radmuttern lösen"]),
    ("stands-before-under.set", ["Räder mit Keilen sichern", "Unter das Auto kriechen"]),
    ("stands-before-under.chocked", ["Unterstellböcke setzen", "Unter das Auto kriechen"]),
    ("stands-before-under.shaken", ["Unterstellböcke setzen", "Unter das Auto kriechen"]),
    ("prove-dead.proved", ["Servicestecker abziehen", "Hochvoltstecker abziehen"]),
    ("prove-dead.secured", ["Servicestecker abziehen", "Spannungsfreiheit feststellen", "Hochvoltstecker abziehen"]),
    ("cabinet-dead.proved", ["Hauptschalter ausschalten", "Schütz ausbauen"]),
    ("hydraulic-pressure.let-off", ["Schaufel absenken", "Hydraulikschlauch lösen"]),
    ("hydraulic-pressure.load", ["Druck ablassen", "Hydraulikschlauch lösen"]),
    ("gas-shut.aired", ["Gashahn schließen", "Gasventil ausbauen"]),
    ("steering-pressure.let-off", ["Motor abstellen", "Servoleitung lösen"]),
    ("confined-space.tested", ["Tank lüften", "In den Tank einsteigen"]),
    ("stands-before-under.set", ["Kriech unter das Auto", "Unterstellböcke setzen"]),
    ("battery-before-starter", ["Anlasser ausbauen", "Massekabel abklemmen"]),
    ("battery-before-airbag", ["Steck den Airbag ab", "Klemm die Batterie ab"]),
    ("battery-before-welding", ["Halter anschweißen", "Batterie abklemmen"]),
    ("earth-off-first", ["Pluskabel abnehmen", "Minuskabel abnehmen"]),
    ("live-on-first", ["Massekabel anklemmen", "Pluskabel anklemmen"]),
    ("prove-dead.proved", ["Hochvoltstecker abziehen", "Spannungsfreiheit feststellen"]),
    ("key-before-belt", ["Keilriemen abnehmen", "Schlüssel abziehen"]),
    ("fuel-pressure", ["Benzinleitung abziehen", "Kraftstoffdruck ablassen"]),
    ("recover-refrigerant", ["Klimaleitung abschrauben", "Kältemittel absaugen"]),
    ("drain-coolant", ["Wasserpumpe abbauen", "Kühlmittel ablassen"]),
    ("drain-oil", ["Ölwanne abschrauben", "Öl ablassen"]),
    ("hydraulic-pressure.let-off", ["Hydraulikschlauch lösen", "Druck ablassen"]),
    ("compress-spring", ["Kolbenstangenmutter lösen", "Feder spannen"]),
    ("support-heavy", ["Getriebe ausbauen", "Getriebe mit dem Getriebeheber abstützen"]),
    ("mark-position", ["Kardanwelle abbauen", "Flansch markieren"]),
    ("photograph-routing", ["Kabelbaum herausnehmen", "Verlauf fotografieren"]),
    ("locking-tools-in", ["Zahnriemen abnehmen", "Absteckstifte einsetzen"]),
    ("locking-tools-out", ["Absteckstift einsetzen", "Kurbelwelle drehen", "Absteckstift herausziehen"]),
    ("turn-by-hand", ["Zahnriemen auflegen", "Motor starten", "Kurbelwelle von Hand durchdrehen"]),
    ("write-down-codes", ["Batterie abklemmen", "Radiocode aufschreiben"]),
    ("brake-service-mode", ["Elektrische Feststellbremse lösen", "Kolben zurückdrehen"]),
    ("compare-new-part", ["Neue Pumpe einbauen", "Pumpe mit der alten vergleichen"]),
    ("clean-faces", ["Dichtung auflegen", "Dichtfläche reinigen"]),
    ("cure-sealant", ["Dichtmasse auftragen", "Motoröl einfüllen"]),
    ("start-by-hand", ["Schrauben anziehen", "Schrauben von Hand ansetzen"]),
    ("fill-before-start", ["Öl ablassen", "Motor starten", "Öl auffüllen"]),
    ("press-pedal", ["Bremsbeläge ausbauen", "Auto aus der Halle fahren", "Bremspedal treten"]),
    ("look-for-leaks", ["Unterbodenverkleidung anbauen", "Auf Lecks prüfen"]),
    ("test-before-handover", ["Fahrzeug dem Kunden übergeben", "Licht prüfen"]),
]  # fmt: skip
"""Name of the rule, and commands that break it."""

NEAR = [
    ("nuts-before-jacking", ["Radmuttern lösen", "Fahrzeug anheben"]),
    ("stands-before-under.set", ["Unterstellböcke setzen", "Unter das Auto kriechen"]),
    ("cabinet-dead.proved", ["Schützenscheibe ausbauen"]), ("gas-shut.shut", ["Gaspedal lösen"]),
    ("confined-space.tested", ["Tankdeckel öffnen"]), ("steering-pressure.let-off", ["Lenkrad lösen"]),
    ("battery-before-starter", ["Anlasserabdeckung ausbauen"]),
    ("battery-before-airbag", ["Batterie abklemmen", "Airbag abstecken"]),
    ("battery-before-welding", ["Schweißgerät bereitstellen", "Batterie abklemmen"]),
    ("earth-off-first", ["Minuskabel abnehmen", "Pluskabel abnehmen"]),
    ("live-on-first", ["Pluskabel anklemmen", "Massekabel anklemmen"]),
    ("prove-dead.proved", ["Warnstecker abziehen", "Spannungsfreiheit feststellen"]),
    ("key-before-belt", ["Riemenabdeckung abnehmen"]),
    ("fuel-pressure", ["Kraftstoffdruck ablassen", "Benzinleitung abziehen"]),
    ("recover-refrigerant", ["Kältemittel absaugen lassen", "Klimaleitung abschrauben"]),
    ("drain-coolant", ["Lass das Kühlmittel ab", "Wasserpumpe abbauen"]),
    ("drain-oil", ["Öl ablassen", "Ölwanne abschrauben"]),
    ("hydraulic-pressure.let-off", ["Druck ablassen", "Hydraulikschlauch lösen"]),
    ("compress-spring", ["Feder spannen", "Kolbenstangenmutter lösen"]),
    ("support-heavy", ["Getriebehalter abschrauben"]),
    ("mark-position", ["Flansch markieren", "Kardanwelle abbauen"]),
    ("photograph-routing", ["Mach ein Foto vom Kabelbaum", "Kabelbaum herausnehmen"]),
    ("locking-tools-in", ["Zahnriemenabdeckung abschrauben"]),
    ("locking-tools-out", ["Absteckstift einsetzen", "Zieh den Absteckstift heraus", "Kurbelwelle drehen"]),
    ("turn-by-hand", ["Zahnriemen auflegen", "Dreh die Kurbelwelle zwei Umdrehungen", "Motor starten"]),
    ("write-down-codes", ["Fehlercodes notieren", "Batterie abklemmen"]),
    ("brake-service-mode", ["Elektrische Feststellbremse in die Wartungsstellung fahren", "Kolben zurückdrehen"]),
    ("compare-new-part", ["Neue Pumpe mit der alten vergleichen", "Neue Pumpe einbauen"]),
    ("clean-faces", ["Dichtfläche reinigen", "Dichtung auflegen"]),
    ("cure-sealant", ["Dichtmasse auftragen", "Eine Stunde warten", "Motoröl einfüllen"]),
    ("start-by-hand", ["Schrauben von Hand ansetzen", "Schrauben anziehen"]),
    ("fill-before-start", ["Öl ablassen", "Füll das neue Öl ein", "Motor starten"]),
    ("press-pedal", ["Bremsbeläge ausbauen", "Tritt das Bremspedal durch", "Auto aus der Halle fahren"]),
    ("look-for-leaks", ["Auf Lecks prüfen", "Unterbodenverkleidung anbauen"]),
    ("test-before-handover", ["Licht prüfen", "Fahrzeug dem Kunden übergeben"]),
]  # fmt: skip
"""Name of the rule, and commands that keep it."""

SPELLINGS = [
    ("road-wheels", "Radmuttern loesen"), ("compressed-air", "Gehaeuse mit Pressluft sauberblasen"),
    ("welding", "Blech anschweissen"), ("battery-off", "Die Batterie ist abgeklemmt"),
    ("battery-off", "Batterie abzuklemmen ist Pflicht"), ("engine-running", "Den Motor starten und zuhören"),
    ("mains", "Der Netzstecker wird gezogen"), ("hot-exhaust", "Russpartikelfilter abbauen"),
    ("jacking", "Das Auto vorne anheben"), ("oils", "Getriebeoel ablassen"),
    ("under-a-raised-vehicle", "Leg dich unters Auto"), ("jacking", "Böcke unterstellen"),
    ("engine-running", "Bei laufendem Motor prüfen"), ("engine-running", "Der Motor läuft"),
    ("mains", "Maschine vom Netz trennen"), ("mains", "Sicherung herausdrehen"),
    ("brake-hydraulics", "Die Bremsen müssen entlüftet werden"), ("welding", "Schweiß den Halter an"),
    ("grinding", "Schraubenkopf wegflexen"), ("heavy-parts", "Nimm den Motor raus"),
    ("press-work", "Press das Lager ein"),
    ("coil-spring", "Spann das Federbein"), ("moving-vehicle", "Fahr das Auto aus der Halle"),
    ("hydraulic-circuit", "Schraub den Hydraulikschlauch ab"), ("airbag", "Der Airbag wird ausgebaut"),
]  # fmt: skip
"""Other ways of writing and saying the same."""


def steps(*commands: str) -> Procedure:
    headings = "\n".join(f"### {command}\n" for command in commands)
    return written(f"## A\n{headings}", head=HEAD)


def works(*commands: str) -> set[str]:
    return {one.activity.id for one in noticed(steps(*commands), {}, WORDS)}


def broken(*commands: str) -> set[str]:
    return {one.order.id for one in disorders(steps(*commands), WORDS)}


@pytest.mark.parametrize(("name", "command"), SPELLINGS)
def test_other_spellings_and_forms_are_found(name: str, command: str) -> None:
    assert name in works(command)


ORDINARY = [
    "Feder einhängen", "Federring unterlegen", "Lagerfett auftragen", "Motorhaube öffnen", "Gaszug aushängen",
    "Kupplungspedal treten", "Ventildeckel abschrauben", "Blechschraube herausdrehen", "Kotflügel abschrauben",
    "Ölstand prüfen", "Handbremse anziehen", "Motor abkühlen lassen", "Akku einsetzen", "Schutzblech abschrauben",
    "Bedienungsanleitung lesen", "Wagen vor das Tor rollen", "Spannung des Riemens prüfen", "Kontakte reinigen",
    "Keinen Schlagschrauber verwenden", "Druckluft nie verwenden", "Zündkerze ausbauen und Motor von Hand durchdrehen",
]  # fmt: skip
"""Commands that point to none of these works."""


@pytest.mark.parametrize("command", ORDINARY)
def test_ordinary_work_is_silent(command: str) -> None:
    assert works(command) == set()


@pytest.mark.parametrize(("name", "commands"), WRONG)
def test_each_wrong_order_is_found(name: str, commands: list[str]) -> None:
    assert name in broken(*commands)


@pytest.mark.parametrize(("name", "commands"), NEAR)
def test_the_right_order_is_silent(name: str, commands: list[str]) -> None:
    assert name not in broken(*commands)


def test_every_rule_has_its_sentences() -> None:
    """Those of a set by the name of the rule: ``test_order_sets.py`` goes through its conditions."""
    rules = {order.id.partition(".")[0] for order in WORDS.orders}
    assert {name.partition(".")[0] for name, _ in WRONG} == rules == {name.partition(".")[0] for name, _ in NEAR}


def test_each_proposal_covers_its_own_work() -> None:
    """Whoever copies the proposed line is not asked again."""
    for activity in WORDS.activities:
        text = f"{activity.hazard} ; {activity.consequence}"
        assert list(Phrases([activity.told], WORDS.words).found(text, denied=True)), activity.id


_ONE_WORD = ("steam",)
"""Where German has one word for what English has two: steam and vapour."""


def test_proposals_mean_the_same_in_both_languages() -> None:
    """The state that begins needs the same protection, and vapour and fire are told of the same work."""
    for english, german in zip(ENGLISH.activities, WORDS.activities, strict=True):
        pair = ((english, ENGLISH), (german, WORDS))
        for words in ("vapour",) if english.id in _ONE_WORD else ("flammable", "vapour"):
            one, other = (
                bool(mentioned(f"{each.hazard} ; {each.consequence}", getattr(lexicon, words), lexicon.words))
                for each, lexicon in pair
            )
            assert one is other, (english.id, words)
        needs = [
            [part.id for part in lexicon.protections if mentioned(each.begins, part.states, lexicon.words)]
            for each, lexicon in pair
        ]
        assert needs[0] == needs[1], english.id
        parts = [(bool(each.reserved), bool(each.hold), bool(each.begins)) for each, _ in pair]
        assert parts[0] == parts[1], english.id


def test_proposals_call_for_the_same_sign_of_their_hazard() -> None:
    for english, german in zip(ENGLISH.activities, WORDS.activities, strict=True):
        one, other = (
            [sign.number for sign in danger_signs(each.hazard, each.consequence, each.avoid, lexicon)][:1]
            for each, lexicon in ((english, ENGLISH), (german, WORDS))
        )
        assert one == other, english.id
