//! What may happen in a course: short scripts that shrink well, played into logs.

use bismar::condition::DayClass;
use bismar::quantity::{Length, Pain, Rir};
use bismar::record::*;
use proptest::prelude::*;

pub use super::changes::*;
use super::course::*;

/// Regions by number, as steps name them; the knee is loaded by no lift.
pub const HIP: u8 = 0;
pub const SHOULDER: u8 = 1;
pub const KNEE: u8 = 2;
pub const REGIONS: [&str; 3] = ["hip", "shoulder", "knee"];

#[derive(Clone, Copy, Debug, PartialEq)]
pub enum Quality {
    Clean,
    OneMiss,
    ManyMisses,
    CriticalLost,
    Unscored,
}

#[derive(Clone, Copy, Debug, PartialEq)]
pub enum Weight {
    AtLimit,
    Lighter,
    Heavier,
}

/// What came with a pain.
#[derive(Clone, Copy, Debug, PartialEq)]
pub enum Came {
    Nothing,
    NotAsked,
    New,
    Sharp,
}

/// A session of one lift in which something differs from the plan.
#[derive(Clone, Copy, Debug, PartialEq)]
pub enum Odd {
    /// Other shoes than last time.
    Kit(bool),
    /// The bar began at the height of its place, or 30 mm above it.
    Height(bool),
    /// Less range than granted.
    Short,
    /// On the easier rung, at the easier range or in the easier tempo, where there is one.
    Easier,
    /// One set fewer.
    FewSets,
    /// One repetition fewer.
    FewReps,
    /// Alone without pins, or between pins.
    Alone(bool),
    /// One in reserve, or three.
    Reserve(u8),
    /// A repetition was tried and missed.
    Missed,
}

/// One thing that happens. Each becomes at most a few events.
#[derive(Clone, Debug, PartialEq)]
pub enum Step {
    Wait(u8),
    /// A whole clean week: day report, moves taken, session, next morning.
    CleanWeek,
    Session {
        lifts: u8,
        quality: Quality,
        weight: Weight,
        pain: Option<u8>,
    },
    /// One session of the day cut in two: half of the sets, then the others.
    Split {
        lifts: u8,
        quality: Quality,
    },
    /// A session, a new set of parameters, and another session of that day.
    Between {
        change: Change,
        quality: Quality,
    },
    Odd {
        lift: u8,
        odd: Odd,
    },
    Morning {
        flare: bool,
    },
    /// The next morning, on which nobody asked about pain.
    SilentMorning,
    Day {
        class: u8,
        asked: bool,
    },
    /// Something was said when asked before training.
    Ask(u8),
    /// A clinician's word on it.
    Answer(u8),
    Pain {
        region: u8,
        score: u8,
        came: Came,
    },
    Usual(u8),
    Symptom,
    Clearance {
        cleared: bool,
    },
    /// A clearance with a limit of load on the hip, or on everything.
    Limit {
        everywhere: bool,
    },
    SignOff(u8),
    Override {
        lift: u8,
        up: bool,
        days: u8,
    },
    Ease(u8),
    /// A little easier for some days, without a reason.
    EaseFor {
        lift: u8,
        days: u8,
    },
    Accept(u8),
    Decline(u8),
    Layoff(u8),
    Rung {
        lift: u8,
        up: bool,
    },
    /// By hand to the next or the former place or work in one dimension.
    ByHand {
        lift: u8,
        moving: u8,
        up: bool,
    },
    Role {
        lift: u8,
        role: u8,
    },
    Rater,
    OtherDiscs(u8),
    Parameters(Change),
    Weigh(u8),
    Unknown,
    Missed,
}

pub const DIMENSIONS: [Dimension; 6] = [
    Dimension::Load,
    Dimension::Reps,
    Dimension::Sets,
    Dimension::Range,
    Dimension::Tempo,
    Dimension::Variant,
];

/// Pain of that much, with nothing that came with it.
pub const fn ache(region: u8, score: u8) -> Step {
    Step::Pain { region, score, came: Came::Nothing }
}

fn any_quality() -> impl Strategy<Value = Quality> {
    prop_oneof![
        5 => Just(Quality::Clean),
        2 => Just(Quality::OneMiss),
        2 => Just(Quality::ManyMisses),
        1 => Just(Quality::CriticalLost),
        1 => Just(Quality::Unscored),
    ]
}

fn any_odd() -> impl Strategy<Value = Odd> {
    prop_oneof![
        any::<bool>().prop_map(Odd::Kit),
        any::<bool>().prop_map(Odd::Height),
        Just(Odd::Short),
        Just(Odd::Easier),
        Just(Odd::FewSets),
        Just(Odd::FewReps),
        any::<bool>().prop_map(Odd::Alone),
        prop_oneof![Just(1_u8), Just(3)].prop_map(Odd::Reserve),
        Just(Odd::Missed),
    ]
}

/// Something that a lifter does or says.
fn any_deed() -> impl Strategy<Value = Step> {
    let weight =
        prop_oneof![6 => Just(Weight::AtLimit), 1 => Just(Weight::Lighter), 1 => Just(Weight::Heavier)];
    let pain = prop_oneof![6 => Just(Some(0)), 2 => (1_u8..=6).prop_map(Some), 1 => Just(None)];
    let came = prop_oneof![3 => Just(Came::Nothing), 1 => Just(Came::NotAsked), 1 => Just(Came::New), 1 => Just(Came::Sharp)];
    prop_oneof![
        14 => Just(Step::CleanWeek),
        4 => (1_u8..50).prop_map(Step::Wait),
        8 => (1_u8..32, any_quality(), weight, pain)
            .prop_map(|(lifts, quality, weight, pain)| Step::Session { lifts, quality, weight, pain }),
        1 => (1_u8..32, any_quality()).prop_map(|(lifts, quality)| Step::Split { lifts, quality }),
        3 => (0_u8..5, any_odd()).prop_map(|(lift, odd)| Step::Odd { lift, odd }),
        4 => prop::bool::weighted(0.2).prop_map(|flare| Step::Morning { flare }),
        1 => Just(Step::SilentMorning),
        4 => (0_u8..5, any::<bool>()).prop_map(|(class, asked)| Step::Day { class, asked }),
        1 => (0_u8..5).prop_map(Step::Ask),
        1 => (0_u8..5).prop_map(Step::Answer),
        1 => (0_u8..3, 0_u8..=8, came).prop_map(|(region, score, came)| Step::Pain { region, score, came }),
        1 => Just(Step::Symptom),
        1 => (60_u8..100).prop_map(Step::Weigh),
        1 => prop::bool::weighted(0.1).prop_map(|unknown| if unknown { Step::Unknown } else { Step::Missed }),
    ]
}

/// Something that a coach or a clinician does.
fn any_act() -> impl Strategy<Value = Step> {
    prop_oneof![
        2 => prop::bool::weighted(0.9).prop_map(|cleared| Step::Clearance { cleared }),
        1 => any::<bool>().prop_map(|everywhere| Step::Limit { everywhere }),
        3 => (0_u8..5).prop_map(Step::SignOff),
        1 => (1_u8..=2).prop_map(Step::Usual),
        1 => (0_u8..5, any::<bool>(), 0_u8..20).prop_map(|(lift, up, days)| Step::Override { lift, up, days }),
        1 => (0_u8..5).prop_map(Step::Ease),
        1 => (0_u8..5, 0_u8..60).prop_map(|(lift, days)| Step::EaseFor { lift, days }),
        5 => (0_u8..5).prop_map(Step::Accept),
        1 => (0_u8..5).prop_map(Step::Decline),
        1 => (0_u8..3).prop_map(Step::Layoff),
        1 => (0_u8..5, any::<bool>()).prop_map(|(lift, up)| Step::Rung { lift, up }),
        1 => (0_u8..5, 0_u8..6, any::<bool>()).prop_map(|(lift, moving, up)| Step::ByHand { lift, moving, up }),
        1 => (0_u8..5, 0_u8..4).prop_map(|(lift, role)| Step::Role { lift, role }),
        1 => Just(Step::Rater),
        1 => (0_u8..5).prop_map(Step::OtherDiscs),
        2 => any_change().prop_map(Step::Parameters),
    ]
}

pub fn any_step() -> impl Strategy<Value = Step> {
    prop_oneof![40 => any_deed(), 20 => any_act()]
}

/// Up to forty things that happen; in one course of four every fourth of them brings a new set of parameters.
pub fn any_steps() -> impl Strategy<Value = Vec<Step>> {
    let between = (any_change(), any_quality());
    let changing = prop_oneof![
        8 => any_step(),
        2 => any_change().prop_map(Step::Parameters),
        1 => between.prop_map(|(change, quality)| Step::Between { change, quality }),
    ];
    prop_oneof![
        3 => prop::collection::vec(any_step(), 1..40),
        1 => prop::collection::vec(changing, 1..40),
    ]
}

impl Course {
    pub fn step(&mut self, step: &Step) {
        match *step {
            Step::Wait(days) => self.day = self.day.plus(i32::from(days)).unwrap(),
            Step::CleanWeek => self.clean_week(),
            Step::Session { lifts, quality, weight, pain } => self.session(lifts, quality, weight, pain),
            Step::Split { lifts, quality } => self.split(lifts, quality),
            Step::Between { change, quality } => {
                self.session(u8::MAX, Quality::Clean, Weight::AtLimit, Some(0));
                self.step(&Step::Parameters(change));
                self.session(u8::MAX, quality, Weight::AtLimit, Some(0));
            }
            Step::Odd { lift, odd } => self.odd(self.number(lift), odd),
            Step::Morning { flare } => self.morning(flare),
            Step::SilentMorning => self.next_day(None),
            Step::Day { class, asked } => self.day_report(DayClass::ALL[usize::from(class % 5)], asked),
            Step::Ask(ask) => {
                let asks = Some(vec![Ask::ALL[usize::from(ask)]]);
                self.add(EventKind::DayReport(DayReport::default().with_asks(asks)));
            }
            Step::Answer(ask) => {
                let ask = Ask::ALL[usize::from(ask)];
                if self.state().asks().iter().any(|open| open.ask == ask) {
                    let (who, clinician) = (name("clinic"), true);
                    self.add(EventKind::AskAnswered(AskAnswered::new(ask, who, clinician)));
                }
            }
            Step::Pain { region, score, came } => self.hurt(region, score, came),
            Step::Usual(level) => {
                let (region, level, who) = (name("hip"), Pain::new(level).unwrap(), name("coach"));
                if declares(self.set(), &region) {
                    let usual = UsualPain::new(region, level, who);
                    self.add(EventKind::UsualPainAgreed(usual));
                }
            }
            Step::Symptom => {
                self.add(EventKind::SymptomReport(SymptomReport::new(vec![StopSign::ChestPain])))
            }
            Step::Clearance { cleared } => self.clear(cleared),
            Step::Limit { everywhere } => {
                let hip = Some(name("hip")).filter(|hip| !everywhere && declares(self.set(), hip));
                let (region, load) = (hip, Some(self.scaled(45.0)));
                let limits = vec![ClearanceLimits::default().with_region(region).with_load(load)];
                let (status, who) = (ClearanceStatus::ClearedWithLimits, name("clinic"));
                self.add(EventKind::ClearanceRecorded(Clearance::new(status, who).with_limits(limits)));
            }
            Step::SignOff(scope) => {
                let scope = match scope {
                    0 => SignOffScope::Everything,
                    1..=3 => SignOffScope::Region(name(REGIONS[usize::from(scope - 1)])),
                    _ => SignOffScope::Gate(name("strict")),
                };
                let named = match &scope {
                    SignOffScope::Region(id) => {
                        let open = self.state().region(id).is_some_and(|region| region.stop.is_some());
                        open || declares(self.set(), id)
                    }
                    SignOffScope::Gate(id) => self.state().lift_state(id).is_some(),
                    _ => true,
                };
                if named {
                    self.add(EventKind::CoachSignOff(SignOff::new(name("coach"), scope)));
                }
            }
            Step::Weigh(kilograms) => {
                self.add(EventKind::BodyMassRecorded(self.scaled(f64::from(kilograms))))
            }
            Step::Rater => self.add(EventKind::RaterChanged(BarChanged::new(name("another coach")))),
            Step::OtherDiscs(lift) => {
                let lift = Some(self.lift_name(lift));
                self.add(EventKind::BarOrDiscsChanged(BarChanged::new(name("other discs")).with_lift(lift)));
            }
            Step::Unknown => {
                let body =
                    bismar::value::Value::Map(vec![("rung".into(), bismar::value::Value::Number(3.0))]);
                self.add(EventKind::Unknown(UnknownEvent::new("hologram_recorded".into(), body)));
            }
            Step::Missed => self.add(EventKind::SessionMissed(SessionMissed::new(name("work")))),
            _ => self.act(step),
        }
    }

    /// What a coach does to one lift, and breaks.
    fn act(&mut self, step: &Step) {
        match *step {
            Step::Override { lift, up, days } => {
                self.overrule(lift, if up { 1.1 } else { 0.9 }, Some(days), Some("to see how it moves"))
            }
            Step::Ease(lift) => self.overrule(lift, 0.9, None, None),
            Step::EaseFor { lift, days } => self.overrule(lift, 0.98, Some(days), None),
            Step::Accept(lift) => self.accept(lift),
            Step::Decline(lift) => {
                let advance = Advance::new(self.lift_name(lift), name("coach"));
                self.add(EventKind::AdvanceDeclined(advance));
            }
            Step::Layoff(reason) => {
                let reason =
                    [LayoffReason::Well, LayoffReason::Planned, LayoffReason::Ill][usize::from(reason % 3)];
                self.add(EventKind::LayoffNoted(Layoff::new(self.day, reason)));
            }
            Step::Rung { lift, up } => self.by_hand(self.number(lift), Dimension::Variant, up),
            Step::ByHand { lift, moving, up } => {
                self.by_hand(self.number(lift), DIMENSIONS[usize::from(moving)], up)
            }
            Step::Role { lift, role } => {
                let role = [Role::Train, Role::Maintain, Role::Rest, Role::Retire][usize::from(role % 4)];
                self.add(EventKind::RoleSet(RoleSet::new(self.lift_name(lift), role)));
            }
            Step::Parameters(change) => {
                let changed = self.changed(change);
                self.try_add(EventKind::ParametersChanged(Box::new(changed)));
            }
            _ => {}
        }
    }

    /// The lift that a step means.
    pub fn number(&self, lift: u8) -> usize {
        usize::from(lift) % self.count()
    }

    fn hurt(&mut self, region: u8, score: u8, came: Came) {
        let mut answer = Course::pain(REGIONS[usize::from(region)], score);
        answer.features = match came {
            Came::Nothing => Some(Vec::new()),
            Came::NotAsked => None,
            Came::New => Some(vec![PainFeature::New]),
            Came::Sharp => Some(vec![PainFeature::Sharp]),
        };
        if declares(self.set(), &answer.region) {
            self.add(EventKind::PainReport(answer));
        }
    }

    fn split(&mut self, lifts: u8, quality: Quality) {
        let whole: Vec<LiftSession> =
            self.chosen(lifts).iter().map(|at| self.lift(*at, quality, Weight::AtLimit)).collect();
        let half = |first: bool| {
            let part = |lift: &LiftSession| {
                let middle = lift.sets.len().div_ceil(2);
                let (one, other) = lift.sets.split_at(middle);
                lift.clone().with_sets(if first { one } else { other }.to_vec())
            };
            whole.iter().map(part).filter(|lift| !lift.sets.is_empty()).collect::<Vec<_>>()
        };
        for part in [half(true), half(false)] {
            if !part.is_empty() {
                self.train(part, Some(Vec::new()));
            }
        }
    }

    fn odd(&mut self, at: usize, odd: Odd) {
        let mut lift = self.lift(at, Quality::Clean, Weight::AtLimit);
        let (set, place) = (self.set().lifts[at].clone(), self.stands(at).grant.place);
        let setup = |setup: Setup| Some(setup);
        match odd {
            Odd::Kit(other) => {
                let kit = Some(vec![name(if other { "flat shoes" } else { "raised heels" })]);
                lift.setup = setup(Setup::default().with_kit(kit));
            }
            Odd::Height(off) => {
                let wanted = set.start_height(place).map_or(400.0, Length::mm);
                lift.height = Some(Length::from_mm(if off { wanted + 30.0 } else { wanted }).unwrap());
            }
            Odd::Short => lift.reached = set.ranges.first().copied(),
            Odd::Easier => {
                let rung = place.rung.saturating_sub(1);
                lift.place = Some(place.with_rung(rung).with_range(place.range.saturating_sub(1)));
            }
            Odd::FewSets if lift.sets.len() > 1 => drop(lift.sets.pop()),
            Odd::FewSets => {}
            Odd::FewReps => {
                let reps = self.stands(at).grant.work.reps;
                let fewer = reps.saturating_sub(1).max(1);
                lift.sets.iter_mut().for_each(|set| *set = Course::set_of(set.load, fewer, Quality::Clean));
            }
            Odd::Alone(alone) => {
                let pins = (!alone).then(|| Length::from_mm(700.0).unwrap());
                lift.setup = setup(Setup::default().with_company(ByTheBar::Alone).with_pins(pins));
            }
            Odd::Reserve(left) => {
                lift.sets.iter_mut().for_each(|set| set.effort = Some(Effort::Rir(Rir::whole(left))));
            }
            Odd::Missed => lift.sets[0].failed = true,
        }
        self.train(vec![lift], Some(Vec::new()));
    }

    /// The load that is granted, times a factor upon what is moved without its sign.
    fn overrule(&mut self, lift: u8, factor: f64, days: Option<u8>, why: Option<&str>) {
        let at = self.number(lift);
        let granted = self.stands(at).grant.load();
        let difference = part(granted, if factor > 1.0 { factor - 1.0 } else { 1.0 - factor });
        let load = if factor > 1.0 { granted.plus(difference) } else { granted.minus(difference) }.unwrap();
        let (load, lift, who) = (self.with_sign(at, load), self.lift_name(lift), name("coach"));
        let expires = days.map(|days| self.day.plus(i32::from(days)).unwrap());
        self.add(EventKind::CoachOverride(
            Override::new(lift, load, who).with_why(why.map(Into::into)).with_expires(expires),
        ));
    }

    fn by_hand(&mut self, at: usize, moving: Dimension, up: bool) {
        let (set, mut to) = (self.set().lifts[at].clone(), self.stands(at).grant);
        let step = |number: &mut u8, lowest: u8, highest: usize| {
            let next = if up { number.saturating_add(1) } else { number.saturating_sub(1) };
            *number = next.clamp(lowest, highest as u8);
        };
        match moving {
            Dimension::Variant => step(&mut to.place.rung, 0, set.rungs.len() - 1),
            Dimension::Range => step(&mut to.place.range, 0, set.ranges.len().max(1) - 1),
            Dimension::Tempo => step(&mut to.place.tempo, 0, set.tempos.len().max(1) - 1),
            Dimension::Sets => step(&mut to.work.sets, 1, 30),
            Dimension::Reps => step(&mut to.work.reps, 1, 30),
            Dimension::Load => {
                let loads = self.loads(at, to.place);
                let next = if up {
                    loads.iter().find(|load| **load > to.load())
                } else {
                    loads.iter().rfind(|load| **load < to.load())
                };
                to.work.load = next.copied().unwrap_or(to.load());
            }
            other => unreachable!("a dimension that the world does not draw: {other:?}"),
        }
        let moved = Move::new(set.id.clone(), to, name("coach"));
        self.add(match moving {
            Dimension::Range => EventKind::RangeChanged(moved),
            _ => EventKind::VariantChanged(moved),
        });
    }
}
