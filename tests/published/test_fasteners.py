"""Threads, spanners, loads and torques against figures that standards, makers and suppliers have published.

Sources, by what is checked:

- hexagons: ISO 4014/4017/4032, DIN 931/933/934, ISO 15071, ISO 4161 as transcribed in tables of two open
  drawing libraries (cq_warehouse: hex_head_parameters.csv, hex_nut_parameters.csv; FreeCAD: din933def.csv,
  iso4032def.csv, iso15071def.csv); older Japanese sizes: a vehicle maker's service manual of 2010 that lists old and
  new side by side
- stress areas and proof loads: ISO 898-1 as reprinted by three suppliers
- torques at 75 % of the proof load, dry (K = 0.20) and lubricated (K = 0.15): a supplier's table
- fine threads at 90 % of the yield point: a reprint of VDI 2230:2001
- units: definitions of the pound, the foot and standard gravity (NIST SP 811, appendix B)
- keys: ISO 4762, 10642, 7380 as transcribed in the same drawing libraries
"""

import math
import re
from decimal import Decimal
from fractions import Fraction

import pytest

from procbuilder.infer.lexicon import load
from procbuilder.model.fastener import (
    DRY,
    OILED,
    POUND_FOOT,
    NamedThread,
    in_inches,
    is_plausible,
    is_slip,
    proof_load,
    short_form_torque,
    stress_area,
)
from procbuilder.model.torque import NEWTON_METRES, TorqueUnit, read_torque
from procbuilder.read.sizes import read_sizes
from tests.check.sample import changed, found, said

THREADS = {thread.size: thread for thread in load().threads}
SIZES = ("M4", "M5", "M6", "M8", "M10", "M12", "M14", "M16", "M18", "M20", "M22", "M24")
NEWTON_METRES_OF_A_POUND_INCH = Fraction("0.45359237") * Fraction("9.80665") * Fraction("0.0254")


def of_standard(name: str) -> dict[str, int]:
    return {size: int(dict(thread.hexagons)[name]) for size, thread in THREADS.items() if name in dict(thread.hexagons)}


def by_size(*numbers: float) -> dict[str, float]:
    return dict(zip(SIZES, numbers, strict=True))


def test_hexagons_of_the_iso_standards() -> None:
    assert of_standard("iso") == by_size(7, 8, 10, 13, 16, 18, 21, 24, 27, 30, 34, 36)


def test_hexagons_of_the_older_german_standards() -> None:
    assert of_standard("din") == by_size(7, 8, 10, 13, 17, 19, 22, 24, 27, 30, 32, 36)


def test_hexagons_of_older_japanese_makers() -> None:
    old = of_standard("jis")
    assert (old["M6"], old["M8"], old["M10"], old["M12"], old["M14"]) == (10, 12, 14, 17, 19)


def test_hexagons_of_flange_bolts_and_nuts() -> None:
    small = {"M5": 7, "M6": 8, "M8": 10, "M10": 13, "M12": 15, "M14": 18, "M16": 21}
    nuts = {"M5": 8, "M6": 10, "M8": 13, "M10": 15, "M12": 18, "M14": 21, "M16": 24, "M20": 30}
    assert (of_standard("flange"), of_standard("flange_nut")) == (small, nuts)


def test_a_thread_of_14_mm_is_21_by_iso_and_22_only_by_din() -> None:
    """One drawing library gives 22 for ISO 4032; its own other tables and a vehicle maker give 21."""
    assert (of_standard("iso")["M14"], of_standard("din")["M14"]) == (21, 22)


def test_one_thread_has_several_spanners() -> None:
    assert THREADS["M10"].plain == (14, 16, 17)
    line = said(changed(("- Off: washer", "- Off: washer | by: 1 x M10 nut"), ("- On: washer", "- On: washer")))
    assert [text for text in line if "14, 16 or 17 mm" in text and "which?" in text] == line


@pytest.mark.parametrize(
    ("kind", "published"),
    [
        ("cap", {"M4": 3, "M5": 4, "M6": 5, "M8": 6, "M10": 8, "M12": 10, "M14": 12, "M16": 14, "M20": 17, "M24": 19}),
        ("countersunk", {"M4": 2.5, "M5": 3, "M6": 4, "M8": 5, "M10": 6, "M12": 8, "M14": 10, "M16": 10, "M20": 12}),
        ("button", {"M4": 2.5, "M5": 3, "M6": 4, "M8": 5, "M10": 6, "M12": 8, "M16": 10}),
    ],
)
def test_hexagon_keys(kind: str, published: dict[str, float]) -> None:
    keys = {size: float(dict(thread.keys)[kind]) for size, thread in THREADS.items() if kind in dict(thread.keys)}
    assert keys == published


def test_stress_areas_are_those_of_the_table_and_of_the_formula() -> None:
    table = by_size(8.78, 14.2, 20.1, 36.6, 58.0, 84.3, 115, 157, 192, 245, 303, 353)
    computed = by_size(8.78, 14.18, 20.12, 36.61, 57.99, 84.27, 115.44, 156.67, 192.47, 244.79, 303.40, 352.50)
    assert {size: thread.area for size, thread in THREADS.items()} == table
    for size, thread in THREADS.items():
        assert stress_area(thread.diameter, thread.pitch) == pytest.approx(computed[size], abs=0.005)
        assert thread.area == pytest.approx(computed[size], rel=0.005)


PROOF = """
M4   1980  2460   5100   7290   8520
M5   3200  3980   8230  11800  13800
M6   4520  5630  11600  16700  19500
M8   8240 10200  21200  30400  35500
M10 13000 16200  33700  48100  56300
M12 19000 23600  48900  70000  81800
M14 25900 32200  66700  95500 112000
M16 35300 44000  91000 130000 152000
M18 43200 53800 115000 159000 186000
M20 55100 68600 147000 203000 238000
M22 68200 84800 182000 252000 294000
M24 79400 98800 212000 293000 342000
"""


@pytest.mark.parametrize("line", PROOF.strip().splitlines(), ids=lambda line: line.split()[0])
def test_proof_loads(line: str) -> None:
    size, *loads = line.split()
    assert [load for _, load in THREADS[size].proof] == [int(load) for load in loads]
    thread = THREADS[size]
    stresses = (225, 280, 600 if thread.diameter > 16 else 580, 830, 970)
    for (strength, published), stress in zip(thread.proof, stresses, strict=True):
        assert published == pytest.approx(stress * thread.area, rel=0.006), strength


def test_a_fine_thread_bears_more_than_a_coarse_one_by_its_area() -> None:
    assert proof_load(THREADS["M10"], "8.8", 1.25) / proof_load(THREADS["M10"], "8.8") == pytest.approx(
        61.2 / 58.0, rel=0.002
    )


SUPPLIER = """
M5  8.8  54  41 in
M6  8.8  92  69 in
M8  8.8 225 169 in
M10 8.8  37  28 ft
M12 8.8  65  49 ft
M16 8.8 161 121 ft
M5  10.9  78  59 in
M6  10.9 133  99 in
M10 10.9  53  40 ft
M12 10.9  93  69 ft
M16 10.9 230 172 ft
M20 10.9 449 337 ft
M24 10.9 776 582 ft
M5  12.9  91  68 in
M6  12.9 156 116 in
M10 12.9  62  46 ft
M12 12.9 108  81 ft
M16 12.9 269 202 ft
M20 12.9 525 394 ft
M24 12.9 908 681 ft
"""


def at_three_quarters(size: str, strength: str, friction: float, unit: TorqueUnit) -> float:
    thread = THREADS[size]
    torque = short_form_torque(friction, 0.75 * proof_load(thread, strength), thread.diameter)
    return torque / float(NEWTON_METRES[unit])


@pytest.mark.parametrize("line", SUPPLIER.strip().splitlines())
def test_torques_of_a_supplier_at_75_percent_of_the_proof_load(line: str) -> None:
    """Within 1 unit, or 0.5 % where that is more: the table is rounded, and so are its loads."""
    size, strength, dry, oiled, unit_name = line.split()
    unit = TorqueUnit.POUND_FOOT if unit_name == "ft" else TorqueUnit.POUND_INCH
    for friction, published in ((0.20, int(dry)), (0.15, int(oiled))):
        assert at_three_quarters(size, strength, friction, unit) == pytest.approx(published, abs=1, rel=0.005)


def test_the_misprint_of_that_table_is_not_repeated() -> None:
    """It prints 333 lbf·in for M8 10.9 dry; its own lubricated 242 and the formula give 323."""
    computed = at_three_quarters("M8", "10.9", 0.20, TorqueUnit.POUND_INCH)
    assert round(computed) == 323
    assert computed == pytest.approx(242 / 0.75, rel=0.005)
    assert abs(computed - 333) > 9


@pytest.mark.parametrize(("size", "printed", "formula"), [("M20", 314, 325), ("M24", 543, 563)])
def test_above_16_mm_class_88_has_the_higher_proof_stress(size: str, printed: int, formula: int) -> None:
    """The table takes 580 MPa throughout, and so lies 3.5 % under the standard's 600."""
    computed = at_three_quarters(size, "8.8", 0.20, TorqueUnit.POUND_FOOT)
    assert computed == pytest.approx(formula, abs=1)
    assert printed / computed == pytest.approx(580 / 600, abs=0.004)


@pytest.mark.parametrize(
    ("size", "strength", "dry", "oiled"),
    [
        ("M6", "8.8", 10.4, 7.8), ("M8", "8.8", 25.4, 19.1), ("M10", "8.8", 50.6, 37.9), ("M12", "8.8", 88.0, 66.0),
        ("M16", "8.8", 218.4, 163.8), ("M10", "10.9", 72.2, 54.1), ("M12", "12.9", 147.2, 110.4),
    ],
)  # fmt: skip
def test_the_same_in_newton_metres(size: str, strength: str, dry: float, oiled: float) -> None:
    unit = TorqueUnit.NEWTON_METRE
    assert at_three_quarters(size, strength, 0.20, unit) == pytest.approx(dry, abs=0.06)
    assert at_three_quarters(size, strength, 0.15, unit) == pytest.approx(oiled, abs=0.06)


VDI: dict[tuple[str, float, float, float, float], dict[float, tuple[float, float]]] = {
    ("M8", 8, 1.0, 11.6, 9): {0.10: (20.7, 22.8), 0.12: (20.2, 26.1), 0.14: (19.7, 29.2)},
    ("M10", 10, 1.25, 14.6, 11): {0.10: (32.4, 44), 0.12: (31.6, 51), 0.14: (30.8, 57)},
    ("M12", 12, 1.25, 16.6, 13.5): {0.10: (49.1, 79), 0.12: (48.0, 90), 0.14: (46.8, 101)},
}
"""Thread, diameter, fine pitch, bearing face and hole in mm; by friction: kN and N·m, class 8.8."""


def long_form(d: float, pitch: float, face: float, hole: float, friction: float) -> tuple[float, float]:
    """Preload in kN and torque in N·m at 90 % of 640 MPa (VDI 2230:2001)."""
    d2, d3 = d - 0.64952 * pitch, d - 1.22687 * pitch
    d0 = (d2 + d3) / 2
    twist = 1.5 * (d2 / d0) * (pitch / (math.pi * d2) + 1.155 * friction)
    force = 0.9 * 640 * (math.pi / 4 * d0**2) / math.sqrt(1 + 3 * twist**2)
    lever = 0.16 * pitch + 0.58 * d2 * friction + friction * (face + hole) / 4
    return force / 1000, force * lever / 1000


@pytest.mark.parametrize("thread", VDI, ids=lambda thread: thread[0])
def test_the_band_of_friction_covers_the_long_form_of_vdi_2230(thread: tuple[str, float, float, float, float]) -> None:
    """The published pairs within 1.2 %, and their K between the two that the program asks by."""
    size, d, pitch, face, hole = thread
    for friction, (force, torque) in VDI[thread].items():
        computed = long_form(d, pitch, face, hole, friction)
        assert computed == (pytest.approx(force, rel=0.012), pytest.approx(torque, rel=0.012))
        assert OILED <= torque / (force * d) <= DRY
        assert is_plausible(torque, THREADS[size], NamedThread(size, pitch, "8.8"))


@pytest.mark.parametrize(
    ("size", "d", "pitch", "face", "hole", "torques"),
    [
        ("M8", 8, 1.25, 11.6, 9, (24.6, 27.3)),
        ("M10", 10, 1.5, 14.6, 11, (48.4, 53.9)),
        ("M12", 12, 1.75, 16.6, 13.5, (83.6, 93.0)),
    ],
)
def test_coarse_threads_by_the_long_form(
    size: str, d: float, pitch: float, face: float, hole: float, torques: tuple[float, float]
) -> None:
    """Friction 0.12 and 0.14; the values of the guideline as known from memory."""
    for friction, torque in zip((0.12, 0.14), torques, strict=True):
        assert long_form(d, pitch, face, hole, friction)[1] == pytest.approx(torque, rel=0.012)
        assert is_plausible(torque, THREADS[size], NamedThread(size, None, "8.8"))


PUBLISHED_88 = {
    "dry, zinc plated, 75 % (turf machines)": (10.85, 26, 52, 90, 225, 440),
    "lubricated (farm machines)": (9, 22, 43, 75, 190, 375),
    "dry (farm machines)": (11, 28, 55, 95, 240, 475),
    "friction 0.14, lightly oiled (trailers)": (10, 25, 49, 85, 210, 425),
    "friction 0.125, oiled, by hand (engines)": (9, 21, 42, 74, 180, 350),
}


@pytest.mark.parametrize("assumption", PUBLISHED_88)
def test_six_published_torques_of_one_bolt_are_all_plausible(assumption: str) -> None:
    """M10 8.8 is 42, 43, 49, 50, 52 or 55 N·m, each right under its own assumption: so none is ever given."""
    for size, torque in zip(("M6", "M8", "M10", "M12", "M16", "M20"), PUBLISHED_88[assumption], strict=True):
        assert is_plausible(torque, THREADS[size], NamedThread(size, None, "8.8")), (size, torque)
        assert is_plausible(torque, THREADS[size], NamedThread(size, None, "")), (size, torque)


def test_a_question_about_a_torque_gives_no_value() -> None:
    lines = said(changed(("keeper bolt | 15 N·m", "M10 bolt | 500 N·m"), ("torque wrench 5–25", "torque wrench 5–600")))
    assert len(lines) == 1
    numbers = re.findall(r"\d+", lines[0].partition("procedure.md:43: ")[2].partition(" – ")[0])
    assert numbers == ["500", "10"]


def test_units_are_exact() -> None:
    assert float(NEWTON_METRES[TorqueUnit.POUND_FOOT]) == 1.3558179483314004
    assert float(NEWTON_METRES[TorqueUnit.POUND_INCH]) == 0.1129848290276167
    assert float(1 / NEWTON_METRES[TorqueUnit.POUND_FOOT]) == 0.7375621492772654
    assert float(1 / NEWTON_METRES[TorqueUnit.POUND_INCH]) == 8.850745791327185
    assert NEWTON_METRES[TorqueUnit.POUND_FOOT] == 12 * NEWTON_METRES[TorqueUnit.POUND_INCH]
    assert NEWTON_METRES[TorqueUnit.KILOGRAM_METRE] == Fraction("9.80665")
    assert NEWTON_METRES[TorqueUnit.NEWTON_CENTIMETRE] == Fraction(1, 100)
    assert NEWTON_METRES[TorqueUnit.POUND_INCH] == NEWTON_METRES_OF_A_POUND_INCH


@pytest.mark.parametrize(
    ("typed", "shown"),
    [
        ("55 N·m", "41 lbf·ft"), ("5.6 kg-m", "55 N·m"), ("41 ft-lb", "56 N·m"),
        ("5.5 N·m", "49 lbf·in"), ("0.56 kg-m", "5.5 N·m"), ("49 in-lb", "5.5 N·m"),
    ],
)  # fmt: skip
def test_rows_of_a_vehicle_makers_table(typed: str, shown: str) -> None:
    """55 N·m = 5.6 kg-m = 41 ft-lb; 5.5 N·m = 0.56 kg-m = 49 in-lb. Back from 41 ft-lb it is 55.6, so 56."""
    assert _other(typed) == shown


def test_what_is_shown_beside_a_value_is_no_more_exact_than_it() -> None:
    assert _other("100 N·m") == "74 lbf·ft"
    assert _other("20 then 40 N·m, then 90°") == "15 lbf·ft then 30 lbf·ft then 90°"
    assert _other("20-25 N·m") == "15–18 lbf·ft"
    assert _other("twenty") == ""


def test_newton_centimetres_are_a_hundredth() -> None:
    """Tables of mower makers print N·cm."""
    assert read_torque("1085 N·cm").newton_metres == (Fraction("10.85"),)


def test_a_number_without_a_unit_is_no_torque() -> None:
    assert read_torque("25").stages == ()
    assert read_torque("M8 bolts").stages == ()
    assert read_torque("12,5 N·m").stages == ()


def test_a_pitch_is_told_from_a_length() -> None:
    assert read_sizes("M10x1.25x30 bolt, 10.9").thread == NamedThread("M10", 1.25, "10.9")
    assert read_sizes("M8 x 25 bolt").thread == NamedThread("M8", None, "")
    assert read_sizes("bolt, 13 mm").thread is None


def test_a_spanner_is_never_turned_into_a_thread() -> None:
    """13 mm is M8 by ISO, and M10 as a small flange."""
    assert [size for size, thread in THREADS.items() if Decimal(13) in thread.fits] == ["M8", "M10"]


def test_inch_hexagons_and_keys_of_cap_screws() -> None:
    """ASME B18.2.1 and B18.3, as transcribed in ``asmeb18.2.1.6def.csv`` of FreeCAD Fasteners."""
    heads = {in_inches(thread.size): in_inches(thread.hexagon) for thread in load().inch_threads}
    assert heads == {
        "1/4": "7/16", "5/16": "1/2", "3/8": "9/16", "7/16": "5/8", "1/2": "3/4", "5/8": "15/16", "3/4": "1 1/8",
        "7/8": "1 5/16", "1": "1 1/2",
    }  # fmt: skip
    keys = {in_inches(thread.size): in_inches(thread.key) for thread in load().inch_threads if thread.key}
    assert keys == {"1/4": "3/16", "5/16": "1/4", "3/8": "5/16", "1/2": "3/8", "5/8": "1/2", "3/4": "5/8"}


@pytest.mark.parametrize(
    ("text", "size"),
    [("5/16 UNC bolt", Fraction(5, 16)), ("3/8-24 UNF nut", Fraction(3, 8)), ("1 UNC", 1), ("1/2 in drive", None)],
)
def test_a_fraction_is_a_thread_only_when_it_is_called_one(text: str, size: Fraction | None) -> None:
    """A half inch may be a drive or a hexagon."""
    assert read_sizes(text).inch_thread == size


def _other(typed: str) -> str:
    return " then ".join(map(str, read_torque(typed).in_other_unit))


# VDI 2230-1:2015, table A1, tightening torque in N·m at a friction of 0.12, from memory.
COARSE = {
    "M4": (3.0, 4.6, 5.1), "M5": (5.9, 8.6, 10.0), "M6": (10.1, 14.9, 17.4), "M8": (24.6, 36.1, 42.2),
    "M10": (48, 71, 83), "M12": (84, 123, 144), "M16": (206, 302, 354),
}  # fmt: skip
CLASSES = [
    (size, strength, torque)
    for size, torques in COARSE.items()
    for strength, torque in zip(("8.8", "10.9", "12.9"), torques, strict=True)
]


@pytest.mark.parametrize("factor", [POUND_FOOT, 1 / POUND_FOOT])
def test_mixed_up_units_are_noticed_where_the_class_is_named(factor: float) -> None:
    """At least 15 of 21 sizes and classes; the right values pass."""
    slips = [is_slip(torque * factor, THREADS[size], NamedThread(size, None, cls)) for size, cls, torque in CLASSES]
    right = [is_slip(torque, THREADS[size], NamedThread(size, None, cls)) for size, cls, torque in CLASSES]
    assert (len(slips), sum(right)) == (21, 0)
    assert sum(slips) >= 15


@pytest.mark.parametrize("assumption", PUBLISHED_88)
def test_no_published_torque_is_taken_for_a_slip(assumption: str) -> None:
    for size, torque in zip(("M6", "M8", "M10", "M12", "M16", "M20"), PUBLISHED_88[assumption], strict=True):
        assert not is_slip(torque, THREADS[size], NamedThread(size, None, "8.8")), (size, torque)


def test_each_stage_is_looked_at_and_a_slip_is_asked() -> None:
    def asked(item: str) -> list[str]:
        text = changed(("keeper bolt | 15 N·m", item), ("torque wrench 5–25", "torque wrench 5–600"))
        return [one.rule for one in found(text) if one.rule == "torque-against-thread"]

    assert asked("M8 bolt 8.8 | 25 N·m") == []
    assert asked("M8 bolt 8.8 | 25 lbf·ft") == ["torque-against-thread"]
    assert asked("M8 bolt 8.8 | 18 N·m") == ["torque-against-thread"]
    assert asked("M8 bolt 8.8 | 18 N·m then 90°") == []
    assert asked("M8 bolt | 300 N·m then 25 N·m") == ["torque-against-thread"]
