import { numberText } from './units-text.ts';

/** What commands print besides tables and sentences of results: what there is none of, what was written, what to do next. */
export const COMMAND_TEXT = {
  none: {
    assembly: 'No assembly yet. Add one: dwellwright assemblies WB-212 --ring-od 212mm --ring-id 168mm',
    press: 'No press yet. Add one: dwellwright presses North --bore 200mm',
    probe: 'No probe yet. Add one: dwellwright probes K-07 --type K --class "IEC 2" --point 177C:-0.6C:0.5C',
    recipe: 'No recipe yet. Run a trial, then: dwellwright accept TRIAL --initials AB',
    recording: 'No recording yet.',
    trial: 'No trial yet. Run one: dwellwright trial --port PORT, or dwellwright demo',
    layout: 'No layout yet. Save one: dwellwright import FILE … --save-layout NAME',
    port: 'No serial port found. Plug the reader in and try again; a port can also be named: dwellwright sniff /dev/ttyACM0',
  },
  home: [
    'Try it without a reader:     dwellwright demo',
    'See which readers are here:  dwellwright readers',
    'Run a trial at the press:    dwellwright trial --port PORT --assembly WB-212 --press North',
  ],
  listen: 'Listen to one:  dwellwright sniff PORT',
  backup: (file: string, bytes: number) => `Backup written: ${file} (${numberText(bytes / 1e6, 1)} MB)`,
  written: (count: number, folder: string) => `Written: ${count} recordings in ${folder}`,
  layoutSaved: (name: string) => `Layout "${name}" saved. Use it: --layout "${name}"`,
  seeTrial: (trialId: string) => `See the trial: dwellwright trials ${trialId}`,
  notAccepted: 'No recipe was accepted. Accept it:',
  acceptIt: (trialId: string) => `  dwellwright accept ${trialId} --initials AB`,
  recipeSaved: 'Recipe saved:',
  demoStore: (path: string, own: boolean): readonly string[] =>
    own
      ? [
          `Store: ${path}, the demo's own; presses, assemblies and recipes of the real store are as they were.`,
          'Look into it: dwellwright recipes --store demo, or dwellwright home --store demo',
        ]
      : [`Store: ${path}`],
  orNew: '; or add --new if the name is new and right',
  newAssembly: (name: string, target: string, hold: string) =>
    `New assembly "${name}": target ${target} and hold ${hold}, the trade's usual ones. Others: dwellwright assemblies "${name}" --target … --hold …`,
  newPress: (name: string) =>
    `New press "${name}": ram and platens not stated. State them: dwellwright presses "${name}" --bore … --platens …`,
  madeByDemo: 'made by the demo on the simulated reader',
  history: (assembly: string, press: string) => `${assembly} on ${press}: mean soak time of each trial`,
  probeBefore: (savedAt: string) => `until then, as entered ${savedAt}:`,
  suggestNow: 'What these runs would suggest now:',
  givenBefore: 'the same recording was given before',
  notStated: 'assembly or press not stated',
  unnamedAssembly: 'unnamed assembly',
  unnamedPress: 'unnamed press',
  answer: 'the answer',
  rolesRemembered: 'roles remembered for this press',
  demoCarrier: 'brake plate, steel',
} as const;

/** Margins that a comparison of two presses was stated with. */
export const MARGIN_TEXT = {
  kept: (plan: {
    readonly second: string;
    readonly first: string;
    readonly assembly: string;
    readonly slowerS: number;
    readonly fasterS: number;
  }) =>
    `Kept: ${plan.second} may be up to ${numberText(plan.slowerS, 1)} s slower and ${numberText(plan.fasterS, 1)} s faster than ${plan.first}, for ${plan.assembly}.`,
  noDeviation: 'No run-to-run deviation is known yet; taken as half the smaller margin.',
  deviation: (sdS: number) => `Run-to-run deviation so far: ${numberText(sdS, 2)} s.`,
  none: 'No margins were stated: state them first with dwellwright margins, then compare again.',
  withTheData:
    'These margins were stated together with the data. For a proof state them first: dwellwright margins.',
  statedOn: (at: string) => `Margins stated on ${at.slice(0, 16).replace('T', ' ')} UTC.`,
} as const;

/** How a failure ends the program: what failed, what to do, where the data is. */
export const FAILURE_TEXT = {
  todo: (remedy: string) => `  what to do: ${remedy}`,
  unexpected: (message: string) => `dwellwright: something went wrong that we did not expect: ${message}`,
  unexpectedTodo: 'nothing recorded is lost; run again with DWELLWRIGHT_STACK=1 and send us the text',
  goOn: (trialId: string) => `go on with this trial: dwellwright trial --go-on ${trialId}`,
  dataIn: (path: string) => `dwellwright: the data is in ${path}`,
} as const;
