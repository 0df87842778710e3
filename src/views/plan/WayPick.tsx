/** The button by which a way of mending is chosen. */
import type { WayRow } from '../../figures/wayTable.ts';

interface Props {
  readonly row: WayRow;
  readonly chosen: boolean;
  onChoose(row: WayRow): void;
}

export function WayPick({ row, chosen, onChoose }: Props) {
  return (
    <label className="way-pick">
      <input type="radio" name="way-of-mending" checked={chosen} onChange={() => onChoose(row)} />
      <span>
        {row.verdict === 'advised' && <span aria-hidden="true">✓ </span>}
        {row.title}
      </span>
    </label>
  );
}
