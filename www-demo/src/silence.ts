// Storage that does not answer is told from storage that is busy: nobody waits for it without a word.

/** For so long storage is waited for, in milliseconds. */
export const SILENT = 5_000;
/** Whatever came in while the page itself was busy comes before the word that nothing came. */
const TURN = 250;

const after = (milliseconds: number): Promise<void> => new Promise((done) => setTimeout(done, milliseconds));

/** Storage was asked something, and nothing came back for long. */
export class Silent extends Error {
  constructor() {
    super("The storage of this device does not answer");
  }
}

/** What storage answers, refused as `Silent` where it answers nothing for long; it may answer after that. */
export async function answers<T>(asked: Promise<T>): Promise<T> {
  let heard = false;
  const noted = asked.finally(() => (heard = true));
  // Told by whoever waits, or by nobody any more.
  noted.catch(() => undefined);
  const silence = async (): Promise<never> => {
    await after(SILENT);
    if (!heard) await after(TURN);
    throw new Silent();
  };
  const quiet = silence();
  quiet.catch(() => undefined);
  return Promise.race([noted, quiet]);
}
