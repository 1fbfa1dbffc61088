import type { Reduced } from './reduce-key.ts';
import type { TrialScreenState } from './TrialScreenState.ts';

/** How much faster than it was a stored run can go by. */
export const REPLAY_SPEEDS = [1, 2, 5, 10, 20, 50, 100] as const;

/** How a stored run goes by now. */
export interface ReplayPace {
  readonly speed: number;
  readonly paused: boolean;
}

/** Seconds of the screen's clock in one second of the person before it: notices and flashes are timed for the person. */
export function speedOf({ setup, pace, replayOver }: TrialScreenState): number {
  return replayOver ? 1 : (pace?.speed ?? setup.speed ?? 1);
}

/** P halts the replay and lets it go on, + (or = on the same key) and - change its speed; null for any other key. */
export function reducePaceKey(state: TrialScreenState, name: string): Reduced | null {
  const { pace } = state;
  if (pace === null || state.replayOver) return null;
  switch (name) {
    case 'p':
      return paced(state, { ...pace, paused: !pace.paused });
    case '+':
    case '=':
      return paced(state, { ...pace, speed: stepped(pace.speed, 1) });
    case '-':
      return paced(state, { ...pace, speed: stepped(pace.speed, -1) });
    default:
      return null;
  }
}

/** What is timed by the old speed would stand too long or too short by the new one. */
function paced(state: TrialScreenState, pace: ReplayPace): Reduced {
  const next = { ...state, pace, notice: null, flashUntilUs: 0 };
  return [next, [{ kind: 'replay-pace', ...pace }]];
}

function stepped(speed: number, by: 1 | -1): number {
  const faster = REPLAY_SPEEDS.filter((one) => (by === 1 ? one > speed : one < speed));
  return (by === 1 ? faster[0] : faster.at(-1)) ?? speed;
}
