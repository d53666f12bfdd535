// What each question is asked and what it has to say, for every engine: in Chromium by a driven hand, in the others
// by a script in the page.
export const MOST_TAPS = 3;
/** Words that no answer may hold. */
export const IMPROPER = /NaN|undefined|Infinity|\[object|Something went wrong/;

/** Number, the tap after the question is open, and the answer with the invented lifter, a new one, and nobody. */
export const QUESTIONS = [
  [1, { pad: "Load on the bar", number: "62.5" }, /^62\.5 kg: each end 20 kg \+ 1\.25 kg$/, /^62\.5 kg: each end 20 kg \+ 1\.25 kg$/, /^62\.5 kg: each end 20 kg \+ 1\.25 kg$/],
  [2, { tap: "[data-disc='0']" }, /^60 kg = 132\.3 lb$/, /^60 kg = 132\.3 lb$/, /^60 kg = 132\.3 lb$/],
  [3, { pad: "Wanted, not over", number: "63.4" }, /^63 kg$/, /^62\.5 kg$/, /^62\.5 kg$/],
  [4, { pad: "Load", number: "25" }, /^Only with blocks of \d+(\.\d)? mm$/, /^Only with blocks of \d+(\.\d)? mm$/, /^Only with blocks of \d+(\.\d)? mm$/],
  [5, { tap: "[data-value='200']" }, /^100 mm$/, /^100 mm$/, /^100 mm$/],
  [6, { pad: "Work load", number: "80" }, /^20 kg → (.*→ )?80 kg$/, /^20 kg → (.*→ )?80 kg$/, /^20 kg → (.*→ )?80 kg$/],
  [7, { pad: "Second lifter", number: "80" }, /^\d+ disc moves on each end$/, /^\d+ disc moves on each end$/, /^\d+ disc moves on each end$/],
  [8, { pad: "Load", number: "60" }, /^6\d to 8\d kg$/, /^6\d to 8\d kg$/, /^6\d to 8\d kg$/],
  [9, { tap: "[aria-label='It felt like so many left'] [data-value='0']" }, /kg$/, /^End this lift for today$/, /kg$/],
  [10, { tap: "[aria-label^='A critical point'] [data-value='yes']" }, /^Below the usual$/, /^Below the usual$/, /^Needs a lifter$/],
  [11, null, /^Yes, once: supported row$/, /^No step up today$/, /^Needs a lifter$/],
  [12, null, /^box squat: 2 more passing sessions in a row/, /: .*passing session/, /^Needs a lifter$/],
  [13, { tap: "[data-act='no-sign']" }, /^Where, and how much\?$/, /^Where, and how much\?$/, /^Where, and how much\?$/],
  [14, { tap: "[aria-label='Days without lifting'] [data-value='21']" }, /^box squat: 42\.5 kg$/, /: \d+(\.\d+)? kg$/, /^Needs a lifter$/],
  [15, null, /^Usual for this lifter$/, /^Needs a lifter$/, /^Needs a lifter$/],
  [16, { pad: "Load now", number: "60" }, /^Start at 60 kg$/, /^Start at 59 kg$/, /^Start at 60 kg$/],
  [17, { pad: "Load now", number: "25" }, /^A small step: 0\.1 %$/, /^A usual step: 2 %$/, /^A usual step: 4 %$/],
  [18, { tap: "[aria-label='Weeks'] [data-value='8']" }, /^Within noise$/, /^Too few sessions to say$/, /^Needs a lifter$/],
  [19, null, /^Less than usual$/, /^Nothing to compare/, /^Needs a lifter$/],
  [20, { tap: "[aria-label='Gate'] [data-value='set'], [aria-label='Good of 10'] [data-value='9']" }, /^About \d+ sessions at 9 good of 10$/, /^About \d+ sessions at 9 good of 10$/, /^About \d+ sessions at 9 good of 10$/],
  [21, { pad: "Strength now", number: "100" }, /^\d\d to \d\d kg$/, /^\d\d to \d\d kg$/, /^\d\d to \d\d kg$/],
  [22, { pad: "Number", number: "155" }, /^155 lb = 70\.31 kg$/, /^155 lb = 70\.31 kg$/, /^155 lb = 70\.31 kg$/],
  [23, { pad: "To", number: "50" }, /^33 loads$/, /^\d+ loads$/, /^\d+ loads$/],
  [24, null, /^box squat 47\.54 kg, strict press 23\.04 kg, supported row 39 kg, deadlift 48\.54 kg$/, /kg/, /^Needs a lifter$/],
  [25, null, /^47\.54 kg · 3 × 5 · leave 3$/, /^\d+(\.\d+)? kg · \d × 5 · leave 4$/, /^No lifter here yet$/],
  [26, { tap: "[aria-label='Did it hurt?'] [data-value='no']" }, /^47\.04 kg for the next set$/, /^End this lift for today$/, /(for the next set|easier rung)$/],
  [27, null, /^front squat 33\.5 kg, strict press 23\.54 kg$/, /^No session yet$/, /^Needs a lifter$/],
  [28, { tap: "[aria-label='Minutes'] [data-value='30']" }, /^Keep: box squat \d × 5/, /^Keep: /, /^Needs a lifter$/],
  [29, { tap: "[aria-label='Which lift?'] [data-value='straight-bar pull']" }, /^Start at 35 kg$/, /^Start at 18 kg$/, /^Start at 18 kg$/],
  [30, null, /^No missed session within seven days$/, /^No missed session within seven days$/, /^Needs a lifter$/],
  [31, null, /weeks? (ago|without one)$/, /^Nothing to count: no session so far$/, /^Needs a lifter$/],
  [32, null, /^No block to look back on$/, /^No block to look back on$/, /^Needs a lifter$/],
  [33, null, /^Nobody else has marked the same sets$/, /^Nobody else has marked the same sets$/, /^Needs a lifter$/],
];

/** The name of the lifter that is begun from nothing. */
export const NEWCOMER = "Rowan, invented";
