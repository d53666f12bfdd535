"""Types of what is given and answered. Generated from the library; do not edit."""

# ruff: noqa
from __future__ import annotations

from collections.abc import Mapping, Sequence
from typing import Any, Literal, NotRequired, TypeAlias, TypedDict, Union

import numpy as np
from numpy.typing import NDArray

Numbers: TypeAlias = Union[Sequence[float], NDArray[np.float64]]

class ActSince(TypedDict):
    """Something that a coach, a clinician or the lifter did beside training."""
    day: Day
    """When."""
    event: float
    """Number of the event."""
    kind: str
    """Its kind, as it is written."""
    lift: NotRequired[Name]
    """The lift, where it concerns one."""
    note: NotRequired[str]
    """What was written beside it."""


class Advance(TypedDict):
    """The coach takes or declines the move on offer."""
    lift: Name
    """Id of the lift."""
    who: Name
    """Who."""


class AgainstExpectation(TypedDict):
    """A strength now against what the years alone would have left."""
    expected: Band
    """What the model would have left, in the unit given."""
    ratio: Band
    """Strength now over what was expected: above 1 is more than the years alone would have left."""
    place: ExpectationPlace
    """Where it lies."""
    model: str
    """The model."""
    population: str
    """Who the model describes."""
    cautions: list[Caution]
    """What to show beside it."""


# Age in years, from 0 to 120; parts of a year allowed.
Age: TypeAlias = float

# Between which ages somebody was on a day.
AgeBand = TypedDict("AgeBand", {"from": "float", "to": "float", "on": "Day"})

class AgeCoefficient(TypedDict):
    """An age coefficient: a result times it compares with results of the reference age."""
    coefficient: float
    """The factor."""
    rule: AgeRule
    """The rule it comes from."""
    issued_by: str
    """Who issued it, as far as known."""
    population: str
    """Whose results it was fitted to."""
    cautions: list[Caution]
    """What to show beside it."""


class AgePoint(TypedDict):
    """A strength at an age, as tables and centile curves give it."""
    age: Age
    """The age."""
    strength: float
    """Strength there, above 0, in any unit; only its ratio to the other points counts."""


# A federation's age coefficients. Age is in whole years: powerlifting usually takes the age on the day, masters
# weightlifting the age reached in the calendar year; the rule book decides.
AgeRule: TypeAlias = Union[Literal['mcculloch', 'foster', 'meltzer_faber', 'all_round_international', 'all_round_united_states']]

class Agreement(TypedDict):
    """Agreement beyond chance."""
    pairs: float
    """Pairs that were compared."""
    left_out: float
    """Pairs left out because one of the two had not seen it."""
    observed: float
    """Share of agreement, weighted."""
    by_chance: float
    """Share that two raters with these habits would reach by chance."""
    kappa: float
    """`(observed - by_chance) / (1 - by_chance)`: 1 in full agreement, 0 at chance."""
    standard_error: float
    """Large-sample standard error; too small below some dozens of pairs."""
    interval: Interval
    """`kappa` with the standard error times the normal quantile on either side."""


# How much a near miss counts as agreement, categories being in order.
AgreementWeights: TypeAlias = Union[Literal['none', 'linear', 'quadratic']]

class Alike(TypedDict):
    """How two people agree over the marks that both gave."""
    pairs: float
    """Marks that both gave to the same thing in the same set."""
    same: float
    """Of these, the same mark."""
    agreement: NotRequired[Agreement]
    """Agreement beyond chance; absent where there is no pair, or where both gave one and the same mark throughout, which
    cannot be told from habit.
    """


# Part of the present strength lost in a year: 0.02 is 2 %. From 0 up to, not including, 1.
AnnualLoss: TypeAlias = float

# What is asked before anything else on a training day.
Ask: TypeAlias = Union[Literal['fever', 'dizziness', 'palpitations', 'fall', 'new_medicine']]

class AskAnswered(TypedDict):
    """The answer that closes what was asked on an earlier day."""
    ask: Ask
    """Which."""
    who: Name
    """Who says that training may go on."""
    clinician: bool
    """A clinician says so; needed for all but a fever that is over."""


class AttemptStep(TypedDict):
    """How much to add, both ways in which the protocol puts it. For light lifters the two disagree (10 lb on
    40 lb are 25 %): take the percentage, and a load that can be made.
    """
    by_percent: MassBand
    """5 to 10 % of the load for the upper body, 10 to 20 % for the lower."""
    by_pounds: MassBand
    """10 to 20 lb for the upper body, 30 to 40 lb for the lower."""


class Band(TypedDict):
    """A lower and an upper figure, and one between where the source gives it.

    What published studies span, or both sexes, or a fast and a slow course. It claims no probability; where one is
    claimed, `Interval`(crate::quantity::Interval) is used.

    Invariant: all finite, `low <= middle <= high`.
    """
    low: float
    middle: NotRequired[float]
    high: float


class BandOptions(TypedDict):
    """How the band is drawn. All numbers are our choice."""
    weeks: float
    """Past weeks looked at, the latest: 12."""
    fewest: float
    """Fewest trained weeks among them for a band: 6."""
    reach: float
    """Half width of the band in robust standard deviations: 2."""
    smallest_spread_share: float
    """The deviation is taken as at least this share of the centre, or a steady lifter's band would close: 0.1."""
    break_share: float
    """A past week below this share of the centre is a break, not training: 0.5."""
    quiet_weeks: float
    """So many weeks after a break nothing is said: 2."""


class Bar(TypedDict):
    """A bar with two sleeves. Its collars are always stated, never assumed: zero is a statement too."""
    id: Name
    mass: Mass
    collar: Mass
    sleeve: NotRequired[Length]
    kind: BarKind


class BarChanged(TypedDict):
    """Something about a lift changed that makes sessions before and after it hard to compare."""
    lift: NotRequired[Name]
    """Id of the lift; absent means all."""
    now: Name
    """What or who it is now."""


class BarInput(TypedDict):
    """A bar with two sleeves. Its collars are always stated, never assumed: zero is a statement too."""
    id: Name
    mass: MassInput
    collar: MassInput
    sleeve: NotRequired[Length]
    kind: NotRequired[BarKind]


class BarKind_hex_fields(TypedDict):
    """A frame around the lifter, gripped at handles."""
    low_handle: Length
    """Height of the low handles above the centre line of the discs."""
    high_handle: NotRequired[Length]
    """Height of the high handles above the centre line, where the bar has them."""


BarKind_hex = TypedDict("BarKind_hex", {"hex": "BarKind_hex_fields"})

# The shape of a bar.
BarKind: TypeAlias = Union[Literal['straight'], "BarKind_hex"]

class BarOffer(TypedDict):
    """A bar that is right for a lift."""
    implement: Name
    """Id of the bar."""
    load: Mass
    """Its lightest load at the height of the lift."""
    loaded: Loaded
    """How that load is made."""
    blocks: NotRequired[Length]
    """Blocks under each end that bring it to its height."""
    off_by_mm: float
    """How far from its height the bar lies, mm; 0 where it is kept, or no part of the lift."""
    fits: bool
    """Its lightest load is not above the working load of the lift, nor above a limit of the clearance in force."""
    now: bool
    """The lift is done with it now."""


class BarReading(TypedDict):
    """What a bar with these discs weighs."""
    total: Mass
    """The whole load from the best known masses."""
    pounds: float
    """The same in pounds."""
    nominal: Mass
    """The whole load by the face values."""
    band: MassBand
    """The least and the most it may be: measured discs as measured, all else within the rule."""
    left_over_right: Mass
    """The left end less the right end, from the best known masses."""
    centre_height: NotRequired[Length]
    """Height of the centre, where both ends carry discs and every diameter is known."""


class Baseline(TypedDict):
    """What is ordinary for this lifter."""
    centre: float
    """The middle of the values."""
    spread: float
    """Their scatter, not below the floor."""
    values: float
    """How many values."""
    floored: bool
    """Whether the floor replaced a narrower scatter."""


class Beginning(TypedDict):
    """A log with its first events, and the plan for the first session."""
    log: Log
    """What is set, and who said that training may begin, where somebody did."""
    plan: Plan
    """Every lift of it."""


# The two lifts of the 2014 study, both by mean propulsive velocity.
BenchLift: TypeAlias = Union[Literal['bench_press', 'bench_pull']]

class BetaPosterior(TypedDict):
    """What is believed of a rate after the trials."""
    successes: float
    """Weight of successes, imagined and real."""
    failures: float
    """Weight of failures, imagined and real."""
    mean: float
    """Mean of the rate: also the probability that the next trial succeeds."""
    standard_deviation: float
    """Standard deviation of the rate."""


class BetaPrior(TypedDict):
    """What is believed of a rate before the trials, as a Beta distribution.

    Invariant: both weights above 0 and at most 1,000,000.
    """
    successes: float
    failures: float


# Which way a result is better.
Better: TypeAlias = Union[Literal['higher', 'lower']]

# A block of weeks.
Block = TypedDict("Block", {"name": "Name", "from": "Day", "to": "Day", "ended": "bool"})

class BlockAdvice_change_fields(TypedDict):
    """Few sessions passed, or the lift stands easier than at the block's beginning: look for another rung or variant."""
    passed: float
    """Sessions that passed."""
    marked: float
    """Of so many that were marked."""


BlockAdvice_change = TypedDict("BlockAdvice_change", {"change": "BlockAdvice_change_fields"})

class BlockAdvice_change_for_pain_fields(TypedDict):
    """A region of the lift still needs clear sessions, or hurts on: look for a rung that spares it."""
    region: Name
    """Where."""


BlockAdvice_change_for_pain = TypedDict("BlockAdvice_change_for_pain", {"change_for_pain": "BlockAdvice_change_for_pain_fields"})

class BlockAdvice_retest_fields(TypedDict):
    """Too few sets say where strength stands: repetitions with some left in reserve, never a true maximum."""
    estimates: float
    """Estimates in the block."""


BlockAdvice_retest = TypedDict("BlockAdvice_retest", {"retest": "BlockAdvice_retest_fields"})

class BlockAdvice_raise_gate_fields(TypedDict):
    """Every session passed without one miss: the gate may ask for more than it does."""
    sessions: float
    """Sessions."""


BlockAdvice_raise_gate = TypedDict("BlockAdvice_raise_gate", {"raise_gate": "BlockAdvice_raise_gate_fields"})

# What a block suggests for a lift. The coach decides; none of it moves anything.
BlockAdvice: TypeAlias = Union[Literal['keep'], "BlockAdvice_change", "BlockAdvice_change_for_pain", "BlockAdvice_retest", "BlockAdvice_raise_gate"]

# One lift over a block.
BlockLift = TypedDict("BlockLift", {"lift": "Name", "sessions": "float", "passed": "float", "not_passed": "float", "unmarked": "float", "acceptable": "float", "scored": "float", "from": "NotRequired[Grant]", "to": "Grant", "days_here": "float", "estimates": "float", "trend": "TrendVerdict", "slope": "NotRequired[Slope]", "advice": "list[BlockAdvice]"})

class BlockReview(TypedDict):
    """A block, looked back on."""
    stops: list[Reason]
    """Every stop of the lifter, whatever is asked about; empty where nothing is stopped. Shown before anything else."""
    today: Day
    """The day it was made for."""
    block: NotRequired[Block]
    """The block; absent where none was begun."""
    lifts: list[BlockLift]
    """The lifts trained in it, in the order of the parameters."""
    missing: list[Lacking]
    """What nobody wrote down."""
    sources: list[str]
    """Rows that the numbers come from."""
    cautions: list[Caution]
    """What to show beside it."""


# Which half of the body a lift loads; sets the default size of a step.
Body: TypeAlias = Union[Literal['upper', 'lower']]

# Which half of the body a lift is done with.
BodyHalf: TypeAlias = Union[Literal['upper', 'lower']]

class BodyMassOnInput(TypedDict):
    """Body mass on a day."""
    on: Day
    """The day."""
    mass: MassInput
    """Body mass."""


# Which of the two published body tables to use.
BodyTable: TypeAlias = Union[Literal['male', 'female']]

# The two groups that were compared.
BreakGroup: TypeAlias = Union[Literal['young', 'older']]

class BridgeOptionsInput(TypedDict):
    """What is known beside the load, for the bridges."""
    discs: NotRequired[Sequence[MassInput]]
    """Discs that could be had, one each; tried as an added pair."""
    reps: NotRequired[Reps]
    """Repetitions wanted at the new load."""
    capacity: NotRequired[Numbers]
    """Part of the one-repetition maximum that can be done for 1, 2, 3, ... repetitions, falling; from any
    equation or from the lifter's own curve. Empty: no repetitions are worked out.
    """


# Who is by the bar. One answer, so that nobody can be alone with a spotter.
ByTheBar: TypeAlias = Union[Literal['alone', 'others', 'spotter']]

class Calibration(TypedDict):
    """Sessions of calibration: on how many days they were done, and how many are asked for."""
    done: float
    """Days with a session."""
    needed: float
    """Days asked for."""


CardItem_test = TypedDict("CardItem_test", {"test": "FunctionTest"})

CardItem_weigh = TypedDict("CardItem_weigh", {"weigh": "Name"})

class CardItem_swap_fields(TypedDict):
    """A lift to swap."""
    lift: Name
    """The lift."""
    replacement: NotRequired[Name]
    """What takes its place, if known."""


CardItem_swap = TypedDict("CardItem_swap", {"swap": "CardItem_swap_fields"})

class CardItem_gap_fields(TypedDict):
    """A planned gap begins."""
    name: Name
    """What for."""
    to: Day
    """Last day."""


CardItem_gap = TypedDict("CardItem_gap", {"gap": "CardItem_gap_fields"})

# A thing on the card.
CardItem: TypeAlias = Union[Literal['clearance', 'body_mass'], "CardItem_test", "CardItem_weigh", "CardItem_swap", "CardItem_gap"]

class CardLine(TypedDict):
    """One line of the card."""
    item: CardItem
    """What is due."""
    due: Day
    """By which day."""
    days_left: float
    """Days from today to that day; negative if it has passed."""
    state: CardState
    """How it stands."""


class CardNote_mass_lost_fields(TypedDict):
    """Body mass lost without intending to."""
    part: float
    """Part of the highest body mass of the stretch."""
    days: float
    """Days over which."""


CardNote_mass_lost = TypedDict("CardNote_mass_lost", {"mass_lost": "CardNote_mass_lost_fields"})

# Something worth a talk with a clinician.
CardNote: TypeAlias = Union[Literal['fall', 'new_medicine'], "CardNote_mass_lost"]

class CardSettings(TypedDict):
    """After how many days things come due."""
    clearance_days: float
    """A clearance, days."""
    test_days: float
    """A function test, days."""
    weighing_days: float
    """A weighing of equipment, days."""
    body_mass_days: float
    """A body mass, days."""
    soon_days: float
    """From how many days ahead a thing counts as soon."""
    tests: list[FunctionTest]
    """Tests to repeat each year."""
    mass_loss: float
    """Loss of body mass that is worth a talk, as a part."""
    mass_loss_days: float
    """Over how many days."""


class CardSettingsInput(TypedDict):
    """After how many days things come due."""
    clearance_days: NotRequired[float]
    """A clearance, days."""
    test_days: NotRequired[float]
    """A function test, days."""
    weighing_days: NotRequired[float]
    """A weighing of equipment, days."""
    body_mass_days: NotRequired[float]
    """A body mass, days."""
    soon_days: NotRequired[float]
    """From how many days ahead a thing counts as soon."""
    tests: NotRequired[Sequence[FunctionTest]]
    """Tests to repeat each year."""
    mass_loss: NotRequired[float]
    """Loss of body mass that is worth a talk, as a part."""
    mass_loss_days: NotRequired[float]
    """Over how many days."""


# How a line stands today.
CardState: TypeAlias = Union[Literal['never', 'overdue', 'soon', 'later', 'running']]

class Carried(TypedDict):
    """A strength carried along one curve."""
    strength: float
    """Strength at the other age, in the unit given."""
    population: str
    """Who it describes: whoever the curve does."""
    cautions: list[Caution]
    """What to show beside it."""


class CarriedResult(TypedDict):
    """A lift carried from one age to another by a federation's age coefficients."""
    load: Kilograms
    """The result at the other age."""
    rule: AgeRule
    """The rule used; another rule gives another number."""
    population: str
    """Whose results it was fitted to."""
    cautions: list[Caution]
    """What to show beside it."""


# What to show beside an answer, as a stable key. The text form never changes within a major version.
Caution: TypeAlias = Union[Literal['alone_without_pins', 'examines_nobody', 'ask_before_starting', 'emergency_signs', 'back_emergency', 'see_clinician_first', 'not_while_unwell', 'breathing_plan', 'holding_is_good', 'estimates_are_ranges', 'gates_unproven', 'no_pressure_limit', 'ask_before_today', 'unknown_events', 'mass_falling', 'lower_start', 'pins_moved', 'large_override', 'rehearsal_of_rules', 'not_a_prognosis', 'talk_to_clinician', 'other_population', 'no_interval_published', 'cross_sectional', 'survivors_only', 'small_sample', 'open_ended', 'source_not_read', 'source_seen_in_copies', 'counted_at_limit', 'sex_unknown', 'project_judgement', 'steep_above_eighty', 'machine_specific', 'direction_only', 'threshold_of_one_population', 'same_lift_only', 'rests_count_as_load', 'shared_days', 'rescaled_recent_load', 'not_checked_in_lifting', 'short_history', 'start_value_matters', 'usual_load_small', 'teaching_simulation', 'estimate_is_a_range', 'new_to_the_lift', 'velocity_is_specific', 'velocity_runs_high', 'velocity_at_maximum_unreliable', 'velocity_not_from_warm_up', 'loads_too_close']]

class CentileRange(TypedDict):
    """Between which centiles of a population a result lies."""
    at_least: NotRequired[float]
    """Highest printed centile that the result reaches; absent below the lowest one."""
    below: NotRequired[float]
    """Lowest printed centile that it does not reach; absent above the highest one."""
    population: str
    """Who was measured."""
    cautions: list[Caution]
    """What to show beside it."""


class Centiles(TypedDict):
    """Values that 10, 25, 50, 75 and 90 % of the rehearsed lifters did not exceed; absent where so many were not
    there by the end.
    """
    tenth: NotRequired[float]
    """The value that 10 % did not exceed."""
    quarter: NotRequired[float]
    """The value that 25 % did not exceed."""
    half: NotRequired[float]
    """The value that 50 % did not exceed."""
    three_quarters: NotRequired[float]
    """The value that 75 % did not exceed."""
    nine_tenths: NotRequired[float]
    """The value that 90 % did not exceed."""


class Change_passing_sessions_fields(TypedDict):
    """Passing sessions, each on another day."""
    count: float
    """How many more."""


Change_passing_sessions = TypedDict("Change_passing_sessions", {"passing_sessions": "Change_passing_sessions_fields"})

class Change_learning_sessions_fields(TypedDict):
    """Calibration sessions."""
    count: float
    """How many more."""


Change_learning_sessions = TypedDict("Change_learning_sessions", {"learning_sessions": "Change_learning_sessions_fields"})

class Change_days_fields(TypedDict):
    """Days to wait."""
    count: float
    """How many."""


Change_days = TypedDict("Change_days", {"days": "Change_days_fields"})

class Change_clear_sessions_fields(TypedDict):
    """Sessions without more pain than usual."""
    region: Name
    """Where."""
    count: float
    """How many more."""


Change_clear_sessions = TypedDict("Change_clear_sessions", {"clear_sessions": "Change_clear_sessions_fields"})

class Change_steady_sessions_fields(TypedDict):
    """Sessions in a row at or below the agreed usual level of pain, and no answer about it higher than the one before."""
    region: Name
    """Where."""
    count: float
    """How many more."""


Change_steady_sessions = TypedDict("Change_steady_sessions", {"steady_sessions": "Change_steady_sessions_fields"})

class Change_ask_answered_fields(TypedDict):
    """The answer to something that was asked."""
    ask: Ask
    """What."""


Change_ask_answered = TypedDict("Change_ask_answered", {"ask_answered": "Change_ask_answered_fields"})

class Change_more_in_reserve_fields(TypedDict):
    """Sessions whose sets leave what is asked in reserve."""
    count: float
    """How many more."""


Change_more_in_reserve = TypedDict("Change_more_in_reserve", {"more_in_reserve": "Change_more_in_reserve_fields"})

class Change_effort_said_fields(TypedDict):
    """Sessions of which the lifter says how much each set left in reserve."""
    count: float
    """How many more."""


Change_effort_said = TypedDict("Change_effort_said", {"effort_said": "Change_effort_said_fields"})

class Change_leave_out_partner_fields(TypedDict):
    """The other lift of the pair is left out of the plan of that day."""
    partner: Name
    """Which."""


Change_leave_out_partner = TypedDict("Change_leave_out_partner", {"leave_out_partner": "Change_leave_out_partner_fields"})

class Change_break_over_fields(TypedDict):
    """The planned break is over."""
    until: Day
    """Its last day."""


Change_break_over = TypedDict("Change_break_over", {"break_over": "Change_break_over_fields"})

class Change_smaller_discs_fields(TypedDict):
    """Discs that make a load up to this one."""
    up_to: Mass
    """Highest load the step allows."""


Change_smaller_discs = TypedDict("Change_smaller_discs", {"smaller_discs": "Change_smaller_discs_fields"})

class Change_more_to_load_fields(TypedDict):
    """Something heavier than all there is, up to this one."""
    up_to: Mass
    """Highest load the step allows."""


Change_more_to_load = TypedDict("Change_more_to_load", {"more_to_load": "Change_more_to_load_fields"})

class Change_blocks_or_discs_fields(TypedDict):
    """Blocks or discs that start the bar at this height."""
    height: Length
    """Height of the bar's centre."""


Change_blocks_or_discs = TypedDict("Change_blocks_or_discs", {"blocks_or_discs": "Change_blocks_or_discs_fields"})

class Change_usual_pain_agreed_fields(TypedDict):
    """The usual level of pain is looked at and agreed anew."""
    region: Name
    """Where."""


Change_usual_pain_agreed = TypedDict("Change_usual_pain_agreed", {"usual_pain_agreed": "Change_usual_pain_agreed_fields"})

class Change_sessions_fields(TypedDict):
    """Sessions of this lift, whatever they come to."""
    count: float
    """How many more."""


Change_sessions = TypedDict("Change_sessions", {"sessions": "Change_sessions_fields"})

class Change_implement_fields(TypedDict):
    """The implement is there."""
    implement: Name
    """Which."""


Change_implement = TypedDict("Change_implement", {"implement": "Change_implement_fields"})

# One thing that would change the answer, with how much of it.
Change: TypeAlias = Union[Literal['coach_accepts', 'gate_opens', 'next_morning_answer', 'pain_answer', 'clearance', 'clearance_and_sign_off', 'clearance_or_ranges', 'day_report', 'session_as_granted', 'override_ends', 'day_within', 'pass_on_day_within', 'recent_session', 'forgiving_proof', 'more_repetitions', 'body_mass', 'easy_week_over', 'whole_work', 'more_time', 'pins_or_spotter', 'coach_sets_otherwise', 'newer_library'], "Change_passing_sessions", "Change_learning_sessions", "Change_days", "Change_clear_sessions", "Change_steady_sessions", "Change_ask_answered", "Change_more_in_reserve", "Change_effort_said", "Change_leave_out_partner", "Change_break_over", "Change_smaller_discs", "Change_more_to_load", "Change_blocks_or_discs", "Change_usual_pain_agreed", "Change_sessions", "Change_implement"]

class ChangeChances(TypedDict):
    """How likely it is that the true change of one person helps, does nothing of note, or harms.

    A flat prior on the true change of one athlete; not a claim about a group.
    """
    benefit: float
    """The true change is at least the smallest worthwhile one."""
    trivial: float
    """The true change is smaller than that, either way."""
    harm: float
    """The true change is at least the smallest worthwhile one, downwards."""


class ChangedSince(TypedDict):
    """What changed since a day."""
    since: Day
    """The end of this day is what is compared with."""
    sessions: float
    """Sessions after it."""
    lifts: list[LiftMoved]
    """Lifts that stand otherwise than then."""
    acts: list[ActSince]
    """What was done beside training, oldest first."""


# Which print to follow above 10 repetitions, where they disagree.
ChartAboveTen: TypeAlias = Union[Literal['one_page', 'textbook']]

class ClassCalibration(TypedDict):
    """The four counts and what follows."""
    hits: float
    """Called below the usual, fell short."""
    false_alarms: float
    """Called below the usual, went well."""
    misses: float
    """Not called below the usual, fell short."""
    quiet: float
    """Not called below the usual, went well."""
    unknown: float
    """Sessions of unknown class, left out."""
    right: NotRequired[Interval]
    """Part of the verdicts that were right."""
    caught: NotRequired[Interval]
    """Part of the days that fell short which were called below the usual, 95 %."""
    wrongly_called: NotRequired[Interval]
    """Part of the days that went well which were called below the usual, 95 %."""
    chance: NotRequired[float]
    """How often chance alone would catch as many."""
    skill: VerdictSkill
    """Whether the verdicts were better than chance."""


class Clearance(TypedDict):
    """The result of a clearance, which a clinician gives and a coach records; the library stores it and examines nobody.

    With the coach's sign-off it lifts stops, and alone it answers an illness and a fever. What else was said when asked before
    training (a fall, palpitations) is closed by its own answer only, which says whether it is a clinician's.
    """
    status: ClearanceStatus
    """What was said."""
    who: Name
    """Who said it."""
    expires: NotRequired[Day]
    """Last day it holds; absent means the policy's number of days from the event."""
    limits: NotRequired[list[ClearanceLimits]]
    """Limits, each a guard on every decision until a newer clearance; at most 64. A clearance with limits says at least one,
    and each limits something.
    """


class ClearanceInForce(TypedDict):
    """The clearance in force."""
    status: ClearanceStatus
    """What was said."""
    given: Day
    """When."""
    expires: Day
    """Last day it holds."""
    told: float
    """Number under which it and its limits were told last: one given before takes none of them away."""
    limits: NotRequired[list[ClearanceLimits]]
    """Its limits."""


class ClearanceInForceInput(TypedDict):
    """The clearance in force."""
    status: ClearanceStatus
    """What was said."""
    given: Day
    """When."""
    expires: Day
    """Last day it holds."""
    told: float
    """Number under which it and its limits were told last: one given before takes none of them away."""
    limits: NotRequired[Sequence[ClearanceLimitsInput]]
    """Its limits."""


class ClearanceInput(TypedDict):
    """The result of a clearance, which a clinician gives and a coach records; the library stores it and examines nobody.

    With the coach's sign-off it lifts stops, and alone it answers an illness and a fever. What else was said when asked before
    training (a fall, palpitations) is closed by its own answer only, which says whether it is a clinician's.
    """
    status: ClearanceStatus
    """What was said."""
    who: Name
    """Who said it."""
    expires: NotRequired[Day]
    """Last day it holds; absent means the policy's number of days from the event."""
    limits: NotRequired[Sequence[ClearanceLimitsInput]]
    """Limits, each a guard on every decision until a newer clearance; at most 64. A clearance with limits says at least one,
    and each limits something.
    """


class ClearanceLimits(TypedDict):
    """One set of limits, for one region or for the whole body."""
    region: NotRequired[Name]
    """Id of the region where it holds; absent means everywhere."""
    load: NotRequired[Mass]
    """Highest load."""
    effort: NotRequired[Rpe]
    """Highest effort rating."""
    range: NotRequired[Length]
    """Deepest range, measured as the lift's own list of ranges is: that list, easiest first, says whether deeper is
    longer or shorter. A lift that declares no ranges rests under it: nobody can tell whether it keeps the limit.
    """
    no_loaded_flexion: NotRequired[bool]
    """No loaded bending of the spine."""
    no_breath_hold: NotRequired[bool]
    """No long breath-hold."""


class ClearanceLimitsInput(TypedDict):
    """One set of limits, for one region or for the whole body."""
    region: NotRequired[Name]
    """Id of the region where it holds; absent means everywhere."""
    load: NotRequired[MassInput]
    """Highest load."""
    effort: NotRequired[Rpe]
    """Highest effort rating."""
    range: NotRequired[Length]
    """Deepest range, measured as the lift's own list of ranges is: that list, easiest first, says whether deeper is
    longer or shorter. A lift that declares no ranges rests under it: nobody can tell whether it keeps the limit.
    """
    no_loaded_flexion: NotRequired[bool]
    """No loaded bending of the spine."""
    no_breath_hold: NotRequired[bool]
    """No long breath-hold."""


# What a clinician, or a screening answer, allows.
ClearanceStatus: TypeAlias = Union[Literal['cleared', 'cleared_with_limits', 'not_cleared']]

# Who is there.
Company: TypeAlias = Union[Literal['alone', 'within_call', 'spotter']]

# In what one place and its work is harder than another, and in what easier.
Comparison = TypedDict("Comparison", {"stops": "list[Reason]", "today": "Day", "lift": "Name", "from": "Grant", "to": "Grant", "harder": "list[Dimension]", "easier": "list[Dimension]", "sideways": "bool", "cautions": "list[Caution]"})

class Conditions(TypedDict):
    """Under what conditions a marker was read. Only equal conditions are compared."""
    lift: NotRequired[Name]
    """The lift, for markers read on one."""
    load: NotRequired[Mass]
    """The load."""
    reps: NotRequired[Reps]
    """The repetitions."""
    time_of_day: NotRequired[TimeOfDay]
    """The time of day."""
    caffeine: NotRequired[bool]
    """Whether there was caffeine before."""
    other: NotRequired[list[Name]]
    """Anything else that is told apart, in the coach's words, in one order."""


class ConditionsInput(TypedDict):
    """Under what conditions a marker was read. Only equal conditions are compared."""
    lift: NotRequired[Name]
    """The lift, for markers read on one."""
    load: NotRequired[MassInput]
    """The load."""
    reps: NotRequired[Reps]
    """The repetitions."""
    time_of_day: NotRequired[TimeOfDay]
    """The time of day."""
    caffeine: NotRequired[bool]
    """Whether there was caffeine before."""
    other: NotRequired[Sequence[Name]]
    """Anything else that is told apart, in the coach's words, in one order."""


# What a powerlifting result is made of.
Contest: TypeAlias = Union[Literal['three_lifts', 'bench_press']]

# An earlier event was wrong: what stands in its place, or nothing.
Correction = TypedDict("Correction", {"replaces": "float", "day": "NotRequired[Day]", "with": "NotRequired[EventKind]"})

# An earlier event was wrong: what stands in its place, or nothing.
CorrectionInput = TypedDict("CorrectionInput", {"replaces": "float", "day": "NotRequired[Day]", "with": "NotRequired[EventKindInput]"})

class Criterion(TypedDict):
    """One thing that is looked at in a lift."""
    id: Name
    """Its name, in the coach's own words."""
    critical: bool
    """Whether a single miss of it fails the session."""
    sets: NotRequired[list[float]]
    """Work sets (1 is the first) in which it is judged, such as the one filmed from the side; empty for all."""


class CriterionInput(TypedDict):
    """One thing that is looked at in a lift."""
    id: Name
    """Its name, in the coach's own words."""
    critical: bool
    """Whether a single miss of it fails the session."""
    sets: NotRequired[Numbers]
    """Work sets (1 is the first) in which it is judged, such as the one filmed from the side; empty for all."""


class CriterionMark(TypedDict):
    """One criterion with its mark."""
    criterion: Name
    """Which criterion."""
    mark: Mark
    """Its mark."""


class CriticalLoad(TypedDict):
    """A fitted critical load."""
    critical_load: Kilograms
    """Load that could be lifted very often."""
    store: float
    """Store of work above it, in kg times repetitions."""
    r_squared: float
    """R2 of total work on repetitions. Work contains repetitions, so it flatters."""
    doubts: list[CriticalLoadDoubt]
    """Why to doubt it."""


# Why a critical load should be doubted.
CriticalLoadDoubt: TypeAlias = Union[Literal['fewer_than_four_loads', 'poor_fit', 'load_not_above_critical']]

class Crossing_at_fields(TypedDict):
    """Met at this age."""
    age: Age
    """Age when the floor is met."""
    year: float
    """Calendar year of that age."""


Crossing_at = TypedDict("Crossing_at", {"at": "Crossing_at_fields"})

class Crossing_not_before_fields(TypedDict):
    """Not met up to the last age of the model, which says nothing about later."""
    age: Age
    """Last age of the model."""
    year: float
    """Calendar year of that age."""


Crossing_not_before = TypedDict("Crossing_not_before", {"not_before": "Crossing_not_before_fields"})

# When a floor is met along one curve.
Crossing: TypeAlias = Union[Literal['at_or_below'], "Crossing_at", "Crossing_not_before"]

Curve_compound = TypedDict("Curve_compound", {"compound": "Sequence[LossBand]"})

# A yearly loss that rises in a straight line with age: a quadratic in the logarithm of strength.
Curve_rising_loss_fields = TypedDict("Curve_rising_loss_fields", {"from": "Age", "from_loss": "AnnualLoss", "to": "Age", "to_loss": "AnnualLoss"})

Curve_rising_loss = TypedDict("Curve_rising_loss", {"rising_loss": "Curve_rising_loss_fields"})

# The same amount each year: a part of the strength at the first age.
Curve_line_fields = TypedDict("Curve_line_fields", {"from": "Age", "to": "Age", "loss": "AnnualLoss"})

Curve_line = TypedDict("Curve_line", {"line": "Curve_line_fields"})

# `1 - linear t - square t^2`, with `t` years after the first age.
Curve_quadratic_fields = TypedDict("Curve_quadratic_fields", {"from": "Age", "to": "Age", "linear": "float", "square": "float"})

Curve_quadratic = TypedDict("Curve_quadratic", {"quadratic": "Curve_quadratic_fields"})

# `1 - exp((age - zero) / time_constant)`: slow at first, then ever faster, to nothing at the age `zero`.
Curve_saturating_fields = TypedDict("Curve_saturating_fields", {"from": "Age", "zero": "Age", "time_constant": "float"})

Curve_saturating = TypedDict("Curve_saturating", {"saturating": "Curve_saturating_fields"})

Curve_points = TypedDict("Curve_points", {"points": "Sequence[AgePoint]"})

# A course of strength over age.
#
# Percent of what is left (compound) and percent of the strength at the start (line) are never mixed: at 2 % they
# differ by 7 points of the starting strength after 20 years.
Curve: TypeAlias = Union["Curve_compound", "Curve_rising_loss", "Curve_line", "Curve_quadratic", "Curve_saturating", "Curve_points"]

class CurveFit(TypedDict):
    """A fitted curve."""
    scale: float
    """Factor in front: what the curve is scaled by."""
    shape: float
    """The coefficient inside: rate or exponent."""
    scale_error: NotRequired[float]
    """Standard error of the factor; absent where no degree of freedom is left."""
    shape_error: NotRequired[float]
    """Standard error of the coefficient inside; absent where no degree of freedom is left."""
    residual_squares: float
    """Sum of squared residuals."""


# The form of a lifter's own curve; both give the load itself at one repetition.
CurveForm: TypeAlias = Union[Literal['exponential', 'anchored_line']]

class CurvePrior(TypedDict):
    """What is believed of the slope before this lifter's sets are seen: a normal spread around `slope`."""
    slope: float
    """Typical slope a repetition."""
    cv: float
    """Coefficient of variation between people."""


class CusumDesign(TypedDict):
    """Slack and threshold of a cumulative sum, both in standard deviations."""
    reference: float
    """Slack: half the shift to find."""
    threshold: float
    """A sum above this is a signal."""
    head_start: float
    """Where both sums start; half the threshold for a fast first response, else 0."""


class CusumPoint(TypedDict):
    """One point of the chart."""
    up: float
    """Sum of what lay above target and slack, in the unit of the values."""
    up_run: float
    """Values since that sum was last 0."""
    down: float
    """Sum of what lay below target and slack."""
    down_run: float
    """Values since that sum was last 0."""
    signal: NotRequired[Side]
    """The side whose sum is above the threshold."""
    new_mean: NotRequired[float]
    """With a signal: where the mean seems to lie now."""


DailyLoad_recorded = TypedDict("DailyLoad_recorded", {"recorded": "LoadTotal"})

# What is known of a day's load (or a week's).
#
# A day without an entry is not a rest day: a rested day counts as 0, a day that was not recorded makes every
# total over it unknown.
DailyLoad: TypeAlias = Union[Literal['rested', 'not_recorded'], "DailyLoad_recorded"]

class DatedFloor(TypedDict):
    """A strength that must still be there at an age."""
    name: Name
    """What it is for: a lift, a task, a test where more is better."""
    floor: float
    """The figure to keep, in the unit of `capacity`."""
    at: Age
    """Until what age."""
    capacity: float
    """What the person has now."""


# A calendar day, `YYYY-MM-DD`, from 1900 to 2199.
Day: TypeAlias = str

# What to do about it. Never more load.
DayAdvice: TypeAlias = Union[Literal['ease_off', 'recheck_after_first_set', 'as_planned', 'quality_set_allowed', 'planned_without_advance']]

class DayAnswer(TypedDict):
    """Today against the lifter's own days."""
    stops: list[Reason]
    """Every stop of the lifter, whatever is asked about; empty where nothing is stopped. Shown before anything else."""
    today: Day
    """The day."""
    verdict: NotRequired[DayVerdict]
    """The class, each marker's vote with its baseline, and how often ordinary days would look like one below the usual;
    absent where nothing was answered today.
    """
    days: float
    """Earlier days with an answer."""
    missing: list[Lacking]
    """What nobody answered or said."""
    sources: list[str]
    """Rows of the registry that the numbers come from."""
    cautions: list[Caution]
    """What to show beside it."""


class DayAnswersInput(TypedDict):
    """Answers of today that are not in the log yet."""
    markers: NotRequired[Sequence[MarkerAnswerInput]]
    """The markers; each stands before the same one in a report of today."""
    technique: NotRequired[WarmUpTechnique]
    """What the warm-up showed of technique."""


# Today against the lifter's own ordinary days: below, within or above the usual, in five classes.
#
# A day above the usual never raises a load; it is named so that one below can be told from it.
DayClass: TypeAlias = Union[Literal['below', 'below_single', 'within', 'above', 'unknown']]

class DayOptions(TypedDict):
    """How a baseline is made and read. All of it is this project's choice."""
    most_values: float
    """Most past values used, the newest first."""
    least_values: float
    """Fewer than this give no baseline."""
    threshold: float
    """How many spreads below the centre lie below the usual, and above it above."""
    agreeing: float
    """How many markers must agree."""


class DayOptionsInput(TypedDict):
    """How a baseline is made and read. All of it is this project's choice."""
    most_values: NotRequired[float]
    """Most past values used, the newest first."""
    least_values: NotRequired[float]
    """Fewer than this give no baseline."""
    threshold: NotRequired[float]
    """How many spreads below the centre lie below the usual, and above it above."""
    agreeing: NotRequired[float]
    """How many markers must agree."""


# Which number of a day comes first.
DayOrder: TypeAlias = Union[Literal['day_first', 'month_first']]

# The day's questions before training.
DayReport = TypedDict("DayReport", {"class": "NotRequired[DayClass]", "pain": "NotRequired[list[PainAnswer]]", "asks": "NotRequired[list[Ask]]", "soreness": "NotRequired[Pain]", "minutes": "NotRequired[float]", "markers": "NotRequired[list[MarkerAnswer]]"})

# The day's questions before training.
DayReportInput = TypedDict("DayReportInput", {"class": "NotRequired[DayClass]", "pain": "NotRequired[Sequence[PainAnswer]]", "asks": "NotRequired[Sequence[Ask]]", "soreness": "NotRequired[Pain]", "minutes": "NotRequired[float]", "markers": "NotRequired[Sequence[MarkerAnswerInput]]"})

# Today's class with everything that made it.
DayVerdict = TypedDict("DayVerdict", {"class": "DayClass", "advice": "DayAdvice", "votes": "list[MarkerVote]", "technique_decided": "bool", "usable": "float", "asked": "float", "false_alarms": "FalseAlarms"})

class DaysRange(TypedDict):
    """From how many days to how many."""
    low: float
    """The fewest days."""
    high: float
    """The most days."""


class DaysWithInterval(TypedDict):
    """A fitted number with its bootstrap interval."""
    days: float
    """Days."""
    interval: Interval
    """Interval in days."""


class Deadline_gain_fields(TypedDict):
    """It can be gained in time."""
    complete: Age
    """Age at which the gain is complete if it starts today and nothing is lost meanwhile."""
    complete_year: float
    """Calendar year of that age."""
    latest_start: Age
    """Latest age to begin, if nothing is done before and the years take their part."""
    latest_start_year: float
    """Calendar year of that age."""


Deadline_gain = TypedDict("Deadline_gain", {"gain": "Deadline_gain_fields"})

# When to gain what is missing, along one curve.
Deadline: TypeAlias = Union[Literal['covered', 'not_by_then'], "Deadline_gain"]

class Deadlines(TypedDict):
    """Deadlines along the fastest, the middle and the slowest fall of the model."""
    fastest_fall: Deadline
    """If strength falls as fast as the model allows: the careful reading."""
    middle: NotRequired[Deadline]
    """Along the middle curve, where the model has one."""
    slowest_fall: Deadline
    """If it falls as slowly as the model allows."""


class Decision(TypedDict):
    """The decision for one lift on one day."""
    stops: list[Reason]
    """Every stop of the lifter, the gravest first, whatever lift it is of; empty where nothing is stopped. Shown before anything
    else.
    """
    lift: Name
    """Id of the lift."""
    status: Status
    """Its state on that day."""
    grant: Grant
    """The granted place and work on that day."""
    limit: Mass
    """The highest load allowed on that day. Nothing later raises it."""
    outlook: MoveOutlook
    """Whether it may move up."""
    gate: GateState
    """What the gate has and what it misses."""
    reasons: list[Reason]
    """Why the grant is what it is."""
    evidence: list[float]
    """Numbers of the events that the gate counts."""
    expires: NotRequired[Day]
    """First day on which the offer is gone, where there is one."""
    version: str
    """Library version."""
    parameters: str
    """Digest of the parameters in force."""


# Which standard deviation.
Deviation: TypeAlias = Union[Literal['population', 'sample']]

# The training machine that a cubic of the 2024 study belongs to.
Device: TypeAlias = Union[Literal['lat_pull', 'triceps_dip', 'trunk_flexion', 'leg_extension']]

class DiarySetInput(TypedDict):
    """A work set as it stands in a diary."""
    day: Day
    """Day."""
    lift: str
    """Name of the lift; a strict and a forgiving variant have names of their own."""
    regions: NotRequired[Sequence[str]]
    """Regions it loads; variants that share a region add up there."""
    load: MassInput
    """What was lifted."""
    reps: Reps
    """Repetitions of each set."""
    sets: NotRequired[float]
    """How many such sets; 1 where left out."""
    reserve: NotRequired[Rir]
    """Repetitions left in reserve, where rated."""


# The one thing that may move at a time.
Dimension: TypeAlias = Union[Literal['variant', 'range', 'tempo', 'sets', 'reps', 'load']]

class Disc(TypedDict):
    """Discs of one kind: what is printed on them, what is known beyond that, and how many there are.

    Written and read with its face in the unit in which it is marked: `{ "lb": 5 }` stays that.
    """
    nominal: Face
    measured: NotRequired[Mass]
    diameter: NotRequired[Length]
    thickness: NotRequired[Length]
    count: float


class DiscChange(TypedDict):
    """A load, and how the ends get there from what is on them."""
    loaded: Loaded
    """The load."""
    off: list[PlacedDisc]
    """Discs that come off each end, the outermost first."""
    on: list[PlacedDisc]
    """Discs that go on each end, the innermost first."""
    proved: bool
    """Whether the search ended by itself; if not (only with very many kinds that are nearly alike), fewer
    changes may be possible. Load and number of discs are the best there is in any case.
    """


class DiscInput(TypedDict):
    """Discs of one kind: what is printed on them, what is known beyond that, and how many there are.

    Written and read with its face in the unit in which it is marked: `{ "lb": 5 }` stays that.
    """
    nominal: MassInput
    measured: NotRequired[MassInput]
    diameter: NotRequired[Length]
    thickness: NotRequired[Length]
    count: float


# A run of days in numbers.
DoseSummary = TypedDict("DoseSummary", {"from": "Day", "to": "Day", "training_days": "float", "sets": "float", "repetitions": "float", "volume_load": "Kilograms", "lifts": "list[PartSummary]", "regions": "list[PartSummary]", "effort": "EffortZones"})

class DriftAlarm(TypedDict):
    """An alarm."""
    day: Day
    """When it rang."""
    kind: DriftKind
    """Which alarm."""
    side: Side
    """Whether the values ran high or low."""
    since: Day
    """First day of the sessions that made it ring."""


# Which alarm rang.
DriftKind: TypeAlias = Union[Literal['slow', 'sudden']]

class DriftOptions(TypedDict):
    """How the alarms are set."""
    sessions_between_false_alarms: float
    """Sessions between false alarms, both alarms together."""
    weight: float
    """Weight of the newest session in the slow alarm."""
    reference: float
    """Slack of the sudden alarm, in standard deviations: half the drop to find."""


class DriftOptionsInput(TypedDict):
    """How the alarms are set."""
    sessions_between_false_alarms: NotRequired[float]
    """Sessions between false alarms, both alarms together."""
    weight: NotRequired[float]
    """Weight of the newest session in the slow alarm."""
    reference: NotRequired[float]
    """Slack of the sudden alarm, in standard deviations: half the drop to find."""


class DriftReport(TypedDict):
    """The alarms and how they were set."""
    alarms: list[DriftAlarm]
    """Alarms in order; after one, its sum starts anew."""
    threshold: float
    """Threshold of the sudden alarm, in standard deviations."""
    limit: float
    """Limit of the slow alarm's weighted mean, in standard deviations of one session."""
    sessions_to_see_sudden: float
    """Sessions that the sudden alarm takes on average to see a shift of one standard deviation."""
    sessions_to_see_slow: float
    """Sessions that the slow alarm takes on average to see a lasting shift of half a standard deviation."""


class EasyLift(TypedDict):
    """One lift of an easy week."""
    lift: Name
    """Id of the lift."""
    place: Place
    """Where it would be done."""
    sets: float
    """Work sets."""
    usual_sets: float
    """Work sets without the easy week."""
    reps: float
    """Repetitions a set."""
    load: NotRequired[Mass]
    """Load; absent where nothing is lifted."""
    reserve: Rir
    """Repetitions to leave in reserve."""


class EasyWeek(TypedDict):
    """Where the next easy week stands."""
    stops: list[Reason]
    """Every stop of the lifter, whatever is asked about; empty where nothing is stopped. Shown before anything else."""
    today: Day
    """The day it was made for."""
    status: NotRequired[EasyWeekStatus]
    """Where it stands; absent where the log holds no session."""
    last: NotRequired[Day]
    """First day of the last week that was easy, planned or made by life."""
    practice: EasyWeekRange
    """What coaches report of length and spacing."""
    would_be: list[EasyLift]
    """What it would be for the lifts of the plan; empty without one, and while a stop is in force."""
    missing: list[Lacking]
    """What nobody wrote down."""
    sources: list[str]
    """Rows of the registry that the numbers come from."""
    cautions: list[Caution]
    """What to show beside it."""


class EasyWeekOptions(TypedDict):
    """When a week counts as easy, and after how many others the next may be thought of."""
    every_weeks: float
    """Weeks from one easy week to the next: 6, the upper end that coaches report."""
    easy_share: float
    """A week at or below this share of the median trained week was easy: 0.7 (our choice)."""


class EasyWeekPractice(TypedDict):
    """Length and spacing of easy weeks as reported."""
    days: MeanAndDeviation
    """Length in days."""
    every_weeks: MeanAndDeviation
    """Weeks from one to the next."""


class EasyWeekRange(TypedDict):
    """Length and spacing of easy weeks as a range."""
    days_low: float
    """Fewest days."""
    days_high: float
    """Most days."""
    every_weeks_low: float
    """Fewest weeks from one to the next."""
    every_weeks_high: float
    """Most weeks from one to the next."""


class EasyWeekStatus_not_yet_fields(TypedDict):
    """The last easy week, planned or made by life, was so many weeks ago; nothing to add."""
    weeks_since: float
    """Full weeks since."""


EasyWeekStatus_not_yet = TypedDict("EasyWeekStatus_not_yet", {"not_yet": "EasyWeekStatus_not_yet_fields"})

class EasyWeekStatus_planned_absence_counts_fields(TypedDict):
    """An absence already planned will do; put no other on top."""
    in_weeks: float
    """Weeks until it."""


EasyWeekStatus_planned_absence_counts = TypedDict("EasyWeekStatus_planned_absence_counts", {"planned_absence_counts": "EasyWeekStatus_planned_absence_counts_fields"})

class EasyWeekStatus_consider_fields(TypedDict):
    """It may be thought of."""
    weeks_since: float
    """Full weeks since the last, or on record."""


EasyWeekStatus_consider = TypedDict("EasyWeekStatus_consider", {"consider": "EasyWeekStatus_consider_fields"})

# Where the next easy week stands. Never an order: the coach decides.
EasyWeekStatus: TypeAlias = Union[Literal['unknown'], "EasyWeekStatus_not_yet", "EasyWeekStatus_planned_absence_counts", "EasyWeekStatus_consider"]

Effort_rir = TypedDict("Effort_rir", {"rir": "Rir"})

Effort_rpe = TypedDict("Effort_rpe", {"rpe": "Rpe"})

# How hard a set was, in one of the two ways people say it. The two run opposite ways and are never mixed.
Effort: TypeAlias = Union["Effort_rir", "Effort_rpe"]

class EffortZones(TypedDict):
    """Sets by how near their end they came. Edges are our choice."""
    below_2_left: float
    """Fewer than 2 repetitions left."""
    from_2_left: float
    """From 2 to fewer than 4 left."""
    from_4_left: float
    """From 4 to 6 left."""
    above_6_left: float
    """More than 6 left."""
    not_rated: float
    """Nobody rated it; not the same as easy."""


# An end of the bar.
End: TypeAlias = Union[Literal['left', 'right']]

class EndMoves(TypedDict):
    """What happens on each end on the way to one load of a row."""
    total: Mass
    """The whole load afterwards."""
    difference: Mass
    """The load made less the load wanted."""
    off: list[PlacedDisc]
    """Discs that come off each end, the outermost first."""
    on: list[PlacedDisc]
    """Discs that go on each end, the innermost first."""
    side: list[PlacedDisc]
    """The discs on each end afterwards, from the inside out."""


# What the two ends of a line are.
Ends: TypeAlias = Union[Literal['unprinted', 'range', 'confidence95', 'standard_error', 'standard_deviation']]

# A published relation between load, repetitions to failure and the one-repetition maximum.
Equation: TypeAlias = Union[Literal['epley_1985', 'brzycki_1993', 'brzycki_1993_decimal', 'lander_1985', 'lombardi_1989', 'mayhew_1992', 'oconner_1989', 'wathan_1994', 'brown_1992', 'adams_1998', 'berger_1961', 'cummings_finn_1998', 'kemmler_2006', 'osteopenia_2024_lat_pull', 'osteopenia_2024_triceps_dip', 'osteopenia_2024_trunk_flexion', 'osteopenia_2024_leg_extension', 'reynolds_2006_chest_press', 'reynolds_2006_leg_press', 'percent_chart', 'textbook_chart']]

class EquationDoubt_outside_measured_fields(TypedDict):
    """Not measured at this many repetitions."""
    low: float
    """Fewest repetitions measured, or spoken of by the author."""
    high: float
    """Most."""


EquationDoubt_outside_measured = TypedDict("EquationDoubt_outside_measured", {"outside_measured": "EquationDoubt_outside_measured_fields"})

class EquationDoubt_runs_away_fields(TypedDict):
    """Too steep here: the maximum lies below the number. Others said too much by so many percent."""
    low: float
    """At 16 repetitions, in squats."""
    high: float
    """At 20 repetitions, on a leg press."""


EquationDoubt_runs_away = TypedDict("EquationDoubt_runs_away", {"runs_away": "EquationDoubt_runs_away_fields"})

class EquationDoubt_reads_low_for_newcomers_fields(TypedDict):
    """Of people new to a lift it says too little, by so many percent; a later rise is partly not strength."""
    low: float
    """The nearest of the usual equations."""
    high: float
    """The furthest."""


EquationDoubt_reads_low_for_newcomers = TypedDict("EquationDoubt_reads_low_for_newcomers", {"reads_low_for_newcomers": "EquationDoubt_reads_low_for_newcomers_fields"})

# Why a number of an equation should not be taken as it stands.
EquationDoubt: TypeAlias = Union["EquationDoubt_outside_measured", "EquationDoubt_runs_away", "EquationDoubt_reads_low_for_newcomers"]

class EquationEstimate(TypedDict):
    """What one equation alone would have said."""
    equation: Equation
    """The equation."""
    value: NotRequired[Kilograms]
    """Its estimate from the sets at which it is defined, weighted as the whole is; absent where there is none."""
    outside_measured: list[float]
    """Used sets, by position, whose repetitions to failure the equation was not measured at."""


# What a powerlifter wears.
Equipment: TypeAlias = Union[Literal['classic', 'equipped']]

class Estimate(TypedDict):
    """An estimate of the usual one-repetition maximum."""
    value: Kilograms
    """The estimate."""
    interval: Interval
    """Where the usual maximum lies, in kg. Its upper end counts in full what people leave without saying so."""
    left_unsaid: float
    """By which part of the maximum that moves the upper end: 0 where nothing was called, or the bias covers it."""
    parts: WidthParts
    """Where the width comes from."""
    by_equation: list[EquationEstimate]
    """Every chosen equation on its own."""
    sets: list[SetUse]
    """What became of every set, in the order given."""
    cautions: list[Caution]
    """What to show beside it."""


class EstimateOptions(TypedDict):
    """Choices of the estimate. Every default is a parameter."""
    equations: list[Equation]
    """Equations that speak; the value is their geometric mean, their spread is part of the width."""
    bias: ReserveBias
    """Added to every reported reserve."""
    level: float
    """Probability the interval aims at."""
    usual_reps: Reps
    """Sets above this many repetitions are flagged."""
    highest_reps: Reps
    """Sets of more than this many repetitions to failure, done and called, are refused."""
    highest_reserve: Rir
    """Sets that may have had more than this left are refused."""
    day_to_day_cv: float
    """Day-to-day coefficient of variation of the maximum."""
    personal_slope_cv: float
    """Coefficient of variation of the slope between people."""
    habit_spread: float
    """How far one lifter's own habit of calling may lie from the average: standard deviation, in repetitions."""
    new_to_lift: bool
    """Whether the lifter is in the first months of this lift: slope and calls are then far less sure."""
    accept_unscored: bool
    """Whether sets that nobody scored are used, with a flag."""
    single_is_maximum: bool
    """Whether a single repetition with nothing left is the maximum, whatever the equations say."""


class EstimateOptionsInput(TypedDict):
    """Choices of the estimate. Every default is a parameter."""
    equations: NotRequired[Sequence[Equation]]
    """Equations that speak; the value is their geometric mean, their spread is part of the width."""
    bias: NotRequired[ReserveBias]
    """Added to every reported reserve."""
    level: NotRequired[float]
    """Probability the interval aims at."""
    usual_reps: NotRequired[Reps]
    """Sets above this many repetitions are flagged."""
    highest_reps: NotRequired[Reps]
    """Sets of more than this many repetitions to failure, done and called, are refused."""
    highest_reserve: NotRequired[Rir]
    """Sets that may have had more than this left are refused."""
    day_to_day_cv: NotRequired[float]
    """Day-to-day coefficient of variation of the maximum."""
    personal_slope_cv: NotRequired[float]
    """Coefficient of variation of the slope between people."""
    habit_spread: NotRequired[float]
    """How far one lifter's own habit of calling may lie from the average: standard deviation, in repetitions."""
    new_to_lift: NotRequired[bool]
    """Whether the lifter is in the first months of this lift: slope and calls are then far less sure."""
    accept_unscored: NotRequired[bool]
    """Whether sets that nobody scored are used, with a flag."""
    single_is_maximum: NotRequired[bool]
    """Whether a single repetition with nothing left is the maximum, whatever the equations say."""


# By what the sets were turned into estimates.
EstimatedBy: TypeAlias = Union[Literal['equations', 'own_curve']]

class Event(TypedDict):
    """One event of a log."""
    sequence: float
    """Number of the event, in the order in which events are told; orders events of one day and never repeats. What a word
    lifts or closes (a clearance, a sign-off, an answer) was told before it, under a lower number.
    """
    day: Day
    """The day in the lifter's own calendar."""
    kind: EventKind
    """What happened."""
    note: NotRequired[str]
    """The host's own words, never interpreted."""


class EventInput(TypedDict):
    """One event of a log."""
    sequence: float
    """Number of the event, in the order in which events are told; orders events of one day and never repeats. What a word
    lifts or closes (a clearance, a sign-off, an answer) was told before it, under a lower number.
    """
    day: Day
    """The day in the lifter's own calendar."""
    kind: EventKindInput
    """What happened."""
    note: NotRequired[str]
    """The host's own words, never interpreted."""


EventKind_session_recorded = TypedDict("EventKind_session_recorded", {"session_recorded": "Session"})

EventKind_next_day_report = TypedDict("EventKind_next_day_report", {"next_day_report": "NextDayReport"})

EventKind_session_missed = TypedDict("EventKind_session_missed", {"session_missed": "SessionMissed"})

EventKind_layoff_noted = TypedDict("EventKind_layoff_noted", {"layoff_noted": "Layoff"})

EventKind_pain_report = TypedDict("EventKind_pain_report", {"pain_report": "PainAnswer"})

EventKind_usual_pain_agreed = TypedDict("EventKind_usual_pain_agreed", {"usual_pain_agreed": "UsualPain"})

EventKind_symptom_report = TypedDict("EventKind_symptom_report", {"symptom_report": "SymptomReport"})

EventKind_day_report = TypedDict("EventKind_day_report", {"day_report": "DayReport"})

EventKind_ask_answered = TypedDict("EventKind_ask_answered", {"ask_answered": "AskAnswered"})

EventKind_coach_sign_off = TypedDict("EventKind_coach_sign_off", {"coach_sign_off": "SignOff"})

EventKind_coach_override = TypedDict("EventKind_coach_override", {"coach_override": "Override"})

EventKind_advance_accepted = TypedDict("EventKind_advance_accepted", {"advance_accepted": "Advance"})

EventKind_advance_declined = TypedDict("EventKind_advance_declined", {"advance_declined": "Advance"})

EventKind_variant_changed = TypedDict("EventKind_variant_changed", {"variant_changed": "Move"})

EventKind_range_changed = TypedDict("EventKind_range_changed", {"range_changed": "Move"})

EventKind_bar_or_discs_changed = TypedDict("EventKind_bar_or_discs_changed", {"bar_or_discs_changed": "BarChanged"})

EventKind_rater_changed = TypedDict("EventKind_rater_changed", {"rater_changed": "BarChanged"})

EventKind_body_mass_recorded = TypedDict("EventKind_body_mass_recorded", {"body_mass_recorded": "Mass"})

EventKind_clearance_recorded = TypedDict("EventKind_clearance_recorded", {"clearance_recorded": "Clearance"})

EventKind_clearance_expired = TypedDict("EventKind_clearance_expired", {"clearance_expired": "Name"})

EventKind_parameters_changed = TypedDict("EventKind_parameters_changed", {"parameters_changed": "RecordParameters"})

EventKind_correction = TypedDict("EventKind_correction", {"correction": "Correction"})

EventKind_block_started = TypedDict("EventKind_block_started", {"block_started": "Name"})

EventKind_block_ended = TypedDict("EventKind_block_ended", {"block_ended": "Name"})

EventKind_role_set = TypedDict("EventKind_role_set", {"role_set": "RoleSet"})

EventKind_function_tested = TypedDict("EventKind_function_tested", {"function_tested": "Measurement"})

# What happened.
EventKind: TypeAlias = Union["EventKind_session_recorded", "EventKind_next_day_report", "EventKind_session_missed", "EventKind_layoff_noted", "EventKind_pain_report", "EventKind_usual_pain_agreed", "EventKind_symptom_report", "EventKind_day_report", "EventKind_ask_answered", "EventKind_coach_sign_off", "EventKind_coach_override", "EventKind_advance_accepted", "EventKind_advance_declined", "EventKind_variant_changed", "EventKind_range_changed", "EventKind_bar_or_discs_changed", "EventKind_rater_changed", "EventKind_body_mass_recorded", "EventKind_clearance_recorded", "EventKind_clearance_expired", "EventKind_parameters_changed", "EventKind_correction", "EventKind_block_started", "EventKind_block_ended", "EventKind_role_set", "EventKind_function_tested"]

EventKindInput_session_recorded = TypedDict("EventKindInput_session_recorded", {"session_recorded": "SessionInput"})

EventKindInput_next_day_report = TypedDict("EventKindInput_next_day_report", {"next_day_report": "NextDayReport"})

EventKindInput_session_missed = TypedDict("EventKindInput_session_missed", {"session_missed": "SessionMissed"})

EventKindInput_layoff_noted = TypedDict("EventKindInput_layoff_noted", {"layoff_noted": "Layoff"})

EventKindInput_pain_report = TypedDict("EventKindInput_pain_report", {"pain_report": "PainAnswer"})

EventKindInput_usual_pain_agreed = TypedDict("EventKindInput_usual_pain_agreed", {"usual_pain_agreed": "UsualPain"})

EventKindInput_symptom_report = TypedDict("EventKindInput_symptom_report", {"symptom_report": "SymptomReport"})

EventKindInput_day_report = TypedDict("EventKindInput_day_report", {"day_report": "DayReportInput"})

EventKindInput_ask_answered = TypedDict("EventKindInput_ask_answered", {"ask_answered": "AskAnswered"})

EventKindInput_coach_sign_off = TypedDict("EventKindInput_coach_sign_off", {"coach_sign_off": "SignOff"})

EventKindInput_coach_override = TypedDict("EventKindInput_coach_override", {"coach_override": "OverrideInput"})

EventKindInput_advance_accepted = TypedDict("EventKindInput_advance_accepted", {"advance_accepted": "Advance"})

EventKindInput_advance_declined = TypedDict("EventKindInput_advance_declined", {"advance_declined": "Advance"})

EventKindInput_variant_changed = TypedDict("EventKindInput_variant_changed", {"variant_changed": "MoveInput"})

EventKindInput_range_changed = TypedDict("EventKindInput_range_changed", {"range_changed": "MoveInput"})

EventKindInput_bar_or_discs_changed = TypedDict("EventKindInput_bar_or_discs_changed", {"bar_or_discs_changed": "BarChanged"})

EventKindInput_rater_changed = TypedDict("EventKindInput_rater_changed", {"rater_changed": "BarChanged"})

EventKindInput_body_mass_recorded = TypedDict("EventKindInput_body_mass_recorded", {"body_mass_recorded": "MassInput"})

EventKindInput_clearance_recorded = TypedDict("EventKindInput_clearance_recorded", {"clearance_recorded": "ClearanceInput"})

EventKindInput_clearance_expired = TypedDict("EventKindInput_clearance_expired", {"clearance_expired": "Name"})

EventKindInput_parameters_changed = TypedDict("EventKindInput_parameters_changed", {"parameters_changed": "RecordParametersInput"})

EventKindInput_correction = TypedDict("EventKindInput_correction", {"correction": "CorrectionInput"})

EventKindInput_block_started = TypedDict("EventKindInput_block_started", {"block_started": "Name"})

EventKindInput_block_ended = TypedDict("EventKindInput_block_ended", {"block_ended": "Name"})

EventKindInput_role_set = TypedDict("EventKindInput_role_set", {"role_set": "RoleSetInput"})

EventKindInput_function_tested = TypedDict("EventKindInput_function_tested", {"function_tested": "Measurement"})

# What happened.
EventKindInput: TypeAlias = Union["EventKindInput_session_recorded", "EventKindInput_next_day_report", "EventKindInput_session_missed", "EventKindInput_layoff_noted", "EventKindInput_pain_report", "EventKindInput_usual_pain_agreed", "EventKindInput_symptom_report", "EventKindInput_day_report", "EventKindInput_ask_answered", "EventKindInput_coach_sign_off", "EventKindInput_coach_override", "EventKindInput_advance_accepted", "EventKindInput_advance_declined", "EventKindInput_variant_changed", "EventKindInput_range_changed", "EventKindInput_bar_or_discs_changed", "EventKindInput_rater_changed", "EventKindInput_body_mass_recorded", "EventKindInput_clearance_recorded", "EventKindInput_clearance_expired", "EventKindInput_parameters_changed", "EventKindInput_correction", "EventKindInput_block_started", "EventKindInput_block_ended", "EventKindInput_role_set", "EventKindInput_function_tested"]

class EverydayTask(TypedDict):
    """An everyday task stated as a load."""
    task: str
    """A key for the task."""
    load: Mass
    """What has to be moved."""
    population: str
    """Where the figure comes from."""
    cautions: list[Caution]
    """What to show beside it."""


# Tests of everyday function.
EverydayTest: TypeAlias = Union[Literal['chair_rise_seconds', 'chair_rise_count', 'gait_speed', 'grip', 'floor_rise']]

class Evidence(TypedDict):
    """A test of the rate of acceptable repetitions, turned into whole counts when it is built.

    It is looked at after each session. All scored repetitions count; of a session that lost a critical
    criterion, was not fully scored, or failed on a confirmed day below the usual, only the misses do. It opens when misses
    are few enough, with at least so many passing days, the last scored one among them. Evidence against ends the
    test, as does its last repetition: then it must be started again by leaving the earlier sessions out, on
    an easier tuple or because the coach says so.
    """
    rule: EvidenceRule
    most_reps: float
    days: float


# Where an estimate comes from.
EvidenceKind: TypeAlias = Union[Literal['reps_and_effort', 'velocity', 'test']]

class EvidenceRule_sequential_fields(TypedDict):
    """A sequential probability ratio test between two rates of acceptable repetitions."""
    poor: float
    """Rate that is not good enough."""
    good: float
    """Rate that is good enough."""
    false_open: float
    """Chance, before truncation, that the gate opens at the poor rate."""
    false_shut: float
    """Chance, before truncation, that it stays shut at the good rate."""


EvidenceRule_sequential = TypedDict("EvidenceRule_sequential", {"sequential": "EvidenceRule_sequential_fields"})

class EvidenceRule_posterior_fields(TypedDict):
    """The probability that the rate of acceptable repetitions is at least `rate`, after a Beta prior."""
    rate: float
    """Rate wanted."""
    level: float
    """Probability wanted."""
    prior_acceptable: float
    """Acceptable repetitions that the prior is worth (1 and 1 for a uniform one)."""
    prior_missed: float
    """Missed repetitions that the prior is worth."""


EvidenceRule_posterior = TypedDict("EvidenceRule_posterior", {"posterior": "EvidenceRule_posterior_fields"})

# What is asked of the repetitions.
EvidenceRule: TypeAlias = Union["EvidenceRule_sequential", "EvidenceRule_posterior"]

class EwmaChart(TypedDict):
    """The chart with its limits far from the start."""
    points: list[EwmaPoint]
    """One point a value."""
    low: float
    """Lower limit in the long run."""
    high: float
    """Upper limit in the long run."""


class EwmaPoint(TypedDict):
    """One point of the chart."""
    value: float
    """The weighted mean."""
    low: float
    """Lower limit at this point."""
    high: float
    """Upper limit at this point."""
    signal: bool
    """Whether it lies outside."""


# Where a strength lies against the band that was expected.
ExpectationPlace: TypeAlias = Union[Literal['below', 'within', 'above']]

class ExpectedEffort(TypedDict):
    """How hard a set should feel."""
    rir: float
    """Repetitions in reserve, not rounded."""
    rpe: NotRequired[Rpe]
    """The rating, where the scale names one: reserve 0 to 3 rounded to whole repetitions."""


Face_kg = TypedDict("Face_kg", {"kg": "float"})

Face_lb = TypedDict("Face_lb", {"lb": "float"})

# The face value of a disc: answered in the unit in which the disc is marked.
Face: TypeAlias = Union["Face_kg", "Face_lb"]

Fading_span = TypedDict("Fading_span", {"span": "float"})

Fading_time_constant = TypedDict("Fading_time_constant", {"time_constant": "float"})

# How fast a weighted mean forgets.
Fading: TypeAlias = Union["Fading_span", "Fading_time_constant"]

class FailingRep(TypedDict):
    """A repetition that was not acceptable."""
    set: float
    """Work set, 1 being the first."""
    rep: float
    """Repetition, 1 being the first of the set."""


class FalseAlarms(TypedDict):
    """Chances that an ordinary day is called one below the usual."""
    by_marker: list[float]
    """Of each marker alone, in the order given."""
    any: float
    """That at least one marker says so."""
    agreeing: float
    """That enough markers say so to agree."""


class Finding(TypedDict):
    """One finding."""
    severity: Severity
    """How much it matters."""
    lift: NotRequired[Name]
    """Id of the lift it is about; absent where it is about the whole."""
    what: Found
    """What was found, with its numbers."""


class FirstLiftInput(TypedDict):
    """A lift to begin with, what it is done with, and its first load."""
    lift: str
    """One of `first_lifts`(crate::prescription::first_lifts())."""
    implement: Name
    """Id of the implement."""
    load: MassInput
    """The first load: one of `first_bars`(crate::prescription::first_bars) says which."""


FitAnswer_fitted = TypedDict("FitAnswer_fitted", {"fitted": "ResponseFit"})

FitAnswer_refused = TypedDict("FitAnswer_refused", {"refused": "list[RefusalReason]"})

# A fit, or why there is none.
FitAnswer: TypeAlias = Union["FitAnswer_fitted", "FitAnswer_refused"]

class FitOptionsInput(TypedDict):
    """How a response is fitted, and when the fit is refused."""
    form: ResponseForm
    """Whether performance was measured before or after the day's session."""
    start: InitialState
    """What the lifter brought to the first day."""
    fitness_days: DaysRange
    """Where the time constant of fitness is looked for."""
    fatigue_days: DaysRange
    """Where the time constant of fatigue is looked for."""
    starts: NotRequired[Sequence[TimeConstants]]
    """Time constants to start from; a grid over the ranges where none are given."""
    level: float
    """Level of the prediction intervals."""
    fewest_measurements: float
    """Refused with fewer measurements."""
    largest_relative_error: float
    """Refused where a standard error is larger than this share of a gain or time constant."""
    largest_p_value: float
    """Refused where one component fits as well: largest p value of the second."""
    largest_correlation: float
    """Refused where two parameters go together more than this."""


class Floor(TypedDict):
    """A published figure below which (above which, for times) everyday life was found to get hard."""
    test: FunctionTest
    """What is tested."""
    value: Band
    """The floor: one figure, or a range where the source gives a range or sex is not known."""
    unit: str
    """Unit of the figure."""
    better: Better
    """Which way a result is better."""
    met_on_the_figure: bool
    """Whether a result exactly on the figure is on the good side."""
    source: str
    """Short name of the work."""
    population: str
    """Who was measured."""
    cautions: list[Caution]
    """What to show beside it."""


class FloorCrossing(TypedDict):
    """The years in which a floor is met, as a band."""
    earliest: Crossing
    """Along the fastest fall of the model."""
    middle: NotRequired[Crossing]
    """Along the middle one, where the model has one."""
    latest: Crossing
    """Along the slowest."""
    model: str
    """The model."""
    population: str
    """Who the model describes."""
    cautions: list[Caution]
    """What to show beside it."""


class FloorMargin(TypedDict):
    """How far a result lies above a floor."""
    place: FloorPlace
    """Where the result lies."""
    margin: Band
    """Distance in the unit of the test, positive on the good side."""
    ratio: Band
    """Result over floor (floor over result for times): above 1 on the good side."""
    population: str
    """Who the floor was measured in."""
    cautions: list[Caution]
    """What to show beside it."""


# Where a result lies against a floor.
FloorPlace: TypeAlias = Union[Literal['below', 'between', 'above']]

class FloorPlan(TypedDict):
    """What one dated floor asks of today."""
    name: Name
    """The floor's name."""
    at: Age
    """Until what age."""
    year: float
    """Calendar year of that age."""
    needed_now: Band
    """What would have to be there today for the floor to be left at that age."""
    ratio: Band
    """What is there over what is needed: above 1 is a margin."""
    place: FloorPlace
    """Above or below the whole band of what is needed, or between."""
    crossing: FloorCrossing
    """In which year the floor would be met if nothing but the years worked."""
    deadlines: NotRequired[Deadlines]
    """By when a gain must have been made, where a rate of gain is given."""
    model: str
    """The model."""
    population: str
    """Who the model describes."""
    cautions: list[Caution]
    """What to show beside it."""


class Found_parameters_refused_fields(TypedDict):
    """The parameters would be refused when they are recorded."""
    error: str
    """Code of the error."""
    field: str
    """Path to the field."""


Found_parameters_refused = TypedDict("Found_parameters_refused", {"parameters_refused": "Found_parameters_refused_fields"})

class Found_unknown_implement_fields(TypedDict):
    """The equipment has no such implement."""
    implement: Name
    """Its id."""


Found_unknown_implement = TypedDict("Found_unknown_implement", {"unknown_implement": "Found_unknown_implement_fields"})

class Found_unknown_pair_lift_fields(TypedDict):
    """A pair names a lift that there is not."""
    lift: Name
    """Its id."""


Found_unknown_pair_lift = TypedDict("Found_unknown_pair_lift", {"unknown_pair_lift": "Found_unknown_pair_lift_fields"})

class Found_too_many_critical_fields(TypedDict):
    """More criteria are critical than one lift may have, so no session of it can be recorded."""
    count: float
    """Critical criteria."""
    most: float
    """Most there may be."""


Found_too_many_critical = TypedDict("Found_too_many_critical", {"too_many_critical": "Found_too_many_critical_fields"})

class Found_gate_never_opens_fields(TypedDict):
    """The gate asks for more scored repetitions than a session of this lift has."""
    asks: float
    """Scored repetitions that it asks of a session."""
    session: float
    """Repetitions of a session."""


Found_gate_never_opens = TypedDict("Found_gate_never_opens", {"gate_never_opens": "Found_gate_never_opens_fields"})

class Found_gate_too_long_fields(TypedDict):
    """Even a lifter who misses nothing needs many sessions to open the gate."""
    sessions: float
    """Sessions without a miss."""
    long_from: float
    """Number from which that is called long."""


Found_gate_too_long = TypedDict("Found_gate_too_long", {"gate_too_long": "Found_gate_too_long_fields"})

class Found_gate_opens_for_anyone_fields(TypedDict):
    """A lifter of low skill would soon open the gate."""
    rate: float
    """Chance that a repetition of such a lifter is acceptable."""
    sessions: float
    """Sessions looked at."""
    chance: float
    """Chance that the gate opens within them."""


Found_gate_opens_for_anyone = TypedDict("Found_gate_opens_for_anyone", {"gate_opens_for_anyone": "Found_gate_opens_for_anyone_fields"})

class Found_gate_rarely_opens_fields(TypedDict):
    """A lifter of high skill would hardly open the gate."""
    rate: float
    """Chance that a repetition of such a lifter is acceptable."""
    sessions: float
    """Sessions looked at."""
    chance: float
    """Chance that the gate opens within them."""


Found_gate_rarely_opens = TypedDict("Found_gate_rarely_opens", {"gate_rarely_opens": "Found_gate_rarely_opens_fields"})

class Found_reserve_below_gate_fields(TypedDict):
    """The plan leaves less in reserve than the gate's cap on effort asks for."""
    plan: Rir
    """Reserve of the plan."""
    asks: Rir
    """Reserve asked for."""


Found_reserve_below_gate = TypedDict("Found_reserve_below_gate", {"reserve_below_gate": "Found_reserve_below_gate_fields"})

class Found_start_not_loadable_fields(TypedDict):
    """The equipment does not make the start load at the height of the start, so that recording the parameters is
    refused.
    """
    load: Mass
    """Start load."""
    below: NotRequired[Mass]
    """Next lighter load that can be made."""
    above: NotRequired[Mass]
    """Next heavier one."""


Found_start_not_loadable = TypedDict("Found_start_not_loadable", {"start_not_loadable": "Found_start_not_loadable_fields"})

class Found_height_off_fields(TypedDict):
    """No disc that carries the bar, on blocks or not, holds its centre at a height of the lift."""
    height: Length
    """The height."""
    mm: float
    """How far off the nearest way lies, in millimetres; above is positive."""


Found_height_off = TypedDict("Found_height_off", {"height_off": "Found_height_off_fields"})

class Found_stuck_at_start_fields(TypedDict):
    """No step up can be loaded from the start."""
    load: Mass
    """Start load."""
    cap: Mass
    """Highest load that the step allows."""
    next: NotRequired[Mass]
    """Next load that the equipment makes."""
    discs: list[Mass]
    """Discs of which a pair would make a step."""


Found_stuck_at_start = TypedDict("Found_stuck_at_start", {"stuck_at_start": "Found_stuck_at_start_fields"})

class Found_stuck_later_fields(TypedDict):
    """From somewhere on the way up no further step can be loaded."""
    load: Mass
    """The load there."""
    cap: Mass
    """Highest load that the step allows."""
    next: NotRequired[Mass]
    """Next load that the equipment makes."""
    discs: list[Mass]
    """Discs of which a pair would make a step."""


Found_stuck_later = TypedDict("Found_stuck_later", {"stuck_later": "Found_stuck_later_fields"})

class Found_nothing_to_move_fields(TypedDict):
    """The moving dimension is at its top already."""
    moving: Dimension
    """Which one."""


Found_nothing_to_move = TypedDict("Found_nothing_to_move", {"nothing_to_move": "Found_nothing_to_move_fields"})

class Found_ceiling_below_start_fields(TypedDict):
    """The ceiling lies below the start load, so no session is done at the granted place."""
    ceiling: Mass
    """Ceiling."""
    start: Mass
    """Start load."""


Found_ceiling_below_start = TypedDict("Found_ceiling_below_start", {"ceiling_below_start": "Found_ceiling_below_start_fields"})

class Found_step_above_cap_fields(TypedDict):
    """The wanted step is larger than its own cap and will be cut to it."""
    wanted: Mass
    """Load after the wanted step."""
    cap: Mass
    """Load after the largest step allowed."""


Found_step_above_cap = TypedDict("Found_step_above_cap", {"step_above_cap": "Found_step_above_cap_fields"})

class Found_window_below_step_fields(TypedDict):
    """A single step is more than the load may grow over the window of weeks."""
    load: Mass
    """Load before the step."""
    to: Mass
    """Load after it."""
    window: Mass
    """Highest load that the window allows."""


Found_window_below_step = TypedDict("Found_window_below_step", {"window_below_step": "Found_window_below_step_fields"})

class Found_region_shared_fields(TypedDict):
    """Several lifts that are no pair are set to move and share a region."""
    region: Name
    """Id of the region."""
    lifts: list[Name]
    """Ids of those lifts."""


Found_region_shared = TypedDict("Found_region_shared", {"region_shared": "Found_region_shared_fields"})

class Found_region_without_lift_fields(TypedDict):
    """No lift loads the region: a stop in it halts every lift."""
    region: Name
    """Id of the region."""


Found_region_without_lift = TypedDict("Found_region_without_lift", {"region_without_lift": "Found_region_without_lift_fields"})

class Found_pair_both_move_fields(TypedDict):
    """Both lifts of a pair are set to move; they take turns."""
    partner: Name
    """The other lift."""


Found_pair_both_move = TypedDict("Found_pair_both_move", {"pair_both_move": "Found_pair_both_move_fields"})

class Found_pair_start_above_cap_fields(TypedDict):
    """The strict lift starts above what the forgiving lift's start load allows."""
    start: Mass
    """Start load of the strict lift."""
    cap: Mass
    """Highest load that the pair allows."""


Found_pair_start_above_cap = TypedDict("Found_pair_start_above_cap", {"pair_start_above_cap": "Found_pair_start_above_cap_fields"})

class Found_plan_refused_fields(TypedDict):
    """The plan would be refused."""
    error: str
    """Code of the error."""
    field: str
    """Path to the field."""


Found_plan_refused = TypedDict("Found_plan_refused", {"plan_refused": "Found_plan_refused_fields"})

class Found_unavailable_unknown_fields(TypedDict):
    """The plan calls an implement missing that the equipment does not have anyway."""
    implement: Name
    """Its id."""


Found_unavailable_unknown = TypedDict("Found_unavailable_unknown", {"unavailable_unknown": "Found_unavailable_unknown_fields"})

class Found_plan_asks_more_fields(TypedDict):
    """The plan asks for more than is granted; it will get what is granted."""
    sets: float
    """Sets asked for."""
    reps: float
    """Repetitions asked for."""
    granted_sets: float
    """Sets granted."""
    granted_reps: float
    """Repetitions granted."""


Found_plan_asks_more = TypedDict("Found_plan_asks_more", {"plan_asks_more": "Found_plan_asks_more_fields"})

class Found_plan_never_passes_fields(TypedDict):
    """The plan asks for less than is granted, so no session of it counts as a pass."""
    sets: float
    """Sets asked for."""
    reps: float
    """Repetitions asked for."""
    granted_sets: float
    """Sets granted."""
    granted_reps: float
    """Repetitions granted."""


Found_plan_never_passes = TypedDict("Found_plan_never_passes", {"plan_never_passes": "Found_plan_never_passes_fields"})

class Found_reference_not_lighter_fields(TypedDict):
    """The reference set is not lighter than the start load."""
    reference: Mass
    """Load of the reference set."""
    start: Mass
    """Start load."""


Found_reference_not_lighter = TypedDict("Found_reference_not_lighter", {"reference_not_lighter": "Found_reference_not_lighter_fields"})

class Found_pair_in_one_session_fields(TypedDict):
    """Both lifts of a pair stand in one session."""
    forgiving: Name
    """The forgiving lift."""


Found_pair_in_one_session = TypedDict("Found_pair_in_one_session", {"pair_in_one_session": "Found_pair_in_one_session_fields"})

class Found_strict_after_heavy_fields(TypedDict):
    """The strict lift comes on the day after its heavier partner."""
    forgiving: Name
    """The forgiving lift."""


Found_strict_after_heavy = TypedDict("Found_strict_after_heavy", {"strict_after_heavy": "Found_strict_after_heavy_fields"})

class Found_pair_too_close_fields(TypedDict):
    """The lifts of a pair have too few full rest days between them."""
    partner: Name
    """The other lift."""
    days: float
    """Full rest days between them."""
    needed: float
    """Full rest days asked for."""


Found_pair_too_close = TypedDict("Found_pair_too_close", {"pair_too_close": "Found_pair_too_close_fields"})

class Found_stale_between_sessions_fields(TypedDict):
    """The lift comes back later than an open gate stays fresh, so no move can be taken on a training day."""
    gap: float
    """Longest gap between two sessions, in days."""
    allowed: float
    """Days allowed."""


Found_stale_between_sessions = TypedDict("Found_stale_between_sessions", {"stale_between_sessions": "Found_stale_between_sessions_fields"})

class Found_probe_before_session_fields(TypedDict):
    """A look at a lift that is kept, or at what was weak before a move, is due before the lift comes back."""
    gap: float
    """Longest gap between two sessions, in days."""
    due: float
    """Days after which the look is due."""


Found_probe_before_session = TypedDict("Found_probe_before_session", {"probe_before_session": "Found_probe_before_session_fields"})

class Found_clearance_below_start_fields(TypedDict):
    """The clearance allows less than the start load, so no session is done at the granted place."""
    limit: Mass
    """Load that the clearance allows."""
    start: Mass
    """Start load."""


Found_clearance_below_start = TypedDict("Found_clearance_below_start", {"clearance_below_start": "Found_clearance_below_start_fields"})

# What was found.
Found: TypeAlias = Union[Literal['no_critical_criterion', 'learning_none', 'gate_needs_no_technique', 'height_unknown', 'unknown_lift', 'not_planned', 'help_needs_body_mass', 'no_day', 'not_cleared'], "Found_parameters_refused", "Found_unknown_implement", "Found_unknown_pair_lift", "Found_too_many_critical", "Found_gate_never_opens", "Found_gate_too_long", "Found_gate_opens_for_anyone", "Found_gate_rarely_opens", "Found_reserve_below_gate", "Found_start_not_loadable", "Found_height_off", "Found_stuck_at_start", "Found_stuck_later", "Found_nothing_to_move", "Found_ceiling_below_start", "Found_step_above_cap", "Found_window_below_step", "Found_region_shared", "Found_region_without_lift", "Found_pair_both_move", "Found_pair_start_above_cap", "Found_plan_refused", "Found_unavailable_unknown", "Found_plan_asks_more", "Found_plan_never_passes", "Found_reference_not_lighter", "Found_pair_in_one_session", "Found_strict_after_heavy", "Found_pair_too_close", "Found_stale_between_sessions", "Found_probe_before_session", "Found_clearance_below_start"]

# Part of the one-repetition maximum: 0.8 is 80 %. Above 0 and at most 1.5.
Fraction: TypeAlias = float

class FractionBand(TypedDict):
    """Part of the maximum from `low` to `high`; both the same where the rating names one reserve."""
    low: Fraction
    """With the larger reserve."""
    high: Fraction
    """With the smaller reserve."""


# A test of strength or everyday function with published floors, or one worth repeating every year.
FunctionTest: TypeAlias = Union[Literal['grip', 'five_chair_rises', 'gait_speed', 'timed_up_and_go', 'short_performance_battery', 'walk_of_400_metres', 'chair_stands_in_30_seconds', 'arm_curls_in_30_seconds', 'six_minute_walk', 'two_minute_steps', 'eight_foot_up_and_go', 'limb_lean_mass_over_height_squared', 'limb_lean_mass_over_body_mass_index', 'knee_torque_over_body_mass', 'knee_torque_over_mass_per_height', 'peak_oxygen_uptake', 'floor_rise']]

# A stretch without a loadable total.
Gap = TypedDict("Gap", {"from": "Mass", "to": "Mass", "size": "Mass"})

Gate_pass_run = TypedDict("Gate_pass_run", {"pass_run": "PassRun"})

Gate_evidence = TypedDict("Gate_evidence", {"evidence": "Evidence"})

Gate_dwell_sessions = TypedDict("Gate_dwell_sessions", {"dwell_sessions": "float"})

Gate_dwell_days = TypedDict("Gate_dwell_days", {"dwell_days": "float"})

Gate_spacing = TypedDict("Gate_spacing", {"spacing": "float"})

Gate_all = TypedDict("Gate_all", {"all": "list[Requirement]"})

Gate_any = TypedDict("Gate_any", {"any": "list[Requirement]"})

class Gate_at_least_fields(TypedDict):
    """At least so many of these."""
    count: float
    """How many."""
    of: list[Requirement]
    """Of which."""


Gate_at_least = TypedDict("Gate_at_least", {"at_least": "Gate_at_least_fields"})

# A gate: what must have been shown before a step up may be taken.
#
# Built from a `Requirement` and checked once, so that a gate that is always open or can never open does
# not exist.
Gate: TypeAlias = Union[Literal['effort_cap', 'no_open_block', 'sign_off', 'pair', 'region'], "Gate_pass_run", "Gate_evidence", "Gate_dwell_sessions", "Gate_dwell_days", "Gate_spacing", "Gate_all", "Gate_any", "Gate_at_least"]

class GateFactsInput(TypedDict):
    """Everything a gate may look at, for one lift at one tuple of variant, range, tempo, sets, repetitions, load.

    The default is a lift of which nothing is known: no gate is open on it.
    """
    sessions: NotRequired[Sequence[SessionFact]]
    """Sessions at the present tuple, the earliest first."""
    dwell_sessions: NotRequired[float]
    """Sessions done at the present tuple."""
    dwell_days: NotRequired[float]
    """Days since the first session at the present tuple."""
    days_since_move: NotRequired[float]
    """Days since the last step up of this lift; absent if there was none."""
    open_blocks: NotRequired[Sequence[Name]]
    """Blocks that are open, such as pain in a region."""
    signed_off: NotRequired[bool]
    """Whether the coach has signed off."""
    pair: NotRequired[Sequence[NamedCondition]]
    """Conditions set by the other lift of a pair."""
    region: NotRequired[Sequence[NamedCondition]]
    """Conditions set by the regions of the lift."""
    effort_cap_met: NotRequired[bool]
    """Whether the qualifying sessions stayed under the effort cap; absent if effort was not recorded."""


class GateState(TypedDict):
    """The answer of a gate."""
    open: bool
    """Whether it is open."""
    met: list[Met]
    """What is met."""
    missing: list[Missing]
    """What is missing; empty if and only if the gate is open."""
    notes: NotRequired[list[Note]]
    """What else to know."""


class Grant(TypedDict):
    """What a lift is granted: this work at this place. A pass belongs to both."""
    place: Place
    """Where."""
    work: Work
    """How much."""


class GrantInput(TypedDict):
    """What a lift is granted: this work at this place. A pass belongs to both."""
    place: NotRequired[PlaceInput]
    """Where."""
    work: WorkInput
    """How much."""


class GrantStep(TypedDict):
    """Where a lift stood after an event that moved it, or in which it was trained: as the log up to that event had it."""
    event: float
    """Number of the event."""
    day: Day
    """Its day."""
    days_in: float
    """Days from the first event of the log to it, for drawing."""
    cause: str
    """Kind of the event, by the name that logs have for it."""
    lift: Name
    """The lift."""
    place: NamedPlace
    """The granted place."""
    load: Mass
    """The granted load."""
    each_hand: bool
    """It is one of two, one in each hand."""
    status: Status
    """Where the lift stands in its course."""


class GridCell(TypedDict):
    """One cell of the effort grid."""
    rir: Rir
    """Repetitions in reserve."""
    rpe: NotRequired[Rpe]
    """The rating, where the scale names one."""
    fraction: NotRequired[Fraction]
    """Part of the maximum; absent where the equation has no answer."""
    outside_measured: bool
    """Whether repetitions and reserve together lie outside what was measured."""


class GridRow(TypedDict):
    """One row of the effort grid: a number of repetitions, every reserve."""
    reps: Reps
    """Repetitions done."""
    cells: list[GridCell]
    """One cell a reserve, from 0."""


class GripCentiles(TypedDict):
    """Grip strength of a population at one age, kg; each centile is one figure, or a range where sex is not known."""
    p10: Band
    """10th centile, kg."""
    p25: Band
    """25th centile, kg."""
    p50: Band
    """Median, kg."""
    p75: Band
    """75th centile, kg."""
    p90: Band
    """90th centile, kg."""
    population: str
    """Who was measured."""
    cautions: list[Caution]
    """What to show beside it."""


class GripHeight(TypedDict):
    """Heights of what the hands hold."""
    low: Length
    """The bar itself, or the low handles."""
    high: NotRequired[Length]
    """The high handles, where there are some."""


class GripScore(TypedDict):
    """Distance from the peak mean of young adults of the same sex, in their standard deviations."""
    score: Band
    """Standard deviations above (positive) or below the peak mean; a range where sex is not known."""
    population: str
    """Who was measured."""
    cautions: list[Caution]
    """What to show beside it."""


class Handle(TypedDict):
    """One or two adjustable dumbbell handles, loaded alike."""
    id: Name
    mass: Mass
    collar: Mass
    sleeve: NotRequired[Length]
    handles: float


class HandleInput(TypedDict):
    """One or two adjustable dumbbell handles, loaded alike."""
    id: Name
    mass: MassInput
    collar: MassInput
    sleeve: NotRequired[Length]
    handles: float


class Handling(TypedDict):
    """One disc put on or taken off one end."""
    end: End
    """At which end."""
    kind: float
    """The kind of disc."""
    on: bool
    """On, or off."""


class HandlingOrder(TypedDict):
    """The order in which discs come off and go on."""
    order: list[Handling]
    """Disc by disc, the ends in turn."""
    most_imbalance: Mass
    """The most that one end is ever heavier than the other on the way. No order of the same stacks has less."""
    one_end_first: Mass
    """The same if one end were done first and then the other."""


class Handover(TypedDict):
    """Everything that another coach needs."""
    stops: list[Reason]
    """Every stop of the lifter; empty where nothing is stopped. Shown before anything else."""
    today: Day
    """The day it was made for."""
    lifter: Name
    """Whose log it is."""
    age: NotRequired[float]
    """The greatest age in whole years that the log allows; absent where nothing is known."""
    reopening: list[StopNow]
    """Stops by signs and by pain, and what of their reopening is there: everything first."""
    asks: list[OpenAsk]
    """What was said when asked before training, and is not answered."""
    ill_since: NotRequired[Day]
    """First day of an illness after which a new clearance is needed."""
    clearance: NotRequired[ClearanceInForce]
    """The clearance last given, expired or not."""
    body_mass: NotRequired[list[Day | Mass]]
    """The last body mass, and its day."""
    pain: list[PainNow]
    """Regions of which a score above 0 is the last, or of which something is agreed or open."""
    lifts: list[LiftHandover]
    """The lifts in the order of the parameters."""
    changed: ChangedSince
    """What changed since the day asked about."""
    missing: list[Lacking]
    """What nobody wrote down."""
    cautions: list[Caution]
    """What to show beside it."""
    version: str
    """Library version."""
    parameters: str
    """Digest of the parameters in force."""


HealthDetail_event = TypedDict("HealthDetail_event", {"event": "str"})

# What is left out of a log where health is left out.
HealthDetail: TypeAlias = Union[Literal['age', 'note', 'pain', 'own_words', 'people'], "HealthDetail_event"]

class Held(TypedDict):
    """Days of work below what is granted, since that was done last."""
    load: Mass
    """The load granted when it began."""
    days: float
    """Days of stretches before the last one."""
    stretch: list[Day]
    """First and last known day of that."""
    goes_on: NotRequired[bool]
    """It goes on: a limit, a ceiling, the coach's word or the kit holds the lift there."""
    lifted: NotRequired[Mass]
    """The heaviest load of its last session that was not missed, as it is made and no more than was allowed; none where that was done
    on another rung.
    """
    before: NotRequired[Mass]
    """The same of the session before: one day of less takes nothing away."""
    whole: NotRequired[bool]
    """Both were at the granted place, not in less range."""


class HeldInput(TypedDict):
    """Days of work below what is granted, since that was done last."""
    load: MassInput
    """The load granted when it began."""
    days: float
    """Days of stretches before the last one."""
    stretch: tuple[Day, Day]
    """First and last known day of that."""
    goes_on: NotRequired[bool]
    """It goes on: a limit, a ceiling, the coach's word or the kit holds the lift there."""
    lifted: NotRequired[MassInput]
    """The heaviest load of its last session that was not missed, as it is made and no more than was allowed; none where that was done
    on another rung.
    """
    before: NotRequired[MassInput]
    """The same of the session before: one day of less takes nothing away."""
    whole: NotRequired[bool]
    """Both were at the granted place, not in less range."""


# The granted work of a lift.
HigherLoad_granted_fields = TypedDict("HigherLoad_granted_fields", {"lift": "Name", "from": "Grant", "to": "Grant"})

HigherLoad_granted = TypedDict("HigherLoad_granted", {"granted": "HigherLoad_granted_fields"})

# The work of a lift on that day, where it says more than the granted ones do.
HigherLoad_today_fields = TypedDict("HigherLoad_today_fields", {"lift": "Name", "from": "NotRequired[Grant]", "to": "Grant"})

HigherLoad_today = TypedDict("HigherLoad_today", {"today": "HigherLoad_today_fields"})

# A load that would be higher, or work that would be more: at a harder place, or with more sets or repetitions at no less load.
HigherLoad: TypeAlias = Union["HigherLoad_granted", "HigherLoad_today"]

class History(TypedDict):
    """The history of a lift, or of all."""
    stops: list[Reason]
    """Every stop of the lifter, whatever is asked about; empty where nothing is stopped. Shown before anything else."""
    today: Day
    """The day it was made for."""
    sessions: list[SessionDone]
    """Every session, oldest first."""
    steps: list[GrantStep]
    """Where each lift stood, oldest first."""
    missing: list[Lacking]
    """What nobody wrote down."""
    cautions: list[Caution]
    """What to show beside it."""


Implement_bar = TypedDict("Implement_bar", {"bar": "Bar"})

Implement_handle = TypedDict("Implement_handle", {"handle": "Handle"})

Implement_pieces = TypedDict("Implement_pieces", {"pieces": "Pieces"})

Implement_machine = TypedDict("Implement_machine", {"machine": "MachineStack"})

Implement_assistance = TypedDict("Implement_assistance", {"assistance": "MachineStack"})

Implement_pin = TypedDict("Implement_pin", {"pin": "Pin"})

# What the load is made on.
#
# Loads of all of them lie on one line where more is harder. Assistance lies below zero on it: a stack of
# 20 kg that lifts along is a load of -20 kg, and "not above" means at least that much help.
Implement: TypeAlias = Union["Implement_bar", "Implement_handle", "Implement_pieces", "Implement_machine", "Implement_assistance", "Implement_pin"]

ImplementInput_bar = TypedDict("ImplementInput_bar", {"bar": "BarInput"})

ImplementInput_handle = TypedDict("ImplementInput_handle", {"handle": "HandleInput"})

ImplementInput_pieces = TypedDict("ImplementInput_pieces", {"pieces": "PiecesInput"})

ImplementInput_machine = TypedDict("ImplementInput_machine", {"machine": "MachineStackInput"})

ImplementInput_assistance = TypedDict("ImplementInput_assistance", {"assistance": "MachineStackInput"})

ImplementInput_pin = TypedDict("ImplementInput_pin", {"pin": "PinInput"})

# What the load is made on.
#
# Loads of all of them lie on one line where more is harder. Assistance lies below zero on it: a stack of
# 20 kg that lifts along is a load of -20 kg, and "not above" means at least that much help.
ImplementInput: TypeAlias = Union["ImplementInput_bar", "ImplementInput_handle", "ImplementInput_pieces", "ImplementInput_machine", "ImplementInput_assistance", "ImplementInput_pin"]

class ImpulseResponse(TypedDict):
    """A two-component response: baseline, gains and time constants.

    Invariant: finite, gains above 0, fitness slower than fatigue.
    """
    baseline: float
    fitness_gain: float
    fatigue_gain: float
    fitness_days: float
    fatigue_days: float


class InForce(TypedDict):
    """What is in force."""
    stops: list[Reason]
    """Every stop of the lifter, whatever is asked about; empty where nothing is stopped. Shown before anything else."""
    today: Day
    """The day it was made for."""
    restrictions: list[Restriction]
    """Each thing by itself: what stops on that day first, then illnesses noted in advance, limits, rests, breaks and words of the coach,
    ceilings, and entries that cannot be read.
    """
    missing: list[Lacking]
    """What nobody wrote down."""
    cautions: list[Caution]
    """What to show beside it."""


class IndividualsChart(TypedDict):
    """An individuals and moving-range chart."""
    centre: float
    """Mean of the values."""
    mean_range: float
    """Mean distance between neighbours."""
    spread: float
    """Standard deviation estimated from it."""
    low: float
    """Lower limit."""
    high: float
    """Upper limit."""
    range_high: float
    """Upper limit of the distance between neighbours."""
    outside: list[float]
    """Places (from 0) of values outside the limits."""
    range_outside: list[float]
    """Places (from 0) of values too far from the one before."""


InitialState_steady_load = TypedDict("InitialState_steady_load", {"steady_load": "LoadTotal"})

class InitialState_traces_fields(TypedDict):
    """These traces, in units of load."""
    fitness: LoadTotal
    """Fitness."""
    fatigue: LoadTotal
    """Fatigue."""


InitialState_traces = TypedDict("InitialState_traces", {"traces": "InitialState_traces_fields"})

# What the lifter brings to the first day, at the end of the day before it.
InitialState: TypeAlias = Union[Literal['no_history'], "InitialState_steady_load", "InitialState_traces"]

class Interval(TypedDict):
    """A lower and an upper end, and the probability the method aims at (0.95 for 95 %).

    Invariant: all finite, `low <= high`, level above 0 and below 1.
    """
    low: float
    high: float
    level: float


class IntraclassCorrelation(TypedDict):
    """Agreement of repeated trials."""
    one_way: float
    """Form (1,1): trials are interchangeable."""
    two_way_random: float
    """Form (2,1): trials drawn from many, their shift counts as error."""
    two_way_mixed: float
    """Form (3,1): just these trials, their shift does not count."""
    one_way_of_mean: NotRequired[float]
    """Form (1,k): the mean of all trials, read as (1,1); absent where people do not differ."""
    two_way_random_of_mean: NotRequired[float]
    """Form (2,k): the mean of all trials, read as (2,1); absent where people do not differ."""
    two_way_mixed_of_mean: NotRequired[float]
    """Form (3,k): the mean of all trials, read as (3,1); absent where people do not differ."""
    between_people: float
    """Mean square between people."""
    between_trials: float
    """Mean square between trials."""
    residual: float
    """Mean square left over."""
    within_people: float
    """Mean square within people."""


class KeepHeight(TypedDict):
    """Two ways to lift this load from this height."""
    held: NotRequired[Loaded]
    """The load with discs that hold the height, where the policy finds one."""
    lightest_held: NotRequired[Mass]
    """The lightest load that discs hold at this height; none if no pair has the diameter."""
    plain: Loaded
    """The load without regard for height."""
    blocks: NotRequired[Length]
    """Blocks to put under each end for that load; none for a bar without discs, which needs supports."""
    left_out: list[float]
    """Kinds of disc not used: of unknown diameter, or so large that they would lift the bar higher."""


class KeptLoad(TypedDict):
    """A load that must still be there at a later age."""
    planned: LoadToKeep
    """As planned."""
    shown: NotRequired[list[Day | Mass]]
    """What the lift has last shown in a session that passed, and when."""
    place: NotRequired[NamedPlace]
    """Where that was."""
    plan: NotRequired[FloorPlan]
    """What is needed now, and what margin is left; absent where nothing was shown or the birthday is not known."""
    what_if: NotRequired[ScenarioBands]
    """What the phases asked about would leave, with the part of the courses at or above the load; absent where none were
    asked about, nothing was shown or the birthday is not known.
    """


class Kilograms(TypedDict):
    """A calculated mass, such as an estimate: kilograms or pounds may be given, kilograms are answered."""
    kg: float


KilogramsInput_kg = TypedDict("KilogramsInput_kg", {"kg": "float"})

KilogramsInput_lb = TypedDict("KilogramsInput_lb", {"lb": "float"})

# A calculated mass, such as an estimate: kilograms or pounds may be given, kilograms are answered.
KilogramsInput: TypeAlias = Union["KilogramsInput_kg", "KilogramsInput_lb"]

Lacking_session_of = TypedDict("Lacking_session_of", {"session_of": "Name"})

class Lacking_session_rating_fields(TypedDict):
    """Rating or minutes of so many sessions."""
    sessions: float
    """How many."""


Lacking_session_rating = TypedDict("Lacking_session_rating", {"session_rating": "Lacking_session_rating_fields"})

class Lacking_weeks_fields(TypedDict):
    """Anything in so many weeks; they are taken as weeks without training."""
    weeks: float
    """How many."""


Lacking_weeks = TypedDict("Lacking_weeks", {"weeks": "Lacking_weeks_fields"})

Lacking_usable_set = TypedDict("Lacking_usable_set", {"usable_set": "Name"})

class Lacking_sets_for_curve_fields(TypedDict):
    """Three usable sets of that lift, three repetitions to failure apart, as an own curve needs."""
    lift: Name
    """The lift."""
    usable: float
    """Usable sets that there are."""


Lacking_sets_for_curve = TypedDict("Lacking_sets_for_curve", {"sets_for_curve": "Lacking_sets_for_curve_fields"})

Lacking_conditions = TypedDict("Lacking_conditions", {"conditions": "MarkerKind"})

Lacking_pass_of = TypedDict("Lacking_pass_of", {"pass_of": "Name"})

# What nobody wrote down. An answer names it in place of a number; it is never taken as nought.
Lacking: TypeAlias = Union[Literal['session', 'body_mass', 'second_rater', 'day_answers', 'day_class', 'missed_session', 'next_session', 'plan', 'parameters', 'clearance', 'function_test', 'birthday', 'block'], "Lacking_session_of", "Lacking_session_rating", "Lacking_weeks", "Lacking_usable_set", "Lacking_sets_for_curve", "Lacking_conditions", "Lacking_pass_of"]

class LaidBy(TypedDict):
    """What is kept of a lift that was left out long ago."""
    id: Name
    last: NotRequired[Day]
    """Day of its last session; absent where it was never trained."""
    place: NamedPlace
    """Where it stood: it comes back at no harder place."""
    regions: NotRequired[list[Name]]
    """Every region that concerned it."""


class LastDone(TypedDict):
    """The last session of a lift."""
    day: Day
    """Its day."""
    event: float
    """Number of its event."""
    place: NotRequired[NamedPlace]
    """Where it was done."""
    sets: list[WorkSet]
    """The work sets."""
    outcome: NotRequired[Outcome]
    """What it came to for the gate; absent where it counted toward nothing."""
    short: NotRequired[Shortfall]
    """In what it fell short of the work granted."""
    cue: NotRequired[Name]
    """The cue last used."""
    note: NotRequired[str]
    """What was written beside it."""


# A break.
Layoff = TypedDict("Layoff", {"from": "Day", "to": "NotRequired[Day]", "reason": "LayoffReason"})

# Why a break happened.
LayoffReason: TypeAlias = Union[Literal['well', 'planned', 'ill']]

class LayoffRow(TypedDict):
    """One row of the layoff table."""
    from_days: float
    """From this many days without loading the region."""
    load_left: float
    """Load that is left, as a part of the load before."""
    easier_rung: bool
    """One rung easier, where the lift is the strict one of a pair."""
    relearn: bool
    """Every criterion is looked at anew, as on a new rung."""
    restart: bool
    """Back to the lightest load at the right height."""


class LeftOut(TypedDict):
    """How often something was left out."""
    what: HealthDetail
    """What."""
    times: float
    """How often."""


class Length(TypedDict):
    """A height or thickness in millimetres."""
    mm: float


class LevelFit(TypedDict):
    """Maximum-likelihood variances of a wandering level."""
    scale: float
    """Factor on the variances of the readings; 1 where they were taken as known."""
    drift: float
    """Variance by which the level moves per day."""
    log_likelihood: float
    """Log likelihood there, first reading left out."""
    drift_at_zero: bool
    """Whether the best drift is none at all: the readings show no movement of the level."""


class LevelPath(TypedDict):
    """The whole path of a level."""
    stops: list[LevelStop]
    """Stops in order of days."""
    log_likelihood: NotRequired[float]
    """Sum over all readings but the first of the normal log density of the innovation; absent where outliers are
    treated. The first reading starts the level and tells nothing about the fit.
    """


class LevelStop(TypedDict):
    """One stop of the path: a reading, or a day that was asked for."""
    day: Day
    """The day."""
    reading: NotRequired[float]
    """The reading, if there was one."""
    predicted: NotRequired[float]
    """Level expected before the reading; absent up to the first one."""
    predicted_variance: NotRequired[float]
    """Its variance."""
    innovation: NotRequired[float]
    """Reading less prediction."""
    standardised: NotRequired[float]
    """Innovation in standard deviations: today's form."""
    weight: NotRequired[float]
    """What part of its usual weight the reading was given, where it was an outlier."""
    filtered: NotRequired[float]
    """Level given everything up to here."""
    filtered_variance: NotRequired[float]
    """Its variance."""
    smoothed: float
    """Level given everything, later readings too."""
    smoothed_variance: float
    """Its variance."""


class LiftCurve(TypedDict):
    """The own curve of one lift."""
    stops: list[Reason]
    """Every stop of the lifter, whatever is asked about; empty where nothing is stopped. Shown before anything else."""
    today: Day
    """The day it was made for."""
    lift: Name
    """Id of the lift."""
    place: NotRequired[Place]
    """Where the sets were done: on the rung and in the range of the last session."""
    curve: NotRequired[OwnCurve]
    """The curve with the interval of its slope; absent where the sets cannot tell one."""
    prior: CurvePrior
    """What is taken in its place until then."""
    enough: bool
    """Whether the own sets have taken away at least half of what was uncertain, so that the curve is used."""
    sets: float
    """Sets of the last year at this place, at most 200."""
    usable: float
    """Of these, such as could speak."""
    refused: list[RefusedSets]
    """Why the others could not."""
    missing: list[Lacking]
    """What nobody wrote down."""
    sources: list[str]
    """Rows of the registry that the numbers come from."""
    cautions: list[Caution]
    """What to show beside it."""


class LiftHandover(TypedDict):
    """One lift, to be handed on."""
    lift: Name
    """Its id."""
    status: Status
    """Where it stands in its course."""
    purpose: Purpose
    """What it is for in this block."""
    granted: Grant
    """Granted place and work; the place as far as a clearance allows it."""
    limit: Mass
    """Highest load allowed today."""
    height: NotRequired[Length]
    """Height of the bar's centre at the start, where the lift begins from the floor or from pins."""
    moving: Dimension
    """What moves in this block."""
    ceiling: NotRequired[Mass]
    """Highest load that the coach allows at all."""
    gate: Gate
    """The gate as it is defined."""
    gate_state: GateState
    """What it has, and what it misses."""
    criteria: list[Criterion]
    """What technique is judged by."""
    outlook: MoveOutlook
    """Whether a step is earned, and what stands in its way as far as the log says. Whether it is for today the session of
    today says, which has the plan.
    """
    overruled: NotRequired[OverrideNow]
    """An override in force."""
    limits: list[ClearanceLimits]
    """The clearance's limits that concern the lift."""
    setup: NotRequired[SetupSeen]
    """How it was last said to be set up."""
    unguarded: bool
    """When the rack was last spoken of, the lifter was alone under the bar without pins."""
    last: NotRequired[LastDone]
    """The last session; absent before the first."""


# How a lift stood on the day asked about, and stands now.
LiftMoved = TypedDict("LiftMoved", {"lift": "Name", "from": "NotRequired[list[Grant | Status]]", "to": "list[Grant | Status]"})

class LiftOutcome(TypedDict):
    """What one lift of a session came to."""
    lift: Name
    """The lift."""
    place: NotRequired[NamedPlace]
    """Where it was done; absent where its parameters were not known."""
    load: NotRequired[Mass]
    """Heaviest work set; absent without one."""
    each_hand: bool
    """A load of it is one of two, one in each hand."""
    outcome: Outcome
    """What it came to in the end: what was told the next morning may take a pass back. Of a session that counted toward no gate, what
    its marks say, whoever gave them; with a set that was missed, a fail.
    """
    taken_back: bool
    """By its marks it passed, and an answer about its pain took that back."""
    acceptable: float
    """Repetitions that were acceptable, of those scored."""
    scored: float
    """Repetitions scored."""
    weakest: NotRequired[Name]
    """The criterion that was lost most."""


# What a coach sets for one lift.
LiftParameters = TypedDict("LiftParameters", {"id": "Name", "name": "NotRequired[Name]", "body": "Body", "regions": "list[Name]", "implement": "Name", "rungs": "list[Rung]", "starts_from": "NotRequired[StartsFrom]", "ranges": "NotRequired[list[Length]]", "tempos": "NotRequired[list[Tempo]]", "start": "Grant", "moving": "Dimension", "criteria": "list[Criterion]", "pass": "PassRules", "gate": "Gate", "step": "NotRequired[StepPolicy]", "step_cap": "NotRequired[float]", "ceiling": "NotRequired[Mass]", "reps_top": "NotRequired[float]", "sets_top": "NotRequired[float]", "learning_sessions": "NotRequired[float]", "over_the_body": "NotRequired[bool]"})

# What a coach sets for one lift.
LiftParametersInput = TypedDict("LiftParametersInput", {"id": "Name", "name": "NotRequired[Name]", "body": "Body", "regions": "Sequence[Name]", "implement": "Name", "rungs": "Sequence[Rung]", "starts_from": "NotRequired[StartsFrom]", "ranges": "NotRequired[Sequence[Length]]", "tempos": "NotRequired[Sequence[Tempo]]", "start": "GrantInput", "moving": "NotRequired[Dimension]", "criteria": "Sequence[CriterionInput]", "pass": "NotRequired[PassRulesInput]", "gate": "Gate", "step": "NotRequired[StepPolicyInput]", "step_cap": "NotRequired[float]", "ceiling": "NotRequired[MassInput]", "reps_top": "NotRequired[float]", "sets_top": "NotRequired[float]", "learning_sessions": "NotRequired[float]", "over_the_body": "NotRequired[bool]"})

class LiftPlan(TypedDict):
    """One lift of the plan. Sets, repetitions and load come from the grant; the plan can only ask for less."""
    lift: Name
    """Id of the lift."""
    reserve: NotRequired[Rir]
    """Repetitions to leave in reserve; absent means 3."""
    sets: NotRequired[float]
    """Fewer sets than granted."""
    reps: NotRequired[float]
    """Fewer repetitions than granted."""
    reference: NotRequired[Mass]
    """The warm-up load that is done every session in the same way, as the day's measurement."""
    keep: NotRequired[bool]
    """The lift that the coach would keep when time is short."""
    rule: NotRequired[SetRule]
    """By which rule one set follows another; absent means the lifter's own curve."""
    days: NotRequired[list[float]]
    """Days of the week on which the lift is meant, 0 to 6 from the host's first day; empty means any. Kept for the host and
    for a check of the week: no session is decided by it.
    """


class LiftPlanInput(TypedDict):
    """One lift of the plan. Sets, repetitions and load come from the grant; the plan can only ask for less."""
    lift: Name
    """Id of the lift."""
    reserve: NotRequired[Rir]
    """Repetitions to leave in reserve; absent means 3."""
    sets: NotRequired[float]
    """Fewer sets than granted."""
    reps: NotRequired[float]
    """Fewer repetitions than granted."""
    reference: NotRequired[MassInput]
    """The warm-up load that is done every session in the same way, as the day's measurement."""
    keep: NotRequired[bool]
    """The lift that the coach would keep when time is short."""
    rule: NotRequired[SetRule]
    """By which rule one set follows another; absent means the lifter's own curve."""
    days: NotRequired[Numbers]
    """Days of the week on which the lift is meant, 0 to 6 from the host's first day; empty means any. Kept for the host and
    for a check of the week: no session is decided by it.
    """


class LiftRehearsal(TypedDict):
    """One lift over all rehearsed lifters."""
    lift: Name
    """Which lift."""
    milestone: NotRequired[Milestone]
    """What it was to reach."""
    reached: NotRequired[float]
    """Part of the lifters who reached it in the weeks rehearsed; absent without a milestone."""
    days: Centiles
    """Days from the first day until it was reached."""
    moves: Centiles
    """Moves taken by a lifter."""
    sessions: float
    """Planned sessions, all lifters together."""
    shares: Shares
    """How they went."""


class LiftSession(TypedDict):
    """One lift of a session."""
    lift: Name
    """Id of the lift."""
    place: NotRequired[Place]
    """Where it was done. Absent means where that day asked for it: as granted, within what a clearance allows, or on an easier
    rung where pain or a day below the usual eases a lift of which nothing is lighter. It is resolved when the event is
    taken, and kept until the next session. What a plan alone makes easier the log does not say: then the place is written.
    """
    height: NotRequired[Length]
    """Height at which it began, as measured: of the bar's centre from the floor or pins, of a box or bench below."""
    reached: NotRequired[Length]
    """Range reached in every repetition that counts, measured as the lift's own list of ranges is."""
    reserve_asked: NotRequired[Rir]
    """Repetitions that were to be left in reserve, as that day's session said; never taken as fewer than the policy's floor.
    Absent means not written down, and what the day asked for without a plan stands in its place: three, four alone without
    pins, more where a clearance limits effort, and no less than the policy's number for a step.
    """
    sets: list[WorkSet]
    """Work sets in order; warm-ups are not recorded here."""
    setup: NotRequired[Setup]
    """How the lift was set up."""
    cue: NotRequired[Name]
    """The cue last used."""


class LiftSessionInput(TypedDict):
    """One lift of a session."""
    lift: Name
    """Id of the lift."""
    place: NotRequired[PlaceInput]
    """Where it was done. Absent means where that day asked for it: as granted, within what a clearance allows, or on an easier
    rung where pain or a day below the usual eases a lift of which nothing is lighter. It is resolved when the event is
    taken, and kept until the next session. What a plan alone makes easier the log does not say: then the place is written.
    """
    height: NotRequired[Length]
    """Height at which it began, as measured: of the bar's centre from the floor or pins, of a box or bench below."""
    reached: NotRequired[Length]
    """Range reached in every repetition that counts, measured as the lift's own list of ranges is."""
    reserve_asked: NotRequired[Rir]
    """Repetitions that were to be left in reserve, as that day's session said; never taken as fewer than the policy's floor.
    Absent means not written down, and what the day asked for without a plan stands in its place: three, four alone without
    pins, more where a clearance limits effort, and no less than the policy's number for a step.
    """
    sets: Sequence[WorkSetInput]
    """Work sets in order; warm-ups are not recorded here."""
    setup: NotRequired[Setup]
    """How the lift was set up."""
    cue: NotRequired[Name]
    """The cue last used."""


class LiftSheet(TypedDict):
    """One lift of a session in sentences, in the order in which they are to be shown."""
    lift: Name
    """Id of the lift."""
    line: str
    """Name, place, verdict, load, sets."""
    loading: NotRequired[str]
    """How the load is made."""
    warm_up: NotRequired[str]
    """The warm-up sets."""
    why: list[str]
    """Why it is so today."""
    step: NotRequired[str]
    """The one verdict about a step; absent beside a stop."""
    against: list[str]
    """What stands against a step; empty where one is on offer."""
    missing: list[str]
    """What the gate still misses."""
    changes: list[str]
    """What a step needs: who does what."""
    mind: list[str]
    """What to mind in this lift."""


class LiftSkillInput(TypedDict):
    """How a made-up lifter does one lift. Nothing is learned along the way: the skill stays as stated."""
    lift: Name
    """Id of the lift."""
    acceptable: float
    """Chance that an ordinary repetition is acceptable, each by itself."""
    acceptable_below_usual: NotRequired[float]
    """The same on a confirmed day below the usual; absent means no worse."""
    critical_fault: NotRequired[float]
    """Chance that a session loses the first critical criterion, in its last set."""
    pain: NotRequired[float]
    """Chance that the first region of the lift hurts in a session of it."""
    pain_score: NotRequired[Pain]
    """How much it then hurts; absent means 3 of 10."""
    worse_next_morning: NotRequired[float]
    """Chance that the region is worse on the morning after, at 2 of 10, which takes the pass back."""
    milestone: NotRequired[MilestoneInput]
    """What the lift is to reach."""


class LiftSpelling(TypedDict):
    """A lift as a table calls it."""
    text: str
    """In the table."""
    lift: Name
    """Its id in the log."""


class LiftSwap(TypedDict):
    """A lift that is to make room for another before pain forces it."""
    lift: Name
    """The lift."""
    by: Day
    """The last day it is planned for."""
    replacement: NotRequired[Name]
    """What takes its place, if known."""


class LiftToday(TypedDict):
    """One lift of today's session, with everything that made it."""
    lift: Name
    """Id of the lift."""
    verdict: Verdict
    """What to do."""
    status: Status
    """State of the lift."""
    granted: Grant
    """The granted place and work."""
    limit: Mass
    """Highest load granted for today."""
    place: Place
    """Where today's work is done: the granted place, within what a clearance allows, or an easier rung of it."""
    height: NotRequired[Length]
    """Height of the bar's centre at the start, where the lift begins from the floor or from pins."""
    load: NotRequired[Mass]
    """Work load; none where nothing is lifted, or nothing can be loaded."""
    loaded: NotRequired[Loaded]
    """How the load is made."""
    blocks: NotRequired[Length]
    """Blocks under each end of the bar, where they hold the height."""
    sets: float
    """Work sets."""
    reps: float
    """Repetitions a set."""
    reserve: Rir
    """Repetitions to leave in reserve."""
    warm_up: list[WarmUpSet]
    """Warm-up sets."""
    reasons: list[Reason]
    """Every reason, in the order in which the stages spoke."""
    outlook: MoveOutlook
    """Whether the lift may move up, and what stands in the way."""
    gate: GateState
    """What the gate has and what it misses."""
    would_change: list[Change]
    """What would change the answer."""
    evidence: list[float]
    """Events that the gate counts."""
    cautions: list[Caution]
    """What to show beside it."""


class Lifter(TypedDict):
    """Whose log it is."""
    id: Name
    """An id the host chooses."""
    born: NotRequired[Day]
    """Day of birth, for the rules that depend on age."""
    age: NotRequired[AgeBand]
    """An age band instead, where the day of birth is not to be told. Where neither is known, the rules take the older."""
    invented: NotRequired[bool]
    """These are invented data."""


class LiftsByZone(TypedDict):
    """Repetitions by zone; lifts outside the table are counted, not dropped."""
    below_55: float
    """Below 55 %."""
    from_55: float
    """From 55 % to below 70 %."""
    from_70: float
    """From 70 % to below 80 %."""
    from_80: float
    """From 80 % to below 90 %."""
    from_90: float
    """From 90 % to 100 %."""
    above_100: float
    """Above 100 % of the maximum on file."""


class LinearFit(TypedDict):
    """A fitted straight line."""
    intercept: float
    """Value at `x = 0`; 0 for a line through the origin."""
    slope: float
    """Change per unit of `x`."""
    intercept_error: NotRequired[float]
    """Standard error of the intercept; absent where no degree of freedom is left or none was fitted."""
    slope_error: NotRequired[float]
    """Standard error of the slope; absent where no degree of freedom is left."""
    residual_deviation: NotRequired[float]
    """Standard deviation about the line; absent where no degree of freedom is left."""
    residual_squares: float
    """Sum of squared residuals."""
    explained_squares: float
    """Sum of squares that the line explains."""
    r_squared: NotRequired[float]
    """Part of the squares that the line explains; absent where all `y` are equal."""
    degrees: float
    """Points less fitted coefficients."""


class LinearModel(TypedDict):
    """A fitted linear model."""
    coefficients: list[float]
    """Intercept first, then one coefficient a predictor."""
    standard_errors: list[float]
    """Their standard errors; empty where no degree of freedom is left."""
    residual_squares: float
    """Sum of squared residuals."""
    residual_deviation: NotRequired[float]
    """Standard deviation about the model; absent where no degree of freedom is left."""
    r_squared: NotRequired[float]
    """Part of the squares about the mean that the model explains; absent where all `y` are equal."""
    degrees: float
    """Points less fitted coefficients."""


class LoadToKeep(TypedDict):
    """A load of a lift that must still be there at a later age."""
    lift: Name
    """The lift."""
    name: Name
    """What it is for: a suitcase, a grandchild, a bag of soil."""
    load: Mass
    """The load."""
    at_age: float
    """Until which age, in years."""


class LoadToKeepInput(TypedDict):
    """A load of a lift that must still be there at a later age."""
    lift: Name
    """The lift."""
    name: Name
    """What it is for: a suitcase, a grandchild, a bag of soil."""
    load: MassInput
    """The load."""
    at_age: float
    """Until which age, in years."""


# A load total of zero or more in a unit that the caller keeps to (arbitrary units, kg, sets).
#
# Invariant: finite, from 0 to 10^9, never `-0.0`.
LoadTotal: TypeAlias = float

class LoadVelocityInput(TypedDict):
    """One repetition as fast as possible."""
    load: MassInput
    """Load."""
    velocity: float
    """Mean velocity of the bar, m/s."""


class Loaded(TypedDict):
    """A load that can be made, and how far it lies from the one wanted."""
    setting: Setting
    """How it is made."""
    total: Mass
    """The whole load, bar and collars included, from the best known masses. Of one handle or piece where
    there are two; below zero for assistance.
    """
    nominal: Mass
    """The same by the face values of the discs."""
    difference: Mass
    """The load made less the load wanted."""
    difference_percent: NotRequired[float]
    """The difference in percent of the load wanted; none where that is zero."""
    centre_height: NotRequired[Length]
    """Height of the bar's centre above the floor it stands on, where there is a disc and every disc's
    diameter is known.
    """
    fit_checked: bool
    """Whether the discs were checked against the room on the sleeve; without sleeve and thickness they
    can't be.
    """
    next_below: NotRequired[Mass]
    """The next load down."""
    next_above: NotRequired[Mass]
    """The next load up."""


class LoadedWarmUpSet(TypedDict):
    """One set of the answer."""
    step: NotRequired[float]
    """Place of the step in the wanted list; none for the work set."""
    moves: EndMoves
    """The load and the discs that move."""


class Log(TypedDict):
    """One lifter's training log."""
    format: str
    """Always `bismar-log`."""
    version: float
    """Version of the format."""
    lifter: Lifter
    """Whose log it is."""
    events: list[Event]
    """The events, in any order."""


class LogInput(TypedDict):
    """One lifter's training log."""
    format: str
    """Always `bismar-log`."""
    version: float
    """Version of the format."""
    lifter: Lifter
    """Whose log it is."""
    events: Sequence[EventInput]
    """The events, in any order."""


class LongerRange(TypedDict):
    """How a longer range begins."""
    loaded: NotRequired[Loaded]
    """How its load is made; absent where that cannot be loaded."""
    load: Mass
    """The load at the new range; not above the one before."""
    settle: float
    """Passing sessions that settle the new range before its gate counts again."""
    rung_part: float
    """The part of the load with which a harder rung would start instead."""


# A yearly loss that holds between two ages.
LossBand = TypedDict("LossBand", {"from": "Age", "to": "Age", "loss": "AnnualLoss"})

class MachineStack(TypedDict):
    """A machine with a stack of plates and a selector.

    Its numbers mean something on this machine only: pulleys and friction differ.
    """
    id: Name
    start: Mass
    plates: list[Mass]
    add_ons: list[Mass]
    ratio: float


class MachineStackInput(TypedDict):
    """A machine with a stack of plates and a selector.

    Its numbers mean something on this machine only: pulleys and friction differ.
    """
    id: Name
    start: MassInput
    plates: Sequence[MassInput]
    add_ons: Sequence[MassInput]
    ratio: float


# Result of one criterion in one set.
Mark: TypeAlias = Union[Literal['met', 'borderline', 'not_met', 'not_seen']]

class MarkerAnswer(TypedDict):
    """One marker of a day as it was answered or measured."""
    kind: MarkerKind
    """What was asked."""
    value: float
    """The answer, in the unit of the marker."""
    conditions: NotRequired[Conditions]
    """Under what conditions; only answers under equal ones are compared. Absent means that nobody said."""


class MarkerAnswerInput(TypedDict):
    """One marker of a day as it was answered or measured."""
    kind: MarkerKind
    """What was asked."""
    value: float
    """The answer, in the unit of the marker."""
    conditions: NotRequired[ConditionsInput]
    """Under what conditions; only answers under equal ones are compared. Absent means that nobody said."""


class MarkerInput(TypedDict):
    """One marker today, with its past."""
    kind: MarkerKind
    """What it is."""
    today: NotRequired[float]
    """Today's value; absent where it was not answered. A missing answer never counts as good."""
    conditions: NotRequired[ConditionsInput]
    """Today's conditions."""
    history: Sequence[MarkerReadingInput]
    """Earlier values, in any order."""
    least_spread: NotRequired[float]
    """Spread below which the baseline is not believed; the marker's own default where absent."""


# What is asked or measured. Each is compared with the lifter's own past only, never with other people or markers.
MarkerKind: TypeAlias = Union[Literal['warm_up_velocity', 'warm_up_effort', 'recovery', 'sleep', 'freshness', 'soreness', 'stress', 'mood', 'jump_height', 'warm_up_technique']]

class MarkerReadingInput(TypedDict):
    """One past value of a marker."""
    day: Day
    """The day."""
    value: float
    """The value."""
    conditions: NotRequired[ConditionsInput]
    """Under what conditions."""


class MarkerVote(TypedDict):
    """One marker's vote with its numbers."""
    kind: MarkerKind
    """Which marker."""
    vote: Vote
    """What it says."""
    score: NotRequired[float]
    """Distance from the centre in spreads, above 0 better."""
    baseline: NotRequired[Baseline]
    """What it was held against: this lifter's own ordinary values."""


class Mass(TypedDict):
    """A mass: kilograms or pounds may be given, kilograms are answered. Exact; from -2000 kg to 2000 kg."""
    kg: float


class MassBand(TypedDict):
    """The least and the most that something may weigh."""
    low: Mass
    """The least."""
    high: Mass
    """The most."""


MassInput_kg = TypedDict("MassInput_kg", {"kg": "float"})

MassInput_lb = TypedDict("MassInput_lb", {"lb": "float"})

# A mass: kilograms or pounds may be given, kilograms are answered. Exact; from -2000 kg to 2000 kg.
MassInput: TypeAlias = Union["MassInput_kg", "MassInput_lb"]

class MaximumVelocity(TypedDict):
    """Velocity of a maximum: mean, and standard deviation between people where printed; m/s."""
    velocity: float
    """Mean velocity."""
    deviation: NotRequired[float]
    """Standard deviation between people."""


class MeanAndDeviation(TypedDict):
    """A mean and a standard deviation as printed."""
    mean: float
    """Mean."""
    deviation: float
    """Standard deviation between people or teams."""


# Which mean of the bar's velocity was measured.
MeanVelocity: TypeAlias = Union[Literal['propulsive', 'whole']]

class MeasuredDay(TypedDict):
    """Performance measured on one day, in any unit that stays the same."""
    day: float
    """Which day of the loads; 1 is the first."""
    value: float
    """What was measured."""


class Measurement(TypedDict):
    """A measured test of everyday function."""
    test: EverydayTest
    """Which test."""
    result: float
    """Its result in the unit of the test."""


class Met_passing_sessions_fields(TypedDict):
    """Enough passing sessions in a row."""
    have: float
    """In a row up to now."""
    need: float
    """Asked for."""


Met_passing_sessions = TypedDict("Met_passing_sessions", {"passing_sessions": "Met_passing_sessions_fields"})

class Met_evidence_fields(TypedDict):
    """Enough acceptable repetitions to be sure enough."""
    scored: float
    """Repetitions scored."""
    misses: float
    """Missed among them."""
    most_misses: float
    """Misses with which the gate still opens at this number."""


Met_evidence = TypedDict("Met_evidence", {"evidence": "Met_evidence_fields"})

class Met_dwell_sessions_fields(TypedDict):
    """Enough sessions at the present tuple."""
    have: float
    """Done."""
    need: float
    """Asked for."""


Met_dwell_sessions = TypedDict("Met_dwell_sessions", {"dwell_sessions": "Met_dwell_sessions_fields"})

class Met_dwell_days_fields(TypedDict):
    """Enough days at the present tuple."""
    have: float
    """Passed."""
    need: float
    """Asked for."""


Met_dwell_days = TypedDict("Met_dwell_days", {"dwell_days": "Met_dwell_days_fields"})

class Met_spacing_fields(TypedDict):
    """Enough days since the last step up."""
    have: NotRequired[float]
    """Passed; absent if there was no step up."""
    need: float
    """Asked for."""


Met_spacing = TypedDict("Met_spacing", {"spacing": "Met_spacing_fields"})

# A requirement that is met, with its numbers.
Met: TypeAlias = Union[Literal['effort_cap', 'no_open_block', 'sign_off', 'pair', 'region'], "Met_passing_sessions", "Met_evidence", "Met_dwell_sessions", "Met_dwell_days", "Met_spacing"]

Milestone_load = TypedDict("Milestone_load", {"load": "Mass"})

Milestone_rung = TypedDict("Milestone_rung", {"rung": "Name"})

# What a lift is to reach in the rehearsal.
Milestone: TypeAlias = Union["Milestone_load", "Milestone_rung"]

MilestoneInput_load = TypedDict("MilestoneInput_load", {"load": "MassInput"})

MilestoneInput_rung = TypedDict("MilestoneInput_rung", {"rung": "Name"})

# What a lift is to reach in the rehearsal.
MilestoneInput: TypeAlias = Union["MilestoneInput_load", "MilestoneInput_rung"]

class Missed(TypedDict):
    """What becomes of a missed session. Load and sets stay as planned, always."""
    stops: list[Reason]
    """Every stop of the lifter, whatever is asked about; empty where nothing is stopped. Shown before anything else."""
    today: Day
    """The day it was made for."""
    missed: NotRequired[Day]
    """Day of the missed session, where one of the last seven days is noted."""
    reason: NotRequired[Name]
    """Why, as noted."""
    next: NotRequired[NextPlanned]
    """The next session: as given, else as this lifter usually trains; absent where nobody knows."""
    by_habit: bool
    """The next session is read from the days on which this lifter usually trains."""
    lifts: list[MissedLift]
    """Each lift of the plan; empty where no session was missed."""
    missing: list[Lacking]
    """What nobody wrote down."""
    sources: list[str]
    """Rows of the registry that the rule is from."""
    cautions: list[Caution]
    """What to show beside it."""


class MissedFacts(TypedDict):
    """What is known around a missed session."""
    today: Day
    """Today."""
    last_loaded: NotRequired[Day]
    """Last day on which the region was loaded."""
    next: NotRequired[Day]
    """Next planned day that loads the region."""
    next_has_the_lift: bool
    """Whether that next day has the missed lift already."""
    rest_days: float
    """Full rest days between two days that load the region."""


class MissedLift(TypedDict):
    """What becomes of one lift of the missed session."""
    lift: Name
    """Id of the lift."""
    facts: NotRequired[MissedFacts]
    """What it was worked out from; absent while the lift is stopped."""
    then: NotRequired[MissedSession]
    """What becomes of it; absent while a stop of it is in force."""


MissedSession_shift_to = TypedDict("MissedSession_shift_to", {"shift_to": "Day"})

MissedSession_merge_into = TypedDict("MissedSession_merge_into", {"merge_into": "Day"})

# What becomes of a missed session. The load and the sets stay as planned, always.
MissedSession: TypeAlias = Union[Literal['drop'], "MissedSession_shift_to", "MissedSession_merge_into"]

class Missing_passing_sessions_fields(TypedDict):
    """Passing sessions in a row, on other days."""
    have: float
    """In a row up to now."""
    need: float
    """Asked for."""
    restarted: NotRequired[Day]
    """The day on which the run last started again, if it did."""
    weakest: NotRequired[Name]
    """The criterion to watch: the last one that held worst."""


Missing_passing_sessions = TypedDict("Missing_passing_sessions", {"passing_sessions": "Missing_passing_sessions_fields"})

class Missing_evidence_fields(TypedDict):
    """Acceptable repetitions."""
    scored: float
    """Repetitions scored up to now."""
    misses: float
    """Missed among them."""
    clean_reps: NotRequired[float]
    """Acceptable repetitions in a row that would open the gate; absent if none would before its end."""


Missing_evidence = TypedDict("Missing_evidence", {"evidence": "Missing_evidence_fields"})

class Missing_evidence_against_fields(TypedDict):
    """The evidence is in and speaks against; the test must be started again, on an easier tuple or by the coach."""
    day: Day
    """The day it ended."""
    scored: float
    """Repetitions scored by then."""
    misses: float
    """Missed among them."""


Missing_evidence_against = TypedDict("Missing_evidence_against", {"evidence_against": "Missing_evidence_against_fields"})

class Missing_passing_days_fields(TypedDict):
    """Passing sessions on distinct days, in a row or not."""
    have: float
    """Up to now."""
    need: float
    """Asked for."""


Missing_passing_days = TypedDict("Missing_passing_days", {"passing_days": "Missing_passing_days_fields"})

class Missing_last_session_not_passed_fields(TypedDict):
    """The last scored session did not pass."""
    day: Day
    """Its day."""


Missing_last_session_not_passed = TypedDict("Missing_last_session_not_passed", {"last_session_not_passed": "Missing_last_session_not_passed_fields"})

class Missing_next_morning_answer_fields(TypedDict):
    """The answer about the morning after a session that counts."""
    day: Day
    """The day of that session."""


Missing_next_morning_answer = TypedDict("Missing_next_morning_answer", {"next_morning_answer": "Missing_next_morning_answer_fields"})

class Missing_effort_cap_fields(TypedDict):
    """Effort went over its cap, or was not recorded."""
    recorded: bool
    """Whether effort was recorded."""


Missing_effort_cap = TypedDict("Missing_effort_cap", {"effort_cap": "Missing_effort_cap_fields"})

class Missing_open_block_fields(TypedDict):
    """A block is open."""
    name: Name
    """Which."""


Missing_open_block = TypedDict("Missing_open_block", {"open_block": "Missing_open_block_fields"})

class Missing_dwell_sessions_fields(TypedDict):
    """Sessions at the present tuple."""
    have: float
    """Done."""
    need: float
    """Asked for."""


Missing_dwell_sessions = TypedDict("Missing_dwell_sessions", {"dwell_sessions": "Missing_dwell_sessions_fields"})

class Missing_dwell_days_fields(TypedDict):
    """Days at the present tuple."""
    have: float
    """Passed."""
    need: float
    """Asked for."""


Missing_dwell_days = TypedDict("Missing_dwell_days", {"dwell_days": "Missing_dwell_days_fields"})

class Missing_spacing_fields(TypedDict):
    """Days since the last step up."""
    have: float
    """Passed."""
    need: float
    """Asked for."""


Missing_spacing = TypedDict("Missing_spacing", {"spacing": "Missing_spacing_fields"})

class Missing_pair_fields(TypedDict):
    """A condition set by the other lift of the pair."""
    name: Name
    """Which."""


Missing_pair = TypedDict("Missing_pair", {"pair": "Missing_pair_fields"})

class Missing_region_fields(TypedDict):
    """A condition set by a region of the lift."""
    name: Name
    """Which."""


Missing_region = TypedDict("Missing_region", {"region": "Missing_region_fields"})

class Missing_ways_fields(TypedDict):
    """Some of several ways; what each of them misses stands beside this."""
    have: float
    """Open now."""
    need: float
    """Asked for."""
    of: float
    """There are."""


Missing_ways = TypedDict("Missing_ways", {"ways": "Missing_ways_fields"})

# What is still missing, with how much of it.
Missing: TypeAlias = Union[Literal['sign_off'], "Missing_passing_sessions", "Missing_evidence", "Missing_evidence_against", "Missing_passing_days", "Missing_last_session_not_passed", "Missing_next_morning_answer", "Missing_effort_cap", "Missing_open_block", "Missing_dwell_sessions", "Missing_dwell_days", "Missing_spacing", "Missing_pair", "Missing_region", "Missing_ways"]

Monotony_value = TypedDict("Monotony_value", {"value": "float"})

# Mean over deviation, or why there is none.
Monotony: TypeAlias = Union[Literal['undefined_all_equal'], "Monotony_value"]

class Move(TypedDict):
    """The coach moves a lift along its ladder or ranges by hand, sideways or down; upward goes through the gate."""
    lift: Name
    """Id of the lift."""
    to: Grant
    """Where to."""
    who: Name
    """Who."""


class MoveInput(TypedDict):
    """The coach moves a lift along its ladder or ranges by hand, sideways or down; upward goes through the gate."""
    lift: Name
    """Id of the lift."""
    to: GrantInput
    """Where to."""
    who: Name
    """Who."""


class MoveOutlook_on_offer_fields(TypedDict):
    """One move waits to be taken."""
    to: Grant
    """To this place and work."""


MoveOutlook_on_offer = TypedDict("MoveOutlook_on_offer", {"on_offer": "MoveOutlook_on_offer_fields"})

class MoveOutlook_blocked_fields(TypedDict):
    """Blocked, by all of these."""
    by: list[Reason]
    """Every reason."""
    to: NotRequired[Grant]
    """What it would move to, where there is something."""


MoveOutlook_blocked = TypedDict("MoveOutlook_blocked", {"blocked": "MoveOutlook_blocked_fields"})

# Whether the lift may move up, and if not, everything that stands in the way.
MoveOutlook: TypeAlias = Union["MoveOutlook_on_offer", "MoveOutlook_blocked"]

class MovementEffort(TypedDict):
    """What one everyday movement takes of knee-extensor strength, old and young."""
    movement: str
    """The movement."""
    old: float
    """Part of the maximum in old adults."""
    young: float
    """Part of the maximum in young adults."""
    population: str
    """Who was measured."""
    cautions: list[Caution]
    """What to show beside it."""


# A name chosen by the host: of a lift, a bar, a region, a criterion, a person. 1 to 40 characters, each to be seen:
# no control character, none that turns the text around, none without width; without space at either end.
Name: TypeAlias = str

class NamedCondition(TypedDict):
    """A condition with a name that holds or does not."""
    name: Name
    """What it is called, such as the other lift of a pair or a region."""
    holds: bool
    """Whether it holds."""


class NamedPlace(TypedDict):
    """Where a lift was done, whatever its lists of rungs, ranges and tempos hold by now."""
    rung: NotRequired[Name]
    """Id of the rung; absent where the lift has none."""
    range: NotRequired[Length]
    """The range; absent where it is not measured."""
    tempo: NotRequired[Tempo]
    """Seconds down, held and up; absent where the lift has no tempo."""


class NewcomersGain(TypedDict):
    """What a rise of an estimate may be made of."""
    by_equation: float
    """The rise as the equation gives it, in percent."""
    of_strength: float
    """What would be left of it if this lifter learned to repeat as those of the study did in eighteen weeks, percent.
    Strength may lie anywhere between the two.
    """


class NextDayReport(TypedDict):
    """Answers of the morning after a session."""
    session: float
    """Sequence number of the session asked about."""
    pain: NotRequired[list[PainAnswer]]
    """Pain now. Absent means not asked; a list means asked, and regions not named have none."""
    soreness: NotRequired[Pain]
    """Muscle soreness from 0 to 10, for the record only."""


class NextPlanned(TypedDict):
    """The next session that is planned."""
    day: Day
    """Its day."""
    lifts: list[Name]
    """Ids of its lifts."""


class NextSet(TypedDict):
    """What comes after the sets of a lift done so far today."""
    stops: list[Reason]
    """Every stop of the lifter, whatever is asked about; empty where nothing is stopped. Shown before anything else."""
    today: Day
    """The day it was made for."""
    lift: Name
    """Id of the lift."""
    done: float
    """Sets done so far."""
    sets: float
    """Sets of today in all."""
    rule: SetRule
    """By which rule."""
    then: Then
    """What to do."""
    work: NotRequired[SetWork]
    """The next set; none where the lift is over."""
    limit: NotRequired[Mass]
    """Today's load: nothing goes above it."""
    instead: NotRequired[Name]
    """A rung to practise instead, where technique ended the lift and there is an easier one."""
    reasons: list[SetReason]
    """Why, in the order in which the rules spoke."""
    sources: list[str]
    """Rows of the registry that the numbers come from: those of the rule, and of the relation that it changes a load by."""
    cautions: list[Caution]
    """What to show beside it."""


# What double progression asks for next.
NextStep: TypeAlias = Union[Literal['more_repetitions', 'load_may_rise', 'less_load']]

class Note_rater_changed_fields(TypedDict):
    """Another person gave the marks within the run; two people agree less than one with himself."""
    day: Day
    """Since this day."""


Note_rater_changed = TypedDict("Note_rater_changed", {"rater_changed": "Note_rater_changed_fields"})

class Note_too_few_scored_fields(TypedDict):
    """A session passed but had too few scored repetitions to count toward the run."""
    day: Day
    """Its day."""
    scored: float
    """Scored."""
    need: float
    """Asked for."""


Note_too_few_scored = TypedDict("Note_too_few_scored", {"too_few_scored": "Note_too_few_scored_fields"})

# Something to know that neither opens nor closes the gate.
Note: TypeAlias = Union["Note_rater_changed", "Note_too_few_scored"]

class Now(TypedDict):
    """How one lift stands."""
    status: Status
    """Its state."""
    since: Day
    """Since when."""
    grant: Grant
    """The granted place and work."""
    purpose: Purpose
    """What it is for in this block."""
    calibration: Calibration
    """Sessions of calibration."""
    fails: float
    """Fails in a row."""
    neutral: float
    """Fails on days below the usual in a row that counted as no information."""
    here: list[Day | float]
    """Days with a session at this place and load, and since when."""
    here_on: NotRequired[Day]
    """The last of these days."""
    sittings: list[Sitting]
    """The last sessions since it stands at this place, oldest first; those that were done elsewhere are no passes."""
    earlier: list[float]
    """Acceptable and scored repetitions of sessions no longer listed."""
    last_session: NotRequired[Day]
    """Day of the last session, at whatever place."""
    last_place: NotRequired[Place]
    """Where its last session was done: as written down, or where the day asked for it; absent where new parameters have no
    such place.
    """
    unanswered: NotRequired[list[Day | float]]
    """Number and day of the last session, where it is not listed among those at this place, until the morning after it is
    answered.
    """
    short: NotRequired[Shortfall]
    """In what the last session fell short of the work granted, where it did."""
    stepped: NotRequired[bool]
    """Its last step put it where it stands, and it has not been trained there."""
    moved: NotRequired[list[Place | float]]
    """Number under which the last act or clearance was told that has it done at another place, and the place before: a session told
    earlier that says no place was not done where it stands now.
    """
    moves: NotRequired[list[list[Day | Mass]]]
    """Upward moves within the longest window, each with the load before it."""
    missed: NotRequired[float]
    """Longest gap of a region of the lift that ended without it since it was last trained, in days."""
    held: NotRequired[Held]
    """Days of work below what is granted since that was done last, and what was lifted all the same."""
    half_sessions: float
    """Sessions that still have half the sets."""
    half_after: NotRequired[list[float]]
    """Days and row of the break for which they have, where it was one."""
    peak: Mass
    """Highest load ever granted."""
    proven: NotRequired[list[Day | Mass]]
    """Load of the last confirmed pass, and its day."""
    overruled: NotRequired[OverrideInForce]
    """An override in force."""
    override_ended: NotRequired[list[Mass | NamedPlace | OverrideEnd]]
    """Load of an override upward that has ended, what ended it, and the place it was for, until the next session."""
    override_past: NotRequired[Day]
    """Last day of an override that was past when it was recorded, until the next session."""
    restarted: NotRequired[list[Day | Restart]]
    """Since when sessions at this place are counted anew, and why."""
    below_band: NotRequired[Mass]
    """Heaviest load of the last session of a maintained lift, where that lay below its band."""
    other_implement: NotRequired[bool]
    """While the lift was left out, its implement became another kind or was gone: it begins anew when it is taken back."""
    left: NotRequired[list[list[Day | Mass | Name]]]
    """Kinds of implement that it was done with before, each with the highest load that was allowed when it left it, and that day."""
    begun_anew: NotRequired[bool]
    """Its implement became another kind, and it has not been trained since."""
    signed_off: bool
    """The coach signed the gate off since the last move."""
    partner_pain: bool
    """The partner's strict lift hurt: hold, and start one step down."""
    ill: NotRequired[bool]
    """An illness was noted since the lift was last trained."""
    unguarded: bool
    """When the rack was last spoken of, the lifter was alone under the bar without pins."""
    rack_said: NotRequired[bool]
    """Somebody has said once who and what would take the bar."""
    setup: NotRequired[SetupSeen]
    """How it was last said to be set up."""
    other_rater: NotRequired[bool]
    """Another person gives the marks from now on."""
    fault: NotRequired[Name]
    """The critical criterion lost in the last session."""
    weak: NotRequired[Name]
    """The criterion that held worst in the last session at this place in which one did not hold."""
    watched: NotRequired[list[Day | Name]]
    """What was weak before the last move, until it is seen to hold, and the day by which it is to be looked at."""
    closed_since: NotRequired[list[Day | Mass]]
    """Strict lift of a pair: since when its gate is known to be closed, and what the forgiving lift had shown then."""
    reserve: NotRequired[float]
    """The last session's least reserve, in half repetitions, where effort was given for every set."""
    former: NotRequired[list[Name]]
    """Regions that earlier parameters gave the lift, or that halted every lift since none loaded them, and in which
    something is still open or limited.
    """
    override_refused: NotRequired[bool]
    """What was refused last was an override."""
    nothing_easier: NotRequired[bool]
    """A break, a stop or a step back asks for easier work than granted, and there is none."""
    refused: NotRequired[float]
    """The last coach's act for this lift that a guard refused, until its next session."""


class NowInput(TypedDict):
    """How one lift stands."""
    status: StatusInput
    """Its state."""
    since: Day
    """Since when."""
    grant: GrantInput
    """The granted place and work."""
    purpose: PurposeInput
    """What it is for in this block."""
    calibration: Calibration
    """Sessions of calibration."""
    fails: float
    """Fails in a row."""
    neutral: float
    """Fails on days below the usual in a row that counted as no information."""
    here: tuple[float, Day]
    """Days with a session at this place and load, and since when."""
    here_on: NotRequired[Day]
    """The last of these days."""
    sittings: Sequence[Sitting]
    """The last sessions since it stands at this place, oldest first; those that were done elsewhere are no passes."""
    earlier: tuple[float, float]
    """Acceptable and scored repetitions of sessions no longer listed."""
    last_session: NotRequired[Day]
    """Day of the last session, at whatever place."""
    last_place: NotRequired[PlaceInput]
    """Where its last session was done: as written down, or where the day asked for it; absent where new parameters have no
    such place.
    """
    unanswered: NotRequired[tuple[float, Day]]
    """Number and day of the last session, where it is not listed among those at this place, until the morning after it is
    answered.
    """
    short: NotRequired[Shortfall]
    """In what the last session fell short of the work granted, where it did."""
    stepped: NotRequired[bool]
    """Its last step put it where it stands, and it has not been trained there."""
    moved: NotRequired[tuple[float, PlaceInput]]
    """Number under which the last act or clearance was told that has it done at another place, and the place before: a session told
    earlier that says no place was not done where it stands now.
    """
    moves: NotRequired[Sequence[tuple[Day, MassInput]]]
    """Upward moves within the longest window, each with the load before it."""
    missed: NotRequired[float]
    """Longest gap of a region of the lift that ended without it since it was last trained, in days."""
    held: NotRequired[HeldInput]
    """Days of work below what is granted since that was done last, and what was lifted all the same."""
    half_sessions: float
    """Sessions that still have half the sets."""
    half_after: NotRequired[tuple[float, float]]
    """Days and row of the break for which they have, where it was one."""
    peak: MassInput
    """Highest load ever granted."""
    proven: NotRequired[tuple[Day, MassInput]]
    """Load of the last confirmed pass, and its day."""
    overruled: NotRequired[OverrideInForceInput]
    """An override in force."""
    override_ended: NotRequired[tuple[MassInput, OverrideEnd, NamedPlace]]
    """Load of an override upward that has ended, what ended it, and the place it was for, until the next session."""
    override_past: NotRequired[Day]
    """Last day of an override that was past when it was recorded, until the next session."""
    restarted: NotRequired[tuple[Day, Restart]]
    """Since when sessions at this place are counted anew, and why."""
    below_band: NotRequired[MassInput]
    """Heaviest load of the last session of a maintained lift, where that lay below its band."""
    other_implement: NotRequired[bool]
    """While the lift was left out, its implement became another kind or was gone: it begins anew when it is taken back."""
    left: NotRequired[Sequence[tuple[Name, MassInput, Day]]]
    """Kinds of implement that it was done with before, each with the highest load that was allowed when it left it, and that day."""
    begun_anew: NotRequired[bool]
    """Its implement became another kind, and it has not been trained since."""
    signed_off: bool
    """The coach signed the gate off since the last move."""
    partner_pain: bool
    """The partner's strict lift hurt: hold, and start one step down."""
    ill: NotRequired[bool]
    """An illness was noted since the lift was last trained."""
    unguarded: bool
    """When the rack was last spoken of, the lifter was alone under the bar without pins."""
    rack_said: NotRequired[bool]
    """Somebody has said once who and what would take the bar."""
    setup: NotRequired[SetupSeen]
    """How it was last said to be set up."""
    other_rater: NotRequired[bool]
    """Another person gives the marks from now on."""
    fault: NotRequired[Name]
    """The critical criterion lost in the last session."""
    weak: NotRequired[Name]
    """The criterion that held worst in the last session at this place in which one did not hold."""
    watched: NotRequired[tuple[Day, Name]]
    """What was weak before the last move, until it is seen to hold, and the day by which it is to be looked at."""
    closed_since: NotRequired[tuple[Day, MassInput]]
    """Strict lift of a pair: since when its gate is known to be closed, and what the forgiving lift had shown then."""
    reserve: NotRequired[float]
    """The last session's least reserve, in half repetitions, where effort was given for every set."""
    former: NotRequired[Sequence[Name]]
    """Regions that earlier parameters gave the lift, or that halted every lift since none loaded them, and in which
    something is still open or limited.
    """
    override_refused: NotRequired[bool]
    """What was refused last was an override."""
    nothing_easier: NotRequired[bool]
    """A break, a stop or a step back asks for easier work than granted, and there is none."""
    refused: NotRequired[float]
    """The last coach's act for this lift that a guard refused, until its next session."""


# Body mass fell by a twentieth or more within half a year; if nobody meant it to, a talk with a clinician is worth it.
Odd_mass_falling_fields = TypedDict("Odd_mass_falling_fields", {"from": "Mass", "since": "Day", "to": "Mass", "part": "float"})

Odd_mass_falling = TypedDict("Odd_mass_falling", {"mass_falling": "Odd_mass_falling_fields"})

# Body mass differs by a tenth or more from the weighing before: a likely slip of the pen.
Odd_mass_jump_fields = TypedDict("Odd_mass_jump_fields", {"from": "Mass", "since": "Day", "to": "Mass", "part": "float", "slip": "NotRequired[Slip]"})

Odd_mass_jump = TypedDict("Odd_mass_jump", {"mass_jump": "Odd_mass_jump_fields"})

class Odd_load_slip_fields(TypedDict):
    """A load of a session or an override looks like a slip, beside the load that was expected."""
    load: Mass
    """The load as it stands."""
    expected: Mass
    """The heaviest of the session before, or the lift's first load."""
    slip: Slip
    """How it may have been mistyped."""


Odd_load_slip = TypedDict("Odd_load_slip", {"load_slip": "Odd_load_slip_fields"})

class Odd_perfect_scores_fields(TypedDict):
    """Every scored repetition was acceptable and no mark was in doubt for so many sessions that the gate tells nothing."""
    sessions: float
    """Sessions in a row."""
    since: Day
    """The first of them."""


Odd_perfect_scores = TypedDict("Odd_perfect_scores", {"perfect_scores": "Odd_perfect_scores_fields"})

class Odd_many_overrides_fields(TypedDict):
    """The coach overruled the gate often, so that it decides little."""
    overrides: float
    """Overrides since that day."""
    without_end: float
    """Of these, those that name no last day."""
    sessions: float
    """Sessions of the lift since that day."""
    since: Day
    """The first of these sessions."""


Odd_many_overrides = TypedDict("Odd_many_overrides", {"many_overrides": "Odd_many_overrides_fields"})

class Odd_unscored_fields(TypedDict):
    """Nobody marked technique in many of the last sessions; what is not scored never passes."""
    unscored: float
    """Sessions without a mark."""
    sessions: float
    """Of so many."""
    since: Day
    """The first of these sessions."""


Odd_unscored = TypedDict("Odd_unscored", {"unscored": "Odd_unscored_fields"})

class Odd_only_own_marks_fields(TypedDict):
    """Only the lifter marked technique in the last sessions that were marked."""
    sessions: float
    """Sessions in a row."""
    since: Day
    """The first of them."""


Odd_only_own_marks = TypedDict("Odd_only_own_marks", {"only_own_marks": "Odd_only_own_marks_fields"})

class Odd_missed_with_reserve_fields(TypedDict):
    """A repetition was missed, and yet the set is said to have left some in reserve: rating and reserve may be mixed up."""
    effort: Effort
    """As it stands."""


Odd_missed_with_reserve = TypedDict("Odd_missed_with_reserve", {"missed_with_reserve": "Odd_missed_with_reserve_fields"})

class Odd_same_session_twice_fields(TypedDict):
    """Two sessions of one day say exactly the same."""
    other: float
    """The event that says so first."""


Odd_same_session_twice = TypedDict("Odd_same_session_twice", {"same_session_twice": "Odd_same_session_twice_fields"})

class Odd_after_today_fields(TypedDict):
    """An event lies after today."""
    days: float
    """By so many days."""


Odd_after_today = TypedDict("Odd_after_today", {"after_today": "Odd_after_today_fields"})

class Odd_out_of_line_fields(TypedDict):
    """An event was written down between others of a quite different time."""
    beside: Day
    """Day of the event written down before it, or after it where it is the first."""
    days: float
    """Days between the two."""


Odd_out_of_line = TypedDict("Odd_out_of_line", {"out_of_line": "Odd_out_of_line_fields"})

class Odd_long_gap_fields(TypedDict):
    """Nothing stands in the log for years: a break, or a year mistyped."""
    since: Day
    """The last day before it."""
    days: float
    """Its length in days."""


Odd_long_gap = TypedDict("Odd_long_gap", {"long_gap": "Odd_long_gap_fields"})

class Odd_ends_before_it_begins_fields(TypedDict):
    """A clearance or an override ended before the day on which it was given."""
    end: Day
    """Its last day."""


Odd_ends_before_it_begins = TypedDict("Odd_ends_before_it_begins", {"ends_before_it_begins": "Odd_ends_before_it_begins_fields"})

class Odd_answer_without_question_fields(TypedDict):
    """Something is answered that nobody had said before training, or that was answered already: it closed nothing."""
    ask: Ask
    """What the answer is about."""


Odd_answer_without_question = TypedDict("Odd_answer_without_question", {"answer_without_question": "Odd_answer_without_question_fields"})

class Odd_odd_age_fields(TypedDict):
    """An age for which no rule here was made: below 18 or above 100."""
    years: float
    """Years, at most."""


Odd_odd_age = TypedDict("Odd_odd_age", {"odd_age": "Odd_odd_age_fields"})

class Odd_unknown_events_fields(TypedDict):
    """Events of kinds that this version cannot read."""
    count: float
    """How many."""


Odd_unknown_events = TypedDict("Odd_unknown_events", {"unknown_events": "Odd_unknown_events_fields"})

# What looks odd. Each is a question to the coach; nothing is changed by it.
Odd: TypeAlias = Union["Odd_mass_falling", "Odd_mass_jump", "Odd_load_slip", "Odd_perfect_scores", "Odd_many_overrides", "Odd_unscored", "Odd_only_own_marks", "Odd_missed_with_reserve", "Odd_same_session_twice", "Odd_after_today", "Odd_out_of_line", "Odd_long_gap", "Odd_ends_before_it_begins", "Odd_answer_without_question", "Odd_odd_age", "Odd_unknown_events"]

class Oddity(TypedDict):
    """Something that looks odd: where, and what."""
    day: Day
    """The day that it concerns; of a stretch, its last day."""
    event: NotRequired[float]
    """Number of the event, where one event is meant."""
    lift: NotRequired[Name]
    """The lift, where one is meant."""
    place: NotRequired[NamedPlace]
    """Where the lift was done or stood, where a load of it is meant and the log can be followed."""
    what: Odd
    """What."""


class Offer(TypedDict):
    """One pair that could be bought."""
    disc: Mass
    """Mass of one disc of the pair."""
    largest_gap: NotRequired[Gap]
    """The largest gap that remains with it."""


# Four years between Olympic Games, for which one set of Sinclair coefficients holds.
Olympiad: TypeAlias = Union[Literal['2001-2004', '2005-2008', '2009-2012', '2013-2016', '2017-2020', '2021-2024', '2025-2028']]

class OpenAsk(TypedDict):
    """Something said when asked before training, that nobody has answered yet."""
    ask: Ask
    """What."""
    since: Day
    """Said first on that day."""
    told: float
    """Number under which it was told last: an answer given before closes nothing."""


class Opens(TypedDict):
    """What would open."""
    stops: list[Reason]
    """Every stop of the lifter, as it is in force; empty where nothing is stopped. Shown before anything else."""
    today: Day
    """The day it was made for."""
    stops_gone: list[StopGone]
    """Stops that would no longer be in force."""
    gone: list[Restriction]
    """What else would no longer be in force, in the order of `InForce`(super::InForce)."""
    higher: list[HigherLoad]
    """Loads that would be higher, and work that would be more."""
    unsets: bool
    """Nothing would be set for the lifts any more."""
    missing: list[Lacking]
    """What nobody wrote down."""
    cautions: list[Caution]
    """What to show beside it."""


class OperatingCharacteristic(TypedDict):
    """How a gate treats a lifter of some skill."""
    session: float
    """Chance that one session passes."""
    one_try: float
    """Chance that one try opens the gate."""
    mean_try: float
    """Mean number of sessions of one try, whichever way it goes."""
    within: float
    """Chance that the gate opens within the sessions asked about, a new try following each that ended."""
    mean_sessions: NotRequired[float]
    """Mean number of sessions until it opens; absent if it never does."""
    median_sessions: NotRequired[float]
    """Sessions by which it has opened for half of such lifters; absent if that takes more than 10 000."""


# Outcome of a set or a session.
Outcome: TypeAlias = Union[Literal['pass', 'fail', 'not_scored']]

class Outliers_clipped_fields(TypedDict):
    """Cut the innovation at so many standard deviations (Huber); `CLIP_AT`."""
    at: float
    """Standard deviations."""


Outliers_clipped = TypedDict("Outliers_clipped", {"clipped": "Outliers_clipped_fields"})

class Outliers_inflated_fields(TypedDict):
    """Raise the variance of the reading so that it counts as if it lay at so many; `INFLATE_AT`."""
    at: float
    """Standard deviations."""


Outliers_inflated = TypedDict("Outliers_inflated", {"inflated": "Outliers_inflated_fields"})

class Outliers_heavy_tailed_fields(TypedDict):
    """Scatter follows a t distribution; each reading is weighted by how far it lies from the smoothed level."""
    degrees: float
    """Degrees of freedom; 4 is usual."""


Outliers_heavy_tailed = TypedDict("Outliers_heavy_tailed", {"heavy_tailed": "Outliers_heavy_tailed_fields"})

# What to do with a reading far from what was expected.
Outliers: TypeAlias = Union[Literal['trusted'], "Outliers_clipped", "Outliers_inflated", "Outliers_heavy_tailed"]

Outlook_planning = TypedDict("Outlook_planning", {"planning": "Training"})

Outlook_study = TypedDict("Outlook_study", {"study": "Study"})

Outlook_own = TypedDict("Outlook_own", {"own": "OwnOutlook"})

# The decline to reckon with. One model holds for the whole of an answer; models are never joined in silence. Who
# wants to join two says so with an own outlook.
Outlook: TypeAlias = Union["Outlook_planning", "Outlook_study", "Outlook_own"]

class Override(TypedDict):
    """The coach overrules the gate for one lift. Upward it needs a reason and an end; downward it needs neither,
    and without an end it lowers the granted load for good.
    """
    lift: Name
    """Id of the lift."""
    load: Mass
    """The load allowed instead."""
    who: Name
    """Who."""
    why: NotRequired[str]
    """Why."""
    expires: NotRequired[Day]
    """Last day it holds."""


# What ended the coach's override upward.
OverrideEnd: TypeAlias = Union[Literal['break', 'held_lower', 'illness', 'stop', 'step_back', 'step', 'move', 'place_gone', 'other_implement']]

class OverrideInForce(TypedDict):
    """An override in force."""
    load: Mass
    """Load allowed by it."""
    expires: Day
    """Last day it holds."""
    who: Name
    """Who."""
    event: float
    """Its event."""
    eases: NotRequired[bool]
    """It asked for no more than was granted when it was given, and asks for no more ever since."""


class OverrideInForceInput(TypedDict):
    """An override in force."""
    load: MassInput
    """Load allowed by it."""
    expires: Day
    """Last day it holds."""
    who: Name
    """Who."""
    event: float
    """Its event."""
    eases: NotRequired[bool]
    """It asked for no more than was granted when it was given, and asks for no more ever since."""


class OverrideInput(TypedDict):
    """The coach overrules the gate for one lift. Upward it needs a reason and an end; downward it needs neither,
    and without an end it lowers the granted load for good.
    """
    lift: Name
    """Id of the lift."""
    load: MassInput
    """The load allowed instead."""
    who: Name
    """Who."""
    why: NotRequired[str]
    """Why."""
    expires: NotRequired[Day]
    """Last day it holds."""


class OverrideNow(TypedDict):
    """An override in force, with what was said."""
    load: Mass
    """Load allowed by it."""
    until: Day
    """Last day it holds."""
    waits: bool
    """It allows more than is granted, and waits: after a break, a stop or a step back, while away, with pain, an open or unasked
    question, a day not known or below the usual, an event not understood, or alone without pins.
    """
    who: Name
    """Who gave it."""
    why: NotRequired[str]
    """Why."""


class OwnCurve(TypedDict):
    """A lifter's own curve."""
    form: CurveForm
    """Its form."""
    one_rm: Kilograms
    """The maximum: the anchor with the step of the first repetition."""
    one_rm_interval: Interval
    """Where it lies, in kg."""
    anchor: Kilograms
    """Load that the curve gives at one repetition: what loads for repetitions are worked out from."""
    slope: float
    """Slope a repetition."""
    slope_interval: Interval
    """Where the slope lies."""
    learned: float
    """How much of the prior's variance of the slope the own sets removed: 0 nothing, 1 everything."""
    scatter: float
    """Used sets beside the curve, divided by their stated spread: root mean square. Above 1 the intervals are
    widened by it.
    """
    sets: list[SetUse]
    """What became of every set; the weight is 1 for a set on the curve and falls for one that lies off."""


class OwnOutlook(TypedDict):
    """A decline of the caller's own."""
    name: Name
    """What to call it."""
    population: str
    """Who it describes."""
    slowest: Curve
    """The slowest fall to reckon with."""
    middle: NotRequired[Curve]
    """The fall thought most likely."""
    fastest: Curve
    """The fastest fall to reckon with."""


# Pain as the lifter rates it, whole numbers from 0 (none) to 10 (worst imaginable).
Pain: TypeAlias = float

class PainAnswer(TypedDict):
    """Joint, tendon or spine pain in one region. Muscle soreness is recorded apart."""
    region: Name
    """Id of the region."""
    score: Pain
    """How much."""
    features: NotRequired[list[PainFeature]]
    """What came with it. Absent means not asked, and pain of which that is not known is taken as new; an empty list
    means asked, and nothing of the kind.
    """


# What came with the pain; each outranks the score.
PainFeature: TypeAlias = Union[Literal['new', 'rising', 'sharp', 'radiating', 'locking', 'numbness', 'pop']]

class PainNow(TypedDict):
    """What is known of pain in a region."""
    region: Name
    """Where."""
    last: list[Day | Pain]
    """The last score, and its day."""
    usual: NotRequired[list[Day | Pain]]
    """The level agreed as usual, and when; absent where none was agreed."""
    clear_needed: float
    """Training days without more pain than usual still to come before a step."""
    persists: bool
    """Rising over three training days, or high on three: a clinician should look at it."""


class Pair(TypedDict):
    """A strict lift and the forgiving lift trained beside it."""
    strict: Name
    """Id of the strict lift."""
    forgiving: Name
    """Id of the forgiving lift."""
    ratio_cap: float
    """The strict load may be at most this part of the forgiving lift's proven load."""


class PairAnswer(TypedDict):
    """The ratio of a pair; always forgiving over strict."""
    stops: list[Reason]
    """Every stop of the lifter, whatever is asked about; empty where nothing is stopped. Shown before anything else."""
    today: Day
    """The day it was made for."""
    strict: Name
    """Id of the strict lift."""
    forgiving: Name
    """Id of the forgiving lift."""
    loads: PairLoads
    """The loads looked at."""
    ratio: NotRequired[float]
    """Ratio of the two loads."""
    own: VariantRatio
    """Ratio of the two strengths, from estimates of the same weeks, with its interval; the prior alone without any."""
    band: NotRequired[Interval]
    """Where the ratio of a single week lies in nine of ten, from the lifter's own weeks; absent below eight of them."""
    prior: Interval
    """What was believed before own data, with 95 %."""
    replaces_prior: bool
    """Whether the own ratio should stand in place of the prior."""
    cap: NotRequired[float]
    """The strict load may be at most this part of the forgiving lift's proven load."""
    place: PairPlace
    """Where the two loads stand."""
    missing: list[Lacking]
    """What nobody wrote down."""
    sources: list[str]
    """Rows of the registry that the numbers come from."""
    cautions: list[Caution]
    """What to show beside it."""


class PairInput(TypedDict):
    """A strict lift and the forgiving lift trained beside it."""
    strict: Name
    """Id of the strict lift."""
    forgiving: Name
    """Id of the forgiving lift."""
    ratio_cap: NotRequired[float]
    """The strict load may be at most this part of the forgiving lift's proven load."""


class PairLoads(TypedDict):
    """Two loads to look at in place of those last lifted."""
    strict: NotRequired[Mass]
    """Of the strict lift; absent means that last lifted."""
    forgiving: NotRequired[Mass]
    """Of the forgiving lift; absent means that last lifted."""


class PairLoadsInput(TypedDict):
    """Two loads to look at in place of those last lifted."""
    strict: NotRequired[MassInput]
    """Of the strict lift; absent means that last lifted."""
    forgiving: NotRequired[MassInput]
    """Of the forgiving lift; absent means that last lifted."""


# Where the two loads stand.
PairPlace: TypeAlias = Union[Literal['unknown', 'usual', 'strict_higher', 'forgiving_ahead', 'above_cap']]

class PairedEstimate(TypedDict):
    """Estimates of both variants from the same days or weeks, in kg with standard errors."""
    strict: float
    """The strict variant."""
    strict_error: float
    """Its standard error."""
    forgiving: float
    """The forgiving variant."""
    forgiving_error: float
    """Its standard error."""


class ParameterCorrelation(TypedDict):
    """Two parameters and how they go together."""
    first: ResponseParameter
    """One parameter of the pair."""
    second: ResponseParameter
    """The other one."""
    correlation: float
    """Their correlation."""


class PartSummary(TypedDict):
    """Sets, repetitions and load of one lift or region."""
    name: str
    """Name of the lift or region."""
    sets: float
    """Work sets."""
    repetitions: float
    """Repetitions."""
    volume_load: Kilograms
    """Load times repetitions."""
    heaviest: Mass
    """Heaviest load."""
    training_days: float
    """Days on which it was trained."""


class PassReason_set_not_scored_fields(TypedDict):
    """Nobody counted acceptable repetitions in this set, or none was done."""
    set: float
    """Work set."""


PassReason_set_not_scored = TypedDict("PassReason_set_not_scored", {"set_not_scored": "PassReason_set_not_scored_fields"})

class PassReason_lifter_marks_only_fields(TypedDict):
    """Only the lifter marked this set, and the rules do not count that."""
    set: float
    """Work set."""


PassReason_lifter_marks_only = TypedDict("PassReason_lifter_marks_only", {"lifter_marks_only": "PassReason_lifter_marks_only_fields"})

class PassReason_critical_not_met_fields(TypedDict):
    """A critical criterion was lost."""
    set: float
    """Work set."""
    criterion: Name
    """Which criterion."""


PassReason_critical_not_met = TypedDict("PassReason_critical_not_met", {"critical_not_met": "PassReason_critical_not_met_fields"})

class PassReason_critical_borderline_fields(TypedDict):
    """A critical criterion was borderline."""
    set: float
    """Work set."""
    criterion: Name
    """Which criterion."""


PassReason_critical_borderline = TypedDict("PassReason_critical_borderline", {"critical_borderline": "PassReason_critical_borderline_fields"})

class PassReason_critical_not_seen_fields(TypedDict):
    """A critical criterion was not seen in a set in which it is judged."""
    set: float
    """Work set."""
    criterion: Name
    """Which criterion."""


PassReason_critical_not_seen = TypedDict("PassReason_critical_not_seen", {"critical_not_seen": "PassReason_critical_not_seen_fields"})

class PassReason_criterion_not_seen_fields(TypedDict):
    """A criterion was seen in none of the sets."""
    criterion: Name
    """Which criterion."""


PassReason_criterion_not_seen = TypedDict("PassReason_criterion_not_seen", {"criterion_not_seen": "PassReason_criterion_not_seen_fields"})

class PassReason_early_miss_fields(TypedDict):
    """A repetition was missed among the first of the first work set, where none may be."""
    rep: NotRequired[float]
    """First failing repetition, where it was recorded."""
    clean: float
    """Repetitions that had to be clean."""


PassReason_early_miss = TypedDict("PassReason_early_miss", {"early_miss": "PassReason_early_miss_fields"})

class PassReason_early_miss_possible_fields(TypedDict):
    """The first work set had a miss and nobody recorded where; it may have been among the first repetitions."""
    clean: float
    """Repetitions that had to be clean."""


PassReason_early_miss_possible = TypedDict("PassReason_early_miss_possible", {"early_miss_possible": "PassReason_early_miss_possible_fields"})

class PassReason_first_set_misses_fields(TypedDict):
    """More repetitions were missed in the first work set than it may have by itself."""
    misses: float
    """Missed."""
    allowed: float
    """Allowed."""


PassReason_first_set_misses = TypedDict("PassReason_first_set_misses", {"first_set_misses": "PassReason_first_set_misses_fields"})

class PassReason_too_many_misses_fields(TypedDict):
    """More repetitions were missed than allowed."""
    misses: float
    """Missed."""
    allowed: float
    """Allowed."""


PassReason_too_many_misses = TypedDict("PassReason_too_many_misses", {"too_many_misses": "PassReason_too_many_misses_fields"})

# Why a set or a session did not pass. Work sets are numbered from 1.
PassReason: TypeAlias = Union[Literal['no_work_set', 'next_morning_flare'], "PassReason_set_not_scored", "PassReason_lifter_marks_only", "PassReason_critical_not_met", "PassReason_critical_borderline", "PassReason_critical_not_seen", "PassReason_criterion_not_seen", "PassReason_early_miss", "PassReason_early_miss_possible", "PassReason_first_set_misses", "PassReason_too_many_misses"]

class PassRules(TypedDict):
    """Rules by which marks become a set pass and a session pass. All are this project's own defaults."""
    miss_percent: float
    """Share of the scored repetitions that may be missed, in percent, rounded down to whole repetitions."""
    misses_at_least: float
    """Misses allowed however few repetitions were scored."""
    clean_first_reps: float
    """First repetitions of the first work set, none of which may be missed."""
    first_set_must_pass: bool
    """Whether the first work set, done cold, must pass by itself."""
    unscored_sets_allowed: float
    """Work sets after the first that may be left unscored in a session that passes."""
    every_criterion_seen: bool
    """Whether every criterion must have been seen in at least one set, by somebody whose marks count."""
    critical_borderline_passes: bool
    """Whether a borderline mark on a critical criterion may pass."""
    lifter_marks_count: bool
    """Whether the lifter's own marks count toward the gate."""


class PassRulesInput(TypedDict):
    """Rules by which marks become a set pass and a session pass. All are this project's own defaults."""
    miss_percent: NotRequired[float]
    """Share of the scored repetitions that may be missed, in percent, rounded down to whole repetitions."""
    misses_at_least: NotRequired[float]
    """Misses allowed however few repetitions were scored."""
    clean_first_reps: NotRequired[float]
    """First repetitions of the first work set, none of which may be missed."""
    first_set_must_pass: NotRequired[bool]
    """Whether the first work set, done cold, must pass by itself."""
    unscored_sets_allowed: NotRequired[float]
    """Work sets after the first that may be left unscored in a session that passes."""
    every_criterion_seen: NotRequired[bool]
    """Whether every criterion must have been seen in at least one set, by somebody whose marks count."""
    critical_borderline_passes: NotRequired[bool]
    """Whether a borderline mark on a critical criterion may pass."""
    lifter_marks_count: NotRequired[bool]
    """Whether the lifter's own marks count toward the gate."""


class PassRun(TypedDict):
    """At least `acceptable` of `of` scored repetitions acceptable, in so many passing sessions in a row on
    distinct days.

    A session counts if its verdict is a pass, at least `of` repetitions were scored, and the acceptable share
    is at least `acceptable / of`. A session that failed, or whose misses break the share, starts the run
    again; on a confirmed day below the usual it changes nothing, but no more than `neutral_fails` times in a row, and the
    loss of a critical criterion always starts the run again. What was not scored changes nothing.
    """
    acceptable: float
    of: float
    sessions: float
    neutral_fails: NotRequired[float]
    rater_change_restarts: NotRequired[bool]


# A verdict of the past and what the work sets then showed.
PastVerdict = TypedDict("PastVerdict", {"class": "DayClass", "fell_short": "bool"})

class Person(TypedDict):
    """The person: day of birth, and sex where it is known."""
    born: Day
    """Day of birth."""
    sex: NotRequired[Sex]
    """Sex, for tables that differ by it; absent where not known."""


class Phase(TypedDict):
    """A stretch of years."""
    until: Age
    """Age at its end; it begins where the one before ends, the first one now."""
    course: PhaseCourse
    """What happens during it."""


PhaseCourse_gain = TypedDict("PhaseCourse_gain", {"gain": "Spread"})

PhaseCourse_lapse = TypedDict("PhaseCourse_lapse", {"lapse": "Spread"})

PhaseCourse_return = TypedDict("PhaseCourse_return", {"return": "Spread"})

# What happens during a phase.
PhaseCourse: TypeAlias = Union[Literal['hold', 'decline', 'maintenance_dose'], "PhaseCourse_gain", "PhaseCourse_lapse", "PhaseCourse_return"]

class Phrase(TypedDict):
    """A phrase of `phrases` with its key."""
    key: str
    """Its key."""
    text: str
    """The English; names in braces stand for values."""


class Pieces(TypedDict):
    """Dumbbells or kettlebells of fixed mass."""
    id: Name
    masses: list[Mass]


class PiecesInput(TypedDict):
    """Dumbbells or kettlebells of fixed mass."""
    id: Name
    masses: Sequence[MassInput]


class Pin(TypedDict):
    """A loading pin, or a belt with a chain: discs on one end only, odd ones included."""
    id: Name
    mass: Mass
    collar: Mass
    room: NotRequired[Length]


class PinInput(TypedDict):
    """A loading pin, or a belt with a chain: discs on one end only, odd ones included."""
    id: Name
    mass: MassInput
    collar: MassInput
    room: NotRequired[Length]


class Place(TypedDict):
    """Where a lift stands: rung, range and tempo, as numbers in the lists of its parameters, from 0. Technique is judged
    at a place and does not carry over to another.

    Height belongs to the place: a range of a lift from the floor or from pins is the height of the bar's centre, and
    whatever makes the lift lighter keeps it.
    """
    rung: float
    """Number in the list of rungs."""
    range: float
    """Number in the list of ranges, easiest first."""
    tempo: float
    """Number in the list of tempos, easiest first."""


class PlaceInput(TypedDict):
    """Where a lift stands: rung, range and tempo, as numbers in the lists of its parameters, from 0. Technique is judged
    at a place and does not carry over to another.

    Height belongs to the place: a range of a lift from the floor or from pins is the height of the bar's centre, and
    whatever makes the lift lighter keeps it.
    """
    rung: NotRequired[float]
    """Number in the list of rungs."""
    range: NotRequired[float]
    """Number in the list of ranges, easiest first."""
    tempo: NotRequired[float]
    """Number in the list of tempos, easiest first."""


class PlacedDisc(TypedDict):
    """One disc in its place on the bar."""
    kind: float
    """Its kind: the place in the stock, from 0."""
    nominal: Face
    """Face value; written in the unit in which the disc is marked."""
    mass: Mass
    """Best known mass."""
    diameter: NotRequired[Length]
    """Outer diameter, where it is known."""


class Plan(TypedDict):
    """What the coach intends for the coming sessions."""
    format: str
    """Always `bismar-plan`."""
    version: float
    """Version of the format."""
    lifts: list[LiftPlan]
    """The lifts of the next session in their order."""
    unavailable: NotRequired[list[Name]]
    """Ids of implements that are taken or missing today."""
    minutes: NotRequired[float]
    """Minutes there are; absent means enough. Where the day's report says fewer, those count."""
    easy_week: NotRequired[bool]
    """This is a planned easy week."""
    years: NotRequired[YearsAhead]
    """What is planned beyond the coming sessions."""


class PlanInput(TypedDict):
    """What the coach intends for the coming sessions."""
    format: str
    """Always `bismar-plan`."""
    version: float
    """Version of the format."""
    lifts: Sequence[LiftPlanInput]
    """The lifts of the next session in their order."""
    unavailable: NotRequired[Sequence[Name]]
    """Ids of implements that are taken or missing today."""
    minutes: NotRequired[float]
    """Minutes there are; absent means enough. Where the day's report says fewer, those count."""
    easy_week: NotRequired[bool]
    """This is a planned easy week."""
    years: NotRequired[YearsAheadInput]
    """What is planned beyond the coming sessions."""


# Days without training that are known ahead: a journey, an operation, a season.
PlannedGap = TypedDict("PlannedGap", {"name": "Name", "from": "Day", "to": "Day"})

# One line of the planning bands.
PlanningBand = TypedDict("PlanningBand", {"from": "Age", "to": "Age", "slowest": "AnnualLoss", "middle": "AnnualLoss", "fastest": "AnnualLoss"})

class Policy(TypedDict):
    """Numbers of the rules. Every default is this project's choice."""
    cooling_off_days: float
    """Days between two moves of one lift."""
    region_window_days: float
    """Window, in days, for moves that share a region."""
    region_moves: float
    """Moves allowed in that window."""
    window_days: float
    """Window, in days, over which the load of a lift may grow by `window_cap`."""
    window_cap: float
    """Growth allowed over that window, as a part of the load."""
    freshness_days: float
    """Days after the last session within which a move may be taken."""
    offer_days: float
    """Days for which an open gate stays on offer."""
    learning_sessions: float
    """Sessions of calibration on a new rung."""
    pain_block_from: float
    """Score, of 0 to 10, from which pain blocks and needs clear sessions."""
    pain_stop_above: float
    """Score, of 0 to 10, above which pain stops the region."""
    clear_sessions: float
    """Clear sessions after blocking pain."""
    fails_to_step_back: float
    """Fails in a row that step a lift back."""
    step_back_cap: float
    """Largest automatic decrease, as a part of the load."""
    step_back_passes: float
    """Passes that end a step back."""
    return_passes: float
    """Passing sessions that end a return."""
    rung_load: float
    """Load on a harder rung as a part of the old load, where no ratio of the lifter's own is lower."""
    neutral_fails: float
    """Fails on a confirmed day below the usual that count as no information, in a row."""
    proof_days: float
    """Days for which the forgiving lift's proof counts."""
    pair_rest_days: float
    """Full rest days between the lifts of a pair; from age 70 one more."""
    clearance_required: bool
    """Whether a move needs a clearance in force."""
    clearance_days: float
    """Days a clearance holds where it names no end."""
    usual_review_days: float
    """Days after which an agreed usual level of pain is to be looked at again."""
    probe_days: float
    """Days after which a maintained lift is looked at again, and after a move what was weak before it."""
    pair_review_days: float
    """Days for which a strict lift's gate stays closed before its pair is to be looked at."""
    pair_review_growth: float
    """Growth of the forgiving lift meanwhile, as a part of its load, from which the pair is to be looked at."""
    reserve_to_advance: Rir
    """Repetitions in reserve that a gate's effort cap asks for; a session that does not say what was asked for is held against no
    fewer.
    """
    reserve_floor: Rir
    """Fewest repetitions in reserve that a plan may ask for without an override."""
    automatic_acceptance: bool
    """Take a move without asking the coach."""
    layoff: list[LayoffRow]
    """The layoff table, shortest gap first."""
    older_from_years: float
    """Age from which a layoff counts one row further down; an unknown age counts so too."""


class PolicyInput(TypedDict):
    """Numbers of the rules. Every default is this project's choice."""
    cooling_off_days: NotRequired[float]
    """Days between two moves of one lift."""
    region_window_days: NotRequired[float]
    """Window, in days, for moves that share a region."""
    region_moves: NotRequired[float]
    """Moves allowed in that window."""
    window_days: NotRequired[float]
    """Window, in days, over which the load of a lift may grow by `window_cap`."""
    window_cap: NotRequired[float]
    """Growth allowed over that window, as a part of the load."""
    freshness_days: NotRequired[float]
    """Days after the last session within which a move may be taken."""
    offer_days: NotRequired[float]
    """Days for which an open gate stays on offer."""
    learning_sessions: NotRequired[float]
    """Sessions of calibration on a new rung."""
    pain_block_from: NotRequired[float]
    """Score, of 0 to 10, from which pain blocks and needs clear sessions."""
    pain_stop_above: NotRequired[float]
    """Score, of 0 to 10, above which pain stops the region."""
    clear_sessions: NotRequired[float]
    """Clear sessions after blocking pain."""
    fails_to_step_back: NotRequired[float]
    """Fails in a row that step a lift back."""
    step_back_cap: NotRequired[float]
    """Largest automatic decrease, as a part of the load."""
    step_back_passes: NotRequired[float]
    """Passes that end a step back."""
    return_passes: NotRequired[float]
    """Passing sessions that end a return."""
    rung_load: NotRequired[float]
    """Load on a harder rung as a part of the old load, where no ratio of the lifter's own is lower."""
    neutral_fails: NotRequired[float]
    """Fails on a confirmed day below the usual that count as no information, in a row."""
    proof_days: NotRequired[float]
    """Days for which the forgiving lift's proof counts."""
    pair_rest_days: NotRequired[float]
    """Full rest days between the lifts of a pair; from age 70 one more."""
    clearance_required: NotRequired[bool]
    """Whether a move needs a clearance in force."""
    clearance_days: NotRequired[float]
    """Days a clearance holds where it names no end."""
    usual_review_days: NotRequired[float]
    """Days after which an agreed usual level of pain is to be looked at again."""
    probe_days: NotRequired[float]
    """Days after which a maintained lift is looked at again, and after a move what was weak before it."""
    pair_review_days: NotRequired[float]
    """Days for which a strict lift's gate stays closed before its pair is to be looked at."""
    pair_review_growth: NotRequired[float]
    """Growth of the forgiving lift meanwhile, as a part of its load, from which the pair is to be looked at."""
    reserve_to_advance: NotRequired[Rir]
    """Repetitions in reserve that a gate's effort cap asks for; a session that does not say what was asked for is held against no
    fewer.
    """
    reserve_floor: NotRequired[Rir]
    """Fewest repetitions in reserve that a plan may ask for without an override."""
    automatic_acceptance: NotRequired[bool]
    """Take a move without asking the coach."""
    layoff: NotRequired[Sequence[LayoffRow]]
    """The layoff table, shortest gap first."""
    older_from_years: NotRequired[float]
    """Age from which a layoff counts one row further down; an unknown age counts so too."""


# The three lifts of the study.
PowerLift: TypeAlias = Union[Literal['squat', 'bench_press', 'deadlift']]

# How long the lifter has trained this lift.
Practice: TypeAlias = Union[Literal['untrained', 'eighteen_weeks']]

# The two lifts of the study.
PressLift: TypeAlias = Union[Literal['chest_press', 'leg_press']]

class Projection(TypedDict):
    """A strength carried to another age by one model."""
    strength: Band
    """Strength at the other age, in the unit given."""
    model: str
    """The model: a study, the planning bands, or the caller's own name."""
    population: str
    """Who the model describes."""
    cautions: list[Caution]
    """What to show beside it; always says that it is not a prognosis."""


class PublishedFigure(TypedDict):
    """One published figure."""
    source: str
    """Short name of the work."""
    citation: str
    """Where it appeared: journal or publisher, volume and pages."""
    finding: str
    """Key of what was found."""
    population: str
    """Who was measured."""
    value: NotRequired[float]
    """The figure, where there is a single one."""
    low: NotRequired[float]
    """Lower end."""
    high: NotRequired[float]
    """Upper end."""
    ends: Ends
    """What the ends are."""
    unit: str
    """Unit of all three."""
    cautions: list[Caution]
    """What to show beside it."""


class Purchase(TypedDict):
    """What each pair would do."""
    now: NotRequired[Gap]
    """The largest gap as it is."""
    best: NotRequired[Offer]
    """The pair that leaves the smallest largest gap, the lighter of two that do equally; none if no pair
    makes it smaller.
    """
    offers: list[Offer]
    """Every pair in the order asked."""


class Purpose_maintain_fields(TypedDict):
    """Deliberately kept where it is."""
    not_below: NotRequired[Mass]
    """Down to this load it is on plan."""


Purpose_maintain = TypedDict("Purpose_maintain", {"maintain": "Purpose_maintain_fields"})

# What a lift is for in this block, with the band of a lift that is kept.
Purpose: TypeAlias = Union[Literal['train', 'rest', 'retire'], "Purpose_maintain"]

class PurposeInput_maintain_fields(TypedDict):
    """Deliberately kept where it is."""
    not_below: NotRequired[MassInput]
    """Down to this load it is on plan."""


PurposeInput_maintain = TypedDict("PurposeInput_maintain", {"maintain": "PurposeInput_maintain_fields"})

# What a lift is for in this block, with the band of a lift that is kept.
PurposeInput: TypeAlias = Union[Literal['train', 'rest', 'retire'], "PurposeInput_maintain"]

# A form of the push-up.
PushUp: TypeAlias = Union[Literal['regular', 'knees', 'feet_up_30_cm', 'feet_up_60_cm', 'hands_up_30_cm', 'hands_up_60_cm']]

# Where in the push-up the body is held still.
PushUpPosition: TypeAlias = Union[Literal['regular_up', 'regular_down', 'knees_up', 'knees_down']]

# Why nothing is said about a week.
QuietReason: TypeAlias = Union[Literal['not_recorded', 'rested', 'short_history', 'after_break']]

class Rack(TypedDict):
    """The loads of one lift today, at the rack."""
    stops: list[Reason]
    """Every stop of the lifter, whatever is asked about; empty where nothing is stopped. Shown before anything else."""
    today: Day
    """The day it was made for."""
    lift: Name
    """Id of the lift."""
    place: Place
    """Where it is done today."""
    sets: list[RackSet]
    """Warm-up sets rising to the work sets; empty where nothing is lifted today."""
    moves_each_end: float
    """Discs handled at each end in all."""
    proved: bool
    """No other way to make these loads handles fewer; false where the height decides which discs are used."""
    weighs: NotRequired[MassBand]
    """The least and the most that the work load may weigh; absent without a rule of tolerance, or a bar."""
    grip: NotRequired[GripHeight]
    """Where the hands are, for a bar that begins at a height."""
    step: NotRequired[StepReality]
    """The next load that the equipment makes, how large a step that is, and at how many repetitions here it is bridged.
    A fact about the equipment: whether there is a step is for the gate to say.
    """
    own_curve: bool
    """The repetitions are by the lifter's own curve; else by a published equation (Epley 1985)."""
    missing: list[Lacking]
    """What nobody wrote down."""
    sources: list[str]
    """Rows of the registry that the numbers come from."""
    cautions: list[Caution]
    """What to show beside it."""


class RackCheck(TypedDict):
    """What follows from the setup."""
    cautions: list[Caution]
    """What to say beside the answer."""
    reserve_floor: NotRequired[Rir]
    """Repetitions that must stay in reserve; none where the setup asks for none."""
    step_up_open: bool
    """Whether the setup leaves a step up open. It never grants one."""


# What kind of lift stands before the rack, as far as being caught under the bar goes.
RackLift: TypeAlias = Union[Literal['bench', 'squat', 'other']]

class RackSet(TypedDict):
    """One load of today and how the bar gets there from the one before."""
    load: Mass
    """The load."""
    reps: float
    """Repetitions."""
    warm_up: bool
    """A warm-up set; else the work sets."""
    moves: NotRequired[EndMoves]
    """Discs that come off and go on at each end; absent where the load is not made of discs on a bar."""
    handling: NotRequired[HandlingOrder]
    """In which order, the ends in turn, and how much heavier one end is on the way; absent where a disc is heavier than
    one end may be.
    """


class RackSetup(TypedDict):
    """How the rack is set for a lift."""
    lift: RackLift
    """The lift."""
    company: NotRequired[Company]
    """Who is there; not recorded counts as alone."""
    pins: NotRequired[Length]
    """Height of the pins or straps that catch the bar; none if there are none, or none was recorded."""


# Who gave the marks.
Rater: TypeAlias = Union[Literal['coach', 'lifter', 'video']]

class RaterPair(TypedDict):
    """Two people who marked the same sets."""
    first: WhoMarks
    """The one."""
    second: WhoMarks
    """The other."""
    sets: float
    """Sets that both marked."""
    counted: float
    """Sets in which both counted acceptable repetitions, and those in which they counted as many."""
    same_count: float
    """Of these, with the same count."""
    all: Alike
    """Over every criterion."""
    criteria: list[list[Alike | Name]]
    """By criterion, in the order in which they were first marked."""


class Raters(TypedDict):
    """Agreement between those who mark."""
    stops: list[Reason]
    """Every stop of the lifter, whatever is asked about, as far as the log can be read; empty where nothing is stopped. Shown
    before anything else.
    """
    today: Day
    """The day it was made for."""
    pairs: list[RaterPair]
    """Each two who marked the same sets."""
    missing: list[Lacking]
    """What nobody wrote down."""
    sources: list[str]
    """Rows that the numbers come from."""
    cautions: list[Caution]
    """What to show beside it."""


RatioAnswer_value = TypedDict("RatioAnswer_value", {"value": "float"})

RatioAnswer_undefined = TypedDict("RatioAnswer_undefined", {"undefined": "RatioGap"})

# The quotient, or why there is none.
RatioAnswer: TypeAlias = Union["RatioAnswer_value", "RatioAnswer_undefined"]

# Why there is no quotient.
RatioGap: TypeAlias = Union[Literal['day_not_recorded', 'short_history', 'usual_load_zero', 'usual_load_small']]

RatioMethod_weighted = TypedDict("RatioMethod_weighted", {"weighted": "WeightedStart"})

# How recent and usual load are taken.
RatioMethod: TypeAlias = Union[Literal['rolling_coupled', 'rolling_uncoupled'], "RatioMethod_weighted"]

class RatioOptions(TypedDict):
    """Windows, method and guards of a ratio."""
    method: RatioMethod
    """Method."""
    recent_days: float
    """Days that count as recent."""
    usual_days: float
    """Days that count as usual, recent ones included; no ratio with fewer days of history."""
    smallest_usual_share: float
    """No ratio while usual load is below this share of the lifter's own typical usual load: 0.75 (our choice)."""
    typical_days: float
    """Days over which the typical usual load is looked for: 182 (our choice)."""


class RatioPrior(TypedDict):
    """What is believed of a ratio before the lifter's own data: 95 % between two ends, on a logarithmic scale.

    Invariant: `0 < low < high`, both at most 10.
    """
    low: float
    high: float


class Reachable(TypedDict):
    """What can be made in a range."""
    totals: list[Mass]
    """Every loadable total, rising."""
    largest_gap: NotRequired[Gap]
    """The largest gap between two neighbours of the list; the lowest of several equal ones."""


class Reading(TypedDict):
    """One value measured or estimated on one day, and how far it may be off."""
    day: Day
    """The day."""
    value: float
    """The value, such as an estimated one-repetition maximum in kg."""
    variance: float
    """Its variance (square of its standard error), above 0."""


class Reason_symptom_stop_fields(TypedDict):
    """A sign that stops everything was reported; only a clearance and the coach's sign-off reopen."""
    signs: list[StopSign]
    """Which signs; none where a clearance was refused."""
    since: Day
    """When."""


Reason_symptom_stop = TypedDict("Reason_symptom_stop", {"symptom_stop": "Reason_symptom_stop_fields"})

class Reason_pain_stop_fields(TypedDict):
    """Pain stopped every lift of the region; only a clearance and the coach's sign-off reopen."""
    region: Name
    """Where."""
    since: Day
    """When."""
    features: list[PainFeature]
    """What came with it, where that was said."""


Reason_pain_stop = TypedDict("Reason_pain_stop", {"pain_stop": "Reason_pain_stop_fields"})

class Reason_sign_off_refused_fields(TypedDict):
    """The coach's last sign-off lifted no stop; told until one does."""
    region: NotRequired[Name]
    """The stopped region; none for a stop of everything."""
    on: Day
    """Signed off on that day."""
    why: SignOffRefusal
    """Why it does not count."""


Reason_sign_off_refused = TypedDict("Reason_sign_off_refused", {"sign_off_refused": "Reason_sign_off_refused_fields"})

class Reason_clearance_expired_fields(TypedDict):
    """The clearance has run out."""
    on: Day
    """Its last day."""


Reason_clearance_expired = TypedDict("Reason_clearance_expired", {"clearance_expired": "Reason_clearance_expired_fields"})

class Reason_clearance_limit_fields(TypedDict):
    """A clearance limits the load."""
    load: Mass
    """To this."""


Reason_clearance_limit = TypedDict("Reason_clearance_limit", {"clearance_limit": "Reason_clearance_limit_fields"})

class Reason_asks_first_fields(TypedDict):
    """Fever, dizziness, palpitations, a fall or a new medicine, said and not yet answered: somebody's word comes first."""
    ask: Ask
    """Which."""
    since: Day
    """Said on that day."""


Reason_asks_first = TypedDict("Reason_asks_first", {"asks_first": "Reason_asks_first_fields"})

class Reason_limit_without_lift_fields(TypedDict):
    """A clearance limits a region that no lift loads any more, so nobody can tell what it still concerns."""
    region: Name
    """Where."""


Reason_limit_without_lift = TypedDict("Reason_limit_without_lift", {"limit_without_lift": "Reason_limit_without_lift_fields"})

class Reason_pain_block_fields(TypedDict):
    """Pain was high enough to block moves until enough clear sessions have passed."""
    region: Name
    """Where."""
    clear_sessions: float
    """Clear sessions still to come."""
    score: float
    """The last score told there, of 10; 0 for none."""


Reason_pain_block = TypedDict("Reason_pain_block", {"pain_block": "Reason_pain_block_fields"})

class Reason_usual_pain_unsteady_fields(TypedDict):
    """Pain at or below the agreed usual level has not yet been steady for three sessions."""
    region: Name
    """Where."""
    clear_sessions: float
    """Steady training days still to come."""


Reason_usual_pain_unsteady = TypedDict("Reason_usual_pain_unsteady", {"usual_pain_unsteady": "Reason_usual_pain_unsteady_fields"})

class Reason_usual_pain_review_fields(TypedDict):
    """The agreed usual level of pain is due to be looked at again; until then it allows nothing."""
    region: Name
    """Where."""
    agreed: Day
    """When it was agreed."""


Reason_usual_pain_review = TypedDict("Reason_usual_pain_review", {"usual_pain_review": "Reason_usual_pain_review_fields"})

class Reason_pain_not_asked_fields(TypedDict):
    """Nobody asked about pain in the last session, or today before the next one; missing is not zero."""
    when: Unasked
    """When nobody asked."""


Reason_pain_not_asked = TypedDict("Reason_pain_not_asked", {"pain_not_asked": "Reason_pain_not_asked_fields"})

class Reason_pain_missing_after_high_fields(TypedDict):
    """The last report in the region was high and today's is missing: technique work only."""
    region: Name
    """Where."""


Reason_pain_missing_after_high = TypedDict("Reason_pain_missing_after_high", {"pain_missing_after_high": "Reason_pain_missing_after_high_fields"})

class Reason_pass_provisional_fields(TypedDict):
    """The last pass waits for the next-morning answer."""
    session: float
    """The session."""


Reason_pass_provisional = TypedDict("Reason_pass_provisional", {"pass_provisional": "Reason_pass_provisional_fields"})

class Reason_learning_not_done_fields(TypedDict):
    """The lift is still in its calibration."""
    done: float
    """Sessions done."""
    needed: float
    """Sessions asked for."""


Reason_learning_not_done = TypedDict("Reason_learning_not_done", {"learning_not_done": "Reason_learning_not_done_fields"})

class Reason_returning_fields(TypedDict):
    """The lift comes back after a break, and no higher than before it."""
    at_most: Mass
    """Granted load before the break."""


Reason_returning = TypedDict("Reason_returning", {"returning": "Reason_returning_fields"})

class Reason_stop_lifted_fields(TypedDict):
    """The way back began at a stop, which a clearance and the coach's sign-off lifted."""
    on: Day
    """When."""


Reason_stop_lifted = TypedDict("Reason_stop_lifted", {"stop_lifted": "Reason_stop_lifted_fields"})

class Reason_maintaining_band_fields(TypedDict):
    """The lift is kept, and down to this load it is on plan."""
    not_below: Mass
    """The lowest load on plan."""


Reason_maintaining_band = TypedDict("Reason_maintaining_band", {"maintaining_band": "Reason_maintaining_band_fields"})

class Reason_probe_due_fields(TypedDict):
    """A scored session at the granted place is due by then: the lift is kept, or a point of technique was weak
    before the last move.
    """
    by: Day
    """Last day of it."""
    criterion: NotRequired[Name]
    """What to watch, where something was weak."""


Reason_probe_due = TypedDict("Reason_probe_due", {"probe_due": "Reason_probe_due_fields"})

class Reason_probe_overdue_fields(TypedDict):
    """The look that was due is not done, and its last day is past."""
    since: Day
    """Last day on which it was to be done."""
    criterion: NotRequired[Name]
    """What to watch, where something was weak."""


Reason_probe_overdue = TypedDict("Reason_probe_overdue", {"probe_overdue": "Reason_probe_overdue_fields"})

class Reason_below_band_fields(TypedDict):
    """The lift is kept, and its last session lay below the load down to which it is on plan."""
    load: Mass
    """Heaviest load of that session."""
    not_below: Mass
    """The lowest load on plan."""


Reason_below_band = TypedDict("Reason_below_band", {"below_band": "Reason_below_band_fields"})

class Reason_holding_fields(TypedDict):
    """The lift holds its load: right where it should be."""
    sessions: float
    """Sessions at this place, or there since they are counted anew."""


Reason_holding = TypedDict("Reason_holding", {"holding": "Reason_holding_fields"})

class Reason_counted_anew_fields(TypedDict):
    """Sessions at this place are counted anew since then."""
    since: Day
    """From that day on."""
    why: Restart
    """Why."""


Reason_counted_anew = TypedDict("Reason_counted_anew", {"counted_anew": "Reason_counted_anew_fields"})

class Reason_move_on_offer_fields(TypedDict):
    """The gate is open; a move waits for the coach."""
    until: Day
    """Last day of the offer."""


Reason_move_on_offer = TypedDict("Reason_move_on_offer", {"move_on_offer": "Reason_move_on_offer_fields"})

class Reason_stale_fields(TypedDict):
    """The last session lies too far back."""
    days: float
    """Days since."""
    allowed: float
    """Days allowed."""


Reason_stale = TypedDict("Reason_stale", {"stale": "Reason_stale_fields"})

class Reason_cooling_off_fields(TypedDict):
    """The last move is too recent."""
    days_left: float
    """Days still to wait."""


Reason_cooling_off = TypedDict("Reason_cooling_off", {"cooling_off": "Reason_cooling_off_fields"})

class Reason_region_window_fields(TypedDict):
    """Another lift of the region moved recently."""
    region: Name
    """Where."""
    days_left: float
    """Days still to wait."""


Reason_region_window = TypedDict("Reason_region_window", {"region_window": "Reason_region_window_fields"})

class Reason_window_cap_fields(TypedDict):
    """The load has grown enough for this window of weeks."""
    load: Mass
    """Highest load for now."""
    days_left: NotRequired[float]
    """Days until the window allows the next step; absent where waiting does not make it fit."""


Reason_window_cap = TypedDict("Reason_window_cap", {"window_cap": "Reason_window_cap_fields"})

class Reason_pair_cap_fields(TypedDict):
    """The strict lift may not pass the forgiving lift's proven load."""
    load: Mass
    """Highest load for now."""


Reason_pair_cap = TypedDict("Reason_pair_cap", {"pair_cap": "Reason_pair_cap_fields"})

class Reason_pair_window_fields(TypedDict):
    """The pair has already moved in this window."""
    days_left: float
    """Days still to wait."""


Reason_pair_window = TypedDict("Reason_pair_window", {"pair_window": "Reason_pair_window_fields"})

class Reason_pair_pain_fields(TypedDict):
    """Pain in the strict lift: the forgiving lift holds and starts one step down."""
    region: NotRequired[Name]
    """Where, where its last report still says so."""
    score: NotRequired[float]
    """How much, of 10."""
    on: NotRequired[Day]
    """When that was said."""


Reason_pair_pain = TypedDict("Reason_pair_pain", {"pair_pain": "Reason_pair_pain_fields"})

class Reason_pair_rest_fields(TypedDict):
    """Too few rest days since the other lift of the pair."""
    days: float
    """Full rest days there were."""
    needed: float
    """Full rest days asked for."""


Reason_pair_rest = TypedDict("Reason_pair_rest", {"pair_rest": "Reason_pair_rest_fields"})

class Reason_pair_together_fields(TypedDict):
    """The plan has both lifts of the pair on one day."""
    partner: Name
    """The other one."""


Reason_pair_together = TypedDict("Reason_pair_together", {"pair_together": "Reason_pair_together_fields"})

class Reason_no_loadable_step_fields(TypedDict):
    """Nothing loadable lies within the allowed step."""
    cap: Mass
    """Highest load the cap allows."""
    next: NotRequired[Mass]
    """Next load that the equipment makes, where it makes one."""


Reason_no_loadable_step = TypedDict("Reason_no_loadable_step", {"no_loadable_step": "Reason_no_loadable_step_fields"})

class Reason_ceiling_fields(TypedDict):
    """The coach's ceiling."""
    load: Mass
    """Its load."""


Reason_ceiling = TypedDict("Reason_ceiling", {"ceiling": "Reason_ceiling_fields"})

class Reason_unknown_event_present_fields(TypedDict):
    """The log holds events of a kind that this version does not know; a newer stop may be among them."""
    count: float
    """How many."""


Reason_unknown_event_present = TypedDict("Reason_unknown_event_present", {"unknown_event_present": "Reason_unknown_event_present_fields"})

class Reason_not_at_grant_fields(TypedDict):
    """The last session was not the work granted, so it is training and says nothing about the gate."""
    short: Shortfall
    """In what it differed first."""


Reason_not_at_grant = TypedDict("Reason_not_at_grant", {"not_at_grant": "Reason_not_at_grant_fields"})

class Reason_setup_changed_fields(TypedDict):
    """Height, stance, box, shoes, belt or straps changed, so the comparison of sessions starts anew."""
    since: Day
    """When."""


Reason_setup_changed = TypedDict("Reason_setup_changed", {"setup_changed": "Reason_setup_changed_fields"})

class Reason_pins_moved_fields(TypedDict):
    """The safety pins stand at another height than before."""
    from_mm: float
    """From this height, in millimetres."""
    to_mm: float
    """To this one."""
    on: Day
    """In the session of that day."""


Reason_pins_moved = TypedDict("Reason_pins_moved", {"pins_moved": "Reason_pins_moved_fields"})

class Reason_reserve_short_fields(TypedDict):
    """Sets left less in reserve than was asked for, or than a step needs at the least, in so many of the last three
    sessions.
    """
    sessions: float
    """Sessions."""
    more: float
    """Sessions with enough in reserve still to come."""


Reason_reserve_short = TypedDict("Reason_reserve_short", {"reserve_short": "Reason_reserve_short_fields"})

class Reason_effort_not_said_fields(TypedDict):
    """Nobody said how much the sets left in reserve, in so many of the last three sessions."""
    sessions: float
    """Sessions."""
    more: float
    """Sessions of which it is said still to come."""


Reason_effort_not_said = TypedDict("Reason_effort_not_said", {"effort_not_said": "Reason_effort_not_said_fields"})

class Reason_easier_rung_fields(TypedDict):
    """Nothing lighter can be loaded at this place, so today's work is on the easier rung."""
    rung: Name
    """Which."""


Reason_easier_rung = TypedDict("Reason_easier_rung", {"easier_rung": "Reason_easier_rung_fields"})

class Reason_override_suspended_fields(TypedDict):
    """The coach's override upward waits: until everything is asked today, while pain, a day below the usual, an ask, a
    way back or easing stands, and alone without pins.
    """
    load: Mass
    """Load allowed by it."""


Reason_override_suspended = TypedDict("Reason_override_suspended", {"override_suspended": "Reason_override_suspended_fields"})

class Reason_override_ended_fields(TypedDict):
    """The coach's override upward has ended, by what `by` names."""
    load: Mass
    """Load that was allowed by it."""
    by: OverrideEnd
    """What ended it."""
    place: NamedPlace
    """The place it was for."""


Reason_override_ended = TypedDict("Reason_override_ended", {"override_ended": "Reason_override_ended_fields"})

class Reason_height_off_fields(TypedDict):
    """The bar's centre lies off its height by so much at the nearest way to load it."""
    mm: float
    """Millimetres; above is positive."""


Reason_height_off = TypedDict("Reason_height_off", {"height_off": "Reason_height_off_fields"})

class Reason_height_not_made_fields(TypedDict):
    """No discs and blocks put the bar's centre at this height: no step to it, and none from it. Where the nearest way lies
    lower, today is the lightest load there, or none.
    """
    height: Length
    """The height."""
    off_mm: float
    """How far off the nearest way lies, in millimetres; above is positive."""


Reason_height_not_made = TypedDict("Reason_height_not_made", {"height_not_made": "Reason_height_not_made_fields"})

class Reason_other_implement_fields(TypedDict):
    """The implement became another kind, whose numbers say nothing here: the lift begins anew."""
    implement: Name
    """What it is done with now."""
    load: Mass
    """Load that it begins at."""


Reason_other_implement = TypedDict("Reason_other_implement", {"other_implement": "Reason_other_implement_fields"})

class Reason_pain_persists_fields(TypedDict):
    """Pain rises over three sessions, or stands high for three: a clinician should look at it."""
    region: Name
    """Where."""


Reason_pain_persists = TypedDict("Reason_pain_persists", {"pain_persists": "Reason_pain_persists_fields"})

class Reason_layoff_fields(TypedDict):
    """Days since the region was loaded, and what is left of the load."""
    gap: float
    """Days."""
    row: float
    """Row of the layoff table, 1 being the shortest."""
    load: Mass
    """Load that is granted now."""


Reason_layoff = TypedDict("Reason_layoff", {"layoff": "Reason_layoff_fields"})

class Reason_held_lower_fields(TypedDict):
    """Days of work below what was granted, whatever made it lighter, and what is left of that by the layoff table, no less
    than what was lifted last.
    """
    days: float
    """Days."""
    row: float
    """Row of the layoff table, 1 being the shortest."""
    load: Mass
    """Load that is granted now."""


Reason_held_lower = TypedDict("Reason_held_lower", {"held_lower": "Reason_held_lower_fields"})

class Reason_half_sets_fields(TypedDict):
    """First sessions after a break have half the sets."""
    sessions: float
    """Sessions still to come."""


Reason_half_sets = TypedDict("Reason_half_sets", {"half_sets": "Reason_half_sets_fields"})

class Reason_override_in_force_fields(TypedDict):
    """The coach overruled the gate."""
    load: Mass
    """Load allowed by it."""
    who: Name
    """Who."""
    until: NotRequired[Day]
    """Last day, where it has one."""


Reason_override_in_force = TypedDict("Reason_override_in_force", {"override_in_force": "Reason_override_in_force_fields"})

class Reason_planned_break_fields(TypedDict):
    """The day lies within a planned break."""
    until: NotRequired[Day]
    """Its last day, where one was noted."""


Reason_planned_break = TypedDict("Reason_planned_break", {"planned_break": "Reason_planned_break_fields"})

class Reason_ill_until_fields(TypedDict):
    """The day lies within an illness as it was noted, cleared or not."""
    until: Day
    """Its last day."""


Reason_ill_until = TypedDict("Reason_ill_until", {"ill_until": "Reason_ill_until_fields"})

class Reason_ask_of_today_fields(TypedDict):
    """Something that comes before training was said today and has been answered: no step on the same day."""
    ask: Ask
    """What."""


Reason_ask_of_today = TypedDict("Reason_ask_of_today", {"ask_of_today": "Reason_ask_of_today_fields"})

class Reason_break_counts_fields(TypedDict):
    """Life gave an easy week already; none is added on top, and no step is on offer in it."""
    days: float
    """Full days without training before today."""


Reason_break_counts = TypedDict("Reason_break_counts", {"break_counts": "Reason_break_counts_fields"})

class Reason_reserve_floor_fields(TypedDict):
    """More is left in reserve than planned."""
    reserve: Rir
    """Repetitions."""


Reason_reserve_floor = TypedDict("Reason_reserve_floor", {"reserve_floor": "Reason_reserve_floor_fields"})

# Rounded down to what the equipment makes.
Reason_rounded_down_fields = TypedDict("Reason_rounded_down_fields", {"from": "Mass", "to": "Mass"})

Reason_rounded_down = TypedDict("Reason_rounded_down", {"rounded_down": "Reason_rounded_down_fields"})

class Reason_nothing_loadable_fields(TypedDict):
    """The equipment makes nothing at or below the load."""
    lightest: Mass
    """Lightest load it makes."""


Reason_nothing_loadable = TypedDict("Reason_nothing_loadable", {"nothing_loadable": "Reason_nothing_loadable_fields"})

class Reason_implement_unavailable_fields(TypedDict):
    """The implement is taken or missing today; nothing is added to make up for it."""
    implement: Name
    """Which."""


Reason_implement_unavailable = TypedDict("Reason_implement_unavailable", {"implement_unavailable": "Reason_implement_unavailable_fields"})

class Reason_fewer_sets_fields(TypedDict):
    """Fewer sets fit into the time."""
    sets: float
    """Sets that fit."""


Reason_fewer_sets = TypedDict("Reason_fewer_sets", {"fewer_sets": "Reason_fewer_sets_fields"})

class Reason_move_refused_fields(TypedDict):
    """A coach's act was refused by a guard, and is kept as refused."""
    event: float
    """The event."""


Reason_move_refused = TypedDict("Reason_move_refused", {"move_refused": "Reason_move_refused_fields"})

class Reason_override_refused_fields(TypedDict):
    """A coach's override was refused: it lacked its reason or its last day, or passed a stop, a ceiling or a limit."""
    event: float
    """The event."""


Reason_override_refused = TypedDict("Reason_override_refused", {"override_refused": "Reason_override_refused_fields"})

class Reason_override_past_fields(TypedDict):
    """A coach's override was refused: its last day was past when it was recorded."""
    last_day: Day
    """Its last day."""


Reason_override_past = TypedDict("Reason_override_past", {"override_past": "Reason_override_past_fields"})

# Two fails in a row, or a second flare: one step easier.
Reason_stepped_back_fields = TypedDict("Reason_stepped_back_fields", {"from": "Mass"})

Reason_stepped_back = TypedDict("Reason_stepped_back", {"stepped_back": "Reason_stepped_back_fields"})

# Why a decision is what it is.
Reason: TypeAlias = Union[Literal['stopped', 'no_loaded_flexion', 'not_cleared', 'clearance_missing', 'clearance_after_illness', 'clearance_range', 'no_limits_on_record', 'asks_not_asked', 'gate_not_open', 'consolidating', 'stepping_back', 'resting', 'after_illness', 'age_unknown', 'maintaining', 'retired', 'day_below', 'day_below_single', 'day_unknown', 'day_above', 'qualified_below_usual', 'never_trained', 'pair_proof_missing', 'pair_fault', 'pair_review', 'body_mass_missing', 'at_top', 'not_one_step', 'alone_without_pins', 'rack_not_asked', 'not_scored', 'miss_not_placed', 'nothing_easier', 'height_unknown', 'after_break', 'half_for_lighter', 'least_there_is', 'easy_week', 'short_of_time', 'plan_asks_less'], "Reason_symptom_stop", "Reason_pain_stop", "Reason_sign_off_refused", "Reason_clearance_expired", "Reason_clearance_limit", "Reason_asks_first", "Reason_limit_without_lift", "Reason_pain_block", "Reason_usual_pain_unsteady", "Reason_usual_pain_review", "Reason_pain_not_asked", "Reason_pain_missing_after_high", "Reason_pass_provisional", "Reason_learning_not_done", "Reason_returning", "Reason_stop_lifted", "Reason_maintaining_band", "Reason_probe_due", "Reason_probe_overdue", "Reason_below_band", "Reason_holding", "Reason_counted_anew", "Reason_move_on_offer", "Reason_stale", "Reason_cooling_off", "Reason_region_window", "Reason_window_cap", "Reason_pair_cap", "Reason_pair_window", "Reason_pair_pain", "Reason_pair_rest", "Reason_pair_together", "Reason_no_loadable_step", "Reason_ceiling", "Reason_unknown_event_present", "Reason_not_at_grant", "Reason_setup_changed", "Reason_pins_moved", "Reason_reserve_short", "Reason_effort_not_said", "Reason_easier_rung", "Reason_override_suspended", "Reason_override_ended", "Reason_height_off", "Reason_height_not_made", "Reason_other_implement", "Reason_pain_persists", "Reason_layoff", "Reason_held_lower", "Reason_half_sets", "Reason_override_in_force", "Reason_planned_break", "Reason_ill_until", "Reason_ask_of_today", "Reason_break_counts", "Reason_reserve_floor", "Reason_rounded_down", "Reason_nothing_loadable", "Reason_implement_unavailable", "Reason_fewer_sets", "Reason_move_refused", "Reason_override_refused", "Reason_override_past", "Reason_stepped_back"]

class RecentVersusUsual(TypedDict):
    """Recent and usual load at the end of a series of days."""
    recent: NotRequired[float]
    """Mean daily load of the recent days."""
    usual: NotRequired[float]
    """Mean daily load of the usual days."""
    ratio: RatioAnswer
    """Recent over usual, where it means anything."""
    typical: NotRequired[float]
    """Median of the earlier usual loads: the lifter's own typical level."""
    history_days: float
    """Days on record without a gap, up to the last."""
    cautions: list[Caution]
    """What to show beside it."""
    options: RatioOptions
    """How it was taken."""


class RecordParameters(TypedDict):
    """The whole set of parameters in force from an event on. A new set replaces the old one whole.

    What is left out is set aside, not forgotten: a lift comes back under its id with its place, its last day, its stop
    and its limits, and a region keeps what was said of it.
    """
    regions: list[Region]
    """The regions that reports, limits and sign-offs may name, at most 48. One that no lift loads may stand here too."""
    lifts: list[LiftParameters]
    """The lifts, at most 16."""
    pairs: NotRequired[list[Pair]]
    """Strict and forgiving lifts that belong together."""
    implements: list[Implement]
    """Bars, dumbbells, machines."""
    stock: Stock
    """The discs."""
    blocks: NotRequired[list[Length]]
    """Heights that blocks under each end of a bar can have, stacked ones by their sum."""
    policy: Policy
    """Numbers of the rules."""


class RecordParametersInput(TypedDict):
    """The whole set of parameters in force from an event on. A new set replaces the old one whole.

    What is left out is set aside, not forgotten: a lift comes back under its id with its place, its last day, its stop
    and its limits, and a region keeps what was said of it.
    """
    regions: Sequence[Region]
    """The regions that reports, limits and sign-offs may name, at most 48. One that no lift loads may stand here too."""
    lifts: Sequence[LiftParametersInput]
    """The lifts, at most 16."""
    pairs: NotRequired[Sequence[PairInput]]
    """Strict and forgiving lifts that belong together."""
    implements: Sequence[ImplementInput]
    """Bars, dumbbells, machines."""
    stock: StockInput
    """The discs."""
    blocks: NotRequired[Sequence[Length]]
    """Heights that blocks under each end of a bar can have, stacked ones by their sum."""
    policy: NotRequired[PolicyInput]
    """Numbers of the rules."""


class RefusalReason_too_few_measurements_fields(TypedDict):
    """Too few days were measured."""
    given: float
    """Measured."""
    needed: float
    """Needed."""


RefusalReason_too_few_measurements = TypedDict("RefusalReason_too_few_measurements", {"too_few_measurements": "RefusalReason_too_few_measurements_fields"})

class RefusalReason_on_edge_fields(TypedDict):
    """The best value lies on the edge of where it was looked for."""
    parameter: ResponseParameter
    """Which parameter."""
    value: float
    """The edge."""


RefusalReason_on_edge = TypedDict("RefusalReason_on_edge", {"on_edge": "RefusalReason_on_edge_fields"})

class RefusalReason_no_such_component_fields(TypedDict):
    """The best fit leaves this component out."""
    parameter: ResponseParameter
    """Its gain."""


RefusalReason_no_such_component = TypedDict("RefusalReason_no_such_component", {"no_such_component": "RefusalReason_no_such_component_fields"})

class RefusalReason_one_component_suffices_fields(TypedDict):
    """One component fits as well as two."""
    p_value: float
    """Approximate p value of the second component (F test)."""


RefusalReason_one_component_suffices = TypedDict("RefusalReason_one_component_suffices", {"one_component_suffices": "RefusalReason_one_component_suffices_fields"})

class RefusalReason_too_uncertain_fields(TypedDict):
    """A parameter is hardly known."""
    parameter: ResponseParameter
    """Which parameter."""
    value: float
    """Its best value."""
    standard_error: float
    """Its standard error."""


RefusalReason_too_uncertain = TypedDict("RefusalReason_too_uncertain", {"too_uncertain": "RefusalReason_too_uncertain_fields"})

class RefusalReason_inseparable_fields(TypedDict):
    """Two parameters cannot be told apart."""
    first: ResponseParameter
    """One."""
    second: ResponseParameter
    """The other."""
    correlation: float
    """Their correlation."""


RefusalReason_inseparable = TypedDict("RefusalReason_inseparable", {"inseparable": "RefusalReason_inseparable_fields"})

# Why the data cannot carry a fit, with the numbers.
RefusalReason: TypeAlias = Union[Literal['nothing_varies', 'no_answer_found'], "RefusalReason_too_few_measurements", "RefusalReason_on_edge", "RefusalReason_no_such_component", "RefusalReason_one_component_suffices", "RefusalReason_too_uncertain", "RefusalReason_inseparable"]

class RefusedSets(TypedDict):
    """Sets that could not speak, by the first reason against them."""
    why: SetRefusal
    """The reason."""
    sets: float
    """How many sets."""


class Region(TypedDict):
    """A region of the body. Events name its id; the name is for people and may change at any time."""
    id: Name
    """The id that events name; it never changes."""
    name: NotRequired[Name]
    """What people call it; absent where the id says it."""


class RegionCount(TypedDict):
    """Sets counted for one region."""
    region: str
    """The region."""
    sets: float
    """Counted sets."""


class RegionSetsInput(TypedDict):
    """Sets of one exercise, with the regions it trains directly and indirectly.

    For muscle size, "direct" means that the region is the prime mover; for strength, that the set is specific to
    the lift that is tested.
    """
    sets: float
    """Work sets done."""
    direct: Sequence[str]
    """Regions trained directly."""
    indirect: NotRequired[Sequence[str]]
    """Regions that help."""


class RegionState(TypedDict):
    """One region of the body."""
    id: Name
    """Its id."""
    lifted: NotRequired[bool]
    """A lift has loaded it under some parameters of this log."""
    loaded: NotRequired[Day]
    """Last day on which a lift loaded it."""
    last: NotRequired[list[Day | Pain]]
    """The last score reported, and its day."""
    lowered: NotRequired[Day]
    """Last day on which an answer about it asked for less load: a high score, or pain that was new or rising."""
    unclear: NotRequired[Day]
    """Last day on which an answer about it was more than its usual: by its score, or by a feature."""
    scores: NotRequired[list[list[Day | Pain]]]
    """Worst scores of the last training days on which pain in it was asked about, oldest first."""
    usual: NotRequired[list[Day | Pain | float]]
    """The agreed usual level, since when, and on how many training days in a row it has been steady."""
    clear_needed: float
    """Training days without more pain than usual still to come before a move."""
    cleared: NotRequired[Day]
    """Last day that was taken as one of them."""
    flares: float
    """Next-morning flares in a row."""
    flared: NotRequired[Day]
    """Day of training whose morning flared last."""
    stop: NotRequired[Stop]
    """A pain stop in force."""
    moves: NotRequired[list[Day]]
    """Moves of its lifts within the region's window."""


class Rehearsal(TypedDict):
    """What came of playing the rules through. It is about the rules, not about a person."""
    lifters: float
    """Lifters played."""
    weeks: float
    """Weeks played."""
    seed: float
    """The seed; the same one gives the same bits."""
    lifts: list[LiftRehearsal]
    """The lifts of the model in their order."""
    cautions: list[Caution]
    """What to show beside it."""
    version: str
    """Library version."""
    parameters: str
    """Digest of the parameters."""


class RelativeEffort(TypedDict):
    """What a task takes of the strength a person has."""
    effort: float
    """Part of the maximum that the task takes; above 1 it cannot be done."""
    reserve: float
    """What is left: 1 less the effort. Negative where the task cannot be done."""
    population: str
    """Who it describes."""
    cautions: list[Caution]
    """What to show beside it."""


class RelativeSetInput(TypedDict):
    """A set known by its part of the one-repetition maximum instead of its load."""
    fraction: Fraction
    """Part of the one-repetition maximum: 0.75 is 75 %."""
    reps: Reps
    """Repetitions of each set."""
    sets: NotRequired[float]
    """How many such sets; 1 where left out."""


class ReliableChange(TypedDict):
    """One person's change against what two tests wander by."""
    standard_error: float
    """What one test wanders by."""
    difference_error: float
    """What the difference of two tests wanders by."""
    index: float
    """The change in units of that."""
    is_reliable: bool
    """Whether it lies beyond 1.96 either way."""


# Repetitions, from 0 to 200, whole or half.
#
# A set that was done has whole repetitions (the record refuses others). Halves arise where a reserve of
# "1 to 2" is added to repetitions done.
Reps: TypeAlias = float

Requirement_pass_run = TypedDict("Requirement_pass_run", {"pass_run": "PassRun"})

Requirement_evidence = TypedDict("Requirement_evidence", {"evidence": "Evidence"})

Requirement_dwell_sessions = TypedDict("Requirement_dwell_sessions", {"dwell_sessions": "float"})

Requirement_dwell_days = TypedDict("Requirement_dwell_days", {"dwell_days": "float"})

Requirement_spacing = TypedDict("Requirement_spacing", {"spacing": "float"})

Requirement_all = TypedDict("Requirement_all", {"all": "list[Requirement]"})

Requirement_any = TypedDict("Requirement_any", {"any": "list[Requirement]"})

class Requirement_at_least_fields(TypedDict):
    """At least so many of these."""
    count: float
    """How many."""
    of: list[Requirement]
    """Of which."""


Requirement_at_least = TypedDict("Requirement_at_least", {"at_least": "Requirement_at_least_fields"})

# One thing that a gate asks for.
Requirement: TypeAlias = Union[Literal['effort_cap', 'no_open_block', 'sign_off', 'pair', 'region'], "Requirement_pass_run", "Requirement_evidence", "Requirement_dwell_sessions", "Requirement_dwell_days", "Requirement_spacing", "Requirement_all", "Requirement_any", "Requirement_at_least"]

class ReserveBias(TypedDict):
    """What is added to a reported reserve before it is used. Nothing unless asked for."""
    reps: float
    by_length_of_set: NotRequired[bool]
    """Whether long sets take what was measured in long sets instead."""


class ReserveError(TypedDict):
    """By how much a call is off, in repetitions: what was left less what was called."""
    mean: float
    """On average; above 0 where more was left than called."""
    standard_deviation: float
    """Standard deviation."""


class ResponseDay(TypedDict):
    """One day of a simulated response."""
    fitness: float
    """Trace of fitness, in units of load."""
    fatigue: float
    """Trace of fatigue, in units of load."""
    performance: float
    """Simulated performance, in the unit of the baseline."""


class ResponseErrors(TypedDict):
    """Standard errors of the five parameters."""
    baseline: float
    """Of the baseline."""
    fitness_gain: float
    """Of the gain of fitness."""
    fatigue_gain: float
    """Of the gain of fatigue."""
    fitness_days: float
    """Of the time constant of fitness."""
    fatigue_days: float
    """Of the time constant of fatigue."""


class ResponseFit(TypedDict):
    """A fitted response. A simulation for teaching: a curve through one person's past, not a promise."""
    response: ImpulseResponse
    """The parameters."""
    standard_errors: ResponseErrors
    """Their standard errors (linear approximation)."""
    residual_squares: float
    """Sum of squared residuals."""
    residual_deviation: float
    """Residual standard deviation, in the unit of the measurements."""
    degrees: float
    """Measurements less parameters."""
    explained: float
    """Share of the variance explained."""
    one_component_p_value: float
    """Approximate p value of the second component."""
    strongest_correlation: ParameterCorrelation
    """The two parameters that go together most: no single value of them may be interpreted."""
    curve: list[SimulatedDay]
    """The curve with prediction intervals, one entry for each day of the loads, days to come included."""
    cautions: list[Caution]
    """What to show beside it."""


# When on the day the curve is read: before the day's session counts, or after.
ResponseForm: TypeAlias = Union[Literal['before_session', 'after_session']]

# One of the five parameters of a response.
ResponseParameter: TypeAlias = Union[Literal['baseline', 'fitness_gain', 'fatigue_gain', 'fitness_days', 'fatigue_days']]

# Why sessions at a place are counted anew, though the lift stands where it stood.
Restart: TypeAlias = Union[Literal['declined', 'offer_ended', 'bar_changed', 'rater_changed', 'setup_changed', 'gate_changed', 'equipment_changed']]

class Restriction_sign_fields(TypedDict):
    """A sign stops every lift."""
    sign: StopSign
    """Which."""
    since: Day
    """Since when signs stop."""


Restriction_sign = TypedDict("Restriction_sign", {"sign": "Restriction_sign_fields"})

class Restriction_not_to_train_fields(TypedDict):
    """The answer about clearance was not to train."""
    since: Day
    """Since when."""


Restriction_not_to_train = TypedDict("Restriction_not_to_train", {"not_to_train": "Restriction_not_to_train_fields"})

class Restriction_pain_fields(TypedDict):
    """Pain stops every lift of a region."""
    region: Name
    """Where."""
    since: Day
    """Since when."""


Restriction_pain = TypedDict("Restriction_pain", {"pain": "Restriction_pain_fields"})

class Restriction_limit_without_lift_fields(TypedDict):
    """A clearance limits a region that no lift loads any more, which stops every lift."""
    region: Name
    """The region."""
    since: Day
    """Day of the clearance."""


Restriction_limit_without_lift = TypedDict("Restriction_limit_without_lift", {"limit_without_lift": "Restriction_limit_without_lift_fields"})

class Restriction_illness_fields(TypedDict):
    """An illness or an operation, after which a new clearance comes first."""
    since: Day
    """Its first day; one noted in advance stops nothing before it."""


Restriction_illness = TypedDict("Restriction_illness", {"illness": "Restriction_illness_fields"})

class Restriction_asked_fields(TypedDict):
    """What was said when asked before training waits for an answer."""
    ask: Ask
    """What."""
    since: Day
    """Since when."""


Restriction_asked = TypedDict("Restriction_asked", {"asked": "Restriction_asked_fields"})

class Restriction_limit_fields(TypedDict):
    """One part of a limit of a clearance: of load, of effort, of range, of bending or of breath-holding."""
    limit: ClearanceLimits
    """The part, with its region."""


Restriction_limit = TypedDict("Restriction_limit", {"limit": "Restriction_limit_fields"})

class Restriction_planned_break_fields(TypedDict):
    """A planned break, of today or noted for later."""
    until: NotRequired[Day]
    """Its last day, where one was noted."""


Restriction_planned_break = TypedDict("Restriction_planned_break", {"planned_break": "Restriction_planned_break_fields"})

class Restriction_ill_until_fields(TypedDict):
    """An illness with a last day, of today or noted for later."""
    until: Day
    """Its last day."""


Restriction_ill_until = TypedDict("Restriction_ill_until", {"ill_until": "Restriction_ill_until_fields"})

class Restriction_rest_fields(TypedDict):
    """A lift rests by its role, or is retired."""
    lift: Name
    """Which."""


Restriction_rest = TypedDict("Restriction_rest", {"rest": "Restriction_rest_fields"})

class Restriction_word_fields(TypedDict):
    """The coach's word keeps the load of a lift below what is granted."""
    who: Name
    """Whose word."""
    lift: Name
    """The lift."""
    place: Place
    """Where the lift is granted."""
    load: Mass
    """Load allowed by it."""
    until: NotRequired[Day]
    """Its last day, where it has one."""


Restriction_word = TypedDict("Restriction_word", {"word": "Restriction_word_fields"})

class Restriction_ceiling_fields(TypedDict):
    """The coach allows no higher load of a lift, at any place."""
    lift: Name
    """The lift."""
    load: Mass
    """The highest load."""


Restriction_ceiling = TypedDict("Restriction_ceiling", {"ceiling": "Restriction_ceiling_fields"})

# One thing that stops lifts, or keeps a lift below what it would be without it.
Restriction: TypeAlias = Union[Literal['unknown_events'], "Restriction_sign", "Restriction_not_to_train", "Restriction_pain", "Restriction_limit_without_lift", "Restriction_illness", "Restriction_asked", "Restriction_limit", "Restriction_planned_break", "Restriction_ill_until", "Restriction_rest", "Restriction_word", "Restriction_ceiling"]

# Who comes back.
ReturnGroup: TypeAlias = Union[Literal['after_break', 'new']]

# Relative volume against the rule for the first two weeks back.
ReturnVolume: TypeAlias = Union[Literal['below_range', 'in_range', 'above_limit']]

class ReturnWeek(TypedDict):
    """Limits of one week."""
    week: float
    """Week since the return; 1 is the first."""
    volume_share: float
    """Largest share of the highest conditioning volume on file."""
    most_days: NotRequired[float]
    """Most training days for a muscle group, where limited."""
    rest_for_work: NotRequired[float]
    """Parts of rest for each part of work at least, where limited."""


class Review(TypedDict):
    """What looks odd in a log. Each finding is a question to the coach; nothing is corrected and nothing is blocked by it."""
    stops: list[Reason]
    """Every stop of the lifter, whatever is asked about, as far as the log can be read; empty where nothing is stopped. Shown
    before anything else.
    """
    today: Day
    """The day it was made for."""
    sessions: float
    """Sessions looked at."""
    findings: list[Oddity]
    """What was found, the newest first."""
    missing: list[Lacking]
    """What nobody wrote down, so that nothing could be looked at."""
    cautions: list[Caution]
    """What to show beside it."""


# Repetitions in reserve: how many more could have been done, 0 to 30, in half steps.
#
# A separate type from `Rpe`, since the two run opposite ways.
Rir: TypeAlias = float

class RobustLine(TypedDict):
    """A line through the middle of all pairs."""
    slope: float
    """Median of all pairwise slopes."""
    slope_interval: Interval
    """Interval of the slope."""
    intercept: float
    """Median of `y` less slope times median of `x`."""
    joint_intercept: float
    """Median of `y - slope x`."""


# What a lift is for in this block.
Role: TypeAlias = Union[Literal['train', 'maintain', 'rest', 'retire']]

class RoleSet(TypedDict):
    """A lift gets another role."""
    lift: Name
    """Id of the lift."""
    role: Role
    """Its role from now on."""
    not_below: NotRequired[Mass]
    """Maintaining: down to this load it is on plan, as an age expectation may have it; absent means that it stays."""


class RoleSetInput(TypedDict):
    """A lift gets another role."""
    lift: Name
    """Id of the lift."""
    role: Role
    """Its role from now on."""
    not_below: NotRequired[MassInput]
    """Maintaining: down to this load it is on plan, as an age expectation may have it; absent means that it stays."""


# Which load to take where the wanted one can't be made.
Rounding: TypeAlias = Union[Literal['exact', 'below', 'nearest', 'above']]

class RowLeftOut(TypedDict):
    """A row of which nothing was taken."""
    line: float
    """The line where it begins; of a table as cells the number of the row, where the head is 1."""
    why: str
    """Code of the error, or `warm_up`, or `already_there`."""
    field: str
    """Which part of the row."""
    given: str
    """What stands there."""


# Rating of perceived exertion built on repetitions in reserve, 0 to 10 in half steps.
#
# # Domain
#
# The published scale gives a number of repetitions in reserve at whole steps from 7 to 10 only; half steps
# are bands or "load only", 5 to 6 is a band, and below 5 it says nothing about reserve
# (`Rpe::reserve`).
#
# # Source
#
# Zourdos et al. 2016, J Strength Cond Res 30:267-275, doi 10.1519/JSC.0000000000001049 (from memory; the
# anchors at 5, 7 and 9 were read in the abstract of Zourdos et al. 2021).
Rpe: TypeAlias = float

# A pattern that was found.
RunRule: TypeAlias = Union[Literal['one_beyond_three', 'two_of_three_beyond_two', 'four_of_five_beyond_one', 'eight_on_one_side', 'nine_on_one_side', 'six_trending', 'fourteen_alternating', 'fifteen_within_one', 'eight_outside_one']]

class RunSignal(TypedDict):
    """Where a pattern was completed."""
    place: float
    """Place of the value that completed it, from 0."""
    rule: RunRule
    """The pattern."""
    side: NotRequired[Side]
    """On which side, where the pattern has one."""


class Rung(TypedDict):
    """A rung of a ladder."""
    id: Name
    """Its id within the ladder."""
    name: NotRequired[Name]
    """What people call it; absent where the id says it."""
    harder_than: NotRequired[list[Name]]
    """Ids of the rungs directly easier than this one; rungs that no chain connects are not comparable."""
    own_ratio: NotRequired[float]
    """Load here as a part of the load on the easier rung, from the lifter's own data; absent where unknown."""


class SaidLift(TypedDict):
    """A sentence for everything in the plan of one lift."""
    lift: Name
    """Id of the lift."""
    name: str
    """Its name."""
    verdict: str
    """The verdict in a word or two."""
    status: str
    """The status in a few words; beside no step today none is called earned."""
    reasons: list[str]
    """A sentence for each reason."""
    outlook: str
    """The one verdict about a step."""
    by: list[str]
    """A sentence for each reason that stands against a step; empty where one is on offer."""
    missing: list[str]
    """What the gate misses, each as part of a sentence."""
    would_change: list[str]
    """A sentence for each thing that would change the answer."""
    cautions: list[str]
    """A sentence for each caution."""


class SaidSession(TypedDict):
    """A session in sentences. What is to be shown, and in which order, is the sheet: a stop first, and nothing twice. Every other
    list has a sentence for each object of the list of that name in the `SessionPlan`, in its order.
    """
    sheet: Sheet
    """What is to be shown, in its order."""
    stops: list[str]
    """A sentence for each stop."""
    cautions: list[str]
    """A sentence for each caution."""
    lifts: list[SaidLift]
    """The lifts in the order of the plan."""


class ScaledStrength(TypedDict):
    """Strength divided by a power of body mass."""
    value: float
    """Kilograms lifted for each kilogram of body mass to the power of `exponent`."""
    exponent: float
    """The power of body mass. An index means nothing without it."""
    population: str
    """Who the scaling was measured in."""
    cautions: list[Caution]
    """What to show beside it."""


class ScenarioBands(TypedDict):
    """A what-if over the years."""
    years: list[ScenarioYear]
    """At the start, every year after, and at the end."""
    model: str
    """The model of decline."""
    population: str
    """Who the model describes."""
    cautions: list[Caution]
    """What to show beside it."""


class ScenarioSettings(TypedDict):
    """How a scenario is worked out."""
    seed: float
    """Seed of the generator: the same seed gives the same bits."""
    courses: float
    """Courses drawn, 10 to 5000."""
    level: float
    """Part of the courses that the interval holds."""
    floor: NotRequired[float]
    """A floor to count courses above."""


class ScenarioYear(TypedDict):
    """Strength at one age over all courses drawn."""
    age: Age
    """The age."""
    median: float
    """Half the courses lie above."""
    interval: Interval
    """The middle part of the courses; the part is the level."""
    share_above_floor: NotRequired[float]
    """Part of the courses at or above the floor, where one was given."""


class Score(TypedDict):
    """A federation's score: a result times a coefficient of body mass."""
    points: float
    """The score, unrounded; result sheets print two decimals."""
    coefficient: float
    """What one kilogram of the result counts."""
    issued_by: str
    """Who issued the formula."""
    year: float
    """First year in which it was in force."""
    population: str
    """Whose results the coefficients were fitted to."""
    cautions: list[Caution]
    """What to show beside it."""


class SegmentShares(TypedDict):
    """Parts of body mass by segment; one side where there are two."""
    head: float
    """Head and neck."""
    trunk: float
    """Trunk."""
    upper_arm: float
    """One upper arm."""
    forearm: float
    """One forearm."""
    hand: float
    """One hand."""
    thigh: float
    """One thigh."""
    shank: float
    """One lower leg."""
    foot: float
    """One foot."""


class SequentialCounts(TypedDict):
    """Whole-number limits after so many trials."""
    accept: NotRequired[float]
    """Accept at this many faults or fewer; none while acceptance is not yet possible."""
    reject: NotRequired[float]
    """Reject at this many faults or more; none while rejection is not yet possible."""


# What the test says now.
SequentialDecision: TypeAlias = Union[Literal['accept', 'reject', 'continue']]

class SequentialLines(TypedDict):
    """The test as two parallel lines in the plane of faults over trials."""
    slope: float
    """Faults per trial along both lines."""
    accept_intercept: float
    """Accept while faults are at or below `slope * trials - accept_intercept`."""
    reject_intercept: float
    """Reject while faults are at or above `slope * trials + reject_intercept`."""
    log_odds_ratio: float
    """Log odds ratio of the two rates: the scale of the intercepts."""


class SequentialTest(TypedDict):
    """Two fault rates to tell apart, and how often each mistake may happen.

    Invariant: `0 < acceptable_rate < unacceptable_rate < 1`, both error rates above 0, their sum below 1.
    """
    acceptable_rate: float
    unacceptable_rate: float
    false_rejection: float
    false_acceptance: float


class Session(TypedDict):
    """One training session: the lifts that were done and how the person was."""
    lifts: list[LiftSession]
    """The lifts in the order done, at least one. A day without a lift is no training: what was said on it is a day report, and pain
    a pain report.
    """
    pain: NotRequired[list[PainAnswer]]
    """Pain during the session. Absent means not asked; a list means asked, and regions not named had none."""
    minutes: NotRequired[float]
    """Minutes from first to last set."""
    effort: NotRequired[Rpe]
    """One rating for the whole session."""


class SessionDone(TypedDict):
    """A session that was done."""
    event: float
    """Number of its event."""
    day: Day
    """Its day."""
    days_ago: float
    """Days from it to the day asked about."""
    lifts: list[LiftOutcome]
    """Its lifts, in order."""


class SessionEstimate(TypedDict):
    """What the sets of one session say about the maximum by published equations."""
    day: Day
    """The day."""
    as_called: Estimate
    """With the reserve as it was called: value, range, and each equation alone."""
    with_unsaid: NotRequired[Estimate]
    """What it would be if this lifter left as much unsaid as people do on average
    (`ReserveBias::halperin_2022`(crate::one_rm::ReserveBias::halperin_2022)); nothing is set by it. Absent where no reserve
    was called that would make it another.
    """


class SessionFact(TypedDict):
    """One session of a lift as a gate sees it."""
    day: Day
    """The day it was done."""
    passed: Outcome
    """Pass, fail or not scored."""
    critical_fail: bool
    """A critical criterion was lost."""
    acceptable: float
    """Acceptable repetitions among those scored."""
    scored: float
    """Repetitions scored by somebody whose marks count."""
    day_class: DayClass
    """What kind of day it was."""
    answer_pending: NotRequired[bool]
    """The question about the next morning is not answered yet, so a pass is provisional."""
    weakest: NotRequired[Name]
    """The criterion that held worst."""
    rater: NotRequired[Name]
    """Who gave the marks."""


class SessionForm(TypedDict):
    """The form of one session: reading less prediction, in standard deviations."""
    day: Day
    """The day."""
    form: float
    """Standardised innovation, as the level filter gives it."""


class SessionInput(TypedDict):
    """One training session: the lifts that were done and how the person was."""
    lifts: Sequence[LiftSessionInput]
    """The lifts in the order done, at least one. A day without a lift is no training: what was said on it is a day report, and pain
    a pain report.
    """
    pain: NotRequired[Sequence[PainAnswer]]
    """Pain during the session. Absent means not asked; a list means asked, and regions not named had none."""
    minutes: NotRequired[float]
    """Minutes from first to last set."""
    effort: NotRequired[Rpe]
    """One rating for the whole session."""


class SessionMissed(TypedDict):
    """A planned session that did not happen. Missed work is never made up by more load or more sets."""
    reason: Name
    """Why."""


class SessionPlan(TypedDict):
    """Today's session: for each lift of the plan what to do, and why."""
    stops: list[Reason]
    """Every stop of the lifter, whatever is planned, the gravest first; then what stops a lift of the plan beyond them. Each
    once; empty where nothing is stopped. Shown before anything else.
    """
    cautions: list[Caution]
    """What to show beside all of it."""
    today: Day
    """The day it is for."""
    day: DayClass
    """Class of the day, as reported."""
    lifts: list[LiftToday]
    """The lifts in the order of the plan."""
    version: str
    """Library version."""
    parameters: str
    """Digest of the parameters in force."""


class SessionRated(TypedDict):
    """One session: its rating and its length."""
    rating: float
    """One rating for the whole session on the modified 0-10 category-ratio scale, asked about 30 minutes after
    its end. Not the rating of a set in repetitions left.
    """
    minutes: float
    """Length in minutes."""


class SessionVerdict(TypedDict):
    """What a session came to."""
    passed: Outcome
    """Pass, fail or not scored."""
    critical_fail: bool
    """A critical criterion was lost; counts on every kind of day."""
    acceptable: float
    """Acceptable repetitions among those scored."""
    scored: float
    """Repetitions scored by somebody whose marks count."""
    misses_allowed: float
    """Misses allowed among those scored."""
    weakest: NotRequired[Name]
    """The criterion that held worst over all sets, if any did not hold."""
    first_failing: NotRequired[FailingRep]
    """The first repetition of the session recorded as not acceptable."""
    reasons: NotRequired[list[PassReason]]
    """Everything that stands against a pass."""


class SetCounting(TypedDict):
    """How much a set counts for a region that only helps."""
    indirect: float
    """Weight of an indirect set, 0 to 1."""


class SetDoneInput(TypedDict):
    """One set that was done, or several equal ones: the load, and the repetitions of each."""
    load: MassInput
    """What was lifted; the whole bar, not one side."""
    reps: Reps
    """Repetitions of each set."""
    sets: NotRequired[float]
    """How many such sets; 1 where left out."""


SetEffort_rir = TypedDict("SetEffort_rir", {"rir": "Rir"})

SetEffort_rpe = TypedDict("SetEffort_rpe", {"rpe": "Rpe"})

# How near to failure a set went.
SetEffort: TypeAlias = Union[Literal['failure', 'not_reported'], "SetEffort_rir", "SetEffort_rpe"]

class SetEvidenceInput(TypedDict):
    """One set, as plain facts."""
    load: MassInput
    """Load."""
    reps: Reps
    """Repetitions done."""
    effort: SetEffort
    """How near to failure."""
    technique: TechniqueVerdict
    """Whether the movement held up."""
    day: NotRequired[Day]
    """The day; sets without one are taken to share a day."""


# Why a used set should be read with care.
SetFlag: TypeAlias = Union[Literal['more_reps_than_usual', 'technique_not_scored', 'reserve_is_a_band', 'some_equations_outside', 'all_equations_outside', 'called_in_a_long_set', 'taken_as_maximum', 'disagrees_with_the_rest']]

class SetMarks(TypedDict):
    """What was seen of one work set."""
    reps: float
    """Repetitions done."""
    acceptable: NotRequired[float]
    """How many of them were acceptable; absent if nobody counted, which is not the same as none."""
    first_failing_rep: NotRequired[float]
    """Number of the first repetition that was not acceptable, 1 being the first of the set."""
    marks: NotRequired[list[CriterionMark]]
    """Marks, at most one a criterion. A criterion that is not named was not seen."""
    range_reached: NotRequired[Length]
    """Range reached, measured as the lift's rung measures it."""
    rater: Rater
    """Who gave the marks."""
    rater_id: NotRequired[Name]
    """Which person that was."""


class SetMovedInput(TypedDict):
    """A set with the height that the load was raised at each repetition."""
    load: MassInput
    """What was lifted."""
    reps: Reps
    """Repetitions of each set."""
    sets: NotRequired[float]
    """How many such sets; 1 where left out."""
    displacement: Length
    """Height of one repetition, lowest to highest point."""


class SetReason_pain_stops_fields(TypedDict):
    """Pain that stops the lift."""
    region: Name
    """Where."""
    score: Pain
    """How much."""


SetReason_pain_stops = TypedDict("SetReason_pain_stops", {"pain_stops": "SetReason_pain_stops_fields"})

class SetReason_pain_eases_fields(TypedDict):
    """Pain for which less is done."""
    region: Name
    """Where."""
    score: Pain
    """How much."""


SetReason_pain_eases = TypedDict("SetReason_pain_eases", {"pain_eases": "SetReason_pain_eases_fields"})

class SetReason_pain_holds_fields(TypedDict):
    """Some pain, as known from before: nothing goes up."""
    region: Name
    """Where."""
    score: Pain
    """How much."""


SetReason_pain_holds = TypedDict("SetReason_pain_holds", {"pain_holds": "SetReason_pain_holds_fields"})

class SetReason_critical_fault_fields(TypedDict):
    """A critical point was lost in the last set."""
    criterion: Name
    """Which."""


SetReason_critical_fault = TypedDict("SetReason_critical_fault", {"critical_fault": "SetReason_critical_fault_fields"})

class SetReason_all_sets_done_fields(TypedDict):
    """All sets of today are done."""
    sets: float
    """How many."""


SetReason_all_sets_done = TypedDict("SetReason_all_sets_done", {"all_sets_done": "SetReason_all_sets_done_fields"})

class SetReason_by_effort_fields(TypedDict):
    """The last set left less than asked, or more: what the rule makes of it."""
    left: Rir
    """Left, by what was said."""
    asked: Rir
    """Asked for."""
    part: float
    """Change of the load that the rule asks for, as a part of it."""
    own_curve: bool
    """By the lifter's own curve; else by a published relation or by the part that the plan sets."""


SetReason_by_effort = TypedDict("SetReason_by_effort", {"by_effort": "SetReason_by_effort_fields"})

class SetReason_below_reserve_fields(TypedDict):
    """The last set left less than the least that holds today."""
    left: Rir
    """Left, by what was said."""
    least: Rir
    """The least."""


SetReason_below_reserve = TypedDict("SetReason_below_reserve", {"below_reserve": "SetReason_below_reserve_fields"})

class SetReason_below_range_fields(TypedDict):
    """A set ended below the bottom of the range."""
    bottom: float
    """Fewest repetitions."""


SetReason_below_range = TypedDict("SetReason_below_range", {"below_range": "SetReason_below_range_fields"})

class SetReason_within_range_fields(TypedDict):
    """Within the range: more repetitions come before more load."""
    top: float
    """Most repetitions."""


SetReason_within_range = TypedDict("SetReason_within_range", {"within_range": "SetReason_within_range_fields"})

class SetReason_top_of_range_fields(TypedDict):
    """The top of the range in every set: whether the load moves is for the gate to say, not for this session."""
    top: float
    """Most repetitions."""


SetReason_top_of_range = TypedDict("SetReason_top_of_range", {"top_of_range": "SetReason_top_of_range_fields"})

class SetReason_by_table_fields(TypedDict):
    """The table of repetitions asks for a change of the load between these two."""
    least: Kilograms
    """The smaller increase, or the larger decrease."""
    most: Kilograms
    """The larger increase, or the smaller decrease."""


SetReason_by_table = TypedDict("SetReason_by_table", {"by_table": "SetReason_by_table_fields"})

class SetReason_rating_reached_fields(TypedDict):
    """A set reached the rating that ends the lift."""
    rating: Rpe
    """The rating."""


SetReason_rating_reached = TypedDict("SetReason_rating_reached", {"rating_reached": "SetReason_rating_reached_fields"})

class SetReason_rating_not_reached_fields(TypedDict):
    """The rating that ends the lift is not reached yet."""
    rating: Rpe
    """The rating."""


SetReason_rating_not_reached = TypedDict("SetReason_rating_not_reached", {"rating_not_reached": "SetReason_rating_not_reached_fields"})

class SetReason_back_off_fields(TypedDict):
    """The first set is done: the others are lighter by this part."""
    reduction: float
    """Part of the first set's load."""


SetReason_back_off = TypedDict("SetReason_back_off", {"back_off": "SetReason_back_off_fields"})

class SetReason_limited_fields(TypedDict):
    """The rule asked for more than today's load, or the last set was lifted above it."""
    to: Mass
    """Today's load."""


SetReason_limited = TypedDict("SetReason_limited", {"limited": "SetReason_limited_fields"})

# Why the next set is what it is.
SetReason: TypeAlias = Union[Literal['not_today', 'first_set', 'pain_not_asked', 'repetition_missed', 'two_faults', 'not_marked', 'effort_not_said', 'effort_says_nothing', 'as_asked', 'by_technique', 'nothing_lighter'], "SetReason_pain_stops", "SetReason_pain_eases", "SetReason_pain_holds", "SetReason_critical_fault", "SetReason_all_sets_done", "SetReason_by_effort", "SetReason_below_reserve", "SetReason_below_range", "SetReason_within_range", "SetReason_top_of_range", "SetReason_by_table", "SetReason_rating_reached", "SetReason_rating_not_reached", "SetReason_back_off", "SetReason_limited"]

# Why a set is not used.
SetRefusal: TypeAlias = Union[Literal['technique_failed', 'technique_not_scored', 'effort_not_reported', 'not_a_reserve', 'too_far_from_failure', 'too_many_reps', 'no_repetition', 'no_load', 'no_equation']]

class SetRule_fixed_per_point_fields(TypedDict):
    """By a fixed part of the load for each point of rating missed."""
    part: NotRequired[float]
    """Part of the load, above 0 and at most 0.1; absent means that of
    `PART_PER_POINT`(crate::prescription::PART_PER_POINT).
    """


SetRule_fixed_per_point = TypedDict("SetRule_fixed_per_point", {"fixed_per_point": "SetRule_fixed_per_point_fields"})

class SetRule_double_progression_fields(TypedDict):
    """Repetitions first: less load where a set ends below the bottom of the range."""
    bottom: float
    """Fewest repetitions of a set."""
    top: float
    """Most repetitions of a set."""


SetRule_double_progression = TypedDict("SetRule_double_progression", {"double_progression": "SetRule_double_progression_fields"})

class SetRule_stop_at_effort_fields(TypedDict):
    """The same load until a set reaches this rating."""
    rating: Rpe
    """The rating that ends the lift for today."""


SetRule_stop_at_effort = TypedDict("SetRule_stop_at_effort", {"stop_at_effort": "SetRule_stop_at_effort_fields"})

class SetRule_back_off_fields(TypedDict):
    """A first set at today's load, then lighter ones until one of them reaches this rating."""
    reduction: float
    """By which part of the first set's load the others are lighter, at most 0.5."""
    rating: Rpe
    """The rating that ends the lift for today."""


SetRule_back_off = TypedDict("SetRule_back_off", {"back_off": "SetRule_back_off_fields"})

# By which rule a lift goes from one set to the next. Whatever the rule, a lost critical point of technique, pain and
# today's limit come before it: no rule ever passes what the day allows.
SetRule: TypeAlias = Union[Literal['technique_stop', 'own_curve', 'repetition_table'], "SetRule_fixed_per_point", "SetRule_double_progression", "SetRule_stop_at_effort", "SetRule_back_off"]

class SetToFailureInput(TypedDict):
    """One set to failure."""
    load: MassInput
    """Load."""
    reps: Reps
    """Repetitions to failure."""


class SetUse(TypedDict):
    """What became of one set."""
    reps_to_failure: NotRequired[float]
    """Repetitions to failure that it stands for, bias included; absent where there is no reserve."""
    weight: float
    """How the estimate moves with it: weights of all sets add up to 1; 0 where it is refused. A weight may be
    negative where longer sets only serve to correct for the lifter's curve.
    """
    refusals: list[SetRefusal]
    """Every reason against it; used if empty."""
    flags: list[SetFlag]
    """Reasons for care."""


class SetVerdict(TypedDict):
    """What one work set came to."""
    passed: Outcome
    """Pass, fail or not scored."""
    marginal: bool
    """Passed, but with a missed repetition or a mark that was not met."""
    critical_fail: bool
    """A critical criterion was lost."""
    misses: NotRequired[float]
    """Missed repetitions, where they were counted."""
    misses_allowed: float
    """Misses allowed in this set by itself."""
    first_failing_rep: NotRequired[float]
    """First repetition that was not acceptable."""
    weakest: NotRequired[Name]
    """The criterion that held worst, if any did not hold."""
    reasons: NotRequired[list[PassReason]]
    """Everything that stands against a pass."""


class SetWork(TypedDict):
    """The work of the next set."""
    place: Place
    """Where it is done."""
    load: Mass
    """With what."""
    loaded: Loaded
    """How the load is made."""
    blocks: NotRequired[Length]
    """Blocks under each end of the bar, where they hold the height."""
    reps: float
    """Repetitions."""
    reserve: Rir
    """Repetitions to leave in reserve."""


SetsTable_csv = TypedDict("SetsTable_csv", {"csv": "str"})

SetsTable_rows = TypedDict("SetsTable_rows", {"rows": "TableRows"})

# A table of sets: a head, then a row a set.
SetsTable: TypeAlias = Union["SetsTable_csv", "SetsTable_rows"]

class SetsToLog(TypedDict):
    """The log with the sessions of the table, and what became of each row."""
    log: Log
    """The log that was given, with the sessions of the table behind its events."""
    rows: float
    """Rows of the table."""
    taken: float
    """Rows of which the set, or sets, were taken."""
    sessions: float
    """Sessions that were added."""
    guesses: list[TableGuess]
    """Everything that the table does not say."""
    columns_left_out: list[str]
    """Columns that say nothing a log can keep, or that have no known name."""
    left_out: list[RowLeftOut]
    """Rows of which nothing was taken; together with those taken they are all."""


class SetsTodayInput(TypedDict):
    """The sets of one lift done so far today."""
    lift: Name
    """Id of the lift."""
    sets: Sequence[WorkSetInput]
    """Work sets in order; empty before the first."""
    pain: NotRequired[Sequence[PainAnswer]]
    """Pain now. Absent means not asked; a list means asked, and regions not named have none."""


Setting_discs = TypedDict("Setting_discs", {"discs": "list[PlacedDisc]"})

Setting_piece = TypedDict("Setting_piece", {"piece": "Mass"})

class Setting_selected_fields(TypedDict):
    """The selector below this plate (0 for none), with these add-on weights."""
    plates: float
    """Plates that move, counted from the top."""
    add_ons: list[Mass]
    """Add-on weights hung on."""


Setting_selected = TypedDict("Setting_selected", {"selected": "Setting_selected_fields"})

# How the load is made.
Setting: TypeAlias = Union["Setting_discs", "Setting_piece", "Setting_selected"]

class Setup(TypedDict):
    """How a lift was set up. A change is reported and starts the comparison of sessions anew. What is absent was not said
    and leaves what was last said.
    """
    pins: NotRequired[Length]
    """Height of the safety pins; absent where there are none or nobody wrote it down."""
    company: NotRequired[ByTheBar]
    """Who is by the bar; absent means not asked."""
    kit: NotRequired[list[Name]]
    """Stance, box, shoes, belt, straps, in the coach's words; absent means not said, an empty list means none of them."""


class SetupSeen(TypedDict):
    """How a lift was last said to be set up."""
    kit: NotRequired[list[Name]]
    """Stance, box, shoes, belt, straps, in order of their names; absent where nobody ever said."""
    height: NotRequired[Length]
    """Height at which it began; absent where nobody ever measured."""
    changed: NotRequired[Day]
    """Day of the last change."""
    pins: NotRequired[Length]
    """Height of the safety pins; absent where nobody ever said."""
    pins_moved: NotRequired[list[Day | Length]]
    """Day on which the pins were last found moved, and their height before."""


# How much a finding matters.
Severity: TypeAlias = Union[Literal['blocks', 'warns', 'notes']]

# The sex a published table gives separate figures for.
#
# Where it is not known, `Option::None` gives a range over both or an error; nothing guesses.
Sex: TypeAlias = Union[Literal['female', 'male']]

class Share(TypedDict):
    """One bar for several, today."""
    today: Day
    """The day it was made for."""
    lifters: list[SharedLoads]
    """The lifters in the order given."""
    bar: NotRequired[SharedBar]
    """Turn by turn, each lifter by the place in the list given; absent where nobody lifts."""
    sources: list[str]
    """Rows of the registry that the numbers come from."""
    cautions: list[Caution]
    """What to show beside it."""


class Shared(TypedDict):
    """What concerns every lift."""
    lifter: Lifter
    """Whose log it is."""
    regions: list[RegionState]
    """Every region that was ever declared."""
    stop: NotRequired[Stop]
    """A symptom stop in force."""
    clearance: NotRequired[ClearanceInForce]
    """The clearance in force."""
    ill_since: NotRequired[list[Day | float]]
    """An illness after which a new clearance is needed, by its first day, with the number under which it was told last."""
    ill_ahead: NotRequired[list[list[Day | float]]]
    """Illnesses noted in advance, the next one first, each with the number under which it was told last."""
    asks: NotRequired[list[OpenAsk]]
    """What was said when asked before training, until it is answered."""
    layoffs: NotRequired[list[Layoff]]
    """Planned breaks and illnesses noted, until training goes on in them or after them; the last one noted last."""
    today: NotRequired[TodayReport]
    """The last day's report."""
    body_masses: NotRequired[list[list[Day | Mass]]]
    """Body masses of the last half year that were no lower than any later one, oldest first; the last is the present one."""
    pain_asked: NotRequired[bool]
    """Whether the last session asked about pain; absent before the first."""
    pain_on: NotRequired[Day]
    """The last day on which pain was asked about everywhere."""
    answered: NotRequired[Day]
    """The day on which the morning after the last training was first answered; absent while it is not."""
    sessions: NotRequired[list[list[Day | float]]]
    """Numbers and days of the last sessions, oldest first: an answer about one of them speaks of its day."""
    laid_by: NotRequired[list[LaidBy]]
    """Lifts left out so long ago that they are kept no more as they stood, in the order of their last sessions."""
    unknown: float
    """Events of unknown kinds so far."""


class SharedBar(TypedDict):
    """The turns in order."""
    turns: list[Turn]
    """The turns."""
    moves_each_end: float
    """Discs handled on each end, off and on together, from the empty bar to the last set."""
    proved: bool
    """Whether no way with fewer moves exists for any order of the lifters, among stacks with the heavier
    disc inside; false where the search was cut off at its stated bound.
    """


class SharedInput(TypedDict):
    """What concerns every lift."""
    lifter: Lifter
    """Whose log it is."""
    regions: Sequence[RegionState]
    """Every region that was ever declared."""
    stop: NotRequired[Stop]
    """A symptom stop in force."""
    clearance: NotRequired[ClearanceInForceInput]
    """The clearance in force."""
    ill_since: NotRequired[tuple[Day, float]]
    """An illness after which a new clearance is needed, by its first day, with the number under which it was told last."""
    ill_ahead: NotRequired[Sequence[tuple[Day, float]]]
    """Illnesses noted in advance, the next one first, each with the number under which it was told last."""
    asks: NotRequired[Sequence[OpenAsk]]
    """What was said when asked before training, until it is answered."""
    layoffs: NotRequired[Sequence[Layoff]]
    """Planned breaks and illnesses noted, until training goes on in them or after them; the last one noted last."""
    today: NotRequired[TodayReport]
    """The last day's report."""
    body_masses: NotRequired[Sequence[tuple[Day, MassInput]]]
    """Body masses of the last half year that were no lower than any later one, oldest first; the last is the present one."""
    pain_asked: NotRequired[bool]
    """Whether the last session asked about pain; absent before the first."""
    pain_on: NotRequired[Day]
    """The last day on which pain was asked about everywhere."""
    answered: NotRequired[Day]
    """The day on which the morning after the last training was first answered; absent while it is not."""
    sessions: NotRequired[Sequence[tuple[float, Day]]]
    """Numbers and days of the last sessions, oldest first: an answer about one of them speaks of its day."""
    laid_by: NotRequired[Sequence[LaidBy]]
    """Lifts left out so long ago that they are kept no more as they stood, in the order of their last sessions."""
    unknown: float
    """Events of unknown kinds so far."""


class SharedLifterInput(TypedDict):
    """The sets of one lifter, in order."""
    sets: Sequence[SharedSetInput]
    """The sets."""


class SharedLoads(TypedDict):
    """The work of one lifter at the bar."""
    stops: list[Reason]
    """Every stop of the lifter, whatever is planned; empty where nothing is stopped. Shown before anything else."""
    lifter: Name
    """Id of the lifter."""
    lift: Name
    """Id of the lift."""
    place: NamedPlace
    """Where it is done today, by the ids of the own log."""
    loads: list[Mass]
    """Warm-up and work sets that are left, in order; empty where nothing is lifted today, or nothing is left."""
    blocks: NotRequired[list[Length]]
    """Blocks under each end of the bar for each of these loads, 0 on the floor; empty where none needs any."""


class SharedSetInput(TypedDict):
    """One set at a shared bar."""
    load: MassInput
    """The load wanted; never exceeded."""
    tolerance: MassInput
    """How far below it the load may be to save disc handling."""


class Shares(TypedDict):
    """How the planned sessions of a lift went, as parts of all of them. The five add up to 1."""
    held: float
    """Trained, and the place stayed."""
    moved: float
    """A move was taken before the session, which was trained at the new place."""
    stepped_back: float
    """The lift went one step easier at the session or at the morning after it."""
    stopped: float
    """No loaded work: a stop, a rest, or nothing light enough to load."""
    missed: float
    """The day was missed."""


class SharingInput(TypedDict):
    """One of several who share a bar today."""
    log: LogInput
    """The log."""
    plan: PlanInput
    """The plan of today."""
    lift: Name
    """Id of the lift."""
    done: NotRequired[float]
    """Work sets of it done today that the log does not tell yet. Whoever has begun has warmed up."""


class Sheet(TypedDict):
    """A session in sentences. The fields stand in the order in which they are to be shown, and so does `fmt::Display`
    print them.

    In a session with a stop nothing is said of good results, and a clinician is named once.
    """
    stop: list[str]
    """Every stop: the sign, what to do at once, then the clinician. Empty where nothing is stopped."""
    day: str
    """The day and how it compares with the lifter's usual."""
    lifts: list[LiftSheet]
    """The lifts in the order of the plan."""
    mind: list[str]
    """What to mind in all of it."""


# In what a session fell short of the work granted.
Shortfall: TypeAlias = Union[Literal['rung', 'range', 'tempo', 'load', 'sets', 'reps', 'limit']]

# Which way the series went.
Side: TypeAlias = Union[Literal['up', 'down']]

class SideDifference(TypedDict):
    """How unequal two sides are."""
    recommended: SideFigure
    """The index recommended for this kind of test."""
    others: list[SideFigure]
    """The other indices; the same two numbers give other percentages, so a threshold belongs to one index only."""
    beyond_scatter: NotRequired[bool]
    """Whether the difference is larger than the test's own scatter, where that is given."""
    population: str
    """Who it describes."""
    cautions: list[Caution]
    """What to show beside it."""


class SideFigure(TypedDict):
    """One index with its value."""
    index: SideIndex
    """Which index."""
    percent: float
    """Its value in percent, positive if the right side is better."""


# A symmetry index that needs no dominant side.
SideIndex: TypeAlias = Union[Literal['of_total', 'of_stronger', 'of_mean', 'symmetry_angle']]

# How the two sides were tested.
SideTest: TypeAlias = Union[Literal['together', 'apart']]

class SignOff(TypedDict):
    """The coach signs something off."""
    who: Name
    """Who."""
    scope: SignOffScope
    """What."""


# Why the coach's sign-off lifted no stop.
SignOffRefusal: TypeAlias = Union[Literal['no_clearance', 'not_cleared', 'clearance_expired', 'names_no_region', 'told_later']]

SignOffScope_region = TypedDict("SignOffScope_region", {"region": "Name"})

SignOffScope_gate = TypedDict("SignOffScope_gate", {"gate": "Name"})

# What a sign-off covers.
SignOffScope: TypeAlias = Union[Literal['everything'], "SignOffScope_region", "SignOffScope_gate"]

class SimulatedDay(TypedDict):
    """One day of a fitted curve."""
    day: float
    """Which day; 1 is the first."""
    value: float
    """Simulated performance."""
    interval: Interval
    """Where a measurement on that day would lie if the model were true."""


# One session at the current place, as the gate needs it.
Sitting: TypeAlias = Union["list[Day | Outcome | float]"]

class SkillInput(TypedDict):
    """A lifter as a gate sees one: how often a repetition is acceptable, and how alike those of a day are."""
    rate: float
    """Chance that a repetition is acceptable."""
    correlation: NotRequired[float]
    """Correlation between two repetitions of one session; 0 for independent ones."""
    reps: NotRequired[float]
    """Scored repetitions a session; absent for as many as the pass-run asks for. A test of evidence needs it."""
    clean_first_reps: NotRequired[float]
    """First repetitions of a session that must be clean for it to pass."""
    critical_met: NotRequired[float]
    """Chance that a session loses no critical criterion, apart from its other misses; absent for certain."""


class SkillModelInput(TypedDict):
    """A made-up lifter and the weeks of training.

    Beside the chances stated here the rehearsal takes this for granted: every question is asked before every session,
    pain also in it and on the morning after; the coach marks every repetition and takes every move on the next training
    day; every set leaves what is prescribed at the place prescribed; clearance is given on the first day and again when it
    runs out.
    """
    lifts: Sequence[LiftSkillInput]
    """One entry for each lift that is trained."""
    week: Sequence[TrainingDay]
    """The training days of a week that repeats."""
    age: NotRequired[float]
    """Age in whole years on the first day, at most 100. Absent means unknown, and the rules then take the older."""
    below_usual: NotRequired[float]
    """Chance that a training day is a confirmed day below the usual."""
    missed_session: NotRequired[float]
    """Chance that a training day is missed."""
    cleared_after_days: NotRequired[float]
    """Days after a pain stop until a clearance and the coach's sign-off reopen the region; absent means never."""


# How a number may have been mistyped. To be asked about, never corrected in silence.
Slip: TypeAlias = Union[Literal['pounds_as_kilograms', 'kilograms_as_pounds', 'decimal_point']]

class Slope(TypedDict):
    """The slope over the window."""
    kg_per_week: float
    """Change in kg a week."""
    interval: Interval
    """Its interval in kg a week."""
    probability_rising: float
    """Probability that strength is rising."""
    smallest_real_difference: float
    """Two estimates closer than this, in kg, do not differ for certain (95 %)."""
    estimates: float
    """Estimates in the window."""


class Spread(TypedDict):
    """Three figures for what is not known: least, most likely, most. Drawn from a triangle over them.

    Invariant: `low <= middle <= high`, all from 0 to below 1.
    """
    low: float
    middle: float
    high: float


# What holds the bar before the first repetition, and so what its height depends on.
StartsFrom: TypeAlias = Union[Literal['rack', 'floor', 'pins']]

# Everything the fold knows after the last event. The host keeps the log; this can always be made again.
State: TypeAlias = Union["StoredState"]

# Everything the fold knows after the last event. The host keeps the log; this can always be made again.
StateInput: TypeAlias = Union["StoredStateInput"]

class Status_ready_to_advance_fields(TypedDict):
    """The gate is open and a move waits to be taken."""
    since: Day
    """Last session that earned it."""


Status_ready_to_advance = TypedDict("Status_ready_to_advance", {"ready_to_advance": "Status_ready_to_advance_fields"})

# One step easier, to look again.
Status_stepping_back_fields = TypedDict("Status_stepping_back_fields", {"from": "NotRequired[Mass]", "passes": "float"})

Status_stepping_back = TypedDict("Status_stepping_back", {"stepping_back": "Status_stepping_back_fields"})

class Status_resting_fields(TypedDict):
    """A planned break; one that came on the way back leads there again."""
    way: NotRequired[WayBack]
    """The way back that it interrupts."""


Status_resting = TypedDict("Status_resting", {"resting": "Status_resting_fields"})

class Status_returning_fields(TypedDict):
    """Coming back after a break or a stop, never past the load before it."""
    way: WayBack
    """From where, and how far."""
    passes: float
    """Passes since."""


Status_returning = TypedDict("Status_returning", {"returning": "Status_returning_fields"})

class Status_stopped_refer_fields(TypedDict):
    """Stopped by pain or a symptom until a clearance and the coach's sign-off."""
    way: NotRequired[WayBack]
    """The way back that it interrupts."""


Status_stopped_refer = TypedDict("Status_stopped_refer", {"stopped_refer": "Status_stopped_refer_fields"})

# State of a lift. Holding is the ordinary, successful state; it may last for months.
Status: TypeAlias = Union[Literal['learning', 'holding', 'consolidating', 'maintaining', 'retired'], "Status_ready_to_advance", "Status_stepping_back", "Status_resting", "Status_returning", "Status_stopped_refer"]

class StatusInput_ready_to_advance_fields(TypedDict):
    """The gate is open and a move waits to be taken."""
    since: Day
    """Last session that earned it."""


StatusInput_ready_to_advance = TypedDict("StatusInput_ready_to_advance", {"ready_to_advance": "StatusInput_ready_to_advance_fields"})

# One step easier, to look again.
StatusInput_stepping_back_fields = TypedDict("StatusInput_stepping_back_fields", {"from": "NotRequired[MassInput]", "passes": "float"})

StatusInput_stepping_back = TypedDict("StatusInput_stepping_back", {"stepping_back": "StatusInput_stepping_back_fields"})

class StatusInput_resting_fields(TypedDict):
    """A planned break; one that came on the way back leads there again."""
    way: NotRequired[WayBackInput]
    """The way back that it interrupts."""


StatusInput_resting = TypedDict("StatusInput_resting", {"resting": "StatusInput_resting_fields"})

class StatusInput_returning_fields(TypedDict):
    """Coming back after a break or a stop, never past the load before it."""
    way: WayBackInput
    """From where, and how far."""
    passes: float
    """Passes since."""


StatusInput_returning = TypedDict("StatusInput_returning", {"returning": "StatusInput_returning_fields"})

class StatusInput_stopped_refer_fields(TypedDict):
    """Stopped by pain or a symptom until a clearance and the coach's sign-off."""
    way: NotRequired[WayBackInput]
    """The way back that it interrupts."""


StatusInput_stopped_refer = TypedDict("StatusInput_stopped_refer", {"stopped_refer": "StatusInput_stopped_refer_fields"})

# State of a lift. Holding is the ordinary, successful state; it may last for months.
StatusInput: TypeAlias = Union[Literal['learning', 'holding', 'consolidating', 'maintaining', 'retired'], "StatusInput_ready_to_advance", "StatusInput_stepping_back", "StatusInput_resting", "StatusInput_returning", "StatusInput_stopped_refer"]

class SteadyLoss(TypedDict):
    """When a steady loss meets a floor."""
    years: YearsToFloor
    """After how many years."""
    population: str
    """Who it describes: whoever loses at that rate."""
    cautions: list[Caution]
    """What to show beside it."""


StepPolicy_part = TypedDict("StepPolicy_part", {"part": "float"})

StepPolicy_fixed = TypedDict("StepPolicy_fixed", {"fixed": "Mass"})

# How large a step in load is.
StepPolicy: TypeAlias = Union[Literal['smallest_loadable'], "StepPolicy_part", "StepPolicy_fixed"]

StepPolicyInput_part = TypedDict("StepPolicyInput_part", {"part": "float"})

StepPolicyInput_fixed = TypedDict("StepPolicyInput_fixed", {"fixed": "MassInput"})

# How large a step in load is.
StepPolicyInput: TypeAlias = Union[Literal['smallest_loadable'], "StepPolicyInput_part", "StepPolicyInput_fixed"]

class StepRange(TypedDict):
    """A step from the least to the most; negative where the load goes down."""
    least: Kilograms
    """The smallest step, in kg."""
    most: Kilograms
    """The largest step, in kg."""


class StepReality(TypedDict):
    """The smallest step, and the bridges over it."""
    next: Loaded
    """The next load up; its difference is the step."""
    percent: float
    """The step in percent of the load."""
    size: StepSize
    """Where that lies."""
    discs_that_help: list[Mass]
    """Discs of those offered whose added pair brings the step to 10 % or less, heaviest first."""
    reps_first: NotRequired[Reps]
    """Repetitions to reach at the present load before the step; none where no table was given or the table
    ends before.
    """


# Where the step lies in the published range.
StepSize: TypeAlias = Union[Literal['below_range', 'in_range', 'above_range']]

class Stock(TypedDict):
    """The discs at hand, kilogram and pound ones together.

    Invariant: at most `Stock::MOST_KINDS` kinds. The place of a kind in the list is its name in answers.
    """
    discs: list[Disc]


class StockInput(TypedDict):
    """The discs at hand, kilogram and pound ones together.

    Invariant: at most `Stock::MOST_KINDS` kinds. The place of a kind in the list is its name in answers.
    """
    discs: Sequence[DiscInput]


class Stop(TypedDict):
    """A stop that only a clearance and a sign-off lift."""
    since: Day
    """When."""
    told: float
    """Number under which what stops was told last: of an event, or of the correction that says it. A clearance or a sign-off
    of a lower number was given before, and lifts nothing of it.
    """
    signs: NotRequired[list[StopSign]]
    """Signs that stopped; none for pain or for a clearance that was refused."""
    features: NotRequired[list[PainFeature]]
    """What came with the pain that stopped, where that was said."""
    cleared: bool
    """A clearance was given since."""
    signed: bool
    """The coach signed off since."""
    refused: NotRequired[list[Day | SignOffRefusal]]
    """Day of the coach's last sign-off, where it did not count, and why."""


class StopGone(TypedDict):
    """A stop that is in force and would not be any more."""
    stop: Restriction
    """The stop."""
    taken_back: bool
    """What reported it would not be in the log any more, or would say something else; else something in it lifts the stop."""


class StopNow(TypedDict):
    """A stop in force by a sign or by pain, and what of its reopening is there."""
    region: NotRequired[Name]
    """The region; absent where everything is stopped."""
    since: Day
    """Since when."""
    signs: list[StopSign]
    """Signs that stopped; none for pain or for a clearance that was refused."""
    features: list[PainFeature]
    """What came with the pain that stopped, where that was said."""
    cleared: bool
    """A clearance was given since."""
    signed: bool
    """The coach signed off since."""


# Signs that stop everything. Any one of them halts every lift until a clearance and the coach's sign-off.
StopSign: TypeAlias = Union[Literal['chest_pain', 'faint', 'breathlessness', 'headache', 'one_sided_weakness', 'heartbeat', 'vision', 'saddle_numbness']]

class StoppingEffect(TypedDict):
    """A standardised mean difference with its 95 % interval."""
    outcome: StoppingOutcome
    """What it is about."""
    effect: float
    """Standardised mean difference; below 0 is loss."""
    interval: Interval
    """Its interval."""


# What a pooled effect is about.
StoppingOutcome: TypeAlias = Union[Literal['submaximal_strength', 'maximal_force', 'power', 'size_through_training', 'size_after_stopping', 'size_after_12_to_24_weeks', 'size_after_31_to_52_weeks', 'strength_kept_4_to_6_weeks', 'strength_kept_8_to_16_weeks', 'strength_kept_after_long_training']]

class StoredState(TypedDict):
    """A state as it is stored: bounded in size, checked on its way in. The host keeps the log; a state of another version of
    the library is not used, but folded anew from it.

    # What is checked
    Format and version; the digest of the parameters, and the parameters themselves; that each lift of them is there once, by its
    id; that grant and last place are on its lists; that no list is longer than the fold makes it and nothing named twice; that no
    day lies after the last event and no list of days is out of order; that no counter goes beyond what any policy may ask for;
    that a status goes with what the lift is for and with its own numbers (no return past the load before it, no more granted
    than ever was); that what a stop in force concerns is stopped; and, last, the seal over all of it, which a slip of the pen or
    of a disk breaks. Whether the state is the one after a log only `State::from_value_or_fold` can tell, and what somebody
    writes who makes the seal anew only the log itself.

    # The seal
    The 64-bit FNV-1a hash, in hexadecimal, of `Value::canonical_bytes`(crate::value::Value::canonical_bytes) of the document
    without the field `seal`. It keeps no secret and proves nobody's word.
    """
    format: str
    version: str
    log_version: float
    last: NotRequired[list[Day | float]]
    told: float
    """How many different events the log told, corrections too."""
    events: str
    """Digest of the events that were folded, in hexadecimal."""
    parameters: NotRequired[RecordParameters]
    digest: str
    shared: Shared
    lifts: list[list[Name | Now]]
    """Each lift of the parameters by its id."""
    set_aside: NotRequired[list[list[LiftParameters | Now]]]
    seal: NotRequired[str]
    """Over everything else in this form."""


class StoredStateInput(TypedDict):
    """A state as it is stored: bounded in size, checked on its way in. The host keeps the log; a state of another version of
    the library is not used, but folded anew from it.

    # What is checked
    Format and version; the digest of the parameters, and the parameters themselves; that each lift of them is there once, by its
    id; that grant and last place are on its lists; that no list is longer than the fold makes it and nothing named twice; that no
    day lies after the last event and no list of days is out of order; that no counter goes beyond what any policy may ask for;
    that a status goes with what the lift is for and with its own numbers (no return past the load before it, no more granted
    than ever was); that what a stop in force concerns is stopped; and, last, the seal over all of it, which a slip of the pen or
    of a disk breaks. Whether the state is the one after a log only `State::from_value_or_fold` can tell, and what somebody
    writes who makes the seal anew only the log itself.

    # The seal
    The 64-bit FNV-1a hash, in hexadecimal, of `Value::canonical_bytes`(crate::value::Value::canonical_bytes) of the document
    without the field `seal`. It keeps no secret and proves nobody's word.
    """
    format: str
    version: str
    log_version: float
    last: NotRequired[tuple[Day, float]]
    told: float
    """How many different events the log told, corrections too."""
    events: str
    """Digest of the events that were folded, in hexadecimal."""
    parameters: NotRequired[RecordParametersInput]
    digest: str
    shared: SharedInput
    lifts: Sequence[tuple[Name, NowInput]]
    """Each lift of the parameters by its id."""
    set_aside: NotRequired[Sequence[tuple[LiftParametersInput, NowInput]]]
    seal: NotRequired[str]
    """Over everything else in this form."""


class StrengthChange(TypedDict):
    """Two maxima of one person, compared."""
    change: Kilograms
    """After less before, kg."""
    percent: float
    """The same in percent of before."""
    interval: Interval
    """Where the true change lies, kg."""
    smallest_real: Kilograms
    """The smallest change that noise does not explain at that level, kg."""
    is_real: bool
    """Whether the change is that large, either way."""
    chances: ChangeChances
    """How likely it is that the true change is worth while, trivial or a loss worth minding."""


class StrengthEvidence(TypedDict):
    """An estimate of the one-repetition maximum on one day."""
    day: Day
    """The day."""
    estimate: float
    """The estimate in kg."""
    standard_error: float
    """Its standard error in kg."""
    kind: EvidenceKind
    """Where it comes from."""


class StrengthForecast(TypedDict):
    """Where the level may lie later."""
    day: Day
    """The day."""
    level: float
    """Most likely level in kg if the trend goes on."""
    band: Interval
    """Its band in kg."""


class StrengthLevel(TypedDict):
    """The latent level at one day."""
    day: Day
    """The day."""
    level: float
    """Level in kg, given all estimates."""
    standard_error: float
    """Its standard error in kg, what all estimates share not included."""
    form: NotRequired[float]
    """That day's form: estimate less what was expected, in standard deviations."""


# A study whose rates can carry strength from one age to another.
#
# Rates that were published by ethnic group are used as the band they span; ethnicity is asked nowhere.
Study: TypeAlias = Union[Literal['goodpaster-2006', 'mitchell-2012', 'von-haehling-2010', 'frontera-2000', 'hughes-2001', 'kemmler-2018', 'hunter-2000', 'hurley-1995', 'huebner-2019', 'dodds-2014']]

class Summary(TypedDict):
    """Mean and standard deviation."""
    count: float
    """How many values."""
    mean: float
    """Their mean."""
    standard_deviation: float
    """Standard deviation with `n - 1` below."""


class SymptomReport(TypedDict):
    """Symptoms that stop everything."""
    signs: list[StopSign]
    """Which signs; at least one."""


TableGuess_separator = TypedDict("TableGuess_separator", {"separator": "str"})

class TableGuess_column_read_as_fields(TypedDict):
    """A column goes by another name."""
    column: str
    """Its name."""
    field: str
    """What it was taken for."""


TableGuess_column_read_as = TypedDict("TableGuess_column_read_as", {"column_read_as": "TableGuess_column_read_as_fields"})

class TableGuess_day_order_fields(TypedDict):
    """Days are written in this order, since so many rows can be read in no other."""
    order: DayOrder
    """The order."""
    rows: float
    """Rows that show it."""


TableGuess_day_order = TypedDict("TableGuess_day_order", {"day_order": "TableGuess_day_order_fields"})

TableGuess_time_left_out = TypedDict("TableGuess_time_left_out", {"time_left_out": "float"})

TableGuess_decimal_comma = TypedDict("TableGuess_decimal_comma", {"decimal_comma": "float"})

TableGuess_pounds = TypedDict("TableGuess_pounds", {"pounds": "float"})

class TableGuess_lift_read_as_fields(TypedDict):
    """A lift was found under another spelling."""
    text: str
    """In the table."""
    lift: Name
    """Its id in the log."""


TableGuess_lift_read_as = TypedDict("TableGuess_lift_read_as", {"lift_read_as": "TableGuess_lift_read_as_fields"})

# Something that the table does not say, and how it was read.
TableGuess: TypeAlias = Union[Literal['one_session_a_day', 'every_row_a_work_set', 'place_as_granted'], "TableGuess_separator", "TableGuess_column_read_as", "TableGuess_day_order", "TableGuess_time_left_out", "TableGuess_decimal_comma", "TableGuess_pounds", "TableGuess_lift_read_as"]

class TableReading(TypedDict):
    """What the host knows about a table, so that it need not be guessed."""
    unit: NotRequired[Unit]
    """The unit of loads that name none."""
    day_order: NotRequired[DayOrder]
    """Which number of a day is the month."""
    lifts: NotRequired[Sequence[LiftSpelling]]
    """What the table calls a lift."""


class TableRows(TypedDict):
    """A table as cells."""
    columns: Sequence[str]
    """Names of the columns."""
    rows: Sequence[Sequence[str]]
    """The rows, each with a text a column; empty where nothing was written down."""


class TaperFinding(TypedDict):
    """A taper as a pooled analysis found it to work."""
    volume_cut_low: float
    """Smallest part of the volume taken off."""
    volume_cut_high: float
    """Largest part of the volume taken off."""
    days: float
    """About this many days."""


class TaperPractice(TypedDict):
    """What lifters report of their tapers."""
    volume_cut: MeanAndDeviation
    """Part of the volume taken off."""
    days: MeanAndDeviation
    """Length in days."""
    last_session_days_before: MeanAndDeviation
    """Days from the last session to the meet."""


# The way down.
TaperShape: TypeAlias = Union[Literal['step', 'linear', 'exponential']]

# What a critical fault in a set asks for.
TechniqueStop: TypeAlias = Union[Literal['go_on', 'end_set', 'end_lift']]

# Whether the movement held up.
TechniqueVerdict: TypeAlias = Union[Literal['passed', 'failed', 'not_scored']]

class Tempo(TypedDict):
    """Seconds down, hold and up."""
    down: float
    """Seconds down."""
    hold: float
    """Seconds of hold."""
    up: float
    """Seconds up."""


class TestDone(TypedDict):
    """A function test and when it was last done; the result is kept by the record."""
    test: FunctionTest
    """Which test."""
    on: Day
    """The day it was last done."""


class TestRetest(TypedDict):
    """How two trials of the same people differ."""
    change_in_mean: float
    """Mean of second less first: learning, or fatigue."""
    difference_deviation: float
    """Standard deviation of the differences."""
    typical_error: float
    """Typical error: what one trial of one person wanders by."""


class TestedFunction(TypedDict):
    """The last result of a test, against its published floor."""
    test: FunctionTest
    """Which test."""
    written: EverydayTest
    """The same by the name that the log has for it."""
    on: Day
    """When it was last done."""
    result: float
    """Its result, in the unit of the test."""
    before: NotRequired[list[Day | float]]
    """When it was done before that, and with what result."""
    floor: NotRequired[Floor]
    """The published floor; absent where none is here for this test."""
    margin: NotRequired[FloorMargin]
    """How far the result lies from it."""


Then_down_to = TypedDict("Then_down_to", {"down_to": "Mass"})

Then_up_to = TypedDict("Then_up_to", {"up_to": "Mass"})

Then_easier_rung = TypedDict("Then_easier_rung", {"easier_rung": "Name"})

# What to do after that set.
Then: TypeAlias = Union[Literal['begin', 'same', 'stop'], "Then_down_to", "Then_up_to", "Then_easier_rung"]

class TimeConstants(TypedDict):
    """The two time constants of a response, in days: fitness fades more slowly than fatigue."""
    fitness_days: float
    fatigue_days: float


# When in the day, as far as it changes what is ordinary.
TimeOfDay: TypeAlias = Union[Literal['morning', 'afternoon', 'evening']]

class TimesSpread(TypedDict):
    """How well the times of a response were known in nine swimmers."""
    fitness: DaysWithInterval
    """Time constant of fitness."""
    fatigue: DaysWithInterval
    """Time constant of fatigue."""
    recovery: DaysWithInterval
    """Days to recovery."""
    peak: DaysWithInterval
    """Days to the peak."""


# The day's answers as the state keeps them.
TodayReport = TypedDict("TodayReport", {"day": "Day", "class": "DayClass", "asks_asked": "bool", "pain_asked": "bool", "raised": "NotRequired[Ask]", "minutes": "NotRequired[float]"})

class ToldAllowed(TypedDict):
    """What would have been accepted: a range, one of some names, or a rule in words."""
    low: NotRequired[float]
    """Lowest value allowed."""
    high: NotRequired[float]
    """Highest value allowed."""
    unit: NotRequired[str]
    """Unit of both."""
    one_of: NotRequired[Sequence[str]]
    """One of these names."""
    rule: NotRequired[str]
    """A rule in words."""


class ToldErrorInput(TypedDict):
    """An error of this library as another language has it, to be told in a sentence."""
    code: str
    """Stable code."""
    field: NotRequired[str]
    """Path to the field, as the language spells it; absent or empty where there is none."""
    value: NotRequired[ToldValue]
    """The value as given."""
    allowed: NotRequired[ToldAllowed]
    """What would have been accepted."""
    event: NotRequired[float]
    """Sequence number of the event it concerns."""
    message: NotRequired[str]
    """The message that some languages have beside it; the sentence is made without it."""


# A value that was refused; `NaN`, `Infinity` and `-Infinity` stand for the numbers that JSON cannot say.
ToldValue: TypeAlias = Union["float | str"]

Tolerance_part = TypedDict("Tolerance_part", {"part": "float"})

# Which rule limits the error of bars, collars and discs that nobody weighed.
Tolerance: TypeAlias = Union[Literal['iwf', 'powerlifting'], "Tolerance_part"]

# Whether the person trains for strength all year, year after year.
Training: TypeAlias = Union[Literal['untrained', 'consistent']]

class TrainingDay(TypedDict):
    """One training day of a week that repeats."""
    weekday: float
    """Day of the week, 0 to 6 from the host's first day."""
    lifts: Sequence[Name]
    """Ids of the lifts of that day."""


# Phrases in another language, or a host's own words. What it does not say is said in English.
Translation: TypeAlias = Union["Mapping[str, str]"]

class Trend(TypedDict):
    """The trend of one lift."""
    stops: list[Reason]
    """Every stop of the lifter, whatever is asked about; empty where nothing is stopped. Shown before anything else."""
    today: Day
    """The day it was made for."""
    lift: Name
    """Id of the lift."""
    weeks: float
    """Weeks that the slope is taken over."""
    place: NotRequired[Place]
    """Where the sessions were done: on the rung and in the range of the last one."""
    scale: TrendScale
    """What the estimates are of."""
    estimated_by: EstimatedBy
    """By what they were made."""
    report: NotRequired[TrendReport]
    """Verdict, level now, slope with its interval, change that is real, bands ahead; absent without one estimate."""
    velocity: NotRequired[VelocityTrend]
    """Velocity at one load, where it was measured often enough."""
    points: list[TrendPoint]
    """The sessions of the window."""
    newest: NotRequired[SessionEstimate]
    """The newest session of the window whose sets can speak, equation by equation; absent without one."""
    elsewhere: float
    """Sessions on another rung or in another range, left out."""
    missing: list[Lacking]
    """What nobody wrote down."""
    sources: list[str]
    """Rows of the registry that the numbers come from."""
    cautions: list[Caution]
    """What to show beside it."""


class TrendFit(TypedDict):
    """Maximum-likelihood drifts of a trend."""
    level_drift: float
    """Variance by which the level moves per day beside its slope."""
    slope_drift: float
    """Variance by which the slope moves per day."""
    log_likelihood: float
    """Log likelihood there."""


class TrendOptions(TypedDict):
    """How a trend is read."""
    window_days: float
    """Days up to today that the slope is taken over."""
    level: float
    """Level of all intervals."""
    forecast_days: list[float]
    """Days ahead to look."""


class TrendOptionsInput(TypedDict):
    """How a trend is read."""
    window_days: NotRequired[float]
    """Days up to today that the slope is taken over."""
    level: NotRequired[float]
    """Level of all intervals."""
    forecast_days: NotRequired[Numbers]
    """Days ahead to look."""


class TrendPath(TypedDict):
    """The whole path of a trend."""
    stops: list[TrendStop]
    """Stops in order of days."""
    log_likelihood: float
    """Sum of the normal log densities of the innovations; readings that only start level and slope are left out."""


class TrendPoint(TypedDict):
    """One session: its estimate with its range, and the level behind it with its band, kg."""
    day: Day
    """The day."""
    value: float
    """Estimate of that session alone."""
    low: float
    """Its lower end."""
    high: float
    """Its upper end."""
    level: float
    """The level behind it, given all sessions."""
    level_low: float
    """Lower end of the level."""
    level_high: float
    """Upper end of the level."""


class TrendReport(TypedDict):
    """The trend of one lift."""
    verdict: TrendVerdict
    """What the slope says."""
    level_now: NotRequired[Interval]
    """Level at the last estimate, with what all estimates share."""
    slope: NotRequired[Slope]
    """The slope, where there is enough history."""
    path: list[StrengthLevel]
    """The level at each estimate, over the whole history."""
    forecast: list[StrengthForecast]
    """Bands ahead, where there is enough history."""
    mixed_kinds: bool
    """Whether estimates of different kinds are mixed in the window: part of a change may be the change of method."""
    outliers: float
    """Estimates far from their neighbours that were taken in only as far as believable: look at them."""


# What the estimates are of.
TrendScale: TypeAlias = Union[Literal['load', 'body_less_help']]

class TrendState(TypedDict):
    """Level and slope with their variances and covariance."""
    level: float
    """Level, in the unit of the readings."""
    slope: float
    """Slope, in that unit per day."""
    level_variance: float
    """Variance of the level."""
    slope_variance: float
    """Variance of the slope."""
    covariance: float
    """Covariance of the two."""


class TrendStop(TypedDict):
    """One stop of the path of a trend."""
    day: Day
    """The day."""
    reading: NotRequired[float]
    """The reading, if there was one."""
    innovation: NotRequired[float]
    """Reading less prediction, once there is a prediction."""
    standardised: NotRequired[float]
    """Innovation in standard deviations."""
    filtered: NotRequired[TrendState]
    """State given everything up to here; absent until readings on two days name a slope."""
    smoothed: TrendState
    """State given everything, later readings too."""


# What the slope says.
TrendVerdict: TypeAlias = Union[Literal['not_enough_history', 'within_noise', 'rising', 'falling']]

class Turn(TypedDict):
    """One turn at the bar."""
    lifter: float
    """Whose turn: the place in the list of lifters."""
    set: float
    """Which of their sets."""
    moves: EndMoves
    """The load and the discs that move."""


# When nobody asked about pain.
Unasked: TypeAlias = Union[Literal['no_session_yet', 'last_session', 'today', 'last_session_and_today']]

# The unit a mass is read or shown in.
Unit: TypeAlias = Union[Literal['kg', 'lb']]

# A load that looks as if it were typed in the other unit. To be asked about, never corrected in silence.
UnitSlip: TypeAlias = Union[Literal['pounds_read_as_kilograms', 'kilograms_read_as_pounds']]

class UsualPain(TypedDict):
    """An agreed usual level of pain in a region, below which work may go on."""
    region: Name
    """Id of the region."""
    level: Pain
    """The agreed level, at most 3."""
    who: Name
    """Who agreed it."""
    clinician: NotRequired[bool]
    """A clinician agreed it; needed above 2."""


class VariableDay(TypedDict):
    """One day of a simulated variable response, read before its session."""
    fitness: float
    """Trace of fitness, in units of load."""
    fatigue: float
    """What fatigue takes off performance."""
    fatigue_gain: float
    """The gain with which this day's load enters fatigue."""
    performance: float
    """Simulated performance, in the unit of the baseline."""


class VariableResponse(TypedDict):
    """A response whose fatigue gain grows with recent load.

    Invariant: finite, gains and time constants above 0, fitness slower than fatigue.
    """
    baseline: float
    fitness_gain: float
    fatigue_gain_rate: float
    fitness_days: float
    fatigue_days: float
    gain_days: float


class VariantRatio(TypedDict):
    """Forgiving over strict."""
    ratio: float
    """The ratio most believed."""
    interval: Interval
    """Its interval."""
    own_weight: float
    """How much of it is the lifter's own: 0 is the prior alone, 1 the own data alone."""
    pairs: float
    """Pairs used."""


# A lift whose velocity at the maximum was published.
VelocityLift: TypeAlias = Union[Literal['bench_press', 'free_bench_press', 'full_squat', 'free_back_squat', 'leg_press', 'hex_deadlift', 'bench_pull']]

class VelocityProfile(TypedDict):
    """A line of velocity on load, and the maximum where it reaches the velocity of a maximum."""
    slope: float
    """Change of velocity, m/s for each kg; below 0."""
    intercept: float
    """Velocity at no load, m/s."""
    one_rm: Kilograms
    """Estimated one-repetition maximum."""
    interval: Interval
    """Where it lies by the published error of such predictions, in kg."""
    load_at_no_velocity: Kilograms
    """Load at which the line reaches no velocity: always above the maximum."""
    r_squared: NotRequired[float]
    """R2 of the line; absent with two points, which any line fits."""
    cautions: list[Caution]
    """What to show beside it."""


class VelocityTrend(TypedDict):
    """How the velocity at one and the same load moves."""
    load: Mass
    """The load: that with the most sessions in the window."""
    sessions: float
    """Sessions with a velocity at it."""
    per_week: float
    """Change in m/s a week: the median over all pairs of sessions."""
    interval: Interval
    """Its interval."""
    verdict: TrendVerdict
    """What the slope says."""


# What to do with a lift today, from the lightest intervention to the gravest.
Verdict: TypeAlias = Union[Literal['train', 'ease_off', 'technique_only', 'rest', 'stop']]

# How good the verdicts were.
VerdictSkill: TypeAlias = Union[Literal['not_enough_sessions', 'nothing_to_compare', 'no_better_than_chance', 'better_than_chance']]

class Verdicts(TypedDict):
    """How good the verdicts about the day were."""
    stops: list[Reason]
    """Every stop of the lifter, whatever is asked about; empty where nothing is stopped. Shown before anything else."""
    today: Day
    """The day it was made for."""
    days: float
    """Training days, with and without a verdict."""
    calibration: NotRequired[ClassCalibration]
    """Hits, false alarms, misses, with their intervals and what chance alone would do; absent without a single verdict."""
    missing: list[Lacking]
    """What nobody wrote down."""
    sources: list[str]
    """Rows of the registry that the numbers come from."""
    cautions: list[Caution]
    """What to show beside it."""


# What one marker says of today.
Vote: TypeAlias = Union[Literal['below', 'within', 'above', 'not_enough_history', 'not_answered']]

class WarmUp(TypedDict):
    """The warm-up sets in order, the work load last."""
    sets: list[LoadedWarmUpSet]
    """The sets."""
    left_out: list[float]
    """Steps left out because nothing within their tolerance can be loaded."""
    moves_each_end: float
    """Discs handled on each end, off and on together, until the work load is on."""
    proved: bool
    """Whether no way with fewer moves exists among stacks with the heavier disc inside; false where the
    search was cut off at its stated bound.
    """


class WarmUpSet(TypedDict):
    """One warm-up set."""
    load: Mass
    """Its load."""
    reps: float
    """Its repetitions."""
    reference: bool
    """It is the fixed set that measures the day: same load, repetitions and rest every time."""


class WarmUpStep(TypedDict):
    """One wanted warm-up set."""
    target: Mass
    """The load aimed at."""
    tolerance: Mass
    """How far the load may lie from it on either side to save disc handling."""
    reps: Reps
    """Repetitions to do."""
    reference: bool
    """The reference set: same load every session, since it measures the day. Always kept, never moved."""


class WarmUpStepInput(TypedDict):
    """One wanted warm-up set."""
    target: MassInput
    """The load aimed at."""
    tolerance: MassInput
    """How far the load may lie from it on either side to save disc handling."""
    reps: Reps
    """Repetitions to do."""
    reference: bool
    """The reference set: same load every session, since it measures the day. Always kept, never moved."""


# What the warm-up showed of technique.
WarmUpTechnique: TypeAlias = Union[Literal['as_usual', 'critical_drop', 'not_scored']]

class WayBack(TypedDict):
    """A way back after a break or a stop."""
    cap: Mass
    """Granted load before it; the way back never goes past."""
    row: float
    """Row of the layoff table that it began with, 1 being the shortest."""
    gap: float
    """Days of the break; 0 after a stop."""
    held: NotRequired[bool]
    """These are days of lighter work, not days without any."""
    stepped_from: NotRequired[Mass]
    """Load from which a step back was taken on it last."""
    reopened: NotRequired[Day]
    """Day on which the stop that it comes back from was lifted."""
    after_illness: NotRequired[bool]
    """An illness was part of what it comes back from."""
    no_restoring: NotRequired[bool]
    """The first row alone gives the load back after one pass; on this way it does not either."""


class WayBackInput(TypedDict):
    """A way back after a break or a stop."""
    cap: MassInput
    """Granted load before it; the way back never goes past."""
    row: float
    """Row of the layoff table that it began with, 1 being the shortest."""
    gap: float
    """Days of the break; 0 after a stop."""
    held: NotRequired[bool]
    """These are days of lighter work, not days without any."""
    stepped_from: NotRequired[MassInput]
    """Load from which a step back was taken on it last."""
    reopened: NotRequired[Day]
    """Day on which the stop that it comes back from was lifted."""
    after_illness: NotRequired[bool]
    """An illness was part of what it comes back from."""
    no_restoring: NotRequired[bool]
    """The first row alone gives the load back after one pass; on this way it does not either."""


class Week(TypedDict):
    """The last seven days against the lifter's own weeks."""
    stops: list[Reason]
    """Every stop of the lifter, whatever is asked about; empty where nothing is stopped. Shown before anything else."""
    today: Day
    """The day it was made for: the last of the seven."""
    total: NotRequired[WeekDone]
    """What was done in them; absent where the log holds no session at all."""
    measure: WeekMeasure
    """In what the whole is compared."""
    change: WeekChange
    """The whole against the own band."""
    sets_change: WeekChange
    """Work sets of the whole against the own band."""
    felt: WeekFelt
    """As it felt."""
    lifts: list[WeekPart]
    """Each lift of these weeks, in alphabetical order."""
    regions: list[WeekPart]
    """Each region, in alphabetical order; a set counts in each of its regions. Compared in sets."""
    weeks: list[WeekDone]
    """The weeks that were looked at, oldest first, this one last."""
    missing: list[Lacking]
    """What nobody wrote down."""
    sources: list[str]
    """Rows of the registry that the numbers come from."""
    cautions: list[Caution]
    """What to show beside it."""


# Over which values the mean and the deviation were taken.
WeekBasis: TypeAlias = Union[Literal['days', 'listed_sessions']]

class WeekChange(TypedDict):
    """A week against the band."""
    verdict: WeekVerdict
    """Where the week lies."""
    centre: NotRequired[float]
    """Middle of the trained weeks."""
    low: NotRequired[float]
    """Lower edge of the band."""
    high: NotRequired[float]
    """Upper edge of the band."""
    times_usual: NotRequired[float]
    """This week over the centre; absent where nothing is said."""
    trained_weeks: float
    """Trained weeks that made the band."""


# What was done in seven days.
WeekDone = TypedDict("WeekDone", {"from": "Day", "to": "Day", "training_days": "float", "sets": "float", "helped_sets": "float", "repetitions": "float", "volume_load": "NotRequired[Kilograms]", "effort": "EffortZones"})

class WeekFelt(TypedDict):
    """The sessions of the week as they felt: rating times minutes."""
    load: NotRequired[WeekLoad]
    """Total, monotony and strain over the seven days; absent while a session of the week is not rated."""
    change: WeekChange
    """The total against the own band."""


class WeekLoad(TypedDict):
    """A week in numbers, with the conventions that made them."""
    total: float
    """Sum of the week's daily loads."""
    mean: float
    """Mean of the values."""
    deviation: float
    """Standard deviation of the values."""
    monotony: Monotony
    """Mean over deviation."""
    strain: NotRequired[float]
    """Total times monotony; absent where monotony is undefined."""
    training_values: float
    """Values above 0."""
    largest_possible: NotRequired[float]
    """The largest monotony that so many training days allow; absent for sessions, and where no limit exists."""
    deviation_kind: Deviation
    """Which standard deviation was used. Never mix two within one history."""
    basis: WeekBasis
    """Over which values."""


# In what a week is held against the weeks before it.
WeekMeasure: TypeAlias = Union[Literal['volume_load', 'sets']]

class WeekPart(TypedDict):
    """One lift or one region in this week."""
    id: Name
    """Id of the lift or region."""
    sets: float
    """Work sets, helped ones too."""
    repetitions: float
    """Repetitions."""
    volume_load: NotRequired[Kilograms]
    """Load times repetitions, as for the whole week."""
    measure: WeekMeasure
    """In what it is compared."""
    change: WeekChange
    """This week against the own band."""


WeekVerdict_quiet = TypedDict("WeekVerdict_quiet", {"quiet": "QuietReason"})

# Where the week lies.
WeekVerdict: TypeAlias = Union[Literal['usual', 'more_than_usual', 'less_than_usual'], "WeekVerdict_quiet"]

class Weighing(TypedDict):
    """A bar, disc or machine, and when it was last weighed."""
    equipment: Name
    """Which bar, disc or machine."""
    on: NotRequired[Day]
    """The day it was last weighed; absent if never."""


WeightedStart_mean_of_first = TypedDict("WeightedStart_mean_of_first", {"mean_of_first": "float"})

WeightedStart_from = TypedDict("WeightedStart_from", {"from": "LoadTotal"})

# What a weighted mean starts from; the source leaves it open, and the first weeks depend on it.
WeightedStart: TypeAlias = Union[Literal['first_load', 'zero'], "WeightedStart_mean_of_first", "WeightedStart_from"]

class WhoMarks(TypedDict):
    """Somebody who marks."""
    rater: Rater
    """In which role."""
    id: NotRequired[Name]
    """Which person, where that was written down."""


class WidthParts(TypedDict):
    """Shares of the variance behind the interval; they add up to 1."""
    equation: float
    """Which equation, and how this lifter differs from it."""
    reserve: float
    """Misjudged repetitions in reserve, the lifter's habit included."""
    day_to_day: float
    """The day, and the scatter of repetitions from set to set."""


class WithoutHealth(TypedDict):
    """A copy of a log without health detail."""
    log: Log
    """The copy."""
    left_out: list[LeftOut]
    """What it does not have, in the order in which it was first met. For whoever makes the copy: handed on with it, it would tell what
    there was.
    """


class Work(TypedDict):
    """How much is done at a place."""
    sets: float
    """Work sets."""
    reps: float
    """Repetitions a set."""
    load: Mass
    """Load; below zero for help."""


class WorkInput(TypedDict):
    """How much is done at a place."""
    sets: float
    """Work sets."""
    reps: float
    """Repetitions a set."""
    load: MassInput
    """Load; below zero for help."""


class WorkSet(TypedDict):
    """One work set."""
    load: Mass
    """The load on the bar."""
    reps: Reps
    """Repetitions done; 0 is a failed attempt."""
    effort: NotRequired[Effort]
    """How hard it was. Absent means not asked."""
    failed: NotRequired[bool]
    """A repetition was tried and missed beyond those done. Absent means that none was told, and not that somebody asked: what a set
    shows it shows by the repetitions done and their marks, which are never taken for granted, so that leaving this out makes
    no pass of what is none. Told, it is a fail.
    """
    marks: NotRequired[SetMarks]
    """Technique marks, of as many repetitions as the set has. Absent means not scored, which is never a pass."""
    velocity: NotRequired[float]
    """Mean velocity of the bar in the fastest repetition, in m/s, where somebody measured it."""
    also_marked: NotRequired[list[SetMarks]]
    """Marks of other people who looked at the same set, of as many repetitions. What one of them saw lost counts as lost; nothing better is taken
    from them.
    """


class WorkSetInput(TypedDict):
    """One work set."""
    load: MassInput
    """The load on the bar."""
    reps: Reps
    """Repetitions done; 0 is a failed attempt."""
    effort: NotRequired[Effort]
    """How hard it was. Absent means not asked."""
    failed: NotRequired[bool]
    """A repetition was tried and missed beyond those done. Absent means that none was told, and not that somebody asked: what a set
    shows it shows by the repetitions done and their marks, which are never taken for granted, so that leaving this out makes
    no pass of what is none. Told, it is a fail.
    """
    marks: NotRequired[SetMarks]
    """Technique marks, of as many repetitions as the set has. Absent means not scored, which is never a pass."""
    velocity: NotRequired[float]
    """Mean velocity of the bar in the fastest repetition, in m/s, where somebody measured it."""
    also_marked: NotRequired[Sequence[SetMarks]]
    """Marks of other people who looked at the same set, of as many repetitions. What one of them saw lost counts as lost; nothing better is taken
    from them.
    """


class Year(TypedDict):
    """The yearly answer."""
    stops: list[Reason]
    """Every stop of the lifter, whatever is asked about; empty where nothing is stopped. Shown before anything else."""
    today: Day
    """The day it was made for."""
    card: YearlyCard
    """What is due, by day, and what is worth a talk."""
    tests: list[TestedFunction]
    """Tests that were done, against their floors."""
    keep: list[KeptLoad]
    """Loads to keep for later years."""
    missing: list[Lacking]
    """What nobody wrote down."""
    sources: list[str]
    """Rows that the numbers come from."""
    cautions: list[Caution]
    """What to show beside it."""


class YearlyCard(TypedDict):
    """The yearly card."""
    lines: list[CardLine]
    """What is due, by day."""
    notes: list[CardNote]
    """What is worth a talk with a clinician."""
    cautions: list[Caution]
    """What to show beside it."""


class YearlyFactsInput(TypedDict):
    """What the yearly card is made from. Plain dates; the caller takes them from its record."""
    clearance: NotRequired[Day]
    """Day of the last clearance; absent if there is none."""
    tests: NotRequired[Sequence[TestDone]]
    """Function tests done; the latest of each counts."""
    equipment: NotRequired[Sequence[Weighing]]
    """Equipment that carries a weight."""
    swaps: NotRequired[Sequence[LiftSwap]]
    """Lifts to swap."""
    gaps: NotRequired[Sequence[PlannedGap]]
    """Planned gaps."""
    body_masses: NotRequired[Sequence[BodyMassOnInput]]
    """Body masses in any order."""
    mass_loss_intended: NotRequired[bool]
    """Whether a loss of body mass was intended."""
    fall: NotRequired[bool]
    """Whether there was a fall since the last card."""
    new_medicine: NotRequired[bool]
    """Whether there is a new medicine since the last card."""


class YearsAhead(TypedDict):
    """What a coach plans beyond the coming sessions."""
    swaps: NotRequired[list[LiftSwap]]
    """Lifts to swap."""
    gaps: NotRequired[list[PlannedGap]]
    """Planned gaps."""
    weighed: NotRequired[list[Weighing]]
    """Equipment and when it was last weighed."""
    keep: NotRequired[list[LoadToKeep]]
    """Loads to keep for later years."""
    mass_loss_intended: NotRequired[bool]
    """Body mass is meant to fall."""


class YearsAheadInput(TypedDict):
    """What a coach plans beyond the coming sessions."""
    swaps: NotRequired[Sequence[LiftSwap]]
    """Lifts to swap."""
    gaps: NotRequired[Sequence[PlannedGap]]
    """Planned gaps."""
    weighed: NotRequired[Sequence[Weighing]]
    """Equipment and when it was last weighed."""
    keep: NotRequired[Sequence[LoadToKeepInput]]
    """Loads to keep for later years."""
    mass_loss_intended: NotRequired[bool]
    """Body mass is meant to fall."""


YearsToFloor_in_years = TypedDict("YearsToFloor_in_years", {"in_years": "float"})

# After how many years a strength falls to a floor.
YearsToFloor: TypeAlias = Union[Literal['at_or_below', 'never'], "YearsToFloor_in_years"]

class ZoneRow(TypedDict):
    """One zone of the table: what was found to work in a session of one competition lift."""
    from_percent: float
    """Lower edge in percent of the maximum, inside the zone."""
    to_percent: float
    """Upper edge, outside the zone but for the last, which includes 100."""
    reps_low: float
    """Fewest repetitions of a set."""
    reps_high: float
    """Most repetitions of a set."""
    total: float
    """Repetitions of the session."""
    total_low: float
    """Fewest repetitions of the session."""
    total_high: float
    """Most repetitions of the session."""
