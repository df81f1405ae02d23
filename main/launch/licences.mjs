// Which packages go into the built program, and their licences: collected while it is built, from the modules that are bundled.
import { existsSync, mkdirSync, readdirSync, readFileSync, writeFileSync } from 'node:fs';
import { dirname, join, resolve } from 'node:path';

/** The folder of the package that a module is of, or null for the program's own. */
export function packageOf(module) {
  const [file] = module.replace(/^\0/, '').split('?', 1);
  const at = file.lastIndexOf('/node_modules/');
  if (at < 0) return null;
  const [scope, name] = file.slice(at + '/node_modules/'.length).split('/');
  return file.slice(0, at + '/node_modules/'.length) + (scope.startsWith('@') ? `${scope}/${name}` : scope);
}

/** Name, version, licence and its text. @throws Error where a package has no licence, or no text of it */
export function licenceOf(folder) {
  // Older packages name it in a list.
  const {
    name,
    version,
    licenses,
    license = licenses?.[0]?.type,
  } = JSON.parse(readFileSync(join(folder, 'package.json'), 'utf8'));
  const file = readdirSync(folder).find((one) => /^(?:licen[cs]e|ofl)(?:[.-].*)?$/i.test(one));
  if (typeof license !== 'string') throw new Error(`${name} names no licence`);
  return { name, version, license, text: file ? readFileSync(join(folder, file), 'utf8').trim() : null };
}

/** The standard words of the MIT licence (SPDX), for a package that names it and brings no text. */
const MIT = (name) => `MIT License\n\nCopyright (c) the authors of ${name}\n\nPermission is hereby granted, free of charge, to any person obtaining a copy of this software and associated documentation files (the "Software"), to deal in the Software without restriction, including without limitation the rights to use, copy, modify, merge, publish, distribute, sublicense, and/or sell copies of the Software, and to permit persons to whom the Software is furnished to do so, subject to the following conditions:\n\nThe above copyright notice and this permission notice shall be included in all copies or substantial portions of the Software.\n\nTHE SOFTWARE IS PROVIDED "AS IS", WITHOUT WARRANTY OF ANY KIND, EXPRESS OR IMPLIED, INCLUDING BUT NOT LIMITED TO THE WARRANTIES OF MERCHANTABILITY, FITNESS FOR A PARTICULAR PURPOSE AND NONINFRINGEMENT. IN NO EVENT SHALL THE AUTHORS OR COPYRIGHT HOLDERS BE LIABLE FOR ANY CLAIM, DAMAGES OR OTHER LIABILITY, WHETHER IN AN ACTION OF CONTRACT, TORT OR OTHERWISE, ARISING FROM, OUT OF OR IN CONNECTION WITH THE SOFTWARE OR THE USE OR OTHER DEALINGS IN THE SOFTWARE.`; // prettier-ignore

/** Those that may go out with a program of the MIT licence, their texts beside it. */
export const ALLOWED = ['MIT', 'ISC', 'BSD-2-Clause', 'BSD-3-Clause', 'Apache-2.0', '0BSD', 'OFL-1.1'];

/** A build plugin: writes the licences of all packages whose modules were bundled, once for all bundles. */
export function licences(file) {
  const folders = new Set();
  return {
    name: 'licences',
    sharedDuringBuild: true,
    generateBundle(_options, bundle) {
      // Fonts are no modules: a style sheet names them.
      const files = Object.values(bundle).flatMap((one) => one.originalFileNames ?? []);
      for (const module of [
        ...this.getModuleIds(),
        ...files.map((one) => resolve(this.environment.config.root, one)),
      ]) {
        const folder = packageOf(module);
        if (folder && existsSync(join(folder, 'package.json'))) folders.add(folder);
      }
    },
    closeBundle() {
      const all = [...folders].map(licenceOf).toSorted((a, b) => (a.name < b.name ? -1 : 1));
      const strange = all.filter(({ license }) => !ALLOWED.includes(license));
      if (strange.length > 0)
        throw new Error(
          `may not go out: ${strange.map(({ name, license }) => `${name} (${license})`).join(', ')}`,
        );
      const texts = all.map(({ name, version, license, text }) => {
        const words = text ?? (license === 'MIT' ? MIT(name) : null);
        if (words === null) throw new Error(`${name} (${license}) brings no text of its licence`);
        return `${name} ${version} (${license})\n\n${words}\n`;
      });
      mkdirSync(dirname(file), { recursive: true });
      writeFileSync(
        file,
        `What this program is made of, beside its own parts:\n\n${texts.join('\n---\n\n')}`,
      );
    },
  };
}
