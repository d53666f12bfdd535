//! Gyms, lifts and lifters at random.

use bismar::gate::{Gate, Requirement};
use bismar::loading::{Disc, Implement, MachineStack, Stock};
use bismar::quantity::{Length, Mass};
use bismar::record::*;
use proptest::prelude::*;

use super::course::*;

/// Days at the place that a gate asks for: more than its run.
const DWELL: u16 = RUN as u16 + 2;

/// How the range of a lift in a rack is measured.
#[derive(Clone, Copy, Debug, PartialEq)]
pub enum Measured {
    Nothing,
    /// Deeper is more.
    Depths,
    /// Deeper is less.
    Heights,
}

/// What the floor lift stands on.
#[derive(Clone, Copy, Debug, PartialEq)]
pub enum Floor {
    /// Discs whose diameters are known, and blocks under them.
    OnBlocks,
    /// Discs whose diameters are known: the higher of the two starts is out of reach.
    NoBlocks,
    /// Nobody knows a diameter.
    Unknown,
}

/// What is known of the lifter's age.
#[derive(Clone, Copy, Debug, PartialEq)]
pub enum Age {
    Young,
    Old,
    Unknown,
    Band,
}

/// One gym with its lifts and its lifter; the first two lifts are those of a pair, where there is one.
#[derive(Clone, Debug, PartialEq)]
pub struct World {
    /// What moves in the strict lift, the forgiving one and the press.
    pub moving: [Dimension; 3],
    pub measured: Measured,
    pub tempos: bool,
    pub paired: bool,
    /// A pull from the floor, and whether its range moves and not its load.
    pub floor: Option<(Floor, bool)>,
    /// Dips with help, and whether a body mass is on record from the start.
    pub helped: Option<bool>,
    /// The press loads the hip too.
    pub shared: bool,
    pub automatic: bool,
    pub age: Age,
    /// A gate that another rater shuts.
    pub one_rater: bool,
    /// Gates that ask for some days at the place too.
    pub dwell: bool,
}

impl Default for World {
    fn default() -> World {
        World {
            moving: [Dimension::Load; 3],
            measured: Measured::Nothing,
            tempos: false,
            paired: true,
            floor: None,
            helped: None,
            shared: false,
            automatic: false,
            age: Age::Young,
            one_rater: false,
            dwell: false,
        }
    }
}

pub fn any_world() -> impl Strategy<Value = World> {
    let moving = || prop_oneof![4 => Just(Dimension::Load), 6 => prop::sample::select(DIMENSIONS.to_vec())];
    let measured = prop::sample::select(vec![Measured::Nothing, Measured::Depths, Measured::Heights]);
    let floors = prop::sample::select(vec![Floor::OnBlocks, Floor::NoBlocks, Floor::Unknown]);
    let floor = prop::option::of((floors, any::<bool>()));
    let age = prop::sample::select(vec![Age::Young, Age::Old, Age::Unknown, Age::Band]);
    let flags = (any::<bool>(), any::<bool>(), any::<bool>(), any::<bool>(), prop::bool::weighted(0.3));
    let lifts = ([moving(), moving(), moving()], measured, floor, prop::option::of(any::<bool>()));
    (lifts, flags, age).prop_map(|((moving, measured, floor, helped), flags, age)| {
        let (tempos, unpaired, shared, automatic, one_rater) = flags;
        World {
            moving,
            measured,
            tempos,
            paired: !unpaired,
            floor,
            helped,
            shared,
            automatic,
            age,
            one_rater,
            // Drawn with the age, of which no gate asks.
            dwell: age == Age::Band,
        }
    })
}

fn mm(value: f64) -> Length {
    Length::from_mm(value).unwrap()
}

impl World {
    /// Its parameters, with all masses multiplied by `scale`.
    pub fn parameters(&self, scale: u32) -> Parameters {
        let mut all = parameters(scale);
        all.policy.automatic_acceptance = self.automatic;
        for (lift, moving) in all.lifts.iter_mut().zip(self.moving) {
            lift.moving = moving;
            lift.ranges = match self.measured {
                Measured::Nothing => Vec::new(),
                Measured::Depths => [300.0, 400.0, 500.0].map(mm).to_vec(),
                Measured::Heights => [500.0, 400.0, 300.0].map(mm).to_vec(),
            };
            let tempo = |down| Tempo::new(down, 0, 1);
            lift.tempos = if self.tempos { [2, 3, 4].map(tempo).to_vec() } else { Vec::new() };
        }
        if !self.paired {
            all.pairs.clear();
        }
        if self.shared {
            all.lifts[PRESS].regions.push(name("hip"));
        }
        if let Some((floor, ranges_move)) = self.floor {
            add_floor(&mut all, floor, ranges_move, scale);
        }
        if self.helped.is_some() {
            add_help(&mut all, scale);
        }
        if self.one_rater {
            for lift in &mut all.lifts {
                lift.gate = one_rater();
            }
        }
        if self.dwell {
            for lift in &mut all.lifts {
                let days = Requirement::DwellSessions(DWELL);
                lift.gate = Gate::new(Requirement::All(vec![lift.gate.requirement().clone(), days])).unwrap();
            }
        }
        all
    }

    fn lifter(&self) -> Lifter {
        let mut lifter = Lifter::new(name("invented")).with_invented(true);
        let born = |day: &str| Some(day.parse().unwrap());
        match self.age {
            Age::Young => lifter.born = born("1966-03-01"),
            Age::Old => lifter.born = born("1950-03-01"),
            Age::Unknown => {}
            Age::Band => {
                lifter.age = Some(AgeBand::new(40, 50, "2024-06-01".parse().unwrap()));
            }
        }
        lifter
    }

    /// A course that begins in this world: parameters, a clearance, and a body mass where one is on record.
    pub fn course(&self, scale: u32, change: impl FnOnce(&mut Parameters)) -> Course {
        let mut course = Course { scale, ..Course::empty(self.lifter()) };
        let set = with(&self.parameters(scale), change);
        course.add(EventKind::ParametersChanged(Box::new(set)));
        course.clear(true);
        if self.helped == Some(true) {
            course.add(EventKind::BodyMassRecorded(kg(80.0).times(scale).unwrap()));
        }
        course
    }
}

fn one_rater() -> bismar::gate::Gate {
    let run = bismar::gate::PassRun::new(9, 10, RUN as u8).unwrap().restarted_by_another_rater(true);
    bismar::gate::Gate::new(bismar::gate::Requirement::PassRun(run)).unwrap()
}

/// A pull from the floor that starts from 300 mm or from 225 mm, with discs of 450 and 325 mm.
fn add_floor(all: &mut Parameters, floor: Floor, ranges_move: bool, scale: u32) {
    let pull = lift_set("pull", Body::Lower, "hip", kg(70.0).times(scale).unwrap());
    let moving = if ranges_move { Dimension::Range } else { Dimension::Load };
    let start = pull.start.with_place(pull.start.place.with_range(u8::from(!ranges_move)));
    all.lifts.push(
        pull.with_starts_from(StartsFrom::Floor)
            .with_ranges([300.0, 225.0].map(mm).to_vec())
            .with_over_the_body(false)
            .with_moving(moving)
            .with_start(start),
    );
    if floor == Floor::OnBlocks {
        all.blocks = [62.5, 75.0, 137.5].map(mm).to_vec();
    }
    if floor != Floor::Unknown {
        let across = |disc: &Disc| {
            let times = f64::from(scale);
            let kilograms = disc.nominal().kg() / times;
            mm(if kilograms > 15.0 {
                450.0
            } else if kilograms > 7.0 {
                325.0
            } else {
                160.0 + kilograms
            })
        };
        let discs = all.stock.discs().iter().map(|disc| (*disc).with_diameter(across(disc)).unwrap());
        all.stock = Stock::new(discs.collect()).unwrap();
    }
}

/// Dips with 20 kg of help from a stack of twelve plates of 5 kg.
fn add_help(all: &mut Parameters, scale: u32) {
    let times = |value: f64| kg(value).times(scale).unwrap();
    let plates = vec![times(5.0); 12];
    let stack = MachineStack::new(name("helper"), Mass::ZERO, plates, Vec::new(), 1.0).unwrap();
    all.implements.push(Implement::Assistance(stack));
    let help = Mass::from_nanograms(-times(20.0).nanograms()).unwrap();
    let dips = lift_set("dips", Body::Upper, "shoulder", help);
    all.lifts.push(dips.with_implement(name("helper")).with_over_the_body(false));
}

/// A world and what happens in it.
#[derive(Clone)]
pub struct Drawn {
    pub world: World,
    pub steps: Vec<Step>,
}

/// In one line, so that a case that failed can be read.
impl std::fmt::Debug for Drawn {
    fn fmt(&self, to: &mut std::fmt::Formatter<'_>) -> std::fmt::Result {
        let (world, steps) = (format!("{:?}", self.world), format!("{:?}", self.steps));
        write!(to, "{world} {steps}")
    }
}

/// A world and up to forty things that happen in it.
pub fn any_course() -> impl Strategy<Value = Drawn> {
    (any_world(), any_steps()).prop_map(|(world, steps)| Drawn { world, steps })
}

impl Course {
    /// What happens in a world, played into a log.
    pub fn of(drawn: &Drawn) -> Course {
        Course::of_with(drawn, |_| {})
    }

    /// The same with something changed about the parameters it begins with.
    pub fn of_with(drawn: &Drawn, change: impl FnOnce(&mut Parameters)) -> Course {
        let mut course = drawn.world.course(1, change);
        drawn.steps.iter().for_each(|step| course.step(step));
        course
    }

    pub fn of_scaled(drawn: &Drawn, scale: u32) -> Course {
        let mut course = drawn.world.course(scale, |_| {});
        drawn.steps.iter().for_each(|step| course.step(step));
        course
    }
}
