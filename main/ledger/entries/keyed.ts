// Entries: what a call takes and gives of one thing, whose facts lie in several tables. Inside, one points at another by
// key; ids are for the outside.

/** An entry of the calls without its id, and with keys in place of the ids of `R`. */
export type Keyed<T, R extends keyof T = never> = {
  [F in Exclude<keyof T, 'id'>]: F extends R ? (null extends T[F] ? number | null : number) : T[F];
};

/** An entry with the key and the id of the fact at its root. */
export type Rooted<T> = T & { readonly key: number; readonly uid: string };

/** Some of its fields; what is left out or undefined stays as it is. */
export type Told<T> = { [F in keyof T]?: T[F] | undefined };

/** The same fields, with those that are told in place of what was. */
export const over = <T extends object>(now: T, told: Told<T>): T => ({
  ...now,
  ...(Object.fromEntries(Object.entries(told).filter(([, value]) => value !== undefined)) as Partial<T>),
});
