// Stands in for the default_app.asar of the electron package: runs the program whose folder is the first argument.
import { readFileSync } from 'node:fs';
import { createRequire } from 'node:module';
import { join, resolve } from 'node:path';
import { pathToFileURL } from 'node:url';
import { app } from 'electron';

const require = createRequire(import.meta.url);
const given = process.argv.slice(1);
const asked = given.indexOf('-r');
if (asked >= 0) require(resolve(given.splice(asked, 2)[1])); // a module to load first, as there
const folder = given.find((argument) => !argument.startsWith('-'));
if (!folder) {
  process.stderr.write('usage: electron [-r MODULE] FOLDER [options]\n');
  process.exit(1);
}
const path = resolve(folder);
const manifest = JSON.parse(readFileSync(join(path, 'package.json'), 'utf8'));
Object.defineProperty(process, 'defaultApp', { value: true, enumerable: true });
app.name = manifest.productName ?? manifest.name ?? app.name;
app.setVersion(manifest.version ?? '0.0.0');
app.setDesktopName(`${app.name}.desktop`);
app.setAppPath(path);
// Awaited at the top, so that 'ready' waits for the program's own code, as in a package.
await import(pathToFileURL(require.resolve(path)).href);
