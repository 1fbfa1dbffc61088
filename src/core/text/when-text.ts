/** "25 Nov 2026 14:03" without its year, for the latest few where room is short. */
export const withoutYear = (when: string): string => when.replace(/^(\d\d \w{3}) \d{4} /, '$1 ');
