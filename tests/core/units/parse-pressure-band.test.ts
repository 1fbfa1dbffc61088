import { describe, expect, it } from 'vitest';
import { parsePressureBand } from '../../../src/core/units/parse-pressure-band.ts';

describe('parsePressureBand', () => {
  it.each([
    ['200psi/250psi', 200, 250],
    ['200-250 psi', 200, 250],
    ['200 to 250 psi', 200, 250],
    ['200 psi – 250 psi', 200, 250],
    ['220psi', 220, 220],
  ])('%s is %d to %d psi', (text, low, high) => {
    expect(parsePressureBand(text, '--net')).toEqual({ low, high });
  });

  it('13.8 to 17.2 bar is 200.15 to 249.46 psi (1 bar = 14.503774 psi, NIST SP 811 table B.8)', () => {
    const { low, high } = parsePressureBand('13.8 to 17.2 bar', '--net');
    expect(low).toBeCloseTo(13.8 * 14.503774, 3);
    expect(high).toBeCloseTo(17.2 * 14.503774, 3);
  });

  it.each(['250psi/200psi', '200psi/250psi/300psi', '0psi', '200', '200/250', 'psi', ''])(
    'refuses "%s" by the option’s name',
    (text) => {
      expect(() => parsePressureBand(text, '--net')).toThrowError(/--net/);
    },
  );
});
