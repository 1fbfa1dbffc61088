import type { BondingState, CycleUnderWay } from '../bonding/BondingState.ts';
import { bandAt } from '../bonding/band-at.ts';
import { bondLineNow, hasProbe } from '../bonding/bond-line-now.ts';
import { platensNow } from '../bonding/platens-now.ts';
import { type BlockSize, blockText } from '../chart/block-text.ts';
import type { SegmentRole, StyledRow } from '../chart/StyledRow.ts';
import { LIMITS } from '../run/limits.ts';
import { clockText } from '../screen/clock-text.ts';
import type { ViewLine } from '../screen/TrialView.ts';
import { blockRows } from '../screen-shell/block-rows.ts';
import { choiceRows } from '../screen-shell/choice-rows.ts';
import type { PageSize } from '../screen-shell/ShellView.ts';
import { textRows } from '../screen-shell/text-rows.ts';
import { BONDING_TEXT, cycleWords } from '../text/bonding-text.ts';
import { cautionLines } from '../text/cautions.ts';
import { secondsText, temperatureText } from '../text/units-text.ts';

type Word = keyof typeof BONDING_TEXT.state;

/** Seconds in block digits, the unit in small letters beside them: a large S would pass for a 5. */
function secondsRows(figureS: number, { ascii }: PageSize, size: BlockSize): readonly StyledRow[] {
  const unit = blockText('S', { size: 'small', ascii });
  return blockText(figureS.toFixed(0), { size, ascii }).map((row, i) => [
    { text: `  ${row}  ${unit[i] ?? ''}`, role: 'strong' },
  ]);
}

/** The page of the production timer: one figure in block digits, the state in block letters, then the facts. */
export function bondingRows(state: BondingState, size: PageSize): readonly StyledRow[] {
  if (state.help) return [[], ...BONDING_TEXT.help.flatMap((line) => [...textRows(line, size)])];
  if (!state.cautionsAcknowledged) return cautionRows(size);
  if (state.job === null) return chooseRows(state, size);
  const roomy = size.columns >= 110 && size.rows >= 28;
  const { figureS, caption, word, second, role } = headOf(state);
  const flash = word === 'dwell-done' && Math.floor(state.nowUs / state.job.speed / 500_000) % 2 === 0;
  const shown: SegmentRole = flash ? 'flash' : role;
  const words = second === null ? BONDING_TEXT.state[word] : `${BONDING_TEXT.state[word]}`;
  const top: StyledRow[] = [
    ...(roomy ? [[]] : []),
    ...secondsRows(figureS, size, roomy ? 'big' : 'large'),
    [{ text: `  ${secondsText(figureS, 0)} ${caption}`, role: 'quiet' }],
    ...(roomy ? [[]] : []),
    ...blockRows(words, size, shown, roomy ? 'large' : 'small'),
    ...(second === null
      ? [[]]
      : roomy
        ? [
            [],
            ...blockRows(
              BONDING_TEXT.state[second],
              size,
              second === 'verified' ? 'good' : 'caution',
              'large',
            ),
            [],
          ]
        : [
            [
              {
                text: `  ${BONDING_TEXT.state[second]}`,
                role: second === 'verified' ? ('good' as const) : ('caution' as const),
              },
            ],
          ]),
  ];
  const facts = factsOf(state).flatMap(({ text, role: of }) => [...textRows(text, size, of)]);
  const room = size.rows - top.length - facts.length;
  return [...top, ...facts, ...(room >= 2 ? [[], ...loggedRows(state, size, room - 1)] : [])];
}

interface Head {
  readonly figureS: number;
  readonly caption: string;
  readonly word: Word;
  readonly second: 'verified' | 'not-verified' | null;
  readonly role: SegmentRole;
}

function headOf(state: BondingState): Head {
  const { job, under, nowUs } = state;
  const dwellS = job?.recipe.dwellS ?? 0;
  if (under === null) {
    const platens = platensNow(state);
    const word: Word =
      job?.roles === null || platens.length === 0
        ? 'no-timer-reader'
        : platens.some(({ inside }) => inside === false)
          ? 'platens-cold'
          : platens.some(({ inside }) => inside === null)
            ? 'platens-unknown'
            : 'ready';
    const role = word === 'ready' ? 'good' : word === 'no-timer-reader' ? 'strong' : 'caution';
    return { figureS: dwellS, caption: BONDING_TEXT.set, word, second: null, role };
  }
  if (under.openedUs !== null) {
    const heldS = (under.openedUs - under.closedUs) / 1e6;
    const early = heldS < dwellS - 0.2;
    return {
      figureS: heldS,
      caption: BONDING_TEXT.held,
      word: early ? 'early' : 'opened',
      second: null,
      role: early ? 'caution' : 'strong',
    };
  }
  const leftS = dwellS - (nowUs - under.closedUs) / 1e6;
  if (leftS > 0)
    return {
      figureS: Math.ceil(leftS),
      caption: BONDING_TEXT.toGo,
      word: 'dwell',
      second: null,
      role: 'strong',
    };
  const second = hasProbe(state) ? (holdVerified(state, under) ? 'verified' : 'not-verified') : null;
  return {
    figureS: Math.floor(-leftS),
    caption: BONDING_TEXT.over,
    word: 'dwell-done',
    second,
    role: second === 'not-verified' ? 'caution' : 'good',
  };
}

/** As far as is known now: met, nothing stale or faulted, and the probe still gives the temperature. */
export function holdVerified(state: BondingState, under: CycleUnderWay): boolean {
  return state.session?.run.phase === 'hold-done' && !under.unseen && bondLineNow(state).kind === 'known';
}

function factsOf(state: BondingState): readonly ViewLine[] {
  const { job, under, unit, nowUs } = state;
  if (job === null) return [];
  const { recipe } = job;
  const platens = platensNow(state);
  const platenLines: readonly ViewLine[] =
    platens.length === 0
      ? [{ text: BONDING_TEXT.noPlatens(job.platenSetPointC, unit), role: 'plain' }]
      : platens.map((one) => ({
          text: BONDING_TEXT.platen(one, job.platenBandC, unit),
          role: one.inside === true ? 'plain' : 'caution',
        }));
  const gauge: ViewLine = { text: BONDING_TEXT.gauge(job.gaugePsi), role: 'plain' };
  if (under === null) {
    const leftS =
      recipe.leastRecoveryS === null || state.lastOpenedUs === null
        ? 0
        : recipe.leastRecoveryS - (nowUs - state.lastOpenedUs) / 1e6;
    return [
      ...platenLines,
      gauge,
      bondLineLine(state),
      ...(leftS > 0 ? [{ text: BONDING_TEXT.tooSoon(leftS), role: 'caution' as const }] : []),
      { text: BONDING_TEXT.key, role: 'strong' },
    ];
  }
  if (under.openedUs !== null) {
    const leftS = LIMITS.undoS - (nowUs - under.openedUs) / 1e6;
    return [{ text: BONDING_TEXT.opened(leftS), role: 'plain' }, bondLineLine(state), ...platenLines];
  }
  const elapsed = clockText((nowUs - under.closedUs) / 1e6);
  return [
    { text: BONDING_TEXT.closed(elapsed, clockText(recipe.dwellS)), role: 'strong' },
    bondLineLine(state),
    ...(hasProbe(state) ? [holdLine(state, under)] : []),
    ...platenLines,
    gauge,
  ];
}

function holdLine(state: BondingState, under: CycleUnderWay): ViewLine {
  const counted = BONDING_TEXT.hold(state.session?.run.holdCountedS ?? 0, state.job?.recipe.holdS ?? 0);
  if (under.unseen) return { text: `${counted} ${BONDING_TEXT.holdUnseen}`, role: 'caution' };
  return holdVerified(state, under)
    ? { text: `${counted} ${BONDING_TEXT.holdSeen}`, role: 'good' }
    : { text: counted, role: 'plain' };
}

function bondLineLine(state: BondingState): ViewLine {
  const { job, under, unit, nowUs } = state;
  const now = bondLineNow(state);
  const text = BONDING_TEXT.bondLine(now, unit);
  if (now.kind === 'no-probe') return { text, role: 'quiet' };
  if (now.kind === 'stale') return { text, role: 'quiet' };
  if (now.kind !== 'known') return { text, role: 'fault' };
  const target = BONDING_TEXT.target(job?.recipe.targetC ?? 0, unit);
  if (job === null || under === null || under.openedUs !== null)
    return { text: `${text}; ${target}.`, role: 'bond-line' };
  if (job.band.length === 0)
    return { text: `${text}; ${target}; ${BONDING_TEXT.noBand}.`, role: 'bond-line' };
  const band = bandAt(job.band, (nowUs - under.closedUs) / 1e6);
  if (band === null) return { text: `${text}; ${target}.`, role: 'bond-line' };
  const [lowC, highC] = [band.lowC - job.bandToleranceC, band.highC + job.bandToleranceC];
  const side = now.temperatureC < lowC ? 'below' : now.temperatureC > highC ? 'above' : null;
  return side === null
    ? { text: `${text}: ${BONDING_TEXT.insideBand(lowC, highC, unit)}.`, role: 'bond-line' }
    : { text: `${text}: ${BONDING_TEXT.outsideBand(side, lowC, highC, unit)}.`, role: 'caution' };
}

function loggedRows(state: BondingState, size: PageSize, room: number): readonly StyledRow[] {
  const lines = [...state.logged]
    .reverse()
    .slice(0, room - 1)
    .map((cycle, i) => {
      const number = state.logged.length - i;
      return {
        text: `${number}: ${cycleWords(cycle)}`,
        role: cycle.result === 'done' ? ('plain' as const) : ('caution' as const),
      };
    });
  const head = state.logged.length === 0 ? BONDING_TEXT.none : BONDING_TEXT.cycles(state.logged.length);
  return [
    ...textRows(head, size, 'quiet'),
    ...lines.flatMap(({ text, role }) => [...textRows(text, size, role).slice(0, 1)]),
  ];
}

function cautionRows(size: PageSize): readonly StyledRow[] {
  return [
    [],
    ...blockRows(BONDING_TEXT.state.read, size, 'caution'),
    [],
    ...textRows(BONDING_TEXT.read, size, 'strong'),
    ...cautionLines('heat', 'closing', 'fumes', 'not-a-safety-device').flatMap((line) => [
      ...textRows(`- ${line}`, size),
    ]),
  ];
}

function chooseRows(state: BondingState, size: PageSize): readonly StyledRow[] {
  const top: readonly StyledRow[] = [
    [],
    ...blockRows(BONDING_TEXT.state.choose, size),
    [],
    ...textRows(BONDING_TEXT.choose, size),
    [],
  ];
  const room = size.rows - top.length;
  const from = Math.max(0, Math.min(state.selected - Math.floor(room / 2), state.choices.length - room));
  const shown = state.choices.slice(from, from + room).map((recipe, i) => ({
    key: from + i < 9 ? String(from + i + 1) : '·',
    word: `${recipe.assemblyName} on ${recipe.pressName}`,
    detail: `version ${recipe.version}, dwell ${secondsText(recipe.dwellS)}, target ${temperatureText(recipe.targetC, state.unit)}${recipe.simulated ? ', SIMULATED' : ''}`,
    first: from + i === state.selected,
  }));
  return [...top, ...choiceRows(shown, { ...size, rows: room }, 24)];
}
