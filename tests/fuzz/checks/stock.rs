//! Any stock, any implement, any target: what is loaded adds up, keeps to its policy, and is the best there is.

use bismar::Code;
use bismar::loading::{
    Bar, BarKind, Disc, Handle, Implement, Loaded, MachineStack, Pieces, Pin, Rounding, Setting,
    SharedLifter, SharedSet, Stock, WarmUpStep, load_from, load_on, reachable, shared_bar, step_up, warm_up,
};
use bismar::quantity::{Length, Mass, Name, Reps};
use bismar::value::Value;

use super::bytes::Bytes;
use super::session::spoken;

/// Masses that gyms have, and some that they have not.
const FACES: &[f64] = &[25.0, 20.0, 15.0, 10.0, 5.0, 2.5, 2.0, 1.5, 1.25, 1.0, 0.5, 0.25];

fn mass(bytes: &mut Bytes<'_>) -> Mass {
    let kilograms = match bytes.below(6) {
        0..=2 => bytes.pick(FACES),
        3 => f64::from(bytes.u16()) / 100.0,
        4 => f64::from(bytes.byte()) * 0.453_592_37,
        _ => f64::from(bytes.u16()) / 8.0 - 100.0,
    };
    let odd = if bytes.rarely(8) { f64::from(bytes.byte()) * 1e-9 } else { 0.0 };
    Mass::from_kg((kilograms + odd).clamp(-2000.0, 2000.0)).expect("within range")
}

fn length(bytes: &mut Bytes<'_>, most: u16) -> Length {
    Length::from_mm(f64::from(bytes.u16() % most)).expect("within range")
}

fn masses(bytes: &mut Bytes<'_>, most: u8) -> Vec<Mass> {
    (0..bytes.below(most)).map(|_| mass(bytes)).collect()
}

fn disc(bytes: &mut Bytes<'_>) -> Option<Disc> {
    let mut disc = Disc::new(mass(bytes), u16::from(bytes.below(9))).ok()?;
    if bytes.rarely(4) {
        disc = disc.weighed(mass(bytes)).ok()?;
    }
    if bytes.rarely(3) {
        disc = disc.with_thickness(length(bytes, 120)).ok()?;
    }
    if bytes.rarely(3) {
        disc = disc.with_diameter(length(bytes, 500)).ok()?;
    }
    Some(disc)
}

fn bar(bytes: &mut Bytes<'_>) -> Option<Bar> {
    let mut bar = Bar::new(Name::new("bar").ok()?, mass(bytes), mass(bytes)).ok()?;
    if bytes.rarely(3) {
        bar = bar.with_sleeve(length(bytes, 600)).ok()?;
    }
    if bytes.rarely(6) {
        let (low_handle, high_handle) = (length(bytes, 300), Some(length(bytes, 300)));
        bar = bar.shaped(BarKind::Hex { low_handle, high_handle }).ok()?;
    }
    Some(bar)
}

fn implement(bytes: &mut Bytes<'_>) -> Option<Implement> {
    let id = Name::new("a").ok()?;
    Some(match bytes.below(8) {
        0..=2 => Implement::Bar(bar(bytes)?),
        3 => Implement::Handle(Handle::new(id, mass(bytes), mass(bytes), None, bytes.below(4)).ok()?),
        4 => {
            let mut list = masses(bytes, 40);
            list.sort();
            list.dedup();
            Implement::Pieces(Pieces::new(id, list).ok()?)
        }
        5 | 6 => {
            let ratio = f64::from(bytes.byte()) / 64.0;
            let stack =
                MachineStack::new(id, mass(bytes), masses(bytes, 30), masses(bytes, 6), ratio).ok()?;
            if bytes.flag() { Implement::Machine(stack) } else { Implement::Assistance(stack) }
        }
        _ => Implement::Pin(Pin::new(id, mass(bytes), mass(bytes), None).ok()?),
    })
}

/// Reads equipment and a question from the bytes and asks it.
pub fn check(data: &[u8]) {
    let mut bytes = Bytes::new(data);
    let Some(implement) = implement(&mut bytes) else { return };
    let kinds = 1 + bytes.below(8);
    let discs = (0..kinds).filter_map(|_| disc(&mut bytes)).collect();
    let Ok(stock) = Stock::new(discs) else { return };
    let target = mass(&mut bytes).times(1 + u32::from(bytes.below(5))).unwrap_or(Mass::MAX);
    let on_bar: Vec<u16> = (0..bytes.below(5)).map(|_| u16::from(bytes.below(9))).collect();
    for policy in [Rounding::Exact, Rounding::Below, Rounding::Nearest, Rounding::Above] {
        one_load(&implement, &stock, target, policy, &on_bar);
    }
    range(&implement, &stock, target);
    if let Ok(next) = step_up(&implement, &stock, target) {
        assert!(next.total > target, "a step up goes up");
        adds_up(&implement, &next);
    }
    if let Implement::Bar(bar) = &implement {
        on_the_bar(&mut bytes, bar, &stock, target);
    }
    // All of it reads back from its own writing.
    let written = Value::write(&implement).expect("no NaN");
    assert_eq!(written.read::<Implement>().expect("what is written is read"), implement);
    assert_eq!(
        Value::write(&stock).expect("no NaN").read::<Stock>().expect("what is written is read"),
        stock
    );
}

fn one_load(implement: &Implement, stock: &Stock, target: Mass, policy: Rounding, on_bar: &[u16]) {
    let loaded = match load_on(implement, stock, target, policy) {
        Ok(loaded) => loaded,
        Err(error) => return spoken(&error),
    };
    match policy {
        Rounding::Exact => assert_eq!(loaded.total, target),
        Rounding::Below => assert!(loaded.total <= target, "{} is above {target}", loaded.total),
        Rounding::Above => assert!(loaded.total >= target, "{} is below {target}", loaded.total),
        _ => {}
    }
    adds_up(implement, &loaded);
    match load_from(implement, stock, target, policy, on_bar) {
        Ok(change) => {
            assert_eq!(change.loaded.total, loaded.total, "what is on the bar changes no total");
            assert!(change.off.len() <= on_bar.len());
        }
        Err(error) => spoken(&error),
    }
}

/// The parts make the total.
fn adds_up(implement: &Implement, loaded: &Loaded) {
    let side: i64 = match &loaded.setting {
        Setting::Discs(discs) => discs.iter().map(|disc| disc.mass.nanograms()).sum(),
        _ => return,
    };
    let whole = match implement {
        Implement::Bar(bar) => bar.mass().nanograms() + 2 * bar.collar().nanograms() + 2 * side,
        _ => return,
    };
    assert_eq!(loaded.total.nanograms(), whole, "the parts make the total");
}

/// The list of what can be made agrees with what is chosen from it.
fn range(implement: &Implement, stock: &Stock, target: Mass) {
    let low = target.minus(Mass::grams(10_000)).unwrap_or(target);
    let Ok(found) = reachable(implement, stock, low, target) else { return };
    assert!(
        found.totals.iter().zip(found.totals.iter().skip(1)).all(|(one, two)| one < two),
        "rising, each once"
    );
    let best = load_on(implement, stock, target, Rounding::Below).map(|loaded| loaded.total);
    if let Err(error) = &best
        && matches!(error.code(), Code::StockTooLarge | Code::Overflow)
    {
        // Its answer holds more: the next load above, and the sum of the face values.
        return;
    }
    if let Some(last) = found.totals.last() {
        assert_eq!(best.as_ref(), Ok(last), "the heaviest that is not above");
    } else if let Ok(best) = best {
        assert!(best < low, "{best} can be made and is not in the list");
    }
}

fn on_the_bar(bytes: &mut Bytes<'_>, bar: &Bar, stock: &Stock, work: Mass) {
    let tolerance = Mass::grams(i32::from(bytes.byte()) * 20);
    let reps = Reps::whole(3).expect("three");
    let steps: Vec<WarmUpStep> = (1..=u32::from(bytes.below(4)))
        .filter_map(|at| work.scaled_down(f64::from(at) / 5.0).ok())
        .map(|target| WarmUpStep::new(target, tolerance, reps, false))
        .collect();
    match warm_up(bar, stock, work, &steps) {
        Ok(answer) => assert!(Value::write(&answer).is_ok()),
        Err(error) => spoken(&error),
    }
    let lifters: Vec<SharedLifter> = (0..bytes.below(3))
        .map(|_| {
            SharedLifter::new(vec![SharedSet::new(mass(bytes), tolerance); 1 + usize::from(bytes.below(3))])
        })
        .collect();
    match shared_bar(bar, stock, &lifters) {
        Ok(answer) => assert!(Value::write(&answer).is_ok()),
        Err(error) => spoken(&error),
    }
}
