// Pages that leave the program: what stands in them and what never does, that nothing in them comes from elsewhere, that all of a
// drawing is on its sheets; and the square code read by another library.
import fc from 'fast-check';
import jsQR from 'jsqr';
import { describe, expect, it } from 'vitest';
import type { Input } from '../../core/contract';
import { codeInWords, shortCode } from '../../core/lineage/short-codes';
import { mayDecode } from '../../core/pictures/claimed-size';
import { strips, type FamilyPicture } from '../../core/pictures/family-picture';
import type { Session } from '../../main/session';
import { everyKind, picture } from '../archive/every-kind';
import {
  ask,
  demoSession,
  fromJar,
  batchOf,
  must,
  newSession,
  plainJar,
  refusalOf,
  smallFamily,
  unseen,
} from '../ledger/ledger-files';

type Report = Input<'report.get'>['report'];
const SCRIPT = '<script>alert(1)</script><img src=https://example.com/x onerror=alert(1)>';

const spoil = (session: Session, jar: string): unknown =>
  must(session, 'outcome.save', { jar, outcome: { ...unseen, signs: ['pink'] }, onShelf: false });

/** All reports of a ledger, as far as they can be had. */
function reportsOf(session: Session): { of: string; html: string; svg: string | null }[] {
  const { jars, lines } = must(session, 'family.get', {});
  const asked: Report[] = [
    ...lines.map(({ id: line }): Report => ({ of: 'line', line, paper: 'A4' })),
    ...lines.map(({ id: line }): Report => ({ of: 'family', part: { part: 'line', line }, paper: 'Letter' })),
    ...jars.slice(-2).map(({ id: jar }): Report => ({ of: 'jar', jar, paper: 'Letter' })),
    ...jars.slice(0, 2).map(({ id: jar }): Report => ({ of: 'family', part: { part: 'around', jar }, paper: null })),
    { of: 'told', paper: 'A4' },
    { of: 'family', part: { part: 'all' }, paper: 'A4' },
    { of: 'page', line: null },
    ...lines.map(({ id: line }): Report => ({ of: 'page', line })),
  ];
  return asked.flatMap((report) => {
    const result = ask(session, 'report.get', { report });
    return result.ok ? [{ of: report.of, html: result.value.html, svg: result.value.svg }] : [];
  });
} // prettier-ignore

/** What a document would fetch, run or be led to. */
const REACHES =
  /<script|<iframe|<object|<link|\bon\w+=|(?:src|href|url\(|@import)\s*=?\s*["'(]?\s*(?:https?:|\/\/|file:|javascript:|app:)/i;
/** Everything that a document or a picture points at. */
const pointsAt = (html: string): string[] =>
  [...html.matchAll(/(?:src|href)="([^"]*)"/g)].map(([, to = '']) => to);

describe('any report', () => {
  it('takes nothing from elsewhere, and whatever was typed stands in it as text', () => {
    const session = newSession();
    const { jars } = smallFamily(session);
    const { lines } = must(session, 'line.list', { jar: null });
    must(session, 'line.name', { line: lines[0]?.id ?? '', name: SCRIPT.slice(0, 80) });
    must(session, 'batch.record', batchOf('2026-03-12', [
      plainJar('a', { milk: SCRIPT, seedings: [fromJar(jars[1])], additions: [{ name: SCRIPT, planned: null, actual: null, package: null }] }),
    ], { word: SCRIPT.slice(0, 60) })); // prettier-ignore
    const all = reportsOf(session);
    expect(new Set(all.map(({ of }) => of))).toEqual(new Set(['line', 'jar', 'family', 'told', 'page']));
    for (const { html, svg } of all) {
      for (const text of [html, svg ?? '']) {
        // What a keeper typed stands between tags, and within one only where it is quoted.
        for (const [tag] of text.matchAll(/<[^>]*>/g)) expect(tag.match(REACHES)).toBeNull();
        for (const to of pointsAt(text)) expect(to).toMatch(/^(#|data:image\/jpeg;base64,)/);
      }
      expect(html).toContain("default-src 'none'");
    }
    expect(all.some(({ html }) => html.includes('&lt;script&gt;'))).toBe(true);
    session.close();
  });

  it('holds no price, shop, taster, and no private remark that was not asked for', () => {
    const session = everyKind();
    const { jars } = must(session, 'family.get', {});
    const { db, rows } = session.ledger;
    const marked = db.prepare('SELECT key, text FROM remark WHERE private = 1').all() as { key: number; text: string }[];
    expect(marked.length).toBeGreaterThan(1);
    const [first] = jars;
    must(session, 'facts.record', { facts: [{ kind: 'remark', jar: first?.id ?? '', text: 'kept to myself', readAs: 'look' }] });
    must(session, 'facts.record', { facts: [{ kind: 'remark', jar: first?.id ?? '', text: 'said to all', readAs: 'fine', private: false }] });
    const secret = ['kept to myself', 'taster A', '19.99', 'from the corner', 'stood in another box', ...marked.map(({ text }) => text.split(/\s/)[0] ?? '').filter((word) => word.length > 5)];
    for (const { of, html, svg } of reportsOf(session))
      for (const words of secret) expect([of, words, html.includes(words) || svg?.includes(words) === true]).toEqual([of, words, false]);
    const open = must(session, 'report.get', { report: { of: 'page', line: null, privateToo: true } }).html;
    expect(open).toContain('kept to myself');
    expect(must(session, 'report.get', { report: { of: 'page', line: null } }).html).toContain('said to all');
    expect(rows.count('SELECT count(*) FROM remark')).toBeGreaterThan(0);
    session.close();
  }); // prettier-ignore
});

describe('the report of a line', () => {
  it('tells verdict, standing, strains as declared and cautions; nothing of it speaks for safety', () => {
    const session = demoSession();
    const { lines } = must(session, 'line.list', { jar: null });
    for (const { id: line, name } of lines) {
      const { html } = must(session, 'report.get', { report: { of: 'line', line, paper: 'A4' } });
      const words = html.replaceAll(/<[^>]+>/g, ' ').replaceAll('&amp;', '&');
      const { sentence, reason } = must(session, 'advice.line', { line });
      if (reason.code !== 'look') expect(words).toContain(sentence);
      expect(words).toContain(must(session, 'judgement.line', { line }).sentence);
      expect(words).toContain(name);
      expect(words).toContain('As declared');
      expect(words).toContain('It says nothing about safety');
      expect(words).not.toMatch(/\bsafe to\b|\bis safe\b/i);
      expect(html).toContain('@page{size:210mm 297mm');
    }
    expect(must(session, 'report.get', { report: { of: 'line', line: lines[1]?.id ?? '', paper: 'Letter' } }).html).toContain('spoiled: discard');
    session.close();
  }, 60_000); // prettier-ignore
});

describe('a page with photographs', () => {
  it('takes small ones that hold nothing but the picture, and says how many are left out', () => {
    const session = everyKind();
    const asked = must(session, 'report.get', { report: { of: 'page', line: null } });
    const [{ id } = { id: '' }] = asked.photographs;
    expect(asked.html).toContain('1 photograph more is beside the ledger');
    const page = (bytes: Uint8Array<ArrayBuffer>): Report => ({ of: 'page', line: null, photographs: [{ id, bytes }] });
    const { html } = must(session, 'report.get', { report: page(picture(900)) });
    expect(html).toContain('src="data:image/jpeg;base64,');
    expect(html).not.toContain('photograph more');
    expect(refusalOf(session, 'report.get', { report: page(picture(300_000)) }).code).toBe('photograph too large');
    expect(refusalOf(session, 'report.get', { report: page(new Uint8Array(500)) }).code).toBe('not a photograph');
    session.close();
  }); // prettier-ignore
});

describe('the sheet of a jar that is given', () => {
  it('has a square code with its essentials, which another library reads', () => {
    const session = newSession();
    const { jars } = smallFamily(session);
    const jar = jars[1];
    const { html } = must(session, 'report.get', { report: { of: 'jar', jar, paper: 'A4' } });
    const [, side = '', path = ''] =
      /viewBox="0 0 (\d+) \d+"[^>]*><rect[^>]*\/><path d="([^"]*)"/.exec(html) ?? [];
    const [size, dot] = [Number(side), 4];
    const pixels = new Uint8ClampedArray((size * dot) ** 2 * 4).fill(255);
    for (const [, x, y] of path.matchAll(/M(\d+) (\d+)h1v1h-1z/g))
      for (let row = 0; row < dot; row += 1)
        for (let column = 0; column < dot; column += 1) {
          const from = ((Number(y) * dot + row) * size * dot + Number(x) * dot + column) * 4;
          pixels.fill(0, from, from + 3);
        }
    // jsqr 1.4.0 reads it as any telephone would (ISO/IEC 18004).
    const read = jsQR(pixels, size * dot, size * dot);
    expect(read?.data).toContain('Contains milk');
    expect(read?.data).toContain('4 °C');
    expect(codeInWords(read?.data ?? '')).toBe(shortCode(jar));
    session.close();
  });

  it('is not made for a jar that is not given', () => {
    const session = newSession();
    const { jars } = smallFamily(session);
    spoil(session, jars[2]);
    expect(refusalOf(session, 'report.get', { report: { of: 'jar', jar: jars[2], paper: 'A4' } }).code).toBe('spoiled not given');
    session.close();
  }); // prettier-ignore
});

it('whom to tell: everybody who was given a jar that something stands on since', () => {
  const session = newSession();
  const { jars } = smallFamily(session);
  const told = (): string => must(session, 'report.get', { report: { of: 'told', paper: 'A4' } }).html;
  const { ledger } = session;
  ledger.acts.run('handOver.write', 'x', 'a neighbour', (act) =>
    act.insert('movement', { jar: ledger.rows.keyOf('jar', jars[3]), kind: 'given', day: '2026-03-10', handOver: '019ced65-d5c0-7000-a1d5-d8f7c8caa890' }),
  );
  expect(told()).toContain('Nothing stands against');
  spoil(session, jars[2]);
  expect(told()).toContain('a neighbour');
  expect(told()).toContain('Don’t eat it');
  session.close();
}); // prettier-ignore

describe('a drawing on sheets', () => {
  it('has every jar whole on some sheet, and none wider or higher than its room', () => {
    fc.assert(
      fc.property(
        fc.integer({ min: 1, max: 40 }), fc.integer({ min: 1, max: 30 }), fc.integer({ min: 60, max: 400 }), fc.integer({ min: 40, max: 300 }),
        (columns, rows, width, height) => {
          const marks = Array.from({ length: columns * rows }, (_, i) => ({ x: 38 + (i % columns) * 112, y: 58 + Math.floor(i / columns) * 100 }));
          const whole: FamilyPicture = { body: '', width: 54 + columns * 112, height: 74 + rows * 100, marks };
          const windows = strips(whole, { width, height }).map(({ svg, width: wide, height: high }) => {
            expect(wide).toBeLessThanOrEqual(width + 0.5);
            expect(high).toBeLessThanOrEqual(height + 8);
            return (/class="strip"[^>]*viewBox="([^"]*)"/.exec(svg)?.[1] ?? '').split(' ').map(Number);
          });
          for (const { x, y } of marks)
            expect(windows.some(([left = 0, top = 0, wide = 0, high = 0]) => x >= left && x + 62 <= left + wide && y >= top && y + 66 <= top + high)).toBe(true);
        },
      ),
      { numRuns: 60 },
    );
  });
}); // prettier-ignore

describe('what a picture claims', () => {
  const png = (width: number, height: number): Uint8Array => {
    const bytes = new Uint8Array(40);
    bytes.set([0x89, 0x50, 0x4e, 0x47, 13, 10, 26, 10, 0, 0, 0, 13, 0x49, 0x48, 0x44, 0x52]);
    new DataView(bytes.buffer).setUint32(16, width);
    new DataView(bytes.buffer).setUint32(20, height);
    return bytes;
  };
  it('is asked before it is decoded', () => {
    expect(mayDecode(png(4000, 3000))).toBe('yes');
    expect(mayDecode(png(60_000, 60_000))).toBe('too large');
    expect(mayDecode(png(0, 5))).toBe('none');
    expect(mayDecode(picture(500))).toBe('yes');
    const large = picture(500);
    large.set([0xff, 0xff, 0xff, 0xff], 7);
    expect(mayDecode(large)).toBe('too large');
    const webp = new Uint8Array(40);
    webp.set([...'RIFF\0\0\0\0WEBPVP8X'].map((letter) => letter.charCodeAt(0)));
    webp.set([0xff, 0xff, 0xff, 0xff, 0xff, 0xff], 24);
    expect(mayDecode(webp)).toBe('too large');
    fc.assert(fc.property(fc.uint8Array({ maxLength: 200 }), (bytes) => ['yes', 'too large', 'none'].includes(mayDecode(bytes))));
  }); // prettier-ignore
});

it('what is no such code finds nothing', () => {
  for (const words of ['', 'https://example.com', 'Code x', 'Code 7K3M-9QXV and more', '\0'.repeat(5000)]) expect(codeInWords(words)).toBeNull(); // prettier-ignore
  expect(codeInWords('7k3m 9qxv')).toBe('7K3M-9QXV');
  fc.assert(fc.property(fc.string({ maxLength: 60 }), (words) => codeInWords(words) === null || /^[0-9A-Z]{4}-[0-9A-Z]{4}$/.test(codeInWords(words) ?? ''))); // prettier-ignore
});
