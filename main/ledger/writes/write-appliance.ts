// Appliances, the runs that prove them, and checks of the tools that a keeper trusts.
import type { Parsed, Reply } from '../../../core/contract';
import { readExport, type ExportReading } from '../../../core/readings/read-export';
import { checkPasses } from '../../../core/growth/tool-checks';
import { checkSays } from '../../../core/says/appliance-says';
import { momentText } from '../../../core/ledger/stored-moments';
import { fromFahrenheit } from '../../../core/quantities/quantities';
import { hostOf } from '../host-of-facts';
import type { Ledger } from '../ledger';
import { blockOf } from '../entries/series-of-hold';
import { proofOfHold } from '../reads/read-appliances';
import { Refused } from '../../refusal';
import { aroundOf, keptReadings, textOfExport } from './write-export';
import { mustSay, tidy } from '../tidy-typed';

/** @throws Refused 'not found', 'nothing changed' */
export function saveAppliance(ledger: Ledger, input: Parsed<'appliance.save'>): Reply<'appliance.save'> {
  const host = hostOf(ledger);
  const { id, type, ...given } = tidy(input.appliance);
  mustSay(given, 'name');
  const key = id === null ? null : host.facts.keyOf('appliance', id);
  const done = host.mustRun('appliance.save', given.name, tidy(input.why), (act) => {
    if (key === null) return act.insert('appliance', { ...given, kind: type }).uid;
    act.update('appliance', key, { ...given, kind: type });
    return id ?? '';
  }, input.draft); // prettier-ignore
  return { act: done.act.uid, id: done.value };
}

/**
 * Keeps a run with its readings, in one act, and says what it proves.
 * @throws Refused 'not found', 'export without readings', 'export without days', and what a file is refused for
 */
export function proveAppliance(ledger: Ledger, input: Parsed<'appliance.prove'>): Reply<'appliance.prove'> {
  const host = hostOf(ledger);
  const { facts } = host;
  const appliance = facts.keyOf('appliance', input.appliance);
  const around = aroundOf(ledger, { began: input.began, plannedFrom: null, ended: input.ended, hours: null });
  const says = new Set<string>();
  const runs = input.runs.map(({ file, where, spot }) => {
    const { name, text } = textOfExport(file);
    const read = readExport(text, where, around);
    if (read.trouble === 'no day') throw new Refused('export without days', { file: name });
    if (read.readings.length === 0) throw new Refused('export without readings', { file: name });
    for (const one of read.says) says.add(one);
    return { where, spot, read };
  });
  const all = runs.flatMap(({ read }) => read.readings).toSorted((a, b) => a.at.seconds - b.at.seconds);
  const moment = (one: ExportReading | undefined): string | null =>
    one ? momentText(one.at.seconds, one.at.offset) : null;
  const done = host.mustRun('appliance.prove', facts.get('appliance', appliance).name, tidy(input.why), (act) => {
    const hold = act.insert('hold', {
      appliance, batch: null, purpose: 'proof', plannedFrom: null, plannedTo: null, planned: null, hours: null, basis: 'recorded',
      began: input.began ?? moment(all[0]), ended: input.ended ?? moment(all.at(-1)), filled: input.filled,
    });
    for (const { where, spot, read } of runs) {
      const scale = read.unit === 'K' ? null : (`°${read.unit}` as const);
      const block = blockOf(facts, keptReadings(read), null);
      act.insert('series', { hold: hold.key, place: where, jar: null, block, heading: read.heading, clock: null, scale, spot });
    }
    return hold;
  }, input.draft); // prettier-ignore
  return {
    act: done.act.uid,
    hold: done.value.uid,
    proof: proofOfHold(facts, done.value.key),
    says: [...says],
  };
}

/** @throws Refused 'invalid' where the unit is not the tool's */
export function checkTool(ledger: Ledger, input: Parsed<'tool.check'>): Reply<'tool.check'> {
  const { tool, name, day, unit } = tidy(input);
  if ((tool === 'meter') !== (unit === 'pH'))
    throw new Refused('invalid', { path: 'unit', problem: tool === 'meter' ? 'is pH for a meter' : 'is °C or °F for this tool' }); // prettier-ignore
  const shown = unit === '°F' ? Number(fromFahrenheit(input.shown).toFixed(2)) : input.shown;
  const done = hostOf(ledger).mustRun(
    'tool.check',
    tool,
    tidy(input.why),
    (act) => act.insert('toolCheck', { tool, name, day, shown }).uid,
    input.draft,
  );
  return {
    act: done.act.uid,
    id: done.value,
    passes: checkPasses({ tool, shown }),
    says: checkSays({ tool, shown }),
  };
}
