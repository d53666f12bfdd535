//! The printed chart of repetitions and parts of the maximum, with its two disagreeing tails.

use super::curve::Curve;
use super::declare::equation;
use crate::error::{Code, Error};
use crate::numeric;
use crate::quantity::{Fraction, Kilograms, Mass, Reps};
use crate::source::{Source, formula, rows};

const NSCA: Source = Source {
    id: "nsca-chart",
    citation: "National Strength and Conditioning Association. Training load chart; and Baechle TR, Earle RW (eds). Essentials of Strength Training and Conditioning, 2nd and 3rd ed. Human Kinetics, Champaign IL, chapter on load assignment",
    doi: None,
};

/// Which print to follow above 10 repetitions, where they disagree.
#[derive(Clone, Copy, Debug, Default, PartialEq, Eq, Hash)]
#[cfg_attr(feature = "serde", derive(serde::Serialize, serde::Deserialize), serde(rename_all = "snake_case"))]
#[cfg_attr(feature = "schema", derive(schemars::JsonSchema))]
#[non_exhaustive]
pub enum ChartAboveTen {
    /// The one-page chart: 12 repetitions at 70 %, nothing longer (read).
    #[default]
    OnePage,
    /// The textbook: 11 at 70 %, 12 at 67 %, 15 at 65 % (from memory). The drop from 10 to 11 is real.
    Textbook,
}

/// Repetitions and percent, falling.
type Points = [(f64, f64)];

const ONE_PAGE: &Points = &[
    (1.0, 100.0),
    (2.0, 95.0),
    (3.0, 93.0),
    (4.0, 90.0),
    (5.0, 87.0),
    (6.0, 85.0),
    (7.0, 83.0),
    (8.0, 80.0),
    (9.0, 77.0),
    (10.0, 75.0),
    (12.0, 70.0),
];
const TEXTBOOK: &Points = &[
    (1.0, 100.0),
    (2.0, 95.0),
    (3.0, 93.0),
    (4.0, 90.0),
    (5.0, 87.0),
    (6.0, 85.0),
    (7.0, 83.0),
    (8.0, 80.0),
    (9.0, 77.0),
    (10.0, 75.0),
    (11.0, 70.0),
    (12.0, 67.0),
    (15.0, 65.0),
];

/// Percent at `reps` on the straight piece that holds it; NaN outside the chart.
fn percent(points: &Points, reps: f64) -> f64 {
    along(points, |&(r, _)| r <= reps, |(r0, p0), (r1, p1)| p0 + (p1 - p0) * (reps - r0) / (r1 - r0))
}

/// Repetitions at `percent` on the straight piece that holds it; NaN outside the chart.
fn repetitions(points: &Points, percent: f64) -> f64 {
    if percent > 100.0 {
        return f64::NAN;
    }
    along(points, |&(_, p)| p >= percent, |(r0, p0), (r1, p1)| r0 + (r1 - r0) * (percent - p0) / (p1 - p0))
}

/// The piece whose first end is the last point that `reached` accepts.
fn along(
    points: &Points,
    reached: impl Fn(&(f64, f64)) -> bool,
    piece: impl Fn((f64, f64), (f64, f64)) -> f64,
) -> f64 {
    let next = points.iter().position(|point| !reached(point)).unwrap_or(points.len() - 1);
    match (next.checked_sub(1).and_then(|first| points.get(first)), points.get(next)) {
        (Some(&first), Some(&second)) => piece(first, second),
        _ => f64::NAN,
    }
}

/// Rounding that an inverse may leave beyond the last point.
const ROUNDING: f64 = 1e-9;

fn answered(points: &Points, multiplier: f64) -> f64 {
    let highest = points.last().map_or(f64::NAN, |point| point.0);
    let reps = repetitions(points, 100.0 / multiplier);
    if reps <= highest + ROUNDING { numeric::smaller(reps, highest) } else { f64::NAN }
}

pub(super) const ONE_PAGE_CURVE: Curve =
    Curve::new(12.0, (1.0, 10.0), |r| 100.0 / percent(ONE_PAGE, r), |m| answered(ONE_PAGE, m));
pub(super) const TEXTBOOK_CURVE: Curve =
    Curve::new(15.0, (1.0, 10.0), |r| 100.0 / percent(TEXTBOOK, r), |m| answered(TEXTBOOK, m));

impl ChartAboveTen {
    const fn curve(self) -> &'static Curve {
        match self {
            ChartAboveTen::OnePage => &ONE_PAGE_CURVE,
            ChartAboveTen::Textbook => &TEXTBOOK_CURVE,
        }
    }
}

formula! {
    "one_rm.percent_chart_fraction",
    /// What part of the maximum does the chart give for this many repetitions?
    ///
    /// # Formula
    /// 1 to 10 repetitions: 100, 95, 93, 90, 87, 85, 83, 80, 77, 75 %; above, one of two prints. Straight lines
    /// between the points.
    ///
    /// # Domain
    /// Solid up to 10 repetitions. Above, the one-page chart ends with 12 at 70 %, the textbook has 11 at 70 %, 12
    /// at 67 % and 15 at 65 %: the caller chooses. Never extrapolated.
    ///
    /// # Errors
    /// `reps_out_of_domain` below 1 and above 12 or 15 repetitions.
    ///
    /// # Source
    /// Training load chart and textbook of the association (row `one_rm.percent_chart_fraction`).
    ///
    /// # Examples
    /// ```
    /// use bismar::one_rm::{ChartAboveTen, percent_chart_fraction};
    /// use bismar::quantity::Reps;
    ///
    /// let twelve = Reps::whole(12)?;
    /// assert_eq!(percent_chart_fraction(twelve, ChartAboveTen::OnePage)?.value(), 0.70);
    /// assert_eq!(percent_chart_fraction(twelve, ChartAboveTen::Textbook)?.value(), 0.67);
    /// # Ok::<(), bismar::Error>(())
    /// ```
    pub fn percent_chart_fraction(reps: Reps, above_ten: ChartAboveTen) -> Result<Fraction, Error> {
        let curve = above_ten.curve();
        let reps = numeric::within(Code::RepsOutOfDomain, "reps", reps.value(), 1.0, curve.highest, "")?;
        let points = match above_ten {
            ChartAboveTen::OnePage => ONE_PAGE,
            ChartAboveTen::Textbook => TEXTBOOK,
        };
        Fraction::new(percent(points, reps) / 100.0)
    }
    source: NSCA, place: "training load chart; load assignment", standing: Published, seen: Read,
    recalled: "the textbook's 11, 12 and 15 repetitions",
    population: "a chart; no sample", domain: "1 to 12 repetitions (one page) or 15 (textbook, from memory)",
}

equation! {
    "Training load chart", "and textbook of the association", highest: "12 or 15", answers: "12 or 15",
    uses: "ChartAboveTen";
    row: {
        source: NSCA, place: "training load chart; load assignment", standing: Published, seen: Read,
        recalled: "the textbook's 11, 12 and 15 repetitions", population: "a chart; no sample"
    },
    domain: "1 to 12 repetitions (one page) or 15 (textbook, from memory)";
    /// As [`percent_chart_fraction`].
    asks: "What could be lifted once, from a set to failure, by the chart?";
    pub fn percent_chart(load: Mass, reps: Reps, above_ten: ChartAboveTen) -> Result<Kilograms, Error> {
        above_ten.curve().one_rm(load, reps)
    }
    "`E = w / F`, `F` from [`percent_chart_fraction`]", at_one: "the load itself",
    gives: 100.000, within: "1e-9", from: "Mass::from_kg(80.0)?, Reps::whole(8)?, ChartAboveTen::OnePage";
    asks: "What load would be lifted this often to failure, by the chart?";
    pub fn percent_chart_load(one_rm: Kilograms, reps: Reps, above_ten: ChartAboveTen) -> Result<Kilograms, Error> {
        above_ten.curve().load(one_rm, reps)
    }
    "`w = E F`, `F` from [`percent_chart_fraction`]",
    gives: 72.000, within: "1e-9", from: "Kilograms::new(90.0)?, Reps::whole(8)?, ChartAboveTen::OnePage";
    asks: "How many repetitions to failure does a part of the maximum allow, by the chart?";
    pub fn percent_chart_reps(fraction: Fraction, above_ten: ChartAboveTen) -> Result<f64, Error> {
        above_ten.curve().reps(fraction)
    }
    "The straight piece of the chart that holds `F`, solved for repetitions: from 100 % down to 70 % (one page) or 65 % (textbook)",
    gives: 6.50, within: "1e-9", from: "Fraction::new(0.84)?, ChartAboveTen::OnePage", "Fraction";
}

rows![percent_chart_fraction, percent_chart, percent_chart_load, percent_chart_reps];
