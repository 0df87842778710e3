/**
 * Shims between a bore ground round and its bushing: which thicknesses make up what is missing, and how each strip is cut.
 * All mm; thickness is per side.
 */

/** A stack of shims, the outermost (against the bore's wall) first. */
export interface Stack {
  readonly layers: readonly number[];
  /** Sum of the layers, per side. */
  readonly thickness: number;
  /** `thickness` less what was asked for: positive is thicker. */
  readonly over: number;
}

/** More layers than these slide on each other: then a sleeve. Judgement. */
export const MOST_LAYERS = 4;

export interface StackAsked {
  /** Per side, mm. */
  readonly thickness: number;
  /** How far the sum may miss it to either side, mm, not negative. */
  readonly under: number;
  readonly over: number;
  /** `reach`: never thinner than asked; `within`: never thicker; left out: whichever is nearer. */
  readonly must?: 'reach' | 'within';
}

/**
 * The fewest layers of the stock whose sum lies within the tolerance of what is asked; of as many layers the nearest.
 * Where nothing lies within, the nearest of all. The thickest layer lies outermost, against the wall: it takes the
 * bore's round by itself, and the thin ones lie on it without wrinkles.
 *
 * @param stock thicknesses at hand, mm, any number of sheets of each
 * @returns null where nothing is asked, or no stack can be what it must
 */
export function stackOf(asked: StackAsked, stock: readonly number[]): Stack | null {
  const sheets = [...new Set(stock.filter((t) => t > 0))].sort((a, b) => b - a);
  if (!(asked.thickness > 0)) return null;
  let best: Stack | null = null;
  for (const layers of stacks(sheets, MOST_LAYERS)) {
    const thickness = layers.reduce((sum, t) => sum + t, 0);
    const one = { layers, thickness, over: thickness - asked.thickness };
    if (asked.must === 'reach' && one.over < -EXACT) continue;
    if (asked.must === 'within' && one.over > EXACT) continue;
    if (best === null || better(one, best, asked)) best = one;
  }
  return best;
}

/** Sums of decimals meet a tolerance that is met exactly. */
const EXACT = 1e-9;

function better(a: Stack, b: Stack, { under, over }: StackAsked): boolean {
  const within = (s: Stack) => s.over >= -under - EXACT && s.over <= over + EXACT;
  if (within(a) !== within(b)) return within(a);
  if (within(a) && a.layers.length !== b.layers.length) return a.layers.length < b.layers.length;
  const miss = Math.abs(a.over) - Math.abs(b.over);
  if (Math.abs(miss) > EXACT) return miss < 0;
  return a.layers.length < b.layers.length;
}

/** Every stack of one up to so many layers, each never thicker than the one outside it. */
function* stacks(sheets: readonly number[], most: number): Generator<number[]> {
  for (let i = 0; i < sheets.length; i++) {
    yield [sheets[i]!];
    if (most === 1) continue;
    for (const rest of stacks(sheets.slice(i), most - 1)) yield [sheets[i]!, ...rest];
  }
}

/** A stretch of the wall to be left open: middle and width round the bore and along it. */
export interface Relief {
  readonly theta: number;
  readonly from: number;
  readonly to: number;
  readonly width: number;
}

export interface Strip {
  readonly thickness: number;
  /** Cut length, mm. */
  readonly length: number;
  /** Diameter of the bore that this layer lines. */
  readonly bore: number;
  /** Clock position where its ends butt. */
  readonly butt: number;
  /** Holes to cut: middle along the strip from its first end, depths, and size along the strip. */
  readonly holes: readonly {
    readonly at: number;
    readonly from: number;
    readonly to: number;
    readonly along: number;
  }[];
}

export interface Lining {
  /** Diameter of the round bore. */
  readonly bore: number;
  /** Outermost first. */
  readonly layers: readonly number[];
  /** Left between the butted ends. */
  readonly gap: number;
  /** Clock position where the ends of the first layer butt; the others to either side of it. */
  readonly butt: number;
  readonly reliefs: readonly Relief[];
  /** Left round a hole, on each side. */
  readonly clear: number;
}

/** The butts of layers on each other stand so far apart. */
const APART = Math.PI / 6;

/**
 * One strip a layer. A strip bent round keeps the length of its middle, so that a layer of thickness t in a bore D is
 * cut to pi (D - t) less the gap; the next one lines a bore smaller by 2 t.
 *
 * The first end lies at the butt and the strip runs clockwise from there, as seen looking in at face A.
 */
export function stripsOf({ bore, layers, gap, butt, reliefs, clear }: Lining): Strip[] {
  let lined = bore;
  return layers.map((thickness, k) => {
    const middle = lined - thickness;
    // 0, +1, -1, +2, ...: to either side of the first.
    const side = k % 2 === 1 ? (k + 1) / 2 : -k / 2;
    const at = turned(butt + side * APART);
    const strip = {
      thickness,
      length: Math.PI * middle - gap,
      bore: lined,
      butt: at,
      holes: reliefs.map(({ theta, from, to, width }) => ({
        at: (turned(theta - at) * middle) / 2 - gap / 2,
        from: from - clear,
        to: to + clear,
        along: width + 2 * clear,
      })),
    };
    lined -= 2 * thickness;
    return strip;
  });
}

const TURN = 2 * Math.PI;

function turned(angle: number): number {
  const rest = angle - TURN * Math.floor(angle / TURN);
  return rest >= TURN ? 0 : rest;
}

/** A part-round shim: how thick at each clock hour, per side, mm; 0 where none lies. */
export interface PartRound {
  /** Twelve, from 12 o'clock. */
  readonly hours: readonly number[];
  readonly thickest: number;
  readonly at: number;
}

/**
 * What is missing at each hour, the mean over the depths of the seat. Tapered to nothing where nothing is missing: a
 * part-round shim of one thickness leaves a step at its ends.
 *
 * @param low metal missing per side, never negative, by hour
 * @returns null where nothing is missing, or something is missing all round
 */
export function partRound(low: readonly number[]): PartRound | null {
  const thickest = Math.max(...low);
  if (!(thickest > 0) || low.every((t) => t > 0)) return null;
  return { hours: low, thickest, at: low.indexOf(thickest) };
}
