/** Spans of time as sentences say them. */

/** Rounded up to whole minutes: "12 min", "7 h 41 min", "2 h". */
export function minutesText(seconds: number): string {
  const all = Math.max(1, Math.ceil(seconds / 60 - 1e-6));
  const [hours, minutes] = [Math.floor(all / 60), all % 60];
  if (hours === 0) return `${minutes} min`;
  return minutes === 0 ? `${hours} h` : `${hours} h ${minutes} min`;
}
