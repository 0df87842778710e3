/** The order of the first layer's stringers, drawn round the clock. */
import { SkipOrder } from '../../drawings/SkipOrder.tsx';
import { useTheme } from '../../store/theme.ts';

export function WeldOrder({ order }: { readonly order: readonly number[] }) {
  const theme = useTheme((state) => state.shown);
  if (order.length === 0) return null;
  return (
    <div className="squeeze-setup">
      <figure>
        <SkipOrder order={order} theme={theme} />
        <figcaption>
          Looking in at face A: the order of the first layer’s stringers, each along the bore. The
          first twelve are numbered, the others follow beside them in the same order.
        </figcaption>
      </figure>
    </div>
  );
}
