import type { SegmentRole, StyledRow } from '../chart/StyledRow.ts';
import { diskText } from '../screen-bonding/status-of.ts';
import { blockRows } from '../screen-shell/block-rows.ts';
import type { PageSize, ShellView } from '../screen-shell/ShellView.ts';
import { textRows } from '../screen-shell/text-rows.ts';
import { CAUTIONS } from '../text/cautions.ts';
import { WARM_UP_LIVE_TEXT } from '../text/warm-up-live-text.ts';
import { readyStateLines } from '../text/warm-up-text.ts';
import type { WarmUpScreenState } from './WarmUpScreen.ts';
import { type WarmUpStanding, warmUpStanding } from './warm-up-standing.ts';

const T = WARM_UP_LIVE_TEXT;

const ROLES: Readonly<Record<WarmUpStanding, SegmentRole>> = {
  'no-reader': 'fault',
  'no-reading': 'caution',
  stale: 'caution',
  heating: 'strong',
  above: 'caution',
  'in-band': 'strong',
  ready: 'good',
};

/** The live warm-up as a page: state in block letters, each platen in block digits, time inside, estimate, cautions. */
export function warmUpView(state: WarmUpScreenState): ShellView {
  const standing = warmUpStanding(state);
  const { link, latestUs, nowUs } = state;
  const ageS = latestUs === null ? null : (nowUs - latestUs) / 1e6;
  return {
    title: T.title(state.pressName),
    badge: state.simulated ? T.simulated : null,
    body: (size) => bodyRows(state, standing, size),
    message: null,
    keys: [T.keys.unit, T.keys.quit],
    status: [
      link.kind === 'lost'
        ? { text: `reader LOST (${state.readerName})`, role: 'fault' }
        : { text: state.readerName, role: 'quiet' },
      { text: ageS === null ? 'no reading yet' : `reading ${ageS.toFixed(0)} s old`, role: 'quiet' },
      ...diskText(state.store, state.storePath),
    ],
  };
}

function bodyRows(state: WarmUpScreenState, standing: WarmUpStanding, size: PageSize): readonly StyledRow[] {
  const { ready, rule, unit } = state;
  const roomy = isRoomy(size);
  const blocks = roomy ? 'large' : 'small';
  const gap: readonly StyledRow[] = roomy ? [[]] : [];
  const current = isCurrent(standing);
  return [
    ...gap,
    ...blockRows(T.state[standing], size, ROLES[standing], blocks),
    ...gap,
    ...figureRows(state, standing, size),
    ...textRows(T.inside(current ? ready.insideForS : 0, rule.forS), size, 'strong'),
    ...sentences(state, standing).flatMap((line) => [...textRows(line, size, ROLES[standing])]),
    ...gap,
    ...textRows(T.rule(rule.bandC, rule.forS, unit), size, 'quiet'),
    ...CAUTIONS.heat.flatMap((line) => [...textRows(line, size, 'caution')]),
  ];
}

/** Roomy: one platen under the other; else the first two side by side, so that everything fits 24 rows. */
function figureRows(
  { ready, unit }: WarmUpScreenState,
  standing: WarmUpStanding,
  size: PageSize,
): readonly StyledRow[] {
  const roomy = isRoomy(size);
  const current = isCurrent(standing);
  const platens = ready.platens.map((one) =>
    standing === 'no-reader' ? { ...one, temperatureC: null } : one,
  );
  const blocks = platens.map((platen) =>
    blockRows(
      figure(platen.temperatureC, unit),
      size,
      current ? (platen.inside ? 'good' : 'strong') : 'quiet',
      roomy ? 'large' : 'small',
    ),
  );
  const texts = platens.map((platen) => textRows(T.platen(platen, unit), size, current ? 'plain' : 'quiet'));
  if (roomy) return blocks.flatMap((rows, index) => [...rows, ...texts[index]!, []]);
  const [first = [], second = []] = blocks;
  const half = Math.floor(size.columns / 2);
  return [
    ...first.map((row, index): StyledRow => {
      const columns = row.reduce((sum, { text }) => sum + [...text].length, 0);
      return [
        ...row,
        { text: ' '.repeat(Math.max(1, half - columns)), role: 'plain' },
        ...(second[index] ?? []),
      ];
    }),
    ...texts.flat(),
  ];
}

const isRoomy = ({ columns, rows }: PageSize): boolean => columns >= 110 && rows >= 28;

/** Figures are of now. */
function isCurrent(standing: WarmUpStanding): boolean {
  return standing !== 'no-reader' && standing !== 'no-reading' && standing !== 'stale';
}

function sentences(state: WarmUpScreenState, standing: WarmUpStanding): readonly string[] {
  if (standing === 'no-reader') return [T.lost];
  if (standing === 'stale') return [T.old((state.nowUs - (state.latestUs ?? 0)) / 1e6)];
  if (standing === 'no-reading') return [T.noReading];
  const lines = readyStateLines(state.ready, state.rule.forS, state.unit);
  // The time inside stands above already.
  return standing === 'in-band' ? lines.slice(1) : lines;
}

function figure(temperatureC: number | null, unit: 'F' | 'C'): string {
  if (temperatureC === null) return `--- ${unit}`;
  return `${(unit === 'F' ? temperatureC * 1.8 + 32 : temperatureC).toFixed(0)} ${unit}`;
}
