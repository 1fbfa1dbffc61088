import type { ReaderIdentity } from '../wire/WireEvent.ts';
import { neutralise } from './neutralise.ts';

/** Says in words that a reader speaks our protocol and what it told about itself. */
export function recognisedProtocol(identity: ReaderIdentity | null): string {
  if (identity === null) return 'reader protocol 1 (the reader has not named itself yet)';
  const types = [...new Set(identity.channels.map((channel) => channel.thermocoupleType ?? 'unknown'))];
  const count = identity.channels.length;
  const sends = identity.channels[0]?.sends === 'emf' ? 'sends emf and cold junction' : 'sends °C';
  const name = neutralise(identity.name ?? 'reader without a name', { longest: 40 });
  const firmware =
    identity.firmwareVersion === null ? '' : ` (firmware ${neutralise(identity.firmwareVersion)})`;
  return (
    `reader protocol 1: ${name}${firmware}, ${count} ${count === 1 ? 'channel' : 'channels'}, ` +
    `thermocouple type ${types.join(', ')}, ${sends}${identity.hasContact ? ', press contact' : ''}`
  );
}
