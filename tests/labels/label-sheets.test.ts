// Labels: what stands on them, that it fits, and that the code on them finds the jar.
import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import type { Input } from '../../core/contract';
import { labelPages } from '../../core/labels/label-page';
import { readShortCode, shortCode } from '../../core/lineage/short-codes';
import type { LabelLayout } from '../../core/shapes/label-calls';
import { must, newSession, refusalOf, smallFamily, unseen } from '../ledger/ledger-files';

/** Three columns of eight on A4. */
const SHEET: LabelLayout = {
  page: { width: 210, height: 297 },
  rows: 4,
  columns: 2,
  label: { width: 99, height: 67 },
  margin: { top: 12, left: 5 },
  gap: { across: 2, down: 0 },
  skip: 0,
};
const asked = (jars: readonly string[], kind: 'shelf' | 'giving', more: Partial<LabelLayout> = {}): Input<'label.sheet'> => ({
  jars: [...jars],
  kind,
  layout: { ...SHEET, ...more },
}); // prettier-ignore
/** The words of a page, without where they stand. */
const wordsOf = (page = ''): string =>
  [...page.matchAll(/<text[^>]*>([^<]*)<\/text>/g)].map(([, text]) => text).join(' ');

describe('a short code', () => {
  it('is found again however it is typed, and tells nothing of the time', () => {
    const id = '019ced65-d5c0-700c-bc62-a2e15e870490';
    const code = shortCode(id);
    expect(code).toMatch(/^[0-9A-HJKMNP-TV-Z]{4}-[0-9A-HJKMNP-TV-Z]{4}$/);
    // The same jar on another day: only the random bits count.
    expect(shortCode(`0189aaaa-0000-7fff-bc62-${id.slice(-12)}`)).toBe(code);
    fc.assert(
      fc.property(fc.uuid({ version: 7 }), fc.boolean(), (uid, lower) => {
        const printed = shortCode(uid);
        const typed = printed.replace('-', ' ').replaceAll('0', 'o').replaceAll('1', 'l');
        expect(readShortCode(lower ? typed.toLowerCase() : typed)).toBe(printed);
      }),
    );
    for (const text of ['', '14 Mar b', 'U234-5678', '1234-567', 'plain bread']) expect(readShortCode(text)).toBeNull(); // prettier-ignore
  });

  it('finds its jar among others', () => {
    const session = newSession();
    const { jars } = smallFamily(session);
    for (const jar of jars) {
      const found = must(session, 'jar.find', {
        text: shortCode(jar).toLowerCase(),
        limit: 5,
        notAfter: null,
      });
      expect(found.jars.map(({ id }) => id)).toEqual([jar]);
    }
    session.close();
  });
});

describe('a sheet of labels', () => {
  it('tells the shelf what, when, of which generation, from what and until when', () => {
    const session = newSession();
    const { jars } = smallFamily(session);
    const { pages, labels, html } = must(session, 'label.sheet', asked(jars.slice(0, 2), 'shelf'));
    expect(pages).toHaveLength(1);
    expect(labels.map(({ code }) => code)).toEqual(jars.slice(0, 2).map(shortCode));
    const words = wordsOf(pages[0]);
    expect(words).toMatch(/Made 1 Mar 2026 · generation 1/);
    expect(words).toContain('Eat by 15 Mar 2026');
    for (const { code } of labels) expect(words).toContain(code);
    expect(html).not.toMatch(/https?:(?!\/\/www\.w3\.org\/2000\/svg)|<script/);
    session.close();
  });

  it('tells whoever is given a jar what it is, what it contains and whom it is not for', () => {
    const session = newSession();
    const { jars } = smallFamily(session);
    const words = wordsOf(must(session, 'label.sheet', asked([jars[1]], 'giving')).pages[0]);
    for (const part of [
      'Home-made live cultured milk', 'Keep at or below 4 °C / 40 °F', 'Once opened: eat within 5 days', 'Contains MILK', 'not inspected', 'Not for babies', 'pregnant', 'ask a doctor first',
    ])
      expect(words).toContain(part); // prettier-ignore
    session.close();
  });

  it('is not made for giving a spoiled jar; on the shelf it says so and no day to eat by', () => {
    const session = newSession();
    const { jars } = smallFamily(session);
    must(session, 'outcome.save', { jar: jars[2], outcome: { ...unseen, signs: ['pink'] }, onShelf: null });
    expect(refusalOf(session, 'label.sheet', asked([jars[2]], 'giving')).code).toBe('spoiled not given');
    const words = wordsOf(must(session, 'label.sheet', asked([jars[2]], 'shelf')).pages[0]);
    expect(words).toContain('DISCARD');
    expect(words).not.toContain('Eat by');
    session.close();
  });

  it.each(['shelf', 'giving'] as const)('for %s: says what stands on a jar because of a spoiled one, and nothing once that is lifted', (kind) => {
    const session = newSession();
    const { jars } = smallFamily(session);
    must(session, 'outcome.save', { jar: jars[1], outcome: { ...unseen, signs: ['pink'] }, onShelf: null });
    const words = (jar: string): string => wordsOf(must(session, 'label.sheet', asked([jar], kind)).pages[0]);
    expect(words(jars[0])).toMatch(/LOOK AND SMELL FIRST .*Eat by/);
    expect(words(jars[2])).toContain('SET ASIDE: not to be eaten, not for seed');
    expect(words(jars[2])).not.toContain('Eat by');
    must(session, 'caution.clear', { jar: jars[2], of: jars[1], reason: 'a slip of the pen' });
    expect(words(jars[2])).toMatch(/^(?!.*(?:SET ASIDE|LOOK)).*Eat by/);
    session.close();
  }); // prettier-ignore

  it('says what does not fit: labels wider than their page, words larger than their label', () => {
    const session = newSession();
    const { jars } = smallFamily(session);
    const ask = (more: Partial<LabelLayout>) =>
      refusalOf(session, 'label.sheet', asked(jars, 'giving', more));
    expect(ask({ columns: 3 })).toMatchObject({ code: 'labels beyond page', params: { side: 'width' } });
    expect(ask({ rows: 5 }).params).toEqual({ side: 'height' });
    expect(ask({ label: { width: 25, height: 15 } }).code).toBe('label too small');
    session.close();
  });

  it('keeps every word inside its own label, on any paper', () => {
    const line = fc.record({
      text: fc.string({ minLength: 1, maxLength: 60, unit: 'grapheme-ascii' }),
      size: fc.constantFrom(0.85, 1, 1.5),
      bold: fc.boolean(),
    });
    fc.assert(
      fc.property(
        fc.array(line, { minLength: 1, maxLength: 6 }),
        fc.record({ width: fc.integer({ min: 30, max: 120 }), height: fc.integer({ min: 18, max: 90 }) }),
        fc.integer({ min: 0, max: 7 }),
        (lines, label, skip) => {
          const layout = { ...SHEET, page: { width: 260, height: 380 }, label, skip };
          const pages = labelPages([{ lines, code: '7K3M-9QXV' }], layout);
          if (pages === null) return;
          expect(pages).toHaveLength(1);
          const left = layout.margin.left + (skip % 2) * (label.width + 2);
          const top = layout.margin.top + Math.floor(skip / 2) * label.height;
          for (const [, x, y, size, text = ''] of (pages[0] ?? '').matchAll(/<text x="([\d.]+)" y="([\d.]+)" font-size="([\d.]+)"[^>]*>([^<]*)/g)) {
            expect(Number(y)).toBeLessThanOrEqual(top + label.height);
            expect(Number(y) - Number(size)).toBeGreaterThanOrEqual(top - 0.01);
            const letters = text.replaceAll(/&\w+;/g, 'x').length;
            // Half a size for a letter: the mean of plain sans-serif fonts, from memory.
            if (text !== '7K3M-9QXV') expect(Number(x) + letters * Number(size) * 0.5).toBeLessThanOrEqual(left + label.width);
          }
        },
      ),
    ); // prettier-ignore
  });
});
