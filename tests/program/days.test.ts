import { describe, expect, it } from 'vitest';
import { isWithin, parseDays } from '../../src/program/platens/days.ts';

describe('days of a comparison', () => {
  it.each([
    ['2026-03-01/2026-06-30', { from: '2026-03-01', to: '2026-06-30' }],
    ['/2026-06-30', { from: null, to: '2026-06-30' }],
    ['2026-07-01/', { from: '2026-07-01', to: null }],
    ['2026-07-01', { from: '2026-07-01', to: '2026-07-01' }],
  ])('%s', (text, days) => expect(parseDays(text, '--first-dates')).toEqual(days));

  it.each([
    '',
    '/',
    '2026',
    '2026-02-29',
    '2026-13-01',
    'yesterday',
    '2026-01-01/2026-02-01/2026-03-01',
    '2026-02-01/2026-01-01',
  ])('"%s" is refused', (text) => expect(() => parseDays(text, '--first-dates')).toThrow(/--first-dates/));

  it('both ends are counted in, by the days of this computer', () => {
    const noon = new Date(2026, 2, 17, 12).toISOString();
    const late = new Date(2026, 2, 17, 23, 59).toISOString();
    for (const moment of [noon, late]) {
      expect(isWithin(moment, parseDays('2026-03-17', '--x'))).toBe(true);
      expect(isWithin(moment, parseDays('/2026-03-16', '--x'))).toBe(false);
      expect(isWithin(moment, parseDays('2026-03-18/', '--x'))).toBe(false);
    }
    expect(isWithin('no moment', parseDays('2026-03-17', '--x'))).toBe(false);
  });
});
