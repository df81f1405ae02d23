// What a long call tells and is told while it works.

export interface Job {
  /**
   * Tells how far the work is, and ends it where the keeper has cancelled: call it now and then.
   * @param total null when it can't be told
   * @param says a few words: "reading rows"
   * @throws Refused 'cancelled'
   */
  readonly step: (done: number, total: number | null, says: string) => void;
  /**
   * Ends the work where the keeper has cancelled, and costs next to nothing: call it for each row.
   * @throws Refused 'cancelled'
   */
  readonly look: () => void;
}
