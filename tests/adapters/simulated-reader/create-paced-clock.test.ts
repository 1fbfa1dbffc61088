import { describe, expect, it } from 'vitest';
import { createPacedClock } from '../../../src/adapters/simulated-reader/create-paced-clock.ts';

describe('createPacedClock', () => {
  it('goes on from 7 s: ×20 for 2 s, halted for 3 s, ×1 for 4 s, without a jump', () => {
    let hostUs = 1_000_000;
    const clock = createPacedClock({ nowUs: () => hostUs }, 7_000_000, 20);
    hostUs += 2_000_000;
    expect(clock.nowUs()).toBe(47_000_000);
    clock.setSpeed(0);
    expect(clock.nowUs()).toBe(47_000_000);
    hostUs += 3_000_000;
    expect(clock.nowUs()).toBe(47_000_000);
    clock.setSpeed(1);
    hostUs += 4_000_000;
    expect(clock.nowUs()).toBe(51_000_000);
  });
});
