import { readdirSync } from 'node:fs';
import { describe, expect, it } from 'vitest';
import { replayOnScreen } from './replayed-recording.ts';

const GOOD = ['wb-150-north', 'wb-150-south', 'wb-212-north', 'wb-212-south'].flatMap((trial) =>
  [1, 2, 3, 4, 5].map((run) => `${trial}-run-${run}`),
);

it('all good recordings that are shipped are looked at', () => {
  const shipped = readdirSync(new URL('../../../recordings', import.meta.url))
    .filter((file) => file.startsWith('wb-'))
    .map((file) => file.replace('.dwell.txt', ''));
  expect([...GOOD].sort()).toEqual(shipped.sort());
});

describe('estimated time to target on the shipped good recordings', () => {
  it.each(GOOD)(
    '%s: from half-way on within the larger of a tenth of the rest and 0.5 s of the simulator’s truth',
    (name) => {
      const estimates: { timeS: number; restS: number }[] = [];
      const { head } = replayOnScreen(
        name,
        ({ estimate, shown }) => {
          if (estimate?.kind === 'estimate' && shown !== null && estimates.at(-1)?.timeS !== shown.timeS) {
            estimates.push({ timeS: shown.timeS, restS: estimate.restS });
          }
        },
        80,
      );
      const [closedS, crossingS] = [
        head.truth?.pressClosedS ?? Number.NaN,
        head.truth?.probeCrossingS ?? Number.NaN,
      ];
      const late = estimates.filter(({ timeS }) => timeS >= (closedS + crossingS) / 2 && timeS < crossingS);
      expect(late.length).toBeGreaterThan(50);
      const worst = late
        .map(({ timeS, restS }) => {
          const trueS = crossingS - timeS;
          return { timeS, restS, trueS, share: Math.abs(restS - trueS) / Math.max(0.1 * trueS, 0.5) };
        })
        .reduce((a, b) => (b.share > a.share ? b : a));
      if (process.env.SHOW_WORST) console.log(name, JSON.stringify(worst));
      expect(worst.share, JSON.stringify(worst)).toBeLessThanOrEqual(1);
    },
  );
});
