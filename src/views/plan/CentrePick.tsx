/** The button by which a rule for the centre is chosen; one that lacks something says what. */
import type { CentreOffer } from '../../figures/centreWords.ts';

interface Props {
  readonly offer: CentreOffer;
  readonly chosen: CentreOffer['rule'];
  onChoose(rule: CentreOffer['rule']): void;
}

export function CentrePick({ offer, chosen, onChoose }: Props) {
  const { rule, name, what, missing } = offer;
  return (
    <label className="centre-pick">
      <input
        type="radio"
        name="centre"
        checked={rule === chosen}
        disabled={rule === 'partner' && missing !== '' && rule !== chosen}
        onChange={() => onChoose(rule)}
      />
      <span>
        <b>{name}</b> <span className="centre-what">{missing === '' ? what : missing}</span>
      </span>
    </label>
  );
}
