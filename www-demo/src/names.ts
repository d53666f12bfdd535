// Names as they are shown: one that is written from right to left does not turn the text around it.

/** Letters that are written from right to left (Hebrew, Arabic and their kin). */
const RIGHT_TO_LEFT = /[\u0590-\u08ff\ufb1d-\ufdff\ufe70-\ufefc]|[\ud802\ud803\ud83a\ud83b]/;

/** A name for a sentence, isolated where it needs to be. */
export function shownName(name: string): string {
  return RIGHT_TO_LEFT.test(name) ? `\u2068${name}\u2069` : name;
}

/** Whether two names read alike: however their letters are put together, and whether they are capitals. */
export function sameName(one: string, other: string): boolean {
  const plain = (name: string): string => name.normalize("NFC").toLocaleLowerCase();
  return plain(one) === plain(other);
}
