import { readFileSync } from 'node:fs';
import { parseRecording } from '../../../src/core/recording/parse-recording.ts';
import { DEFAULT_WARM_UP_RULES } from '../../../src/core/warm-up/default-warm-up-rules.ts';
import { gatherPlatens } from '../../../src/core/warm-up/gather-platens.ts';
import { createReaderDecoder } from '../../../src/core/wire/create-reader-decoder.ts';

const FOLDER = new URL('../../../recordings/', import.meta.url);

/** A shipped recording of platens: its channels, its rules and the truths of its head. */
export function shippedWarmUp(name: string) {
  const { head, entries } = parseRecording(readFileSync(new URL(`${name}.dwell.txt`, FOLDER), 'utf8'));
  return {
    head,
    record: gatherPlatens(entries, createReaderDecoder({}), head.roles),
    rules: { ...DEFAULT_WARM_UP_RULES, setPointC: head.platenSetPointC ?? null },
    truth: (side: string, what: string) => {
      const text = head.further[`truth-${side}-${what}`]!;
      return text === 'never' ? null : Number(text);
    },
  };
}

export const SHIPPED_WARM_UPS = ['north', 'south'].flatMap((press) =>
  [1, 2, 3].map((number) => `warm-up-${press}-${number}`),
);
