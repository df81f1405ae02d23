// The one sheet of colours and measures. Screens use only the CSS variables made from it (tokens.css); a test keeps the
// two equal, and another checks the contrast of every pair that is used (tests/theme). Owns values, no styles.

interface Token {
  readonly light: string;
  readonly dark: string;
  /** What it is for, in a few words. */
  readonly description: string;
}

/** Colours: warm paper by day, dark slate by night. One accent: the green of a glazed pot. */
export const colours = {
  paper: { light: '#f6f0e4', dark: '#1c2125', description: 'the table everything lies on' },
  linen: { light: '#fcf8ef', dark: '#252b30', description: 'panes, fields, dialogs' },
  cloth: { light: '#ebe2d1', dark: '#313940', description: 'a thing pointed at or chosen' },
  line: {
    light: '#dccfb9',
    dark: '#3b444b',
    description: 'the few quiet lines; never the only sign of anything',
  },
  edge: { light: '#8a7c68', dark: '#8d8a82', description: 'the border of a field or button' },
  ink: { light: '#2b251e', dark: '#efe8db', description: 'text' },
  'ink-soft': { light: '#5c5145', dark: '#bdb4a5', description: 'second text: dates, hints' },
  accent: { light: '#24615c', dark: '#8cc9bc', description: 'the glaze: what to press, what is lit' },
  'accent-ink': { light: '#fdfaf3', dark: '#12211f', description: 'text on the glaze' },
  'accent-wash': { light: '#dbe7df', dark: '#27393a', description: 'a breath of glaze behind text' },
  focus: { light: '#24615c', dark: '#a9dfd3', description: 'the ring around what the keyboard is on' },
  caution: { light: '#8e3422', dark: '#f0a48f', description: 'words and marks of food safety, nowhere else' },
  'caution-wash': { light: '#f6dfd3', dark: '#43302c', description: 'behind a caution' },
  'jar-glass': { light: '#fbf7ee', dark: '#2b3237', description: 'the empty part of a jar' },
  'jar-edge': { light: '#6f6252', dark: '#a9a294', description: 'the outline of a jar' },
  'fill-1': {
    light: '#f1e9d8',
    dark: '#a79e8c',
    description: 'runny contents; each firmer one a shade stronger',
  },
  'fill-2': { light: '#ebe0c9', dark: '#b8ae9a', description: 'soft contents' },
  'fill-3': { light: '#e4d5b7', dark: '#c9beaa', description: 'spoonable contents' },
  'fill-4': { light: '#dbc8a3', dark: '#dacfb9', description: 'firm contents' },
  'fill-5': { light: '#cfb78b', dark: '#ebe1cc', description: 'very firm contents' },
  'fill-dim': {
    light: '#efe6d4',
    dark: '#3c4348',
    description: 'contents of a jar outside the descent that is lit',
  },
  'jar-surface': { light: '#6a5a43', dark: '#3a342b', description: 'the line of the set surface' },
  'jar-numeral': { light: '#2b251e', dark: '#221d17', description: 'the generation, on the contents' },
  'jar-numeral-open': {
    light: '#2b251e',
    dark: '#efe8db',
    description: 'the generation, on an open outline',
  },
  'jar-lid': { light: '#b9a88a', dark: '#7d7668', description: 'a plain lid' },
  hatch: { light: '#9a4030', dark: '#7a2c1f', description: 'the hatching of spoiled contents' },
  ribbon: { light: '#8a7550', dark: '#989382', description: 'a seeding, as wide as its share' },
  tub: {
    light: '#efdfc0',
    dark: '#3a3a33',
    description: 'the warm bath around jars in their hold, and what is due today',
  },
  label: { light: '#fffdf7', dark: '#39424a', description: 'the label strip of a product' },
  'label-cell': { light: '#3f7d76', dark: '#7cbcae', description: 'one strain on a label strip' },
  veil: { light: '#f6f0e4e6', dark: '#1c2125e6', description: 'behind a lane’s head, over the drawing' },
} as const satisfies Record<string, Token>;

/** Measures that do not change with the theme. */
export const measures = {
  // One scale of type: what is small, labels in drawings, what one reads, what leads, a card's head, a lane's, a screen's.
  'text-small': '15px',
  'text-label': '15.5px',
  'text-size': '17px',
  'text-lead': '18.5px',
  'text-large': '20px',
  'text-head': '25px',
  'text-title': '30px',
  // What is pressed: everywhere, and where the window is narrow or it stands in a line of text.
  target: '44px',
  'target-small': '40px',
  'space-1': '4px',
  'space-2': '8px',
  'space-3': '12px',
  'space-4': '18px',
  'space-5': '28px',
  'space-6': '44px',
  'radius-small': '8px',
  radius: '14px',
  'focus-width': '3px',
  'font-text':
    "'Plain Zero', 'Atkinson Hyperlegible Next Variable', 'Atkinson Hyperlegible Next', sans-serif",
  'font-warm': "'Fraunces Variable', Georgia, serif",
  quick: '140ms',
} as const;
