"""The functions and defaults of `horizon`. Generated from the library; do not edit."""

# ruff: noqa
from __future__ import annotations

from collections.abc import Mapping, Sequence
from typing import Any

from bismar import types as _t
from bismar._native import call as _call

card_settings_default: _t.CardSettings
"""What the yearly card reminds of, and how often, where a coach names nothing else.

Source: This project's own choice; a parameter.
"""
maintenance_weeks: float
"""For how many weeks one session a week with one set an exercise was seen to hold strength, load kept.

# Known how
Read in the work or in its abstract.

Source: Spiering BA, Mujika I, Sharp MA, Foulis SA. Maintaining physical performance: the minimal dose of exercise needed to preserve endurance and strength over time. J Strength Cond Res 2021;35(5):1449-1458
"""
scenario_settings_default: _t.ScenarioSettings
"""Seed, courses, level and floor of drawn courses where a caller names none.

Source: This project's own choice; a parameter.
"""
force_exponent: float
"""Power of body mass that maximal force grows with, so weights lifted and dynamometer readings.

# Known how
Read in the work or in its abstract.

Source: Jaric S. Muscle strength testing: use of normalisation for body size. Sports Medicine 2002;32(10):615-631
"""
torque_exponent: float
"""Power of body mass that maximal torque about a joint grows with.

# Known how
Read in the work or in its abstract.

Source: Jaric S. Muscle strength testing: use of normalisation for body size. Sports Medicine 2002;32(10):615-631
"""

_CONSTANTS = {
    "card_settings_default": "horizon.card_settings_default",
    "maintenance_weeks": "horizon.maintenance_weeks",
    "scenario_settings_default": "horizon.scenario_settings_default",
    "force_exponent": "horizon.force_exponent",
    "torque_exponent": "horizon.torque_exponent",
}


def __getattr__(name: str) -> Any:
    if name in _CONSTANTS:
        return _call(_CONSTANTS[name], {})
    raise AttributeError(f"module {__name__!r} has no attribute {name!r}")


def carried_forward(*, strength: float, earlier: _t.Age, later: _t.Age, curve: _t.Curve) -> _t.Carried:
    """What is left at a later age of a strength measured now, along one curve?

    # Formula
    `S(b) = S(a) f(b) / f(a)`; `f` the part left at an age by the curve, `a` the earlier age, `b` the later.

    # Domain
    Ages of the curve. Any unit of strength. Arithmetic over a curve, not a prognosis.

    # Errors
    `ages_reversed`; `age_out_of_domain` outside the curve; `curve_broken`; `strength_used_up`;
    `out_of_range` for a strength at or below 0.

    # Source
    Arithmetic (row `horizon.carried_forward`).
    """
    given: dict[str, Any] = {"strength": strength, "earlier": earlier, "later": later, "curve": curve}
    return _call("horizon.carried_forward", given)  # type: ignore[no-any-return]


def carried_back(*, strength: float, earlier: _t.Age, later: _t.Age, curve: _t.Curve) -> _t.Carried:
    """What strength at an earlier age leaves this strength at a later one? The exact inverse of carrying forward.

    # Formula
    `S(a) = S(b) f(a) / f(b)`; `f` the part left at an age by the curve, `a` the earlier age, `b` the later.

    # Domain
    Ages of the curve. Any unit of strength.

    # Errors
    `ages_reversed`; `age_out_of_domain` outside the curve; `curve_broken`; `strength_used_up`;
    `out_of_range` for a strength at or below 0.

    # Source
    Arithmetic (row `horizon.carried_back`).
    """
    given: dict[str, Any] = {"strength": strength, "earlier": earlier, "later": later, "curve": curve}
    return _call("horizon.carried_back", given)  # type: ignore[no-any-return]


def annual_loss_compound(*, total_loss: float, years: float) -> _t.AnnualLoss:
    """What yearly part of the strength then present makes up this total loss?

    # Formula
    `r = 1 - (1 - L)^(1/n)`; `L` total loss as a part of the start, `n` years.

    # Domain
    `L` from 0 to below 1; more than 0 and at most 120 years. For compound curves only; see
    `annual_loss_linear` for lines.

    # Errors
    `out_of_range`.

    # Source
    Arithmetic (row `horizon.annual_loss_compound`).
    """
    given: dict[str, Any] = {"total_loss": total_loss, "years": years}
    return _call("horizon.annual_loss_compound", given)  # type: ignore[no-any-return]


def annual_loss_linear(*, total_loss: float, years: float) -> _t.AnnualLoss:
    """What yearly part of the strength at the start makes up this total loss?

    # Formula
    `r = L / n`; `L` total loss as a part of the start, `n` years.

    # Domain
    `L` from 0 to below 1; more than 0 and at most 120 years. For lines only; see `annual_loss_compound`.

    # Errors
    `out_of_range`.

    # Source
    Arithmetic (row `horizon.annual_loss_linear`).
    """
    given: dict[str, Any] = {"total_loss": total_loss, "years": years}
    return _call("horizon.annual_loss_linear", given)  # type: ignore[no-any-return]


def part_of_peak(*, age: _t.Age, zero: _t.Age, time_constant: float) -> float:
    """What part of the peak is left at an age, by the shape fitted to masters records?

    # Formula
    `y = 1 - exp((T - T0) / tau)`; `T` age, `T0` the age at which nothing is left, `tau` in years.

    # Domain
    Masters records of many sports, records of the thirties as the baseline. The fitted `T0` and `tau` were not
    seen, so both are the caller's.

    # Errors
    `strength_used_up` from `T0` on; `out_of_range`.

    # Source
    Baker and Tang 2010 (row `horizon.part_of_peak`).

    # Known how
    Read in the work or in its abstract.

    Source: Baker AB, Tang YQ. Aging performance for masters records in athletics, swimming, rowing, cycling, triathlon, and weightlifting. Experimental Aging Research 2010;36(4):453-477
    """
    given: dict[str, Any] = {"age": age, "zero": zero, "time_constant": time_constant}
    return _call("horizon.part_of_peak", given)  # type: ignore[no-any-return]


def grip_centiles(*, age: _t.Age, sex: _t.Sex | None = None) -> _t.GripCentiles:
    """How strong is the grip of people of this age?

    # Formula
    A table at every fifth year from 20 to 90, read in a straight line between its rows; kg.

    # Domain
    20 to 90 years; British studies, cross-sectional. Without a sex each centile is the range over both.

    # Errors
    `age_out_of_domain`.

    # Source
    Dodds and others 2014; the rows are equal in public copies, the peak medians (51 and 31 kg) were read (row
    `horizon.grip_centiles`).

    # Known how
    Not read in the work itself; copies seen: two public code files for men, one for women.

    Source: Dodds RM, Syddall HE, Cooper R, et al. Grip strength across the life course: normative data from twelve British studies. PLoS ONE 2014;9(12):e113637
    """
    given: dict[str, Any] = {"age": age}
    if sex is not None:
        given["sex"] = sex
    return _call("horizon.grip_centiles", given)  # type: ignore[no-any-return]


def grip_t_score(*, grip: float, sex: _t.Sex | None = None) -> _t.GripScore:
    """How far is this grip from that of young adults?

    # Formula
    `T = (grip - mean) / SD`, kg; mean and SD at the peak: 51.9 (9.9) men, 31.4 (6.1) women. The authors call a
    grip weak from 2.5 SD below.

    # Domain
    Adults; above 0 to 1000 kg. Without a sex, the range over both.

    # Errors
    `out_of_range`.

    # Source
    Dodds and others 2014, recalled (row `horizon.grip_t_score`).

    # Known how
    Recalled, not read again: take the numbers with care.

    Source: Dodds RM, Syddall HE, Cooper R, et al. Grip strength across the life course: normative data from twelve British studies. PLoS ONE 2014;9(12):e113637
    """
    given: dict[str, Any] = {"grip": grip}
    if sex is not None:
        given["sex"] = sex
    return _call("horizon.grip_t_score", given)  # type: ignore[no-any-return]


def planning_bands(*, training: _t.Training) -> list[_t.PlanningBand]:
    """How fast may strength fall at each age, slow, middle and fast?

    # Formula
    A table by decade of age, compound yearly losses: a judgement over the published studies, which disagree.
    All three are shown; use the band, not one rate.

    # Domain
    30 to 90 years, both sexes together. The fastest figure for untrained people above 80 is open-ended.

    # Errors
    None.

    # Source
    Our choice, over the studies listed in `Study` (row `horizon.planning_bands`).
    """
    given: dict[str, Any] = {"training": training}
    return _call("horizon.planning_bands", given)  # type: ignore[no-any-return]


def projection(*, strength: float, from_: _t.Age, to: _t.Age, outlook: _t.Outlook, sex: _t.Sex | None = None) -> _t.Projection:
    """What would be left, or would have been there, of this strength at another age?

    # Formula
    `S(b) = S(a) f(b) / f(a)` along each curve of the outlook; the band is what the curves span. Forward and
    back are exact inverses curve by curve.

    # Domain
    Ages of the outlook; any unit of strength. Not a prognosis. Without a sex the band covers both, and an
    outlook that measured one sex only is refused.

    # Errors
    `age_out_of_domain`; `sex_needed`; `not_measured_in_sex`; `out_of_range` for a strength at or below 0;
    `curve_broken` and `strength_used_up` for an own outlook.

    # Source
    Arithmetic over the outlook named in the answer (row `horizon.projection`).
    """
    given: dict[str, Any] = {"strength": strength, "from": from_, "to": to, "outlook": outlook}
    if sex is not None:
        given["sex"] = sex
    return _call("horizon.projection", given)  # type: ignore[no-any-return]


def against_expectation(*, then: float, age_then: _t.Age, now: float, age_now: _t.Age, outlook: _t.Outlook, sex: _t.Sex | None = None) -> _t.AgainstExpectation:
    """Is holding this strength more than the years alone would have left?

    # Formula
    `ratio = now / (then x f(age now) / f(age then))` along each curve of the outlook.

    # Domain
    Ages of the outlook. Holding the same load for ten years gives a ratio above 1 wherever the model falls.

    # Errors
    As `projection`; `ages_reversed`.

    # Source
    Arithmetic over the outlook named in the answer (row `horizon.against_expectation`).
    """
    given: dict[str, Any] = {"then": then, "age_then": age_then, "now": now, "age_now": age_now, "outlook": outlook}
    if sex is not None:
        given["sex"] = sex
    return _call("horizon.against_expectation", given)  # type: ignore[no-any-return]


def years_to_floor(*, strength: float, floor: float, loss: float) -> _t.SteadyLoss:
    """At a steady yearly loss, in how many years does this strength fall to the floor?

    # Formula
    `n = ln(T / S) / ln(1 - r)`; `S` strength, `T` floor in the same unit, `r` yearly loss as a part.

    # Domain
    Strength and floor above 0; loss below 1. At a loss of 0, or a gain, there is no crossing.

    # Errors
    `out_of_range`.

    # Source
    Arithmetic (row `horizon.years_to_floor`).
    """
    given: dict[str, Any] = {"strength": strength, "floor": floor, "loss": loss}
    return _call("horizon.years_to_floor", given)  # type: ignore[no-any-return]


def floor_crossing(*, strength: float, floor: float, lifter: _t.Person, today: _t.Day, outlook: _t.Outlook) -> _t.FloorCrossing:
    """If nothing but the years worked on this strength, in which year would it meet the floor?

    # Formula
    The first age `x` with `S f(x) / f(now) <= T` along each curve of the outlook, and its calendar year.

    # Domain
    Strength, where higher is better, from today to the last age of the outlook. Not a prognosis.

    # Errors
    `age_out_of_domain`; `sex_needed`; `not_measured_in_sex`; `out_of_range`; `ages_reversed` for a birth after
    today.

    # Source
    Arithmetic over the outlook named in the answer (row `horizon.floor_crossing`).
    """
    given: dict[str, Any] = {"strength": strength, "floor": floor, "lifter": lifter, "today": today, "outlook": outlook}
    return _call("horizon.floor_crossing", given)  # type: ignore[no-any-return]


def scenario(*, strength: float, now: _t.Age, phases: Sequence[_t.Phase], outlook: _t.Outlook, sex: _t.Sex | None = None, settings: _t.ScenarioSettings) -> _t.ScenarioBands:
    """What if strength is held, gained, lost for a while, or left to the years?

    # Formula
    Each course draws one place between the slowest and the fastest fall of the outlook, one for gains and one for
    losses, and keeps them through life; places are drawn from triangles. The interval holds the middle part of
    the courses (quantiles by linear interpolation).

    # Domain
    1 to 32 phases in order of age, from now; the outlook is asked only for phases that decline. 10 to 5000
    courses. A sum over assumptions, not a prognosis.

    # Errors
    `ages_reversed`; `age_out_of_domain`; `sex_needed`; `not_measured_in_sex`; `out_of_range`; `not_enough_data`
    without a phase.

    # Source
    Our choice (row `horizon.scenario`).
    """
    given: dict[str, Any] = {"strength": strength, "now": now, "phases": phases, "outlook": outlook, "settings": settings}
    if sex is not None:
        given["sex"] = sex
    return _call("horizon.scenario", given)  # type: ignore[no-any-return]


def long_plan(*, floors: Sequence[_t.DatedFloor], lifter: _t.Person, today: _t.Day, outlook: _t.Outlook, gain: float | None = None) -> list[_t.FloorPlan]:
    """For strength that must still be there at a later age: what is needed now, what margin is left, and by when
    must a gain have been made?

    # Formula
    `needed = T f(now) / f(at)` along each curve of the outlook. With a yearly gain `g`: the gain is complete at
    the first age `x` with `S (1 + g)^(x - now) >= T f(x) / f(at)`; the latest start is the last age `s` with
    `S f(s) / f(now) (1 + g)^(at - s) >= T`.

    # Domain
    At most 64 floors, each at or after today's age; strength where higher is better; ages of the outlook; a gain
    above 0 and up to 1 a year. Trials of gain lasted weeks to a year: a gain over many years is an assumption.
    Not a prognosis.

    # Errors
    `ages_reversed` for a floor in the past; `age_out_of_domain`; `sex_needed`; `not_measured_in_sex`;
    `out_of_range`.

    # Source
    Arithmetic over the outlook named in each answer (row `horizon.long_plan`).
    """
    given: dict[str, Any] = {"floors": floors, "lifter": lifter, "today": today, "outlook": outlook}
    if gain is not None:
        given["gain"] = gain
    return _call("horizon.long_plan", given)  # type: ignore[no-any-return]


def floor_margin(*, result: float, floor: _t.Floor) -> _t.FloorMargin:
    """How far above this floor is the result?

    # Formula
    `margin = result - floor`, `ratio = result / floor`; for times `floor - result` and `floor / result`.

    # Domain
    Results from 0 (times: above 0). Below a floor is a reason to talk to a clinician, not a diagnosis.

    # Errors
    `out_of_range`; `not_finite`.

    # Source
    Arithmetic over the floor named (row `horizon.floor_margin`).
    """
    given: dict[str, Any] = {"result": result, "floor": floor}
    return _call("horizon.floor_margin", given)  # type: ignore[no-any-return]


def ewgsop2_floor(*, test: _t.FunctionTest, sex: _t.Sex | None = None) -> _t.Floor:
    """Below which result does the European consensus of 2019 speak of probable loss of muscle function?

    # Formula
    Grip below 27 kg (men), 16 kg (women); five chair rises in more than 15 s; limb lean mass over height squared
    below 7.0 (men), 5.5 kg/m2 (women); gait at or below 0.8 m/s; timed up-and-go from 20 s; short performance
    battery up to 8 points; 400 m from 6 minutes.

    # Domain
    Older adults. Without a sex, the range over both. Nothing here diagnoses: below a floor, talk to a clinician.

    # Errors
    `not_in_source` for a test the consensus has no cut-off for.

    # Source
    Cruz-Jentoft and others 2019, the cut-off points, as tables of later articles print them; battery and 400 m
    recalled (row `horizon.ewgsop2_floor`).

    # Known how
    Not read in the work itself; copies seen: tables of two later articles; the chair rises in one of them. Recalled, not read again: the battery and the walk of 400 m.

    Source: Cruz-Jentoft AJ, Bahat G, Bauer J, et al. Sarcopenia: revised European consensus on definition and diagnosis. Age and Ageing 2019;48(1):16-31
    """
    given: dict[str, Any] = {"test": test}
    if sex is not None:
        given["sex"] = sex
    return _call("horizon.ewgsop2_floor", given)  # type: ignore[no-any-return]


def fnih_floor(*, test: _t.FunctionTest, sex: _t.Sex | None = None) -> _t.Floor:
    """Below which grip or lean mass did the pooled American cohorts see weakness that matters?

    # Formula
    Grip below 26 kg (men), 16 kg (women); limb lean mass over body mass index below 0.789 (men), 0.512 m2
    (women).

    # Domain
    Older adults. Without a sex, the range over both. Nothing here diagnoses.

    # Errors
    `not_in_source` for other tests.

    # Source
    Studenski and others 2014, as a table of a later article prints it (row `horizon.fnih_floor`).

    # Known how
    Not read in the work itself; copies seen: one table of one later article.

    Source: Studenski SA, Peters KW, Alley DE, et al. The FNIH sarcopenia project: rationale, study description, conference recommendations, and final estimates. J Gerontol A 2014;69(5):547-558
    """
    given: dict[str, Any] = {"test": test}
    if sex is not None:
        given["sex"] = sex
    return _call("horizon.fnih_floor", given)  # type: ignore[no-any-return]


def rikli_jones_2013_floor(*, test: _t.FunctionTest, age: _t.Age, sex: _t.Sex | None = None) -> _t.Floor:
    """What should a person of this age manage to be on course to live independently late in life?

    # Formula
    A table by five years of age and sex: 30 s chair stand, 30 s arm curl, 6-minute walk, 2-minute step, 8-foot
    up-and-go.

    # Domain
    60 to 94 completed years, moderately functioning people. These standards are higher than the lower end of
    the normal range of the same authors. Without a sex, the range over both.

    # Errors
    `age_out_of_domain`; `not_in_source` for other tests.

    # Source
    Rikli and Jones 2013, recalled (row `horizon.rikli_jones_2013_floor`).

    # Known how
    Recalled, not read again: take the numbers with care.

    Source: Rikli RE, Jones CJ. Development and validation of criterion-referenced clinically relevant fitness standards for maintaining physical independence in later years. The Gerontologist 2013;53(2):255-267
    """
    given: dict[str, Any] = {"test": test, "age": age}
    if sex is not None:
        given["sex"] = sex
    return _call("horizon.rikli_jones_2013_floor", given)  # type: ignore[no-any-return]


def ploutz_snyder_2002_floor() -> _t.Floor:
    """Below which knee strength did rising, walking and stairs get hard?

    # Formula
    3.0 to 3.5 N m of isometric knee-extension torque for each kg of body mass; below 3.0 a substantial part had
    trouble.

    # Domain
    Both sexes, about 73. Another study of 33 adults found no threshold at all: thresholds belong to a
    population.

    # Errors
    None.

    # Source
    Ploutz-Snyder and others 2002, abstract (row `horizon.ploutz_snyder_2002_floor`).

    # Known how
    Read in the work or in its abstract.

    Source: Ploutz-Snyder LL, Manini T, Ploutz-Snyder RJ, Wolf DA. Functionally relevant thresholds of quadriceps femoris strength. J Gerontol A 2002;57(4):B144-B152
    """
    given: dict[str, Any] = {}
    return _call("horizon.ploutz_snyder_2002_floor", given)  # type: ignore[no-any-return]


def knee_torque_floor(*, body_mass: _t.MassInput) -> _t.Floor:
    """What knee-extension torque is that floor for a person of this mass?

    # Formula
    3.0 to 3.5 N m/kg times body mass in kg.

    # Domain
    Body mass 20 to 350 kg.

    # Errors
    `body_mass_out_of_domain`.

    # Source
    Arithmetic over Ploutz-Snyder and others 2002 (row `horizon.knee_torque_floor`).
    """
    given: dict[str, Any] = {"body_mass": body_mass}
    return _call("horizon.knee_torque_floor", given)  # type: ignore[no-any-return]


def cress_meyer_2003_floor(*, test: _t.FunctionTest) -> _t.Floor:
    """Below which capacity did adults of 65 to 97 live less independently?

    # Formula
    Peak oxygen uptake 20 mL/kg/min; knee-extension torque 2.5 N m/(kg/m).

    # Domain
    65 to 97 years, both sexes together.

    # Errors
    `not_in_source` for other tests.

    # Source
    Cress and Meyer 2003, abstract (row `horizon.cress_meyer_2003_floor`).

    # Known how
    Read in the work or in its abstract.

    Source: Cress ME, Meyer M. Maximal voluntary and functional performance levels needed for independence in adults aged 65 to 97 years. Physical Therapy 2003;83(1):37-48
    """
    given: dict[str, Any] = {"test": test}
    return _call("horizon.cress_meyer_2003_floor", given)  # type: ignore[no-any-return]


def chair_rise_points(*, seconds: float | None = None) -> float:
    """How many points do five chair rises give in the short performance battery?

    # Formula
    Up to 11.19 s 4, to 13.69 s 3, to 16.69 s 2, to 60 s 1; longer, or not able (no time given), 0.

    # Domain
    Older adults; 0.01 to 3600 s, read in hundredths.

    # Errors
    `out_of_range`.

    # Source
    The battery's protocol, recalled; the paper of 1994 is recalled to print tenths of a second (row
    `horizon.chair_rise_points`).

    # Known how
    Recalled, not read again: take the numbers with care.

    Source: Short Physical Performance Battery, protocol and score sheet with the walk of 4 m (National Institute on Aging); after Guralnik JM and others, J Gerontol 1994;49(2):M85-M94, who timed 8 feet
    """
    given: dict[str, Any] = {}
    if seconds is not None:
        given["seconds"] = seconds
    return _call("horizon.chair_rise_points", given)  # type: ignore[no-any-return]


def gait_points(*, seconds: float | None = None) -> float:
    """How many points does a walk of 4 m give in the short performance battery?

    # Formula
    Under 4.82 s 4, to 6.20 s 3, to 8.70 s 2, longer 1; not able (no time given) 0.

    # Domain
    Older adults, usual pace; 0.01 to 3600 s, read in hundredths.

    # Errors
    `out_of_range`.

    # Source
    The battery's protocol for 4 m, recalled; the paper of 1994 timed 8 feet and has limits of its own (row
    `horizon.gait_points`).

    # Known how
    Recalled, not read again: take the numbers with care.

    Source: Short Physical Performance Battery, protocol and score sheet with the walk of 4 m (National Institute on Aging); after Guralnik JM and others, J Gerontol 1994;49(2):M85-M94, who timed 8 feet
    """
    given: dict[str, Any] = {}
    if seconds is not None:
        given["seconds"] = seconds
    return _call("horizon.gait_points", given)  # type: ignore[no-any-return]


def bench_press_ratio(*, ratio: float, age: _t.Age, sex: _t.Sex | None = None) -> _t.CentileRange:
    """Where does a bench press of so many times body mass lie among people of this age?

    # Formula
    A table of thresholds of one-repetition maximum over body mass by age and sex; they sit at the 20th, 40th,
    60th, 80th and 95th centile.

    # Domain
    From 15 years; a bench press machine, one gymnasium, everyone of 60 and over together. Without a sex, the
    range over both.

    # Errors
    `age_out_of_domain` below 15; `out_of_range` for a ratio at or below 0.

    # Source
    Cooper Institute 2002; the thresholds as a college laboratory sheet prints them, the centiles of
    the bands recalled. The women's 50th, 70th
    and 90th centile as printed elsewhere fall into them (row `horizon.bench_press_ratio`).

    # Known how
    Not read in the work itself; copies seen: one college laboratory sheet. Recalled, not read again: the centiles of its bands.

    Source: The Cooper Institute. Physical Fitness Specialist Manual. Dallas, revised 2002
    """
    given: dict[str, Any] = {"ratio": ratio, "age": age}
    if sex is not None:
        given["sex"] = sex
    return _call("horizon.bench_press_ratio", given)  # type: ignore[no-any-return]


def leg_press_ratio(*, ratio: float, age: _t.Age, sex: _t.Sex | None = None) -> _t.CentileRange:
    """Where does a leg press of so many times body mass lie among people of this age?

    # Formula
    A table of centiles (10th to 90th) of one-repetition maximum over body mass by age and sex.

    # Domain
    From 20 years; one gymnasium, one kind of leg press, everyone of 60 and over together. Without a sex, the
    range over both.

    # Errors
    `age_out_of_domain` below 20; `out_of_range` for a ratio at or below 0.

    # Source
    Institute for Aerobics Research 1994, recalled (row `horizon.leg_press_ratio`).

    # Known how
    Recalled, not read again: take the numbers with care.

    Source: Institute for Aerobics Research, Dallas, 1994: leg press ratios, as guidelines for exercise testing reprint them
    """
    given: dict[str, Any] = {"ratio": ratio, "age": age}
    if sex is not None:
        given["sex"] = sex
    return _call("horizon.leg_press_ratio", given)  # type: ignore[no-any-return]


def machine_bench_press(*, load: _t.MassInput, sex: _t.Sex) -> _t.Kilograms:
    """What would this free-weight bench press be on the machine of the table?

    # Formula
    In pounds: men `U = 1.016 F + 18.41`, women `U = 0.848 F + 21.37`; `F` free weight, `U` machine.

    # Domain
    The one machine of the Cooper Institute's table.

    # Errors
    `load_out_of_domain` at or below 0 kg; `out_of_range` beyond 2000 kg.

    # Source
    Cooper Institute 2002 (row `horizon.machine_bench_press`).

    # Known how
    Not read in the work itself; copies seen: one college laboratory sheet.

    Source: The Cooper Institute. Physical Fitness Specialist Manual. Dallas, revised 2002
    """
    given: dict[str, Any] = {"load": load, "sex": sex}
    return _call("horizon.machine_bench_press", given)  # type: ignore[no-any-return]


def yearly_card(*, facts: _t.YearlyFactsInput, today: _t.Day, settings: _t.CardSettingsInput) -> _t.YearlyCard:
    """What is due this year: clearances, function tests, weighings, lifts to swap, gaps?

    # Formula
    Due = last done + days allowed; never done = due today. Lines by day, then by kind. A loss of body mass is the
    latest one against the highest within the days before it.

    # Domain
    At most 1000 entries a list. Gaps that are over are left out.

    # Errors
    `ages_reversed` for a thing done after today or a gap that ends before it begins; `out_of_range`.

    # Source
    Common practice; the days are parameters (row `horizon.yearly_card`).
    """
    given: dict[str, Any] = {"facts": facts, "today": today, "settings": settings}
    return _call("horizon.yearly_card", given)  # type: ignore[no-any-return]


def side_difference(*, right: float, left: float, test: _t.SideTest, scatter: float | None = None) -> _t.SideDifference:
    """How unequal are right and left, by the index recommended for this kind of test?

    # Formula
    Together: `100 (higher - lower) / (right + left)`; apart: `100 (1 - lower / higher)`; positive if the right
    side is better. The other indices stand beside it.

    # Domain
    Sides from 0, not both 0. The test's scatter is its coefficient of variation in percent. Thresholds such as
    15 % were not shown to foretell anything, and do not carry over from one index to another.

    # Errors
    `out_of_range` for a side below 0 or both 0, or a scatter outside 0 to 100; `not_finite`.

    # Source
    Bishop and others 2018, recalled (row `horizon.side_difference`).

    # Known how
    Recalled, not read again: take the numbers with care.

    Source: Bishop C, Read P, Lake J, Chavda S, Turner A. Interlimb asymmetries: understanding how to calculate differences from bilateral and unilateral tests. Strength Cond J 40(4):1-6, 2018
    """
    given: dict[str, Any] = {"right": right, "left": left, "test": test}
    if scatter is not None:
        given["scatter"] = scatter
    return _call("horizon.side_difference", given)  # type: ignore[no-any-return]


def trainability() -> list[_t.PublishedFigure]:
    """What did training add to the strength of older people?

    # Formula
    A list of published figures, each with its work, its people and its ends.

    # Domain
    People of about 50 and over, weeks to a year of training; the most frequent dose was never tried as a whole.

    # Errors
    None.

    # Source
    Each line names its work (row `horizon.trainability`).

    # Known how
    Read in the work or in its abstract. Recalled, not read again: the effects of 2 to 3 sets and of 7 to 9 repetitions.

    Source: Several works; each line names its own
    """
    given: dict[str, Any] = {}
    return _call("horizon.trainability", given)  # type: ignore[no-any-return]


def maintenance_dose() -> list[_t.PublishedFigure]:
    """How little keeps strength, and what does a break cost?

    # Formula
    A list of published figures, each with its work, its people and its ends.

    # Domain
    Weeks to a year.

    # Errors
    None.

    # Source
    Each line names its work (row `horizon.maintenance_dose`).

    # Known how
    Read in the work or in its abstract. Recalled, not read again: the strength lost after 4 weeks off at 90.

    Source: Several works; each line names its own
    """
    given: dict[str, Any] = {}
    return _call("horizon.maintenance_dose", given)  # type: ignore[no-any-return]


def published_declines() -> list[_t.PublishedFigure]:
    """How fast does strength fall, study by study, in untrained people and in lifters?

    # Formula
    A list of published figures, each with its work, its people and its ends. Rates that were printed by ethnic
    group are shown as the band they span.

    # Domain
    Each line's own. Following people shows a faster fall than comparing ages; records show survivors.

    # Errors
    None.

    # Source
    Each line names its work (row `horizon.published_declines`).

    # Known how
    Read in the work or in its abstract. Recalled, not read again: strength at 75 by Mitchell and others 2012; where the figures of von Haehling and others first stood.

    Source: Several works; each line names its own
    """
    given: dict[str, Any] = {}
    return _call("horizon.published_declines", given)  # type: ignore[no-any-return]


def everyday_tasks() -> list[_t.EverydayTask]:
    """Which everyday tasks might a person want to keep, and how heavy are they?

    # Formula
    A short list of examples with round figures. Weigh your own and use those.

    # Domain
    Examples; nobody was measured.

    # Errors
    None.

    # Source
    Our choice (row `horizon.everyday_tasks`).
    """
    given: dict[str, Any] = {}
    return _call("horizon.everyday_tasks", given)  # type: ignore[no-any-return]


def relative_effort(*, demand: float, capacity: float) -> _t.RelativeEffort:
    """What part of my strength does this task take?

    # Formula
    `E = demand / capacity`, `reserve = 1 - E`; both in the same unit.

    # Domain
    Demand from 0, capacity above 0, of the same movement.

    # Errors
    `out_of_range`.

    # Source
    Definition (row `horizon.relative_effort`).
    """
    given: dict[str, Any] = {"demand": demand, "capacity": capacity}
    return _call("horizon.relative_effort", given)  # type: ignore[no-any-return]


def effort_after_gain(*, effort: float, gain: float) -> _t.RelativeEffort:
    """What part of my strength would the task take after a gain?

    # Formula
    `E' = E / (1 + g)`; `E` effort now, `g` gain as a part of the strength now.

    # Domain
    Effort from 0 to 10; gain above -1 (a loss) to 10.

    # Errors
    `out_of_range`.

    # Source
    Arithmetic (row `horizon.effort_after_gain`).
    """
    given: dict[str, Any] = {"effort": effort, "gain": gain}
    return _call("horizon.effort_after_gain", given)  # type: ignore[no-any-return]


def hortobagyi_2003_efforts() -> list[_t.MovementEffort]:
    """How near to their maximum do old and young adults work when rising and on stairs?

    # Formula
    Knee extensors, part of the maximum, old and young: chair rise 0.80 and 0.42, stair ascent 0.78 and 0.54,
    stair descent 0.88 and 0.42.

    # Domain
    Two groups, old and young; a difference between groups, not a course of life.

    # Errors
    None.

    # Source
    Hortobagyi and others 2003, recalled (row `horizon.hortobagyi_2003_efforts`).

    # Known how
    Recalled, not read again: take the numbers with care.

    Source: Hortobagyi T, Mizelle C, Beam S, DeVita P. Old adults perform activities of daily living near their maximal capabilities. J Gerontol A 2003;58(5):M453-M460
    """
    given: dict[str, Any] = {}
    return _call("horizon.hortobagyi_2003_efforts", given)  # type: ignore[no-any-return]


def scaled_strength(*, load: _t.MassInput, body_mass: _t.MassInput, exponent: float) -> _t.ScaledStrength:
    """How strong is this lift for a body of this mass?

    # Formula
    `S / m^b`; `S` load in kg, `m` body mass in kg, `b` the exponent: 0.67 for loads and forces, 1 for torques.

    # Domain
    Body mass 20 to 350 kg. An exponent of 1 (plain ratio) makes heavy people look weaker than they are;
    leaner groups fit 0.66, fatter groups lower values.

    # Errors
    `load_out_of_domain` at or below 0 kg; `body_mass_out_of_domain`; `out_of_range` for an exponent outside
    0 to 1.

    # Source
    Jaric 2002 (row `horizon.scaled_strength`).

    # Known how
    Read in the work or in its abstract.

    Source: Jaric S. Muscle strength testing: use of normalisation for body size. Sports Medicine 2002;32(10):615-631
    """
    given: dict[str, Any] = {"load": load, "body_mass": body_mass, "exponent": exponent}
    return _call("horizon.scaled_strength", given)  # type: ignore[no-any-return]


def equivalent_load(*, load: _t.MassInput, body_mass: _t.MassInput, other_body_mass: _t.MassInput, exponent: float) -> _t.Kilograms:
    """What load would be the same feat for a person of another body mass?

    # Formula
    `L2 = L1 (m2 / m1)^b`; loads and masses in kg, `b` the exponent.

    # Domain
    Both body masses 20 to 350 kg.

    # Errors
    `load_out_of_domain` at or below 0 kg; `body_mass_out_of_domain`; `out_of_range` for an exponent outside
    0 to 1.

    # Source
    Jaric 2002; follows from the index by arithmetic (row `horizon.equivalent_load`).
    """
    given: dict[str, Any] = {"load": load, "body_mass": body_mass, "other_body_mass": other_body_mass, "exponent": exponent}
    return _call("horizon.equivalent_load", given)  # type: ignore[no-any-return]


def sinclair(*, total: _t.MassInput, body_mass: _t.MassInput, sex: _t.Sex, olympiad: _t.Olympiad) -> _t.Score:
    """What would this weightlifter total in the heaviest class, at the same ability?

    # Formula
    `total * 10^(A X^2)`, `X = log10(m / b)`; `m` body mass in kg, `A` and `b` of one Olympiad. From `b`
    upwards the coefficient is 1, and the answer carries the caution `counted_at_limit`.

    # Domain
    Two-lift totals. Body mass from 32 kg (men) or 28 kg (women), where the published tables begin.

    # Errors
    `load_out_of_domain` at or below 0 kg; `body_mass_out_of_domain`.

    # Source
    International Weightlifting Federation, by Olympiad (row `horizon.sinclair`). The pairs of 2001-2004 were
    read there, with a worked example; the men's pair of 2005-2008 is recalled (caution `source_not_read`); the
    others are equal in independent copies (`source_seen_in_copies`). Some copies print 135.390 kg as the men's
    `b` of 2001-2004; the federation's page says 157.141.

    # Known how
    Not read in the work itself; copies seen: three or more public code files and an encyclopedia. Recalled, not read again: the men's pair of 2005-2008.

    Source: International Weightlifting Federation. Sinclair coefficients, issued anew for each Olympiad
    """
    given: dict[str, Any] = {"total": total, "body_mass": body_mass, "sex": sex, "olympiad": olympiad}
    return _call("horizon.sinclair", given)  # type: ignore[no-any-return]


def ipf_gl_2020(*, total: _t.MassInput, body_mass: _t.MassInput, sex: _t.Sex, equipment: _t.Equipment, contest: _t.Contest) -> _t.Score:
    """How good is this powerlifting result against the best of that body mass?

    # Formula
    `total * 100 / (A - B e^(-C m))`; `m` body mass in kg, `A`, `B`, `C` by sex, equipment and contest.

    # Domain
    Body mass from 40 kg. "IPF points" may mean three different formulas; this is the one in force since
    1 May 2020.

    # Errors
    `load_out_of_domain` at or below 0 kg; `body_mass_out_of_domain` below 40 kg.

    # Source
    International Powerlifting Federation 2020; the coefficients are equal in independent copies (row
    `horizon.ipf_gl_2020`).

    # Known how
    Not read in the work itself; copies seen: three unrelated public code files.

    Source: International Powerlifting Federation. IPF GL coefficients, valid from 1 May 2020
    """
    given: dict[str, Any] = {"total": total, "body_mass": body_mass, "sex": sex, "equipment": equipment, "contest": contest}
    return _call("horizon.ipf_gl_2020", given)  # type: ignore[no-any-return]


def dots_2019(*, total: _t.MassInput, body_mass: _t.MassInput, sex: _t.Sex) -> _t.Score:
    """How good is this powerlifting total for this body mass, by the German federation's formula?

    # Formula
    `total * 500 / (A m^4 + B m^3 + C m^2 + D m + E)`; `m` body mass in kg, coefficients by sex.

    # Domain
    Body mass 40 to 210 kg (men), 40 to 150 kg (women). The formula counts a lifter beyond a limit as the limit;
    the answer then carries the caution `counted_at_limit`. 20 to 350 kg are taken.

    # Errors
    `load_out_of_domain` at or below 0 kg; `body_mass_out_of_domain`.

    # Source
    BVDK 2019-2020; coefficients and limits are equal in public copies, the issuing document was not seen (row
    `horizon.dots_2019`).

    # Known how
    Not read in the work itself; copies seen: public code files.

    Source: Bundesverband Deutscher Kraftdreikaempfer. DOTS formula, in use from 2019-2020
    """
    given: dict[str, Any] = {"total": total, "body_mass": body_mass, "sex": sex}
    return _call("horizon.dots_2019", given)  # type: ignore[no-any-return]


def wilks_1994(*, total: _t.MassInput, body_mass: _t.MassInput, sex: _t.Sex) -> _t.Score:
    """How good is this powerlifting total for this body mass, by the formula used until 2018?

    # Formula
    `total * 500 / (a + b m + c m^2 + d m^3 + e m^4 + f m^5)`; `m` body mass in kg, coefficients by sex.

    # Domain
    Body mass 40 to 202.1 kg (men), 40 to 154.9 kg (women): up to the turning point of the denominator.
    As recalled, no bias was found for bench press and total, and one against heavier lifters in the deadlift.

    # Errors
    `load_out_of_domain` at or below 0 kg; `body_mass_out_of_domain`.

    # Source
    Wilks 1994; the coefficients are equal in public copies, no printed document was seen (row
    `horizon.wilks_1994`).

    # Known how
    Not read in the work itself; copies seen: public code files.

    Source: Wilks R. Bodyweight formula for powerlifting, 1994; used by the International Powerlifting Federation until the end of 2018
    """
    given: dict[str, Any] = {"total": total, "body_mass": body_mass, "sex": sex}
    return _call("horizon.wilks_1994", given)  # type: ignore[no-any-return]


def wilks_2020(*, total: _t.MassInput, body_mass: _t.MassInput, sex: _t.Sex) -> _t.Score:
    """How good is this powerlifting total for this body mass, by the revised formula of 2020?

    # Formula
    `total * 600 / (a + b m + c m^2 + d m^3 + e m^4 + f m^5)`; `m` body mass in kg, coefficients by sex.

    # Domain
    Body mass 40 to 203.7 kg (men), 40 to 158 kg (women): up to the turning point of the denominator.
    Scores of 1994 and 2020 do not compare: the numerators differ.

    # Errors
    `load_out_of_domain` at or below 0 kg; `body_mass_out_of_domain`.

    # Source
    Wilks 2020; the coefficients are equal in public copies, no printed document was seen (row
    `horizon.wilks_2020`).

    # Known how
    Not read in the work itself; copies seen: public code files.

    Source: Wilks R. Bodyweight formula for powerlifting, revision of 2020
    """
    given: dict[str, Any] = {"total": total, "body_mass": body_mass, "sex": sex}
    return _call("horizon.wilks_2020", given)  # type: ignore[no-any-return]


def mcculloch(*, age: float) -> _t.AgeCoefficient:
    """What does a masters powerlifter's result count at this age?

    # Formula
    A table by completed years, 40 to 90; 1 from 24 to 39. The same for men and women.

    # Domain
    24 to 90 completed years.

    # Errors
    `age_out_of_domain`.

    # Source
    All 51 entries are equal in public copies; the issuing document was not seen (row `horizon.mcculloch`).

    # Known how
    Not read in the work itself; copies seen: public code files, compared entry by entry.

    Source: McCulloch age coefficients of masters powerlifting, in use at meets; the issuing document was not seen
    """
    given: dict[str, Any] = {"age": age}
    return _call("horizon.mcculloch", given)  # type: ignore[no-any-return]


def foster_junior_age(*, age: float) -> _t.AgeCoefficient:
    """What does a junior powerlifter's result count at this age?

    # Formula
    A table by completed years, 14 to 23.

    # Domain
    14 to 23 completed years.

    # Errors
    `age_out_of_domain`.

    # Source
    All 10 entries are equal in public copies; the issuing document was not seen (row `horizon.foster_junior_age`).

    # Known how
    Not read in the work itself; copies seen: public code files, compared entry by entry.

    Source: Foster age coefficients of junior powerlifting, in use at meets; the issuing document was not seen
    """
    given: dict[str, Any] = {"age": age}
    return _call("horizon.foster_junior_age", given)  # type: ignore[no-any-return]


def meltzer_faber(*, age: float, sex: _t.Sex) -> _t.AgeCoefficient:
    """What does a masters weightlifter's Sinclair total count at this age?

    # Formula
    A table by completed years, 30 to 90; masters score = total x Sinclair coefficient x age coefficient.

    # Domain
    Men, 30 to 90. Masters women have had a table of their own since 2019. It is not here: its document was not
    seen, and what is known of it disagrees (1.340 and 1.321 for the age of 50). Above 80 the factor rises faster
    than strength falls.

    # Errors
    `age_out_of_domain`; `not_measured_in_sex` for women.

    # Source
    All 61 entries are equal in four public copies; the issuing document was not seen (row
    `horizon.meltzer_faber`).

    # Known how
    Not read in the work itself; copies seen: four public code files, compared entry by entry.

    Source: Meltzer-Faber age coefficients of masters weightlifting, in use at meets; the issuing document was not seen
    """
    given: dict[str, Any] = {"age": age, "sex": sex}
    return _call("horizon.meltzer_faber", given)  # type: ignore[no-any-return]


def all_round_international(*, age: float) -> _t.AgeCoefficient:
    """What does an all-round lifter's result count at this age, by the international rule?

    # Formula
    1 % a year from 40, the year 40 itself included, and 2 % a year from 66; applied after the correction for
    body mass.

    # Domain
    40 to 90 completed years. Another page of the federation has the 2 % begin at 60; the dated congress text
    says 66.

    # Errors
    `age_out_of_domain`.

    # Source
    IAWA, congress text of 2009 (row `horizon.all_round_international`).

    # Known how
    Read in the work or in its abstract.

    Source: United States All-Round Weightlifting Association; International All-Round Weightlifting Association. Age correction (congress text of 2009)
    """
    given: dict[str, Any] = {"age": age}
    return _call("horizon.all_round_international", given)  # type: ignore[no-any-return]


def all_round_united_states(*, age: float) -> _t.AgeCoefficient:
    """What does an all-round lifter's result count at this age, by the rule of the United States?

    # Formula
    1 % a year from 40, the year 40 itself included; applied after the correction for body mass.

    # Domain
    40 to 90 completed years.

    # Errors
    `age_out_of_domain`.

    # Source
    USAWA (row `horizon.all_round_united_states`).

    # Known how
    Read in the work or in its abstract.

    Source: United States All-Round Weightlifting Association; International All-Round Weightlifting Association. Age correction (congress text of 2009)
    """
    given: dict[str, Any] = {"age": age}
    return _call("horizon.all_round_united_states", given)  # type: ignore[no-any-return]


def carried_by_coefficients(*, load: _t.MassInput, from_: float, to: float, rule: _t.AgeRule) -> _t.CarriedResult:
    """What result at another age would count the same, by a federation's age coefficients?

    # Formula
    `S(b) = S(a) c(a) / c(b)`; `c` the coefficient at a completed age. Works in both directions.

    # Domain
    Ages of the rule's table.

    # Errors
    `age_out_of_domain`; `load_out_of_domain` at or below 0 kg.

    # Source
    Arithmetic over the table named (row `horizon.carried_by_coefficients`).
    """
    given: dict[str, Any] = {"load": load, "from": from_, "to": to, "rule": rule}
    return _call("horizon.carried_by_coefficients", given)  # type: ignore[no-any-return]
