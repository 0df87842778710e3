/** Our own line drawings for buttons; each button carries its words in a label. */
const PATHS = {
  undo: 'M9 6 4.5 10.5 9 15M5 10.5h9a5 5 0 0 1 0 10h-3',
  redo: 'm15 6 4.5 4.5L15 15m4-4.5h-9a5 5 0 0 0 0 10h3',
  menu: 'M4 7h16M4 12h16M4 17h16',
  close: 'm6 6 12 12M18 6 6 18',
  rubout: 'M9 6h11v12H9l-6-6zm3.5 3.5 4.5 5m0-5-4.5 5',
  up: 'm6 15 6-6 6 6',
  down: 'm6 9 6 6 6-6',
  plus: 'M12 5v14M5 12h14',
  compare: 'M9.5 7a5 5 0 1 0 0 10 5 5 0 1 0 0-10m5 0a5 5 0 1 1 0 10 5 5 0 1 1 0-10',
} as const;

export function Icon({ name }: { readonly name: keyof typeof PATHS }) {
  return (
    <svg className="icon" viewBox="0 0 24 24" width="24" height="24" aria-hidden="true">
      <path d={PATHS[name]} />
    </svg>
  );
}
