import type { ChartTrace } from '../chart/ChartSpec.ts';
import type { ChannelRole } from '../recording/RecordingEntry.ts';

const STYLE: Readonly<Record<Exclude<ChannelRole, 'unused'>, Pick<ChartTrace, 'letter' | 'role' | 'line'>>> =
  {
    'bond-line': { letter: 'B', role: 'bond-line', line: 'solid' },
    'bond-line-inner': { letter: 'I', role: 'bond-line-inner', line: 'solid' },
    'bond-line-outer': { letter: 'O', role: 'bond-line-outer', line: 'solid' },
    'upper-platen': { letter: 'U', role: 'upper-platen', line: 'dashed' },
    'lower-platen': { letter: 'L', role: 'lower-platen', line: 'dotted' },
    ambient: { letter: 'A', role: 'ambient', line: 'dotted' },
  };

/** Letter of a channel on the chart and in the list of channels; null for an unused one. */
export function channelLetter(role: ChannelRole): string | null {
  return role === 'unused' ? null : STYLE[role].letter;
}

export function channelStyle(
  role: Exclude<ChannelRole, 'unused'>,
): Pick<ChartTrace, 'letter' | 'role' | 'line'> {
  return STYLE[role];
}
