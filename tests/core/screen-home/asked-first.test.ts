import { describe, expect, it } from 'vitest';
import { rowText } from '../../../src/core/chart/row-text.ts';
import { nextStep } from '../../../src/core/screen-home/next-step.ts';
import { lostCauseText } from '../../../src/core/text/port-trouble.ts';
import { DrivenHome, PLAN, SHOP } from './shop.ts';

const withOpen = {
  ...SHOP,
  trials: SHOP.trials.map((trial, i) => (i === 0 ? { ...trial, closedAt: null } : trial)),
};
const text = (home: DrivenHome) => home.rows().map(rowText).join('\n');
const WARM_UP = { key: 'w', word: 'Warm-up', detail: 'cold to READY', needs: 'reader' } as const;

describe('X on the home with an open trial', () => {
  it('asks before it closes; Esc leaves it open, Y closes it', () => {
    const home = new DrivenHome(withOpen).keys('x');
    expect(home.intents).toEqual([]);
    expect(text(home)).toMatch(/Close the open trial\? Its runs stay in the records\./);
    home.keys('escape');
    expect(home.intents).toEqual([]);
    home.keys('x', 'y');
    expect(home.intents.map(({ kind }) => kind)).toEqual(['close-trial']);
  });
});

describe('W without a reader', () => {
  it('leads to the question of the reader, and back to the home', () => {
    const home = new DrivenHome({ ...SHOP, entries: [WARM_UP] }, { ...PLAN, reader: null }).keys('w');
    expect(home.state.page).toMatchObject({ kind: 'guide', name: 'reader', after: 'home' });
    expect(home.intents.map(({ kind }) => kind)).not.toContain('entry');
    expect(home.keys('escape').state.page.kind).toBe('home');
  });

  it('with one goes to the warm-up', () => {
    const home = new DrivenHome({ ...SHOP, entries: [WARM_UP] }, { ...PLAN, reader: 'simulated' }).keys('w');
    expect(home.intents).toEqual([{ kind: 'entry', key: 'w' }]);
  });
});

describe('a reader by a path that the list of ports does not hold', () => {
  const path = '/dev/serial/by-id/usb-reader';
  const plan = { ...PLAN, reader: path };

  it('4 on the start page asks for the channels alone, not for the port again', () => {
    const home = new DrivenHome({ ...SHOP, ports: [] }, plan).keys('t', '4');
    const { page } = home.state;
    expect(page.kind === 'guide' && page.guide.question.id).toBe('channels');
    home.keys('1');
    expect(home.state.page.kind).toBe('trial');
    expect(home.state.plan.reader).toBe(path);
  });

  it('3 offers it first: Enter keeps it', () => {
    const home = new DrivenHome({ ...SHOP, ports: [] }, plan).keys('t', '3');
    expect(text(home)).toMatch(/usb-reader/);
    const { page } = home.state;
    expect(
      page.kind === 'guide' && page.guide.question.kind === 'choice' && page.guide.question.initial,
    ).toBe(path);
  });

  it('counts as plugged in once it is found to exist', () => {
    const idle = { ...SHOP, trials: [] };
    expect(nextStep({ ...idle, ports: [] }, plan).kind).toBe('plug-in');
    expect(nextStep({ ...idle, ports: [{ path, maker: null }] }, plan).kind).toBe('trial');
  });
});

describe('help of the home', () => {
  it('lists bonding, warm-up, closing a trial and itself', () => {
    const home = new DrivenHome().keys('h');
    const seen = [text(home)];
    for (let i = 0; i < 12; i++) seen.push(text(home.keys('down')));
    for (const key of ['B', 'W', 'X', 'H'])
      expect(seen.join('\n')).toMatch(new RegExp(`^ +${key} +\\w`, 'm'));
  });
});

describe('why a port went away', () => {
  it.each(['bad file descriptor', 'Error: EIO, input/output error', 'Device not configured', 'ENXIO'])(
    '"%s" is told in words for the press',
    (cause) => expect(lostCauseText(cause)).toBe('cable or plug out, or no power'),
  );

  it('anything else stays as it came', () => expect(lostCauseText('unplugged')).toBe('unplugged'));
});
