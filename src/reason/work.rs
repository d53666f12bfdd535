//! Reasons of today's work, of breaks and of what a coach did: the end of the one list, which is too long for one file.

macro_rules! with_those_of_the_work {
    ($($before:tt)*) => {
        reasons! {
            $($before)*
            /// Nothing lighter can be done at this place, and no easier rung is there, so the lift is left out today.
            NothingEasier "nothing_easier",
            /// Nothing lighter can be loaded at this place, so today's work is on the easier rung.
            EasierRung {
                /// Which.
                rung: Name
            } "easier_rung",
            /// The coach's override upward waits: until everything is asked today, while pain, a day below the usual, an ask, a
            /// way back or easing stands, and alone without pins.
            OverrideSuspended {
                /// Load allowed by it.
                load: Mass
            } "override_suspended",
            /// The coach's override upward has ended, by what `by` names.
            OverrideEnded {
                /// Load that was allowed by it.
                load: Mass,
                /// What ended it.
                by: OverrideEnd,
                /// The place it was for.
                place: NamedPlace
            } "override_ended",
            /// The bar's centre lies off its height by so much at the nearest way to load it.
            HeightOff {
                /// Millimetres; above is positive.
                mm: f64
            } "height_off",
            /// No discs and blocks put the bar's centre at this height: no step to it, and none from it. Where the nearest way lies
            /// lower, today is the lightest load there, or none.
            HeightNotMade {
                /// The height.
                height: Length,
                /// How far off the nearest way lies, in millimetres; above is positive.
                off_mm: f64
            } "height_not_made",
            /// The implement became another kind, whose numbers say nothing here: the lift begins anew.
            OtherImplement {
                /// What it is done with now.
                implement: Name,
                /// Load that it begins at.
                load: Mass
            } "other_implement",
            /// No disc tells its diameter, so nobody knows at which height the bar begins.
            HeightUnknown "height_unknown",
            /// Pain rises over three sessions, or stands high for three: a clinician should look at it.
            PainPersists {
                /// Where.
                region: Name
            } "pain_persists",
            /// Days since the region was loaded, and what is left of the load.
            Layoff {
                /// Days.
                gap: u16,
                /// Row of the layoff table, 1 being the shortest.
                row: u8,
                /// Load that is granted now.
                load: Mass
            } "layoff",
            /// Days of work below what was granted, whatever made it lighter, and what is left of that by the layoff table, no less
            /// than what was lifted last.
            HeldLower {
                /// Days.
                days: u16,
                /// Row of the layoff table, 1 being the shortest.
                row: u8,
                /// Load that is granted now.
                load: Mass
            } "held_lower",
            /// First sessions after a break have half the sets.
            HalfSets {
                /// Sessions still to come.
                sessions: u8
            } "half_sets",
            /// The coach overruled the gate.
            OverrideInForce {
                /// Load allowed by it.
                load: Mass,
                /// Who.
                who: Name,
                /// Last day, where it has one.
                until: Option<Day>
            } "override_in_force",
            /// The day lies within a planned break.
            PlannedBreak {
                /// Its last day, where one was noted.
                until: Option<Day>
            } "planned_break",
            /// The day lies within an illness as it was noted, cleared or not.
            IllUntil {
                /// Its last day.
                until: Day
            } "ill_until",
            /// A planned break is over, and the lift has not been trained since.
            AfterBreak "after_break",
            /// Something that comes before training was said today and has been answered: no step on the same day.
            AskOfToday {
                /// What.
                ask: Ask
            } "ask_of_today",
            /// Easier work is asked for and nothing lighter can be done at this place: half of the same work.
            HalfForLighter "half_for_lighter",
            /// Easier work is asked for and there is none: one repetition at the lightest load and on the easiest rung is done as it
            /// is.
            LeastThereIs "least_there_is",
            /// A planned easy week.
            EasyWeek "easy_week",
            /// Life gave an easy week already; none is added on top, and no step is on offer in it.
            BreakCounts {
                /// Full days without training before today.
                days: u16
            } "break_counts",
            /// More is left in reserve than planned.
            ReserveFloor {
                /// Repetitions.
                reserve: Rir
            } "reserve_floor",
            /// Rounded down to what the equipment makes.
            RoundedDown {
                /// From.
                from: Mass,
                /// To.
                to: Mass
            } "rounded_down",
            /// The equipment makes nothing at or below the load.
            NothingLoadable {
                /// Lightest load it makes.
                lightest: Mass
            } "nothing_loadable",
            /// The implement is taken or missing today; nothing is added to make up for it.
            ImplementUnavailable {
                /// Which.
                implement: Name
            } "implement_unavailable",
            /// Too little time: the lift is left out today, and nothing is added to make up for it.
            ShortOfTime "short_of_time",
            /// Fewer sets fit into the time.
            FewerSets {
                /// Sets that fit.
                sets: u8
            } "fewer_sets",
            /// The plan asks for less than granted.
            PlanAsksLess "plan_asks_less",
            /// A coach's act was refused by a guard, and is kept as refused.
            MoveRefused {
                /// The event.
                event: u32
            } "move_refused",
            /// A coach's override was refused: it lacked its reason or its last day, or passed a stop, a ceiling or a limit.
            OverrideRefused {
                /// The event.
                event: u32
            } "override_refused",
            /// A coach's override was refused: its last day was past when it was recorded.
            OverridePast {
                /// Its last day.
                last_day: Day
            } "override_past",
            /// Two fails in a row, or a second flare: one step easier.
            SteppedBack {
                /// From this load.
                from: Mass
            } "stepped_back",
        }
    };
}
