// npm run audit: asks the registry about known faults of the packages in package-lock.json. Ends with 0 where none is known, 1
// where one is, and 2 where the registry answers no such question: then nothing is known, and that is said.
import { spawnSync } from 'node:child_process';
import { npmCommand } from './node.mjs';
import { launch, notice, root } from './places.mjs';

await launch(() => {
  const npm = npmCommand();
  const asked = spawnSync(npm.command, [...npm.args, 'audit', '--json'], {
    cwd: root,
    shell: npm.shell,
    encoding: 'utf8',
    timeout: 120_000,
  });
  let reply = null;
  try {
    reply = JSON.parse(asked.stdout);
  } catch {
    // Said below, with npm's own words.
  }
  const counts = reply?.metadata?.vulnerabilities;
  if (!counts) {
    const why = reply?.message ?? asked.stderr?.trim().split('\n')[0] ?? 'no words of its own';
    notice(
      `the registry of this machine does not answer about known faults (${why}). Nothing was found out.`,
    );
    process.exitCode = 2;
    return;
  }
  for (const [name, one] of Object.entries(reply.vulnerabilities ?? {}))
    notice(`${name}: ${one.severity}, versions ${one.range}${one.isDirect ? '' : ', brought in by others'}`);
  notice(`${counts.total} known faults in ${reply.metadata.dependencies?.total ?? 'all'} packages.`);
  process.exitCode = counts.total > 0 ? 1 : 0;
});
