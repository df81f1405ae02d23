// The one sheet of colours and measures. Screens use only the CSS variables made from it (tokens.css); a test keeps the
// two equal, and another checks the contrast of every pair that is used (tests/theme). Owns values, no styles.

interface Token {
  readonly light: string;
  readonly dark: string;
  /** Where the system chooses the colours (CSS Color 4, system colors): what is told by a shade is told by a line. */
  readonly system: 'Canvas' | 'CanvasText' | 'LinkText' | 'Highlight';
  /** What it is for, in a few words. */
  readonly description: string;
}

/** Colours: warm paper by day, dark slate by night. One accent: the green of a glazed pot. */
export const colours = {
  paper: { light: '#f6f0e4', dark: '#1c2125', system: 'Canvas', description: 'the table everything lies on' },
  linen: { light: '#fcf8ef', dark: '#252b30', system: 'Canvas', description: 'panes, fields, dialogs' },
  cloth: { light: '#ebe2d1', dark: '#313940', system: 'Canvas', description: 'a thing pointed at or chosen' },
  line: {
    light: '#dccfb9',
    dark: '#3b444b',
    system: 'CanvasText',
    description: 'the few quiet lines; never the only sign of anything',
  },
  edge: {
    light: '#8a7c68',
    dark: '#8d8a82',
    system: 'CanvasText',
    description: 'the border of a field or button',
  },
  ink: { light: '#2b251e', dark: '#efe8db', system: 'CanvasText', description: 'text' },
  'ink-soft': {
    light: '#5c5145',
    dark: '#bdb4a5',
    system: 'CanvasText',
    description: 'second text: dates, hints',
  },
  accent: {
    light: '#24615c',
    dark: '#8cc9bc',
    system: 'LinkText',
    description: 'the glaze: what to press, what is lit',
  },
  'accent-ink': { light: '#fdfaf3', dark: '#12211f', system: 'Canvas', description: 'text on the glaze' },
  'accent-wash': {
    light: '#dbe7df',
    dark: '#27393a',
    system: 'Canvas',
    description: 'a breath of glaze behind text',
  },
  focus: {
    light: '#24615c',
    dark: '#a9dfd3',
    system: 'Highlight',
    description: 'the ring around what the keyboard is on',
  },
  caution: {
    light: '#8e3422',
    dark: '#f0a48f',
    system: 'CanvasText',
    description: 'words and marks of food safety, nowhere else',
  },
  'caution-wash': { light: '#f6dfd3', dark: '#43302c', system: 'Canvas', description: 'behind a caution' },
  'jar-glass': {
    light: '#fbf7ee',
    dark: '#2b3237',
    system: 'Canvas',
    description: 'the empty part of a jar',
  },
  'jar-edge': {
    light: '#6f6252',
    dark: '#a9a294',
    system: 'CanvasText',
    description: 'the outline of a jar',
  },
  'fill-1': {
    light: '#f1e9d8',
    dark: '#a79e8c',
    system: 'Canvas',
    description: 'runny contents; each firmer one a shade stronger',
  },
  'fill-2': { light: '#ebe0c9', dark: '#b8ae9a', system: 'Canvas', description: 'soft contents' },
  'fill-3': { light: '#e4d5b7', dark: '#c9beaa', system: 'Canvas', description: 'spoonable contents' },
  'fill-4': { light: '#dbc8a3', dark: '#dacfb9', system: 'Canvas', description: 'firm contents' },
  'fill-5': { light: '#cfb78b', dark: '#ebe1cc', system: 'Canvas', description: 'very firm contents' },
  'fill-dim': {
    light: '#efe6d4',
    dark: '#3c4348',
    system: 'Canvas',
    description: 'contents of a jar outside the descent that is lit',
  },
  'jar-surface': {
    light: '#6a5a43',
    dark: '#3a342b',
    system: 'CanvasText',
    description: 'the line of the set surface',
  },
  'jar-numeral': {
    light: '#2b251e',
    dark: '#221d17',
    system: 'CanvasText',
    description: 'the generation, on the contents',
  },
  'jar-numeral-open': {
    light: '#2b251e',
    dark: '#efe8db',
    system: 'CanvasText',
    description: 'the generation, on an open outline',
  },
  'jar-lid': { light: '#b9a88a', dark: '#7d7668', system: 'CanvasText', description: 'a plain lid' },
  hatch: {
    light: '#9a4030',
    dark: '#7a2c1f',
    system: 'CanvasText',
    description: 'the hatching of spoiled contents',
  },
  ribbon: {
    light: '#8a7550',
    dark: '#989382',
    system: 'CanvasText',
    description: 'a seeding, as wide as its share',
  },
  tub: {
    light: '#efdfc0',
    dark: '#3a3a33',
    system: 'Canvas',
    description: 'the warm bath around jars in their hold, and what is due today',
  },
  label: { light: '#fffdf7', dark: '#39424a', system: 'Canvas', description: 'the label strip of a product' },
  'label-cell': {
    light: '#3f7d76',
    dark: '#7cbcae',
    system: 'CanvasText',
    description: 'one strain on a label strip',
  },
  veil: {
    light: '#f6f0e4e6',
    dark: '#1c2125e6',
    system: 'Canvas',
    description: 'behind a lane’s head, over the drawing',
  },
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
