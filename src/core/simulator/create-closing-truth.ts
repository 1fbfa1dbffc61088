import { createCrossingWatch } from './create-crossing-watch.ts';
import type { PressMoment } from './create-press-simulation.ts';

/** What really happened in one closing, in seconds of the simulation. null = never. */
export interface ClosingTruth {
  readonly pressClosedS: number;
  /** Slower of the two spots of the bond line. */
  readonly bondLineCrossingS: number | null;
  /** Slower of the two bond-line probes' own temperatures, before any noise or electrical fault. */
  readonly probeCrossingS: number | null;
  readonly openedS: number | null;
}

/** Follows one closing from press closed to opened. */
export function createClosingTruth(targetC: number, closedMoment: PressMoment) {
  const spots = [createCrossingWatch(targetC), createCrossingWatch(targetC)] as const;
  const probes = [createCrossingWatch(targetC), createCrossingWatch(targetC)] as const;
  let openedS: number | null = null;

  function accept(moment: PressMoment): void {
    if (openedS !== null) return;
    spots[0].accept(moment.timeS, moment.bondLineC);
    spots[1].accept(moment.timeS, moment.outerEdgeC);
    probes[0].accept(moment.timeS, moment.probesC[0]);
    probes[1].accept(moment.timeS, moment.probesC[1]);
  }
  accept(closedMoment);

  return {
    accept,
    opened(timeS: number): void {
      openedS ??= timeS;
    },
    truth(): ClosingTruth {
      return {
        pressClosedS: closedMoment.timeS,
        bondLineCrossingS: slower(spots[0].crossingS, spots[1].crossingS),
        probeCrossingS: slower(probes[0].crossingS, probes[1].crossingS),
        openedS,
      };
    },
  };
}

function slower(a: number | null, b: number | null): number | null {
  return a === null || b === null ? null : Math.max(a, b);
}
