// The civil day of a fact that has a day, a moment, or neither.
export const dayOf = ({
  day,
  at,
}: {
  readonly day: string | null;
  readonly at: string | null;
}): string | null => day ?? at?.slice(0, 10) ?? null;
