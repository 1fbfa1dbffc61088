/**
 * The store's own tries to put entries on disk may fail meanwhile (full, held by another program): the trial asks again
 * ten times a second and shows the trouble itself, so this needs no answer.
 */
export function waitForDisk(_error: unknown): void {}
