import { join } from 'node:path';
import { describe, expect, it } from 'vitest';
import { runProgram, temporaryFolder } from './run-program.ts';

/** A calibrated probe reads otherwise and leaves less open than a new one: both enter a re-check as they enter the trial. */
describe('recheck of a trial made with a calibrated probe', () => {
  const store = join(temporaryFolder(), 'store.db');
  const run = (...args: readonly string[]) => runProgram([...args, '--store', store]);
  const point = ['--point', '177C:-0.6C:0.5C:2026-03-01'];
  run('probes', 'P1', '--type', 'K', '--class', 'IEC 2', ...point);
  const simulated = ['--simulated', '--speed', '1000', '--assembly', 'WB-212', '--press', 'North', '--plain'];
  const made = run('trial', ...simulated, '--probes', 'P1,P1,-,-', '--runs', '3', '--initials', 'AB');
  const id = JSON.parse(run('trials', '--json').out).trials[0].trialId as string;
  run('accept', id, '--rule', 'next-run', '--initials', 'AB');
  const ofTrial = JSON.parse(run('trials', id, '--json').out).uncertainty;

  it('gives the trial’s own combined uncertainty, alone and among all runs of the recipe', () => {
    expect(made.code).toBe(0);
    for (const which of [['--trial', id], []]) {
      expect(JSON.parse(run('recheck', ...which, '--json').out).now.uncertainty).toEqual(ofTrial);
    }
  });

  it('holds the calibration, whose k = 2 uncertainty of 0.5 °C is 0.25 °C standard, not the wire’s tolerance', () => {
    const parts = JSON.parse(run('recheck', '--json').out).now.uncertainty.parts;
    const names = parts.map(({ part }: { part: string }) => part);
    expect(names).toContain('calibration');
    expect(names).not.toContain('tolerance');
    // 0.25 °C at a slope of about 1.4 °C/s (domain curve) is 0.18 s; a class 2 limit of 2.5 °C / √3 would be 1.0 s.
    const calibration = parts.find(({ part }: { part: string }) => part === 'calibration');
    expect(calibration.standardUncertaintyS).toBeGreaterThan(0.15);
    expect(calibration.standardUncertaintyS).toBeLessThan(0.22);
  });

  it('takes further parts stated with --part as the trial does', () => {
    const part = ['--part', 'tip-placement:1C'];
    const own = JSON.parse(run('trials', id, ...part, '--json').out).uncertainty;
    expect(JSON.parse(run('recheck', ...part, '--json').out).now.uncertainty).toEqual(own);
    expect(own.standardUncertaintyS).toBeGreaterThan(ofTrial.standardUncertaintyS);
  });
});
