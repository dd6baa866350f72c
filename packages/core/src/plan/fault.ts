/** What is wrong at one place of a plan, before line and column are known. */
export interface Fault {
  readonly code: 'plan-value' | 'plan-key' | 'plan-reference' | 'plan-version';
  readonly path: readonly (string | number)[];
  /** What was found and what is accepted. */
  readonly message: string;
}

/** A path as people write it: `stations[0].practice.signAhead`. */
export const pathText = (path: readonly (string | number)[]): string =>
  path.map((part, index) => (typeof part === 'number' ? `[${part}]` : `${index === 0 ? '' : '.'}${part}`)).join('');

/** A path as a JSON pointer (RFC 6901). */
export const pointerOf = (path: readonly (string | number)[]): string =>
  path.map((part) => `/${String(part).replaceAll('~', '~0').replaceAll('/', '~1')}`).join('');

/** The parts of a JSON pointer (RFC 6901), all as texts. */
export const pointerParts = (pointer: string): readonly string[] =>
  pointer === ''
    ? []
    : pointer
        .slice(1)
        .split('/')
        .map((part) => part.replaceAll('~1', '/').replaceAll('~0', '~'));
