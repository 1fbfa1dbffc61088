import { EMPTY_PLAN } from '../../../../src/core/screen-home/HomeFacts.ts';
import { DrivenHome, EMPTY_SHOP, SHOP } from '../../../core/screen-home/shop.ts';

type Step = (home: DrivenHome) => DrivenHome;

/** What a person answers, question by question, from the empty store to the start of the first trial. */
const ANSWERS: readonly (readonly [question: string, answer: Step])[] = [
  ['press: name', (home) => home.type('North')],
  ['press: ram bore', (home) => home.type('200 mm')],
  ['press: rams', (home) => home.keys('1')],
  ['press: platens', (home) => home.keys('enter')],
  ['press: gauge', (home) => home.type('2psi')],
  // The store has the press now, and tells so.
  ['assembly: name', (home) => home.type('WB-212')],
  ['assembly: outer diameter', (home) => home.type('212mm')],
  ['assembly: inner diameter', (home) => home.type('168mm')],
  ['assembly: carrier', (home) => home.type('brake plate, steel')],
  ['assembly: target', (home) => home.keys('enter')],
  ['assembly: hold', (home) => home.type('120 s')],
  ['assembly: net facing pressure', (home) => home.keys('enter')],
  ['reader: port', (home) => home.keys('p')],
  ['reader: path', (home) => home.type('/dev/ttyACM9')],
  ['reader: unit', (home) => home.keys('1')],
  ['reader: channels', (home) => home.keys('e')],
  ['reader: channel 1', (home) => home.keys('1')],
  ['reader: channel 2', (home) => home.keys('3')],
];

function after(count: number): DrivenHome {
  let home = new DrivenHome(EMPTY_SHOP, EMPTY_PLAN).keys('enter');
  for (const [question, answer] of ANSWERS.slice(0, count)) {
    home = answer(home);
    if (question === 'press: gauge')
      home.send({ kind: 'facts', facts: { ...EMPTY_SHOP, presses: SHOP.presses } });
    if (question === 'assembly: net facing pressure')
      home.send({
        kind: 'facts',
        facts: { ...EMPTY_SHOP, presses: SHOP.presses, assemblies: SHOP.assemblies },
      });
  }
  return home;
}

/** Each question of the first use. */
export const FIRST_USE_STATES: Readonly<Record<string, () => DrivenHome>> = Object.fromEntries(
  ANSWERS.map(([question], i) => [question, () => after(i)]),
);
