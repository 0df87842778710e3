/** What there is to measure with: the next reading is sought among these. Kept on the device, for all jobs. */
import { gaugeKind } from '../../job/gauges.ts';
import type { GaugeType, Job } from '../../job/schema.ts';
import { kindsAtHand, ownGauge, SHOP_KINDS, withKind } from '../../job/shopGauges.ts';
import type { Bench } from '../../store/bench.ts';
import { shopStore } from '../../store/shop.ts';
import { changeShop, saveShopFile } from '../../store/shopFile.ts';
import { useShop } from '../../store/useShop.ts';
import { Disclosure } from '../parts/Disclosure.tsx';
import { Words } from '../parts/Words.tsx';

export function GaugesAtHand({ bench: { job, bore } }: { readonly bench: Bench }) {
  const shop = useShop((state) => state.shop);
  const fault = useShop((state) => state.fault);
  // The next reading is not sought on the outside of a part.
  if (bore.kind === 'pin' || bore.kind === 'bushing-outside') return null;
  const names = kindsAtHand(shop, job).map((type) => inSentence(gaugeKind(type).name));
  return (
    <div className="at-hand">
      <span>
        <Words text={`Gauges at hand: ${names.length === 0 ? 'none' : names.join('; ')}.`} />
      </span>{' '}
      <Disclosure label="Change the gauges at hand" button="change" buttonClass="link-button">
        {() => <Kinds job={job} />}
      </Disclosure>
      {fault !== null && (
        <p className="fault" role="status">
          {fault}
        </p>
      )}
    </div>
  );
}

function inSentence(name: string): string {
  return name.charAt(0).toLowerCase() + name.slice(1);
}

function Kinds({ job }: { readonly job: Job }) {
  const shop = useShop((state) => state.shop);
  const ticked = kindsAtHand(shop, job);
  return (
    <fieldset className="kinds">
      <legend>At hand in your shop</legend>
      {SHOP_KINDS.map(({ type, name }) => (
        <label key={type}>
          <input
            type="checkbox"
            checked={ticked.includes(type)}
            onChange={({ target }) => tick(job, type, target.checked)}
          />
          {name}
        </label>
      ))}
      <p className="soft">
        The next reading is sought with these. Kept on this device, for every job.
      </p>
      {shop?.gauges !== undefined && (
        <button type="button" className="link-button" onClick={() => void saveShopFile(shop)}>
          save this list to a file
        </button>
      )}
    </fieldset>
  );
}

/** A gauge with figures of its own is told of when it goes, with the way back. */
function tick(job: Job, type: GaugeType, at: boolean): void {
  const { shop, change } = shopStore.getState();
  const own = at ? undefined : ownGauge(shop, type);
  if (own === undefined) change((now) => withKind(now, job, type, at));
  else changeShop((now) => withKind(now, job, type, at), `${own.name} is no longer at hand.`);
}
