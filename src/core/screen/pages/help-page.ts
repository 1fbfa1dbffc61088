import { CAUTIONS } from '../../text/cautions.ts';
import { TRIAL_HELP } from '../../text/trial-help-text.ts';
import type { DrawPage } from './PageSize.ts';
import { sentenceRows } from './page-rows.ts';

/** Full help: what the screen shows, every key, and that the program is no safety device. */
export function helpPage(): DrawPage {
  return ({ columns }) => [
    ...TRIAL_HELP.keys.map(([key, does]) => [
      { text: '  ', role: 'plain' as const },
      { text: ` ${key} `, role: 'key' as const },
      { text: `  ${does}`, role: 'plain' as const },
    ]),
    [],
    ...TRIAL_HELP.seen.flatMap((line) => sentenceRows(line, columns, 'quiet')),
    ...CAUTIONS['not-a-safety-device'].slice(0, 1).flatMap((line) => sentenceRows(line, columns, 'strong')),
  ];
}
