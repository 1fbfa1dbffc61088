import type { TerminalProgram } from '../adapters/terminal/terminal-program.ts';

/** A question, and what a person types under it, ended by Enter. */
export async function answer(screen: TerminalProgram, question: RegExp, text: string): Promise<void> {
  await screen.see(question);
  for (const character of text) {
    screen.pty.write(character);
    await new Promise((resolve) => setTimeout(resolve, 5));
  }
  await screen.key('\r');
}

/** A screen, and the key pressed on it. */
export async function press(screen: TerminalProgram, shows: RegExp, key: string): Promise<void> {
  await screen.see(shows, 25_000);
  await screen.key(key);
}

/** Enter as a person gives it in the ready check, after a look: sooner than 0.5 s after the one before it counts as held. */
export async function enterAfterALook(screen: TerminalProgram): Promise<void> {
  await new Promise((resolve) => setTimeout(resolve, 650));
  await screen.key('\r');
}
