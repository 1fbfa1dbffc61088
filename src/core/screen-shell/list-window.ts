/** First item to show so that `selected` of `count` is among the `room` shown, and stays near the middle. */
export function listStart(count: number, selected: number, room: number): number {
  if (count <= room) return 0;
  return Math.min(count - room, Math.max(0, selected - Math.floor(room / 2)));
}

/** Place after a move by `step` in a list of `count`, staying inside it. */
export function moved(selected: number, step: number, count: number): number {
  return Math.max(0, Math.min(count - 1, selected + step));
}
