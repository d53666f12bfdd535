//! Floors as published: consensus cut-offs, standards for staying independent, strength thresholds.

use super::floor::{FloorSource, by_sex};
use super::relative::body_mass_within;
use super::{Age, Band, Floor, FunctionTest, Sex};
use crate::caution::Caution;
use crate::error::{Code, Error};
use crate::quantity::Mass;
use crate::source::{Seen, Source, formula, rows};

const EWGSOP2_2019: Source = Source {
    id: "cruz-jentoft-2019",
    citation: "Cruz-Jentoft AJ, Bahat G, Bauer J, et al. Sarcopenia: revised European consensus on definition and \
               diagnosis. Age and Ageing 2019;48(1):16-31",
    doi: None,
};

const FNIH_2014: Source = Source {
    id: "studenski-2014",
    citation: "Studenski SA, Peters KW, Alley DE, et al. The FNIH sarcopenia project: rationale, study description, \
               conference recommendations, and final estimates. J Gerontol A 2014;69(5):547-558",
    doi: None,
};

const RIKLI_JONES_2013: Source = Source {
    id: "rikli-jones-2013",
    citation: "Rikli RE, Jones CJ. Development and validation of criterion-referenced clinically relevant fitness \
               standards for maintaining physical independence in later years. The Gerontologist \
               2013;53(2):255-267",
    doi: Some("10.1093/geront/gns071"),
};

const PLOUTZ_SNYDER_2002: Source = Source {
    id: "ploutz-snyder-2002",
    citation: "Ploutz-Snyder LL, Manini T, Ploutz-Snyder RJ, Wolf DA. Functionally relevant thresholds of \
               quadriceps femoris strength. J Gerontol A 2002;57(4):B144-B152",
    doi: None,
};

const CRESS_MEYER_2003: Source = Source {
    id: "cress-meyer-2003",
    citation: "Cress ME, Meyer M. Maximal voluntary and functional performance levels needed for independence in \
               adults aged 65 to 97 years. Physical Therapy 2003;83(1):37-48",
    doi: Some("10.1093/ptj/83.1.37"),
};

const EWGSOP2: FloorSource = FloorSource {
    id: "cruz-jentoft-2019",
    population: "older adults, by consensus over several cohorts; grip by 2.5 SD below the peak of young adults",
    seen: Seen::Secondary,
};

const EWGSOP2_RECALLED: FloorSource = FloorSource { seen: Seen::Memory, ..EWGSOP2 };

const FNIH: FloorSource = FloorSource {
    id: "studenski-2014",
    population: "older adults of several pooled cohorts",
    seen: Seen::Secondary,
};

const RIKLI_JONES: FloorSource = FloorSource {
    id: "rikli-jones-2013",
    population: "2140 moderately functioning adults of 60 to 94",
    seen: Seen::Memory,
};

const PLOUTZ_SNYDER: FloorSource =
    FloorSource { id: "ploutz-snyder-2002", population: "100 adults of 73 (SE 0.9)", seen: Seen::Read };

const CRESS_MEYER: FloorSource =
    FloorSource { id: "cress-meyer-2003", population: "192 adults of 65 to 97", seen: Seen::Read };

fn figure(value: f64) -> Result<Band, Error> {
    Band::new(value, None, value)
}

formula! {
    "horizon.ewgsop2_floor",
    /// Below which result does the European consensus of 2019 speak of probable loss of muscle function?
    ///
    /// # Formula
    /// Grip below 27 kg (men), 16 kg (women); five chair rises in more than 15 s; limb lean mass over height squared
    /// below 7.0 (men), 5.5 kg/m2 (women); gait at or below 0.8 m/s; timed up-and-go from 20 s; short performance
    /// battery up to 8 points; 400 m from 6 minutes.
    ///
    /// # Domain
    /// Older adults. Without a sex, the range over both. Nothing here diagnoses: below a floor, talk to a clinician.
    ///
    /// # Errors
    /// `not_in_source` for a test the consensus has no cut-off for.
    ///
    /// # Source
    /// Cruz-Jentoft and others 2019, the cut-off points, as tables of later articles print them; battery and 400 m
    /// recalled (row `horizon.ewgsop2_floor`).
    ///
    /// # Examples
    /// ```
    /// use bismar::horizon::{FunctionTest, Sex, ewgsop2_floor};
    ///
    /// assert_eq!(ewgsop2_floor(FunctionTest::Grip, Some(Sex::Male))?.value.low(), 27.0);
    /// # Ok::<(), bismar::Error>(())
    /// ```
    pub fn ewgsop2_floor(test: FunctionTest, sex: Option<Sex>) -> Result<Floor, Error> {
        let floor = match test {
            FunctionTest::Grip => EWGSOP2.floor(test, by_sex(sex, 16.0, 27.0)?, true, sex),
            FunctionTest::LimbLeanMassOverHeightSquared => {
                EWGSOP2.floor(test, by_sex(sex, 5.5, 7.0)?, true, sex)
            }
            FunctionTest::FiveChairRises => EWGSOP2.floor(test, figure(15.0)?, true, sex),
            FunctionTest::GaitSpeed => EWGSOP2.floor(test, figure(0.8)?, false, sex),
            FunctionTest::TimedUpAndGo => EWGSOP2.floor(test, figure(20.0)?, false, sex),
            FunctionTest::ShortPerformanceBattery => {
                EWGSOP2_RECALLED.floor(test, figure(8.0)?, false, sex)
            }
            FunctionTest::WalkOf400Metres => EWGSOP2_RECALLED.floor(test, figure(360.0)?, false, sex),
            _ => return Err(EWGSOP2.has_no(test)),
        };
        Ok(floor)
    }
    source: EWGSOP2_2019, place: "cut-off points", standing: Published, seen: Secondary,
    copies: "tables of two later articles; the chair rises in one of them", recalled: "the battery and the walk of 400 m",
    population: "older adults, by consensus over several cohorts", domain: "older adults",
}

formula! {
    "horizon.fnih_floor",
    /// Below which grip or lean mass did the pooled American cohorts see weakness that matters?
    ///
    /// # Formula
    /// Grip below 26 kg (men), 16 kg (women); limb lean mass over body mass index below 0.789 (men), 0.512 m2
    /// (women).
    ///
    /// # Domain
    /// Older adults. Without a sex, the range over both. Nothing here diagnoses.
    ///
    /// # Errors
    /// `not_in_source` for other tests.
    ///
    /// # Source
    /// Studenski and others 2014, as a table of a later article prints it (row `horizon.fnih_floor`).
    ///
    /// # Examples
    /// ```
    /// use bismar::horizon::{FunctionTest, Sex, fnih_floor};
    ///
    /// assert_eq!(fnih_floor(FunctionTest::Grip, Some(Sex::Male))?.value.low(), 26.0);
    /// # Ok::<(), bismar::Error>(())
    /// ```
    pub fn fnih_floor(test: FunctionTest, sex: Option<Sex>) -> Result<Floor, Error> {
        match test {
            FunctionTest::Grip => Ok(FNIH.floor(test, by_sex(sex, 16.0, 26.0)?, true, sex)),
            FunctionTest::LimbLeanMassOverBodyMassIndex => {
                Ok(FNIH.floor(test, by_sex(sex, 0.512, 0.789)?, true, sex))
            }
            _ => Err(FNIH.has_no(test)),
        }
    }
    source: FNIH_2014, place: "final cut points", standing: Published, seen: Secondary,
    copies: "one table of one later article",
    population: "older adults of several pooled cohorts", domain: "older adults",
}

/// Ages 60-64, 65-69, ... 90-94.
type ByFiveYears = [f64; 7];

const fn rikli_jones_rows(test: FunctionTest) -> Option<(ByFiveYears, ByFiveYears)> {
    let (women, men) = match test {
        FunctionTest::ChairStandsIn30Seconds => {
            ([15.0, 15.0, 14.0, 13.0, 12.0, 11.0, 9.0], [17.0, 16.0, 15.0, 14.0, 13.0, 11.0, 9.0])
        }
        FunctionTest::ArmCurlsIn30Seconds => {
            ([17.0, 17.0, 16.0, 15.0, 14.0, 13.0, 11.0], [19.0, 18.0, 17.0, 16.0, 15.0, 13.0, 11.0])
        }
        FunctionTest::SixMinuteWalk => (
            [625.0, 605.0, 580.0, 550.0, 510.0, 460.0, 400.0],
            [680.0, 650.0, 620.0, 580.0, 530.0, 470.0, 400.0],
        ),
        FunctionTest::TwoMinuteSteps => {
            ([97.0, 93.0, 89.0, 84.0, 78.0, 70.0, 60.0], [106.0, 101.0, 95.0, 88.0, 80.0, 71.0, 60.0])
        }
        FunctionTest::EightFootUpAndGo => {
            ([5.0, 5.3, 5.6, 6.0, 6.5, 7.1, 8.0], [4.8, 5.1, 5.5, 5.9, 6.4, 7.1, 8.0])
        }
        _ => return None,
    };
    Some((women, men))
}

/// Which of the five-year rows an age falls into.
fn five_year_row(age: Age) -> Result<usize, Error> {
    let completed = age.completed();
    match completed {
        60..=94 => Ok(usize::from((completed - 60) / 5)),
        _ => Err(Error::range(Code::AgeOutOfDomain, "age", age.years(), 60.0, 94.0, "completed years")),
    }
}

formula! {
    "horizon.rikli_jones_2013_floor",
    /// What should a person of this age manage to be on course to live independently late in life?
    ///
    /// # Formula
    /// A table by five years of age and sex: 30 s chair stand, 30 s arm curl, 6-minute walk, 2-minute step, 8-foot
    /// up-and-go.
    ///
    /// # Domain
    /// 60 to 94 completed years, moderately functioning people. These standards are higher than the lower end of
    /// the normal range of the same authors. Without a sex, the range over both.
    ///
    /// # Errors
    /// `age_out_of_domain`; `not_in_source` for other tests.
    ///
    /// # Source
    /// Rikli and Jones 2013, recalled (row `horizon.rikli_jones_2013_floor`).
    ///
    /// # Examples
    /// ```
    /// use bismar::horizon::{Age, FunctionTest, Sex, rikli_jones_2013_floor};
    ///
    /// let test = FunctionTest::ChairStandsIn30Seconds;
    /// let floor = rikli_jones_2013_floor(test, Age::new(72.0)?, Some(Sex::Female))?;
    /// assert_eq!(floor.value.low(), 14.0);
    /// # Ok::<(), bismar::Error>(())
    /// ```
    pub fn rikli_jones_2013_floor(test: FunctionTest, age: Age, sex: Option<Sex>) -> Result<Floor, Error> {
        let (women, men) = rikli_jones_rows(test).ok_or_else(|| RIKLI_JONES.has_no(test))?;
        let row = five_year_row(age)?;
        match (women.get(row), men.get(row)) {
            (Some(women), Some(men)) => Ok(RIKLI_JONES.floor(test, by_sex(sex, *women, *men)?, true, sex)),
            _ => Err(RIKLI_JONES.has_no(test)),
        }
    }
    source: RIKLI_JONES_2013, place: "table of standards by age and sex", standing: Published, seen: Memory,
    population: "2140 moderately functioning adults of 60 to 94",
    domain: "60 to 94 completed years", error: "reliability and validity .79 to .97",
}

fn ploutz_snyder(value: Band, unit: &'static str) -> Floor {
    let test = FunctionTest::KneeTorqueOverBodyMass;
    let mut floor = PLOUTZ_SNYDER.floor(test, value, true, None);
    floor.cautions.retain(|caution| *caution != Caution::SexUnknown);
    floor.cautions.push(Caution::ThresholdOfOnePopulation);
    floor.unit = alloc::borrow::Cow::Borrowed(unit);
    floor
}

formula! {
    "horizon.ploutz_snyder_2002_floor",
    /// Below which knee strength did rising, walking and stairs get hard?
    ///
    /// # Formula
    /// 3.0 to 3.5 N m of isometric knee-extension torque for each kg of body mass; below 3.0 a substantial part had
    /// trouble.
    ///
    /// # Domain
    /// Both sexes, about 73. Another study of 33 adults found no threshold at all: thresholds belong to a
    /// population.
    ///
    /// # Errors
    /// None.
    ///
    /// # Source
    /// Ploutz-Snyder and others 2002, abstract (row `horizon.ploutz_snyder_2002_floor`).
    ///
    /// # Examples
    /// ```
    /// let floor = bismar::horizon::ploutz_snyder_2002_floor()?;
    /// assert_eq!((floor.value.low(), floor.value.high()), (3.0, 3.5));
    /// # Ok::<(), bismar::Error>(())
    /// ```
    pub fn ploutz_snyder_2002_floor() -> Result<Floor, Error> {
        Ok(ploutz_snyder(Band::new(3.0, None, 3.5)?, "N m/kg"))
    }
    source: PLOUTZ_SNYDER_2002, place: "abstract", standing: Published, seen: Read,
    population: "100 adults of 73 (SE 0.9)", error: "sensitivity 76 to 81 %, specificity 78 to 94 %",
}

formula! {
    "horizon.knee_torque_floor",
    /// What knee-extension torque is that floor for a person of this mass?
    ///
    /// # Formula
    /// 3.0 to 3.5 N m/kg times body mass in kg.
    ///
    /// # Domain
    /// Body mass 20 to 350 kg.
    ///
    /// # Errors
    /// `body_mass_out_of_domain`.
    ///
    /// # Source
    /// Arithmetic over Ploutz-Snyder and others 2002 (row `horizon.knee_torque_floor`).
    ///
    /// # Examples
    /// ```
    /// use bismar::horizon::knee_torque_floor;
    /// use bismar::quantity::Mass;
    ///
    /// assert_eq!(knee_torque_floor(Mass::from_kg(70.0)?)?.value.low(), 210.0);
    /// # Ok::<(), bismar::Error>(())
    /// ```
    pub fn knee_torque_floor(body_mass: Mass) -> Result<Floor, Error> {
        let mass = body_mass_within(body_mass, 20.0, 350.0)?;
        Ok(ploutz_snyder(Band::new(3.0 * mass, None, 3.5 * mass)?, "N m"))
    }
    source: PLOUTZ_SNYDER_2002, place: "abstract, times body mass", standing: Derived, seen: NotApplicable,
    population: "100 adults of 73 (SE 0.9)", domain: "body mass 20 to 350 kg",
}

formula! {
    "horizon.cress_meyer_2003_floor",
    /// Below which capacity did adults of 65 to 97 live less independently?
    ///
    /// # Formula
    /// Peak oxygen uptake 20 mL/kg/min; knee-extension torque 2.5 N m/(kg/m).
    ///
    /// # Domain
    /// 65 to 97 years, both sexes together.
    ///
    /// # Errors
    /// `not_in_source` for other tests.
    ///
    /// # Source
    /// Cress and Meyer 2003, abstract (row `horizon.cress_meyer_2003_floor`).
    ///
    /// # Examples
    /// ```
    /// use bismar::horizon::{FunctionTest, cress_meyer_2003_floor};
    ///
    /// assert_eq!(cress_meyer_2003_floor(FunctionTest::PeakOxygenUptake)?.value.low(), 20.0);
    /// # Ok::<(), bismar::Error>(())
    /// ```
    pub fn cress_meyer_2003_floor(test: FunctionTest) -> Result<Floor, Error> {
        let value = match test {
            FunctionTest::PeakOxygenUptake => 20.0,
            FunctionTest::KneeTorqueOverMassPerHeight => 2.5,
            _ => return Err(CRESS_MEYER.has_no(test)),
        };
        Ok(CRESS_MEYER.floor(test, figure(value)?, true, None))
    }
    source: CRESS_MEYER_2003, place: "abstract: thresholds", standing: Published, seen: Read,
    population: "192 adults of 65 to 97", domain: "65 to 97 years",
}

rows![
    ewgsop2_floor,
    fnih_floor,
    rikli_jones_2013_floor,
    ploutz_snyder_2002_floor,
    knee_torque_floor,
    cress_meyer_2003_floor,
];
