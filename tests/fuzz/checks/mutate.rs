//! Changes a JSON document somewhere inside, so that the fuzzer does not have to find out what JSON is.

use bismar::value::Value;

/// Numbers where readers and formulas tend to break.
const EDGES: &[f64] = &[
    0.0,
    -0.0,
    1.0,
    -1.0,
    0.5,
    2.0,
    3.0,
    5.0,
    10.0,
    30.0,
    31.0,
    37.0,
    100.0,
    255.0,
    256.0,
    365.0,
    2000.0,
    65_535.0,
    65_536.0,
    0.1,
    0.95,
    1e-9,
    1e-300,
    5e-324,
    1e9,
    1e15,
    2_147_483_648.0,
    4_294_967_295.0,
    4_294_967_296.0,
    9_007_199_254_740_992.0,
    9_007_199_254_740_994.0,
    1e19,
    1e300,
    -1e300,
    f64::MAX,
];
const TEXTS: &[&str] = &[
    "",
    "a",
    "2024-02-29",
    "2025-02-29",
    "-0001-01-01",
    "9999-12-31",
    "10000-01-01",
    "20 kg",
    "45 lb",
    "1e400 kg",
    "nobody",
    "ü\u{202e}",
];

/// The document with one or two things changed; nothing where it is no JSON, or has grown too long.
pub fn document(data: &[u8], longest: usize, seed: u32) -> Option<Vec<u8>> {
    // One time in eight the bytes themselves are changed instead.
    let mut chance = Chance(u64::from(seed) << 1 | 1);
    if chance.below(8) == 0 {
        return None;
    }
    let mut tree = Value::from_json(std::str::from_utf8(data).ok()?).ok()?;
    let whole = tree.clone();
    for _ in 0..=chance.below(3) {
        change(&mut tree, &whole, &mut chance);
    }
    let text = tree.to_json();
    (text.len() <= longest).then(|| text.into_bytes())
}

struct Chance(u64);

impl Chance {
    fn next(&mut self) -> u64 {
        self.0 = self.0.wrapping_mul(6_364_136_223_846_793_005).wrapping_add(1_442_695_040_888_963_407);
        self.0 >> 33
    }

    fn below(&mut self, end: usize) -> usize {
        self.next() as usize % end.max(1)
    }
}

fn change(value: &mut Value, whole: &Value, chance: &mut Chance) {
    // Deeper places get their share: a map or a list is mostly passed through.
    let stay = chance.below(12);
    match value {
        Value::Map(fields) if !fields.is_empty() => {
            let at = chance.below(fields.len());
            match stay {
                0 => _ = fields.remove(at),
                1 => fields[at].1 = any_part(whole, chance),
                2 => fields[at].0 = any_key(whole, chance).into(),
                3 => fields.push((any_key(whole, chance).into(), any_part(whole, chance))),
                _ => change(&mut fields[at].1, whole, chance),
            }
        }
        Value::List(items) if !items.is_empty() => {
            let (at, other) = (chance.below(items.len()), chance.below(items.len()));
            match stay {
                0 => _ = items.remove(at),
                1 => items.push(items[at].clone()),
                2 => items.truncate(at),
                3 => items.swap(at, other),
                4 => items.insert(at, any_part(whole, chance)),
                _ => change(&mut items[at], whole, chance),
            }
        }
        Value::Number(number) => *number = other_number(*number, chance),
        Value::Bool(flag) if stay > 1 => *flag = !*flag,
        Value::Text(text) if stay > 3 => other_text(text.to_mut(), chance),
        other => *other = any_part(whole, chance),
    }
}

fn other_number(number: f64, chance: &mut Chance) -> f64 {
    let other = match chance.below(6) {
        0 | 1 => EDGES[chance.below(EDGES.len())],
        2 => number + 1.0,
        3 => number - 1.0,
        4 => number * (chance.below(400) as f64 / 200.0),
        _ => number + (chance.below(9) as f64 - 4.0) * 0.5,
    };
    if other.is_finite() { other } else { number }
}

fn other_text(text: &mut String, chance: &mut Chance) {
    let day = text.len() == 10 && text.is_ascii();
    match chance.below(6) {
        0 => *text = TEXTS[chance.below(TEXTS.len())].into(),
        1 => text.push('x'),
        2 => *text = text.repeat(2),
        _ if day => *text = format!("{}{:02}", &text[..8], 1 + chance.below(31)),
        _ => _ = text.pop(),
    }
}

/// Some part of the document.
fn any_part(whole: &Value, chance: &mut Chance) -> Value {
    let mut at = whole;
    for _ in 0..8 {
        let next = match at {
            Value::Map(fields) if !fields.is_empty() => &fields[chance.below(fields.len())].1,
            Value::List(items) if !items.is_empty() => &items[chance.below(items.len())],
            _ => break,
        };
        if chance.below(6) == 0 {
            break;
        }
        at = next;
    }
    at.clone()
}

/// The name of some field of the document.
fn any_key(whole: &Value, chance: &mut Chance) -> String {
    for _ in 0..4 {
        if let Value::Map(fields) = any_part(whole, chance)
            && !fields.is_empty()
        {
            return fields[chance.below(fields.len())].0.to_string();
        }
    }
    String::from("surplus")
}
