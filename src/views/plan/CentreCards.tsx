/** The rules for the centre as cards, where there is no room for a table. */
import { centreHeads } from '../../figures/centreWords.ts';
import { CentrePick } from './CentrePick.tsx';
import { CentreCell, type CentreListProps } from './CentreTable.tsx';

export function CentreCards({ offers, chosen, units, onChoose }: CentreListProps) {
  const heads = centreHeads(units);
  return (
    <ul className="centre-cards">
      {offers.map((offer) => (
        <li key={offer.rule} data-chosen={offer.rule === chosen}>
          <CentrePick {...{ offer, chosen, onChoose }} />
          {offer.row !== null && (
            <dl>
              {heads.map(({ column, text }) => (
                <div key={column}>
                  <dt>{text}</dt>
                  <dd>
                    <CentreCell row={offer.row!} column={column} />
                  </dd>
                </div>
              ))}
            </dl>
          )}
        </li>
      ))}
    </ul>
  );
}
