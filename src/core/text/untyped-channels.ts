/** Why emf cannot be turned into °C: channels (from 1) whose thermocouple type nobody stated. */
export function untypedChannelsText(channels: readonly number[]): string {
  const which =
    channels.length === 1 ? `channel ${channels[0]} sends` : `channels ${channels.join(', ')} send`;
  return `${which} emf, and the thermocouple type is not known; the reader must name it in its identity line`;
}
