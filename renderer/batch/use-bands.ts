// How many jars stand side by side: as many columns as can be read, the rest in a band below, so that the page scrolls and
// nothing inside it does.
import type { CSSProperties, RefObject } from 'react';
import { useSize } from '../parts/use-size';
import type { Jar } from './record-text';

export type Bands = readonly (readonly Jar[])[];

/** Width (px) of the labels at the left, and the least of a column; where labels stand above their row there is more room. */
const LABELS = 104;
const LEAST = 150;
const NARROW = 860;
const LEAST_NARROW = 138;

/** Columns beside the labels for a width: one of them is for all jars. */
export const jarsAcross = (width: number): number =>
  Math.max(1, Math.floor(width < NARROW ? width / LEAST_NARROW : (width - LABELS) / LEAST) - 1);

/** The jars in bands. */
export function useBands(page: RefObject<HTMLElement | null>, jars: readonly Jar[]): Bands {
  const size = useSize(page);
  const across = size === null ? jars.length : jarsAcross(size.width);
  const bands = Math.ceil(jars.length / across);
  const each = Math.ceil(jars.length / bands);
  return Array.from({ length: bands }, (_, at) => jars.slice(at * each, (at + 1) * each));
}

/** For CSS: one column a jar, and one for all where there are several. */
export const columnsOf = (jars: readonly unknown[]): CSSProperties =>
  ({ '--columns': jars.length > 1 ? jars.length + 1 : 1 }) as CSSProperties;
