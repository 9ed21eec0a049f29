"""The works that can hurt somebody against the groups of hazards of ISO 12100:2010, annex B, table B.1.

The groups and their examples are named from memory of the standard; the standard itself prevails. Each work stands in
every group that can kill or hurt there, not only in the worst one.
"""

import tomllib

import pytest

from procbuilder.infer.lexicon import load
from procbuilder.infer.wordlists import DATA

GROUPS = {
    "1 mechanical: crushing, shearing": (
        "under-a-raised-vehicle vehicle-lift jacking air-suspension press-work press-tool power-door "
        "lift-shaft lift-table hung-load hoist-repair truck implement robot heavy-parts carry pneumatic gym "
        "timing-belt moving-vehicle cold-room"
    ),
    "1 mechanical: cutting, severing, stabbing": (
        "saw planer mower chainsaw blockage mixer sharp-edges glass-pane swarf drilling-out nail-gun grinding bio"
    ),
    "1 mechanical: drawing in, entanglement": (
        "lathe conveyor pto belts-and-fans engine-running bench-grinder mixer mower blockage switch-on bypass"
    ),
    "1 mechanical: stored energy, springs, pressure": (
        "coil-spring other-springs gas-struts door-spring accumulator hydraulic-circuit diesel-high-pressure "
        "compressed-air pneumatic compressor pressure-test spray-gun jet-wash cylinders tyre-inflation "
        "multi-piece-wheels airbag pretensioner"
    ),
    "1 mechanical: ejected and falling parts": (
        "pullers-and-chisels impact-wrench grinding bench-grinder press-work falling-object nail-gun pressure-test"
    ),
    "1 mechanical: falls, slips": (
        "ladder roof work-platform opening inspection-pit floor lift-shaft oils solar digging"
    ),
    "1 mechanical: loss of control, parts that fail later": (
        "steering-joints road-wheels brake-hydraulics moving-vehicle bicycle timing-marks"
    ),
    "2 electrical: live parts, arc": (
        "mains cabinet live-measure appliance wet-electric generator high-voltage near-high-voltage "
        "wall-drilling digging switch-on solar ups battery-off"
    ),
    "2 electrical: stored charge, static": "stored-charge microwave ups laser esd",
    "3 thermal: hot and cold surfaces, burns, scalds": (
        "hot-cooling-system hot-exhaust steam hot-water hot-fat heat-gun welding solder-fume printer3d "
        "refrigerant cold-room oil-solid hot-building inert-gas"
    ),
    "4 noise": "noise impact-wrench grinding bench-grinder compressor",
    "5 vibration": "vibration impact-wrench",
    "6 radiation": "welding laser uv magnet microwave radioactive",
    "7 substances: toxic, corrosive, sensitising": (
        "acid caustic chlorine descale solvents isocyanate resin oils metal-fluid solder-fume battery-off "
        "refrigerant-toxic flue gas-appliance engine-running generator damaged-lithium lithium-pack slurry uv"
    ),
    "7 substances: dust, fibres": "dust metal-dust silica asbestos fibre brake-dust",
    "7 substances: fire, explosion": (
        "petrol-opened gas-fuel gas-appliance refrigerant-burning solvents battery-charging damaged-lithium "
        "lithium-pack drum hot-building welding dust metal-dust spray-gun slurry cylinders oil-solid "
        "battery-off"
    ),
    "7 substances: biological": "bio sewage legionella metal-fluid",
    "8 ergonomic": "posture carry heavy-parts",
    "9 surroundings: no air, cold, heat, light, water": (
        "confined inert-gas slurry inspection-pit refrigerant refrigerant-toxic cold-room climate wet-electric digging"
    ),
    "10 combination": "switch-on bypass lone confined ups wall-drilling",
}
SIGNS = {
    "1 mechanical: crushing": "W019", "1 mechanical: cutting": "W022", "1 mechanical: drawing": "W018",
    "1 mechanical: stored": "W024", "1 mechanical: ejected": "W035", "1 mechanical: falls": "W008",
    "2 electrical": "W012", "3 thermal": "W017", "4 noise": "W087", "6 radiation": "W027",
    "7 substances: toxic": "W023",
    "7 substances: dust": "W071", "7 substances: fire": "W021", "9 surroundings": "W041", "10 combination": "W018",
}  # fmt: skip
"""The sign of ISO 7010 that at least one work of each such group shows."""

ACTIVITIES = {one.id: one for one in load().activities}


@pytest.mark.parametrize("group", GROUPS)
def test_each_group_of_hazards_has_its_works_and_its_sign(group: str) -> None:
    works = GROUPS[group].split()
    assert [work for work in works if work not in ACTIVITIES] == []
    for sign in (sign for begins, sign in SIGNS.items() if group.startswith(begins)):
        assert any(sign in ACTIVITIES[work].signs for work in works)


def test_every_work_belongs_to_a_group() -> None:
    assert ACTIVITIES.keys() - {work for works in GROUPS.values() for work in works.split()} == set()
    assert len(ACTIVITIES) == 140


def test_every_work_names_its_source() -> None:
    table = tomllib.loads((DATA / "dangers.toml").read_text(encoding="utf-8"))
    assert [work for work, facts in table.items() if not facts.get("source")] == []
