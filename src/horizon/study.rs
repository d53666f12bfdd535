//! Published decline, study by study: who was measured, between which ages, and how fast strength fell.

use alloc::vec;
use alloc::vec::Vec;

use super::grip::{DODDS_POPULATION, centile_curves};
use super::outlook::Course;
use super::{Age, AnnualLoss, Curve, LossBand, Sex};
use crate::caution::Caution;
use crate::error::{Allowed, Code, Error, Given};
use crate::numeric;

/// A study whose rates can carry strength from one age to another.
///
/// Rates that were published by ethnic group are used as the band they span; ethnicity is asked nowhere.
#[non_exhaustive]
#[derive(Clone, Copy, Debug, PartialEq, Eq, PartialOrd, Ord, Hash)]
#[cfg_attr(feature = "serde", derive(serde::Serialize, serde::Deserialize))]
#[cfg_attr(feature = "schema", derive(schemars::JsonSchema))]
pub enum Study {
    /// Knee extension over 3 years, 70 to 79 at entry.
    #[cfg_attr(feature = "serde", serde(rename = "goodpaster-2006"))]
    Goodpaster2006,
    /// A review's figures for strength at about 75.
    #[cfg_attr(feature = "serde", serde(rename = "mitchell-2012"))]
    Mitchell2012,
    /// A narrative review: 1.5 % from 50 to 60, 3 % after that, read as "a year".
    #[cfg_attr(feature = "serde", serde(rename = "von-haehling-2010"))]
    VonHaehling2010,
    /// Nine sedentary men followed for 12 years.
    #[cfg_attr(feature = "serde", serde(rename = "frontera-2000"))]
    Frontera2000,
    /// Knee strength over about 10 years, 46 to 78 at entry.
    #[cfg_attr(feature = "serde", serde(rename = "hughes-2001"))]
    Hughes2001,
    /// Leg press of men of 19 to 91, with a change point at 52.
    #[cfg_attr(feature = "serde", serde(rename = "kemmler-2018"))]
    Kemmler2018,
    /// Women of 20 to 89; a straight line, read as part of the strength at 20.
    #[cfg_attr(feature = "serde", serde(rename = "hunter-2000"))]
    Hunter2000,
    /// A review: men, a plateau to the fourth or fifth decade, then 12 to 15 % a decade.
    #[cfg_attr(feature = "serde", serde(rename = "hurley-1995"))]
    Hurley1995,
    /// Masters weightlifters at 40 against 35.
    #[cfg_attr(feature = "serde", serde(rename = "huebner-2019"))]
    Huebner2019,
    /// Grip centiles of twelve British studies; the band is over the centile curves.
    #[cfg_attr(feature = "serde", serde(rename = "dodds-2014"))]
    Dodds2014,
}

/// A published figure for loss.
#[derive(Clone, Copy)]
enum Figure {
    /// Part of the present strength each year.
    Yearly(f64),
    /// A total loss over a number of years, made yearly by compounding.
    Total(f64, f64),
}

use Figure::{Total, Yearly};

impl Figure {
    fn loss(self) -> AnnualLoss {
        AnnualLoss::tabled(match self {
            Yearly(loss) => loss,
            Total(loss, years) => 1.0 - numeric::exp(numeric::ln_1p(-loss) / years),
        })
    }
}

/// Figures for one sex (or both together) between two ages, slowest first.
struct Row {
    sex: Option<Sex>,
    from: f64,
    to: f64,
    slowest: Figure,
    middle: Option<Figure>,
    fastest: Figure,
}

const fn one(sex: Option<Sex>, from: f64, to: f64, figure: Figure) -> Row {
    Row { sex, from, to, slowest: figure, middle: Some(figure), fastest: figure }
}

const fn range(sex: Option<Sex>, from: f64, to: f64, slowest: Figure, fastest: Figure) -> Row {
    Row { sex, from, to, slowest, middle: None, fastest }
}

const MEN: Option<Sex> = Some(Sex::Male);
const WOMEN: Option<Sex> = Some(Sex::Female);

// 70 to 79 at entry and 3 years of follow-up.
static GOODPASTER: [Row; 2] = [
    range(MEN, 70.0, 82.0, Yearly(0.034), Yearly(0.041)),
    range(WOMEN, 70.0, 82.0, Yearly(0.026), Yearly(0.030)),
];
// Printed for the age of 75; taken for the decade around it.
static MITCHELL: [Row; 2] = [
    range(MEN, 70.0, 80.0, Yearly(0.03), Yearly(0.04)),
    range(WOMEN, 70.0, 80.0, Yearly(0.025), Yearly(0.03)),
];
// "After that" has no printed end; carried to 100.
static VON_HAEHLING: [Row; 2] = [one(None, 50.0, 60.0, Yearly(0.015)), one(None, 60.0, 100.0, Yearly(0.03))];
static FRONTERA: [Row; 1] = [range(MEN, 65.4, 77.4, Total(0.20, 12.0), Total(0.30, 12.0))];
// 46 to 78 at entry and 9.7 years of follow-up; extensors 14 % a decade, flexors 16 %.
static HUGHES: [Row; 1] = [range(None, 46.0, 87.0, Total(0.14, 10.0), Total(0.16, 10.0))];
static KEMMLER: [Row; 2] = [one(MEN, 19.0, 52.0, Yearly(0.0015)), one(MEN, 52.0, 91.0, Yearly(0.013))];
// Whether the plateau ends at 40 or at 50 is left open by the wording.
static HURLEY: [Row; 3] = [
    one(MEN, 30.0, 40.0, Yearly(0.0)),
    range(MEN, 40.0, 50.0, Yearly(0.0), Total(0.15, 10.0)),
    range(MEN, 50.0, 80.0, Total(0.12, 10.0), Total(0.15, 10.0)),
];
// 0.947 (0.926 to 0.975) men and 0.952 (0.898 to 0.986) women are left at 40 of the strength at 35.
static HUEBNER: [Row; 2] = [
    Row {
        sex: MEN,
        from: 35.0,
        to: 40.0,
        slowest: Total(0.025, 5.0),
        middle: Some(Total(0.053, 5.0)),
        fastest: Total(0.074, 5.0),
    },
    Row {
        sex: WOMEN,
        from: 35.0,
        to: 40.0,
        slowest: Total(0.014, 5.0),
        middle: Some(Total(0.048, 5.0)),
        fastest: Total(0.102, 5.0),
    },
];

/// Straight lines of women from 20 to 89: hand grip, plantar flexors, knee extensors, as parts a year.
const HUNTER_LINES: [f64; 3] = [0.0062, 0.0074, 0.0093];

impl Study {
    /// Every study of this version.
    pub const ALL: &'static [Study] = &[
        Study::Goodpaster2006,
        Study::Mitchell2012,
        Study::VonHaehling2010,
        Study::Frontera2000,
        Study::Hughes2001,
        Study::Kemmler2018,
        Study::Hunter2000,
        Study::Hurley1995,
        Study::Huebner2019,
        Study::Dodds2014,
    ];

    /// Short name of the work, as in the registry's sources.
    #[must_use]
    pub const fn id(self) -> &'static str {
        match self {
            Study::Goodpaster2006 => "goodpaster-2006",
            Study::Mitchell2012 => "mitchell-2012",
            Study::VonHaehling2010 => "von-haehling-2010",
            Study::Frontera2000 => "frontera-2000",
            Study::Hughes2001 => "hughes-2001",
            Study::Kemmler2018 => "kemmler-2018",
            Study::Hunter2000 => "hunter-2000",
            Study::Hurley1995 => "hurley-1995",
            Study::Huebner2019 => "huebner-2019",
            Study::Dodds2014 => "dodds-2014",
        }
    }

    /// Who was measured, how.
    #[must_use]
    pub const fn population(self) -> &'static str {
        match self {
            Study::Goodpaster2006 => {
                "1880 adults, 70 to 79 at entry, followed 3 years; isokinetic knee extension"
            }
            Study::Mitchell2012 => "a review of older adults; strength at about 75",
            Study::VonHaehling2010 => "a narrative review of adults from 50; untrained",
            Study::Frontera2000 => {
                "9 sedentary men, 65.4 (SD 4.2) at entry, followed 12 years; isokinetic knee and elbow"
            }
            Study::Hughes2001 => {
                "68 women and 52 men, 46 to 78 at entry, followed 9.7 years; isokinetic knee, both sexes alike"
            }
            Study::Kemmler2018 => "362 non-athletic men of 19 to 91; isokinetic leg press, cross-sectional",
            Study::Hunter2000 => "217 women of 20 to 89; knee, ankle and grip, cross-sectional",
            Study::Hurley1995 => "a review of men",
            Study::Huebner2019 => "masters weightlifters of 71 countries, 10 225 results, 35 to 90",
            Study::Dodds2014 => DODDS_POPULATION,
        }
    }

    const fn rows(self) -> &'static [Row] {
        match self {
            Study::Goodpaster2006 => &GOODPASTER,
            Study::Mitchell2012 => &MITCHELL,
            Study::VonHaehling2010 => &VON_HAEHLING,
            Study::Frontera2000 => &FRONTERA,
            Study::Hughes2001 => &HUGHES,
            Study::Kemmler2018 => &KEMMLER,
            Study::Hurley1995 => &HURLEY,
            Study::Huebner2019 => &HUEBNER,
            Study::Hunter2000 | Study::Dodds2014 => &[],
        }
    }

    /// The only sex measured, if it was one.
    const fn only(self) -> Option<Sex> {
        match self {
            Study::Frontera2000 | Study::Kemmler2018 | Study::Hurley1995 => MEN,
            Study::Hunter2000 => WOMEN,
            _ => None,
        }
    }

    fn own_cautions(self) -> Vec<Caution> {
        match self {
            Study::Goodpaster2006 | Study::Hughes2001 => vec![],
            Study::Mitchell2012 => vec![Caution::SourceNotRead],
            Study::VonHaehling2010 => vec![Caution::NoIntervalPublished, Caution::SourceSeenInCopies],
            Study::Frontera2000 => vec![Caution::SmallSample],
            Study::Kemmler2018 => vec![Caution::NoIntervalPublished, Caution::CrossSectional],
            Study::Hunter2000 => vec![Caution::CrossSectional],
            Study::Hurley1995 => vec![Caution::CrossSectional],
            Study::Huebner2019 => vec![Caution::SurvivorsOnly],
            Study::Dodds2014 => vec![Caution::CrossSectional, Caution::SourceSeenInCopies],
        }
    }

    /// Refuses a sex that was not measured, and an unknown one where only one sex was.
    fn check(self, sex: Option<Sex>) -> Result<(), Error> {
        let Some(only) = self.only() else { return Ok(()) };
        let name = match only {
            Sex::Female => "female",
            Sex::Male => "male",
        };
        match sex {
            Some(sex) if sex == only => Ok(()),
            Some(_) => {
                Err(Error::new(Code::NotMeasuredInSex, "sex", Given::Nothing, Allowed::one_of(&[name])))
            }
            None => Err(Error::new(Code::SexNeeded, "sex", Given::Nothing, Allowed::one_of(&[name]))),
        }
    }

    /// The curves that span the study's figures for that sex, or for both.
    pub(super) fn course(self, sex: Option<Sex>) -> Result<Course, Error> {
        self.check(sex)?;
        let (curves, middle, one_for_all) = match self {
            Study::Hunter2000 => (HUNTER_LINES.iter().map(|loss| line(*loss)).collect(), None, true),
            Study::Dodds2014 => dodds(sex),
            _ => self.of_rows(sex),
        };
        let mut cautions = vec![Caution::NotAPrognosis, Caution::OtherPopulation];
        cautions.extend(self.own_cautions());
        if sex.is_none() && !one_for_all {
            cautions.push(Caution::SexUnknown);
        }
        Ok(Course { curves, middle, model: self.id().into(), population: self.population().into(), cautions })
    }

    /// Slowest and fastest curve of each sex to cover, the middle one if there is one sex only, and whether the
    /// rows hold for both sexes together.
    fn of_rows(self, sex: Option<Sex>) -> (Vec<Curve>, Option<Curve>, bool) {
        let rows = self.rows();
        let together = rows.iter().all(|row| row.sex.is_none());
        let arms: Vec<Option<Sex>> = match (together, sex) {
            (true, _) => vec![None],
            (false, None) => vec![WOMEN, MEN],
            (false, one) => vec![one],
        };
        let mut curves = Vec::new();
        let mut middle = None;
        for arm in &arms {
            let of_arm = || rows.iter().filter(move |row| row.sex == *arm);
            curves.push(compound(of_arm(), |row| Some(row.slowest)));
            curves.push(compound(of_arm(), |row| Some(row.fastest)));
            let complete = of_arm().all(|row| row.middle.is_some());
            if arms.len() == 1 && complete {
                middle = Some(compound(of_arm(), |row| row.middle));
            }
        }
        (curves, middle, together)
    }
}

fn compound<'a>(rows: impl Iterator<Item = &'a Row>, figure: impl Fn(&Row) -> Option<Figure>) -> Curve {
    let band = |row: &Row| {
        Some(LossBand { from: Age::tabled(row.from), to: Age::tabled(row.to), loss: figure(row)?.loss() })
    };
    Curve::Compound(rows.filter_map(band).collect())
}

fn line(loss: f64) -> Curve {
    Curve::Line { from: Age::tabled(20.0), to: Age::tabled(89.0), loss: AnnualLoss::tabled(loss) }
}

fn dodds(sex: Option<Sex>) -> (Vec<Curve>, Option<Curve>, bool) {
    let curves = Sex::covered(sex).iter().flat_map(|sex| centile_curves(*sex)).collect();
    // The median is the third of five.
    let middle = sex.and_then(|sex| centile_curves(sex).into_iter().nth(2));
    (curves, middle, false)
}
