/** A text being typed over another, until it is entered or given up. */
import { type KeyboardEvent, useEffect, useState } from 'react';

interface TextBox {
  select(): void;
}

export function useDraft(value: string, onEnter: (text: string) => void) {
  const [draft, setDraft] = useState<string | null>(null);
  // What came from elsewhere (undo, another job) is shown at once, whatever was half typed here.
  useEffect(() => setDraft(null), [value]);
  const enter = () => {
    if (draft !== null && draft.trim() !== value.trim()) onEnter(draft.trim());
    setDraft(null);
  };
  const onKeyDown = (event: KeyboardEvent<HTMLElement & TextBox>) => {
    if (event.key === 'Enter') {
      enter();
      event.currentTarget.select();
    }
    if (event.key === 'Escape') setDraft(null);
  };
  return { draft, shown: draft ?? value, setDraft, enter, onKeyDown };
}
