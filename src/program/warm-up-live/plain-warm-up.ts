import type { WarmUpScreenState } from '../../core/screen-warm-up/WarmUpScreen.ts';
import { warmUpSentences } from '../../core/screen-warm-up/warm-up-sentences.ts';
import { warmUpStanding } from '../../core/screen-warm-up/warm-up-standing.ts';
import { clock, WARM_UP_LIVE_TEXT } from '../../core/text/warm-up-live-text.ts';
import { readyStateLines } from '../../core/text/warm-up-text.ts';

/** A line at least so often, s of the reader's clock; what is wrong is told after so long of silence. */
const SAY_EVERY_S = 60;
const SILENT_S = 5;

/** The live warm-up in plain lines: one for each change of how the platens stand, and one a minute. A silent reader is told too. */
export function createPlainWarmUp(write: (line: string) => void) {
  let saidUs: number | null = null;
  let saidStanding: string | null = null;

  return {
    /** To be asked often; says a line when there is one to say. */
    look(state: WarmUpScreenState): void {
      const standing = warmUpStanding(state);
      const waitingS = state.openedUs === null ? 0 : (state.nowUs - state.openedUs) / 1e6;
      const isQuiet = standing === 'no-reading' && state.counts.readings === 0;
      if (isQuiet && waitingS < SILENT_S) return;
      const dueS = saidUs === null ? SAY_EVERY_S : (state.nowUs - saidUs) / 1e6;
      if (standing === saidStanding && dueS < SAY_EVERY_S) return;
      saidStanding = standing;
      saidUs = state.nowUs;
      const known =
        standing !== 'no-reader' && standing !== 'stale' && standing !== 'no-reading' && standing !== 'fault';
      const lines = known
        ? readyStateLines(state.ready, state.rule.forS, state.unit)
        : warmUpSentences(state, standing);
      write(
        `${clock(state.ready.timeS ?? waitingS)}: ${WARM_UP_LIVE_TEXT.state[standing]}. ${lines.join(' ')}`,
      );
    },
  };
}
