import type { Press } from '../../core/press/Press.ts';
import type { Store } from '../../core/store/Store.ts';
import { COMMAND_TEXT } from '../../core/text/command-text.ts';
import { pressLine } from '../../core/text/store-lists-text.ts';
import { parseDuration } from '../../core/units/parse-duration.ts';
import { parseLength } from '../../core/units/parse-length.ts';
import { parsePressure } from '../../core/units/parse-pressure.ts';
import { parseCount } from '../options/parse-count.ts';
import { parsePlatens } from '../options/run-rules.ts';
import { readFromStore, type StoreOptions, withStore } from '../options/with-store.ts';
import { print, printJson } from '../output/print.ts';

interface PressOptions extends StoreOptions {
  readonly bore?: string;
  readonly rod?: string;
  readonly rams?: string;
  readonly division?: string;
  readonly platens?: string;
  readonly timerStarts?: 'button' | 'closing';
  readonly timerOffset?: string;
  readonly timerStep?: string;
  readonly json?: boolean;
}

/** A press of which only the name is known. */
export const newPress = (name: string): Press => ({
  name,
  ramBoreMm: null,
  ramRodMm: null,
  rams: 1,
  gaugeDivisionPsi: null,
  platenSetPointC: null,
  timerStartsAt: 'closing',
  timerOffsetS: 0,
  timerStepS: 1,
});

/** `presses`: lists the presses. `presses NAME --bore …`: adds or changes one. */
export async function presses(name: string | undefined, options: PressOptions): Promise<void> {
  const open = name === undefined ? readFromStore : withStore;
  await open(options, (store) => {
    if (name !== undefined) store.savePress(changed(store, name, options));
    const shown =
      name === undefined ? store.presses() : store.presses().filter((press) => press.name === name);
    if (options.json) return printJson({ presses: shown });
    print(shown.length === 0 ? COMMAND_TEXT.none.press : shown.map(pressLine).join('\n'));
  });
}

function changed(store: Store, name: string, options: PressOptions): Press {
  const before = store.presses().find((press) => press.name === name) ?? newPress(name);
  return {
    ...before,
    ...(options.bore === undefined ? {} : { ramBoreMm: parseLength(options.bore, '--bore') }),
    ...(options.rod === undefined ? {} : { ramRodMm: parseLength(options.rod, '--rod') }),
    ...(options.rams === undefined
      ? {}
      : { rams: parseCount(options.rams, '--rams', { least: 1, most: 20 }) }),
    ...(options.division === undefined
      ? {}
      : { gaugeDivisionPsi: parsePressure(options.division, '--division') }),
    ...(options.platens === undefined ? {} : { platenSetPointC: parsePlatens(options.platens, '--platens') }),
    ...(options.timerStarts === undefined ? {} : { timerStartsAt: options.timerStarts }),
    ...(options.timerOffset === undefined
      ? {}
      : { timerOffsetS: parseDuration(options.timerOffset, '--timer-offset', { negative: true }) }),
    ...(options.timerStep === undefined
      ? {}
      : { timerStepS: parseDuration(options.timerStep, '--timer-step') }),
  };
}
