/** Over the drawing while it shows the bore as a way of mending would leave it, and the way back. */
import { WAY_TITLES } from '../../figures/wayNames.ts';
import { pointAtWay, useWays } from '../../store/ways.ts';
import './otherBand.css';

export function WayBand() {
  const pointed = useWays((state) => state.pointed);
  if (pointed === null) return null;
  return (
    <div className="other-band way-band" role="status">
      <p>
        <b>Shown: how it would be.</b> {WAY_TITLES[pointed]}: as planned, not as measured.
      </p>
      <p className="other-ways">
        <button type="button" className="plain-button" onClick={() => pointAtWay(null)}>
          back
        </button>
      </p>
    </div>
  );
}
