import { channelAtRest } from '../ready-check/channel-at-rest.ts';
import { notPassedNote } from '../ready-check/not-passed-note.ts';
import type { ReaderNow, ReadyItem } from '../ready-check/ReadyCheck.ts';
import { isSettled, readyCheck } from '../ready-check/ready-check.ts';
import type { ClosingSource } from '../run/RunResult.ts';
import { READY_PAGE, READY_TITLE, readyWords } from '../text/ready-text.ts';
import { bondLineTrouble } from './bond-line-trouble.ts';
import type { TrialScreenState } from './TrialScreenState.ts';

/** Stretch of readings that the ready check looks at, s. */
export const READY_STRETCH_S = 20;

/** The ready check as it stands now. */
export function readyItems(state: TrialScreenState): readonly ReadyItem[] {
  const { roles, rules, gauge = null } = state.setup;
  const fromS = (state.latest?.timeS ?? 0) - READY_STRETCH_S;
  const readings = state.recent.filter((reading) => reading.timeS >= fromS);
  return readyCheck({
    reader: readerNow(state),
    channels: roles.flatMap((role, i) => (role === 'unused' ? [] : [channelAtRest(readings, i + 1, role)])),
    rules,
    cooling: state.cooling,
    gauge,
    confirmed: state.ready.confirmed,
    overridden: state.ready.overridden,
  });
}

/**
 * The line a person is at: the one chosen, else the first that holds something up and needs a person, else one that
 * only needs time; null when all is settled.
 */
export function currentItem(items: readonly ReadyItem[], selected: string | null): ReadyItem | null {
  const open = items.filter((item) => !isSettled(item));
  return (
    items.find((item) => item.name === selected) ??
    open.find((item) => item.state !== 'wait') ??
    open[0] ??
    null
  );
}

/**
 * What the ready check leaves in the recording as the press closes: gauge, reasons for going on, what was not in order
 * and what was not looked at. `notPassed`: in short words for the screen, which asks why; null where nothing.
 */
export function readyNotes(
  state: TrialScreenState,
  closedBy: ClosingSource,
): { readonly notes: readonly string[]; readonly notPassed: string | null } {
  if (state.setup.readyCheck !== true) return { notes: [], notPassed: null };
  const items = readyItems(state);
  const { gauge = null } = state.setup;
  const { foundThen = {} } = state.ready;
  const title = (item: ReadyItem) => READY_TITLE[item.name].toLowerCase();
  const found = (item: ReadyItem) => readyWords(item, state.unit).found;
  const open = items.filter((item) => !isSettled(item));
  // A run that is seen by its rise alone moves probes and platens already.
  const failed = open.filter(
    ({ name, state: stands }) =>
      stands === 'not-ready' && (closedBy !== 'onset' || name === 'reader' || name === 'probes'),
  );
  const left = open.filter(({ state: stands }) => stands !== 'not-ready');
  const notes = [
    ...(gauge !== null && state.ready.confirmed.includes('gauge')
      ? [READY_PAGE.gaugeConfirmed(gauge.gaugePsi)]
      : []),
    ...items.flatMap((item) =>
      item.overridden === null
        ? []
        : [READY_PAGE.note(READY_TITLE[item.name], foundThen[item.name] ?? found(item), item.overridden)],
    ),
    ...(failed.length === 0
      ? []
      : [
          notPassedNote(
            failed.map((item) => `${title(item)}: ${found(item)}`),
            failed.some(({ name }) => name === 'probes'),
          ),
        ]),
    ...(state.ready.done || left.length === 0 ? [] : [READY_PAGE.unfinished(left.map(title))]),
  ];
  return { notes, notPassed: failed.length === 0 ? null : failed.map(title).join(', ') };
}

function readerNow(state: TrialScreenState): ReaderNow {
  const trouble = bondLineTrouble(state);
  switch (trouble?.kind) {
    case 'no-reader':
      return trouble.cause === null ? { kind: 'silent', ageS: null } : { kind: 'lost', cause: trouble.cause };
    case 'refused':
      return { kind: 'refused', detail: trouble.detail };
    case 'stale':
      return { kind: 'silent', ageS: trouble.ageS };
    default:
      return {
        kind: 'speaks',
        ratePerS: state.intervalS !== null && state.intervalS > 0 ? 1 / state.intervalS : null,
      };
  }
}
