//! Published rules for when to add load.

use alloc::vec::Vec;

use crate::error::{Allowed, Code, Error};
use crate::quantity::{Kilograms, Reps};
use crate::source::{Source, formula, rows};

const ACSM_2009: Source = Source {
    id: "acsm-2009",
    citation: "American College of Sports Medicine. Progression models in resistance training for healthy adults. Med Sci Sports Exerc 41:687-708, 2009",
    doi: Some("10.1249/MSS.0b013e3181915670"),
};

const NSCA_2016: Source = Source {
    id: "nsca-2016",
    citation: "Sheppard JM, Triplett NT. Program design for resistance training. In: Haff GG, Triplett NT (eds). \
               Essentials of Strength Training and Conditioning, 4th ed. Human Kinetics, 2016, chapter 17",
    doi: None,
};

const KNIGHT_1979: Source = Source {
    id: "knight-1979",
    citation: "Knight KL. Knee rehabilitation by the daily adjustable progressive resistive exercise technique. American \
               Journal of Sports Medicine 7(6):336-337, 1979",
    doi: None,
};

/// What double progression asks for next.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
#[cfg_attr(feature = "serde", derive(serde::Serialize, serde::Deserialize), serde(rename_all = "snake_case"))]
#[cfg_attr(feature = "schema", derive(schemars::JsonSchema))]
pub enum NextStep {
    /// The same load and more repetitions.
    MoreRepetitions,
    /// The top of the range in every set: the load may be raised where everything else allows it, with
    /// repetitions back at the bottom.
    LoadMayRise,
    /// Below the bottom of the range: the load is too much.
    LessLoad,
}

formula! {
    "prescription.double_progression",
    /// Repetitions first, then load: what comes next after these sets?
    ///
    /// # Formula
    /// Top of the range in every set: the load may rise. Below the bottom in any set: less load. Else more
    /// repetitions at the same load.
    ///
    /// # Domain
    /// One range for all sets, at least one set. It says what may be asked of the gate; it grants nothing.
    ///
    /// # Errors
    /// `not_enough_data` without a set; `interval_reversed` where the top lies below the bottom.
    ///
    /// # Source
    /// Common practice.
    ///
    /// # Examples
    /// ```
    /// use bismar::prescription::{NextStep, double_progression};
    /// use bismar::quantity::Reps;
    ///
    /// let reps = [8, 8, 7].map(Reps::whole).into_iter().collect::<Result<Vec<_>, _>>()?;
    /// assert_eq!(double_progression(&reps, Reps::whole(5)?, Reps::whole(8)?)?, NextStep::MoreRepetitions);
    /// # Ok::<(), bismar::Error>(())
    /// ```
    pub fn double_progression(done: &[Reps], bottom: Reps, top: Reps) -> Result<NextStep, Error> {
        if done.is_empty() {
            return Err(Error::range(Code::NotEnoughData, "done", 0_u8, 1.0, 30.0, "sets"));
        }
        if top < bottom {
            return Err(Error::new(Code::IntervalReversed, "top", top.value(), Allowed::rule("bottom <= top")));
        }
        Ok(if done.iter().any(|reps| *reps < bottom) {
            NextStep::LessLoad
        } else if done.iter().all(|reps| *reps >= top) {
            NextStep::LoadMayRise
        } else {
            NextStep::MoreRepetitions
        })
    }
    source: crate::source::COMMON_PRACTICE, place: "double progression", standing: CommonPractice, seen: NotApplicable,
}

formula! {
    "prescription.two_for_two",
    /// Two more repetitions than the goal in the last set, in two sessions running: may the load rise?
    ///
    /// # Formula
    /// `last set >= goal + 2` in this session and the one before.
    ///
    /// # Domain
    /// It says what may be asked of the gate; it grants nothing.
    ///
    /// # Errors
    /// None beyond those of building the repetitions.
    ///
    /// # Source
    /// Sheppard & Triplett 2016, chapter 17 (row `prescription.two_for_two`).
    ///
    /// # Examples
    /// ```
    /// use bismar::{prescription::two_for_two, quantity::Reps};
    ///
    /// assert!(two_for_two(Reps::whole(10)?, Reps::whole(12)?, Reps::whole(12)?)?);
    /// # Ok::<(), bismar::Error>(())
    /// ```
    pub fn two_for_two(goal: Reps, last_set_before: Reps, last_set_now: Reps) -> Result<bool, Error> {
        let enough = |reps: Reps| reps.halves() >= goal.halves() + 4;
        Ok(enough(last_set_before) && enough(last_set_now))
    }
    source: NSCA_2016, place: "chapter 17, 2-for-2 rule", standing: Published, seen: Read,
}

formula! {
    "prescription.acsm_2009_step",
    /// The published range of a step up at this load, where the current load can be done for one or two
    /// repetitions over the target.
    ///
    /// # Formula
    /// From 2 % to 10 % of the load.
    ///
    /// # Domain
    /// Healthy adults; loads of a repetition maximum. It says what may be asked of the gate; it grants nothing.
    ///
    /// # Errors
    /// `load_out_of_domain` at or below 0 kg.
    ///
    /// # Source
    /// ACSM 2009, abstract (row `prescription.acsm_2009_step`).
    ///
    /// # Examples
    /// ```
    /// use bismar::{prescription::acsm_2009_step, quantity::Mass};
    ///
    /// let step = acsm_2009_step(Mass::from_kg(50.0)?)?;
    /// assert_eq!((step.least.value(), step.most.value()), (1.0, 5.0));
    /// # Ok::<(), bismar::Error>(())
    /// ```
    pub fn acsm_2009_step(load: crate::quantity::Mass) -> Result<StepRange, Error> {
        if !load.is_positive() {
            return Err(Error::range(Code::LoadOutOfDomain, "load", load.kg(), 0.0, 2000.0, "kg, above 0"));
        }
        Ok(StepRange { least: Kilograms::new(load.kg() * 0.02)?, most: Kilograms::new(load.kg() * 0.10)? })
    }
    source: ACSM_2009, place: "abstract", standing: Published, seen: Read, population: "healthy adults",
}

/// A step from the least to the most; negative where the load goes down.
#[derive(Clone, Copy, Debug, PartialEq)]
#[cfg_attr(feature = "serde", derive(serde::Serialize, serde::Deserialize), serde(deny_unknown_fields))]
#[cfg_attr(feature = "schema", derive(schemars::JsonSchema))]
#[non_exhaustive]
pub struct StepRange {
    /// The smallest step, in kg.
    pub least: Kilograms,
    /// The largest step, in kg.
    pub most: Kilograms,
}

formula! {
    "prescription.knight_1979",
    /// Repetitions done in the set to failure at the working weight: by how much does the working weight change
    /// next time?
    ///
    /// # Formula
    /// Table: 0 to 2 repetitions, 5 to 2.5 kg less; 3 to 4, the same; 5 to 6, 2.5 to 5 kg more; 7 to 10, 2.5 to
    /// 7.5 kg more; 11 and above, 5 to 10 kg more.
    ///
    /// # Domain
    /// Made for the knee extension after an injury; steps in kilograms do not suit a press of 25 kg. Whether the
    /// original keys the table to the third or the fourth set could not be read.
    ///
    /// # Errors
    /// `not_whole` for half repetitions.
    ///
    /// # Source
    /// Knight 1979 (row `prescription.knight_1979`), the column for the next session, read in two later books.
    ///
    /// # Examples
    /// ```
    /// use bismar::{prescription::knight_1979, quantity::Reps};
    ///
    /// assert_eq!(knight_1979(Reps::whole(6)?)?.most.value(), 5.0);
    /// # Ok::<(), bismar::Error>(())
    /// ```
    pub fn knight_1979(reps: Reps) -> Result<StepRange, Error> {
        if !reps.is_whole() {
            return Err(Error::new(Code::NotWhole, "reps", reps.value(), Allowed::rule("whole repetitions")));
        }
        let (least, most) = match reps.halves() / 2 {
            0..=2 => (-5.0, -2.5),
            3..=4 => (0.0, 0.0),
            5..=6 => (2.5, 5.0),
            7..=10 => (2.5, 7.5),
            _ => (5.0, 10.0),
        };
        Ok(StepRange { least: Kilograms::new(least)?, most: Kilograms::new(most)? })
    }
    source: KNIGHT_1979, place: "table of repetitions and next session", standing: Published, seen: Secondary,
    copies: "two later books",
    population: "knee rehabilitation", domain: "knee extension",
}

/// What a critical fault in a set asks for.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
#[cfg_attr(feature = "serde", derive(serde::Serialize, serde::Deserialize), serde(rename_all = "snake_case"))]
#[cfg_attr(feature = "schema", derive(schemars::JsonSchema))]
pub enum TechniqueStop {
    /// Go on.
    GoOn,
    /// End the set, and do the next one.
    EndSet,
    /// End the lift for today, on a good repetition.
    EndLift,
}

formula! {
    "prescription.technique_stop",
    /// A critical point of technique was lost: what now?
    ///
    /// # Formula
    /// The set ends at the first critical fault; the lift ends after two sets that ended so.
    ///
    /// # Domain
    /// `critical_faults` has one entry for each set done so far, in order.
    ///
    /// # Errors
    /// None.
    ///
    /// # Source
    /// Common practice.
    ///
    /// # Examples
    /// ```
    /// use bismar::prescription::{TechniqueStop, technique_stop};
    ///
    /// assert_eq!(technique_stop(&[false, true])?, TechniqueStop::EndSet);
    /// assert_eq!(technique_stop(&[true, true])?, TechniqueStop::EndLift);
    /// # Ok::<(), bismar::Error>(())
    /// ```
    pub fn technique_stop(critical_faults: &[bool]) -> Result<TechniqueStop, Error> {
        let stopped: Vec<&bool> = critical_faults.iter().filter(|fault| **fault).collect();
        Ok(match (stopped.len(), critical_faults.last()) {
            (2.., _) => TechniqueStop::EndLift,
            (1, Some(true)) => TechniqueStop::EndSet,
            _ => TechniqueStop::GoOn,
        })
    }
    source: crate::source::COMMON_PRACTICE, place: "technique stop", standing: CommonPractice, seen: NotApplicable,
}

rows![double_progression, two_for_two, acsm_2009_step, knight_1979, technique_stop];
