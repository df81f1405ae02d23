// What a keeper prefers who never said: by the system's locale. The United States measure in °F, cups and months first;
// common practice, no source. Currency codes: ISO 4217, from memory.
import { describe, expect, it } from 'vitest';
import { defaultPreferences, PLACES, placeOf, regionOf } from '../../core/ledger/default-preferences';
import { Preferences } from '../../core/ledger/records';
import { localeOfSystem } from '../../main/locale';
import { Session } from '../../main/session';
import { JAR_LAG, limitUpTo } from '../../renderer/app/preference-figures';
import { must, newFile, NOW } from './ledger-files';

describe('preferences by locale', () => {
  it.each([
    ['en-US', '°F', 'spoons', 'US', 'month first', 'USD'],
    ['es-PR', '°F', 'spoons', 'US', 'month first', 'USD'],
    ['en_US.UTF-8', '°F', 'spoons', 'US', 'month first', 'USD'],
    ['en', '°F', 'spoons', 'US', 'month first', 'USD'],
    ['de-DE', '°C', 'metric', 'metric', 'day first', 'EUR'],
    ['en-GB', '°C', 'metric', 'metric', 'day first', 'GBP'],
    ['en-AU', '°C', 'metric', 'Australia', 'day first', 'AUD'],
    ['fr-CH', '°C', 'metric', 'metric', 'day first', 'CHF'],
    ['en-PH', '°C', 'metric', 'metric', 'month first', 'PHP'],
    ['en-BS', '°F', 'metric', 'metric', 'day first', 'BSD'],
    ['en-IE', '°C', 'metric', 'metric', 'day first', 'EUR'],
  ])('%s', (locale, temperatures, volumes, spoons, dates, currency) => {
    expect(defaultPreferences(locale)).toEqual({
      theme: 'system', temperatures, volumes, spoons, dates, currency,
      // Common practice, no source; the same everywhere.
      seedFridgeDays: 21, seedFreezerDays: 365, mostGenerations: null, jarFollowsHours: null,
    }); // prettier-ignore
  });

  it.each([null, undefined, '', 'C', 'POSIX', 'C.UTF-8', 'not a tag!'])('%s names no region', (locale) => {
    expect(regionOf(locale)).toBeNull();
    const preferences = defaultPreferences(locale);
    expect(Preferences.safeParse(preferences).success).toBe(true);
    // Measures, spoons and money of one place: no US spoons beside degrees Celsius and euros.
    expect(placeOf(preferences)?.region).toBeNull();
  });

  it('every place chosen is the place that is shown, and reads as its own region’s locale does', () => {
    for (const place of PLACES) {
      expect(placeOf(place.measures)).toBe(place);
      const locale = place.region === null ? 'de-DE' : `en-${place.region}`;
      expect(defaultPreferences(locale)).toMatchObject(place.measures);
    }
    const [first] = PLACES;
    expect(placeOf({ ...first!.measures, spoons: 'UK imperial' })).toBeUndefined();
  });
});

describe('the system’s locale', () => {
  it('is what Linux was told, the measures before the language, and unknown where nobody said', () => {
    const never = (): string => {
      throw new Error('not asked on Linux');
    };
    expect(localeOfSystem('linux', { LANG: 'en_GB.UTF-8' }, never)).toBe('en_GB.UTF-8');
    expect(localeOfSystem('linux', { LANG: 'en_US.UTF-8', LC_MEASUREMENT: 'de_DE.UTF-8' }, never)).toBe(
      'de_DE.UTF-8',
    );
    expect(localeOfSystem('linux', {}, never)).toBeNull();
    expect(localeOfSystem('darwin', { LANG: 'x' }, () => 'sv-SE')).toBe('sv-SE');
  });
});

describe('a ledger', () => {
  const open = (file: string, mode: 'open' | 'create', locale: string | null): Session =>
    new Session({ file, mode, now: NOW, timeZone: 'Europe/Berlin', locale, version: '0' });

  it('reads by the locale until its keeper chooses, and then by that everywhere', () => {
    const file = newFile();
    const session = open(file, 'create', 'en-US');
    const first = must(session, 'app.state', {}).preferences;
    expect(first).toMatchObject({ temperatures: '°F', dates: 'month first' });
    must(session, 'preferences.save', { ...first, temperatures: '°C', theme: 'dark' });
    session.close();
    const again = open(file, 'open', 'sv-SE');
    expect(must(again, 'app.state', {}).preferences).toEqual({ ...first, temperatures: '°C', theme: 'dark' });
  });

  it('that is not open yet has the locale’s preferences too', () => {
    const session = new Session({
      file: null, mode: 'open', now: NOW, timeZone: 'UTC', locale: 'de-DE', version: '0',
    }); // prettier-ignore
    expect(must(session, 'app.state', {}).preferences.spoons).toBe('metric');
  });
});

describe('a figure of the preferences as typed', () => {
  it.each([
    ['', null],
    ['  ', null],
    ['1.5', 1.5],
    ['1,5', 1.5],
    ['45 min', 0.75],
    ['1 h 30', 1.5],
    ['0.05', 0.05],
    ['24', 24],
    ['0', undefined],
    ['0.01', undefined],
    ['25', undefined],
    ['-1', undefined],
    ['quick', undefined],
  ])('a lag of “%s” is %s hours', (typed, hours) => {
    expect(JAR_LAG.read(typed)).toBe(hours);
  });

  it.each([
    ['', null],
    ['14', 14],
    ['3650', 3650],
    ['0', undefined],
    ['3651', undefined],
    ['1.5', undefined],
    ['twelve', undefined],
  ])('a limit of “%s” is %s', (typed, limit) => {
    expect(limitUpTo(3650).read(typed)).toBe(limit);
  });

  it('a lag that was kept is taken back by undoing its line in the history', () => {
    const session = new Session({
      file: newFile(), mode: 'create', now: NOW, timeZone: 'UTC', locale: 'de-DE', version: '0',
    }); // prettier-ignore
    const before = must(session, 'app.state', {}).preferences;
    must(session, 'preferences.save', { ...before, jarFollowsHours: JAR_LAG.read('1 h 30') ?? null });
    expect(must(session, 'app.state', {}).preferences.jarFollowsHours).toBe(1.5);
    const [act] = must(session, 'history.list', { record: null, before: null, limit: 1 }).acts;
    must(session, 'act.undo', { act: act?.act ?? null });
    expect(must(session, 'app.state', {}).preferences).toEqual(before);
  });
});
