"""The functions and defaults of `loading`. Generated from the library; do not edit."""

# ruff: noqa
from __future__ import annotations

from collections.abc import Mapping, Sequence
from typing import Any

from bismar import types as _t
from bismar._native import call as _call

same_diameter: _t.Length
"""Two discs whose diameters differ by no more than this stand equally high.

Source: This project's own choice; a parameter.
"""
full_diameter: _t.Length
"""Diameter of the largest disc of the weightlifting rules.

# Known how
Not read in the work itself; copies seen: two articles that restate the rules.

Source: International Weightlifting Federation. Technical and Competition Rules and Regulations, section 3.3, Sport equipment (editions 2013 to 2020)
"""
alone_reserve: _t.Rir
"""Repetitions to keep in reserve when benching or squatting alone without pins.

Source: This project's own choice; a parameter.
"""
imbalance_limit: _t.Mass
"""The most that one end should be heavier than the other while a racked bar is loaded or unloaded: one
large disc.

Source: Common practice of the trade; no source claimed.
"""
unit_slip_within: float
"""How near the ratio of two loads must come to that of the units to look like a slip, as a part of it.

Source: This project's own choice; a parameter.
"""
step_low: float
"""Smallest step of the published range, in percent of the load.

# Known how
Read in the work or in its abstract.

Source: American College of Sports Medicine. Progression models in resistance training for healthy adults. Med Sci Sports Exerc 41:687-708, 2009
"""
step_high: float
"""Largest step of the published range, in percent of the load.

# Known how
Read in the work or in its abstract.

Source: American College of Sports Medicine. Progression models in resistance training for healthy adults. Med Sci Sports Exerc 41:687-708, 2009
"""

_CONSTANTS = {
    "same_diameter": "loading.same_diameter",
    "full_diameter": "loading.full_diameter",
    "alone_reserve": "loading.alone_reserve",
    "imbalance_limit": "loading.imbalance_limit",
    "unit_slip_within": "loading.unit_slip_within",
    "step_low": "loading.step_low",
    "step_high": "loading.step_high",
}


def __getattr__(name: str) -> Any:
    if name in _CONSTANTS:
        return _call(_CONSTANTS[name], {})
    raise AttributeError(f"module {__name__!r} has no attribute {name!r}")


def load(*, bar: _t.BarInput, stock: _t.StockInput, target: _t.MassInput, policy: _t.Rounding) -> _t.Loaded:
    """What goes on each side of the bar for this load?

    # Formula
    `total = bar + 2 collar + 2 sum(discs of one side)`, over every combination that the stock has in
    pairs. Chosen: the smallest difference that the policy allows, then the fewest discs, then the largest.

    # Domain
    Any stock of up to 25 kinds; found by complete search, never by taking the largest first.

    # Errors
    `below_lightest` for less than the empty bar; `above_heaviest`; `not_loadable` for an exact load that
    no combination makes; `stock_too_large` beyond 300 000 different sums a side.

    # Source
    Arithmetic (row `loading.load`).
    """
    given: dict[str, Any] = {"bar": bar, "stock": stock, "target": target, "policy": policy}
    return _call("loading.load", given)  # type: ignore[no-any-return]


def load_on(*, implement: _t.ImplementInput, stock: _t.StockInput, target: _t.MassInput, policy: _t.Rounding) -> _t.Loaded:
    """How is this load made on a bar, a handle, a rack of dumbbells, a machine, an assistance or a pin?

    # Formula
    As `load()` for discs; else the nearest of the settings that the implement has. More is harder:
    assistance is a load below zero, so that `below` means at least as much help.

    # Errors
    As `load()`.

    # Source
    Arithmetic (row `loading.load_on`).
    """
    given: dict[str, Any] = {"implement": implement, "stock": stock, "target": target, "policy": policy}
    return _call("loading.load_on", given)  # type: ignore[no-any-return]


def step_up(*, implement: _t.ImplementInput, stock: _t.StockInput, from_: _t.MassInput) -> _t.Loaded:
    """What is the next load above this one?

    # Formula
    The lightest loadable total that is heavier than `from`.

    # Errors
    `above_heaviest` if there is none; `stock_too_large`.

    # Source
    Arithmetic (row `loading.step_up`).
    """
    given: dict[str, Any] = {"implement": implement, "stock": stock, "from": from_}
    return _call("loading.step_up", given)  # type: ignore[no-any-return]


def reachable(*, implement: _t.ImplementInput, stock: _t.StockInput, low: _t.MassInput, high: _t.MassInput) -> _t.Reachable:
    """What can be made in this range, and where is the largest gap?

    # Formula
    All totals from `low` to `high`, both included; the gap is the largest difference of two neighbours.

    # Errors
    `interval_reversed` if `low` is above `high`; `stock_too_large`.

    # Source
    Arithmetic (row `loading.reachable`).
    """
    given: dict[str, Any] = {"implement": implement, "stock": stock, "low": low, "high": high}
    return _call("loading.reachable", given)  # type: ignore[no-any-return]


def attempt_step(*, load: _t.MassInput, half: _t.BodyHalf) -> _t.AttemptStep:
    """How much is added between the sets that lead to a test of the maximum?

    # Formula
    Upper body: 5 to 10 % of the load, or 10 to 20 lb. Lower body: 10 to 20 %, or 30 to 40 lb. After a
    miss the protocol takes off half as much.

    # Domain
    Trained, supervised adults; the maximum within 3 to 5 testing sets. Nobody has to test one.

    # Errors
    `load_out_of_domain` at or below 0 kg.

    # Source
    Haff and Triplett 2016, recalled (row `loading.attempt_step`). A public restatement has the same steps, but takes
    off the whole step after a miss.

    # Known how
    Recalled, not read again: take the numbers with care.

    Source: Haff GG, Triplett NT, eds. Essentials of Strength Training and Conditioning, 4th ed. Human Kinetics, 2016, 1RM testing protocol
    """
    given: dict[str, Any] = {"load": load, "half": half}
    return _call("loading.attempt_step", given)  # type: ignore[no-any-return]


def load_from(*, implement: _t.ImplementInput, stock: _t.StockInput, target: _t.MassInput, policy: _t.Rounding, on_bar: _t.Numbers) -> _t.DiscChange:
    """What goes on each end for this load, with as many of the discs that are on as possible left in place?

    # Formula
    As `load`(super::load()) up to the number of discs; then the fewest discs off and on, where only the
    outermost comes off; then the largest inside. `on_bar` names the kinds on each end from the inside out.

    # Errors
    As `load`(super::load()); `not_in_stock` for a disc on the bar that the stock does not have.

    # Source
    Arithmetic (row `loading.load_from`).
    """
    given: dict[str, Any] = {"implement": implement, "stock": stock, "target": target, "policy": policy, "on_bar": on_bar}
    return _call("loading.load_from", given)  # type: ignore[no-any-return]


def buy(*, implement: _t.ImplementInput, stock: _t.StockInput, low: _t.MassInput, high: _t.MassInput, offered: Sequence[_t.MassInput]) -> _t.Purchase:
    """Which one added pair closes the largest gap in this range?

    # Formula
    For each disc offered: the largest gap of `reachable`(super::reachable()) with one pair more (one
    for each end that is loaded alike). Here the ends of the range count as ends of a gap, except below
    the lightest load, so that a range which the stock does not fill shows.

    # Errors
    `out_of_range` for more than 20 discs; `interval_reversed`; `stock_too_large`; those of a disc.

    # Source
    Arithmetic (row `loading.buy`).
    """
    given: dict[str, Any] = {"implement": implement, "stock": stock, "low": low, "high": high, "offered": offered}
    return _call("loading.buy", given)  # type: ignore[no-any-return]


def centre_height(*, left: Sequence[_t.Length], right: Sequence[_t.Length]) -> _t.Length:
    """How high is the bar's centre with discs of these diameters on its ends?

    # Formula
    Half the largest diameter, which must be the same on both ends within 2 mm.

    # Errors
    `no_disc` for an end without discs; `lopsided_diameters`.

    # Source
    Geometry (row `loading.centre_height`).
    """
    given: dict[str, Any] = {"left": left, "right": right}
    return _call("loading.centre_height", given)  # type: ignore[no-any-return]


def drop_below_full(*, diameter: _t.Length) -> _t.Length:
    """How much lower does the bar lie with this largest disc than with a full one of 450 mm?

    # Formula
    `(450 mm - d) / 2`; blocks of this height under each end bring it back.

    # Errors
    `out_of_range` for a diameter at or below 0 mm or above 1000 mm.

    # Source
    Geometry (row `loading.drop_below_full`).
    """
    given: dict[str, Any] = {"diameter": diameter}
    return _call("loading.drop_below_full", given)  # type: ignore[no-any-return]


def grip_height(*, bar: _t.BarInput, centre: _t.Length) -> _t.GripHeight:
    """How high do the hands begin on this bar, with its centre this high?

    # Formula
    A straight bar: the centre. A hex bar: the centre plus the offset of the handles. The centre stands on
    the discs plus whatever lies under them.

    # Errors
    `overflow` beyond 10 m.

    # Source
    Geometry (row `loading.grip_height`).
    """
    given: dict[str, Any] = {"bar": bar, "centre": centre}
    return _call("loading.grip_height", given)  # type: ignore[no-any-return]


def keep_height(*, bar: _t.BarInput, stock: _t.StockInput, target: _t.MassInput, policy: _t.Rounding, height: _t.Length) -> _t.KeepHeight:
    """How is this load made with the bar's centre at this height: with which discs, or on which blocks?

    # Formula
    Held by discs: at least one disc a side of twice the height (within 2 mm), none larger, else as
    `load`(super::load()). On blocks: the plain load, and `height - d / 2` under each end.

    One load, on whatever blocks it takes; the rules hold a lift's height by `AtHeight`(super::AtHeight), which knows the blocks
    that there are.

    # Domain
    Light, thin discs of full diameter are often not made to be dropped.

    # Errors
    `out_of_range` for a height at or below 0 mm or above 500 mm; those of `load`(super::load()) for the
    plain load.

    # Source
    Geometry (row `loading.keep_height`).
    """
    given: dict[str, Any] = {"bar": bar, "stock": stock, "target": target, "policy": policy, "height": height}
    return _call("loading.keep_height", given)  # type: ignore[no-any-return]


def iwf_bar_men(*, id: _t.Name) -> _t.Bar:
    """What is a men's weightlifting bar?

    # Formula
    20 kg, collars of 2.5 kg each, 415 mm of sleeve.

    # Errors
    None for a valid name.

    # Source
    IWF rules, section 3.3, as others restate them (row `loading.iwf_bar_men`).

    # Known how
    Not read in the work itself; copies seen: a national federation's page, a broadcaster's guide and an article that restate the rules.

    Source: International Weightlifting Federation. Technical and Competition Rules and Regulations, section 3.3, Sport equipment (editions 2013 to 2020)
    """
    given: dict[str, Any] = {"id": id}
    return _call("loading.iwf_bar_men", given)  # type: ignore[no-any-return]


def iwf_bar_women(*, id: _t.Name) -> _t.Bar:
    """What is a women's weightlifting bar?

    # Formula
    15 kg, collars of 2.5 kg each, 320 mm of sleeve.

    # Errors
    None for a valid name.

    # Source
    IWF rules, section 3.3, as others restate them (row `loading.iwf_bar_women`).

    # Known how
    Not read in the work itself; copies seen: a national federation's page, a broadcaster's guide and an article that restate the rules.

    Source: International Weightlifting Federation. Technical and Competition Rules and Regulations, section 3.3, Sport equipment (editions 2013 to 2020)
    """
    given: dict[str, Any] = {"id": id}
    return _call("loading.iwf_bar_women", given)  # type: ignore[no-any-return]


def powerlifting_bar(*, id: _t.Name) -> _t.Bar:
    """What is a powerlifting bar?

    # Formula
    20 kg and collars of 2.5 kg each, 25 kg together, for men and women. The rules give no sleeve length:
    measure it.

    # Errors
    None for a valid name.

    # Source
    WDFPF rules: bar and collars together weigh 25 kg. The split into 20 kg and twice 2.5 kg is recalled, and the
    same in weightlifting (row `loading.powerlifting_bar`).

    # Known how
    Read in the work or in its abstract. Recalled, not read again: the split into bar and collars, and one bar for men and women.

    Source: World Drug-Free Powerlifting Federation. Rule Book, revised January 2007, Equipment and Specifications
    """
    given: dict[str, Any] = {"id": id}
    return _call("loading.powerlifting_bar", given)  # type: ignore[no-any-return]


def iwf_stock(*, pairs: float) -> _t.Stock:
    """Which discs has a weightlifting set, with so many pairs of each?

    # Formula
    25, 20, 15, 10, 5, 2.5, 2, 1.5, 1 and 0.5 kg; those of 10 kg and more are 450 mm across. The smaller
    ones have no diameter here, nor has any a thickness: measure them.

    # Errors
    `out_of_range` above 15 pairs.

    # Source
    IWF rules, section 3.3.3, as others restate them (row `loading.iwf_stock`).

    # Known how
    Not read in the work itself; copies seen: a broadcaster's guide and an article that restate the rules.

    Source: International Weightlifting Federation. Technical and Competition Rules and Regulations, section 3.3, Sport equipment (editions 2013 to 2020)
    """
    given: dict[str, Any] = {"pairs": pairs}
    return _call("loading.iwf_stock", given)  # type: ignore[no-any-return]


def powerlifting_stock(*, pairs: float) -> _t.Stock:
    """Which discs has a powerlifting set, with so many pairs of each?

    # Formula
    25, 20, 15, 10, 5, 2.5 and 1.25 kg; 0.5 and 0.25 kg serve records only and are listed last. The rules
    limit diameter and thickness without fixing them: measure them.

    # Errors
    `out_of_range` above 15 pairs.

    # Source
    IPF rules, Bars and Discs, recalled for the edition of 2014 (row `loading.powerlifting_stock`). A copy of
    unknown edition lists discs up to 50 kg, and a page for referees has 0.5, 1, 1.5 and 2 kg for records: count
    your own.

    # Known how
    Recalled, not read again: take the numbers with care.

    Source: International Powerlifting Federation. Technical Rules Book, Bars and Discs (2014)
    """
    given: dict[str, Any] = {"pairs": pairs}
    return _call("loading.powerlifting_stock", given)  # type: ignore[no-any-return]


def pound_stock(*, pairs: float) -> _t.Stock:
    """Which iron discs does the trade sell in pounds, with so many pairs of each?

    # Formula
    45, 35, 25, 10, 5 and 2.5 lb; about 450, 360, 280, 228, 200 and 160 mm across. No standard fixes
    them: weigh and measure your own.

    # Errors
    `out_of_range` above 15 pairs.

    # Source
    Common practice (row `loading.pound_stock`).
    """
    given: dict[str, Any] = {"pairs": pairs}
    return _call("loading.pound_stock", given)  # type: ignore[no-any-return]


def quarter_pounds_down(*, mass: _t.MassInput) -> float:
    """How do powerlifting records in kilograms read in pounds?

    # Formula
    `lb = floor(4 kg / 0.453 592 37) / 4`: down to the next lower quarter pound, never to the nearest.

    # Domain
    Loads; labels of body-mass classes are rounded in other ways.

    # Errors
    None.

    # Source
    The rows of rule books and record charts as recalled; none was read (row `loading.quarter_pounds_down`).

    # Known how
    Recalled, not read again: take the numbers with care.

    Source: International Powerlifting Federation. Technical Rules Book, Bars and Discs (2014)
    """
    given: dict[str, Any] = {"mass": mass}
    return _call("loading.quarter_pounds_down", given)  # type: ignore[no-any-return]


def rack_check(*, setup: _t.RackSetup) -> _t.RackCheck:
    """What does this setup at the rack ask for?

    # Formula
    Benching or squatting alone without pins: a caution, at least 4 repetitions in reserve, no step up.
    Company or pins that were not recorded count as absent.

    # Errors
    None.

    # Source
    Our choice (row `loading.rack_check`).
    """
    given: dict[str, Any] = {"setup": setup}
    return _call("loading.rack_check", given)  # type: ignore[no-any-return]


def handling_order(*, stock: _t.StockInput, before: _t.Numbers, after: _t.Numbers, limit: _t.MassInput) -> _t.HandlingOrder:
    """In which order do discs come off and go on, so that the bar does not tip?

    # Formula
    Outermost first, the ends in turn, until both ends hold what stays; then inside out, the ends in turn.
    The most imbalance is then the heaviest disc that moves, which no order can avoid.

    # Errors
    `imbalance_above_limit` if a disc that moves is heavier than `limit`; `not_in_stock`; `out_of_range`
    for more than 30 discs on an end.

    # Source
    Arithmetic (row `loading.handling_order`).
    """
    given: dict[str, Any] = {"stock": stock, "before": before, "after": after, "limit": limit}
    return _call("loading.handling_order", given)  # type: ignore[no-any-return]


def read_bar(*, bar: _t.BarInput, stock: _t.StockInput, left: _t.Numbers, right: _t.Numbers, uneven: bool, tolerance: _t.Tolerance) -> _t.BarReading:
    """What is on the bar now?

    # Formula
    `total = bar + 2 collar + left + right`; `left` and `right` name the kinds of disc seen on each end, in
    any order. Limits of bar, collars and discs add up.

    # Errors
    `uneven_ends` if the face values of the two ends differ and `uneven` is false; `lopsided_diameters` if
    their largest discs do; `sleeve_overflow`; `not_in_stock`; those of `Tolerance::band`.

    # Source
    Arithmetic (row `loading.read_bar`).
    """
    given: dict[str, Any] = {"bar": bar, "stock": stock, "left": left, "right": right, "uneven": uneven, "tolerance": tolerance}
    return _call("loading.read_bar", given)  # type: ignore[no-any-return]


def shared_bar(*, bar: _t.BarInput, stock: _t.StockInput, lifters: Sequence[_t.SharedLifterInput]) -> _t.SharedBar:
    """Several lifters, one bar: who goes first, and which discs move between the sets?

    # Formula
    The lifters take turns in one order that stays the same in every round (who has no sets left is
    skipped), so everybody rests alike. Of all orders and all stacks that make each load within its
    tolerance below: the fewest discs handled, then the smallest sum of distances from the loads, then
    the order given.

    # Domain
    1 to 4 lifters, up to 12 sets each. Heavier discs stay inside lighter ones.

    # Errors
    `not_loadable` where nothing within the tolerance of a set can be made; `out_of_range` for too many
    lifters or sets, or a negative tolerance; `stock_too_large`.

    # Source
    Arithmetic (row `loading.shared_bar`).
    """
    given: dict[str, Any] = {"bar": bar, "stock": stock, "lifters": lifters}
    return _call("loading.shared_bar", given)  # type: ignore[no-any-return]


def unit_slip(*, last: _t.MassInput, now: _t.MassInput) -> _t.UnitSlip | None:
    """Does this load look as if it were typed in the wrong unit, beside the last one?

    # Formula
    `now / last` within 3 % of 2.2046, or of 0.4536.

    # Errors
    `load_out_of_domain` for a load at or below 0 kg.

    # Source
    Our choice (rows `loading.unit_slip`, `loading.unit_slip_within`).
    """
    given: dict[str, Any] = {"last": last, "now": now}
    return _call("loading.unit_slip", given)  # type: ignore[no-any-return]


def step_reality(*, implement: _t.ImplementInput, stock: _t.StockInput, from_: _t.MassInput, options: _t.BridgeOptionsInput) -> _t.StepReality:
    """How large is the smallest step here, and what bridges it?

    # Formula
    `percent = 100 (next - from) / from`, against 2 to 10 % of the load. Bridges: discs whose added pair
    makes a step of at most 10 %; repetitions as in `rep_bridge`.

    # Errors
    `above_heaviest` without a heavier load; `load_out_of_domain` for a load that is zero or assistance;
    `out_of_range` for more than 20 discs; those of `rep_bridge`.

    # Source
    Arithmetic; the range: American College of Sports Medicine 2009 (rows `loading.step_low`,
    `loading.step_high`).
    """
    given: dict[str, Any] = {"implement": implement, "stock": stock, "from": from_, "options": options}
    return _call("loading.step_reality", given)  # type: ignore[no-any-return]


def rep_bridge(*, from_: _t.MassInput, to: _t.MassInput, wanted: _t.Reps, capacity: _t.Numbers) -> _t.Reps | None:
    """How many repetitions to reach at the present load before the next one is worth a try?

    # Formula
    The smallest `r >= wanted` with `capacity(wanted) / capacity(r) >= to / from`: who does `r` at the
    present load has, by the table, room for the wanted repetitions at the next.

    # Domain
    An estimate, as good as the table for this lifter; none if the table ends before.

    # Errors
    `out_of_range` for an empty or too long table, a part outside 0 to 1.5, wanted repetitions that are
    not in the table; `not_whole` for half repetitions; `not_falling` if the table rises;
    `load_out_of_domain` for a load at or below zero or a step down.

    # Source
    Arithmetic (row `loading.rep_bridge`).
    """
    given: dict[str, Any] = {"from": from_, "to": to, "wanted": wanted, "capacity": capacity}
    return _call("loading.rep_bridge", given)  # type: ignore[no-any-return]


def iwf_tolerance(*, face: _t.MassInput) -> _t.MassBand:
    """What may a weightlifting bar, collar or disc weigh by the rules?

    # Formula
    Above 5 kg: from 0.05 % below to 0.1 % above the face value; up to 5 kg: from nothing below to 10 g
    above.

    # Domain
    One component of up to 1000 kg; limits of several add up.

    # Errors
    `out_of_range` below 0 kg or above 1000 kg.

    # Source
    IWF rules, section 3.3, recalled; their text was not seen (row `loading.iwf_tolerance`).

    # Known how
    Recalled, not read again: take the numbers with care.

    Source: International Weightlifting Federation. Technical and Competition Rules and Regulations, section 3.3, Sport equipment (editions 2013 to 2020)
    """
    given: dict[str, Any] = {"face": face}
    return _call("loading.iwf_tolerance", given)  # type: ignore[no-any-return]


def powerlifting_tolerance(*, face: _t.MassInput) -> _t.MassBand:
    """What may a powerlifting bar, collar or disc weigh by the rules?

    # Formula
    0.25 % or 10 g either way; that the larger of the two holds is our reading.

    # Domain
    One component of up to 1000 kg; limits of several add up. The 10 g count below 4 kg.

    # Errors
    `out_of_range` below 0 kg or above 1000 kg.

    # Source
    IPF rules, Bars and Discs, as a translation quotes them (row `loading.powerlifting_tolerance`).

    # Known how
    Not read in the work itself; copies seen: one translation of the rules.

    Source: International Powerlifting Federation. Technical Rules Book, Bars and Discs (2014)
    """
    given: dict[str, Any] = {"face": face}
    return _call("loading.powerlifting_tolerance", given)  # type: ignore[no-any-return]


def warm_up(*, bar: _t.BarInput, stock: _t.StockInput, work: _t.MassInput, steps: Sequence[_t.WarmUpStepInput]) -> _t.WarmUp:
    """Which warm-up loads, and which discs come off and go on, on the way to the work set?

    # Formula
    Among all ways that stay within the tolerance of every step: the fewest discs handled (a disc comes
    off only after those outside it), then the smallest sum of distances from the targets. A step never
    crosses the middle between its target and its neighbour's, so the loads rise; none reaches the work
    load, which is the heaviest load not above `work`.

    # Domain
    Up to 12 steps with rising targets, from the empty bar. Heavier discs stay inside lighter ones.

    # Errors
    `not_rising`; `above_work_set` for a reference set at or above the work load; `not_loadable` for a
    reference set that the stock can't make; `out_of_range` for a negative tolerance or too many steps;
    those of `load`(super::load()).

    # Source
    Arithmetic (row `loading.warm_up`).
    """
    given: dict[str, Any] = {"bar": bar, "stock": stock, "work": work, "steps": steps}
    return _call("loading.warm_up", given)  # type: ignore[no-any-return]


def warm_up_steps(*, empty: _t.MassInput, work: _t.MassInput, reference: _t.WarmUpStepInput | None = None) -> list[_t.WarmUpStep]:
    """Which warm-up sets lead to this work load, if the coach has no list of their own?

    # Formula
    The empty bar for 10, then 40 % for 8, 60 % for 5, 75 % for 3 and 90 % for 1 of the work load, each
    within 5 % of the work load; a step nearer than that to the empty bar, to the work load or to the
    reference set is left out, and the reference set stands in its place among the rest.

    # Errors
    `above_work_set` for a reference set at or above the work load.

    # Source
    Our choice (row `loading.warm_up_steps`).
    """
    given: dict[str, Any] = {"empty": empty, "work": work}
    if reference is not None:
        given["reference"] = reference
    return _call("loading.warm_up_steps", given)  # type: ignore[no-any-return]
