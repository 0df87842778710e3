/** Metals of the saved job: own entries, and figures of the usual ones that are not the usual figures. */
import * as v from 'valibot';
import { Name, text } from './typed.ts';

const Plain = v.optional(text(20));

/** Plain numbers as typed; what is left out is that of the usual metal that the name tells. */
export const OwnMaterial = v.strictObject({
  name: v.pipe(Name, v.minLength(1)),
  /** Stiffness (Young's modulus), GPa. */
  elastic: Plain,
  poisson: Plain,
  /** Yield strength, MPa. */
  yield: Plain,
  /** Millionths per °C. */
  expansion: Plain,
  /** kg per cubic metre. */
  density: Plain,
  /** W per metre and °C. */
  conductivity: Plain,
  /** Specific heat, J per kg and °C. */
  heat: Plain,
  /** Where it begins to melt, °C. */
  melts: Plain,
});
export type OwnMaterial = v.InferOutput<typeof OwnMaterial>;
export type MaterialFigure = Exclude<keyof OwnMaterial, 'name'>;
