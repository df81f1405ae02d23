// Labels as calls ask for them: which jars, for one's own shelf or for giving, and how a sheet or a roll is cut, in mm.
import { z } from 'zod';
import { Uid } from '../ledger/basics';

const millimetres = (least: number) => z.number().min(least).max(1000);

/** How paper is cut. A roll is a page of one row and one column. Nobody's codes for it are needed: a ruler tells. */
export const LabelLayout = z.strictObject({
  page: z.strictObject({ width: millimetres(10), height: millimetres(10) }),
  rows: z.int().min(1).max(50),
  columns: z.int().min(1).max(20),
  label: z.strictObject({ width: millimetres(10), height: millimetres(10) }),
  /** From the page's edge to the first label; between labels. */
  margin: z.strictObject({ top: millimetres(0), left: millimetres(0) }),
  gap: z.strictObject({ across: millimetres(0), down: millimetres(0) }),
  /** Places of the first sheet that are used already. */
  skip: z.int().min(0).max(999).default(0),
});
export type LabelLayout = z.infer<typeof LabelLayout>;

/** Whom a label is for: one's own shelf, or whoever is given the jar. */
export const LABEL_KINDS = ['shelf', 'giving'] as const;

export const AskLabels = z.strictObject({
  jars: z.array(Uid).min(1).max(200),
  kind: z.enum(LABEL_KINDS),
  layout: LabelLayout,
});

export const LabelSheets = z.strictObject({
  /** Each page as a picture by itself (SVG), and all of them as one page to print (HTML, nothing from elsewhere). */
  pages: z.array(z.string()),
  html: z.string(),
  labels: z.array(z.strictObject({ jar: Uid, label: z.string(), code: z.string() })),
});
