import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { createLineSplitter } from '../../../../src/core/wire/line-splitter.ts';
import { createPlainDecoder } from '../../../../src/core/wire/plain/create-plain-decoder.ts';
import { jsonValues } from '../../../../src/core/wire/plain/json-values.ts';
import { decodeAll, samples, shown } from './decode-all.ts';

/** Twelve lines of a bond line that rises by 0.25 °C each 100 ms; JSON (RFC 8259) drops zeros at the end of a number. */
const lines = (line: (timeMs: number, value: number) => string): readonly string[] =>
  Array.from({ length: 12 }, (_, at) => line((at + 1) * 100, 200 + (at + 1) * 0.25));
const last = (all: readonly string[], statedUnit?: 'C' | 'F' | 'K') => {
  const { events, decoder } = decodeAll(all, statedUnit ? { statedUnit } : {});
  const seen = samples(events);
  return {
    value: seen.at(-1) && shown(seen.at(-1) as (typeof seen)[number]),
    count: seen.length,
    events,
    decoder,
  };
};

describe('readers that print a JSON object a line', () => {
  it.each<readonly [string, (timeMs: number, value: number) => string, readonly (number | string)[]]>([
    ['unit in the key', (t, v) => `{"t_ms":${t},"bond_C":${v}}`, [203]],
    ['spaces between', (t, v) => `{ "t_ms" : ${t}, "bond_C" : ${v} }`, [203]],
    // 397.4 °F = (397.4 − 32)/1.8 = 203 °C, exact by definition.
    ['°F in the key', (t, v) => `{"t_ms":${t},"bond_F":${v * 1.8 + 32}}`, [203]],
    ['kelvin in the key', (t, v) => `{"t_ms":${t},"bond_K":${v + 273.15}}`, [203]],
    ['several channels', (_, v) => `{"bond_C":${v},"upper_platen_C":232.5}`, [203, 232.5]],
    ['an object inside', (t, v) => `{"t_ms":${t},"temps":{"bond_C":${v},"platen_C":232.5}}`, [203, 232.5]],
    ['a list', (t, v) => `{"t_ms":${t},"temps_C":[${v},232.5]}`, [203, 232.5]],
    [
      'a list of objects',
      (t, v) => `{"t_ms":${t},"ch":[{"id":"a","temp_C":${v}},{"id":"b","temp_C":232.5}]}`,
      [203, 232.5],
    ],
    ['a field for the unit', (_, v) => `{"temp":${v},"unit":"C"}`, [203]],
    ['a name and a truth value beside', (_, v) => `{"reader":"desk 1","ok":true,"temp_C":${v}}`, [203]],
    ['a number as text', (_, v) => `{"temp_C":"${v}"}`, [203]],
    [
      'null for an open probe',
      (t, v) => `{"t_ms":${t},"bond_C":${t === 1200 ? 'null' : v}}`,
      ['unspecified'],
    ],
    ['a fault word', (t, v) => `{"t_ms":${t},"bond_C":${t === 1200 ? '"OPEN"' : v}}`, ['open-circuit']],
  ])('%s', (_, line, value) => {
    const read = last(lines(line));
    expect(read.value).toEqual(value);
    expect(read.count).toBeGreaterThanOrEqual(7);
    expect(read.decoder.recognised).toMatch(/JSON line|one value a line/);
  });

  it('no reading is lost where zeros at the end of numbers are dropped: 203, 203.25, 203.5', () => {
    const { events } = last(lines((t, v) => `{"t_ms":${t},"bond_C":${v}}`));
    expect(events.filter((event) => event.kind === 'trouble')).toEqual([]);
  });

  it('never guesses a unit: asked for once, then as stated', () => {
    const bare = lines((t, v) => `{"t_ms":${t},"temp":${v}}`);
    const { count, events } = last(bare);
    expect(count).toBe(0);
    expect(events.filter((event) => event.kind === 'refusal')).toEqual([
      expect.objectContaining({ problem: 'unit-unknown', detail: expect.stringContaining('--unit C') }),
    ]);
    expect(last(bare, 'K').value).toEqual([-70.15]);
  });

  it('a unit in the key that --unit contradicts is refused', () => {
    const { events, count } = last(
      lines((t, v) => `{"t_ms":${t},"temp_C":${v}}`),
      'F',
    );
    expect(count).toBe(0);
    expect(events.some((event) => event.kind === 'refusal' && event.problem === 'unit-contradicted')).toBe(
      true,
    );
  });

  it('cut at each place, no line is a reading', () => {
    const before = lines((t, v) => `{"t_ms":${t},"bond_C":${v}}`);
    const whole = '{"t_ms":1300,"bond_C":203.25}';
    for (let cut = 1; cut < whole.length; cut += 1) {
      const decoder = createPlainDecoder();
      decodeAll(before, { decoder });
      const { events } = decodeAll([whole.slice(0, cut)], { decoder });
      expect(samples(events)).toEqual([]);
      const { events: tails } = decodeAll([whole.slice(cut)], { decoder });
      expect(samples(tails)).toEqual([]);
    }
  });

  it('byte by byte and in any pieces the events are the same', () => {
    const text = lines((t, v) => `{"t_ms":${t},"bond_°C":${v}}`).join('\r\n');
    const bytes = new TextEncoder().encode(`${text}\r\n`);
    const fed = (sizes: readonly number[]) => {
      const splitter = createLineSplitter({ longestLine: 1_000, startKnown: true });
      const decoder = createPlainDecoder();
      const events: unknown[] = [];
      let from = 0;
      for (let at = 0; from < bytes.length; at += 1) {
        const to = from + (sizes[at % sizes.length] ?? 1);
        for (const line of splitter.push(bytes.subarray(from, to), 0)) events.push(...decoder.decode(line));
        from = to;
      }
      return events;
    };
    const whole = fed([bytes.length]);
    expect(whole.length).toBeGreaterThan(8);
    expect(fed([1])).toEqual(whole);
    fc.assert(
      fc.property(fc.array(fc.integer({ min: 1, max: 40 }), { minLength: 1 }), (sizes) => {
        expect(fed(sizes)).toEqual(whole);
      }),
      { numRuns: 50 },
    );
  });

  it('any JSON object gives finite values or none, and never fails (500 objects)', () => {
    fc.assert(
      fc.property(fc.dictionary(fc.string({ maxLength: 12 }), fc.jsonValue()), (object) => {
        for (const { content } of jsonValues(JSON.stringify(object))?.fields ?? [])
          if (content.kind === 'number') expect(Number.isFinite(content.value)).toBe(true);
      }),
      { numRuns: 500 },
    );
  });
});
