"""The ways in: errors, columns, kept states, many lifters, threads, and memory under bad calls."""

import json
import pickle
import resource
import threading
import time
from concurrent.futures import ThreadPoolExecutor
from pathlib import Path
from typing import Any

import numpy as np

import bismar
from bismar import BismarError, Progress

EXAMPLES = Path(__file__).resolve().parents[3] / "examples/data"
LOG_TEXT = (EXAMPLES / "demo-log.json").read_text()
LOG = json.loads(LOG_TEXT)
SHORT = LOG | {"events": LOG["events"][:3]}
PLAN = json.loads((EXAMPLES / "demo-plan.json").read_text())
TODAY = "2026-08-27"


def refused(run: Any) -> BismarError:
    try:
        run()
    except BismarError as error:
        return error
    raise AssertionError("an answer instead of an error")


def test_typed_functions_and_defaults() -> None:
    assert bismar.one_rm.epley_1985(load={"kg": 100}, reps=15) == {"kg": 150.0}
    assert bismar.record.policy_default == bismar.call("record.policy_default", {})
    assert "Source:" in (bismar.one_rm.epley_1985.__doc__ or "")
    week = bismar.answers.week(log=LOG, today=TODAY)
    assert week == bismar.call("answers.week", {"log": LOG, "today": TODAY})


def test_answers_in_sentences() -> None:
    for unit, other in [("kg", " lb"), ("lb", " kg in all")]:
        said = bismar.text.week(log=LOG, today=TODAY, unit=unit)
        assert said and not any(other in line for line in said), said
    plan = bismar.prescription.next_session(log=LOG, plan=PLAN, today=TODAY)
    session = bismar.text.session(log=LOG, plan=PLAN, today=TODAY, unit="kg", phrases={"verdict.train": "\u00fcben"})
    assert list(session)[0] == "sheet" and list(session["sheet"])[0] == "stop"
    for told, lift in zip(session["lifts"], plan["lifts"], strict=True):
        assert [len(told["reasons"]), len(told["would_change"])] == [len(lift["reasons"]), len(lift["would_change"])]
        assert told["verdict"] == ("\u00fcben" if lift["verdict"] == "train" else told["verdict"])
    state = Progress(LOG).state()
    assert bismar.text.session_from(state=state, plan=PLAN, today=TODAY, unit="kg")["lifts"][0]["lift"] == plan["lifts"][0]["lift"]
    error = refused(lambda: bismar.text.week(log=LOG, today=TODAY, unit="kg", phrases={"week.nothing": "x"}))
    assert (error.code, error.field) == ("unknown_name", "phrases.key")


def test_an_error_in_a_sentence() -> None:
    error = refused(lambda: bismar.one_rm.epley_1985(load={"kg": 2500}, reps=5))
    said = bismar.text.error(error=error.told, unit="lb")
    assert said.endswith("load is 5511.56. Allowed: -4409.24 to 4409.24 lb."), said
    own = bismar.text.error(error=error.told, unit="kg", phrases={"refused.allowed": "{refusal} Erlaubt: {allowed}."})
    assert own.endswith("Erlaubt: -2000 to 2000 kg."), own
    number = refused(lambda: bismar.one_rm.epley_1985(load={"kg": float("nan")}, reps=5))
    assert number.told["value"] == "NaN" and "NaN" in bismar.text.error(error=number.told, unit="kg")
    assert refused(lambda: bismar.text.error(error={"code": "nothing"}, unit="kg")).field == "error.code"


def test_every_key_has_its_function() -> None:
    for key in bismar.keys():
        module, name = key.split(".")
        assert hasattr(getattr(bismar, module), name), key


def test_one_class_of_errors() -> None:
    error = refused(lambda: bismar.call("one_rm.epley_1985", {"load": {"kg": 100}, "reps": 300}))
    assert (error.code, error.field, error.value) == ("out_of_range", "reps", 300.0)
    assert error.allowed is not None and error.allowed["high"] == 200.0
    again = pickle.loads(pickle.dumps(error))
    assert (again.code, again.allowed, str(again)) == (error.code, error.allowed, str(error))
    for given, code in [
        ({"load": {"kg": 100}, "reps": 8, "extra": 1}, "unknown_field"),
        ({"load": {"kg": 100}}, "missing_field"),
        ({"load": {"kg": float("nan")}, "reps": 8}, "not_finite"),
        ({"load": {"kg": 2**60}, "reps": 8}, "overflow"),
        ({"load": object(), "reps": 8}, "wrong_type"),
        ({"load": {1: 2}, "reps": 8}, "wrong_type"),
        ({"load": {"kg": "100"}, "reps": 8}, "wrong_type"),
        (None, "null_not_allowed"),
        (1, "wrong_type"),
    ]:
        error = refused(lambda given=given: bismar.call("one_rm.epley_1985", given))
        assert error.code == code, (given, error.code)
    assert refused(lambda: bismar.call("nobody.knows", {})).code == "unknown_function"
    assert refused(lambda: bismar.flat("answers.week", 1.0)).code == "unknown_function"
    deep: Any = 1.0
    for _ in range(20_000):
        deep = [deep]
    assert refused(lambda: bismar.call("one_rm.epley_1985", deep)).code == "wrong_type"


def test_columns_give_the_bits_of_single_calls() -> None:
    loads = np.linspace(20.0, 219.97, 5_001)
    reps = 1.0 + np.arange(5_001) % 10
    for key in ["one_rm.epley_1985", "one_rm.mayhew_1992", "one_rm.brzycki_1993_load"]:
        ours = bismar.batch(key, loads, reps)
        assert ours.tolist() == [bismar.flat(key, *row) for row in zip(loads.tolist(), reps.tolist())]
    out = np.empty(5_001)
    assert bismar.batch("one_rm.epley_1985", loads, 5, out=out) is out
    assert out[3] == bismar.flat("one_rm.epley_1985", loads[3], 5)
    # Another layout and another type are taken too, at the cost of a copy.
    assert bismar.batch("one_rm.epley_1985", loads[::2], reps[::2].astype(np.int32)).shape == (2_501,)
    loads[4_000] = -1
    assert refused(lambda: bismar.batch("one_rm.epley_1985", loads, reps)).field.endswith("[4000]")
    some = bismar.batch("one_rm.epley_1985", loads, reps, refused="nan")
    assert np.isnan(some).sum() == 1 and np.isnan(some[4_000])
    assert refused(lambda: bismar.batch("one_rm.epley_1985", loads, reps[1:])).code == "wrong_type"


def test_columns_of_any_loads_give_the_bits_of_single_calls() -> None:
    chance = np.random.default_rng(22)
    rows = 1_024 + 100
    columns = [
        chance.integers(1, 4_000, rows) * 0.5,
        chance.integers(1, 20_000, rows) * 0.1,
        chance.integers(1, 5_000, rows) / 7,
        chance.uniform(0, 2_000, rows),
        chance.uniform(0, 1e-10, rows),
        chance.uniform(1_990, 2_010, rows),
    ]
    names = "epley_1985 oconner_1989 brown_1992 brzycki_1993 lander_1985 mayhew_1992 cummings_finn_1998"
    refusals = 0
    for name in names.split():
        for loads in columns:
            reps = 1 + chance.integers(0, 24, rows) * 0.5
            ours = bismar.batch(f"one_rm.{name}", loads, reps, refused="nan")
            for own, row in zip(ours.tolist(), zip(loads.tolist(), reps.tolist())):
                try:
                    assert own == bismar.flat(f"one_rm.{name}", *row), (name, row)
                except BismarError:
                    assert np.isnan(own), (name, row)
                    refusals += 1
    # The two columns that go beyond what a mass may be.
    assert 0 < refusals < len(names.split()) * 3 * rows


def test_a_kept_state_answers_as_the_whole_log() -> None:
    whole = bismar.call("prescription.next_session", {"log": LOG, "plan": PLAN, "today": TODAY})
    for log in (LOG, LOG_TEXT):
        kept = Progress(log)
        assert kept.next_session(PLAN, TODAY) == whole
        assert json.loads(kept.next_session_json(json.dumps(PLAN), TODAY)) == whole
    stored = kept.state_json()
    assert Progress.resume(stored).next_session(PLAN, TODAY) == whole
    assert Progress.from_state(json.loads(stored), LOG).next_session(PLAN, TODAY) == whole
    kept.apply({"sequence": 100_000, "day": TODAY, "kind": {"body_mass_recorded": {"kg": 81}}})
    before = kept.state_json()
    late = {"sequence": 100_001, "day": "2025-01-01", "kind": {"body_mass_recorded": {"kg": 81}}}
    assert refused(lambda: kept.apply(late)).code == "needs_refold"
    assert kept.state_json() == before
    assert refused(lambda: Progress("{")).code == "not_json"
    assert refused(lambda: Progress({})).code == "missing_field"


def test_many_lifters_and_one_that_is_refused() -> None:
    logs = [LOG_TEXT, "{", LOG, LOG_TEXT]
    folded = bismar.fold_many(logs, threads=2)
    assert [isinstance(one, Progress) for one in folded] == [True, False, True, True]
    assert isinstance(folded[1], BismarError) and folded[1].code == "not_json"
    states = {one.state_json() for one in folded if isinstance(one, Progress)}
    assert len(states) == 1
    events = [json.dumps(event) for event in LOG["events"]]
    about = {"a": LOG["lifter"], "b": LOG["lifter"]}
    grouped = bismar.logs_of(["a"] * len(events) + ["b"] * len(events), events + events[::-1], about)
    both = bismar.fold_many(grouped.values())
    sessions = [one.next_session_json(PLAN, TODAY) for one in both if isinstance(one, Progress)]
    assert sessions == [Progress(LOG_TEXT).next_session_json(PLAN, TODAY)] * 2


def test_other_threads_run_meanwhile() -> None:
    """Counts in another thread while many logs fold: with the lock held it would stand still."""
    counted, stop = [0], threading.Event()

    def count() -> None:
        while not stop.is_set():
            counted[0] += 1
            time.sleep(0.001)

    other = threading.Thread(target=count)
    other.start()
    started = time.perf_counter()
    bismar.fold_many([LOG_TEXT] * 40, threads=1)
    taken = time.perf_counter() - started
    stop.set()
    other.join()
    assert counted[0] > taken * 100, (counted[0], taken)
    with ThreadPoolExecutor(4) as pool:
        kept = Progress(LOG_TEXT)
        answers = list(pool.map(lambda _: kept.next_session_json(PLAN, TODAY), range(40)))
    assert len(set(answers)) == 1


def test_ten_thousand_bad_calls_take_no_memory() -> None:
    kept = Progress(LOG_TEXT)

    def bad(at: int) -> None:
        calls = [
            lambda: bismar.call("one_rm.epley_1985", {"load": {"kg": -at}, "reps": 8}),
            lambda: bismar.call_json("progression.fold", '{"log":{"format":"bismar-log","version":99}}'),
            lambda: bismar.batch("one_rm.epley_1985", np.full(100, -1.0), np.ones(100)),
            lambda: kept.apply({"sequence": at, "day": "2020-01-01", "kind": {"nobody_knows": {"x": [at] * 50}}}),
            lambda: Progress(f'{{"log": "{at}"}}'),
            lambda: bismar.answers.sets_to_log(table={"csv": f"lift,load_kg,reps\n{at},{at},{at}\n" * 20}, log=SHORT),
        ]
        refused(calls[at % len(calls)])

    def memory() -> int:
        pages = int(Path("/proc/self/statm").read_text().split()[1])
        return pages * resource.getpagesize()

    for at in range(2_000):
        bad(at)
    before = memory()
    for at in range(10_000):
        bad(at)
    grown = memory() - before
    print(f"memory after 10000 bad calls: {grown} B more")
    assert grown < 1_000_000


if __name__ == "__main__":
    tests = [(name, run) for name, run in list(globals().items()) if name.startswith("test_")]
    for name, run in tests:
        run()
        print(f"ok {name}")
    print(f"{len(tests)} tests of the surface passed")
