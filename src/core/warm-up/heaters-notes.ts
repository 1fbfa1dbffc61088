/** A note that begins so states when the heaters were switched on. */
export const HEATERS_ON = /^\s*(heaters?|power)\s+on\b/iu;
/** A note that takes the latest of them back. */
export const HEATERS_ON_TAKEN_BACK = /^\s*taken back:\s*(heaters?|power)\s+on\b/iu;
