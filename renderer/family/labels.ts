// Which labels are written: none may overlap another, nor lie on another jar. Pure; widths are measured by the caller.

export interface Box {
  readonly left: number;
  readonly top: number;
  readonly right: number;
  readonly bottom: number;
}
export type Side = 'under' | 'right' | 'left';
export interface LabelPlace {
  readonly index: number;
  readonly label: string;
  /** Under the jar: middle of the label and its top edge, in screen pixels. */
  readonly middle: number;
  readonly top: number;
  /** Beside it, over the ribbons: where a label on its right begins, one on its left ends, and the top edge. */
  readonly besideLeft: number;
  readonly besideRight: number;
  readonly besideTop: number;
  /** Sides to try, the best first. */
  readonly sides: readonly Side[];
  /** Higher is written first. Equal ones: the later day, then the upper row. */
  readonly rank: number;
  readonly day: string;
  /** Column it stands in: a letter alone is understood only below or above its own batch's date. */
  readonly column: number;
}

const CELL = 96;
const GAP = 5;

/** Boxes by grid cell, so that a test of overlap looks at neighbours only. */
class Taken {
  readonly #cells = new Map<string, { box: Box; owner: number }[]>();

  static *#keys(box: Box): Generator<string> {
    for (let x = Math.floor(box.left / CELL); x <= Math.floor(box.right / CELL); x += 1)
      for (let y = Math.floor(box.top / CELL); y <= Math.floor(box.bottom / CELL); y += 1) yield `${x} ${y}`;
  }

  add(box: Box, owner: number): void {
    for (const key of Taken.#keys(box)) {
      const cell = this.#cells.get(key);
      if (cell) cell.push({ box, owner });
      else this.#cells.set(key, [{ box, owner }]);
    }
  }

  isFree(box: Box, owner: number): boolean {
    for (const key of Taken.#keys(box)) {
      for (const other of this.#cells.get(key) ?? []) {
        if (
          other.owner !== owner &&
          box.left < other.box.right + GAP &&
          other.box.left - GAP < box.right &&
          box.top < other.box.bottom &&
          other.box.top < box.bottom
        )
          return false;
      }
    }
    return true;
  }
}

/** A label's batch ("14 Mar plain") and its letter ("b"). */
export function splitLabel(label: string): { batch: string; letter: string } {
  const at = label.lastIndexOf(' ');
  return at < 0 ? { batch: '', letter: label } : { batch: label.slice(0, at), letter: label.slice(at + 1) };
}

export interface Written {
  readonly text: string;
  readonly side: Side;
}

/**
 * The text written at each place, by index. Full labels where they fit, under the jar or else beside it; a letter alone
 * where the batch's date is already written in the same column; else nothing.
 * @param jars boxes no label may lie on, each with the index of its owner (whose own label may touch it), or -1
 */
export function writtenLabels(
  places: readonly LabelPlace[],
  jars: readonly { readonly box: Box; readonly owner: number }[],
  height: number,
  measure: (text: string) => number,
): Map<number, Written> {
  const taken = new Taken();
  for (const { box, owner } of jars) taken.add(box, owner);
  const written = new Map<number, Written>();
  const dated = new Set<string>();
  const ordered = places.toSorted(
    (a, b) =>
      b.rank - a.rank || (a.day < b.day ? 1 : a.day > b.day ? -1 : a.column - b.column || a.top - b.top),
  );
  for (const place of ordered) {
    const { batch, letter } = splitLabel(place.label);
    const group = `${place.column} ${batch}`;
    const tries = dated.has(group) ? [place.label, letter] : [place.label];
    for (const [text, side] of tries.flatMap((one) => place.sides.map((where) => [one, where] as const))) {
      const width = measure(text);
      const left =
        side === 'under'
          ? place.middle - width / 2
          : side === 'right'
            ? place.besideLeft
            : place.besideRight - width;
      const top = side === 'under' ? place.top : place.besideTop;
      const box = { left, right: left + width, top, bottom: top + height };
      if (!taken.isFree(box, place.index)) continue;
      taken.add(box, place.index);
      written.set(place.index, { text, side });
      if (text === place.label) dated.add(group);
      break;
    }
    // The chosen and the focused jar's label is written in any case; what comes after makes room for it.
    if (place.rank > 0 && !written.has(place.index)) {
      const half = measure(place.label) / 2;
      taken.add(
        { left: place.middle - half, right: place.middle + half, top: place.top, bottom: place.top + height },
        place.index,
      );
      written.set(place.index, { text: place.label, side: 'under' });
    }
  }
  return written;
}
