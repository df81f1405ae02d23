// One thing the keyboard can do: a row of the table of actions.

export interface Action {
  readonly id: string;
  readonly label: string;
  /** "ctrl+z", "shift+?", "g f" is not used: one chord each. Several ways are several entries. */
  readonly keys: readonly string[];
  /** Where it works: everywhere, or on one screen (its id). */
  readonly where: 'everywhere' | (string & {});
  /** Absent where the screen itself handles the key (walking in the drawing); then it is listed for the help only. */
  readonly run?: () => void;
}
