"""The functions and defaults of `statistics`. Generated from the library; do not edit."""

# ruff: noqa
from __future__ import annotations

from collections.abc import Mapping, Sequence
from typing import Any

from bismar import types as _t
from bismar._native import call as _call

beta_prior_default: _t.BetaPrior
"""What is believed of a rate before the trials where a caller names nothing: every rate equally likely.

Source: This project's own choice; a parameter.
"""
deviation_to_spread: float
"""Turns the median absolute deviation of normal values into their standard deviation: 1 over the normal
quantile of 3/4.

# Known how
Recalled, not read again: take the numbers with care.

Source: Hampel FR. The influence curve and its role in robust estimation. J Am Stat Assoc 69:383-393, 1974
"""
change_multiplier: float
"""1.96, the rounded normal quantile by which a 95 % minimal detectable change is usually defined.

# Known how
Recalled, not read again: take the numbers with care.

Source: Hopkins WG. Measures of reliability in sports medicine and science. Sports Med 30:1-15, 2000
"""
small_effect: float
"""Smallest worthwhile change as a part of the spread between people: Cohen's small effect.

# Known how
Read in the work or in its abstract.

Source: Hopkins WG. How to interpret changes in an athletic performance test. Sportscience 8:1-7, 2004
"""
competition_effect: float
"""Smallest worthwhile change of a solo competitor as a part of the own variation between competitions.

# Known how
Read in the work or in its abstract.

Source: Hopkins WG. How to interpret changes in an athletic performance test. Sportscience 8:1-7, 2004
"""
range_to_spread: float
"""Mean range of two normal values, in standard deviations (d2).

# Known how
Recalled, not read again: take the numbers with care.

Source: NIST/SEMATECH e-Handbook of Statistical Methods
"""
range_limit: float
"""Upper limit of the moving range of two, in mean moving ranges (D4).

# Known how
Recalled, not read again: take the numbers with care.

Source: NIST/SEMATECH e-Handbook of Statistical Methods
"""
cusum_reference: float
"""Usual slack of a cumulative sum, in standard deviations: half of a shift of one.

# Known how
Recalled, not read again: take the numbers with care.

Source: Montgomery DC. Introduction to Statistical Quality Control, chapter 9
"""
cusum_threshold: float
"""Usual threshold of a cumulative sum, in standard deviations.

# Known how
Recalled, not read again: take the numbers with care.

Source: Montgomery DC. Introduction to Statistical Quality Control, chapter 9
"""
cusum_design_default: _t.CusumDesign
"""Slack, threshold and start of a cumulative sum where a caller names none.

Source: This project's own choice; a parameter.
"""
clip_at: float
"""Innovations beyond this many standard deviations are clipped: 95 % efficiency where nothing is wrong.

# Known how
Recalled, not read again: take the numbers with care.

Source: Holland PW, Welsch RE. Robust regression using iteratively reweighted least-squares. Commun Stat Theory Methods 6:813-827, 1977
"""
inflate_at: float
"""Readings beyond this many standard deviations are trusted less.

Source: This project's own choice; a parameter.
"""

_CONSTANTS = {
    "beta_prior_default": "statistics.beta_prior_default",
    "deviation_to_spread": "statistics.deviation_to_spread",
    "change_multiplier": "statistics.change_multiplier",
    "small_effect": "statistics.small_effect",
    "competition_effect": "statistics.competition_effect",
    "range_to_spread": "statistics.range_to_spread",
    "range_limit": "statistics.range_limit",
    "cusum_reference": "statistics.cusum_reference",
    "cusum_threshold": "statistics.cusum_threshold",
    "cusum_design_default": "statistics.cusum_design_default",
    "clip_at": "statistics.clip_at",
    "inflate_at": "statistics.inflate_at",
}


def __getattr__(name: str) -> Any:
    if name in _CONSTANTS:
        return _call(_CONSTANTS[name], {})
    raise AttributeError(f"module {__name__!r} has no attribute {name!r}")


def sequential_lines(*, test: _t.SequentialTest) -> _t.SequentialLines:
    """Where do the two lines of a sequential test lie?

    # Formula
    `k = ln(p1 (1-p0) / (p0 (1-p1)))`, slope `ln((1-p0)/(1-p1)) / k`, accept intercept
    `ln((1-alpha)/beta) / k`, reject intercept `ln((1-beta)/alpha) / k`; `p0` acceptable and `p1` unacceptable
    fault rate per trial, `alpha` false rejection, `beta` false acceptance.

    # Domain
    Independent trials at a constant rate. Repetitions of one set are not quite independent, so the true error
    rates lie above the nominal ones.

    # Errors
    Those of `SequentialTest::new`; `not_finite` for rates or errors so near 0 that a line lies beyond `f64`.

    # Source
    Wald 1945; worked example in the NIST/SEMATECH e-Handbook 6.2.6 (row `statistics.sequential_lines`).

    # Known how
    Recalled, not read again: take the numbers with care.

    Source: NIST/SEMATECH e-Handbook of Statistical Methods
    """
    given: dict[str, Any] = {"test": test}
    return _call("statistics.sequential_lines", given)  # type: ignore[no-any-return]


def sequential_counts(*, test: _t.SequentialTest, trials: float) -> _t.SequentialCounts:
    """After so many trials, how few faults accept and how many reject?

    # Formula
    `accept = floor(slope n - accept intercept)`, `reject = ceil(slope n + reject intercept)`; accept is absent
    while negative, reject while above `n`.

    # Domain
    As `sequential_lines`. A tie on a line is a decision.

    # Errors
    None beyond those of `SequentialTest::new`.

    # Source
    NIST/SEMATECH e-Handbook 6.2.6 (row `statistics.sequential_counts`).

    # Known how
    Recalled, not read again: take the numbers with care.

    Source: NIST/SEMATECH e-Handbook of Statistical Methods
    """
    given: dict[str, Any] = {"test": test, "trials": trials}
    return _call("statistics.sequential_counts", given)  # type: ignore[no-any-return]


def sequential_decision(*, test: _t.SequentialTest, faults: float, trials: float) -> _t.SequentialDecision:
    """Accept, reject, or go on after so many faults in so many trials?

    # Formula
    `L = d ln(p1/p0) + (n-d) ln((1-p1)/(1-p0))`; reject if `L >= ln((1-beta)/alpha)`, accept if
    `L <= ln(beta/(1-alpha))`; `d` faults, `n` trials.

    # Domain
    As `sequential_lines`. No upper bound on the number of trials: a gate needs one of its own.

    # Errors
    `successes_exceed_trials` with more faults than trials.

    # Source
    Wald 1945 (row `statistics.sequential_decision`).

    # Known how
    Recalled, not read again: take the numbers with care.

    Source: Wald A. Sequential tests of statistical hypotheses. Ann Math Stat 16:117-186, 1945
    """
    given: dict[str, Any] = {"test": test, "faults": faults, "trials": trials}
    return _call("statistics.sequential_decision", given)  # type: ignore[no-any-return]


def sequential_acceptance(*, test: _t.SequentialTest, rate: float) -> float:
    """With this test, how likely is a lifter of that true fault rate to be accepted?

    # Formula
    In `h`: `p = (1 - ((1-p1)/(1-p0))^h) / ((p1/p0)^h - ((1-p1)/(1-p0))^h)`, acceptance
    `(A^h - 1)/(A^h - B^h)` with `A = (1-beta)/alpha`, `B = beta/(1-alpha)`.

    # Domain
    `rate` from 0 to 1. Ignores how far a decision overshoots its line, so it is an approximation.

    # Errors
    `out_of_range` for a rate outside 0 to 1.

    # Source
    Wald 1945 (row `statistics.sequential_acceptance`).

    # Known how
    Recalled, not read again: take the numbers with care.

    Source: Wald A. Sequential tests of statistical hypotheses. Ann Math Stat 16:117-186, 1945
    """
    given: dict[str, Any] = {"test": test, "rate": rate}
    return _call("statistics.sequential_acceptance", given)  # type: ignore[no-any-return]


def sequential_average_trials(*, test: _t.SequentialTest, rate: float) -> float:
    """With this test, how many trials does a decision take on average at that true fault rate?

    # Formula
    `(P ln B + (1-P) ln A) / (p ln(p1/p0) + (1-p) ln((1-p1)/(1-p0)))`, `P` the probability of acceptance; at the
    slope itself, `accept intercept * reject intercept / (slope (1 - slope))`.

    # Domain
    As `sequential_acceptance`.

    # Errors
    `out_of_range` for a rate outside 0 to 1.

    # Source
    Wald 1945 (row `statistics.sequential_average_trials`).

    # Known how
    Recalled, not read again: take the numbers with care.

    Source: Wald A. Sequential tests of statistical hypotheses. Ann Math Stat 16:117-186, 1945
    """
    given: dict[str, Any] = {"test": test, "rate": rate}
    return _call("statistics.sequential_average_trials", given)  # type: ignore[no-any-return]


def simple_interval(*, successes: float, trials: float, level: float) -> _t.Interval:
    """What is the textbook interval of a rate? Shown for comparison: too narrow for the counts of a training hall.

    # Formula
    `p +- z sqrt(p (1-p) / n)`, `p = x/n`. Ends may leave 0 to 1; at 0 or `n` successes it has no width.

    # Domain
    Hundreds of trials with a rate far from 0 and 1. Use `wilson_interval` instead.

    # Errors
    `no_trials`, `successes_exceed_trials`, `out_of_range` for a level outside 0 to 1 (ends excluded).

    # Source
    Newcombe 1998, method 1 (row `statistics.simple_interval`).

    # Known how
    Recalled, not read again: take the numbers with care.

    Source: Newcombe RG. Two-sided confidence intervals for the single proportion: comparison of seven methods. Stat Med 17:857-872, 1998
    """
    given: dict[str, Any] = {"successes": successes, "trials": trials, "level": level}
    return _call("statistics.simple_interval", given)  # type: ignore[no-any-return]


def wilson_interval(*, successes: float, trials: float, level: float) -> _t.Interval:
    """How well is a rate known? The recommended interval for up to about 40 trials.

    # Formula
    Centre `(p + z^2/2n) / (1 + z^2/n)`, half-width `z sqrt(p(1-p)/n + z^2/4n^2) / (1 + z^2/n)`; `p = x/n`,
    `z` the normal quantile of the level.

    # Domain
    Any counts; independent trials at a constant rate.

    # Errors
    `no_trials`, `successes_exceed_trials`, `out_of_range` for a level outside 0 to 1 (ends excluded).

    # Source
    Wilson 1927; recommended by Brown, Cai & DasGupta 2001 (row `statistics.wilson_interval`).

    # Known how
    Recalled, not read again: take the numbers with care.

    Source: Wilson EB. Probable inference, the law of succession, and statistical inference. J Am Stat Assoc 22:209-212, 1927
    """
    given: dict[str, Any] = {"successes": successes, "trials": trials, "level": level}
    return _call("statistics.wilson_interval", given)  # type: ignore[no-any-return]


def wilson_lower(*, successes: float, trials: float, confidence: float) -> float:
    """At least how high is the rate, with this confidence on one side?

    # Formula
    The lower end of `wilson_interval` with the one-sided normal quantile of the confidence.

    # Domain
    Any counts; confidence from 0.5.

    # Errors
    `no_trials`, `successes_exceed_trials`, `out_of_range` for a confidence below 0.5 or at 1.

    # Source
    Wilson 1927 (row `statistics.wilson_lower`).

    # Known how
    Recalled, not read again: take the numbers with care.

    Source: Wilson EB. Probable inference, the law of succession, and statistical inference. J Am Stat Assoc 22:209-212, 1927
    """
    given: dict[str, Any] = {"successes": successes, "trials": trials, "confidence": confidence}
    return _call("statistics.wilson_lower", given)  # type: ignore[no-any-return]


def wilson_corrected_interval(*, successes: float, trials: float, level: float) -> _t.Interval:
    """How well is a rate known, with a continuity correction: wider, close to the exact interval?

    # Formula
    Low `(2x + z^2 - 1 - z sqrt(z^2 - 2 - 1/n + 4p(n(1-p) + 1))) / (2(n + z^2))`, high
    `(2x + z^2 + 1 + z sqrt(z^2 + 2 - 1/n + 4p(n(1-p) - 1))) / (2(n + z^2))`; 0 at no success, 1 at all.

    # Domain
    Any counts; independent trials at a constant rate.

    # Errors
    `no_trials`, `successes_exceed_trials`, `out_of_range` for a level outside 0 to 1 (ends excluded).

    # Source
    Newcombe 1998, method 4 (row `statistics.wilson_corrected_interval`).

    # Known how
    Not read in the work itself; copies seen: the tests of one statistical package and two more public files.

    Source: Newcombe RG. Two-sided confidence intervals for the single proportion: comparison of seven methods. Stat Med 17:857-872, 1998
    """
    given: dict[str, Any] = {"successes": successes, "trials": trials, "level": level}
    return _call("statistics.wilson_corrected_interval", given)  # type: ignore[no-any-return]


def agresti_coull_interval(*, successes: float, trials: float, level: float) -> _t.Interval:
    """How well is a rate known, by adding a few imagined trials of both kinds?

    # Formula
    `N = n + z^2`, `P = (x + z^2/2)/N`, `P +- z sqrt(P(1-P)/N)`. Ends may leave 0 to 1 and are not cut.

    # Domain
    Recommended above 40 trials; never shorter than `wilson_interval`.

    # Errors
    `no_trials`, `successes_exceed_trials`, `out_of_range` for a level outside 0 to 1 (ends excluded).

    # Source
    Agresti & Coull 1998 (row `statistics.agresti_coull_interval`).

    # Known how
    Recalled, not read again: take the numbers with care.

    Source: Agresti A, Coull BA. Approximate is better than exact for interval estimation of binomial proportions. Am Stat 52:119-126, 1998
    """
    given: dict[str, Any] = {"successes": successes, "trials": trials, "level": level}
    return _call("statistics.agresti_coull_interval", given)  # type: ignore[no-any-return]


def jeffreys_interval(*, successes: float, trials: float, level: float) -> _t.Interval:
    """How well is a rate known, as a posterior that starts from the least informative prior?

    # Formula
    The `a/2` and `1-a/2` quantiles of Beta(x+1/2, n-x+1/2); low is 0 at no success, high is 1 at all.

    # Domain
    Any counts; recommended up to about 40 trials.

    # Errors
    `no_trials`, `successes_exceed_trials`, `out_of_range` for a level outside 0 to 1 (ends excluded).

    # Source
    Brown, Cai & DasGupta 2001, with their rule for the ends (row `statistics.jeffreys_interval`).

    # Known how
    Recalled, not read again: take the numbers with care.

    Source: Brown LD, Cai TT, DasGupta A. Interval estimation for a binomial proportion. Stat Sci 16:101-133, 2001
    """
    given: dict[str, Any] = {"successes": successes, "trials": trials, "level": level}
    return _call("statistics.jeffreys_interval", given)  # type: ignore[no-any-return]


def proportion_score(*, successes: float, trials: float, supposed: float) -> float:
    """How many standard errors does an observed rate lie from a supposed one?

    # Formula
    `z = (x/n - p0) / sqrt(p0 (1-p0) / n)`.

    # Domain
    `p0` strictly between 0 and 1; a normal approximation.

    # Errors
    `no_trials`, `successes_exceed_trials`, `out_of_range` for `p0` at or outside 0 and 1.

    # Source
    NIST/SEMATECH e-Handbook 7.2.4 (row `statistics.proportion_score`).

    # Known how
    Recalled, not read again: take the numbers with care.

    Source: NIST/SEMATECH e-Handbook of Statistical Methods
    """
    given: dict[str, Any] = {"successes": successes, "trials": trials, "supposed": supposed}
    return _call("statistics.proportion_score", given)  # type: ignore[no-any-return]


def clopper_pearson_interval(*, successes: float, trials: float, level: float) -> _t.Interval:
    """How well is a rate known, never promising more than the counts carry?

    # Formula
    Low: the `a/2` quantile of Beta(x, n-x+1), 0 at no success; high: the `1-a/2` quantile of Beta(x+1, n-x),
    1 at all successes; `a = 1 - level`.

    # Domain
    Any counts. Covers at least as often as it says, usually more: wider than needed.

    # Errors
    `no_trials`, `successes_exceed_trials`, `out_of_range` for a level outside 0 to 1 (ends excluded).

    # Source
    Clopper & Pearson 1934 (row `statistics.clopper_pearson_interval`).

    # Known how
    Recalled, not read again: take the numbers with care.

    Source: Clopper CJ, Pearson ES. The use of confidence or fiducial limits illustrated in the case of the binomial. Biometrika 26:404-413, 1934
    """
    given: dict[str, Any] = {"successes": successes, "trials": trials, "level": level}
    return _call("statistics.clopper_pearson_interval", given)  # type: ignore[no-any-return]


def clopper_pearson_lower(*, successes: float, trials: float, confidence: float) -> float:
    """At least how high is the rate, with this exact confidence on one side?

    # Formula
    The `1 - confidence` quantile of Beta(x, n-x+1); 0 at no success.

    # Domain
    Any counts; confidence from 0.5.

    # Errors
    `no_trials`, `successes_exceed_trials`, `out_of_range` for a confidence below 0.5 or at 1.

    # Source
    Clopper & Pearson 1934 (row `statistics.clopper_pearson_lower`).

    # Known how
    Recalled, not read again: take the numbers with care.

    Source: Clopper CJ, Pearson ES. The use of confidence or fiducial limits illustrated in the case of the binomial. Biometrika 26:404-413, 1934
    """
    given: dict[str, Any] = {"successes": successes, "trials": trials, "confidence": confidence}
    return _call("statistics.clopper_pearson_lower", given)  # type: ignore[no-any-return]


def mid_p_interval(*, successes: float, trials: float, level: float) -> _t.Interval:
    """How well is a rate known, exact but counting the observed outcome half?

    # Formula
    Low solves `P(X > x) + P(X = x)/2 = a/2`, high `P(X < x) + P(X = x)/2 = a/2`; `X` binomial with `n` trials.

    # Domain
    Any counts; covers close to the stated level on average.

    # Errors
    `no_trials`, `successes_exceed_trials`, `out_of_range` for a level outside 0 to 1 (ends excluded).

    # Source
    Newcombe 1998, method 6 (row `statistics.mid_p_interval`).

    # Known how
    Not read in the work itself; copies seen: the tests of one statistical package and two more public files.

    Source: Newcombe RG. Two-sided confidence intervals for the single proportion: comparison of seven methods. Stat Med 17:857-872, 1998
    """
    given: dict[str, Any] = {"successes": successes, "trials": trials, "level": level}
    return _call("statistics.mid_p_interval", given)  # type: ignore[no-any-return]


def beta_posterior(*, prior: _t.BetaPrior, successes: float, trials: float) -> _t.BetaPosterior:
    """What is believed of a rate after so many successes out of so many?

    # Formula
    Beta(a, b) becomes Beta(A, B) with `A = a + x`, `B = b + n - x`; mean `A/(A+B)`, variance
    `AB / ((A+B)^2 (A+B+1))`.

    # Domain
    Independent trials at a constant rate. No trials at all gives the prior back.

    # Errors
    `successes_exceed_trials`.

    # Source
    Gelman et al. 2013, chapter 2 (row `statistics.beta_posterior`).

    # Known how
    Recalled, not read again: take the numbers with care.

    Source: Gelman A, Carlin JB, Stern HS, Dunson DB, Vehtari A, Rubin DB. Bayesian Data Analysis, 3rd ed., 2013
    """
    given: dict[str, Any] = {"prior": prior, "successes": successes, "trials": trials}
    return _call("statistics.beta_posterior", given)  # type: ignore[no-any-return]


def probability_rate_at_least(*, prior: _t.BetaPrior, successes: float, trials: float, rate: float) -> float:
    """How likely is it that the true rate is at least this high?

    # Formula
    `1 - I_p(a + x, b + n - x)`, `I` the regularised incomplete beta integral. With the uniform prior and all
    successes, `1 - p^(n+1)`.

    # Domain
    As `beta_posterior`.

    # Errors
    `successes_exceed_trials`, `out_of_range` for a rate outside 0 to 1.

    # Source
    Gelman et al. 2013, chapter 2 (row `statistics.probability_rate_at_least`).

    # Known how
    Recalled, not read again: take the numbers with care.

    Source: Gelman A, Carlin JB, Stern HS, Dunson DB, Vehtari A, Rubin DB. Bayesian Data Analysis, 3rd ed., 2013
    """
    given: dict[str, Any] = {"prior": prior, "successes": successes, "trials": trials, "rate": rate}
    return _call("statistics.probability_rate_at_least", given)  # type: ignore[no-any-return]


def rate_quantile(*, prior: _t.BetaPrior, successes: float, trials: float, probability: float) -> float:
    """Below which rate does the true one lie with this probability?

    # Formula
    The quantile of Beta(a + x, b + n - x).

    # Domain
    As `beta_posterior`.

    # Errors
    `successes_exceed_trials`, `out_of_range` for a probability at or outside 0 and 1.

    # Source
    Gelman et al. 2013, chapter 2 (row `statistics.rate_quantile`).

    # Known how
    Recalled, not read again: take the numbers with care.

    Source: Gelman A, Carlin JB, Stern HS, Dunson DB, Vehtari A, Rubin DB. Bayesian Data Analysis, 3rd ed., 2013
    """
    given: dict[str, Any] = {"prior": prior, "successes": successes, "trials": trials, "probability": probability}
    return _call("statistics.rate_quantile", given)  # type: ignore[no-any-return]


def success_run_trials(*, reliability: float, confidence: float, failures: float) -> float:
    """How many trials, with at most so many failures, show a rate of at least this with this confidence?

    # Formula
    The smallest `n` with `P(X <= f) <= 1 - C`, `X` binomial with `n` trials and failure rate `1 - R`; without
    failures `n = ceil(ln(1-C) / ln R)`.

    # Domain
    A plan fixed before the first trial. Looking after each repetition needs a sequential test instead.

    # Errors
    `out_of_range` for a reliability or confidence at or outside 0 and 1, more than 1000 failures, or a plan of
    more than 1,000,000,000 trials.

    # Source
    Success-run theorem (row `statistics.success_run_trials`).

    # Known how
    Recalled, not read again: take the numbers with care.

    Source: Success-run theorem, as in standard texts on reliability demonstration (also credited to Bayes and Laplace)
    """
    given: dict[str, Any] = {"reliability": reliability, "confidence": confidence, "failures": failures}
    return _call("statistics.success_run_trials", given)  # type: ignore[no-any-return]


def success_run_trials_with_uniform_prior(*, reliability: float, confidence: float) -> float:
    """How long must a clean run be, if every rate was equally likely before?

    # Formula
    `ceil(ln(1-C) / ln R) - 1`: the prior is worth one trial. Explains tables that print 28 where others print 29.

    # Domain
    A plan fixed before the first trial, uniform prior.

    # Errors
    `out_of_range` for a reliability or confidence at or outside 0 and 1.

    # Source
    Follows from the posterior `1 - R^(n+1)` (row `statistics.success_run_trials_with_uniform_prior`).
    """
    given: dict[str, Any] = {"reliability": reliability, "confidence": confidence}
    return _call("statistics.success_run_trials_with_uniform_prior", given)  # type: ignore[no-any-return]


def no_event_upper(*, trials: float, confidence: float) -> float:
    """Nothing went wrong in so many trials: how high may the rate of going wrong still be?

    # Formula
    `1 - (1 - C)^(1/n)`, one-sided with confidence `C`.

    # Domain
    From one trial; independent trials at a constant rate.

    # Errors
    `no_trials`, `out_of_range` for a confidence at or outside 0 and 1.

    # Source
    The exact form beside the rule of three, Hanley & Lippman-Hand 1983 (row `statistics.no_event_upper`).

    # Known how
    Recalled, not read again: take the numbers with care.

    Source: Hanley JA, Lippman-Hand A. If nothing goes wrong, is everything all right? JAMA 249:1743-1745, 1983
    """
    given: dict[str, Any] = {"trials": trials, "confidence": confidence}
    return _call("statistics.no_event_upper", given)  # type: ignore[no-any-return]


def rule_of_three(*, trials: float) -> float:
    """Nothing went wrong in so many trials: the bound one can do in the head.

    # Formula
    `3 / n`, about 95 % one-sided.

    # Domain
    From about 30 trials; below that it is too high. Use `no_event_upper`.

    # Errors
    `no_trials`.

    # Source
    Hanley & Lippman-Hand 1983 (row `statistics.rule_of_three`).

    # Known how
    Recalled, not read again: take the numbers with care.

    Source: Hanley JA, Lippman-Hand A. If nothing goes wrong, is everything all right? JAMA 249:1743-1745, 1983
    """
    given: dict[str, Any] = {"trials": trials}
    return _call("statistics.rule_of_three", given)  # type: ignore[no-any-return]


def median(*, values: _t.Numbers) -> float:
    """What is the middle value?

    # Formula
    The middle of the sorted values, or the mean of the two middle ones.

    # Domain
    At least one value. Half the values may be wrong before it moves without bound.

    # Errors
    `not_enough_data`, `not_finite`, `out_of_range` beyond 1e100.

    # Source
    Hampel 1974 for its robustness (row `statistics.median`).

    # Known how
    Recalled, not read again: take the numbers with care.

    Source: Hampel FR. The influence curve and its role in robust estimation. J Am Stat Assoc 69:383-393, 1974
    """
    given: dict[str, Any] = {"values": values}
    return _call("statistics.median", given)  # type: ignore[no-any-return]


def quantile(*, values: _t.Numbers, probability: float) -> float:
    """Below which value does this part of the values lie?

    # Formula
    Linear interpolation at place `p (n - 1)` of the sorted values, counted from 0 (definition 7).

    # Domain
    At least one value; probability from 0 to 1.

    # Errors
    `not_enough_data`, `not_finite`, `out_of_range`.

    # Source
    Hyndman & Fan 1996, definition 7 (row `statistics.quantile`).

    # Known how
    Recalled, not read again: take the numbers with care.

    Source: Hyndman RJ, Fan Y. Sample quantiles in statistical packages. Am Stat 50:361-365, 1996
    """
    given: dict[str, Any] = {"values": values, "probability": probability}
    return _call("statistics.quantile", given)  # type: ignore[no-any-return]


def robust_spread(*, values: _t.Numbers) -> float:
    """How widely do the values scatter, whatever one or two of them do?

    # Formula
    1.4826 times the median distance from the median.

    # Domain
    At least two values. It is 0 where more than half the values are equal: floor it before dividing by it.

    # Errors
    `not_enough_data`, `not_finite`, `out_of_range` beyond 1e100.

    # Source
    Hampel 1974 (row `statistics.robust_spread`).

    # Known how
    Recalled, not read again: take the numbers with care.

    Source: Hampel FR. The influence curve and its role in robust estimation. J Am Stat Assoc 69:383-393, 1974
    """
    given: dict[str, Any] = {"values": values}
    return _call("statistics.robust_spread", given)  # type: ignore[no-any-return]


def robust_line(*, x: _t.Numbers, y: _t.Numbers, level: float) -> _t.RobustLine:
    """Which line follows most of the points, whatever a few of them do?

    # Formula
    Slope: median of `(y_j - y_i) / (x_j - x_i)` over all pairs with different `x`. Its interval: the sorted
    slopes at `(N -+ z s)/2`, `s^2 = (n(n-1)(2n+5) - ties)/18`, `N` the number of slopes.

    # Domain
    2 to 1000 points, not all at one `x`. Up to 29 % of the points may be wrong.

    # Errors
    `not_enough_data`, `wrong_length`, `not_identified` where all `x` are equal, `out_of_range` above 1000
    points, beyond 1e100, or for a level at or outside 0 and 1; `not_finite`.

    # Source
    Theil 1950; Sen 1968 (row `statistics.robust_line`).

    # Known how
    Recalled, not read again: take the numbers with care.

    Source: Sen PK. Estimates of the regression coefficient based on Kendall's tau. J Am Stat Assoc 63:1379-1389, 1968
    """
    given: dict[str, Any] = {"x": x, "y": y, "level": level}
    return _call("statistics.robust_line", given)  # type: ignore[no-any-return]


def summary(*, values: _t.Numbers) -> _t.Summary:
    """What are mean and standard deviation, to the last digit that the values carry?

    # Formula
    Mean from a compensated sum; deviations `d = x - m`, `S = S + d (x - m')` value by value; standard deviation
    `sqrt(S / (n - 1))`.

    # Domain
    At least two values.

    # Errors
    `not_enough_data`, `not_finite`, `out_of_range` beyond 1e100.

    # Source
    Welford 1962 (row `statistics.summary`).

    # Known how
    Recalled, not read again: take the numbers with care.

    Source: Welford BP. Note on a method for calculating corrected sums of squares and products. Technometrics 4:419-420, 1962
    """
    given: dict[str, Any] = {"values": values}
    return _call("statistics.summary", given)  # type: ignore[no-any-return]


def lag_one_correlation(*, values: _t.Numbers) -> float:
    """How much does each value resemble the one before it?

    # Formula
    `sum (x_t - m)(x_{t+1} - m) / sum (x_t - m)^2`.

    # Domain
    At least two values that are not all equal.

    # Errors
    `not_enough_data`, `zero_spread`, `not_finite`, `out_of_range` beyond 1e100.

    # Source
    As certified in the NIST Statistical Reference Datasets (row `statistics.lag_one_correlation`).

    # Known how
    Not read in the work itself; copies seen: test files of open numerical libraries, one library for a data set.

    Source: NIST Statistical Reference Datasets
    """
    given: dict[str, Any] = {"values": values}
    return _call("statistics.lag_one_correlation", given)  # type: ignore[no-any-return]


def compensated_sum(*, values: _t.Numbers) -> float:
    """What is the total, with the rounding error of each addition made good?

    # Formula
    Plain addition, beside it the sum of what each addition lost; both together at the end.

    # Domain
    At least one value.

    # Errors
    `not_enough_data`, `not_finite`, `out_of_range` beyond 1e100.

    # Source
    Neumaier 1974 (row `statistics.compensated_sum`).

    # Known how
    Recalled, not read again: take the numbers with care.

    Source: Neumaier A. Rundungsfehleranalyse einiger Verfahren zur Summation endlicher Summen. Z Angew Math Mech 54:39-51, 1974
    """
    given: dict[str, Any] = {"values": values}
    return _call("statistics.compensated_sum", given)  # type: ignore[no-any-return]


def linear_fit(*, x: _t.Numbers, y: _t.Numbers) -> _t.LinearFit:
    """Which straight line fits best, and how sure are its slope and intercept?

    # Formula
    Least squares by orthogonal factorisation with refined residuals; standard errors from the residual variance
    with `n - 2` below.

    # Domain
    At least two points with different `x`; standard errors need three.

    # Errors
    `not_enough_data`, `wrong_length`, `not_identified` where all `x` are equal, `not_finite`, `out_of_range`
    beyond 1e100.

    # Source
    Ordinary least squares, held against the NIST Statistical Reference Datasets (row `statistics.linear_fit`).

    # Known how
    Not read in the work itself; copies seen: test files of open numerical libraries, one library for a data set.

    Source: NIST Statistical Reference Datasets
    """
    given: dict[str, Any] = {"x": x, "y": y}
    return _call("statistics.linear_fit", given)  # type: ignore[no-any-return]


def linear_fit_through_origin(*, x: _t.Numbers, y: _t.Numbers) -> _t.LinearFit:
    """Which line through the origin fits best?

    # Formula
    Least squares with the slope alone; the explained part is of the squares about 0, not about the mean.

    # Domain
    At least one point with `x` other than 0; a standard error needs two.

    # Errors
    `not_enough_data`, `wrong_length`, `not_identified` where all `x` are 0, `not_finite`, `out_of_range` beyond
    1e100.

    # Source
    Held against the NIST Statistical Reference Datasets (row `statistics.linear_fit_through_origin`).

    # Known how
    Not read in the work itself; copies seen: test files of open numerical libraries, one library for a data set.

    Source: NIST Statistical Reference Datasets
    """
    given: dict[str, Any] = {"x": x, "y": y}
    return _call("statistics.linear_fit_through_origin", given)  # type: ignore[no-any-return]


def linear_model(*, predictors: Sequence[_t.Numbers], y: _t.Numbers) -> _t.LinearModel:
    """How does a value depend on several others at once?

    # Formula
    `y = b0 + b1 x1 + ...`, least squares by orthogonal factorisation with refined residuals.

    # Domain
    1 to 32 predictors, each a list as long as `y`; more points than predictors.

    # Errors
    `not_enough_data`, `wrong_length`, `not_identified` where predictors repeat each other, `out_of_range` with
    more than 32 predictors or beyond 1e100, `not_finite`.

    # Source
    Held against the NIST Statistical Reference Datasets (row `statistics.linear_model`).

    # Known how
    Not read in the work itself; copies seen: test files of open numerical libraries, one library for a data set.

    Source: NIST Statistical Reference Datasets
    """
    given: dict[str, Any] = {"predictors": predictors, "y": y}
    return _call("statistics.linear_model", given)  # type: ignore[no-any-return]


def saturating_fit(*, x: _t.Numbers, y: _t.Numbers, start_shape: float) -> _t.CurveFit:
    """Which curve rises towards a ceiling and fits best?

    # Formula
    `y = scale (1 - exp(-shape x))`, least squares by damped Gauss-Newton steps from a start for the shape (the scale follows).

    # Domain
    At least two points. One over the middle of `x` serves as a start.

    # Errors
    `did_not_converge` after 500 steps or from a start that leads nowhere, `not_enough_data`, `wrong_length`, `not_identified`, `not_finite`,
    `out_of_range` beyond 1e100.

    # Source
    Held against the NIST Statistical Reference Datasets (row `statistics.saturating_fit`).

    # Known how
    Not read in the work itself; copies seen: test files of open numerical libraries, one library for a data set.

    Source: NIST Statistical Reference Datasets
    """
    given: dict[str, Any] = {"x": x, "y": y, "start_shape": start_shape}
    return _call("statistics.saturating_fit", given)  # type: ignore[no-any-return]


def power_fit(*, x: _t.Numbers, y: _t.Numbers, start_shape: float) -> _t.CurveFit:
    """Which power of `x` fits best?

    # Formula
    `y = scale x^shape`, least squares by damped Gauss-Newton steps from a start for the shape (the scale follows).

    # Domain
    At least two points, all `x` above 0.

    # Errors
    `out_of_range` for an `x` at or below 0 or beyond 1e100; `did_not_converge` after 500 steps or from a start
    that leads nowhere,
    `not_enough_data`, `wrong_length`, `not_identified`, `not_finite`.

    # Source
    Held against the NIST Statistical Reference Datasets (row `statistics.power_fit`).

    # Known how
    Not read in the work itself; copies seen: test files of open numerical libraries, one library for a data set.

    Source: NIST Statistical Reference Datasets
    """
    given: dict[str, Any] = {"x": x, "y": y, "start_shape": start_shape}
    return _call("statistics.power_fit", given)  # type: ignore[no-any-return]


def test_retest(*, first: _t.Numbers, second: _t.Numbers) -> _t.TestRetest:
    """Measured twice: by how much did people shift together, and by how much does each wander?

    # Formula
    `d = second - first`; change in mean `mean(d)`, typical error `SD(d) / sqrt(2)`.

    # Domain
    At least two people, each measured twice; about 50 people for a usable typical error. Two trials alone mix in
    learning.

    # Errors
    `not_enough_data`, `wrong_length`, `not_finite`, `out_of_range` beyond 1e100.

    # Source
    Hopkins 2000 (row `statistics.test_retest`).

    # Known how
    Recalled, not read again: take the numbers with care.

    Source: Hopkins WG. Measures of reliability in sports medicine and science. Sports Med 30:1-15, 2000
    """
    given: dict[str, Any] = {"first": first, "second": second}
    return _call("statistics.test_retest", given)  # type: ignore[no-any-return]


def typical_error_percent(*, first: _t.Numbers, second: _t.Numbers) -> float:
    """How much does one trial of one person wander, in percent of its value?

    # Formula
    Typical error `e` of `100 ln(value)`; `100 (exp(e / 100) - 1)`.

    # Domain
    At least two people, each measured twice; all values above 0.

    # Errors
    `out_of_range` for a value at or below 0 or beyond 1e100; `not_enough_data`, `wrong_length`, `not_finite`.

    # Source
    Hopkins 2000 (row `statistics.typical_error_percent`).

    # Known how
    Recalled, not read again: take the numbers with care.

    Source: Hopkins WG. Measures of reliability in sports medicine and science. Sports Med 30:1-15, 2000
    """
    given: dict[str, Any] = {"first": first, "second": second}
    return _call("statistics.typical_error_percent", given)  # type: ignore[no-any-return]


def minimal_detectable_change(*, typical_error: float) -> float:
    """Smaller changes than this of one person are within noise (95 %).

    # Formula
    `1.96 sqrt(2) e`, `e` the typical error.

    # Domain
    Typical error above 0, in the unit of the test.

    # Errors
    `out_of_range` at or below 0, `not_finite`.

    # Source
    Hopkins 2000 (row `statistics.minimal_detectable_change`).

    # Known how
    Recalled, not read again: take the numbers with care.

    Source: Hopkins WG. Measures of reliability in sports medicine and science. Sports Med 30:1-15, 2000
    """
    given: dict[str, Any] = {"typical_error": typical_error}
    return _call("statistics.minimal_detectable_change", given)  # type: ignore[no-any-return]


def intraclass_correlation(*, trials: Sequence[_t.Numbers]) -> _t.IntraclassCorrelation:
    """How well do repeated trials tell people apart?

    # Formula
    From the mean squares of people `R`, trials `C`, residual `E` and within people `W`, `n` people and `k` trials:
    `(R-W)/(R+(k-1)W)`, `(R-E)/(R+(k-1)E+k(C-E)/n)`, `(R-E)/(R+(k-1)E)`; of the mean of the trials `(R-W)/R`,
    `(R-E)/(R+(C-E)/n)`, `(R-E)/R`.

    # Domain
    At least two people with at least two trials each; `trials` holds one list a trial, people in one order.

    # Errors
    `not_enough_data`, `wrong_length`, `zero_spread` where all values are equal, `not_finite`, `out_of_range`
    beyond 1e100.

    # Source
    Shrout & Fleiss 1979 (row `statistics.intraclass_correlation`).

    # Known how
    Not read in the work itself; copies seen: the documentation and the tests of two statistical packages.

    Source: Shrout PE, Fleiss JL. Intraclass correlations: uses in assessing rater reliability. Psychol Bull 86:420-428, 1979
    """
    given: dict[str, Any] = {"trials": trials}
    return _call("statistics.intraclass_correlation", given)  # type: ignore[no-any-return]


def standard_error_of_measurement(*, standard_deviation: float, correlation: float) -> float:
    """How much does one trial wander, from the spread between people and how well trials agree?

    # Formula
    `SD sqrt(1 - ICC)`.

    # Domain
    `SD` above 0; the correlation from 0 to 1.

    # Errors
    `out_of_range`, `not_finite`.

    # Source
    Hopkins 2000 (row `statistics.standard_error_of_measurement`).

    # Known how
    Recalled, not read again: take the numbers with care.

    Source: Hopkins WG. Measures of reliability in sports medicine and science. Sports Med 30:1-15, 2000
    """
    given: dict[str, Any] = {"standard_deviation": standard_deviation, "correlation": correlation}
    return _call("statistics.standard_error_of_measurement", given)  # type: ignore[no-any-return]


def smallest_worthwhile_change(*, between_people: float) -> float:
    """Which change would matter at all, from the spread between people?

    # Formula
    `0.2 SD`.

    # Domain
    A small standardised effect; it depends on the group measured. Often smaller than the typical error: then one
    test cannot show it.

    # Errors
    `out_of_range` at or below 0, `not_finite`.

    # Source
    Hopkins 2004 (row `statistics.smallest_worthwhile_change`).

    # Known how
    Read in the work or in its abstract.

    Source: Hopkins WG. How to interpret changes in an athletic performance test. Sportscience 8:1-7, 2004
    """
    given: dict[str, Any] = {"between_people": between_people}
    return _call("statistics.smallest_worthwhile_change", given)  # type: ignore[no-any-return]


def reliability_of_mean(*, reliability: float, trials: float) -> float:
    """How well does the mean of so many trials tell people apart, if one trial does so well?

    # Formula
    `k r / (1 + (k - 1) r)`; `r` the reliability (intraclass correlation) of one trial, `k` trials.

    # Domain
    `r` from 0 to 1, up to 1,000 trials whose errors have nothing to do with each other. Trials of one day share the day, so
    their mean is less reliable than this.

    # Errors
    `out_of_range`, `not_finite`.

    # Source
    Spearman 1910 and Brown 1910 (row `statistics.reliability_of_mean`).

    # Known how
    Recalled, not read again: take the numbers with care.

    Source: Spearman C. Correlation calculated from faulty data. Br J Psychol 3:271-295, 1910; Brown W. Some experimental results in the correlation of mental abilities. Br J Psychol 3:296-322, 1910
    """
    given: dict[str, Any] = {"reliability": reliability, "trials": trials}
    return _call("statistics.reliability_of_mean", given)  # type: ignore[no-any-return]


def trials_for_reliability(*, reliability: float, wanted: float) -> float:
    """How many trials until their mean tells people apart that well?

    # Formula
    The smallest whole `k` with `k r / (1 + (k - 1) r) >= R`: `R (1 - r) / (r (1 - R))`, rounded up.

    # Domain
    As `reliability_of_mean`; both above 0 and below 1.

    # Errors
    `out_of_range` at or beyond the ends, or where more than 1,000 trials would be needed; `not_finite`.

    # Source
    Inverse of `reliability_of_mean` (row `statistics.trials_for_reliability`).
    """
    given: dict[str, Any] = {"reliability": reliability, "wanted": wanted}
    return _call("statistics.trials_for_reliability", given)  # type: ignore[no-any-return]


def error_of_mean(*, typical_error: float, trials: float) -> float:
    """By how much does the mean of so many trials of one person wander?

    # Formula
    `e / sqrt(k)`, `e` the typical error of one trial.

    # Domain
    Typical error above 0; 1 to 1,000 trials whose errors have nothing to do with each other.

    # Errors
    `out_of_range`, `not_finite`.

    # Source
    Follows from independent errors (row `statistics.error_of_mean`).
    """
    given: dict[str, Any] = {"typical_error": typical_error, "trials": trials}
    return _call("statistics.error_of_mean", given)  # type: ignore[no-any-return]


def reliable_change(*, before: float, after: float, standard_deviation: float, reliability: float) -> _t.ReliableChange:
    """Is one person's change more than two tests would differ by anyway?

    # Formula
    `RC = (after - before) / S`, `S = sqrt(2) SD sqrt(1 - r)`; `SD` between people, `r` the reliability of the test. Reliable
    beyond 1.96.

    # Domain
    `SD` above 0, `r` from 0 to below 1. The same question as a change beyond
    `minimal_detectable_change`(super::minimal_detectable_change()); a shift that everybody shows, as by learning the
    test, is not taken off.

    # Errors
    `out_of_range`, `not_finite`.

    # Source
    Jacobson & Truax 1991 (row `statistics.reliable_change`).

    # Known how
    Recalled, not read again: take the numbers with care.

    Source: Jacobson NS, Truax P. Clinical significance: a statistical approach to defining meaningful change in psychotherapy research. J Consult Clin Psychol 59:12-19, 1991
    """
    given: dict[str, Any] = {"before": before, "after": after, "standard_deviation": standard_deviation, "reliability": reliability}
    return _call("statistics.reliable_change", given)  # type: ignore[no-any-return]


def change_chances(*, change: float, typical_error: float, worthwhile: float, degrees: float | None = None) -> _t.ChangeChances:
    """One person's test changed: how likely is a true benefit, nothing of note, or harm?

    # Formula
    `benefit = 1 - F((w - D) / (sqrt(2) e))`, `harm = F((-w - D) / (sqrt(2) e))`, the rest trivial; `D` observed
    change, `e` typical error, `w` smallest worthwhile change, `F` normal, or t where the degrees of freedom of the
    typical error are given.

    # Domain
    One person, higher values better. Regression to the mean is ignored.

    # Errors
    `out_of_range` for a typical error or degrees at or below 0, or a worthwhile change below 0; `not_finite`.

    # Source
    Hopkins 2004 (row `statistics.change_chances`).

    # Known how
    Recalled, not read again: take the numbers with care.

    Source: Hopkins WG. How to interpret changes in an athletic performance test. Sportscience 8:1-7, 2004
    """
    given: dict[str, Any] = {"change": change, "typical_error": typical_error, "worthwhile": worthwhile}
    if degrees is not None:
        given["degrees"] = degrees
    return _call("statistics.change_chances", given)  # type: ignore[no-any-return]


def true_value_interval(*, observed: float, typical_error: float, level: float) -> _t.Interval:
    """Where may the true value of one person lie after one test?

    # Formula
    `observed +- z e`, `e` the typical error.

    # Domain
    Typical error above 0.

    # Errors
    `out_of_range`, `not_finite`.

    # Source
    Swinton et al. 2018 (row `statistics.true_value_interval`).

    # Known how
    Recalled, not read again: take the numbers with care.

    Source: Swinton PA, Hemingway BS, Saunders B, Gualano B, Dolan E. A statistical framework to interpret individual response to intervention. Front Nutr 5:41, 2018
    """
    given: dict[str, Any] = {"observed": observed, "typical_error": typical_error, "level": level}
    return _call("statistics.true_value_interval", given)  # type: ignore[no-any-return]


def true_change_interval(*, change: float, typical_error: float, level: float) -> _t.Interval:
    """Where may the true change of one person lie after two tests?

    # Formula
    `D +- z sqrt(2) e`, `e` the typical error of one test.

    # Domain
    Typical error above 0. Multipliers of the error: 0.954 at 50 %, 1.627 at 75 %, 2.326 at 90 %, 2.772 at 95 %.

    # Errors
    `out_of_range`, `not_finite`.

    # Source
    Swinton et al. 2018 (row `statistics.true_change_interval`).

    # Known how
    Recalled, not read again: take the numbers with care.

    Source: Swinton PA, Hemingway BS, Saunders B, Gualano B, Dolan E. A statistical framework to interpret individual response to intervention. Front Nutr 5:41, 2018
    """
    given: dict[str, Any] = {"change": change, "typical_error": typical_error, "level": level}
    return _call("statistics.true_change_interval", given)  # type: ignore[no-any-return]


def individual_response_deviation(*, with_intervention: float, without: float) -> float:
    """Do people really respond differently, beyond what a control group shows?

    # Formula
    `sqrt(Si^2 - Sc^2)`, with the sign of the difference; `Si`, `Sc` standard deviations of the changes with the
    intervention and without.

    # Domain
    Both at least 0. Below 0 means the intervention group varied less: no sign of different response.

    # Errors
    `out_of_range` below 0 or beyond 1e100, `not_finite`.

    # Source
    Swinton et al. 2018 (row `statistics.individual_response_deviation`).

    # Known how
    Recalled, not read again: take the numbers with care.

    Source: Swinton PA, Hemingway BS, Saunders B, Gualano B, Dolan E. A statistical framework to interpret individual response to intervention. Front Nutr 5:41, 2018
    """
    given: dict[str, Any] = {"with_intervention": with_intervention, "without": without}
    return _call("statistics.individual_response_deviation", given)  # type: ignore[no-any-return]


def responding_share(*, mean_change: float, worthwhile: float, response_deviation: float) -> float:
    """Which part of people gains at least what matters?

    # Formula
    `1 - Phi((w - m) / S)`; `w` smallest worthwhile change, `m` mean change, `S` standard deviation of the true
    individual response.

    # Domain
    `S` above 0; responses taken as normal.

    # Errors
    `out_of_range`, `not_finite`.

    # Source
    Swinton et al. 2018 (row `statistics.responding_share`).

    # Known how
    Recalled, not read again: take the numbers with care.

    Source: Swinton PA, Hemingway BS, Saunders B, Gualano B, Dolan E. A statistical framework to interpret individual response to intervention. Front Nutr 5:41, 2018
    """
    given: dict[str, Any] = {"mean_change": mean_change, "worthwhile": worthwhile, "response_deviation": response_deviation}
    return _call("statistics.responding_share", given)  # type: ignore[no-any-return]


def limb_symmetry_index(*, dominant: float, non_dominant: float) -> float:
    """How much of the dominant side does the other reach? In percent.

    # Formula
    `100 ND / D`.

    # Domain
    Any test of one side at a time; the dominant side above 0.

    # Errors
    `out_of_range` for a side below 0 or where the denominator is 0; `not_finite`.

    # Source
    Bishop et al. 2016, limb symmetry index 1 (row `statistics.limb_symmetry_index`).

    # Known how
    Recalled, not read again: take the numbers with care.

    Source: Bishop C, Read P, Chavda S, Turner A. Asymmetries of the lower limb: the calculation conundrum. Strength Cond J 38(6):27-32, 2016
    """
    given: dict[str, Any] = {"dominant": dominant, "non_dominant": non_dominant}
    return _call("statistics.limb_symmetry_index", given)  # type: ignore[no-any-return]


def limb_symmetry_deficit(*, dominant: float, non_dominant: float) -> float:
    """How much is missing to the dominant side? In percent.

    # Formula
    `100 (1 - ND / D)`.

    # Domain
    The dominant side above 0; not antisymmetric: 100 and 90 give 10 %, 90 and 100 give -11.1 %.

    # Errors
    `out_of_range` for a side below 0 or where the denominator is 0; `not_finite`.

    # Source
    Bishop et al. 2016, limb symmetry index 2 (row `statistics.limb_symmetry_deficit`).

    # Known how
    Recalled, not read again: take the numbers with care.

    Source: Bishop C, Read P, Chavda S, Turner A. Asymmetries of the lower limb: the calculation conundrum. Strength Cond J 38(6):27-32, 2016
    """
    given: dict[str, Any] = {"dominant": dominant, "non_dominant": non_dominant}
    return _call("statistics.limb_symmetry_deficit", given)  # type: ignore[no-any-return]


def asymmetry_robinson_1987(*, right: float, left: float) -> float:
    """How far apart are right and left, against their mean? In percent.

    # Formula
    `100 (R - L) / ((R + L) / 2)`.

    # Domain
    Not both 0; positive if the right side is higher.

    # Errors
    `out_of_range` for a side below 0 or where the denominator is 0; `not_finite`.

    # Source
    Bishop et al. 2016, limb symmetry index 3, asymmetry index (row `statistics.asymmetry_robinson_1987`).

    # Known how
    Recalled, not read again: take the numbers with care.

    Source: Bishop C, Read P, Chavda S, Turner A. Asymmetries of the lower limb: the calculation conundrum. Strength Cond J 38(6):27-32, 2016
    """
    given: dict[str, Any] = {"right": right, "left": left}
    return _call("statistics.asymmetry_robinson_1987", given)  # type: ignore[no-any-return]


def asymmetry_impellizzeri_2007(*, stronger: float, weaker: float) -> float:
    """How much weaker is the weaker side? In percent.

    # Formula
    `100 (S - W) / S`.

    # Domain
    Tests of one side at a time; the stronger side above 0.

    # Errors
    `out_of_range` for a side below 0 or where the denominator is 0; `not_finite`.

    # Source
    Bishop et al. 2016, bilateral strength asymmetry (row `statistics.asymmetry_impellizzeri_2007`).

    # Known how
    Recalled, not read again: take the numbers with care.

    Source: Bishop C, Read P, Chavda S, Turner A. Asymmetries of the lower limb: the calculation conundrum. Strength Cond J 38(6):27-32, 2016
    """
    given: dict[str, Any] = {"stronger": stronger, "weaker": weaker}
    return _call("statistics.asymmetry_impellizzeri_2007", given)  # type: ignore[no-any-return]


def asymmetry_kobayashi_2013(*, dominant: float, non_dominant: float) -> float:
    """How unevenly is the total shared, dominant side first? In percent.

    # Formula
    `100 (D - ND) / (D + ND)`.

    # Domain
    Tests where both sides work at once; not both 0.

    # Errors
    `out_of_range` for a side below 0 or where the denominator is 0; `not_finite`.

    # Source
    Bishop et al. 2016, bilateral asymmetry index 1 (row `statistics.asymmetry_kobayashi_2013`).

    # Known how
    Recalled, not read again: take the numbers with care.

    Source: Bishop C, Read P, Chavda S, Turner A. Asymmetries of the lower limb: the calculation conundrum. Strength Cond J 38(6):27-32, 2016
    """
    given: dict[str, Any] = {"dominant": dominant, "non_dominant": non_dominant}
    return _call("statistics.asymmetry_kobayashi_2013", given)  # type: ignore[no-any-return]


def asymmetry_sugiyama_2014(*, dominant: float, non_dominant: float) -> float:
    """How unevenly is the total shared, doubled? In percent.

    # Formula
    `200 (D - ND) / (D + ND)`.

    # Domain
    Not both 0.

    # Errors
    `out_of_range` for a side below 0 or where the denominator is 0; `not_finite`.

    # Source
    Bishop et al. 2016, bilateral asymmetry index 2 (row `statistics.asymmetry_sugiyama_2014`).

    # Known how
    Recalled, not read again: take the numbers with care.

    Source: Bishop C, Read P, Chavda S, Turner A. Asymmetries of the lower limb: the calculation conundrum. Strength Cond J 38(6):27-32, 2016
    """
    given: dict[str, Any] = {"dominant": dominant, "non_dominant": non_dominant}
    return _call("statistics.asymmetry_sugiyama_2014", given)  # type: ignore[no-any-return]


def asymmetry_shorter_2008(*, higher: float, lower: float) -> float:
    """How unevenly is the total shared, higher side first? In percent.

    # Formula
    `100 (H - L) / (H + L)`.

    # Domain
    Tests where both sides work at once; not both 0.

    # Errors
    `out_of_range` for a side below 0 or where the denominator is 0; `not_finite`.

    # Source
    Bishop et al. 2016, symmetry index (row `statistics.asymmetry_shorter_2008`).

    # Known how
    Recalled, not read again: take the numbers with care.

    Source: Bishop C, Read P, Chavda S, Turner A. Asymmetries of the lower limb: the calculation conundrum. Strength Cond J 38(6):27-32, 2016
    """
    given: dict[str, Any] = {"higher": higher, "lower": lower}
    return _call("statistics.asymmetry_shorter_2008", given)  # type: ignore[no-any-return]


def symmetry_angle_zifchock_2008(*, stronger: float, weaker: float) -> float:
    """How far does the pair lie from the line of equality, as an angle? In percent.

    # Formula
    `100 (45 - atan(W / S)) / 90, angles in degrees`.

    # Domain
    No reference side needed; not both 0; at most 50 %.

    # Errors
    `out_of_range` for a side below 0 or where the denominator is 0; `not_finite`.

    # Source
    Zifchock et al. 2008, symmetry angle (row `statistics.symmetry_angle_zifchock_2008`).

    # Known how
    Recalled, not read again: take the numbers with care.

    Source: Zifchock RA, Davis I, Higginson J, Royer T. The symmetry angle. Gait Posture 27:622-627, 2008
    """
    given: dict[str, Any] = {"stronger": stronger, "weaker": weaker}
    return _call("statistics.symmetry_angle_zifchock_2008", given)  # type: ignore[no-any-return]


def percentage_difference_bishop_2018(*, left: float, right: float) -> float:
    """How much less is the lower of the two? In percent.

    # Formula
    `100 - 100 min / max`.

    # Domain
    Tests of one side at a time; not both 0; never negative.

    # Errors
    `out_of_range` for a side below 0 or where the denominator is 0; `not_finite`.

    # Source
    Bishop et al. 2018, percentage difference (row `statistics.percentage_difference_bishop_2018`).

    # Known how
    Recalled, not read again: take the numbers with care.

    Source: Bishop C, Read P, Lake J, Chavda S, Turner A. Interlimb asymmetries: understanding how to calculate differences from bilateral and unilateral tests. Strength Cond J 40(4):1-6, 2018
    """
    given: dict[str, Any] = {"left": left, "right": right}
    return _call("statistics.percentage_difference_bishop_2018", given)  # type: ignore[no-any-return]


def individuals_chart(*, values: _t.Numbers) -> _t.IndividualsChart:
    """Which of the values are unusual for their own series?

    # Formula
    Spread `r / 1.128`, `r` the mean of `|x_i - x_(i-1)|`; limits at the mean plus and minus 3 spreads; moving range
    limit `3.267 r`.

    # Domain
    At least two values in their order. A series that resembles itself from day to day shrinks `r` and raises false
    alarms.

    # Errors
    `not_enough_data`; `zero_spread` where all values are equal; `not_finite`; `out_of_range` beyond 1e100.

    # Source
    NIST/SEMATECH e-Handbook 6.3.2.2 (row `statistics.individuals_chart`).

    # Known how
    Recalled, not read again: take the numbers with care.

    Source: NIST/SEMATECH e-Handbook of Statistical Methods
    """
    given: dict[str, Any] = {"values": values}
    return _call("statistics.individuals_chart", given)  # type: ignore[no-any-return]


def ewma_chart(*, values: _t.Numbers, target: float, spread: float, weight: float, width: float) -> _t.EwmaChart:
    """Has the series drifted away from its target, slowly?

    # Formula
    `z = w x + (1 - w) z'`, from the target; limits `target +- width * spread * sqrt(w/(2-w) (1 - (1-w)^(2i)))` at
    the `i`-th value.

    # Domain
    Weight above 0 to 1, spread above 0, width usually 2.6 to 3.

    # Errors
    `not_enough_data` without a value, `out_of_range`, `not_finite`.

    # Source
    Roberts 1959 (row `statistics.ewma_chart`).

    # Known how
    Recalled, not read again: take the numbers with care.

    Source: Roberts SW. Control chart tests based on geometric moving averages. Technometrics 1:239-250, 1959
    """
    given: dict[str, Any] = {"values": values, "target": target, "spread": spread, "weight": weight, "width": width}
    return _call("statistics.ewma_chart", given)  # type: ignore[no-any-return]


def ewma_weight_over(*, weight: float, days: float) -> float:
    """What weight does a value get that comes after several days?

    # Formula
    `1 - (1 - w)^days`.

    # Domain
    Weight above 0 to 1; days at least 0. An extension for irregular days, not part of the chart's literature.

    # Errors
    `out_of_range`, `not_finite`.

    # Source
    Follows from taking the days between as having carried no news (row `statistics.ewma_weight_over`).
    """
    given: dict[str, Any] = {"weight": weight, "days": days}
    return _call("statistics.ewma_weight_over", given)  # type: ignore[no-any-return]


def steady_weight(*, relative_drift: float) -> float:
    """Which weight does a level filter settle at?

    # Formula
    `(-q + sqrt(q^2 + 4q)) / 2`, `q` drift over reading variance, one reading a step.

    # Domain
    `q` from 0 to 1,000,000.

    # Errors
    `out_of_range`, `not_finite`.

    # Source
    Muth 1960 (row `statistics.steady_weight`).

    # Known how
    Recalled, not read again: take the numbers with care.

    Source: Muth JF. Optimal properties of exponentially weighted forecasts. J Am Stat Assoc 55:299-306, 1960
    """
    given: dict[str, Any] = {"relative_drift": relative_drift}
    return _call("statistics.steady_weight", given)  # type: ignore[no-any-return]


def cusum_chart(*, values: _t.Numbers, target: float, spread: float, design: _t.CusumDesign) -> list[_t.CusumPoint]:
    """Has the mean of the series shifted, and since when?

    # Formula
    `up = max(0, x - (target + K) + up')`, `down = max(0, (target - K) - x + down')`, `K` and `H` slack and threshold
    times the spread; a signal where a sum exceeds `H`. New mean `target + K + up/n` (or `target - K - down/n`), `n`
    values since the sum was last 0: they are also the age of the shift.

    # Domain
    Spread above 0. Sums go on after a signal; start anew once it is dealt with.

    # Errors
    `not_enough_data` without a value, `out_of_range`, `not_finite`.

    # Source
    Page 1954; worked example in Montgomery, chapter 9 (row `statistics.cusum_chart`).

    # Known how
    Not read in the work itself; copies seen: the documentation of one statistical package.

    Source: Montgomery DC. Introduction to Statistical Quality Control, chapter 9
    """
    given: dict[str, Any] = {"values": values, "target": target, "spread": spread, "design": design}
    return _call("statistics.cusum_chart", given)  # type: ignore[no-any-return]


def ewma_run_length(*, weight: float, width: float, shift: float) -> float:
    """How many values until a weighted chart signals, on average, after a shift (or without one)?

    # Formula
    `L(u) = 1 + integral of L(y) phi((y - (1-w) u)/w - shift)/w dy` inside the long-run limits, from the target;
    solved by Gauss-Legendre points.

    # Domain
    Weight 0.02 to 1, width above 0 to 6, shift -10 to 10 standard deviations; normal values that do not resemble
    their neighbours.

    # Errors
    `out_of_range`, `not_finite`.

    # Source
    Lucas & Saccucci 1990 (row `statistics.ewma_run_length`).

    # Known how
    Not read in the work itself; copies seen: the documentation of one statistical package, with table numbers.

    Source: Lucas JM, Saccucci MS. Exponentially weighted moving average control schemes: properties and enhancements. Technometrics 32:1-12, 1990
    """
    given: dict[str, Any] = {"weight": weight, "width": width, "shift": shift}
    return _call("statistics.ewma_run_length", given)  # type: ignore[no-any-return]


def shewhart_run_length(*, width: float, shift: float) -> float:
    """How many values until one lies beyond so many standard deviations, on average?

    # Formula
    `1 / (Phi(-k - shift) + Phi(-k + shift))`.

    # Domain
    Width above 0 to 6, shift -10 to 10 standard deviations; independent normal values.

    # Errors
    `out_of_range`.

    # Source
    Follows from the normal distribution (row `statistics.shewhart_run_length`).
    """
    given: dict[str, Any] = {"width": width, "shift": shift}
    return _call("statistics.shewhart_run_length", given)  # type: ignore[no-any-return]


def ewma_width_for(*, weight: float, run_length: float) -> float:
    """Which width of a weighted chart gives one false alarm in so many values, as the coach chooses?

    # Formula
    The width at which `ewma_run_length` without a shift equals the wanted length.

    # Domain
    Weight 0.02 to 1; 2 to 1,000,000 values between false alarms.

    # Errors
    `out_of_range`; `did_not_converge` where no width from 0.1 to 6 gives it.

    # Source
    Inverse of `ewma_run_length` (row `statistics.ewma_width_for`).
    """
    given: dict[str, Any] = {"weight": weight, "run_length": run_length}
    return _call("statistics.ewma_width_for", given)  # type: ignore[no-any-return]


def cusum_run_length(*, design: _t.CusumDesign, shift: float) -> float:
    """How many values until a two-sided cumulative sum signals, on average, after a shift (or without one)?

    # Formula
    `(A L- + L+ B - L+ L-) / (L+ + L-)`: `L+`, `L-` run lengths of the two sides from 0, `A`, `B` from the head start,
    as in `cusum_run_length_one_sided`. Without a head start that is `1/L = 1/L+ + 1/L-`.

    # Domain
    Slack 0 to 3, threshold above 0 to 20, shift -10 to 10 standard deviations; independent normal values. Exact
    since one side stands at 0 whenever the other signals; a head start above half the threshold and the slack
    would break that and is refused.

    # Errors
    `out_of_range`, also where the answer passes 1e11 values; `not_finite`.

    # Source
    Lucas & Crosier 1982, table 1 (row `statistics.cusum_run_length`).

    # Known how
    Not read in the work itself; copies seen: the documentation of one statistical package, with table numbers.

    Source: Lucas JM, Crosier RB. Fast initial response for CUSUM quality-control schemes: give your CUSUM a head start. Technometrics 24:199-205, 1982
    """
    given: dict[str, Any] = {"design": design, "shift": shift}
    return _call("statistics.cusum_run_length", given)  # type: ignore[no-any-return]


def cusum_run_length_one_sided(*, design: _t.CusumDesign, shift: float) -> float:
    """How many values until the upper side of a cumulative sum signals, on average, after a shift (or without one)?

    # Formula
    `L(u) = 1 + L(0) Phi(k - u) + integral of L(y) phi(y - u + k) dy` over 0 to the threshold, `k` slack less shift, from
    the head start; solved by Gauss-Legendre points as the length of a stretch away from 0 over the chance that it
    ends in a signal.

    # Domain
    Slack 0 to 3, threshold above 0 to 20, shift -10 to 10 standard deviations, above 0 towards the side; independent
    normal values.

    # Errors
    `out_of_range`, also where the answer passes 1e11 values; `not_finite`.

    # Source
    Brook & Evans 1972 (row `statistics.cusum_run_length_one_sided`).

    # Known how
    Not read in the work itself; copies seen: the documentation of one statistical package, with table numbers.

    Source: Brook D, Evans DA. An approach to the probability distribution of CUSUM run length. Biometrika 59:539-549, 1972
    """
    given: dict[str, Any] = {"design": design, "shift": shift}
    return _call("statistics.cusum_run_length_one_sided", given)  # type: ignore[no-any-return]


def cusum_run_length_siegmund(*, reference: float, threshold: float, shift: float) -> float:
    """About how many values until one side of a cumulative sum signals, in closed form?

    # Formula
    `(exp(-2 D b) + 2 D b - 1) / (2 D^2)`, `D = shift - slack`, `b = threshold + 1.166`; `b^2` at `D = 0`.

    # Domain
    One side, no head start; within a few percent of the exact value.

    # Errors
    `out_of_range`, `not_finite`.

    # Source
    Siegmund 1985 (row `statistics.cusum_run_length_siegmund`).

    # Known how
    Recalled, not read again: take the numbers with care.

    Source: Siegmund D. Sequential Analysis: Tests and Confidence Intervals. Springer, 1985
    """
    given: dict[str, Any] = {"reference": reference, "threshold": threshold, "shift": shift}
    return _call("statistics.cusum_run_length_siegmund", given)  # type: ignore[no-any-return]


def cusum_threshold_for(*, reference: float, run_length: float) -> float:
    """Which threshold gives one false alarm in so many values, as the coach chooses?

    # Formula
    The threshold at which `cusum_run_length` without a shift equals the wanted length.

    # Domain
    Slack 0.1 to 3; 2 to 1,000,000 values between false alarms. "One a year" at three sessions a week is 156.

    # Errors
    `out_of_range`; `did_not_converge` where no threshold from 0.01 to 20 gives it.

    # Source
    Inverse of `cusum_run_length` (row `statistics.cusum_threshold_for`).
    """
    given: dict[str, Any] = {"reference": reference, "run_length": run_length}
    return _call("statistics.cusum_threshold_for", given)  # type: ignore[no-any-return]


def western_electric_rules(*, values: _t.Numbers) -> list[_t.RunSignal]:
    """Which of four patterns does a standardised series show?

    # Formula
    On one side of the centre: one value beyond 3 spreads, two of three beyond 2, four of five beyond 1, eight in a
    row. `values` are distances from the centre in spreads; the others of a group may lie anywhere.

    # Domain
    All four together raise a false alarm about every 92 values (`western_electric_run_length`).

    # Errors
    `not_enough_data` without a value, `not_finite`, `out_of_range` beyond 1e100.

    # Source
    Western Electric 1956 (row `statistics.western_electric_rules`).

    # Known how
    Recalled, not read again: take the numbers with care.

    Source: Western Electric. Statistical Quality Control Handbook, 1956
    """
    given: dict[str, Any] = {"values": values}
    return _call("statistics.western_electric_rules", given)  # type: ignore[no-any-return]


def nelson_rules(*, values: _t.Numbers) -> list[_t.RunSignal]:
    """Which of eight patterns does a standardised series show?

    # Formula
    One beyond 3 spreads; nine in a row on one side; six in a row rising or falling (five steps); fourteen in turn up
    and down; two of three beyond 2 and four of five beyond 1 on one side; fifteen within 1; eight with none within 1.

    # Domain
    More rules, more false alarms.

    # Errors
    `not_enough_data` without a value, `not_finite`, `out_of_range` beyond 1e100.

    # Source
    Nelson 1984 (row `statistics.nelson_rules`).

    # Known how
    Recalled, not read again: take the numbers with care.

    Source: Nelson LS. The Shewhart control chart: tests for special causes. J Qual Technol 16:237-239, 1984
    """
    given: dict[str, Any] = {"values": values}
    return _call("statistics.nelson_rules", given)  # type: ignore[no-any-return]


def western_electric_run_length(*, shift: float) -> float:
    """How many values until one of the four rules signals, on average, after a shift (or without one)?

    # Formula
    A chain over what the rules remember (the last four zones, the run on one side); the run length is the sum of the
    chances that nothing has signalled yet.

    # Domain
    Shift -3 to 3 spreads; independent normal values.

    # Errors
    `out_of_range`; `did_not_converge`.

    # Source
    Champ & Woodall 1987 (row `statistics.western_electric_run_length`).

    # Known how
    Not read in the work itself; copies seen: public quotations of a handbook page.

    Source: Champ CW, Woodall WH. Exact results for Shewhart control charts with supplementary runs rules. Technometrics 29:393-399, 1987
    """
    given: dict[str, Any] = {"shift": shift}
    return _call("statistics.western_electric_run_length", given)  # type: ignore[no-any-return]


def local_level(*, readings: Sequence[_t.Reading], drift: float, outliers: _t.Outliers, also: Sequence[_t.Day]) -> _t.LevelPath:
    """Where is a slowly wandering level, and where was it, given scattered readings on irregular days?

    # Formula
    `y = m + e`, `e ~ N(0, variance of the reading)`; `m` moves by `N(0, drift * days)` between days. Kalman filter
    forward, Rauch-Tung-Striebel smoother backward; exact diffuse start (the first reading is the level).

    # Domain
    Readings in any order, several a day, days missing at will; `also` names days to answer for without a reading.

    # Errors
    `not_enough_data` without a reading; `out_of_range` for a variance at or below 0, a drift below 0, a threshold
    at or below 0, more than 100,000 readings, or values beyond 1e100; `not_finite`.

    # Source
    Durbin & Koopman 2012, chapter 2; robust forms after Huber 1964, Holland & Welsch 1977, Masreliez & Martin 1977, West 1981 (row
    `statistics.local_level`).

    # Known how
    Recalled, not read again: take the numbers with care.

    Source: Durbin J, Koopman SJ. Time Series Analysis by State Space Methods, 2nd ed. Oxford University Press, 2012
    """
    given: dict[str, Any] = {"readings": readings, "drift": drift, "outliers": outliers, "also": also}
    return _call("statistics.local_level", given)  # type: ignore[no-any-return]


def local_level_concentrated(*, readings: Sequence[_t.Reading], relative_drift: float) -> float:
    """How well does a drift, relative to the scatter of the readings, explain them?

    # Formula
    `-(N ln(s) + sum ln F) / 2`, `s = sum(v^2 / F) / N` over the `N` innovations `v` with variances `F` at unit
    scale; constants left out.

    # Domain
    At least two readings whose innovations are not all 0. Variances of the readings count as relative.

    # Errors
    `not_enough_data`, `zero_spread`, `out_of_range`, `not_finite`.

    # Source
    Durbin & Koopman 2012, table 2.1 (row `statistics.local_level_concentrated`).

    # Known how
    Recalled, not read again: take the numbers with care.

    Source: Durbin J, Koopman SJ. Time Series Analysis by State Space Methods, 2nd ed. Oxford University Press, 2012
    """
    given: dict[str, Any] = {"readings": readings, "relative_drift": relative_drift}
    return _call("statistics.local_level_concentrated", given)  # type: ignore[no-any-return]


def local_level_fit(*, readings: Sequence[_t.Reading]) -> _t.LevelFit:
    """What drift and what scatter explain the readings best, if their variances are known only in proportion?

    # Formula
    Maximum of `local_level_concentrated` over the relative drift; the scale follows.

    # Domain
    At least three readings, not all equal. Some dozens are needed for a drift worth having.

    # Errors
    `not_enough_data`, `zero_spread`, `out_of_range`, `not_finite`.

    # Source
    Durbin & Koopman 2012, chapter 2 (row `statistics.local_level_fit`).

    # Known how
    Recalled, not read again: take the numbers with care.

    Source: Durbin J, Koopman SJ. Time Series Analysis by State Space Methods, 2nd ed. Oxford University Press, 2012
    """
    given: dict[str, Any] = {"readings": readings}
    return _call("statistics.local_level_fit", given)  # type: ignore[no-any-return]


def local_level_drift(*, readings: Sequence[_t.Reading]) -> _t.LevelFit:
    """How fast does the level wander, if the variances of the readings are known?

    # Formula
    Maximum of the log likelihood of `local_level`(super::local_level) over the drift.

    # Domain
    At least three readings.

    # Errors
    `not_enough_data`, `out_of_range`, `not_finite`.

    # Source
    Durbin & Koopman 2012, chapter 2 (row `statistics.local_level_drift`).

    # Known how
    Recalled, not read again: take the numbers with care.

    Source: Durbin J, Koopman SJ. Time Series Analysis by State Space Methods, 2nd ed. Oxford University Press, 2012
    """
    given: dict[str, Any] = {"readings": readings}
    return _call("statistics.local_level_drift", given)  # type: ignore[no-any-return]


def level_forecast(*, level: float, level_variance: float, drift: float, days: float, reading_variance: float, probability: float) -> _t.Interval:
    """Where will a wandering level lie so many days on, with a band that widens as it should?

    # Formula
    `level +- z sqrt(P + drift * days + R)`; `P` variance of the level now, `R` variance of a reading (0 for the
    level itself).

    # Domain
    0 to 36,525 days.

    # Errors
    `out_of_range`, `not_finite`.

    # Source
    Durbin & Koopman 2012, section 2.8 (row `statistics.level_forecast`).

    # Known how
    Recalled, not read again: take the numbers with care.

    Source: Durbin J, Koopman SJ. Time Series Analysis by State Space Methods, 2nd ed. Oxford University Press, 2012
    """
    given: dict[str, Any] = {"level": level, "level_variance": level_variance, "drift": drift, "days": days, "reading_variance": reading_variance, "probability": probability}
    return _call("statistics.level_forecast", given)  # type: ignore[no-any-return]


def local_trend(*, readings: Sequence[_t.Reading], level_drift: float, slope_drift: float, also: Sequence[_t.Day]) -> _t.TrendPath:
    """Where are level and slope, and where were they, given scattered readings on irregular days?

    # Formula
    Day by day: `level += slope + N(0, level_drift)`, `slope += N(0, slope_drift)`; readings see the level with the
    variance of each. Over `d` days the added variance is `d s_l + s_s (d-1)d(2d-1)/6` for the level, `d s_s` for
    the slope, `s_s d(d-1)/2` between them. Exact diffuse start.

    # Domain
    Readings on at least two days. `also` names days to answer for without a reading.

    # Errors
    `not_enough_data` with readings on fewer than two days; `out_of_range` for a variance at or below 0, a drift
    below 0, or values beyond 1e100; `not_finite`; `not_identified` where variances differ so much that rounding
    leaves nothing of the answer.

    # Source
    Durbin & Koopman 2012, chapter 3 (row `statistics.local_trend`).

    # Known how
    Recalled, not read again: take the numbers with care.

    Source: Durbin J, Koopman SJ. Time Series Analysis by State Space Methods, 2nd ed. Oxford University Press, 2012
    """
    given: dict[str, Any] = {"readings": readings, "level_drift": level_drift, "slope_drift": slope_drift, "also": also}
    return _call("statistics.local_trend", given)  # type: ignore[no-any-return]


def local_trend_fit(*, readings: Sequence[_t.Reading]) -> _t.TrendFit:
    """What drifts of level and slope explain the readings best, if their variances are known?

    # Formula
    Maximum of the log likelihood of `local_trend`(super::local_trend) over both drifts, by the method of Nelder &
    Mead on their logarithms.

    # Domain
    At least five readings on at least two days. With few readings a drift of none is common.

    # Errors
    `not_enough_data`, `did_not_converge`, `out_of_range`, `not_finite`.

    # Source
    Durbin & Koopman 2012, chapter 7 (row `statistics.local_trend_fit`).

    # Known how
    Recalled, not read again: take the numbers with care.

    Source: Durbin J, Koopman SJ. Time Series Analysis by State Space Methods, 2nd ed. Oxford University Press, 2012
    """
    given: dict[str, Any] = {"readings": readings}
    return _call("statistics.local_trend_fit", given)  # type: ignore[no-any-return]


def trend_forecast(*, state: _t.TrendState, level_drift: float, slope_drift: float, days: float, reading_variance: float, probability: float) -> _t.Interval:
    """Where will the level lie so many days on if the trend goes on, with a band that widens as it should?

    # Formula
    `level + days * slope +- z sqrt(V + R)`; `V` variance of the level ahead (level, slope, their covariance, and what
    both drifts add over the days), `R` variance of a reading (0 for the level itself).

    # Domain
    0 to 36,525 days. No trend of training goes on for long: the band says how little is known, not what limits it.

    # Errors
    `out_of_range`, `not_finite`.

    # Source
    Durbin & Koopman 2012, chapter 3 (row `statistics.trend_forecast`).

    # Known how
    Recalled, not read again: take the numbers with care.

    Source: Durbin J, Koopman SJ. Time Series Analysis by State Space Methods, 2nd ed. Oxford University Press, 2012
    """
    given: dict[str, Any] = {"state": state, "level_drift": level_drift, "slope_drift": slope_drift, "days": days, "reading_variance": reading_variance, "probability": probability}
    return _call("statistics.trend_forecast", given)  # type: ignore[no-any-return]
