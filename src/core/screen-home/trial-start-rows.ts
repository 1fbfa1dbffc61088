import type { StyledRow } from '../chart/StyledRow.ts';
import { blockRows } from '../screen-shell/block-rows.ts';
import { choiceRows } from '../screen-shell/choice-rows.ts';
import type { PageSize } from '../screen-shell/ShellView.ts';
import { textRows } from '../screen-shell/text-rows.ts';
import { HOME_TEXT, TRIAL_PAGE_TEXT } from '../text/home-text.ts';
import { numberText, secondsText, temperatureText } from '../text/units-text.ts';
import { lastRoles } from './guide-steps.ts';
import type { HomeState } from './HomeState.ts';
import { rolesText } from './reader-guide.ts';

/** What the trial starts with, one line and one key each. */
export function trialStartRows(state: HomeState, size: PageSize): readonly StyledRow[] {
  const { plan } = state;
  const { lines, missing, notStated } = TRIAL_PAGE_TEXT;
  const texts: readonly (readonly [string, string])[] = [
    [lines.press, pressText(state) ?? missing],
    [lines.assembly, assemblyText(state) ?? missing],
    [lines.reader, plan.reader === 'simulated' ? HOME_TEXT.simulated : (plan.reader ?? missing)],
    [lines.channels, channelsText(state)],
    [lines.ring, plan.ring ?? notStated],
    [lines.coating, plan.coating ?? notStated],
    [lines.probe, plan.probe ?? notStated],
    [lines.initials, plan.initials ?? notStated],
  ];
  const top = blockRows(TRIAL_PAGE_TEXT.word, size, 'good');
  return [
    [],
    ...top,
    [],
    ...choiceRows(
      texts.map(([word, detail], i) => ({ key: `${i + 1}`, word, detail, first: false })),
      { ...size, rows: size.rows - top.length - 4 },
      10,
    ).map((row) =>
      row.map((segment) => (segment.role === 'quiet' ? { ...segment, role: 'strong' as const } : segment)),
    ),
    [],
    ...textRows(TRIAL_PAGE_TEXT.scan, size, 'quiet', 3),
  ];
}

function pressText({ facts, plan, unit }: HomeState): string | null {
  const press = facts.presses.find(({ name }) => name === plan.pressName);
  if (press === undefined) return plan.pressName;
  const set = press.platenSetPointC;
  return [
    press.name,
    press.ramBoreMm === null ? null : `ram ${numberText(press.ramBoreMm, 0)} mm`,
    set === null ? null : `platens ${temperatureText(set.upper, unit)}`,
  ]
    .filter((part) => part !== null)
    .join(', ');
}

function assemblyText({ facts, plan, unit }: HomeState): string | null {
  const assembly = facts.assemblies.find(({ name }) => name === plan.assemblyName);
  if (assembly === undefined) return plan.assemblyName;
  return `${assembly.name}, target ${temperatureText(assembly.targetC, unit)}, hold ${secondsText(assembly.holdS)}`;
}

function channelsText(state: HomeState): string {
  if (state.plan.reader === 'simulated') return TRIAL_PAGE_TEXT.simulatedChannels;
  return rolesText((lastRoles(state) ?? 'bond-line').split(','));
}
