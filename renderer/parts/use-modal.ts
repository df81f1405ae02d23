// A dialog over the page: shown at once, and the keyboard goes back to where it came from, if that is still there.
import { type RefObject, useEffect, useRef } from 'react';

export function useModal(): RefObject<HTMLDialogElement | null> {
  const dialog = useRef<HTMLDialogElement>(null);
  useEffect(() => {
    const opener = document.activeElement;
    dialog.current?.showModal();
    return () => {
      if (opener instanceof HTMLElement && opener.isConnected) opener.focus();
    };
  }, []);
  return dialog;
}
