import { DwellwrightError } from '../DwellwrightError.ts';
import type { ThermocoupleType } from '../wire/WireEvent.ts';

export interface ThermocoupleRangeFacts {
  readonly type: ThermocoupleType;
  readonly quantity: 'temperature' | 'emf';
  /** °C for a temperature, µV for an emf. */
  readonly value: number;
  readonly lowest: number;
  readonly highest: number;
}

/** A temperature or emf outside the range of a thermocouple's reference function, or not a finite number. */
export class ThermocoupleRangeError extends DwellwrightError {
  override readonly name = 'ThermocoupleRangeError';
  readonly facts: ThermocoupleRangeFacts;

  constructor(facts: ThermocoupleRangeFacts) {
    const unit = facts.quantity === 'temperature' ? '°C' : 'µV';
    super(
      'thermocouple-range',
      `type ${facts.type} thermocouple requires ${facts.quantity === 'emf' ? 'an emf' : 'a temperature'} of ` +
        `${facts.lowest} to ${facts.highest} ${unit}, got ${facts.value} ${unit}`,
      { remedy: 'Check the thermocouple type set in the reader and the plug of the probe.' },
    );
    this.facts = Object.freeze({ ...facts });
  }
}
