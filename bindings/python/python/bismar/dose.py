"""The functions and defaults of `dose`. Generated from the library; do not edit."""

# ruff: noqa
from __future__ import annotations

from collections.abc import Mapping, Sequence
from typing import Any

from bismar import types as _t
from bismar._native import call as _call

shank_and_foot_share: float
"""Part of body mass in both lower legs and feet, which a squat or a jump does not lift: 0.12, recalled. The
tables of segments give 0.114 for young men and 0.122 for young women.

# Known how
Recalled, not read again: take the numbers with care.

Source: Cormie P, McBride JM, McCaulley GO. The influence of body mass on calculation of power during lower-body resistance exercises. J Strength Cond Res 2007;21(4):1042
"""
push_up_start_share_gouvali_2005: float
"""Part of body weight that the hands hold at the start of a regular push-up: 0.664.

# Known how
Read in the work or in its abstract.

Source: Gouvali MK, Boudolos K. Dynamic and electromyographical analysis in variants of push-up exercise. J Strength Cond Res 2005;19(1):146-151
"""
standard_gravity: float
"""Standard acceleration of free fall in metres per second squared, exact.

# Known how
Read in the work or in its abstract.

Source: Thompson A, Taylor BN. Guide for the Use of the International System of Units. NIST Special Publication 811, 2008, appendix B; also Abramowitz M, Stegun IA, Handbook of Mathematical Functions, tables 2.4 and 2.5, p 8
"""
set_counting_default: _t.SetCounting
"""How much a set counts for a region that only helps, where a caller names nothing else.

Source: This project's own choice; a parameter.
"""
ratio_options_default: _t.RatioOptions
"""Which recent-versus-usual ratio is taken where a caller names none: the recent days lie outside the usual ones.

Source: This project's own choice; a parameter.
"""
band_options_default: _t.BandOptions
"""How the band over a lifter's own weeks is made where a caller names nothing else.

Source: This project's own choice; a parameter.
"""
easy_week_options_default: _t.EasyWeekOptions
"""When a week counts as easy, and after how many others the next may be thought of, where a caller names nothing
else.

Source: This project's own choice; a parameter.
"""

_CONSTANTS = {
    "shank_and_foot_share": "dose.shank_and_foot_share",
    "push_up_start_share_gouvali_2005": "dose.push_up_start_share_gouvali_2005",
    "standard_gravity": "dose.standard_gravity",
    "set_counting_default": "dose.set_counting_default",
    "ratio_options_default": "dose.ratio_options_default",
    "band_options_default": "dose.band_options_default",
    "easy_week_options_default": "dose.easy_week_options_default",
}


def __getattr__(name: str) -> Any:
    if name in _CONSTANTS:
        return _call(_CONSTANTS[name], {})
    raise AttributeError(f"module {__name__!r} has no attribute {name!r}")


def total_repetitions(*, sets: Sequence[_t.SetDoneInput]) -> float:
    """How many repetitions were done?

    # Formula
    `sum sets_i * reps_i`.

    # Domain
    Any sets; no sets are 0 repetitions.

    # Errors
    `load_out_of_domain` for a load below 0 kg.

    # Source
    Sheppard and Triplett 2016, step 6, volume.

    # Known how
    Read in the work or in its abstract.

    Source: Sheppard JM, Triplett NT. Program design for resistance training. In: Haff GG, Triplett NT (eds), Essentials of Strength Training and Conditioning, 4th ed. Human Kinetics 2016, ch 17
    """
    given: dict[str, Any] = {"sets": sets}
    return _call("dose.total_repetitions", given)  # type: ignore[no-any-return]


def volume_load(*, sets: Sequence[_t.SetDoneInput]) -> _t.Kilograms:
    """How much was lifted in all (tonnage)?

    # Formula
    `VL = sum sets_i * reps_i * load_i`, in kg. Added up exactly in nanograms, so pounds are converted once,
    not set by set.

    # Domain
    Loads of 0 kg and more. Proportional to work only while the height of a repetition stays the same; not
    comparable between exercises or between people (`Caution::SameLiftOnly`(crate::caution::Caution)).

    # Errors
    `load_out_of_domain` for a load below 0 kg.

    # Source
    Sheppard and Triplett 2016, step 6; Haff 2010.

    # Known how
    Read in the work or in its abstract.

    Source: Sheppard JM, Triplett NT. Program design for resistance training. In: Haff GG, Triplett NT (eds), Essentials of Strength Training and Conditioning, 4th ed. Human Kinetics 2016, ch 17
    """
    given: dict[str, Any] = {"sets": sets}
    return _call("dose.volume_load", given)  # type: ignore[no-any-return]


def average_load(*, sets: Sequence[_t.SetDoneInput]) -> _t.Kilograms:
    """How heavy was the average repetition (training intensity)?

    # Formula
    `VL / repetitions`, in kg.

    # Domain
    At least one repetition: without any there is no average, and 0 would be a lie.

    # Errors
    `no_repetitions`; `load_out_of_domain` for a load below 0 kg.

    # Source
    BMJ Military Health, table 1; the name after Haff 2010.

    # Known how
    Read in the work or in its abstract.

    Source: BMJ Military Health, an article on resistance training, table 1 (title not visible in the copy read)
    """
    given: dict[str, Any] = {"sets": sets}
    return _call("dose.average_load", given)  # type: ignore[no-any-return]


def relative_average_load(*, sets: Sequence[_t.SetDoneInput], one_rm: _t.MassInput) -> float:
    """What part of the one-repetition maximum was the average repetition?

    # Formula
    `(VL / repetitions) / 1RM`. Nothing is rounded on the way.

    # Domain
    At least one repetition, a maximum above 0 kg. It did not follow how hard sessions felt (r from -0.42 to
    0.33): it knows nothing of rests.

    # Errors
    `no_repetitions`; `load_out_of_domain`.

    # Source
    BMJ Military Health, table 1, which rounds midway and prints 57 % where 57.58 % follows.

    # Known how
    Read in the work or in its abstract.

    Source: BMJ Military Health, an article on resistance training, table 1 (title not visible in the copy read)
    """
    given: dict[str, Any] = {"sets": sets, "one_rm": one_rm}
    return _call("dose.relative_average_load", given)  # type: ignore[no-any-return]


def session_density(*, volume_load: _t.KilogramsInput, minutes: float) -> float:
    """How much was lifted per minute of the session?

    # Formula
    `VL / minutes`, in kg per minute.

    # Domain
    More than 0 minutes, at most a day.

    # Errors
    `out_of_range` at 0 minutes or over 1440; `load_out_of_domain` below 0 kg.

    # Source
    BMJ Military Health, table 1.

    # Known how
    Read in the work or in its abstract.

    Source: BMJ Military Health, an article on resistance training, table 1 (title not visible in the copy read)
    """
    given: dict[str, Any] = {"volume_load": volume_load, "minutes": minutes}
    return _call("dose.session_density", given)  # type: ignore[no-any-return]


def relative_volume(*, sets: Sequence[_t.RelativeSetInput]) -> float:
    """How many repetitions at the one-repetition maximum would be the same volume?

    # Formula
    `sum sets * reps * fraction of 1RM`; no unit. Equals volume load divided by 1RM.

    # Domain
    Fractions above 0 and at most 1.5.

    # Errors
    None of its own.

    # Source
    The two sessions of McBride et al. 2009: 4 x 10 at 75 %, 11 x 3 at 90 %.
    """
    given: dict[str, Any] = {"sets": sets}
    return _call("dose.relative_volume", given)  # type: ignore[no-any-return]


def relative_volume_load(*, sets: Sequence[_t.SetDoneInput], one_rm: _t.MassInput) -> float:
    """How large is the volume load against the lifter's own one-repetition maximum?

    # Formula
    `VL / 1RM`; no unit.

    # Domain
    A maximum above 0 kg. Both loads and maximum must be of the same lift.

    # Errors
    `load_out_of_domain`.

    # Source
    Follows from the definitions of volume load and of `relative_volume`.
    """
    given: dict[str, Any] = {"sets": sets, "one_rm": one_rm}
    return _call("dose.relative_volume_load", given)  # type: ignore[no-any-return]


def system_mass(*, load: _t.MassInput, body_mass: _t.MassInput, moved_share: float) -> _t.Kilograms:
    """What mass moves when the body is lifted together with the load?

    # Formula
    `load + moved_share * body mass`, in kg. In a squat or jump the moved share is 0.88 (all but lower legs
    and feet; recalled); in a deadlift or bench press it is 0 by convention.

    # Domain
    Shares from 0 to 1. Leaving body mass out shifts the load of best power and lowers the power.

    # Errors
    `load_out_of_domain`; `out_of_range` for the share.

    # Source
    Cormie, McBride and McCaulley 2007.

    # Known how
    Read in the work or in its abstract.

    Source: Cormie P, McBride JM, McCaulley GO. The influence of body mass on calculation of power during lower-body resistance exercises. J Strength Cond Res 2007;21(4):1042
    """
    given: dict[str, Any] = {"load": load, "body_mass": body_mass, "moved_share": moved_share}
    return _call("dose.system_mass", given)  # type: ignore[no-any-return]


def maximum_dynamic_strength_volume_load(*, sets: Sequence[_t.SetDoneInput], body_mass: _t.MassInput, still_share: float) -> _t.Kilograms:
    """How large is the volume load with the moved part of the body counted?

    # Formula
    `sum sets * reps * (body mass - still_share * body mass + load)`, in kg; `still_share` is the part of the
    body that stays down, 0.12 by the source (`SHANK_AND_FOOT_SHARE`).

    # Domain
    Exercises that lift the body: squat, jump, lunge. Without the body-mass term a session of jumps has a
    volume load of exactly 0.

    # Errors
    `load_out_of_domain`; `out_of_range` for the share.

    # Source
    McBride et al. 2009 (formula and 0.12 recalled).

    # Known how
    Recalled, not read again: take the numbers with care.

    Source: McBride JM, McCaulley GO, Cormie P, Nuzzo JL, Cavill MJ, Triplett NT. Comparison of methods to quantify volume during resistance exercise. J Strength Cond Res 2009;23(1):106-110
    """
    given: dict[str, Any] = {"sets": sets, "body_mass": body_mass, "still_share": still_share}
    return _call("dose.maximum_dynamic_strength_volume_load", given)  # type: ignore[no-any-return]


def segment_shares_de_leva_1996(*, table: _t.BodyTable) -> _t.SegmentShares:
    """What part of body mass is each segment?

    # Formula
    The published table.

    # Domain
    Young adults (students); nobody older was measured. The female column adds up to 0.9999 by rounding.

    # Errors
    None of its own.

    # Source
    de Leva 1996, as a handbook of a motion-analysis program reprints the table.

    # Known how
    Not read in the work itself; copies seen: one handbook that reprints the table.

    Source: de Leva P. Adjustments to Zatsiorsky-Seluyanov's segment inertia parameters. J Biomech 1996;29(9):1223-1230
    """
    given: dict[str, Any] = {"table": table}
    return _call("dose.segment_shares_de_leva_1996", given)  # type: ignore[no-any-return]


def squat_body_share(*, table: _t.BodyTable) -> float:
    """What part of the body does a squat raise?

    # Formula
    `1 - 2 (shank + foot)`: 0.886 for the male table. Taking off the shanks alone would give 0.913.

    # Domain
    Young adults. 0.88 is the usual general figure.

    # Errors
    None of its own.

    # Source
    Follows from de Leva 1996.
    """
    given: dict[str, Any] = {"table": table}
    return _call("dose.squat_body_share", given)  # type: ignore[no-any-return]


def pull_up_body_share(*, table: _t.BodyTable) -> float:
    """What part of the body does a pull-up raise?

    # Formula
    `1 - 2 (forearm + hand)`: 0.9554 male, 0.9612 female.

    # Domain
    Young adults. No measured share was found; common practice counts the whole body.

    # Errors
    None of its own.

    # Source
    Follows from de Leva 1996.
    """
    given: dict[str, Any] = {"table": table}
    return _call("dose.pull_up_body_share", given)  # type: ignore[no-any-return]


def push_up_peak_share_ebben_2011(*, form: _t.PushUp) -> float:
    """What part of body weight is the peak force of a push-up?

    # Formula
    The published table: peak force over body weight.

    # Domain
    23 adults. A peak of a moving push-up, yet below what others measured holding still
    (`push_up_still_share_suprak_2011`): one constant for the load of a push-up is right to about 10
    percentage points.

    # Errors
    None of its own.

    # Source
    Ebben et al. 2011 (abstract read; the table recalled).

    # Known how
    Recalled, not read again: take the numbers with care.

    Source: Ebben WP, Wurm B, VanderZanden TL, Spadavecchia ML, Durocher JJ, Bickham CT, Petushek EJ. Kinetic analysis of several variations of push-ups. J Strength Cond Res 2011;25(10):2891-2894
    """
    given: dict[str, Any] = {"form": form}
    return _call("dose.push_up_peak_share_ebben_2011", given)  # type: ignore[no-any-return]


def push_up_still_share_suprak_2011(*, position: _t.PushUpPosition) -> float:
    """What part of body weight do the hands hold while a push-up is held still?

    # Formula
    The published table.

    # Domain
    28 trained men.

    # Errors
    None of its own.

    # Source
    Suprak, Dawes and Stephenson 2011, recalled.

    # Known how
    Recalled, not read again: take the numbers with care.

    Source: Suprak DN, Dawes J, Stephenson MD. The effect of position on the percentage of body mass supported during traditional and modified push-up variants. J Strength Cond Res 2011;25:497-503
    """
    given: dict[str, Any] = {"position": position}
    return _call("dose.push_up_still_share_suprak_2011", given)  # type: ignore[no-any-return]


def push_up_still_share_mier_2014(*, table: _t.BodyTable, on_knees: bool) -> _t.MeanAndDeviation:
    """What part of body weight do the hands hold with arms straight, in men and in women?

    # Formula
    The published means and standard deviations, on the feet or on the knees.

    # Domain
    The people measured; their ages are not confirmed.

    # Errors
    None of its own.

    # Source
    Mier et al. 2014, abstract.

    # Known how
    Read in the work or in its abstract.

    Source: Mier CM, Amasay T, Capehart S, Garner H. Differences between men and women in percentage of body weight supported during push-up exercise. Int J Exerc Sci 2014;7(2):161-168
    """
    given: dict[str, Any] = {"table": table, "on_knees": on_knees}
    return _call("dose.push_up_still_share_mier_2014", given)  # type: ignore[no-any-return]


def displacement_volume_load(*, sets: Sequence[_t.SetMovedInput]) -> float:
    """How much was lifted, with the height of each repetition counted?

    # Formula
    `sum sets * reps * load * displacement`, in kg m.

    # Domain
    Loads of 0 and more, heights above 0. Over 20 weeks of 8 weightlifters it went with plain volume load
    (r 0.78 and more) yet differed from it in 4 of 7 periods: of use where the mix of exercises changes.

    # Errors
    `load_out_of_domain`; `out_of_range` for a height of 0 or less.

    # Source
    Hornsby et al. 2018, abstract.

    # Known how
    Read in the work or in its abstract.

    Source: Hornsby WG, Gentles JA, Comfort P, Suchomel TJ, Mizuguchi S, Stone MH. Resistance training volume load with and without exercise displacement. Sports 2018;6(4):137
    """
    given: dict[str, Any] = {"sets": sets}
    return _call("dose.displacement_volume_load", given)  # type: ignore[no-any-return]


def work_against_gravity(*, mass: _t.KilogramsInput, displacement: _t.Length) -> float:
    """How much mechanical work is it to raise a mass so far, once?

    # Formula
    `mass * 9.80665 * displacement`, in joules, from rest to rest: what speeding up costs comes back in
    slowing down. Give the `system_mass`(crate::dose::system_mass) where the body is raised too.

    # Domain
    The height of the common centre. Bar and body travel differently: in a squat the bar moved 13.4 % further,
    and power from the bar's speed came out 18.7 % high.

    # Errors
    `load_out_of_domain`; `out_of_range` for a height of 0 or less.

    # Source
    Definition of work; exact standard gravity.
    """
    given: dict[str, Any] = {"mass": mass, "displacement": displacement}
    return _call("dose.work_against_gravity", given)  # type: ignore[no-any-return]


def prilepin_table() -> list[_t.ZoneRow]:
    """Which numbers of repetitions were found to work in each intensity zone?

    # Formula
    The table in circulation. Its zone edges differ between copies; here they are half-open without holes:
    55 to below 70, to below 80, to below 90, to 100.

    # Domain
    Young elite weightlifters, competition lifts, one exercise in one session. Not advice for novices or older
    adults. Some copies print 4 instead of 7 in the last zone.

    # Errors
    None of its own.

    # Source
    Attributed to Prilepin; read in two English copies, never in the original. Not peer-reviewed.

    # Known how
    Not read in the work itself; copies seen: two articles of the trade, whose edges differ.

    Source: Prilepin AS, a table from training records of Soviet weightlifters, in English copies (Hristov H 2005; McCullough T); the original was not found
    """
    given: dict[str, Any] = {}
    return _call("dose.prilepin_table", given)  # type: ignore[no-any-return]


def prilepin_zone(*, fraction: _t.Fraction) -> _t.ZoneRow:
    """Which row of the table does this intensity fall in?

    # Formula
    The zone whose lower edge is at or below the intensity.

    # Domain
    55 to 100 % of the maximum: one copy begins there, the other prints "70 % and below" without an end. Below it
    nothing is answered. Where the copies leave a hole or share an edge, the half-open edges are our choice.

    # Errors
    `not_covered`.

    # Source
    As `prilepin_table`.

    # Known how
    Not read in the work itself; copies seen: two articles of the trade, whose edges differ.

    Source: Prilepin AS, a table from training records of Soviet weightlifters, in English copies (Hristov H 2005; McCullough T); the original was not found
    """
    given: dict[str, Any] = {"fraction": fraction}
    return _call("dose.prilepin_zone", given)  # type: ignore[no-any-return]


def lifts_by_zone(*, sets: Sequence[_t.RelativeSetInput]) -> _t.LiftsByZone:
    """How many lifts were done in each intensity zone?

    # Formula
    Repetitions added up by zone, edges as in `prilepin_table`.

    # Domain
    Any fraction; what lies below 55 % or above 100 % has its own count.

    # Errors
    None of its own.

    # Source
    Counting; the edges are our choice, since copies of the trade table differ in them.
    """
    given: dict[str, Any] = {"sets": sets}
    return _call("dose.lifts_by_zone", given)  # type: ignore[no-any-return]


def lifts_per_percent_in_reserve_hristov_2005(*, sets: Sequence[_t.RelativeSetInput]) -> float:
    """How many lifts were done for each percent left below the maximum?

    # Formula
    `sum repetitions / (100 - percent)`.

    # Domain
    Below 100 %: a single at the maximum would be infinite. An article on the web without any validation; its
    bands are not shown.

    # Errors
    `no_reserve_left` at 100 % and above.

    # Source
    Hristov 2005.

    # Known how
    Read in the work or in its abstract.

    Source: Hristov H. How to design strength training programs using Prilepin's table. Self-published 2004/2005
    """
    given: dict[str, Any] = {"sets": sets}
    return _call("dose.lifts_per_percent_in_reserve_hristov_2005", given)  # type: ignore[no-any-return]


def fractional_sets(*, exercises: Sequence[_t.RegionSetsInput], counting: _t.SetCounting) -> list[_t.RegionCount]:
    """How many sets did each region get, counting helpers in part?

    # Formula
    `sum sets * w`; `w` 1 where direct, the chosen weight where indirect (`SetCounting`). A region named both
    ways by one exercise counts as direct. Regions come out in alphabetical order.

    # Domain
    Weights 0 to 1. In 67 studies of 2058 people counting halves had the strongest support, with ever smaller
    returns; nothing of it was in people over 65, so it is no target for an older lifter.

    # Errors
    `out_of_range` for the weight.

    # Source
    Pelland et al. 2024, abstract.

    # Known how
    Read in the work or in its abstract.

    Source: Pelland JC, Remmert JF, Robinson ZP, Hinson S, Zourdos MC. The resistance training dose-response: meta-regressions. SportRxiv 2024
    """
    given: dict[str, Any] = {"exercises": exercises, "counting": counting}
    return _call("dose.fractional_sets", given)  # type: ignore[no-any-return]


def session_load_foster_2001(*, rating: float, minutes: float) -> _t.LoadTotal:
    """How large was the session as it felt?

    # Formula
    `rating * minutes`, arbitrary units.

    # Domain
    Ratings 0 to 10, at most a day. Ratings were repeatable in lifting (ICC 0.88, 19 people), and heavier sets
    felt harder even with fewer repetitions. Minutes count rests as load
    (`Caution::RestsCountAsLoad`(crate::caution::Caution)).

    # Errors
    `not_finite`, `out_of_range`.

    # Source
    Foster et al. 2001; in lifting: Day et al. 2004, J Strength Cond Res 18:353-358.

    # Known how
    Read in the work or in its abstract.

    Source: Foster C, Florhaug JA, Franklin J, Gottschall L, Hrovatin LA, Parker S, Doleshal P, Dodge C. A new approach to monitoring exercise training. J Strength Cond Res 2001;15(1):109-115
    """
    given: dict[str, Any] = {"rating": rating, "minutes": minutes}
    return _call("dose.session_load_foster_2001", given)  # type: ignore[no-any-return]


def day_load_foster_2001(*, sessions: Sequence[_t.SessionRated]) -> _t.LoadTotal:
    """How large was the day, with all its sessions?

    # Formula
    `sum rating * minutes`: two sessions on one day are added.

    # Domain
    As `session_load_foster_2001`; no session at all is 0, which the host should give only for a rested day.

    # Errors
    As `session_load_foster_2001`, with the place in the list.

    # Source
    Foster et al. 2001.

    # Known how
    Read in the work or in its abstract.

    Source: Foster C, Florhaug JA, Franklin J, Gottschall L, Hrovatin LA, Parker S, Doleshal P, Dodge C. A new approach to monitoring exercise training. J Strength Cond Res 2001;15(1):109-115
    """
    given: dict[str, Any] = {"sessions": sessions}
    return _call("dose.day_load_foster_2001", given)  # type: ignore[no-any-return]


def session_load_by_repetitions(*, rating: float, sets: Sequence[_t.SetDoneInput]) -> _t.LoadTotal:
    """How large was the session as it felt, with repetitions instead of minutes?

    # Formula
    `rating * repetitions`, arbitrary units. Rests do not count; never mix it with the form by minutes.

    # Domain
    Ratings 0 to 10.

    # Errors
    `not_finite`, `out_of_range`, `load_out_of_domain`.

    # Source
    In use among practitioners; no source claimed.
    """
    given: dict[str, Any] = {"rating": rating, "sets": sets}
    return _call("dose.session_load_by_repetitions", given)  # type: ignore[no-any-return]


def weekly_load(*, days: Sequence[_t.DailyLoad]) -> _t.LoadTotal:
    """How large was the week, or any run of days?

    # Formula
    The sum of the day totals; rested days are 0.

    # Domain
    Complete days only.

    # Errors
    `day_not_recorded`: a day that nobody wrote down is not a rest day.

    # Source
    Foster et al. 2001.

    # Known how
    Read in the work or in its abstract.

    Source: Foster C, Florhaug JA, Franklin J, Gottschall L, Hrovatin LA, Parker S, Doleshal P, Dodge C. A new approach to monitoring exercise training. J Strength Cond Res 2001;15(1):109-115
    """
    given: dict[str, Any] = {"days": days}
    return _call("dose.weekly_load", given)  # type: ignore[no-any-return]


def week_monotony(*, days: Sequence[_t.DailyLoad], deviation: _t.Deviation) -> _t.WeekLoad:
    """How large was the week, how alike were its days, and how large is their product (strain)?

    # Formula
    `monotony = mean / deviation` and `strain = total * monotony` over seven day totals, rest days 0.

    # Domain
    Seven complete days. Equal days have no monotony. With few training days the value is limited from above
    (`monotony_limit`), so a level quoted for people who train daily cannot be reached by most lifters; none
    is shown. That high values came before illness was seen in 25 athletes afterwards, with no comparison (Foster
    1998, recalled): it foretells nothing.

    # Errors
    `out_of_range` unless there are seven days; `day_not_recorded`.

    # Source
    Foster 1998 (recalled) defines it over days; which deviation is left open. The one complete week found (Foster et al.
    2001, table 5) was made with the population deviation over its listed sessions
    (`sessions_monotony`), not over days as its text says. The default here follows the text, with the
    population deviation.

    # Known how
    Read in the work or in its abstract.

    Source: Foster C, Florhaug JA, Franklin J, Gottschall L, Hrovatin LA, Parker S, Doleshal P, Dodge C. A new approach to monitoring exercise training. J Strength Cond Res 2001;15(1):109-115
    """
    given: dict[str, Any] = {"days": days, "deviation": deviation}
    return _call("dose.week_monotony", given)  # type: ignore[no-any-return]


def sessions_monotony(*, sessions: _t.Numbers, deviation: _t.Deviation) -> _t.WeekLoad:
    """Total, monotony and strain over listed sessions instead of days.

    # Formula
    As `week_monotony`, over the sessions as listed; a rest day counts only if it is listed with 0.

    # Domain
    At least two sessions. For comparing with records kept that way: the values are not those of
    `week_monotony` and must not be mixed with them. The table this reproduces multiplies the total by the
    already rounded monotony to get strain; here nothing is rounded.

    # Errors
    `not_enough_data` below two sessions.

    # Source
    Foster et al. 2001, table 5.

    # Known how
    Read in the work or in its abstract.

    Source: Foster C, Florhaug JA, Franklin J, Gottschall L, Hrovatin LA, Parker S, Doleshal P, Dodge C. A new approach to monitoring exercise training. J Strength Cond Res 2001;15(1):109-115
    """
    given: dict[str, Any] = {"sessions": sessions, "deviation": deviation}
    return _call("dose.sessions_monotony", given)  # type: ignore[no-any-return]


def monotony_limit(*, training_days: float, deviation: _t.Deviation) -> float:
    """How high can monotony be with so many training days in a week?

    # Formula
    `sqrt(k / (7 - k))` for `k` equal training days and the population deviation; the sample deviation gives
    `sqrt(6/7)` of it.

    # Domain
    1 to 6 training days; with none or seven there is no limit to give.

    # Errors
    `out_of_range` outside 1 to 6.

    # Source
    Algebra: for given days trained, equal sessions have the smallest deviation.
    """
    given: dict[str, Any] = {"training_days": training_days, "deviation": deviation}
    return _call("dose.monotony_limit", given)  # type: ignore[no-any-return]


def monotony_of(*, mean: float, deviation: float) -> float:
    """Monotony from a mean and a deviation that someone else printed.

    # Formula
    `mean / deviation`.

    # Domain
    A mean of 0 or more and a deviation above 0.

    # Errors
    `out_of_range`; `zero_spread` for a deviation of 0.

    # Source
    Foster et al. 2001; first in Foster 1998 (recalled).

    # Known how
    Read in the work or in its abstract.

    Source: Foster C, Florhaug JA, Franklin J, Gottschall L, Hrovatin LA, Parker S, Doleshal P, Dodge C. A new approach to monitoring exercise training. J Strength Cond Res 2001;15(1):109-115
    """
    given: dict[str, Any] = {"mean": mean, "deviation": deviation}
    return _call("dose.monotony_of", given)  # type: ignore[no-any-return]


def rolling_load(*, days: Sequence[_t.DailyLoad], window: float) -> list[float | None]:
    """What was the mean daily load over the last so many days, for each day?

    # Formula
    `mean(L[d-window+1..d])`. None while the window reaches before the first day or over a day that was not
    recorded.

    # Domain
    Windows of 1 to 3660 days. Order inside the window does not count.

    # Errors
    `out_of_range` for the window.

    # Source
    Definition. (One published index runs over eight days for a window of seven: Midoglu et al. 2024, table 2.)
    """
    given: dict[str, Any] = {"days": days, "window": window}
    return _call("dose.rolling_load", given)  # type: ignore[no-any-return]


def weighting_factor(*, fading: _t.Fading) -> float:
    """What share does today have in a weighted mean?

    # Formula
    `2 / (N + 1)` for a span of N days; `1 - exp(-1 / tau)` for a time constant. 7 days give 0.25 as a span but
    0.133 as a time constant.

    # Domain
    Spans of 1 to 3660 days; time constants above 0, to 3660.

    # Errors
    `out_of_range`, `not_finite`.

    # Source
    Williams et al. 2017 (the form recalled: the letter shows it as a picture).

    # Known how
    Recalled, not read again: take the numbers with care.

    Source: Williams S, West S, Cross MJ, Stokes KA. Better way to determine the acute:chronic workload ratio? Br J Sports Med 2017;51(3):209-210
    """
    given: dict[str, Any] = {"fading": fading}
    return _call("dose.weighting_factor", given)  # type: ignore[no-any-return]


def weighted_load(*, days: Sequence[_t.DailyLoad], fading: _t.Fading, start: _t.WeightedStart) -> list[float | None]:
    """What was the mean daily load, recent days counting most, for each day?

    # Formula
    `E_d = lambda L_d + (1 - lambda) E_(d-1)`; `lambda` by `weighting_factor`, the start by choice.

    # Domain
    None on a day that was not recorded; after it the mean starts anew from the first known load (or mean of
    first days), for what lies before a gap is unknown, not zero.

    # Errors
    `out_of_range`, `not_finite`.

    # Source
    Williams et al. 2017, recalled: the letter shows its formulas as pictures. It leaves the start value open.

    # Known how
    Recalled, not read again: take the numbers with care.

    Source: Williams S, West S, Cross MJ, Stokes KA. Better way to determine the acute:chronic workload ratio? Br J Sports Med 2017;51(3):209-210
    """
    given: dict[str, Any] = {"days": days, "fading": fading, "start": start}
    return _call("dose.weighted_load", given)  # type: ignore[no-any-return]


def recent_versus_usual(*, days: Sequence[_t.DailyLoad], options: _t.RatioOptions) -> _t.RecentVersusUsual:
    """How does the load of the last days compare with what is usual for this lifter?

    # Formula
    `recent` and `usual` are means of daily load (plain or fading, see `RatioMethod`); the ratio is their
    quotient. By default usual days end where recent days begin.

    # Domain
    No ratio without a full history free of gaps, at a usual load of 0, or while usual load is small against
    the lifter's own typical level: after a holiday it would rise by construction. Coupled over 7 and 28 days
    it cannot exceed 4. No level of it is called good or bad, and it foretells nothing.

    # Errors
    `out_of_range` for windows or the guard.

    # Source
    Williams et al. 2017 for fading means (their form recalled); coupled and uncoupled windows as in Windt and Gabbett 2019.
    """
    given: dict[str, Any] = {"days": days, "options": options}
    return _call("dose.recent_versus_usual", given)  # type: ignore[no-any-return]


def uncoupled_from_coupled(*, ratio: float, recent_days: float, usual_days: float) -> float:
    """What would a coupled ratio be if the recent days were left out of the usual ones?

    # Formula
    `(c - a) r / (c - a r)` with `a` recent and `c` usual days; `3 r / (4 - r)` for 7 and 28.

    # Domain
    Coupled ratios from 0 to below `c / a`, their ceiling. The two carry the same information.

    # Errors
    `out_of_range`.

    # Source
    Algebra; the point is made by Windt and Gabbett 2019.
    """
    given: dict[str, Any] = {"ratio": ratio, "recent_days": recent_days, "usual_days": usual_days}
    return _call("dose.uncoupled_from_coupled", given)  # type: ignore[no-any-return]


def coupled_from_uncoupled(*, ratio: float, recent_days: float, usual_days: float) -> float:
    """What would an uncoupled ratio be with the recent days counted among the usual ones?

    # Formula
    `c r / (c - a + a r)`; `4 r / (3 + r)` for 7 and 28 days.

    # Domain
    Ratios of 0 and more.

    # Errors
    `out_of_range`.

    # Source
    Algebra; the point is made by Windt and Gabbett 2019.
    """
    given: dict[str, Any] = {"ratio": ratio, "recent_days": recent_days, "usual_days": usual_days}
    return _call("dose.coupled_from_uncoupled", given)  # type: ignore[no-any-return]


def coupling_correlation(*, recent_days: float, usual_days: float) -> float:
    """How strongly do recent and coupled usual load go together when the weeks have nothing to do with each other?

    # Formula
    `sqrt(a / c)` for independent days of equal variance: 0.5 for 7 and 28 days.

    # Domain
    Fewer recent days than usual ones.

    # Errors
    `out_of_range`.

    # Source
    Theory behind Lolli et al. 2019, whose simulation of 1000 athletes gave 0.52.
    """
    given: dict[str, Any] = {"recent_days": recent_days, "usual_days": usual_days}
    return _call("dose.coupling_correlation", given)  # type: ignore[no-any-return]


def week_change(*, past: Sequence[_t.DailyLoad], week: _t.DailyLoad, options: _t.BandOptions) -> _t.WeekChange:
    """Is this week's total out of the ordinary for this lifter?

    # Formula
    Band: median of the lifter's own trained weeks, plus and minus `reach` times the larger of 1.4826 times
    their median absolute deviation and a share of the median. Rested weeks and weeks far below the centre are
    breaks and make no part of the band.

    # Domain
    Nothing is said with few trained weeks, in a rested or incomplete week, or soon after a break, when any
    training looks like a jump against a small denominator. More or less than usual is a description, not a
    warning.

    # Errors
    `out_of_range` for the options.

    # Source
    Our choice; the median absolute deviation and its factor are standard.
    """
    given: dict[str, Any] = {"past": past, "week": week, "options": options}
    return _call("dose.week_change", given)  # type: ignore[no-any-return]


def impulse_response_before_session(*, days: Sequence[_t.DailyLoad], response: _t.ImpulseResponse, start: _t.InitialState) -> list[_t.ResponseDay]:
    """How do fitness, fatigue and simulated performance run, read each day before its session?

    # Formula
    `p(n) = p* + k1 sum_(i<n) w(i) e^(-(n-i)/tau1) - k2 sum_(i<n) w(i) e^(-(n-i)/tau2)`: the load of day i acts
    from day i+1. Equals the [after-session form](impulse_response_after_session) of the day before, faded by
    one day; the two agree on every day without load and differ by that day's load otherwise.

    # Domain
    Complete days. A teaching simulation: double load has double effect, sessions do not interact. In 8
    untrained people the fatigue part improved the fit in 2.

    # Errors
    `day_not_recorded`.

    # Source
    Busso, Carasso and Lacour 1991 (abstract read; the form recalled).

    # Known how
    Recalled, not read again: take the numbers with care.

    Source: Busso T, Carasso C, Lacour JR. Adequacy of a systems structure in the modeling of training effects on performance. J Appl Physiol 1991;71:2044-2049
    """
    given: dict[str, Any] = {"days": days, "response": response, "start": start}
    return _call("dose.impulse_response_before_session", given)  # type: ignore[no-any-return]


def impulse_response_after_session(*, days: Sequence[_t.DailyLoad], response: _t.ImpulseResponse, start: _t.InitialState) -> list[_t.ResponseDay]:
    """How do fitness, fatigue and simulated performance run, read each day after its session?

    # Formula
    `g(t) = g(t-1) e^(-1/tau1) + w(t)`, `h(t) = h(t-1) e^(-1/tau2) + w(t)`, `p(t) = p* + k1 g(t) - k2 h(t)`: the
    load of a day acts undiminished on that day.

    # Domain
    As `impulse_response_before_session`. Mixing up the two forms shifts a curve by one day; each has its name.

    # Errors
    `day_not_recorded`.

    # Source
    Morton, Fitz-Clarke and Banister 1990, recalled.

    # Known how
    Recalled, not read again: take the numbers with care.

    Source: Morton RH, Fitz-Clarke JR, Banister EW. Modeling human performance in running. J Appl Physiol 1990;69:1171-1177
    """
    given: dict[str, Any] = {"days": days, "response": response, "start": start}
    return _call("dose.impulse_response_after_session", given)  # type: ignore[no-any-return]


def steady_trace(*, daily_load: _t.LoadTotal, time_constant: float) -> float:
    """Which trace does the same load every day hold in the end?

    # Formula
    `w / (1 - e^(-1/tau))`, after the session.

    # Domain
    Time constants above 0, to 3660 days.

    # Errors
    `out_of_range`.

    # Source
    Sum of the geometric series.
    """
    given: dict[str, Any] = {"daily_load": daily_load, "time_constant": time_constant}
    return _call("dose.steady_trace", given)  # type: ignore[no-any-return]


def days_to_recovery(*, response: _t.ImpulseResponse) -> float:
    """How many days after a session is simulated performance back at where it was without it?

    # Formula
    `t_n = tau1 tau2 / (tau1 - tau2) * ln(k2 / k1)`. Read backwards: the last day on which training still pays
    off by an event.

    # Domain
    `k2 > k1`: otherwise the session never costs anything.

    # Errors
    `never_crosses` where `k2 <= k1`.

    # Source
    Fitz-Clarke, Morton and Banister 1991, recalled; it follows from the response by setting it, or its slope, to 0.

    # Known how
    Recalled, not read again: take the numbers with care.

    Source: Fitz-Clarke JR, Morton RH, Banister EW. Optimizing athletic performance by influence curves. J Appl Physiol 1991;71:1151-1158
    """
    given: dict[str, Any] = {"response": response}
    return _call("dose.days_to_recovery", given)  # type: ignore[no-any-return]


def days_to_peak(*, response: _t.ImpulseResponse) -> float:
    """How many days after a session is its simulated gain greatest?

    # Formula
    `t_g = tau1 tau2 / (tau1 - tau2) * ln(k2 tau1 / (k1 tau2))`. It follows recovery by
    `tau1 tau2 / (tau1 - tau2) * ln(tau1 / tau2)`, whatever the gains.

    # Domain
    `k2 tau1 > k1 tau2`: otherwise the gain is greatest at once.

    # Errors
    `never_crosses`.

    # Source
    Fitz-Clarke, Morton and Banister 1991, recalled; it follows from the response by setting it, or its slope, to 0.

    # Known how
    Recalled, not read again: take the numbers with care.

    Source: Fitz-Clarke JR, Morton RH, Banister EW. Optimizing athletic performance by influence curves. J Appl Physiol 1991;71:1151-1158
    """
    given: dict[str, Any] = {"response": response}
    return _call("dose.days_to_peak", given)  # type: ignore[no-any-return]


def peak_gain(*, response: _t.ImpulseResponse) -> float:
    """How much simulated performance does one unit of load bring at its best?

    # Formula
    `k1 e^(-t/tau1) - k2 e^(-t/tau2)` at `t = t_g`.

    # Domain
    As `days_to_peak`.

    # Errors
    `never_crosses`.

    # Source
    Fitz-Clarke, Morton and Banister 1991, recalled; it follows from the response by setting it, or its slope, to 0.

    # Known how
    Recalled, not read again: take the numbers with care.

    Source: Fitz-Clarke JR, Morton RH, Banister EW. Optimizing athletic performance by influence curves. J Appl Physiol 1991;71:1151-1158
    """
    given: dict[str, Any] = {"response": response}
    return _call("dose.peak_gain", given)  # type: ignore[no-any-return]


def variable_response_busso_2003(*, days: Sequence[_t.DailyLoad], response: _t.VariableResponse) -> list[_t.VariableDay]:
    """How does simulated performance run where hard recent days make the next one cost more?

    # Formula
    `p(n) = p* + k1 sum_(i<n) w(i) e^(-(n-i)/tau1) - sum_(i<n) k2(i) w(i) e^(-(n-i)/tau2)` with
    `k2(i) = k3 sum_(j<=i) w(j) e^(-(i-j)/tau3)`; before the session, no history.

    # Domain
    Complete days. A teaching simulation. Daily load then has an inverted U: more helps up to a point. Measured
    in 6 untrained people over 15 weeks of cycling (standard error 6.47 W against 9.20 to 10.31 W without it).

    # Errors
    `day_not_recorded`.

    # Source
    Busso 2003 (abstract read; formula recalled).

    # Known how
    Recalled, not read again: take the numbers with care.

    Source: Busso T. Variable dose-response relationship between exercise training and performance. Med Sci Sports Exerc 2003;35(7):1188-1195
    """
    given: dict[str, Any] = {"days": days, "response": response}
    return _call("dose.variable_response_busso_2003", given)  # type: ignore[no-any-return]


def illustrative_response(*, baseline: float) -> _t.ImpulseResponse:
    """The numbers that textbooks draw the curve with: 45 and 15 days, gains 1 and 2.

    # Formula
    Fixed numbers over the given baseline.

    # Domain
    An illustration from running, not a norm for anyone.

    # Errors
    `not_finite`, `out_of_range` for the baseline.

    # Source
    Recalled as the starting values of Morton, Fitz-Clarke and Banister 1990 for runners; 42 to 45 and 7 to 15 days
    circulate.

    # Known how
    Recalled, not read again: take the numbers with care.

    Source: Morton RH, Fitz-Clarke JR, Banister EW. Modeling human performance in running. J Appl Physiol 1990;69:1171-1177
    """
    given: dict[str, Any] = {"baseline": baseline}
    return _call("dose.illustrative_response", given)  # type: ignore[no-any-return]


def hammer_thrower_times_busso_1994() -> _t.TimeConstants:
    """Time constants fitted to one hammer thrower: 60 and 13 days.

    # Formula
    Fixed numbers.

    # Domain
    One athlete.

    # Errors
    None of its own.

    # Source
    Busso, Candau and Lacour 1994, as a later article prints it.

    # Known how
    Not read in the work itself; copies seen: one later article.

    Source: Busso T, Candau R, Lacour JR. Fatigue and fitness modelled from the effects of training on performance. Eur J Appl Physiol 1994;69:50-54
    """
    given: dict[str, Any] = {}
    return _call("dose.hammer_thrower_times_busso_1994", given)  # type: ignore[no-any-return]


def mean_variable_response_busso_2003(*, baseline: float) -> _t.VariableResponse:
    """Mean parameters of the variable response in six cyclists, over the given baseline in watts.

    # Formula
    Fixed numbers: 30.8, 16.8 and 2.3 days; gains 0.031 and 0.000035.

    # Domain
    Six untrained people cycling, performance in watts. Recalled; to be checked before use.

    # Errors
    `not_finite`, `out_of_range` for the baseline.

    # Source
    Busso 2003; recalled, the abstract does not print them.

    # Known how
    Recalled, not read again: take the numbers with care.

    Source: Busso T. Variable dose-response relationship between exercise training and performance. Med Sci Sports Exerc 2003;35(7):1188-1195
    """
    given: dict[str, Any] = {"baseline": baseline}
    return _call("dose.mean_variable_response_busso_2003", given)  # type: ignore[no-any-return]


def times_spread_hellard_2006() -> _t.TimesSpread:
    """How poorly are the times of a response known even for athletes measured for years?

    # Formula
    Published means with 95 % bootstrap intervals, in days.

    # Domain
    Nine swimmers; R2 0.79. The parameters go together so strongly that no single one may be interpreted.

    # Errors
    None of its own.

    # Source
    Hellard et al. 2006, abstract.

    # Known how
    Read in the work or in its abstract.

    Source: Hellard P, Avalos M, Lacoste L, Barale F, Chatard JC, Millet GP. Assessing the limitations of the Banister model in monitoring training. J Sports Sci 2006;24(5):509-520
    """
    given: dict[str, Any] = {}
    return _call("dose.times_spread_hellard_2006", given)  # type: ignore[no-any-return]


def fit_impulse_response(*, days: Sequence[_t.DailyLoad], measured: Sequence[_t.MeasuredDay], options: _t.FitOptionsInput) -> _t.FitAnswer:
    """Which two-component response runs closest to what this lifter measured, and do the data carry it at all?

    # Formula
    Least squares over baseline, two gains of 0 or more and two time constants within bounds. For any two time
    constants the rest is linear and solved exactly; only the two are searched, from every start. Standard
    errors from the derivatives at the answer; prediction intervals by Student's t.

    # Domain
    Complete days; days after the last measurement give the curve to come. Refused, with every reason, where
    there are too few measurements, where the best answer lies on an edge or drops a component, where one
    component does as well (F test, approximate), or where a parameter is hardly known. A simulation for
    teaching (`Caution::TeachingSimulation`(crate::caution::Caution)), never a predicted maximum: in nine
    swimmers measured for years the intervals of the time constants ran from half to one and a half of the
    value.

    # Errors
    `day_not_recorded`; `out_of_range` for days, values and options; `interval_reversed` for a range.

    # Source
    The model of Busso, Carasso and Lacour 1991, its form recalled; limits of refusal are our choice.
    """
    given: dict[str, Any] = {"days": days, "measured": measured, "options": options}
    return _call("dose.fit_impulse_response", given)  # type: ignore[no-any-return]


def block_summary(*, sets: Sequence[_t.DiarySetInput], from_: _t.Day, to: _t.Day) -> _t.DoseSummary:
    """What was done from this day to that one, by lift, by region and by effort?

    # Formula
    Sets, repetitions and load added up exactly; days counted once. Sets outside the days are left out; their
    order does not matter.

    # Domain
    The first day not after the last. A region named twice by one set counts once.

    # Errors
    `interval_reversed`; `load_out_of_domain` for a load below 0 kg.

    # Source
    Counting; effort zones are our choice.
    """
    given: dict[str, Any] = {"sets": sets, "from": from_, "to": to}
    return _call("dose.block_summary", given)  # type: ignore[no-any-return]


def week_summaries(*, sets: Sequence[_t.DiarySetInput], first: _t.Day, weeks: float) -> list[_t.DoseSummary]:
    """What was done in each of these weeks?

    # Formula
    `block_summary` of each run of seven days from the first day given.

    # Domain
    1 to 522 weeks.

    # Errors
    `out_of_range`; `load_out_of_domain` for a load below 0 kg.

    # Source
    Counting.
    """
    given: dict[str, Any] = {"sets": sets, "first": first, "weeks": weeks}
    return _call("dose.week_summaries", given)  # type: ignore[no-any-return]


def missed_session(*, facts: _t.MissedFacts) -> _t.MissedSession:
    """A session was missed: shift, merge or drop?

    # Formula
    Shift to the first day that leaves the rest days on both sides; where there is none, merge into the next day
    of the region if that does not have the lift; else drop. Nothing is ever added to make up for it.

    # Domain
    Any days; the next planned day must not lie before today.

    # Errors
    `out_of_range` for a next day before today or a last day after it.

    # Source
    Common practice; the order of the three is our choice.
    """
    given: dict[str, Any] = {"facts": facts}
    return _call("dose.missed_session", given)  # type: ignore[no-any-return]


def easy_week_practice_rogerson_2024() -> _t.EasyWeekPractice:
    """How long and how often do lifters ease off?

    # Formula
    Published means and standard deviations: 6.4 +- 1.7 days every 5.6 +- 2.3 weeks.

    # Domain
    246 strength and physique athletes, by survey: a habit, not a proof. A full week off in a nine-week block
    made no difference to size and a little to lower-body strength (Coleman et al. 2024, recalled).

    # Errors
    None of its own.

    # Source
    Rogerson et al. 2024, abstract.

    # Known how
    Read in the work or in its abstract.

    Source: Rogerson D, Nolan D, Korakakis PA, Immonen V, Wolf M, Bell L. Deloading practices in strength and physique sports: a cross-sectional survey. Sports Med Open 2024;10:26
    """
    given: dict[str, Any] = {}
    return _call("dose.easy_week_practice_rogerson_2024", given)  # type: ignore[no-any-return]


def easy_week_range_bell_2022() -> _t.EasyWeekRange:
    """How long and how often do coaches let lifters ease off?

    # Formula
    Typically 5 to 7 days every 4 to 6 weeks, mostly by fewer repetitions and sets and more repetitions left in
    reserve.

    # Domain
    18 coaches of national level; no single method.

    # Errors
    None of its own.

    # Source
    Bell et al. 2022.

    # Known how
    Read in the work or in its abstract.

    Source: Bell L, Nolan D, Immonen V, Helms E, Dallamore J, Wolf M, Androulakis Korakakis P. "You can't shoot another bullet until you've reloaded the gun": coaches' perceptions, practices and experiences of deloading in strength and physique sports. Front Sports Act Living 2022;4:1073223
    """
    given: dict[str, Any] = {}
    return _call("dose.easy_week_range_bell_2022", given)  # type: ignore[no-any-return]


def easy_week_status(*, weeks: Sequence[_t.DailyLoad], planned_absence_in_weeks: float | None = None, options: _t.EasyWeekOptions) -> _t.EasyWeekStatus:
    """Is an easy week worth thinking of, counting those that life has already given?

    # Formula
    Weeks since the last easy one: rested, or at or below a share of the lifter's own median trained week. Travel
    and illness count; an absence planned before the next is due counts too.

    # Domain
    Week totals in order, the latest last. A week that was not recorded since then leaves it unknown.

    # Errors
    `out_of_range` for the options.

    # Source
    Our choice, over the spacing that coaches report (Bell et al. 2022).
    """
    given: dict[str, Any] = {"weeks": weeks, "options": options}
    if planned_absence_in_weeks is not None:
        given["planned_absence_in_weeks"] = planned_absence_in_weeks
    return _call("dose.easy_week_status", given)  # type: ignore[no-any-return]


def taper_practice_grgic_2017() -> _t.TaperPractice:
    """How do champion powerlifters taper?

    # Formula
    Published means and standard deviations: volume cut by 50.5 +- 11.7 % over 18 +- 8 days, last session
    3 +- 1 days out.

    # Domain
    Ten Croatian open powerlifters, reported afterwards. What they do, not what works best; evidence in strength
    sports is thin.

    # Errors
    None of its own.

    # Source
    Grgic and Mikulic 2017: the cut and the last session from the abstract; the 18 +- 8 days are recalled.

    # Known how
    Read in the work or in its abstract. Recalled, not read again: the 18 +- 8 days.

    Source: Grgic J, Mikulic P. Tapering practices of Croatian open-class powerlifting champions. J Strength Cond Res 2017;31(9):2371-2378
    """
    given: dict[str, Any] = {}
    return _call("dose.taper_practice_grgic_2017", given)  # type: ignore[no-any-return]


def taper_finding_bosquet_2007() -> _t.TaperFinding:
    """Which taper worked best for competitive athletes?

    # Formula
    Volume cut by 41 to 60 % over about two weeks, with intensity and frequency kept.

    # Domain
    Competitive athletes; swimmers, runners and cyclists, as recalled, and no lifters.

    # Errors
    None of its own.

    # Source
    Bosquet et al. 2007, abstract.

    # Known how
    Read in the work or in its abstract.

    Source: Bosquet L, Montpetit J, Arvisais D, Mujika I. Effects of tapering on performance: a meta-analysis. Med Sci Sports Exerc 2007;39:1358-1365
    """
    given: dict[str, Any] = {}
    return _call("dose.taper_finding_bosquet_2007", given)  # type: ignore[no-any-return]


def taper_share(*, shape: _t.TaperShape, day: float, days: float, final_cut: float) -> float:
    """What part of the usual volume is left on this day of a taper?

    # Formula
    With a cut `c` on the last of `n` days: step `1 - c`; linear `1 - c d / n`; exponential `(1 - c)^(d / n)`.

    # Domain
    Days 1 to n, at most 90; cuts from 0 to below 1.

    # Errors
    `out_of_range`.

    # Source
    The three types are named in the literature; the formulas are our reading of the names.
    """
    given: dict[str, Any] = {"shape": shape, "day": day, "days": days, "final_cut": final_cut}
    return _call("dose.taper_share", given)  # type: ignore[no-any-return]


def strength_loss_lemmer_2000(*, group: _t.BreakGroup) -> float:
    """What part of the one-repetition maximum was lost after 31 weeks without training?

    # Formula
    8 % at 20 to 30 years, 14 % at 65 to 75 years.

    # Domain
    After nine weeks of training, one exercise. Most of both groups' loss came after week 12.

    # Errors
    None of its own.

    # Source
    Lemmer et al. 2000, abstract: 8 +- 2 % and 14 +- 2 %.

    # Known how
    Read in the work or in its abstract.

    Source: Lemmer JT, Hurlbut DE, Martel GF, et al. Age and gender responses to strength training and detraining. Med Sci Sports Exerc 2000;32:1505-1512
    """
    given: dict[str, Any] = {"group": group}
    return _call("dose.strength_loss_lemmer_2000", given)  # type: ignore[no-any-return]


def strength_kept_after_break(*, weeks: float, group: _t.BreakGroup) -> float:
    """What part of strength was kept after so many weeks off, by the two times at which it was measured?

    # Formula
    Two straight pieces: from 1 to 0.98 (young) or 0.99 (older) at week 12, and from there to 0.92 or 0.86 at week
    31. The source prints 8 and 14 % lost in 31 weeks, of which 6 and 13 % went in weeks 12 to 31; the rest is left
    for the first 12, less than its error.

    # Domain
    0 to 31 weeks, after nine weeks of training, knee extension. Between the two times nobody was measured. Others
    lost more: after longer or heavier training, or by the kind of strength; power goes before strength. No forecast
    for anyone, and never to be carried on for years.

    # Errors
    `out_of_range`.

    # Source
    Follows from Lemmer et al. 2000 by straight lines between its three times.
    """
    given: dict[str, Any] = {"weeks": weeks, "group": group}
    return _call("dose.strength_kept_after_break", given)  # type: ignore[no-any-return]


def stopping_effects_bosquet_2013() -> list[_t.StoppingEffect]:
    """How much strength and power is lost when training stops?

    # Formula
    Published pooled effects.

    # Domain
    103 studies. The loss grows with the weeks and is larger over 65.

    # Errors
    None of its own.

    # Source
    Bosquet et al. 2013, abstract.

    # Known how
    Read in the work or in its abstract.

    Source: Bosquet L, Berryman N, Dupuy O, et al. Effect of training cessation on muscular performance: a meta-analysis. Scand J Med Sci Sports 2013;23:e140-149
    """
    given: dict[str, Any] = {}
    return _call("dose.stopping_effects_bosquet_2013", given)  # type: ignore[no-any-return]


def stopping_effects_grgic_2022() -> list[_t.StoppingEffect]:
    """How much muscle size do older adults gain by training and lose by stopping?

    # Formula
    Published pooled effects.

    # Domain
    Older adults. No clear loss at 12 to 24 weeks, a clear one at 31 to 52.

    # Errors
    None of its own.

    # Source
    Grgic 2022, abstract.

    # Known how
    Read in the work or in its abstract.

    Source: Grgic J. Use it or lose it? A meta-analysis on the effects of resistance training cessation (detraining) on muscle size in older adults. Int J Environ Res Public Health 2022;19(21):14048
    """
    given: dict[str, Any] = {}
    return _call("dose.stopping_effects_grgic_2022", given)  # type: ignore[no-any-return]


def stopping_effects_yang_2022() -> list[_t.StoppingEffect]:
    """How much lower-limb strength do middle-aged and older adults keep after stopping?

    # Formula
    Published pooled effects against no training.

    # Domain
    15 trials, 383 people. Gains were lost where the break was longer than the training had been.

    # Errors
    None of its own.

    # Source
    Yang et al. 2022, abstract.

    # Known how
    Read in the work or in its abstract.

    Source: Yang Y, et al. Training session and detraining duration affect lower limb muscle strength maintenance in middle-aged and older adults. J Aging Phys Act 2022;30:552-566
    """
    given: dict[str, Any] = {}
    return _call("dose.stopping_effects_yang_2022", given)  # type: ignore[no-any-return]


def return_weeks_caterisano_2019(*, group: _t.ReturnGroup) -> list[_t.ReturnWeek]:
    """Which limits hold in the weeks after coming back?

    # Formula
    The published rule: volume cut by 50, 30, 20 and 10 % of the highest on file, training days and rest in the
    first two weeks.

    # Domain
    College athletes. The cuts are for conditioning and are upper limits; using them for barbell load is a
    choice of whoever does so. They say nothing about the best way back.

    # Errors
    None of its own.

    # Source
    Caterisano et al. 2019 (abstract read; the details recalled, and alike in a digest).

    # Known how
    Recalled, not read again: take the numbers with care.

    Source: Caterisano A, Decker D, Snyder B, Feigenbaum M, Glass R, House P, Sharp C, Waller M, Witherspoon Z. CSCCa and NSCA joint consensus guidelines for transition periods. Strength Cond J 2019;41(3):1-23
    """
    given: dict[str, Any] = {"group": group}
    return _call("dose.return_weeks_caterisano_2019", given)  # type: ignore[no-any-return]


def return_volume_limit_caterisano_2019(*, highest: _t.LoadTotal, week: float, group: _t.ReturnGroup) -> _t.LoadTotal:
    """How much volume at most in this week after coming back?

    # Formula
    Highest volume on file times 0.5, 0.7, 0.8, 0.9, then 1. The cuts do not compound.

    # Domain
    As `return_weeks_caterisano_2019`; an upper limit, not an aim.

    # Errors
    `out_of_range` for week 0.

    # Source
    Caterisano et al. 2019, recalled.

    # Known how
    Recalled, not read again: take the numbers with care.

    Source: Caterisano A, Decker D, Snyder B, Feigenbaum M, Glass R, House P, Sharp C, Waller M, Witherspoon Z. CSCCa and NSCA joint consensus guidelines for transition periods. Strength Cond J 2019;41(3):1-23
    """
    given: dict[str, Any] = {"highest": highest, "week": week, "group": group}
    return _call("dose.return_volume_limit_caterisano_2019", given)  # type: ignore[no-any-return]


def return_relative_volume_caterisano_2019(*, relative_volume: float) -> _t.ReturnVolume:
    """Is this much lifting for one muscle group within the rule for the first two weeks back?

    # Formula
    Relative volume (sets x repetitions x part of the maximum) from 11 to 30; above is ruled out.

    # Domain
    First two weeks after coming back, per muscle group or movement; college athletes.

    # Errors
    `not_finite`, `out_of_range` below 0.

    # Source
    Caterisano et al. 2019, recalled.

    # Known how
    Recalled, not read again: take the numbers with care.

    Source: Caterisano A, Decker D, Snyder B, Feigenbaum M, Glass R, House P, Sharp C, Waller M, Witherspoon Z. CSCCa and NSCA joint consensus guidelines for transition periods. Strength Cond J 2019;41(3):1-23
    """
    given: dict[str, Any] = {"relative_volume": relative_volume}
    return _call("dose.return_relative_volume_caterisano_2019", given)  # type: ignore[no-any-return]
