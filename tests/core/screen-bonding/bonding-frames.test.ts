import { describe, expect, it } from 'vitest';
import { roleStyle } from '../../../src/adapters/terminal/palette.ts';
import type { BondingState } from '../../../src/core/bonding/BondingState.ts';
import { bondingReducer } from '../../../src/core/bonding/bonding-reducer.ts';
import { blockText } from '../../../src/core/chart/block-text.ts';
import { rowText } from '../../../src/core/chart/row-text.ts';
import type { StyledRow } from '../../../src/core/chart/StyledRow.ts';
import { bondingView } from '../../../src/core/screen-bonding/bonding-view.ts';
import { shellFrame } from '../../../src/core/screen-shell/shell-frame.ts';
import { BONDING_STATES } from '../../adapters/terminal/screens/bonding-states.ts';
import { bondLineC, DrivenBonding, JOB } from '../bonding/driven-bonding.ts';

const heated = (extraC: (timeS: number) => number | null = () => 0, job = JOB) =>
  new DrivenBonding({
    job,
    bondC: (timeS) => {
      const extra = extraC(timeS);
      return extra === null ? null : bondLineC(timeS - 10) + extra;
    },
  })
    .until(10)
    .key('c');

/** Each state: how it comes about, what stands in block letters (left and right), what in plain words. */
const STATES: Readonly<
  Record<string, readonly [make: () => BondingState, blocks: readonly string[], words: readonly RegExp[]]>
> = {
  cautions: [BONDING_STATES.cautions!, ['READ THIS'], [/heat gloves/, /read and understood/]],
  'choose a recipe': [BONDING_STATES['choosing a recipe']!, ['RECIPE'], [/WB-212 on North/, /dwell 175 s/]],
  'being made ready': [opening, ['WAIT'], [/Making the recipe ready/]],
  'no reader': [BONDING_STATES['no reader']!, ['TIMER'], [/not measured: the time alone/]],
  ready: [
    () => new DrivenBonding().until(20).state,
    ['READY', '75°F', 'C AT CLOSING'],
    [/Gauge pressure 94 psi/, /Upper platen 450 °F/, /175 s dwell/],
  ],
  'platen out': [
    () => new DrivenBonding({ upperC: () => 225 }).until(20).state,
    ['PLATEN OUT'],
    [/Upper platen 437 °F \(225 °C\), BELOW 450 °F/],
  ],
  // 24 °C, platens 232 °C, τ 40.5 s: after 60 s 232 − 208·exp(−60/40.5) = 184.7 °C = 364 °F.
  'closed, in band': [
    () => heated().until(70).state,
    ['115', '364°F', 'DWELL', 'IN BAND'],
    [/115 s to the end of the dwell/, /bond line, band 349 to 380 °F/, /Closed for 60 s of 175 s/],
  ],
  'closed, above': [() => heated((t) => (t > 60 ? 20 : 0)).until(70).state, ['DWELL', 'ABOVE'], [/band/]],
  'closed, below': [() => heated((t) => (t > 60 ? -20 : 0)).until(70).state, ['DWELL', 'BELOW'], [/band/]],
  'no band to hold against': [
    () => heated(undefined, { ...JOB, band: [] }).until(70).state,
    ['DWELL', 'REACHED'],
    [/own runs are not in this store/],
  ],
  stale: [
    () => heated().until(70).until(82, { silent: true }).state,
    ['103', 'DWELL', 'OLD 12 S', 'HOLD NOT VERIFIED'],
    [/bond line as it was 12 s ago/, /Upper platen: no reading/],
  ],
  'open probe': [
    () => heated((t) => (t > 40 ? null : 0)).until(70).state,
    ['115', 'FAULT', 'PROBE'],
    [/PROBE FAULT, open circuit: wire broken/],
  ],
  'reader lost': [
    () =>
      heated()
        .until(70)
        .send({ kind: 'link', link: { kind: 'lost', sinceUs: 70e6, cause: 'unplugged' }, atUs: 70e6 }).state,
    ['LOST', 'READER'],
    [/READER LOST\. The timer goes on/, /reader LOST/],
  ],
  'dwell done': [
    () => heated().until(190).state,
    ['+5', 'DWELL DONE', 'HOLD VERIFIED'],
    [/5 s longer than the dwell/, /Hold met and seen whole/],
  ],
  // Longer closed than the recipe's own runs were: no band any more, the target alone.
  'longer than the band': [
    () => heated().until(215).state,
    ['+30', 'DWELL DONE', 'REACHED', 'HOLD VERIFIED'],
    [/bond line, target 350 °F/],
  ],
  'hold not verified': [
    () => heated().until(100).until(104, { silent: true }).until(190).state,
    ['DWELL DONE', 'HOLD NOT VERIFIED'],
    [/Not verified: readings missing/],
  ],
  'opened early': [
    () => heated().until(70).key('o').until(71).state,
    ['OPENED EARLY'],
    [/until then U takes the opening back/],
  ],
  'leaving asked': [() => heated().until(70).key('q').state, ['DWELL'], [/Leave\?/, /Y\W+leave/]],
};

function opening(): BondingState {
  const before = BONDING_STATES['choosing a recipe']!();
  return { ...before, opening: true };
}

const frameOf = (state: BondingState, columns: number, rows: number, ascii = false): readonly StyledRow[] =>
  shellFrame(bondingView(state), { columns, rows, ascii });

/** Whether the frame holds these words in block letters of any size, three rows or more, old ones faded too. */
function blocks(frame: readonly StyledRow[], words: string, ascii: boolean): boolean {
  const lines = frame.map(rowText);
  return (['small', 'large', 'big'] as const).some((size) =>
    [false, true].some((faded) => {
      const rows = blockText(words, { size, ascii, faded }).map((row) => row.trimEnd());
      return lines.some((_, at) => {
        const column = lines[at]!.indexOf(rows[0]!);
        return (
          column >= 0 &&
          rows.every((row, i) => (lines[at + i] ?? '').slice(column, column + row.length) === row)
        );
      });
    }),
  );
}

describe.each(Object.entries(STATES))('%s', (_name, [make, letters, words]) => {
  it.each([
    [80, 24, false],
    [120, 36, false],
    [80, 24, true],
    [120, 36, true],
  ] as const)('at %i × %i (ASCII %s) is told in block letters and in words', (columns, rows, ascii) => {
    const frame = frameOf(make(), columns, rows, ascii);
    expect(frame).toHaveLength(rows - 1);
    const text = frame.map(rowText).join('\n');
    // In ASCII every block letter takes five rows; what the hand does next then stands in plain letters at 80 × 24.
    for (const one of letters)
      expect(blocks(frame, one, ascii) || (ascii && columns === 80 && one === 'C AT CLOSING'), one).toBe(
        true,
      );
    // Nor do all facts find room there beside three rows of block letters.
    for (const one of words.slice(0, ascii && columns === 80 ? 1 : words.length))
      expect(text.replace(/\s+/g, ' ')).toMatch(
        ascii ? new RegExp(one.source.replaceAll('°F', 'F').replaceAll('°C', 'C')) : one,
      );
  });
});

describe('at two metres, 80 × 24', () => {
  const main = () => frameOf(heated().until(70).state, 80, 24);

  it('countdown and bond line stand side by side in digits of five rows', () => {
    const rows = main().map(rowText).slice(1, 6);
    expect(rows.every((row) => /\S/.test(row.slice(0, 38)) && /\S/.test(row.slice(38)))).toBe(true);
    const large = blockText('115', { size: 'large', ascii: false });
    for (const [i, row] of large.entries()) expect(rows[i]).toContain(row.trimEnd());
  });

  it('IN BAND is never in a red, with 16 and with 256 colours; ABOVE has another style', () => {
    const roleOf = (frame: readonly StyledRow[], word: string) => {
      const [first] = blockText(word, { size: 'small', ascii: false });
      return frame.flat().find(({ text }) => text === first)?.role;
    };
    const inside = roleOf(main(), 'IN BAND');
    const above = roleOf(frameOf(heated((t) => (t > 60 ? 20 : 0)).until(70).state, 80, 24), 'ABOVE');
    expect(inside).toBeDefined();
    expect(above).toBeDefined();
    // SGR 31 and 91 are red; 161 and its neighbours in the cube of 256 colours too.
    for (const colours of ['16', '256'] as const) {
      expect(roleStyle(inside!, colours)).not.toMatch(
        /(^|;)(31|91)($|;)|38;5;(9|124|125|160|161|196|197)($|;)/,
      );
      expect(roleStyle(inside!, colours)).not.toBe(roleStyle(above!, colours));
    }
    // The temperature itself, inside its band, likewise.
    const figure = main()[1]!.find(
      ({ text }) => text === blockText('364°F', { size: 'large', ascii: false })[0],
    );
    expect(roleStyle(figure!.role, '256')).not.toMatch(/38;5;161/);
  });

  it('an old value is drawn broken and quiet, from 1.2 s after the last reading on', () => {
    const driven = heated().until(70);
    const solid = blockText('364°F', { size: 'large', ascii: false })[0]!;
    expect(driven.text()).toContain(solid.trimEnd());
    driven.until(71.3, { silent: true });
    expect(driven.text()).not.toContain(solid.trimEnd());
    const row = driven.rows()[1]!;
    expect(row.find(({ text }) => text.includes('░'))?.role).toBe('quiet');
  });

  it('without a probe the time stands alone', () => {
    const state = heated(undefined, { ...JOB, roles: ['upper-platen', 'lower-platen'], band: [] }).until(
      70,
    ).state;
    const rows = frameOf(state, 80, 24).map(rowText).slice(1, 6);
    expect(rows.every((row) => row.slice(38).trim() === '')).toBe(true);
  });

  it('Q twice does not leave a running closing; Y does', () => {
    const driven = heated().until(70).key('q').until(71).key('q').until(72);
    expect(driven.did).not.toContain('quit');
    expect(driven.key('y').did).toContain('quit');
  });

  it('Enter twice makes a recipe ready once: its reader is opened once', () => {
    const enter = (state: BondingState, atUs: number) =>
      bondingReducer(state, { kind: 'input', input: { kind: 'named', name: 'enter', atUs }, atUs });
    const [first, wishes] = enter(BONDING_STATES['choosing a recipe']!(), 1e6);
    expect(wishes.map(({ kind }) => kind)).toEqual(['recipe-chosen']);
    expect(enter(first, 3e6)[1]).toEqual([]);
  });
});

it('dwell done flashes once a second as a bar under the figures; the block letters stay as they are', () => {
  const driven = heated().until(190);
  const looks = [0.1, 0.6, 1.1, 1.6].map((moreS) => {
    const frame = driven.until(190 + moreS).rows(80, 24);
    const at = frame.findIndex((row) => row.some(({ role }) => role === 'flash'));
    expect(blocks(frame, 'DWELL DONE', false)).toBe(true);
    return at >= 0 ? rowText(frame[at]!) : null;
  });
  expect(looks.map((one) => one !== null)).toEqual([true, false, true, false]);
  expect(looks[0]).toMatch(/longer than the dwell/);
});
