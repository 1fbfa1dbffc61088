import { DwellwrightError } from '../../DwellwrightError.ts';
import type { ReaderIdentity } from '../WireEvent.ts';
import { sealLine } from './seal-line.ts';

/** Writes a reader's identity and capabilities; unknown texts become `-`. Spaces in texts become `_`. */
export function formatIdentity(identity: ReaderIdentity & { readonly rateHz: number }): string {
  const first = identity.channels[0];
  if (first === undefined || !identity.ratesHz.includes(identity.rateHz)) {
    throw new DwellwrightError(
      'line-not-sendable',
      `an identity line requires a channel and a rate among the offered ones, came ${identity.channels.length} channels, ` +
        `${identity.rateHz} Hz of ${identity.ratesHz.join(', ')} Hz`,
    );
  }
  const text = (value: string | null): string => value?.trim().replaceAll(' ', '_') || '-';
  const types = identity.channels.map((channel) => channel.thermocoupleType ?? '-').join(',');
  const step = first.resolutionC === null ? '' : ` step=${first.resolutionC}`;
  return sealLine(
    `identity 1 name=${text(identity.name)} firmware=${text(identity.firmwareVersion)}` +
      ` serial=${text(identity.serialNumber)} types=${types}` +
      ` sends=${first.sends === 'emf' ? 'emf' : 'celsius'}${step} rates=${identity.ratesHz.join(',')}` +
      ` rate=${identity.rateHz} contact=${identity.hasContact ? 'yes' : 'no'}`,
  );
}
