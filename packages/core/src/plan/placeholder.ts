/** What people type into a field to fill it later: it says nothing yet. */
const PLACEHOLDERS: ReadonlySet<string> = new Set([
  'tbc',
  'tbd',
  'tba',
  'na',
  'none',
  'nobody',
  'unknown',
  'todo',
  'pendiente',
  'porconfirmar',
  'pordefinir',
  'ninguno',
  'ninguna',
  'nadie',
  'desconocido',
]);

/** Whether a text names nothing: empty, without a letter or a digit ("?", "-", "…"), a row of x or 0, or a word such as "TBC". */
export function saysNothing(text: string | undefined): boolean {
  const plain = (text ?? '').toLowerCase().replaceAll(/[^\p{L}\p{N}]/gu, '');
  return plain === '' || /^(?:x+|0+)$/u.test(plain) || PLACEHOLDERS.has(plain);
}
