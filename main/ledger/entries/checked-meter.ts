// Whether a meter was checked on the day of a reading: as the keeper said beside the reading, else by what the meter showed in
// buffer that day. One that nobody checked proves nothing (core/safety/gate.ts).
import { meterCheckedOn, type ToolCheck } from '../../../core/growth/tool-checks';
import type { Rows } from '../facts/fact-rows';
import type { Row } from '../facts/tables';

type Reading = Row<'acidity'>;

/** The local day on which a jar left warmth, where that is known. */
const TAKEN_OUT = `SELECT date(coalesce(s.went + 60 * s.went_off, h.ended + 60 * h.ended_off), 'unixepoch')
  FROM stay s JOIN hold h ON h.key = s.hold WHERE s.jar = ? ORDER BY s.key DESC LIMIT 1`;

/** Fills in, for readings of a ledger, whether the meter was checked. A reading at take-out is of the day its hold ended. */
export function meterOf(rows: Rows): (seen: Row<'observation'>, reading: Reading) => Reading {
  const checks: ToolCheck[] = (
    rows.prepare("SELECT day, shown FROM tool_check WHERE tool = 'meter' ORDER BY key").all() as Omit<
      ToolCheck,
      'tool'
    >[]
  ).map((check) => ({ ...check, tool: 'meter' }));
  const dayOf = (seen: Row<'observation'>): string | null => {
    const said = seen.day ?? seen.at?.slice(0, 10) ?? null;
    if (said !== null || seen.stage !== 'take-out') return said;
    return rows.prepare(TAKEN_OUT).pluck().get(seen.jar) as string | null | undefined ?? null; // prettier-ignore
  };
  return (seen, reading) => {
    if (checks.length === 0 || reading.how !== 'meter' || reading.checked !== null) return reading;
    const day = dayOf(seen);
    return day === null ? reading : { ...reading, checked: meterCheckedOn(checks, day) };
  };
}

/** Jars whose readings a check of a day may speak for. */
export const READ_ON = `SELECT DISTINCT o.jar FROM acidity a JOIN observation o ON o.key = a.observation
  WHERE a.how = 'meter' AND a.checked IS NULL
    AND (o.day IS NULL OR o.day = @day) AND (o.at IS NULL OR date(o.at + 60 * o.at_off, 'unixepoch') = @day)`;
