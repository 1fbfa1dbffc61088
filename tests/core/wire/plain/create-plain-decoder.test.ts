import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { createPlainDecoder } from '../../../../src/core/wire/plain/create-plain-decoder.ts';
import type { WireEvent } from '../../../../src/core/wire/WireEvent.ts';
import { decodeAll, samples, shown } from './decode-all.ts';

function lastShown(lines: readonly string[], statedUnit?: 'C' | 'F' | 'K') {
  const { events, decoder } = decodeAll(lines, statedUnit ? { statedUnit } : {});
  const last = samples(events).at(-1);
  return { last, values: last && shown(last), recognised: decoder.recognised, events };
}

function times(line: string, count = 6): readonly string[] {
  return Array.from({ length: count }, () => line);
}

// Expected values are the literals of the lines; °F by (F − 32)/1.8 and K by −273.15, exact by definition
// (SI Brochure 2.3.1, NIST SP 811 B.9): 448.2 °F = 231.222… °C, 448.15 °F = 231.194… °C, 504.35 K = 231.2 °C.
describe('what plain readers print', () => {
  const cases: readonly (readonly [
    string,
    readonly string[],
    'C' | 'F' | 'K' | undefined,
    readonly (number | string)[],
    RegExp,
  ])[] = [
    ['a lone number with --unit C', times('231.25'), 'C', [231.25], /one value a line.*Celsius as stated/],
    ['a lone number with --unit F', times('448.2'), 'F', [231.222222], /Fahrenheit as stated/],
    [
      'labels and units',
      times('T1: 231.2 C  T2: 75.1 C'),
      undefined,
      [231.2, 75.1],
      /2 columns separated by spaces, 2 temperatures \(T1, T2\), degrees Celsius from the line/,
    ],
    [
      'units glued to numbers',
      times('231.2C,75.1C'),
      undefined,
      [231.2, 75.1],
      /2 columns separated by commas.*Celsius from the line/,
    ],
    [
      'a degree sign in UTF-8',
      times('Temp = 448.2 °F'),
      undefined,
      [231.222222],
      /one value a line.*Temp.*Fahrenheit from the line/,
    ],
    [
      'a heading with units',
      ['time_ms,T1 (C),T2 (C)', ...Array.from({ length: 6 }, (_, at) => `${at * 100},231.2,75.1`)],
      undefined,
      [231.2, 75.1],
      /3 columns separated by commas.*clock in milliseconds.*Celsius from the heading/,
    ],
    [
      'a heading with units in the second line',
      ['t\tT1\tT2', '[s]\t[K]\t[K]', ...Array.from({ length: 6 }, (_, at) => `${at / 10}\t504.35\t300.15`)],
      undefined,
      [231.2, 27],
      /separated by tabs.*clock in seconds.*kelvin from the heading/,
    ],
    ['tabs', times('231.2\t75.1'), 'C', [231.2, 75.1], /separated by tabs/],
    [
      'semicolons and decimal comma',
      times('231,25;75,1'),
      'C',
      [231.25, 75.1],
      /separated by semicolons, decimal comma/,
    ],
    ['a lone decimal comma', times('231,25'), 'C', [231.25], /one value a line, decimal comma/],
    ['tabs and decimal comma', times('231,25\t75,1'), 'C', [231.25, 75.1], /tabs, decimal comma/],
    ['spaces', times('231.25   75.10'), 'C', [231.25, 75.1], /separated by spaces/],
    ['a trailing separator', times('231.25,75.10,'), 'C', [231.25, 75.1], /2 columns separated by commas/],
    ['names and values as JSON', times('{"t1":231.2,"t2":75.1}'), 'C', [231.2, 75.1], /2 columns/],
    [
      'a unit said in the boot banner',
      ['Bench reader, units: C', ...times('231.25')],
      undefined,
      [231.25],
      /Celsius from the heading/,
    ],
    ['units of deg C', times('231.2 deg C'), undefined, [231.2], /Celsius from the line/],
    [
      'humidity beside the temperature',
      times('Temp 231.2 C, RH 34 %'),
      undefined,
      [231.2],
      /one temperature \(Temp\)/,
    ],
    [
      'clock stamps in front',
      Array.from({ length: 6 }, (_, at) => `10:00:0${at} 231.2 C`),
      undefined,
      [231.2],
      /column 1 is not used, one temperature/,
    ],
  ]; // prettier-ignore
  it.each(cases)('reads %s', (_, lines, unit, expected, words) => {
    const { values, recognised } = lastShown(lines, unit);
    expect(values).toEqual(expected);
    expect(recognised).toMatch(words);
  });

  it('reads a degree sign sent as the single byte B0', () => {
    const decoder = createPlainDecoder();
    const events = times('448.2 \xb0F').flatMap((text, at) =>
      decoder.decode({ arrivedUs: at, text, wholeness: 'whole' }),
    );
    expect(samples(events).map(shown).at(-1)).toEqual([231.222222]);
  });

  it('skips boot banner, blank lines and comments, then reads 4 of 6 values after learning on 3', () => {
    const { events } = decodeAll(['Booting...', '', 'Version 1.2', '# calibrated', ...times('231.25 C')]);
    expect(samples(events)).toHaveLength(4);
    expect(events.filter((event) => event.kind === 'trouble')).toEqual([]);
  });

  it('reads one of two units printed on lines in turn, and says that the other lines are not used', () => {
    const { events, decoder } = decodeAll(
      times('C = 100.00|F = 212.00', 8).flatMap((pair) => pair.split('|')),
    );
    expect(new Set(samples(events).map((sample) => shown(sample).join()))).toEqual(new Set(['100']));
    expect(events.filter((event) => event.kind === 'trouble')).toEqual([]);
    expect(decoder.recognised).toContain('lines of another kind between them are not used');
  });

  it('takes the stated unit of two printed in one line', () => {
    const { events } = decodeAll(times('100.00 C 212.00 F'), { statedUnit: 'C' });
    expect(samples(events).map(shown).at(-1)).toEqual([100]);
  });

  it('follows a meter whose unit key is pressed: 212.0 F after 100.0 C is 100 °C both times', () => {
    const { events } = decodeAll([...times('100.0 C'), '212.0 F']);
    expect(samples(events).slice(-2).map(shown)).toEqual([[100], [100]]);
  });
});

describe('the unit is never guessed', () => {
  it('refuses once and gives no samples when no unit is known', () => {
    const { events } = decodeAll(times('231.25', 20));
    const refusals = events.filter((event) => event.kind === 'refusal');
    expect(refusals).toHaveLength(1);
    expect(refusals[0]).toMatchObject({
      problem: 'unit-unknown',
      detail: expect.stringContaining('--unit C'),
    });
    expect(samples(events)).toEqual([]);
  });

  it('refuses when --unit F contradicts a printed C', () => {
    const { events } = decodeAll(times('231.25 C', 9), { statedUnit: 'F' });
    expect(events.filter((event) => event.kind === 'refusal')).toMatchObject([
      { problem: 'unit-contradicted' },
    ]);
    expect(samples(events)).toEqual([]);
  });

  it('does not take the type letter of "Thermocouple K" or the name "Probe C" for a unit', () => {
    for (const label of ['Thermocouple K: 231.2', 'Probe C: 231.2', 'Type K: 231.2']) {
      const { events } = decodeAll(times(label));
      expect(events.filter((event) => event.kind === 'refusal')).toMatchObject([{ problem: 'unit-unknown' }]);
    }
  });
});

describe('faults', () => {
  // Fault words and values: common practice, no source.
  it.each([
    'nan',
    'NaN',
    'ERR',
    '---',
    '-1000',
    '2047.75',
    '-999',
    '9999',
    '32767',
    '-127',
    '1372.0',
    '-127.00',
  ])('reports %s as a fault, not as a temperature', (word) => {
    const { events } = decodeAll([...times('231.25', 5), word], { statedUnit: 'C' });
    expect(samples(events).map(shown).at(-1)).toEqual(['unspecified']);
    expect(events.filter((event) => event.kind === 'trouble')).toEqual([]);
  });

  it('reports OPEN as an open circuit on its own channel only', () => {
    const { events } = decodeAll([...times('T1: 231.2 C T2: 75.1 C', 4), 'T1: OPEN  T2: 75.1 C']);
    expect(samples(events).map(shown).at(-1)).toEqual(['open-circuit', 75.1]);
  });

  it.each([-126.5, -128, 0, 850, 999.5, 1371.5, 85])('keeps %s °C as a temperature', (value) => {
    const { events } = decodeAll(times(value.toFixed(1)), { statedUnit: 'C' });
    expect(samples(events).map(shown).at(-1)).toEqual([value]);
  });
});

describe('clock and count', () => {
  it('takes an unnamed millisecond column by its pace against the arrivals', () => {
    const lines = Array.from({ length: 10 }, (_, at) => `${5000 + 100 * at},231.2,75.1`);
    const { events, decoder } = decodeAll(lines, { statedUnit: 'C' });
    expect(samples(events).at(-1)).toMatchObject({ deviceTimeUs: 5_900_000, sequence: null });
    expect(decoder.clockWrapUs).toBe(4_294_967_296_000);
  });

  it('takes an unnamed column that rises by one for the sample count', () => {
    const lines = Array.from({ length: 12 }, (_, at) => `${17 + at} 231.2 75.1`);
    const { events } = decodeAll(lines, { statedUnit: 'C' });
    expect(samples(events).at(-1)).toMatchObject({ deviceTimeUs: null, sequence: 28 });
    expect(samples(events).map(shown).at(-1)).toEqual([231.2, 75.1]);
  });

  it('takes an unnamed column in seconds for the clock after 20 lines', () => {
    const lines = Array.from({ length: 25 }, (_, at) => `${(at / 10).toFixed(1)} 231.2`);
    const { events } = decodeAll(lines, { statedUnit: 'C' });
    expect(samples(events).at(-1)).toMatchObject({ deviceTimeUs: 2_400_000 });
    expect(samples(events).map(shown).at(-1)).toEqual([231.2]);
  });

  it('never reads a count with a lost line as a temperature', () => {
    const lines = [
      17, 18, 20, 21, 22, 24, 25, 26, 27, 28, 30, 31, 32, 33, 34, 35, 36, 37, 39, 40, 41, 42,
    ].map((count) => `${count} 231.2 75.1`);
    const { events } = decodeAll(lines, { statedUnit: 'C' });
    expect(samples(events).map(shown).at(-1)).toEqual([231.2, 75.1]);
  });

  it('does not take a bond line rising by 1.37 °C each second for a clock', () => {
    const rise = [0.05, -0.11, 0.2, -0.17, 0.09, -0.3, 0.12, 0.25, -0.21, 0.02];
    const lines = Array.from(
      { length: 40 },
      (_, at) => `${(60 + 1.37 * at + 5 * (rise[at % 10] ?? 0)).toFixed(2)} 231.20`,
    );
    const { events } = decodeAll(lines, { statedUnit: 'C', stepUs: 1_000_000 });
    expect(samples(events).at(-1)).toMatchObject({ deviceTimeUs: null });
    expect(samples(events).at(-1)?.channels).toHaveLength(2);
  });

  it('says "started" when the boot banner comes again', () => {
    const { events } = decodeAll(['reader ready', ...times('231.2 C', 5), 'reader ready', '231.2 C']);
    expect(events.map((event) => event.kind).slice(-3)).toEqual(['remark', 'started', 'sample']);
  });

  it('says "started" when the heading comes again and the clock begins anew', () => {
    const rows = (count: number) => Array.from({ length: count }, (_, at) => `${at * 100},231.2`);
    const { events } = decodeAll(['ms,T1 (C)', ...rows(8), 'ms,T1 (C)', ...rows(2)]);
    expect(events.map((event) => event.kind).slice(-4)).toEqual(['remark', 'started', 'sample', 'sample']);
  });
});

describe('lines that are no readings', () => {
  it.each([
    ['2', '231.25', 'a tail cut off'],
    ['23', '231.25', 'a tail cut off'],
    ['231', '231.25', 'a tail cut off'],
    ['231.', '231.25', 'a tail cut off'],
    ['231.2', '231.25', 'a tail cut off'],
    ['31.25', '231.25', 'a lost head'],
    ['1.25', '231.25', 'a lost head'],
    ['.25', '231.25', 'a lost head'],
    ['231.2575.1', '231.25', 'two lines run together'],
    ['231.25231.25', '231.25', 'two lines run together'],
    ['231.2575', '231.25', 'two lines run together'],
    ['23', '231', 'a tail cut off without decimals'],
    ['231,75', '231.25,75.10', 'short columns'],
    ['231.25', '231.25,75.10', 'a missing column'],
    ['231.25,75.10,231.25,75.10', '231.25,75.10', 'two lines run together'],
    ['231.2', '231.2 C', 'a missing unit'],
    ['T1: 231.2 C  T2: 7', 'T1: 231.2 C  T2: 75.1 C', 'a tail cut off'],
    ['2\u00001.25', '231.25', 'a control character'],
    ['\u001b[2J231.25', '231.25', 'an escape sequence'],
    ['hello world', '231.25', 'words'],
    ['231.25 231.25', '231.25', 'two values'],
  ])('takes %j after %j for trouble (%s)', (bad, good) => {
    const unit = good.includes('C') ? {} : ({ statedUnit: 'C' } as const);
    const { perLine } = decodeAll([...times(good, 8), bad, good], unit);
    expect(perLine.at(-2)?.map((event) => event.kind)).toEqual(['trouble']);
    expect(perLine.at(-1)?.map((event) => event.kind)).toEqual(['sample']);
  });

  it.each(['start-unknown', 'cut-off', 'over-long'] as const)(
    'never reads a line that is %s',
    (wholeness) => {
      const { decoder } = decodeAll(times('231.25 C'));
      const events = decoder.decode({ arrivedUs: 1e6, text: '231.25 C', wholeness });
      expect(events).toMatchObject([{ kind: 'trouble', trouble: wholeness }]);
    },
  );

  it('believes a reader that drops trailing zeros by the third time', () => {
    const { perLine } = decodeAll(
      [...times('231.25'), '231.5', '231.25', '231.5', '231.25', '231.5', '231.5'],
      {
        statedUnit: 'C',
      },
    );
    expect(perLine.slice(6).map((events) => events[0]?.kind)).toEqual([
      'trouble',
      'sample',
      'trouble',
      'sample',
      'sample',
      'sample',
    ]); // prettier-ignore
  });

  it('believes a real fall from 231 °C to 80 °C by the third line', () => {
    const { perLine } = decodeAll([...times('231.2'), ...times('80.1', 4)], { statedUnit: 'C' });
    expect(perLine.slice(6).map((events) => events[0]?.kind)).toEqual([
      'trouble',
      'trouble',
      'sample',
      'sample',
    ]);
  });

  it('learns anew after 10 lines that do not fit', () => {
    const { events } = decodeAll([...times('231.2 C'), ...times('231.2 C;75.1 C', 16)]);
    expect(samples(events).map(shown).at(-1)).toEqual([231.2, 75.1]);
  });
});

describe('any lines at all', () => {
  const line = fc.oneof(
    fc.string({ unit: 'binary', maxLength: 40 }),
    fc.string({ unit: fc.constantFrom(...'0123456789.,;:- \tTCFK=nanOPEN°#'), maxLength: 30 }),
    fc
      .tuple(fc.float({ min: -50, max: 400, noNaN: true }), fc.constantFrom(' C', ' F', '', ',1', ';2'))
      .map(([value, tail]) => `${value.toFixed(2)}${tail}`),
  ); // prettier-ignore

  it('never throws, gives finite values, and the same events the second time', () => {
    fc.assert(
      fc.property(
        fc.array(line, { maxLength: 40 }),
        fc.constantFrom('C', 'F', 'K', undefined),
        (lines, unit) => {
          const run = (): readonly WireEvent[] => decodeAll(lines, unit ? { statedUnit: unit } : {}).events;
          const events = run();
          for (const sample of samples(events))
            for (const value of sample.channels)
              if (value.kind === 'temperature') expect(Number.isFinite(value.temperatureC)).toBe(true);
          expect(run()).toEqual(events);
        },
      ),
      { numRuns: 300 },
    );
  });

  it('never gives a reading that no whole line printed, at any cut of any line', () => {
    const value = fc.integer({ min: 2000, max: 25000 }).map((hundredths) => (hundredths / 100).toFixed(2));
    fc.assert(
      fc.property(
        fc.array(value, { minLength: 6, maxLength: 30 }),
        fc.integer({ min: 6 }),
        fc.nat(),
        (values, which, cut) => {
          const at = which % values.length;
          const text = values[at] ?? '';
          const lines = values.with(at, text.slice(0, 1 + (cut % (text.length - 1))));
          const { events } = decodeAll(['1.00', '1.00', '1.00', ...lines], { statedUnit: 'C' });
          const printed = new Set(values.map(Number));
          for (const sample of samples(events).slice(1)) expect(printed).toContain(shown(sample)[0]);
        },
      ),
      { numRuns: 300 },
    );
  });
});
