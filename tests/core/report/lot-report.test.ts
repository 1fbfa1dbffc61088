import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { lotReport } from '../../../src/core/report/lot-report.ts';
import type { ReportContent } from '../../../src/core/report/ReportContent.ts';
import { cleanCycle, lotCycle, lotReportInput } from './lot-report-input.ts';
import { textsOf } from './texts-of.ts';

const early = lotCycle(3, { dwellHeldS: 160.5, result: 'opened-early', flags: ['opened-early'] });
const unproved = lotCycle(4, {
  hold: 'not-verified',
  holdCountedS: 80,
  result: 'hold-not-verified',
  flags: ['hold-not-verified', 'outside-recipe-band'],
});
const blind = lotCycle(5, { hold: 'not-measured', holdCountedS: null, lowestC: null, peakC: null });
const lot = lotReport(lotReportInput([lotCycle(1), lotCycle(2), early, unproved, blind]));
const section = (content: ReportContent, heading: string) =>
  content.sections.find((one) => one.heading === heading);
const words = (content: ReportContent, heading: string) => textsOf(section(content, heading)).join('\n');

describe('the report of a bonded lot', () => {
  it('has every part that a customer looks for, what the lot is first, signatures last', () => {
    expect(lot.sections.map(({ heading }) => heading)).toEqual([
      'Lot',
      'Recipe, version 2',
      'Cycles',
      'Cycles to be looked at',
      'Bond line against the recipe’s own runs',
      'Checks after cooling',
      'Equipment and calibration',
      'Cautions',
      'Versions and data',
      'Signatures',
    ]);
  });

  it('counts: 3 of 5 with nothing noticed, hold seen whole in 3, not verified in 1, not measured in 1', () => {
    const said = words(lot, 'Lot');
    expect(said).toContain('5 cycles: 3 with nothing noticed, 2 to be looked at');
    expect(said).toContain('cycle 3 (opened early)');
    expect(said).toContain('seen whole in 3, not verified in 1, not measured (no probe) in 1');
    expect(said).toContain('1 to 5');
  });

  it('numbers cycles as the store does, gaps told: 1 to 2, 7', () => {
    expect(words(lotReport(lotReportInput([lotCycle(1), lotCycle(2), lotCycle(7)])), 'Lot')).toContain(
      'numbers 1 to 2, 7 of',
    );
  });

  it('has a row for each cycle: closed 160.5 s, hold 80 s not verified, platens in °F', () => {
    const table = section(lot, 'Cycles')?.blocks.find((block) => block.kind === 'table');
    const rows = table?.kind === 'table' ? table.rows.map(({ cells }) => cells) : [];
    expect(rows).toHaveLength(5);
    expect(rows[2]).toContain('160.5');
    expect(rows[3]).toContain('80.0, NOT VERIFIED');
    // 232 °C · 1.8 + 32 = 449.6; 231 °C = 447.8.
    expect(rows[0]).toContain('450 / 448');
    expect(rows[4]).toContain('not measured');
  });

  it('says what each thing noticed means, with room for what was found: 13.5 s early, 80 s of 120 s', () => {
    const said = words(lot, 'Cycles to be looked at');
    expect(said).toContain('Opened 13.5 s before the dwell was over');
    expect(said).toContain('80.0 s of 120 s counted at target');
    expect(said).toContain('Found, and decided');
  });

  it('draws the bond lines over the band and less its middle, the cycle that heated otherwise by itself, and the times closed', () => {
    const pictures = section(lot, 'Bond line against the recipe’s own runs')?.blocks.filter(
      ({ kind }) => kind === 'figure',
    );
    expect(pictures).toHaveLength(4);
    expect(JSON.stringify(pictures)).toContain('Recipe’s own runs, lowest to highest');
    expect(JSON.stringify(pictures)).not.toMatch(/NaN|undefined|Infinity/);
  });

  it('without any probe says so, in place of a picture that shows nothing', () => {
    const timed = lotReport(lotReportInput([blind], { recordings: [] }));
    expect(words(timed, 'Bond line against the recipe’s own runs')).toContain(
      'No cycle of this lot has readings',
    );
    expect(words(timed, 'Lot')).toContain('the time alone is shown');
    expect(words(timed, 'Versions and data')).toContain('nothing was measured');
  });

  it('of 60 cycles names only those with something noticed in the legend', () => {
    const many = Array.from({ length: 60 }, (_, at) =>
      at === 40 ? { ...early, number: 41 } : lotCycle(at + 1),
    );
    const said = words(lotReport(lotReportInput(many)), 'Bond line against the recipe’s own runs');
    expect(said).toContain('59 further cycles');
    expect(said).toContain('Cycle 41 (noticed)');
    expect(said).not.toContain('Cycle 40');
  });

  it('carries the hash of the cycles’ records and of each recording', () => {
    const said = words(lot, 'Versions and data');
    expect(said).toContain('ab'.repeat(32));
    expect(said).toContain('0'.repeat(64));
  });

  it('is marked where a cycle is simulated, and only there', () => {
    expect(lot.simulated).toBe(false);
    expect(lotReport(lotReportInput([lotCycle(1), lotCycle(2, { simulated: true })])).simulated).toBe(true);
  });

  it('carries no control character or direction mark, whatever text people and readers put', () => {
    fc.assert(
      fc.property(
        fc.oneof(
          fc.string({ unit: 'binary' }),
          fc.constantFrom('\u202Egnp.exe', 'a\u0000b\u001b[31m', '\u2066x'),
        ),
        (value) => {
          const cycle = { ...cleanCycle, initials: value, closedAt: value };
          const content = lotReport(lotReportInput([{ number: 1, cycle, bondLine: [] }], {}, value));
          for (const one of textsOf(content)) expect(one).not.toMatch(/[\p{Cc}\p{Cs}\p{Bidi_Control}]/u);
        },
      ),
      { numRuns: 40 },
    );
  });
});
