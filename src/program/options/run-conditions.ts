import type { RunConditions } from '../../core/reading/StreamEvent.ts';
import { OptionError } from './OptionError.ts';

export interface ConditionOptions {
  readonly ring?: string;
  readonly coating?: string;
  readonly carrier?: string;
  readonly probe?: string;
}

/** How the runs are set up; null = not stated. */
export function runConditions(options: ConditionOptions): RunConditions {
  return {
    ring: oneOf(options.ring, '--ring', ['fresh', 're-used']),
    coating: oneOf(options.coating, '--coating', ['coated', 'bare']),
    carrierId: options.carrier ?? null,
    probe: oneOf(options.probe, '--probe', ['re-laid', 'left']),
  };
}

function oneOf<Word extends string>(
  text: string | undefined,
  option: string,
  words: readonly Word[],
): Word | null {
  if (text === undefined) return null;
  const found = words.find((word) => word === text);
  if (found !== undefined) return found;
  throw new OptionError(
    `${option}: expected ${words.join(' or ')}, came "${text}"`,
    `Write ${option} ${words[0]}`,
  );
}
