/** A button that unfolds a panel: it closes by itself once the person presses or goes somewhere else. */
import type { RefObject } from 'preact';
import { useEffect, useRef, useState } from 'preact/hooks';

export interface Unfolded {
  /** What holds the button together with what it unfolds. */
  readonly inside: RefObject<HTMLDivElement | null>;
  readonly button: RefObject<HTMLButtonElement | null>;
  readonly shown: boolean;
  readonly toggle: () => void;
  /** Closes, and gives the focus back to the button. */
  readonly close: () => void;
}

export function useUnfolded(): Unfolded {
  const inside = useRef<HTMLDivElement>(null);
  const button = useRef<HTMLButtonElement>(null);
  const [shown, setShown] = useState(false);
  useEffect(() => {
    if (!shown) return undefined;
    const away = ({ target }: Event): void => {
      // Answering a question that was asked from here is not going away.
      if (target instanceof Element && inside.current?.contains(target) === false && target.closest('.notice') === null)
        setShown(false);
    };
    window.addEventListener('pointerdown', away);
    window.addEventListener('focusin', away);
    return () => {
      window.removeEventListener('pointerdown', away);
      window.removeEventListener('focusin', away);
    };
  }, [shown]);
  const close = (): void => {
    setShown(false);
    button.current?.focus();
  };
  return { inside, button, shown, toggle: () => setShown(!shown), close };
}
