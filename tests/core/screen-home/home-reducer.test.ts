import { describe, expect, it } from 'vitest';
import { EMPTY_PLAN } from '../../../src/core/screen-home/HomeFacts.ts';
import { nextStep } from '../../../src/core/screen-home/next-step.ts';
import { DrivenHome, EMPTY_SHOP, NORTH, PLAN, SHOP, trialFacts, WB_212 } from './shop.ts';

describe('what one would do next', () => {
  it.each([
    ['set-up', EMPTY_SHOP, EMPTY_PLAN],
    ['assembly', { ...SHOP, assemblies: [] }, PLAN],
    ['press', { ...SHOP, presses: [] }, PLAN],
    ['reader', SHOP, { ...PLAN, reader: null }],
    ['plug-in', { ...SHOP, ports: [] }, PLAN],
    ['go-on', { ...SHOP, trials: [trialFacts({ closedAt: null })] }, PLAN],
    ['result', { ...SHOP, trials: [trialFacts({ hasRecipe: false })] }, PLAN],
    ['trial', SHOP, PLAN],
    ['trial', { ...SHOP, ports: [] }, { ...PLAN, reader: 'simulated' }],
    ['trial', { ...SHOP, trials: [trialFacts({ hasRecipe: false, countingRuns: 1 })] }, PLAN],
  ] as const)('is %s', (kind, facts, plan) => {
    expect(nextStep(facts, plan).kind).toBe(kind);
  });
});

describe('first use', () => {
  it('leads through press, assembly and reader to the start of a trial, keeping each', () => {
    const home = new DrivenHome(EMPTY_SHOP, EMPTY_PLAN).keys('enter');
    home.type('North').type('200 mm').keys('1').type('').type('2 psi');
    expect(home.intents[0]).toEqual({
      kind: 'save-press',
      // 450 °F = 232.22 °C by definition.
      press: {
        ...NORTH,
        platenSetPointC: { upper: expect.closeTo(232.2222, 3), lower: expect.closeTo(232.2222, 3) },
      },
    });
    home.send({ kind: 'facts', facts: { ...EMPTY_SHOP, presses: [NORTH] } });
    home.type('WB-212').type('212mm').type('168 mm').type('brake plate, steel').type('').type('').type('');
    expect(home.intents.find(({ kind }) => kind === 'save-assembly')).toEqual({
      kind: 'save-assembly',
      assembly: { ...WB_212, targetC: expect.closeTo((350 - 32) / 1.8, 6) },
    });
    home.send({ kind: 'facts', facts: { ...EMPTY_SHOP, presses: [NORTH], assemblies: [WB_212] } });
    home.keys('s');
    expect(home.state.page.kind).toBe('trial');
    home.keys('enter');
    expect(home.intents.at(-1)).toMatchObject({
      kind: 'start-trial',
      goOnWith: null,
      plan: { pressName: 'North', assemblyName: 'WB-212', reader: 'simulated', ring: 'fresh' },
    });
  });

  it('keeps the net facing pressure of a ring that states its own', () => {
    const home = new DrivenHome({ ...EMPTY_SHOP, presses: [NORTH] }, EMPTY_PLAN).keys('enter');
    home.type('WB-150').type('150mm').type('118mm').type('').type('').type('');
    expect(home.text()).toContain('Enter takes 200 to 250 psi');
    home.type('150-170 psi');
    expect(home.intents.find(({ kind }) => kind === 'save-assembly')).toMatchObject({
      assembly: { name: 'WB-150', netFacingPsi: { low: 150, high: 170 } },
    });
  });

  it('keeps nothing before the last question, and Esc goes back question by question with the answers at hand', () => {
    const home = new DrivenHome(EMPTY_SHOP, EMPTY_PLAN).keys('enter').type('North').type('200 mm');
    expect(home.intents).toEqual([]);
    home.keys('escape');
    expect(home.text()).toContain('200 mm_');
    home.keys('escape');
    expect(home.text()).toContain('North_');
    home.keys('escape');
    expect(home.state.page.kind).toBe('home');
  });

  it('refuses an inner diameter that is not smaller than the outer', () => {
    const home = new DrivenHome({ ...SHOP, assemblies: [] })
      .keys('enter')
      .type('X')
      .type('168 mm')
      .type('212 mm');
    expect(home.text()).toMatch(/inner diameter must be smaller/);
  });

  it('adds a reader to the choices when it is plugged in while its port is asked for', () => {
    const home = new DrivenHome({ ...SHOP, ports: [] }).keys('s', 'r');
    expect(home.text()).not.toContain('/dev/ttyUSB0');
    home.send({ kind: 'facts', facts: { ...SHOP, ports: [{ path: '/dev/ttyUSB0', maker: null }] } });
    expect(home.text()).toContain('/dev/ttyUSB0');
  });

  it('keeps the channels said one by one, for this press', () => {
    const home = new DrivenHome().keys('s', 'r', '1', '1', 'e', '1', '3', '4', '0');
    expect(home.intents).toContainEqual({
      kind: 'save-roles',
      pressName: 'North',
      roles: ['bond-line', 'bond-line-outer', 'upper-platen'],
    });
  });

  it('asks again when no channel is on the bond line', () => {
    const home = new DrivenHome().keys('s', 'r', '1', '1', 'e', ...new Array<string>(8).fill('7'));
    expect(home.intents.filter(({ kind }) => kind === 'save-roles')).toEqual([]);
    expect(home.text()).toMatch(/One channel must be on the bond line/);
  });
});

describe('keys and scans', () => {
  it('a scanned assembly is taken for the next trial and never for keys', () => {
    const facts = { ...SHOP, assemblies: [WB_212, { ...WB_212, name: 'QTP-150' }] };
    const home = new DrivenHome(facts).scan('qtp-150');
    expect(home.state.page.kind).toBe('trial');
    expect(home.intents).toEqual([{ kind: 'save-plan', plan: { ...PLAN, assemblyName: 'QTP-150' } }]);
  });

  it('a scanned press works from the start of a trial too', () => {
    const home = new DrivenHome({ ...SHOP, presses: [NORTH, { ...NORTH, name: 'South' }] })
      .keys('t')
      .scan('South');
    expect(home.state.plan.pressName).toBe('South');
  });

  it('an unknown scan changes nothing and says so', () => {
    const home = new DrivenHome().scan('XQ-1');
    expect(home.state.page.kind).toBe('home');
    expect(home.text()).toMatch(/Scanned XQ-1: no press or assembly/);
  });

  it('a scan answers a question for text', () => {
    const home = new DrivenHome(EMPTY_SHOP, EMPTY_PLAN).keys('enter').scan('North');
    expect(home.text()).toMatch(/Bore of the ram/);
  });

  it('escape sequences in a scan reach no screen', () => {
    const home = new DrivenHome().scan('A\u009bB');
    expect(home.text()).not.toContain('\u009b');
  });

  it('several keys at once do nothing', () => {
    const home = new DrivenHome();
    const at = home.state.nowUs + 1e6;
    for (const [i, character] of [...'tr'].entries())
      home.send({ kind: 'input', input: { kind: 'character', character, atUs: at + i * 1000 } });
    home.waited(2);
    expect(home.state.page.kind).toBe('home');
    expect(home.text()).toMatch(/Several keys at once/);
  });

  it('q asks first; only y leaves', () => {
    const home = new DrivenHome().keys('q');
    expect(home.intents).toEqual([]);
    expect(home.keys('escape').state.askingQuit).toBe(false);
    expect(home.keys('q', 't').state.page.kind).toBe('home');
    expect(home.keys('y').intents).toEqual([{ kind: 'quit' }]);
  });

  it('a trial does not start while press, assembly or reader is open', () => {
    const home = new DrivenHome(EMPTY_SHOP, EMPTY_PLAN).keys('t', 'enter');
    expect(home.intents).toEqual([]);
    expect(home.text()).toMatch(/question mark first/);
  });

  it('°F and °C change with f and are kept', () => {
    const home = new DrivenHome().keys('t', 'f');
    expect(home.intents).toEqual([{ kind: 'unit', unit: 'C' }]);
    expect(home.text()).toContain('232.2 °C (450 °F)');
  });

  it('a message goes away by itself', () => {
    const home = new DrivenHome().scan('XQ-1');
    expect(home.waited(20).text()).not.toMatch(/Scanned/);
  });

  it('5, 6 and 7 go round through the conditions, "not stated" among them', () => {
    const home = new DrivenHome().keys('t', '5');
    expect(home.state.plan.ring).toBe('re-used');
    expect(home.keys('5').state.plan.ring).toBeNull();
    expect(home.keys('5').state.plan.ring).toBe('fresh');
  });
});

describe('an open trial', () => {
  const facts = { ...SHOP, trials: [trialFacts({ closedAt: null, simulated: true })] };

  it('is gone on with: its press and assembly, a reader of its kind', () => {
    const home = new DrivenHome(facts).keys('enter');
    expect(home.text()).toMatch(/Go on with a trial: WB-212 on North/);
    expect(home.keys('enter').intents.at(-1)).toMatchObject({
      kind: 'start-trial',
      goOnWith: trialFacts().trialId,
      plan: { reader: 'simulated' },
    });
  });

  it('of a real reader never gets the simulated one', () => {
    const real = { ...SHOP, trials: [trialFacts({ closedAt: null })] };
    const home = new DrivenHome(real, { ...PLAN, reader: 'simulated' }).keys('enter');
    expect(home.state.plan.reader).toBeNull();
    expect(home.keys('enter').intents).toEqual([]);
  });

  it('keeps its press and assembly while its reader is chosen', () => {
    const real = { ...SHOP, trials: [trialFacts({ closedAt: null })] };
    const home = new DrivenHome(real, { ...PLAN, reader: null }).keys('enter', '1', '2');
    expect(home.state.page.kind).toBe('trial');
    home.keys('3', '1', '1', '1');
    expect(home.state.goOnWith).toBe(trialFacts().trialId);
    expect(home.text()).toMatch(/Go on with a trial/);
  });

  it('is closed with x, then y', () => {
    expect(new DrivenHome(facts).keys('x', 'y').intents).toEqual([
      { kind: 'close-trial', trialId: trialFacts().trialId },
    ]);
    expect(new DrivenHome().keys('x').intents).toEqual([]);
  });
});

describe('channels', () => {
  it('are asked for only once a press is chosen, for they are kept with it', () => {
    const two = { ...SHOP, presses: [NORTH, { ...NORTH, name: 'South' }] };
    const home = new DrivenHome(two, { ...PLAN, pressName: null }).keys('s', 'r');
    expect(home.state.page.kind).toBe('set-up');
    expect(home.text()).toMatch(/Choose the press first/);
    expect(
      new DrivenHome(two, { ...PLAN, pressName: null, reader: null }).keys('enter').state.page.kind,
    ).toBe('trial');
  });
});
