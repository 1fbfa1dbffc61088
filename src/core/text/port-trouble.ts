/** Why a serial port cannot be opened. */
export type PortTrouble = 'no-such-port' | 'not-permitted' | 'busy' | 'not-a-port' | 'bad-baud' | 'unknown';

/** Why a port went away, as a system says it, and in words for a person at the press. */
const GONE =
  /bad file descriptor|EBADF|ENXIO|ENODEV|EIO\b|input\/output|no such device|device not configured|aborted/iu;
const UNPLUGGED = 'cable or plug out, or no power';

export function lostCauseText(cause: string): string {
  return GONE.test(cause) ? UNPLUGGED : cause;
}

interface TroubleText {
  readonly message: string;
  readonly remedy: string;
}

/** What failed and what to do, for one port; `path` must be fit for a terminal already. */
export function portTroubleText(
  trouble: PortTrouble,
  path: string,
  cause: string,
  platform: string,
): TroubleText {
  const cannot = `Cannot open the reader's port ${path}`;
  switch (trouble) {
    case 'no-such-port':
      return {
        message: `${cannot}: no such port`,
        remedy: 'Check the plug, then list the ports with: dwellwright readers',
      };
    case 'not-permitted':
      return {
        message: `${cannot}: this user may not use it`,
        remedy:
          platform === 'linux'
            ? 'Add the user to the group that owns serial ports (often dialout: sudo usermod -aG dialout "$USER"), then log in again'
            : 'Ask whoever runs this computer for the right to use serial ports',
      };
    case 'busy':
      return {
        message: `${cannot}: another program has it open`,
        remedy:
          'Close the other program (a serial monitor, or this program in another window), then try again',
      };
    case 'not-a-port':
      return {
        message: `${cannot}: it is no serial port`,
        remedy: 'List the ports with: dwellwright readers. To read a file, use: dwellwright replay FILE',
      };
    case 'bad-baud':
      return {
        message: `${cannot}: the port does not take this baud rate`,
        remedy: "Give the baud rate from the reader's manual; 115200 and 9600 are usual",
      };
    case 'unknown':
      return {
        message: `${cannot}: ${cause}`,
        remedy: 'Unplug the reader, plug it in again, then try again',
      };
  }
}
