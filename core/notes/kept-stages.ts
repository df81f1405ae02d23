// What a reading keeps for the next one of the same file: a stage is worked out anew only where what it follows from is not
// what it was. An answer about one row leaves the table, the columns, the habits of the file and all other rows as they are.

interface Kept {
  readonly of: readonly unknown[];
  readonly value: unknown;
}

/** Stages of a reading by name, each with what it followed from. */
export class KeptStages {
  readonly #kept = new Map<string, Kept>();
  /** Of the reading that is under way: called for each row, may throw to stop. */
  look: (() => void) | undefined;

  /**
   * What a stage gave before from the same things (texts by their letters, all else by being the very same), else what it
   * gives now. What is kept must not be changed by whoever takes it.
   */
  take<Value>(stage: string, of: readonly unknown[], make: () => Value): Value {
    const there = this.#kept.get(stage);
    if (there && there.of.length === of.length && of.every((one, at) => one === there.of[at]))
      return there.value as Value;
    const value = make();
    this.#kept.set(stage, { of, value });
    return value;
  }

  /** Another file: nothing of the one before is of use. */
  forget(): void {
    this.#kept.clear();
  }
}
