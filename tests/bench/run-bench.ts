// npm run bench: every case, ours beside the others, medians in milliseconds and as ratios, in one run on one machine.
import { cases } from './bench-cases';
import { ratio, shownMs, table, timeInTurns } from './timing';

const wanted = process.argv.slice(2).filter((word) => !word.startsWith('-'));
const chosen = cases.filter(({ group, task }) => wanted.every((word) => `${group} ${task}`.includes(word)));
const footnotes = new Map<string, number>();
const note = (why: string): string => {
  if (!footnotes.has(why)) footnotes.set(why, footnotes.size + 1);
  return `not run [${footnotes.get(why)}]`;
};

for (const group of new Set(chosen.map((one) => one.group))) {
  const inGroup = chosen.filter((one) => one.group === group);
  const names = [...new Set(inGroup.flatMap(({ others }) => Object.keys(others)))];
  const rows = [['', 'ours (ms)', ...names]];
  for (const { task, ours, others } of inGroup) {
    const run = names.flatMap((name) => {
      const way = others[name];
      return way && 'prepare' in way ? [{ name, way }] : [];
    });
    const [own, ...timed] = timeInTurns([ours, ...run.map(({ way }) => way)]);
    if (!own) throw new Error('nothing was timed');
    const cells = names.map((name) => {
      const way = others[name];
      if (!way) return '–';
      if ('skip' in way) return note(way.skip);
      const other = timed[run.findIndex((one) => one.name === name)];
      return other ? `${shownMs(other.ms)} (${ratio(other.ms, own.ms)})` : '–';
    });
    rows.push([task, shownMs(own.ms), ...cells]);
  }
  const prints = inGroup.flatMap((one) => (one.prints ? [one.prints()] : []));
  console.log(`${[group, table(rows), ...prints].join('\n')}\n`);
}
for (const [why, number] of footnotes) console.log(`[${number}] ${why}`);
console.log(
  'Ours counts generations, shares, doublings, traced shares and lines over every seed. Bare d3-hierarchy takes one seed\n' +
    'for each jar and counts depth only; the SQL counts generations only.',
);
console.log(
  'Medians after one warm-up run; ratios are to ours. Another machine gives other milliseconds, similar ratios.',
);
