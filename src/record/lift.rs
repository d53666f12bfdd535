//! What a coach sets for one lift: regions, ladder, range, tempo, gate, steps.

use alloc::vec::Vec;

use derive_setters::Setters;

use super::ladder::Rung;
use super::place::{Dimension, Grant, Place, StepPolicy};
use super::policy::Policy;
use super::session::at_most;
use crate::canonical::{canonical_fields, canonical_kinds};
use crate::error::{Allowed, Code, Error, Given};
use crate::gate::{Criterion, Gate, PassRules, check_criteria};
use crate::quantity::{Length, Mass, Name, Tempo};
use crate::reason::NamedPlace;

/// The most ranges, tempos and regions of one lift.
const MOST_CHOICES: usize = 24;
const MOST_REGIONS: usize = 6;
/// No automatic step is ever larger than this part of the load (our choice, a hard limit).
pub(crate) const HARD_STEP_CAP: f64 = 0.10;
/// Highest start of a bar from the floor, on blocks or on pins.
const HIGHEST_START_MM: i16 = 500;

/// A place is told by what stands in the lists, so that nothing may stand there twice.
fn each_once<T: PartialEq>(
    list: &[T],
    field: &'static str,
    given: impl Fn(&T) -> Given,
) -> Result<(), Error> {
    let mut entries = list.iter().enumerate();
    let Some((at, entry)) =
        entries.find(|(at, entry)| list.iter().take(*at).any(|earlier| earlier == *entry))
    else {
        return Ok(());
    };
    let rule = Allowed::Rule(alloc::format!("each {field} once").into());
    let error = Error::new(Code::DuplicateName, field, given(entry), rule);
    Err(error.within(&alloc::format!("{field}s[{at}]")))
}

fn told_tempo(tempo: &Tempo) -> Given {
    alloc::format!("{} s down, {} s hold, {} s up", tempo.down, tempo.hold, tempo.up).into()
}

/// Which half of the body a lift loads; sets the default size of a step.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
#[cfg_attr(feature = "serde", derive(serde::Serialize, serde::Deserialize), serde(rename_all = "snake_case"))]
#[cfg_attr(feature = "schema", derive(schemars::JsonSchema))]
pub enum Body {
    /// Arms and shoulders: steps of at most 2.5 %.
    Upper,
    /// Legs and hips: steps of at most 5 %.
    Lower,
}

canonical_kinds!(Body: 0 Upper, 1 Lower);

/// What holds the bar before the first repetition, and so what its height depends on.
#[derive(Clone, Copy, Debug, Default, PartialEq, Eq)]
#[cfg_attr(feature = "serde", derive(serde::Serialize, serde::Deserialize), serde(rename_all = "snake_case"))]
#[cfg_attr(feature = "schema", derive(schemars::JsonSchema))]
#[non_exhaustive]
pub enum StartsFrom {
    /// A rack, the hands, a machine: the height of the start is no part of the lift.
    #[default]
    Rack,
    /// The floor or blocks: the discs carry the bar, so lighter discs may lower it.
    Floor,
    /// Pins at the height of the range: they carry the bar whatever is on it.
    Pins,
}

canonical_kinds!(StartsFrom: 0 Rack, 1 Floor, 2 Pins);

/// What a coach sets for one lift.
#[derive(Clone, Debug, PartialEq, Setters)]
#[cfg_attr(feature = "serde", derive(serde::Serialize, serde::Deserialize), serde(deny_unknown_fields))]
#[cfg_attr(feature = "schema", derive(schemars::JsonSchema))]
#[setters(prefix = "with_", no_std)]
#[non_exhaustive]
pub struct LiftParameters {
    /// The id that events name; it never changes.
    pub id: Name,
    /// What people call it; absent where the id says it.
    #[cfg_attr(feature = "serde", serde(default, skip_serializing_if = "Option::is_none"))]
    #[setters(into)]
    pub name: Option<Name>,
    /// Upper or lower body.
    pub body: Body,
    /// Ids of the regions the lift loads; pain in one of them concerns every lift that shares it.
    pub regions: Vec<Name>,
    /// Id of the implement in the equipment.
    pub implement: Name,
    /// Rungs, at least one.
    pub rungs: Vec<Rung>,
    /// What holds the bar before the first repetition. From the floor or from pins, the ranges are heights of the bar's
    /// centre above the floor.
    #[cfg_attr(feature = "serde", serde(default, skip_serializing_if = "is_rack"))]
    pub starts_from: StartsFrom,
    /// Ranges from easiest to full, as heights or depths; empty where range is not measured.
    #[cfg_attr(feature = "serde", serde(default, skip_serializing_if = "Vec::is_empty"))]
    pub ranges: Vec<Length>,
    /// Tempos from easiest to hardest; empty where tempo is not prescribed.
    #[cfg_attr(feature = "serde", serde(default, skip_serializing_if = "Vec::is_empty"))]
    pub tempos: Vec<Tempo>,
    /// Where and with what the lift starts.
    pub start: Grant,
    /// The one dimension that moves in this block.
    #[cfg_attr(feature = "serde", serde(default = "load_moves"))]
    pub moving: Dimension,
    /// What technique is judged by.
    pub criteria: Vec<Criterion>,
    /// When a session passes.
    #[cfg_attr(feature = "serde", serde(default))]
    pub pass: PassRules,
    /// When the lift may move.
    pub gate: Gate,
    /// Size of a step; absent means 2.5 % for the upper and 5 % for the lower body.
    #[cfg_attr(feature = "serde", serde(default, skip_serializing_if = "Option::is_none"))]
    #[setters(into)]
    pub step: Option<StepPolicy>,
    /// Largest step allowed as a part of the load, at most 0.10; absent means the default of the body half.
    #[cfg_attr(feature = "serde", serde(default, skip_serializing_if = "Option::is_none"))]
    #[setters(into)]
    pub step_cap: Option<f64>,
    /// Highest load the coach allows at all.
    #[cfg_attr(feature = "serde", serde(default, skip_serializing_if = "Option::is_none"))]
    #[setters(into)]
    pub ceiling: Option<Mass>,
    /// Most repetitions a set, where repetitions move.
    #[cfg_attr(feature = "serde", serde(default, skip_serializing_if = "Option::is_none"))]
    #[setters(into)]
    pub reps_top: Option<u8>,
    /// Most sets, where sets move.
    #[cfg_attr(feature = "serde", serde(default, skip_serializing_if = "Option::is_none"))]
    #[setters(into)]
    pub sets_top: Option<u8>,
    /// Sessions of calibration on a new rung; absent means the policy's number.
    #[cfg_attr(feature = "serde", serde(default, skip_serializing_if = "Option::is_none"))]
    #[setters(into)]
    pub learning_sessions: Option<u8>,
    /// Needs pins or a spotter when alone, as a bench press or a squat does.
    #[cfg_attr(feature = "serde", serde(default, skip_serializing_if = "core::ops::Not::not"))]
    pub over_the_body: bool,
}

impl LiftParameters {
    /// That lift on that implement from that start, behind that gate. Rungs, regions and criteria are still to be said:
    /// [`check`](LiftParameters::check) asks for a rung and a criterion.
    #[must_use]
    pub fn new(id: Name, body: Body, implement: Name, start: Grant, gate: Gate) -> LiftParameters {
        LiftParameters {
            id,
            name: None,
            body,
            regions: Vec::new(),
            implement,
            rungs: Vec::new(),
            starts_from: StartsFrom::default(),
            ranges: Vec::new(),
            tempos: Vec::new(),
            start,
            moving: load_moves(),
            criteria: Vec::new(),
            pass: PassRules::default(),
            gate,
            step: None,
            step_cap: None,
            ceiling: None,
            reps_top: None,
            sets_top: None,
            learning_sessions: None,
            over_the_body: false,
        }
    }
}

canonical_fields!(
    LiftParameters: id, name, body, regions, implement, rungs, starts_from, ranges, tempos, start, moving,
    criteria, pass, gate, step, step_cap, ceiling, reps_top, sets_top, learning_sessions, over_the_body
);

const fn load_moves() -> Dimension {
    Dimension::Load
}

#[cfg(feature = "serde")]
fn is_rack(starts_from: &StartsFrom) -> bool {
    *starts_from == StartsFrom::Rack
}

impl LiftParameters {
    /// The same without names for people, which change nothing.
    pub(crate) fn without_names(&self) -> LiftParameters {
        let mut plain = LiftParameters { name: None, ..self.clone() };
        plain.rungs.iter_mut().for_each(|rung| rung.name = None);
        plain
    }

    /// What people call it.
    #[must_use]
    pub fn label(&self) -> &Name {
        self.name.as_ref().unwrap_or(&self.id)
    }

    /// What a place is by its rung, range and tempo.
    #[must_use]
    pub fn named_place(&self, place: Place) -> NamedPlace {
        let rung = self.rungs.get(usize::from(place.rung)).map(|rung| rung.id.clone());
        let tempo = self.tempos.get(usize::from(place.tempo)).copied();
        NamedPlace::new(rung, self.ranges.get(usize::from(place.range)).copied(), tempo)
    }

    /// Largest step allowed as a part of the load.
    #[must_use]
    pub fn cap(&self) -> f64 {
        self.step_cap.unwrap_or(match self.body {
            Body::Upper => 0.025,
            Body::Lower => 0.05,
        })
    }

    /// Size of a step.
    #[must_use]
    pub fn step_policy(&self) -> StepPolicy {
        self.step.unwrap_or(StepPolicy::Part(self.cap()))
    }

    /// Height of the bar's centre at that place, where it starts from the floor or from pins.
    #[must_use]
    pub fn start_height(&self, place: Place) -> Option<Length> {
        match self.starts_from {
            StartsFrom::Rack => None,
            StartsFrom::Floor | StartsFrom::Pins => self.ranges.get(usize::from(place.range)).copied(),
        }
    }

    /// Sessions of calibration on a lift that is new or taken up again.
    pub(crate) fn learning(&self, policy: &Policy) -> u8 {
        self.learning_sessions.unwrap_or(policy.learning_sessions)
    }

    /// Sessions of calibration where only the rung is new, or a long break lies behind: half, at least two (our
    /// choice).
    pub(crate) fn relearning(&self, policy: &Policy) -> u8 {
        (self.learning(policy) / 2).max(2)
    }

    /// Checks what the parts alone cannot.
    ///
    /// # Errors
    /// `too_many`, `empty_list`, `unknown_name`, `duplicate_name` (a region, a range or a tempo that is there twice), `ladder_cycle`, `out_of_range`, and what
    /// [`check_criteria`] and [`PassRules::check`] report.
    pub fn check(&self) -> Result<(), Error> {
        at_most("ranges", self.ranges.len(), MOST_CHOICES)?;
        at_most("tempos", self.tempos.len(), MOST_CHOICES)?;
        at_most("regions", self.regions.len(), MOST_REGIONS)?;
        for (at, region) in self.regions.iter().enumerate() {
            if self.regions.iter().take(at).any(|earlier| earlier == region) {
                let rule = Allowed::rule("each region once");
                return Err(Error::new(Code::DuplicateName, "regions", region.as_str(), rule));
            }
        }
        check_criteria(&self.criteria)?;
        self.pass.check().map_err(|error| error.within("pass"))?;
        self.check_ladder()?;
        self.check_heights()?;
        each_once(&self.ranges, "range", |range| range.mm().into())?;
        each_once(&self.tempos, "tempo", told_tempo)?;
        self.check_grant(&self.start).map_err(|error| error.within("start"))?;
        self.check_step()
    }

    /// Heights of starts, the highest (easiest) first.
    fn check_heights(&self) -> Result<(), Error> {
        if self.starts_from == StartsFrom::Rack {
            return Ok(());
        }
        if self.ranges.is_empty() {
            return Err(Error::plain(Code::EmptyList, "ranges"));
        }
        let mut above = Length::millimetres(HIGHEST_START_MM);
        for (at, height) in self.ranges.iter().enumerate() {
            if *height <= Length::ZERO || *height > above || (at > 0 && *height == above) {
                let field = alloc::format!("ranges[{at}]");
                return Err(Error::range(Code::OutOfRange, "height", height.mm(), 0.0, above.mm(), "mm")
                    .within(&field));
            }
            above = *height;
        }
        Ok(())
    }

    /// Whether a place exists.
    ///
    /// # Errors
    /// `out_of_range`.
    pub fn check_place(&self, place: &Place) -> Result<(), Error> {
        let inside = |field, number: u8, length: usize| {
            let highest = length.max(1) - 1;
            if usize::from(number) > highest {
                return Err(Error::range(Code::OutOfRange, field, number, 0.0, highest as f64, ""));
            }
            Ok(())
        };
        inside("rung", place.rung, self.rungs.len())?;
        inside("range", place.range, self.ranges.len())?;
        inside("tempo", place.tempo, self.tempos.len())
    }

    /// Whether a grant names a place that exists and work that can be counted. Whether its load can be, the implement
    /// says: [`Parameters::check_load`](super::Parameters::check_load).
    ///
    /// # Errors
    /// `out_of_range`.
    pub fn check_grant(&self, grant: &Grant) -> Result<(), Error> {
        self.check_place(&grant.place).map_err(|error| error.within("place"))?;
        for (field, count) in [("sets", grant.work.sets), ("reps", grant.work.reps)] {
            if !(1..=30).contains(&count) {
                return Err(Error::range(Code::OutOfRange, field, count, 1.0, 30.0, "").within("work"));
            }
        }
        Ok(())
    }

    fn check_step(&self) -> Result<(), Error> {
        let part = |field, value| {
            let value =
                crate::numeric::within(Code::OutOfRange, field, value, 0.0, HARD_STEP_CAP, "of the load")?;
            if value > 0.0 {
                Ok(())
            } else {
                Err(Error::range(Code::OutOfRange, field, value, 0.0, HARD_STEP_CAP, "above 0"))
            }
        };
        if let Some(cap) = self.step_cap {
            part("step_cap", cap)?;
        }
        match self.step {
            Some(StepPolicy::Part(value)) => part("step", value),
            Some(StepPolicy::Fixed(mass)) if !mass.is_positive() => {
                Err(Error::range(Code::OutOfRange, "step", mass.kg(), 0.0, Mass::MAX.kg(), "kg, above 0"))
            }
            _ => Ok(()),
        }
    }
}
