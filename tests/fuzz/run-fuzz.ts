// npm run fuzz [-- CASES [FROM [DOOR]]]: so many mutated cases at each door, or at one, beginning with a case by its number.
import { tryMutated } from './mutated-files';
import { INPUT_DOORS, tryInputs } from './mutated-input';

const [cases = '10000', from = '1', only] = process.argv.slice(2);
let failed = false;
for (const door of ['archive', 'hand-over', ...INPUT_DOORS] as const) {
  if (only !== undefined && only !== door) continue;
  try {
    const { refused, taken, slowest } =
      door === 'archive' || door === 'hand-over'
        ? tryMutated(door, Number(cases), Number(from))
        : tryInputs(door, Number(cases), Number(from));
    process.stdout.write(`${door}: ${cases} cases, ${refused} refused in order, ${taken} whole after all, slowest ${slowest.toFixed(2)} s\n`); // prettier-ignore
  } catch (error) {
    failed = true;
    process.stdout.write(`${door}: ${error instanceof Error ? error.message : String(error)}\n`);
  }
}
process.exit(Number(failed));
