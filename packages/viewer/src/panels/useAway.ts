/** Closes what was opened once the person presses or goes somewhere else. */
import type { RefObject } from 'preact';
import { useEffect } from 'preact/hooks';

/** `inside`: the button together with what it opened. */
export function useAway(inside: RefObject<HTMLElement | null>, shown: boolean, close: () => void): void {
  useEffect(() => {
    if (!shown) return undefined;
    const away = ({ target }: Event): void => {
      if (target instanceof Node && inside.current?.contains(target) === false) close();
    };
    window.addEventListener('pointerdown', away);
    window.addEventListener('focusin', away);
    return () => {
      window.removeEventListener('pointerdown', away);
      window.removeEventListener('focusin', away);
    };
  }, [shown]);
}
