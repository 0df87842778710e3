/** A button and what it opens beside it; closes on Escape, a tap elsewhere, or when the focus leaves. */
import { type ReactNode, useEffect, useId, useRef, useState } from 'react';

export interface DisclosureProps {
  readonly label: string;
  readonly button: ReactNode;
  readonly buttonClass: string;
  /** Called with a function that closes it again. */
  children(close: () => void): ReactNode;
}

export function Disclosure({ label, button, buttonClass, children }: DisclosureProps) {
  const [open, setOpen] = useState(false);
  const id = useId();
  const whole = useRef<HTMLDivElement>(null);
  const opener = useRef<HTMLButtonElement>(null);
  const close = () => {
    // The focus goes back to the button only if it was inside: never steal it from elsewhere.
    if (whole.current?.contains(document.activeElement) === true) opener.current?.focus();
    setOpen(false);
  };
  useEffect(() => {
    if (!open) return;
    const outside = (event: Event) => {
      if (event.target instanceof Node && whole.current?.contains(event.target) === false) {
        setOpen(false);
      }
    };
    document.addEventListener('pointerdown', outside);
    document.addEventListener('focusin', outside);
    return () => {
      document.removeEventListener('pointerdown', outside);
      document.removeEventListener('focusin', outside);
    };
  }, [open]);
  return (
    // biome-ignore lint/a11y/noStaticElementInteractions: only listens for Escape from what is inside
    <div
      className="disclosure"
      ref={whole}
      onKeyDown={(event) => {
        if (event.key === 'Escape' && open) {
          event.stopPropagation();
          close();
        }
      }}
    >
      <button
        ref={opener}
        type="button"
        className={buttonClass}
        aria-label={label}
        title={label}
        aria-expanded={open}
        aria-controls={id}
        onClick={() => setOpen(!open)}
      >
        {button}
      </button>
      <div id={id} className="disclosed" hidden={!open}>
        {open && children(close)}
      </div>
    </div>
  );
}
