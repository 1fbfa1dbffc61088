import { recordingRefusals } from '../text/recording-refusals.ts';
import { escapePeopleText } from './escape-people-text.ts';
import { RECORDING_FIRST_LINE } from './looks-like-recording.ts';
import { parseRecordingHead } from './parse-recording-head.ts';
import type { RecordingHead } from './RecordingEntry.ts';
import { RecordingError } from './RecordingError.ts';
import { KNOWN_HEAD_KEYS } from './recording-head-schema.ts';

/**
 * Head of a recording as text, from the first line to `begin` with its line feed.
 * Throws a RecordingError when the text could not be read back (empty id, time without offset, a number that is not finite).
 */
export function formatRecordingHead(head: RecordingHead): string {
  const truth = head.truth;
  const lines: string[] = [];
  const put = (key: string, value: string | number | null | undefined) => {
    if (value === undefined) return;
    const text = value === null ? 'never' : escapePeopleText(String(value));
    lines.push(text === '' ? `${key}:` : `${key}: ${text}`);
  };
  put('recording-id', head.recordingId);
  put('made-at', head.madeAt);
  put('program', head.program);
  put('simulated', head.simulated ? 'yes' : 'no');
  put('roles', head.roles.join(', '));
  put('press', head.pressName);
  put('assembly', head.assemblyName);
  put('trial', head.trialId);
  put('operator', head.operatorInitials);
  put('target-c', head.targetC);
  put('hold-s', head.holdS);
  put('upper-platen-set-point-c', head.platenSetPointC?.upper);
  put('lower-platen-set-point-c', head.platenSetPointC?.lower);
  put('port', head.portPath);
  put('stated-unit', head.statedUnit);
  if (truth !== undefined) {
    put('truth-seed', truth.seed);
    put('truth-press-closed-s', truth.pressClosedS);
    put('truth-bond-line-crossing-s', truth.bondLineCrossingS);
    put('truth-probe-crossing-s', truth.probeCrossingS);
    put('truth-opened-s', truth.openedS);
    put('truth-failure', truth.failure);
  }
  for (const [key, value] of Object.entries(head.further)) {
    if (KNOWN_HEAD_KEYS.has(key)) {
      const [message, remedy] = recordingRefusals.headWrong(
        key,
        'a key without a meaning of its own',
        `"${key}"`,
      );
      throw new RecordingError('recording-head-wrong', message, remedy);
    }
    put(key, value);
  }
  parseRecordingHead(lines);
  return `${RECORDING_FIRST_LINE}\n${lines.join('\n')}\nbegin\n`;
}
