import { writeFileSync } from 'node:fs';
import { join } from 'node:path';
import { describe, expect, it } from 'vitest';
import { runProgram, temporaryFolder } from './run-program.ts';

const recordings = join(import.meta.dirname, '..', '..', 'recordings');
const file = (name: string) => join(recordings, `${name}.dwell.txt`);
const warmUps = (press: string) => [1, 2, 3].map((number) => file(`warm-up-${press}-${number}`));

describe('warm-up', () => {
  it('North: text with °F first, the READY sentence, marked as simulated, exit 0', () => {
    const { code, out, err } = runProgram(['warm-up', file('warm-up-north-1')]);
    expect(err).toBe('');
    expect(code).toBe(0);
    expect(out).toContain('warm-up of North. SIMULATED.');
    expect(out).toMatch(/READY after \d+ min \d+ s: every platen inside ± 5 °F \(2\.8 °C\) for 5 min 0 s\./);
    expect(out).toMatch(/time constant +4[12] min/);
  });

  it('South is not READY: exit 1, and the platen is named; a wider band makes it READY', () => {
    const late = runProgram(['warm-up', file('warm-up-south-1')]);
    expect(late.code).toBe(1);
    expect(late.out).toContain('Not READY in this recording: lower platen never inside');
    expect(runProgram(['warm-up', file('warm-up-south-1'), '--band', '10F']).code).toBe(0);
  });

  it('--json has the unit in every key', () => {
    const { code, out } = runProgram(['warm-up', file('warm-up-north-1'), '--json']);
    expect(code).toBe(0);
    const [one] = JSON.parse(out).warmUps;
    expect(one).toMatchObject({ press: 'North', simulated: true, sound: true, powerOnBy: 'note' });
    const upper = one.platens.find((platen: { role: string }) => platen.role === 'upper-platen');
    expect(Math.abs(upper.timeConstantS - 2500)).toBeLessThan(15);
    expect(Math.abs(upper.ripplePeriodS - 30)).toBeLessThan(0.3);
    const unit = /(C|S|CPerS|CPerHour|Percent)$/;
    for (const [key, value] of Object.entries(upper)) {
      if (typeof value === 'number' && !['channel', 'spikes', 'faults'].includes(key))
        expect(key).toMatch(unit);
    }
  });

  it('--explain prints the definitions, with or without a file', () => {
    const { code, out } = runProgram(['warm-up', '--explain']);
    expect(code).toBe(0);
    expect(out).toContain('settling time: inside the own steady level ± band');
    expect(out).toContain('IEC 60050-351');
  });

  it('another logger’s file: roles and unit by option', () => {
    const path = join(temporaryFolder(), 'platens.csv');
    const rows = Array.from({ length: 1500 }, (_, i) => {
      const value = Math.min(450, 75 + 0.5 * Math.max(0, i - 30));
      return `${i},${value.toFixed(1)},${(value - 2).toFixed(1)}`;
    });
    writeFileSync(path, ['time (s),upper (F),lower (F)', ...rows].join('\n'));
    const { code, out, err } = runProgram([
      'warm-up',
      path,
      '--temperature-column',
      'upper (F)',
      '--temperature-column',
      'lower (F)',
      '--roles',
      'upper-platen,lower-platen',
      '--platens',
      '450F',
      '--powered-at',
      '30s',
      '--json',
    ]);
    expect(err).toBe('');
    expect(code).toBe(0);
    const [{ platens, readyAtS }] = JSON.parse(out).warmUps;
    // 0.5 °F/s from 75 °F: 445 °F after 740 s, and 744 s for the platen 2 °F lower.
    expect(platens[0].staysInBandS).toBeCloseTo(740, -1);
    expect(readyAtS).toBeGreaterThan(1040);
    expect(readyAtS).toBeLessThan(1052);
  });

  it.each([
    ['no file', ['warm-up'], /no recording given/],
    ['a file that is not there', ['warm-up', 'nowhere.dwell.txt'], /nowhere/],
    [
      'a trial without platens',
      ['warm-up', file('wb-212-north-run-1'), '--roles', 'bond-line,unused,unused,unused'],
      /upper or lower platen/,
    ],
    [
      'a role that is none',
      ['warm-up', file('warm-up-north-1'), '--roles', 'middle'],
      /no place for a probe/,
    ],
    ['a band without unit', ['warm-up', file('warm-up-north-1'), '--band', '5'], /unit/],
    ['a band of 0', ['warm-up', file('warm-up-north-1'), '--band', '0F'], /above 0/],
  ])('%s: exit 2, with what to do', (_, args, message) => {
    const { code, err } = runProgram(args);
    expect(code).toBe(2);
    expect(err).toMatch(message);
    expect(err).toContain('what to do:');
    expect(err).not.toContain('did not expect');
  });
});

describe('survey', () => {
  it('North is within 10 °F (exit 0), South is over (exit 1); the caution comes first, the map is there', () => {
    const north = runProgram(['survey', file('survey-north-lower')]);
    expect(north.code).toBe(0);
    expect(north.out.split('\n')[1]).toBe(
      'CAUTION: Lock out and release the air before a repair or a platen survey.',
    );
    const south = runProgram(['survey', file('survey-south-lower')]);
    expect(south.code).toBe(1);
    expect(south.out).toContain('OVER the limit of 10 °F (5.6 °C)');
    expect(south.out).toMatch(/▼−1\d\.\d/u);
    expect(runProgram(['survey', file('survey-south-lower'), '--limit', '20F']).code).toBe(0);
  });

  it('--positions from a CSV file and as a list give the same map', () => {
    const path = join(temporaryFolder(), 'places.csv');
    const places = ['30/30', '270/30', '30/270', '270/270', '150/30', '150/270', '150/150', '220/150'];
    writeFileSync(
      path,
      ['channel,x_mm,y_mm', ...places.map((one, i) => `${i + 1},${one.replace('/', ',')}`)].join('\n'),
    );
    const map = (positions: string) =>
      runProgram(['survey', file('survey-north-lower'), '--positions', positions, '--ascii']);
    const list = map(places.map((one) => `${one}mm`).join(', '));
    expect(list.out).toContain('^');
    expect(map(path).out).toBe(list.out);
  });

  it('--json: spread, hottest and coldest with units in the keys', () => {
    const result = JSON.parse(runProgram(['survey', file('survey-south-lower'), '--json']).out);
    expect(result.spreadC).toBeCloseTo(8.6, 1);
    expect(result.coldest).toMatchObject({ label: 'channel 2', xMm: 270, yMm: 30 });
    expect(result.withinLimit).toBe(false);
  });

  it.each([
    ['both platens', ['survey', file('warm-up-north-1')], /upper and on the lower/],
    ['too few places', ['survey', file('survey-north-lower'), '--positions', '30/30mm'], /8 places/],
    ['a limit of 0', ['survey', file('survey-north-lower'), '--limit', '0F'], /above 0/],
    ['a time that was not recorded', ['survey', file('survey-north-lower'), '--at', '2h'], /10 readings/],
  ])('%s: exit 2, with what to do', (_, args, message) => {
    const { code, err } = runProgram(args);
    expect(code).toBe(2);
    expect(err).toMatch(message);
    expect(err).toContain('what to do:');
  });
});

describe('compare', () => {
  it('three warm-ups of each press: a table a platen, what stands out, exit 0', () => {
    const { code, out, err } = runProgram([
      'compare',
      '--first',
      ...warmUps('north'),
      '--second',
      ...warmUps('south'),
    ]);
    expect(err).toBe('');
    expect(code).toBe(0);
    expect(out).toContain('First: North, 3 warm-ups. Second: South, 3 warm-ups.');
    expect(out).toMatch(/time constant, s +250\d\.\d +229\d\.\d +−2\d\d\.\d .*stands out/u);
    expect(out).toMatch(/READY, s +\d+\.\d +— \(0 of 3\)/);
  });

  it('--json --series: aligned traces for a chart, cold at power-on on both sides', () => {
    const result = JSON.parse(
      runProgram([
        'compare',
        '--first',
        file('warm-up-north-1'),
        '--second',
        file('warm-up-south-1'),
        '--json',
        '--series',
      ]).out,
    );
    expect(result.compares).toBe('warm-ups');
    expect(result.series).toHaveLength(4);
    for (const series of result.series) {
      const first = series.points.find((point: { timeS: number }) => point.timeS === 5);
      expect(first.temperatureC).toBeGreaterThan(20);
      expect(first.temperatureC).toBeLessThan(26);
    }
  });

  it('trials by their recordings: found out, cover and equivalence; a short dwell gives exit 1', () => {
    const runs = (press: string) => [1, 2, 3, 4, 5].map((run) => file(`wb-212-${press}-run-${run}`));
    const args = [
      'compare',
      '--first',
      ...runs('north'),
      '--second',
      ...runs('south'),
      '--slower',
      '3s',
      '--faster',
      '5s',
    ];
    const covered = runProgram([...args, '--dwell', '180s']);
    expect(covered.err).toBe('');
    expect(covered.code).toBe(0);
    expect(covered.out).toContain('The recipe covers South');
    expect(covered.out).toMatch(/Shown: South within/);
    const short = runProgram([...args, '--dwell', '170s']);
    expect(short.code).toBe(1);
    expect(short.out).toContain('too short for South');
  });

  it.each([
    ['no side', ['compare'], /two sides/],
    [
      'two presses on one side',
      [
        'compare',
        '--first',
        file('warm-up-north-1'),
        file('warm-up-south-1'),
        '--second',
        file('warm-up-north-2'),
      ],
      /different presses, North and South/,
    ],
    [
      'one margin',
      [
        'compare',
        '--of',
        'trials',
        '--first',
        file('wb-212-north-run-1'),
        '--second',
        file('wb-212-south-run-1'),
        '--slower',
        '3s',
      ],
      /only one of/,
    ],
    [
      'two assemblies',
      [
        'compare',
        '--of',
        'trials',
        '--first',
        file('wb-212-north-run-1'),
        '--second',
        file('wb-150-south-run-1'),
      ],
      /different assemblies/,
    ],
    [
      'one name',
      [
        'compare',
        '--first',
        file('warm-up-north-1'),
        '--second',
        file('warm-up-south-1'),
        '--names',
        'before',
      ],
      /two names/,
    ],
    ['a trial that is not there', ['compare', '--first-trial', 'x', '--second-trial', 'y'], /no trial/],
  ])('%s: exit 2, with what to do', (_, args, message) => {
    const { code, err } = runProgram(args);
    expect(code).toBe(2);
    expect(err).toMatch(message);
    expect(err).toContain('what to do:');
  });
});
