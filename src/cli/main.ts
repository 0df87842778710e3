/** `npm run -s roundhand -- <command>`: main(argv) -> exit code. 0 done, 1 the input is at fault, 2 wrong usage. */
import { parseArgs } from 'node:util';
import { readInput } from './readInput.ts';
import { CSV_ONLY, OPTIONS, type Options, type Said, UsageError } from './usage.ts';

const USAGE = `Roundhand, on the command line.

  roundhand report JOB [--bore NAME] [--survey NAME] [--shop SHOP.json] [--json]
  roundhand report READINGS.csv --nominal D --length L [--bushing OD] [--press-fit P]
                   [--units in|mm] [--part-temp 27C] [--gauge-temp 68F] [--shop FILE] [--json]
  roundhand report POINTS.csv --nominal D --length L [--bushing OD] [--press-fit P]
                   [--units mm|in] [--accuracy A] [--part-temp T] [--gauge-temp T] [--json]
  roundhand fit POINTS.csv --feature circle|cylinder|cone [--units mm|in]
                   --criterion least-squares|minimum-zone|maximum-inscribed|minimum-circumscribed
                   (a cone: least-squares or minimum-zone)
                   [--filter UPR]  a circle: smooth waves above so many per turn first

A job is a .roundhand.json file. Readings are CSV with the columns survey, face, depth, clock,
instrument, setup, reading, unit, sd, note; only depth, clock and reading are required. Sizes
are in the unit of the rows unless --units says. With the temperatures of part and gauge,
C or F, readings are brought to 20 C; both are needed.

Points of a scanner or measuring arm are CSV with the columns x, y and z, in any order, others
passed over; a million will do. Where x runs to 3 o'clock, y to 12 and z inward from face A along
the middle of the bore, they are taken as they are; else about the average round cylinder through
them, face A towards + and 12 o'clock towards + y. Units are mm unless --units says. What they
have in common from place to place and does not average out is --accuracy (1 standard deviation).

What to read next is sought among the gauges of the job and a dial indicator; with --shop, among those
of a shop document (public/shop.schema.json).

For fit, points have the header x,y or x,y,z, or clock,radius or clock,depth,radius for radii about
one axis.`;

export interface Streams {
  readonly out: (text: string) => void;
  readonly err: (text: string) => void;
}

/** Which options each command takes. */
const TAKES: Readonly<Record<string, readonly (keyof Options)[]>> = {
  report: ['bore', 'survey', 'json', ...CSV_ONLY, 'shop'],
  fit: ['feature', 'criterion', 'filter', 'units'],
};

export async function main(argv: readonly string[], { out, err }: Streams): Promise<number> {
  try {
    const { values, positionals } = readArguments(argv);
    if (values.help === true) {
      out(`${USAGE}\n`);
      return 0;
    }
    const [command, file, ...more] = positionals;
    checkUsage(command, file, more, values);
    const said = await run(command!, file!, values);
    if (said.out !== '') out(said.out.endsWith('\n') ? said.out : `${said.out}\n`);
    if (said.fault !== null) err(`${said.fault}\n`);
    return said.fault === null ? 0 : 1;
  } catch (fault) {
    if (!(fault instanceof UsageError)) throw fault;
    err(`roundhand: ${fault.message}\n`);
    return 2;
  }
}

function readArguments(argv: readonly string[]): { values: Options; positionals: string[] } {
  try {
    return parseArgs({ args: [...argv], options: OPTIONS, allowPositionals: true });
  } catch (fault) {
    throw new UsageError(`${(fault as Error).message.split('\n')[0]} See --help.`);
  }
}

function checkUsage(
  command: string | undefined,
  file: string | undefined,
  more: readonly string[],
  values: Options,
): void {
  if (command === undefined) throw new UsageError('say what to do: report or fit. See --help.');
  const takes = TAKES[command];
  if (takes === undefined) {
    throw new UsageError(`no command “${command}”: there are report and fit. See --help.`);
  }
  if (file === undefined) throw new UsageError(`${command} needs a file. See --help.`);
  if (more.length > 0)
    throw new UsageError(`${command} takes one file, and “${more[0]}” is another.`);
  for (const name of Object.keys(values) as (keyof Options)[]) {
    if (!takes.includes(name))
      throw new UsageError(`${command} has no option --${name}. See --help.`);
  }
}

/** Files stay bytes: the text of a million points is large, and nobody needs it. */
async function run(command: string, file: string, values: Options): Promise<Said> {
  const input = readInput(file);
  if ('why' in input) return { out: '', fault: input.why };
  if (command === 'fit') {
    return (await import('./fitCommand.ts')).fitCommand(input.bytes, file, values);
  }
  return (await import('./reportCommand.ts')).reportCommand(input.bytes, file, values);
}
