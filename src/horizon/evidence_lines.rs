//! The lines of published evidence. Percentages are in percent here, since they are shown and not reckoned with.

use super::Study;
use super::evidence::{Ends, Line, Work, alone, between, spanning};
use crate::source::Seen;

const fn read(id: &'static str, citation: &'static str, population: &'static str) -> Work {
    Work { id, citation, population, seen: Seen::Read }
}

const fn recalled(id: &'static str, citation: &'static str, population: &'static str) -> Work {
    Work { id, citation, population, seen: Seen::Memory }
}

const PERCENT: &str = "% of strength";
const YEARLY: &str = "% a year";
const DECADE: &str = "% a decade";
const EFFECT: &str = "standardised mean difference";
const WEEKS: &str = "weeks";

pub(super) const TRAINABILITY: &[(&Work, &[Line])] = &[
    (
        &read(
            "peterson-2010",
            "Ageing Res Rev 2010;9:226-237, doi 10.1016/j.arr.2010.03.004",
            "47 studies, 1079 people of 50 and over",
        ),
        &[
            between("leg_press_gain", 29.0, 27.0, 31.0, Ends::StandardError, PERCENT),
            between("chest_press_gain", 24.0, 22.0, 26.0, Ends::StandardError, PERCENT),
            between("knee_extension_gain", 33.0, 30.0, 36.0, Ends::StandardError, PERCENT),
            between("lat_pull_gain", 25.0, 23.0, 27.0, Ends::StandardError, PERCENT),
            spanning("gain_in_load", 9.8, 31.6, "kg"),
        ],
    ),
    (
        &read("peterson-2011", "Med Sci Sports Exerc 2011;43:249-258", "49 studies, 1328 older people"),
        &[between("lean_mass_gain", 1.1, 0.9, 1.2, Ends::Confidence95, "kg")],
    ),
    (
        &read("latham-2004", "J Gerontol A 2004;59:48-61", "62 trials, 3674 older people"),
        &[
            between("strength_gain", 0.68, 0.52, 0.84, Ends::Confidence95, EFFECT),
            between("gait_gain", 0.07, 0.04, 0.09, Ends::Confidence95, "m/s"),
            alone("disability_change_not_significant", 0.01, EFFECT),
        ],
    ),
    (
        &read(
            "borde-2015",
            "Sports Med 2015;45:1693-1720, doi 10.1007/s40279-015-0385-9",
            "25 randomised trials, 65 and over; best level of each variable alone, never tried together",
        ),
        &[
            alone("overall_strength_gain", 1.57, EFFECT),
            alone("best_period_50_to_53_weeks", 2.34, EFFECT),
            alone("best_intensity_70_to_79_percent", 1.89, EFFECT),
            alone("best_time_under_tension_6_seconds", 3.61, EFFECT),
            alone("best_rest_60_seconds_two_studies", 4.68, EFFECT),
            alone("best_frequency_2_a_week", 2.13, EFFECT),
        ],
    ),
    (
        &recalled(
            "borde-2015",
            "Sports Med 2015;45:1693-1720, doi 10.1007/s40279-015-0385-9",
            "25 randomised trials, 65 and over; best level of each variable alone, never tried together",
        ),
        &[alone("best_sets_2_to_3", 2.99, EFFECT), alone("best_repetitions_7_to_9", 1.98, EFFECT)],
    ),
    (
        &read(
            "fiatarone-1990",
            "JAMA 1990;263:3029-3034",
            "9 people of 90 (SD 1), 8 weeks, 3 days a week at 80 % of the maximum",
        ),
        &[
            between("strength_gain", 174.0, 143.0, 205.0, Ends::StandardError, PERCENT),
            between("thigh_muscle_area_gain", 9.0, 4.5, 13.5, Ends::StandardError, "% of area"),
            alone("tandem_gait_gain", 48.0, "% of speed"),
        ],
    ),
    (
        &read(
            "straight-2016",
            "Sports Med 2016;46:353-364, doi 10.1007/s40279-015-0418-4",
            "12 randomised trials, 50 and over",
        ),
        &[
            between("leg_power_gain", 0.34, 0.25, 0.43, Ends::Confidence95, EFFECT),
            alone("leg_power_gain_fast_lifting", 0.62, EFFECT),
            alone("leg_power_gain_traditional_lifting", 0.20, EFFECT),
        ],
    ),
    (
        &read(
            "latella-2024",
            "Sports Med 2024;54:753-774, doi 10.1007/s40279-023-01962-6",
            "powerlifters followed through their meets",
        ),
        &[
            spanning("first_year_gain", 7.5, 12.5, PERCENT),
            alone("ten_year_gain_up_to", 20.0, PERCENT),
            spanning("gain_women_over_59", 2.5, 5.0, PERCENT),
        ],
    ),
];

pub(super) const MAINTENANCE: &[(&Work, &[Line])] = &[
    (
        &read(
            "spiering-2021",
            "J Strength Cond Res 2021;35:1449-1458, doi 10.1519/JSC.0000000000003964",
            "a review; younger and older adults, relative load kept",
        ),
        &[
            alone("strength_held_up_to", 32.0, WEEKS),
            alone("sessions_a_week_for_strength", 1.0, "sessions"),
            alone("sets_an_exercise_for_strength", 1.0, "sets"),
            alone("sessions_a_week_for_size_when_older_up_to", 2.0, "sessions"),
            spanning("sets_an_exercise_for_size_when_older", 2.0, 3.0, "sets"),
        ],
    ),
    (
        &read(
            "bickel-2011",
            "Med Sci Sports Exerc 2011;43:1177-1187",
            "70 adults, 20 to 35 and 60 to 75; strength largely kept by all, size kept by the young only",
        ),
        &[
            alone("weeks_of_training", 16.0, WEEKS),
            alone("weeks_of_smaller_dose", 32.0, WEEKS),
            alone("larger_of_the_two_doses", 1.0 / 3.0, "of the training dose"),
            alone("smaller_of_the_two_doses", 1.0 / 9.0, "of the training dose"),
        ],
    ),
    (
        &recalled("fiatarone-1990", "JAMA 1990;263:3029-3034", "9 people of 90 (SD 1), after 4 weeks off"),
        &[alone("strength_lost_after_4_weeks_off", 32.0, PERCENT)],
    ),
    (
        &read(
            "grgic-2022",
            "Int J Environ Res Public Health 2022;19:14048",
            "older adults who stopped training",
        ),
        &[
            between("muscle_size_after_12_to_24_weeks_off", -0.60, -1.21, 0.01, Ends::Confidence95, EFFECT),
            alone("muscle_size_after_31_to_52_weeks_off", -1.11, EFFECT),
        ],
    ),
];

const fn of_study(study: Study, citation: &'static str, seen: Seen) -> Work {
    Work { id: study.id(), citation, population: study.population(), seen }
}

pub(super) const DECLINES: &[(&Work, &[Line])] = &[
    (
        &of_study(
            Study::Goodpaster2006,
            "J Gerontol A 2006;61(10):1059-1064, doi 10.1093/gerona/61.10.1059",
            Seen::Read,
        ),
        &[
            spanning("knee_extension_men", 3.4, 4.1, YEARLY),
            spanning("knee_extension_women", 2.6, 3.0, YEARLY),
            alone("lean_mass", 1.0, YEARLY),
        ],
    ),
    (
        &of_study(Study::Mitchell2012, "Front Physiol 2012;3:260, doi 10.3389/fphys.2012.00260", Seen::Read),
        &[
            alone("muscle_mass_men", 0.47, YEARLY),
            alone("muscle_mass_women", 0.37, YEARLY),
            spanning("muscle_mass_men_at_75", 0.80, 0.98, YEARLY),
            spanning("muscle_mass_women_at_75", 0.64, 0.70, YEARLY),
        ],
    ),
    (
        &of_study(
            Study::Mitchell2012,
            "Front Physiol 2012;3:260, doi 10.3389/fphys.2012.00260",
            Seen::Memory,
        ),
        &[
            spanning("strength_men_at_75", 3.0, 4.0, YEARLY),
            spanning("strength_women_at_75", 2.5, 3.0, YEARLY),
        ],
    ),
    (
        &of_study(
            Study::VonHaehling2010,
            "J Cachexia Sarcopenia Muscle 2010;1:129-133, as the review of 2012 by the same authors repeats it",
            Seen::Secondary,
        ),
        &[alone("strength_50_to_60", 1.5, YEARLY), alone("strength_after_60", 3.0, YEARLY)],
    ),
    (
        &of_study(
            Study::Frontera2000,
            "J Appl Physiol 2000;88(4):1321-1326, doi 10.1152/jappl.2000.88.4.1321",
            Seen::Read,
        ),
        &[
            spanning("knee_and_elbow_in_12_years", 20.0, 30.0, PERCENT),
            alone("thigh_muscle_area_in_12_years", 16.1, "% of area"),
        ],
    ),
    (
        &of_study(
            Study::Hughes2001,
            "J Gerontol A 2001;56(5):B209-B217, doi 10.1093/gerona/56.5.b209",
            Seen::Read,
        ),
        &[
            alone("knee_extensors", 14.0, DECADE),
            alone("knee_flexors", 16.0, DECADE),
            alone("men_faster_than_cross_sectional_by", 60.0, "% of the rate"),
        ],
    ),
    (
        &of_study(Study::Kemmler2018, "Front Physiol 2018;9:1524, doi 10.3389/fphys.2018.01524", Seen::Read),
        &[
            spanning("leg_press_overall", 0.8, 1.0, YEARLY),
            alone("change_point", 52.0, "years of age"),
            alone("leg_press_before_change_point", 5.2, "N a year"),
            alone("leg_press_after_change_point", 44.0, "N a year"),
        ],
    ),
    (
        &of_study(Study::Hunter2000, "J Gerontol A 2000;55(6):B264-B273", Seen::Read),
        &[
            alone("knee_extensors", 9.3, DECADE),
            alone("plantar_flexors", 7.4, DECADE),
            alone("hand_grip", 6.2, DECADE),
        ],
    ),
    (
        &of_study(Study::Hurley1995, "J Gerontol A 1995;50A special issue:41-44", Seen::Read),
        &[spanning("after_the_plateau", 12.0, 15.0, DECADE)],
    ),
    (
        &read(
            "meltzer-1994",
            "Med Sci Sports Exerc 1994;26(8):1053-1067",
            "masters weightlifters; 64 men over 18 years",
        ),
        &[spanning("weightlifting", 1.0, 1.5, YEARLY)],
    ),
    (
        &of_study(
            Study::Huebner2019,
            "Med Sci Sports Exerc 2019;51(11):2302-2308, doi 10.1249/MSS.0000000000002037",
            Seen::Read,
        ),
        &[
            between("left_at_40_of_35_men", 94.7, 92.6, 97.5, Ends::Confidence95, PERCENT),
            between("left_at_40_of_35_women", 95.2, 89.8, 98.6, Ends::Confidence95, PERCENT),
        ],
    ),
    (
        &read(
            "huebner-perperoglou-2019",
            "Front Physiol 2019;10:1121",
            "3782 results of weightlifters of 14 to 30",
        ),
        &[
            between("peak_age_men", 26.0, 24.9, 27.1, Ends::Range, "years of age"),
            between("peak_age_women", 25.0, 23.9, 27.4, Ends::Range, "years of age"),
        ],
    ),
    (
        &read(
            "solberg-2019",
            "Int J Sports Physiol Perform 2019;14(10):1357-1363, doi 10.1123/ijspp.2019-0093",
            "world-class lifters",
        ),
        &[
            between("peak_age_weightlifting", 26.0, 23.0, 29.0, Ends::StandardDeviation, "years of age"),
            between("peak_age_powerlifting", 35.0, 28.0, 42.0, Ends::StandardDeviation, "years of age"),
        ],
    ),
    (
        &read(
            "hernandez-ugalde-2022",
            "MHSalud 2022;19(1):1-13, doi 10.15359/mhs.19-1.4",
            "powerlifting results; a straight fall after the peak",
        ),
        &[spanning("peak_age_powerlifting_by_category", 27.67, 31.50, "years of age")],
    ),
    (
        &read(
            "baker-tang-2010",
            "Exp Aging Res 2010;36:453-477, doi 10.1080/0361073X.2010.507433",
            "holders of masters records",
        ),
        &[alone("women_of_mens_weightlifting_records", 52.0, "% of the men's record")],
    ),
    (
        &of_study(
            Study::Dodds2014,
            "PLoS ONE 2014;9(12):e113637, doi 10.1371/journal.pone.0113637",
            Seen::Read,
        ),
        &[
            alone("peak_median_grip_men", 51.0, "kg"),
            alone("peak_median_grip_women", 31.0, "kg"),
            alone("weak_grip_men_at_80", 23.0, "% of men"),
            alone("weak_grip_women_at_80", 27.0, "% of women"),
        ],
    ),
];
