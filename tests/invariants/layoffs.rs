//! Coming back after a break: every row of the layoff table, age, illness.

use super::course::*;
use super::hand::helped;
use super::hundred::*;
use bismar::reason::Reason;

/// Row of the table, rung and load in kilograms, so many days after the last session.
fn back(course: &Course, at: usize, gap: i32) -> (u8, u8, i64) {
    let day = lift(course, PRESS).last_session.unwrap().plus(gap).unwrap();
    let decision = on(course, at, day);
    let row = decision.reasons.iter().find_map(|reason| match reason {
        Reason::Layoff { gap: said, row, load } => {
            assert_eq!((i32::from(*said), *load), (gap, decision.limit));
            Some(*row)
        }
        _ => None,
    });
    assert_eq!(row.is_some(), decision.status.as_str() == RETURNING, "{gap} days");
    (row.unwrap_or(0), decision.grant.place.rung, kilograms(decision.limit))
}

/// First and last day of each row, and what is left of 100 kg by it: from the second row on a part of it, never above
/// one step back, and from the last the lightest piece.
const ROWS: [(i32, i32, u8, i64); 6] =
    [(1, 10, 0, 100), (11, 20, 1, 95), (21, 41, 2, 90), (42, 83, 3, 80), (84, 181, 4, 65), (182, 300, 5, 5)];

#[test]
fn every_row_from_its_first_day_to_its_last() {
    for born in [YOUNG, Some("1960-01-06")] {
        let course = trained(hundred(), born);
        for (first, last, row, load) in ROWS {
            for gap in [first, last] {
                // The strict lift of the pair comes back on an easier rung from the third row on.
                let strict_rung = if row >= 3 { 0 } else { 1 };
                assert_eq!(back(&course, STRICT, gap), (row, strict_rung, load), "{gap} days");
                assert_eq!(back(&course, FORGIVING, gap), (row, 1, load), "{gap} days");
                assert_eq!(back(&course, PRESS, gap), (row, 1, load), "{gap} days");
            }
        }
    }
}

#[test]
fn from_seventy_on_each_row_is_the_next_one() {
    // So it is where nobody knows the age.
    let worlds = [Some("1940-07-01"), None].map(|born| trained(hundred(), born));
    for (course, (first, last, row, load)) in worlds.iter().flat_map(|course| ROWS.map(|row| (course, row))) {
        let (row, load) = match ROWS.get(usize::from(row) + 1) {
            _ if row == 0 => (0, load),
            Some((_, _, next, left)) => (*next, *left),
            None => (5, 5),
        };
        for gap in [first, last] {
            assert_eq!(back(course, FORGIVING, gap), (row, 1, load), "{gap} days");
            assert_eq!(back(course, STRICT, gap).1, if row >= 3 { 0 } else { 1 }, "{gap} days");
        }
    }
}

#[test]
fn age_is_counted_in_whole_years_on_the_day_of_the_return() {
    // 26 days after the session of 6 January it is 1 February 2025.
    for (born, load) in [
        ("1954-12-31", 80),
        ("1955-01-31", 80),
        ("1955-02-01", 80),
        ("1955-02-02", 90),
        ("1955-03-01", 90),
        ("1955-12-31", 90),
        ("2000-01-01", 90),
    ] {
        assert_eq!(back(&trained(hundred(), Some(born)), PRESS, 26).2, load, "born on {born}");
    }
}

#[test]
fn an_illness_counts_two_rows_and_age_one_more() {
    for (born, gap, row, load) in [
        (YOUNG, 5, 2, 90),
        (YOUNG, 11, 3, 80),
        (YOUNG, 21, 4, 65),
        (YOUNG, 42, 5, 5),
        (None, 5, 3, 80),
        (None, 11, 4, 65),
        (Some("1940-07-01"), 5, 3, 80),
        (Some("1940-07-01"), 11, 4, 65),
        (Some("1940-07-01"), 21, 5, 5),
    ] {
        let mut course = trained(hundred(), born);
        course.step(&Step::Layoff(2));
        assert_eq!(back(&course, PRESS, gap), (row, 1, load), "{gap} days");
    }
}

#[test]
fn the_easier_rung_is_the_one_below_and_the_lowest_stays() {
    for (start, after) in [(2, 1), (1, 0), (0, 0)] {
        let mut all = hundred();
        all.lifts[STRICT].start.place.rung = start;
        assert_eq!(back(&trained(all, YOUNG), STRICT, 42), (3, after, 80));
    }
}

#[test]
fn without_a_body_mass_a_short_break_gives_one_plate_of_help_and_a_longer_one_all() {
    let course = trained(helped(hundred()), YOUNG);
    for (gap, load) in [(10, -20), (11, -25), (20, -25), (21, -60), (182, -60)] {
        assert_eq!(back(&course, PRESS, gap).2, load, "{gap} days");
    }
}

#[test]
fn without_a_body_mass_a_step_back_is_one_plate_of_help() {
    let mut course = trained(helped(hundred()), YOUNG);
    for _ in 0..2 {
        wait(&mut course, 2);
        course.session(4, Quality::ManyMisses, Weight::AtLimit, Some(0));
    }
    assert_eq!((lift(&course, PRESS).status, course.limit(PRESS)), (STEPPING_BACK, kg(-25.0)));
}
