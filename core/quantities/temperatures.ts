// Temperatures as people type them → °C, with the scale assumed where none was written.
import type { Temperature } from '../ledger/basics';
import { readNumber, type DecimalMark } from './numbers';
import { tidy } from './tidy-text';

export type TemperatureScale = '°C' | '°F';

/** °F → °C, exact by definition: (F − 32) × 5/9. */
export const fromFahrenheit = (fahrenheit: number): number => ((fahrenheit - 32) * 5) / 9;
export const toFahrenheit = (celsius: number): number => (celsius * 9) / 5 + 32;

export type ParsedTemperature =
  | {
      readonly ok: true;
      readonly temperature: Temperature;
      /** The scale was not written and follows from the heading, the neighbours or plausibility. */
      readonly scaleAssumed: TemperatureScale | null;
      readonly range: readonly [number, number] | null;
      readonly about: boolean;
    }
  | { readonly ok: false; readonly code: 'temperature not read' }
  | { readonly ok: false; readonly code: 'temperature impossible'; readonly said: string };

const SCALE =
  /^\s*(?:°|deg(?:ree|rees|s)?\.?|grad|degr(?:é|e)s?|grados|gradi|graden|graus|grader|stopni)?\s*(c(?:elsius)?|f(?:ahrenheit)?)?(?![\p{L}])\.?/iu;

/** A kitchen's bare number: up to 60 it is °C, above it °F (a jar is held near 38 °C, which is 100 °F). */
export const bareScale = (value: number): TemperatureScale => (value <= 60 ? '°C' : '°F');

/** "100F/38C", "101 °F (38.3 °C)": one temperature told twice. Null where it isn't, or where the two differ by over 1 °C. */
function bothScales(text: string, decimal: DecimalMark | undefined): ParsedTemperature | null {
  const parts = /^([^/(=]+?)\s*(?:\/|=|\()\s*([^/(=)]+?)\s*\)?$/.exec(tidy(text));
  if (!parts) return null;
  const [first, second] = [parts[1], parts[2]].map((part) => parseTemperature(part ?? '', { decimal }));
  if (!first?.ok || !second?.ok || first.scaleAssumed !== null || second.scaleAssumed !== null) return null;
  if (Math.abs(first.temperature.value - second.temperature.value) > 1) return null;
  return { ...first, temperature: { ...first.temperature, typed: text.trim().slice(0, 200) } };
}

/**
 * One temperature: "101 F", "101°F", "38,2 °C", "100". Stored in °C, beside what was typed.
 * Below −90 °C or above 150 °C is impossible in any kitchen.
 * @param scale the scale of a bare number, where a heading or the column tells it.
 */
export function parseTemperature(
  text: string,
  options: { readonly scale?: TemperatureScale | undefined; readonly decimal?: DecimalMark | undefined } = {},
): ParsedTemperature {
  const pair = bothScales(text, options.decimal);
  if (pair) return pair;
  const clean = tidy(text).replace(/^(?:(?:at|bei|à|a|temp\.?:?)(?![\p{L}])|@)\s*/iu, '');
  const below = /^-\s*(?=\d)/.exec(clean);
  const body = below ? clean.slice(below[0].length) : clean;
  let number = readNumber(body, options.decimal, false);
  if (!number) return { ok: false, code: 'temperature not read' };
  let end = number.length;
  let written = SCALE.exec(body.slice(end));
  end += written?.[0].length ?? 0;
  if (!number.range && /^\s*-\s*\d/.test(body.slice(end))) {
    // "100°-101°F", "99F-101F": the first end carries a scale mark of its own.
    const dash = /^\s*-\s*/.exec(body.slice(end))?.[0].length ?? 0;
    const second = readNumber(body.slice(end + dash), options.decimal, false);
    if (second && second.value > number.value) {
      const middle = (number.value + second.value) / 2;
      end += dash + second.length;
      const scale = SCALE.exec(body.slice(end));
      end += scale?.[0].length ?? 0;
      written = scale?.[1] ? scale : written;
      number = { value: middle, range: [number.value, second.value], about: number.about, length: end };
    }
  }
  // "100/36" is two figures, not a fraction.
  if (/\d\s*\/\s*\d{2}/.test(body)) return { ok: false, code: 'temperature not read' };
  if (body.slice(end).trim() !== '') return { ok: false, code: 'temperature not read' };
  const value = below ? -number.value : number.value;
  const letter = written?.[1]?.[0]?.toUpperCase();
  const scale: TemperatureScale =
    letter === 'F' ? '°F' : letter === 'C' ? '°C' : (options.scale ?? bareScale(value));
  const celsius = scale === '°F' ? fromFahrenheit(value) : value;
  if (!(celsius >= -90 && celsius <= 150)) {
    return { ok: false, code: 'temperature impossible', said: `${value} ${scale}` };
  }
  return {
    ok: true,
    temperature: { value: Number(celsius.toPrecision(12)), unit: '°C', typed: text.trim().slice(0, 200) },
    scaleAssumed: letter ? null : scale,
    range: number.range,
    about: number.about,
  };
}
