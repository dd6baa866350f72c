/** A dialog that is modal for as long as it is on the page. */
import { useEffect, useRef } from 'preact/hooks';

/** Shows a dialog above everything else for as long as it is on the page. */
export function useModal(close: () => void): { readonly current: HTMLDialogElement | null } {
  const ref = useRef<HTMLDialogElement>(null);
  useEffect(() => {
    const dialog = ref.current;
    if (dialog === null) return undefined;
    dialog.showModal();
    const onCancel = (event: Event): void => {
      event.preventDefault();
      close();
    };
    dialog.addEventListener('cancel', onCancel);
    return () => dialog.removeEventListener('cancel', onCancel);
  }, []);
  return ref;
}
