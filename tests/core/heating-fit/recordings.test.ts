import { readdirSync, readFileSync } from 'node:fs';
import { describe, expect, it } from 'vitest';
import { fittedSoakS } from '../../../src/core/heating-fit/fitted-soak-s.ts';
import { parseRecording } from '../../../src/core/recording/parse-recording.ts';
import { analyseEntries } from '../../../src/core/session/analyse-entries.ts';
import { createReaderDecoder } from '../../../src/core/wire/create-reader-decoder.ts';
import { runRules } from '../../../src/program/options/run-rules.ts';

/** Simulated recordings (conduction through layers, cycling platens): no first-order curve is in them. */
const folder = new URL('../../../recordings/', import.meta.url);

function firstRun(file: string) {
  const { head, entries } = parseRecording(readFileSync(new URL(file, folder), 'latin1'));
  const rules = runRules({}, head);
  const [result] = analyseEntries(entries, {
    decoder: createReaderDecoder(),
    roles: head.roles,
    rules,
  }).results;
  if (result === undefined) throw new Error(`${file} has no run`);
  return { result, targetC: rules.targetC };
}

const good = readdirSync(folder).filter((file) => /^wb-.*run-\d/.test(file));

describe('heating curve of shipped recordings', () => {
  it(`fits all ${good.length} good runs, meets the measured soak time within 0.1 s and a platen temperature within 4 °C`, () => {
    expect(good.length).toBe(20);
    for (const file of good) {
      const { result, targetC } = firstRun(file);
      const { fit, soakTimeS, platenAtClosingC } = result;
      expect([file, fit?.verdict]).toEqual([file, 'fits']);
      expect(Math.abs(fittedSoakS(fit!, { targetC })! - soakTimeS!)).toBeLessThan(0.1);
      expect(Math.abs(fit!.plateauC - (platenAtClosingC.upper! + platenAtClosingC.lower!) / 2)).toBeLessThan(
        4,
      );
    }
  });

  it.each(['failure-probe-taped-over', 'failure-interference'])(
    '%s: the residual test says that the curve is wrong',
    (name) => {
      const { fit } = firstRun(`${name}.dwell.txt`).result;
      expect(fit).toMatchObject({ verdict: 'wrong-model' });
      expect(fit!.runsZ).toBeLessThan(-10);
    },
  );

  it('failure-ram-low: a time constant of 73 s where good runs have 39 s', () => {
    const { fit } = firstRun('failure-ram-low.dwell.txt').result;
    expect(fit!.timeConstantS).toBeGreaterThan(
      1.5 * firstRun('wb-212-north-run-1.dwell.txt').result.fit!.timeConstantS,
    );
  });

  it('failure-probe-off-bond-line: no crossing, no curve', () => {
    expect(firstRun('failure-probe-off-bond-line.dwell.txt').result.fit).toBeNull();
  });
});
