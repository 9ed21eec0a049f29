"""All rules, and the one function that asks them."""

from collections.abc import Callable, Iterator

from procbuilder.check.balance import closed_but_never_opened, unbalanced_ledger
from procbuilder.check.case import Case
from procbuilder.check.closing import (
    forgotten_by_its_words,
    left_open_unclear,
    only_assumed_closed,
    put_on_after_its_part,
    then_leads_nowhere,
    then_never_ends,
)
from procbuilder.check.counting import how_many, one_closing_for_several
from procbuilder.check.derived import derived_not_accepted
from procbuilder.check.fasteners import inch_spanner_against_thread, spanner_against_thread, which_spanner
from procbuilder.check.footage import (
    end_before_start,
    hidden_in_part,
    mark_outside_crop,
    overlapping_steps,
    time_outside_recording,
    unlisted_recording,
)
from procbuilder.check.front import (
    empty_front_list,
    narration_not_read,
    no_steps,
    no_words_for_language,
    unnamed_procedure,
)
from procbuilder.check.order import angle_before_torque, torque_in_the_air, wrong_order
from procbuilder.check.proposed import (
    danger_proposed,
    dangers_not_confirmed,
    gloves_near_rotation,
    hold_missing,
    not_reserved,
)
from procbuilder.check.renewal import single_use_again
from procbuilder.check.safety import (
    danger_while_safe,
    hazard_incomplete,
    no_final_check,
    protection_taken_away,
    state_never_begins,
    state_safe_or_not,
)
from procbuilder.check.settled import unsettled
from procbuilder.check.strain import heavy_lift, much_vibration
from procbuilder.check.timeline import other_speed, time_between_recordings
from procbuilder.check.torque import (
    nowhere_to_look,
    stage_left_out,
    tightening_without_torque,
    torque_in_words,
    torque_without_source,
    torque_without_unit,
)
from procbuilder.check.values import (
    said_and_typed_differ,
    torque_against_thread,
    torque_wrench_range,
    torques_contradict,
)
from procbuilder.check.writing import condition_last, long_command, not_a_command, several_commands, two_names
from procbuilder.model.problem import Problem, worst_first

RULES: tuple[Callable[[Case], Iterator[Problem]], ...] = (
    protection_taken_away,
    hazard_incomplete,
    state_never_begins,
    danger_while_safe,
    state_safe_or_not,
    dangers_not_confirmed,
    danger_proposed,
    not_reserved,
    hold_missing,
    gloves_near_rotation,
    wrong_order,
    torque_in_the_air,
    angle_before_torque,
    unbalanced_ledger,
    closed_but_never_opened,
    how_many,
    one_closing_for_several,
    only_assumed_closed,
    put_on_after_its_part,
    left_open_unclear,
    then_leads_nowhere,
    then_never_ends,
    forgotten_by_its_words,
    single_use_again,
    derived_not_accepted,
    tightening_without_torque,
    nowhere_to_look,
    torque_without_unit,
    torque_in_words,
    torque_without_source,
    stage_left_out,
    torques_contradict,
    said_and_typed_differ,
    torque_against_thread,
    torque_wrench_range,
    spanner_against_thread,
    inch_spanner_against_thread,
    which_spanner,
    no_final_check,
    no_steps,
    unlisted_recording,
    time_outside_recording,
    end_before_start,
    hidden_in_part,
    overlapping_steps,
    other_speed,
    time_between_recordings,
    mark_outside_crop,
    empty_front_list,
    unnamed_procedure,
    no_words_for_language,
    narration_not_read,
    heavy_lift,
    much_vibration,
    long_command,
    several_commands,
    not_a_command,
    condition_last,
    two_names,
)


def problems(case: Case) -> tuple[Problem, ...]:
    """What all rules find and nobody has settled, the worst first."""
    return worst_first(unsettled(case.procedure, (problem for rule in RULES for problem in rule(case))))
