"""A nightly job: yesterday's states and today's events, instead of every log from its beginning.

A state is what `Progress.state_json` stores beside a lifter. An event that changes the past is refused with `needs_refold`,
and then that lifter's whole log is folded; so is a state of another version of the library. What comes out is what the
whole log gives, byte for byte.
"""

import time
from concurrent.futures import ThreadPoolExecutor

from bismar import BismarError, Progress, fold_many
from lifters import EVENTS, PLAN, TODAY, request

LIFTERS = 60
WORKERS = 2


def whole_log(lifter: str, events: list[str]) -> str:
    return f'{{"format":"bismar-log","version":1,"lifter":{{"id":"{lifter}"}},"events":[{",".join(events)}]}}'


def tonight(lifter: str, state: str, new: list[str], before: list[str]) -> tuple[str, str, bool]:
    """The state to store for tomorrow, the next session, and whether the log had to be folded anew."""
    folded = False
    try:
        progress = Progress.resume(state)
        for event in new:
            progress.apply(event)
    except BismarError as error:
        if error.code not in ("needs_refold", "other_version"):
            raise
        progress, folded = Progress(whole_log(lifter, before + new)), True
    return progress.state_json(), progress.next_session_json(PLAN, TODAY), folded


def main() -> None:
    logs = {f"lifter {number:05}": EVENTS[: 60 + number * 37 % 500] for number in range(LIFTERS)}
    news = {
        lifter: EVENTS[len(before) : len(before) + 2] for lifter, before in logs.items()
    }
    # One of them tells of last year only now.
    late = '{"sequence":900000,"day":"2024-10-01","kind":{"body_mass_recorded":{"kg":80}}}'
    news["lifter 00007"] = [late]

    yesterday = fold_many([whole_log(*one) for one in logs.items()], threads=WORKERS)
    assert all(isinstance(one, Progress) for one in yesterday)
    states = {lifter: one.state_json() for lifter, one in zip(logs, yesterday) if isinstance(one, Progress)}

    started = time.perf_counter()
    with ThreadPoolExecutor(WORKERS) as pool:
        found = dict(zip(logs, pool.map(lambda one: tonight(one, states[one], news[one], logs[one]), logs)))
    by_states = time.perf_counter() - started

    started = time.perf_counter()
    anew = fold_many([whole_log(lifter, logs[lifter] + news[lifter]) for lifter in logs], threads=WORKERS)
    whole = {lifter: one for lifter, one in zip(logs, anew) if isinstance(one, Progress)}
    assert len(whole) == LIFTERS
    sessions = {lifter: one.next_session_json(PLAN, TODAY) for lifter, one in whole.items()}
    by_logs = time.perf_counter() - started

    for lifter, (state, session, _) in found.items():
        assert state == whole[lifter].state_json(), lifter
        assert session == sessions[lifter], lifter
    folded = [lifter for lifter, (_, _, folded) in found.items() if folded]
    assert folded == ["lifter 00007"], folded
    print(
        f"nightly: {LIFTERS} lifters, {len(folded)} folded anew; states {by_states * 1e3:.0f} ms, "
        f"whole logs {by_logs * 1e3:.0f} ms; the same states and sessions"
    )


if __name__ == "__main__":
    main()
