import { PAGE_NAMES, type Page } from './pages.ts';

interface Props {
  readonly names: readonly Page[];
  readonly page: Page;
  readonly onChoose: (page: Page) => void;
}

/** Which of the flat drawings is shown. */
export function Pages({ names, page, onChoose }: Props) {
  // A page that this room does not know shows what is nearest to it.
  const shown = names.includes(page) ? page : names[1];
  return (
    <fieldset className="drawing-pages" aria-label="Flat drawing">
      {names.map((one) => (
        <button key={one} type="button" aria-pressed={one === shown} onClick={() => onChoose(one)}>
          {PAGE_NAMES[one]}
        </button>
      ))}
    </fieldset>
  );
}
