import { readdirSync, readFileSync, statSync } from 'node:fs';
import { describe, expect, it } from 'vitest';
import { parseRecording } from '../../../src/core/recording/parse-recording.ts';
import {
  platenRecordingText,
  SHIPPED_PLATEN_RECORDINGS,
} from '../../../src/core/simulator/warm-up-shipped.ts';

const FOLDER = new URL('../../../recordings/', import.meta.url);

describe('recordings of platens in recordings/', () => {
  it('are exactly the shipped ones, under 3 MB together', () => {
    const files = readdirSync(FOLDER).filter((name) => /^(warm-up|survey)-.*\.dwell\.txt$/.test(name));
    expect(files.sort()).toEqual(SHIPPED_PLATEN_RECORDINGS.map(({ fileName }) => fileName).sort());
    const bytes = files.reduce((sum, name) => sum + statSync(new URL(name, FOLDER)).size, 0);
    expect(bytes).toBeLessThan(3e6);
  });

  it.each(SHIPPED_PLATEN_RECORDINGS)(
    '$fileName: made anew is the same to the last byte, and sound',
    (shipped) => {
      const text = readFileSync(new URL(shipped.fileName, FOLDER), 'utf8');
      expect(platenRecordingText(shipped) === text, 'same bytes').toBe(true);
      expect(parseRecording(text).soundness).toEqual({ kind: 'sound' });
    },
  );
});
