#!/usr/bin/env python3
"""Runs the mutants that cargo-mutants lists, all of them in one build.

Building the crate anew for each mutant takes hours. Here every mutant is one more branch of its function, chosen by
the environment variable MUTANT at run time: one build, then one short run a mutant, of those tests only that reach it.

    cargo install --locked cargo-mutants
    python3 tests/mutants.py FOLDER 'src/gate/**' 'src/progression/**'          # every mutant of these files
    python3 tests/mutants.py --sample 320 --seed 11 FOLDER 'src/one_rm/**' ...  # a seeded sample of them

FOLDER takes a copy of the sources as they are now, the build and `outcomes.json`; a second run goes on where the first
one ended, with the same copy. A
mutant is caught if a test fails or runs ten times as long as it should; one that does not compile is unviable and counts
for nothing. Mutants of const functions and of functions that return `impl Trait` cannot be switched at run time; they
are listed, and `cargo mutants -F NAME` runs them one by one. cargo-mutants does not look into macros; so that it lists the
bodies inside `formula!` and `equation!` all the same, it gets a copy in which each macro is a module, line for line.
"""

import argparse
import json
import os
import random
import re
import resource
import subprocess
import sys
from concurrent.futures import ThreadPoolExecutor
from pathlib import Path

ROOT = Path(__file__).resolve().parent.parent
# Fewer cases for each property than in the usual run: a mutant must not need luck to be caught.
CASES = {"PROPTEST_CASES": "48", "BISMAR_CASES": "24", "PROPTEST_RNG_SEED": "7"}
# Published checks of these modules only (see tests/published.rs); set from the patterns.
MODULES = {}
SWITCH = """
extern crate std;
/// Whether this mutant is the one to run.
#[inline(never)]
pub(crate) fn mutant(number: u32) -> bool {
    use std::sync::OnceLock;
    use std::sync::atomic::{AtomicU32, Ordering};
    static CHOSEN: OnceLock<Option<u32>> = OnceLock::new();
    static REACHED: [AtomicU32; 1024] = [const { AtomicU32::new(0) }; 1024];
    let chosen = *CHOSEN.get_or_init(|| std::env::var("MUTANT").ok().and_then(|text| text.parse().ok()));
    if let Some(chosen) = chosen {
        return chosen == number;
    }
    // Nothing chosen: say which mutants are reached.
    let (word, bit) = ((number / 32) as usize, number % 32);
    let seen = REACHED[word].load(Ordering::Relaxed) & (1 << bit) != 0;
    if !seen && REACHED[word].fetch_or(1 << bit, Ordering::Relaxed) & (1 << bit) == 0 {
        if let Ok(path) = std::env::var("REACHED") {
            use std::io::Write;
            let file = std::fs::OpenOptions::new().create(true).append(true).open(path);
            let _ = file.and_then(|mut file| file.write_all(std::format!("{number}\\n").as_bytes()));
        }
    }
    false
}
"""


# A formula: its key, its function, what follows the function.
FORMULA = re.compile(r'^formula! \{\n    "[^"]+",\n(.*?)(^    source:.*?)^\}\n', re.S | re.M)


# An equation: between its facts stand its three functions.
EQUATION = re.compile(r"^equation! \{\n(.*?)^\}\n", re.S | re.M)


def opened(text):
    """The same lines with every `formula!` and `equation!` as a module, for cargo-mutants to see the bodies."""
    def module(found):
        after = re.sub(r"^", "//", found[2].rstrip("\n"), flags=re.M)
        return f"mod opened {{\n\n{found[1]}{after}\n}}\n"

    def functions(found):
        lines, inside = [], False
        for line in found[1].splitlines():
            begins = line.startswith("    pub fn ")
            lines.append(line if begins or inside else "//" + line)
            inside = (begins and not line.endswith("}")) or (inside and line != "    }")
        return "\n".join(["mod opened {", *lines, "}", ""])

    return EQUATION.sub(functions, FORMULA.sub(module, text))


def listed(patterns, plain, folder):
    for path in (plain / "src").rglob("*.rs"):
        name = str(path.relative_to(plain))
        (folder / name).parent.mkdir(parents=True, exist_ok=True)
        (folder / name).write_text(opened(path.read_text()))
    words = ["cargo", "mutants", "--list", "--json"] + [word for one in patterns for word in ("-f", one)]
    return json.loads(subprocess.run(words, cwd=folder, check=True, capture_output=True, text=True).stdout)


def offset(lines, place):
    """Place of a line and column (of characters, from 1) in the text."""
    return sum(len(line) for line in lines[: place["line"] - 1]) + place["column"] - 1


def skip(text, at):
    """The end of the comment, string or character that begins here; the place itself where none does."""
    if text.startswith("//", at):
        end = text.find("\n", at)
        return len(text) if end < 0 else end
    if text.startswith("/*", at):
        return text.find("*/", at) + 2
    raw = re.compile(r'b?r(#*)"').match(text, at)
    if raw and not (at and (text[at - 1].isalnum() or text[at - 1] == "_")):
        return text.find('"' + raw.group(1), raw.end()) + 1 + len(raw.group(1))
    if text[at] == '"':
        at += 1
        while text[at] != '"':
            at += 2 if text[at] == "\\" else 1
        return at + 1
    one = re.compile(r"'(\\u\{[^}]*\}|\\x..|\\.|[^\\'])'").match(text, at)
    return one.end() if one else at


def body(text, start, end):
    """Where the body of the function in text[start:end] begins and ends, braces included."""
    at, depth, opened = start, 0, None
    while at < end:
        after = skip(text, at)
        if after != at:
            at = after
            continue
        if text[at] == "{":
            if depth == 0:
                opened = at
            depth += 1
        elif text[at] == "}":
            depth -= 1
            if depth == 0:
                last = (opened, at + 1)
        at += 1
    return last


def holder(text, lines, mutant):
    """Where the code that holds the mutant begins and ends: the body of its function, or of a closure in a constant.

    None where it cannot be switched.
    """
    if not mutant["function"]:
        start = text.rfind("| ", 0, offset(lines, mutant["span"]["start"])) + 2
        depth, end = 0, start
        while depth or text[end] not in ",)":
            depth += {"(": 1, ")": -1}.get(text[end], 0)
            end += 1
        return None if ";" in text[start:end] else (start, end)
    span = mutant["function"]["span"]
    start, end = offset(lines, span["start"]), offset(lines, span["end"])
    place = body(text, start, end)
    head = re.sub(r"///.*|//.*|#\[[^\]]*\]", "", text[start : place[0]])
    fixed = re.search(r"\bconst\b[^(]*\bfn\b", head) or re.search(r"->\s*impl\b", head)
    return None if fixed else place


def switched(text, function, mutants):
    """The body of the function with one more branch for each of its mutants."""
    begin, end = function
    original = text[begin:end]
    parts = []
    for mutant in mutants:
        from_, to = mutant["at"]
        changed = text[begin:from_] + mutant["replacement"] + text[to:end]
        changed = changed.replace("\n", f" /*M{mutant['number']}*/\n")
        number = mutant["number"]
        parts.append(f"\nif crate::mutant({number}) {{ /*M{number}*/ return {changed} /*M{number}*/; }}\n")
    return "{ " + "".join(parts) + original + " }"


def write(path, text):
    """Leaves a file that holds it already untouched, so that nothing is built anew."""
    if not path.exists() or path.read_text() != text:
        path.write_text(text)


def prepare(mutants, plain, sources, dropped):
    """Writes the sources with every mutant that is not dropped; says which cannot be switched."""
    apart = {}
    by_file = {}
    for mutant in mutants:
        if mutant["number"] not in dropped:
            by_file.setdefault(mutant["file"], []).append(mutant)
    for name in {mutant["file"] for mutant in mutants}:
        text = (plain / name).read_text()
        lines = text.splitlines(keepends=True)
        functions = {}
        for mutant in by_file.get(name, []):
            place = holder(text, lines, mutant)
            if not place:
                apart[mutant["number"]] = mutant["name"]
                continue
            mutant["at"] = (offset(lines, mutant["span"]["start"]), offset(lines, mutant["span"]["end"]))
            functions.setdefault(place, []).append(mutant)
        # From the last to the first, so that places stay right; a function inside another is left to the outer one.
        for place in sorted(functions, reverse=True):
            text = text[: place[0]] + switched(text, place, functions[place]) + text[place[1] :]
        write(sources / name, text)
    library = (plain / "src/lib.rs").read_text().replace("#[cfg(test)]\nextern crate std;\n", "", 1)
    library = library.replace("extern crate alloc;", "extern crate alloc;" + SWITCH, 1)
    write(sources / "src/lib.rs", library)
    return apart


def copy(folder):
    names = subprocess.run(["git", "ls-files"], cwd=ROOT, check=True, capture_output=True, text=True).stdout.split("\n")
    for name in filter(None, names):
        (folder / name).parent.mkdir(parents=True, exist_ok=True)
        (folder / name).write_bytes((ROOT / name).read_bytes())


def environment(folder, **more):
    flags = "--cap-lints allow -A warnings"
    own = {"CARGO_TARGET_DIR": str(folder / "target"), "RUSTFLAGS": flags, "CARGO_TERM_COLOR": "never"}
    own |= {"CARGO_PROFILE_DEV_DEBUG": "0", "CARGO_PROFILE_DEV_OPT_LEVEL": "1"}
    return os.environ | own | CASES | MODULES | more


def unviable(sources, folder):
    """Numbers of the mutants in which the compiler finds errors."""
    words = ["cargo", "check", "--lib", "--all-features", "--message-format=json"]
    done = subprocess.run(words, cwd=sources, env=environment(folder), capture_output=True, text=True)
    found, strange = set(), []
    for line in done.stdout.splitlines():
        message = json.loads(line).get("message")
        if not message or message.get("level") != "error":
            continue
        here = set()
        for span in message["spans"]:
            for one in span["text"]:
                here |= {int(number) for number in re.findall(r"/\*M(\d+)\*/", one["text"])[:1]}
        found |= here
        if not here and message["spans"]:
            strange.append(message["rendered"])
    if done.returncode and not found:
        sys.exit("the mutated sources do not compile:\n" + "\n".join(strange)[:4000] + done.stderr[-2000:])
    return found


def binaries(sources, folder, wanted):
    words = ["cargo", "test", "--all-features", "--no-run", "--message-format=json", "--lib"]
    words += [word for name in wanted for word in ("--test", name)]
    done = subprocess.run(words, cwd=sources, env=environment(folder), capture_output=True, text=True)
    if done.returncode:
        sys.exit(done.stderr[-4000:])
    made = [json.loads(line) for line in done.stdout.splitlines()]
    return [one["executable"] for one in made if one.get("executable")]


def bounded(seconds):
    """Sets what a run may take: a mutant may loop, or ask for memory without end."""
    def limits():
        resource.setrlimit(resource.RLIMIT_CPU, (int(seconds) + 1, int(seconds) + 2))
        resource.setrlimit(resource.RLIMIT_AS, (4 << 30, 4 << 30))
    return limits


def run(binary, test, sources, folder, limit, **more):
    """Whether the test passes within so many seconds of processor time, and how many it took."""
    words = [binary, "--exact", test, "--test-threads=1"]
    quiet = {"stdout": subprocess.DEVNULL, "stderr": subprocess.DEVNULL}
    child = subprocess.Popen(words, cwd=sources, env=environment(folder, **more), preexec_fn=bounded(limit), **quiet)
    _, status, used = os.wait4(child.pid, 0)
    child.returncode = status
    return status == 0, used.ru_utime + used.ru_stime


def reach(tests, sources, folder):
    """Which mutants each test reaches, and how long it takes."""
    known = {}
    for binary, test in tests:
        path = folder / "reached.txt"
        path.unlink(missing_ok=True)
        passed, seconds = run(binary, test, sources, folder, 600, REACHED=str(path))
        if not passed:
            print(f"left out, since it fails without a mutant: {test}")
            continue
        reached = {int(line) for line in path.read_text().split()} if path.exists() else set()
        known[(binary, test)] = (seconds, reached)
    return known


def main():
    parser = argparse.ArgumentParser(description=__doc__, formatter_class=argparse.RawDescriptionHelpFormatter)
    parser.add_argument("--sample", type=int)
    parser.add_argument("--seed", type=int, default=11)
    parser.add_argument("--jobs", type=int, default=1)
    parser.add_argument("--tests", default="published,gate_properties,invariants,fuzz_corpus")
    parser.add_argument("folder", type=Path)
    parser.add_argument("patterns", nargs="+")
    asked = parser.parse_args()
    MODULES["BISMAR_MODULES"] = ":".join(re.findall(r"src/(\w+)", " ".join(asked.patterns)))
    folder = asked.folder.resolve()
    plain, sources, open_ = folder / "plain", folder / "sources", folder / "opened"
    if not plain.exists():
        copy(plain)
        copy(sources)
        copy(open_)
    mutants = listed(asked.patterns, plain, open_)
    print(f"{len(mutants)} mutants listed")
    if asked.sample:
        mutants.sort(key=lambda mutant: mutant["name"])
        random.Random(asked.seed).shuffle(mutants)
        mutants = mutants[: asked.sample]
    for number, mutant in enumerate(mutants, 1):
        mutant["number"] = number
    noted = folder / "unviable.json"
    dropped = set(json.loads(noted.read_text())) if noted.exists() else set()
    while True:
        apart = prepare(mutants, plain, sources, dropped)
        found = set() if noted.exists() else unviable(sources, folder)
        if not found:
            break
        dropped |= found
        print(f"{len(dropped)} do not compile")
    noted.write_text(json.dumps(sorted(dropped)))
    made = binaries(sources, folder, asked.tests.split(","))
    tests = []
    for binary in made:
        names = subprocess.run([binary, "--list"], capture_output=True, text=True, cwd=sources).stdout
        ignored = subprocess.run([binary, "--list", "--ignored"], capture_output=True, text=True, cwd=sources).stdout
        names, ignored = (re.findall(r"^(.*): test$", one, re.M) for one in (names, ignored))
        tests += [(binary, name) for name in names if name not in ignored]
    known = reach(tests, sources, folder)
    kept = folder / "outcomes.json"
    outcomes = json.loads(kept.read_text()) if kept.exists() else {}
    def outcome(mutant):
        name, number = mutant["name"], mutant["number"]
        if number in dropped or number in apart:
            return name, "unviable" if number in dropped else "apart"
        own = sorted((seconds, key) for key, (seconds, reached) in known.items() if number in reached)
        for seconds, (binary, test) in own:
            passed, _ = run(binary, test, sources, folder, 5 + 10 * seconds, MUTANT=str(number))
            if not passed:
                return name, "caught"
        return name, "missed" if own else "not reached"

    with ThreadPoolExecutor(asked.jobs) as pool:
        for name, found in pool.map(outcome, [one for one in mutants if one["name"] not in outcomes]):
            outcomes[name] = found
            kept.write_text(json.dumps(outcomes, indent=1))
    kept.write_text(json.dumps(outcomes, indent=1))
    counts = {}
    for mutant in mutants:
        counts[outcomes[mutant["name"]]] = counts.get(outcomes[mutant["name"]], 0) + 1
    print(counts)
    missed = [one["name"] for one in mutants if outcomes[one["name"]] in ("missed", "not reached")]
    print("\n".join(f"{outcomes[name]}: {name}" for name in missed))
    viable = counts.get("caught", 0) + len(missed)
    print(f"caught {counts.get('caught', 0)} of {viable} ({100 * counts.get('caught', 0) / max(viable, 1):.1f} %)")


if __name__ == "__main__":
    main()
