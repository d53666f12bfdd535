//! Trend, own curve and pair, in words.

use alloc::string::{String, ToString};
use alloc::vec::Vec;

use crate::answers::{
    EstimatedBy, LiftCurve, PairAnswer, PairPlace, SessionEstimate, Trend, TrendScale, VelocityTrend,
};
use crate::condition::{Slope, TrendVerdict};
use crate::one_rm::{Estimate, HALPERIN_2022_UNDER_CALL, OwnCurve};
use crate::text::capital;
use crate::text::phrases::Phrases;
use crate::text::words::Words;

pub(in crate::text) const STRENGTH: Phrases = &[
    ("strength.not_enough_history", "{lift}: too few sessions to say whether strength moves."),
    ("strength.within_noise", "{lift}: no change that can be told from chance. Holding is a success."),
    ("strength.rising", "{lift}: strength is rising, by more than chance."),
    ("strength.falling", "{lift}: strength is falling, by more than chance."),
    ("strength.slope", "{slope} a week, {low} to {high} with 95 % confidence, over {weeks} and {estimates}."),
    ("strength.difference", "Two estimates closer than {difference} do not differ for certain."),
    ("strength.body_less_help", "Estimates are of the body less the help."),
    (
        "strength.own_curve",
        "Estimates are by the lifter's own curve, which is surer than published equations.",
    ),
    ("strength.equations", "Estimates are by published equations."),
    (
        "strength.newest",
        "{lift}: by the sets of {day} the maximum lies between {low} and {high}, most likely near {value}; the published equations alone \
         say {least} to {most}.",
    ),
    (
        "strength.with_unsaid",
        "{lift}: people leave {reps} repetitions more than they say on average; if this lifter does, that is {low} to {high}, most \
         likely near {value}. Nothing is set by it.",
    ),
    ("strength.elsewhere", "{sessions} on another rung or in another range are left out."),
    (
        "strength.velocity",
        "Velocity at {load} changes by {slope} m/s a week, {low} to {high} with 95 % confidence, over {sessions}.",
    ),
    ("count.estimate.one", "1 estimate"),
    ("count.estimate.other", "{count} estimates"),
    ("count.pair.one", "1 pair of estimates"),
    ("count.pair.other", "{count} pairs of estimates"),
    (
        "curve.found",
        "{lift}: each further repetition takes {slope} % off the load, {low} to {high} % with 95 % confidence.",
    ),
    ("curve.enough", "That is enough to use it in place of published equations."),
    ("curve.too_little", "That is too little to use it yet: published equations stay."),
    ("curve.none", "{lift}: no own curve can be told yet."),
    ("curve.sets", "{usable} of {sets} of the last year can speak."),
    ("pair.unknown", "Too few weeks to say how {strict} and {forgiving} stand to each other."),
    ("pair.usual", "{strict} and {forgiving} stand to each other as usual for this lifter."),
    ("pair.strict_higher", "{strict} is closer to {forgiving} than usual."),
    ("pair.forgiving_ahead", "{forgiving} has run ahead of {strict}: look at the pair."),
    ("pair.above_cap", "{strict} lies above the cap of the pair."),
    ("pair.own", "The strengths stand at {ratio}, {low} to {high} with 95 % confidence, from {pairs}."),
    ("pair.replaces", "That may stand in place of what was believed before, {low} to {high}."),
    ("pair.keeps", "What was believed before, {low} to {high}, still counts for part of it."),
];

impl Words<'_> {
    /// The trend of a lift: the verdict first, then its numbers, then what is missing.
    #[must_use]
    pub fn trend(&self, trend: &Trend) -> Vec<String> {
        let mut said = Vec::new();
        if let Some(report) = &trend.report {
            let key = match report.verdict {
                TrendVerdict::NotEnoughHistory => "strength.not_enough_history",
                TrendVerdict::WithinNoise => "strength.within_noise",
                TrendVerdict::Rising => "strength.rising",
                TrendVerdict::Falling => "strength.falling",
            };
            said.push(self.say(key, &[("lift", capital(self.lift_name(&trend.lift)))]));
            if let Some(slope) = &report.slope {
                said.extend(self.slope(slope, trend.weeks));
            }
            if trend.scale == TrendScale::BodyLessHelp {
                said.push(self.say("strength.body_less_help", &[]));
            }
            let by = match trend.estimated_by {
                EstimatedBy::Equations => "strength.equations",
                EstimatedBy::OwnCurve => "strength.own_curve",
            };
            said.push(self.say(by, &[]));
        }
        said.extend(trend.newest.iter().flat_map(|newest| self.session_estimate(trend, newest)));
        said.extend(trend.velocity.as_ref().map(|velocity| self.velocity(trend, velocity)));
        if trend.elsewhere > 0 {
            said.push(
                self.say("strength.elsewhere", &[("sessions", self.count("session", trend.elsewhere))]),
            );
        }
        self.end(&mut said, (&trend.stops, trend.today), &trend.missing, &trend.cautions);
        said
    }

    fn session_estimate(&self, trend: &Trend, of: &SessionEstimate) -> Vec<String> {
        let lift = capital(&match trend.place {
            Some(place) => self.lift_at(&trend.lift, place),
            None => self.lift_name(&trend.lift).to_string(),
        });
        let range = |one: &Estimate| {
            [
                ("lift", lift.clone()),
                ("low", self.about(one.interval.low())),
                ("high", self.about(one.interval.high())),
                ("value", self.about(one.value.value())),
            ]
        };
        let alone = of.as_called.by_equation.iter().filter_map(|one| one.value);
        let (least, most) = alone.fold((f64::INFINITY, 0.0), |(least, most), one| {
            (crate::numeric::smaller(least, one.value()), crate::numeric::larger(most, one.value()))
        });
        let each = [("day", self.day(of.day)), ("least", self.about(least)), ("most", self.about(most))];
        let mut said = alloc::vec![self.say("strength.newest", &[&range(&of.as_called)[..], &each].concat())];
        said.extend(of.with_unsaid.as_ref().map(|one| {
            let reps = [("reps", self.rounded(HALPERIN_2022_UNDER_CALL, 2))];
            self.say("strength.with_unsaid", &[&range(one)[..], &reps].concat())
        }));
        said
    }

    fn slope(&self, slope: &Slope, weeks: u16) -> [String; 2] {
        let with = [
            ("slope", self.about(slope.kg_per_week)),
            ("low", self.about(slope.interval.low())),
            ("high", self.about(slope.interval.high())),
            ("weeks", self.count("week", u32::from(weeks))),
            ("estimates", self.count("estimate", slope.estimates)),
        ];
        let difference = [("difference", self.about(slope.smallest_real_difference))];
        [self.say("strength.slope", &with), self.say("strength.difference", &difference)]
    }

    fn velocity(&self, trend: &Trend, velocity: &VelocityTrend) -> String {
        let load = match trend.place {
            Some(place) => self.load_at(&trend.lift, place, velocity.load),
            None => self.mass(velocity.load),
        };
        let with = [
            ("load", load),
            ("slope", self.rounded(velocity.per_week, 3)),
            ("low", self.rounded(velocity.interval.low(), 3)),
            ("high", self.rounded(velocity.interval.high(), 3)),
            ("sessions", self.count("session", velocity.sessions)),
        ];
        self.say("strength.velocity", &with)
    }

    /// The own curve of a lift, and whether there is enough for one.
    #[must_use]
    pub fn curve(&self, curve: &LiftCurve) -> Vec<String> {
        let lift = capital(self.lift_name(&curve.lift));
        let mut said = Vec::new();
        match &curve.curve {
            Some(own) => {
                said.push(self.own_curve(own, lift));
                said.push(self.say(if curve.enough { "curve.enough" } else { "curve.too_little" }, &[]));
            }
            None => said.push(self.say("curve.none", &[("lift", lift)])),
        }
        let with = [("usable", curve.usable.to_string()), ("sets", self.count("set", curve.sets))];
        said.push(self.say("curve.sets", &with));
        self.end(&mut said, (&curve.stops, curve.today), &curve.missing, &curve.cautions);
        said
    }

    fn own_curve(&self, own: &OwnCurve, lift: String) -> String {
        let percent = |slope: f64| self.rounded(slope * 100.0, 1);
        let with = [
            ("lift", lift),
            ("slope", percent(own.slope)),
            ("low", percent(own.slope_interval.low())),
            ("high", percent(own.slope_interval.high())),
        ];
        self.say("curve.found", &with)
    }

    /// How two lifts of a pair stand to each other.
    #[must_use]
    pub fn pair_answer(&self, pair: &PairAnswer) -> Vec<String> {
        let key = match pair.place {
            PairPlace::Unknown => "pair.unknown",
            PairPlace::Usual => "pair.usual",
            PairPlace::StrictHigher => "pair.strict_higher",
            PairPlace::ForgivingAhead => "pair.forgiving_ahead",
            PairPlace::AboveCap => "pair.above_cap",
        };
        let strict = self.lift_name(&pair.strict).to_string();
        let forgiving = self.lift_name(&pair.forgiving).to_string();
        let mut said = alloc::vec![capital(&self.say(key, &[("strict", strict), ("forgiving", forgiving)]))];
        let ends = |low: f64, high: f64| [("low", self.rounded(low, 2)), ("high", self.rounded(high, 2))];
        if pair.own.pairs > 0 {
            let [low, high] = ends(pair.own.interval.low(), pair.own.interval.high());
            let ratio = ("ratio", self.rounded(pair.own.ratio, 2));
            said.push(
                self.say("pair.own", &[ratio, low, high, ("pairs", self.count("pair", pair.own.pairs))]),
            );
        }
        let prior = if pair.replaces_prior { "pair.replaces" } else { "pair.keeps" };
        said.push(self.say(prior, &ends(pair.prior.low(), pair.prior.high())));
        self.end(&mut said, (&pair.stops, pair.today), &pair.missing, &pair.cautions);
        said
    }
}
