"""Forms of German words, as any grammar has them (from memory): those of one word, and words that only look alike."""

import pytest

from procbuilder.infer.lexicon import load

WORDS = load("de").words
SAME = """
Mutter Muttern|Radmutter Radmuttern|Schraube Schrauben|Stift Stifte Stiften|Bolzen Bolzens|Lager Lagern Lagers|
Rad Räder Rädern Rades|Schlauch Schläuche Schläuchen|Kabel Kabeln Kabels|Deckel Deckeln Deckels|
Bremsbelag Bremsbeläge Bremsbelägen|Dichtung Dichtungen|Feder Federn|Scheibe Scheiben|Stecker Steckern Steckers|
Ventil Ventile Ventilen Ventils|Motor Motoren Motors|Kolben Kolbens|Welle Wellen|Kette Ketten|Riemen Riemens|
Zahnrad Zahnräder Zahnrädern|Bock Böcke Böcken|Unterstellbock Unterstellböcke|Klemme Klemmen|Schelle Schellen|
Filter Filtern Filters|Pumpe Pumpen|Splint Splinte Splinten|Ring Ringe Ringen Ringes|Sicherungsring Sicherungsringe|
Zündkerze Zündkerzen|Kopf Köpfe Köpfen|Zylinderkopf Zylinderköpfe|Anschluss Anschlüsse Anschlüssen|Leitung Leitungen|
Sensor Sensoren Sensors|Halter Haltern Halters|Blech Bleche Blechen|Tank Tanks|Clip Clips|Batterie Batterien|
Abdeckung Abdeckungen|Hebel Hebeln Hebels|Nabe Naben|Achse Achsen|Buchse Buchsen|Hülse Hülsen|Zug Züge Zügen|
Band Bänder Bändern|Loch Löcher Löchern|Schloss Schlösser|Griff Griffe Griffen|Sattel Sättel|Bremssattel Bremssättel|
Nagel Nägel|Mantel Mäntel|Hahn Hähne|Draht Drähte|Keil Keile Keilen|Reifen Reifens|Felge Felgen|
Manschette Manschetten|Gummi Gummis|Schalter Schaltern|Sicherung Sicherungen|Düse Düsen|Gehäuse Gehäuses|
Getriebe Getriebes|Wagenheber Wagenhebern|Handschuh Handschuhe Handschuhen|Brille Brillen|Tuch Tücher|Öl Öle Öls|
Span Späne Spänen|Zahn Zähne|Bohrung Bohrungen|Gewinde Gewindes|Flansch Flansche|Stütze Stützen|Lasche Laschen|
Gurt Gurte Gurten|Kasten Kästen|Rohr Rohre Rohren|Schlüssel Schlüsseln|Nuss Nüsse|Zange Zangen|Hammer Hämmer|
Bügel Bügeln|Muffe Muffen|Faden Fäden|Dampf Dämpfe|Gas Gase Gasen|Teil Teile Teilen
"""
APART = """
Dampf Dämpfer|Lage Lager|Feder Fehde|Mut Mutter|Halt Halter|Bremse Bremser|Kolben Kolb|Bolz Bolzen|Kiel Keil|
Wagen Waage|Druck drücken|Sand Sende|Welle Wolle|Zug Zange|Rad Rat|Kern Karre|Stück Stock|Rohr Röhre|
Leiste Leistung|Heber Hebel|Schalter Schale|Stecker Stock|Regler Regel|Leiter Leitung|Sitz Satz|
Spanner Spannung|Dichter Dichtung|Kopf Knopf|Achse Achsel|Ader Adler|Schiene Schein|Bock Backe|Kette Kitt
"""


def _groups(text: str) -> list[list[str]]:
    return [group.split() for group in text.split("|")]


@pytest.mark.parametrize("forms", _groups(SAME), ids=lambda forms: forms[0])
def test_forms_of_a_word_are_one_word(forms: list[str]) -> None:
    assert {WORDS.folded(form) for form in forms} == {WORDS.folded(forms[0])}


@pytest.mark.parametrize("words", _groups(APART), ids=" ".join)
def test_words_that_look_alike_are_kept_apart(words: list[str]) -> None:
    assert len({WORDS.folded(word) for word in words}) == len(words)


@pytest.mark.parametrize(
    ("name", "plural"),
    [("Radmuttern", True), ("Bolzen", False), ("Bremsbeläge", True), ("Deckel hinten", False),
     ("die Schrauben", True), ("Federn", True), ("Keilriemen", False), ("linke Scheibe", False)],
)  # fmt: skip
def test_a_plural_is_seen(name: str, plural: bool) -> None:
    assert WORDS.is_plural(name) is plural
