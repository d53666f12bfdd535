"""The functions and defaults of `gate`. Generated from the library; do not edit."""

# ruff: noqa
from __future__ import annotations

from collections.abc import Mapping, Sequence
from typing import Any

from bismar import types as _t
from bismar._native import call as _call

critical_criteria: float
"""Most critical criteria of one lift: what must be right on every repetition has to stay a short list.

# Source
Our choice (row `gate.critical_criteria`).

Source: This project's own choice; a parameter.
"""
pass_rules_default: _t.PassRules
"""When a set passes, where a lift names nothing else.

Source: This project's own choice; a parameter.
"""
range_sessions: float
"""Consecutive passing sessions before a step in range, tempo or variant.

# Source
Our choice (row `gate.range_sessions`): three sessions, as in studies of how long a learnt skill is
kept, by analogy only, since those were not lifts.

Source: This project's own choice; a parameter.
"""
load_sessions: float
"""Consecutive passing sessions before a small step in load.

# Source
Our choice (row `gate.load_sessions`).

Source: This project's own choice; a parameter.
"""
neutral_fails: float
"""Fails on confirmed days below the usual in a row that say nothing; the next one counts.

# Source
Our choice (row `gate.neutral_fails`).

Source: This project's own choice; a parameter.
"""
spacing_days: float
"""Days between two steps up of one lift.

# Source
Our choice (row `gate.spacing_days`).

Source: This project's own choice; a parameter.
"""

_CONSTANTS = {
    "critical_criteria": "gate.critical_criteria",
    "pass_rules_default": "gate.pass_rules_default",
    "range_sessions": "gate.range_sessions",
    "load_sessions": "gate.load_sessions",
    "neutral_fails": "gate.neutral_fails",
    "spacing_days": "gate.spacing_days",
}


def __getattr__(name: str) -> Any:
    if name in _CONSTANTS:
        return _call(_CONSTANTS[name], {})
    raise AttributeError(f"module {__name__!r} has no attribute {name!r}")


def pass_rules() -> _t.PassRules:
    """The default rules by which marks become passes.

    # Domain
    At most one miss in ten, never fewer than one allowed; no miss on a critical criterion; none in the
    first two repetitions of the first work set, which must pass by itself; the lifter's own marks do not
    count.

    # Errors
    None.

    # Source
    Our choice (row `gate.pass_rules`).
    """
    given: dict[str, Any] = {}
    return _call("gate.pass_rules", given)  # type: ignore[no-any-return]


def misses_allowed(*, rules: _t.PassRulesInput, scored: float) -> float:
    """How many repetitions of a session may be missed before it no longer passes?

    # Formula
    `max(least, floor(percent * scored / 100))`; all in repetitions. 1 of 10 and 2 of 25 by default.

    # Domain
    Any number of scored repetitions; misses on a critical criterion are not among those allowed.

    # Errors
    `out_of_range` where the rules would let more than half be missed.

    # Source
    Our choice (row `gate.misses_allowed`).
    """
    given: dict[str, Any] = {"rules": rules, "scored": scored}
    return _call("gate.misses_allowed", given)  # type: ignore[no-any-return]


def set_pass(*, rules: _t.PassRulesInput, criteria: Sequence[_t.CriterionInput], number: float, set: _t.SetMarks) -> _t.SetVerdict:
    """Did that set pass, and if not, on what?

    # Domain
    `number` is the number of the work set, 1 being the first one, done cold. Passed: every critical
    criterion judged in this set was met, misses are within what the set may have, and none was among the
    first repetitions of the first set. What was not seen is neither a pass nor a fail.

    # Errors
    Those of `SetMarks::check` and `check_criteria`; `out_of_range` for a set number 0.

    # Source
    Our choice (row `gate.set_pass`).
    """
    given: dict[str, Any] = {"rules": rules, "criteria": criteria, "number": number, "set": set}
    return _call("gate.set_pass", given)  # type: ignore[no-any-return]


def session_pass(*, rules: _t.PassRulesInput, criteria: Sequence[_t.CriterionInput], sets: Sequence[_t.SetMarks]) -> _t.SessionVerdict:
    """Did the session pass, and if not, what stood against it?

    # Formula
    Passed if no reason stands against it: misses over all scored repetitions at most
    `PassRules::allowed_of` them, every critical criterion met in each set in which it is judged, every
    criterion seen, the first work set passed by itself with its first repetitions clean, every set scored.
    Failed if one of these is broken whatever the missing marks would say; not scored otherwise.

    # Domain
    The work sets of one lift in one session in the order done, warm-ups left out; up to 100.

    # Errors
    Those of `SetMarks::check`, with the number of the set, and of `check_criteria`.

    # Source
    Our choice; that the first set counts by itself rests on learning being shown by a delayed test (row
    `gate.session_pass`).
    """
    given: dict[str, Any] = {"rules": rules, "criteria": criteria, "sets": sets}
    return _call("gate.session_pass", given)  # type: ignore[no-any-return]


def usual_evidence() -> _t.Evidence:
    """The test of evidence to begin with, where nobody has asked for another.

    # Domain
    Between 7 and 9 acceptable repetitions of 10, over at most 60 repetitions and on at least two days. It opens after twelve
    straight acceptable repetitions, and ends after three straight misses.

    # Errors
    None.

    # Source
    Our choice (row `gate.usual_evidence`).
    """
    given: dict[str, Any] = {}
    return _call("gate.usual_evidence", given)  # type: ignore[no-any-return]


def check(*, gate: _t.Gate, facts: _t.GateFactsInput) -> _t.GateState:
    """Is the gate open, and if not, what is missing and how much of it?

    # Domain
    Facts about one lift at one tuple; two sessions of one day count as one.

    # Errors
    Those of `GateFacts::check`.

    # Source
    Our choice; mastery criteria of so many correct over so many consecutive sessions come from the
    teaching of discrete skills and are used here by analogy (row `gate.check`).
    """
    given: dict[str, Any] = {"gate": gate, "facts": facts}
    return _call("gate.check", given)  # type: ignore[no-any-return]


def session_chance(*, acceptable: float, of: float, rate: float, correlation: float) -> float:
    """How likely is a session with at least so many acceptable repetitions?

    # Formula
    `P(X >= acceptable)`, `X` beta-binomial over `of` repetitions with mean `rate` per repetition and
    correlation `correlation` between two repetitions of one session (`a = rate (1/rho - 1)`,
    `b = (1 - rate) (1/rho - 1)`); binomial where the correlation is 0.

    # Domain
    1 to 200 repetitions; a rate from 0 to 1; a correlation from 0, below 1. Repetitions of one session
    are alike, so 0 is a lower bound.

    # Errors
    Those of `PassRun::new`; `out_of_range`, `not_finite`.

    # Source
    Skellam 1948 (row `gate.session_chance`).

    # Known how
    Recalled, not read again: take the numbers with care.

    Source: Skellam JG. A probability distribution derived from the binomial distribution by regarding the probability of success as variable between the sets of trials. J R Stat Soc B 10:257-261, 1948
    """
    given: dict[str, Any] = {"acceptable": acceptable, "of": of, "rate": rate, "correlation": correlation}
    return _call("gate.session_chance", given)  # type: ignore[no-any-return]


def operating_characteristic(*, gate: _t.Gate, skill: _t.SkillInput, sessions: float) -> _t.OperatingCharacteristic:
    """With this gate, how long will a lifter of this skill be held?

    # Formula
    Exact, as a Markov chain over sessions. Pass-run of `S` sessions that pass with chance `q` each: one try
    `q^S`, mean `(1 - q^S) / ((1 - q) q^S)`. Test of evidence: the chain of misses, looked at after each
    session; each end without opening is followed by a new try. Within `sessions` sessions: the renewal of
    tries.

    # Domain
    A pass-run or a test of evidence, alone or within `all`; the other conditions are taken as met, no day as
    bad. Repetitions alike within a session and independent between sessions. `sessions` from 1 to 10 000.

    # Errors
    `gate_not_single`; `gate_never_opens` with fewer scored repetitions than the run asks for;
    `missing_field` for a test of evidence without `reps`; `out_of_range`, `not_finite`.

    # Source
    Arithmetic of the binomial or beta-binomial distribution and of runs (row
    `gate.operating_characteristic`).
    """
    given: dict[str, Any] = {"gate": gate, "skill": skill, "sessions": sessions}
    return _call("gate.operating_characteristic", given)  # type: ignore[no-any-return]


def cohen_kappa(*, table: Sequence[_t.Numbers], weights: _t.AgreementWeights, level: float) -> _t.Agreement:
    """How far do two raters agree beyond chance, given the table of their pairs?

    # Formula
    `kappa = (po - pe) / (1 - pe)`, `po = sum w_ij p_ij`, `pe = sum w_ij p_i. p_.j`; weights 1 on the diagonal
    and 0 elsewhere, or `1 - |i-j| / (k-1)`, or `1 - ((i-j) / (k-1))^2`. Variance
    `(sum p_ij (w_ij (1-pe) - (w_i. + w_.j) (1-po))^2 - (po pe - 2 pe + po)^2) / (n (1-pe)^4)`, with `w_i.`
    and `w_.j` the mean weights of a row and a column; interval `kappa` plus and minus the normal quantile
    times its root.

    # Domain
    A square table of 2 to 20 categories, in order if weighted; rows one rater, columns the other; a level
    from 0.5 to 0.9999. The standard error is for large samples, and the interval may pass 1.

    # Errors
    `wrong_length`, `no_trials`, `out_of_range`; `zero_spread` where both used one and the same category only.

    # Source
    Cohen 1960 and 1968; Fleiss, Cohen, Everitt 1969 (row `gate.cohen_kappa`).

    # Known how
    Recalled, not read again: take the numbers with care.

    Source: Cohen J. A coefficient of agreement for nominal scales. Educ Psychol Meas 20:37-46, 1960; weighted: Cohen J, Psychol Bull 70:213-220, 1968; standard error: Fleiss JL, Cohen J, Everitt BS, Psychol Bull 72:323-327, 1969
    """
    given: dict[str, Any] = {"table": table, "weights": weights, "level": level}
    return _call("gate.cohen_kappa", given)  # type: ignore[no-any-return]


def rater_agreement(*, first: Sequence[_t.Mark], second: Sequence[_t.Mark], weights: _t.AgreementWeights, level: float) -> _t.Agreement:
    """Do two raters mark alike, over the same criteria of the same sets?

    # Formula
    Kappa (`cohen_kappa`) over met, borderline and not met, in this order.

    # Domain
    Two lists of marks of equal length, place by place the same thing seen. Pairs with a mark that was not
    seen are left out and counted.

    # Errors
    `wrong_length` for lists of different length; `out_of_range` above 100 000 pairs; those of
    `cohen_kappa`.

    # Source
    Our choice of what to compare; the coefficient is Cohen's (row `gate.rater_agreement`).
    """
    given: dict[str, Any] = {"first": first, "second": second, "weights": weights, "level": level}
    return _call("gate.rater_agreement", given)  # type: ignore[no-any-return]
