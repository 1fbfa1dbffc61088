import type { PressMoment } from './create-press-simulation.ts';
import type { RandomSource } from './create-random.ts';
import type { ChannelTrouble } from './Scenario.ts';

/** Chance of a spike in the reading after a heater switched. */
const SWITCHING_SPIKE_CHANCE = 0.5;

/** What mains, heaters and earth loops add to one channel's readings, °C. */
export function createInterference(
  troubles: readonly ChannelTrouble[],
  random: RandomSource,
): (moment: PressMoment) => number {
  let lowerWasOn = false;
  let upperWasOn = false;

  return (moment) => {
    const switched = moment.lowerHeaterOn !== lowerWasOn || moment.upperHeaterOn !== upperWasOn;
    lowerWasOn = moment.lowerHeaterOn;
    upperWasOn = moment.upperHeaterOn;
    let addedC = 0;
    for (const trouble of troubles) {
      switch (trouble.kind) {
        case 'ground-shift':
          if (moment.lowerHeaterOn) addedC += trouble.shiftC;
          break;
        case 'ripple':
          addedC += trouble.amplitudeC * Math.sin(2 * Math.PI * trouble.frequencyHz * moment.timeS);
          break;
        case 'spikes': {
          const chance = switched ? SWITCHING_SPIKE_CHANCE : trouble.sharePerSample;
          if (random.uniform() < chance)
            addedC += random.uniform() < 0.5 ? trouble.heightC : -trouble.heightC;
          break;
        }
        default:
      }
    }
    return addedC;
  };
}
