import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { classifyInput, type RawInput } from '../../../src/core/screen/classify-input.ts';
import { EMPTY_INPUT, type ScreenInput } from '../../../src/core/screen/ScreenInput.ts';

function classify(raws: readonly RawInput[]): readonly ScreenInput[] {
  let buffer = EMPTY_INPUT;
  const all: ScreenInput[] = [];
  for (const raw of raws) {
    const classified = classifyInput(buffer, raw);
    buffer = classified.buffer;
    all.push(...classified.inputs);
  }
  return all;
}

const typed = (text: string, stepUs: number, fromUs = 0): RawInput[] =>
  [...text].map((character, i) => ({ kind: 'character', character, atUs: fromUs + i * stepUs }));
const enter = (atUs: number): RawInput => ({ kind: 'named', name: 'enter', atUs });
const tick = (atUs: number): RawInput => ({ kind: 'tick', atUs });

describe('classifyInput', () => {
  it('a lone character is a key after 50 ms, stamped with the moment it came', () => {
    expect(classify([...typed('c', 0, 1_000_000), tick(1_049_000)])).toEqual([]);
    expect(classify([...typed('c', 0, 1_000_000), tick(1_050_000)])).toEqual([
      { kind: 'key', name: 'c', atUs: 1_000_000 },
    ]);
  });

  it('characters 49 ms apart ended by Enter are one scan, 50 ms apart they are keys', () => {
    expect(classify([...typed('cox', 49_000), enter(147_000)])).toEqual([
      { kind: 'scan', text: 'cox', atUs: 0 },
    ]);
    expect(
      classify([...typed('cox', 50_000), enter(150_000)]).map((i) => (i.kind === 'key' ? i.name : i.kind)),
    ).toEqual(['c', 'o', 'x', 'enter']);
  });

  it('a pasted line (all at one moment) is a scan; a burst without Enter is refused, never keys', () => {
    expect(classify([...typed('WB-212', 0), enter(0)])).toEqual([{ kind: 'scan', text: 'WB-212', atUs: 0 }]);
    expect(classify([...typed('cq', 10_000), tick(200_000)])).toEqual([{ kind: 'keys-together', atUs: 0 }]);
  });

  it('a key held down (the same character 30 ms apart) is that key once', () => {
    expect(classify([...typed('ccccc', 30_000), tick(400_000)])).toEqual([
      { kind: 'key', name: 'c', atUs: 0 },
    ]);
  });

  it('no burst of two or more different characters ever gives a key or mark (property)', () => {
    const burst = fc.array(
      fc.record({ character: fc.constantFrom(...'coxnuarfqy '), gapUs: fc.integer({ min: 0, max: 49_999 }) }),
      {
        minLength: 2,
        maxLength: 60,
      },
    );
    fc.assert(
      fc.property(burst, fc.boolean(), (characters, ended) => {
        fc.pre(new Set(characters.map((c) => c.character)).size > 1);
        let atUs = 0;
        const raws: RawInput[] = characters.map(({ character, gapUs }) => {
          atUs += gapUs;
          return { kind: 'character', character, atUs };
        });
        const inputs = classify([...raws, ...(ended ? [enter(atUs + 1000)] : []), tick(atUs + 100_000)]);
        expect(inputs.map((i) => i.kind)).toEqual([ended ? 'scan' : 'keys-together']);
      }),
    );
  });

  it('keeps at most 200 characters of an endless burst', () => {
    const [scan] = classify([...typed('ab'.repeat(5000), 10), enter(100_100)]);
    expect(scan).toMatchObject({ kind: 'scan' });
    expect(scan?.kind === 'scan' && scan.text.length).toBe(200);
  });
});
