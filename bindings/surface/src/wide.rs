//! The estimates of an equation for many rows at once, in the widest vectors that the processor has: the bits of single calls.
//!
//! Every row is checked, and one that this cannot answer makes it say so: then the rows are gone through another way. Where a
//! sum stands for a question (is it whole, is it within?), it does so since a processor asks eight rows at once that way.

use bismar::Error;
use bismar::one_rm::{Equation, Tabled};

/// Rows that are checked and then written together; a multiple of every vector's length.
const GROUP: usize = 64;

/// Added to a number and taken off again, leaves only what is a multiple of the last place of this one: whole numbers.
pub(crate) const WHOLE: f64 = 6_755_399_441_055_744.0; // 1.5 times 2^52
/// The same for halves, which then stand in the lowest bits as whole numbers.
const HALVES: f64 = 3_377_699_720_527_872.0; // 1.5 times 2^51
const NANOGRAMS_PER_KILOGRAM: f64 = 1e12;

/// A multiplier that is a straight line in the repetitions: reckoning it is quicker than looking it up.
#[derive(Clone, Copy)]
enum Line {
    /// `start + step * reps`
    Times(f64, f64),
    /// `start + reps / part`
    Over(f64, f64),
}

/// Each is held against the library's own answers for every repetition before it is used.
const LINES: &[(Equation, Line)] = &[
    (Equation::Epley1985, Line::Over(1.0, 30.0)),
    (Equation::OConner1989, Line::Times(1.0, 0.025)),
    (Equation::Brown1992, Line::Times(0.9849, 0.0338)),
];

impl Line {
    fn at(self, reps: f64) -> f64 {
        match self {
            Line::Times(start, step) => start + step * reps,
            Line::Over(start, part) => start + reps / part,
        }
    }
}

/// An equation whose estimate is the load times a number that the repetitions alone decide.
pub(crate) struct Wide {
    /// Bits of the fewest repetitions and the most.
    reps: (u64, u64),
    /// The multiplier of every half repetition.
    table: [f64; 256],
    line: Option<Line>,
    processor: Processor,
}

/// The vectors of the processor that this runs on.
#[derive(Clone, Copy)]
pub(crate) struct Processor {
    #[cfg(feature = "wide")]
    found: pulp::Arch,
}

impl Processor {
    pub(crate) fn new() -> Processor {
        Processor {
            #[cfg(feature = "wide")]
            found: pulp::Arch::new(),
        }
    }

    #[cfg(feature = "wide")]
    fn widest(self, run: impl FnOnce() -> bool) -> bool {
        self.found.dispatch(run)
    }

    #[cfg(not(feature = "wide"))]
    fn widest(self, run: impl FnOnce() -> bool) -> bool {
        run()
    }

    /// What the masses read from these loads say in kilograms; whether every one is a mass, and beyond doubt.
    pub(crate) fn masses(self, loads: &[f64], kilograms: &mut [f64]) -> bool {
        self.widest(
            #[inline(always)]
            || {
                let (mut doubt, mut outside) = (0, 0);
                for (load, kilograms) in loads.iter().zip(kilograms) {
                    let (mass, doubtful) = rounded(*load);
                    doubt |= doubtful;
                    outside |= beyond(*load, 1, HEAVIEST);
                    *kilograms = mass;
                }
                doubt == 0 && outside >> 63 == 0
            },
        )
    }
}

impl Wide {
    /// None where the kilograms do not cancel.
    pub(crate) fn new(equation: Equation, tabled: &Tabled) -> Result<Option<Wide>, Error> {
        if !equation.is_scale_free() {
            return Ok(None);
        }
        let highest = equation.highest_reps();
        let halves: Vec<u8> = (2..=(highest * 2.0) as u8).collect();
        let mut multipliers = vec![0.0; halves.len()];
        // One kilogram: the estimate is the multiplier.
        tabled.run(&vec![1.0; halves.len()], &halves, &mut multipliers)?;
        let mut table = [0.0; 256];
        for (slot, multiplier) in table.iter_mut().skip(2).zip(&multipliers) {
            *slot = *multiplier;
        }
        let holds = |line: &Line| {
            let same =
                |(halves, found): (&u8, &f64)| line.at(f64::from(*halves) / 2.0).to_bits() == found.to_bits();
            halves.iter().zip(&multipliers).all(same)
        };
        let line = LINES.iter().find(|(own, _)| *own == equation).map(|(_, line)| *line).filter(holds);
        let last = halves.last().map_or(highest, |halves| f64::from(*halves) / 2.0);
        let reps = (1.0_f64.to_bits(), last.to_bits());
        Ok(Some(Wide { reps, table, line, processor: Processor::new() }))
    }

    /// Whether the rows are a number of whole groups and every one is answered.
    pub(crate) fn run(&self, loads: &[f64], reps: &[f64], out: &mut [f64]) -> bool {
        match self.line {
            Some(Line::Times(start, step)) => {
                let answers = Straight { within: self.reps, line: move |reps| start + step * reps };
                self.processor.widest(
                    #[inline(always)]
                    || groups(loads, reps, out, &answers),
                )
            }
            Some(Line::Over(start, part)) => {
                let answers = Straight { within: self.reps, line: move |reps| start + reps / part };
                self.processor.widest(
                    #[inline(always)]
                    || groups(loads, reps, out, &answers),
                )
            }
            None => self.processor.widest(
                #[inline(always)]
                || groups(loads, reps, out, self),
            ),
        }
    }

    #[inline(always)]
    fn looked_up(&self, place: u64) -> f64 {
        // Every value of the lowest byte has an entry; the compiler sees it and drops the check.
        self.table.get(usize::from(place as u8)).copied().unwrap_or_default()
    }
}

type Rows = [f64; GROUP];

/// Answers a group; what is written is of use only where it says that every row is right.
trait Answers {
    fn group(&self, loads: &Rows, reps: &Rows, out: &mut Rows, mass: impl Fn(f64) -> (f64, u64)) -> bool;
}

// Loops, not folds: what is handed to a fold may be compiled for the narrowest processor.
#[inline(always)]
fn groups(loads: &[f64], reps: &[f64], out: &mut [f64], answers: &impl Answers) -> bool {
    let (loads, last) = loads.as_chunks::<GROUP>();
    let ((reps, _), (out, _)) = (reps.as_chunks::<GROUP>(), out.as_chunks_mut::<GROUP>());
    // After one load that has to be rounded, the next are taken to be alike.
    let mut plain = true;
    for ((loads, reps), out) in loads.iter().zip(reps).zip(out) {
        plain = plain && answers.group(loads, reps, out, printed);
        if !plain && !answers.group(loads, reps, out, rounded) {
            return false;
        }
    }
    last.is_empty()
}

/// An equation by its line.
struct Straight<F> {
    within: (u64, u64),
    line: F,
}

impl<F: Fn(f64) -> f64> Answers for Straight<F> {
    #[inline(always)]
    fn group(&self, loads: &Rows, reps: &Rows, out: &mut Rows, mass: impl Fn(f64) -> (f64, u64)) -> bool {
        let mut faults = Faults::default();
        for ((load, reps), out) in loads.iter().zip(reps).zip(out) {
            let (kilograms, _) = faults.see(*load, *reps, self.within, &mass);
            *out = kilograms * (self.line)(*reps);
        }
        faults.none()
    }
}

impl Answers for Wide {
    #[inline(always)]
    fn group(&self, loads: &Rows, reps: &Rows, out: &mut Rows, mass: impl Fn(f64) -> (f64, u64)) -> bool {
        let mut faults = Faults::default();
        let (mut masses, mut places) = ([0.0; GROUP], [0; GROUP]);
        for (((load, reps), own), place) in loads.iter().zip(reps).zip(&mut masses).zip(&mut places) {
            (*own, *place) = faults.see(*load, *reps, self.reps, &mass);
        }
        if !faults.none() {
            return false;
        }
        for ((kilograms, place), out) in masses.iter().zip(&places).zip(out) {
            *out = kilograms * self.looked_up(*place);
        }
        true
    }
}

/// What was seen in any row.
#[derive(Default)]
struct Faults {
    /// Not zero where repetitions are no halves, or the mass is in doubt.
    wrong: u64,
    /// The highest bit is set where something lies outside its bounds.
    outside: u64,
}

impl Faults {
    /// The mass in kilograms, and the place of the repetitions in the table in the lowest byte.
    #[inline(always)]
    fn see(
        &mut self,
        load: f64,
        reps: f64,
        within: (u64, u64),
        mass: impl Fn(f64) -> (f64, u64),
    ) -> (f64, u64) {
        let shifted = reps + HALVES;
        let (kilograms, doubt) = mass(load);
        self.wrong |= ((shifted - HALVES).to_bits() ^ reps.to_bits()) | doubt;
        let (low, high) = within;
        self.outside |= beyond(reps, low, high) | beyond(load, 1, HEAVIEST) | beyond(kilograms, 1, HEAVIEST);
        (kilograms, shifted.to_bits())
    }

    #[inline(always)]
    fn none(&self) -> bool {
        self.wrong == 0 && self.outside >> 63 == 0
    }
}

/// Bits of a half.
const HALF: u64 = 0.5_f64.to_bits();
/// Bits of the heaviest mass in kilograms.
const HEAVIEST: u64 = 2000.0_f64.to_bits();

/// A number whose highest bit is set where a number is not from the one to the other, whose bits these are; both are positive.
#[inline(always)]
fn beyond(number: f64, low: u64, high: u64) -> u64 {
    high.wrapping_sub(number.to_bits()) | number.to_bits().wrapping_sub(low)
}

/// The load, and zero where it is what some mass says in kilograms: the mass read from it says the same again.
#[inline(always)]
fn printed(load: f64) -> (f64, u64) {
    let nanograms = (load * NANOGRAMS_PER_KILOGRAM + WHOLE) - WHOLE;
    (load, (nanograms / NANOGRAMS_PER_KILOGRAM).to_bits() ^ load.to_bits())
}

/// What the mass read from this load says in kilograms, and zero where that is beyond doubt.
#[inline(always)]
fn rounded(load: f64) -> (f64, u64) {
    let nanograms = (load * NANOGRAMS_PER_KILOGRAM + WHOLE) - WHOLE;
    let rest = rest(load, nanograms);
    let nearest = nanograms + ((rest + WHOLE) - WHOLE);
    (nearest / NANOGRAMS_PER_KILOGRAM, u64::from(rest.abs().to_bits() == HALF))
}

/// What these whole nanograms leave of the load, rounded once.
#[cfg(not(target_family = "wasm"))]
#[inline(always)]
#[allow(clippy::disallowed_methods, reason = "rounded once on every machine, in hardware or not")]
fn rest(load: f64, nanograms: f64) -> f64 {
    load.mul_add(NANOGRAMS_PER_KILOGRAM, -nanograms)
}

#[cfg(target_family = "wasm")]
#[inline(always)]
fn rest(load: f64, nanograms: f64) -> f64 {
    rest_in_parts(load, nanograms)
}

/// The same where nothing multiplies and adds in one: the product and what its rounding left off, both exact, from halves of the
/// two factors (Dekker 1971, named from memory). The product lies within half of the whole number beside it, so that their difference is exact too.
#[cfg(any(test, target_family = "wasm"))]
#[inline(always)]
fn rest_in_parts(load: f64, nanograms: f64) -> f64 {
    /// 2 to the power of 27, and one.
    const SPLITS: f64 = 134_217_729.0;
    const HIGH: f64 = 999_999_995_904.0;
    const LOW: f64 = NANOGRAMS_PER_KILOGRAM - HIGH;
    let product = load * NANOGRAMS_PER_KILOGRAM;
    let spread = SPLITS * load;
    let high = spread - (spread - load);
    let low = load - high;
    let left_off = ((high * HIGH - product) + high * LOW + low * HIGH) + low * LOW;
    (product - nanograms) + left_off
}

#[cfg(part = "whole")]
#[cfg(test)]
mod tests {
    use super::*;
    use bismar::quantity::{Mass, Reps};

    fn ready(equation: Equation) -> Wide {
        Wide::new(equation, &Tabled::new(equation).unwrap()).unwrap().unwrap()
    }

    fn reps(highest: f64) -> Vec<f64> {
        let halves = ((highest - 1.0) * 2.0) as usize + 1;
        (0..GROUP).map(|row| 1.0 + (row * 5 % halves) as f64 * 0.5).collect()
    }

    /// Loads in decimals, in 1024ths, in pounds, and such that no rounding of a product shows on which side of half a
    /// nanogram they are.
    fn loads() -> Vec<[f64; GROUP]> {
        let group = |load: &dyn Fn(f64) -> f64| core::array::from_fn(|row| load(row as f64));
        let mut all = vec![
            group(&|row| (row * 7.0 + 1.0) / 10.0),
            group(&|row| (row * 31.0 + 1.0) / 1024.0),
            group(&|row| 2000.0 - row),
            group(&|row| (row + 1.0) * 1e-12),
        ];
        for start in 0..100 {
            let pounds = |row: f64| (row + f64::from(start * 7) + 1.0) / 2.204_622_621_848_775_8;
            all.extend([group(&pounds), group(&|row| pounds(row) * 0.618_033_988_749_894_9)]);
        }
        all
    }

    #[test]
    fn every_load_and_every_half_repetition_gives_the_bits_of_single_calls() {
        assert_eq!(HEAVIEST, Mass::MAX.kg().to_bits());
        let (mut groups, mut answered, mut close) = (0, 0, 0);
        for equation in Equation::ALL.iter().filter(|one| one.is_scale_free()) {
            let (wide, reps) = (ready(*equation), reps(equation.highest_reps()));
            for loads in loads() {
                let mut out = [0.0; GROUP];
                groups += 1;
                if !wide.run(&loads, &reps, &mut out) {
                    continue;
                }
                answered += 1;
                for ((load, reps), out) in loads.iter().zip(&reps).zip(out) {
                    let product = load * NANOGRAMS_PER_KILOGRAM;
                    close += u32::from((product - product.floor()).total_cmp(&0.5).is_eq());
                    let one = equation.one_rm(Mass::from_kg(*load).unwrap(), Reps::new(*reps).unwrap());
                    assert_eq!(out.to_bits(), one.unwrap().value().to_bits(), "{equation:?} {load} {reps}");
                }
            }
        }
        println!("{answered} of {groups} groups answered, {close} products at half a nanogram");
        assert!(answered * 10 > groups * 9 && close > 100);
    }

    /// The decimals, pounds and products at half a nanogram of [`loads`], and the neighbours of each.
    #[test]
    fn a_rest_in_parts_is_the_rest_of_one_step() {
        let (mut compared, mut with_a_rest) = (0, 0);
        for load in loads().into_iter().flatten().flat_map(|load| [load, load.next_up(), load.next_down()]) {
            let nanograms = (load * NANOGRAMS_PER_KILOGRAM + WHOLE) - WHOLE;
            let (one, parts) = (rest(load, nanograms), rest_in_parts(load, nanograms));
            assert_eq!(one.to_bits(), parts.to_bits(), "{load}");
            compared += 1;
            with_a_rest += u32::from(one != 0.0);
        }
        println!("{compared} compared, {with_a_rest} with a rest");
        assert!(compared > 30_000 && with_a_rest > 10_000);
    }

    #[test]
    fn straight_lines_are_used_and_a_wrong_one_would_not_be() {
        for (equation, _) in LINES {
            assert!(ready(*equation).line.is_some(), "{equation:?}");
        }
        // Epley's form for another's numbers.
        let lander = ready(Equation::Lander1985);
        assert!(
            lander.line.is_none()
                && Line::Over(1.0, 30.0).at(8.0).to_bits() != lander.looked_up(16).to_bits()
        );
    }

    #[test]
    fn one_row_that_is_refused_is_seen() {
        let wide = ready(Equation::Brzycki1993);
        let (loads, reps) = ([100.0; GROUP], [5.0; GROUP]);
        let mut out = [0.0; GROUP];
        assert!(wide.run(&loads, &reps, &mut out));
        for load in
            [0.0, -0.0, -1.0, 1e-13, 4e-13, 2_000.000_000_000_001, f64::NAN, f64::INFINITY, -f64::NAN, 5e-324]
        {
            let mut loads = loads;
            loads[17] = load;
            assert!(!wide.run(&loads, &reps, &mut out), "{load}");
        }
        for one in
            [0.5, 0.0, -0.0, -5.0, 37.0, 200.0, 5.25, 1e300, f64::NAN, f64::INFINITY, f64::NEG_INFINITY]
        {
            let mut reps = reps;
            reps[63] = one;
            assert!(!wide.run(&loads, &reps, &mut out), "{one}");
        }
        assert!(!wide.run(&loads[..63], &reps[..63], &mut out[..63]));
    }
}
