"""The functions and defaults of `one_rm`. Generated from the library; do not edit."""

# ruff: noqa
from __future__ import annotations

from collections.abc import Mapping, Sequence
from typing import Any

from bismar import types as _t
from bismar._native import call as _call

grgic_2020_cv: float
"""How much a tested one-repetition maximum differs from day to day: median coefficient of variation, 4.2 %.

# Domain
32 studies, 1595 people; 0.5 to 12.1 %, the same in older adults, with or without familiarisation.

# Source
Grgic et al. 2020, abstract (row `one_rm.grgic_2020_cv`).

# Known how
Read in the work or in its abstract.

Source: Grgic J, Lazinica B, Schoenfeld BJ, Pedisic Z. Test-retest reliability of the one-repetition maximum (1RM) strength assessment: a systematic review. Sports Med Open 2020;6:31
"""
banyard_2017_cv: float
"""The same for well-trained men in the back squat: 2.1 %.

# Source
Banyard et al. 2017, abstract (row `one_rm.banyard_2017_cv`).

# Known how
Read in the work or in its abstract.

Source: Banyard HG, Nosaka K, Haff GG. Reliability and validity of the load-velocity relationship to predict the 1RM back squat. J Strength Cond Res 31:1897-1904, 2017
"""
mitter_2022_repetition_sem: float
"""Repetitions by which a set to failure at 90 % differs when repeated on another day: standard error 0.7.

# Source
Mitter et al. 2022, abstract (row `one_rm.mitter_2022_repetition_sem`).

# Known how
Read in the work or in its abstract.

Source: Mitter B, Csapo R, Bauer P, Tschan H. Reproducibility of strength performance and strength-endurance profiles: a test-retest study. PLoS One 2022;17(5):e0268074
"""
typical_slope: float
"""What one more repetition to failure adds to the maximum of a typical lifter, as a part of the load.

# Domain
Between the slopes of O'Conner et al. 1989 (0.025) and Epley 1985 (0.033). It scales the width of the
interval only; the value comes from the equations.

# Source
Our choice (row `one_rm.typical_slope`).

Source: This project's own choice; a parameter.
"""
personal_slope_cv: float
"""How much that slope differs between people: coefficient of variation.

# Domain
A slope is as one over the repetitions beyond the first, so their coefficient of variation is its own: 0.27 in 25
squatters at 70 % (16 +- 4: Zourdos et al. 2021), 0.26 in 8 at 60 % (29.9 +- 7.4: Shimano et al. 2006), 0.27 in 8
weightlifters and 0.40 in 8 runners over 90, 80 and 70 % on a leg press (Richens & Cleather 2014); root mean
square, weighted by people less one. One person's scatter from day to day is in it.

# Source
Follows from those studies (row `one_rm.personal_slope_cv`).

Source: Follows from the definition; nothing measured.
"""
estimate_options_default: _t.EstimateOptions
"""How an estimate is made where a caller names nothing else.

Source: This project's own choice; a parameter.
"""
halperin_2022_under_call: float
"""Repetitions by which people under-call what they have left, on average: to be added to a reported reserve.

# Domain
12 studies, 414 people; 95 % interval 0.17 to 1.73 repetitions, with nearly all of the spread (97.9 %)
between studies: one person's bias may be nothing like it. In long sets it is far larger:
`zourdos_2021_reserve_error`.

# Source
Halperin et al. 2022, abstract (row `one_rm.halperin_2022_under_call`).

# Known how
Read in the work or in its abstract.

Source: Halperin I, Malleron T, Har-Nir I, et al. Accuracy in predicting repetitions to task failure in resistance exercise: a scoping review and exploratory meta-analysis. Sports Med 2022;52:377-390
"""
refalo_2024_reserve_error: float
"""Repetitions by which one call is off in a short set: standard deviation.

# Domain
Bench press at 75 % of the maximum, called at 1 and 3 in reserve; the mean was -0.17. Hackett et al. 2017 found
errors of about 1 where 0 to 5 were left.

# Source
Refalo et al. 2024, abstract (row `one_rm.refalo_2024_reserve_error`).

# Known how
Read in the work or in its abstract.

Source: Refalo MC, Remmert JF, Pelland JC, et al. Accuracy of intraset repetitions-in-reserve predictions during the bench press exercise in resistance-trained male and female subjects. J Strength Cond Res 2024
"""
reserve_habit_spread: float
"""By how much one lifter's own habit of calling may differ from the average: standard deviation, in repetitions.

# Domain
Errors of about 1 repetition where 0 to 5 were left, 81 adults of any experience (Hackett et al. 2017), are a standard
deviation of 1.25 if normal; what that has beyond the 1.00 of `REFALO_2024_RESERVE_ERROR` is taken for habit (our
reading).

# Source
Follows from Hackett et al. 2017 and Refalo et al. 2024 (row `one_rm.reserve_habit_spread`).

Source: Follows from the definition; nothing measured.
"""
reserve_error_per_repetition: float
"""Growth of that standard deviation with each repetition in reserve; 1.00 holds at 2, the middle of 1 and 3.

# Domain
From 1.73 at 1 in reserve to 2.92 at 5 in long sets: 0.2975 a repetition. With it short sets called at 7 to 10 in
reserve are off by 2.0 to 2.7 repetitions on average; Hackett et al. 2017 found more than 2.

# Source
Follows from Zourdos et al. 2021 (row `one_rm.reserve_error_per_repetition`).

Source: Follows from the definition; nothing measured.
"""
hackett_2018_first_set_error: float
"""Repetitions by which calls in the first set of a first day on a lift were off, on average over two machines.

# Domain
2.0 on the chest press and 3.1 on the leg press; in the third set 0.6 and 1.6, on the second day 1.9 in the first
set of leg presses. Whoever is new to a lift leaves repetitions, not nothing.

# Source
Mean of the two errors in the abstract of Hackett et al. 2018 (row `one_rm.hackett_2018_first_set_error`).

Source: Hackett DA, Cobley SP, Halaki M. Estimation of repetitions to failure for monitoring resistance exercise intensity: building a case for application. J Strength Cond Res 2018;32:1352-1359
"""
new_to_lift_slope_cv: float
"""How much the slope of an untrained person may differ from the usual one: coefficient of variation.

# Domain
A 7-10RM of 68.4 % of the maximum (Braith et al. 1993) stands for 46 % more than the load; the eight equations of
`EstimateOptions::EQUATIONS`(super::EstimateOptions::EQUATIONS) say 25 % at 8.5 repetitions. That shortfall, in
slopes 0.85, taken as a deviation beside the usual `PERSONAL_SLOPE_CV`(super::PERSONAL_SLOPE_CV).

# Source
Follows from Braith et al. 1993 (row `one_rm.new_to_lift_slope_cv`).

Source: Follows from the definition; nothing measured.
"""
prior_slope_exponential: float
"""Typical slope of the exponential form, as a part of the load for each repetition.

# Domain
Gives 80 % at 9.3 repetitions, inside what the classic equations say (7.3 to 10).

# Source
Our choice (row `one_rm.prior_slope_exponential`).

Source: This project's own choice; a parameter.
"""
first_repetition_step: float
"""How far a maximum lies above the load that a curve through longer sets gives at one repetition, as a part.

# Domain
Mean over the eight equations of `EstimateOptions::EQUATIONS`(super::EstimateOptions::EQUATIONS) of what they
give at one repetition, less the load: from 0 to 8.9 %.

# Source
Follows from the equations (row `one_rm.first_repetition_step`).

Source: Follows from the definition; nothing measured.
"""
first_repetition_spread: float
"""Standard deviation of that step over the same equations.

# Source
Follows from the equations (row `one_rm.first_repetition_spread`).

Source: Follows from the definition; nothing measured.
"""
banyard_2017_velocity_error: float
"""Error of a maximum predicted from velocity: standard error of estimate as a part of the mean maximum.

# Domain
10.6 kg on 140.3 kg, free-weight back squat, five loads up to 90 %. The paper prints 7.4 %, with another
denominator. One person was off by -5.5 to +27.8 %.

# Source
Quotient of two figures in the abstract of Banyard et al. 2017 (row `one_rm.banyard_2017_velocity_error`).

Source: Banyard HG, Nosaka K, Haff GG. Reliability and validity of the load-velocity relationship to predict the 1RM back squat. J Strength Cond Res 31:1897-1904, 2017
"""
banyard_2017_sem: float
"""Standard error of a tested maximum, in kg: 2.9 on a mean of 140.3.

# Source
Banyard et al. 2017, abstract (row `one_rm.banyard_2017_sem`).

# Known how
Read in the work or in its abstract.

Source: Banyard HG, Nosaka K, Haff GG. Reliability and validity of the load-velocity relationship to predict the 1RM back squat. J Strength Cond Res 31:1897-1904, 2017
"""

_CONSTANTS = {
    "grgic_2020_cv": "one_rm.grgic_2020_cv",
    "banyard_2017_cv": "one_rm.banyard_2017_cv",
    "mitter_2022_repetition_sem": "one_rm.mitter_2022_repetition_sem",
    "typical_slope": "one_rm.typical_slope",
    "personal_slope_cv": "one_rm.personal_slope_cv",
    "estimate_options_default": "one_rm.estimate_options_default",
    "halperin_2022_under_call": "one_rm.halperin_2022_under_call",
    "refalo_2024_reserve_error": "one_rm.refalo_2024_reserve_error",
    "reserve_habit_spread": "one_rm.reserve_habit_spread",
    "reserve_error_per_repetition": "one_rm.reserve_error_per_repetition",
    "hackett_2018_first_set_error": "one_rm.hackett_2018_first_set_error",
    "new_to_lift_slope_cv": "one_rm.new_to_lift_slope_cv",
    "prior_slope_exponential": "one_rm.prior_slope_exponential",
    "first_repetition_step": "one_rm.first_repetition_step",
    "first_repetition_spread": "one_rm.first_repetition_spread",
    "banyard_2017_velocity_error": "one_rm.banyard_2017_velocity_error",
    "banyard_2017_sem": "one_rm.banyard_2017_sem",
}


def __getattr__(name: str) -> Any:
    if name in _CONSTANTS:
        return _call(_CONSTANTS[name], {})
    raise AttributeError(f"module {__name__!r} has no attribute {name!r}")


def epley_1985(*, load: _t.MassInput, reps: _t.Reps) -> _t.Kilograms:
    """What could be lifted once, from a set to failure?

    # Formula
    `E = w (1 + r / 30)`; `w` load in kg, `r` repetitions to failure, `E` in kg. At one repetition it gives 1.0333 w, not the load itself.

    # Domain
    From 1 repetition up to 30 repetitions: no pole; a straight line without end. Not measured: a coach's
    chart without a published sample; that it ended at about 10 repetitions is recalled. The form printed with Welday 1988 is the same
    curve.

    # Errors
    `reps_out_of_domain` below 1 and above 30 repetitions; `load_out_of_domain` at or below 0 kg.

    # Source
    Epley 1985, p 86 as recalled; copies print 1/30 or 0.033 (row `one_rm.epley_1985`).

    # Known how
    Not read in the work itself; copies seen: public code and lists of equations. Recalled, not read again: the place in the work, and what it was made from.

    Source: Epley B. Poundage chart. Body Enterprises, Lincoln NE, 1985
    """
    given: dict[str, Any] = {"load": load, "reps": reps}
    return _call("one_rm.epley_1985", given)  # type: ignore[no-any-return]


def epley_1985_load(*, one_rm: _t.KilogramsInput, reps: _t.Reps) -> _t.Kilograms:
    """What load would be lifted this often to failure, given the one-repetition maximum?

    # Formula
    `w = E / (1 + r / 30)`; `E` one-repetition maximum in kg, `r` repetitions to failure, `w` in kg.

    # Domain
    As `epley_1985`.

    # Errors
    `reps_out_of_domain` below 1 and above 30 repetitions; `load_out_of_domain` where the maximum is at or below 0 kg.

    # Source
    Epley 1985 solved for the load (row `one_rm.epley_1985_load`).

    # Known how
    Not read in the work itself; copies seen: public code and lists of equations. Recalled, not read again: the place in the work, and what it was made from.

    Source: Epley B. Poundage chart. Body Enterprises, Lincoln NE, 1985
    """
    given: dict[str, Any] = {"one_rm": one_rm, "reps": reps}
    return _call("one_rm.epley_1985_load", given)  # type: ignore[no-any-return]


def epley_1985_reps(*, fraction: _t.Fraction) -> float:
    """How many repetitions to failure does a part of the maximum allow?

    # Formula
    `r = 30 (1 / F - 1)`; `F` part of the one-repetition maximum, `r` repetitions.

    # Domain
    As `epley_1985`; the answer may lie above what that form accepts, up to 200.

    # Errors
    `percent_out_of_domain` where the equation has no answer from 1 to 200 repetitions.

    # Source
    Epley 1985 solved for repetitions (row `one_rm.epley_1985_reps`).

    # Known how
    Not read in the work itself; copies seen: public code and lists of equations. Recalled, not read again: the place in the work, and what it was made from.

    Source: Epley B. Poundage chart. Body Enterprises, Lincoln NE, 1985
    """
    given: dict[str, Any] = {"fraction": fraction}
    return _call("one_rm.epley_1985_reps", given)  # type: ignore[no-any-return]


def brzycki_1993(*, load: _t.MassInput, reps: _t.Reps) -> _t.Kilograms:
    """What could be lifted once, from a set to failure?

    # Formula
    `E = 36 w / (37 - r)`; `w` load in kg, `r` repetitions to failure, `E` in kg. At one repetition it gives the load itself.

    # Domain
    From 1 repetition up to 36.5 repetitions (pole at 37): pole at 37 repetitions. Nobody was measured: a
    practical rule, stated by its author for up to 10 repetitions.

    # Errors
    `reps_out_of_domain` below 1 and above 36.5 repetitions; `load_out_of_domain` at or below 0 kg.

    # Source
    Brzycki 1993, p 88-90 (row `one_rm.brzycki_1993`).

    # Known how
    Not read in the work itself; copies seen: public code and lists of equations. Recalled, not read again: the place in the work, and what it was made from.

    Source: Brzycki M. Strength testing: predicting a one-rep max from reps-to-fatigue. J Phys Educ Rec Dance 1993;64(1):88-90
    """
    given: dict[str, Any] = {"load": load, "reps": reps}
    return _call("one_rm.brzycki_1993", given)  # type: ignore[no-any-return]


def brzycki_1993_load(*, one_rm: _t.KilogramsInput, reps: _t.Reps) -> _t.Kilograms:
    """What load would be lifted this often to failure, given the one-repetition maximum?

    # Formula
    `w = E (37 - r) / 36`; `E` one-repetition maximum in kg, `r` repetitions to failure, `w` in kg.

    # Domain
    As `brzycki_1993`.

    # Errors
    `reps_out_of_domain` below 1 and above 36.5 repetitions; `load_out_of_domain` where the maximum is at or below 0 kg.

    # Source
    Brzycki 1993 solved for the load (row `one_rm.brzycki_1993_load`).

    # Known how
    Not read in the work itself; copies seen: public code and lists of equations. Recalled, not read again: the place in the work, and what it was made from.

    Source: Brzycki M. Strength testing: predicting a one-rep max from reps-to-fatigue. J Phys Educ Rec Dance 1993;64(1):88-90
    """
    given: dict[str, Any] = {"one_rm": one_rm, "reps": reps}
    return _call("one_rm.brzycki_1993_load", given)  # type: ignore[no-any-return]


def brzycki_1993_reps(*, fraction: _t.Fraction) -> float:
    """How many repetitions to failure does a part of the maximum allow?

    # Formula
    `r = 37 - 36 F`; `F` part of the one-repetition maximum, `r` repetitions.

    # Domain
    As `brzycki_1993`; the answer may lie above what that form accepts, up to 200.

    # Errors
    `percent_out_of_domain` where the equation has no answer from 1 to 200 repetitions.

    # Source
    Brzycki 1993 solved for repetitions (row `one_rm.brzycki_1993_reps`).

    # Known how
    Not read in the work itself; copies seen: public code and lists of equations. Recalled, not read again: the place in the work, and what it was made from.

    Source: Brzycki M. Strength testing: predicting a one-rep max from reps-to-fatigue. J Phys Educ Rec Dance 1993;64(1):88-90
    """
    given: dict[str, Any] = {"fraction": fraction}
    return _call("one_rm.brzycki_1993_reps", given)  # type: ignore[no-any-return]


def brzycki_1993_decimal(*, load: _t.MassInput, reps: _t.Reps) -> _t.Kilograms:
    """What could be lifted once, from a set to failure?

    # Formula
    `E = w / (1.0278 - 0.0278 r)`; `w` load in kg, `r` repetitions to failure, `E` in kg. At one repetition it gives the load itself.

    # Domain
    From 1 repetition up to 36.5 repetitions (pole at 36.971): pole at 36.971 repetitions. Nobody was
    measured: a practical rule, stated by its author for up to 10 repetitions.

    # Errors
    `reps_out_of_domain` below 1 and above 36.5 repetitions; `load_out_of_domain` at or below 0 kg.

    # Source
    Brzycki 1993, decimal form, p 88-90, decimal form (row `one_rm.brzycki_1993_decimal`).

    # Known how
    Not read in the work itself; copies seen: public code and lists of equations. Recalled, not read again: the place in the work, and what it was made from.

    Source: Brzycki M. Strength testing: predicting a one-rep max from reps-to-fatigue. J Phys Educ Rec Dance 1993;64(1):88-90
    """
    given: dict[str, Any] = {"load": load, "reps": reps}
    return _call("one_rm.brzycki_1993_decimal", given)  # type: ignore[no-any-return]


def brzycki_1993_decimal_load(*, one_rm: _t.KilogramsInput, reps: _t.Reps) -> _t.Kilograms:
    """What load would be lifted this often to failure, given the one-repetition maximum?

    # Formula
    `w = E (1.0278 - 0.0278 r)`; `E` one-repetition maximum in kg, `r` repetitions to failure, `w` in kg.

    # Domain
    As `brzycki_1993_decimal`.

    # Errors
    `reps_out_of_domain` below 1 and above 36.5 repetitions; `load_out_of_domain` where the maximum is at or below 0 kg.

    # Source
    Brzycki 1993, decimal form solved for the load (row `one_rm.brzycki_1993_decimal_load`).

    # Known how
    Not read in the work itself; copies seen: public code and lists of equations. Recalled, not read again: the place in the work, and what it was made from.

    Source: Brzycki M. Strength testing: predicting a one-rep max from reps-to-fatigue. J Phys Educ Rec Dance 1993;64(1):88-90
    """
    given: dict[str, Any] = {"one_rm": one_rm, "reps": reps}
    return _call("one_rm.brzycki_1993_decimal_load", given)  # type: ignore[no-any-return]


def brzycki_1993_decimal_reps(*, fraction: _t.Fraction) -> float:
    """How many repetitions to failure does a part of the maximum allow?

    # Formula
    `r = (1.0278 - F) / 0.0278`; `F` part of the one-repetition maximum, `r` repetitions.

    # Domain
    As `brzycki_1993_decimal`; the answer may lie above what that form accepts, up to 200.

    # Errors
    `percent_out_of_domain` where the equation has no answer from 1 to 200 repetitions.

    # Source
    Brzycki 1993, decimal form solved for repetitions (row `one_rm.brzycki_1993_decimal_reps`).

    # Known how
    Not read in the work itself; copies seen: public code and lists of equations. Recalled, not read again: the place in the work, and what it was made from.

    Source: Brzycki M. Strength testing: predicting a one-rep max from reps-to-fatigue. J Phys Educ Rec Dance 1993;64(1):88-90
    """
    given: dict[str, Any] = {"fraction": fraction}
    return _call("one_rm.brzycki_1993_decimal_reps", given)  # type: ignore[no-any-return]


def lander_1985(*, load: _t.MassInput, reps: _t.Reps) -> _t.Kilograms:
    """What could be lifted once, from a set to failure?

    # Formula
    `E = 100 w / (101.3 - 2.67123 r)`; `w` load in kg, `r` repetitions to failure, `E` in kg. At one repetition it gives 1.0139 w, not the load itself.

    # Domain
    From 1 repetition up to 37.5 repetitions (pole at 37.923): pole at 37.923 repetitions. Nobody was
    measured: a handbook chart for up to 10 repetitions.

    # Errors
    `reps_out_of_domain` below 1 and above 37.5 repetitions; `load_out_of_domain` at or below 0 kg.

    # Source
    Lander 1985, p 60-61 (row `one_rm.lander_1985`).

    # Known how
    Not read in the work itself; copies seen: public code and lists of equations. Recalled, not read again: the place in the work, and what it was made from.

    Source: Lander J. Maximum based on reps. NSCA Journal 1985;6(6):60-61
    """
    given: dict[str, Any] = {"load": load, "reps": reps}
    return _call("one_rm.lander_1985", given)  # type: ignore[no-any-return]


def lander_1985_load(*, one_rm: _t.KilogramsInput, reps: _t.Reps) -> _t.Kilograms:
    """What load would be lifted this often to failure, given the one-repetition maximum?

    # Formula
    `w = E (101.3 - 2.67123 r) / 100`; `E` one-repetition maximum in kg, `r` repetitions to failure, `w` in kg.

    # Domain
    As `lander_1985`.

    # Errors
    `reps_out_of_domain` below 1 and above 37.5 repetitions; `load_out_of_domain` where the maximum is at or below 0 kg.

    # Source
    Lander 1985 solved for the load (row `one_rm.lander_1985_load`).

    # Known how
    Not read in the work itself; copies seen: public code and lists of equations. Recalled, not read again: the place in the work, and what it was made from.

    Source: Lander J. Maximum based on reps. NSCA Journal 1985;6(6):60-61
    """
    given: dict[str, Any] = {"one_rm": one_rm, "reps": reps}
    return _call("one_rm.lander_1985_load", given)  # type: ignore[no-any-return]


def lander_1985_reps(*, fraction: _t.Fraction) -> float:
    """How many repetitions to failure does a part of the maximum allow?

    # Formula
    `r = (101.3 - 100 F) / 2.67123`; `F` part of the one-repetition maximum, `r` repetitions.

    # Domain
    As `lander_1985`; the answer may lie above what that form accepts, up to 200.

    # Errors
    `percent_out_of_domain` where the equation has no answer from 1 to 200 repetitions.

    # Source
    Lander 1985 solved for repetitions (row `one_rm.lander_1985_reps`).

    # Known how
    Not read in the work itself; copies seen: public code and lists of equations. Recalled, not read again: the place in the work, and what it was made from.

    Source: Lander J. Maximum based on reps. NSCA Journal 1985;6(6):60-61
    """
    given: dict[str, Any] = {"fraction": fraction}
    return _call("one_rm.lander_1985_reps", given)  # type: ignore[no-any-return]


def lombardi_1989(*, load: _t.MassInput, reps: _t.Reps) -> _t.Kilograms:
    """What could be lifted once, from a set to failure?

    # Formula
    `E = w r^0.10`; `w` load in kg, `r` repetitions to failure, `E` in kg. At one repetition it gives the load itself.

    # Domain
    From 1 repetition up to 30 repetitions: no pole; explodes when inverted (35.4 repetitions at 70 %, 165 at
    60 %). Nobody was measured: a textbook's rule, which fits up to 10 repetitions at best.

    # Errors
    `reps_out_of_domain` below 1 and above 30 repetitions; `load_out_of_domain` at or below 0 kg.

    # Source
    Lombardi 1989, prediction of the maximum (row `one_rm.lombardi_1989`).

    # Known how
    Not read in the work itself; copies seen: public code and lists of equations. Recalled, not read again: the place in the work, and what it was made from.

    Source: Lombardi VP. Beginning Weight Training. Brown, Dubuque IA, 1989
    """
    given: dict[str, Any] = {"load": load, "reps": reps}
    return _call("one_rm.lombardi_1989", given)  # type: ignore[no-any-return]


def lombardi_1989_load(*, one_rm: _t.KilogramsInput, reps: _t.Reps) -> _t.Kilograms:
    """What load would be lifted this often to failure, given the one-repetition maximum?

    # Formula
    `w = E r^-0.10`; `E` one-repetition maximum in kg, `r` repetitions to failure, `w` in kg.

    # Domain
    As `lombardi_1989`.

    # Errors
    `reps_out_of_domain` below 1 and above 30 repetitions; `load_out_of_domain` where the maximum is at or below 0 kg.

    # Source
    Lombardi 1989 solved for the load (row `one_rm.lombardi_1989_load`).

    # Known how
    Not read in the work itself; copies seen: public code and lists of equations. Recalled, not read again: the place in the work, and what it was made from.

    Source: Lombardi VP. Beginning Weight Training. Brown, Dubuque IA, 1989
    """
    given: dict[str, Any] = {"one_rm": one_rm, "reps": reps}
    return _call("one_rm.lombardi_1989_load", given)  # type: ignore[no-any-return]


def lombardi_1989_reps(*, fraction: _t.Fraction) -> float:
    """How many repetitions to failure does a part of the maximum allow?

    # Formula
    `r = (1 / F)^10`; `F` part of the one-repetition maximum, `r` repetitions.

    # Domain
    As `lombardi_1989`; the answer may lie above what that form accepts, up to 200.

    # Errors
    `percent_out_of_domain` where the equation has no answer from 1 to 200 repetitions.

    # Source
    Lombardi 1989 solved for repetitions (row `one_rm.lombardi_1989_reps`).

    # Known how
    Not read in the work itself; copies seen: public code and lists of equations. Recalled, not read again: the place in the work, and what it was made from.

    Source: Lombardi VP. Beginning Weight Training. Brown, Dubuque IA, 1989
    """
    given: dict[str, Any] = {"fraction": fraction}
    return _call("one_rm.lombardi_1989_reps", given)  # type: ignore[no-any-return]


def mayhew_1992(*, load: _t.MassInput, reps: _t.Reps) -> _t.Kilograms:
    """What could be lifted once, from a set to failure?

    # Formula
    `E = 100 w / (52.2 + 41.9 exp(-0.055 r))`; `w` load in kg, `r` repetitions to failure, `E` in kg. At one repetition it gives 1.0886 w, not the load itself.

    # Domain
    From 1 repetition up to 50 repetitions: no pole; levels off at 1.9157 w, and above 91.86 % of the maximum
    it has less than one repetition. Measured: loads of 55 to 95 % lifted as often as possible in one minute,
    about 50 repetitions at the lightest (college men and women, bench press, repetitions in one minute). One
    curve, bench press only; lift-specific curves under this name found elsewhere are not its own.

    # Errors
    `reps_out_of_domain` below 1 and above 50 repetitions; `load_out_of_domain` at or below 0 kg.

    # Source
    Mayhew et al. 1992, p 200-206 (row `one_rm.mayhew_1992`).

    # Known how
    Not read in the work itself; copies seen: public code and lists of equations. Recalled, not read again: the pages.

    Source: Mayhew JL, Ball TE, Arnold MD, Bowen JC. Relative muscular endurance performance as a predictor of bench press strength in college men and women. J Appl Sport Sci Res 1992;6(4):200-206
    """
    given: dict[str, Any] = {"load": load, "reps": reps}
    return _call("one_rm.mayhew_1992", given)  # type: ignore[no-any-return]


def mayhew_1992_load(*, one_rm: _t.KilogramsInput, reps: _t.Reps) -> _t.Kilograms:
    """What load would be lifted this often to failure, given the one-repetition maximum?

    # Formula
    `w = E (52.2 + 41.9 exp(-0.055 r)) / 100`; `E` one-repetition maximum in kg, `r` repetitions to failure, `w` in kg.

    # Domain
    As `mayhew_1992`.

    # Errors
    `reps_out_of_domain` below 1 and above 50 repetitions; `load_out_of_domain` where the maximum is at or below 0 kg.

    # Source
    Mayhew et al. 1992 solved for the load (row `one_rm.mayhew_1992_load`).

    # Known how
    Not read in the work itself; copies seen: public code and lists of equations. Recalled, not read again: the pages.

    Source: Mayhew JL, Ball TE, Arnold MD, Bowen JC. Relative muscular endurance performance as a predictor of bench press strength in college men and women. J Appl Sport Sci Res 1992;6(4):200-206
    """
    given: dict[str, Any] = {"one_rm": one_rm, "reps": reps}
    return _call("one_rm.mayhew_1992_load", given)  # type: ignore[no-any-return]


def mayhew_1992_reps(*, fraction: _t.Fraction) -> float:
    """How many repetitions to failure does a part of the maximum allow?

    # Formula
    `r = -ln((100 F - 52.2) / 41.9) / 0.055`; `F` part of the one-repetition maximum, `r` repetitions.

    # Domain
    As `mayhew_1992`; the answer may lie above what that form accepts, up to 200.

    # Errors
    `percent_out_of_domain` where the equation has no answer from 1 to 200 repetitions.

    # Source
    Mayhew et al. 1992 solved for repetitions (row `one_rm.mayhew_1992_reps`).

    # Known how
    Not read in the work itself; copies seen: public code and lists of equations. Recalled, not read again: the pages.

    Source: Mayhew JL, Ball TE, Arnold MD, Bowen JC. Relative muscular endurance performance as a predictor of bench press strength in college men and women. J Appl Sport Sci Res 1992;6(4):200-206
    """
    given: dict[str, Any] = {"fraction": fraction}
    return _call("one_rm.mayhew_1992_reps", given)  # type: ignore[no-any-return]


def oconner_1989(*, load: _t.MassInput, reps: _t.Reps) -> _t.Kilograms:
    """What could be lifted once, from a set to failure?

    # Formula
    `E = w (1 + 0.025 r)`; `w` load in kg, `r` repetitions to failure, `E` in kg. At one repetition it gives 1.025 w, not the load itself.

    # Domain
    From 1 repetition up to 30 repetitions: no pole; a straight line without end. Nobody was measured: a
    textbook's rule for up to about 10 repetitions.

    # Errors
    `reps_out_of_domain` below 1 and above 30 repetitions; `load_out_of_domain` at or below 0 kg.

    # Source
    O'Conner et al. 1989, prediction of the maximum (row `one_rm.oconner_1989`).

    # Known how
    Not read in the work itself; copies seen: public code and lists of equations. Recalled, not read again: the place in the work, and what it was made from.

    Source: O'Conner B, Simmons J, O'Shea P. Weight Training Today. West, St Paul MN, 1989
    """
    given: dict[str, Any] = {"load": load, "reps": reps}
    return _call("one_rm.oconner_1989", given)  # type: ignore[no-any-return]


def oconner_1989_load(*, one_rm: _t.KilogramsInput, reps: _t.Reps) -> _t.Kilograms:
    """What load would be lifted this often to failure, given the one-repetition maximum?

    # Formula
    `w = E / (1 + 0.025 r)`; `E` one-repetition maximum in kg, `r` repetitions to failure, `w` in kg.

    # Domain
    As `oconner_1989`.

    # Errors
    `reps_out_of_domain` below 1 and above 30 repetitions; `load_out_of_domain` where the maximum is at or below 0 kg.

    # Source
    O'Conner et al. 1989 solved for the load (row `one_rm.oconner_1989_load`).

    # Known how
    Not read in the work itself; copies seen: public code and lists of equations. Recalled, not read again: the place in the work, and what it was made from.

    Source: O'Conner B, Simmons J, O'Shea P. Weight Training Today. West, St Paul MN, 1989
    """
    given: dict[str, Any] = {"one_rm": one_rm, "reps": reps}
    return _call("one_rm.oconner_1989_load", given)  # type: ignore[no-any-return]


def oconner_1989_reps(*, fraction: _t.Fraction) -> float:
    """How many repetitions to failure does a part of the maximum allow?

    # Formula
    `r = 40 (1 / F - 1)`; `F` part of the one-repetition maximum, `r` repetitions.

    # Domain
    As `oconner_1989`; the answer may lie above what that form accepts, up to 200.

    # Errors
    `percent_out_of_domain` where the equation has no answer from 1 to 200 repetitions.

    # Source
    O'Conner et al. 1989 solved for repetitions (row `one_rm.oconner_1989_reps`).

    # Known how
    Not read in the work itself; copies seen: public code and lists of equations. Recalled, not read again: the place in the work, and what it was made from.

    Source: O'Conner B, Simmons J, O'Shea P. Weight Training Today. West, St Paul MN, 1989
    """
    given: dict[str, Any] = {"fraction": fraction}
    return _call("one_rm.oconner_1989_reps", given)  # type: ignore[no-any-return]


def wathan_1994(*, load: _t.MassInput, reps: _t.Reps) -> _t.Kilograms:
    """What could be lifted once, from a set to failure?

    # Formula
    `E = 100 w / (48.8 + 53.8 exp(-0.075 r))`; `w` load in kg, `r` repetitions to failure, `E` in kg. At one repetition it gives 1.0130 w, not the load itself.

    # Domain
    From 1 repetition up to 30 repetitions: no pole; levels off at 2.0492 w. Nobody was measured: a chart
    for up to about 15 repetitions, fitted again. The name is also printed Wathen.

    # Errors
    `reps_out_of_domain` below 1 and above 30 repetitions; `load_out_of_domain` at or below 0 kg.

    # Source
    Wathan 1994, chapter on load assignment (row `one_rm.wathan_1994`).

    # Known how
    Not read in the work itself; copies seen: public code and lists of equations. Recalled, not read again: the place in the work, and what it was made from.

    Source: Wathan D. Load assignment. In: Baechle TR (ed). Essentials of Strength Training and Conditioning. Human Kinetics, Champaign IL, 1994
    """
    given: dict[str, Any] = {"load": load, "reps": reps}
    return _call("one_rm.wathan_1994", given)  # type: ignore[no-any-return]


def wathan_1994_load(*, one_rm: _t.KilogramsInput, reps: _t.Reps) -> _t.Kilograms:
    """What load would be lifted this often to failure, given the one-repetition maximum?

    # Formula
    `w = E (48.8 + 53.8 exp(-0.075 r)) / 100`; `E` one-repetition maximum in kg, `r` repetitions to failure, `w` in kg.

    # Domain
    As `wathan_1994`.

    # Errors
    `reps_out_of_domain` below 1 and above 30 repetitions; `load_out_of_domain` where the maximum is at or below 0 kg.

    # Source
    Wathan 1994 solved for the load (row `one_rm.wathan_1994_load`).

    # Known how
    Not read in the work itself; copies seen: public code and lists of equations. Recalled, not read again: the place in the work, and what it was made from.

    Source: Wathan D. Load assignment. In: Baechle TR (ed). Essentials of Strength Training and Conditioning. Human Kinetics, Champaign IL, 1994
    """
    given: dict[str, Any] = {"one_rm": one_rm, "reps": reps}
    return _call("one_rm.wathan_1994_load", given)  # type: ignore[no-any-return]


def wathan_1994_reps(*, fraction: _t.Fraction) -> float:
    """How many repetitions to failure does a part of the maximum allow?

    # Formula
    `r = -ln((100 F - 48.8) / 53.8) / 0.075`; `F` part of the one-repetition maximum, `r` repetitions.

    # Domain
    As `wathan_1994`; the answer may lie above what that form accepts, up to 200.

    # Errors
    `percent_out_of_domain` where the equation has no answer from 1 to 200 repetitions.

    # Source
    Wathan 1994 solved for repetitions (row `one_rm.wathan_1994_reps`).

    # Known how
    Not read in the work itself; copies seen: public code and lists of equations. Recalled, not read again: the place in the work, and what it was made from.

    Source: Wathan D. Load assignment. In: Baechle TR (ed). Essentials of Strength Training and Conditioning. Human Kinetics, Champaign IL, 1994
    """
    given: dict[str, Any] = {"fraction": fraction}
    return _call("one_rm.wathan_1994_reps", given)  # type: ignore[no-any-return]


def brown_1992(*, load: _t.MassInput, reps: _t.Reps) -> _t.Kilograms:
    """What could be lifted once, from a set to failure?

    # Formula
    `E = w (0.9849 + 0.0338 r)`; `w` load in kg, `r` repetitions to failure, `E` in kg. At one repetition it gives 1.0187 w, not the load itself.

    # Domain
    From 1 repetition up to 30 repetitions: no pole; a straight line without end. No sample is known: a
    textbook's rule for up to about 10 repetitions.

    # Errors
    `reps_out_of_domain` below 1 and above 30 repetitions; `load_out_of_domain` at or below 0 kg.

    # Source
    Brown 1992, prediction of the maximum (row `one_rm.brown_1992`).

    # Known how
    Not read in the work itself; copies seen: public code and lists of equations. Recalled, not read again: the place in the work, and what it was made from.

    Source: Brown HL. Lifetime Fitness. Gorsuch Scarisbrick, Scottsdale AZ, 1992
    """
    given: dict[str, Any] = {"load": load, "reps": reps}
    return _call("one_rm.brown_1992", given)  # type: ignore[no-any-return]


def brown_1992_load(*, one_rm: _t.KilogramsInput, reps: _t.Reps) -> _t.Kilograms:
    """What load would be lifted this often to failure, given the one-repetition maximum?

    # Formula
    `w = E / (0.9849 + 0.0338 r)`; `E` one-repetition maximum in kg, `r` repetitions to failure, `w` in kg.

    # Domain
    As `brown_1992`.

    # Errors
    `reps_out_of_domain` below 1 and above 30 repetitions; `load_out_of_domain` where the maximum is at or below 0 kg.

    # Source
    Brown 1992 solved for the load (row `one_rm.brown_1992_load`).

    # Known how
    Not read in the work itself; copies seen: public code and lists of equations. Recalled, not read again: the place in the work, and what it was made from.

    Source: Brown HL. Lifetime Fitness. Gorsuch Scarisbrick, Scottsdale AZ, 1992
    """
    given: dict[str, Any] = {"one_rm": one_rm, "reps": reps}
    return _call("one_rm.brown_1992_load", given)  # type: ignore[no-any-return]


def brown_1992_reps(*, fraction: _t.Fraction) -> float:
    """How many repetitions to failure does a part of the maximum allow?

    # Formula
    `r = (1 / F - 0.9849) / 0.0338`; `F` part of the one-repetition maximum, `r` repetitions.

    # Domain
    As `brown_1992`; the answer may lie above what that form accepts, up to 200.

    # Errors
    `percent_out_of_domain` where the equation has no answer from 1 to 200 repetitions.

    # Source
    Brown 1992 solved for repetitions (row `one_rm.brown_1992_reps`).

    # Known how
    Not read in the work itself; copies seen: public code and lists of equations. Recalled, not read again: the place in the work, and what it was made from.

    Source: Brown HL. Lifetime Fitness. Gorsuch Scarisbrick, Scottsdale AZ, 1992
    """
    given: dict[str, Any] = {"fraction": fraction}
    return _call("one_rm.brown_1992_reps", given)  # type: ignore[no-any-return]


def adams_1998(*, load: _t.MassInput, reps: _t.Reps) -> _t.Kilograms:
    """What could be lifted once, from a set to failure?

    # Formula
    `E = w / (1 - 0.02 r)`; `w` load in kg, `r` repetitions to failure, `E` in kg. At one repetition it gives 1.0204 w, not the load itself.

    # Domain
    From 1 repetition up to 49.5 repetitions (pole at 50): pole at 50 repetitions. No sample is known: a
    rule of a laboratory manual for up to about 10 repetitions. Some cite it as 1994.

    # Errors
    `reps_out_of_domain` below 1 and above 49.5 repetitions; `load_out_of_domain` at or below 0 kg.

    # Source
    Adams 1998, prediction of the maximum (row `one_rm.adams_1998`).

    # Known how
    Not read in the work itself; copies seen: public code and lists of equations. Recalled, not read again: the place in the work, and what it was made from.

    Source: Adams GM. Exercise Physiology Laboratory Manual. McGraw-Hill, Boston MA, 1998
    """
    given: dict[str, Any] = {"load": load, "reps": reps}
    return _call("one_rm.adams_1998", given)  # type: ignore[no-any-return]


def adams_1998_load(*, one_rm: _t.KilogramsInput, reps: _t.Reps) -> _t.Kilograms:
    """What load would be lifted this often to failure, given the one-repetition maximum?

    # Formula
    `w = E (1 - 0.02 r)`; `E` one-repetition maximum in kg, `r` repetitions to failure, `w` in kg.

    # Domain
    As `adams_1998`.

    # Errors
    `reps_out_of_domain` below 1 and above 49.5 repetitions; `load_out_of_domain` where the maximum is at or below 0 kg.

    # Source
    Adams 1998 solved for the load (row `one_rm.adams_1998_load`).

    # Known how
    Not read in the work itself; copies seen: public code and lists of equations. Recalled, not read again: the place in the work, and what it was made from.

    Source: Adams GM. Exercise Physiology Laboratory Manual. McGraw-Hill, Boston MA, 1998
    """
    given: dict[str, Any] = {"one_rm": one_rm, "reps": reps}
    return _call("one_rm.adams_1998_load", given)  # type: ignore[no-any-return]


def adams_1998_reps(*, fraction: _t.Fraction) -> float:
    """How many repetitions to failure does a part of the maximum allow?

    # Formula
    `r = 50 (1 - F)`; `F` part of the one-repetition maximum, `r` repetitions.

    # Domain
    As `adams_1998`; the answer may lie above what that form accepts, up to 200.

    # Errors
    `percent_out_of_domain` where the equation has no answer from 1 to 200 repetitions.

    # Source
    Adams 1998 solved for repetitions (row `one_rm.adams_1998_reps`).

    # Known how
    Not read in the work itself; copies seen: public code and lists of equations. Recalled, not read again: the place in the work, and what it was made from.

    Source: Adams GM. Exercise Physiology Laboratory Manual. McGraw-Hill, Boston MA, 1998
    """
    given: dict[str, Any] = {"fraction": fraction}
    return _call("one_rm.adams_1998_reps", given)  # type: ignore[no-any-return]


def berger_1961(*, load: _t.MassInput, reps: _t.Reps) -> _t.Kilograms:
    """What could be lifted once, from a set to failure?

    # Formula
    `E = w / (1.0261 exp(-0.0262 r))`; `w` load in kg, `r` repetitions to failure, `E` in kg. At one repetition it gives 1.0004 w, the load itself within rounding.

    # Domain
    From 1 repetition up to 30 repetitions: no pole; grows without end. Measured, as recalled, up to
    10 repetitions (college men, bench press).

    # Errors
    `reps_out_of_domain` below 1 and above 30 repetitions; `load_out_of_domain` at or below 0 kg.

    # Source
    Berger 1961, in later lists, its constant corrected by this project (row `one_rm.berger_1961`).
    """
    given: dict[str, Any] = {"load": load, "reps": reps}
    return _call("one_rm.berger_1961", given)  # type: ignore[no-any-return]


def berger_1961_load(*, one_rm: _t.KilogramsInput, reps: _t.Reps) -> _t.Kilograms:
    """What load would be lifted this often to failure, given the one-repetition maximum?

    # Formula
    `w = E 1.0261 exp(-0.0262 r)`; `E` one-repetition maximum in kg, `r` repetitions to failure, `w` in kg.

    # Domain
    As `berger_1961`.

    # Errors
    `reps_out_of_domain` below 1 and above 30 repetitions; `load_out_of_domain` where the maximum is at or below 0 kg.

    # Source
    Berger 1961 solved for the load (row `one_rm.berger_1961_load`).
    """
    given: dict[str, Any] = {"one_rm": one_rm, "reps": reps}
    return _call("one_rm.berger_1961_load", given)  # type: ignore[no-any-return]


def berger_1961_reps(*, fraction: _t.Fraction) -> float:
    """How many repetitions to failure does a part of the maximum allow?

    # Formula
    `r = -ln(F / 1.0261) / 0.0262`; `F` part of the one-repetition maximum, `r` repetitions.

    # Domain
    As `berger_1961`; the answer may lie above what that form accepts, up to 200.

    # Errors
    `percent_out_of_domain` where the equation has no answer from 1 to 200 repetitions.

    # Source
    Berger 1961 solved for repetitions (row `one_rm.berger_1961_reps`).
    """
    given: dict[str, Any] = {"fraction": fraction}
    return _call("one_rm.berger_1961_reps", given)  # type: ignore[no-any-return]


def cummings_finn_1998(*, load: _t.MassInput, reps: _t.Reps) -> _t.Kilograms:
    """What could be lifted once, from a set to failure, for an untrained young woman's bench press?

    # Formula
    `E = 1.175 w + 0.839 r - 4.29787`; `w` load in kg, `r` repetitions to failure, `E` in kg. Bound to kilograms: twice the load is not twice the maximum.

    # Domain
    From 1 repetition up to 30 repetitions; measured: 4 to 8, 57 untrained women, bench press.
    The abstract names load, repetitions and biacromial breadth as the variables of its equation; this line, known from
    later lists, has no breadth.

    # Errors
    `reps_out_of_domain` below 1 and above 30 repetitions; `load_out_of_domain` at or below 0 kg, or where the offset would leave no maximum.

    # Source
    Cummings & Finn 1998, in the form of later lists (row `one_rm.cummings_finn_1998`).

    # Known how
    Not read in the work itself; copies seen: public code and lists of equations.

    Source: Cummings B, Finn KJ. Estimation of a one repetition maximum bench press for untrained women. J Strength Cond Res 1998;12(4):262-265
    """
    given: dict[str, Any] = {"load": load, "reps": reps}
    return _call("one_rm.cummings_finn_1998", given)  # type: ignore[no-any-return]


def cummings_finn_1998_load(*, one_rm: _t.KilogramsInput, reps: _t.Reps) -> _t.Kilograms:
    """What load would be lifted this often to failure, given the one-repetition maximum?

    # Formula
    `w = (E - 0.839 r + 4.29787) / 1.175`; all masses in kg.

    # Domain
    As `cummings_finn_1998`.

    # Errors
    `reps_out_of_domain` below 1 and above 30 repetitions; `load_out_of_domain` where the maximum or the load would be nothing or less.

    # Source
    Cummings & Finn 1998 solved for the load (row `one_rm.cummings_finn_1998_load`).

    # Known how
    Not read in the work itself; copies seen: public code and lists of equations.

    Source: Cummings B, Finn KJ. Estimation of a one repetition maximum bench press for untrained women. J Strength Cond Res 1998;12(4):262-265
    """
    given: dict[str, Any] = {"one_rm": one_rm, "reps": reps}
    return _call("one_rm.cummings_finn_1998_load", given)  # type: ignore[no-any-return]


def cummings_finn_1998_reps(*, load: _t.MassInput, one_rm: _t.KilogramsInput) -> float:
    """How many repetitions to failure does a load allow, given the one-repetition maximum?

    # Formula
    `r = (E - 1.175 w + 4.29787) / 0.839`; all masses in kg. Not scale-free, so it takes both masses.

    # Domain
    As `cummings_finn_1998`; the answer may lie above what that form accepts, up to 200.

    # Errors
    `load_out_of_domain` at or below 0 kg; `percent_out_of_domain` where there is no answer from 1 to 200.

    # Source
    Cummings & Finn 1998 solved for repetitions (row `one_rm.cummings_finn_1998_reps`).

    # Known how
    Not read in the work itself; copies seen: public code and lists of equations.

    Source: Cummings B, Finn KJ. Estimation of a one repetition maximum bench press for untrained women. J Strength Cond Res 1998;12(4):262-265
    """
    given: dict[str, Any] = {"load": load, "one_rm": one_rm}
    return _call("one_rm.cummings_finn_1998_reps", given)  # type: ignore[no-any-return]


def kemmler_2006(*, load: _t.MassInput, reps: _t.Reps) -> _t.Kilograms:
    """What could a trained older woman lift once, from a set to failure on a machine?

    # Formula
    `E = w (0.988 + 0.0104 r + 0.00190 r^2 - 0.0000584 r^3)`; `w` load in kg, `r` repetitions to failure, `E` in kg. At one repetition it gives 1.0002 w, the load itself within rounding.

    # Domain
    From 1 to 20 repetitions; measured: 3 to 20, 70 trained postmenopausal women of 57.4 (SD 3.1) years, leg
    press, bench press, rowing, leg adduction. The cubic turns down after 24.15 repetitions and is never
    extrapolated. Mean absolute error 1.5 to 3.1 %, whatever the exercise and the repetitions.

    # Errors
    `reps_out_of_domain` below 1 and above 20 repetitions; `load_out_of_domain` at or below 0 kg.

    # Source
    Kemmler et al. 2006, abstract (row `one_rm.kemmler_2006`).

    # Known how
    Read in the work or in its abstract.

    Source: Kemmler WK, Lauber D, Wassermann A, Mayhew JL. Predicting maximal strength in trained postmenopausal women. J Strength Cond Res 2006;20(4):838-842
    """
    given: dict[str, Any] = {"load": load, "reps": reps}
    return _call("one_rm.kemmler_2006", given)  # type: ignore[no-any-return]


def kemmler_2006_load(*, one_rm: _t.KilogramsInput, reps: _t.Reps) -> _t.Kilograms:
    """What load would be lifted this often to failure, given the one-repetition maximum?

    # Formula
    `w = E / (0.988 + 0.0104 r + 0.00190 r^2 - 0.0000584 r^3)`; `E` one-repetition maximum in kg, `r` repetitions to failure, `w` in kg.

    # Domain
    As `kemmler_2006`.

    # Errors
    `reps_out_of_domain` below 1 and above 20 repetitions; `load_out_of_domain` where the maximum is at or below 0 kg.

    # Source
    Kemmler et al. 2006 solved for the load (row `one_rm.kemmler_2006_load`).

    # Known how
    Read in the work or in its abstract.

    Source: Kemmler WK, Lauber D, Wassermann A, Mayhew JL. Predicting maximal strength in trained postmenopausal women. J Strength Cond Res 2006;20(4):838-842
    """
    given: dict[str, Any] = {"one_rm": one_rm, "reps": reps}
    return _call("one_rm.kemmler_2006_load", given)  # type: ignore[no-any-return]


def kemmler_2006_reps(*, fraction: _t.Fraction) -> float:
    """How many repetitions to failure does a part of the maximum allow?

    # Formula
    The root from 1 to 20 of `1 / F = 0.988 + 0.0104 r + 0.00190 r^2 - 0.0000584 r^3`; `F` part of the one-repetition maximum, `r` repetitions.

    # Domain
    As `kemmler_2006`; answers up to 20 repetitions.

    # Errors
    `percent_out_of_domain` where the equation has no answer from 1 to 20 repetitions.

    # Source
    Kemmler et al. 2006 solved for repetitions (row `one_rm.kemmler_2006_reps`).

    # Known how
    Read in the work or in its abstract.

    Source: Kemmler WK, Lauber D, Wassermann A, Mayhew JL. Predicting maximal strength in trained postmenopausal women. J Strength Cond Res 2006;20(4):838-842
    """
    given: dict[str, Any] = {"fraction": fraction}
    return _call("one_rm.kemmler_2006_reps", given)  # type: ignore[no-any-return]


def osteopenia_2024(*, device: _t.Device, load: _t.MassInput, reps: _t.Reps) -> _t.Kilograms:
    """What could a trained older adult with osteopenia lift once, from a set to failure on this machine?

    # Formula
    `E = w (a0 + a1 r + a2 r^2 + a3 r^3)` with four coefficients a machine; `w` load in kg, `r` repetitions to failure, `E` in kg. At one repetition it gives 1.00 to 1.01 w. That the coefficients are printed in ascending powers is our reading.

    # Domain
    From 1 to 16 repetitions; measured: 5 to 16, 40 trained women and men of 73 (SD 8) years with osteopenia or
    osteoporosis. The cubics turn down from 18.44 repetitions on and are never extrapolated.

    # Errors
    `reps_out_of_domain` below 1 and above 16 repetitions; `load_out_of_domain` at or below 0 kg.

    # Source
    Sports 2024;12(9):233, table of regression coefficients (row `one_rm.osteopenia_2024`).

    # Known how
    Read in the work or in its abstract.

    Source: Developing Accurate Repetition Prediction Equations for Trained Older Adults with Osteopenia. Sports 2024;12(9):233
    """
    given: dict[str, Any] = {"device": device, "load": load, "reps": reps}
    return _call("one_rm.osteopenia_2024", given)  # type: ignore[no-any-return]


def osteopenia_2024_load(*, device: _t.Device, one_rm: _t.KilogramsInput, reps: _t.Reps) -> _t.Kilograms:
    """What load would be lifted this often to failure on this machine, given the one-repetition maximum?

    # Formula
    `w = E / (a0 + a1 r + a2 r^2 + a3 r^3)`; `E` one-repetition maximum in kg, `r` repetitions to failure, `w` in kg.

    # Domain
    As `osteopenia_2024`.

    # Errors
    `reps_out_of_domain` below 1 and above 16 repetitions; `load_out_of_domain` where the maximum is at or below 0 kg.

    # Source
    Sports 2024;12(9):233 solved for the load (row `one_rm.osteopenia_2024_load`).

    # Known how
    Read in the work or in its abstract.

    Source: Developing Accurate Repetition Prediction Equations for Trained Older Adults with Osteopenia. Sports 2024;12(9):233
    """
    given: dict[str, Any] = {"device": device, "one_rm": one_rm, "reps": reps}
    return _call("one_rm.osteopenia_2024_load", given)  # type: ignore[no-any-return]


def osteopenia_2024_reps(*, device: _t.Device, fraction: _t.Fraction) -> float:
    """How many repetitions to failure does a part of the maximum allow on this machine?

    # Formula
    The root from 1 to 16 of `1 / F = a0 + a1 r + a2 r^2 + a3 r^3`; `F` part of the one-repetition maximum, `r` repetitions.

    # Domain
    As `osteopenia_2024`; answers up to 16 repetitions.

    # Errors
    `percent_out_of_domain` where the equation has no answer from 1 to 16 repetitions.

    # Source
    Sports 2024;12(9):233 solved for repetitions (row `one_rm.osteopenia_2024_reps`).

    # Known how
    Read in the work or in its abstract.

    Source: Developing Accurate Repetition Prediction Equations for Trained Older Adults with Osteopenia. Sports 2024;12(9):233
    """
    given: dict[str, Any] = {"device": device, "fraction": fraction}
    return _call("one_rm.osteopenia_2024_reps", given)  # type: ignore[no-any-return]


def reynolds_2006_five_rm(*, lift: _t.PressLift, load: _t.MassInput) -> _t.Kilograms:
    """What could be lifted once, from a tested five-repetition maximum?

    # Formula
    Chest press `E = 1.1307 w + 0.6999`, leg press `E = 1.0970 w + 14.2546`; `w` the 5RM, all in kg. Bound to
    kilograms: twice the load is not twice the maximum.

    # Domain
    70 people (34 men, 36 women), 18 to 69 years, mixed training. Error of estimate 2.98 kg (R2 0.993) and
    16.16 kg (R2 0.974). The authors' lines for 10RM and 20RM are not carried: their coefficients are not known
    here.

    # Errors
    `load_out_of_domain` at or below 0 kg.

    # Source
    Reynolds et al. 2006, abstract (row `one_rm.reynolds_2006_five_rm`).

    # Known how
    Read in the work or in its abstract.

    Source: Reynolds JM, Gordon TJ, Robergs RA. Prediction of one repetition maximum strength from multiple repetition maximum testing and anthropometry. J Strength Cond Res 2006;20(3):584-592
    """
    given: dict[str, Any] = {"lift": lift, "load": load}
    return _call("one_rm.reynolds_2006_five_rm", given)  # type: ignore[no-any-return]


def reynolds_2006_five_rm_load(*, lift: _t.PressLift, one_rm: _t.KilogramsInput) -> _t.Kilograms:
    """What would the five-repetition maximum be, given the one-repetition maximum?

    # Formula
    Chest press `w = (E - 0.6999) / 1.1307`, leg press `w = (E - 14.2546) / 1.0970`; all in kg.

    # Domain
    As `reynolds_2006_five_rm`.

    # Errors
    `load_out_of_domain` where the maximum does not exceed the intercept.

    # Source
    Reynolds et al. 2006 solved for the load (row `one_rm.reynolds_2006_five_rm_load`).

    # Known how
    Read in the work or in its abstract.

    Source: Reynolds JM, Gordon TJ, Robergs RA. Prediction of one repetition maximum strength from multiple repetition maximum testing and anthropometry. J Strength Cond Res 2006;20(3):584-592
    """
    given: dict[str, Any] = {"lift": lift, "one_rm": one_rm}
    return _call("one_rm.reynolds_2006_five_rm_load", given)  # type: ignore[no-any-return]


def reynolds_2006(*, lift: _t.PressLift, load: _t.MassInput, reps: _t.Reps) -> _t.Kilograms:
    """What could be lifted once, from a set to failure, by the curve through the mean 5, 10 and 20RM?

    # Formula
    `E = 100 w / P`; chest press `P = 55.51 exp(-0.0723 r) + 48.47`, leg press `P = 78.17 exp(-0.0569 r) + 26.41`; `w` load in kg, `r` repetitions to failure, `E` in kg. At one repetition it gives 0.9989 w and 0.9974 w, the load itself within rounding.

    # Domain
    From 1 to 30 repetitions; measured: 1, 5, 10 and 20. The fit error of 0.2 and 2.6 kg is that of the group's
    mean values, not of one person.

    # Errors
    `reps_out_of_domain` below 1 and above 30 repetitions; `load_out_of_domain` at or below 0 kg.

    # Source
    Reynolds et al. 2006, non-linear fit (row `one_rm.reynolds_2006`).

    # Known how
    Not read in the work itself; copies seen: one public code file.

    Source: Reynolds JM, Gordon TJ, Robergs RA. Prediction of one repetition maximum strength from multiple repetition maximum testing and anthropometry. J Strength Cond Res 2006;20(3):584-592
    """
    given: dict[str, Any] = {"lift": lift, "load": load, "reps": reps}
    return _call("one_rm.reynolds_2006", given)  # type: ignore[no-any-return]


def reynolds_2006_load(*, lift: _t.PressLift, one_rm: _t.KilogramsInput, reps: _t.Reps) -> _t.Kilograms:
    """What load would be lifted this often to failure, given the one-repetition maximum?

    # Formula
    `w = E P / 100`, `P` as in `reynolds_2006`; `E` one-repetition maximum in kg, `r` repetitions to failure, `w` in kg.

    # Domain
    As `reynolds_2006`.

    # Errors
    `reps_out_of_domain` below 1 and above 30 repetitions; `load_out_of_domain` where the maximum is at or below 0 kg.

    # Source
    Reynolds et al. 2006 solved for the load (row `one_rm.reynolds_2006_load`).

    # Known how
    Not read in the work itself; copies seen: one public code file.

    Source: Reynolds JM, Gordon TJ, Robergs RA. Prediction of one repetition maximum strength from multiple repetition maximum testing and anthropometry. J Strength Cond Res 2006;20(3):584-592
    """
    given: dict[str, Any] = {"lift": lift, "one_rm": one_rm, "reps": reps}
    return _call("one_rm.reynolds_2006_load", given)  # type: ignore[no-any-return]


def reynolds_2006_reps(*, lift: _t.PressLift, fraction: _t.Fraction) -> float:
    """How many repetitions to failure does a part of the maximum allow?

    # Formula
    Chest press `r = -ln((100 F - 48.47) / 55.51) / 0.0723`, leg press `r = -ln((100 F - 26.41) / 78.17) / 0.0569`; `F` part of the one-repetition maximum, `r` repetitions.

    # Domain
    As `reynolds_2006`; the answer may lie above what that form accepts, up to 200.

    # Errors
    `percent_out_of_domain` where the equation has no answer from 1 to 200 repetitions.

    # Source
    Reynolds et al. 2006 solved for repetitions (row `one_rm.reynolds_2006_reps`).

    # Known how
    Not read in the work itself; copies seen: one public code file.

    Source: Reynolds JM, Gordon TJ, Robergs RA. Prediction of one repetition maximum strength from multiple repetition maximum testing and anthropometry. J Strength Cond Res 2006;20(3):584-592
    """
    given: dict[str, Any] = {"lift": lift, "fraction": fraction}
    return _call("one_rm.reynolds_2006_reps", given)  # type: ignore[no-any-return]


def abadie_2000(*, load: _t.MassInput) -> _t.Kilograms:
    """What could a young woman press once, from a load she can press 5 to 10 times?

    # Formula
    `E = 7.24 + 1.05 w`, both in **pounds**; the argument and the result carry their unit.

    # Domain
    30 women of 19 to 26 years, chest press, a load of 5 to 10 repetitions to failure; how many does not enter.
    Error of estimate 2.5 kg, 7.8 % of the maximum.

    # Errors
    `load_out_of_domain` at or below 0 kg.

    # Source
    Abadie & Wentworth 2000, abstract (row `one_rm.abadie_2000`).

    # Known how
    Read in the work or in its abstract.

    Source: Abadie BR, Wentworth MC. Prediction of one repetition maximal strength from a 5-10 repetition submaximal strength test in college-aged females. J Exerc Physiol Online 2000;3(3)
    """
    given: dict[str, Any] = {"load": load}
    return _call("one_rm.abadie_2000", given)  # type: ignore[no-any-return]


def abadie_2000_load(*, one_rm: _t.KilogramsInput) -> _t.Kilograms:
    """What load could a young woman press 5 to 10 times, given the one-repetition maximum?

    # Formula
    `w = (E - 7.24) / 1.05`, both in pounds; the argument and the result carry their unit.

    # Domain
    As `abadie_2000`.

    # Errors
    `load_out_of_domain` where the maximum does not exceed 7.24 lb.

    # Source
    Abadie & Wentworth 2000 solved for the load (row `one_rm.abadie_2000_load`).

    # Known how
    Read in the work or in its abstract.

    Source: Abadie BR, Wentworth MC. Prediction of one repetition maximal strength from a 5-10 repetition submaximal strength test in college-aged females. J Exerc Physiol Online 2000;3(3)
    """
    given: dict[str, Any] = {"one_rm": one_rm}
    return _call("one_rm.abadie_2000_load", given)  # type: ignore[no-any-return]


def abadie_1999(*, load: _t.MassInput) -> _t.Kilograms:
    """What could an untrained young man press once, from a load he can press 7 to 10 times?

    # Formula
    `E = 8.8147 + 1.1828 w`, both in **pounds**; the argument and the result carry their unit.

    # Domain
    Recalled as untrained college men, bench press, in pounds: unit, sex and training are not confirmed. A load of 7
    to 10 repetitions to failure; how many does not enter.

    # Errors
    `load_out_of_domain` at or below 0 kg.

    # Source
    Abadie et al. 1999 (row `one_rm.abadie_1999`).

    # Known how
    Recalled, not read again: take the numbers with care.

    Source: Abadie BR, Altorfer GL, Schuler PB. Does a regression equation to predict maximal strength in untrained lifters remain valid when the subjects are technique trained? J Strength Cond Res 1999;13:259-263
    """
    given: dict[str, Any] = {"load": load}
    return _call("one_rm.abadie_1999", given)  # type: ignore[no-any-return]


def abadie_1999_load(*, one_rm: _t.KilogramsInput) -> _t.Kilograms:
    """What load could an untrained young man press 7 to 10 times, given the one-repetition maximum?

    # Formula
    `w = (E - 8.8147) / 1.1828`, both in pounds; the argument and the result carry their unit.

    # Domain
    As `abadie_1999`.

    # Errors
    `load_out_of_domain` where the maximum does not exceed 8.8147 lb.

    # Source
    Abadie et al. 1999 solved for the load (row `one_rm.abadie_1999_load`).

    # Known how
    Recalled, not read again: take the numbers with care.

    Source: Abadie BR, Altorfer GL, Schuler PB. Does a regression equation to predict maximal strength in untrained lifters remain valid when the subjects are technique trained? J Strength Cond Res 1999;13:259-263
    """
    given: dict[str, Any] = {"one_rm": one_rm}
    return _call("one_rm.abadie_1999_load", given)  # type: ignore[no-any-return]


def kravitz_2003(*, lift: _t.PowerLift, load: _t.MassInput, reps: _t.Reps) -> _t.Kilograms:
    """What could a school powerlifter lift once, from a set to failure at the study's part of the maximum?

    # Formula
    Squat `E = 159.9 + 0.103 r w - 11.552 r`, bench press `E = 90.66 + 0.085 r w - 5.306 r`, deadlift `E = 156.08 + 0.098 r w - 12.106 r`; `w` load in kg, `r` repetitions to failure, `E` in kg.

    # Domain
    18 elite male school powerlifters; one set to failure at 70 % (squat, bench press) or 80 % (deadlift). Not a
    general equation: at and below 112.16, 62.42 and 123.53 kg more repetitions would lower the estimate, so
    such loads are refused. Error of estimate 5.06, 2.69, 4.97 kg.

    # Errors
    `load_out_of_domain` at and below those loads; `reps_out_of_domain` below 1 and above 30 repetitions.

    # Source
    Kravitz et al. 2003, abstract (row `one_rm.kravitz_2003`).

    # Known how
    Read in the work or in its abstract.

    Source: Kravitz L, Akalan C, Nowicki K, Kinzey SJ. Prediction of 1 repetition maximum in high-school power lifters. J Strength Cond Res 2003;17(1):167-172
    """
    given: dict[str, Any] = {"lift": lift, "load": load, "reps": reps}
    return _call("one_rm.kravitz_2003", given)  # type: ignore[no-any-return]


def kravitz_2003_load(*, lift: _t.PowerLift, one_rm: _t.KilogramsInput, reps: _t.Reps) -> _t.Kilograms:
    """What load would be lifted this often to failure, given the one-repetition maximum?

    # Formula
    `w = (E - start + each r) / (product r)` with the coefficients of `kravitz_2003`; `E` one-repetition maximum in kg, `r` repetitions to failure, `w` in kg.

    # Domain
    As `kravitz_2003`.

    # Errors
    `reps_out_of_domain` below 1 and above 30 repetitions; `load_out_of_domain` where the load would lie at or below the crossing.

    # Source
    Kravitz et al. 2003 solved for the load (row `one_rm.kravitz_2003_load`).

    # Known how
    Read in the work or in its abstract.

    Source: Kravitz L, Akalan C, Nowicki K, Kinzey SJ. Prediction of 1 repetition maximum in high-school power lifters. J Strength Cond Res 2003;17(1):167-172
    """
    given: dict[str, Any] = {"lift": lift, "one_rm": one_rm, "reps": reps}
    return _call("one_rm.kravitz_2003_load", given)  # type: ignore[no-any-return]


def kravitz_2003_reps(*, lift: _t.PowerLift, load: _t.MassInput, one_rm: _t.KilogramsInput) -> float:
    """How many repetitions to failure does a load allow, given the one-repetition maximum?

    # Formula
    `r = (E - start) / (product w - each)` with the coefficients of `kravitz_2003`; masses in kg.

    # Domain
    As `kravitz_2003`; the answer may lie above what that form accepts, up to 200.

    # Errors
    `load_out_of_domain` at and below the crossing; `percent_out_of_domain` where there is no answer from 1 to 200 repetitions.

    # Source
    Kravitz et al. 2003 solved for repetitions (row `one_rm.kravitz_2003_reps`).

    # Known how
    Read in the work or in its abstract.

    Source: Kravitz L, Akalan C, Nowicki K, Kinzey SJ. Prediction of 1 repetition maximum in high-school power lifters. J Strength Cond Res 2003;17(1):167-172
    """
    given: dict[str, Any] = {"lift": lift, "load": load, "one_rm": one_rm}
    return _call("one_rm.kravitz_2003_reps", given)  # type: ignore[no-any-return]


def brzycki_2000(*, heavier: _t.MassInput, fewer_reps: _t.Reps, lighter: _t.MassInput, more_reps: _t.Reps) -> _t.Kilograms:
    """What could be lifted once, from two sets to failure of the same lifter?

    # Formula
    `E = w1 + (w1 - w2) / (r2 - r1) (r1 - 1)`; `w1` the heavier load with `r1` repetitions, `w2` the lighter with
    `r2`, loads in kg. A set of one repetition gives its load.

    # Domain
    Both sets to failure, up to 10 repetitions: the line is straight, the lifter is not.

    # Errors
    `reps_out_of_domain` unless `1 <= r1 < r2 <= 10`; `load_out_of_domain` unless `w1 > w2 > 0`.

    # Source
    Brzycki 2000 (row `one_rm.brzycki_2000`).

    # Known how
    Not read in the work itself; copies seen: one public code file.

    Source: Brzycki M. Assessing strength. Fitness Management 2000;16(7):34-37
    """
    given: dict[str, Any] = {"heavier": heavier, "fewer_reps": fewer_reps, "lighter": lighter, "more_reps": more_reps}
    return _call("one_rm.brzycki_2000", given)  # type: ignore[no-any-return]


def brzycki_2000_load(*, heavier: _t.MassInput, fewer_reps: _t.Reps, lighter: _t.MassInput, more_reps: _t.Reps, reps: _t.Reps) -> _t.Kilograms:
    """What load would be lifted this often to failure, by the line through two sets?

    # Formula
    `w = w1 - (w1 - w2) / (r2 - r1) (r - r1)`.

    # Domain
    As `brzycki_2000`, from 1 to 10 repetitions.

    # Errors
    As `brzycki_2000`; `reps_out_of_domain` outside 1 to 10; `load_out_of_domain` where the line has run out of
    load.

    # Source
    Brzycki 2000, the same line (row `one_rm.brzycki_2000_load`).

    # Known how
    Not read in the work itself; copies seen: one public code file.

    Source: Brzycki M. Assessing strength. Fitness Management 2000;16(7):34-37
    """
    given: dict[str, Any] = {"heavier": heavier, "fewer_reps": fewer_reps, "lighter": lighter, "more_reps": more_reps, "reps": reps}
    return _call("one_rm.brzycki_2000_load", given)  # type: ignore[no-any-return]


def brzycki_2000_reps(*, heavier: _t.MassInput, fewer_reps: _t.Reps, lighter: _t.MassInput, more_reps: _t.Reps, load: _t.MassInput) -> float:
    """How many repetitions to failure does a load allow, by the line through two sets?

    # Formula
    `r = r1 + (w1 - w) (r2 - r1) / (w1 - w2)`.

    # Domain
    As `brzycki_2000`; answers above 10 repetitions lie outside it and are given up to 200.

    # Errors
    As `brzycki_2000`; `percent_out_of_domain` where there is no answer from 1 to 200 repetitions.

    # Source
    Brzycki 2000, the same line (row `one_rm.brzycki_2000_reps`).

    # Known how
    Not read in the work itself; copies seen: one public code file.

    Source: Brzycki M. Assessing strength. Fitness Management 2000;16(7):34-37
    """
    given: dict[str, Any] = {"heavier": heavier, "fewer_reps": fewer_reps, "lighter": lighter, "more_reps": more_reps, "load": load}
    return _call("one_rm.brzycki_2000_reps", given)  # type: ignore[no-any-return]


def percent_chart_fraction(*, reps: _t.Reps, above_ten: _t.ChartAboveTen) -> _t.Fraction:
    """What part of the maximum does the chart give for this many repetitions?

    # Formula
    1 to 10 repetitions: 100, 95, 93, 90, 87, 85, 83, 80, 77, 75 %; above, one of two prints. Straight lines
    between the points.

    # Domain
    Solid up to 10 repetitions. Above, the one-page chart ends with 12 at 70 %, the textbook has 11 at 70 %, 12
    at 67 % and 15 at 65 %: the caller chooses. Never extrapolated.

    # Errors
    `reps_out_of_domain` below 1 and above 12 or 15 repetitions.

    # Source
    Training load chart and textbook of the association (row `one_rm.percent_chart_fraction`).

    # Known how
    Read in the work or in its abstract. Recalled, not read again: the textbook's 11, 12 and 15 repetitions.

    Source: National Strength and Conditioning Association. Training load chart; and Baechle TR, Earle RW (eds). Essentials of Strength Training and Conditioning, 2nd and 3rd ed. Human Kinetics, Champaign IL, chapter on load assignment
    """
    given: dict[str, Any] = {"reps": reps, "above_ten": above_ten}
    return _call("one_rm.percent_chart_fraction", given)  # type: ignore[no-any-return]


def percent_chart(*, load: _t.MassInput, reps: _t.Reps, above_ten: _t.ChartAboveTen) -> _t.Kilograms:
    """What could be lifted once, from a set to failure, by the chart?

    # Formula
    `E = w / F`, `F` from `percent_chart_fraction`; `w` load in kg, `r` repetitions to failure, `E` in kg. At one repetition it gives the load itself.

    # Domain
    As `percent_chart_fraction`.

    # Errors
    `reps_out_of_domain` below 1 and above 12 or 15 repetitions; `load_out_of_domain` at or below 0 kg.

    # Source
    Training load chart, and textbook of the association (row `one_rm.percent_chart`).

    # Known how
    Read in the work or in its abstract. Recalled, not read again: the textbook's 11, 12 and 15 repetitions.

    Source: National Strength and Conditioning Association. Training load chart; and Baechle TR, Earle RW (eds). Essentials of Strength Training and Conditioning, 2nd and 3rd ed. Human Kinetics, Champaign IL, chapter on load assignment
    """
    given: dict[str, Any] = {"load": load, "reps": reps, "above_ten": above_ten}
    return _call("one_rm.percent_chart", given)  # type: ignore[no-any-return]


def percent_chart_load(*, one_rm: _t.KilogramsInput, reps: _t.Reps, above_ten: _t.ChartAboveTen) -> _t.Kilograms:
    """What load would be lifted this often to failure, by the chart?

    # Formula
    `w = E F`, `F` from `percent_chart_fraction`; `E` one-repetition maximum in kg, `r` repetitions to failure, `w` in kg.

    # Domain
    As `percent_chart`.

    # Errors
    `reps_out_of_domain` below 1 and above 12 or 15 repetitions; `load_out_of_domain` where the maximum is at or below 0 kg.

    # Source
    Training load chart solved for the load (row `one_rm.percent_chart_load`).

    # Known how
    Read in the work or in its abstract. Recalled, not read again: the textbook's 11, 12 and 15 repetitions.

    Source: National Strength and Conditioning Association. Training load chart; and Baechle TR, Earle RW (eds). Essentials of Strength Training and Conditioning, 2nd and 3rd ed. Human Kinetics, Champaign IL, chapter on load assignment
    """
    given: dict[str, Any] = {"one_rm": one_rm, "reps": reps, "above_ten": above_ten}
    return _call("one_rm.percent_chart_load", given)  # type: ignore[no-any-return]


def percent_chart_reps(*, fraction: _t.Fraction, above_ten: _t.ChartAboveTen) -> float:
    """How many repetitions to failure does a part of the maximum allow, by the chart?

    # Formula
    The straight piece of the chart that holds `F`, solved for repetitions: from 100 % down to 70 % (one page) or 65 % (textbook); `F` part of the one-repetition maximum, `r` repetitions.

    # Domain
    As `percent_chart`; answers up to 12 or 15 repetitions.

    # Errors
    `percent_out_of_domain` where the equation has no answer from 1 to 12 or 15 repetitions.

    # Source
    Training load chart solved for repetitions (row `one_rm.percent_chart_reps`).

    # Known how
    Read in the work or in its abstract. Recalled, not read again: the textbook's 11, 12 and 15 repetitions.

    Source: National Strength and Conditioning Association. Training load chart; and Baechle TR, Earle RW (eds). Essentials of Strength Training and Conditioning, 2nd and 3rd ed. Human Kinetics, Champaign IL, chapter on load assignment
    """
    given: dict[str, Any] = {"fraction": fraction, "above_ten": above_ten}
    return _call("one_rm.percent_chart_reps", given)  # type: ignore[no-any-return]


def bergstrom_2021_fit(*, sets: Sequence[_t.SetToFailureInput]) -> _t.CriticalLoad:
    """Which load could this lifter lift very often, and how much work is in store above it?

    # Formula
    Least squares line of total work `w r = L' + CL r`; `CL` critical load in kg, `L'` store in kg repetitions.

    # Domain
    Protocol: at least four loads, all above `CL`, the lowest at 50 % of the maximum or more, in steps of 10 %; a
    fit with R2 below 0.75 is dropped. Departures are flagged, not hidden.

    # Errors
    `not_enough_data` below three sets or with fewer than two different repetitions; `reps_out_of_domain`,
    `load_out_of_domain` in a set; `out_of_range` where the line gives no critical load or no store above 0, or
    for more than 1000 sets.

    # Source
    Bergstrom et al. 2021, abstract and recommendations (row `one_rm.bergstrom_2021_fit`).

    # Known how
    Read in the work or in its abstract.

    Source: Bergstrom HC, Dinyer TK, Succi PJ, Voskuil CC, Housh TJ. Applications of the critical power model to dynamic constant external resistance exercise: a brief review of the critical load test. Sports 2021;9(2):15
    """
    given: dict[str, Any] = {"sets": sets}
    return _call("one_rm.bergstrom_2021_fit", given)  # type: ignore[no-any-return]


def bergstrom_2021(*, critical_load: _t.KilogramsInput, store: float) -> _t.Kilograms:
    """What could be lifted once, by the two-parameter critical load?

    # Formula
    `E = CL + L'`, the curve at one repetition. It is known to lie too high there.

    # Domain
    As `bergstrom_2021_fit`(super::bergstrom_2021_fit()).

    # Errors
    `load_out_of_domain`, `out_of_range` where critical load or store is at or below 0.

    # Source
    Bergstrom et al. 2021 (row `one_rm.bergstrom_2021`).

    # Known how
    Read in the work or in its abstract.

    Source: Bergstrom HC, Dinyer TK, Succi PJ, Voskuil CC, Housh TJ. Applications of the critical power model to dynamic constant external resistance exercise: a brief review of the critical load test. Sports 2021;9(2):15
    """
    given: dict[str, Any] = {"critical_load": critical_load, "store": store}
    return _call("one_rm.bergstrom_2021", given)  # type: ignore[no-any-return]


def bergstrom_2021_load(*, critical_load: _t.KilogramsInput, store: float, reps: _t.Reps) -> _t.Kilograms:
    """What load would be lifted this often to failure, by the two-parameter critical load?

    # Formula
    `w = CL + L' / r`.

    # Domain
    From 1 to 200 repetitions, best within those fitted.

    # Errors
    `reps_out_of_domain` below 1; `load_out_of_domain`, `out_of_range` where critical load or store is at or
    below 0.

    # Source
    Bergstrom et al. 2021 (row `one_rm.bergstrom_2021_load`).

    # Known how
    Read in the work or in its abstract.

    Source: Bergstrom HC, Dinyer TK, Succi PJ, Voskuil CC, Housh TJ. Applications of the critical power model to dynamic constant external resistance exercise: a brief review of the critical load test. Sports 2021;9(2):15
    """
    given: dict[str, Any] = {"critical_load": critical_load, "store": store, "reps": reps}
    return _call("one_rm.bergstrom_2021_load", given)  # type: ignore[no-any-return]


def bergstrom_2021_reps(*, critical_load: _t.KilogramsInput, store: float, load: _t.MassInput) -> float:
    """How many repetitions to failure does a load allow, by the two-parameter critical load?

    # Formula
    `r = L' / (w - CL)`.

    # Domain
    Loads above the critical load.

    # Errors
    `load_out_of_domain` at or below the critical load; `percent_out_of_domain` where there is no answer from 1
    to 200 repetitions; `out_of_range` where the store is at or below 0.

    # Source
    Bergstrom et al. 2021 (row `one_rm.bergstrom_2021_reps`).

    # Known how
    Read in the work or in its abstract.

    Source: Bergstrom HC, Dinyer TK, Succi PJ, Voskuil CC, Housh TJ. Applications of the critical power model to dynamic constant external resistance exercise: a brief review of the critical load test. Sports 2021;9(2):15
    """
    given: dict[str, Any] = {"critical_load": critical_load, "store": store, "load": load}
    return _call("one_rm.bergstrom_2021_reps", given)  # type: ignore[no-any-return]


def morton_2014(*, critical_load: _t.KilogramsInput, store: float, load: _t.MassInput, reps: _t.Reps) -> _t.Kilograms:
    """What could be lifted once, from a set to failure, by the three-parameter critical load?

    # Formula
    `r = 1 + L' / (w - CL) - L' / (E - CL)` solved for `E`. A set of one repetition gives its load.

    # Domain
    A load above the critical load; fewer repetitions than `1 + L' / (w - CL)`, where `E` would be without limit.

    # Errors
    `reps_out_of_domain` below 1 and from that pole on; `load_out_of_domain` at or below the critical load;
    `out_of_range` where the store is at or below 0.

    # Source
    Morton et al. 2014, standard three-parameter form (row `one_rm.morton_2014`).

    # Known how
    Recalled, not read again: take the numbers with care.

    Source: Morton RH, Redstone MD, Laing DJ. The critical power concept and bench press: modeling 1RM and repetitions to failure. Int J Exerc Sci 2014;7:152-160
    """
    given: dict[str, Any] = {"critical_load": critical_load, "store": store, "load": load, "reps": reps}
    return _call("one_rm.morton_2014", given)  # type: ignore[no-any-return]


def morton_2014_load(*, critical_load: _t.KilogramsInput, store: float, one_rm: _t.KilogramsInput, reps: _t.Reps) -> _t.Kilograms:
    """What load would be lifted this often to failure, by the three-parameter critical load?

    # Formula
    `w = CL + L' / (r - 1 + L' / (E - CL))`.

    # Domain
    From 1 to 200 repetitions; one repetition gives the maximum.

    # Errors
    `reps_out_of_domain` below 1; `load_out_of_domain` where the maximum does not exceed the critical load;
    `out_of_range` where the store is at or below 0.

    # Source
    Morton et al. 2014, standard three-parameter form (row `one_rm.morton_2014_load`).

    # Known how
    Recalled, not read again: take the numbers with care.

    Source: Morton RH, Redstone MD, Laing DJ. The critical power concept and bench press: modeling 1RM and repetitions to failure. Int J Exerc Sci 2014;7:152-160
    """
    given: dict[str, Any] = {"critical_load": critical_load, "store": store, "one_rm": one_rm, "reps": reps}
    return _call("one_rm.morton_2014_load", given)  # type: ignore[no-any-return]


def morton_2014_reps(*, critical_load: _t.KilogramsInput, store: float, one_rm: _t.KilogramsInput, load: _t.MassInput) -> float:
    """How many repetitions to failure does a load allow, by the three-parameter critical load?

    # Formula
    `r = 1 + L' / (w - CL) - L' / (E - CL)`.

    # Domain
    Loads above the critical load and not above the maximum.

    # Errors
    `load_out_of_domain` where load or maximum does not exceed the critical load; `percent_out_of_domain` where
    there is no answer from 1 to 200 repetitions; `out_of_range` where the store is at or below 0.

    # Source
    Morton et al. 2014, standard three-parameter form (row `one_rm.morton_2014_reps`).

    # Known how
    Recalled, not read again: take the numbers with care.

    Source: Morton RH, Redstone MD, Laing DJ. The critical power concept and bench press: modeling 1RM and repetitions to failure. Int J Exerc Sci 2014;7:152-160
    """
    given: dict[str, Any] = {"critical_load": critical_load, "store": store, "one_rm": one_rm, "load": load}
    return _call("one_rm.morton_2014_reps", given)  # type: ignore[no-any-return]


def reps_to_failure(*, reps: _t.Reps, rir: _t.Rir, bias: _t.ReserveBias) -> float:
    """How many repetitions would this set have had, taken to failure?

    # Formula
    `r = done + max(0, reported reserve + bias)`, in repetitions.

    # Domain
    A reported reserve is best near failure and in short sets. The bias is nothing, the pooled
    `ReserveBias::halperin_2022`, `ReserveBias::by_length_of_set`, or the lifter's own.

    # Errors
    None beyond the types.

    # Source
    Convention of the literature on reserve (row `one_rm.reps_to_failure`).
    """
    given: dict[str, Any] = {"reps": reps, "rir": rir, "bias": bias}
    return _call("one_rm.reps_to_failure", given)  # type: ignore[no-any-return]


def fraction_for(*, reps: _t.Reps, rir: _t.Rir, equation: _t.Equation) -> _t.Fraction:
    """What part of the maximum is this many repetitions with this reserve?

    # Formula
    `F = 1 / M(reps + reserve)`, `M` the multiplier of the equation.

    # Domain
    That of the equation, with reserve counted as repetitions.

    # Errors
    `reps_out_of_domain`; `not_scale_free` for an equation bound to kilograms.

    # Source
    The equation named in the call (row `one_rm.fraction_for`).
    """
    given: dict[str, Any] = {"reps": reps, "rir": rir, "equation": equation}
    return _call("one_rm.fraction_for", given)  # type: ignore[no-any-return]


def fraction_for_rpe(*, reps: _t.Reps, rpe: _t.Rpe, equation: _t.Equation) -> _t.FractionBand:
    """What part of the maximum is this many repetitions at this rating?

    # Formula
    As `fraction_for`, at both ends of the reserve that the rating stands for.

    # Domain
    Ratings 7 to 10 in half steps, 5, 5.5 and 6. Half steps and 5 to 6 are bands and stay bands; 9.5 means no
    repetition left.

    # Errors
    `not_a_reserve` for every other rating; `reps_out_of_domain`; `not_scale_free`.

    # Source
    Zourdos et al. 2016 for the scale (row `one_rm.fraction_for_rpe`).

    # Known how
    Recalled, not read again: take the numbers with care.

    Source: Zourdos MC, Klemp A, Dolan C, et al. Novel resistance training-specific rating of perceived exertion scale measuring repetitions in reserve. J Strength Cond Res 2016;30:267-275
    """
    given: dict[str, Any] = {"reps": reps, "rpe": rpe, "equation": equation}
    return _call("one_rm.fraction_for_rpe", given)  # type: ignore[no-any-return]


def load_for(*, one_rm: _t.KilogramsInput, reps: _t.Reps, rir: _t.Rir, equation: _t.Equation) -> _t.Kilograms:
    """What load for this many repetitions with this reserve?

    # Formula
    `w = E / M(reps + reserve)`, or the equation's own inverse where it is bound to kilograms.

    # Domain
    That of the equation, with reserve counted as repetitions.

    # Errors
    `reps_out_of_domain`; `load_out_of_domain` where the maximum is at or below 0 kg.

    # Source
    The equation named in the call (row `one_rm.load_for`).
    """
    given: dict[str, Any] = {"one_rm": one_rm, "reps": reps, "rir": rir, "equation": equation}
    return _call("one_rm.load_for", given)  # type: ignore[no-any-return]


def reps_for(*, fraction: _t.Fraction, rir: _t.Rir, equation: _t.Equation) -> float:
    """How many repetitions at this part of the maximum leave this reserve?

    # Formula
    `reps = r(F) - reserve`, `r` the equation's inverse.

    # Domain
    That of the equation's inverse.

    # Errors
    `percent_out_of_domain` where fewer than one repetition would be left to do, or the equation has no answer;
    `not_scale_free`.

    # Source
    The equation named in the call (row `one_rm.reps_for`).
    """
    given: dict[str, Any] = {"fraction": fraction, "rir": rir, "equation": equation}
    return _call("one_rm.reps_for", given)  # type: ignore[no-any-return]


def effort_for(*, fraction: _t.Fraction, reps: _t.Reps, equation: _t.Equation) -> _t.ExpectedEffort:
    """How hard should this many repetitions at this part of the maximum feel?

    # Formula
    `reserve = r(F) - reps`; the rating is 10 less the reserve rounded to a whole repetition (halves up), from 0 to
    3 only.

    # Domain
    That of the equation's inverse. No rating is given where the scale names none.

    # Errors
    `reps_out_of_domain` where the equation allows fewer repetitions than that; `percent_out_of_domain`;
    `not_scale_free`.

    # Source
    The equation named in the call; Zourdos et al. 2016 for the scale (row `one_rm.effort_for`).

    # Known how
    Recalled, not read again: take the numbers with care.

    Source: Zourdos MC, Klemp A, Dolan C, et al. Novel resistance training-specific rating of perceived exertion scale measuring repetitions in reserve. J Strength Cond Res 2016;30:267-275
    """
    given: dict[str, Any] = {"fraction": fraction, "reps": reps, "equation": equation}
    return _call("one_rm.effort_for", given)  # type: ignore[no-any-return]


def effort_grid(*, equation: _t.Equation, highest_reps: _t.Reps, highest_reserve: _t.Rir) -> list[_t.GridRow]:
    """The whole table of repetitions and reserves as parts of the maximum, from one equation.

    # Formula
    Every cell is `fraction_for`: nothing is copied from a chart.

    # Domain
    Repetitions from 1 to `highest_reps` (at most 30), reserves from 0 to `highest_reserve` (at most 10), whole
    steps. A cell outside the equation's domain is empty; one outside what was measured is flagged.

    # Errors
    `out_of_range` beyond those sizes; `not_scale_free`.

    # Source
    The equation named in the call (row `one_rm.effort_grid`).
    """
    given: dict[str, Any] = {"equation": equation, "highest_reps": highest_reps, "highest_reserve": highest_reserve}
    return _call("one_rm.effort_grid", given)  # type: ignore[no-any-return]


def zourdos_2021_reserve_error(*, called: _t.Rir) -> _t.ReserveError:
    """By how much is a call of reserve off in a long set?

    # Formula
    Left less called: 2.05 +- 1.73 repetitions at 1 in reserve, 3.65 +- 2.46 at 3, 5.15 +- 2.92 at 5; straight lines
    between (our choice).

    # Domain
    Called 1 to 5 in reserve; back squat at 70 % of the maximum, sets of 16 +- 4 repetitions. In short sets of the
    trained there was no such bias (`REFALO_2024_RESERVE_ERROR`).

    # Errors
    `out_of_range` below 1 and above 5 in reserve: not asked in the study.

    # Source
    Zourdos et al. 2021, abstract (row `one_rm.zourdos_2021_reserve_error`).

    # Known how
    Read in the work or in its abstract.

    Source: Zourdos MC, Goldsmith JA, Helms ER, et al. Proximity to failure and total repetitions performed in a set influences accuracy of intraset repetitions in reserve-based rating of perceived exertion. J Strength Cond Res 2021;35(2S):S158-S165
    """
    given: dict[str, Any] = {"called": called}
    return _call("one_rm.zourdos_2021_reserve_error", given)  # type: ignore[no-any-return]


def braith_1993(*, load: _t.MassInput, practice: _t.Practice) -> _t.Kilograms:
    """What could be lifted once, from a 7-10RM, before any training of the lift or after eighteen weeks of it?

    # Formula
    Untrained `E = 1.554 w - 5.181`, after eighteen weeks `E = 1.172 w + 7.704`; `w` the load of a set of 7 to 10
    repetitions to failure, both in kg.

    # Domain
    Knee extension on one machine. The first line applied to the trained says 21.2 kg too much: the same equation does
    not fit one person before and after.

    # Errors
    `load_out_of_domain` at or below 0 kg, or where no maximum would be left.

    # Source
    Braith et al. 1993, abstract (row `one_rm.braith_1993`).

    # Known how
    Read in the work or in its abstract.

    Source: Braith RW, Graves JE, Leggett SH, Pollock ML. Effect of training on the relationship between maximal and submaximal strength. Med Sci Sports Exerc 1993;25:132-138
    """
    given: dict[str, Any] = {"load": load, "practice": practice}
    return _call("one_rm.braith_1993", given)  # type: ignore[no-any-return]


def braith_1993_load(*, one_rm: _t.KilogramsInput, practice: _t.Practice) -> _t.Kilograms:
    """What is the 7-10RM, given the one-repetition maximum?

    # Formula
    Untrained `w = (E + 5.181) / 1.554`, after eighteen weeks `w = (E - 7.704) / 1.172`; kg.

    # Domain
    As `braith_1993`.

    # Errors
    `load_out_of_domain` where the maximum or the load would be nothing or less.

    # Source
    Braith et al. 1993 solved for the load (row `one_rm.braith_1993_load`).

    # Known how
    Read in the work or in its abstract.

    Source: Braith RW, Graves JE, Leggett SH, Pollock ML. Effect of training on the relationship between maximal and submaximal strength. Med Sci Sports Exerc 1993;25:132-138
    """
    given: dict[str, Any] = {"one_rm": one_rm, "practice": practice}
    return _call("one_rm.braith_1993_load", given)  # type: ignore[no-any-return]


def newcomers_gain(*, before: _t.KilogramsInput, after: _t.KilogramsInput) -> _t.NewcomersGain:
    """A new lifter's estimate rose: how little of that may be strength?

    # Formula
    By the equation `100 (after / before - 1)`; of strength `100 (after / before * 0.684 / 0.791 - 1)`: those of the
    study did their 7-10RM at 68.4 % of the maximum before training and at 79.1 % after eighteen weeks.

    # Domain
    Estimates from repetitions, of people who began with the lift. One study, one machine: it tells the direction,
    and a size that was met once. The trained repeat as often as before (Brechue & Mayhew 2009).

    # Errors
    `load_out_of_domain` at or below 0 kg.

    # Source
    Arithmetic over two figures in the abstract of Braith et al. 1993 (row `one_rm.newcomers_gain`).
    """
    given: dict[str, Any] = {"before": before, "after": after}
    return _call("one_rm.newcomers_gain", given)  # type: ignore[no-any-return]


def equation_doubts(*, equation: _t.Equation, reps: _t.Reps, new_to_lift: bool) -> list[_t.EquationDoubt]:
    """What speaks against taking this equation's number for a set of so many repetitions to failure?

    # Formula
    Outside what was measured (`Equation::measured_reps`); run away where a pole lies near 37 repetitions and the
    set has more than 15; reads low for who is new to the lift.

    # Domain
    Repetitions at which the equation answers at all. Sizes: the equations over what was measured at 70 % by 25
    squatters with 16 repetitions (Zourdos et al. 2021: +20 %) and at 80 % by 8 runners with 19.8 on a leg press
    (Richens & Cleather 2014: up to +67 %); untrained people did their 7-10RM at 68.4 % (Braith et al. 1993).

    # Errors
    `reps_out_of_domain` where the equation gives no number.

    # Source
    Follows from the studies named (row `one_rm.equation_doubts`).
    """
    given: dict[str, Any] = {"equation": equation, "reps": reps, "new_to_lift": new_to_lift}
    return _call("one_rm.equation_doubts", given)  # type: ignore[no-any-return]


def usable_sets(*, evidence: Sequence[_t.SetEvidenceInput], options: _t.EstimateOptionsInput) -> list[_t.SetUse]:
    """Which of these sets may speak about strength, and why not the others?

    # Formula
    Refused: technique failed or not scored, no reserve named, more than `highest_reserve` left, more than
    `highest_reps` to failure, done and called, no load, no repetition, no equation that answers; those of
    `Equation::runs_away_above` do not beyond 15. Flagged: see `SetFlag`.

    # Domain
    Up to 200 sets. By default sets of up to 15 repetitions to failure with at most 4 in reserve; more than 10 done and
    more than 12 to failure are flagged.

    # Errors
    `out_of_range` for options outside their range or more than 200 sets.

    # Source
    Arithmetic; calls far from failure and in sets of more than 12 repetitions are poor: Halperin et al. 2022 (row
    `one_rm.usable_sets`).
    """
    given: dict[str, Any] = {"evidence": evidence, "options": options}
    return _call("one_rm.usable_sets", given)  # type: ignore[no-any-return]


def estimate(*, evidence: Sequence[_t.SetEvidenceInput], options: _t.EstimateOptionsInput) -> _t.Estimate:
    """What do these sets say about the one-repetition maximum, how sure is that, and why not surer?

    # Formula
    For set `i`: `y_i = mean over equations of ln E(w_i, r_i)`, modelled as
    `y_i = ln 1RM + slope_i a + between_i b + habit_i c + day + own_i`. `a`, `b`, `c` and the days are unknowns with
    normal priors (mean 0), `ln 1RM` has none; `own_i` is normal. With `g = k / (1 + k (r - 1))` and `k` the
    `typical slope`(super::TYPICAL_SLOPE): `slope_i = cv (r - 1) g`, `between_i` the standard deviation of the
    equations' logarithms, `habit_i` and `own_i` the spread of calling reserve times `g`. The value is
    `exp(mean)`, the interval from `exp(mean - z sd)` to `exp(mean + z sd + u)`, `z` the normal quantile, `u` what people
    leave without saying so: the printed mean error of a call (0.95 repetitions; in sets of more than 12 to failure 2.05
    at 1 in reserve to 5.15 at 5; 2.55 who is new to the lift) less the bias of the options, times `g` and the weights of
    the sets. It raises no value: nobody lifts more for a habit that is only likely.

    # Domain
    The usual maximum over the days given. As `usable_sets`. Normal spread on the logarithm; spreads are published
    ones, all parameters or named constants. Sets should lie close in time: strength is taken as one number. Past 15
    repetitions to failure there is no number: at 16 to 20 the equations said from 8 % too little to 67 % too much.

    How often an interval of 95 % from one set held the maximum, in worlds drawn from printed numbers: 99 % of sets on a leg
    press at 80 %, 91 % of long ones called at 1 in reserve and 87 % called at 3 (the maximum lay above), 92 % of
    untrained people where `new_to_lift` said so and 47 % where it did not. On an arm curl single sets scatter twice as
    much as this.

    # Errors
    `no_usable_set` where every set is refused (ask `usable_sets` for the reasons); `out_of_range` for options
    outside their range or more than 200 sets.

    # Source
    The equations named in the options; linear model with normal priors (row `one_rm.estimate`).
    """
    given: dict[str, Any] = {"evidence": evidence, "options": options}
    return _call("one_rm.estimate", given)  # type: ignore[no-any-return]


def own_curve(*, evidence: Sequence[_t.SetEvidenceInput], form: _t.CurveForm, prior: _t.CurvePrior, options: _t.EstimateOptionsInput) -> _t.OwnCurve:
    """What is this lifter's own curve of repetitions and load, and how sure is it?

    # Formula
    Exponential: `ln w = ln A - b (r - 1)`. Anchored line: `ln w = ln A - ln(1 + k (r - 1))`. `A` is the anchor;
    `ln 1RM = ln A + step`, the step of the first repetition being an unknown with the spread of the published
    equations (`FIRST_REPETITION_STEP`(super::FIRST_REPETITION_STEP)), seen only by sets of one. The slope has a
    normal prior, the habit of calling reserve and each day are unknowns as in `estimate`(super::estimate), own
    noise is that of the estimate; residuals beyond 1.345 spreads lose weight (Huber's rule). The interval is normal,
    from the spread at the last round, widened where sets scatter more than stated.

    # Domain
    At least three usable sets at least three repetitions to failure apart; else it says so. One prior for all
    lifts and people by default: state your own where you know better. `learned` tells how much the sets added.

    # Errors
    `not_enough_data`; `out_of_range` for a prior or options outside their range, more than 200 sets, or sets whose
    loads rise with repetitions; `did_not_converge`.

    # Source
    Form: Mitter et al. 2023, abstract; fit and prior are ours (row `one_rm.own_curve`).
    """
    given: dict[str, Any] = {"evidence": evidence, "form": form, "prior": prior, "options": options}
    return _call("one_rm.own_curve", given)  # type: ignore[no-any-return]


def own_curve_one_rm(*, form: _t.CurveForm, slope: float, load: _t.MassInput, reps: _t.Reps) -> _t.Kilograms:
    """What could this lifter lift once, from a set to failure and the slope of the own curve?

    # Formula
    Exponential `E = w exp(b (r - 1))`; anchored line `E = w (1 + k (r - 1))`.

    # Domain
    Slopes from 0.001 to 0.5 a repetition; best within the repetitions the curve was fitted on.

    # Errors
    `out_of_range` for the slope; `reps_out_of_domain` below 1; `load_out_of_domain` at or below 0 kg;
    `not_finite` where the result would be.

    # Source
    Follows from the form (row `one_rm.own_curve_one_rm`).
    """
    given: dict[str, Any] = {"form": form, "slope": slope, "load": load, "reps": reps}
    return _call("one_rm.own_curve_one_rm", given)  # type: ignore[no-any-return]


def own_curve_load(*, form: _t.CurveForm, slope: float, one_rm: _t.KilogramsInput, reps: _t.Reps) -> _t.Kilograms:
    """What load can this lifter lift this often to failure?

    # Formula
    Exponential `w = E exp(-b (r - 1))`; anchored line `w = E / (1 + k (r - 1))`.

    # Domain
    As `own_curve_one_rm`.

    # Errors
    `out_of_range` for the slope; `reps_out_of_domain` below 1; `load_out_of_domain` where the maximum is at or below
    0 kg.

    # Source
    Follows from the form (row `one_rm.own_curve_load`).
    """
    given: dict[str, Any] = {"form": form, "slope": slope, "one_rm": one_rm, "reps": reps}
    return _call("one_rm.own_curve_load", given)  # type: ignore[no-any-return]


def own_curve_reps(*, form: _t.CurveForm, slope: float, one_rm: _t.KilogramsInput, load: _t.MassInput) -> float:
    """How often can this lifter lift this load, to failure?

    # Formula
    Exponential `r = 1 + ln(E / w) / b`; anchored line `r = 1 + (E / w - 1) / k`.

    # Domain
    As `own_curve_one_rm`; loads up to the maximum.

    # Errors
    `out_of_range` for the slope; `load_out_of_domain` where load or maximum is at or below 0 kg;
    `percent_out_of_domain` where there is no answer from 1 to 200 repetitions.

    # Source
    Follows from the form (row `one_rm.own_curve_reps`).
    """
    given: dict[str, Any] = {"form": form, "slope": slope, "one_rm": one_rm, "load": load}
    return _call("one_rm.own_curve_reps", given)  # type: ignore[no-any-return]


def own_slope(*, form: _t.CurveForm, one_rm: _t.KilogramsInput, load: _t.MassInput, reps: _t.Reps) -> float:
    """What slope follows from one set to failure and a known one-repetition maximum?

    # Formula
    Exponential `b = ln(E / w) / (r - 1)`; anchored line `k = (E / w - 1) / (r - 1)`.

    # Domain
    More than one repetition; a load below the maximum. One set says little: prefer
    `own_curve`(super::own_curve()).

    # Errors
    `reps_out_of_domain` at or below 1 repetition; `load_out_of_domain` unless `0 < w < E`.

    # Source
    Follows from the form (row `one_rm.own_slope`).
    """
    given: dict[str, Any] = {"form": form, "one_rm": one_rm, "load": load, "reps": reps}
    return _call("one_rm.own_slope", given)  # type: ignore[no-any-return]


def garcia_ramos_2018(*, lighter: _t.LoadVelocityInput, heavier: _t.LoadVelocityInput, velocity_at_one_rm: float) -> _t.VelocityProfile:
    """What could be lifted once, from two loads moved as fast as possible?

    # Formula
    `s = (v2 - v1) / (L2 - L1)`, `E = L1 + (v_max - v1) / s`; loads in kg, velocities in m/s, `v_max` the velocity
    of a maximum. The load at no velocity is `L1 - v1 / s`.

    # Domain
    Loads of about 40 and 90 % of the maximum; the line must fall and both must be faster than `v_max`. The interval
    is that of `BANYARD_2017_VELOCITY_ERROR` on the logarithm, at 95 %.

    # Errors
    `load_out_of_domain` at or below 0 kg or where both loads are the same; `velocity_out_of_domain` where the line
    does not fall, a point is no faster than `v_max`, or a velocity lies outside 0.01 to 10 m/s.

    # Source
    Garcia-Ramos & Jaric 2018 (row `one_rm.garcia_ramos_2018`).

    # Known how
    Read in the work or in its abstract.

    Source: Garcia-Ramos A, Jaric S. Two-point method: a quick and fatigue-free procedure for assessment of muscle mechanical capacities and the 1 repetition maximum. Strength Cond J 2018;40(2):54-66
    """
    given: dict[str, Any] = {"lighter": lighter, "heavier": heavier, "velocity_at_one_rm": velocity_at_one_rm}
    return _call("one_rm.garcia_ramos_2018", given)  # type: ignore[no-any-return]


def velocity_profile(*, points: Sequence[_t.LoadVelocityInput], velocity_at_one_rm: float, level: float) -> _t.VelocityProfile:
    """What could be lifted once, from several loads moved as fast as possible?

    # Formula
    Least squares line `v = i + s L`; `E = (v_max - i) / s`, load at no velocity `-i / s`.

    # Domain
    Three points or more, spread over at least 40 % of the maximum. As `garcia_ramos_2018`; `level` is that of the
    interval.

    # Errors
    `not_enough_data` below three points; `not_identified` where all loads are the same; otherwise as
    `garcia_ramos_2018`; `out_of_range` for the level or more than 100 points.

    # Source
    Garcia-Ramos & Jaric 2018; least squares (row `one_rm.velocity_profile`).

    # Known how
    Read in the work or in its abstract.

    Source: Garcia-Ramos A, Jaric S. Two-point method: a quick and fatigue-free procedure for assessment of muscle mechanical capacities and the 1 repetition maximum. Strength Cond J 2018;40(2):54-66
    """
    given: dict[str, Any] = {"points": points, "velocity_at_one_rm": velocity_at_one_rm, "level": level}
    return _call("one_rm.velocity_profile", given)  # type: ignore[no-any-return]


def velocity_at_one_rm(*, lift: _t.VelocityLift) -> _t.MaximumVelocity:
    """How fast does the bar move at a maximum, in people who were measured?

    # Formula
    A table: bench press 0.16 (SD 0.04), free 0.17; full squat 0.32 (0.03), free back squat 0.24 (0.06); leg press
    0.21 (0.06); hex deadlift 0.25; prone bench pull 0.52; m/s.

    # Domain
    Each its own exercise, device, variable and group. From one test to the next it is poorly repeatable (ICC 0.42,
    CV 22.5 %: Banyard et al. 2017).

    # Errors
    None beyond the types.

    # Source
    The papers named at `VelocityLift` (row `one_rm.velocity_at_one_rm`).

    # Known how
    Read in the work or in its abstract. Recalled, not read again: 0.52 m/s of the prone bench pull.

    Source: Banyard HG, Nosaka K, Haff GG. Reliability and validity of the load-velocity relationship to predict the 1RM back squat. J Strength Cond Res 31:1897-1904, 2017
    """
    given: dict[str, Any] = {"lift": lift}
    return _call("one_rm.velocity_at_one_rm", given)  # type: ignore[no-any-return]


def velocity_loss(*, fastest: float, last: float) -> float:
    """By how much did the bar slow down within a set?

    # Formula
    `100 (v_fastest - v_last) / v_fastest`, in percent.

    # Domain
    Repetitions of one set, each as fast as possible. The same loss leaves different people with different reserves.

    # Errors
    `velocity_out_of_domain` outside 0.01 to 10 m/s, or where the last is faster than the fastest.

    # Source
    Sanchez-Medina & Gonzalez-Badillo 2011 (row `one_rm.velocity_loss`).

    # Known how
    Read in the work or in its abstract.

    Source: Sanchez-Medina L, Gonzalez-Badillo JJ. Velocity loss as an indicator of neuromuscular fatigue during resistance training. Med Sci Sports Exerc 2011;43(9):1725-1734
    """
    given: dict[str, Any] = {"fastest": fastest, "last": last}
    return _call("one_rm.velocity_loss", given)  # type: ignore[no-any-return]


def gonzalez_badillo_2010(*, variable: _t.MeanVelocity, velocity: float) -> _t.Fraction:
    """What part of the maximum was this, by the bar's velocity in the bench press?

    # Formula
    Mean propulsive `P = 8.4326 v^2 - 73.501 v + 112.33`, mean velocity `P = 7.5786 v^2 - 75.865 v + 113.02`;
    `P` in percent, `v` in m/s.

    # Domain
    The velocities that give 30 to 104 %, on the falling branch. 120 trained men, bench press, every
    repetition as fast as possible, one device. For another exercise, device or person it is a guess.

    # Errors
    `velocity_out_of_domain` outside it, the rising branch included.

    # Source
    Gonzalez-Badillo & Sanchez-Medina 2010 (row `one_rm.gonzalez_badillo_2010`).

    # Known how
    Recalled, not read again: take the numbers with care.

    Source: Gonzalez-Badillo JJ, Sanchez-Medina L. Movement velocity as a measure of loading intensity in resistance training. Int J Sports Med 2010;31:347-352
    """
    given: dict[str, Any] = {"variable": variable, "velocity": velocity}
    return _call("one_rm.gonzalez_badillo_2010", given)  # type: ignore[no-any-return]


def gonzalez_badillo_2010_velocity(*, variable: _t.MeanVelocity, fraction: _t.Fraction) -> float:
    """How fast should the bar move at this part of the maximum in the bench press?

    # Formula
    The root of `gonzalez_badillo_2010` on the falling branch; m/s.

    # Domain
    As `gonzalez_badillo_2010`, 30 to 104 %.

    # Errors
    `percent_out_of_domain` outside it.

    # Source
    Gonzalez-Badillo & Sanchez-Medina 2010 solved for the velocity (row `one_rm.gonzalez_badillo_2010_velocity`).

    # Known how
    Recalled, not read again: take the numbers with care.

    Source: Gonzalez-Badillo JJ, Sanchez-Medina L. Movement velocity as a measure of loading intensity in resistance training. Int J Sports Med 2010;31:347-352
    """
    given: dict[str, Any] = {"variable": variable, "fraction": fraction}
    return _call("one_rm.gonzalez_badillo_2010_velocity", given)  # type: ignore[no-any-return]


def sanchez_medina_2014(*, lift: _t.BenchLift, velocity: float) -> _t.Fraction:
    """What part of the maximum was this, by the bar's velocity in the bench press and prone bench pull?

    # Formula
    Bench press `P = 11.4196 v^2 - 81.904 v + 114.03`, prone bench pull `P = 18.5797 v^2 - 104.182 v +
    147.94`; `P` in percent, `v` in m/s.

    # Domain
    The velocities that give 30 to 104 %, on the falling branch. 75 athletes, bench press and prone bench
    pull, every repetition as fast as possible, one device. For another exercise, device or person it is a
    guess.

    # Errors
    `velocity_out_of_domain` outside it, the rising branch included.

    # Source
    Sanchez-Medina et al. 2014 (row `one_rm.sanchez_medina_2014`).

    # Known how
    Recalled, not read again: take the numbers with care.

    Source: Sanchez-Medina L, Gonzalez-Badillo JJ, Perez CE, Pallares JG. Velocity- and power-load relationships of the bench pull vs. bench press exercises. Int J Sports Med 2014;35:209-216
    """
    given: dict[str, Any] = {"lift": lift, "velocity": velocity}
    return _call("one_rm.sanchez_medina_2014", given)  # type: ignore[no-any-return]


def sanchez_medina_2014_velocity(*, lift: _t.BenchLift, fraction: _t.Fraction) -> float:
    """How fast should the bar move at this part of the maximum in the bench press and prone bench pull?

    # Formula
    The root of `sanchez_medina_2014` on the falling branch; m/s.

    # Domain
    As `sanchez_medina_2014`, 30 to 104 %.

    # Errors
    `percent_out_of_domain` outside it.

    # Source
    Sanchez-Medina et al. 2014 solved for the velocity (row `one_rm.sanchez_medina_2014_velocity`).

    # Known how
    Recalled, not read again: take the numbers with care.

    Source: Sanchez-Medina L, Gonzalez-Badillo JJ, Perez CE, Pallares JG. Velocity- and power-load relationships of the bench pull vs. bench press exercises. Int J Sports Med 2014;35:209-216
    """
    given: dict[str, Any] = {"lift": lift, "fraction": fraction}
    return _call("one_rm.sanchez_medina_2014_velocity", given)  # type: ignore[no-any-return]


def sanchez_medina_2017(*, variable: _t.MeanVelocity, velocity: float) -> _t.Fraction:
    """What part of the maximum was this, by the bar's velocity in the full squat?

    # Formula
    Mean propulsive `P = -5.961 v^2 - 50.71 v + 117.0`, mean velocity `P = -12.87 v^2 - 46.31 v + 116.3`; `P`
    in percent, `v` in m/s.

    # Domain
    The velocities that give 30 to 104 %, on the falling branch. 80 men, full squat on a guided bar, every
    repetition as fast as possible, one device. For another exercise, device or person it is a guess.

    # Errors
    `velocity_out_of_domain` outside it, the rising branch included.

    # Source
    Sanchez-Medina et al. 2017 (row `one_rm.sanchez_medina_2017`).

    # Known how
    Recalled, not read again: take the numbers with care.

    Source: Sanchez-Medina L, Pallares JG, Perez CE, Moran-Navarro R, Gonzalez-Badillo JJ. Estimation of relative load from bar velocity in the full back squat exercise. Sports Med Int Open 2017;1:E80-E88
    """
    given: dict[str, Any] = {"variable": variable, "velocity": velocity}
    return _call("one_rm.sanchez_medina_2017", given)  # type: ignore[no-any-return]


def sanchez_medina_2017_velocity(*, variable: _t.MeanVelocity, fraction: _t.Fraction) -> float:
    """How fast should the bar move at this part of the maximum in the full squat?

    # Formula
    The root of `sanchez_medina_2017` on the falling branch; m/s.

    # Domain
    As `sanchez_medina_2017`, 30 to 104 %.

    # Errors
    `percent_out_of_domain` outside it.

    # Source
    Sanchez-Medina et al. 2017 solved for the velocity (row `one_rm.sanchez_medina_2017_velocity`).

    # Known how
    Recalled, not read again: take the numbers with care.

    Source: Sanchez-Medina L, Pallares JG, Perez CE, Moran-Navarro R, Gonzalez-Badillo JJ. Estimation of relative load from bar velocity in the full back squat exercise. Sports Med Int Open 2017;1:E80-E88
    """
    given: dict[str, Any] = {"variable": variable, "fraction": fraction}
    return _call("one_rm.sanchez_medina_2017_velocity", given)  # type: ignore[no-any-return]


def typical_error(*, one_rm: _t.KilogramsInput, cv: float) -> _t.Kilograms:
    """By how much does a maximum of this size wander from day to day?

    # Formula
    `TE = CV E`; `CV` coefficient of variation (0.042 for 4.2 %), `E` maximum in kg.

    # Domain
    Published: `GRGIC_2020_CV`(super::GRGIC_2020_CV) over 32 studies,
    `BANYARD_2017_CV`(super::BANYARD_2017_CV) for trained men; best is the lifter's own.

    # Errors
    `out_of_range` for a coefficient at or below 0 or above 0.5; `load_out_of_domain` at or below 0 kg.

    # Source
    Hopkins 2000 (row `one_rm.typical_error`).

    # Known how
    Recalled, not read again: take the numbers with care.

    Source: Hopkins WG. Measures of reliability in sports medicine and science. Sports Med 30:1-15, 2000
    """
    given: dict[str, Any] = {"one_rm": one_rm, "cv": cv}
    return _call("one_rm.typical_error", given)  # type: ignore[no-any-return]


def smallest_real_change(*, one_rm: _t.KilogramsInput, cv: float, level: float) -> _t.Kilograms:
    """Which change of a maximum is more than noise?

    # Formula
    `z sqrt(2) CV E`, `z` the two-sided normal quantile of `level` (1.96 at 95 %).

    # Domain
    Two single tests of one person. At 4.2 % and 95 % it is 11.6 % of the maximum: most real changes within a
    training block are smaller than one pair of tests can show.

    # Errors
    `out_of_range` for the coefficient or the level; `load_out_of_domain` at or below 0 kg.

    # Source
    Hopkins 2000, limits for a change (row `one_rm.smallest_real_change`).

    # Known how
    Recalled, not read again: take the numbers with care.

    Source: Hopkins WG. Measures of reliability in sports medicine and science. Sports Med 30:1-15, 2000
    """
    given: dict[str, Any] = {"one_rm": one_rm, "cv": cv, "level": level}
    return _call("one_rm.smallest_real_change", given)  # type: ignore[no-any-return]


def worthwhile_change(*, between_people: _t.KilogramsInput) -> _t.Kilograms:
    """Which change of a maximum is worth minding, measured against how people differ?

    # Formula
    `0.2 SD`, `SD` the standard deviation of maxima between people, kg.

    # Domain
    A convention: it depends on whom you compare, and is often smaller than one test can show.

    # Errors
    `out_of_range` at or below 0 kg.

    # Source
    Hopkins 2004 (row `one_rm.worthwhile_change`).

    # Known how
    Read in the work or in its abstract.

    Source: Hopkins WG. How to interpret changes in an athletic performance test. Sportscience 8:1-7, 2004
    """
    given: dict[str, Any] = {"between_people": between_people}
    return _call("one_rm.worthwhile_change", given)  # type: ignore[no-any-return]


def strength_change(*, before: _t.KilogramsInput, after: _t.KilogramsInput, cv: float, worthwhile: _t.KilogramsInput, level: float) -> _t.StrengthChange:
    """The maximum was tested twice: did this person really change, and does it matter?

    # Formula
    `change = after - before`; interval `change +- z sqrt(2) TE` with `TE = CV before`; real where the change is at
    least `z sqrt(2) TE` either way; chances as `statistics.change_chances` with the worthwhile change.

    # Domain
    Two single tests, or two estimates with a coefficient of variation that fits estimates (larger). Early in
    training a rise is mostly learning of the test: untrained older women rose 22 % on testing alone (Ploutz-Snyder
    & Giamis 2001).

    # Errors
    `out_of_range` for coefficient, level or worthwhile change; `load_out_of_domain` at or below 0 kg.

    # Source
    The limits are those of Hopkins 2000, the chances those of Hopkins 2004; both recalled.

    # Known how
    Recalled, not read again: take the numbers with care.

    Source: Hopkins WG. Measures of reliability in sports medicine and science. Sports Med 30:1-15, 2000
    """
    given: dict[str, Any] = {"before": before, "after": after, "cv": cv, "worthwhile": worthwhile, "level": level}
    return _call("one_rm.strength_change", given)  # type: ignore[no-any-return]
