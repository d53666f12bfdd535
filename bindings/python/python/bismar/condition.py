"""The functions and defaults of `condition`. Generated from the library; do not edit."""

# ruff: noqa
from __future__ import annotations

from collections.abc import Mapping, Sequence
from typing import Any

from bismar import types as _t
from bismar._native import call as _call

recovery_typical_error: float
"""Typical error of the one-number recovery rating (0 to 10): below it no spread of a baseline is believed.

# Known how
Read in the work or in its abstract.

Source: Laurent CM, Green JM, Bishop PA, et al. A practical approach to monitoring recovery. J Strength Cond Res 25:620-628, 2011; typical error from the later reliability study in Int J Sports Physiol Perform 14(3)
"""
jump_height_variation: float
"""Variation of jump height from test to test, as a part of its value.

# Known how
Read in the work or in its abstract.

Source: Reliability of wellbeing items, jump height and fatigue measures at rest, PMC7449331
"""
rating_step: float
"""Ratings are asked in whole steps: a baseline of ratings is not believed narrower than half a step.

Source: This project's own choice; a parameter.
"""
velocity_typical_error: float
"""Spread below which a baseline of bar speed is not believed, in metres a second.

Source: This project's own choice; a parameter.
"""
day_options_default: _t.DayOptions
"""How a baseline is made and a day read where a caller names nothing else.

Source: This project's own choice; a parameter.
"""
calibration_sessions: float
"""Sessions with a verdict before anything is said about how good the verdicts are.

Source: This project's own choice; a parameter.
"""
chance_limit: float
"""Verdicts are called better than chance if chance would do as well less often than this.

Source: This project's own choice; a parameter.
"""
sessions_between_false_alarms: float
"""Sessions between false alarms: about one a year at three sessions a week.

Source: This project's own choice; a parameter.
"""
drift_options_default: _t.DriftOptions
"""How the alarms are set where a caller names nothing else.

Source: This project's own choice; a parameter.
"""
day_to_day_maximum: float
"""Standard error of measurement of a tested one-repetition maximum from day to day, in kg, at 140 kg.

# Known how
Read in the work or in its abstract.

Source: Banyard HG, Nosaka K, Haff GG. Reliability and validity of the load-velocity relationship to predict the 1RM back squat. J Strength Cond Res 31:1897-1904, 2017
"""
trend_window: float
"""Days that a slope is taken over: the eight weeks of a block.

Source: This project's own choice; a parameter.
"""
trend_options_default: _t.TrendOptions
"""Window, level and days ahead of a trend where a caller names none.

Source: This project's own choice; a parameter.
"""
hex_to_straight_ratio: float
"""Hex bar over straight bar one-repetition maximum: 265 kg over 245 kg.

Source: Swinton PA, Stewart A, Agouris I, Keogh JWL, Lloyd R. A biomechanical analysis of straight and hexagonal barbell deadlifts using submaximal loads. J Strength Cond Res 25:2000-2009, 2011
"""

_CONSTANTS = {
    "recovery_typical_error": "condition.recovery_typical_error",
    "jump_height_variation": "condition.jump_height_variation",
    "rating_step": "condition.rating_step",
    "velocity_typical_error": "condition.velocity_typical_error",
    "day_options_default": "condition.day_options_default",
    "calibration_sessions": "condition.calibration_sessions",
    "chance_limit": "condition.chance_limit",
    "sessions_between_false_alarms": "condition.sessions_between_false_alarms",
    "drift_options_default": "condition.drift_options_default",
    "day_to_day_maximum": "condition.day_to_day_maximum",
    "trend_window": "condition.trend_window",
    "trend_options_default": "condition.trend_options_default",
    "hex_to_straight_ratio": "condition.hex_to_straight_ratio",
}


def __getattr__(name: str) -> Any:
    if name in _CONSTANTS:
        return _call(_CONSTANTS[name], {})
    raise AttributeError(f"module {__name__!r} has no attribute {name!r}")


def baseline(*, history: Sequence[_t.MarkerReadingInput], conditions: _t.ConditionsInput, today: _t.Day, least_spread: float, options: _t.DayOptionsInput) -> _t.Baseline | None:
    """What is ordinary for this lifter under these conditions?

    # Formula
    Median and 1.4826 times the median distance from it, over the newest values under equal conditions before today;
    the scatter is not taken below `least_spread`.

    # Domain
    4 to 12 values by default. None where there are fewer, or where all are equal and no floor is given: not enough
    history.

    # Errors
    `out_of_range` for options outside their ranges, a floor below 0, or values beyond 1e6; `not_finite`.

    # Source
    This project's choice (row `condition.baseline`).
    """
    given: dict[str, Any] = {"history": history, "conditions": conditions, "today": today, "least_spread": least_spread, "options": options}
    return _call("condition.baseline", given)  # type: ignore[no-any-return]


def judge_day(*, today: _t.Day, markers: Sequence[_t.MarkerInput], technique: _t.WarmUpTechnique, options: _t.DayOptionsInput) -> _t.DayVerdict:
    """Does today lie below, within or above this lifter's usual?

    # Formula
    Each marker votes by its distance from its own baseline: below at or under minus the threshold, above at or over it.
    Below (agreeing): enough votes below, or a critical drop in technique. Below (single): one vote below. Above:
    enough votes above and none below. Unknown: no vote, or fewer than half of those asked. Otherwise within.

    # Domain
    Up to 20 markers, each kind once. Not a stop sign: fever, dizziness, palpitations, a fall or a new medicine are
    asked first and are no markers.

    # Errors
    `out_of_range` for options or values outside their ranges or more than 20 markers; `duplicate_field` for a kind
    given twice; `not_finite`.

    # Source
    This project's choice, from what is known of each marker (row `condition.judge_day`).
    """
    given: dict[str, Any] = {"today": today, "markers": markers, "technique": technique, "options": options}
    return _call("condition.judge_day", given)  # type: ignore[no-any-return]


def false_alarms(*, values: _t.Numbers, options: _t.DayOptionsInput) -> _t.FalseAlarms:
    """With so many markers and past values, how often does an ordinary day look like one below the usual?

    # Formula
    For each marker the mean, over 2000 simulated baselines of normal values, of the normal chance beyond the bound;
    any and agreeing from independent markers. Seed fixed: the same answer every time.

    # Domain
    3 to 60 values a marker, up to 20 markers. Without the floor on the spread, which only lowers it; markers that
    move together agree by chance more often than shown.

    # Errors
    `out_of_range`.

    # Source
    Simulation of this project's own rule (row `condition.false_alarms`).
    """
    given: dict[str, Any] = {"values": values, "options": options}
    return _call("condition.false_alarms", given)  # type: ignore[no-any-return]


def false_alarm_of_mean(*, values: float, threshold: float) -> float:
    """How often would an ordinary day look like one below the usual, against a plain mean and standard deviation of so
    many values?

    # Formula
    `F(-c / sqrt(1 + 1/n))`, `F` Student's t with `n - 1` degrees of freedom, `c` the threshold in spreads.

    # Domain
    2 to 100,000 values, threshold from 0; normal values.

    # Errors
    `out_of_range`, `not_finite`.

    # Source
    The prediction interval of one normal value (row `condition.false_alarm_of_mean`).
    """
    given: dict[str, Any] = {"values": values, "threshold": threshold}
    return _call("condition.false_alarm_of_mean", given)  # type: ignore[no-any-return]


def calibration(*, past: Sequence[_t.PastVerdict]) -> _t.ClassCalibration:
    """Did the verdicts before the work sets agree with what the work sets showed, better than chance?

    # Formula
    Days called below the usual (either class) against days that fell short; chance from the hypergeometric
    distribution, at least as many hits (one-sided). Better than chance below 0.05. Shares with Wilson intervals at 95 %.

    # Domain
    From 20 sessions with a verdict; unknown days are left out. Easing off on such a day may itself avert a
    shortfall: then the verdicts look worse than they are.

    # Errors
    `out_of_range` with more than 20,000 sessions.

    # Source
    Fisher 1922, recalled, for the test; the limits are this project's choice (row `condition.calibration`).

    # Known how
    Recalled, not read again: take the numbers with care.

    Source: Fisher RA. On the interpretation of chi-square from contingency tables, and the calculation of P. J R Stat Soc 85:87-94, 1922
    """
    given: dict[str, Any] = {"past": past}
    return _call("condition.calibration", given)  # type: ignore[no-any-return]


def drift(*, sessions: Sequence[_t.SessionForm], options: _t.DriftOptionsInput) -> _t.DriftReport:
    """Has the lifter's form drifted slowly or dropped suddenly, with false alarms as rare as the coach wants?

    # Formula
    On standardised innovations: a two-sided cumulative sum (sudden) and an exponentially weighted mean (slow). Each
    is set to ring without cause once in twice the wanted number of sessions, so that together they ring about once
    in it. After an alarm its sum starts anew.

    # Domain
    Up to 20,000 sessions in order of days; 10 to 100,000 sessions between false alarms; innovations independent, as a
    fitted filter's are.

    # Errors
    `out_of_range`, `did_not_converge`, `not_finite`.

    # Source
    This project's choice of two published charts (row `condition.drift`).
    """
    given: dict[str, Any] = {"sessions": sessions, "options": options}
    return _call("condition.drift", given)  # type: ignore[no-any-return]


def trend(*, evidence: Sequence[_t.StrengthEvidence], today: _t.Day, options: _t.TrendOptionsInput) -> _t.TrendReport:
    """Is the lifter getting stronger, or is it noise?

    # Formula
    An estimate more than 4 standard errors from the median of its neighbours (3 each side, within 60 days) counts as
    if it lay there. Level over the whole history: wandering level with clipped outliers, drift and scatter by maximum likelihood.
    Slope over the window: level with a constant slope that also wanders, averaged over ten sizes of scatter and four
    of drift by how well they explain the estimates. Rising or falling if the interval of the slope leaves out 0.

    # Domain
    At least 4 estimates on 3 days over 14 days in the window, up to 20,000 in all. Estimates later than `today` are
    left out. In the first weeks of a new lift, gains are mostly learning.

    # Errors
    `out_of_range` for an estimate or standard error outside its range or options outside theirs; `not_finite`.

    # Source
    This project's choice of published parts (row `condition.trend`).
    """
    given: dict[str, Any] = {"evidence": evidence, "today": today, "options": options}
    return _call("condition.trend", given)  # type: ignore[no-any-return]


def variant_ratio(*, pairs: Sequence[_t.PairedEstimate], prior: _t.RatioPrior, level: float) -> _t.VariantRatio:
    """How much does this lifter lift on the forgiving variant for each kg on the strict one?

    # Formula
    Logarithm of forgiving over strict, pairs weighted by their variances (widened by their scatter), then weighted
    against the prior: `m = (m0/v0 + x/v) / (1/v0 + 1/v)`.

    # Domain
    Pairs from the same days or weeks. Without pairs it is the prior. Never a reason to raise a load by itself.

    # Errors
    `out_of_range` for an estimate, an error or the level outside its range, or more than 10,000 pairs; `not_finite`.

    # Source
    Shrinkage of the own ratio to a published one; the prior's width is this project's choice (row
    `condition.variant_ratio`).
    """
    given: dict[str, Any] = {"pairs": pairs, "prior": prior, "level": level}
    return _call("condition.variant_ratio", given)  # type: ignore[no-any-return]
