/** Placeholder until the screens land. */
export async function demo(): Promise<void> { throw new Error('not yet'); }
