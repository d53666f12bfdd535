//! One stable merge sort for every type: the standard one is compiled anew for each type and order, four kilobytes a
//! time, and the lists of this crate are short. The order of places is found without knowing the type; then the
//! items are swapped into it.

use alloc::vec::Vec;
use core::cmp::Ordering;

/// Stable, by the order given.
pub(crate) fn sort_by<T>(items: &mut [T], compare: impl Fn(&T, &T) -> Ordering) {
    let swaps = swaps(items.len(), &|a, b| match (items.get(a), items.get(b)) {
        (Some(a), Some(b)) => compare(a, b),
        _ => Ordering::Equal,
    });
    for (a, b) in swaps {
        // Two places of the list, never the same: the swaps are made from a permutation.
        if let Ok([a, b]) = items.get_disjoint_mut([a, b]) {
            core::mem::swap(a, b);
        }
    }
}

/// Stable, by a key.
pub(crate) fn sort_by_key<T, K: Ord>(items: &mut [T], key: impl Fn(&T) -> K) {
    sort_by(items, |a, b| key(a).cmp(&key(b)));
}

/// Stable, by the type's own order.
pub(crate) fn sort<T: Ord>(items: &mut [T]) {
    sort_by(items, T::cmp);
}

/// Numbers from the lowest up; long lists are common here, so that this one is the standard sort.
#[inline(never)]
pub(crate) fn sort_numbers(numbers: &mut [f64]) {
    numbers.sort_unstable_by(f64::total_cmp);
}

type Compare<'a> = &'a dyn Fn(usize, usize) -> Ordering;

/// The swaps that bring items into order, one after the other.
#[inline(never)]
fn swaps(length: usize, compare: Compare<'_>) -> Vec<(usize, usize)> {
    if (1..length).all(|at| compare(at - 1, at).is_le()) {
        return Vec::new();
    }
    exchanges(&ordered(length, compare))
}

/// Places in order: runs of one, two, four... merged from the bottom up.
fn ordered(length: usize, compare: Compare<'_>) -> Vec<usize> {
    let mut places: Vec<usize> = (0..length).collect();
    let mut run = 1;
    while run < length {
        places = places
            .chunks((2 * run).max(1))
            .flat_map(|pair| merged(pair.split_at_checked(run).unwrap_or((pair, &[])), compare))
            .collect();
        run *= 2;
    }
    places
}

fn merged((mut left, mut right): (&[usize], &[usize]), compare: Compare<'_>) -> Vec<usize> {
    let mut out = Vec::with_capacity(left.len() + right.len());
    while let (Some((a, after_a)), Some((b, after_b))) = (left.split_first(), right.split_first()) {
        if compare(*a, *b).is_le() {
            out.push(*a);
            left = after_a;
        } else {
            out.push(*b);
            right = after_b;
        }
    }
    out.extend(left);
    out.extend(right);
    out
}

/// Swaps after which the place `at` holds what was at `order[at]`.
fn exchanges(order: &[usize]) -> Vec<(usize, usize)> {
    let mut swaps = Vec::new();
    for (at, origin) in order.iter().enumerate() {
        // What was at `origin` may have been swapped away when that place was filled.
        let mut from = *origin;
        while from < at {
            from = order.get(from).copied().unwrap_or(at);
        }
        if from != at {
            swaps.push((at, from));
        }
    }
    swaps
}

#[cfg(test)]
mod tests {
    use super::*;
    use proptest::prelude::*;

    proptest! {
        #[test]
        fn it_orders_as_the_standard_sort_does(mut items in prop::collection::vec((0_u8..9, any::<u16>()), 0..60)) {
            let mut expected = items.clone();
            expected.sort_by_key(|item| item.0);
            sort_by_key(&mut items, |item| item.0);
            prop_assert_eq!(&items, &expected);
            expected.sort();
            sort(&mut items);
            prop_assert_eq!(items, expected);
        }
    }
}
