import { describe, expect, it } from 'vitest';
import { createSimulatedDevice } from '../../../src/core/simulator/create-simulated-device.ts';
import { demoTrialScenario } from '../../../src/core/simulator/demo-trial-scenario.ts';
import { createLineSplitter } from '../../../src/core/wire/line-splitter.ts';
import {
  createProtocolDecoder,
  identifyCommand,
  rateCommand,
} from '../../../src/core/wire/protocol/index.ts';
import type { WireEvent } from '../../../src/core/wire/WireEvent.ts';

const encoder = new TextEncoder();

function createListener() {
  const splitter = createLineSplitter({ longestLine: 500, startKnown: false });
  const decoder = createProtocolDecoder();
  return (bytes: Uint8Array): readonly WireEvent[] =>
    splitter.push(bytes, 0).flatMap((line) => decoder.decode(line));
}

describe('createSimulatedDevice', () => {
  it('powers up with started, identity, then ten samples a second', () => {
    const device = createSimulatedDevice(demoTrialScenario());
    const listen = createListener();
    const kinds = device
      .advanceTo(2_000_000)
      .flatMap(({ bytes }) => listen(bytes))
      .map((event) => event.kind);
    expect(kinds.slice(0, 4)).toEqual(['remark', 'started', 'identity', 'sample']);
    const samples = kinds.filter((kind) => kind === 'sample').length;
    expect(samples).toBeGreaterThanOrEqual(19);
    expect(samples).toBeLessThanOrEqual(20);
  });

  it('answers each command as the protocol says, also one typed without a checksum and cut into pieces', () => {
    const device = createSimulatedDevice(demoTrialScenario());
    const listen = createListener();
    const say = (text: string) => listen(device.receive(encoder.encode(text)));
    listen(encoder.encode('\n'));
    expect(say(`${identifyCommand()}\n`)).toMatchObject([
      { kind: 'identity', identity: { hasContact: true } },
    ]);
    expect(say('sto')).toEqual([]);
    expect(say('p\r\n')).toMatchObject([{ kind: 'reply', accepted: true, text: 'stop' }]);
    expect(say(`${rateCommand(5)}\n`)).toMatchObject([
      { kind: 'reply', accepted: true, text: 'rate 5' },
      { kind: 'identity', identity: { rateHz: 5 } },
    ]);
    expect(say(`${rateCommand(7)}\n`)).toMatchObject([
      { kind: 'reply', accepted: false, text: 'range rate' },
    ]);
    expect(say('type 2 N\n')).toMatchObject([{ kind: 'reply', accepted: false, text: 'fixed type' }]);
    expect(say('type 9 N\n')).toMatchObject([{ kind: 'reply', accepted: false, text: 'range type' }]);
    expect(say('start#0000\n')).toMatchObject([{ kind: 'reply', accepted: false, text: 'checksum start' }]);
    expect(say(`${'x'.repeat(5000)}\n`)).toMatchObject([
      { kind: 'reply', accepted: false, text: 'unknown -' },
    ]);
  });

  it('stop: no samples, but numbers and clock run on; start brings them back', () => {
    const device = createSimulatedDevice(demoTrialScenario());
    const listen = createListener();
    const until = (timeUs: number) =>
      device
        .advanceTo(timeUs)
        .flatMap(({ bytes }) => listen(bytes))
        .flatMap((event) => (event.kind === 'sample' ? [event.sequence!] : []));
    const last = until(1_000_000).at(-1)!;
    device.receive(encoder.encode('stop\n'));
    expect(until(3_000_000)).toEqual([]);
    device.receive(encoder.encode('start\n'));
    expect(until(4_000_000)[0]! - last).toBe(21);
  });

  it('worked by hand: contact edges when the press is closed and opened, and none from the schedule', () => {
    const device = createSimulatedDevice(demoTrialScenario(), 'hand');
    const listen = createListener();
    const contacts = (timeUs: number) =>
      device
        .advanceTo(timeUs)
        .flatMap(({ bytes }) => listen(bytes))
        .flatMap((event) => (event.kind === 'contact' ? [event.closed] : []));
    expect(contacts(30_000_000)).toEqual([]);
    device.closePress();
    device.closePress();
    expect(contacts(31_000_000)).toEqual([true]);
    expect(contacts(90_000_000)).toEqual([]);
    expect(device.bench.moment.bondLineC).toBeGreaterThan(170);
    device.openPress();
    expect(contacts(91_000_000)).toEqual([false]);
  });
});
