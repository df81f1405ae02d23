// The job in five pictures, drawn as the family draws it. Decoration: the words beside each say the same.
import type { ReactNode } from 'react';
import { FLAG } from '../../core/shapes/drawing-flags';
import { JarDefs, JarShape } from '../parts/jar-shape';
import { CubesShape, PacketShape, PotShape } from '../parts/kept-shapes';

const KNOWN = FLAG.outcomeKnown;
/** A set word nobody has written down yet. */
const UNSEEN = 255;
const [RUNNY, SOFT, SPOONABLE, FIRM] = [0, 1, 2, 3] as const;

interface At {
  readonly x: number;
  readonly y: number;
}

/** The family's own jar, its top left corner at x and y. */
function Jar({ x, y, generation, setWord, flags = KNOWN, next = false }: At & {
  readonly generation: number;
  readonly setWord: number;
  readonly flags?: number;
  readonly next?: boolean;
}) {
  return (
    <g className="jar" transform={`translate(${x} ${y})`}>
      {next && <rect className="help-glow" x="-9" y="-9" width="80" height="84" rx="18" />}
      <JarShape generation={generation} setWord={setWord} flags={flags} />
    </g>
  );
} // prettier-ignore

const Shape = ({ x, y, children }: At & { readonly children: ReactNode }) => (
  <g transform={`translate(${x} ${y})`}>{children}</g>
);

const Ribbon = ({ d }: { readonly d: string }) => <path className="help-ribbon" d={d} />;

/** A tub of warm water from x to x + width, its rim at y. */
const Tub = ({ x, y, width, height }: At & { readonly width: number; readonly height: number }) => (
  <path className="tub" d={`M${x} ${y}v${height - 16}q0 16 16 16h${width - 32}q16 0 16 -16v${16 - height}`} />
);

function Picture({ children }: { readonly children: ReactNode }) {
  return (
    <svg className="help-picture" viewBox="0 0 260 172" aria-hidden="true" focusable="false">
      {children}
    </svg>
  );
}

/** Two packets flow into the first jar. */
export const StartPicture = () => (
  <Picture>
    <Ribbon d="M70 52C112 52 112 86 152 86" />
    <Ribbon d="M70 120C112 120 112 90 152 90" />
    <Shape x={14} y={20}>
      <PacketShape />
    </Shape>
    <Shape x={14} y={88}>
      <PacketShape />
    </Shape>
    <Jar x={150} y={54} generation={1} setWord={SPOONABLE} />
  </Picture>
);

/** One jar seeds two that stand in warmth. */
export const SeedPicture = () => (
  <Picture>
    <Tub x={148} y={12} width={98} height={156} />
    <Ribbon d="M74 86C118 86 118 48 166 48" />
    <Ribbon d="M74 90C118 90 118 124 166 124" />
    <Jar x={14} y={54} generation={1} setWord={SPOONABLE} />
    <Jar x={166} y={16} generation={2} setWord={UNSEEN} flags={0} />
    <Jar x={166} y={90} generation={2} setWord={UNSEEN} flags={0} />
  </Picture>
);

/** Three jars as they came out: level, with a spoon’s hollow, and one that spoiled. */
export const LookPicture = () => (
  <Picture>
    <path className="help-board" d="M10 126H250" />
    <Jar x={18} y={58} generation={2} setWord={FIRM} />
    <Jar x={99} y={58} generation={2} setWord={SPOONABLE} />
    <Jar x={180} y={58} generation={2} setWord={FIRM} flags={KNOWN | FLAG.spoiled} />
  </Picture>
);

/** The next seed glows; beside it cubes and a lidded pot. */
export const KeepPicture = () => (
  <Picture>
    <Jar x={30} y={54} generation={2} setWord={FIRM} flags={KNOWN | FLAG.onShelf} next />
    <Shape x={160} y={14}>
      <CubesShape />
    </Shape>
    <Shape x={160} y={98}>
      <PotShape />
    </Shape>
  </Picture>
);

/** A line that sets softer and softer, and a new one below it. */
export const AfreshPicture = () => (
  <Picture>
    <Ribbon d="M64 42H110M144 42H196" />
    <Jar x={14} y={6} generation={12} setWord={SPOONABLE} />
    <Jar x={99} y={6} generation={13} setWord={SOFT} />
    <Jar x={184} y={6} generation={14} setWord={RUNNY} />
    <Ribbon d="M70 132H110" />
    <Shape x={14} y={100}>
      <PacketShape />
    </Shape>
    <Jar x={99} y={98} generation={1} setWord={SPOONABLE} />
  </Picture>
);

/** What the pictures hatch with; once on the page of help. */
export const PictureDefs = () => (
  <svg className="visually-hidden" aria-hidden="true">
    <JarDefs />
  </svg>
);
