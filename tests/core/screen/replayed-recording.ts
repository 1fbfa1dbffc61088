import { readFileSync } from 'node:fs';
import { parseRecording } from '../../../src/core/recording/parse-recording.ts';
import type { RecordingHead } from '../../../src/core/recording/RecordingEntry.ts';
import { startTrialScreen } from '../../../src/core/screen/start-trial-screen.ts';
import type { TrialScreenEvent } from '../../../src/core/screen/TrialScreenEvent.ts';
import type { TrialScreenState } from '../../../src/core/screen/TrialScreenState.ts';
import { trialScreenReducer } from '../../../src/core/screen/trial-screen-reducer.ts';
import { createSession } from '../../../src/core/session/create-session.ts';
import { createReaderDecoder } from '../../../src/core/wire/create-reader-decoder.ts';
import { RULES, SETUP } from './scripted-trial.ts';

/** A shipped recording through the real session into the screen's reducer; `look` sees every state. */
export function replayOnScreen(
  name: string,
  look: (state: TrialScreenState, event: TrialScreenEvent) => void,
  /** Stops after this many seconds of the recording. */
  untilS = Number.POSITIVE_INFINITY,
): { readonly head: RecordingHead; readonly state: TrialScreenState } {
  const { head, entries } = parseRecording(
    readFileSync(new URL(`../../../recordings/${name}.dwell.txt`, import.meta.url), 'latin1'),
  );
  const rules = { ...RULES, platenSetPointC: head.platenSetPointC ?? null };
  const session = createSession({ decoder: createReaderDecoder(), roles: head.roles, rules });
  let state = startTrialScreen({ ...SETUP, roles: head.roles, rules }, 0);
  const send = (event: TrialScreenEvent) => {
    state = trialScreenReducer(state, event)[0];
    look(state, event);
  };
  send({ kind: 'link', link: { kind: 'open' }, atUs: 0 });
  for (const entry of entries) {
    if (entry.arrivedUs > untilS * 1e6) return { head, state };
    const events = session.accept(entry);
    send({ kind: 'session', state: session.state, events, atUs: entry.arrivedUs });
  }
  send({ kind: 'session', state: session.state, events: session.finish(), atUs: state.nowUs });
  return { head, state };
}
