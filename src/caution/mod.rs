//! Keys of safety texts: what to show beside an answer, worded elsewhere.
//!
//! Uses `source`. An answer carries the keys; a host may put its own words to each.

use crate::source::Seen;

macro_rules! cautions {
    ($($variant:ident $text:literal $meaning:literal),+ $(,)?) => {
        /// What to show beside an answer, as a stable key. The text form never changes within a major version.
        #[non_exhaustive]
        #[derive(Clone, Copy, Debug, PartialEq, Eq, PartialOrd, Ord, Hash)]
        #[cfg_attr(
            feature = "serde",
            derive(serde::Serialize, serde::Deserialize),
            serde(rename_all = "snake_case")
        )]
        #[cfg_attr(feature = "schema", derive(schemars::JsonSchema))]
        pub enum Caution {
            $(#[doc = $meaning] $variant,)+
        }

        impl Caution {
            /// Every caution of this version.
            pub const ALL: &'static [Caution] = &[$(Caution::$variant,)+];

            /// The stable machine text, for example `not_a_prognosis`.
            #[must_use]
            pub const fn as_str(self) -> &'static str {
                match self { $(Caution::$variant => $text,)+ }
            }

            /// What the caution says, in one plain sentence.
            #[must_use]
            pub const fn meaning(self) -> &'static str {
                match self { $(Caution::$variant => $meaning,)+ }
            }
        }
    };
}

// One line a caution, grouped by the module that first needed it.
cautions! {
    // loading
    AloneWithoutPins "alone_without_pins" "Nobody and nothing would take the bar: set pins or ask for a spotter, and leave at least four repetitions in reserve.",
    // every answer about training
    ExaminesNobody "examines_nobody" "This tool does sums and keeps rules; it examines nobody, and your clinician's and your gym's rules come first.",
    AskBeforeStarting "ask_before_starting" "New to hard training, or heart, kidney or metabolic disease, or symptoms: talk to a doctor or nurse before you start or step up.",
    EmergencySigns "emergency_signs" "Stop and call emergency help for chest pain or pressure, fainting, sudden severe breathlessness, sudden worst-ever headache, new weakness or numbness on one side, or trouble speaking; for near-fainting, a racing or irregular heart, or a sudden change in vision, rack the weight, sit down, end the session, and call for help if it does not pass in minutes or comes back.",
    BackEmergency "back_emergency" "Back pain with new bladder or bowel trouble, numbness between the legs, or spreading leg weakness needs emergency care today.",
    SeeClinicianFirst "see_clinician_first" "See a clinician before lifting again after pain that followed a fall or a crack, sudden mid-back pain after a light lift, loss of height, fever with back pain, unexplained weight loss, night pain that does not settle, a joint that locks or swells, a pop with swelling or loss of strength, a hot or swollen calf, being unable to bear weight, pain above 5 of 10, or pain that is worse each week.",
    NotWhileUnwell "not_while_unwell" "Do not train while feverish, recently operated on (eye and hernia included), with blood pressure out of control, or with a new or changed heart medicine that nobody has looked at yet.",
    BreathingPlan "breathing_plan" "Long hard breath-holding raises blood pressure sharply; with blood-pressure, heart, eye or hernia problems agree a way of breathing with your clinician.",
    HoldingIsGood "holding_is_good" "Staying at a load is a good result; nobody has to add weight today.",
    EstimatesAreRanges "estimates_are_ranges" "Estimates are ranges; never test a true maximum because a screen said so.",
    GatesUnproven "gates_unproven" "No evidence was found that technique gates reduce injury.",
    NoPressureLimit "no_pressure_limit" "No limit for blood pressure or effort is on record; none is assumed.",
    AskBeforeToday "ask_before_today" "Fever since last time: no training until the coach has recorded that it is over. Dizziness, palpitations, a fall or a new or changed medicine: ask a clinician before training.",
    UnknownEvents "unknown_events" "This log holds events of a newer version that this one cannot read; a stop may be among them, so read it with the newer version before anyone lifts.",
    MassFalling "mass_falling" "Body mass fell by a twentieth or more within half a year; if that was not meant, talk to a clinician.",
    LowerStart "lower_start" "The bar starts at another height than its place asks for, or at one that nobody knows, so today's lift may not be quite the same lift.",
    PinsMoved "pins_moved" "The pins stand at another height than last time: before the first work set see that they would take the bar at its lowest point, and that the lift still reaches as far as before.",
    LargeOverride "large_override" "The coach's word allows more than a fifth above the working load: check that it was meant and written in the right unit, and look at each set before the next.",
    // rehearsal
    RehearsalOfRules "rehearsal_of_rules" "A rehearsal of the rules by made-up lifters of stated, unchanging skill: it shows what the rules do, and foretells nothing about a person.",
    // horizon
    NotAPrognosis "not_a_prognosis" "Arithmetic over what a group of people showed; it foretells nothing about one person.",
    TalkToClinician "talk_to_clinician" "Worth talking over with a clinician; nothing here diagnoses.",
    OtherPopulation "other_population" "The people measured may differ from this person in age, sex, health or training.",
    NoIntervalPublished "no_interval_published" "The source prints one figure and no range, so the real spread is wider than shown.",
    CrossSectional "cross_sectional" "Different people of different ages were compared, which shows a slower fall than following the same people.",
    SurvivorsOnly "survivors_only" "Records and meets show those who still compete, not those who stopped.",
    SmallSample "small_sample" "Very few people were measured.",
    OpenEnded "open_ended" "The fastest fall may be faster than shown; the source gives no upper end.",
    SourceNotRead "source_not_read" "The numbers, or some of them, were recalled and not checked against the issuing document.",
    SourceSeenInCopies "source_seen_in_copies" "The numbers were seen in copies, equal where there are several; the document that they come from was not read.",
    CountedAtLimit "counted_at_limit" "Body mass lies beyond a limit of the formula and counts as the limit.",
    SexUnknown "sex_unknown" "Sex is not given, so the range covers both sexes.",
    ProjectJudgement "project_judgement" "A judgement of this project over several sources; change it where better is known.",
    SteepAboveEighty "steep_above_eighty" "Above 80 the coefficient rises faster than strength falls, since few people of that age compete.",
    MachineSpecific "machine_specific" "Measured on one kind of machine; loads on another do not compare.",
    DirectionOnly "direction_only" "The source tells the direction; the size is not well known.",
    ThresholdOfOnePopulation "threshold_of_one_population" "Another study found no such threshold; it belongs to the people measured.",
    // dose
    SameLiftOnly "same_lift_only" "Load times repetitions is comparable within one lift of one person only; height and body mass are not in it.",
    RestsCountAsLoad "rests_count_as_load" "Rating times minutes counts rests as load, and lifting sessions are mostly rest.",
    SharedDays "shared_days" "The recent days are inside the usual load too, so the two go together even where the weeks have nothing to do with each other (Lolli et al. 2019, Br J Sports Med 53:921-922).",
    RescaledRecentLoad "rescaled_recent_load" "Dividing by usual load adds little: a constant, or random numbers, in its place gave much the same (Impellizzeri et al. 2021, doi 10.1007/s40279-020-01378-6).",
    NotCheckedInLifting "not_checked_in_lifting" "Bands for this ratio come from team sports; none was checked in lifting and none is shown.",
    ShortHistory "short_history" "There are too few days of history for a usual load.",
    StartValueMatters "start_value_matters" "The first weeks of a weighted load still depend on the value it was started with.",
    UsualLoadSmall "usual_load_small" "Usual load is far below this lifter's own typical level, as after a holiday, so a ratio would only say that training started again.",
    TeachingSimulation "teaching_simulation" "A simulation for teaching: double load has double effect in it, sessions do not interact, and its time constants are poorly known for anyone (Hellard et al. 2006, doi 10.1080/02640410500244697).",
    // one_rm
    EstimateIsARange "estimate_is_a_range" "An estimate is a range; never test a true maximum because a screen said so.",
    NewToTheLift "new_to_the_lift" "In the first months of a lift repetitions say too little of the maximum, and part of their rise is practice and not strength (Braith et al. 1993).",
    VelocityIsSpecific "velocity_is_specific" "A relation of load and velocity belongs to one exercise, device, variable and person, every repetition as fast as possible.",
    VelocityRunsHigh "velocity_runs_high" "Maxima predicted from velocity came out too high with free weights; one person was off by -5.5 to +27.8 % (Banyard et al. 2017).",
    VelocityAtMaximumUnreliable "velocity_at_maximum_unreliable" "The velocity of a maximum repeats poorly from test to test (CV 22.5 %: Banyard et al. 2017).",
    VelocityNotFromWarmUp "velocity_not_from_warm_up" "Compare the same warm-up load with its own history; do not work out a new maximum from it every day.",
    LoadsTooClose "loads_too_close" "The loads lie so close together that the line through them is unstable.",
}

/// What to say of numbers that reached this project in this way, where anything is to be said.
#[must_use]
pub(crate) const fn of_seen(seen: Seen) -> Option<Caution> {
    match seen {
        Seen::Memory => Some(Caution::SourceNotRead),
        Seen::Secondary => Some(Caution::SourceSeenInCopies),
        Seen::Read | Seen::NotApplicable => None,
    }
}

pub(crate) static DECLARED: crate::source::Declarations = &[];

impl Caution {
    /// What comes first in every answer under a stop.
    pub(crate) const OF_A_STOP: [Caution; 3] =
        [Caution::EmergencySigns, Caution::BackEmergency, Caution::SeeClinicianFirst];
}

#[cfg(test)]
mod tests {
    use super::Caution;

    #[test]
    fn keys_are_unique_and_snake_case() {
        for (index, caution) in Caution::ALL.iter().enumerate() {
            let text = caution.as_str();
            assert!(text.chars().all(|c| c.is_ascii_lowercase() || c == '_'), "{text}");
            assert!(caution.meaning().ends_with('.'), "{text} needs a sentence");
            assert!(!Caution::ALL[..index].iter().any(|earlier| earlier.as_str() == text), "{text} twice");
        }
    }

    #[cfg(feature = "serde")]
    #[test]
    fn the_key_is_what_is_written() {
        for caution in Caution::ALL {
            let written = crate::value::Value::write(caution).unwrap();
            assert_eq!(written, crate::value::Value::Text(caution.as_str().into()));
        }
    }
}
