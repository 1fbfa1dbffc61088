import type { ChannelAtRest, ReadyFacts, ReadyFinding } from './ReadyCheck.ts';

/** Colder than this no shop is, °C. Common practice, no source. */
const COLDEST_C = -20;
/** Hottest that a platen or a room can be, °C. Common practice, no source. */
const HOTTEST_PLATEN_C = 400;
const HOTTEST_ROOM_C = 60;

/** Each probe gives a temperature that can be: no fault, none missing, a bond line colder than its target. */
export function checkProbes({ channels, rules }: ReadyFacts): ReadyFinding {
  if (channels.every((one) => one.latest === null))
    return { state: 'wait', code: 'probes-awaited', facts: {} };
  for (const one of channels) {
    const where = { channel: one.channel, role: one.role };
    if (one.latest?.kind === 'fault')
      return { state: 'not-ready', code: 'probe-fault', facts: { ...where, fault: one.latest.fault } };
    if (one.latest?.kind !== 'temperature')
      return { state: 'not-ready', code: 'probe-missing', facts: where };
    const { temperatureC } = one.latest;
    if (!(temperatureC >= COLDEST_C && temperatureC < hottestC(one, rules.targetC)))
      return { state: 'not-ready', code: 'probe-implausible', facts: { ...where, temperatureC } };
  }
  return { state: 'ready', code: 'probes-sound', facts: { probes: channels.length } };
}

function hottestC({ role }: ChannelAtRest, targetC: number): number {
  if (role.startsWith('bond-line')) return targetC;
  return role === 'ambient' ? HOTTEST_ROOM_C : HOTTEST_PLATEN_C;
}
