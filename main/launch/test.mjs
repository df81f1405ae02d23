// npm test [-- --only STAGE [FILE …]]: everything that must hold, stage by stage; ends at the first that fails.
// Its last line is "N passed, N failed": the tests of vitest and playwright, and a failed stage of another kind as one.
import { onNode24 } from './node.mjs';
import { launch, notice, Refused } from './places.mjs';

function readArguments(typed, names) {
  if (typed.length === 0) return { only: undefined, files: [] };
  const [flag, only, ...files] = typed;
  if (flag !== '--only' || !names.includes(only)) {
    throw new Refused(`Usage: npm test [-- --only STAGE [FILE …]]. The stages are ${names.join(', ')}.`);
  }
  return { only, files };
}

/** A stage that is refused has failed, with its sentence said. */
async function outcomeOf(run) {
  try {
    return await run();
  } catch (error) {
    if (!(error instanceof Refused)) throw error;
    notice(error.message);
    return { ok: false, passed: 0, failed: 0, skipped: [] };
  }
}

await launch(() =>
  onNode24(async () => {
    const { ensureDependencies } = await import('./dependencies.mjs');
    const started = Date.now();
    ensureDependencies();
    const { STAGES } = await import('./stages.mjs');
    const names = STAGES.map((stage) => stage.name);
    const { only, files } = readArguments(process.argv.slice(2), names);
    const total = { passed: 0, failed: 0 };
    for (const { name, run } of STAGES.filter((stage) => only === undefined || stage.name === only)) {
      const from = Date.now();
      notice(`${name} …`);
      const { ok, passed, failed, skipped } = await outcomeOf(() => run(files));
      total.passed += passed;
      total.failed += ok ? failed : Math.max(failed, 1);
      for (const title of skipped) notice(`${name}: skipped: ${title}`);
      const took = `${((Date.now() - from) / 1000).toFixed(1)} s`;
      const counted = passed + failed > 0 ? `, ${passed} passed, ${failed} failed` : '';
      notice(
        ok
          ? `${name} holds (${took}${counted})`
          : `${name} FAILED (${took}${counted}); later stages were not run`,
      );
      if (!ok) {
        process.exitCode = 1;
        break;
      }
    }
    notice(`all of it took ${((Date.now() - started) / 1000).toFixed(1)} s`);
    process.stdout.write(`${total.passed} passed, ${total.failed} failed\n`);
  }),
);
