/** Closes what was opened once the person presses or goes somewhere else. */
import type { RefObject } from 'preact';
import { useEffect } from 'preact/hooks';

/** `inside`: the button together with what it opened. */
export function useAway(inside: RefObject<HTMLElement | null>, shown: boolean, close: () => void): void {
  useEffect(() => {
    if (!shown) return undefined;
    const away = ({ target }: Event): void => {
      // Answering a question that was asked from here is not going away.
      if (target instanceof Element && inside.current?.contains(target) === false && target.closest('.notice') === null) close();
    };
    window.addEventListener('pointerdown', away);
    window.addEventListener('focusin', away);
    return () => {
      window.removeEventListener('pointerdown', away);
      window.removeEventListener('focusin', away);
    };
  }, [shown]);
}
