import { createMonotonicClock } from '../../adapters/host/create-monotonic-clock.ts';
import { COMMAND_TEXT } from '../../core/text/command-text.ts';
import { recipeLines } from '../../core/text/store-lists-text.ts';
import { holdTrial } from '../live/hold-trial.ts';
import { simulatedTrialReader } from '../live/simulated-trial-reader.ts';
import { waitForDisk } from '../live/wait-for-disk.ts';
import { parseCount } from '../options/parse-count.ts';
import { parseNumber } from '../options/parse-number.ts';
import { DEMO_STORE, storePath } from '../options/store-path.ts';
import { openNamedStore, type StoreOptions } from '../options/with-store.ts';
import { canDraw } from '../output/can-draw.ts';
import { print } from '../output/print.ts';
import { acceptStored } from '../trials/accept-stored.ts';
import { DEMO_ASSEMBLY, DEMO_PRESS, demoShopIn } from './demo-shop.ts';

interface DemoOptions extends StoreOptions {
  readonly speed?: string;
  readonly runs: string;
  readonly plain?: boolean;
  readonly ascii?: boolean;
  readonly show: 'F' | 'C';
  readonly json?: boolean;
}

const SCREEN_SPEED = 10;

/**
 * `demo`: the whole job on the simulated reader, to a dwell and a saved recipe, in a store of its own beside the real one.
 * A store that is named is taken, unless its press or assembly of the demo's names is another: nothing is overwritten.
 */
export async function demo(options: DemoOptions): Promise<void> {
  const ownStore = options.store === undefined || options.store === DEMO_STORE;
  const path = storePath({ ...options, store: options.store ?? DEMO_STORE });
  const plain = options.plain === true || options.json === true || !canDraw();
  const runs = parseCount(options.runs, '--runs', { least: 1, most: 20 });
  const paced =
    options.speed === undefined
      ? SCREEN_SPEED
      : parseNumber(options.speed, '--speed', { least: 0.1, most: 1000 });
  const ended = new AbortController();
  const store = await openNamedStore({ store: path }, waitForDisk);
  try {
    demoShopIn(store);
    const trialId = await holdTrial({
      store,
      reader: simulatedTrialReader({
        host: createMonotonicClock(),
        speed: plain && options.speed === undefined ? 'as-fast-as-possible' : paced,
        runs,
        goOn: !plain,
        onFinished: () => {
          if (plain) ended.abort();
        },
      }),
      assembly: DEMO_ASSEMBLY,
      press: DEMO_PRESS,
      roles: ['bond-line', 'bond-line-outer', 'upper-platen', 'lower-platen'],
      ruleOptions: {},
      conditions: { ring: 'fresh', coating: 'coated', carrierId: null, probe: 're-laid' },
      statedUnit: null,
      initials: 'DEMO',
      portPath: null,
      endAfterRuns: null,
      endAfterS: null,
      endSignal: ended.signal,
      readyCheck: false,
      plain,
      ascii: options.ascii === true,
      show: options.show,
      json: options.json === true,
    });
    if (options.json || process.exitCode === 1) return;
    const made = store
      .recipes()
      .find((recipe) =>
        recipe.restsOn.some((run) =>
          store.trialRuns(trialId).some((one) => one.recordingId === run.recordingId),
        ),
      );
    // On the screen a person accepts (key A); without one the demo does, so that its job is whole.
    if (made === undefined && !plain) {
      const named = ownStore ? `${trialId} --store ${DEMO_STORE}` : trialId;
      print(
        [
          '',
          COMMAND_TEXT.notAccepted,
          COMMAND_TEXT.acceptIt(named),
          ...COMMAND_TEXT.demoStore(store.path, ownStore),
        ].join('\n'),
      );
      return;
    }
    const recipe =
      made ??
      acceptStored(store, trialId, {
        initials: 'DEMO',
        note: COMMAND_TEXT.madeByDemo,
        acceptedAt: new Date().toISOString(),
      });
    print(
      [
        '',
        COMMAND_TEXT.recipeSaved,
        recipeLines(recipe, options.show),
        ...COMMAND_TEXT.demoStore(store.path, ownStore),
      ].join('\n'),
    );
  } finally {
    store.close();
  }
}
