/** A pass in words, the same on its own sheet and in the plan on paper: when it was given to the bench; zones and what holds it back; its gate. */
import type { Pass } from '../../bore/passTypes.ts';
import type { Passes } from '../../evaluate/passes.ts';
import { issuedWords } from '../../figures/issued.ts';
import { GATE, gateLines, passConditions, passZone } from '../../figures/passWords.ts';
import type { Units } from '../../job/schema.ts';

interface Props {
  readonly pass: Pass;
  readonly units: Units;
}

export function OnTheBench({ passes }: { readonly passes: Passes }) {
  return issuedWords(passes).map((text) => (
    <p key={text}>
      <b>{text}</b>
    </p>
  ));
}

export function PassZones({ pass, length, units }: Props & { readonly length: number }) {
  return (
    <ul>
      {pass.zones.map((zone, i) => {
        const { where, what } = passZone(zone, length, units);
        return (
          <li key={i}>
            <b>{where}</b>: {what}
          </li>
        );
      })}
      {passConditions(pass, units).map((text) => (
        <li key={text}>{text}</li>
      ))}
    </ul>
  );
}

/** With room to write what was read. */
export function PassGate({ pass, units }: Props) {
  return (
    <>
      <p>
        <b>{GATE}</b>
      </p>
      <ul className="pass-page-gate">
        {gateLines(pass, units).map((text) => (
          <li key={text}>
            <span>{text}</span>
            <span className="pass-page-blank">read:</span>
          </li>
        ))}
      </ul>
    </>
  );
}
