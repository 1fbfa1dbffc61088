import { afterEach, beforeEach, describe, expect, it, vi } from 'vitest';
import { createSimulatedReader } from '../../../src/adapters/simulated-reader/create-simulated-reader.ts';
import { createSteppedReader } from '../../../src/adapters/simulated-reader/create-stepped-reader.ts';
import type { ReaderLinkListener } from '../../../src/core/reading/ReaderLink.ts';
import { DEMO_SCENARIO } from '../../../src/core/simulator/demo-scenario.ts';

const SHORT = { ...DEMO_SCENARIO, endS: 15 };

function createHeard() {
  const heard: { text: string; arrivedUs: number }[] = [];
  const told: string[] = [];
  const listener: ReaderLinkListener = {
    bytes: (chunk, arrivedUs) =>
      void heard.push({ text: new TextDecoder('latin1').decode(chunk), arrivedUs }),
    lost: (arrivedUs, cause) => void told.push(`lost ${cause} ${arrivedUs}`),
    back: (arrivedUs) => void told.push(`back ${arrivedUs}`),
  };
  const samples = () => heard.filter(({ text }) => text.startsWith('sample '));
  return { heard, told, listener, samples };
}

describe('createSteppedReader', () => {
  it('hands out bytes with arrival times of the simulation, in order, a few ms after they were sent', async () => {
    const { heard, listener, samples } = createHeard();
    const reader = createSteppedReader({ scenario: SHORT });
    await reader.open(listener);
    reader.advanceToS(5);
    reader.advanceToS(15);
    expect(reader.finished).toBe(true);
    expect(samples().length).toBeGreaterThanOrEqual(149);
    const arrivals = heard.map(({ arrivedUs }) => arrivedUs);
    expect([...arrivals].sort((a, b) => a - b)).toEqual(arrivals);
    expect(arrivals.at(-1)!).toBeLessThan(15_010_000);
  });

  it('answers commands, and drops them while unplugged', async () => {
    const { heard, told, listener, samples } = createHeard();
    const reader = createSteppedReader({ scenario: SHORT });
    await reader.open(listener);
    reader.advanceToS(1);
    reader.send('identify');
    reader.advanceToS(1.01);
    expect(heard.filter(({ text }) => text.startsWith('identity '))).toHaveLength(1);
    reader.unplug();
    reader.send('stop');
    const before = samples().length;
    reader.advanceToS(3);
    expect(samples()).toHaveLength(before);
    reader.plugIn();
    reader.advanceToS(4);
    expect(samples().length).toBeGreaterThan(before);
    expect(told).toEqual([expect.stringMatching(/^lost unplugged /), expect.stringMatching(/^back /)]);
  });
});

describe('createSimulatedReader', () => {
  const hostClock = { nowUs: () => Math.round(performance.now() * 1000) };
  beforeEach(
    () =>
      void vi.useFakeTimers({
        toFake: ['setTimeout', 'clearTimeout', 'setImmediate', 'clearImmediate', 'performance'],
      }),
  );
  afterEach(() => void vi.useRealTimers());

  it('at ×5 gives 50 samples in a second, 0.1 s apart on its own clock', async () => {
    const { listener, samples } = createHeard();
    const reader = createSimulatedReader({ scenario: DEMO_SCENARIO, speed: 5, clock: hostClock });
    await reader.open(listener);
    await vi.advanceTimersByTimeAsync(1000);
    await reader.close();
    expect(samples().length).toBeGreaterThanOrEqual(48);
    expect(samples().length).toBeLessThanOrEqual(51);
    const gapsUs = samples()
      .slice(1)
      .map(({ arrivedUs }, index) => arrivedUs - samples()[index]!.arrivedUs);
    const meanUs = gapsUs.reduce((a, b) => a + b) / gapsUs.length;
    expect(Math.abs(meanUs - 100_000)).toBeLessThan(1000);
    expect(samples().at(-1)!.arrivedUs).toBeLessThanOrEqual(reader.clock.nowUs());
  });

  it('closed link: nothing more is heard', async () => {
    const { heard, listener } = createHeard();
    const reader = createSimulatedReader({ scenario: DEMO_SCENARIO, clock: hostClock });
    await reader.open(listener);
    await vi.advanceTimersByTimeAsync(300);
    await reader.close();
    const before = heard.length;
    await vi.advanceTimersByTimeAsync(2000);
    expect(heard).toHaveLength(before);
  });

  it('as fast as possible runs to the end and says so once', async () => {
    const { listener, samples } = createHeard();
    const onFinished = vi.fn();
    const reader = createSimulatedReader({
      scenario: SHORT,
      speed: 'as-fast-as-possible',
      clock: hostClock,
      onFinished,
    });
    await reader.open(listener);
    await vi.advanceTimersByTimeAsync(100);
    expect(onFinished).toHaveBeenCalledTimes(1);
    expect(samples().length).toBeGreaterThanOrEqual(149);
    expect(reader.finished).toBe(true);
  });

  it('by hand: the press closes when told, and the contact line carries that moment', async () => {
    const { heard, listener } = createHeard();
    const reader = createSimulatedReader({
      scenario: DEMO_SCENARIO,
      speed: 10,
      clock: hostClock,
      closing: 'by-hand',
    });
    await reader.open(listener);
    await vi.advanceTimersByTimeAsync(2013);
    const closedAtUs = reader.clock.nowUs();
    reader.closePress();
    await vi.advanceTimersByTimeAsync(100);
    await reader.close();
    const contact = heard.find(({ text }) => text.startsWith('contact '));
    expect(contact?.text).toMatch(/ closed#/);
    // One turn is 20 ms of the host; by hand the simulation catches up first, so 50 ms of its own time are enough.
    expect(Math.abs(contact!.arrivedUs - closedAtUs)).toBeLessThan(50_000);
  });
});
