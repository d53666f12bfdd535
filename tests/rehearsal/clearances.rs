//! A clearance that the log would refuse is refused before anyone lifts, in the same words.

use super::*;
use bismar::progression::fold;

/// What the log says of that clearance, without where in the log.
fn in_the_log(setup: &Setup, clearance: &Clearance) -> Option<(Code, String, String)> {
    let day: Day = "2026-01-05".parse().unwrap();
    let mut log = Log::new(Lifter::new(name("invented")));
    let kinds = [
        EventKind::ParametersChanged(Box::new(setup.parameters.clone())),
        EventKind::ClearanceRecorded(clearance.clone()),
    ];
    log.events = (1..).zip(kinds).map(|(number, kind)| Event::new(number, day, kind)).collect();
    fold(&log).err().map(|error| {
        let at = error.field().find("limits").unwrap_or_else(|| panic!("{error}"));
        (error.code(), error.field()[at..].to_owned(), error.allowed().to_string())
    })
}

#[test]
fn a_clearance_is_refused_before_anyone_lifts_as_the_log_refuses_it() {
    let setup = clean();
    let region = setup.parameters.regions[0].id.clone();
    let load = ClearanceLimits::default().with_load(kg(500.0));
    let limited = |limits: Vec<ClearanceLimits>| {
        Clearance::new(ClearanceStatus::ClearedWithLimits, name("clinic")).with_limits(limits)
    };
    let cleared = |limits| limited(limits).with_status(ClearanceStatus::Cleared);
    let refused = [
        (limited(Vec::new()), Code::EmptyList, "limits"),
        (limited(vec![ClearanceLimits::default()]), Code::MissingField, "limits[0]"),
        (
            cleared(vec![load.clone(), ClearanceLimits::default().with_region(region.clone())]),
            Code::MissingField,
            "limits[1]",
        ),
        (limited(vec![load.clone().with_region(name("elsewhere"))]), Code::UnknownRegion, "limits[0].region"),
        (limited(vec![load.clone(); 65]), Code::TooMany, "limits"),
    ];
    for (clearance, code, field) in refused {
        let error = check_clearance(&setup.parameters, &clearance).unwrap_err();
        assert_eq!((error.code(), error.field()), (code, field));
        let said = (error.code(), error.field().to_owned(), error.allowed().to_string());
        assert_eq!(in_the_log(&setup, &clearance), Some(said), "{clearance:?}");
        // Nor is one that says no looked at any less.
        let no = clearance.with_status(ClearanceStatus::NotCleared);
        let alike = check_clearance(&setup.parameters, &no).err().map(|error| error.code());
        assert_eq!(alike, in_the_log(&setup, &no).map(|(code, ..)| code), "{no:?}");
    }
    for clearance in [limited(vec![load.clone().with_region(region)]), cleared(vec![load])] {
        assert_eq!(in_the_log(&setup, &clearance), None);
        assert_eq!(check_clearance(&setup.parameters, &clearance).unwrap(), []);
    }
}
