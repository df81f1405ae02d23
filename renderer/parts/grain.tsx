// The grain of what is stirred in, so that things are told apart in grey: dots, dashes, slants, flakes. Plain has none.

const GRAINS = [
  'M4 4h.1M12 10h.1',
  'M2 4h5M9 10h5',
  'M2 7l4-5M10 14l4-5',
  'M2 4q3-3 5 0q-2 3-5 0M9 11q3-3 5 0q-2 3-5 0',
] as const;

/** A pattern to fill with, for the `defs` of a drawing. */
export function Grain({ id, grain }: { readonly id: string; readonly grain: number }) {
  return (
    <pattern id={id} width="16" height="16" patternUnits="userSpaceOnUse">
      <path className="grain" d={GRAINS[grain % GRAINS.length]} />
    </pattern>
  );
}
