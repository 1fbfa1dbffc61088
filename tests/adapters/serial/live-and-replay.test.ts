import { expect, it } from 'vitest';
import { createMonotonicClock } from '../../../src/adapters/host/create-monotonic-clock.ts';
import { createSerialLink } from '../../../src/adapters/serial/create-serial-link.ts';
import { createLineSource } from '../../../src/core/reading/create-line-source.ts';
import { formatRecording } from '../../../src/core/recording/format-recording.ts';
import { parseRecording } from '../../../src/core/recording/parse-recording.ts';
import type { RecordingEntry } from '../../../src/core/recording/RecordingEntry.ts';
import type { RunEvent } from '../../../src/core/run/RunEvent.ts';
import { createSession } from '../../../src/core/session/create-session.ts';
import {
  createSimulatedDevice,
  DEMO_SCENARIO,
  simulateRecording,
} from '../../../src/core/simulator/index.ts';
import { createReaderDecoder } from '../../../src/core/wire/create-reader-decoder.ts';
import { NO_PTY, ptyReader } from './pty-reader.ts';
import { until } from './record-from-port.ts';

const RULES = {
  targetC: 176.67,
  holdS: 120,
  longestDipS: 2,
  dip: 'restarts',
  platenSetPointC: null,
  ambientC: null,
  warmCarrierLimitC: 10,
  closingDisagreementLimitS: 1,
  closedAtS: null,
} as const;

it.skipIf(NO_PTY !== null)(
  'a run recorded live over a pseudo-terminal and its replay from the text give identical results',
  async () => {
    const { head } = simulateRecording(DEMO_SCENARIO);
    const newSession = () =>
      createSession({ decoder: createReaderDecoder(), roles: head.roles, rules: RULES });
    const sent = createSimulatedDevice(DEMO_SCENARIO).advanceTo(DEMO_SCENARIO.endS * 1e6);

    const reader = ptyReader();
    await reader.plugIn();
    const clock = createMonotonicClock();
    const startUs = clock.nowUs();
    const live = newSession();
    const entries: RecordingEntry[] = [];
    const liveEvents: RunEvent[] = [];
    const take = (entry: RecordingEntry): void => {
      entries.push(entry);
      liveEvents.push(...live.accept(entry));
    };
    const source = createLineSource({ startUs, onEntry: take });
    const link = createSerialLink({ path: reader.path, baudRate: 115_200, clock });
    await link.open(source);
    // The reader's 200 s in some seconds, with the cable pulled once after the crossing.
    const unplugAt = Math.round(sent.length * 0.8);
    for (const [from, to] of [
      [0, unplugAt],
      [unplugAt, sent.length],
    ] as const) {
      if (from > 0) {
        await reader.unplug();
        await until('the loss', () =>
          entries.some((entry) => entry.kind === 'host' && entry.event === 'port-lost'),
        );
        await reader.plugIn();
        await until('the return', () =>
          entries.some((entry) => entry.kind === 'host' && entry.event === 'port-back'),
        );
        take({
          kind: 'mark',
          arrivedUs: clock.nowUs() - startUs,
          by: 'key',
          mark: { kind: 'note', text: 'plug was loose' },
        });
      }
      for (let i = from; i < to; i += 20) {
        const before = entries.length;
        reader.write(
          sent
            .slice(i, Math.min(i + 20, to))
            .map(({ bytes }) => Buffer.from(bytes).toString('latin1'))
            .join(''),
        );
        await until('lines', () => entries.length > before);
      }
      await until('the last line', () => live.state.counts.lines >= to - 1);
    }
    await link.close();
    await reader.remove();
    source.finish(clock.nowUs());
    liveEvents.push(...live.finish());

    const { entries: read, soundness } = parseRecording([...formatRecording(head, entries)].join(''));
    expect(soundness).toEqual({ kind: 'sound' });
    const replay = newSession();
    const replayEvents = read.flatMap((entry) => [...replay.accept(entry)]);
    replayEvents.push(...replay.finish());

    expect(liveEvents.length).toBeGreaterThan(3);
    expect(replayEvents).toEqual(liveEvents);
    expect(replay.state.results).toEqual(live.state.results);
    expect(replay.state.counts).toEqual(live.state.counts);
    expect(replay.state.clock).toEqual(live.state.clock);
    // And it is the run that the simulator made: truth of the probe's own crossing, to 0.1 s.
    const { pressClosedS, probeCrossingS } = head.truth ?? {};
    const [result] = live.state.results;
    expect(
      Math.abs((result?.soakTimeS as number) - ((probeCrossingS as number) - (pressClosedS as number))),
    ).toBeLessThan(0.1);
    expect(live.state.counts.unplugs).toBe(1);
  },
);
