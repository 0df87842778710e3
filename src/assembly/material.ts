/** What a metal is like, as far as pressing, heat and cold ask. */
export interface Material {
  /** As a person names it; own entries go by it. */
  readonly name: string;
  /** Young's modulus, MPa. */
  readonly elastic: number;
  readonly poisson: number;
  /** Yield strength at 20 °C, MPa; NaN: not known. */
  readonly yield: number;
  /** Mean expansion near room temperature, per K. */
  readonly expansion: number;
  /** kg/m3. */
  readonly density: number;
  /** W/(m K). */
  readonly conductivity: number;
  /** J/(kg K). */
  readonly heat: number;
  /** Where it begins to melt, °C. */
  readonly melts: number;
}
