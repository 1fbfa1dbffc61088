import type { BondingState } from '../bonding/BondingState.ts';
import { isStale, readingAgeS } from '../bonding/bond-line-now.ts';
import type { ShellView } from '../screen-shell/ShellView.ts';
import { BONDING_TEXT } from '../text/bonding-text.ts';
import type { KeyHint } from '../text/keys-text.ts';
import { STATUS_TEXT } from '../text/status-text.ts';
import { bondingRows } from './bonding-rows.ts';
import { diskText } from './status-of.ts';

/** The production timer as a page: title, body, the keys that do something now, status. */
export function bondingView(state: BondingState): ShellView {
  const { job } = state;
  const badge =
    job === null
      ? null
      : job.simulated
        ? BONDING_TEXT.simulated
        : job.recipe.simulated
          ? BONDING_TEXT.simulatedRecipe
          : null;
  return {
    title:
      job === null
        ? BONDING_TEXT.chooseTitle
        : BONDING_TEXT.title(job.recipe.assemblyName, job.recipe.pressName, job.recipe.version),
    badge,
    body: (size) => bondingRows(state, size),
    message:
      state.asking === 'quit'
        ? { text: BONDING_TEXT.leave, role: 'strong' }
        : state.notice === null
          ? null
          : { text: state.notice.text, role: state.notice.tone === 'quiet' ? 'plain' : state.notice.tone },
    keys: keysNow(state),
    status: statusOf(state),
  };
}

function keysNow(state: BondingState): readonly KeyHint[] {
  const k = BONDING_TEXT.keys;
  if (state.asking === 'quit') return [k.yes, k.stay];
  if (state.help) return [k.back];
  if (!state.cautionsAcknowledged) return [k.read, k.unit, k.help, k.quit];
  if (state.job === null) return [k.choose, k.take, k.unit, k.help, k.quit];
  const { under } = state;
  const mark = under === null || under.openedUs !== null ? k.closed : k.opened;
  return [mark, ...(under === null ? [] : [k.undo]), k.unit, k.help, k.quit];
}

function statusOf(state: BondingState): ShellView['status'] {
  const { job, link, store } = state;
  const ageS = readingAgeS(state);
  const reader =
    job === null
      ? []
      : job.readerName === null
        ? [{ text: STATUS_TEXT.noReader, role: 'quiet' as const }]
        : link.kind === 'lost'
          ? [{ text: STATUS_TEXT.readerLost(job.readerName), role: 'fault' as const }]
          : [
              { text: `${job.readerName}`, role: 'quiet' as const },
              {
                // The rate tells that it is alive; where it is not, the age does. Both beside the disk are too long.
                text:
                  ageS === null
                    ? STATUS_TEXT.noReading
                    : isStale(state) || state.intervalS === null
                      ? STATUS_TEXT.readingAge(ageS)
                      : STATUS_TEXT.rate(1 / state.intervalS),
                role: 'quiet' as const,
              },
              { text: STATUS_TEXT.lostLines(state.session?.counts.lostSamples ?? 0), role: 'quiet' as const },
            ];
  return [...reader, ...diskText(store, state.storePath)];
}
