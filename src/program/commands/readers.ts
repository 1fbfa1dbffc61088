import { listPorts } from '../../adapters/serial/list-ports.ts';
import { portLine } from '../../core/text/port-list-text.ts';
import { print, printJson } from '../output/print.ts';

/** `readers`: the ports where a reader may be plugged in. An empty list is a proper answer. */
export async function readers(options: { readonly json?: boolean }): Promise<void> {
  const ports = await listPorts();
  if (options.json) return printJson({ ports });
  if (ports.length === 0) {
    print(
      'No serial port found. Plug the reader in and try again; a port can also be named: dwellwright sniff /dev/ttyACM0',
    );
    return;
  }
  print([...ports.map(portLine), '', 'Listen to one:  dwellwright sniff PORT'].join('\n'));
}
