import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import type { ReportBlock, ReportContent } from '../../../src/core/report/ReportContent.ts';
import { trialReport } from '../../../src/core/report/trial-report.ts';
import { suspectFor, trialRun } from '../trial/trial-run.ts';
import { trialReportInput } from './trial-report-input.ts';

const FIVE = [53.1, 53.5, 53.6, 53.8, 54.3].map((soakTimeS) => trialRun(soakTimeS));

const blocks = (content: ReportContent): readonly ReportBlock[] =>
  content.sections.flatMap((section) => section.blocks);
const section = (content: ReportContent, heading: string) =>
  content.sections.find((one) => one.heading === heading);
const textOf = (value: unknown): string => strings(value).join('\n');

describe('the report of a trial', () => {
  const content = trialReport(trialReportInput(FIVE));

  it('has every part that a customer or an auditor looks for, the dwell first, signatures last', () => {
    expect(content.sections.map(({ heading }) => heading)).toEqual([
      'Dwell',
      'Job',
      'Conditions of each run',
      'Runs',
      'Pictures',
      'Uncertainty',
      'Runs left out, and what was noticed',
      'Equipment and calibration',
      'Cautions',
      'Versions and data',
      'Signatures',
    ]);
  });

  // 53.66 + 120 rounds up to 174. Next run: s = 0.4393, t(0.95, 4) = 2.132 (NIST/SEMATECH e-Handbook 1.3.6.7.2):
  // 53.66 + 2.132·0.4393·√1.2 = 54.69, + 120 rounds up to 175.
  it('gives both rules equal weight: 174 s by the mean, 175 s for the next run', () => {
    const dwells = blocks(content).find((block) => block.kind === 'dwells');
    expect(dwells?.kind === 'dwells' && dwells.dwells.map(({ name, value }) => [name, value])).toEqual([
      ['common mean rule', '174 s'],
      ['full hold in the next run (95 %)', '175 s'],
    ]);
    expect(textOf(dwells)).toContain('about half of all cycles hold for less than 120 s');
  });

  it('draws the runs, their crossings, their soak times and the dwell', () => {
    const pictures = blocks(content).flatMap((block) =>
      block.kind === 'figure' ? [block.picture.title] : [],
    );
    expect(pictures).toHaveLength(4);
    expect(JSON.stringify(content)).not.toMatch(/NaN|undefined|Infinity/);
  });

  it('carries the uncertainty budget, its parts making up 100 % of the variance', () => {
    const table = section(content, 'Uncertainty')?.blocks.find((block) => block.kind === 'table');
    const shares = (table?.kind === 'table' ? table.rows : []).flatMap(
      ({ cells }) => /^(\d+) %$/.exec(cells.at(-1) ?? '')?.[1] ?? [],
    );
    const sum = shares.reduce((all, share) => all + Number(share), 0);
    expect(Math.abs(sum - 100)).toBeLessThanOrEqual(shares.length / 2);
  });

  it('lists each recording with its hash, and the version of the rules', () => {
    const data = textOf(section(content, 'Versions and data'));
    for (const digit of [0, 1, 2, 3, 4]) expect(data).toContain(String(digit).repeat(64));
    expect(data).toContain('version 1');
    expect(data).toContain('Dwellwright 0.1.0');
  });

  it('leaves lines to write on where gauge pressure and calibration dates are not stated', () => {
    const facts = blocks(content).flatMap((block) => (block.kind === 'facts' ? block.facts : []));
    const blank = facts.filter(({ value }) => value === '').map(({ name }) => name);
    expect(blank).toEqual([
      'Gauge pressure',
      'Probe: number, calibrated on, due',
      'Reader: calibrated on, due',
      'Pressure gauge: number, calibrated on, due',
    ]);
  });

  it('prints equipment as stated instead of the blanks', () => {
    const stated = trialReport(
      trialReportInput(FIVE, { input: { equipment: ['Probe 7, calibrated 2026-01-15'] } }),
    );
    const words = textOf(section(stated, 'Equipment and calibration'));
    expect(words).toContain('Probe 7, calibrated 2026-01-15');
    expect(words).not.toContain('Pressure gauge: number');
  });

  it('says that it advises only', () => {
    expect(textOf(section(content, 'Cautions'))).toContain('It is no safety device and no interlock');
  });

  it('puts further sections before equipment', () => {
    const further = { heading: 'Re-check', blocks: [] };
    const headings = trialReport(
      trialReportInput(FIVE, { input: { furtherSections: [further] } }),
    ).sections.map(({ heading }) => heading);
    expect(headings.indexOf('Re-check')).toBe(headings.indexOf('Equipment and calibration') - 1);
  });

  it('does not change what it is given', () => {
    const input = deepFreeze(trialReportInput(FIVE));
    expect(() => trialReport(input)).not.toThrow();
  });
});

describe('runs left out', () => {
  const runs = [
    ...FIVE.slice(0, 3),
    trialRun(44, suspectFor('carrier-warm')),
    trialRun(53.9, { decision: { kind: 'set-aside', reason: 'ram slipped' } }),
    trialRun(54, {
      ...suspectFor('late-mark'),
      decision: { kind: 'taken-in', reason: 'mark seen on video' },
    }),
  ];
  const table = section(trialReport(trialReportInput(runs)), 'Runs left out, and what was noticed')
    ?.blocks[0];
  const rows = table?.kind === 'table' ? table.rows : [];

  it('are listed by number with why, beside those taken in', () => {
    expect(rows.map(({ cells }) => cells.slice(0, 2))).toEqual([
      ['4', 'suspect: stays out until taken in with a reason'],
      ['5', 'set aside'],
      ['6', 'counts'],
    ]);
    expect(rows[1]?.cells[2]).toContain('Set aside because: ram slipped.');
    expect(rows[2]?.cells[2]).toContain('Taken in because: mark seen on video.');
  });
});

describe('a report of little', () => {
  it.each([
    ['no run that counts', [trialRun(null, { verdict: 'unusable' })], '—'],
    ['one run', [trialRun(53.5)], '174 s'],
  ])('%s still says what is known and what is not', (_, runs, mean) => {
    const content = trialReport(trialReportInput(runs));
    const dwells = blocks(content).find((block) => block.kind === 'dwells');
    expect(dwells?.kind === 'dwells' && dwells.dwells.map(({ value }) => value)).toEqual([mean, '—']);
    expect(dwells?.kind === 'dwells' && dwells.dwells[1]?.worth.join()).toMatch(
      /no run counts yet|not known from one run/,
    );
    expect(JSON.stringify(content)).not.toMatch(/NaN|undefined|Infinity/);
  });
});

describe('text from readers, files and people', () => {
  it('of any kind reaches no report with control characters or direction marks in it', () => {
    const text = fc.oneof(
      fc.string({ unit: 'binary' }),
      fc.constantFrom('\u202Egnp.exe', 'a\u0000b\u001b[31m', '\u2066x'),
    );
    fc.assert(
      fc.property(text, (value) => {
        const run = trialRun(53.5, {
          conditions: { carrierId: value },
          decision: { kind: 'set-aside', reason: value },
        });
        const content = trialReport(trialReportInput([...FIVE, run], { text: value }));
        for (const one of strings(content)) expect(one).not.toMatch(/[\p{Cc}\p{Cs}\p{Bidi_Control}]/u);
      }),
      { numRuns: 40 },
    );
  });
});

describe('a simulated trial', () => {
  it('is marked as such, and a real one is not', () => {
    expect(trialReport(trialReportInput(FIVE, { job: { simulated: true } })).simulated).toBe(true);
    const real = trialReport(trialReportInput(FIVE));
    expect(real.simulated).toBe(false);
    expect(textOf(real)).not.toMatch(/SIMULATED/);
  });
});

function strings(value: unknown): readonly string[] {
  if (typeof value === 'string') return [value];
  if (typeof value !== 'object' || value === null) return [];
  return Object.values(value).flatMap(strings);
}

function deepFreeze<Value>(value: Value): Value {
  if (typeof value === 'object' && value !== null && !Object.isFrozen(value)) {
    Object.freeze(value);
    Object.values(value).forEach(deepFreeze);
  }
  return value;
}
