"""Characters that the sheet cannot show: found by asking the setter, replaced in all texts."""

from procbuilder.publish.printable import not_printable, replaced


def test_plain_letters_are_not_asked_about() -> None:
    def refusal(_texts: list[str]) -> str:
        raise AssertionError("asked for nothing")

    assert not_printable({"command": "Slacken the nut", "number": 3, "on": True}, refusal) == frozenset()


def test_characters_are_asked_about_until_the_setter_takes_all() -> None:
    asked: list[list[str]] = []

    def refusal(texts: list[str]) -> str:
        asked.append(texts)
        return next(
            (f'error: the text `"{letter}"` could not be displayed' for letter in "车輪" if letter in texts[0]), ""
        )

    assert not_printable([{"item": "车 and 輪 – µ"}], refusal) == frozenset("车輪")
    assert asked == [["车 and 輪 – µ"], ["□ and 輪 – µ"], ["□ and □ – µ"]]


def test_a_letter_written_as_its_number_is_understood() -> None:
    messages = iter(['error: the text `"\\u{378}"` could not be displayed', ""])
    assert not_printable(["a \u0378"], lambda _texts: next(messages)) == {"\u0378"}


def test_another_complaint_ends_the_asking() -> None:
    assert not_printable(["é"], lambda _texts: "error: out of paper") == frozenset()


def test_replacing_leaves_keys_and_numbers_alone() -> None:
    data = {"é": ["é", 1, None, {"x": "aé"}]}
    assert replaced(data, frozenset("é")) == {"é": ["□", 1, None, {"x": "a□"}]}
