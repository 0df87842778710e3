/** `roundhand fit`: points in CSV to one feature, as JSON. */
import { basename } from 'node:path';
import { runFit, unknownFit } from './fit.ts';
import { type Options, type Said, UsageError } from './usage.ts';

export function fitCommand(bytes: Buffer, file: string, options: Options): Said {
  const wanted = {
    feature: options.feature ?? '',
    criterion: options.criterion ?? 'least-squares',
    units: options.units ?? 'mm',
    filter: options.filter,
  };
  if (wanted.feature === '') throw new UsageError('fit needs --feature, such as --feature circle.');
  const unknown = unknownFit(wanted);
  if (unknown !== null) throw new UsageError(`${unknown}.`);
  const report = runFit(bytes, wanted);
  if ('error' in report) return { out: '', fault: `${basename(file)}: ${report.error}.` };
  return { out: JSON.stringify(report, null, 2), fault: null };
}
