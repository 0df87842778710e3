/** What there is to work with: the ways say what of it they need. Kept on the device, for all jobs. */
import { ToolKind } from '../../job/schema.ts';
import { Machine } from '../../job/shop.ts';
import { withMachine, withTool } from '../../job/shopTools.ts';
import { TOOL_KINDS } from '../../job/tools.ts';
import { shopStore } from '../../store/shop.ts';
import { changeShop } from '../../store/shopFile.ts';
import { useShop } from '../../store/useShop.ts';
import { Disclosure } from '../parts/Disclosure.tsx';
import { Words } from '../parts/Words.tsx';
import '../measure/atHand.css';

const MACHINES: Readonly<Record<Machine, string>> = {
  torch: 'torch and jaws',
  welder: 'welder',
  'boring-bar': 'boring bar',
  lathe: 'lathe',
};

export function ToolsAtHand() {
  const shop = useShop((state) => state.shop);
  const tools = shop?.tools ?? [];
  const { machines } = shop ?? {};
  const names = [
    ...ToolKind.options.filter((kind) => tools.some((tool) => tool.kind === kind)).map(nameOf),
    ...(machines ?? []).map((machine) => MACHINES[machine]),
  ];
  const said = names.length > 0 ? names.join('; ') : machines === undefined ? 'not said' : 'none';
  return (
    <div className="at-hand">
      <span>
        <Words text={`Tools and machines at hand: ${said}.`} />
      </span>{' '}
      <Disclosure
        label="Change the tools and machines at hand"
        button="change"
        buttonClass="link-button"
      >
        {() => <Kinds />}
      </Disclosure>
    </div>
  );
}

const nameOf = (kind: ToolKind) => TOOL_KINDS[kind].name;

function Kinds() {
  const shop = useShop((state) => state.shop);
  const { change } = shopStore.getState();
  return (
    <fieldset className="kinds">
      <legend>Tools and machines in your shop</legend>
      {ToolKind.options.map((kind) => (
        <label key={kind}>
          <input
            type="checkbox"
            checked={shop?.tools.some((tool) => tool.kind === kind) ?? false}
            onChange={({ target }) => tick(kind, target.checked)}
          />
          {nameOf(kind)}
        </label>
      ))}
      {Machine.options.map((machine) => (
        <label key={machine}>
          <input
            type="checkbox"
            checked={shop?.machines?.includes(machine) ?? false}
            onChange={({ target }) => change((now) => withMachine(now, machine, target.checked))}
          />
          {MACHINES[machine]}
        </label>
      ))}
      <p className="soft">
        Each way of mending says what of this it needs. Kept on this device, for every job.
      </p>
    </fieldset>
  );
}

/** A tool with figures of its own is told of when it goes, with the way back. */
function tick(kind: ToolKind, at: boolean): void {
  const { shop, change } = shopStore.getState();
  const own = shop?.tools.find(
    (tool) => tool.kind === kind && (tool.radius ?? tool.width ?? tool.bite) !== undefined,
  );
  if (at || own === undefined) change((now) => withTool(now, kind, at));
  else changeShop((now) => withTool(now, kind, at), `${own.name} is no longer at hand.`);
}
