import { it } from 'vitest';
import { newSession } from './ledger/ledger-files';
it('x', () => {
  const s = newSession();
  const N = Number(process.env.N ?? 100000);
  const day = (n: number) => new Date(Date.UTC(1990, 0, 1) + n * 86_400_000).toISOString().slice(0, 10);
  const lines: string[] = [];
  for (let i = 0; i < N; i++) { const b = Math.floor(i / 10); lines.push(`${day(b)},${'abcdefghij'[i % 10]},${b === 0 ? 'Blue Tin' : `${day(b - 1)} ${'abcdefghij'[i%10]}`},45 ml,900 ml,36 h,38 C,firm,4.3,a note ${i}`); }
  const bytes = new TextEncoder().encode(`date,jar,seed,amount,volume,hours,temperature,set,ph,note\n${lines.join('\n')}\n`);
  const cpu = () => { const u = process.cpuUsage(); return (u.user + u.system) / 1000; };
  const t0 = cpu(); let last = t0; const gaps: [number, number, string, string][] = []; let lastSay = 'start';
  let looks = 0;
  const step = (done: number, total: number | null, says: string) => { looks++; const now = cpu(); if (now - last > 150) gaps.push([now - t0, now - last, lastSay, `${says} ${done}/${total}`]); last = now; lastSay = `${says} ${done}/${total}`; };
  const r = s.answer('notes.bringIn', { file: { name: 'n.csv', bytes }, mapping: {}, answers: {} } as never, { step });
  const now = cpu(); gaps.push([now - t0, now - last, lastSay, 'end']);
  console.log(r.ok ? (r.value as {jars:number}).jars : JSON.stringify(r).slice(0,500), 'cpu', now - t0, 'looks', looks, 'mem', process.memoryUsage().rss/1e6, process.resourceUsage().maxRSS/1e3);
  for (const g of gaps) console.log(g[0].toFixed(0), g[1].toFixed(0), g[2], '->', g[3]);
  s.close();
}, 600000);
