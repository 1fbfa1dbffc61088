import { describe, expect, it } from 'vitest';
import { CAUTIONS, cautionLines } from '../../../src/core/text/cautions.ts';

describe('cautions', () => {
  it('every occasion has at least one sentence, short enough for a screen of 120 columns', () => {
    for (const [occasion, lines] of Object.entries(CAUTIONS)) {
      expect(lines.length, occasion).toBeGreaterThan(0);
      for (const line of lines) expect(line.length, line).toBeLessThanOrEqual(120);
    }
  });

  it('none tells anyone to open or close the press: the program advises', () => {
    for (const line of Object.values(CAUTIONS).flat()) {
      expect(line).not.toMatch(/\b(open|close) the press\b/iu);
    }
    expect(cautionLines('not-a-safety-device')[0]).toContain('no safety device');
  });

  it('asked for twice they are said once, in the order asked', () => {
    expect(cautionLines('heat', 'closing', 'heat')).toEqual([...CAUTIONS.heat, ...CAUTIONS.closing]);
  });
});
