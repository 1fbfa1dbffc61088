import { listPorts } from '../../adapters/serial/list-ports.ts';
import { COMMAND_TEXT } from '../../core/text/command-text.ts';
import { portLine } from '../../core/text/port-list-text.ts';
import { print, printJson } from '../output/print.ts';

/** `readers`: the ports where a reader may be plugged in. An empty list is a proper answer. */
export async function readers(options: { readonly json?: boolean }): Promise<void> {
  const ports = await listPorts();
  if (options.json) return printJson({ ports });
  if (ports.length === 0) {
    print(COMMAND_TEXT.none.port);
    return;
  }
  print([...ports.map(portLine), '', COMMAND_TEXT.listen].join('\n'));
}
