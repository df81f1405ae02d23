// tokens → the text of tokens.css. Pure.
import { colours, measures } from '../../renderer/theme/tokens';

const listed = (theme: 'light' | 'dark' | 'system', indent: string): string =>
  Object.entries(colours)
    .map(([name, token]) => `${indent}--${name}: ${token[theme]};`)
    .join('\n');

const block = (theme: 'light' | 'dark', indent: string): string =>
  `${indent}color-scheme: ${theme};\n${listed(theme, indent)}`;

/** The style sheet of the tokens: light by default, dark when the system or the keeper says so, or the system's own. */
export function tokensCss(): string {
  return `/* Made from tokens.ts by tests/theme/tokens-css.ts; a test keeps them equal. Change tokens.ts. */
:root {
${Object.entries(measures)
  .map(([name, value]) => `  --${name}: ${value};`)
  .join('\n')}
${block('light', '  ')}
}

@media (prefers-color-scheme: dark) {
  :root:not([data-theme='light']) {
${block('dark', '    ')}
  }
}

:root[data-theme='dark'] {
${block('dark', '  ')}
}

@media (forced-colors: active) {
  :root:root {
${listed('system', '    ')}
  }
}
`;
}
